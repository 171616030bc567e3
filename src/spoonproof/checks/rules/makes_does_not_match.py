"""What the recipe says it makes is not what goes into it.

Portions that are too large on paper make every figure on the page wrong, and the cook short of a meal; a weighed
trial that the foods can't give is a slip of the pen. Weights change by water in cooking: only what lies outside the
whole range of that is told.

Fails::

    makes: 20 x 60 g
    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - 2 tsp rapeseed oil
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes between finger and thumb.
      - Mash the potatoes with the oil.

Passes::

    makes: 4 x 60 g
    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - 2 tsp rapeseed oil
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes between finger and thumb.
      - Mash the potatoes with the oil.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.foods.sense import mismatch
from spoonproof.model.finding import Remedy

AREA = "cooking"
LEVEL = "warning"
SOURCES = ("common-practice",)


def check(dish: Dish) -> Iterator[Fault]:
    """One fault, at ``makes`` or at the last weighed trial."""
    found = mismatch(dish.recipe, dish.facts)
    if found is None:
        return
    low, high = f"{found.expected.low:.0f}", f"{found.expected.high:.0f}"
    span_of = f"{low} g" if low == high else f"{low} to {high} g"
    if found.kind == "trial":
        last = max(dish.recipe.trials, key=lambda trial: trial.on)
        text = f"The trial weighed {found.stated:.0f} g, but what goes in gives {span_of}."
        yield Fault(last.span, text, remedy=Remedy("Check the weight of the trial, or the amounts of the foods."))
        return
    makes = dish.recipe.makes
    if makes is None:
        return
    weighed = "the weighed trial gives" if dish.facts.weighed is not None else "what goes in gives"
    if not makes.in_portions:
        unit, to = ("ml", 50) if makes.ml is not None else ("g", 10)
        text = f"This makes {found.stated:g} {unit} on paper, but {weighed} {span_of}."
        remedy = Remedy(f"Write about {round(found.expected.mid / to) * to} {unit}, or weigh a trial.")
        yield Fault(makes.span, text, remedy=remedy)
        return
    text = f"This makes {found.stated:.0f} g on paper ({makes.count} x {makes.grams:g} g), but {weighed} {span_of}."
    portions = max(1, round(found.expected.mid / (makes.grams or 1)))
    yield Fault(makes.span, text, remedy=Remedy(f"Write about {portions} x {makes.grams:g} g, or weigh a trial."))
