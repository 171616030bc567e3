"""Whether something is said of an allergy, or a food said to be free of what brings one: not only whose it is."""

from __future__ import annotations

import re

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import end_of, first_of, said_at, skipped, text_after, text_before
from spoonproof.claims.finding.placed import at_its_place
from spoonproof.claims.grammar import Rule
from spoonproof.claims.lexicon import fold
from spoonproof.claims.scan import Tagged
from spoonproof.model.record import replace

_AROUND = 10
_PERSONS = frozenset({"audience-baby", "audience-adult"})
_DISHES = frozenset({"food", "dish", "hazard-food", "ambiguous-nutrient", "pronoun"})
_SERVED = _DISHES - {"pronoun"} | {"generic-food"}
_SAID = frozenset({"copula", "contain", "keep", "make"})
_LINE = 12
_NEAR_IT = 7
_DIRECT = 3
_MARKS = frozenset(",(:")
_ALL = frozenset({"all", "every", "everything", "each"})
_LISTING = frozenset("a an and or & , the our all ( : 100 % fully totally completely".split())
_LISTED = frozenset(
    "food dish allergen-word allergen-food suffix-free free-suffixed free free-from ambiguous-nutrient"
    " label-abroad".split()
)
_DIETS = frozenset("vegan vegetarian plant-based".split())
_LEFT_OUT = frozenset({"allergen-word", "allergen-food", "pronoun"})
_FREE = frozenset({"suffix-free", "free-suffixed"})
_AGES = frozenset({"age", "age-unit", "number", "when-ask"})
_CUT = frozenset("choking choking-weak cut-safe cut-act cut-it contaminant harmful".split())
_HARD, _MADE_SAFE = frozenset({"hazard-food-weak"}), frozenset({"made-safe"})
_BY_NAME = frozenset({"allergen-word", "allergen-ground"})
_AND = frozenset({"and", "or", "&"})
_SAID_OF_IT = frozenset(
    "benefit benefit-weak harm harm-weak goodfor badfor avoid avoid-weak forbid introduce is-introduced watch "
    "okay fine safe hedge percent child-can must-do should leave-it-out out-alone".split()
)
_SAYS_SO = re.compile(
    r"\?|\b(?:toler\w+|correlat\w*|never|babies|infants|toddlers|kids|children|little ones|your|means?"
    r"|\w+n't|worr\w+|risks?|deadly)\b"
)
_WHO_HAS = re.compile(r"\b(?:with|ha(?:s|ve|d)) (?:[\w/'-]+ ){0,5}$")
_FOR_THEM = frozenset(
    "benefit harm goodfor badfor avoid forbid okay fine safe child-can suits more less hedge percent told-to give "
    "offer able".split()
)
_REACTION = frozenset({"reaction"})
_EATEN = frozenset({"food", "dish"})
_IF = frozenset({"when-ill", "the-child"})
_OF_IT = re.compile(r"\b(?:of|with) (?:[\w'-]+ ){0,2}$")
_PREDICATED = frozenset({"copula", "hedge"})
_ONCE_WAS = frozenset({"was", "were", "would be"})
_PROPERTIES = ("allergenic", "allergen", "allergens")
_FAMILY = re.compile(
    r"\b(?:i|we|(?:my|our)(?! (?:health visitor|doctor|gp|dieti[ct]ian|pa?ediatrician|midwife|nurse|allergist)\b)|us|me"
    r"|he|she|his|her|him|of them|(?:grand)?(?:son|daughter))\b"
)
_ONE_NAMED = re.compile(r"(?<=[a-z,] )[A-Z][a-z]+ (?:is|was|has|had|still|now|will|can)\b")
_TO_ALL = re.compile(
    r"\b(?:if (?:he|she) (?:react|is|has)\w*|so (?:that )?(?:it|they|he|she) (?:\w+n't|never)|you|your|babies|infants|"
    r"children|toddlers|people|little ones|should|must|may|risk|likely|usual\w*|normal\w*|general\w*|often|"
    r"most(?:ly| of)|tends?|common\w*|chances?|percent|prevents?|safe|mean|never|always|advice|evidence|"
    r"says?|said|stud(?:y|ies)|recommend\w*|anybody|anyone|nobody|everybody)\b"
)
_LEFT_OPEN = re.compile(
    r"\b(?:if|unless|whether|(?<!, )which|what|must|should|have to|has to|had to|needs? to|could|would|make sure|"
    r"ensure|assured|search|hunt|looking|need|ask\w*|want\w*|he|she|not everything|in an?)\b"
)
_IS = re.compile(r"^(?!that\b)[\w' -]+ (?:is|are|isn't|aren't) ")
_OURS = re.compile(
    r"\b(?:my|try|this|these|our|(?:i|we) (?:made|make|bake|baked|cook|cooked|love)(?: an?| some| the)?) "
    r"(?:[\w-]+,? ){0,2}$"
)
_BAKES = re.compile(
    r"(?:[\w-]+ ){1,4}(?:tends? to|dr(?:y|ies)\b|crumbles?|browns?|rises?|absorbs?|soaks? up|drinks?|falls?|spreads?|"
    r"behaves?|needs? (?:more|less|a little)|takes? (?:more|less|longer)|bakes? (?:up|more|less|faster|slower)) "
)
"""How all bakes of a kind behave: "gluten-free *flours drink* more water" says of no food that it is free."""
_SWORN = re.compile(
    r"^\W*(?:i|we) (?:\w+ )?(?:swear|promise|know|bet|guarantee|checked|assure you|can (?:tell|promise|assure) you)"
    r"(?: on [^,.]{1,30},)?(?: that)? "
)
"""What a teller swears by, which leaves nothing open: "I promise the buns are egg-free"."""
_SOMEBODY = re.compile(
    r"\b(?:i|we|he|she|they|anyone|anybody|i'm|we're|families|parents|do(?:es)?|serves?|sells?|stocks?)\b"
)
_NAMED_SO = frozenset(
    "recipes ideas cooking baking blog blogs posts cookbook cookbooks household households families living".split()
)
"""What is sorted or known by what it is free of: "allergy-friendly *recipes* are on the blog"."""
_PROMISED = re.compile(
    r"\b(?:can|may) (?:\w+ )?be (?:made|kept) (?:\w+ )?$"
    r"|\bpromise[sd]? (?:\w+ )?$|\b(?:better|worse|calmer) (?:\w+ )?$|\bin (?:this|our) \w+ (?:is|are) $"
    r"|\b(?:this|these|those|our|all (?:of )?(?:my|our)) $"
)


