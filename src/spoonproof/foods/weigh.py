"""From a food line to grams: as bought and as it goes in, each with its range and what had to be assumed.

Volume goes by the food's own household portions first, by its density where it has none. Counts go by the portion
of the size that was written. What is not eaten (peel, core, stone, bone, shell) comes off by the food's waste and
the words of preparation.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Protocol

from spoonproof.foods.grams import Grams, Step
from spoonproof.foods.volume import TABLE_ML, by_volume
from spoonproof.model.food import Food, Portion
from spoonproof.model.recipe import Amount, FoodLine
from spoonproof.model.record import dataclass
from spoonproof.model.text import Span

_MASSES = frozenset(("g", "kg", "mg", "oz", "lb"))
_THIN_PEEL = "thin peel"  # eaten as a rule: comes off only where the line says so
_REMOVES = {
    "peeled": ("peel", "skin", _THIN_PEEL),
    "skinned": ("peel", "skin", "fat"),
    "cored": ("core", "pips", "stalk"),
    "stoned": ("stone", "pips"),
    "deseeded": ("pips", "core", "stalk"),
    "trimmed": ("stalk", "ends", "tops", "outer leaves", "leaves", "fat", "husk"),
    "shelled": ("shell", "pod", "husk", "cob"),
    "boned": ("bone", "skin"),
}
_UNIT_AS = {
    "rasher": ("slice", "piece"),
    "cob": ("piece",),
    "breast": ("piece",),
    "thigh": ("piece",),
    "bulb": ("head", "piece"),
    "head": ("piece",),
    "stick": ("stalk", "piece"),
    "stalk": ("stick", "spear", "piece"),
    "spear": ("stalk", "piece"),
    "fillet": ("piece",),
    "ball": ("piece",),
    "block": ("piece",),
    "cube": ("piece",),
    "sheet": ("piece",),
    "floret": (),
    "piece": ("head", "cube", "fillet", "block", "link"),
    "pouch": ("packet", "pack"),
    "bag": ("pack",),
    "tub": ("pack",),
    "jar": ("tin",),
    "carton": ("pack",),
    "thumb": ("piece",),
}
_SPOONS = frozenset(("tsp", "dsp", "tbsp", "spoonful"))
_HEAPED = (1.5, 1.2, 2.0)
_SCALE = {"small": 0.7, "": 1.0, "medium": 1.0, "large": 1.35}

_PIECE_OF = re.compile(r"^[^,(]{0,30}\b(?:piece|chunk|hunk|lump)[ \t]+of\b", re.I)  # "a piece of pumpkin" is no pumpkin
_FLESH = ("flesh", "ready-weight")
_UNCUT = ("whole", "half", "quarter")
_DRAINED_BRACKET = re.compile(r"[ ]?(?:when |once )?drained(?: weight)?[)\]]", re.I)  # "1 tin (95 g drained) mackerel"
_THEN_DRAINED = re.compile(r"^[^()]{0,60}[0-9][ ]?g,[ ]drained", re.I)
_BIG = 150  # grams; a piece of a smaller one is taken for all of it


class Units(Protocol):
    """Kitchen measures as this room needs them: exact, None where the unit is of another kind."""

    def ml(self, unit: str) -> Fraction | None:
        """Millilitres of one ``unit``."""

    def grams(self, unit: str) -> Fraction | None:
        """Grams of one ``unit``."""

    def range(self, unit: str) -> tuple[Fraction, Fraction] | None:
        """The least and the most that one ``unit`` holds, in millilitres or grams as it is measured."""


@dataclass(frozen=True, slots=True)
class Weight:
    """What a line weighs: ``bought`` as on the scale in the shop, ``edible`` as it goes into the pot.

    ``assumed`` says every step that was not written on the line; ``sources`` are the source ids behind them.
    """

    bought: Grams
    edible: Grams
    assumed: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Unweighed:
    """A line that has no weight we know, and why, in words for the cook."""

    why: str
    to_taste: bool = False


def weigh(line: FoodLine, food: Food, units: Units) -> Weight | Unweighed:
    """The weight of a food line whose food is ``food``; ``Unweighed`` where neither the line nor a table tells it.

    Amounts that are zero, negative or no finite numbers give ``Unweighed`` too, never a wrong number.
    """
    amount = line.amount
    if amount is None:
        return Unweighed(f"no amount is written for {food.name}")
    if amount.to_taste:
        return Unweighed(f"{food.name} is added to taste, so nothing is counted for it", to_taste=True)
    if not 0 < amount.low <= amount.high or amount.high > 1_000_000:
        return Unweighed(f"the amount of {food.name} is no usable number")
    step = _whole(line, amount, food, units)
    if step is None or (step.grams.mid > _BIG * amount.high and _PIECE_OF.search(line.text) and amount.unit == "piece"):
        return Unweighed(_why_not(amount, food))
    weight = _waste(line, food, step)
    if amount.about:
        near = weight.edible.times(1, 0.9, 1.1)
        weight = Weight(
            weight.bought.times(1, 0.9, 1.1), near, (*weight.assumed, f"“about”: {food.name} ± 10 %"), weight.sources
        )
    return weight


def _why_not(amount: Amount, food: Food) -> str:
    if amount.unit == "piece":
        return f"no table says what one {food.name} weighs: write grams"
    return f"no table says what one {amount.unit} of {food.name} weighs: write grams"


def _whole(line: FoodLine, amount: Amount, food: Food, units: Units) -> Step | None:
    count = _count(amount)
    if amount.unit in _MASSES:
        one = units.grams(amount.unit)
        return None if one is None else Step(count.times(float(one)), False, (), ())
    if amount.each is not None:
        return _packed(line, amount, food, units)
    volume = units.ml(amount.unit)
    portion = next((p for p in food.portions if p.unit == amount.unit and not p.size), None)
    if volume is not None and not (portion is not None and amount.unit not in TABLE_ML):
        step = _heaped(by_volume(line, count, float(volume), amount.unit, food), amount, food)
        within = units.range(amount.unit)
        if step is None or within is None:
            return step
        low, high = (float(end / volume) for end in within)  # a glass, a small bowl: a measure by eye
        return step._replace(grams=step.grams.times(1, low, high))
    return _by_count(line, count, amount, food, units)


def _heaped(step: Step | None, amount: Amount, food: Food) -> Step | None:
    """ "2 heaped tbsp oats": what stands above the rim of the spoon too."""
    if step is None or amount.size != "large" or amount.unit not in _SPOONS or food.hardness == "liquid":
        return step
    said = f"a heaped {amount.unit} of {food.name} taken as one and a half"
    grams = Grams(*(step.grams.mid * times for times in _HEAPED))
    return Step(grams, step.edible, (*step.assumed, said), (*step.sources, "common-practice"))


def _count(amount: Amount) -> Grams:
    low, high = float(amount.low), float(amount.high)
    return Grams((low + high) / 2, low, high)


def _packed(line: FoodLine, amount: Amount, food: Food, units: Units) -> Step | None:
    """ "2 x 400 g tins", "a 2 cm piece": so many of a stated weight."""
    assert amount.each is not None
    each = amount.each
    one = units.grams(each.unit) if each.unit in _MASSES else None
    sources: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()
    if one is None:
        millilitres = units.ml(each.unit)
        if millilitres is None:
            return _by_count(line, _count(amount), amount, food, units)
        measured = by_volume(line, Grams(1, 1, 1), float(millilitres), each.unit, food)
        if measured is None:  # "1 cauliflower (about 4 cups)", and no cup of it is known
            return _by_count(line, _count(amount), amount, food, units)
        per_unit, assumed, sources = measured.grams.mid, measured.assumed, measured.sources
    else:
        per_unit = float(one)
    total = _product(_count(amount), _count(each).times(per_unit))
    if amount.unit in ("tin", "jar"):
        return _drained(line, total, food, assumed, sources)
    return Step(total, one is None, assumed, sources)  # a volume is of what goes into the cup


def _product(count: Grams, each: Grams) -> Grams:
    return Grams(count.mid * each.mid, count.low * each.low, count.high * each.high)


def _drained(line: FoodLine, total: Grams, food: Food, assumed: tuple[str, ...], sources: tuple[str, ...]) -> Step:
    """What is eaten of a tin: its solids where the food is sold in liquid, all of it where it is not."""
    full = _portion(food, "tin", "")
    solids = _portion(food, "tin", "drained")
    beside = any(word == "drained" and _in_its_bracket(line, span) for word, span in line.prepared)
    if beside or line.has("drained-weight") or _DRAINED_BRACKET.match(_after_each(line)):
        return Step(total, True, assumed, sources)
    if solids is None or full is None:
        if not line.has("drained"):
            return Step(total, True, assumed, sources)
        share, source = 0.6, "common-practice"
    else:
        share, source = solids.grams / full.grams, solids.source
    said = "" if line.has("drained") else ", its liquid poured off"
    note = f"of a tin of {food.name} {share * 100:.0f} % counted as drained weight{said}"
    high = share * 1.08 if line.has("drained") else 1.0
    return Step(total.times(share, share * 0.92, high), True, (*assumed, note), (*sources, source))


def _portion(food: Food, unit: str, size: str) -> Portion | None:
    return next((p for p in food.portions if p.unit == unit and p.size == size), None)


def _by_count(line: FoodLine, count: Grams, amount: Amount, food: Food, units: Units) -> Step | None:
    for unit in (amount.unit, *_UNIT_AS.get(amount.unit, ())):
        sized = [p for p in food.portions if p.unit == unit and p.size in ("", "small", "medium", "large")]
        if not sized:
            continue
        pressed = _portion(food, unit, "juice") if line.has("juice") else None  # "juice and zest of a lemon"
        step = _piece(count, amount, food, unit, [pressed._replace(size="")] if pressed else sized)
        return _drained(line, step.grams, food, step.assumed, step.sources) if unit == "tin" else step
    loose = units.grams(amount.unit)
    if loose is not None:
        note = f"one {amount.unit} of {food.name} taken as {float(loose):g} g"
        grams = count.times(float(loose), float(loose) * 0.5, float(loose) * 2)
        return Step(grams, True, (note,), ("common-practice",))
    return None


def _piece(count: Grams, amount: Amount, food: Food, unit: str, sized: list[Portion]) -> Step:
    """So many pieces of the size written; without a size the middle one, between the small and the large."""
    by_size = {p.size: p for p in sized}
    want = amount.size
    chosen = by_size.get(want or "medium") or (None if want else by_size.get(""))
    scale = 1.0
    if chosen is None:
        chosen = by_size.get("medium") or by_size.get("") or sized[0]
        scale = _SCALE.get(want, 1.0) / _SCALE.get(chosen.size, 1.0)
    each = chosen.grams * scale
    if want:
        low, high = each * 0.85, each * 1.15
    else:
        low = min([p.grams for p in sized if p.size == "small"] or [each * 0.75])
        high = max([p.grams for p in sized if p.size == "large"] or [each * 1.3])
    low, high = min(low, each), max(high, each)
    what = f"{want} {food.name}" if unit == "piece" else f"{want} {unit} of {food.name}"
    note = f"one {what.strip()} taken as {each:.3g} g without waste, between {low:.3g} and {high:.3g}"
    return Step(count.times(each, low, high), True, (note,), (chosen.source,))


def _waste(line: FoodLine, food: Food, step: Step) -> Weight:
    share = food.refuse_pct / 100
    tinned = line.state == "canned" and food.state != "canned"  # the figures of it raw; nobody tins peel and stones
    if not share or tinned:
        return Weight(step.grams, step.grams, step.assumed, step.sources)
    if step.edible:
        return Weight(step.grams.times(1 / (1 - share)), step.grams, step.assumed, step.sources)
    parts = set(food.refuse)
    if parts == {_THIN_PEEL} and not line.has("peeled"):
        return Weight(step.grams, step.grams, (*step.assumed, f"{food.name} eaten in its skin"), step.sources)
    peel_stays = line.has("unpeeled") and bool(parts & {"peel", "skin"})
    if peel_stays:
        share = 0.0 if parts <= {"peel", "skin", "ends"} else share / 2
    if not share:
        note = f"{food.name} with its peel: nothing taken off"
        return Weight(step.grams, step.grams, (*step.assumed, note), step.sources)
    before = _ready_before(line, parts)
    if before:
        note = f"{food.name} weighed {before}: no waste taken off"
        return Weight(step.grams.times(1 / (1 - share)), step.grams, (*step.assumed, note), step.sources)
    keep = 1 - share
    what = ", ".join(food.refuse) or "waste"
    note = f"{food.name} weighed as bought: {share * 100:.0f} % taken off ({what})"
    edible = step.grams.times(keep, keep, 1.0)
    return Weight(step.grams, edible, (*step.assumed, note), (*step.sources, food.source))


def _in_its_bracket(line: FoodLine, span: Span) -> bool:
    """ "1 banana (100 g peeled)": said of the weight beside it."""
    each = line.amount.each if line.amount is not None else None
    if each is None or _THEN_DRAINED.search(line.text):
        return False  # "1 tin of beans, 400 g, drained"
    between = _between(line, each.span.end, span.start)
    return 0 <= span.start - each.span.end <= len(" once ") and ")" not in between  # "(400 g), drained"


def _after_each(line: FoodLine) -> str:
    """The words right behind the weight of one: " drained) mackerel"."""
    each = line.amount.each if line.amount is not None else None
    return "" if each is None else _between(line, each.span.end, line.span.end)


def _between(line: FoodLine, start: int, end: int) -> str:
    """The words of a line between two places of the file; the line may stand in quotation marks."""
    first = line.span.start + (line.span.end - line.span.start - len(line.text)) // 2
    return line.text[max(0, start - first) : max(0, end - first)]


def _ready_before(line: FoodLine, parts: set[str]) -> str:
    """The word that says the food was weighed without its waste: of preparation before the name ("300 g peeled
    parsnip"), of its flesh, or of a cut in one breath with the name ("broccoli florets", "diced mango")."""
    for word, span in line.prepared:
        before = span.start < line.name_span.start or _in_its_bracket(line, span)
        if word in _FLESH or (before and parts & set(_REMOVES.get(word, ()))):
            return "as " + word if word == "flesh" else word.replace("ready-weight", "ready")
    for cut in line.cuts:
        written = _between(line, cut.span.start, cut.span.end)
        together = written.endswith("s") and _between(line, line.name_span.end, cut.span.start) == " "
        if cut.shape not in _UNCUT and (cut.span.start < line.name_span.start or together):
            return f"as {written}" if together else written or cut.shape
    return ""
