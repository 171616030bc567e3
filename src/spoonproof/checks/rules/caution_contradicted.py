"""A statement says the opposite of a caution.

Page, script and description carry cautions: stay with the baby, sit upright, appetite leads, chill what is kept, see a
health professional. A sentence that tells the reader to coax, to leave the baby, to leave food standing or that
a doctor is not needed takes the caution back, and the reader does what the story says.

Fails::

    summary: If she turns away, get her to finish the bowl.

Passes::

    summary: If she turns away, the meal is over; do not coax her to finish the bowl.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.advised import advised
from spoonproof.feeding.contradictions import Contradiction, contradictions
from spoonproof.model.finding import Remedy

AREA = "baby"
LEVEL = "warning"
SOURCES = ("who-qa", "nhs-storing", "nhs-allergies")
_OF_FOODS = frozenset({"raw-milk"})
"""Statements whose danger is also a food's, by the food's own row: one cause, one finding."""


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each statement that takes a caution back."""
    for found in contradictions(dish.recipe.passages, dish.knowledge.feeding):
        if found.row in _OF_FOODS and _told_of_the_food(dish, found):
            continue
        yield Fault(
            found.span, found.message, found.level, bowl="baby", remedy=Remedy(found.remedy), sources=(found.source,)
        )


def _told_of_the_food(dish: Dish, found: Contradiction) -> bool:
    """Whether ``danger_advised_in_words`` tells of the same."""
    feeding = dish.knowledge.feeding
    foods = advised([found.passage], dish.recipe.youngest, feeding, dish.channel.policies, dish.markets)
    return any(one.id == found.row for one in foods)
