"""Where the clause that holds a claim begins: at its joint, or where speech without marks sets in anew."""

from __future__ import annotations

from spoonproof.claims.finding.phrase import FOOD, NOUNS, NUTRIENT
from spoonproof.claims.finding.ranking import REACH, is_subject
from spoonproof.claims.scan import Tagged
from spoonproof.model.clause_words import OPENERS

_JOINTS = OPENERS | {"cause", "so", "but", "and"}
_LISTING = frozenset({"and", ","})
_SOMEBODY = frozenset("i we he she they there".split())
_POINTING = frozenset("it they this that these those you".split())
_BEFORE_POINTING = frozenset("of in to for than from like into by on without with".split())
_OPENERS = frozenset(
    "a an the and but so or well now plus also then no any some these those this your her his their my "
    "our honestly actually really even".split()
)
_SAYS = frozenset(
    "copula contain have has benefit benefit-weak harm need goodfor hedge negation make keep should "
    "forbid comes-up child-can".split()
)
_ONE_DOES = frozenset("is 's has was does isn't hasn't".split())


def clause_begin(tagged: Tagged, at: int) -> int:
    """Where the clause that holds ``at`` begins, at most ``REACH`` items back."""
    first = max(0, at - REACH)
    index = at
    while index > first:
        if tagged.symbols[index - 1] in ".?" or _begins(tagged, index, at):
            return index
        # "Buckwheat, though it sounds like wheat, *has* no gluten": what stands between is told in passing.
        aside = tagged.symbols[index - 1] == "," and tagged.is_any(index, _SAYS)
        index = max(first, tagged.symbols.rfind(",", first, index - 1)) if aside else index - 1
    return first


def _begins(tagged: Tagged, index: int, at: int) -> bool:
    words = tagged.items[index].words
    before = tagged.items[index - 1].words
    joined = before in _JOINTS or tagged.symbols[index - 1] == ","
    head, _, ending = words.partition("'")
    if head in _SOMEBODY and (ending or tagged.is_any(index + 1, _SAYS)):
        return True
    if head in _POINTING and (ending or tagged.is_any(index + 1, _SAYS)):
        return (
            joined
            or before == "as"
            or ((bool(ending) or tagged.items[index + 1].words in _ONE_DOES) and before not in _BEFORE_POINTING)
        )
    if not joined:
        return False
    noun = index
    while noun < at and tagged.items[noun].words in _OPENERS:
        noun += 1
    found = tagged.find(NOUNS, noun, min(noun + 3, at))
    if not found or not is_subject(tagged, found[0]):
        return False
    return before not in _LISTING or _is_no_list(tagged, index, found[0])


def _is_no_list(tagged: Tagged, index: int, noun: int) -> bool:
    """Whether the noun after "and" or a comma stands in no list with what is before it: "full of zinc and *oats* are",
    "I stir in kale and *kale is*"."""
    last = next((i for i in range(index - 2, max(-1, index - 4), -1) if tagged.is_any(i, NOUNS)), None)
    if last is None:
        return bool(tagged.find(_SAYS, max(0, index - REACH), index))
    if not tagged.find(_SAYS, max(0, last - 8), last):
        return False
    verb = next((i for i in range(noun + 1, min(noun + 4, len(tagged.items))) if tagged.is_any(i, _SAYS)), noun)
    apart = tagged.is_any(last, NUTRIENT) and not tagged.is_any(last, FOOD) and tagged.is_any(noun, FOOD)
    word = tagged.items[verb].words.partition(" ")[0]
    return apart or word in _ONE_DOES or (word.endswith("s") and not word.endswith("ss"))
