"""Iron and energy over a week of dishes, as notes and never as orders: breast milk or formula is not counted."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.wording import listed
from spoonproof.model.finding import SourceRef
from spoonproof.model.numbers import Estimate
from spoonproof.model.record import dataclass


@dataclass(frozen=True, slots=True)
class DishFigures:
    """What the week asks of one dish: a portion's energy (kcal) and iron (mg), its grams; None where not known.
    ``iron_rich``: it holds what the authorities name for iron; ``liver``: it holds liver."""

    title: str
    grams: Estimate | None = None
    energy_kcal: Estimate | None = None
    iron_mg: Estimate | None = None
    iron_rich: bool = False
    liver: bool = False


@dataclass(frozen=True, slots=True)
class WeekNote:
    """One note for people, with its source."""

    id: str
    text: str
    source: SourceRef


def week_notes(days: Sequence[Sequence[DishFigures]], months: int, tables: FeedingTables) -> list[WeekNote]:
    """Notes on a week: ``days`` are the dishes of each day, ``months`` the baby's age.

    Says energy density (kcal per gram) against the usual range, days without an iron-rich food, liver served too
    often, and meals a day by age. What has no figure is named as not known, and no total is made of it.
    """
    facts = {row.text("id"): row for row in tables.rows.get("week_needs", ())}
    notes: list[WeekNote] = []
    for row in facts.values():
        low, high = row.number("from_months"), row.number("to_months")
        if (low is not None and months < low) or (high is not None and months >= high):
            continue
        value, most = row.number("low"), row.number("high")
        said = _say(row.text("fact"), days, value, most, row.text("says"))
        if said:
            notes.append(WeekNote(row.text("id"), said, tables.source(row)))
    return notes


def served(dishes: Sequence[DishFigures], meals: int, days: int) -> list[list[DishFigures]]:
    """``days`` days of ``meals`` dishes each: those not served the longest come first, and a day that would have
    nothing rich in iron gets such a dish in its last meal, unless all of them were served the day before.

    Those rich in iron are first spread evenly among the others; apart from that the given order stays.
    """
    rich, rest = ([dish for dish in dishes if dish.iron_rich is has] for has in (True, False))
    place = {id(dish): (at + 0.5) / len(group) for group in (rich, rest) for at, dish in enumerate(group)}
    waiting = sorted(dishes, key=lambda dish: place[id(dish)])
    week: list[list[DishFigures]] = []
    for _ in range(days if waiting else 0):
        today = [waiting[at % len(waiting)] for at in range(meals)]
        if not any(dish.iron_rich for dish in today):
            before = week[-1] if week else []
            today[-1] = next((d for d in waiting if d.iron_rich and d not in before), today[-1])
        waiting = [dish for dish in waiting if dish not in today] + [dish for dish in waiting if dish in today]
        week.append(today)
    return week


def usual_meals(months: int, tables: FeedingTables) -> int | None:
    """The least number of meals a day that is usual at this age; None where no authority is listed."""
    for row in tables.rows.get("week_needs", ()):
        low, high, least = row.number("from_months"), row.number("to_months"), row.number("low")
        if row.text("fact") == "meals" and least is not None and (low or 0) <= months < (high or 1_000):
            return int(least)
    return None


def _say(fact: str, days: Sequence[Sequence[DishFigures]], low: float | None, most: float | None, says: str) -> str:
    if fact == "energy-density":
        return _thin(days, low, says)
    if fact == "iron-daily":
        without = [number for number, dishes in enumerate(days, 1) if not any(dish.iron_rich for dish in dishes)]
        if not without:
            return ""
        if len(without) == len(days):
            return f"No dish with meat, fish, pulses or fortified cereal all week. {says}"
        return f"No dish with meat, fish, pulses or fortified cereal on {_listed(without)}. {says}"
    if fact == "meals" and low is not None:
        few = [number for number, dishes in enumerate(days, 1) if len(dishes) < low]
        span = f"{low:g} to {most:g}" if most is not None else f"{low:g}"
        return f"Fewer than {span} meals on {_listed(few)}. {says}" if few else ""
    if fact == "iron-share" and low:
        return _iron(days, low, says)
    if fact == "liver" and most is not None:
        on = [number for number, dishes in enumerate(days, 1) for dish in dishes if dish.liver]
        return f"Liver {len(on)} times, on {_listed(list(dict.fromkeys(on)))}. {says}" if len(on) > most else ""
    return ""


def _thin(days: Sequence[Sequence[DishFigures]], low: float | None, says: str) -> str:
    thin, unknown = [], []
    for dish in dict.fromkeys(dish for dishes in days for dish in dishes):
        if dish.energy_kcal is None or dish.grams is None or dish.grams.amount <= 0 or dish.energy_kcal.coverage < 0.9:
            unknown.append(dish.title)
        elif low is not None and dish.energy_kcal.amount / dish.grams.amount < low:
            thin.append(f"{dish.title} ({dish.energy_kcal.amount / dish.grams.amount:.1f} kcal/g)")
    parts = []
    if thin:
        parts.append(f"Thin in energy: {', '.join(thin)}. {says}")
    if unknown:
        parts.append(f"Energy not known for {', '.join(unknown)}.")
    return " ".join(parts)


def _iron(days: Sequence[Sequence[DishFigures]], need: float, says: str) -> str:
    known = [dish.iron_mg for dishes in days for dish in dishes if dish.iron_mg is not None]
    total = sum(len(dishes) for dishes in days)
    if not known or not days:
        return ""
    mean = sum(estimate.amount for estimate in known) / len(days)
    least = "" if len(known) == total and all(e.coverage >= 1 for e in known) else "at least "
    return f"These dishes bring {least}{mean:.1f} mg of iron a day, {100 * mean / need:.0f} % of {need:g} mg. {says}"


def _listed(numbers: Sequence[int]) -> str:
    return f"day{'s' * (len(numbers) > 1)} {listed(map(str, numbers))}"
