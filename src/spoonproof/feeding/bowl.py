"""What ends in the baby's bowl: food lines, the foods of recipes used as foods, and their kinds."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from spoonproof.feeding.baby_steps import baby_text
from spoonproof.feeding.kinds import Part, kinds_of, parts
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import keys
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import FoodLine, Recipe, Step
from spoonproof.model.record import NamedTuple
from spoonproof.model.treatment import Treatment

Treat = Callable[[Recipe], Sequence[Treatment]]
"""What happens to each food line of a recipe; how it is found out is another room's matter."""

_DEEPEST = 30  # recipes in recipes: more is a slip


class Inner(NamedTuple):
    """A food of a recipe that is used as a food: its ``part`` there and that ``recipe``."""

    part: Part
    recipe: Recipe


def in_baby_bowl(index: int, recipe: Recipe, treatments: Sequence[Treatment]) -> bool:
    """Whether a line ends (also) in the baby's bowl. What no step uses is counted in."""
    treatment = treatment_of(index, treatments)
    if treatment is not None and (treatment.bowl == "family" or treatment.left_out):
        return False
    bowls = {
        action.bowl or step.bowl
        for step in recipe.steps
        for action in step.actions
        if index in action.foods and not (step.splits and _behind_the_split(index, recipe, step))
    }
    return bowls != {"family"} and not (not bowls and _named_after_the_split(index, recipe))


def _named_after_the_split(index: int, recipe: Recipe) -> bool:
    """Whether only steps behind the one that lifts out the baby's portion name a line that no action uses."""
    split = next((step.index for step in recipe.steps if step.splits), None)
    name = keys(recipe.foods[index].name.rpartition(" ")[2])  # "salt the potatoes", where the line says sea salt
    if split is None or not name:
        return False
    naming = [step for step in recipe.steps if name <= keys(step.text)]
    return bool(naming) and all(
        (step.index > split and step.bowl != "baby") or (step.index == split and not name <= keys(baby_text(step)))
        for step in naming
    )


def _behind_the_split(index: int, recipe: Recipe, step: Step) -> bool:
    """Whether the step that lifts out the baby's portion names a line only behind that: "before you salt the rest"."""
    name = keys(recipe.foods[index].name.rpartition(" ")[2])
    return bool(name) and name <= keys(step.text) and not name <= keys(baby_text(step))


def treatment_of(index: int, treatments: Sequence[Treatment]) -> Treatment | None:
    """The treatment of a line; None when there is none."""
    return next((t for t in treatments if t.line == index), None)


def nested(line: FoodLine, others: Mapping[str, Recipe], seen: frozenset[str] = frozenset()) -> Iterator[Inner]:
    """Every food (and choice) of the recipes that ``line`` uses as a food, however deep; cycles end.

    What only the family's bowl of such a recipe gets is left out.
    """
    other = others.get(line.recipe) if line.recipe and line.recipe not in seen and len(seen) <= _DEEPEST else None
    if other is None or line.recipe is None:
        return
    family = _family_lines(other)
    for part in parts(other.foods):
        if part.at in family:
            continue
        if part.line.recipe:
            yield from nested(part.line, others, seen | {line.recipe})
        else:
            yield Inner(part, other)


def _family_lines(recipe: Recipe) -> frozenset[int]:
    """Lines that only the family's actions use."""
    family: set[int] = set()
    shared: set[int] = set()
    for step in recipe.steps:
        for action in step.actions:
            (family if (action.bowl or step.bowl) == "family" else shared).update(action.foods)
    return frozenset(family - shared)


def baby_kinds(
    recipe: Recipe,
    treatments: Sequence[Treatment],
    foods: Foods,
    tables: FeedingTables,
    others: Mapping[str, Recipe] | None = None,
) -> frozenset[str]:
    """The kinds of all that ends in the baby's bowl, ``or:`` choices and recipes used as foods included."""
    kinds: set[str] = set()
    for part in parts(recipe.foods):
        if not in_baby_bowl(part.at, recipe, treatments):
            continue
        if part.line.recipe and others and part.line.recipe in others:
            for inner in nested(part.line, others):
                kinds |= kinds_of(inner.part.line, foods, tables)
        else:
            kinds |= kinds_of(part.line, foods, tables)
    return frozenset(kinds)
