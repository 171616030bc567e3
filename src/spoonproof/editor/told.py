"""What is shown when a person rests on a word: a food's figures, a claim's trail, a texture, a step, a key, a rule."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from lsprotocol import types

from spoonproof.dish import Dish
from spoonproof.editor.bench import Look
from spoonproof.editor.keys import key_doc
from spoonproof.editor.places import Encoding, offset, range_of
from spoonproof.foods.show import NAMES, number
from spoonproof.knowledge import Knowledge
from spoonproof.model.citation import short
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.food import NUTRIENT_UNITS, Food
from spoonproof.model.recipe import FoodLine
from spoonproof.model.text import Span

_MAIN = ("energy_kcal", "protein_g", "fat_g", "carbohydrate_g", "fibre_g", "iron_mg", "calcium_mg", "vitamin_c_mg")
"""The figures shown first; ``explain`` shows them all."""
Told = tuple[Span, Sequence[str]]


def hover(look: Look, place: types.Position, encoding: Encoding) -> types.Hover | None:
    """What is known of the words at ``place``, None where nothing is."""
    at = offset(look.document, place, encoding)
    parts = [*_of_dish(look.dish, at)] if look.dish is not None else []
    parts += _of_keys(look, at)
    parts += _of_rules(look, at)
    if not parts:
        return None
    words = "\n\n---\n\n".join("\n".join(lines) for _, lines in parts)
    content = types.MarkupContent(types.MarkupKind.Markdown, words)
    return types.Hover(content, range_of(look.document, parts[0][0], encoding))


def claim_at(dish: Dish, at: int) -> JudgedClaim | None:
    """The claim that stands at an offset; of several the shortest, of those the one that an entry speaks of."""
    over = [judged for judged in dish.claims if _in(judged.claim.span, at)]
    return min(over, key=lambda j: (j.claim.end - j.claim.start, j.entry is None), default=None)


def line_at(lines: Sequence[FoodLine], at: int) -> FoodLine | None:
    """The food line (or the swap on it) at an offset."""
    for line in lines:
        for choice in line.choices:
            if _in(choice.span, at):
                return choice
        if _in(line.span, at):
            return line
    return None


def _in(span: Span, at: int) -> bool:
    return span.start <= at <= span.end and span.end > span.start


def _of_dish(dish: Dish, at: int) -> Iterator[Told]:
    from spoonproof.reading.echo import food_words, step_words

    recipe, known = dish.recipe, dish.knowledge
    judged = claim_at(dish, at)
    if judged is not None:
        yield judged.claim.span, list(_claim(judged, known))
    line = line_at(recipe.foods, at)
    if line is not None:
        food = known.foods.get(line.food) if line.food else None
        read = f"Read as: {md(food_words(line, known.foods))}"
        yield line.span, [*_food(food, known), "", read] if food is not None else [read]
    for step in recipe.steps:
        if _in(step.span, at):
            yield step.span, ["Read as:", "", *(f"- {md(row)}" for row in step_words(step, recipe, known.verbs))]
    words = [(recipe.texture.value, recipe.texture.span)] if recipe.texture is not None else []
    if recipe.next is not None:
        words.append((recipe.next.texture, recipe.next.span))
    for word, span in words:
        if _in(span, at) and (lines := texture_lines(word, known)):
            yield span, lines


def _food(food: Food, known: Knowledge) -> Iterator[str]:
    yield f"**{md(food.name)}** ({md(food.group)}, {md(food.state)}), per 100 g edible:"
    yield ""
    yield "| | |"
    yield "|---|---:|"
    for key in _MAIN:
        value = food.per_100g.get(key)
        shown = "not determined" if value is None else f"{number(value.amount)} {NUTRIENT_UNITS[key]}"
        if value is not None and value.kind == "assumed-zero":
            shown = "0, assumed by the source"
        yield f"| {NAMES[key]} | {shown} |"
    yield ""
    if food.allergens:
        yield f"Allergens: {', '.join(sorted(food.allergens))}.  "
    if food.note:
        yield f"{md(food.note)}  "
    record = f", record {food.record}" if food.record else ""
    yield f"Source: {md(short(food.source, known.sources))}{record}"


def _claim(judged: JudgedClaim, known: Knowledge) -> Iterator[str]:
    yield f"**{judged.advice.replace('-', ' ')}** · {judged.truth}: {md(judged.why)}"
    yield ""
    if judged.wording:
        yield f"Wording that stands: “{md(judged.wording)}”"
        yield ""
    for answer in judged.allowed:
        reach = "" if answer.bound else " (does not reach this speech)"
        why = f": {md(answer.why)}" if answer.why else ""
        yield f"- {answer.market}{reach}: {answer.answer.replace('-', ' ')}{why}"
    yield ""
    yield "How it was judged:"
    yield ""
    yield from (f"{number_}. {md(step)}" for number_, step in enumerate(judged.trail, 1))
    yield ""
    for ref in dict.fromkeys(judged.sources):
        yield f"Source: {md(short(ref.id, known.sources))}{f'; {md(ref.locator)}' if ref.locator else ''}  "
    yield "These answers are not legal advice."


def texture_lines(word: str, known: Knowledge) -> list[str]:
    """A texture word in the table's words, with its source; none when it is not a texture."""
    for row in known.rows("textures"):
        if row.text("word") == word:
            source = short(row.text("source"), known.sources)
            return [
                f"**{word}**, from about {row.text('from_months')} months: {md(row.text('says'))}",
                "",
                f"Source: {md(source)}; {md(row.text('locator'))}",
            ]
    return []


def _of_keys(look: Look, at: int) -> Iterator[Told]:
    keys = look.file.recipe.keys if look.file is not None and look.file.recipe is not None else None
    if look.what == "channel":
        keys = look.folder.channel.keys
    for name, span in (keys or {}).items():
        if _in(span, at) and (doc := key_doc(look.what, name)):
            yield span, [f"**{name}**: {doc}"]


def _of_rules(look: Look, at: int) -> Iterator[Told]:
    """The rules that found something here; in channel.yaml the rule that an acceptance names."""
    names = {finding.rule: finding.span for finding in look.findings if _in(finding.span, at)}
    if look.what == "channel":
        names |= {entry.rule: entry.span for entry in look.folder.channel.accepted if _in(entry.span, at)}
    for name, span in names.items():
        if lines := rule_lines(name):
            yield span, lines


def rule_lines(name: str) -> list[str]:
    """A rule in its own words, without its two examples; none when there is no such rule."""
    from spoonproof.checks.rule import all_rules
    from spoonproof.reading.faults import all_faults

    for rule in all_rules():
        if rule.name == name:
            doc = rule.doc.strip().partition("Fails::")[0].strip()
            return [f"**{name}** ({rule.level})", "", *doc.split("\n")]
    read = all_faults().get(name)
    return [f"**{name}** ({read.level})", "", f"{read.wrong}. {read.why}"] if read is not None else []


_MARKS = str.maketrans({mark: f"\\{mark}" for mark in "\\`*_[]<>|#"})


def md(text: str) -> str:
    """Words of a file or a table as Markdown that says just them, on one line."""
    return " ".join(text.translate(_MARKS).split())
