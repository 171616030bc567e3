"""A calendar of new foods over chosen recipes: which dish on which day, so that new foods come as a policy asks.

Dates are day numbers from 1: a writer turns them into a calendar of its own. Which order is best, and where that is
proved, is ``calendar_order``'s matter.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from typing import Literal

from spoonproof.feeding.allergens import AllergenFound
from spoonproof.feeding.bowl import in_baby_bowl
from spoonproof.feeding.calendar_order import Candidate, Gaps, Had, best_order, merged, opens_on
from spoonproof.feeding.calendar_traces import TRACE, only_a_trace, trace_notes
from spoonproof.feeding.hazards import Hazard
from spoonproof.feeding.tables import FeedingTables
from spoonproof.model.finding import SourceRef
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass
from spoonproof.model.table import Row
from spoonproof.model.treatment import Treatment


@dataclass(frozen=True, slots=True)
class Event:
    """One day: ``kind`` food (a plain new food on its own), allergen (a new allergen on its own), dish, keep (an
    allergen given again, every ``every`` days from then on) or advice. ``day`` counts from 1; ``why`` is for people;
    ``slug`` the recipe, or ""; ``with_it`` the new foods that come with a dish, by name."""

    day: int
    kind: Literal["advice", "food", "allergen", "dish", "keep"]
    what: str
    why: str
    slug: str = ""
    source: SourceRef | None = None
    every: int = 0
    with_it: tuple[str, ...] = ()


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
    inner: Mapping[str, Candidate] | None = None,
    unfit: Collection[int] = (),
) -> Candidate:
    """A recipe as the calendar sees it: the plain foods of the baby's bowl (no water, no usual milk), with the
    allergens ``found`` in it (present or hidden) by the food that brings them. A recipe used as a food gives those of
    its own candidate in ``inner`` (by slug); one not there stands as a food by its slug. ``unfit``: the lines that
    are no food for a baby of its age, which are nothing to introduce. What brings a trace of an allergen (ghee, stock)
    introduces none."""
    ids: list[str] = []
    brings: dict[str, tuple[str, ...]] = {}
    names: dict[str, str] = {}
    left_out: list[str] = []
    unknown: list[str] = []
    traces: dict[str, tuple[str, ...]] = {}
    for index, line in enumerate(recipe.foods):
        if not in_baby_bowl(index, recipe, treatments):
            continue
        if line.recipe and (within := (inner or {}).get(line.recipe)) is not None:
            ids += within.foods
            brings |= within.allergens
            names |= within.names or {}
            left_out += within.unfit
            unknown += within.unknown
            traces |= within.traces
            continue
        food = foods.get(line.food) if line.food else None
        name = (food.parent or food.id) if food is not None else line.recipe or line.name
        if name == "water" or line.name.lower().endswith("usual milk"):
            continue  # what the baby drinks already is nothing new, and introduces no cow's milk
        allergens = {one.allergen for one in found if one.line == index and one.how in ("present", "hidden")}
        if index in unfit:
            left_out.append(f"{line.name} ({', '.join(sorted(allergens))})" if allergens else line.name)
            continue
        ids.append(name)
        if food is not None:
            names[name] = line.name if line.name in line.text else food.name  # no-salt stock stays what she wrote
        elif not line.recipe:
            names[name] = f"{line.name} (unknown)"
            unknown.append(line.name)
        if traced := {one for one in allergens if only_a_trace(one, line, food)}:
            traces[name] = tuple(sorted(traced))
        if allergens - traced:
            brings[name] = tuple(sorted(allergens - traced))
    return Candidate(
        recipe.slug,
        recipe.title.value,
        tuple(dict.fromkeys(ids)),
        brings,
        iron_rich,
        recipe.youngest,
        names,
        tuple(dict.fromkeys(left_out)),
        tuple(dict.fromkeys(unknown)),
        {
            food: left
            for food, all_ in traces.items()
            if (left := tuple(a for a in all_ if a not in brings.get(food, ())))
        },
    )


_NEVER = 120
"""Months from which on a row is about what no child should have, such as alcohol, whatever its level."""


def unfit_lines(recipe: Recipe, found: Sequence[Hazard], tables: FeedingTables) -> frozenset[int]:
    """The lines of ``recipe`` that are no food for a baby of its age as they are (salt, honey under one): not those
    that need only be prepared otherwise (an egg left raw)."""
    rows = {row.id: row for row in tables.hazards}
    return frozenset(
        one.line
        for one in found
        if one.line is not None
        and one.kind == "not-yet"
        and (row := rows.get(one.id)) is not None
        and not any(row.when)
        and (one.level == "error" or row.until > _NEVER)
        and one.food == recipe.foods[one.line].name
    )


_HIGH_RISK = ("severe eczema", "egg allergy", "peanut allergy", "known allergy", "food allergy", "allergy", "anaphyla")

_FORM = "form-"
"""How the facts begin that say in which form an allergen is given by itself."""


def calendar(
    candidates: Sequence[Candidate],
    knows: Iterable[str],
    tables: FeedingTables,
    policies: Mapping[str, str] | None = None,
    advice: str = "",
    by_hand: bool = False,
    age_months: int | None = None,
) -> Calendar:
    """The best order of ``candidates`` for a baby who ``knows`` these food ids; ties go by title.

    ``advice`` is the channel's ("severe eczema"): then a health professional comes before the first new allergen.
    ``by_hand``: the candidates' own order holds. ``age_months``: the baby's age on the first day, for which later
    dishes wait; None: ages are left out of it.
    """
    policy = tables.authority("new-foods", policies or {}) or "market"
    known = frozenset(knows)
    ordered = sorted(candidates, key=lambda one: (one.title, one.slug))
    said = [row for row in tables.rows.get("introduction", ()) if row.text("policy") in (policy, "*")]
    gaps, singly = _gaps([row for row in said if row.text("policy") == policy], tables)
    order, proved = (list(candidates), False) if by_hand else best_order(ordered, known, gaps, age_months)
    every_row = tables.rows.get("introduction", ())
    forms = {_fact(row).removeprefix(_FORM): row.text("says") for row in every_row if _fact(row).startswith(_FORM)}
    events = _events(order, known, gaps, age_months, singly, forms)
    events += _keep(events, tables)
    notes = [row.text("says") for row in said if not _fact(row).startswith((_FORM, TRACE))]
    if any(word in advice.lower() for word in _HIGH_RISK):
        events.append(_advice_first(advice))
        notes.insert(0, "With severe eczema or a known allergy, a health professional's advice comes first.")
    elif any(merged(ordered).values()) or any(one.traces for one in ordered):
        notes[:0] = _first_asked(ordered, tables)
    events.sort(key=lambda e: (e.day, _RANK[e.kind], e.what))
    if age_months is not None and candidates:
        notes.insert(0, f"Day 1 is at about {age_months} months; a dish for a later age waits for it.")
        notes += _iron_note(candidates, age_months)
    notes[:0] = _not_introduced(ordered)
    notes += trace_notes(ordered, tables)
    return Calendar(tuple(events), max((event.day for event in events), default=0), proved, policy, tuple(notes))


def _fact(row: Row) -> str:
    return row.text("fact")


def _gaps(rows: Sequence[Row], tables: FeedingTables) -> tuple[Gaps, SourceRef | None]:
    """The days that a policy leaves after a new food and a new allergen, and why allergens come singly."""
    days = {_fact(row): int(row.number("value") or 0) for row in rows if _fact(row).endswith("_gap_days")}
    singly = next((tables.source(row) for row in rows if _fact(row) == "allergen_gap_days"), None)
    return Gaps(food=days.get("food_gap_days", 0), allergen=days.get("allergen_gap_days") or 1), singly


def _advice_first(advice: str) -> Event:
    text = "Talk to your doctor or allergy team before the first new allergen."
    source = SourceRef("nhs-allergies", "talk to your GP or health visitor first")
    return Event(1, "advice", text, advice, source=source)


def _not_introduced(candidates: Sequence[Candidate]) -> list[str]:
    """What stands in the dishes and not in the calendar, or stands there and is not known."""
    notes = []
    if unknown := dict.fromkeys(food for one in candidates for food in one.unknown):
        notes.append(
            f"Unknown, so its allergens were not looked at: {', '.join(unknown)}. Name it as the table does before "
            "you plan; spoonproof check says how."
        )
    for one in candidates:
        if one.unfit:
            what = ", ".join(one.unfit)
            notes.append(f"{one.title}: no food for a baby of that age, so leave it out of the bowl too: {what}.")
    return notes


def _first_asked(candidates: Sequence[Candidate], tables: FeedingTables) -> list[str]:
    """Whom to ask before a new allergen, in the words of the pages' own cautions: a calendar is read by everybody."""
    brought = [*merged(candidates).values(), *(held for one in candidates for held in one.traces.values())]
    met = {allergen for allergens in brought for allergen in allergens}
    asks = {"allergy-first": True, "peanut-severe-eczema": "peanut" in met}
    return [row.text("text") for row in tables.rows.get("cautions", ()) if asks.get(row.text("id"))]


