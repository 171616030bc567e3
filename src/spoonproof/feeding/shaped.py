"""Shapes that the steps make: small balls, rounds of a roll of mince, set jelly, food baked hard or on a skewer."""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.feeding.baby_steps import baby_text, only_family
from spoonproof.feeding.step_words import FLATTENED, JELLY_CUBES, MASHED_UP, ROLLED, SMALL_BALL
from spoonproof.model.recipe import Recipe, Step
from spoonproof.model.record import NamedTuple

_LOGS = re.compile(
    r"\b(?:shape|form|roll|mould|press|squeeze|mold)\w*\b[^.;]{0,60}"
    r"\b(?:logs?|sausages?|sausage[- ]shapes?|cigars?|cylinders?|skewers?|koft[ae]s?|kebabs?|kabobs?)\b",
    re.I,
)
_ROUNDS = re.compile(
    r"\b(?:slic|cut|chop)\w*\b[^.;]{0,40}\b(?:rounds|coins|discs|disks|circles|slices|chunks|bite[- ]size\w*)\b"
    r"|\b(?:slice|sliced) (?:the )?(?:koft[ae]s?|kebabs?|logs?|sausages?)\b(?! lengthways| lengthwise)",
    re.I,
)
_SKEWERED = re.compile(
    r"\b(?:on|onto|on to|around|round)\b[^.;]{0,20}"
    r"\b(?:skewers?|(?:cocktail|lolly|craft|kebab|bamboo) sticks?|tooth ?picks?|lemongrass stalks)\b",
    re.I,
)
_UNSKEWERED = re.compile(
    r"\b(?:off|from|out of)\b[^.;]{0,20}\b(?:skewers?|sticks?|picks?|stalks)\b"
    r"|\b(?:skewers?|sticks?|tooth ?picks?|stalks)\b[^.;]{0,12}\b(?:out|off|away)\b"
    r"|\b(?:remov|discard|pull|take|unthread|slide)\w*\b[^.;]{0,30}\b(?:skewers?|sticks?|tooth ?picks?|stalks)\b",
    re.I,
)

_BAKED_HARD = re.compile(
    r"\b(?:bak|oven|dry|dried|dehydrat)\w*\b[^.]{0,80}\b(?:rock[- ]hard|hard and dry|brittle|(?:they|it) snaps?"
    r"|until (?:very |quite )?(?:hard|crunchy))\b",
    re.I,
)


_CRISPED = re.compile(
    r"\b(?:bak|oven|roast|dry|dried|dehydrat)\w*\b[^.]{0,80}\b(?:dry and (?:very )?crisp|crisp and (?:very |quite )?dry"
    r"|crisp (?:right|all the way) through)\b",
    re.I,
)
_HARD_KINDS = frozenset({"hard-raw", "firm-raw", "hard-raw-unless-ripe", "crisp-raw"})


class Shape(NamedTuple):
    """A shape by the ``kind`` of the hazard tables, the ``words`` for it, and where a step makes it."""

    kind: str
    words: str
    step: Step
    text: str
    start: int
    end: int


def shapes(recipe: Recipe, kinds: frozenset[str], jelly: bool) -> Iterator[Shape]:
    """The shapes in the baby's bowl that no later step undoes. ``kinds`` are all that the bowl holds; ``jelly``:
    something in it sets."""
    steps = [(step, baby_text(step)) for step in recipe.steps if not only_family(step)]
    log = False
    for at, (step, text) in enumerate(steps):
        later = [text for _, text in steps[at + 1 :]]

        def undone(match: re.Match[str], pattern: re.Pattern[str], text: str = text, later: list[str] = later) -> bool:
            return any(pattern.search(words) for words in (text[match.end() :], *later))

        if (match := ROLLED.search(text)) and SMALL_BALL.search(text) and not undone(match, FLATTENED):
            yield Shape("rolled-ball", "small balls", step, text, match.start(), match.end())
        if jelly and (match := JELLY_CUBES.search(text)) and not undone(match, MASHED_UP):
            yield Shape("jelly-cube", "set jelly", step, text, match.start(), match.end())
        if log and (match := _ROUNDS.search(text)) and "lengthw" not in text.lower():
            yield Shape("rolled-ball", "minced meat in rounds", step, text, match.start(), match.end())
        crisped = _CRISPED.search(text) if kinds & _HARD_KINDS else None  # a meringue, crisp and dry, melts
        if match := _BAKED_HARD.search(text) or crisped:
            yield Shape("baked-hard", "food baked this hard", step, text, match.start(), match.end())
        if (match := _SKEWERED.search(text)) and not undone(match, _UNSKEWERED):
            yield Shape("skewer", match.group().split()[-1], step, text, match.start(), match.end())
            return
        log = log or ("fine-meat" in kinds and _LOGS.search(text) is not None)
