"""Sentences that take a caution back: coaxing, leaving a baby alone, food left standing, no doctor needed."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import pairwise
from typing import cast

from spoonproof.feeding.disowned import disowned
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.told_patterns import END, Classes, Hit, Patterns
from spoonproof.feeding.words import MINE, words
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.record import dataclass
from spoonproof.model.text import Passage, Span

_LEVELS: dict[str, Level] = {"error": "error", "warning": "warning", "note": "note"}
# Words before the phrase in its clause that turn it round: "do not coax her to finish the bowl".
_TURNED = frozenset(
    """not never dont no none without nobody avoid stop rather nor needn neednt shouldnt isnt arent wont myth wrong
    cannot pharmacist""".split()
)
_WITHOUT = frozenset({"without", "no", "nobody", "rather", "need", "stop"})
"""Of these what denies nothing where it stands within: "the tablet is on and he opens up without noticing"."""

# "If he will not open his mouth, ...": that denies the condition, not the advice.
_CONDITION_DENIED = re.compile(r"\b(?:if|when)\b[^,.;:]{0,20}?\b(?:not|\w+n['’]t|never)\b", re.I)


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
            if _turned(passage.text, hit) or (holds is not None and not holds(_sentence(passage.text, hit))):
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


_OF_FOODS = frozenset({"bone-to-gnaw", "milk-too-soon", "frozen-fruit"})
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


# What was advised once and is no longer: "they used to say keep it away till three".
_SUPERSEDED = re.compile(
    r"\bused to (?:say|think|tell|believe|advise|recommend|be told|swear)\b|\b(?:was|were|been) (?:once )?told to\b"
    r"|\bthe old (?:advice|rule|way|wisdom)\b|\byears ago\b",
    re.I,
)
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


def _sentence(text: str, hit: Hit) -> str:
    start = text.rfind(".", 0, hit.start) + 1
    end = text.find(".", hit.end)
    return text[start : end if end >= 0 else len(text)]


# Where a new clause begins whose verb a "not" before it leaves alone: "she is not hungry, so I wait till she laughs".
_CLAUSE = re.compile(
    r"\b(?:but|so|because|cos|cause)\b(?! (?:that|not)\b)"
    r"|(?:,|\band\b) (?=(?:i|we|you|he|she|they|it|then|my|the|just)\b)",
    re.I,
)


# What the rest of the sentence, or the words before it, call a danger: "cereal in the bottle is a choking risk".
_CALLED_BAD = re.compile(
    r"(?<!\bno )(?<!\bno real )(?<!\bnot )(?<!\bnever )(?<!n['’]t )(?<!\bnothing )(?<!\bwithout )"
    r"\b(?:(?:a|an|the|real|big|choking|scald\w*) (?:risk|hazard|danger|mistake|bad idea|no[- ]no|rotten idea|worry)"
    r"|unsafe|dangerous|risky|hazardous|asking for trouble|(?:has|have) no (?:place|business)|nowhere near|ill advised"
    r"|(?:can |will |may |might )?(?:causes?|makes?)"
    r" (?:food poisoning|(?:them|you|us|her|him|babies) (?:ill|sick|poorly))"
    r"|not safe|rots?|goes off|goes bad|will go off|spoils|(?:is|are) no (?:way|place)|wrong|old wives"
    r"|helps? (?:nobody|no one)|is no help|no[- ]go|a no from|prevents? (?:nothing|no \w+)|(?:does|do) (?:nothing"
    r"|no good|not (?:prevent|help|protect))"
    r"|(?:does|do)n['’]t (?:prevent|help|protect)"
    r"|(?:does|do|did|will|would)(?:n['’]t| not) (?:buy|bring|give|get|make) (?:\w+ ){1,3}"
    r"(?:sleep|settle|rest|nights?|longer|through|grow|calm\w*)"
    r"|(?:it|that|this|which|they) (?:can|may|could|might|will) (?:easily |really |badly |even )?(?:choke|scald"
    r"|burn|drown"
    r"|poison|harm|hurt|kill))\b",
    re.I,
)
# "my mother weaned me at twelve weeks": nobody is told to.
_OF_THE_TELLER = re.compile(
    r"\b(?:weaned|fed|started|raised|gave|had) (?:me|us all|my (?:dad|husband|brother|wife))\b", re.I
)


def _called_bad(text: str, hit: Hit) -> bool:
    """Whether what surrounds it calls it bad, or refuses what somebody else had advised."""
    start = max(
        (m.end() for m in END.finditer(text, max(0, hit.start - 200), hit.start)), default=max(0, hit.start - 200)
    )
    stop = END.search(text, hit.end)
    end = stop.start() if stop else len(text)
    if _CALLED_BAD.search(text, hit.end, min(end, hit.end + 80)) or _CALLED_BAD.search(text, start, hit.start):
        return True
    return disowned(text, start, (hit.start, hit.end))


def _turned(text: str, hit: Hit) -> bool:
    """Whether a "never" or "not" governs what was found, or it is told as what was once believed."""
    sentence = 0
    for match in END.finditer(text, max(0, hit.start - 200), hit.start):
        sentence = match.end()
    if _OF_THE_TELLER.search(text, hit.start, hit.end):
        return True
    if _SUPERSEDED.search(text, sentence, hit.start) or _called_bad(text, hit):
        return True
    clause = max(sentence, hit.start - 200)
    for match in _CLAUSE.finditer(text, clause, hit.start):
        clause = match.end()
    if any(word.key in _TURNED for word in words(_CONDITION_DENIED.sub(" ", text[clause : hit.start]))):
        return True
    gaps = [text[left[1] : right[0]] for left, right in pairwise(hit.own)]
    if any(_CALLED_BAD.search(gap) for gap in gaps):
        return True
    return any(word.key in _TURNED - _WITHOUT for gap in gaps for word in words(_CONDITION_DENIED.sub(" ", gap)))
