"""Which of the foods that a sentence names its pronoun stands for, if any of them."""

from __future__ import annotations

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.phrase import FOOD, GENERIC, is_plural, widen
from spoonproof.claims.finding.ranking import THEY, begin_of, is_subject
from spoonproof.claims.scan import Tagged

THEN = frozenset("and as because but if since so when".split())
_PARTICLES = frozenset("in on too up".split())
_WITH = frozenset("with in into to from by".split())
_SOLIDS = frozenset({"solids"})


def agreeing(tagged: Tagged, candidates: list[int], pronoun: int) -> list[int]:
    """Those of ``candidates`` that "they" may stand for; all where there are none: "porridge with *almonds*, they"."""
    if tagged.items[pronoun].words not in THEY or any(i > pronoun for i in candidates):
        return candidates
    return [i for i in candidates if is_plural(tagged, i) and tagged.is_any(i, FOOD)] or candidates


def still_the_same(tagged: Tagged, candidates: list[int], pronoun: int) -> bool:
    """Whether a pronoun stands for what it stood for before the only food named: "thin *it* with water so *it*
    isn't"."""
    if len(candidates) != 1 or candidates[0] > pronoun or not tagged.is_any(candidates[0], FOOD):
        return False
    at = candidates[0]
    first = widen(tagged, at)
    if is_subject(tagged, at) or not any(item.words in _WITH for item in tagged.items[max(0, first - 2) : first]):
        return False
    said = tagged.items[pronoun].words
    begin = begin_of(tagged, at)
    return any(said in item.words.split() for item in tagged.items[begin:at])


def is_the_dish(tagged: Tagged, match: Match, candidates: list[int], pronoun: int) -> bool:
    """Whether "it" is none of the foods named, which are many each, but what is being made: "*its* egg free"."""
    if match.rule.name != "free-from" or tagged.items[pronoun].words in THEY:
        return False
    return all(is_plural(tagged, i) for i in candidates)


def right_before(tagged: Tagged, candidates: list[int], pronoun: int) -> int | None:
    """The food right before a pronoun, with no more than a mark or a joining word between."""
    between = pronoun - 1
    if tagged.items[between].words in THEN and tagged.items[between - 1].words in _PARTICLES:
        between -= 2  # "I stir almonds *in* because they"
    elif between >= 0 and (tagged.symbols[between] in ",:" or tagged.items[between].words in THEN):
        between -= 1
    named = between in candidates and not tagged.is_any(between, GENERIC | _SOLIDS)
    return between if named else None  # "it is a first food because it ...": not the first food
