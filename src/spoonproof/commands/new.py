"""``new``: a channel or a recipe to start from; what is there already is never overwritten."""

from __future__ import annotations

import re
import unicodedata
from argparse import ArgumentParser, Namespace
from pathlib import Path

from spoonproof.commands import new_parser, open_channel

LONGEST = 200
"""Characters of a name."""


def parser() -> ArgumentParser:
    """The arguments of ``new``."""
    found = new_parser("new", "Start a channel or a recipe.")
    found.add_argument("what", metavar="channel|recipe", choices=("channel", "recipe"), help="which of the two")
    found.add_argument("name", metavar="NAME", help="its name, in ordinary words")
    return found


def slug_of(name: str) -> str:
    """A name as a file name: small letters, digits and hyphens. Raises UsageError where it can't be one."""
    from spoonproof.cli import UsageError
    from spoonproof.reading.slugs import slug_problem

    if len(name) > LONGEST:
        raise UsageError(f"the name has {len(name)} characters; {LONGEST} are enough")
    plain = unicodedata.normalize("NFKD", Path(name).name).encode("ascii", "ignore").decode()
    slug = re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-")[:80].strip("-")
    if not slug:
        raise UsageError(f"{name!r} has no letters to make a file name of")
    if problem := slug_problem(slug):
        raise UsageError(f"{slug} can't be the name of a file: {problem}")
    return slug


def title_of(name: str) -> str:
    """A name as a title: hyphens become spaces and the first letter a capital. Bytes that were no text are left out."""
    name = name.encode("utf-8", "ignore").decode()
    words = Path(name).name.replace("-", " ").replace("_", " ").strip()
    return words[:1].upper() + words[1:]


def run(options: Namespace) -> int:
    """Write the start and say what comes next."""
    return _new_channel(options) if options.what == "channel" else _new_recipe(options)


def _new_channel(options: Namespace) -> int:
    from spoonproof.folder import CHANNEL_FILE
    from spoonproof.starters import CHANNEL, RECIPE

    root = Path(options.channel or ".") / Path(options.name).parent / slug_of(options.name)
    _refuse_existing(root / CHANNEL_FILE)
    title = _quoted(title_of(options.name))
    _write(root / CHANNEL_FILE, CHANNEL.format(title=title, slug=slug_of(options.name)))
    first = root / "recipes" / "potato-and-courgette-mash.md"
    if not first.exists():
        _write(first, RECIPE.format(title="Potato and courgette mash"))
    print(f"Made {root}/ with one recipe to write over. Next:\n  cd {root}\n  spoonproof check")
    return 0


def _new_recipe(options: Namespace) -> int:
    from spoonproof.cli import UsageError
    from spoonproof.starters import RECIPE

    if re.search(r"[/\\]|^\.", options.name):
        raise UsageError(f"{options.name!r} is a path: give the recipe's name alone, it goes into recipes/")
    folder = open_channel(options)
    path = folder.root / "recipes" / f"{slug_of(options.name)}.md"
    _refuse_existing(path)
    _write(path, RECIPE.format(title=_quoted(title_of(options.name))))
    print(f"Made {folder.shown(path)}. Write your own over it, then: spoonproof check {folder.shown(path)}")
    return 0


def _quoted(title: str) -> str:
    """``title`` as YAML text: quoted when plain text would be read as something else."""
    if re.fullmatch(r"[^\W\d_][\w ,.()'’&-]*", title) and ": " not in title and " #" not in title:
        return title
    return '"' + title.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _refuse_existing(path: Path) -> None:
    if path.exists():
        raise _already(path)


def _already(path: Path) -> Exception:
    from spoonproof.cli import UsageError

    return UsageError(f"{path} is there already; nothing was changed")


def _write(path: Path, text: str) -> None:
    from spoonproof.reading.files import write_atomically

    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        write_atomically(path, text.encode("utf-8"), new=True)
    except FileExistsError:
        raise _already(path) from None
