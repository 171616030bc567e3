"""What a claim is about: the food, nutrient or dish among the words around its trigger."""

from __future__ import annotations

from spoonproof.claims.finding.beside import spelled_out, with_others
from spoonproof.claims.finding.clauses import clause_begin
from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import first_of, measures
from spoonproof.claims.finding.phrase import (
    ARTICLES,
    EATEN,
    FOOD,
    GENERIC,
    HELD,
    NAMED,
    NOUNS,
    NUTRIENT,
    Subject,
    both,
    named,
    noun,
)
from spoonproof.claims.finding.placed import at_its_place
from spoonproof.claims.finding.pronouns import spoken_of
from spoonproof.claims.finding.ranking import FEEDING, REACH, is_doing, is_said_as, is_subject, pronoun_before, rank
from spoonproof.claims.finding.spoken import read_clause
from spoonproof.claims.lexicon import COLON
from spoonproof.claims.scan import Tagged
from spoonproof.model.record import replace

_DISH_KINDS = ("nutrient-content", "general-benefit", "allergen", "process")
_OWN_WORDS = frozenset({"bottle", "fed-so"})
_PROCESSES = frozenset({"process"})
_WEAK = frozenset({"nutrient-weak"})
_SOLIDS = frozenset({"solids"})
_MILK_ALONE = frozenset({"main-food"})
_HOLDS = frozenset({"contain", "have", "copula", "high"})
_BRINGS = frozenset({"contain", "have"})
_PER_DAY = frozenset({"per-day"})
_NEEDS = frozenset({"need", "get-so-much", "should", "got"})
_SAID_OUT = (
    "as-sweet-as",
    "none-has-more",
    "fed-so-eats-so",
    "drops-a-day",
    "put-right",
    "through-it",
    "hides-in",
    "holds-that-allergen",
)
_LISTED_AFTER = ("got-from", "foods-with", "good-sources", "taken-with")
_ALLERGENS = frozenset({"allergen-food"})
_DIETS = (" diet", " diets")
_OF_SOLIDS = ("wait-until", "start-at-age", "ready-at-age", "milk-until", "too-early-harms")
_HEADING = 4  # items
_OF_REACH = 5
_TOLD = ("nutrient-content", "quantity", "comparative", "function", "disease", "general-benefit")
_TIES = frozenset("in on with from of".split())
_HELD_BY = frozenset({"in", "from"})  # "the omega-3s *in* the salmon, they help"


def subject_of(tagged: Tagged, match: Match) -> Subject:
    """The subject of a match; ``pronoun`` is set where the sentence does not name one."""
    found = _subject_of(tagged, match)
    if found.range is None and (elsewhere := _elsewhere(tagged, match, found)) is not None:
        return elsewhere
    in_it = match.rule.level == "free" or match.rule.name in ("holds-it", "listed-allergen")
    after = found.range is not None and found.range[0] >= first_of(match)
    if in_it and after and (placed := at_its_place(tagged, first_of(match))) is not None:
        return placed
    if found.pronoun or found.range is None:
        return found
    if (placed := _behind_aside(tagged, match, found)) is not None:
        return placed
    if match.rule.kind in _TOLD and (topic := _topic(tagged, match, found)) is not None:
        found = topic
    found = with_others(tagged, match, _led(tagged, match, found))
    heading = _heading(tagged)
    if heading is not None and heading.range != found.range and heading.texts[0] not in found.texts:
        found = both(heading, found)
    if match.rule.kind not in ("function", "disease"):
        return found
    # "the nitrates in beetroot help ...", "beans are rich in fibre, which ...": both are what it is about.
    end = first_of(match)
    begin = clause_begin(tagged, end)
    if found.range is None or found.range[0] > end:
        return found  # "it holds iron and my aunt swears by *mint* for wind": what goes before was told before
    if match.object and tagged.is_any(match.trigger[0], _BRINGS):
        end = max(end, match.object[0])  # "seeds *supply zinc*, vital for growth"
    more = [
        noun(tagged, i, HELD)
        for i in tagged.find(HELD, min(begin, found.range[0] - _OF_REACH), end)
        if (i >= begin or tagged.items[i + 1].words in _HELD_BY)
        and not (match.object and match.object[0] <= i < match.object[1])
        and not tagged.has(i, "food")
    ]
    texts = tuple(dict.fromkeys((*found.texts, *more[-4:])))
    return replace(found, texts=texts, why="“" + "”, “".join(texts) + "”") if texts != found.texts else found


