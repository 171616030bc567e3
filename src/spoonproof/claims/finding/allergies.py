"""Matches that name an allergy or a free-from product and say nothing of a food: whose it is, what is bought or asked.

Like ``people``, of rules whose words turn up wherever a family lives with an allergy.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, end_of, first_of, quoted, said_at, text_after, text_before
from spoonproof.claims.lexicon import fold
from spoonproof.claims.scan import Tagged

_MEATLESS = frozenset({"meat", "meatless"})  # which no law lists among the allergens
_SWAPPED = re.compile(
    r"\bsubstitut(?:e|ed|ing)\b[^.;:?!]{0,30}$|"
    r"\b(?:swap|swapped|swapping|use|used|using|buy|buying|bought|find|finding|found|order|ordered|"
    r"(?:pick|picked|picking) up|grab|grabbed|chose|tossed|stocked with|bring|bringing|brought|provide|provided|"
    r"providing) (?:[\w-]+,? ){0,4}$"
)
_TO_BE_NONE = re.compile(r"\b(?:could|must|should|meant) (?:there )?(?:be )?(?:no [^.;:?!]{0,60})?$")
_ALLERGY = ("allerg", "intoleran", "sensitiv")
_DOINGS = frozenset("baking cooking eating living catering bakery bakeries aisle shelf".split())

_A_LIFE = frozenset("life lifestyle living journey world household house home family families way path years".split())
_WHICHEVER = re.compile(
    r"(?:,? ?(?:and |or )?[\w-]+,? ){0,2}?(?:recipes?|things?|stuff|options?|menus?|sections?|baker(?:y"
    r"|ies)|aisles?|ideas|"
    r"restrictions?|requirements?|needs|choices|alternatives?|guests|diets?)\b"
)
_FARES = re.compile(r"\b(?:better|worse|calmer|cleared|stopped|helped|cured)\b")  # "felt better *eating gluten-free*"
_FOR_HIM = re.compile(r"for (?:him|her|us|me|them)\b(?! to\b)")  # "it has been nut free *for him* since"
_SOMEBODYS_WAY = re.compile(
    r"\b(?:diets?|cooks?|kitchens?|house(?:hold)?s?|home|famil(?:y|ies)|guests|hosts?|everyone|parents|mums?|moms?|"
    r"(?<=not )everything|nothing|world|life|schools?|nurser(?:y|ies)|classrooms?)\b"
    r"[^.;:?!]{0,30}\b(?:is|are|was|were|be|been|being|become|became|go|went|gone) (?:\w+ ){0,4}$"
    r"|\b(?:living|live|lived|lives|eating|eat|ate|going|go|went|cooking|baking|bake|stay|stayed|staying)"
    r" (?:\w+ly )?$"
    r"|\b(?:could|can|would|did|do)(?: not|n't|not) (?:bake|make|offer|provide|do|sell|have) (?:an? |any )?$"
    r"|\bto (?:make|keep|turn) (?:it|them|this|these|those|everything) $"
    r"|\b(?:i'll|we'll|i'm|we're|i am|we are|he's|she's|he is|she is|going|try|trying|have|had|tried)"
    r"(?: (?:try|trying|going|to|be|stay|go|strictly|now|all|being|completely)){1,5} $"
    r"|\b(?:asked|wanted|needed|requested|begged)\b[^.;:?!]{0,60}\bto be (?:made )?$"
)
_OWN_BAKING = re.compile(
    r"\b(?:i|we) (?:was|were|am|are|'ve been) (?:\w+ )?able to\b|\b(?:i|we) (?:made|baked|cooked)\b"
)
_WHICH_ONES = re.compile(
    r"\blabel(?:led|ed|s|ling|ing)?\b[^.;:?!]{0,40}$"
    r"|\b(?:any|all|every|which|what|whether|if) (?:\w+ ){0,4}(?:products?|foods?|items?|things?|anything"
    r"|desserts?|dish(?:es)?)"
    r"\b[^.;:?!]{0,20}$|\b(?:anything|everything|something) (?:that|which)? ?$"
)
_FOR_ALLERGIC = re.compile(
    r"(?:for|to) (?:any|our|us|my|the|a|every|those|these) ?(?:[\w-]+ ){0,2}(?:famil(?:y|ies)|us|household|allergic)\b"
)
_OPENS, _CLOSES = frozenset('"“‘'), frozenset('"”’')


def _a_way_to_live(tagged: Tagged, match: Match) -> bool:
    """ "*Living* dairy free", "our *diet* had to become dairy-free", "the gluten free *life*": what people keep to."""
    if said_at(tagged, end_of(match)) in _A_LIFE or _WHICHEVER.match(text_after(tagged, end_of(match))) is not None:
        return True
    if _FARES.search(fold(tagged.text)) is not None:
        return False
    if _FOR_HIM.match(text_after(tagged, end_of(match))) is not None:
        return True
    return _SOMEBODYS_WAY.search(text_before(tagged, first_of(match))) is not None


def _without_allergens(tagged: Tagged, match: Match) -> bool:
    """ "I was able to bake it all, just *minus the allergens*": none is named, and the cook's own doing."""
    named = "allergen" not in tagged.words(first_of(match), end_of(match)).lower()
    return not named and _OWN_BAKING.search(fold(tagged.text)) is not None


