"""What texture a dish really has at the end, from what was blended, mashed and cut, against its word and its ages.

Textures are words. Measures are the author's own or common practice; nothing here claims to follow a framework
for people with swallowing difficulties.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Literal

from spoonproof.feeding.bowl import in_baby_bowl
from spoonproof.feeding.kinds import kinds_of
from spoonproof.feeding.served import Served, line_served
from spoonproof.feeding.step_words import NO_MEAL, SET_IN_HEAT
from spoonproof.feeding.tables import FeedingTables
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.food import Food
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import FoodLine, Recipe
from spoonproof.model.record import dataclass
from spoonproof.model.table import Row
from spoonproof.model.text import Span
from spoonproof.model.treatment import Treatment

_RANK = {"smooth": 0, "thick": 1, "mashed": 2, "lumpy": 3, "minced": 4, "soft finger food": 5, "family food": 6}
_FALLS_APART = frozenset({"grain", "baked", "snack"})  # once it has stood in milk: a wheat biscuit, a rusk
_SETS = frozenset({"fry", "deep-fry", "bake", "toast"})  # a batter is a pancake then, whatever was blended for it
_BESIDE = frozenset({"baked", "bread"})
_NO_PIECES = frozenset({"liquid", "powder", "paste", "grain", "leaf", "none"})
_SPREADS = frozenset({"powder", "paste"})
_HERBS = frozenset({"herb", "herbs", "spice", "spices", "fats", "fat", "oils", "drinks", "sweet"})
_PULPED = frozenset({"garlic", "ginger"})  # crushed or grated, they are a juicy pulp of a clove or two
_FINE_MM = 4.0
_BIG_MM = 13.0
_FAMILY_FOOD_MONTHS = 12
_ABOUT = 1  # month: "from about nine months" is no line that eight crosses
_PIECES = frozenset({"dice", "chunk", "stick", "wedge", "floret"})
_MELTS = frozenset(
    {"egg", "nut", "nut-butter", "nut-fine", "fine-meat", "hard-cheese", "ice-cube"}
)  # no pieces of their own

Issue = Literal["too-coarse", "word-disagrees", "no-next", "not-soft-enough"]


@dataclass(frozen=True, slots=True)
class Piece:
    """What one food line is in the bowl: a texture word, and the size of its pieces in mm where it was written.

    ``grains``: pasta or grain that nobody blended; it makes no texture word, as it may have cooked to a cream.
    """

    line: int
    word: str
    mm: float | None
    food: str
    grains: bool = False


@dataclass(frozen=True, slots=True)
class TextureFault:
    """Something wrong with the texture, worded for the cook."""

    issue: Issue
    level: Level
    message: str
    remedy: str
    span: Span
    sources: tuple[SourceRef, ...] = ()


@dataclass(frozen=True, slots=True)
class Texture:
    """The dish's texture: ``pieces`` by line, ``faults`` found."""

    pieces: tuple[Piece, ...]
    faults: tuple[TextureFault, ...] = ()


def texture(
    recipe: Recipe, treatments: Sequence[Treatment], foods: Foods, tables: FeedingTables, served: Served | None = None
) -> Texture:
    """The real texture of the baby's bowl and its faults at the youngest age (the oldest for ``next``); ``served``:
    what is known of its lines, added to."""
    pieces = tuple(_pieces(recipe, treatments, foods, tables, served))
    declared = recipe.texture.value.strip().lower() if recipe.texture else ""
    known = [piece for piece in pieces if piece.word]
    real = max((piece.word for piece in known), key=lambda word: _RANK[word], default="")
    rows = {row.text("word"): row for row in tables.rows.get("textures", ())}
    faults = [
        *_against_age(recipe, declared, real, rows, tables),
        *_against_word(recipe, declared, pieces, rows, tables, foods),
    ]
    faults += _next(recipe, declared, real, rows, tables)
    return Texture(pieces, tuple(faults))


