"""What the tests of food lines and steps share: readings in one line, from the bundled tables."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.model.finding import Finding
from spoonproof.model.recipe import Action, Amount, Cut, FoodLine, Step
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Mapped, Scalar
from spoonproof.reading.food_line import read_food_line
from spoonproof.reading.measures import Measures
from spoonproof.reading.placing import Page
from spoonproof.reading.step import read_steps
from tests.kitchen import knowledge


def measures(system: str = "UK") -> Measures:
    return knowledge().measures(system)


def page_of(document: Document) -> Page:
    return Page(document, knowledge().foods, measures())


def read_line(text: str) -> tuple[FoodLine, list[Finding], Document]:
    """One food line, standing a little way into a document."""
    document = Document("recipes/bowl.md", f"  - {text}\n")
    line, found = read_food_line(Scalar(text, Span(4, 4 + len(text))), page_of(document))
    return line, found, document


def read_method(
    foods: Sequence[str], steps: Sequence[str | Mapped]
) -> tuple[tuple[Step, ...], list[Finding], tuple[FoodLine, ...], Document]:
    """A method with its food lines; each value stands on a line of its own."""
    texts = [*foods, *(step for step in steps if isinstance(step, str))]
    document = Document("recipes/bowl.md", "\n".join(texts) + "\n")
    at = 0
    scalars: list[Scalar] = []
    for text in texts:
        scalars.append(Scalar(text, Span(at, at + len(text))))
        at += len(text) + 1
    page = page_of(document)
    lines = tuple(read_food_line(s, page)[0] for s in scalars[: len(foods)])
    written = iter(scalars[len(foods) :])
    entries: list[Scalar | Mapped] = [step if isinstance(step, Mapped) else next(written) for step in steps]
    read, found = read_steps(entries, lines, page, knowledge().verbs)
    return read, found, lines, document


def amount_words(amount: Amount | None) -> str:
    if amount is None:
        return "-"
    if amount.to_taste:
        return "taste"
    number = str(amount.low) if amount.low == amount.high else f"{amount.low}..{amount.high}"
    size = f" {amount.size}" if amount.size else ""
    each = f" each {amount_words(amount.each)}" if amount.each is not None else ""
    return f"{'~' if amount.about else ''}{number} {amount.unit}{size}{each}"


def cut_words(cut: Cut) -> str:
    size = "" if cut.low_mm is None else f" {cut.low_mm:g}-{cut.high_mm:g}"
    return f"{cut.shape}{size}{' along' if cut.lengthways else ''}"


def line_words(text: str) -> str:
    """A reading as the table in food_lines.txt writes it."""
    line, found, _ = read_line(text)
    prepared = " ".join(dict.fromkeys(word for word, _ in line.prepared))
    cuts = ", ".join(cut_words(cut) for cut in line.cuts)
    rules = " ".join(sorted({finding.rule for finding in found}))
    cells = (text, line.food or "?", amount_words(line.amount), cuts, prepared, line.state, rules)
    return " | ".join(cells).rstrip()


def action_words(action: Action, lines: Sequence[FoodLine]) -> str:
    """An action as the table in steps.txt writes it."""
    foods = [lines[i].name.split()[-1] for i in action.foods] + (["all"] if action.everything else [])
    parts = [action.verb, " ".join(foods) or "-"]
    if action.time is not None:
        parts.append(f"{action.time.low:g}-{action.time.high:g} min")
    if action.after is not None:
        parts.append(f"after {action.after.low:g}-{action.after.high:g}")
    marks = {"more": action.more, "last": action.last, "soft test": action.soft_test}
    parts += [word for word, said in marks.items() if said]
    if action.until:
        parts.append(f"until {action.until}")
    if action.heat_c is not None:
        parts.append(f"{action.heat_c:g} C")
    if action.covered is not None:
        parts.append("covered" if action.covered else "uncovered")
    if action.water_ml:
        parts.append(f"{action.water_ml:g} ml water")
    parts += [f"cut {cut_words(cut)}" for cut in action.cuts]
    parts += [f"unlisted {food}" for food, _ in action.unlisted]
    if action.bowl is not None:
        parts.append(f"{action.bowl}'s bowl")
    return " | ".join(parts)