def _elsewhere(tagged: Tagged, match: Match, found: Subject) -> Subject | None:
    """What a match is about where its clause names nothing: what its rule took for it, the noun phrase before its verb
    though nobody knows the word, the foods that it is spelled out with."""
    if found.texts:
        return None
    own = match.subject[0] if match.subject is not None else -1
    if tagged.is_any(own, NOUNS if match.rule.name == "free-from" else NAMED) and not (
        is_doing(tagged, own) or measures(tagged, own) or _is_fed(tagged, own)
    ):
        return replace(named(tagged, own, range(0)), pronoun=not tagged.is_any(own, FOOD), said=found.said)
    if (placed := at_its_place(tagged, first_of(match))) is not None:
        return replace(found, range=placed.range, texts=placed.texts) if found.said == "portion" else placed
    if not _begins_with_pronoun(tagged, match):
        return spelled_out(tagged, match.end)
    return None


def _behind_aside(tagged: Tagged, match: Match, found: Subject) -> Subject | None:
    """The noun phrase that nobody knows behind one that only opens the sentence: "unlike puffs, *this one* has"."""
    assert found.range is not None
    end = found.range[1]
    comma = tagged.symbols.find(",", end, first_of(match))
    if comma < 0 or rank(tagged, end - 1) >= 0:
        return None
    placed = at_its_place(tagged, first_of(match))
    return placed if placed is not None and placed.range is not None and placed.range[0] > comma else None


def _topic(tagged: Tagged, match: Match, found: Subject) -> Subject | None:
    """What is spoken of all along, where ``found`` stands in brackets or, behind what is said, tells where it goes or
    comes from: "*broths* (like others, kefir among them) ...", "mix in *flax*, and you added omega-3 to the bowl"."""
    assert found.range is not None
    at = found.range[0]
    if at >= first_of(match):
        before, passing = first_of(match), rank(tagged, at) < 0
    else:
        before = tagged.symbols.rfind("(", 0, at)
        passing = before > tagged.symbols.rfind(")", 0, at) and ")" in tagged.symbols[at : first_of(match)]
    if not passing:
        return None
    taken = range(*match.object) if match.object else range(0)
    earlier = [i for i in tagged.find(FOOD, 0, before) if i not in taken and not measures(tagged, i)]
    earlier = [i for i in earlier if not tagged.is_any(i + 1, FOOD)]  # of "tahini sauce" the sauce
    meant = spoken_of(tagged, earlier, "")
    return named(tagged, meant, taken) if meant is not None else None


def _led(tagged: Tagged, match: Match, found: Subject) -> Subject:
    """``found`` with what leads its phrase: "*beans* on toast are", "the *beetroot* in this dip", "*turmeric's* active
    ingredient"."""
    assert found.range is not None
    begin, end = found.range
    if end > first_of(match) or not is_subject(tagged, end - 1):
        return found
    at = begin - 1
    while at > 0 and (tagged.items[at].words in ARTICLES or tagged.symbols[at] == "_"):
        if tagged.items[at].words in _TIES:
            break
        at -= 1
    tie = tagged.items[at].words if at >= 0 else ""
    head = at if tie.endswith("'s") else at - 1 if tie.partition(" ")[0] in _TIES else -1
    heads = FOOD if match.rule.kind == "nutrient-content" else NAMED  # what is held is what it says
    return both(named(tagged, head, range(begin, end)), found) if tagged.is_any(head, heads) else found


def _is_fed(tagged: Tagged, at: int) -> bool:
    """Whether a word only tells how somebody is fed: "if you're *breastfeeding*, eat these"."""
    return tagged.items[at].words in FEEDING


def _heading(tagged: Tagged) -> Subject | None:
    """The food that a line opens with before a colon: "*Skyr*: a thick milk that is even higher in protein"."""
    at = tagged.symbols.find(COLON, 1, _HEADING)
    if at < 0 or not tagged.is_any(at - 1, FOOD) or tagged.find(_HOLDS, 0, at):
        return None
    return named(tagged, at - 1, range(0))


def _begins_with_pronoun(tagged: Tagged, match: Match) -> bool:
    """Whether what was named before is spoken of: "*they* are rich in fibre, like oats"."""
    return pronoun_before(tagged, 0, match.start) is not None


