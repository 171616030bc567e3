"""Foods that hold an allergen and yet introduce none: fats, stocks and pinches bring next to none of its protein."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.feeding.calendar_order import Candidate, merged
from spoonproof.feeding.step_words import TINY_UNITS
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.wording import listed
from spoonproof.feeding.words import keys
from spoonproof.model.food import Food
from spoonproof.model.recipe import FoodLine

TRACE = "trace"
"""The fact that says from which amount on an allergen counts as given."""

_FATS = frozenset({"fat", "oil"})
_SEASONS = frozenset({"sauce", "seasoning"})
_STOCKS = frozenset({"stock", "broth", "bouillon", "gravy", "dashi"})
_NO_PROTEIN = frozenset({"sulphites"})


def only_a_trace(allergen: str, line: FoodLine, food: Food | None) -> bool:
    """Whether ``food`` as this line has it brings next to none of the allergen's protein: a fat, a stock or a pinch
    (common practice, no source). False where not known, and of a teaspoon of pesto: that is tried on its own first."""
    if food is None or allergen in _NO_PROTEIN:
        return False
    unit = line.amount.unit if line.amount is not None else ""
    if food.group in _FATS or unit in TINY_UNITS:
        return True
    return food.group in _SEASONS and bool(keys(food.id.replace("-", " ")) & _STOCKS)


def trace_notes(candidates: Sequence[Candidate], tables: FeedingTables) -> list[str]:
    """What to say of each allergen that some food brings as a trace alone: that this introduces nothing, that it may
    set off a reaction all the same, and what brings it in earnest here."""
    traces: dict[str, dict[str, None]] = {}
    earnest: dict[str, dict[str, None]] = {}
    names = {food: name for one in candidates for food, name in (one.names or {}).items()}
    for one in candidates:
        for food, brought in one.traces.items():
            for allergen in brought:
                traces.setdefault(allergen, {})[names.get(food, food)] = None
    for food, brought in merged(candidates).items():
        for allergen in brought:
            earnest.setdefault(allergen, {})[names.get(food, food)] = None
    if not traces:
        return []
    row = next((r for r in tables.rows.get("introduction", ()) if r.text("fact") == TRACE), None)
    notes = [row.text("says")] if row is not None else []
    for allergen, foods in traces.items():
        if allergen in earnest:
            does = "introduces" if len(earnest[allergen]) == 1 else "introduce"
            notes.append(f"{listed(foods)}: a trace of {allergen}, which {listed(earnest[allergen])} {does}.")
        else:
            notes.append(f"{listed(foods)}: a trace of {allergen}, which is still to be introduced, on its own.")
    return [f"{note[0].upper()}{note[1:]}" for note in notes]
