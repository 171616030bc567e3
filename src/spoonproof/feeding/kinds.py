"""Which kinds (classes of the feeding tables) a food line, a food or a stretch of text belongs to."""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.feeding.tables import HEAD, FeedingTables
from spoonproof.feeding.words import Found, keys, words
from spoonproof.model.food import Food
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import FoodLine
from spoonproof.model.record import NamedTuple

EMPTY: frozenset[str] = frozenset()
UNKNOWN = frozenset({"unknown"})
"""The kind of a food that no table knows: what its line says of hardness, shape and heat is all there is to judge."""


class Part(NamedTuple):
    """One food the baby may be given: a line, or the ``choice`` of it that ``or:`` allows (-1: the line itself)."""

    at: int
    choice: int
    line: FoodLine


def parts(foods: tuple[FoodLine, ...]) -> Iterator[Part]:
    """Every line and every ``or:`` choice of it."""
    for index, line in enumerate(foods):
        yield Part(index, -1, line)
        for which, choice in enumerate(line.choices):
            yield Part(index, which, choice)


def _by_state(food: Food) -> tuple[str, ...]:
    """ "canned sardines" for a canned record of the name "sardines"."""
    return (f"{food.state} {food.name}",) if food.state in ("canned", "dried") else ()


# What is made of a fruit or a nut has lost its shape: "cherry yoghurt" has no stones, "plum vinegar" no skins.
_CARRIED = re.compile(
    r"[ -](?:(?:and|&) \w+ )?(?:flavou?r(?:ed)?[ -])?(?:\w+ )?(?:sauces?|jams?|jell(?:y|ies)|conserve|compotes?"
    r"|yogh?urts?|fromage frais|soups?|sausages?|tortellini|ravioli|vinegar|oil"
    r"|pur[ée]es?|juice|ice cream|sorbet|syrup|cordial|squash|extract|essence|liqueur|powder|curd"
    r"|custard|flavou?r(?:ing)?|tea|cake|pie|bar|leather|flour|starch|meal|noodles|vermicelli)\b",
    re.I,
)
_FLAVOURED = re.compile(r"[ -](?:(?:and|&) \w+ )?(?:flavou?r(?:ed)?[ -])?(?:\w+ )?(?:yogh?urts?|fromage frais)\b", re.I)
_FRUIT = frozenset({"small-round", "stone-fruit", "berry", "large-berry", "soft-fruit"})
_SHAPES = _FRUIT | frozenset(
    """stone-dried dried-fruit nut pip-fruit hard-raw hard-raw-unless-ripe firm-raw crisp-raw peel-fruit cranberry melon
    corn-kernel big-bean pea coin-shape stringy""".split()
)


def _meant(hit: Found, text: str, tables: FeedingTables) -> frozenset[str]:
    """The kinds of a hit, without the shape of a fruit that only flavours what stands behind it."""
    kinds = tables.kinds[hit.value]
    if not kinds & _SHAPES or _CARRIED.match(text, hit.end) is None:
        return kinds
    sweet = frozenset({"sugary-food"}) if kinds & _FRUIT and _FLAVOURED.match(text, hit.end) else EMPTY
    return (kinds - _SHAPES) | sweet


_JUDGED = frozenset({"fine-meat"})  # what has no shape of its own


def kinds_of_record(food: Food, foods: Foods, tables: FeedingTables) -> frozenset[str]:
    """The kinds of a food by its record: its id, its name and its names, its plain food, its traits.

    The same for every synonym by which a cook may write it. Where no name of it says how it may choke, its group,
    hardness and state do: "fish/firm/raw" may have bones.
    """
    if food.id in tables.record_kinds:
        return tables.record_kinds[food.id]
    found: set[str] = set()
    for text in (*_by_state(food), food.name, *food.names, food.id.replace("-", " ")):
        hits = tables.phrases.find(text)
        if hits:
            for hit in hits:
                found |= _meant(hit, text, tables)
            break
    else:
        parent = foods.get(food.parent) if food.parent and food.parent != food.id else None
        if parent is not None:
            found |= kinds_of_record(parent, foods, tables)
    for trait in food.traits:
        found |= tables.traits.get(trait, EMPTY)
    if not found & (tables.choking | _JUDGED):
        found |= tables.traits.get(f"{food.group}/{food.hardness}/{food.state}", EMPTY)
    tables.record_kinds[food.id] = frozenset(found)
    return tables.record_kinds[food.id]


# Forms that a synonym of the record may ask for and the record itself does not say.
_FORMS = frozenset(
    """hard-object jelly-cube cheese-ball bone-in crunchy fennel-tea mould-cheese rice-cereal seeded-bread raw-dish
    rolled-ball sticky-dough coconut-flake dry-hard raw-egg-product""".split()
)

# Kinds that count wherever the line says them ("ham, glazed with honey").
_ANYWHERE = frozenset({"honey", "salt", "sugar", "syrup", "raw-egg-product"})


_BEHIND = re.compile(r"[ \t]*, ?(?P<words>[\w-]+(?: [\w-]+)?)$")


def _turned(line: FoodLine) -> tuple[str, ...]:
    """ "Mayonnaise, homemade" as "homemade mayonnaise"."""
    behind = _BEHIND.match(line.text, line.text.find(line.name) + len(line.name))
    return (f"{behind['words']} {line.name}",) if behind else ()


