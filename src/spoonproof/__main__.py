"""``python -m spoonproof``."""

from spoonproof.cli import command

command()
