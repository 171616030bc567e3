"""How a food reaches the bowl: cut, softness, texture made, and what was taken out of it, as closed words.

The words (``FACTS``) are what the hazard tables' ``when`` and ``unless`` cells may hold. Cutting finer, cooking
longer and taking something out only ever add words that clear a hazard.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache

from spoonproof.feeding.baby_steps import baby_text, only_family, steps_of
from spoonproof.feeding.done_to import done_to, undone_later
from spoonproof.feeding.heat import (
    COOKED_IN,
    boiled_briefly,
    from_heat,
    heated_later,
    in_a_dough,
    left_underdone,
    timed_into_the_pot,
)
from spoonproof.feeding.line_words import from_words
from spoonproof.feeding.own_cuts import clause_of, cuts_the_dish, made_of_a_part, own_cut, without_namesakes
from spoonproof.feeding.parts import divided, kept_back, of_a_part, without_parts
from spoonproof.feeding.step_words import (
    ACROSS,
    ALONE,
    AROMATICS_OUT,
    BARE_STRAIN,
    BONES,
    BURST,
    CARVED,
    CLAUSE,
    DRINK,
    DRINK_HEAD,
    DRINK_NAME,
    DRINK_TITLE,
    GLOB,
    HOT_THROUGH,
    IN_FOUR,
    MIX,
    RARE,
    RUNNY,
    SET_IN_HEAT,
    SHELLS_OPEN,
    SOFTENED,
    SOLID,
    SPREAD_THIN,
    STONES,
    STRAINED_CLEAR,
    STRAINED_OFF,
)
from spoonproof.feeding.words import keys
from spoonproof.model.food import Food
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Cut, FoodLine, Recipe
from spoonproof.model.record import NamedTuple
from spoonproof.model.treatment import Treatment

Served = dict[int, frozenset[str]]
"""The facts of a dish's own lines by index, kept by whoever holds the dish: hazards, texture and cautions ask alike."""

FACTS = frozenset(
    """whole halved quartered lengthways coin slice dice chunk stick wedge floret chopped torn fine thin small bite
    raw cooked soft underdone ripe tinned soaked toasted
    blended blended-smooth mashed lumpy set melted burst squashed crushed
    stoned boned fillet bone-in-word peeled deseeded seedless skinless crumbled removed strained destrung
    mixed spread-thin glob baked tiny alone drink runny drained-rinsed in-brine
    no-salt low-salt homemade unsweetened a-little lion egg-free alcohol-free cooked-already smoked wilted
    hot-through across-grain
    sweetened core-low core-short
    chilling flour unpasteurised rare seared slow-cooked never-boiled uncooked salted heated-later split big counted
    said-hard said-soft discarded in-shell carved coarse
    said-firm""".split()
)
"""Every word a hazard row may ask for."""

_SHAPES = {
    "whole": "whole", "half": "halved", "quarter": "quartered", "slice": "slice", "coin": "coin", "dice": "dice",
    "chunk": "chunk", "baton": "stick", "strip": "stick", "wedge": "wedge", "floret": "floret", "chopped": "chopped",
    "torn": "torn", "shredded": "fine", "grated": "fine", "minced": "fine", "ground": "fine", "flaked": "fine",
    "mashed": "mashed", "puréed": "blended", "crumbled": "fine",
}  # fmt: skip
_SMALL_MM = 6.5  # a quarter inch: pieces for infants (NDSU Extension)
_MATCHSTICK_MM = 4.0  # a stick that bends (common practice, as in the table of cuts)
_BIG_MM = 20.0  # a piece that a toddler cannot chew down where it is meat (common practice)
_BITE_MM = 13.0  # half an inch: pieces for toddlers (Institute of Child Nutrition)


def line_served(
    index: int, recipe: Recipe, treatments: Sequence[Treatment], foods: Foods, kept: Served | None = None
) -> frozenset[str]:
    """The facts of a line of ``recipe``, taken from ``kept`` where they are there and put there where not."""
    if kept is not None and index in kept:
        return kept[index]
    line = recipe.foods[index]
    treatment = next((each for each in treatments if each.line == index), None)
    facts = as_served(line, index, recipe, treatment, foods.get(line.food) if line.food else None)
    if kept is not None:
        kept[index] = facts
    return facts


