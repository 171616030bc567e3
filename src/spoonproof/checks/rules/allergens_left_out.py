"""A list of allergens in the author's words leaves one out.

"Contains milk" is read as the whole list: a family that avoids egg stops reading there. The page prints its own list,
worked out from the foods, their choices and the recipes used; the author's must not be shorter.

Fails::

    summary: "Contains: milk."
    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - 20 g unsalted butter
      - 2 eggs, hard-boiled, mashed

Passes::

    summary: "Contains: milk and egg."
    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - 20 g unsalted butter
      - 2 eggs, hard-boiled, mashed
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.allergens import Label
from spoonproof.feeding.told import short_lists
from spoonproof.model.finding import Remedy
from spoonproof.model.text import Span

AREA = "baby"
LEVEL = "error"
SOURCES = ("eu-1169-2011", "us-faster-act")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each list that is shorter than what the dish brings, in any of the channel's markets."""
    missing: dict[Span, dict[str, Label]] = {}
    for market in dish.markets:
        for short in short_lists(dish.recipe.passages, dish.allergens, dish.knowledge.feeding, market):
            labels = missing.setdefault(short.span, {})
            for label in short.missing:
                if label.allergen not in labels or label.source.basis == "read":
                    labels[label.allergen] = label
    for span, found in missing.items():
        found.pop("wheat" if "gluten" in found else "", None)
        words = " and ".join(label.word for label in found.values())
        sources = tuple(dict.fromkeys(label.source for label in found.values()))
        yield Fault(
            span,
            f"This list leaves out {words}, which the dish brings.",
            "error" if any(source.basis == "read" for source in sources) else "warning",
            bowl="baby",
            remedy=Remedy(f"Add {words}, or leave the list to the page."),
            sources=sources,
        )
