"""What else a claim is about: what holds or leads its subject, what that is made of, and the foods it stands for."""

from __future__ import annotations

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import acts_alone, first_of, measures
from spoonproof.claims.finding.phrase import ARTICLES, FOOD, NAMED, NUTRIENT, Subject, both, named
from spoonproof.claims.finding.ranking import begin_of, is_subject, likeliest, pronoun_before, rank
from spoonproof.claims.scan import Tagged

_PREDICATING = frozenset({"copula", "contain", "has", "high"})
_SPELLING_OUT = frozenset({"include", "contain", "copula"})
_SUCH_AS = frozenset({"like", "as", "including", "especially"})
_CLAUSE = frozenset({"copula", "contain", "have", "benefit", "harm", "give", "avoid", "need", "make", "keep"})
_LINKS = frozenset("with of in into".split())
_THESE = frozenset({"these", "those", "such"})
_THIS = frozenset({"this", "my", "our"})
_BABY = frozenset({"audience-baby"})
_MADE_WITH = frozenset("with from of using includes include including containing".split())
_MADE_REACH = 3
_KINDS = frozenset("food foods snacks products drinks vegetables fruits grains meats fish seeds milks spreads".split())
_ANY_FOOD = (" food", " foods", " snacks", " vegetables", " fruits", " grains")
_CALLED = frozenset({"called", "known as", "named", "namely"})
_PHRASE_REACH = 10
_PREDICATE_REACH = 6  # items between "is" and the noun it makes of its subject


def with_others(tagged: Tagged, match: Match, found: Subject) -> Subject:
    """``found``, which the sentence names, with what else there is to say it of."""
    assert found.range is not None
    if acts_alone(tagged, found.range[1] - 1):
        return found
    if (holder := _holder(tagged, found.range[0])) is not None:
        found = _led_by(tagged, holder, found)
    if _is_a_kind(tagged, found) and (listed := _examples(tagged, match, found)) is not None:
        found = both(found, listed)
    if (head := _head(tagged, found)) is not None:
        found = _led_by(tagged, head, found)
    if not found.foods and (of := _made_of(tagged, found, match)) is not None:
        found = both(found, of)
    if (called := _called(tagged, found)) is not None:
        found = both(found, called)
    if not found.foods and (meant := _meant(tagged, found)) is not None:
        found = both(found, meant)
    if match.rule.kind == "quantity" and (measured := _measured_for(tagged, match)) is not None:
        found = both(found, named(tagged, measured, range(0)))
    if match.rule.kind in ("function", "disease") and not found.foods:
        doer = _doer(tagged, found, match)
        found = found if doer is None else _led_by(tagged, doer, found)
    return found


def _holder(tagged: Tagged, at: int) -> int | None:
    """What holds or is the thing at ``at``: "*mangoes* contain polyphenols that ...", "*ghee* is a food that ..."."""
    verbs = [i for i in tagged.find(_PREDICATING, at - _PREDICATE_REACH, at) if not _crossed(tagged, i, at)]
    if not verbs:
        return None
    before = [i for i in tagged.find(FOOD, begin_of(tagged, verbs[-1]), verbs[-1]) if not measures(tagged, i)]
    pronoun = pronoun_before(tagged, begin_of(tagged, verbs[-1]), verbs[-1])
    if not before or (pronoun is not None and pronoun > before[-1]):
        return None
    return likeliest(tagged, before, verbs[-1])


def _crossed(tagged: Tagged, verb: int, at: int) -> bool:
    """Whether another noun or the end of a clause stands between a verb and ``at``."""
    between = tagged.symbols[verb + 1 : at]
    return any(mark in between for mark in ".?,:") or bool(tagged.find(NAMED, verb + 1, at))


def _led_by(tagged: Tagged, at: int, found: Subject) -> Subject:
    """``found`` with the food at ``at`` before it."""
    return both(named(tagged, at, range(*(found.range or (0, 0)))), found)


def _made_of(tagged: Tagged, found: Subject, match: Match) -> Subject | None:
    """What a dish that is no food by name is made of: "a bake with *leeks and cheese* is full of calcium"."""
    assert found.range is not None
    end = found.range[1]
    said = first_of(match)
    for at in range(end, min(end + _MADE_REACH, said)):
        if tagged.items[at].words in _MADE_WITH:
            foods = tagged.find(FOOD, at + 1, min(at + 4, said))
            return named(tagged, foods[0], range(*found.range)) if foods else None
    return None


