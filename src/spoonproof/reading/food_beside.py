"""What stands beside a food: amount, cut and preparation given apart in a mapping, a second food on its line."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from spoonproof.model.finding import Finding
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Amount, FoodLine
from spoonproof.model.record import replace
from spoonproof.model.text import Document, Passage
from spoonproof.model.tree import Listing, Node, Scalar
from spoonproof.reading.amount import Reading
from spoonproof.reading.asides import of_another_line
from spoonproof.reading.food_name import LineDraft
from spoonproof.reading.kitchen_faults import kitchen_fault
from spoonproof.reading.measures import Measures
from spoonproof.reading.placing import passage_of


def value_of(amount: Amount) -> tuple[object, ...]:
    each = value_of(amount.each) if amount.each is not None else None
    return amount.low, amount.high, amount.unit, amount.size, amount.to_taste, each


def nodes_of(node: Node | None) -> Sequence[Node]:
    if node is None:
        return ()
    return node.items if isinstance(node, Listing) else (node,)


def apart_faults(draft: LineDraft, reading: Reading | None) -> list[Finding]:
    """Findings about an amount that stands alone in its value."""
    if reading is None:
        message = f"“{draft.text.strip()}” is not an amount."
        draft.find("not-a-number", 0, len(draft.text), message, "Write a number and a unit.")
        return draft.findings
    draft.report(reading.problems)
    rest = draft.text[reading.end :].strip(" .")
    if rest and not reading.problems:
        message = f"“{rest}” is no unit that is known here."
        draft.find("unknown-unit", reading.end, len(draft.text), message, "Write g, ml, tsp ...")
    return draft.findings


def with_cut(
    line: FoodLine, node: Node | None, document: Document, measures: Measures, findings: list[Finding]
) -> FoodLine:
    for one, passage in _said(node, document):
        cuts = tuple(
            replace(c.cut, span=passage.span(c.start, c.end)) for c in measures.cuts.find(one.value, verbs=True)
        )
        if not cuts:
            findings.append(_unknown(one, document, "cut", "1 cm dice"))
        line = replace(line, cuts=cuts) if cuts else line
    return line


def with_prepared(
    line: FoodLine, node: Node | None, document: Document, measures: Measures, findings: list[Finding]
) -> FoodLine:
    for one, passage in _said(node, document):
        words = measures.preparations.find(one.value, ("prepared",))
        if not words:
            findings.append(_unknown(one, document, "preparation", "peeled"))
        line = replace(line, prepared=(*line.prepared, *((w.word, passage.span(w.start, w.end)) for w in words)))
    return line


def _said(node: Node | None, document: Document) -> Iterator[tuple[Scalar, Passage]]:
    for one in nodes_of(node):
        if isinstance(one, Scalar):
            yield one, passage_of(one, document, "food")


def _unknown(one: Scalar, document: Document, kind: str, example: str) -> Finding:
    message = f"“{one.value.strip()}” is no {kind} that is known here."
    return kitchen_fault("words-not-understood", document, one.span, message, f"Write, say, “{example}”.")


_DENIED = re.compile(r"(?i)\b(no|not|without|free (?:of|from)|never|nor)\b[^;()]*$")

_IN_BRACKET = re.compile(r"\([^()0-9]{0,40}$")


def _within(words: str, food: str, other: str, foods: Foods) -> bool:
    """Whether ``words``, which name ``other``, only say once more what the food's own name says: the "peanuts" of a
    peanut butter, but not the "milk" beside almond milk, which would bring an allergen of its own."""
    record, said = foods.get(food), foods.get(other)
    if record is not None and said is not None and not said.allergens <= record.allergens:
        return False
    names = (record.name, *record.names) if record is not None else ()
    own = words.casefold().removesuffix("s")
    return any(own in re.findall(r"[^\W\d_]+", name.casefold().replace("s ", " ")) for name in names)


def _is_gloss(before: str, food: str, other: str, foods: Foods) -> bool:
    """ "Moong dal (split and skinned yellow lentils)": another name for a pulse, in a bracket without an amount."""
    own, said = foods.get(food), foods.get(other)
    if own is None or said is None or _IN_BRACKET.search(before) is None:
        return False
    return own.group == said.group == "pulse" and said.allergens <= own.allergens


def second_food(draft: LineDraft, food: str | None, foods: Foods, measures: Measures) -> None:
    """Another food in the words that are left: it would go unseen."""
    text = draft.open_text()
    said = [(word.start, word.end) for word in measures.preparations.find(text)]
    for match in foods.find(text):
        if any(start <= match.start and match.end <= end for start, end in said):
            continue  # "crisp" is no packet of crisps, "to fry" no fry
        draft.use(match.start, match.end)
        before, words = draft.text[: match.start], draft.text[match.start : match.end]
        record = foods.get(match.food)
        if of_another_line(draft.text, match.start):  # "soaked with the dal", "water, for the rice"
            continue
        if match.food == "water" or (record is not None and record.name.lower().startswith("water")):
            continue
        if food is not None and (
            match.food == food  # "flattened rice (poha)", "peanut butter (100% peanuts)"
            or _within(words, food, match.food, foods)
            or _is_gloss(before, food, match.food, foods)
        ):
            continue
        denied = _DENIED.search(before)
        if denied is not None:  # "no salt or sugar"
            draft.use(denied.start(), denied.start() + len(denied[1]))
            continue
        message = f"“{words}” is a second food on this line, and only the first one is counted and checked."
        remedy = f"Give {words} a line of its own, or write it as “or:”."
        draft.find("second-food-on-a-line", match.start, match.end, message, remedy)
