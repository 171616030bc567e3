"""``where``: every page, script and caption that says a thing, or rests on a register entry."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from spoonproof.commands import new_parser, open_channel

if TYPE_CHECKING:
    from spoonproof.folder import ChannelFolder
    from spoonproof.model.claim import JudgedClaim
    from spoonproof.model.text import Document, Passage, Span

CAPTIONS = (".vtt", ".srt", ".txt")


class Place(NamedTuple):
    """One place that was found, and why."""

    document: Document
    span: Span
    what: str


def parser() -> ArgumentParser:
    """The arguments of ``where``."""
    found = new_parser("where", "Find where a thing is said, or what rests on a register entry.", ("text", "jsonl"))
    found.add_argument("words", nargs="*", metavar="TEXT|ENTRY", help="words as said, or the id of an entry")
    found.add_argument("--changed", action="store_true", help="what rests on entries that are due to be checked again")
    return found


def run(options: Namespace) -> int:
    """Print the places; 1 when there are any, as with findings."""
    from spoonproof.cli import UsageError

    words = " ".join(options.words).strip()
    if bool(words) == options.changed:
        raise UsageError("give words or the id of an entry, or --changed")
    folder = open_channel(options)
    places = list(_resting_on(folder, _due(folder)) if options.changed else _places(folder, words))
    _print(options, places)
    return 1 if places else 0


def _print(options: Namespace, places: list[Place]) -> None:
    import json

    from spoonproof.report import lines, terminal

    if options.format == "jsonl":
        terminal.write(
            json.dumps({"file": p.document.path, **lines.place(p.document, p.span), "what": p.what}, ensure_ascii=False)
            for p in places
        )
        return
    for place in places:
        line, column = place.document.position(place.span.start)
        words = " ".join(place.document.at(place.span).split())
        print(f"{terminal.printable(place.document.path)}:{line}:{column}  {place.what}")
        print(f"    “{terminal.printable(words)}”")
    print(f"{len(places)} place{'s' if len(places) != 1 else ''}.")


def _places(folder: ChannelFolder, words: str) -> Iterator[Place]:
    if folder.knowledge.register.get(words) is not None:
        yield from _resting_on(folder, {words})
        return
    wanted = plain_words(words)
    for passage in _passages(folder):
        yield from _said(passage, wanted)


def plain_words(text: str) -> list[str]:
    """The words of a text, small letters, without marks: how statements are compared."""
    return [word for word, _, _ in _words(text)]


def _words(text: str) -> list[tuple[str, int, int]]:
    import re

    return [(m[0].lower().replace("’", "'"), m.start(), m.end()) for m in re.finditer(r"[\w%½¼¾]+(?:['’]\w+)?", text)]


def _said(passage: Passage, wanted: list[str]) -> Iterator[Place]:
    words = _words(passage.text)
    plain = [word for word, _, _ in words]
    for at in range(len(plain) - len(wanted) + 1):
        if plain[at : at + len(wanted)] == wanted:
            span = passage.span(words[at][1], words[at + len(wanted) - 1][2])
            yield Place(passage.document, span, f"said in {passage.where or passage.kind}")


def _passages(folder: ChannelFolder) -> Iterator[Passage]:
    """Every statement of the channel's recipes, drafts included, and of caption files in its folder."""
    from spoonproof.reading.files import read_document
    from spoonproof.reading.speech import read_statements

    for recipe in folder.recipes.values():
        yield from recipe.passages
    for path in sorted(folder.root.rglob("*")):
        hidden = any(part.startswith(".") for part in path.relative_to(folder.root).parts)
        if path.suffix.lower() in CAPTIONS and path.is_file() and not hidden:
            document, _ = read_document(path, folder.shown(path))
            if document is not None:
                yield from read_statements(document)[0]


def _due(folder: ChannelFolder) -> set[str]:
    from spoonproof.clock import today

    now = today().isoformat()
    return {entry.id for entry in folder.knowledge.register.entries if entry.due and entry.due <= now}


def _resting_on(folder: ChannelFolder, entries: set[str]) -> Iterator[Place]:
    for judged in _judged(folder):
        named = {judged.entry, *(answer.entry for answer in judged.allowed)}
        for entry in sorted(named & entries, key=str):
            passage = judged.claim.passage
            what = f"{passage.where or passage.kind} rests on {entry}"
            yield Place(passage.document, judged.claim.span, what)


def _judged(folder: ChannelFolder) -> Iterator[JudgedClaim]:
    for recipe in folder.recipes.values():
        yield from folder.dish(recipe).claims
