"""``where``: every page, script, caption and social text that says a thing, or rests on a register entry."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import new_parser, open_channel, own_table
from spoonproof.model.record import NamedTuple

if TYPE_CHECKING:
    from spoonproof.claims.entries import Entry
    from spoonproof.folder import ChannelFolder
    from spoonproof.model.claim import Claim, JudgedClaim
    from spoonproof.model.text import Document, Passage, Span

CAPTIONS = (".vtt", ".srt", ".txt")
SEEN = "claims-seen.csv"
NO_SPEECH = frozenset("benchmarks build claims dist node_modules out shared site src tests".split())
"""Folders at the root that hold tables, code or what was built from the rest, and nothing that anybody says."""


class Place(NamedTuple):
    """One place that was found, and why; ``words`` as said, with their clause and without what stands between cues."""

    document: Document
    span: Span
    what: str
    words: str


def parser() -> ArgumentParser:
    """The arguments of ``where``."""
    found = new_parser("where", "Find where a thing is said, or what rests on a register entry.", ("text", "jsonl"))
    found.add_argument("words", nargs="*", metavar="TEXT|ENTRY", help="words as said, or the id of an entry")
    found.add_argument(
        "--changed",
        action="store_true",
        help=f"what rests on entries that are due to be checked again, or are not as {SEEN} remembers them",
    )
    found.add_argument(
        "--seen",
        action="store_true",
        help=f"with --changed: after printing, remember the entries as they are now in {SEEN} at the channel's root",
    )
    return found


def run(options: Namespace) -> int:
    """Print the places; 1 when there are any, as with findings."""
    from spoonproof.cli import UsageError

    words = " ".join(options.words).strip()
    if bool(words) == options.changed:
        raise UsageError("give words or the id of an entry, or --changed")
    if options.seen and not options.changed:
        raise UsageError("--seen goes with --changed")
    folder = open_channel(options)
    _tell_unread(folder)
    if not options.changed:
        places = list(_places(folder, words))
        _print(options, places)
        if not places and options.format == "text":
            print(_looked_through(folder, words))
        return 1 if places else 0
    judged = list(_judged(folder))
    places = list(_changed(folder, judged))
    _print(options, places)
    if options.seen:
        _remember(folder)
    elif not (folder.root / SEEN).exists() and options.format == "text":
        print(f"There is no {SEEN} yet: only what is due was looked for. --changed --seen starts one.")
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
        print(f"{terminal.printable(place.document.path)}:{line}:{column}  {place.what}")
        print(f"    {terminal.printable(place.words)}")
    print(f"{len(places)} place{'s' if len(places) != 1 else ''}." if places else "Found nowhere.")


def _tell_unread(folder: ChannelFolder) -> None:
    """Say which recipes could not be looked through; silence would pass for "nobody says it there"."""
    import sys

    from spoonproof.report.terminal import printable

    for path in folder.recipe_paths:
        read = folder.read(path)
        if read.recipe is None:
            print(
                f"{printable(read.shown)}: can't be read, and was not looked through; check says why", file=sys.stderr
            )


def _looked_through(folder: ChannelFolder, words: str) -> str:
    """What was looked through in vain, and the entries that were perhaps meant."""
    from difflib import get_close_matches

    recipes, captions = len(folder.recipes), len(_caption_files(folder.root))
    told = (
        f"Looked through {recipes} recipe{'s' if recipes != 1 else ''} "
        f"and {captions} file{'s' if captions != 1 else ''} of captions or text."
    )
    near: list[str] = []
    if folder.knowledge.register.get(words) is not None:
        told += f" {words} is an entry of the register; nothing said here rests on it."
    elif "-" in words and " " not in words:
        near = get_close_matches(words, [entry.id for entry in folder.knowledge.register.entries], 3, 0.75)
        told += f" No entry is called {words}" + (f"; perhaps {', '.join(near)}." if near else ".")
    return told


# --- by words, or by entry --------------------------------------------------------------------------------------------


def _places(folder: ChannelFolder, words: str) -> Iterator[Place]:
    from spoonproof.cli import UsageError

    if folder.knowledge.register.get(words) is not None:
        yield from _resting_on(_judged(folder), {words: "rests on"})
        return
    wanted = plain_words(words)
    if not wanted:
        raise UsageError("there is no word in that to look for")
    said = [place for passage in _passages(folder) for place in _said(passage, wanted)]
    yield from said
    others = list(_in_other_words(folder, words, said))
    yield from others
    if not said and not others and len(wanted) > 1:
        yield from (place for passage in _passages(folder) if (place := _nearly_said(passage, wanted)))


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
            yield _place(passage, words[at][1], words[at + len(wanted) - 1][2], "said {}")


def _nearly_said(passage: Passage, wanted: list[str]) -> Place | None:
    """The first place where all the words stand close together, in any order and whatever their endings."""
    words = _words(passage.text)
    stems = [_stem(word) for word, _, _ in words]
    looked_for = {_stem(word) for word in wanted}
    last: dict[str, int] = {}
    for at, stem in enumerate(stems):
        if stem not in looked_for:
            continue
        last[stem] = at
        first = min(last.values())
        if len(last) == len(looked_for) and at - first < len(wanted) + _BETWEEN:
            return _place(passage, words[first][1], words[at][2], "nearly said {}")
    return None


_BETWEEN = 6
"""Words that may stand between those looked for."""


def _stem(word: str) -> str:
    """A word without its commonest endings, and never shorter than three letters."""
    for ending in ("ing", "ies", "ed", "es", "ly", "s", "y", "e"):
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            return word[: -len(ending)]
    return word


def _place(passage: Passage, start: int, end: int, what: str) -> Place:
    """A place in a passage; ``{}`` in ``what`` is where it is."""
    from spoonproof.report.quoting import in_its_clause

    told = what.format(_whereabouts(passage, start))
    return Place(passage.document, passage.span(start, end), told, in_its_clause(passage.text, start, end))


def _whereabouts(passage: Passage, start: int) -> str:
    """The place in words: "at 0:04" where it is timed, else "in step 3"."""
    from spoonproof.report.heard import timecode

    seconds = passage.seconds(start, start + 1)
    if seconds:
        return f"at {timecode(seconds[0])}"
    if passage.kind == "speech":
        return f"in line {passage.document.position(passage.span(start, start + 1).start)[0]}"
    return f"in {passage.where or passage.kind}"


def _in_other_words(folder: ChannelFolder, words: str, said: list[Place]) -> Iterator[Place]:
    """Statements that claim the same of the same thing as the words do, where the words claim anything."""
    from spoonproof.claims.find import find_claims
    from spoonproof.model.text import Document
    from spoonproof.reading.speech import read_statements

    # "Boosts immunity" names no food: whoever says it of anything is meant.
    asked = find_claims(read_statements(Document("(asked).txt", words))[0], folder.knowledge.lexicon)
    wanted = {_meaning(claim) for claim in asked} - {None}
    of_anything = {(c.kind, c.effect) for c in asked if c.effect and not c.subjects and _meaning(c) is None}
    if not wanted and not of_anything:
        return
    for judged in _judged(folder):
        claim = judged.claim
        document, span = claim.passage.document, claim.span
        alike = _meaning(claim) in wanted or (claim.kind, claim.effect) in of_anything
        if alike and not any(
            place.document is document and place.span.start < span.end and span.start < place.span.end for place in said
        ):
            yield _place(claim.passage, claim.start, claim.end, "says so in other words {}")


def _meaning(claim: Claim) -> tuple[object, ...] | None:
    """What is claimed of what; None where that is not known well enough to compare."""
    about = frozenset({*claim.foods, *claim.nutrients, *claim.allergens})
    if not about or not (claim.effect or claim.level or claim.number):
        return None
    return claim.kind, about, claim.effect, claim.level, claim.polarity in ("denies", "refutes"), claim.number


# --- what the channel says --------------------------------------------------------------------------------------------


def _passages(folder: ChannelFolder) -> Iterator[Passage]:
    """Every statement of the channel's recipes, drafts included, and of caption files in its folder."""
    for recipe in folder.recipes.values():
        yield from recipe.passages
    for _, passages in _captions(folder):
        yield from passages


