"""What a claim is about: the food, nutrient or dish among the words around its trigger."""

from __future__ import annotations

from spoonproof.claims.finding.beside import measures, says_which, spelled_out, with_others
from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import WHOLE, acts_alone, first_of, text_before
from spoonproof.claims.finding.phrase import (
    EATEN,
    FOOD,
    GENERIC,
    HELD,
    NAMED,
    NUTRIENT,
    Subject,
    both,
    lack,
    named,
    noun,
    widen,
)
from spoonproof.claims.finding.pronouns import THEN, agreeing, is_the_dish, right_before, still_the_same
from spoonproof.claims.finding.ranking import (
    FEEDING,
    REACH,
    begin_of,
    is_about_no_food,
    is_doing,
    is_subject,
    likeliest,
    pronoun_before,
    rank,
)
from spoonproof.claims.lexicon import COLON
from spoonproof.claims.scan import Tagged
from spoonproof.model.claim import UNNAMED, Kind
from spoonproof.model.record import replace

_HOUSEHOLD = frozenset({"household"})
_HELD_OR_DONE = ("nutrient-content", "function", "disease", "general-benefit")
_DISH_KINDS = ("nutrient-content", "general-benefit", "allergen", "process")
_SUFFIXES = frozenset({"suffix-high", "suffix-free"})
_NONE_OF = frozenset({"free"})
_DOING = ("function", "disease")
_OWN_WORDS = frozenset({"bottle", "fed-so"})
_THESE = frozenset({"this", "these"})
_WEAK = frozenset({"nutrient-weak"})
_PEOPLE = frozenset({"he", "she", "their"})
_ABSENT = ("none", "free")
_SAID = NAMED | GENERIC | {"solids"}
_SOLIDS = frozenset({"solids"})
_MILK_ALONE = frozenset({"main-food"})
_HOLDS = frozenset({"contain", "have", "copula", "high"})
_BRINGS = frozenset({"contain", "have"})
_ON_THIS = frozenset({"on-this"})
_PER_DAY = frozenset({"per-day"})
_NEEDS = frozenset({"need", "get-so-much", "should", "got"})
_SAID_OUT = ("as-sweet-as", "fed-so-eats-so", "drops-a-day", "put-right", "through-it")
_LISTED_AFTER = ("got-from", "foods-with", "good-sources", "taken-with")
_DIETS = (" diet", " diets")
_OF_SOLIDS = ("wait-until", "start-at-age", "ready-at-age", "milk-until", "too-early-harms")


def subject_of(tagged: Tagged, match: Match) -> Subject:
    """The subject of a match; ``pronoun`` is set where the sentence does not name one."""
    found = _subject_of(tagged, match)
    if (
        found.range is None
        and not found.texts
        and (says_which(tagged, match) or not _begins_with_pronoun(tagged, match))
    ):
        listed = spelled_out(tagged, match.end)
        if listed is not None:
            return listed
    if found.pronoun or found.range is None:
        return found
    found = with_others(tagged, match, found)
    heading = _heading(tagged)
    if heading is not None and heading.range != found.range and heading.texts[0] not in found.texts:
        found = both(heading, found)
    if match.rule.kind not in ("function", "disease"):
        return found
    # "the nitrates in beetroot help ...", "beans are rich in fibre, which ...": both are what it is about.
    end = first_of(match)
    begin = _own_clause(tagged, max(begin_of(tagged, end), end - 12), end)
    if found.range is None or found.range[0] > end:
        return found  # "it holds iron and my aunt swears by *mint* for wind": what goes before was told before
    if match.object and tagged.is_any(match.trigger[0], _BRINGS):
        end = max(end, match.object[0])  # "seeds *supply zinc*, vital for growth"
    more = [
        noun(tagged, i, HELD)
        for i in tagged.find(HELD, begin, end)
        if not (match.object and match.object[0] <= i < match.object[1])
    ]
    texts = tuple(dict.fromkeys((*found.texts, *more[-4:])))
    return replace(found, texts=texts, why="“" + "”, “".join(texts) + "”") if texts != found.texts else found