def _pieces(
    recipe: Recipe, treatments: Sequence[Treatment], foods: Foods, tables: FeedingTables, served: Served | None
) -> list[Piece]:
    by_line = {treatment.line: treatment for treatment in treatments}
    found: list[Piece] = []
    for index, line in enumerate(recipe.foods):
        if not in_baby_bowl(index, recipe, treatments):
            continue
        food = foods.get(line.food) if line.food else None
        treatment = by_line.get(index)
        facts = line_served(index, recipe, treatments, foods, served)
        word = _word(food, facts, kinds_of(line, foods, tables))
        grains = food is not None and food.hardness == "grain" and not facts & _WORKED
        mm = _mm(line, treatment)
        if _RANK.get(word, 0) > _RANK["lumpy"] and _stewed_apart(food, treatment):
            word, mm = "lumpy", None
        found.append(Piece(index, word, mm, line.name, grains))
    return found


_LAYERED = frozenset({"onion", "red-onion", "shallot", "leek"})
_STEWED = 45.0  # minutes in a wet pot from which chopped onion is limp leaves and no cubes (common practice)


def _stewed_apart(food: Food | None, treatment: Treatment | None) -> bool:
    """Whether it is chopped or sliced onion that has stewed so long that its layers came apart."""
    if food is None or treatment is None or food.id not in _LAYERED:
        return False
    wet = [heat for heat in treatment.heats if heat.medium in ("water", "pressure") and heat.minutes is not None]
    cut = {one.shape for one in treatment.cuts}
    long = sum(heat.minutes.low for heat in wet if heat.minutes) >= _STEWED
    return long and bool(cut) and not cut & {"whole", "half", "wedge"}


def _mm(line: FoodLine, treatment: Treatment | None) -> float | None:
    cuts = treatment.cuts if treatment and treatment.cuts else line.cuts
    sizes = [cut.high_mm for cut in cuts if cut.high_mm is not None]
    return min(sizes) if sizes else None


_WORKED = frozenset({"blended", "mashed", "squashed", "burst", "lumpy", "set", "baked", "fine", "removed", "strained"})


def _word(food: Food | None, facts: frozenset[str], kinds: frozenset[str]) -> str:
    """The texture one food has in the bowl; "" where it makes none (liquids, powders) or nothing is known."""
    pieces = food is not None and food.hardness in ("hard", "firm") and facts & _PIECES
    if "pea" in kinds and "whole" in facts and not facts & _WORKED:
        return "soft finger food"  # small, soft and round: no purée and no mash, but a lump among lumps
    if food is not None and "round" in food.traits and "whole" in facts and not facts & _WORKED:
        return "family food"  # soft as a grape is, a whole one is no purée
    if "soaked" in facts and food is not None and food.group in _FALLS_APART and food.state != "raw":
        return ""
    if "set" in facts or ("baked" in facts and not pieces):
        return ""  # a batter that was baked or fried is what it holds together, not its parts
    if "blended" in facts:
        return "smooth" if "blended-smooth" in facts else "thick"
    if food is not None and food.hardness == "liquid":
        return ""
    if food is not None and food.hardness in _SPREADS:
        return ""  # peanut butter swirled into squashed berries brings no lumps
    if facts & {"mashed", "squashed", "burst"}:
        return "mashed"
    if "lumpy" in facts:
        return "lumpy"
    if (
        food is None
        or kinds & _MELTS
        or (food.hardness == "soft" and ("cooked" in facts or not facts & (_PIECES | {"halved", "slice", "coin"})))
        or food.hardness in _NO_PIECES
        or food.group in _HERBS
    ):
        return ""
    if "fine" in facts and food.id.partition("-")[0] in _PULPED:
        return ""
    if food.group in _BESIDE and facts & {"stick", "toasted"}:
        return ""  # fingers of toast beside a mash
    if food.id.endswith("-zest") and not facts & {"stick", "slice", "wedge"}:
        return ""  # zest is grated off, whatever the line leaves unsaid
    if facts & {"fine", "small", "tiny", "strained", "removed", "melted"}:
        return "minced" if facts & {"fine", "small"} else ""
    if "stick" in facts or "wedge" in facts or "floret" in facts:
        return "soft finger food"
    if facts & {"dice", "chunk", "chopped", "slice", "coin", "halved", "quartered", "torn", "whole"}:
        if "bite" in facts:
            return "lumpy"
        return "family food" if facts & {"chunk", "whole", "dice"} else "soft finger food"
    return ""