def _hits(line: FoodLine, tables: FeedingTables) -> list[tuple[Found, frozenset[str]]]:
    """The table's phrases that name the food, each with its kinds: those in its name, or, in the whole line, longer
    ones around it ("homemade mayonnaise" where "homemade" is read as a preparation)."""
    named = tables.phrases.find(line.name)
    own = {word.key for word in words(line.name)}
    around = [
        hit
        for text in (line.text, *_turned(line))
        for hit in tables.phrases.find(text)
        if tables.kinds[hit.value] & _ANYWHERE or (own & set(hit.phrase) and not set(hit.phrase) <= own)
    ]
    longer = [hit for hit in around if not any(hit.phrase == one.phrase for one in named)]
    kept = [one for one in named if not any(set(one.phrase) < set(hit.phrase) for hit in longer)]
    return [
        *((hit, _meant(hit, line.name, tables)) for hit in kept),
        *((hit, _meant(hit, line.text, tables)) for hit in longer),
    ]


def _own_names(food: Food, tables: FeedingTables) -> frozenset[tuple[str, ...]]:
    """The names of a record in folded words."""
    if food.id not in tables.record_names:
        names = (food.id.replace("-", " "), food.name, *food.names)
        tables.record_names[food.id] = frozenset(tuple(word.key for word in words(name)) for name in names)
    return tables.record_names[food.id]


def _by_head(name: str, tables: FeedingTables) -> frozenset[str]:
    """What the last word of a name says of a food that no table knows: "barberry drops" are sweets."""
    ends = [hit for hit in tables.heads.find(name) if not name[hit.end :].strip()]
    return frozenset().union(*(tables.kinds[hit.value] for hit in ends))


_OFF_THE_BONE = frozenset({"fillet", "mince", "minced", "ground", "steak", "diced", "eye"})

_FRESH = frozenset({"fresh", "raw", "gutted", "scaled", "butterflied", "frozen"})
_TINNED = frozenset({"tin", "tinned", "can", "canned", "drained", "jar", "jarred"})


def _bought_fresh(line: FoodLine) -> bool:
    """Whether a line asks for the fresh food where the table has it tinned: "6 fresh sardines"."""
    said = keys(line.text)
    return bool(said & _FRESH or line.state in ("raw", "frozen")) and not said & _TINNED


_ANIMALS = frozenset({"chicken", "duck", "turkey", "rabbit", "hare", "capon", "whole", "small", "spring", "duckling"})
_A_PIECE = frozenset({"piece", "slice", "mince", "minced"})
_BIRD = frozenset({"bird"})


def _joint(line: FoodLine, food: Food, tables: FeedingTables) -> frozenset[str]:
    """What a joint's name says of meat in any order: "neck of lamb" is on the bone as "lamb shank" is."""
    if food.group not in ("meat", "poultry") or keys(line.name) & _OFF_THE_BONE:
        return EMPTY
    if keys(line.name) <= _ANIMALS and not keys(line.text) & _A_PIECE:
        return _BIRD  # "1 chicken", and no breast of it
    found = frozenset().union(*(tables.kinds[hit.value] for hit in tables.heads.find(line.name)))
    return found - {HEAD} if "bone-in" in found else EMPTY


def kinds_of(line: FoodLine, foods: Foods, tables: FeedingTables) -> frozenset[str]:
    """The kinds of what a line names, skimmed where it says so."""
    kinds = _kinds_named(line, foods, tables)
    food = foods.get(line.food) if line.food else None
    milky = food is not None and food.group in ("dairy", "cheese") and "milk" in food.allergens
    return kinds | _SKIMMED if milky and line.has("low-fat") else kinds


_SKIMMED = frozenset({"low-fat-dairy"})


def _kinds_named(line: FoodLine, foods: Foods, tables: FeedingTables) -> frozenset[str]:
    """The kinds of what a line names.

    Words that are not simply a name of the record say more than the record ("honey mustard", "cherry tomatoes"
    under a record for tomatoes), so they win; a synonym is judged by its record.
    """
    food = foods.get(line.food) if line.food else None
    hits = _hits(line, tables)
    if food is None:
        head = _by_head(line.name, tables)
        said = frozenset().union(*(kinds for _, kinds in hits), head) - {HEAD}
        return said if said or hits or head or line.recipe else UNKNOWN
    if food.state == "canned" and _bought_fresh(line):
        return frozenset().union(*(kinds for _, kinds in hits)) or kinds_of_record(food, foods, tables)
    own = _own_names(food, tables)
    by_record = kinds_of_record(food, foods, tables) | _joint(line, food, tables)
    if tuple(word.key for word in words(line.name)) in own:
        name = {word.key for word in words(line.name)}
        extra: frozenset[str] = EMPTY
        for hit, kinds in hits:
            extra |= kinds & (_FORMS | _ANYWHERE) if set(hit.phrase) <= name else kinds
        return by_record | extra
    by_name = {word.key for word in words(f"{food.name} {food.id.replace('-', ' ')}")}
    more = [kinds for hit, kinds in hits if not set(hit.phrase) <= by_name and hit.phrase not in own]
    if not more:
        return by_record
    said = frozenset().union(*more)
    # A name the record knows stands beside the further words: both count ("yoghurt with honey").
    said |= _joint(line, food, tables)
    return said | by_record if len(hits) > len(more) else said