def _says_no(tagged: Tagged, match: Match) -> bool:
    """ "*No,* not lactose intolerance": an answer."""
    return said_at(tagged, match.trigger[0]) == "no" and said_at(tagged, match.trigger[0] + 1) == ","


def _labelled(tagged: Tagged, match: Match) -> bool:
    """ "Foods *labelled* "may contain nuts"", "any product *that may contain* nuts": which ones, by their labels."""
    if quoted(tagged, match.trigger[0], end_of(match)) or quoted(tagged, first_of(match), match.trigger[1]):
        return True
    return _WHICH_ONES.search(text_before(tagged, first_of(match))) is not None


def _held_off(tagged: Tagged, match: Match) -> bool:
    """ "He said it was *"gluten-free"*": a word held off by its quotes."""
    if quoted(tagged, first_of(match), end_of(match)):
        return True
    begin, last = tagged.items[first_of(match)].start, tagged.items[end_of(match) - 1].end
    return tagged.text[max(0, begin - 1) : begin] in _OPENS and tagged.text[last : last + 2][1:] in _CLOSES


def _allergic_family(tagged: Tagged, match: Match) -> bool:
    """ "Off-limits for any peanut-*allergic family*": who keeps away."""
    end = (match.object or match.trigger)[1]
    return _FOR_ALLERGIC.match(text_after(tagged, end)) is not None


def _allergy_to_it(tagged: Tagged, match: Match) -> bool:
    """ "He has a gluten *allergy*": nothing holds the gluten."""
    return said_at(tagged, end_of(match)).startswith(_ALLERGY)


def _ingredient(tagged: Tagged, match: Match) -> bool:
    """ "I *substituted* gluten-free oats", "gluten free *baking*": which product is used, what is done."""
    return (
        said_at(tagged, end_of(match)) in _DOINGS or _SWAPPED.search(text_before(tagged, first_of(match))) is not None
    )


def _to_be_none(tagged: Tagged, match: Match) -> bool:
    """ "There *could be no* eggs, no nuts": what was asked of the cook."""
    return _TO_BE_NONE.search(text_before(tagged, match.trigger[0])) is not None


def _meatless(tagged: Tagged, match: Match) -> bool:
    """ "*Meat-free* Monday": no allergen."""
    start, end = match.object or match.trigger
    return tagged.items[start].words.partition("-")[0] in _MEATLESS and end - start == 1


ALLERGIES: Mapping[str, tuple[Ask, ...]] = {
    "contains-gluten": (_allergy_to_it,),
    "free-from": (_meatless, _ingredient, _a_way_to_live, _without_allergens, _says_no, _held_off),
    "traces": (_labelled,),
    "harmful": (_allergic_family,),
    "sugar-free": (_ingredient,),
    "free-of-several": (_to_be_none,),
}
"""Rule name and what to ask of its matches."""
