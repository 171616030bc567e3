"""What stands before the verb of a claim in its clause, or what a pronoun there points to."""

from __future__ import annotations

from spoonproof.claims.finding.clauses import clause_begin
from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import first_of, measures
from spoonproof.claims.finding.phrase import FOOD, GENERIC, NAMED, NOUNS, NUTRIENT, Subject, both, lack, named, widen
from spoonproof.claims.finding.pronouns import agrees, antecedent
from spoonproof.claims.finding.ranking import (
    REACH,
    is_about_no_food,
    is_doing,
    is_subject,
    likeliest,
    pronoun_before,
    rank,
    said_by,
)
from spoonproof.claims.scan import Tagged
from spoonproof.model.claim import UNNAMED
from spoonproof.model.record import replace

_HOUSEHOLD = frozenset({"household"})
_HELD_OR_DONE = ("nutrient-content", "function", "disease", "general-benefit")
_SUFFIXES = frozenset({"suffix-high", "suffix-free"})
_NONE_OF = frozenset({"free"})
_DOING = ("function", "disease")
_RELATIVES = frozenset({"which", "that"})
_ALL_OF = frozenset({"both", "all", "two", "each", "of", "both of", "all of"})
_MAKES = frozenset({"make"})
_ASIDE = -2
_THERE = frozenset({"there"})
_IN = frozenset({"in", "inside"})
_PRONOUN = frozenset({"pronoun"})
_OWNING = frozenset({"its", "their"})
_THESE = frozenset({"this", "these"})
_WEAK = frozenset({"nutrient-weak"})
_SUBORDINATE = frozenset(
    "because since as though although while with for despite being packed rich full thanks".split()
)
_NEXT = 3  # items
_PEOPLE = frozenset({"he", "she"})
_OF_MANY = frozenset({"they", "theyre", "them"})
_BODY = frozenset({"body", "inner-body"})
_ABSENT = ("none", "free")
_OPENING = frozenset({"they", "these", "both", "it", "this", "those"})
_SET_AGAINST = frozenset({"than", "unlike", "whereas", "while"})
_PEOPLE_NAMED = frozenset({"audience-baby"})
_WHO_EATS = frozenset({"goes-without"})
_SAID = NAMED | GENERIC | {"solids"}
_HOLDS = frozenset({"contain", "have", "copula", "high"})
_ONE = frozenset({"one", "a", "an", "each", "every"})
_PARTS = frozenset({"tin", "slice", "can", "jar", "packet", "pouch", "half", "portion"})
_PORTION = frozenset({"per-portion"})
_SAYS = frozenset({"copula", "contain", "have", "benefit", "harm", "need", "keep", "make"})
_OPENS = 5  # items up to the pronoun that a sentence opens with
_NEEDS = frozenset({"need", "get-so-much", "should", "got"})


