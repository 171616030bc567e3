"""A food bought ready brings an allergen that its name does not say.

Tahini is sesame, Worcestershire sauce holds fish, curry paste may hold shrimp, soy sauce wheat. The page names the
allergen by itself; this note says where it comes from, so that the script can say it too and the label is read.

Fails::

    ages: 8-10 months
    foods:
      - 1 tbsp tahini
      - 200 g courgette, 1 cm dice
    steps:
      - Steam the courgette for 12 minutes.
      - Mash the courgette with the tahini.

Passes::

    ages: 8-10 months
    foods:
      - 1 tsp rapeseed oil
      - 200 g courgette, 1 cm dice
    steps:
      - Steam the courgette for 12 minutes.
      - Mash the courgette with the oil.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.allergens import AllergenFound, named_in
from spoonproof.feeding.wording import is_plural
from spoonproof.model.finding import Remedy

AREA = "baby"
LEVEL = "note"
SOURCES = ("eu-1169-2011", "us-faster-act", "common-practice")


def check(dish: Dish) -> Iterator[Fault]:
    """A note for each line that hides an allergen of the channel's market."""
    lines: dict[int, list[AllergenFound]] = {}
    for one in dish.allergens:
        if one.how == "hidden" and not one.recipe:
            lines.setdefault(one.line, []).append(one)
    for index, found in lines.items():
        words = [label.word for label in named_in(found, dish.knowledge.feeding, dish.markets)]
        if not words:
            continue
        line = dish.recipe.foods[index]
        food = dish.knowledge.foods.get(line.food) if line.food else None
        several = is_plural(line.name)
        sure = food is not None and food.allergens
        brings = ("bring" if several else "brings") if sure else "may bring"
        yield Fault(
            line.name_span,
            f"{line.name[:1].upper()}{line.name[1:]} {brings} {' and '.join(words)}, "
            f"which {'their' if several else 'its'} name does not say.",
            remedy=Remedy("Read the label, and name the allergen when you say this food on film."),
        )
