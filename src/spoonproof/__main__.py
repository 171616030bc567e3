"""``python -m spoonproof``."""

import sys

from spoonproof.cli import main

sys.exit(main())