def _heading(tagged: Tagged) -> Subject | None:
    """The food that a line opens with before a colon: "*Skyr*: a thick milk that is even higher in protein"."""
    at = tagged.symbols.find(COLON, 1, _HEADING)
    if at < 0 or not tagged.is_any(at - 1, FOOD) or tagged.find(_HOLDS, 0, at):
        return None
    return named(tagged, at - 1, range(0))


def _own_clause(tagged: Tagged, begin: int, at: int) -> int:
    """Where the last clause before ``at`` begins: "cod is packed with iodine and | sweet potato keeps ..."."""
    for index in range(at - 1, begin + 1, -1):
        if acts_alone(tagged, index) or _opens_anew(tagged, index, begin):
            return index
        if tagged.items[index].words == "and" and tagged.is_any(index - 1, NUTRIENT):
            foods = tagged.find(FOOD, index + 1, min(index + 4, at))
            if foods and is_subject(tagged, foods[-1]) and tagged.find(_HOLDS, max(begin, index - 8), index):
                return index + 1
    return begin


def _opens_anew(tagged: Tagged, at: int, begin: int) -> bool:
    """Whether a clause opens with the noun at ``at``, which the joint before it says again: "full of zinc and *zinc
    is* ...": the one before has its own."""
    if tagged.items[at - 1].words not in THEN or not tagged.is_any(at, HELD) or not is_subject(tagged, at):
        return False
    return bool(tagged.find(_HOLDS, begin, at - 1)) and any(
        tagged.items[i].words == tagged.items[at].words for i in tagged.find(HELD, begin, at - 1)
    )


def _begins_with_pronoun(tagged: Tagged, match: Match) -> bool:
    """Whether what was named before is spoken of: "*they* are rich in fibre, like oats"."""
    return pronoun_before(tagged, 0, match.start) is not None