def as_served(
    line: FoodLine,
    index: int,
    recipe: Recipe,
    treatment: Treatment | None,
    food: Food | None,
    *,
    own_cuts: bool = False,
) -> frozenset[str]:
    """The facts of one food line (or of an ``or:`` choice of it, with ``own_cuts``) as it reaches the baby's bowl."""
    facts: set[str] = set()
    steps = steps_of(recipe, index, treatment, line.name)
    texts = [baby_text(step) for step in steps]
    from_words(line, facts, choice=own_cuts)
    ground = "fine" in facts or bool(line.cuts)
    if food is not None and food.group == "fish" and "whole" in keys(line.text) and "tinned" not in facts:
        facts.add("bone-in-word")
    cuts: list[Cut] = list(line.cuts)
    names = frozenset(key for key in keys(line.name) if len(key) > 2)
    parted = divided(texts, names)
    if not own_cuts:
        made = [
            *(treatment.cuts if treatment else ()),
            *(c for s in steps for a in s.actions if index in a.foods for c in a.cuts),
        ]
        made = [cut for cut in made if not (parted and of_a_part(clause_of(cut, recipe), names))]
        cuts += [cut for cut in made if own_cut(cut, recipe, names) and not cuts_the_dish(cut, index, recipe, food)]
    _from_cuts(cuts, facts)
    from_heat(treatment, texts, food, facts)
    if "raw" in facts and timed_into_the_pot(recipe, index):
        facts.discard("raw")
        facts.add("cooked")
    if not (parted and treatment and made_of_a_part(treatment, recipe, names)):
        _from_made(treatment, facts)
    called = _CALLED.get(food.group, frozenset()) if food is not None else frozenset[str]()
    left = without_namesakes([without_parts(t, names) for t in texts] if parted else texts, line, recipe)
    fats = {at for at, one in enumerate(recipe.foods) if at != index and keys(one.name) & COOKED_IN}
    of_it = [any({*action.foods} - fats == {index} for action in step.actions) for step in steps]
    _from_steps(recipe, index, left, line, facts, called, of_it)
    facts -= undone_later(facts, steps, texts, treatment)
    kept, uncut = kept_back(_babys(recipe), names)
    if kept:
        facts -= _WORKED
        if uncut and not line.cuts:
            facts -= _CUT_FACTS
    if called & _SEASONINGS and not ground and not _ground_in(left, names):
        facts.discard("fine")  # "poach the cod with the bay leaf; flake it": the cod is flaked
    if not facts & _CUT_FACTS:
        facts.add("whole")
    if facts & {"fine", "blended", "mashed"}:
        facts.discard("whole")
    return frozenset(facts)


_GRINDS = re.compile(r"\b(?:crush|grind|ground|pound|chop|shred|minc|grat|blitz|crumbl|snip|slic)\w*|\bfinely\b", re.I)


def _ground_in(texts: Iterable[str], names: frozenset[str]) -> bool:
    """Whether a clause that names the food itself grinds or chops it."""
    clauses = (match.group() for text in texts for match in CLAUSE.finditer(text))
    return any(names & keys(clause) and _GRINDS.search(clause) for clause in clauses)


# "flake the fish", where the line says swordfish; "shred the breast", where it says a whole chicken
_OF_AN_ANIMAL = frozenset({"meat", "breast", "thigh", "drumstick", "flesh"})
_CALLED = {
    "fish": frozenset({"fish", "flesh"}),
    "meat": _OF_AN_ANIMAL,
    "poultry": _OF_AN_ANIMAL,
    "spice": frozenset({"spice", "bark", "quill", "aromatic"}),
    "herb": frozenset({"herb", "aromatic", "spice"}),
}
_WORKED = frozenset("blended blended-smooth mashed lumpy fine squashed crushed minced".split())
"""What is not done to those kept back."""
_CUT_FACTS = frozenset(
    "halved quartered coin slice dice chunk stick wedge floret chopped torn fine squashed blended mashed whole".split()
)


def _from_cuts(cuts: Iterable[Cut], facts: set[str]) -> None:
    for cut in cuts:
        facts.add(_SHAPES[cut.shape])
        if cut.shape == "dice":
            facts.add("chunk")
        if cut.lengthways:
            facts.add("lengthways")
        high = cut.high_mm if cut.high_mm is not None else cut.low_mm
        if cut.shape == "coin":
            continue  # the size of a coin is its thickness: the shape is as wide as the carrot
        thick = cut.shape in ("baton", "strip")  # the size of a stick is its thickness: it is longer than that
        if high is not None and high <= (_MATCHSTICK_MM if thick else _SMALL_MM):
            facts.add("small")
        if high is not None and high <= _BITE_MM:
            facts.add("bite")
        if high is not None and high >= _BIG_MM and cut.shape in ("dice", "chunk"):
            facts.add("big")
    if "whole" in facts and facts & (_CUT_FACTS - {"whole"}):
        facts.discard("whole")


