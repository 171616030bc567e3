"""Matches that say nothing of a food, since they tell whose illness, whose wish or whose test it is."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import REACH, Ask, end_of, first_of, quoted, said_at, text_before
from spoonproof.claims.lexicon import fold
from spoonproof.claims.scan import Tagged

_CHILD = frozenset({"audience-baby"})
_FOOD = frozenset({"food", "dish", "hazard-food", "hazard-food-weak"})
_FORBIDS = frozenset({"forbid"})
_COPULA = frozenset({"copula"})
_CREAM = frozenset({"cream", "creams"})
_SKIN = frozenset("eczema rash rashes hives dermatitis psoriasis".split())
_SOAKING = frozenset("soak leave let rinse drain boil simmer cook".split())
_SWELLING = frozenset({"swelling"})
_WITHOUT = frozenset({"no", "without"})
_OF_THOUGHT = frozenset("of about that it they we you i how what".split())
_PLANNED = frozenset("intake intakes target targets goal goals standard standards advice information".split())
_VISITORS = frozenset(
    "visitor visitors professional professionals worker workers service services clinic driven reasons".split()
)
_NEWS = frozenset("recent latest new sad happy odd".split())  # "a *recent* development"
_CAUGHT = frozenset("catch give get pick".split())  # "managed to *catch* a cold"
_ARTICLES = frozenset("a the her his my our your".split())
_KNOWING = frozenset("knowing about that".split())  # "feel better *knowing* he eats"
_SOMEBODY = frozenset("he she they i we you he's she's they're i'm we're you're child toddler kid baby".split())
_AS_IT_MIGHT = re.compile(r"^(?: \w+){1,2} (?:should|could|might|ought|used|was|sounds|looks)\b")
_THE_ORIGINAL = re.compile(
    r"\boriginal(?: recipe| version| one)?(?: \w+ly)? (?:has|had|have|calls|called|uses|used|asks|asked) (?:for )?$"
)
_LEFT_OPEN = re.compile(
    r"\b(?:judge|decide|check|wonder|wondering|wondered|asked) (?:if|whether)\b[^.;:?!]{0,40}$"
    r"|\b(?:whatever|whichever) (?:[\w-]+ ){0,3}(?:is|are|feels|seems) $"
)
_USES_LITTLE = re.compile(r"\b(?:use|using|add|adding|need|put|want) (?:very |only )?little (?:or|to) $")
_LOOKS_AT = re.compile(
    r"\b(?:look|looked|looking|check|checked|checking|compare|compared|comparing|talk|talked|talking|read|reading) "
    r"[^.;:?!]{0,60}$"
)
_DISLIKES = re.compile(
    r"\b(?:doesn't|didn't|don't|does not|did not|won't|wouldn't) (?:\w+ly )?"
    r"(?:like|love|favou?r|fancy|enjoy|want|touch|care for|take to)\b"
)
_AN_AIM = re.compile(r"\b(?:goal|aim|idea|point) (?:here )?(?:is|was) to\b[^.;:?!]{0,90}\bwithout (?:any )?$")
_FRETTED = re.compile(
    r"\b(?:wondering|wondered|freaked out|panicked|afraid|scared|terrified) "
    r"(?:if |that )?(?:he|she) (?:was|would|might) $"
)

_GROWN_UP = re.compile(
    r"^(?:(?:and|but|while|so|then|[a-z]+day) )?(?:(?:my|our|his|her|their|the) )?(?:\w+ )?"
    r"(?:grand(?:father|mother|dad|ma|pa|parents)|grandad|granny|nan|nana|opa|oma|husband|wife|uncle"
    r"|auntie?|neighbours?)\b"
)
_ATE = frozenset("ate eats eating had has nibbled munched".split())


def _said(tagged: Tagged, span: tuple[int, int] | None) -> str:
    """The words of a span, as they were tagged; "" for none."""
    return "" if span is None else " ".join(item.words for item in tagged.items[slice(*span)])


def _had_it(tagged: Tagged, match: Match) -> bool:
    """ "Olive *had* eczema": who had it is somebody."""
    beside = match.object is not None and match.object[0] - match.trigger[1] <= 1
    return beside and tagged.items[match.trigger[0]].words == "had"  # "eggs *had given her* hives" is no such thing


def _salve(tagged: Tagged, match: Match) -> bool:
    """ "A *cream* for her *eczema*": rubbed on, not eaten."""
    words = _said(tagged, match.object).split()
    if match.subject is None or said_at(tagged, match.subject[1]) == "of":
        return False
    return _said(tagged, match.subject) in _CREAM and not _SKIN.isdisjoint(words)


def _managed_to(tagged: Tagged, match: Match) -> bool:
    """ "He *managed to* catch a cold": he brought it off."""
    if _said(tagged, match.trigger) not in ("managed", "manages"):
        return False
    then = [item.words for item in tagged.items[match.trigger[1] : match.trigger[1] + 2]]
    return then[:1] == ["to"] and then[1:] != [] and then[1].partition(" ")[0] in _CAUGHT


def _of_the_original(tagged: Tagged, match: Match) -> bool:
    """ "*The original has* double the sugar": of another recipe."""
    return _THE_ORIGINAL.search(text_before(tagged, match.trigger[0])) is not None


def _used(tagged: Tagged, match: Match) -> bool:
    """ "*Use little or* no sugar": what the cook is to do."""
    return _USES_LITTLE.search(text_before(tagged, match.trigger[0])) is not None


def _so_called(tagged: Tagged, match: Match) -> bool:
    """ "They call it *'no added sugar'*": held off by its quotes."""
    if match.object is None:
        return False
    return quoted(tagged, first_of(match), end_of(match))


def _thinks_of(tagged: Tagged, match: Match) -> bool:
    """ "Be fooled into *thinking of* it as a treat", "a terrifying *sight*": nobody's brain or eyes gain by it."""
    if match.object is None:
        return False
    begin, end = match.object
    said = tagged.items[begin].words
    if said == "thinking":
        return said_at(tagged, end) in _OF_THOUGHT
    before = [item.words for item in tagged.items[max(0, begin - 3) : begin]]
    if said == "development":
        return before[-1:] != [] and before[-1] in _NEWS
    return said == "sight" and ("a" in before or before[-1:] in (["in"], ["first"]))