def _subject_of(tagged: Tagged, match: Match) -> Subject:
    kind = match.rule.kind
    taken = range(*match.object) if match.object else range(0)
    if kind in ("safety-age", "process", "allergen") and match.rule.level != "free":
        taken = range(0)
    wanted = EATEN if kind in ("safety-age", "quantity") else FOOD if kind in _DISH_KINDS else NAMED
    if (usual := _usual(tagged, match)) is not None:
        return usual
    if kind == "process" and match.subject is not None and not tagged.has(match.subject[0], "pronoun"):
        return _process(tagged, match)
    if kind == "safety-age":
        found = [i for i in tagged.find(wanted, match.start, match.end) if i not in taken and not is_doing(tagged, i)]
        if found:
            return named(tagged, _rather_a_food(tagged, found, match.end), taken)
    if kind == "quantity" and (so_much := _so_much_of(tagged, match)) is not None:
        return named(tagged, so_much, taken)
    if kind == "quantity" and match.object is not None and _is_needed(tagged, match):
        return named(tagged, match.object[0], range(0))
    return read_clause(tagged, match, wanted, taken)


def _so_much_of(tagged: Tagged, match: Match) -> int | None:
    """The food that there is so much of: "they should have 200 ml *of milk* a day"."""
    begin = match.trigger[0]
    return next((i for i in tagged.find(FOOD, begin + 1, begin + 6) if tagged.items[i - 1].words == "of"), None)


def _rather_a_food(tagged: Tagged, found: list[int], end: int) -> int:
    """The first of ``found`` that is a food by name rather than "solid food" or "weaning", if need be after ``end``."""
    for index in (*found, *tagged.find(FOOD, end, end + REACH), *tagged.find(FOOD, 0, found[0])):
        if (
            not (tagged.has(index, "solids") or is_said_as(tagged, index))
            and tagged.items[index].words.rpartition(" ")[2] not in FEEDING
        ):
            return index
    return found[0]


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
    if match.subject is not None and match.rule.name in _LISTED_AFTER and not tagged.has(match.subject[0], "pronoun"):
        listed = named(tagged, match.subject[0], range(0))  # "they get iron from *millet*"
        diet = _diet_of(tagged, match)
        return listed if diet is None else both(named(tagged, diet, range(diet)), listed)
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
    if match.subject is not None and match.rule.name == "for-the-free" and not tagged.has(match.subject[0], "pronoun"):
        return named(tagged, match.subject[0], range(0))  # "a child with a milk allergy can have *oat milk*"
    without = match.rule.level is not None  # "good for whoever has an egg allergy" is said of what is served
    if match.rule.kind == "allergen" and not without and (reacted := _reacted_to(tagged, match)) is not None:
        return reacted
    if effect == "allergen-introduction":
        said = [i for i in tagged.find(_ALLERGENS) if tagged.items[i].words not in FEEDING]
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
    done = tagged.words(*_done(tagged, match)).lower()
    chosen = before[:1] or foods[:1]
    if not chosen:
        return Subject(match.subject, (done,), (), False, False, f"“{done}”")
    food = named(tagged, chosen[0], range(0))
    texts = tuple(dict.fromkeys((*food.texts, done)))
    return Subject(food.range, texts, food.foods, food.of_dish, False, "“" + "”, “".join(texts) + "”")


def _done(tagged: Tagged, match: Match) -> tuple[int, int]:
    """What is done in the clause that says what comes of it: "they suffer when heated, but *steaming* keeps more"."""
    assert match.subject is not None
    comma = tagged.symbols.rfind(",", match.subject[1], match.trigger[0])
    own = tagged.find(_PROCESSES, comma, match.trigger[0]) if comma >= 0 else []
    return (own[0], own[0] + 1) if own else match.subject


def _is_done(tagged: Tagged, at: int) -> bool:
    """Whether a word for a food is something done to one: "steam or *stew* fruit"."""
    beside = at > 1 and tagged.items[at - 1].words in ("or", "and") and tagged.has(at - 2, "process")
    return tagged.has(at, "process") or beside


def _is_needed(tagged: Tagged, match: Match) -> bool:
    """Whether an amount is what somebody is to have of a nutrient a day: "she wants *him to get* 400 IU of it"."""
    begin = match.trigger[0]
    named_before = any(tagged.items[i].words not in FEEDING for i in tagged.find(FOOD, 0, begin))
    if named_before or not tagged.find(NUTRIENT, *(match.object or match.trigger)):
        return False
    daily = match.object is not None and tagged.find(_PER_DAY, match.start, match.object[1] + 3)
    return bool(daily) and bool(tagged.find(_NEEDS, begin - 6, begin))