def read_clause(tagged: Tagged, match: Match, wanted: frozenset[str], taken: range) -> Subject:
    """Who stands before what is said, in its clause; else what a pronoun there points to; else what is named about."""
    kind, at = match.rule.kind, first_of(match)
    itself = _absent(tagged, match, taken)

    def foods(classes: frozenset[str], first: int, end: int) -> list[int]:
        found = [i for i in tagged.find(classes, first, end) if i not in taken and tagged.items[i].words != itself]
        found = [i for i in found if not tagged.is_any(i, _WHO_EATS)]
        return [i for i in found if not (measures(tagged, i) or _says_how(tagged, i, match) or is_doing(tagged, i))]

    begin = clause_begin(tagged, at)
    before = foods(wanted | GENERIC, begin, at)
    pronoun = pronoun_before(tagged, begin, at)
    people = pronoun is not None and _is_people(tagged, pronoun)
    pronoun = None if people else pronoun
    which = _which(tagged, begin, at)
    if which is not None and (pronoun is None or pronoun < which) and foods(wanted | GENERIC, which, which + 1):
        held = named(tagged, which, taken)
        if pronoun is None or people or kind not in _DOING or tagged.is_any(which, FOOD | GENERIC):
            return held
        return replace(held, pronoun=True, why=f"{held.why} of what was named before", said=said_by(tagged, pronoun))
    pronoun = pronoun if pronoun is not None else _held_in(tagged, at, match.end)
    hung = _hung_on(tagged, before, at)
    best = hung if hung is not None else _relative(tagged, before, at)
    best = likeliest(tagged, before, at) if best is None else best
    if best is None and pronoun is None:
        pronoun = _spoken_on(tagged, match, begin)
    if pronoun is not None and hung is None and (best is None or not _speaks_itself(tagged, best, pronoun)):
        earlier = foods(wanted, 0, pronoun)
        if match.rule.name == "free-from":  # "our hummus has none, so *it* is": the dish, and not what goes into it
            earlier = [i for i in earlier if is_subject(tagged, i)]
        meant = antecedent(tagged, earlier, pronoun)
        meant = _told_after(tagged, wanted, pronoun, match.end) if meant is None else meant
        return _carried(tagged, match, pronoun) if meant is None else named(tagged, meant, taken)
    if best is not None and (owner := _owned(tagged, best, pronoun if hung is not None else None)) is not None:
        held, of = named(tagged, best, taken), antecedent(tagged, foods(FOOD, 0, owner), owner)
        of = _told_after(tagged, FOOD, owner, match.end) if of is None else of
        if of is not None:
            return both(named(tagged, of, taken), held)
        said = said_by(tagged, owner)
        return replace(held, pronoun=True, why=f"{held.why} of what was named before", said=said)
    if best is not None:
        return named(tagged, best, taken, mixed_from=begin if kind in _DOING or match.rule.name == "harmful" else None)
    later = [
        i for i in tagged.find(wanted, at, match.end + REACH) if i not in taken and tagged.items[i].words != itself
    ]
    later = [i for i in later if not is_doing(tagged, i)]
    later = [i for i in later if not _says_how(tagged, i, match)] or ([] if match.rule.level in _ABSENT else later)
    if later and (opening := _opening(tagged, at)) is not None:
        later = [i for i in later if kind != "comparative" and tagged.items[i - 1].words not in _SET_AGAINST]
        if not later:
            return _carried(tagged, match, opening)
    if later:
        return named(
            tagged, later[0], taken, mixed_from=later[0] if kind in _DOING and match.rule.name != "needs" else None
        )
    if kind == "quantity" and (portion := _portion(tagged, begin, at, match.end)) is not None:
        return portion
    if kind == "quantity" and match.object is not None and _stands_alone(tagged):
        return named(tagged, match.object[0], range(0))
    if kind == "safety-age" and (generic := [i for i in tagged.find(GENERIC) if i not in taken]):
        return named(tagged, generic[0], taken)  # "can handle a variety of *foods*"
    own = match.subject[0] if match.subject is not None else -1  # -1: none
    if tagged.is_any(own, _SAID) and not measures(tagged, own):
        return named(tagged, own, taken)
    if elsewhere := foods(wanted, 0, at):
        return named(tagged, max(elsewhere, key=lambda i: (rank(tagged, i), -i)), taken)
    if before:
        return named(tagged, before[-1], taken)
    other = [i for i in tagged.find(NAMED) if i not in taken and tagged.items[i].words != itself]
    other = [i for i in other if not is_doing(tagged, i)]
    if match.rule.level in _ABSENT:
        other = [i for i in other if not _says_how(tagged, i, match)]
    if wanted is FOOD and other and not people:
        return named(tagged, other[0], taken)
    if kind in _DOING and (lacking := lack(tagged, at)) is not None:
        said = tagged.words(lacking, lacking + 1).lower()
        return Subject((lacking, lacking + 1), (said,), (), False, False, f"“{said}”")
    return _carried(tagged, match, None)


def _opening(tagged: Tagged, at: int) -> int | None:
    """The pronoun that a sentence about foods opens with, right before what is said at ``at``: "*they* have more iron
    than beef", "*both* beat milk for zinc"."""
    if tagged.find(_PEOPLE_NAMED, 0, at):
        return None
    return next((i for i in range(max(0, at - _NEXT), min(at, _NEXT)) if said_by(tagged, i) in _OPENING), None)


def _speaks_itself(tagged: Tagged, at: int, pronoun: int) -> bool:
    """Whether a noun is what is spoken of though a pronoun stands beside it, not what "it" is, makes or goes with."""
    if at < pronoun:
        return is_subject(tagged, at)
    return rank(tagged, at) > _ASIDE and not tagged.is_any(pronoun + 1, _MAKES)