def _captions(folder: ChannelFolder) -> Iterator[tuple[Path, list[Passage]]]:
    from spoonproof.reading.files import read_document
    from spoonproof.reading.speech import read_statements

    for path in _caption_files(folder.root):
        document, _ = read_document(path, folder.shown(path))
        if document is not None:
            yield path, read_statements(document)[0]


def _caption_files(root: Path) -> list[Path]:
    """Captions and transcripts under the channel's root; hidden folders and those that hold no speech left out."""
    import os

    from spoonproof.reading.files import unless_missing

    found = []
    for at, folders, files in os.walk(root, onerror=unless_missing):
        top = Path(at) == root
        folders[:] = [name for name in folders if not name.startswith(".") and not (top and name in NO_SPEECH)]
        found += [Path(at) / name for name in files if Path(name).suffix.lower() in CAPTIONS and name[0] != "."]
    return sorted(path for path in found if path.is_file())


def _judged(folder: ChannelFolder) -> Iterator[JudgedClaim]:
    """Every claim of recipes, and of captions: those that bear a recipe's name are judged on its dish."""
    from spoonproof.claims.find import find_claims

    known = folder.knowledge
    for recipe in folder.recipes.values():
        yield from folder.dish(recipe).claims
    alone = known.judge_without_dish(folder.channel, (), None)
    for path, passages in _captions(folder):
        judging = judge_of_dish(folder, path) or alone
        for claim in find_claims(passages, known.lexicon):
            yield judging(claim)


