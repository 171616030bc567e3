"""What stands around a match, for whoever asks whether it says anything: its ends, the text before it, its quotes."""

from __future__ import annotations

import re
from collections.abc import Callable

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.scan import Tagged

Ask = Callable[[Tagged, Match], bool]
"""Whether a match says nothing of a food."""
REACH = 100
"""Characters before or after a match that an expression is asked of."""
_SKIPPED = re.compile(
    r"\b(?:skip|not for|leave (?:it|this|these|them) out|keep (?:it|this|these|them) (?:away )?from)\b"
)
_NUTRIENT = frozenset({"nutrient", "ambiguous-nutrient"})
_DOES = frozenset({"benefit", "benefit-weak", "make", "keep", "effect"})
_IS = frozenset({"is", "'s"})
_HELD_BY = frozenset({"contain", "has", "high", "low"})
_INSIDE = frozenset(",.;!?")
_QUOTES = frozenset("\"'“”‘’")


def classes_in(tagged: Tagged) -> frozenset[str]:
    """Every class of the sentence's items."""
    known = tagged.lexicon.classes_of
    return frozenset().union(*[known[symbol] for symbol in set(tagged.symbols)])


def first_of(match: Match) -> int:
    """The first item of what gives a match away and of what it relates to."""
    return min(match.trigger[0], (match.object or match.trigger)[0])


def end_of(match: Match) -> int:
    """One past the last item of what gives a match away and of what it relates to."""
    return max(match.trigger[1], (match.object or match.trigger)[1])


def text_before(tagged: Tagged, at: int) -> str:
    """The text before an item, in lower case, as far back as ``REACH``."""
    end = tagged.items[at].start
    return tagged.low[max(0, end - REACH) : end]


def text_after(tagged: Tagged, at: int) -> str:
    """The text from an item on, in lower case, as far as ``REACH``; "" past the end of the sentence."""
    if at >= len(tagged.items):
        return ""
    begin = tagged.items[at].start
    return tagged.low[begin : begin + REACH]


def said_at(tagged: Tagged, at: int) -> str:
    """The words of an item; "" past the end of the sentence."""
    return tagged.items[at].words if at < len(tagged.items) else ""


def acts_alone(tagged: Tagged, at: int) -> bool:
    """Whether a nutrient after "and" does something of its own: "beans and peas, *and vitamin C helps* take it up",
    "it is packed with iodine *and iodine is* ...". With foods in one list it would be "beans and vitamin C *help*"."""
    if at < 2 or tagged.items[at - 1].words != "and" or not tagged.is_any(at, _NUTRIENT):
        return False
    verb = said_at(tagged, at + 1).partition(" ")[0]
    if verb in _IS:
        return bool(tagged.find(_HELD_BY, 0, at - 1))
    return verb.endswith("s") and not verb.endswith("ss") and bool(tagged.is_any(at + 1, _DOES))


def quoted(tagged: Tagged, begin: int, end: int) -> bool:
    """Whether these items stand between quotation marks."""
    first, last = tagged.items[begin].start, tagged.items[end - 1].end
    last += tagged.text[last : last + 1] in _INSIDE  # “superfoods,” has its comma inside
    return tagged.text[max(0, first - 1) : first] in _QUOTES and tagged.text[last : last + 1] in _QUOTES


def skipped(tagged: Tagged) -> bool:
    """Whether somebody is told to leave it: "*skip it* if your child has a sesame allergy"."""
    return _SKIPPED.search(tagged.low) is not None


def measures(tagged: Tagged, at: int) -> bool:
    """A spoonful is no food: "one spoonful of this"."""
    return tagged.has(at, "household") and not tagged.has(at, "food")