def _subject_of(tagged: Tagged, match: Match) -> Subject:
    kind = match.rule.kind
    taken = range(*match.object) if match.object else range(0)
    if kind in ("safety-age", "process", "allergen") and match.rule.name != "free-from":
        taken = range(0)
    wanted = EATEN if kind in ("safety-age", "quantity") else FOOD if kind in _DISH_KINDS else NAMED
    at = first_of(match)
    if (usual := _usual(tagged, match)) is not None:
        return usual
    if kind == "process" and match.subject is not None:
        return _process(tagged, match)
    if kind == "safety-age":
        found = [i for i in tagged.find(wanted, match.start, match.end) if i not in taken and not is_doing(tagged, i)]
        if found:
            return named(tagged, _rather_a_food(tagged, found, match.end), taken)
    if kind == "quantity" and (so_much := _so_much_of(tagged, match)) is not None:
        return named(tagged, so_much, taken)
    if match.rule.name == "start-allergens" and match.object is not None:
        given = tagged.find(FOOD, match.trigger[1], match.object[0])
        if given:  # "nursing mothers need not avoid *peanuts* to prevent allergies"
            return named(tagged, given[0], range(0))
    if kind == "general-benefit" and (of := _benefits_of(tagged, match)) is not None:
        return named(tagged, of, taken)
    if kind == "quantity" and match.object is not None and _is_needed(tagged, match):
        return named(tagged, match.object[0], range(0))
    begin = _own_clause(tagged, begin_of(tagged, at), at)
    # "No refined *sugar*, so he gets no sugar": what is not there is not what it is not in.
    none_of = taken and match.rule.level in _ABSENT and kind == "nutrient-content"
    absent = tagged.items[taken[-1]].words.rpartition(" ")[2] if none_of else ""
    itself = [i for i, item in enumerate(tagged.items) if item.words == absent] if absent else []

    def candidates(classes: frozenset[str], first: int) -> list[int]:
        return [
            i
            for i in tagged.find(classes, first, at)
            if not (
                i in taken or i in itself or measures(tagged, i) or _says_how(tagged, i, kind) or is_doing(tagged, i)
            )
        ]

    before = candidates(wanted | GENERIC, begin)
    pronoun = pronoun_before(tagged, begin, at)
    if pronoun is not None:
        before = agreeing(tagged, before, pronoun)
    best = likeliest(tagged, before, at)
    if pronoun is not None and (still_the_same(tagged, before, pronoun) or is_the_dish(tagged, match, before, pronoun)):
        said = tagged.words(pronoun, pronoun + 1)
        return Subject(None, (), (), False, True, f"“{said}”, named before", said.lower())
    if pronoun is not None and (beside := right_before(tagged, before, pronoun)) is not None:
        best, pronoun = beside, None  # "try goat's milk: it is ..."
    if best is not None and pronoun is not None:
        # "It is a grain that ..." is about "it"; "oats, they are ..." is about oats.
        further = pronoun > best and not is_subject(tagged, best)
        if further or (pronoun < best and rank(tagged, best) <= -2):
            best = None
    if best is not None:
        return named(tagged, best, taken, mixed_from=begin if kind in _DOING or match.rule.name == "harmful" else None)
    if pronoun is None or (not before and tagged.items[pronoun].words in _PEOPLE):
        later = [i for i in tagged.find(wanted, at, match.end + REACH) if i not in taken and i not in itself]
        later = [i for i in later if not _says_how(tagged, i, kind)] or later
        if later:
            return named(tagged, later[0], taken)
        if kind == "quantity" and match.object is not None and _stands_alone(tagged):
            return named(tagged, match.object[0], range(0))
        if kind == "safety-age" and (foods := [i for i in tagged.find(GENERIC) if i not in taken]):
            return named(tagged, foods[0], taken)  # "can handle a variety of *foods*"
    own = match.subject[0] if match.subject is not None else -1  # -1: none
    if pronoun is None and tagged.is_any(own, _SAID) and not measures(tagged, own):
        return named(tagged, own, taken)
    if elsewhere := candidates(wanted, 0):
        return named(tagged, max(elsewhere, key=lambda i: (rank(tagged, i), -i)), taken)
    if before and not (pronoun is not None and pronoun < before[-1] and not tagged.is_any(before[-1], NAMED)):
        return named(tagged, before[-1], taken)  # "*it* is a useful food that" is about "it"
    if pronoun is None and wanted is FOOD and (other := [i for i in tagged.find(NAMED) if i not in (*taken, *itself)]):
        return named(tagged, other[0], taken)
    if pronoun is None and kind in ("function", "disease") and (lacking := lack(tagged, at)) is not None:
        said = tagged.words(lacking, lacking + 1).lower()
        return Subject((lacking, lacking + 1), (said,), (), False, False, f"“{said}”")
    said = tagged.words(pronoun, pronoun + 1) if pronoun is not None else ""
    if pronoun is not None and said.lower() in ("this", "these") and tagged.find(_HOUSEHOLD, pronoun - 2, pronoun):
        return Subject((pronoun, pronoun + 1), (said,), (), True, False, f"“{said}”, the dish itself")
    if not said and match.rule.name == "from-age":
        return Subject(None, (), (), False, False, UNNAMED)  # "For babies from 7 months." marks a page, not a food
    own_noun = tagged.words(pronoun + 1, pronoun + 2).lower() if pronoun is not None and said.lower() in _THESE else ""
    texts = (own_noun,) if own_noun and tagged.is_any((pronoun or 0) + 1, _WEAK) else ()  # "this *nutrient* helps"
    if match.rule.name == "free-from" and WHOLE.search(text_before(tagged, match.start)) is not None:
        return Subject(None, (), (), True, False, "the dish itself")
    if not said and is_about_no_food(tagged, match.trigger[0]):
        return Subject(None, (), (), False, False, UNNAMED)
    why = f"“{said}”, named before" if said else "what was named before"
    return Subject(None, texts, (), False, True, why, said.lower())