def _is_a_kind(tagged: Tagged, found: Subject) -> bool:
    """Whether a subject is a kind of food that examples may follow: "*salty snacks* such as crisps"."""
    assert found.range is not None
    return not found.foods or tagged.items[found.range[1] - 1].words.rpartition(" ")[2] in _KINDS


def _examples(tagged: Tagged, match: Match, found: Subject) -> Subject | None:
    """The examples of a kind of food, right after it or after what is said of it."""
    assert found.range is not None
    own, said = found.range[1], (match.object or match.trigger)[1]
    after = spelled_out(tagged, own, by_words=True)
    if after is None:  # "*first foods* from six months: ...", "*plant foods* with iron include ..."
        only_kind = tagged.items[own - 1].words.endswith(_ANY_FOOD)
        after = spelled_out(tagged, max(own, said), by_words=bool(found.foods) and not only_kind)
    return after


def _called(tagged: Tagged, found: Subject) -> Subject | None:
    """What a subject is called besides: "the small grain *called teff* has"."""
    assert found.range is not None
    end = found.range[1]
    if end >= len(tagged.items) or tagged.items[end].words not in _CALLED:
        return None
    foods = tagged.find(FOOD, end + 1, end + 4)
    return named(tagged, foods[0], range(*found.range)) if foods else None


def _meant(tagged: Tagged, found: Subject) -> Subject | None:
    """What "these foods" were, where the sentence named them: "no crisps or ham, as *these foods* are salty"."""
    assert found.range is not None
    begin = found.range[0]
    if begin == 0 or tagged.items[begin - 1].words not in _THESE:
        return None
    before = [i for i in tagged.find(FOOD, 0, begin - 1) if not measures(tagged, i)]
    return named(tagged, before[-1], range(*found.range)) if before else None


def _measured_for(tagged: Tagged, match: Match) -> int | None:
    """The nutrient of which a child should have so much: "infants should get 400 IU of *vitamin D*"."""
    if match.object is None or not tagged.find(_BABY, 0, match.start) or tagged.find(FOOD, 0, match.start):
        return None
    found = tagged.find(NUTRIENT, match.start, match.end + 3)
    return found[0] if found else None


def _head(tagged: Tagged, found: Subject) -> int | None:
    """What leads the phrase that a subject ends: "*milk* with a pinch of turmeric is", "a *soup* of the leaves"."""
    assert found.range is not None
    begin, end = found.range
    if not 0 < begin < end or not is_subject(tagged, end - 1):
        return None
    for at in range(begin - 1, max(-1, begin - 1 - _PHRASE_REACH), -1):
        if tagged.is_any(at, FOOD):
            linked = any(tagged.items[i].words in _LINKS for i in range(at + 1, begin))
            return at if linked and rank(tagged, at) >= 0 else None
        if tagged.symbols[at] in ".?,:()" or tagged.is_any(at, _CLAUSE):
            return None
    return None


def _doer(tagged: Tagged, found: Subject, match: Match) -> int | None:
    """The food that a sentence opened with, where what is said is said of something in it."""
    assert found.range is not None
    begin = found.range[0]
    own = found.of_dish or any(item.words in _THIS for item in tagged.items[max(0, begin - 1) : begin + 1])
    if own or pronoun_before(tagged, 0, begin) is not None:
        return None  # "carrots are rich in iron, and *this bowl* prevents colds" says nothing of carrots
    taken = range(*match.object) if match.object else range(0)
    before = [i for i in tagged.find(FOOD, 0, found.range[0]) if i not in taken and not measures(tagged, i)]
    best = max(before, key=lambda i: (rank(tagged, i), -i), default=None)
    return best if best is not None and is_subject(tagged, best) and rank(tagged, best) > 0 else None


def spelled_out(tagged: Tagged, end: int, *, by_words: bool = False) -> Subject | None:
    """The foods a general word is spelled out with after a claim: "herbs that ... include *sage and mint*".
    ``by_words``: only after "such as", "like" or "including"."""
    for at in tagged.find(FOOD, end, end + 10):
        before = at - 1 - (tagged.items[at - 1].words in ARTICLES)
        spelled = any(tagged.items[i].words.rpartition(" ")[2] in _SUCH_AS for i in range(max(end, at - 3), at))
        if spelled:
            return named(tagged, at, range(0))
        if by_words:
            return None
        if tagged.symbols[before] == ":" or tagged.is_any(before, _SPELLING_OUT):
            return named(tagged, at, range(0))
    return None
