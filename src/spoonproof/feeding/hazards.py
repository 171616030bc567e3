"""What in a dish endangers a baby: choking shapes as served, and foods that are not for this age yet.

Judged at the youngest age of the range, for the baby's bowl: what is added after the baby's portion was lifted
out is the family's. Every ``or:`` choice counts, and so does a food that only a step names.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Literal

from spoonproof.feeding.baby_steps import baby_text, only_family, steps_of
from spoonproof.feeding.bowl import Treat, in_baby_bowl, nested, treatment_of
from spoonproof.feeding.kinds import Part, kinds_of, kinds_of_record, parts
from spoonproof.feeding.named import MADE_HERE, NEVER_MADE, ROUND, STEP_KINDS, cut_up, for_others, in_everyday_sense
from spoonproof.feeding.served import Served, as_served, line_served
from spoonproof.feeding.shaped import shapes, sprouts
from spoonproof.feeding.step_words import MIX, PREPARED
from spoonproof.feeding.tables import FeedingTables, HazardRow
from spoonproof.feeding.wording import sentence
from spoonproof.feeding.words import Found, fold, keys
from spoonproof.feeding.words import words as words_of
from spoonproof.model.finding import LEVELS, Bowl, Edit, Level, Remedy, SourceRef
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import FoodLine, Recipe, Step
from spoonproof.model.record import dataclass, replace
from spoonproof.model.text import Span
from spoonproof.model.treatment import Treatment

Kind = Literal["choking", "not-yet"]

_SEASON = re.compile(
    r"\bseason(?:ed|ing)?\b(?!(?: (?:the|it|them|her|his|with)?(?: \w+){0,3})? (?:with|using)\b"
    r"(?![^.;]{0,40}\bsalt\b))(?!al)",
    re.I,
)
_SALTED = re.compile(
    r"\b(?:lightly |well |generously )?salted (?:boiling )?water\b|\bwater,? (?:lightly )?salted\b", re.I
)
_IN_SEASON = re.compile(r"\b(?:in|when in|out of|this|the) season\b|\bseason(?:al|ally)\b", re.I)
_AFTER_SEASON = re.compile(r"\bunseasoned\b|\b(?:don'?t|do not|never|without|no|before) (?:any )?season", re.I)


@dataclass(frozen=True, slots=True)
class Hazard:
    """One danger in one place. ``id`` is the row's; ``line`` and ``step`` are indexes where it has them;
    ``food`` the words that name the food."""

    id: str
    kind: Kind
    level: Level
    message: str
    span: Span
    food: str
    remedy: Remedy | None = None
    sources: tuple[SourceRef, ...] = ()
    line: int | None = None
    step: int | None = None
    bowl: Bowl | None = "baby"
    classes: frozenset[str] = frozenset()


def hazards(
    recipe: Recipe,
    treatments: Sequence[Treatment],
    foods: Foods,
    tables: FeedingTables,
    policies: Mapping[str, str] | None = None,
    market: str | Sequence[str] = "",
    others: Mapping[str, Recipe] | None = None,
    treat: Treat | None = None,
    served: Served | None = None,
) -> list[Hazard]:
    """The hazards of ``recipe`` for a baby of its youngest age, in the order of the file.

    ``policies`` are the channel's choices (topic -> authority) over the strictest default; ``market`` (one or
    several) chooses among rows that hold in some markets alone; ``others`` are the channel's recipes by slug, for
    recipes used as foods; ``treat`` tells what happens to the lines of such a recipe (without it, only what is not
    yet for this age is told); ``served`` is what is known of the lines, added to.
    """
    markets = [market] if market and isinstance(market, str) else market
    rows = [row for row in tables.hazards if tables.counts(row, policies or {}, markets)]
    found: list[Hazard] = []
    for part in parts(recipe.foods):
        if part.line.recipe and others and part.line.recipe in others:
            found += _of_recipe(part, recipe, treatments, foods, tables, rows, others, treat)
        else:
            found += _of_part(part, recipe, treatments, foods, tables, rows, served)
    named = list(_of_steps(recipe, foods, tables, rows))
    salted = {hazard.step for hazard in named if "salt" in hazard.classes}
    found += named
    found += (one for one in _seasoning(recipe, foods, tables, rows) if one.step not in salted)
    found += _shaped(recipe, treatments, foods, tables, rows)
    return sorted(_once(found), key=lambda h: (h.span.start, h.span.end, h.id))


# What stays in the pot when the food itself is lifted out of it.
_LEAVES_BEHIND = frozenset(
    """kelp hijiki salt stock-cube stock salty-sauce salty-food salty tea coffee herbal-tea fennel-tea alcohol honey
    sugar syrup sugary juice""".split()
)


def _of_part(
    part: Part,
    recipe: Recipe,
    treatments: Sequence[Treatment],
    foods: Foods,
    tables: FeedingTables,
    rows: Sequence[HazardRow],
    served: Served | None,
) -> Iterable[Hazard]:
    line = part.line
    classes = kinds_of(line, foods, tables)
    treatment = treatment_of(part.at, treatments)
    if not in_baby_bowl(part.at, recipe, treatments):
        classes &= _LEAVES_BEHIND
        if treatment is None or not treatment.left_out or treatment.bowl == "family" or not classes:
            return
        rows = [row for row in rows if row.kind == "not-yet" and row.classes & classes]
    food = foods.get(line.food) if line.food else None
    if part.choice >= 0:
        facts = as_served(line, part.at, recipe, treatment, food, own_cuts=True)
    else:
        facts = line_served(part.at, recipe, treatments, foods, served)
    if "raw" in facts:
        group = food.group if food is not None else ""
        if any(sprouts(baby_text(step), group) for step in steps_of(recipe, part.at, treatment, line.name)):
            classes |= {"raw-sprout"}
    for row in _holding(rows, classes, facts, recipe.youngest):
        yield _hazard(row, line, recipe, part.at, classes)


def _holding(
    rows: Iterable[HazardRow], classes: frozenset[str], facts: frozenset[str], months: float
) -> list[HazardRow]:
    """The rows that hold, one a group: the gravest, and of equals the first of the table."""
    best: dict[str, HazardRow] = {}
    for row in rows:
        if row.holds(classes, facts, months):
            kept = best.get(row.group)
            if kept is None or LEVELS.index(row.level) < LEVELS.index(kept.level):
                best[row.group] = row
    return list(best.values())


def _hazard(row: HazardRow, line: FoodLine, recipe: Recipe, index: int, classes: frozenset[str]) -> Hazard:
    cut = next((cut.span for cut in line.cuts if row.kind == "choking"), None)
    span = cut if cut and cut != (0, 0) else line.name_span
    remedy = Remedy(row.remedy, False, _edits(row, line, recipe, cut)) if row.remedy else None
    message = sentence(line.name, row.problem)
    return replace(_of_row(row, line.name, message, span, classes), remedy=remedy, line=index)


def _of_row(row: HazardRow, food: str, message: str, span: Span, classes: frozenset[str]) -> Hazard:
    return Hazard(
        id=row.id,
        kind="choking" if row.kind == "choking" else "not-yet",
        level=row.level,
        message=message,
        span=span,
        food=food,
        remedy=Remedy(row.remedy) if row.remedy else None,
        sources=row.sources,
        classes=classes,
    )


def _edits(row: HazardRow, line: FoodLine, recipe: Recipe, cut: Span | None) -> tuple[Edit, ...]:
    """An edit of the line where the file has its words as they stand (not folded, quoted or in a mapping)."""
    document = recipe.document
    if not row.edit or document.at(line.span) != line.text or line.choices:
        return ()
    after = document.text[line.span.end : line.span.end + 1]
    if after not in ("", "\n", "\r"):
        return ()
    if row.edit == "REMOVE":
        start = document.text.rfind("\n", 0, line.span.start) + 1
        if document.text[start : line.span.start].strip() != "-":
            return ()
        end = line.span.end + len("\r\n" if document.text.startswith("\r\n", line.span.end) else after)
        return (Edit(Span(start, end), ""),)
    if cut is not None and line.span.start <= cut.start and cut.end <= line.span.end:
        return (Edit(cut, row.edit),)
    return (Edit(Span(line.span.end, line.span.end), f", {row.edit}"),)


# What the host recipe does to a recipe it uses as a food; its cuts and heat are the other recipe's own.
_DONE_BY_HOST = frozenset({"blended", "blended-smooth", "mashed", "lumpy", "fine", "strained", "squashed", "removed"})


def _of_recipe(
    part: Part,
    recipe: Recipe,
    treatments: Sequence[Treatment],
    foods: Foods,
    tables: FeedingTables,
    rows: Sequence[HazardRow],
    others: Mapping[str, Recipe],
    treat: Treat | None,
) -> Iterable[Hazard]:
    """What a recipe that is used as a food brings, however deep, at the ages of the recipe that uses it."""
    if not in_baby_bowl(part.at, recipe, treatments):
        return
    host = as_served(part.line, part.at, recipe, treatment_of(part.at, treatments), None) & _DONE_BY_HOST
    for inner, path in nested(part.line, others):
        line = inner.line
        classes = kinds_of(line, foods, tables)
        treatment = treatment_of(inner.at, treat(path)) if treat is not None else None
        if treatment is not None and treatment.left_out:
            classes &= _LEAVES_BEHIND
        food = foods.get(line.food) if line.food else None
        facts = host | as_served(line, inner.at, path, treatment, food, own_cuts=inner.choice >= 0)
        if host & {"blended", "mashed", "fine"}:
            facts -= {"whole"}
        for row in _holding(rows, classes, facts, recipe.youngest):
            if row.kind == "choking" and treat is None:
                continue  # without its treatments a shape is not known
            hazard = _hazard(replace(row, edit=""), line, recipe, part.at, classes)
            message = sentence(line.name, row.problem, f'in "{path.title.value}" that is used here')
            yield replace(hazard, message=message, span=part.line.span)


def _of_steps(recipe: Recipe, foods: Foods, tables: FeedingTables, rows: Sequence[HazardRow]) -> Iterable[Hazard]:
    """Foods that a step names and no line lists."""
    listed: set[str] = set()
    made: set[tuple[str, ...]] = set()
    named: list[frozenset[str]] = []
    for part in parts(recipe.foods):
        listed |= kinds_of(part.line, foods, tables)
        food = foods.get(part.line.food) if part.line.food else None
        named += [keys(name) for name in (part.line.name, part.line.text, *(food.names if food else ()))]
    for step in recipe.steps:
        if only_family(step):
            continue
        text = baby_text(step)
        for hit, classes in _named_in(step, text, recipe, foods, tables):
            if not classes & STEP_KINDS or classes & listed or any(name >= set(hit.phrase) for name in named):
                continue
            if ("stock-cube" not in classes and "stock" in classes and _own_stock(recipe, text, hit)) or (
                hit.phrase == ("gravy",) and _own_gravy(recipe, text, hit)
            ):
                made.add(hit.phrase)  # and so it is where a later step says "broth" alone
                continue
            if classes & ROUND and cut_up(text, hit):
                continue
            if for_others(text, hit) or in_everyday_sense(hit, text):
                continue
            if not classes & NEVER_MADE and (hit.phrase in made or MADE_HERE.search(text[: hit.start][-80:])):
                made.add(hit.phrase)
                continue
            words, span = text[hit.start : hit.end], _step_span(recipe, step.span, text, hit)
            facts = _as_named(text, hit) | ({"mixed"} if MIX.search(text) else set())
            for row in _holding(rows, classes, facts, recipe.youngest):
                yield _in_step(row, words, span, step.index, classes)


def _named_in(
    step: Step, text: str, recipe: Recipe, foods: Foods, tables: FeedingTables
) -> list[tuple[Found, frozenset[str]]]:
    """What a step names by the words of the hazard tables, and what it names by those of the table of foods alone."""
    hits = [(hit, tables.kinds[hit.value]) for hit in tables.phrases.find(text)]
    negated = tables.phrases.find(text, negated=True)
    for name, span in dict.fromkeys(one for action in step.actions for one in action.unlisted):
        food, said = foods.get(name), recipe.document.at(span)
        at = text.find(said) if said else -1
        known = any(hit.start < at + len(said) and at < hit.end for hit in negated)
        if food is not None and at >= 0 and not known:
            phrase = tuple(word.key for word in words_of(said))
            hits.append((Found(at, at + len(said), name, phrase), kinds_of_record(food, foods, tables)))
    return hits


_WORDS_BEFORE = re.compile(r"(?:\b[\w-]+,? ){1,3}$")


def _as_named(text: str, hit: Found) -> frozenset[str]:
    """How a food that only a step names is served, by the words before it: "finely chopped walnuts", "pitted dates"."""
    before = _WORDS_BEFORE.search(text[max(0, hit.start - 40) : hit.start])
    said = before[0].split() if before is not None else []
    facts = {PREPARED.get(fold(word.strip(","))) or "" for word in said} & _PREPARED_SO
    if "finely" in said or "fine" in facts:
        return frozenset({*facts, "raw", "fine"})
    return frozenset({*facts, "raw"} if facts & _IN_PIECES else {*facts, "raw", "whole"})


_IN_PIECES = frozenset({"chopped", "mashed", "blended"})
_PREPARED_SO = frozenset({"fine", "stoned", *_IN_PIECES})
_OUT_OF_THE_POT = re.compile(
    r"\b(?:(?:the|this|your|its|their)(?: [a-z]+)?"
    r"|(?:[a-z]+ful|[a-z]+fuls|ladles?|spoons?|cups?|bowls?|mugs?|bit|little|splash|some|plenty|lots|drop) of) $",
    re.I,
)


_WATER = re.compile(r"\bwater\b", re.I)


def _own_stock(recipe: Recipe, text: str, hit: Found) -> bool:
    """ "Strain the broth" in a recipe that cooks in water: it is what the pot has made."""
    water = any(line.food == "water" for line in recipe.foods) or any(_WATER.search(s.text) for s in recipe.steps)
    return water and _OUT_OF_THE_POT.search(text[: hit.start]) is not None


_SAUCES = re.compile(r"\b(?:flour|cornflour|coconut milk|yogh?urt|curd|tomato\w*|passata)\b", re.I)
_OF_THE_GRAVY = re.compile(r"\b(?:the|its|their|of|and|some|extra|more|enough)(?: [a-z]+)? $", re.I)


def _own_gravy(recipe: Recipe, text: str, hit: Found) -> bool:
    """ "Mash the fish with plenty of gravy" in a curry: what its yoghurt or tomatoes have made, no granules."""
    return "gravy" in run_out(recipe) and _OF_THE_GRAVY.search(text[: hit.start]) is not None


def run_out(recipe: Recipe) -> tuple[str, ...]:
    """What the foods of ``recipe`` become in the pot, by the name that a bought food has too."""
    gravy = ("gravy",) if any(_SAUCES.search(line.name) for line in recipe.foods) else ()
    return (*gravy, *(f"{line.name} juice" for line in recipe.foods))


def _step_span(recipe: Recipe, span: Span, text: str, hit: Found) -> Span:
    written = recipe.document.at(span)
    at = written.find(text[hit.start : hit.end])
    return Span(span.start + at, span.start + at + hit.end - hit.start) if at >= 0 else span


def _in_step(row: HazardRow, words: str, span: Span, step: int, classes: frozenset[str]) -> Hazard:
    return replace(_of_row(row, words, sentence(words, row.problem, "named in this step"), span, classes), step=step)


def _seasoning(recipe: Recipe, foods: Foods, tables: FeedingTables, rows: Sequence[HazardRow]) -> Iterable[Hazard]:
    """ "Season to taste" and "salted water" put salt into the baby's pot without naming it as a food."""
    salt = [row for row in rows if "salt" in row.classes and recipe.youngest < row.until]
    if not salt or any("salt" in kinds_of(part.line, foods, tables) for part in parts(recipe.foods)):
        return
    row = min(salt, key=lambda r: r.until)
    for step in recipe.steps:
        if only_family(step):
            continue
        text = baby_text(step)
        match = _SALTED.search(text)
        level: Level = row.level
        if match is None:
            match = _SEASON.search(text)
            if match is None or _IN_SEASON.search(text) or _AFTER_SEASON.search(text):
                continue
            level = "warning" if row.level == "error" else row.level
        hit = Found(match.start(), match.end(), "", ())
        if for_others(text, hit):
            continue
        hazard = _in_step(row, match.group(), _step_span(recipe, step.span, text, hit), step.index, frozenset({"salt"}))
        said = sentence("salt", row.problem, f"which “{match.group()}” brings in")
        yield replace(hazard, level=level, message=said)


