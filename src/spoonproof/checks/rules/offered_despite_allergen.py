"""Words offer the dish to a child who may not have what is in it.

"My nephew can't have eggs, so I bring this", and there is mayonnaise in it: a family with an allergy reads that line
and trusts it. A swap that is told ("if she can't have eggs, use mashed banana") and a warning are no fault.

Fails::

    summary: My nephew can't have eggs, so I bring this to every party.
    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - 2 eggs, hard-boiled, mashed

Passes::

    summary: If your little one can't have eggs, leave them out.
    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - 2 eggs, hard-boiled, mashed
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.avoided import avoided
from spoonproof.model.finding import Remedy, SourceRef

AREA = "baby"
LEVEL = "error"
SOURCES = ("eu-1169-2011", "us-faster-act")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each sentence that offers the dish to who avoids what is in it."""
    names = [line.name for line in dish.recipe.foods]
    told = [each.claim.span for each in dish.claims if each.claim.kind == "allergen" and each.truth == "false"]
    for one in avoided(dish.recipe.passages, dish.allergens, dish.knowledge.feeding, names):
        if any(span.start < one.span.end and one.span.start < span.end for span in told):
            continue  # the claim itself is judged untrue
        yield Fault(
            one.span,
            f"“{one.words}”: the dish brings {one.allergen} ({one.food}).",
            bowl="baby",
            remedy=Remedy(f"Take the words out, or cook it without {one.food}."),
            sources=(SourceRef("eu-1169-2011"),),
        )
