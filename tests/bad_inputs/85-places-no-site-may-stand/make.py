"""A link where the site is to stand."""

from pathlib import Path


def make(place: Path) -> None:
    (place / "linked").symlink_to("somebodys")