def _shaped(
    recipe: Recipe, treatments: Sequence[Treatment], foods: Foods, tables: FeedingTables, rows: Sequence[HazardRow]
) -> Iterable[Hazard]:
    """Shapes that the steps make of what is no danger by itself."""
    mine = [part for part in parts(recipe.foods) if in_baby_bowl(part.at, recipe, treatments)]
    records = [foods.get(part.line.food) for part in mine if part.line.food]
    jelly = any(food is not None and "jelly" in food.traits for food in records)
    held: dict[int, frozenset[str]] = {}
    for part in mine:
        held[part.at] = held.get(part.at, frozenset()) | kinds_of(part.line, foods, tables)
    for shape in shapes(recipe, held, jelly):
        hit = Found(shape.start, shape.end, "", ())
        for row in _holding(rows, frozenset({shape.kind}), frozenset({"whole"}), recipe.youngest):
            span = _step_span(recipe, shape.step.span, shape.text, hit)
            yield _in_step(row, shape.words, span, shape.step.index, row.classes)


def _once(found: Iterable[Hazard]) -> Iterable[Hazard]:
    """One hazard an id and place."""
    kept: dict[tuple[str, Span], Hazard] = {}
    for hazard in sorted(found, key=lambda h: (LEVELS.index(h.level), h.id)):
        kept.setdefault((hazard.id, hazard.span), hazard)
    return kept.values()
