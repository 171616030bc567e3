"""Which food a pronoun stands for: in its own sentence, or in those before it."""

from __future__ import annotations

from spoonproof.claims.finding.clauses import clause_begin
from spoonproof.claims.finding.near import measures
from spoonproof.claims.finding.phrase import (
    ARTICLES,
    FOOD,
    GENERIC,
    NAMED,
    NUTRIENT,
    Subject,
    both,
    is_plural,
    named,
    noun,
    widen,
)
from spoonproof.claims.finding.ranking import THEY, is_doing, is_subject, is_what_it_is, rank, said_by
from spoonproof.claims.scan import Tagged
from spoonproof.model.claim import Kind

_THEN = frozenset("and as because but if since so when".split())
_WITH = frozenset("with in into to from by on over".split())
_PARTICLES = frozenset("in on too up".split())
_BREATH = 12  # items: tagged words, marks and the stretches between
_LISTING = frozenset({"and", "or", "&", "plus", ","})
_POINTING = frozenset({"it", "that", "this"})
_OPENS = 3  # items
_FEW = 2  # items: "No *salt*."
_NOT = frozenset({"negation", "refute"})
_FOOD = frozenset({"food"})
_KEPT_BACK = frozenset({"hazard-food", "ambiguous-nutrient"})
_SOLIDS = frozenset({"solids"})


def antecedent(tagged: Tagged, foods: list[int], pronoun: int) -> int | None:
    """Which of ``foods``, all before the item ``pronoun``, that pronoun stands for; None where it is none of them."""
    said = said_by(tagged, pronoun)
    if foods and _opens(tagged, said, min(_OPENS, foods[0])):
        foods = [i for i in foods if is_subject(tagged, i)]  # "*it* goes with rice, and it ...": what it was before
    beside = _right_before(tagged, foods, pronoun)
    if beside is not None and agrees(tagged, beside, said) and not _is_aside(tagged, beside, said):
        return beside
    return spoken_of(tagged, foods, said)


def _opens(tagged: Tagged, said: str, end: int) -> bool:
    """Whether a sentence opens with a pronoun, before the item ``end``, that stands for a thing: not so "it doesn't
    matter if", "it's a myth that"."""
    return any(said_by(tagged, i) == said and not tagged.find(_NOT, i, i + 4) for i in range(end))


def spoken_of(tagged: Tagged, foods: list[int], said: str) -> int | None:
    """Which of ``foods`` the pronoun ``said`` after them stands for: of the nearest clause that names one which agrees
    with it, what is spoken of rather than what is done to it."""
    fitting = [i for i in foods if agrees(tagged, i, said) and not _is_aside(tagged, i, said)]
    if not fitting:
        return None
    clause = clause_begin(tagged, fitting[-1])
    if said == "that":
        return fitting[-1]  # it points to what was said last
    return max((i for i in fitting if i >= clause), key=lambda i: (_stands(tagged, i), -i))


def _stands(tagged: Tagged, at: int) -> int:
    """How well a food stands to be spoken of next: less so after "into the" and the like."""
    first = widen(tagged, at) - 1
    while first > 0 and tagged.items[first].words in ARTICLES:
        first -= 1
    return rank(tagged, at) - 2 * (first >= 0 and tagged.items[first].words in _WITH)


def _is_aside(tagged: Tagged, at: int, said: str) -> bool:
    """Whether a pronoun stands for what it stood for before the food at ``at``: "thin *it* with milk so *it*"."""
    first = widen(tagged, at)
    if is_subject(tagged, at) or not any(item.words in _WITH for item in tagged.items[max(0, first - 2) : first]):
        return False
    return any(said in item.words.split() for item in tagged.items[clause_begin(tagged, at) : at])


def agrees(tagged: Tagged, at: int, said: str) -> bool:
    """Whether a pronoun may stand for a food by number: "they" for many, "it" for one."""
    if said in THEY:
        return is_plural(tagged, at)
    return said not in ("it", "its") or not is_plural(tagged, at)


