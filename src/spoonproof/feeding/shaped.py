"""Shapes that the steps make: small balls, rounds of a roll of mince, set jelly, food baked hard or on a skewer."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from spoonproof.feeding.baby_steps import baby_text, only_family
from spoonproof.feeding.step_words import FLATTENED, JELLY_CUBES, MASHED_UP, ROLLED, SMALL_BALL
from spoonproof.feeding.words import keys
from spoonproof.model.recipe import Recipe, Step
from spoonproof.model.record import NamedTuple

_LOGS = re.compile(
    r"\b(?:shape|form|roll|mould|press|squeeze|mold)\w*\b[^.;]{0,60}"
    r"\b(?:logs?|sausages?|sausage[- ]shapes?|cigars?|cylinders?|skewers?|koft[ae]s?|kebabs?|kabobs?)\b",
    re.I,
)
_ROUNDS = re.compile(
    r"\b(?:slic|cut|chop)\w*\b(?:[^.;]|\.\d){0,40}"
    r"\b(?:rounds|coins|discs|disks|circles|slices|chunks|bite[- ]size\w*)\b"
    r"|\b(?:slice|sliced) (?:the )?(?:koft[ae]s?|kebabs?|logs?|sausages?)\b(?! lengthways| lengthwise)",
    re.I,
)
_STICKS = r"(?:skewers?|(?:cocktail|lolly|craft|kebab|bamboo) sticks?|tooth ?picks?|lemongrass stalks)"
_SKEWERED = re.compile(
    rf"\b(?:on|onto|on to|around|round)\b[^.;]{{0,20}}\b{_STICKS}\b"
    # "pin each roll with a cocktail stick", but not "until a skewer comes out clean"
    rf"|\b(?:pin|fasten|secure|fix|spear|hold|close|skewer)\w*\b[^.;]{{0,40}}\b(?:with|using|by|on)\b[^.;]{{0,20}}\b{_STICKS}\b",
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
    r"|until [^.;]{0,30}(?<!no )(?<!not )(?<!longer )\b(?:hard|crunchy|snap|snaps)(?![- ]boil))\b",
    re.I,
)


_CRISPED = re.compile(
    r"\b(?:bak|oven|roast|dry|dried|dehydrat)\w*\b[^.]{0,80}\b(?:dry and (?:very )?crisp|crisp and (?:very |quite )?dry"
    r"|crisp (?:right|all the way) through)\b",
    re.I,
)
# a bean or a chickpea that is crisp is a hard little ball; a roast potato that is crisp is soft inside
_CRUNCHED = re.compile(
    r"\b(?:bak|oven|roast|dry|dried|dehydrat|air|fry|fri|toast)\w*\b[^.]{0,80}\b(?:crunchy|crisp(?:y|ed)?)\b", re.I
)
_PULSES = frozenset({"big-bean", "pea"})
_HARD_KINDS = frozenset({"hard-raw", "firm-raw", "hard-raw-unless-ripe", "crisp-raw"})


class Shape(NamedTuple):
    """A shape by the ``kind`` of the hazard tables, the ``words`` for it, and where a step makes it."""

    kind: str
    words: str
    step: Step
    text: str
    start: int
    end: int


def shapes(recipe: Recipe, held: Mapping[int, frozenset[str]], jelly: bool) -> Iterator[Shape]:
    """The shapes in the baby's bowl that no later step undoes. ``held``: the kinds of each line that the bowl holds;
    ``jelly``: something in it sets."""
    kinds = frozenset[str]().union(*held.values())
    pulses = frozenset[str]().union(*(keys(recipe.foods[at].name) for at, one in held.items() if one & _PULSES))
    others = frozenset[str]().union(*(keys(recipe.foods[at].name) for at in held)) - pulses
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
        about = keys(text)
        crunched = _CRUNCHED.search(text) if pulses & about or (pulses and not others & about) else None
        if crunched is not None and undone(crunched, MASHED_UP):
            crunched = None
        if match := _BAKED_HARD.search(text) or crisped or crunched:
            yield Shape("baked-hard", "food baked this hard", step, text, match.start(), match.end())
        if (match := _SKEWERED.search(text)) and not undone(match, _UNSKEWERED):
            yield Shape("skewer", match.group().split()[-1], step, text, match.start(), match.end())
            return
        log = log or ("fine-meat" in kinds and _LOGS.search(text) is not None)
