"""A calendar of new foods over chosen recipes: which dish on which day, so that new foods come as a policy asks.

Dates are day numbers from 1: a writer turns them into a calendar of its own. On small sets the order is provably
best (exhaustive search over sets of recipes with a bound); on larger ones it says that it is not proved.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Literal

from spoonproof.feeding.allergens import AllergenFound
from spoonproof.feeding.hazards import in_baby_bowl
from spoonproof.feeding.tables import FeedingTables
from spoonproof.model.finding import SourceRef
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Recipe
from spoonproof.model.treatment import Treatment

EXACT_MOST = 12
"""Recipes up to which the order is searched exhaustively."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A recipe as the calendar sees it: its foods (ids), which of them bring a common allergen, and iron.

    ``allergens`` maps a food id to the allergens it brings; ``iron_rich`` whether it is a good source of iron.
    """

    slug: str
    title: str
    foods: tuple[str, ...]
    allergens: Mapping[str, tuple[str, ...]]
    iron_rich: bool = False


@dataclass(frozen=True, slots=True)
class Event:
    """One day: ``kind`` food (a plain new food on its own), allergen (a new allergen on its own), dish, keep (an
    allergen given again) or advice. ``day`` counts from 1; ``why`` is for people; ``slug`` the recipe, or ""."""

    day: int
    kind: Literal["advice", "food", "allergen", "dish", "keep"]
    what: str
    why: str
    slug: str = ""
    source: SourceRef | None = None


@dataclass(frozen=True, slots=True)
class Calendar:
    """The plan: ``events`` by day, ``days`` its length, ``proved`` whether no order is better, the ``policy``
    by name, and ``notes`` that belong on the page."""

    events: tuple[Event, ...]
    days: int
    proved: bool
    policy: str
    notes: tuple[str, ...]


def candidate_of(
    recipe: Recipe,
    treatments: Sequence[Treatment],
    foods: Foods,
    found: Sequence[AllergenFound],
    iron_rich: bool = False,
) -> Candidate:
    """A recipe as the calendar sees it: the plain foods of the baby's bowl (water left out), with the allergens
    ``found`` in it (present or hidden) by the food that brings them."""
    names: list[str] = []
    brings: dict[str, tuple[str, ...]] = {}
    for index, line in enumerate(recipe.foods):
        if not in_baby_bowl(index, recipe, treatments):
            continue
        food = foods.get(line.food) if line.food else None
        name = (food.parent or food.id) if food is not None else line.recipe or line.name
        if name == "water":
            continue
        names.append(name)
        allergens = {one.allergen for one in found if one.line == index and one.how in ("present", "hidden")}
        # Wheat is one of the cereals with gluten: one allergen for the calendar, not two.
        allergens -= {"wheat"} if "gluten" in allergens else set()
        if allergens:
            brings[name] = tuple(sorted(allergens))
    return Candidate(recipe.slug, recipe.title.value, tuple(dict.fromkeys(names)), brings, iron_rich)


_HIGH_RISK = ("severe eczema", "egg allergy", "peanut allergy", "known allergy", "food allergy", "allergy", "anaphyla")


def calendar(
    candidates: Sequence[Candidate],
    knows: Iterable[str],
    tables: FeedingTables,
    policies: Mapping[str, str] | None = None,
    advice: str = "",
    by_hand: bool = False,
) -> Calendar:
    """The best order of ``candidates`` for a baby who ``knows`` these food ids.

    The best order opens the first iron-rich dish as early as may be, then the allergens, then all dishes (least
    sum of opening days); ties go by title. ``advice`` is the channel's ("severe eczema"): then a health
    professional comes before the first new allergen. ``by_hand``: the candidates' own order holds.
    """
    policy = tables.authority("new-foods", policies or {}) or "market"
    rows = {
        (row.text("policy"), row.text("fact")): row
        for row in tables.rows.get("introduction", ())
        if row.text("policy") in (policy, "*")
    }
    gaps = _Gaps(
        food=int((rows[policy, "food_gap_days"].number("value") or 0) if (policy, "food_gap_days") in rows else 0),
        allergen=int(
            (rows[policy, "allergen_gap_days"].number("value") or 1) if (policy, "allergen_gap_days") in rows else 1
        ),
    )
    known = frozenset(knows)
    ordered = sorted(candidates, key=lambda one: (one.title, one.slug))
    order, proved = (list(candidates), False) if by_hand else _best(ordered, known, gaps)
    high_risk = any(word in advice.lower() for word in _HIGH_RISK)
    events: list[Event] = []
    notes = [row.text("says") for row in tables.rows.get("introduction", ()) if row.text("policy") in (policy, "*")]
    if high_risk:
        text = "Talk to your doctor or allergy team before the first new allergen."
        events.append(
            Event(
                1, "advice", text, advice, source=SourceRef("nhs-allergies", "talk to your GP or health visitor first")
            )
        )
        notes.insert(0, "With severe eczema or a known allergy, a health professional's advice comes first.")
    events += _events(order, known, gaps, tables, policy)
    events += _keep(events, tables)
    events.sort(key=lambda e: (e.day, _RANK[e.kind], e.what))
    notes.append(
        "Reactions within minutes to two hours: swelling, hives, vomiting, wheezing or going floppy are an emergency. "
        "Delayed ones come hours to days later (worse eczema, tummy upset): write them down and ask your health "
        "professional."
    )
    return Calendar(tuple(events), max((event.day for event in events), default=0), proved, policy, tuple(notes))


_RANK = {"advice": 0, "food": 1, "allergen": 2, "dish": 3, "keep": 4}


@dataclass(frozen=True, slots=True)
class _Gaps:
    """Days from one new plain food, and from one new allergen, to the next new one; 0: the same day will do."""

    food: int
    allergen: int


def _new(one: Candidate, known: frozenset[str]) -> tuple[list[str], list[str]]:
    """New plain foods and new allergenic foods of a recipe, in its order.

    An allergen that the baby knows by another food is known.
    """
    had = {a for food in known for a in one.allergens.get(food, ())}
    plain: list[str] = []
    strong: list[str] = []
    for food in dict.fromkeys(one.foods):
        if food in known:
            continue
        allergens = set(one.allergens.get(food, ()))
        (strong if allergens - had else plain).append(food)
        had |= allergens
    return plain, strong


def _cost(one: Candidate, known: frozenset[str], gaps: _Gaps) -> int:
    """Days that the new foods of a recipe take before it can be served whole."""
    plain, strong = _new(one, known)
    return len(plain) * gaps.food + len(strong) * gaps.allergen


def _best(ordered: Sequence[Candidate], known: frozenset[str], gaps: _Gaps) -> tuple[list[Candidate], bool]:
    if len(ordered) > EXACT_MOST:
        return _greedy(ordered, known, gaps), False

    @cache
    def after(done: frozenset[int]) -> frozenset[str]:
        return known | {food for index in done for food in ordered[index].foods}

    @cache
    def best(done: frozenset[int]) -> tuple[tuple[int, int, int, tuple[int, ...]], ...]:
        """The best way on from ``done`` (its days are fixed by the set): (iron, allergens, dishes, order)."""
        if len(done) == len(ordered):
            return ((0, 0, 0, ()),)
        have = after(done)
        day = _day(done)
        iron_had = any(ordered[i].iron_rich for i in done)
        found = []
        for index, one in enumerate(ordered):
            if index in done:
                continue
            opens = day + _cost(one, have, gaps)
            strong = _new(one, have)[1]
            rest = best(done | {index})[0]
            iron = opens if one.iron_rich and not iron_had else rest[0]
            found.append((iron, rest[1] + opens * len(strong), rest[2] + opens, (index, *rest[3])))
        return (min(found),)

    @cache
    def _day(done: frozenset[int]) -> int:
        """Days used by a set of recipes: the foods they bring, whatever the order."""
        union = Candidate("", "", tuple(f for i in sorted(done) for f in ordered[i].foods), _merged(ordered))
        return _cost(union, known, gaps)

    order = best(frozenset())[0][3]
    return [ordered[index] for index in order], True


def _merged(ordered: Sequence[Candidate]) -> dict[str, tuple[str, ...]]:
    merged: dict[str, tuple[str, ...]] = {}
    for one in ordered:
        merged.update(one.allergens)
    return merged


def _greedy(ordered: Sequence[Candidate], known: frozenset[str], gaps: _Gaps) -> list[Candidate]:
    left, have = list(ordered), known
    order: list[Candidate] = []
    while left:
        iron_had = any(one.iron_rich for one in order)
        nearest = min(
            left, key=lambda one: (not one.iron_rich and not iron_had, _cost(one, have, gaps), one.title, one.slug)
        )
        left.remove(nearest)
        order.append(nearest)
        have = have | set(nearest.foods)
    return order


def _events(
    order: Sequence[Candidate], known: frozenset[str], gaps: _Gaps, tables: FeedingTables, policy: str
) -> list[Event]:
    row = next(
        (
            r
            for r in tables.rows.get("introduction", ())
            if r.text("policy") == policy and r.text("fact") == "allergen_gap_days"
        ),
        None,
    )
    source = tables.source(row) if row is not None else None
    events: list[Event] = []
    merged = _merged(order)
    day = 1
    have = known
    for one in order:
        plain, strong = _new(Candidate(one.slug, one.title, one.foods, merged), have)
        for food in plain:
            if gaps.food:
                events.append(Event(day, "food", food, "a new food on its own", one.slug))
                day += gaps.food
        for food in strong:
            named = ", ".join(merged.get(food, ()))
            why = f"a new allergen ({named}) on its own: a little, early in the day, with two hours to watch"
            events.append(Event(day, "allergen", food, why, one.slug, source))
            day += gaps.allergen
        fresh = [food for food in plain if not gaps.food]
        why = f"new with it: {', '.join(fresh)}" if fresh else "all its foods are known"
        events.append(Event(day, "dish", one.title, why, one.slug))
        have = have | set(one.foods)
    return events


def _keep(events: Sequence[Event], tables: FeedingTables) -> list[Event]:
    """Each allergen again, once a week after it was first given, to the end of the plan."""
    row = next((r for r in tables.rows.get("introduction", ()) if r.text("fact") == "keep_days"), None)
    if row is None:
        return []
    every = int(row.number("value") or 7)
    last = max((event.day for event in events), default=0)
    kept: list[Event] = []
    for event in events:
        if event.kind == "allergen":
            for day in range(event.day + every, last + 1, every):
                kept.append(
                    Event(day, "keep", event.what, "kept in the diet at least once a week", "", tables.source(row))
                )
    return kept


def as_text(plan: Calendar) -> str:
    """The plan as plain text, a line an event."""
    lines = [f"Day {event.day:>2}  {event.what}: {event.why}" for event in plan.events]
    proof = (
        "No order opens them earlier."
        if plan.proved
        else "A good order; too many recipes to prove that none is better."
    )
    return "\n".join([f"Policy: {plan.policy}. {proof}", *lines, *(f"- {note}" for note in plan.notes)]) + "\n"
