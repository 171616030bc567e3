"""Every word of the film, those we made included, through the same judge as any other statement."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from spoonproof.dish import Dish
from spoonproof.film.script import Material, Script
from spoonproof.film.takes import all_takes
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.text import Cue, Document, Passage, Piece


class Statement(NamedTuple):
    """Words the audience hears or reads; ``kind`` as passages have it, ``where`` for people, and from when to when
    in seconds (both 0.0 for words under the film)."""

    text: str
    kind: str
    where: str
    start: float = 0.0
    end: float = 0.0


def statements(script: Script) -> tuple[Statement, ...]:
    """All that is said and shown in a script, in the order of the film."""
    found: list[Statement] = []
    for take in script.takes:
        if take.say:
            found.append(Statement(take.say, "say", take.name, take.start, take.end))
        found += [Statement(each.text, "super", take.name, each.start, each.end) for each in take.supers]
    return tuple(found)


def every_wording(material: Material) -> tuple[Statement, ...]:
    """All that a script of this material may say or show, before it is known what is cut."""
    found: list[Statement] = []
    for take in all_takes(material):
        words = [take.say, take.heard, *(text for other in take.shorter for text in (other.say, other.test))]
        words += [each.text for each in take.supers]
        found += [Statement(text, "say", take.name) for text in dict.fromkeys(words) if text]
    return tuple(found)


def judged(dish: Dish, said: Sequence[Statement]) -> list[JudgedClaim]:
    """Every claim in these statements, each read by itself, judged on the dish.

    What its author left unjudged in the recipe stays so; allergens named by the law's own words are no claim.
    """
    from spoonproof.claims.find import find_claims
    from spoonproof.claims.judge import judge

    known = dish.knowledge
    context = known.claim_context(dish.channel, dish.recipe, dish.paid)
    found = find_claims([_passage(dish, each) for each in said], known.lexicon)
    left = [_even(passage.text) for passage in dish.recipe.passages if passage.leave is not None]
    left += [f"contains {label.word.lower()}" for label in dish.allergen_labels]
    kept = [claim for claim in found if not any(_even(claim.quote) in text for text in left)]
    return [judge(claim, known.register, dish.numbers, context) for claim in kept]


def _even(text: str) -> str:
    return " ".join(text.lower().replace(":", "").split())


def _passage(dish: Dish, said: Statement) -> Passage:
    document = Document(f"{dish.recipe.document.path} (film, {said.where})", " ".join(said.text.split()))
    cues = (Cue(0, said.start, said.end),) if said.end > said.start else ()
    pieces = (Piece(0, 0, len(document.text)),)
    return Passage(document.text, document, pieces, said.kind, said.where, cues)