def _so_much_of(tagged: Tagged, match: Match) -> int | None:
    """The food that there is so much of: "they should have 200 ml *of milk* a day"."""
    begin = match.trigger[0]
    return next((i for i in tagged.find(FOOD, begin + 1, begin + 6) if tagged.items[i - 1].words == "of"), None)


def _benefits_of(tagged: Tagged, match: Match) -> int | None:
    """The food right after "the benefits *of* eating"."""
    end = match.trigger[1]
    last = tagged.items[end - 1].words.rpartition(" ")[2]
    if last != "of" and (end >= len(tagged.items) or tagged.items[end].words != "of"):
        return None
    return next(iter(tagged.find(FOOD, end, end + _OF_REACH)), None)


_HEADING = 4  # items
_OF_REACH = 5
_FOUND_REACH = 4


def _rather_a_food(tagged: Tagged, found: list[int], end: int) -> int:
    """The first of ``found`` that is a food by name rather than "solid food" or "weaning", if need be after ``end``."""
    for index in (*found, *tagged.find(FOOD, end, end + REACH), *tagged.find(FOOD, 0, found[0])):
        if not tagged.has(index, "solids") and tagged.items[index].words.rpartition(" ")[2] not in FEEDING:
            return index
    return found[0]


def _says_how(tagged: Tagged, at: int, kind: Kind) -> bool:
    """Whether a noun only says how another thing is: "*iron*-rich lentils", "*plant*-based", "no *syrup*"."""
    none_of = kind in _HELD_OR_DONE and tagged.is_any(widen(tagged, at) - 1, _NONE_OF)
    based = at + 1 < len(tagged.items) and tagged.items[at + 1].words == "based"
    return none_of or based or tagged.is_any(at + 1, _SUFFIXES)


def _usual(tagged: Tagged, match: Match) -> Subject | None:
    """Readiness is about solid food and reactions about allergenic food, even where nobody says so; who thrives "on
    this" does so on what was named before, whatever comes after."""
    effect = match.rule.effect
    itself = match.subject is not None and (
        tagged.is_any(match.subject[0], _OWN_WORDS)
        or (match.rule.name == "needs" and tagged.is_any(match.subject[0], _WEAK))
    )
    if match.subject is not None and (effect == "milk-enough" or itself):
        own = tagged.words(*match.subject).lower()
        return Subject(None, (own,), (), False, False, f"“{own}”")
    if match.subject is not None and match.rule.name in _SAID_OUT and not tagged.has(match.subject[0], "pronoun"):
        own = tagged.words(*match.subject).lower()
        said_out = named(tagged, match.subject[0], range(0))
        return said_out if said_out.texts else replace(said_out, texts=(own,), why=f"“{own}”")
    if match.subject is not None and match.rule.name in _LISTED_AFTER:
        listed = named(tagged, match.subject[0], range(0))  # "they get iron from *millet*"
        diet = _diet_of(tagged, match)
        return listed if diet is None else both(named(tagged, diet, range(diet)), listed)
    if match.subject is not None and tagged.is_any(match.subject[0], _ON_THIS):
        before = tagged.find(FOOD, 0, match.start)
        own = tagged.words(*match.subject)
        return (
            named(tagged, before[-1], range(0))
            if before
            else Subject(None, (), (), False, True, f"“{own}”, named before")
        )
    if match.rule.name == "found-in" and (held := tagged.find(FOOD, match.trigger[1], match.trigger[1] + _FOUND_REACH)):
        return named(tagged, held[0], range(0))  # "it is found in *kale*"
    if effect == "readiness-signs" or match.rule.name in _OF_SOLIDS:
        if tagged.find(_SOLIDS | FOOD):
            return None
        if tagged.find(_MILK_ALONE) and not any("solid" in item.words for item in tagged.items):
            return Subject(None, ("breast milk", "formula milk"), (), False, False, "milk feeds, as usual")
        if tagged.find(GENERIC):
            return None
        return Subject(None, ("solid food",), (), False, False, "solid food, as usual")
    if effect == "choking-supervision" and not tagged.find(EATEN):
        return Subject(None, ("eating", "food"), (), False, False, "eating, whatever is eaten")
    if match.subject is not None and match.rule.name == "given-instead" and not tagged.has(match.subject[0], "pronoun"):
        return named(tagged, match.subject[0], range(0))  # "a child with a milk allergy can have *oat milk*"
    if match.rule.kind == "allergen" and (reacted := _reacted_to(tagged, match)) is not None:
        return reacted
    if effect == "allergen-introduction":
        said = tagged.find(frozenset({"allergen-food"}))
        if said:
            return named(tagged, said[0], range(0))
        usual: tuple[str, ...] = ("allergenic food", "allergen")
        if match.object is not None and tagged.has(match.object[0], "new-food"):
            usual = (tagged.words(*match.object).lower(), *usual)
        return Subject(None, usual, (), False, False, "allergenic food, as usual")
    return None


