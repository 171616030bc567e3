"""What a claim is judged in: markets, payment, ages and the day."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from spoonproof.model.claim import Market, Paid

NOT_EDITORIAL: frozenset[Paid] = frozenset({"gifted", "affiliate", "sponsored", "own-product"})


@dataclass(frozen=True, slots=True)
class Context:
    """``ages``: months the dish is for (the youngest counts); ``today`` an ISO date ("" : dates are not looked at).

    ``traits`` and ``allergens`` by food id, where the food table is at hand: what "no added sugar" or
    "dairy-free" is checked with; without them such statements stay unproven.
    """

    markets: tuple[Market, ...] = ("EU", "GB", "US")
    paid: Paid = "editorial"
    ages: tuple[int, int | None] = (6, 24)
    today: str = ""
    traits: Mapping[str, frozenset[str]] = field(default_factory=dict)
    allergens: Mapping[str, frozenset[str]] = field(default_factory=dict)

    def bound(self, market: Market) -> bool:
        """Whether the market's food-claim law reaches this speech: commercial communication only
        (Reg. 1924/2006 Art 1(2); the CAP Code and the FTC's guides on advertising); Codex binds no one."""
        return market != "Codex" and self.paid in NOT_EDITORIAL
