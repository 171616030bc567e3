"""One entry of ``foods`` as the lines it holds: one as a rule, several where a cook listed foods behind commas, none
where it is a thing of the kitchen and no food."""

from __future__ import annotations

import itertools
import re
from collections.abc import Collection, Sequence

from spoonproof.model.finding import Edit, Finding, Remedy
from spoonproof.model.recipe import FoodLine
from spoonproof.model.record import replace
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Mapped, Scalar
from spoonproof.reading.amount import amount_at, moved
from spoonproof.reading.faults import fault
from spoonproof.reading.food_line import read_food_line
from spoonproof.reading.limits import FOOD_LINE_CHARACTERS
from spoonproof.reading.placing import Page

_BETWEEN = re.compile(
    r"(?i)[ \t]{0,3}[,;+][ \t]{0,3}(?:and[ \t]{1,3})?|[ \t]{1,3}(?:and|&|plus)[ \t]{1,3}"
    r"|,?[ \t]{1,3}(?:soaked|softened|dissolved|mixed|blended|whisked)[ \t]{1,3}(?:in|into|with)[ \t]{1,3}"
)
_BRACKETS = re.compile(r"\([^()]{0,120}\)")
_BULLET = re.compile(r"(?:^|\n)([ \t]*-[ \t]+)\Z")
_BESIDE = re.compile(r"(?i)\b(?:on|with|from|and)\b")  # "prawns on wooden skewers" is food
_AMOUNT = re.compile(r"(?i)[0-9½⅓⅔¼¾]|(?:an?|half|one|two|three)[ \t]")
_FIRST_PART = re.compile(r"[^,;(]{1,80}")
_AFTER_IT = re.compile(r"[ \t](?:for|to|in|if|or)[ \t].*", re.S)
_KIT = re.compile(
    r"(?i)\b(?:skewers?|(?:cocktail|lolly|lollipop|popsicle|craft|wooden|bamboo)[ \t-]sticks?|tooth[ -]?picks?"
    r"|(?:tin)?foil|(?:baking|parchment|greaseproof|waxed|wax|kitchen|silicone)[ \t](?:paper|parchment|towels?|roll"
    r"|sheets?|mats?)|cling ?film|(?:plastic|cling)[ \t]wrap|(?:paper|muffin|cupcake|cake|bun|fairy[ \t]cake"
    r"|silicone)[ \t](?:cases|cups|liners|wrappers)|muslin(?:[ \t](?:cloth|square))?|cheesecloth|(?:kitchen"
    r"|butcher['’]?s)[ \t](?:string|twine)|(?:piping|freezer|zip[- ]?lock|sandwich|reusable)[ \t](?:bags?"
    r"|pouch(?:es)?)|(?:[\w-]{1,20}[ \t])?moulds?|ramekins?|(?:ice[ -]cube|muffin|baking)[ \t]trays?|(?:muffin|baking"
    r"|cake|loaf)[ \t]tins?)[ \t]*$"
)

_EACH = re.compile(r"(?i)(?P<amount>[^,;()]{1,30}?)[ \t]{1,3}each(?:[ \t]{1,3}of)?[ \t]{0,3}:?[ \t]{1,3}(?=[^\W\d_])")
_FEW_WORDS = r"[^\W\d_]+(?:[ \t]+[^\W\d_]+){0,3}[ \t]*"
_HEADING = re.compile(
    rf"(?i)[ \t]*(?:for[ \t]+(?:the|your)[ \t]+{_FEW_WORDS}"
    r"|to[ \t]+(?:finish|serve|garnish|decorate|top)):?[ \t]*"
)
_COLON_HEADING = re.compile(rf"[ \t]*{_FEW_WORDS}:[ \t]*")


