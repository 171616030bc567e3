"""The author's own description or script leaves out a caution that the dish needs.

The page, the description and the script that are made here carry every caution; words that are pasted elsewhere carry
only what stands in them. A note, since the making adds what is missing.

Fails::

    film:
      description: A soft mash of potato for small hands.

Passes::

    film:
      description: >-
        A soft mash of potato. Stay with your baby, who sits upright and decides how much; any food can be a choking
        risk, so learn first aid. Let it cool first. Chill what is kept, thaw it in the fridge, reheat it once. A baby
        born early or with an allergy, or one that worries you: ask your health visitor.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.cautions import Caution
from spoonproof.feeding.told import untold
from spoonproof.model.finding import Remedy

AREA = "film"
LEVEL = "note"
SOURCES = ("nhs-storing", "who-qa", "common-practice")


def check(dish: Dish) -> Iterator[Fault]:
    """One note for the description and one for the script, each with all that it leaves out."""
    film = dish.recipe.film
    if film is None:
        return
    tables = dish.knowledge.feeding
    if film.description is not None:
        missing = untold([film.description.value], dish.cautions, tables)
        if missing:
            yield Fault(
                film.description.span,
                f"Your description leaves out {_part(missing, dish.cautions)}; {_added(missing)}.",
                bowl="baby",
                remedy=Remedy("Where you paste it yourself, add: " + " ".join(one.text for one in missing)),
                sources=tuple(dict.fromkeys(one.source for one in missing)),
            )
    said = [segment.say for segment in film.segments if segment.say is not None]
    aloud = [caution for caution in dish.cautions if caution.spoken]
    missing = untold([text.value for text in said], aloud, tables) if said else []
    if missing:
        yield Fault(
            said[0].span,
            f"Your script leaves out {_part(missing, aloud)} to be heard; {_added(missing)}.",
            bowl="baby",
            remedy=Remedy("Say in your own place: " + " ".join(one.spoken for one in missing)),
            sources=tuple(dict.fromkeys(one.source for one in missing)),
        )


def _part(missing: Sequence[Caution], whole: Sequence[Caution]) -> str:
    return "the caution" if len(whole) == 1 else f"{len(missing)} of {len(whole)} cautions"


def _added(missing: Sequence[Caution]) -> str:
    return "it is added" if len(missing) == 1 else "they are added"
