"""Sentences that take a caution back: coaxing, leaving a baby alone, food left standing, no doctor needed."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import cast

from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.told_patterns import Classes, Patterns
from spoonproof.feeding.turned import sentence_of, turned
from spoonproof.feeding.words import MINE
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.record import dataclass
from spoonproof.model.text import Passage, Span

_LEVELS: dict[str, Level] = {"error": "error", "warning": "warning", "note": "note"}


@dataclass(frozen=True, slots=True)
class Contradiction:
    """One statement against a caution: ``caution`` is its id ("" where no caution says it), ``row`` the table's row,
    ``start`` and ``end`` its words in the passage."""

    caution: str
    level: Level
    why: str
    remedy: str
    start: int
    end: int
    source: SourceRef
    passage: Passage
    row: str

    @property
    def span(self) -> Span:
        """The words in the passage's document."""
        return self.passage.span(self.start, self.end)

    @property
    def message(self) -> str:
        """The words, and what is wrong with them."""
        return f"“{self.passage.text[self.start : self.end]}”: {self.why}"


def contradictions(passages: Iterable[Passage], tables: FeedingTables) -> list[Contradiction]:
    """Every statement of ``passages`` that contradicts a caution; those marked ``leave`` and those turned
    round in their own clause ("never leave her alone") are none."""
    rows = tables.by_id("contradictions")
    patterns = _patterns(tables)
    found: list[Contradiction] = []
    for passage in passages:
        if passage.leave is not None or passage.kind == "shows":
            continue
        for hit in patterns.find(passage.text):
            holds = _HOLDS_WHERE.get(hit.value)
            if passage.kind in ("step", "title") and hit.value in _OF_FOODS:
                continue
            if turned(passage.text, hit, tables) or (
                holds is not None and not holds(passage.text[slice(*sentence_of(passage.text, hit))])
            ):
                continue
            row = rows[hit.value]
            last = found[-1] if found and found[-1].passage is passage else None
            if last and row.text("caution") and last.caution == row.text("caution") and hit.start < last.end:
                continue  # another row has told it
            found.append(
                Contradiction(
                    row.text("caution"),
                    _LEVELS.get(row.text("level"), "warning"),
                    row.text("message"),
                    row.text("remedy"),
                    hit.start,
                    hit.end,
                    tables.source(row),
                    passage,
                    hit.value,
                )
            )
    return found


_OF_FOODS = frozenset({"beans-unboiled", "bone-to-gnaw", "milk-too-soon", "frozen-fruit"})
"""Rows on foods, for which a dish's own title and steps are judged by what the dish is made of."""


def _patterns(tables: FeedingTables) -> Patterns:
    """The phrases of the table, spelled out once."""
    if "contradictions" not in tables.spelled_out:
        rows = tables.by_id("contradictions")
        listed = tables.by_id("told_words")
        classes = Classes(
            {key: row.items("words") for key, row in listed.items()},
            {key: row.items("but") for key, row in listed.items()},
            _names_by_kind(tables),
        )
        tables.spelled_out["contradictions"] = Patterns(
            {key: row.items("phrases") for key, row in rows.items()}, classes
        )
    return cast("Patterns", tables.spelled_out["contradictions"])


def _names_by_kind(tables: FeedingTables) -> Mapping[str, Sequence[str]]:
    """What the foods of each kind are called; "food" is any of them."""
    found: dict[str, list[str]] = {}
    for key, row in tables.by_id("feeding_foods").items():
        names = [name for name in row.items("names") if not name.startswith("=")]
        for kind in (*tables.kinds[key], "food"):
            found.setdefault(kind, []).extend(names)
    return found