def _choking_child(tagged: Tagged, match: Match) -> bool:
    """ "Lift a *choking baby* out": who is helped; "the aim is to explore *without* choking": what is hoped for."""
    if match.object is None:
        return False
    begin, end = match.object
    child = end < len(tagged.items) and tagged.is_any(end, _CHILD)
    if child and begin > 0 and tagged.items[begin - 1].words in _ARTICLES and tagged.items[begin].words == "choking":
        return True
    before = text_before(tagged, begin)
    return not tagged.find(_FOOD) and (_AN_AIM.search(before) is not None or _FRETTED.search(before) is not None)


def _targets(tagged: Tagged, match: Match) -> bool:
    """ "Nutritional *targets*", "a *health visitor*": a plan and a person."""
    return said_at(tagged, match.trigger[1]) in (_PLANNED | _VISITORS)


def _looked_at(tagged: Tagged, match: Match) -> bool:
    """ "We *compared* the amounts of sugar in biscuits": none is told."""
    if tagged.find(_COPULA, match.trigger[1]):
        return False
    return _LOOKS_AT.search(text_before(tagged, match.object[0] if match.object else match.trigger[0])) is not None


def _disliked(tagged: Tagged, match: Match) -> bool:
    """ "She *didn't like* apple in her first few months": a taste, and no age to wait for."""
    if tagged.find(_FORBIDS):
        return False
    end = end_of(match)
    begin, last = tagged.items[max(0, match.start - 4)].start, tagged.items[min(len(tagged.items), end + 2) - 1].end
    return _DISLIKES.search(fold(tagged.text[begin:last])) is not None


def _left_out(tagged: Tagged, match: Match) -> bool:
    """ "Containing eggs alone, *no* salt": what comes after the no is not contained."""
    if match.object is None:
        return False
    between = [item.words for item in tagged.items[match.trigger[1] : match.object[0]]]
    return not _WITHOUT.isdisjoint(between[1:])


def _in_the_pot(tagged: Tagged, match: Match) -> bool:
    """ "*Soak* the beans until the *swelling* stops": theirs, not a child's."""
    return _said(tagged, match.object) in _SWELLING and tagged.items[0].words in _SOAKING


def _relieved(tagged: Tagged, match: Match) -> bool:
    """ "It made me *feel better knowing* he ate": a mood, and no illness that passed."""
    if match.object is None:
        return False
    return _said(tagged, match.object).startswith("feel") and said_at(tagged, match.object[1]) in _KNOWING


def _as_it_might(tagged: Tagged, match: Match) -> bool:
    """ "His lunch isn't *as healthy as it should* be": against a wish, and no other food."""
    end = tagged.items[end_of(match) - 1].end
    return _AS_IT_MIGHT.match(fold(tagged.text[end : end + REACH])) is not None


def _left_open(tagged: Tagged, match: Match) -> bool:
    """ "It is yours to *judge if* these are suitable": left to whoever reads."""
    return _LEFT_OPEN.search(text_before(tagged, match.trigger[0])) is not None


def _grown_up_ate(tagged: Tagged, match: Match) -> bool:
    """ "*My grandfather* sat in his chair and *ate his* popcorn": he did, and no child is named before."""
    if tagged.items[match.trigger[0]].words not in _ATE and not _ATE & set(_said(tagged, match.object).split()):
        return False
    at = match.trigger[0]
    child = tagged.find(_CHILD, 0, at) or any(item.words in _SOMEBODY for item in tagged.items[:at])
    return not child and _GROWN_UP.match(fold(tagged.text[: tagged.items[at].start]).lstrip()) is not None


PEOPLE: Mapping[str, tuple[Ask, ...]] = {
    "food-and-disease": (_in_the_pot,),
    "gives-disease": (_had_it,),
    "for-disease": (_salve,),
    "gone-since": (_in_the_pot,),
    "against-disease": (_managed_to,),
    "helps-a-function": (_managed_to,),
    "sugar-free": (_so_called,),
    "free-of": (_used, _so_called),
    "times-the": (_of_the_original,),
    "is-a-function": (_thinks_of,),
    "makes": (_thinks_of,),
    "food-and-weak-function": (_thinks_of,),
    "choking": (_choking_child,),
    "loose-word": (_targets,),
    "health-good": (_targets,),
    "its-benefits": (_targets,),
    "handed-over": (_grown_up_ate,),
    "amount-in": (_looked_at,),
    "age-and-food": (_disliked,),
    "fine-for-babies": (_left_open,),
    "suits-babies": (_left_open,),
    "safe": (_left_open,),
    "feels-better": (_relieved,),
    "makes-strong": (_relieved,),
    "healthier": (_as_it_might,),
    "contains": (_left_out,),
    "told-to-give": (_grown_up_ate,),
}
"""Rule name and what to ask of its matches."""