def _source(row: Row | None, tables: FeedingTables) -> tuple[SourceRef, ...]:
    return (tables.source(row),) if row is not None else ()


def _span(recipe: Recipe) -> Span:
    return recipe.texture.span if recipe.texture else recipe.ages.span


def _against_age(
    recipe: Recipe, declared: str, real: str, rows: dict[str, Row], tables: FeedingTables
) -> list[TextureFault]:
    found: list[TextureFault] = []
    row = rows.get(declared)
    age = recipe.youngest

    def add(level: Level, text: str, remedy: str, row: Row) -> None:
        found.append(TextureFault("too-coarse", level, text, remedy, _span(recipe), _source(row, tables)))

    if not declared and real == "family food":
        text = f"The dish ends in pieces; nothing says that they are soft and small for {age} months."
        usual = rows[real].number("not_before_months") if real in rows else None
        if usual is not None and age < usual:
            add("warning", text, "Mash it, cut it into soft sticks, or write the texture.", rows[real])
    if row is not None:
        never, usual = row.number("not_before_months"), row.number("from_months")
        if never is not None and age < never:
            text = f"{declared.capitalize()} is too coarse from {age} months: {row.text('says')}."
            add("error", text, _coarse_remedy(usual), row)
        elif usual is not None and age < usual and declared in ("minced", "family food"):
            text = f"{declared.capitalize()} is usual from about {usual:.0f} months; these ages begin at {age}."
            add("note" if usual - age <= _ABOUT else "warning", text, _coarse_remedy(usual), row)
    return found


def _coarse_remedy(usual: float | None) -> str:
    return f"Begin the ages at {usual:.0f} months, or mash it for the younger ones." if usual else "Mash it."


def _against_word(
    recipe: Recipe, declared: str, pieces: Sequence[Piece], rows: dict[str, Row], tables: FeedingTables, foods: Foods
) -> list[TextureFault]:
    if declared not in _RANK:
        return []
    span = _span(recipe)
    source = _source(rows.get(declared), tables)
    found: list[TextureFault] = []
    rank = _RANK[declared]
    coarse = [piece for piece in pieces if piece.word and _too_coarse(declared, piece)]
    if coarse:
        names = ", ".join(dict.fromkeys(_in_words(piece) for piece in coarse))
        text = f"The texture says {declared}, but the dish ends with {names}."
        remedy = f"Say where it is {'blended' if rank < 2 else 'mashed'}, cut it smaller, or change the texture word."
        level: Level = "error" if rank <= 2 and any(p.word == "family food" for p in coarse) else "warning"
        found.append(TextureFault("word-disagrees", level, text, remedy, recipe.foods[coarse[0].line].span, source))
    said = next((words for words in (recipe.title, recipe.summary) if words and _SMOOTH.search(words.value)), None)
    if said is not None and _RANK["mashed"] <= rank <= _RANK["minced"]:
        text = f"These words promise a smooth dish, and the texture says {declared}."
        found.append(TextureFault("word-disagrees", "warning", text, "Let both say the same.", said.span, source))
    known = [piece for piece in pieces if piece.word]
    mine = [(step.index, a.verb) for step in recipe.steps if step.bowl != "family" for a in step.actions]
    blended = max((at for at, verb in mine if "blend" in verb or verb == "puree"), default=-1)
    shaped = any(verb == "shape" or (verb in _SETS and at > blended) for at, verb in mine)
    # "blend the beans; steam for 50 minutes, until set": a pudding that is cut, as a batter is a pancake
    shaped = shaped or any(step.index > blended >= 0 and SET_IN_HEAT.search(step.text) for step in recipe.steps)
    shaped = shaped or any(
        (food := foods.get(line.food)) is not None and "jelly" in food.traits for line in recipe.foods if line.food
    )  # what sets is no purée
    unread = any(line.food is None and line.recipe is None for line in recipe.foods)
    grains = any(piece.grains or _unworded(piece, recipe, foods) for piece in pieces)  # pasta in a blended sauce
    smooth = bool(known) and all(_RANK[piece.word] <= 1 for piece in known)
    if rank >= 3 and smooth and not (shaped or unread or grains):
        text = f"The texture says {declared}, but everything in the bowl is blended smooth."
        remedy = "Keep back some pieces, mash instead of blending, or write smooth."
        found.append(TextureFault("word-disagrees", "warning", text, remedy, span, source))
    return found


