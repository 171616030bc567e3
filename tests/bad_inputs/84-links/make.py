"""Links out of the channel, to nowhere, and to themselves."""

from pathlib import Path


def make(folder: Path) -> None:
    (folder.parent / "secret.md").write_text("secret\n")
    (folder / "recipes" / "out.md").symlink_to(folder.parent / "secret.md")
    (folder / "recipes" / "gone.md").symlink_to(folder / "recipes" / "nowhere.md")
    (folder / "recipes" / "loop.md").symlink_to(folder / "recipes" / "loop.md")
    (folder / "recipes" / "everything").symlink_to("/")
