"""The dish is said to keep longer than an authority allows.

Cooked baby food keeps for two days in the fridge, and rice for one. Spinach and chard are eaten the same day, as
nitrate turns into nitrite while they stand: that is the Spanish agency's (AESAN) advice alone, so more than 24 hours of
them is a warning that names it, and an error where the channel chose AESAN for nitrate. The strictest figure that was
read leads. In the freezer food stays safe and loses taste and texture: longer than New Zealand's three to four weeks
for purées is a note, longer than the six months that the UK agency names a warning.

Fails::

    keeps: fridge 4 days, freezer 1 month

Passes::

    keeps: fridge 48 h, freezer 1 month
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy

AREA = "baby"
LEVEL = "error"
SOURCES = ("nhs-storing", "kidshealth-nz", "aesan-nitrate", "fsa-freezer-2016")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each stated time over the leading limit."""
    for fault in dish.keeping.faults:
        yield Fault(fault.span, fault.message, fault.level, remedy=Remedy(fault.remedy), sources=fault.sources)