def _diet_of(tagged: Tagged, match: Match) -> int | None:
    """The diet of whoever gets a nutrient: "babies on *a vegan diet* may not get enough zinc from beans"."""
    diets = [i for i in tagged.find(FOOD, 0, match.trigger[0]) if tagged.items[i].words.endswith(_DIETS)]
    return diets[-1] if diets else None


def _reacted_to(tagged: Tagged, match: Match) -> Subject | None:
    """What an allergy is to: "allergic to *cow's milk*", "a *peanut* allergy"."""
    start, end = match.object or match.trigger
    if tagged.items[end - 1].words.endswith(" to") or tagged.items[min(end, len(tagged.items) - 1)].words == "to":
        foods = tagged.find(FOOD, end, end + 4)
        return named(tagged, foods[0], range(0)) if foods else None
    own = next((i for i in range(start, end) if tagged.has(i, "food-allergy")), None)
    if own is None or tagged.find(FOOD, 0, own):
        return None
    said = tagged.items[own].words.rpartition(" ")[0]
    return Subject((own, own + 1), (said,), (), False, False, f"“{said}”") if said else None


def _process(tagged: Tagged, match: Match) -> Subject:
    """The foods of the sentence and the process itself: "steaming broccoli"."""
    assert match.subject is not None
    foods = [i for i in tagged.find(FOOD) if not (match.object and match.object[0] <= i < match.object[1])]
    foods = [i for i in foods if not _is_done(tagged, i)] or foods
    before = [i for i in foods if i < match.end]
    done = tagged.words(*match.subject).lower()
    chosen = before[:1] or foods[:1]
    if not chosen:
        return Subject(match.subject, (done,), (), False, False, f"“{done}”")
    food = named(tagged, chosen[0], range(0))
    texts = tuple(dict.fromkeys((*food.texts, done)))
    return Subject(food.range, texts, food.foods, food.of_dish, False, "“" + "”, “".join(texts) + "”")


def _is_done(tagged: Tagged, at: int) -> bool:
    """Whether a word for a food is something done to one: "steam or *stew* fruit"."""
    beside = at > 1 and tagged.items[at - 1].words in ("or", "and") and tagged.has(at - 2, "process")
    return tagged.has(at, "process") or beside


def _is_needed(tagged: Tagged, match: Match) -> bool:
    """Whether an amount is what somebody is to have of a nutrient a day: "she wants *him to get* 400 IU of it"."""
    begin = match.trigger[0]
    if not tagged.find(NUTRIENT, *(match.object or match.trigger)) or tagged.find(FOOD, 0, begin):
        return False
    daily = match.object is not None and tagged.find(_PER_DAY, match.start, match.object[1] + 3)
    return bool(daily) and bool(tagged.find(_NEEDS, begin - 6, begin))


def _stands_alone(tagged: Tagged) -> bool:
    """Whether a number is said of the nutrient itself: "babies need at most 1 g of salt a day"."""
    return bool(tagged.find(frozenset({"audience-baby", "copula", "need"})))
