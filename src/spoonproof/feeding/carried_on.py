"""Sentences that speak on of the food of one before: "Take the grapes. They were on offer. She eats them whole."

Such a sentence is read once more with the food's name where it says "them" or "it", so that all that is asked of one
sentence (who gets it, whether it is turned round, cut or kept for later) is asked of this one too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from spoonproof.feeding.hers_first import beside_hers
from spoonproof.feeding.named import likened
from spoonproof.feeding.recipients import UNCUT, kept_back
from spoonproof.feeding.said_otherwise import said_otherwise
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.who_eats import NO_CUT_HELPS
from spoonproof.feeding.words import Found
from spoonproof.model.record import NamedTuple

_PORTION = (
    r"(?:a|an|the|his|her|their|two|three|one) (?:(?:good|big|small|little|tiny|own|first|whole"
    r"|few) )?(?:bits?|little|licks?"
    r"|sips?|tastes?|spoon(?:ful)?s?|handfuls?|fistfuls?|mouthfuls?|pieces?|slices?|share|bites?|sticks?|squares?)"
    r"|as much|the (?:bowl|bag|packet|tub|tin|lot)"
)
_MANY = re.compile(
    r"\bthe (?:pits|stones|pips)\b"
    r"|\b(?:them|these|those|they|one|some|a few|each|both|the \w+ ones"
    rf"|{_PORTION})\b(?! (?:of|who|that|are the|after|by)\b)",
    re.I,
)
_ONE = re.compile(rf"\b(?:it|that|this|some|{_PORTION})\b(?! (?:of|is|was|way|['’]s)\b)", re.I)
_EITHER = re.compile(rf"{_ONE.pattern}|{_MANY.pattern}", re.I)
"""What speaks on of "edamame", one or many."""
_MADE_SAFE = re.compile(
    r"\b(?:quarter|halv|mash|squash|flatten|grat|ground|grind|chop|crush|blend|cut(?= )|pur[ée]+|steam|boil|cook|bak"
    r"|roast|stew|poach|shred|slic|melt|smash|thin(?:ned|ly)|sieve|strain|pasteuris|pasteuriz|simmer)\w*\b",
    re.I,
)
_NEXT_TO = re.compile(
    r"\b(?:next to|beside|behind|near|under|above|between) (?:the|my|our|his|her|your) (?:\w+ )?$", re.I
)
"""Words before a food by which something else is found: "next to the tea bags"."""
_FADES = 6
"""Sentences after which a food that nobody names is forgotten."""
_SILENT = 3
_REST_OF_GAP = 3
"""Characters of marks and space that part two sentences of one passage."""


class Carried(NamedTuple):
    """The second sentence as ``said`` with the food's name put in, ``hit`` there; ``first`` is the food's own place,
    ``begins`` and ``ends`` are where the two sentences do, ``pointing`` are the words for the food and ``within`` is
    what is told: from the food on, or where other sentences lie between, the second alone; all in the text given."""

    said: str
    hit: Found
    first: Found
    begins: int
    ends: int
    pointing: tuple[int, int]
    within: tuple[int, int]


def carried_on(text: str, sentences: Sequence[tuple[int, int]], tables: FeedingTables) -> Iterator[Carried]:
    """Every food of a sentence that those behind it speak on of without its name."""
    for at, (start, end) in enumerate(sentences):
        said = text[start:end]
        for food in (*tables.phrases.find(said), *said_otherwise(said, tables)):
            if likened(said, food):
                continue
            hers = beside_hers(said, food, tables, {})
            if not (kept_back(said, food) or _NEXT_TO.search(said[: food.start])) and (
                hers is None or hers.eaters == "baby"
            ):
                yield from _spoken_on(text, sentences[at:], food, tables)


def _spoken_on(
    text: str, sentences: Sequence[tuple[int, int]], food: Found, tables: FeedingTables
) -> Iterator[Carried]:
    """The sentences behind the first that speak on of its ``food``: none after it was made safe or another one named,
    or behind three in a row that say nothing of it."""
    start = sentences[0][0]
    name = text[start + food.start : start + food.end]
    many = name.lower().endswith("s") and not name.lower().endswith("ss")
    silent = 0
    in_vain = bool(tables.kinds[food.value] & NO_CUT_HELPS)
    for (begun, ended), (following, stop) in pairwise(sentences[: _FADES + 1]):
        if following - ended > _REST_OF_GAP or (not in_vain and _MADE_SAFE.search(UNCUT.sub(" ", text[begun:ended]))):
            return
        more = text[following:stop]
        named = tables.phrases.find(more, negated=True)
        pointing = (_MANY if many else _EITHER if "big-bean" in tables.kinds[food.value] else _ONE).search(more)
        if named and (pointing is None or any(one.start < pointing.start() for one in named)):
            return
        silent = 0 if pointing else silent + 1
        if silent == _SILENT:
            return
        if pointing is None:
            continue
        part = pointing.group().lower().startswith("the ")  # "he spits the pits"
        at = pointing.end() + 4 if part else pointing.start()
        uncut = " uncut" if UNCUT.search(text, start, following) else ""
        put_in = (f"{more[: pointing.end()]} of " if part else more[:at]) + name + more[pointing.end() :] + uncut
        yield Carried(
            put_in,
            food._replace(start=at, end=at + len(name)),
            food._replace(start=start + food.start, end=start + food.end),
            start,
            stop,
            (following + pointing.start(), following + pointing.end()),
            (start + food.start if begun == start else following, stop),
        )
