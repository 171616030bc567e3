"""What a picture shows, as hazards: food as it would be served, and how the baby sits and who is by."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.feeding.served import FACTS
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import keys
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass
from spoonproof.model.text import Span

_LEVELS: dict[str, Level] = {"error": "error", "warning": "warning", "note": "note"}
# Only what can be seen to be dangerous: shapes that are plain in a picture, and foods that are wrong in any form.
_SEEN_KINDS = frozenset(
    """small-round cheese-ball nut seed-large popcorn marshmallow jelly-cube hard-sweet sausage honey salt sugar tea
    alcohol rice-drink dried-fruit berry juice coffee crisp-snack ice-cube chewing-gum mould-cheese""".split()
)
_CUES = {
    "quartered": "quartered", "quarter": "quartered", "halved": "halved", "half": "halved", "grated": "fine",
    "ground": "fine", "mashed": "mashed", "squashed": "squashed", "flattened": "squashed", "blended": "blended",
    "puree": "blended", "pureed": "blended", "smooth": "blended", "strip": "stick", "sliced": "slice",
    "chopped": "chopped", "crushed": "fine", "flaked": "fine",
    "stoned": "stoned", "pitted": "stoned", "melted": "melted",
}  # fmt: skip
_FAMILY = frozenset({"adult", "grown", "parent", "family", "mother", "father", "mum", "dad", "sibling"})


@dataclass(frozen=True, slots=True)
class PictureHazard:
    """One danger in one picture; ``id`` the row's, ``span`` the words of ``shows``."""

    id: str
    level: Level
    message: str
    remedy: str
    span: Span
    sources: tuple[SourceRef, ...]


def picture_hazards(
    recipe: Recipe, tables: FeedingTables, policies: Mapping[str, str] | None = None
) -> list[PictureHazard]:
    """The dangers that the recipe's pictures show, at its youngest age, in the order of the file."""
    rows = {row.text("id"): row for row in tables.rows.get("picture_dangers", ())}
    scenes = tables.phrases_of("picture_dangers", "phrases")
    found: list[PictureHazard] = []
    for picture in recipe.pictures:
        for shown in picture.shows:
            for scene in dict.fromkeys(hit.value for hit in scenes.find(shown.value)):
                row = rows[scene]
                found.append(
                    PictureHazard(
                        scene,
                        _LEVELS.get(row.text("level"), "warning"),
                        row.text("message"),
                        row.text("remedy"),
                        shown.span,
                        (tables.source(row),),
                    )
                )
            found += _foods(shown.value, shown.span, recipe, tables, policies or {})
    return found


def _foods(
    text: str, span: Span, recipe: Recipe, tables: FeedingTables, policies: Mapping[str, str]
) -> list[PictureHazard]:
    said = keys(text)
    if said & _FAMILY and said & {"bowl", "plate", "portion"}:
        return []
    facts = {fact for word, fact in _CUES.items() if word in said} & FACTS
    if not facts:
        facts = {"whole", "raw"}
    found: list[PictureHazard] = []
    for hit in tables.phrases.find(text):
        kinds = tables.kinds[hit.value]
        if not kinds & _SEEN_KINDS:
            continue
        for row in tables.hazards:
            chosen = row.policy is None or tables.authority(row.policy[0], policies) == row.policy[1]
            if chosen and row.level != "note" and row.holds(kinds, frozenset(facts | {"stoned"}), recipe.youngest):
                level: Level = "error" if row.level == "error" else "warning"
                message = f"The picture shows {text[hit.start : hit.end]}: this {row.problem}."
                remedy = f"Choose another picture. {row.remedy}"
                found.append(PictureHazard(row.id, level, message, remedy, span, (row.source,)))
                break
    return found
