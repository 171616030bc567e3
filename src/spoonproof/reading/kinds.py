"""Foods that a method calls by their kind: "the veg", "the greens", "the dry ingredients", "everything but the peas".

Only lines of the list are meant by such words; they never hide a food that stands on no line.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet

from spoonproof.model.food import Food
from spoonproof.model.recipe import FoodLine

GROUPS: Mapping[str, tuple[str, ...]] = {
    "vegetable": ("vegetable",), "veg": ("vegetable",), "veggie": ("vegetable",), "root": (),
    "fruit": ("fruit", "dried-fruit"),
    "fish": ("fish",), "meat": ("meat", "poultry"), "herb": ("herb",), "spice": ("spice",), "pulse": ("pulse",),
    "bean": ("pulse",), "grain": ("grain",), "leaf": (), "green": (), "nut": ("nut",), "seed": ("seed",),
    "cheese": ("cheese",), "berry": (), "bread": (), "aromatic": (), "poultry": ("poultry",), "bird": ("poultry",),
    "noodle": (), "dumpling": (), "agent": (), "joint": ("meat", "poultry"),
}  # fmt: skip
_BY_ID: Mapping[str, tuple[str, ...]] = {
    "root": (
        "carrot", "parsnip", "swede", "turnip", "potato", "sweet-potato", "beetroot", "celeriac", "yam", "cassava",
    ),
    "aromatic": ("onion", "red-onion", "spring-onion", "shallot", "garlic", "ginger", "celery", "leek", "lemongrass"),
    "dumpling": ("gnocchi",),
    "noodle": ("fine-pasta", "pasta", "fresh-pasta", "rice-noodles", "glass-noodles", "soba", "udon", "ramen-noodles"),
    "agent": ("baking-powder", "bicarbonate", "bicarbonate-of-soda", "baking-soda", "yeast"),  # "the raising agent"
    "green": ("broccoli", "pea", "courgette", "green-beans", "asparagus", "mangetout", "leek"),
}  # fmt: skip
_LEAVES = ("green", "leaf")
_NOT_PIECES = ("paste", "powder", "liquid")  # "the veg" is not the tomato purée
_WET = re.compile(
    r"(?i)\b(?P<kind>dry|wet|liquid)[ \t]{1,9}(?:ingredients?|things|stuff|ones|bits|mix(?:ture)?)\b"
    r"|(?<=\bthe )(?P<bare>dry|wet)(?=[ \t]{0,3}(?:[.,;:]|$|\b(?:and|until|to|but|then|on|onto|in|into|over)\b))"
)
_DRY_GROUPS = ("grain", "spice", "nut", "seed", "dried-fruit")
_WET_GROUPS = ("egg", "dairy", "oil", "fat", "baby-milk", "drink")
_ALL_BUT = re.compile(
    r"(?i)"
    r"\b(?:everything|all|(?:all )?(?:of )?(?:the |your )?(?:ingredients|others?))(?P<rest>[ \t]{1,9}else)?,?[ \t]{1,9}"
    r"(?:but|except(?:ing)?(?:[ \t]for)?|bar|apart[ \t]from|other[ \t]than)[ \t]{1,9}(?:for[ \t]{1,9})?"
    r"(?P<but>(?:the|your|any|last|half|a|both)[ \t][^.;:()]{1,80}|[^.;:()]{1,40})"
)
_BUT_END = re.compile(
    r"(?i),[ \t]{0,9}(?:then|cover|bring|simmer|cook)\b|\b(?:into|in|to|with|goes?|and[ \t](?:then|"
    r"simmer|cook|bring|cover|blend|mash|stir|mix|boil|bake|steam|pour|put|tip|leave))\b"
)


Found = tuple[int, int, tuple[int, ...]]
"""Where words stand, and the lines they speak of."""


def of_kind(word: str, records: Sequence[Food | None], last: Sequence[str]) -> tuple[int, ...]:
    """The lines that "the ``word``" speaks of: those of its group, or whose name ends in it ("blueberries" are
    berries); of greens the leafy ones, with no leaf among them the green vegetables. ``last``: the last word of each
    line's name, in the singular."""
    groups, ids = GROUPS[word], _BY_ID.get(word, ())
    known = {i: record for i, record in enumerate(records) if record is not None}
    called = {i for i, name in enumerate(last) if name.endswith(word)}
    grouped = {i for i, record in known.items() if record.group in groups}
    grouped = {i for i in grouped if known[i].hardness != "liquid"} or grouped  # "the nuts" are no coconut milk
    if "vegetable" in groups:
        grouped = {i for i in grouped if known[i].hardness not in _NOT_PIECES} or grouped
        grouped = {i for i in grouped if "salty" not in known[i].traits} or grouped  # no capers
    if word in _LEAVES:
        grouped = {i for i, record in known.items() if record.hardness == "leaf" and record.group == "vegetable"}
    if word == "bread" and not called:  # "toast the bread", where the list has sourdough
        grouped = {i for i, record in known.items() if record.group == "baked" and record.hardness != "grain"}
    if not grouped and not (called and word in _LEAVES):
        grouped = {i for i, record in known.items() if record.id in ids or record.parent in ids}
    return tuple(sorted(grouped | called))