def read_entry(scalar: Scalar, page: Page) -> tuple[tuple[FoodLine, ...], list[Finding]]:
    """The food lines of one entry and the faults of reading them. Never raises."""
    text = scalar.value
    if is_heading(text):
        return (), [heading_note(text, scalar.span, page.document)]
    line, found = read_food_line(scalar, page)
    rules = {one.rule for one in found}
    apart: tuple[FoodLine, ...] = ()
    if (each := _EACH.match(text)) is not None:
        apart = _of_each(each, scalar, page)
    if not apart and line.food is None and _COLON_HEADING.fullmatch(text):  # "Vegetables:", not "Honey:"
        return (), [heading_note(text, scalar.span, page.document)]
    if not apart and line.food is None and rules & {"unknown-food", "food-missing"} and (kit := _kit(text)):
        message = f"“{kit}” is no food, so it does not belong under foods; it is left out of the list."
        return (), [_tool(scalar.span, page.document, message, "Name it in the step that uses it.")]
    if not apart and rules & {"second-food-on-a-line", "unknown-food"} and len(text) <= FOOD_LINE_CHARACTERS:
        apart = _lines_of(scalar, _measured_parts(text, page), page, measured=True)
        if not apart and (line.amount is None or line.amount.to_taste):
            apart = _unmeasured(scalar, page)
    return (apart, [_on_one_line(apart, scalar, page.document)]) if apart else ((line,), found)


def is_heading(text: str) -> bool:
    """Whether an entry of ``foods`` only heads those after it: "For the sauce:"."""
    return len(text) <= 60 and _HEADING.fullmatch(text) is not None


def heading_note(text: str, span: Span, document: Document) -> Finding:
    """The note that a heading stands among the foods."""
    message = f"“{text.strip(' :')}” heads the foods after it and is no food itself; it is left out of the list."
    return _tool(span, document, message, "Say in the steps what goes where.")


def _tool(span: Span, document: Document, message: str, remedy: str) -> Finding:
    return fault("no-food-but-a-tool", document, span, message, remedy)


def _kit(text: str) -> str:
    """The thing of the kitchen that an entry names; "" for none."""
    first = _FIRST_PART.match(text)
    words = _AFTER_IT.sub("", first[0]).strip(" \t.") if first is not None else ""
    return words if _KIT.search(words) and not _BESIDE.search(words) else ""


def as_written(node: Mapped, document: Document, known: Collection[str]) -> Scalar | None:
    """ "Moong dal : 1/2 cup", in which YAML sees a key with its value, as the one line that was meant; None where it is
    written as a mapping, or its key is one of the ``known``."""
    if len(node.entries) != 1 or node.entries[0][0].value in known or not isinstance(node.entries[0][1], Scalar):
        return None
    text = document.at(node.span).rstrip()
    if "\n" in text or text.startswith(("{", '"', "'")) or text.endswith(('"', "'", ":")):
        return None
    return Scalar(text, Span(node.span.start, node.span.start + len(text)))


def _lines_of(scalar: Scalar, parts: Sequence[tuple[int, int]], page: Page, measured: bool) -> tuple[FoodLine, ...]:
    """The line of each part, where every one is a food of its own that reads without a fault; ``measured``: it begins
    with its amount, else it has none."""
    begins_at = _words_start(scalar, page.document)
    if begins_at is None:
        return ()
    lines: list[FoodLine] = []
    for start, end in parts:
        span = Span(begins_at + start, begins_at + end)
        line, found = read_food_line(Scalar(scalar.value[start:end], span), page)
        amount = line.amount
        begins = amount is not None and amount.span.start == span.start
        if line.food is None or found or not (begins if measured else amount is None or amount.to_taste):
            return ()
        lines.append(line)
    return tuple(lines) if len({line.food for line in lines}) == len(lines) > 1 else ()


def _words_start(scalar: Scalar, document: Document) -> int | None:
    """Where the words begin, in quotes or without; None where they are folded, so that their places are others."""
    written = document.at(scalar.span)
    if written == scalar.value:
        return scalar.span.start
    return scalar.span.start + 1 if written in (f'"{scalar.value}"', f"'{scalar.value}'") else None


