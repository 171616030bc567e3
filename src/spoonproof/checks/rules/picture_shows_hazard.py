"""A picture shows a danger.

What a picture or thumbnail shows is copied: a whole grape, a nut, a honey jar, a baby who eats lying back or with
nobody by teaches as much as the text. Food that the picture shows is judged at the youngest age of the recipe.

Fails::

    ages: 7-9 months
    pictures:
      - {file: bowl.jpg, text: "A bowl of mash", shows: [bowl of mash, honey jar]}

Passes::

    ages: 7-9 months
    pictures:
      - {file: bowl.jpg, text: "A bowl of mash", shows: [bowl of mash, baby upright, adult present]}
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.pictures import picture_hazards
from spoonproof.model.finding import Remedy

AREA = "baby"
LEVEL = "warning"
SOURCES = ("dfe-food-safety-repost", "nhs-storing")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each danger that a picture shows."""
    for hazard in picture_hazards(dish.recipe, dish.knowledge.feeding, dish.channel.policies):
        remedy = Remedy(hazard.remedy) if hazard.remedy else None
        yield Fault(hazard.span, hazard.message, hazard.level, bowl="baby", remedy=remedy, sources=hazard.sources)