def in_state(word: str, line: FoodLine, record: Food | None) -> bool:
    """Whether a line's food is so ("dried", "grated", "ground"), by its own words or by the table."""
    known = {record.state, *record.group.split("-")} if record is not None else set()
    powder = word == "ground" and record is not None and record.hardness == "powder"
    return word in known or powder or re.search(rf"\b{re.escape(word)}", line.text, re.I) is not None


def dry_or_wet(text: str, lines: Sequence[FoodLine], records: Sequence[Food | None]) -> Iterator[Found]:
    """Where ``text`` speaks of the dry or of the wet ingredients, and their lines."""
    for found in _WET.finditer(text):
        dry = (found["kind"] or found["bare"]).lower() == "dry"
        meant = [i for i, record in enumerate(records) if record and (_is_dry if dry else _is_wet)(lines[i], record)]
        if meant:
            yield found.start(), found.end(), tuple(meant)


def _is_dry(_line: FoodLine, record: Food) -> bool:
    return record.hardness in ("powder", "grain") or (record.group in _DRY_GROUPS and record.hardness != "paste")


def _is_wet(line: FoodLine, record: Food) -> bool:
    wet = record.hardness in ("liquid", "paste") or record.group in _WET_GROUPS
    mashed = any(cut.shape in ("mashed", "puréed") for cut in line.cuts)  # "2 bananas, mashed"
    return (wet or mashed) and not _is_dry(line, record)


_REST_OF = re.compile(r"(?i)\b(?:rest|remainder|remaining|other)(?:[ \t]+of)?(?:[ \t]+(?:the|your))?[ \t]{1,9}$")
_ONE_KIND = re.compile(r"(?i)(?:herb|spice|grain|pulse|vegetable|leaf)\b")  # not "the fish", which may be several
_THE = re.compile(r"(?i)\bthe(?:[ \t]fresh|[ \t]dried|[ \t]chopped)?[ \t]{1,9}$")


def left_of_kind(text: str, start: int, lines: tuple[int, ...], used: AbstractSet[int]) -> tuple[int, ...]:
    """ "The rest of the veg", "the herb": of several lines of one kind those that no step has used yet."""
    one = _ONE_KIND.match(text, start) is not None and _THE.search(text[max(0, start - 12) : start]) is not None
    if len(lines) < 2 or not (one or _REST_OF.search(text[max(0, start - 40) : start])):
        return lines
    return tuple(i for i in lines if i not in used) or lines


def all_but(text: str) -> Iterator[tuple[int, int, bool, str]]:
    """Where ``text`` says "everything but ..." or "everything else except ...": the place, whether only what was not
    used before is meant, and the words that name what is left out."""
    for found in _ALL_BUT.finditer(text):
        words = found["but"]
        end = _BUT_END.search(words)
        yield found.start(), found.start("but"), found["rest"] is not None, words[: end.start()] if end else words
