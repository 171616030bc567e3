"""Every word of the film, those we made included, through the same judge as any other statement."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.checks.from_claims import once
from spoonproof.dish import Dish
from spoonproof.film.script import Material, Script
from spoonproof.film.takes import all_takes
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.record import NamedTuple
from spoonproof.model.text import Cue, Document, Passage, Piece
from spoonproof.reading.spoken import word_count


class Statement(NamedTuple):
    """Words the audience hears or reads; ``kind`` as passages have it, ``where`` for people, and from when to when
    in seconds (both 0.0 for words under the film)."""

    text: str
    kind: str
    where: str
    start: float = 0.0
    end: float = 0.0


def statements(script: Script) -> tuple[Statement, ...]:
    """All that is said and shown in a script, in the order of the film; but for the super with age and texture, which
    are judged with the food."""
    found: list[Statement] = []
    for take in script.takes:
        if take.say:
            found.append(Statement(take.say, "say", take.name, take.start, take.end))
        found += [
            Statement(each.text, "super", take.name, each.start, each.end)
            for each in take.supers
            if each.kind != "ages"
        ]
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

    What its author left unjudged in the recipe stays so. Cautions in their own wording are advice with a source of
    its own, and allergens named in the law's words are labels: neither is a claim.
    """
    from spoonproof.claims.find import find_claims
    from spoonproof.claims.judging.fragments import without_fragments

    judge = dish.judge()
    found = find_claims([passage(dish, each) for each in said], dish.knowledge.lexicon)
    left = [_even(passage.text) for passage in dish.recipe.passages if passage.leave is not None]
    left += [_even(text) for each in dish.cautions for text in (each.text, each.screen, each.spoken)]
    left += ["contains gluten"] if any("gluten" in label.word for label in dish.allergen_labels) else []
    left += [f"contains {label.word.lower()}" for label in dish.allergen_labels]
    kept = [claim for claim in found if not any(_even(claim.quote) in text for text in left)]
    return without_fragments([judge(claim) for claim in kept])


def _even(text: str) -> str:
    return " ".join(text.lower().replace("’", "'").replace(":", "").split())


def passage(dish: Dish, said: Statement) -> Passage:
    """A statement as a passage, in a document of its own that is named by the recipe and the part of the film."""
    document = Document(f"{dish.recipe.document.path} (film, {said.where})", " ".join(said.text.split()))
    cues = (Cue(0, said.start, said.end),) if said.end > said.start else ()
    pieces = (Piece(0, 0, len(document.text)),)
    return Passage(document.text, document, pieces, said.kind, said.where, cues)


def timed_claims(dish: Dish, script: Script) -> list[tuple[JudgedClaim, float, float]]:
    """Every claim that is said or shown, with the seconds from and to which it is."""
    found = []
    said = statements(script)
    takes = {(take.start, take.say): take for take in script.takes}
    for each in once(judged(dish, said)):
        cue = each.claim.passage.cues[0]
        start, end = cue.start, cue.end
        text = each.claim.passage.text
        take = next((t for (at, say), t in takes.items() if at == start and " ".join(say.split()) == text), None)
        if take is not None and each.claim.passage.kind == "say":
            words = max(1, word_count(text))
            pace = take.said / words
            start = take.start + pace * word_count(text[: each.claim.start])
            end = min(take.end, take.start + pace * word_count(text[: each.claim.end]))
        found.append((each, round(start, 3), round(max(end, start + 0.5), 3)))
    return sorted(found, key=lambda row: (row[1], row[2]))
