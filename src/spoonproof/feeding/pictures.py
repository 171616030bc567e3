"""What a picture or a shot shows, as hazards: food as it would be served, and how the baby sits and who is by."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from spoonproof.feeding.served import FACTS
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import Found, keys
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass, replace
from spoonproof.model.table import Row
from spoonproof.model.text import Span

_LEVELS: dict[str, Level] = {"error": "error", "warning": "warning", "note": "note"}
# Only what can be seen to be dangerous: shapes that are plain in a picture, and foods that are wrong in any form.
_SEEN_KINDS = frozenset(
    """small-round cheese-ball nut seed-large popcorn marshmallow jelly-cube hard-sweet sausage honey salt sugar tea
    alcohol rice-drink dried-fruit berry juice coffee crisp-snack ice-cube chewing-gum mould-cheese""".split()
)
_WRONG_IN_ANY_FORM = frozenset({"honey"})
_POURED = re.compile(r"\b(?:into|over|onto) (?:the|her|his|a|baby['’]s)\b", re.I)
_CUES = {
    "quartered": "quartered", "quarter": "quartered", "halved": "halved", "half": "halved", "grated": "fine",
    "ground": "fine", "mashed": "mashed", "squashed": "squashed", "flattened": "squashed", "blended": "blended",
    "puree": "blended", "pureed": "blended", "smooth": "blended", "strip": "stick", "sliced": "slice",
    "chopped": "chopped", "crushed": "fine", "flaked": "fine",
    "cube": "chunk", "cubed": "chunk", "chunk": "chunk", "steamed": "cooked", "roasted": "cooked", "cooked": "cooked",
    "boiled": "cooked", "baked": "cooked", "stick": "stick", "finger": "stick", "baton": "stick",
    "stoned": "stoned", "pitted": "stoned", "melted": "melted",
}  # fmt: skip
# Seen to be dangerous only in the shape that the words name: "cubes of cheddar", "raw carrot sticks".
_SHAPED_KINDS = frozenset({"hard-cheese", "hard-raw", "firm-raw", "crisp-raw"})
_SHAPED = re.compile(r"\b(?:cubes?|cubed|chunks?)\b|\braw\b.*\b(?:sticks?|fingers?|batons?|slices?|wedges?)\b", re.I)
_BITES = re.compile(r"\b(?:bit(?:e|es|ing)|chew\w*|gnaw\w*|eat\w*|munch\w*|hold\w*|nibbl\w*)\b", re.I)
_BABY = (
    r"(?:bab(?:y|ies)|infant|toddler|child|children|little one|newborn|boy|girl|son|daughter|twins?|he|she"
    r"|(?:small|little|tiny) (?:fingers|fists?|hands?))"
)
_IS_BABY = re.compile(rf"\b{_BABY}\b", re.I)
_UNCUT = re.compile(r"\b(?:whole|round|uncut)\b", re.I)
_BETWEEN = re.compile(r"[,;]|\b(?:with|beside|and|next|near|against|while|behind|watching)\b", re.I)
_STRONG = re.compile(r"\b(?:reclin\w+|lying back|bouncer|bouncy chair|car seat)\b", re.I)
_NO_BABY = re.compile(r"\b(?:teddy|bear|cat|dog|doll|toy|empty|shoes?|water|tap|phone|tablet|book)\b", re.I)
_MEAL = re.compile(
    r"\b(?:eat\w*|ate|spoon\w*|fed|feed\w*|bowls?|pots?|plates?|pouch|snack\w*|meal|bites?|biting|chew\w*|munch\w*"
    r"|gnaw\w*|pur[ée]e|porridge|mash|toast|biscuit|rusk|breakfast|lunch|dinner|tea|supper|tast(?:es?|ing)|lunch ?box"
    r"|box on (?:his|her|the) (?:lap|knees?))\b",
    re.I,
)
_FOR_ADULTS = re.compile(
    r"\b(?:for|of) (?:the |our |your |my )?(?:mum|mom|dad|mother|father|grown[- ]?up|adult|parent|us\b|me\b|you\b)"
    r"|\b(?:mum|mom|dad|mother|father|grown[- ]?up|adult|parent)s?['’]s? ",
    re.I,
)
_WOOD = re.compile(r" (?:wood(?:en)?|table|board|floor|shelf|tree|blossom|branch|frame|veneer)\b", re.I)
_STORED = re.compile(r" in (?:an? |the |their |its )?(?:jar|tin|packet|sack|box|cupboard|crate|shop|bag)s?\b", re.I)
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
    found: list[PictureHazard] = []
    left = {one.text for one in recipe.passages if one.kind == "picture" and one.leave is not None}
    for picture in recipe.pictures:
        meal = any(_MEAL.search(shown.value) for shown in picture.shows)
        for shown in picture.shows:
            found += _scenes(shown.value, shown.span, meal, tables)
            found += _foods(shown.value, shown.span, recipe, tables, policies or {})
        # An alternative text that names no child may tell of food before it is cut.
        if picture.text is not None and picture.text.value not in left and _IS_BABY.search(picture.text.value):
            found += _foods(picture.text.value, picture.text.span, recipe, tables, policies or {})
    # A shot may show the grapes before they are cut, but not in a child's hand; how the baby sits it shows.
    for segment in recipe.film.segments if recipe.film is not None else ():
        meal = _MEAL.search(f"{segment.name} {segment.shot}") is not None
        dangers = _scenes(segment.shot, segment.span, meal, tables)
        in_hand = _IS_BABY.search(segment.shot) and _UNCUT.search(segment.shot)
        if in_hand or _POURED.search(segment.shot):
            seen = _SEEN_KINDS if in_hand else _WRONG_IN_ANY_FORM
            dangers += _foods(segment.shot, segment.span, recipe, tables, policies or {}, seen)
        for one in dangers:
            message = one.message.replace("The picture shows", "The shot shows")
            remedy = one.remedy.replace("Take the picture", "Film it").replace("another picture", "another shot")
            found.append(replace(one, message=message, remedy=remedy))
    return found


def _scenes(text: str, span: Span, meal: bool, tables: FeedingTables) -> list[PictureHazard]:
    """How the baby sits and who is by, where ``text`` tells of a danger in it."""
    rows = tables.by_id("picture_dangers")
    found = tables.phrases_of("picture_dangers", "phrases").find(text)
    hits = [hit for hit in found if _holds(hit, rows[hit.value].text("kind"), text, meal)]
    made: list[PictureHazard] = []
    for scene in _first_of_each(hits, rows):
        level, message, remedy = (rows[scene].text(column) for column in ("level", "message", "remedy"))
        source = tables.source(rows[scene])
        made.append(PictureHazard(scene, _LEVELS.get(level, "warning"), message, remedy, span, (source,)))
    return made


def _holds(hit: Found, kind: str, text: str, meal: bool) -> bool:
    """Whether it is the baby who lies or sits so: not "walking shoes", nor "a phone propped against the bowl".

    A place to sit counts only where the picture also shows a ``meal``.
    """
    if kind not in ("posture", "place"):
        return True
    if kind == "place" and not meal:
        return False
    before = [match.end() for match in _IS_BABY.finditer(text[: hit.start])]
    if before:
        return _BETWEEN.search(text[before[-1] : hit.start]) is None
    if re.match(rf"(?:[- ]\w+)? {_BABY}\b", text[hit.end :], re.I):
        return True  # "a sleeping baby"
    strong = _STRONG.search(text[hit.start : hit.end]) is not None and not _IS_BABY.search(text)
    return len(keys(text)) == len(hit.phrase) or (strong and not _NO_BABY.search(text))


def _first_of_each(hits: Sequence[Found], rows: Mapping[str, Row]) -> list[str]:
    """The rows of these hits, one a kind of danger: a baby asleep in a pram is told once."""
    told: dict[str, str] = {}
    for hit in hits:
        kind = rows[hit.value].text("kind")
        told.setdefault("posture" if kind == "place" else kind, hit.value)
    return list(told.values())


def _foods(
    text: str,
    span: Span,
    recipe: Recipe,
    tables: FeedingTables,
    policies: Mapping[str, str],
    seen: frozenset[str] = _SEEN_KINDS,
) -> list[PictureHazard]:
    said = keys(_IS_BABY.sub(" ", text))
    if (said & _FAMILY and said & {"bowl", "plate", "portion"}) or _FOR_ADULTS.search(text):
        return []
    if _SHAPED.search(text) or (_IS_BABY.search(text) and _BITES.search(text)):
        seen |= _SHAPED_KINDS
    facts = {fact for word, fact in _CUES.items() if word in said} & FACTS
    if not facts:
        facts = {"whole", "raw"}
    elif "cooked" not in facts:
        facts.add("raw")
    found: list[PictureHazard] = []
    for hit in tables.phrases.find(text):
        kinds = tables.kinds[hit.value]
        if not kinds & seen or _WOOD.match(text, hit.end):
            continue
        if "honey" not in kinds and _STORED.match(text, hit.end):
            continue
        for row in tables.hazards:
            if (
                tables.counts(row, policies, ())
                and row.level != "note"
                and row.holds(kinds, frozenset(facts | {"stoned"}), recipe.youngest)
            ):
                level: Level = "error" if row.level == "error" else "warning"
                message = f"The picture shows {text[hit.start : hit.end]}: this {row.problem}."
                remedy = f"Choose another picture. {row.remedy}"
                found.append(PictureHazard(row.id, level, message, remedy, span, (row.source,)))
                break
    return found
