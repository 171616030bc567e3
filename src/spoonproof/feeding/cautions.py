"""What page, script and description must say about a dish, computed from it and worded once by id."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from collections.abc import Set as AbstractSet

from spoonproof.feeding.allergens import AllergenFound, named_in
from spoonproof.feeding.bowl import baby_kinds, in_baby_bowl, nested
from spoonproof.feeding.kinds import kinds_of, parts
from spoonproof.feeding.served import Served, line_served
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.wording import listed
from spoonproof.feeding.words import keys
from spoonproof.model.finding import SourceRef
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass
from spoonproof.model.treatment import Treatment


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution: its id, its one wording in this market, and its source.

    ``screen`` is the same in the few words that fit over a picture; ``spoken`` what must be heard as well
    ("" where reading it is enough); ``where`` the part of a film it belongs to (opening, foods, step, tasting, close).
    """

    id: str
    text: str
    source: SourceRef
    screen: str = ""
    spoken: str = ""
    where: str = ""


def cautions(
    recipe: Recipe,
    treatments: Sequence[Treatment],
    foods: Foods,
    tables: FeedingTables,
    found: Sequence[AllergenFound],
    market: str | Sequence[str] = "EU",
    others: Mapping[str, Recipe] | None = None,
    served: Served | None = None,
) -> list[Caution]:
    """The cautions of a dish, in the order of the table.

    ``found`` are its allergens; ``market`` chooses which are named and by what word; ``others``:
    the channel's recipes by slug, for recipes used as foods; ``served`` what is known of its lines, added to.
    """
    kinds = baby_kinds(recipe, treatments, foods, tables, others)
    pieces = _kinds_in_pieces(recipe, treatments, foods, tables, others, served)
    steps = " ".join(step.text for step in recipe.steps)
    cooked = any(t.heats for t in treatments)
    names = [label.word for label in named_in([one for one in found if one.baby], tables, market)]
    present = {one.allergen for one in found if one.baby and one.how != "may-contain"}
    said = keys(recipe.title.value) | keys(recipe.story)
    state: Mapping[str, bool] = {
        "always": True,
        "choking": True,
        "allergen": bool(names),
        "hot": cooked,
        "cooked": cooked,
        "split": any(step.splits for step in recipe.steps),
        "freezer": bool(recipe.keeps and recipe.keeps.freezer_days),
        "vegan": "vegan" in said or (recipe.summary is not None and "vegan" in keys(recipe.summary.value)),
    }
    texture = {recipe.texture.value.lower()} if recipe.texture else set[str]()
    words = said | keys(steps)
    told = {"class": kinds, "pieces": pieces, "allergen": present, "word": words, "texture": texture}
    places = {"{allergens}": listed(names), **_keeping_words(recipe, kinds, tables)}
    made: list[Caution] = []
    for row in tables.rows.get("cautions", ()):
        markets = row.items("markets")
        if markets and not set(markets) & set((market,) if isinstance(market, str) else market):
            continue
        if any(_holds(when, state, told, recipe.youngest) for when in row.items("when")):
            text, screen, spoken = (_filled(row.text(column), places) for column in ("text", "screen", "spoken"))
            made.append(Caution(row.text("id"), text, tables.source(row), screen, spoken, row.text("where")))
    return made


_NO_PIECES = frozenset({"blended", "mashed", "lumpy", "squashed", "crushed", "fine", "burst"})
"""After these there is nothing left to cut."""


def _kinds_in_pieces(
    recipe: Recipe,
    treatments: Sequence[Treatment],
    foods: Foods,
    tables: FeedingTables,
    others: Mapping[str, Recipe] | None,
    served: Served | None,
) -> frozenset[str]:
    """The kinds of what reaches the baby's bowl in pieces of its own: mashed strawberries are not cut into quarters.
    An ``or:`` choice and the foods of a recipe used as a food count as pieces, unless the whole line was worked."""
    kinds: set[str] = set()
    for part in parts(recipe.foods):
        if not in_baby_bowl(part.at, recipe, treatments):
            continue
        if line_served(part.at, recipe, treatments, foods, served) & _NO_PIECES:
            continue
        inner = [one.part.line for one in nested(part.line, others or {})]
        kinds.update(*(kinds_of(one, foods, tables) for one in inner or [part.line]))
    return frozenset(kinds)


def _keeping_words(recipe: Recipe, kinds: frozenset[str], tables: FeedingTables) -> dict[str, str]:
    """What a caution about keeping says in its places: the shortest time that holds for this dish, and no longer one
    than the recipe's own, so that no two cautions of a page give two clocks."""
    limits: dict[str, list[float]] = {"fridge_hours": [48.0], "cool_hours": [2.0]}
    for row in tables.rows.get("storage", ()):
        value = row.number("value")
        if row.text("fact") in limits and row.text("class") in kinds and row.text("basis") == "read" and value:
            limits[row.text("fact")].append(value)
    if recipe.keeps is not None and recipe.keeps.fridge_hours:
        limits["fridge_hours"].append(recipe.keeps.fridge_hours)
    if "nitrate-beet" in kinds:
        limits["fridge_hours"].append(24.0)  # "the same day"
    within = "one hour" if min(limits["cool_hours"]) < 2 else "one to two hours"
    leaves = kinds & {"nitrate-leaf", "nitrate-beet"}  # what stands warm turns nitrate into nitrite
    return {
        "{hours}": f"{min(limits['fridge_hours']):g}",
        "{chill}": "at once" if leaves else f"within {within}",
        "{chill in figures}": "at once" if leaves else f"within {_IN_FIGURES[within]}",
    }


_IN_FIGURES = {"one hour": "1 hour", "one to two hours": "1–2 hours"}


def _filled(text: str, places: Mapping[str, str]) -> str:
    for place, words in places.items():
        text = text.replace(place, words)
    return text


def _holds(when: str, state: Mapping[str, bool], told: Mapping[str, AbstractSet[str]], youngest: int) -> bool:
    """Whether a cell of ``when`` is so: a ``state`` by its name, "under:12", or a word of what is ``told``."""
    name, _, value = when.partition(":")
    if name == "under":
        return youngest < int(value)
    return value in told.get(name, ()) if value else state.get(name, False)
