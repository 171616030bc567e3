"""Whether what is said is called untrue: before it, "it's a myth that ...", or after it, "... but that's a myth"."""

from __future__ import annotations

from itertools import pairwise

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.scan import Tagged

_REFUTE = frozenset({"refute"})
_ADVERBS = 3  # "and really quite *dangerous*"
_AFTERTHOUGHT = 8  # items
_THAT = frozenset({"that", "it", "this", "which"})
_IS = frozenset({"is", "'s", "was"})
_TURNS = frozenset({"but", "yet", "though", "although"})  # "there's no proof, *yet* it heals"
_A_LABEL = ("myth", "misconception")  # "*myth* two, spinach makes them strong"
_SET_ASIDE = frozenset({"or", "aside", "apart"})


def called_untrue(tagged: Tagged, match: Match, last: int) -> bool:
    """Whether a match that ends before item ``last`` is called untrue by the words before or after it."""
    before = tagged.find(_REFUTE, 0, last)
    said = any(not _goes_with(tagged, at, match) and not _is_closed(tagged, at, match) for at in before)
    return said or _taken_back(tagged, last)


def is_over(tagged: Tagged, denial: int, match: Match) -> bool:
    """Whether a denial is of something that is over before the match: "this is *no* old wives' tale, ...", "myth or
    *not*, ..."."""
    after = [item.words for item in tagged.items[denial + 1 : match.start]]
    if after[:1] == [","] or not _TURNS.isdisjoint(after):
        return True
    return any(_is_closed(tagged, at, match) for at in tagged.find(_REFUTE, denial + 1, match.start))


def _is_closed(tagged: Tagged, at: int, match: Match) -> bool:
    """Whether what is called untrue at ``at`` is over before the match: "contrary to popular belief, ...", "this is no
    old wives' tale, ...", "it's been debunked, but ..."; not so where what follows hangs on it: "it's a myth that"."""
    inside = match.start <= at  # the match took it for its own: "a *myth but honey* cures"
    behind = [item.words for item in tagged.items[at + 1 : match.trigger[0] if inside else match.start]]
    said = tagged.items[at].words
    hangs = inside or said.endswith(" that") or behind[:1] == ["that"]
    closers = [i for i, word in enumerate(behind) if word in _TURNS or (word == "," and not hangs)]
    if not closers or behind[closers[-1] + 1 :][:1] == ["that"]:
        return False
    return not (at == 0 and said.startswith(_A_LABEL) and behind[0] not in _SET_ASIDE)


def _goes_with(tagged: Tagged, index: int, match: Match) -> bool:
    """Whether what is called untrue is called bad in one breath: "an old wives' tale *and dangerous*" takes neither
    back."""
    if match.rule.name != "harmful" or index >= match.trigger[0]:
        return False
    between = [item.words for item in tagged.items[index + 1 : match.trigger[0]]]
    return between[:1] == ["and"] and len(between) <= _ADVERBS


def _taken_back(tagged: Tagged, end: int) -> bool:
    """Whether what was said is called untrue after it: "they say never to give beans, *but that's an old myth*"."""
    for index in tagged.find(_REFUTE, end, end + _AFTERTHOUGHT):
        before = [item.words for item in tagged.items[max(end, index - 4) : index]]
        if any(it in _THAT and be in _IS for it, be in pairwise(before)) and tagged.items[index].words != "so called":
            return "not" not in before
    return False
