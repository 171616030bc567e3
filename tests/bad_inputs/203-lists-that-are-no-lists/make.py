"""Lists and captions that are pipes, no text, or figures without end."""

import os
import shutil
from pathlib import Path


def make(folder: Path) -> None:
    shutil.copytree(folder / "recipes", folder / "third" / "recipes")
    shutil.copy(folder / "channel.yaml", folder / "third")
    os.mkfifo(folder / "corrections.csv")
    os.mkfifo(folder / "claims-seen.csv")
    os.mkfifo(folder / "timed.vtt")
    os.mkfifo(folder / "second" / "worse" / "views.csv")
