"""One entry of ``foods`` as the lines it holds: one as a rule, several where a cook listed foods behind commas, none
where it is a thing of the kitchen and no food."""

from __future__ import annotations

import re

from spoonproof.model.finding import Edit, Finding, Remedy
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import FoodLine
from spoonproof.model.record import replace
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Scalar
from spoonproof.reading.food_line import read_food_line
from spoonproof.reading.kitchen_faults import FOOD_LINE_CHARACTERS, kitchen_fault
from spoonproof.reading.measures import Measures

_BETWEEN = re.compile(r"[ \t]*[,;+][ \t]*(?:and[ \t]+)?|[ \t]+(?:and|&|plus)[ \t]+")
_BRACKETS = re.compile(r"\([^()]{0,120}\)")
_BULLET = re.compile(r"(?:^|\n)([ \t]*-[ \t]+)\Z")
_BESIDE = re.compile(r"\b(?:on|with|from|and)\b", re.I)  # "prawns on wooden skewers" is food
_AMOUNT = re.compile(r"[0-9½⅓⅔¼¾]|(?:an?|half|one|two|three)[ \t]", re.I)
_FIRST_PART = re.compile(r"[^,;(]{1,80}")
_AFTER_IT = re.compile(r"[ \t](?:for|to|in|if|or)[ \t].*", re.S)
_KIT = re.compile(
    r"\b(?:skewers?|(?:cocktail|lolly|lollipop|popsicle|craft|wooden|bamboo)[ \t-]sticks?|tooth[ -]?picks?|(?:tin)?foil"
    r"|(?:baking|parchment|greaseproof|waxed|wax|kitchen|silicone)[ \t](?:paper|parchment|towels?|roll|sheets?|mats?)"
    r"|cling ?film|(?:plastic|cling)[ \t]wrap|(?:paper|muffin|cupcake|cake|bun|fairy[ \t]cake|silicone)[ \t]"
    r"(?:cases|cups|liners|wrappers)|muslin(?:[ \t](?:cloth|square))?|cheesecloth"
    r"|(?:kitchen|butcher['’]?s)[ \t](?:string|twine)"
    r"|(?:piping|freezer|zip[- ]?lock|sandwich|reusable)[ \t](?:bags?|pouch(?:es)?)"
    r"|(?:[\w-]{1,20}[ \t])?moulds?|ramekins?|(?:ice[ -]cube|muffin|baking)[ \t]trays?"
    r"|(?:muffin|baking|cake|loaf)[ \t]tins?)[ \t]*$",
    re.I,
)

_FEW_WORDS = r"[^\W\d_]+(?:[ \t]+[^\W\d_]+){0,3}[ \t]*"
_HEADING = re.compile(
    rf"[ \t]*(?:for[ \t]+(?:the|your)[ \t]+{_FEW_WORDS}"
    r"|to[ \t]+(?:finish|serve|garnish|decorate|top)):?[ \t]*",
    re.I,
)
_COLON_HEADING = re.compile(rf"[ \t]*{_FEW_WORDS}:[ \t]*")


def read_entry(
    scalar: Scalar, document: Document, foods: Foods, measures: Measures
) -> tuple[tuple[FoodLine, ...], list[Finding]]:
    """The food lines of one entry and the faults of reading them. Never raises."""
    if is_heading(scalar.value):
        return (), [heading_note(scalar.value, scalar.span, document)]
    line, found = read_food_line(scalar, document, foods, measures)
    rules = {fault.rule for fault in found}
    if line.food is None and _COLON_HEADING.fullmatch(scalar.value):  # "Vegetables:", not "Honey:"
        return (), [heading_note(scalar.value, scalar.span, document)]
    if line.food is None and rules & {"unknown-food", "food-missing"}:
        kit = _kit(scalar.value)
        if kit:
            return (), [_no_food(kit, scalar, document)]
    if rules & {"second-food-on-a-line", "unknown-food"} and len(scalar.value) <= FOOD_LINE_CHARACTERS:
        apart = _apart(scalar, document, foods, measures)
        if apart:
            return apart, [_on_one_line(apart, scalar, document)]
    return (line,), found


def is_heading(text: str) -> bool:
    """Whether an entry of ``foods`` only heads those after it: "For the sauce:"."""
    return len(text) <= 60 and _HEADING.fullmatch(text) is not None


def heading_note(text: str, span: Span, document: Document) -> Finding:
    """The note that a heading stands among the foods."""
    message = f"“{text.strip(' :')}” heads the foods after it and is no food itself; it is left out of the list."
    return kitchen_fault("no-food-but-a-tool", document, span, message, "Say in the steps what goes where.")


def _kit(text: str) -> str:
    first = _FIRST_PART.match(text)
    words = _AFTER_IT.sub("", first[0]).strip(" \t.") if first is not None else ""
    return words if _KIT.search(words) and not _BESIDE.search(words) else ""


def _no_food(words: str, scalar: Scalar, document: Document) -> Finding:
    message = f"“{words}” is no food, so it does not belong under foods; it is left out of the list."
    remedy = "Name it in the step that uses it."
    return kitchen_fault("no-food-but-a-tool", document, scalar.span, message, remedy)


def _apart(scalar: Scalar, document: Document, foods: Foods, measures: Measures) -> tuple[FoodLine, ...]:
    """The line of each part, where every one is an amount and a food of its own that reads without a fault."""
    text = scalar.value
    if document.at(scalar.span) != text:
        return ()  # quoted or folded: its places are not those of the words
    lines: list[FoodLine] = []
    for start, end in _places(text, foods):
        span = Span(scalar.span.start + start, scalar.span.start + end)
        line, found = read_food_line(replace(scalar, value=text[start:end], span=span), document, foods, measures)
        own = line.food is not None and line.amount is not None and line.amount.span.start == span.start
        if own and not found:
            lines.append(line)
        else:
            return ()
    distinct = len({line.food for line in lines}) == len(lines) > 1
    return tuple(lines) if distinct else ()


def _places(text: str, foods: Foods) -> list[tuple[int, int]]:
    """The parts that begin with an amount and name a food: what else stands behind a comma ("1 cm dice") belongs to
    the food before it."""
    plain = _BRACKETS.sub(lambda bracket: "_" * len(bracket[0]), text)
    places: list[tuple[int, int]] = []
    start = 0
    signs = [*_BETWEEN.finditer(plain)]
    for at, sign in enumerate(signs):
        part = text[sign.end() : signs[at + 1].start() if at + 1 < len(signs) else len(text)]
        if _AMOUNT.match(part) and foods.find(part):
            places.append((start, sign.start()))
            start = sign.end()
    return [*places, (start, len(text))]


def _on_one_line(lines: tuple[FoodLine, ...], scalar: Scalar, document: Document) -> Finding:
    """The note, with the edit that writes the lines out where the list has a line for each entry."""
    message = f"{len(lines)} foods share this line; each is counted and checked."
    finding = kitchen_fault("foods-on-one-line", document, scalar.span, message)
    before = _BULLET.search(document.text, max(0, scalar.span.start - 40), scalar.span.start)
    words = "Give each food a line of its own."
    if before is None:
        return replace(finding, remedy=Remedy(words))
    start = before.start(1)
    end = "\r\n" if document.text[:start].endswith("\r\n") else "\n"
    written = end.join(before[1] + line.text for line in lines)
    return replace(finding, remedy=Remedy(words, safe=True, edits=(Edit(Span(start, scalar.span.end), written),)))