def _iron_note(candidates: Sequence[Candidate], age_months: int) -> list[str]:
    """What to say where no dish rich in iron can be served from the start."""
    iron = [one for one in candidates if one.iron_rich]
    if not iron:
        return ["None of these dishes brings much iron in a portion: give iron-rich food beside them from the start."]
    first = min(iron, key=lambda one: one.from_months)
    if first.from_months <= age_months:
        return []
    return [f"The first dish rich in iron here is for {first.from_months} months: give iron-rich food before it too."]


_RANK = {"advice": 0, "food": 1, "allergen": 2, "dish": 3, "keep": 4}


def _events(
    order: Sequence[Candidate],
    known: frozenset[str],
    gaps: Gaps,
    age_months: int | None,
    source: SourceRef | None,
    forms: Mapping[str, str],
) -> list[Event]:
    """Foods, allergens and dishes in this order; ``source`` says why allergens come singly, ``forms`` in which form
    an allergen is safe by itself ("cooked until solid": nobody gives raw flour or a whole nut)."""
    events: list[Event] = []
    allergens = merged(order)
    day, had = 1, Had(known, allergens)
    for one in order:
        names = one.names or {}
        new = had.new_in(one)
        met = set(had.allergens)
        for food in new.plain:
            if gaps.food:
                events.append(Event(day, "food", names.get(food, food), "a new food on its own", one.slug))
                day += gaps.food
        for food in new.strong:
            fresh = [allergen for allergen in allergens[food] if allergen not in met]
            met.update(fresh)
            form = "".join(f"{said}, " for said in dict.fromkeys(forms[one] for one in fresh if one in forms))
            on_its_own = f"a new allergen ({', '.join(fresh)}) on its own: a little"
            why = f"{on_its_own}, {form}early in the day, with two hours to watch"
            events.append(Event(day, "allergen", names.get(food, food), why, one.slug, source))
            day += gaps.allergen
        with_it = () if gaps.food else tuple(_with_trace(names.get(food, food), one, food) for food in new.plain)
        why = f"new with it: {', '.join(with_it)}" if with_it else "all its foods are known"
        events.append(Event(opens_on(one, day, age_months), "dish", one.title, why, one.slug, with_it=with_it))
        day += 1
        had.add(one.foods)
    return events


def _with_trace(name: str, one: Candidate, food: str) -> str:
    held = one.traces.get(food)
    return f"{name} (a trace of {' and '.join(held)})" if held else name


def _keep(events: Sequence[Event], tables: FeedingTables) -> list[Event]:
    """Each allergen again, from a week after it was first given, and every week from then on."""
    row = next((r for r in tables.rows.get("introduction", ()) if r.text("fact") == "keep_days"), None)
    if row is None:
        return []
    every = int(row.number("value") or 7)
    source = tables.source(row)
    why = "kept in the diet: from now on at least once a week"
    return [Event(e.day + every, "keep", e.what, why, "", source, every) for e in events if e.kind == "allergen"]


def as_text(plan: Calendar) -> str:
    """The plan as plain text, a line an event."""
    lines = [f"Day {event.day:>2}  {event.what}: {event.why}" for event in plan.events]
    proof = (
        "No other order brings iron, then the new allergens, then the dishes earlier."
        if plan.proved
        else "A good order; with so many recipes, a better one can't be ruled out."
    )
    return "\n".join([f"Policy: {plan.policy}. {proof}", *lines, *(f"- {note}" for note in plan.notes)]) + "\n"