def _hung_on(tagged: Tagged, before: list[int], at: int) -> int | None:
    """The noun right before the "which" or "that" whose clause says it: "this is down to *the oats, which* are not only
    cheap but full of fibre"."""
    if not before or tagged.is_any(before[-1], GENERIC):
        return None
    after = before[-1] + 1 + (tagged.symbols[before[-1] + 1] == ",")
    return before[-1] if after < at and tagged.items[after].words in _RELATIVES else None


def _relative(tagged: Tagged, before: list[int], at: int) -> int | None:
    """The noun that a relative clause hangs on, where the clause has none of its own that does what is said: "they hold
    *sorbitol*, which draws water into the gut"."""
    for index in range(at - 1, 0, -1):
        if tagged.items[index].words not in _RELATIVES or tagged.is_any(index + 1, NOUNS):
            continue
        noun = index - 1 - (tagged.symbols[index - 1] == ",")
        own = [i for i in before if i > index]
        return noun if own and noun in before and not any(is_subject(tagged, i) for i in own) else None
    return None


def _which(tagged: Tagged, begin: int, at: int) -> int | None:
    """The noun that a relative clause without a noun of its own hangs on: "it is full of *iron*, which helps", "made
    with *oats*, which are rich in", "it has zinc, *a mineral* that is vital"."""
    index = next((i for i in range(at - 1, max(0, begin - 1), -1) if tagged.items[i].words in _RELATIVES), None)
    if index is None or tagged.find(NOUNS, index, at) or pronoun_before(tagged, index + 1, at) is not None:
        return None
    noun = index - 1
    while noun > 0 and (tagged.symbols[noun] == "," or tagged.items[noun].words in _ALL_OF):
        noun -= 1
    comma = tagged.symbols.rfind(",", max(0, noun - _OPENS), noun)
    if comma > 0 and tagged.is_any(noun, _WEAK | GENERIC) and tagged.items[comma + 1].words in _ONE:
        noun = comma - 1
    return noun if _owned(tagged, noun, None) is None else None


def _held_in(tagged: Tagged, begin: int, end: int) -> int | None:
    """The pronoun of what is said to be "in *them*": "no sugar *in it*", "more iron *in it* than"."""
    for at in range(begin + 1, min(end + 2, len(tagged.items))):
        held = tagged.items[at - 1].words in _IN and tagged.is_any(at, _PRONOUN)
        if held and not tagged.is_any(at + 1, NOUNS):
            return at
    return None


def _spoken_on(tagged: Tagged, match: Match, begin: int) -> int | None:
    """The pronoun of the clause before one that only says what there is: "*it* is lean, so there isn't much fat"."""
    if (
        not any(item.words in _THERE for item in tagged.items[begin : match.end])
        or match.rule.kind not in _HELD_OR_DONE
    ):
        return None
    return pronoun_before(tagged, clause_begin(tagged, begin - 1), begin) if begin else None


def _told_after(tagged: Tagged, wanted: frozenset[str], pronoun: int, end: int) -> int | None:
    """What a pronoun stands for that its sentence names after the clause it opens with: "because *it* holds so much
    iron, *millet* is a staple", "with *its* sweet taste, *squash* makes"."""
    if pronoun > _OPENS or tagged.items[0].words.partition(" ")[0] not in _SUBORDINATE:
        return None
    said = said_by(tagged, pronoun)
    commas = (i for i in range(end, len(tagged.items)) if tagged.symbols[i] == ",")
    named_next = (i for comma in commas for i in tagged.find(wanted, comma + 1, comma + 1 + _NEXT)[:1])
    return next((i for i in named_next if is_subject(tagged, i) and agrees(tagged, i, said)), None)


def _owned(tagged: Tagged, at: int, pronoun: int | None) -> int | None:
    """The pronoun before a nutrient that is of what was named before: "*its* vitamin C helps", "*its* very high
    calcium", "*it* is full of iron that helps"."""
    if tagged.is_any(at, FOOD) or not tagged.is_any(at, NUTRIENT):
        return None
    if pronoun is not None and pronoun < at:
        return pronoun
    owner = widen(tagged, at) - 1
    for _ in range(min(_NEXT, owner + 1)):
        if tagged.items[owner].words in _OWNING or tagged.symbols[owner] in ",.?:()" or tagged.is_any(owner, _SAYS):
            break
        owner -= 1
    return owner if owner >= 0 and tagged.items[owner].words in _OWNING else None


