"""A food written as a mapping: the line, and apart from it its amount, cut, preparation and what may replace it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from spoonproof.model.finding import Finding
from spoonproof.model.recipe import Amount, FoodLine
from spoonproof.model.record import replace
from spoonproof.model.text import Passage, Span
from spoonproof.model.tree import Listing, Mapped, Node, Scalar
from spoonproof.reading.amount import Reading, amount_at, moved
from spoonproof.reading.faults import fault
from spoonproof.reading.food_line import read_food_line
from spoonproof.reading.food_name import LineDraft, draft_of
from spoonproof.reading.limits import FOOD_LINE_CHARACTERS
from spoonproof.reading.placing import Page, passage_of


def food_from_mapping(node: Mapped, page: Page) -> tuple[FoodLine, list[Finding]]:
    """A food written as a mapping: ``food`` (a line) or ``recipe`` (a slug), and apart from it ``amount``,
    ``cut``, ``prepared``, ``or``, ``as``, ``may_contain``. Keys other than these are the caller's matter."""
    named, recipe = node.get("food"), node.get("recipe")
    findings: list[Finding] = []
    if isinstance(named, Scalar):
        line, findings = read_food_line(named, page)
    elif isinstance(recipe, Scalar):
        words = recipe.value
        line = FoodLine(text=words, span=recipe.span, name=words, name_span=recipe.span, recipe=words.strip())
    else:
        message = "This line names neither a food nor a recipe."
        missing = fault("food-missing", page.document, node.span, message, "Add “food:” or “recipe:”.")
        return FoodLine(text="", span=node.span, name="", name_span=Span(node.span.start, node.span.start)), [missing]
    line = _with_amount(replace(line, span=node.span), node.get("amount"), page, findings)
    for one, passage in _texts(node.get("cut"), page):
        cuts = page.measures.cuts.find(one.value, verbs=True)
        placed = tuple(replace(found.cut, span=passage.span(found.start, found.end)) for found in cuts)
        line = replace(line, cuts=placed or line.cuts)
        findings += () if cuts else (_unknown(one, page, "cut", "1 cm dice"),)
    for one, passage in _texts(node.get("prepared"), page):
        said = page.measures.preparations.find(one.value, ("prepared",))
        prepared = ((found.word, passage.span(found.start, found.end)) for found in said)
        line = replace(line, prepared=(*line.prepared, *prepared))
        findings += () if said else (_unknown(one, page, "preparation", "peeled"),)
    choices: list[FoodLine] = []
    for other in _nodes_of(node.get("or")):
        if not isinstance(other, Listing):
            choice, more = food_from_mapping(other, page) if isinstance(other, Mapped) else read_food_line(other, page)
            choices.append(choice)
            findings += more
    alias, label = node.text("as").strip(), node.texts("may_contain")
    return replace(line, choices=tuple(choices), alias=alias, label=label), findings


def _with_amount(line: FoodLine, given: Node | None, page: Page, findings: list[Finding]) -> FoodLine:
    """The line with the amount that stands beside it, which counts before its own."""
    if not isinstance(given, Scalar):
        return line
    draft = draft_of(replace(given, value=given.value[:FOOD_LINE_CHARACTERS]), page)
    reading = amount_at(draft.text, 0, page.measures)
    _report_amount(draft, reading)
    findings += draft.findings
    if reading is None or reading.amount is None:
        return line
    apart = moved(reading.amount, draft.place)
    if line.amount is not None and _value_of(line.amount) != _value_of(apart):
        message = "The line and “amount:” beside it give two different amounts; the one beside it is used."
        findings.append(fault("amounts-disagree", page.document, given.span, message, "Keep one of the two."))
    return replace(line, amount=apart)


def _report_amount(draft: LineDraft, reading: Reading | None) -> None:
    """What is wrong with an amount that stands alone in its value."""
    if reading is None:
        message = f"“{draft.text.strip()}” is not an amount."
        draft.find("not-a-number", 0, len(draft.text), message, "Write a number and a unit.")
        return
    draft.report(reading.problems)
    rest = draft.text[reading.end :].strip(" .")
    if rest and not reading.problems:
        message = f"“{rest}” is no unit that is known here."
        draft.find("unknown-unit", reading.end, len(draft.text), message, "Write g, ml, tsp ...")


def _value_of(amount: Amount) -> tuple[object, ...]:
    """All of an amount but its places."""
    each = _value_of(amount.each) if amount.each is not None else None
    return amount.low, amount.high, amount.unit, amount.size, amount.to_taste, each


def _nodes_of(node: Node | None) -> Sequence[Node]:
    if node is None:
        return ()
    return node.items if isinstance(node, Listing) else (node,)


def _texts(node: Node | None, page: Page) -> Iterator[tuple[Scalar, Passage]]:
    for one in _nodes_of(node):
        if isinstance(one, Scalar):
            yield one, passage_of(one, page.document, "food")


def _unknown(one: Scalar, page: Page, kind: str, example: str) -> Finding:
    message = f"“{one.value.strip()}” is no {kind} that is known here."
    return fault("words-not-understood", page.document, one.span, message, f"Write, say, “{example}”.")