_FOODS_ALONE = re.compile(
    r"\b(?!(?:twins|babies|kids|boys|girls|toddlers|children|ones|eats|munches|nibbles|chews|feeds|sits|snacks"
    r"|plays|has"
    r"|goes|drinks|finishes|sucks|leaves|stays)\b)\w+s (?:are (?:\w+ ){0,2})?(?:on their own|by themselves)\b",
    re.I,
)
"""A food with nothing beside it, and no child: "berries on their own"."""
_ADULT_LIES = re.compile(
    r"\b(?:grandfather|grandad|grandpa|grandmother|gran|granny|grandma|nan|nana|dad|father|mum|mother|husband"
    r"|wife|uncle"
    r"|aunt|auntie|dog|cat) (?:\w+ ){0,2}(?:lay|lies|lie|lying|lean\w*|loll\w*|sprawl\w*|loung\w*|slouch\w*"
    r"|dozes?|nods?)"
    r"\b(?! (?:him|her|them|the baby)\b)",
    re.I,
)
_GOES_OFF = re.compile(r"\b(?:while|whilst|so|as|when) (?:i|we|you|mum|dad)\b(?! (?:sit|stay|watch|eat|have|am))", re.I)
_FROZEN = re.compile(r"\b(?:freez|froze)", re.I)
_BABY = re.compile(r"\b(?:s?he|him|his|hers?|bab(?:y|ies)|toddlers?|little ones?)\b", re.I)
_DONE = re.compile(
    r"\b(?:cooked|through|well[- ]done|longer|back (?:in|under|on)|but (?:not )?(?:hers|his|theirs|for|the|i|we)|while"
    r"|no pink)\b",
    re.I,
)


def _not_frozen(said: str) -> bool:
    """Whether a sentence says nothing of the freezer, where a week is no long time."""
    return _FROZEN.search(said) is None


def _leaves_a_child(said: str) -> bool:
    """Whether it is a child who is by itself, not a food."""
    return _FOODS_ALONE.search(said) is None or _GOES_OFF.search(said) is not None


def _no_adult_lies(said: str) -> bool:
    """Whether it is no grown-up who lies back: "my grandfather lay in his armchair and ate"."""
    return _ADULT_LIES.search(said) is None


def _for_the_baby(said: str) -> bool:
    """Whether the baby too eats what a sentence likes pink: "and so does he", not "but hers goes back in"."""
    return _BABY.search(said) is not None and _DONE.search(said) is None


_NO_DISH = re.compile(
    r"\b(?:basil|herbs?|parsley|mint|cress|plants?|seeds?|sprout\w*|dough|loaf|loaves|bread|yeast|starter"
    r"|soak\w*|ripen\w*|ripe|unripe|bananas?|avocados?|butter to soften|kettle|clock|radio|jug of water|bowl of fruit"
    r"|fruit bowl|tins?)\b",
    re.I,
)
_THROWN = re.compile(
    rf"\b(?:bin|bins|compost|caddy|hens?|chickens|dogs?|cats?|birds|{MINE}"
    r"|my (?:own )?(?:mouth|plate|lunch|supper|tea)"
    r"|throw\w*|thrown)\b",
    re.I,
)
_NOT_THROWN = re.compile(
    r"\b(?:never|not|no|rather than|instead of|why|\w+n['’]t)\b[^,.;:]{0,16}\b(?:throw\w*|bin|compost)\b", re.I
)


def _of_a_dish(said: str) -> bool:
    """Whether it is food once cooked that stands there, not a herb in its pot, dough that rises or beans that soak."""
    return _NO_DISH.search(said) is None


def _stands_for_the_baby(said: str) -> bool:
    """Whether it is a dish that stands there, and none that is thrown away."""
    return _of_a_dish(said) and _not_thrown(said)


def _not_thrown(said: str) -> bool:
    """Whether what was left is kept for the baby, not thrown away or eaten by somebody else."""
    return _THROWN.search(_NOT_THROWN.sub(" ", said)) is None


_TAKEN_BACK = re.compile(r"\b(?:never|not|no|after|fried|baked|cooked|far too|too hot|wait|cool\w*|\w+n['’]t)\b", re.I)


def _names_the_baby(said: str) -> bool:
    return _BABY.search(said) is not None


def _names_the_baby_alone(said: str) -> bool:
    """Whether the baby gets it, and nothing in the sentence takes that back."""
    return _names_the_baby(said) and _TAKEN_BACK.search(said) is None


_HOLDS_WHERE: Mapping[str, Callable[[str], bool]] = {
    "kept-long": _not_frozen,
    "leave-alone": _leaves_a_child,
    "lying-back": _no_adult_lies,
    "left-rare": _for_the_baby,
    "left-out": _stands_for_the_baby,
    "reheat-again": _not_thrown,
    "raw-batter": _names_the_baby_alone,
}
"""Rows whose phrases are a contradiction only in some sentences, with what is asked of the sentence."""