def _absent(tagged: Tagged, match: Match, taken: range) -> str:
    """What is not there, which is not what it is not in: "No refined *sugar*, so he gets no sugar"."""
    none_of = taken and match.rule.level in _ABSENT and match.rule.kind == "nutrient-content"
    return tagged.items[taken[-1]].words.rpartition(" ")[2] if none_of else ""


def _is_people(tagged: Tagged, pronoun: int) -> bool:
    """Whether a pronoun stands for those who eat: "*they* need", "*their* kidneys"."""
    words = tagged.items[pronoun].words
    if words in _PEOPLE or (words == "their" and tagged.is_any(pronoun + 1, _BODY)):
        return True
    return words in _OF_MANY and bool(tagged.find(_NEEDS, pronoun + 1, pronoun + 3))


def _carried(tagged: Tagged, match: Match, pronoun: int | None) -> Subject:
    """The subject of what the sentence says of something named before, or of nothing."""
    said = said_by(tagged, pronoun) if pronoun is not None else ""
    if pronoun is not None and said.lower() in _THESE and tagged.find(_HOUSEHOLD, pronoun - 2, pronoun):
        return Subject((pronoun, pronoun + 1), (said,), (), True, False, f"“{said}”, the dish itself")
    if not said and match.rule.name == "from-age":
        return Subject(None, (), (), False, False, UNNAMED)  # "For babies from 7 months." marks a page, not a food
    if pronoun is None and is_about_no_food(tagged, match.trigger[0]):
        return Subject(None, (), (), False, False, UNNAMED)
    own_noun = tagged.words(pronoun + 1, pronoun + 2).lower() if pronoun is not None and said.lower() in _THESE else ""
    first = first_of(match)
    if match.rule.kind in _DOING and tagged.symbols[first - 1 : first] == "," and tagged.is_any(first - 2, NUTRIENT):
        own = named(tagged, first - 2, range(0))  # "it is rich in *vitamin A*, crucial for the eyes"
        return replace(own, pronoun=True, why=f"{own.why} of what was named before", said=said.lower())
    texts = (own_noun,) if own_noun and tagged.is_any((pronoun or 0) + 1, _WEAK) else ()  # "this *nutrient* helps"
    why = f"“{said}”, named before" if said else "what was named before"
    return Subject(None, texts, (), False, True, why, said.lower())


def _says_how(tagged: Tagged, at: int, match: Match) -> bool:
    """Whether a noun only says how another is: "*iron*-rich lentils", "*plant*-based", "no *syrup*", "*vegan*"."""
    none_of = match.rule.kind in (*_HELD_OR_DONE, "allergen") and tagged.is_any(widen(tagged, at) - 1, _NONE_OF)
    if match.rule.level in _ABSENT and tagged.has(at, "free-suffixed"):
        return True
    based = at + 1 < len(tagged.items) and tagged.items[at + 1].words == "based"
    return bool(none_of or based or tagged.is_any(at + 1, _SUFFIXES))


def _portion(tagged: Tagged, begin: int, at: int, end: int) -> Subject | None:
    """What is counted where no food is named: "one *bar* is", "each *fritter* has"; of a portion, a tin or a slice it
    is what is made that holds so much: "*per portion* there are"."""
    if tagged.find(_PORTION) or tagged.find(_HOUSEHOLD, begin, end):
        return Subject(None, (), (), False, True, "what is made", "portion")
    for index in range(begin + 1, min(begin + 4, at)):
        counted = tagged.items[index - 1].words in _ONE and tagged.items[index].term is None
        if counted and tagged.is_any(index + 1, _HOLDS):
            said = tagged.items[index].words
            return Subject((index, index + 1), (said,), (), False, said in _PARTS, f"“{said}”", "portion")
    return None


def _stands_alone(tagged: Tagged) -> bool:
    """Whether a number is said of the nutrient itself: "babies need at most 1 g of salt a day"."""
    return bool(tagged.find(frozenset({"audience-baby", "copula", "need"})))
