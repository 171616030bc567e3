"""``shoot``: the filming package of a recipe; its captions after the edit; a presenter's pace; a day of several."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import as_seen, ask_check, new_parser, open_channel, own_table

if TYPE_CHECKING:
    from spoonproof.dish import Dish
    from spoonproof.film.package import Package
    from spoonproof.folder import ChannelFolder
    from spoonproof.model.finding import Finding
    from spoonproof.model.text import Document

CORRECTIONS_SHOWN = 5


def parser() -> ArgumentParser:
    """The arguments of ``shoot``."""
    found = new_parser("shoot", "Make the filming package of a recipe.", ("text", "jsonl"))
    found.add_argument(
        "recipe",
        nargs="*",
        type=Path,
        metavar="RECIPE",
        help="several: also one shopping list, props and shots by set-up",
    )
    found.add_argument("--out", type=Path, metavar="DIR", help="where to (default: out/film in the channel)")
    found.add_argument(
        "--timed",
        type=Path,
        metavar="FILE",
        help="timed text of the finished film: keeps its timing, takes the words from the script, and checks what was "
        "said off script",
    )
    found.add_argument(
        "--calibrate",
        type=Path,
        metavar="FILE",
        help="captions of an earlier film: how fast its presenters speak, as lines for channel.yaml",
    )
    return found


def run(options: Namespace) -> int:
    """Write the package and say where it is; 1 when a recipe can't be read or words in it need mending."""
    from spoonproof.cli import UsageError

    if options.calibrate is not None:
        if options.recipe or options.timed is not None:
            raise UsageError("--calibrate measures a pace and makes no package: give it alone")
        return _calibrate(options.calibrate)
    if not options.recipe:
        raise UsageError("name a recipe to film, or captions to measure with --calibrate FILE")
    if options.timed is not None and len(options.recipe) != 1:
        raise UsageError("--timed FILE belongs to one recipe: name that one")
    return _shoot(options)


def _shoot(options: Namespace) -> int:
    import sys

    from spoonproof.cli import UsageError
    from spoonproof.film.package import after_edit, before_edit
    from spoonproof.report.terminal import printable

    folder = open_channel(options)
    out = options.out or folder.root / "out" / "film"
    older = _older(folder)
    code = 0
    found: list[Finding] = []
    dishes: list[Dish] = []
    for file in folder.select(options.recipe, drafts=True):
        if file.recipe is None:
            shown = printable(file.shown)
            print(f"{shown}: can't be read; {ask_check(options, shown)} says why", file=sys.stderr)
            code = 1
            continue
        dish = folder.dish(file.recipe)
        dishes.append(dish)
        if options.timed is not None:
            try:
                made = after_edit(dish, _document(options.timed), older)
            except ValueError as error:
                raise UsageError(str(error)) from None
        else:
            made = before_edit(dish, older)
        found += made.findings
        _say_where(options, _written(made, out / file.recipe.slug))
    if len(dishes) > 1:
        from spoonproof.film.day import day_files
        from spoonproof.film.package import Package

        _say_where(options, _written(Package(day_files(dishes)), out / "day"))
    _report(options, folder, found)
    return 1 if any(finding.level != "note" for finding in found) else code


def _written(made: Package, folder: Path) -> list[Path]:
    from spoonproof.cli import UsageError
    from spoonproof.film.package import write
    from spoonproof.swap import OutputRefused

    try:
        return write(made, folder)
    except OutputRefused as error:
        raise UsageError(str(error)) from None


def _say_where(options: Namespace, paths: Sequence[Path]) -> None:
    from spoonproof.report.terminal import printable

    if options.format == "text":
        for path in paths:
            print(printable(as_seen(path)))


def _report(options: Namespace, folder: ChannelFolder, found: Sequence[Finding]) -> None:
    import sys

    from spoonproof.report import terminal

    if options.format == "jsonl":
        from spoonproof.report.lines import finding_lines

        terminal.write(finding_lines(found))
    elif found:
        terminal.write(terminal.report(found, folder.knowledge.sources, terminal.wants_colour(sys.stdout)))


def _document(path: Path) -> Document:
    """A caption file. Raises UsageError when it can't be read."""
    from spoonproof.cli import UsageError
    from spoonproof.reading.files import read_document

    if not path.exists():
        raise UsageError(f"{path}: there is no such file")
    document, faults = read_document(path, path.as_posix())
    if document is None:
        raise UsageError(f"{path}: {' '.join(fault.message for fault in faults)}")
    return document


def _calibrate(path: Path) -> int:
    """Print the pace of each presenter as lines for channel.yaml; 1 when nobody speaks long enough."""
    import sys

    from spoonproof.film.pace import ENOUGH_WORDS, channel_lines, paces
    from spoonproof.report.terminal import printable, write

    found = paces(_document(path))
    write(printable(line) for line in channel_lines(found, path.name))
    few = [pace for pace in found if pace.words < ENOUGH_WORDS]
    for pace in few:
        who = printable(pace.presenter) or "this film"
        print(f"{pace.words} words of {who} are little to go by: a minute or more tells more.", file=sys.stderr)
    if not found:
        print(f"{path}: nobody speaks in it; give WebVTT or SubRip captions of a film.", file=sys.stderr)
    return 1 if len(few) == len(found) else 0


def _older(folder: ChannelFolder) -> list[str]:
    """Corrections of older films that are posted or pinned, the newest first, in words for a description."""
    from spoonproof.corrections import FILE, Corrections, read_corrections
    from spoonproof.hearing import hear
    from spoonproof.model.text import Document, Passage, Piece
    from spoonproof.report.mend import mend
    from spoonproof.site.pages import day

    rows = (own_table(folder.root / FILE, read_corrections) or Corrections()).rows
    judge = folder.knowledge.judge_without_dish(folder.channel, (), None)
    lines = []
    for row in sorted((row for row in rows if row.state != "drafted"), key=lambda row: row.since, reverse=True):
        document = Document(row.file, row.statement)
        passage = Passage(row.statement, document, (Piece(0, 0, len(row.statement)),), "speech")
        judged = next(iter(hear([passage], folder.knowledge, judge)), None)
        place = f"{row.file}, {row.at}" if row.at else row.file
        plain = f"Correction to an earlier film ({place}): the words are under that film."
        texts = mend(judged, (), folder.knowledge.sources, day(row.since)) if judged is not None else None
        lines.append(texts.description if texts is not None and texts.description else plain)
    return lines[:CORRECTIONS_SHOWN]
