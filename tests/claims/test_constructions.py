"""How English says what a food holds, does for the body or an illness, and what cooking does to it.

Each construction of ``frames/constructions.csv`` over foods, nutrients and ways of speaking; and beside them
``frames/near_misses.csv``, the same words said of taste, looks, price and the pan.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from itertools import product
from pathlib import Path

from tests.test_hearing import heard

FRAMES = Path(__file__).parent / "frames"
FOODS = (("kale", 0), ("lentils", 1), ("salmon and peas", 1), ("porridge", 0))
NUTRIENTS = ("iron", "vitamin C", "zinc and calcium")
WAYS = ("{X}.", "My health visitor says {x}.", "Did you know {x}?", "And guess what, {x}!", "{x} #weaning")
STILL_WRONG = (
    "{f} <gives/give> you virtually no {n}",
    "{f} <beats/beat> beef for {n}",
    "{f} <gives/give> babies energy",
    "got a cold? try {f}",
    "you lose the {n} when you cook {f}",
)
"""Constructions that are not heard rightly in every way of speaking yet."""
STILL_HEARD = (
    "{f} <leaves/leave> crisps behind when it comes to crunch",
    "she carried {f} home in a zinc bucket",
    "200 g low-fat quark, as you have it, and {f}",
    "250 g high-protein bread flour and a handful of {f}",
    "{f} <warms/warm> you up on a cold day",
    "the baby had a cold when we cooked {f}",
    "he slept through while I cooked {f}",
    "what {f} <brings/bring> is crunch",
    "a healthy pinch of salt over {f}",
    "{f} <makes/make> the gravy worse",
    "{f} <is/are> on a par with takeaway",
    "if you want crunch, eat {f}",
    "{f} <keeps/keep> things moving at dinner",
    "my gran's trick for gravy was {f}",
    "raw {f} <has/have> more crunch than cooked",
    "the weight of the {f} is 200 g",
    "{f} <has/have> twice the crunch of crackers",
    "{f} <boosts/boost> the taste of the gravy",
    "boil {f} with a pinch of salt",
    "1 cup reduced-fat milk, plus {f}",
    "2 slices high-fibre bread with {f}",
    "Lunch: carbs, protein and veg, so {f}",
    "for crunch, choose {f}",
    "she was sick the day I made {f}",
    "weigh {f} raw",
    "{f} <powers/power> through any sauce",
)
"""Near misses that are still taken for a claim."""
EVERY = 61
"""One in so many of all constructions over all foods, nutrients and ways of speaking, each in its turn."""


def rows(name: str) -> list[dict[str, str]]:
    with (FRAMES / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def sentences(said: list[str]) -> Iterator[tuple[str, str]]:
    """Each construction in its turn, and a sentence made of it."""
    for turn, (one, (food, many), nutrient, way) in enumerate(product(said, FOODS, NUTRIENTS, WAYS)):
        if turn % EVERY == 0:
            agreed = re.sub(r"<([^/>]*)/([^>]*)>", lambda m, many=many: m.group(1 + many), one)  # type: ignore[misc]
            clause = agreed.replace("{f}", food).replace("{n}", nutrient)
            yield one, way.replace("{X}", clause[0].upper() + clause[1:]).replace("{x}", clause)


def test_each_construction_is_heard_as_what_it_is() -> None:
    kinds = {row["said"]: row["kinds"].split("; ") for row in rows("constructions.csv")}
    made = sentences([said for said in kinds if said not in STILL_WRONG])
    assert [text for said, text in made if not any(one.claim.kind in kinds[said] for one in heard(text))] == []


def test_near_misses_are_left_alone() -> None:
    said = [row["said"] for row in rows("near_misses.csv") if row["said"] not in STILL_HEARD]
    assert [text for _, text in sentences(said) if heard(text)] == []