def _right_before(tagged: Tagged, foods: list[int], end: int) -> int | None:
    """The food right before a pronoun, with no more than a mark or a joining word between: "try kefir: it is"."""
    between = end - 1
    if tagged.items[between].words in _THEN and tagged.items[between - 1].words in _PARTICLES:
        between -= 2  # "I stir almonds *in* because they"
    elif between >= 0 and (tagged.symbols[between] in ",:" or tagged.items[between].words in _THEN):
        between -= 1
    named = between in foods and not (tagged.is_any(between, GENERIC | _SOLIDS) or is_what_it_is(tagged, between))
    return between if named else None  # "it is a first food because it ...": not the first food


def named_before(tagged: Tagged, said: str, gap: int, kind: Kind, *, dish: bool) -> Subject | None:
    """The food that the sentences of ``tagged``, the nearest first, speak of; ``gap``: items between their end and the
    pronoun; ``dish``: "it" may be what is being made."""
    foods = _nouns(tagged, said, kind)
    stops = [i for i, symbol in enumerate(tagged.symbols) if symbol in ".?"]
    if not stops and foods and len(tagged.items) > _BREATH:
        # Speech without full stops: what was named last, or what was spoken of just before it.
        near = [i for i in foods if foods[-1] - i <= _BREATH]
        if dish and (len(tagged.items) - near[-1] + gap > _BREATH or is_plural(tagged, near[-1])):
            return None
        best = spoken_of(tagged, near, said)
        return _alone(tagged, max(near, key=lambda i: (rank(tagged, i), i)) if best is None else best)
    ends = [*stops, len(tagged.items)]
    begins = [0, *(i + 1 for i in stops)]
    for begin, end in zip(reversed(begins), reversed(ends), strict=True):
        here = [i for i in foods if begin <= i < end]
        if here and said == "all":
            listed = _all_of(tagged, here)
            return listed if len(listed.texts) > 1 or here == foods else _all_of(tagged, foods[-2:])
        best = spoken_of(tagged, here, said)
        if best is not None:
            return _listed(tagged, here, best) if said in THEY else _alone(tagged, best)
        if here and not dish:
            return _alone(tagged, here[0])
    return None


def _nouns(tagged: Tagged, said: str, kind: Kind) -> list[int]:
    """The nouns that a pronoun may stand for: of "banana pancakes" the pancakes; of what foods hold only what is itself
    spoken of, and only where it may do something."""
    found = tagged.find(FOOD | _KEPT_BACK if kind == "safety-age" else FOOD)
    if said in _POINTING and kind in ("function", "disease"):
        ends = [-1, *(i for i, symbol in enumerate(tagged.symbols) if symbol in ".?")]
        found += [i for i in tagged.find(NUTRIENT) if is_subject(tagged, i) or any(0 < i - end <= _FEW for end in ends)]
    heads = [i for i in sorted(set(found)) if not (tagged.has(i, "food") and _is_dish(tagged, i + 1))]
    return [i for i in heads if not measures(tagged, i) and not is_doing(tagged, i)]


def _is_dish(tagged: Tagged, at: int) -> bool:
    return tagged.is_any(at, _FOOD) and not tagged.has(at, "process")


def first_named(tagged: Tagged) -> Subject | None:
    """The food or dish that is named first, with its list; None where there is none."""
    foods = _nouns(tagged, "", "process")
    return named(tagged, foods[0], range(0)) if foods else None


def _all_of(tagged: Tagged, foods: list[int]) -> Subject:
    """The list that the first of ``foods`` stands in; all of them where it stands in none."""
    listed = named(tagged, foods[0], range(0))
    if len(listed.texts) > 1:
        return listed
    for at in foods[1:]:
        listed = both(listed, _alone(tagged, at))
    return listed


def _listed(tagged: Tagged, foods: list[int], at: int) -> Subject:
    """The food at ``at`` with those of ``foods`` that follow it in a list: "*peppers or a kiwi*"."""
    found = _alone(tagged, at)
    for after in foods:
        between = tagged.items[at + 1 : widen(tagged, after)]
        if after > at and between and all(item.words in _LISTING or item.words in ARTICLES for item in between):
            found, at = both(found, _alone(tagged, after)), after
    return found


def _alone(tagged: Tagged, at: int) -> Subject:
    """The food at ``at`` without the list it stands in."""
    term = tagged.items[at].term
    foods = (term.senses["food"].id,) if term is not None and "food" in term.senses else ()
    return Subject((at, at + 1), (noun(tagged, at, NAMED),), foods, False, False, "")