_MADE = {
    "smooth": ("blended", "blended-smooth"), "thick": ("blended",), "mashed": ("mashed",), "lumpy": ("lumpy",),
    "minced": ("fine",),
}  # fmt: skip


def _from_made(treatment: Treatment | None, facts: set[str]) -> None:
    if treatment is None:
        return
    facts.update(_MADE.get(treatment.made, ()))
    hot = [heat for heat in treatment.heats if heat.medium in ("oven", "fat", "pan")]
    if treatment.made_step is not None and any(heat.step > treatment.made_step for heat in hot):
        facts.add("set")
    if any(heat.medium == "oven" for heat in hot):
        facts.add("baked")


class _Words(NamedTuple):
    """What the steps say of a food that ``names`` (keys) name, beside the ``others`` of the dish."""

    line: FoodLine
    texts: Sequence[str]
    """Every step in which it is."""
    named: list[str]
    """Those that name it."""
    alone: list[str]
    """Those about no other food but fat: "fry in the oil for 4 minutes so it is still pink"."""
    babys: list[str]
    """All steps of the dish that the baby's bowl goes through."""
    names: frozenset[str]
    others: frozenset[str]

    def of_it(self) -> list[str]:
        """What is said of it, its line too."""
        return [*self.named, *self.alone, self.line.text]


_TELLS: tuple[tuple[str, re.Pattern[str], Callable[[_Words], Sequence[str]]], ...] = (
    ("in-shell", SHELLS_OPEN, lambda words: words.named),
    ("soaked", SOFTENED, lambda words: words.named),  # "soften the biscuits in the warm milk"
    ("carved", CARVED, lambda words: words.babys),
    ("rare", RARE, _Words.of_it),
    ("across-grain", ACROSS, _Words.of_it),
    ("hot-through", HOT_THROUGH, lambda words: words.texts),
    ("quartered", IN_FOUR, lambda words: [one for one in words.named if one in words.alone]),
)
"""A fact, how it is said, and of which words it is said."""


def _from_steps(
    recipe: Recipe,
    index: int,
    texts: Sequence[str],
    line: FoodLine,
    facts: set[str],
    called: frozenset[str],
    of_it: Sequence[bool],
) -> None:
    """``of_it``: of each text, whether a verb of it has this food alone for its object."""
    words = _words_of(recipe, texts, line, called, of_it)
    for text, alone in zip(texts, of_it, strict=True):
        facts |= done_to(text, words.names, words.others, alone and not words.names & keys(text))
    said = frozenset[str]().union(*(_said(text) for text in texts))
    facts |= said & {"stoned", "spread-thin", "mixed"}
    facts |= {fact for fact, _, where in _TELLS if any(fact in _tells(text) for text in where(words))}
    facts |= {"boned"} & frozenset[str]().union(*(_said(text) for text in words.babys))
    if any(_bursts(text, words.names, words.others) for text in words.named):
        facts.add("burst")
    facts |= _left_in_the_sieve(words, called)
    if _in_a_glob(words):
        facts.add("glob")
    if _drunk(recipe, words):
        facts.add("drink")
        if any(STRAINED_OFF.search(text) for text in words.babys):
            facts.add("strained")  # "simmer the spices in the milk; strain": what is drunk holds none of them
    bakes = "baked" in facts and in_a_dough(recipe, index)
    runny = "runny" in said and not bakes
    # "Cook for 2 minutes a side, so that it runs when you cut it": no food is named where all of it cooks.
    nameless = (text for text in words.babys if not keys(text) & (words.names | words.others))
    runny = runny or left_underdone([*texts, *nameless], bakes=bakes) or boiled_briefly(recipe, index)
    if (runny and "solid" not in said) or RUNNY.search(line.text):
        facts.add("runny")
    if heated_later(recipe, texts):
        facts.add("heated-later")
    if "raw" in facts and any(SET_IN_HEAT.search(text) for text in words.named):
        facts.discard("raw")  # "pour in the eggs and stir until set firm"
        facts.add("cooked")