# Said of the whole dish: "smooth peanut butter" and "a silky smooth sauce" are of a part.
_SMOOTH = re.compile(
    r"\b(?:(?:silky|velvety|satin|completely|perfectly|utterly|baby)[ -]smooth|smooth as|lump[- ]free"
    r"|(?:without|not|free of) (?:any |an? (?:single )?)?lumps?)\b"
    r"(?![^.,;]{0,20}\b(?:sauce|gravy|custard|cream|butter|yogh?urt|h[ou]u?mm?us|paste|broth|layer|base)\b)",
    re.I,
)
_SOLID = frozenset({"soft", "firm", "hard"})


def _unworded(piece: Piece, recipe: Recipe, foods: Foods) -> bool:
    """Whether it is a solid food of which nothing is known but that it is there: rice cakes in a sauce."""
    food = foods.get(recipe.foods[piece.line].food or "")
    return not piece.word and food is not None and food.hardness in _SOLID and food.group in ("grain", "baked")


def _too_coarse(declared: str, piece: Piece) -> bool:
    if declared in ("soft finger food", "family food"):
        return False
    rank = _RANK[piece.word]
    if declared == "thick" and piece.word == "minced" and piece.mm is not None and piece.mm <= _FINE_MM:
        return False  # grated pear or finely chopped dates in a thick porridge
    if declared in ("smooth", "thick"):
        return rank >= 3 or (rank == 2 and declared == "smooth")
    if declared == "mashed":
        return rank >= 5
    return rank == 6 or (rank == 5 and piece.mm is not None and piece.mm > _BIG_MM)


def _in_words(piece: Piece) -> str:
    if piece.mm is not None and piece.word in ("family food", "soft finger food", "lumpy"):
        return f"{piece.food} in pieces of {piece.mm:.0f} mm"
    how = {"mashed": "mashed", "minced": "finely cut"}.get(piece.word, "in pieces")
    return f"{piece.food} {how}"


def _next(recipe: Recipe, declared: str, real: str, rows: dict[str, Row], tables: FeedingTables) -> list[TextureFault]:
    """Smooth food with nothing said about what comes next, where the ages reach nine to ten months.

    From a year on a soup or a drink is one smooth dish among others; a frozen lolly is no meal at any age.
    """
    if recipe.youngest >= _FAMILY_FOOD_MONTHS or NO_MEAL.search(recipe.title.value):
        return []
    word = declared or real
    if recipe.next is not None or word not in ("smooth", "thick"):
        return []
    row = rows.get(word)
    by = row.number("next_by_months") if row is not None else None
    oldest = recipe.ages.high
    if by is None or (oldest is not None and oldest < by):
        return []
    text = (
        f"{word.capitalize()} for ages that reach {by:.0f} months, and nothing says what texture comes next: "
        "lumps come by nine to ten months."
    )
    remedy = 'Add "next": the texture, from which month, and how (mash with a fork and stop early).'
    return [TextureFault("no-next", "warning", text, remedy, _span(recipe), _source(rows.get("lumps by"), tables))]
