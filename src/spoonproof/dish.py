"""The pipeline on one page: what one recipe is, joined from the four rooms, each part computed once.

    recipe ─► treatments (cooking) ─► facts (foods) ─► numbers ─► claims judged (claims)
                        └──► hazards, texture, allergens, cautions, keeping (feeding)
                        └──► plan (cooking)
"""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from spoonproof.model.channel import Channel
from spoonproof.model.recipe import Recipe
from spoonproof.model.treatment import Treatment

if TYPE_CHECKING:
    from collections.abc import Mapping

    from spoonproof.knowledge import Knowledge


class Dish:
    """One recipe with all that can be worked out about it; nothing is computed before it is asked for."""

    def __init__(
        self, recipe: Recipe, channel: Channel, knowledge: Knowledge, others: Mapping[str, Recipe] | None = None
    ) -> None:
        """``others``: the channel's recipes by slug, for recipes used as foods."""
        self.recipe = recipe
        self.channel = channel
        self.knowledge = knowledge
        self.others = others or {}

    @cached_property
    def treatments(self) -> tuple[Treatment, ...]:
        """What happens to each food line, in the order of ``recipe.foods``."""
        from spoonproof.cooking.treatment import treat

        return treat(self.recipe, self.knowledge.foods, self.knowledge.verbs, self.knowledge.cook_times)