def _babys(recipe: Recipe) -> list[str]:
    """The words of all steps that the baby's bowl goes through."""
    return [baby_text(step) for step in recipe.steps if not only_family(step)]


def _words_of(
    recipe: Recipe, texts: Sequence[str], line: FoodLine, called: frozenset[str], of_it: Sequence[bool]
) -> _Words:
    names = frozenset(key for key in keys(line.name) if len(key) > 2) | called
    others = frozenset(key for one in recipe.foods for key in keys(one.name) if len(key) > 2) - names
    fats = frozenset(key for one in recipe.foods if keys(one.name) & COOKED_IN for key in keys(one.name))
    return _Words(
        line,
        texts,
        [text for text, own in zip(texts, of_it, strict=True) if names & keys(text) or own],
        [text for text in texts if not keys(text) & (others - fats)],
        _babys(recipe),
        names,
        others,
    )


def _left_in_the_sieve(words: _Words, called: frozenset[str]) -> set[str]:
    """Whether a step strains it off ("simmer the rhubarb in the water; strain through a cloth") or takes it out."""
    facts = set()
    cleared = ((text, STRAINED_CLEAR.search(text)) for text in words.named)
    if any(strained and words.names & keys(text[: strained.start()]) for text, strained in cleared):
        facts.add("strained")
    if _TASTES_ONLY & (words.names | {words.line.food}) and any(BARE_STRAIN.search(text) for text in words.texts):
        facts.add("removed")
    if called & _SEASONINGS and any(AROMATICS_OUT.search(text) for text in words.babys):
        facts.add("removed")  # "discard the aromatics"
    return facts


def _in_a_glob(words: _Words) -> bool:
    if ALONE.search(words.line.text):
        return True
    return any(GLOB.search(text) and not ("mixed" in _said(text) and not ALONE.search(text)) for text in words.named)


def _drunk(recipe: Recipe, words: _Words) -> bool:
    """Whether the dish is a drink, or this food is poured as one."""
    title = recipe.title.value
    if DRINK_NAME.search(title) or DRINK_HEAD.search(title) or keys(title) & DRINK_TITLE:
        return True
    if DRINK.search(_without_names(words.line)):
        return True
    about = (*words.named, *words.alone, *(text for text in words.babys if not keys(text) & words.others))
    name = re.compile(re.escape(words.line.name), re.I)
    return any("drink" in _said(name.sub(" ", text)) for text in about)


_PLANT_DRINK = re.compile(r"\b(?:plant|plant[- ]based|nut|oat|soya?|almond|rice|coconut|pea) drinks?\b", re.I)


def _without_names(line: FoodLine) -> str:
    """What a line says beside the names of its foods: "or oat drink" names a food, and pours none."""
    text = line.text
    for name in (line.name, *(choice.name for choice in line.choices)):
        text = text.replace(name, " ")
    return _PLANT_DRINK.sub(" ", text)


_SAID = (
    ("stoned", STONES), ("spread-thin", SPREAD_THIN), ("mixed", MIX), ("boned", BONES),
    ("drink", DRINK), ("runny", RUNNY), ("solid", SOLID),
)  # fmt: skip


@lru_cache(maxsize=4_000)
def _said(text: str) -> frozenset[str]:
    """What a step says of all that is in it."""
    return frozenset(fact for fact, pattern in _SAID if pattern.search(text))


@lru_cache(maxsize=4_000)  # a step is asked for each food of the dish
def _tells(text: str) -> frozenset[str]:
    """The facts of which a text has words."""
    return frozenset(fact for fact, pattern, _ in _TELLS if pattern.search(text))


def _bursts(text: str, names: frozenset[str], others: frozenset[str]) -> bool:
    """Whether a clause that is not about another food lets this one burst ("until they burst")."""
    for match in BURST.finditer(text):
        start = max(text.rfind(mark, 0, match.start()) for mark in (".", ";", ",", " until ", " till ", " and "))
        here = keys(text[max(0, start) : match.end()])
        if here & names or not here & others:
            return True
    return False


_TASTES_ONLY = frozenset({"ginger", "galangal", "lemongrass", "anise", "cinnamon", "clove", "cardamom", "leaf", "bark"})
"""What gives its taste to a broth and is left in the sieve when that is strained."""
_SEASONINGS = frozenset({"spice", "herb"})
