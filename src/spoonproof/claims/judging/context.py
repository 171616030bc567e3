"""What a claim is judged in: markets, payment, ages and the day."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Protocol

from spoonproof.claims.words import plain
from spoonproof.model.claim import Market, Paid
from spoonproof.model.danger import Danger
from spoonproof.model.need import Need
from spoonproof.model.record import NamedTuple, dataclass, field

NOT_EDITORIAL: frozenset[Paid] = frozenset({"gifted", "affiliate", "sponsored", "own-product"})


class OwnSource(NamedTuple):
    """A source the author brings, and the words of her statements that she says it supports."""

    id: str
    supports: tuple[str, ...]


def own_sources(items: Iterable[Mapping[str, object]]) -> tuple[OwnSource, ...]:
    """The author's sources out of a recipe's CSL-JSON items: ``custom: {supports: [words of the statement]}``.

    An item without an id or without words it supports backs nothing.
    """
    found: list[OwnSource] = []
    for item in items:
        custom = item.get("custom")
        words = custom.get("supports") if isinstance(custom, Mapping) else None
        phrases = (words,) if isinstance(words, str) else tuple(words) if isinstance(words, Sequence) else ()
        kept = tuple(phrase for phrase in phrases if isinstance(phrase, str) and len(phrase.split()) > 1)
        if kept and isinstance(item.get("id"), str):
            found.append(OwnSource(str(item["id"]), kept))
    return tuple(found)


def head_of(title: str) -> str:
    """What a dish is, out of its title: "mash" of "Salmon and pea fork mash with dill"."""
    words = _BESIDE.split(plain(title), maxsplit=1)[0].split()
    return words[-1] if words else ""


_BESIDE = re.compile(r" (?:with|on|in|for|from|of|without) ")


class Dangers(Protocol):
    """The hazard tables, asked of words."""

    def __call__(self, said: str, within: tuple[int, int], months: int, behind: str) -> Danger | None:
        """The gravest danger of what the sentence ``said`` gives at ``months`` in the claim's place ``within`` it;
        ``behind``: the words after it."""


class Needs(Protocol):
    """The reference intakes, asked for a child."""

    def __call__(self, nutrient: str, months: int) -> tuple[Need, ...]:
        """What each authority says a child of ``months`` needs of ``nutrient`` in a day."""


@dataclass(frozen=True, slots=True)
class Context:
    """``ages``: months the dish is for (the youngest counts); ``today`` an ISO date ("" : dates are not looked at).

    ``traits`` and ``allergens`` by food id, where the food table is at hand: what "no added sugar" or
    "dairy-free" is checked with; without them such statements stay unproven. ``own``: the author's sources.
    ``called``: the words of the dish's title, by which its own text may name it ("these ribbons"); ``head``: the
    one of them that says what it is; ``made_of``: the last word of each of its foods. ``named``: the id of the food
    that a name stands for ("rice" is white rice). ``dangers``: the hazard tables; without them nobody asks how a food
    that words give is served. ``needs``: the reference intakes for a day.
    """

    markets: tuple[Market, ...] = ("EU", "GB", "US")
    paid: Paid = "editorial"
    ages: tuple[int, int | None] = (6, 24)
    today: str = ""
    traits: Mapping[str, frozenset[str]] = field(default_factory=dict)
    allergens: Mapping[str, frozenset[str]] = field(default_factory=dict)
    own: tuple[OwnSource, ...] = ()
    called: frozenset[str] = frozenset()
    head: str = ""
    made_of: frozenset[str] = frozenset()
    named: Mapping[str, str] = field(default_factory=dict)
    dangers: Dangers | None = None
    needs: Needs | None = None

    def bound(self, market: Market) -> bool:
        """Whether the market's food-claim law reaches this speech: commercial communication only
        (Reg. 1924/2006 Art 1(2); the CAP Code and the FTC's guides on advertising); Codex binds no one."""
        return market != "Codex" and self.paid in NOT_EDITORIAL