def says_of_an_allergy(tagged: Tagged, match: Match) -> bool:
    """Whether an allergy is said to be brought, spared, told or outgrown, and not only whose it is: "an egg allergy
    nightmare", "the day she had a reaction to walnut". What makes a food an allergen says so by itself."""
    if not of_more_than_one_family(tagged, match):
        return False
    begin = (match.object or match.trigger)[0]
    if said_at(tagged, begin).endswith(_PROPERTIES):
        return True
    borne = tagged.find(_PERSONS, begin + 1, begin + 2) or _WHO_HAS.search(text_before(tagged, begin)) is not None
    if borne and not tagged.is_any(begin, _REACTION):
        return bool(tagged.find(_FOR_THEM)) or skipped(tagged)  # whose it is: what may they eat, or not?
    if _is_told_of(tagged, begin, end_of(match)) or _leads_to_it(tagged, begin):
        return True  # "shellfish allergies *tend* to last"
    around = max(0, first_of(match) - _AROUND), min(len(tagged.items), end_of(match) + _AROUND)
    return bool(tagged.find(_SAID_OF_IT, *around)) or _SAYS_SO.search(fold(tagged.words(*around))) is not None


def _is_told_of(tagged: Tagged, begin: int, end: int) -> bool:
    """Whether something is said of an allergy itself, and not of its signs or of one that somebody had."""
    said = tagged.find(_PREDICATED, end, end + 1) and said_at(tagged, end) not in _ONCE_WAS
    return bool(said) and _OF_IT.search(text_before(tagged, begin)) is None


def _leads_to_it(tagged: Tagged, begin: int) -> bool:
    """Whether a food comes first that is no part of the allergy's name: "*whey* makes it unfit for dairy allergies"."""
    eaten = tagged.find(_EATEN, 0, begin - 2)
    return bool(eaten) and not tagged.find(_IF, eaten[0], begin)


def of_more_than_one_family(tagged: Tagged, _match: Match) -> bool:
    """Whether it is told of more than one's own: "*we* found the walnut allergy on *his* birthday" is not, "*my* boy
    reacts to wheat, and so *may yours*" is."""
    text = tagged.low
    ours = _FAMILY.search(text) is not None or _ONE_NAMED.search(tagged.text) is not None
    return not ours or _TO_ALL.search(text) is not None