def judge_of_dish(folder: ChannelFolder, path: Path) -> Callable[[Claim], JudgedClaim] | None:
    """A judge by the figures of the dish whose name a file of captions bears ("pear-mash.en.vtt"); None for others."""
    owner = folder.recipes.get(path.name.split(".")[0])
    return folder.dish(owner).judge() if owner is not None else None


def _entries_of(judged: JudgedClaim) -> list[str]:
    named = {judged.entry, *(answer.entry for answer in judged.allowed)}
    return sorted(entry for entry in named if entry is not None)


def _resting_on(judged: Iterable[JudgedClaim], why: Mapping[str, str]) -> Iterator[Place]:
    for one in judged:
        passage = one.claim.passage
        for entry in _entries_of(one):
            if entry in why:
                yield _place(passage, one.claim.start, one.claim.end, f"{{}}: {why[entry]} {entry}")


# --- what has changed -------------------------------------------------------------------------------------------------


def _changed(folder: ChannelFolder, judged: list[JudgedClaim]) -> Iterator[Place]:
    """What rests on an entry that is due, and what rests on one that is not as it was when last seen."""
    from spoonproof.clock import today

    register = folder.knowledge.register
    why = {entry.id: f"rests, due since {entry.due}, on" for entry in register.due(today().isoformat())}
    seen = _seen(folder)
    now = {entry.id: fingerprint(entry) for entry in register.entries}
    for entry, before in seen.items():
        if entry in now and before != now[entry]:
            why[entry] = "rests on what has changed:"
    yield from _resting_on(judged, why)
    if seen:
        # Where an entry was taken out, its statements now rest on another, or on none.
        yield from _resting_on(judged, {entry: "rests on what is new:" for entry in now if entry not in seen})


def fingerprint(entry: Entry) -> str:
    """16 hexadecimal digits that change when what the entry says changes; not with its place or its dates."""
    import hashlib
    from dataclasses import fields

    outside = ("document", "span", "checked", "due")
    said = [(field.name, repr(getattr(entry, field.name))) for field in fields(entry) if field.name not in outside]
    return hashlib.sha256(repr(said).encode("utf-8")).hexdigest()[:16]


def _seen(folder: ChannelFolder) -> dict[str, str]:
    """Fingerprints by entry as they were when last seen; none where there is no such file yet."""
    from spoonproof.corrections import csv_rows

    def read(text: str) -> dict[str, str]:
        rows = csv_rows(text, SEEN, ("entry", "fingerprint"))
        return {cells["entry"]: cells["fingerprint"] for _, cells in rows}

    return own_table(folder.root / SEEN, read) or {}


def _remember(folder: ChannelFolder) -> None:
    """Write down how every entry is now."""
    from spoonproof.clock import today
    from spoonproof.reading.files import write_atomically

    day = today().isoformat()
    entries = sorted(folder.knowledge.register.entries, key=lambda entry: entry.id)
    rows = ["entry,fingerprint,on", *(f"{entry.id},{fingerprint(entry)},{day}" for entry in entries)]
    write_atomically(folder.root / SEEN, ("\n".join(rows) + "\n").encode("utf-8"))
