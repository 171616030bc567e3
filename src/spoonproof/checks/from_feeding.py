"""Hazards and texture faults of a dish as the faults that rules yield."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.hazards import Hazard
from spoonproof.feeding.texture import Issue
from spoonproof.model.finding import Remedy

SALT_ROWS = frozenset({"added-salt", "added-salt-toddler"})
SUGAR_ROWS = frozenset({"added-sugar", "added-sugar-toddler", "sugary-food", "date-sweetener", "date-blended"})


def of_hazards(dish: Dish, wanted: Callable[[Hazard], bool]) -> Iterator[Fault]:
    """A fault for each hazard of the dish that is ``wanted``."""
    for hazard in dish.hazards:
        if wanted(hazard):
            yield Fault(
                hazard.span,
                hazard.message,
                hazard.level,
                bowl=hazard.bowl,
                remedy=hazard.remedy,
                sources=hazard.sources,
            )


def of_texture(dish: Dish, issue: Issue) -> Iterator[Fault]:
    """A fault for each texture fault of this kind."""
    for fault in dish.texture.faults:
        if fault.issue == issue:
            yield Fault(
                fault.span, fault.message, fault.level, bowl="baby", remedy=Remedy(fault.remedy), sources=fault.sources
            )