_SO = frozenset("so which ideal perfect great".split())
"""What a line goes on with that is free of a thing: "dairy-free and nut-free, *so* it can go along to nursery"."""


def said_to_be_free(tagged: Tagged, match: Match) -> bool:
    """Whether a food is said to be free of something: "these buns are egg-free", "Nut-free granola", "I made an
    egg-free cake", and not whatever somebody asks for, buys, keeps to or lives in."""
    begin = first_of(match)
    if not tagged.find(_FREE, begin, end_of(match)):
        return True
    before = _SWORN.sub("", text_before(tagged, begin))
    placed = at_its_place(tagged, begin, _DIRECT) if begin else None
    after = said_at(tagged, end_of(match))
    if after in _NAMED_SO:
        return False
    if (placed is not None and placed.of_dish) or _PROMISED.search(before) is not None:
        return True
    clause = before.rpartition(", ")[2]  # "contrary to *what* I was told, spelt is gluten-free"
    if _LEFT_OPEN.search(clause if _IS.search(clause) else before) is not None:
        return False
    of_all = placed is not None and (
        placed.said in _ALL or (placed.said == "the" and tagged.is_any(begin - 1, _PREDICATED))
    )
    if of_all and _SOMEBODY.search(before) is None:
        return True
    if tagged.find(_SERVED, end_of(match), end_of(match) + 2):
        if _BAKES.match(text_after(tagged, end_of(match))) is not None:
            return False
        return _OURS.search(before) is not None or _SOMEBODY.search(before) is None
    if after == "or" or (not begin and said_at(tagged, begin) in _DIETS and after.isalpha() and after not in _AND):
        return False  # "vegan or not", "vegan neighbours"
    if all(item.words in _LISTING or tagged.is_any(i, _LISTED) for i, item in enumerate(tagged.items[:begin])):
        said = next((i for i, item in enumerate(tagged.items) if item.words in _SO), len(tagged.items))
        return said <= _LINE or said_at(tagged, end_of(match)) == ":"
    named = tagged.find(_DISHES, begin - _NEAR_IT, begin)
    first = next((i for i in named if not tagged.is_any(i, _LEFT_OUT)), begin)  # "*ribbons*, nut and egg-free"
    return bool(named and tagged.find(_SAID, begin - 4, begin)) or not _MARKS.isdisjoint(tagged.symbols[first:begin])


def holds_another(tagged: Tagged, match: Match) -> bool:
    """Whether what is in a food is another than the food itself: not so in "two *eggs* contain two *yolks*"."""
    begin, end = match.object or match.trigger
    if _ASKED.search(text_before(tagged, begin)) is not None:
        return False
    if tagged.find(_BY_NAME, begin, end) or not tagged.find(_BY_NAME, match.start, match.trigger[0]):
        return True
    return not _allergens(tagged, begin, end) <= _allergens(tagged, match.start, match.trigger[0])


_ASKED = re.compile(r"\bask(?:s|ed|ing)?\b[^.;!?]{0,40}(?:\b(?:whether|if|what)\b|[\"“])", re.IGNORECASE)
"""What is asked of a shop or a cook, and said of no food: "ask the bakery whether they use nuts"."""


def as_introduced(tagged: Tagged, rule: Rule, effect: str | None, subject: tuple[int, int] | None) -> Rule:
    """When an allergen comes is told of the allergen, and of no danger of its age: "*egg* from about six months". Milk
    is a drink first, and its age is that of a drink."""
    if rule.kind != "safety-age" or effect != "age" or subject is None or tagged.find(_CUT) or not tagged.find(_AGES):
        return rule
    hard = _HARD if tagged.find(_MADE_SAFE) else frozenset()  # "no *nuts* before three unless *ground*"
    named = [i for i in tagged.find(_BY_NAME, *subject) if not tagged.is_any(i, hard)]
    brings = any(_allergens(tagged, at, at + 1) - {"milk"} for at in named)
    return replace(rule, kind="allergen") if brings else rule


def _allergens(tagged: Tagged, begin: int, end: int) -> set[str]:
    """The allergens of the foods among these items."""
    terms = (item.term for item in tagged.items[begin:end])
    return {one for term in terms if term is not None for sense in term.senses.values() for one in sense.allergens}
