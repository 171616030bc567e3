"""What the tests of this room share: the tables read once, and recipes built by hand (no reading involved)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from functools import lru_cache
from typing import Any

from spoonproof.foods.changes import Changes
from spoonproof.foods.facts import Facts, facts
from spoonproof.foods.intakes import Intakes
from spoonproof.foods.table import FoodTable
from spoonproof.model.finding import Bowl
from spoonproof.model.recipe import AgeRange, Amount, Cut, CutShape, FoodLine, Makes, Minutes, Recipe, Trial
from spoonproof.model.table import Row
from spoonproof.model.text import NOWHERE, Document, Span, Spanned
from spoonproof.model.treatment import Heat, Treatment
from spoonproof.reading.bundle import bundle_root, read_table
from spoonproof.reading.measures import Measures


def rows(name: str) -> list[Row]:
    """The rows of one bundled table."""
    return read_table(bundle_root() / "shared" / f"{name}.csv")


@lru_cache(maxsize=1)
def table() -> FoodTable:
    """The bundled foods."""
    return FoodTable.from_rows(rows("foods"), rows("food_values"), rows("food_portions"), rows("food_values_more"))


@lru_cache(maxsize=1)
def changes() -> Changes:
    """The bundled retention factors and yields."""
    return Changes.from_rows(rows("retention"), rows("yields"))


@lru_cache(maxsize=1)
def intakes() -> Intakes:
    """The bundled reference intakes."""
    return Intakes.from_rows(rows("intakes"))


@lru_cache(maxsize=4)
def units(system: str = "UK") -> Measures:
    """The measures of one system."""
    return Measures.from_rows(rows("measures"), system)


def amount(low: str | int, unit: str = "g", high: str | int | None = None, **more: Any) -> Amount:
    """An amount; numbers as text may be fractions."""
    return Amount(Fraction(low), Fraction(low if high is None else high), unit, NOWHERE, **more)


def line(
    food: str | None,
    quantity: Amount | None,
    *prepared: str,
    cut: CutShape | None = None,
    before: str = "",
    recipe: str | None = None,
    name: str = "",
) -> FoodLine:
    """A food line; words in ``prepared`` stand after the name, ``before`` before it."""
    words = [(word, Span(50, 55)) for word in prepared]
    if before:
        words.insert(0, (before, Span(5, 9)))
    return FoodLine(
        text=name or food or recipe or "",
        span=NOWHERE,
        name=name or food or recipe or "",
        name_span=Span(20, 30),
        amount=quantity,
        food=food,
        recipe=recipe,
        cuts=(Cut(cut, NOWHERE),) if cut else (),
        prepared=tuple(words),
    )


def heat(retention: str, water: str = "none", minutes: float | None = None, step: int = 0) -> Heat:
    """One stretch of heat in the words of the verb table."""
    medium = {"steamed": "steam", "boiled": "water", "baked": "oven", "fried": "fat", "stewed": "water"}[retention]
    time = Minutes(minutes, minutes) if minutes else None
    return Heat(retention, medium, step, time, water, retention)  # type: ignore[arg-type]  # words of closed sets, by table


def recipe(
    foods: Sequence[FoodLine], makes: Makes | None = None, slug: str = "bowl", trials: Sequence[Trial] = ()
) -> Recipe:
    """A recipe of these lines."""
    document = Document(f"recipes/{slug}.md", "")
    ages = AgeRange(7, 9, NOWHERE)
    return Recipe(document, slug, Spanned(slug, NOWHERE), ages, tuple(foods), (), makes=makes, trials=tuple(trials))


def counted(
    foods: Sequence[FoodLine],
    heats: Mapping[int, Sequence[Heat]] | None = None,
    makes: Makes | None = None,
    trials: Sequence[Trial] = (),
    bowls: Mapping[int, Bowl] | None = None,
    left_out: Sequence[int] = (),
    others: Mapping[str, Recipe] | None = None,
) -> Facts:
    """The facts of a recipe of these lines, each through its heats."""
    treatments = [
        Treatment(i, 0, (bowls or {}).get(i), tuple((heats or {}).get(i, ())), left_out=i in left_out)
        for i in range(len(foods))
    ]
    made = recipe(foods, makes, trials=trials)
    return facts(
        made,
        treatments,
        table(),
        units(),
        changes(),
        recipes=others,
        treat=lambda r: [Treatment(i, 0) for i in range(len(r.foods))],
    )


def makes(count: int, grams: float | None = None) -> Makes:
    """``count`` portions."""
    return Makes(count, grams, NOWHERE)


def trial(on: str, grams: float) -> Trial:
    """A weighed trial."""
    return Trial(on, grams, True, "", NOWHERE)
