"""The story or a step tells the reader to give the baby something dangerous beside the recipe.

The bowl may be safe and the words beside it not: whole grapes to nibble while the pan is on, a lick of honey, a popcorn
box for the picnic. The reader does what the story says. A warning against it is no fault, nor is what somebody
older eats.

Fails::

    summary: While it steams, let her nibble a few whole grapes.

Passes::

    summary: Never let her nibble whole grapes while it steams; I drizzle honey over my own bowl.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.advised import advised
from spoonproof.feeding.hazards import run_out

AREA = "baby"
LEVEL = "error"
SOURCES = ("dfe-food-safety", "nhs-avoid")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each danger that words hand to the baby, unless the bowl itself has it: one cause, one finding."""
    told = {hazard.id for hazard in dish.hazards}
    names = [part.name for line in dish.recipe.foods for part in (line, *line.choices)]
    for one in advised(
        dish.recipe.passages,
        dish.recipe.youngest,
        dish.knowledge.feeding,
        dish.channel.policies,
        dish.markets,
        (*names, *run_out(dish.recipe)),
    ):
        if one.id not in told:
            yield Fault(one.span, one.message, one.level, bowl="baby", remedy=one.remedy, sources=one.sources)