def _of_each(each: re.Match[str], scalar: Scalar, page: Page) -> tuple[FoodLine, ...]:
    """ "1 tsp each cumin and turmeric": a line of that amount for every food; "finely chopped" before the first is
    said of all."""
    amount = amount_at(scalar.value, each.start("amount"), page.measures)
    if amount is None or amount.amount is None or amount.problems or amount.end < each.end("amount"):
        return ()
    start = _words_start(scalar, page.document) or scalar.span.start
    said = moved(amount.amount, lambda a, b: Span(start + a, start + b))
    lines = _lines_of(scalar, _named_parts(scalar.value, each.end(), page), page, measured=False)
    shared = tuple(cut for line in lines[:1] for cut in line.cuts if cut.span.end <= line.name_span.start)
    said_of_all = "".join(f", {page.document.at(cut.span)}" for cut in shared)
    parted: list[FoodLine] = []
    for line in lines:
        own = line.cuts or not _can_be_cut(line, page)
        text = f"{each['amount'].strip()} {line.text}{'' if own else said_of_all}"
        parted.append(replace(line, text=text, amount=said, cuts=line.cuts if own else shared))
    return tuple(parted)


def _can_be_cut(line: FoodLine, page: Page) -> bool:
    record = page.foods.get(line.food) if line.food else None
    return record is not None and record.hardness not in ("powder", "paste", "liquid", "grain")


def _unmeasured(scalar: Scalar, page: Page) -> tuple[FoodLine, ...]:
    """ "Salt and pepper", "Rice & flatbread, to serve": foods without any amount; what is said of the last, that it is
    left to taste or to serve, is said of all."""
    lines = _lines_of(scalar, _named_parts(scalar.value, 0, page), page, measured=False)
    if not lines:
        return ()
    last = lines[-1]
    served = tuple(pair for pair in last.prepared if pair[0] in ("optional", "for-others"))
    said = ", ".join(page.document.at(span) for _, span in served) or ("to taste" if last.amount else "")
    told: list[FoodLine] = []
    for line in lines[:-1]:
        text = f"{line.text.strip()}, {said}" if said else line.text
        told.append(replace(line, text=text, amount=line.amount or last.amount, prepared=(*line.prepared, *served)))
    return (*told, last)


def _named_parts(text: str, at: int, page: Page) -> list[tuple[int, int]]:
    """The parts from ``at`` on that name a food; what stands behind a comma and names none belongs to the part before
    it."""
    cuts = [(at, at), *(sign.span() for sign in _BETWEEN.finditer(_bracketless(text), at)), (len(text), len(text))]
    parts: list[tuple[int, int]] = []
    for (_, start), (end, _) in itertools.pairwise(cuts):
        if parts and not page.foods.find(text[start:end]):
            parts[-1] = parts[-1][0], end
        else:
            parts.append((start, end))
    return parts


def _measured_parts(text: str, page: Page) -> list[tuple[int, int]]:
    """The parts that begin with an amount and name a food: what else stands behind a comma ("1 cm dice") belongs to
    the food before it."""
    signs = [sign.span() for sign in _BETWEEN.finditer(_bracketless(text))]
    parts: list[tuple[int, int]] = []
    start = 0
    for (end, begin), (stop, _) in itertools.pairwise([*signs, (len(text), len(text))]):
        part = text[begin:stop]
        if _AMOUNT.match(part) and page.foods.find(part):
            parts.append((start, end))
            start = begin
    return [*parts, (start, len(text))]


def _bracketless(text: str) -> str:
    """The text with its brackets blotted out, offsets kept."""
    return _BRACKETS.sub(lambda bracket: "_" * len(bracket[0]), text)


def _on_one_line(lines: tuple[FoodLine, ...], scalar: Scalar, document: Document) -> Finding:
    """The note, with the edit that writes the lines out where the list has a line for each entry."""
    message = f"{len(lines)} foods share this line; each is counted and checked."
    finding = fault("foods-on-one-line", document, scalar.span, message)
    before = _BULLET.search(document.text, max(0, scalar.span.start - 40), scalar.span.start)
    words = "Give each food a line of its own."
    if before is None or document.at(scalar.span) != scalar.value:
        return replace(finding, remedy=Remedy(words))
    start = before.start(1)
    end = "\r\n" if document.text[:start].endswith("\r\n") else "\n"
    written = end.join(before[1] + line.text for line in lines)
    return replace(finding, remedy=Remedy(words, safe=True, edits=(Edit(Span(start, scalar.span.end), written),)))
