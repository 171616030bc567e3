"""A recipe file read: head, food lines, steps, film, pictures and story, with everything that can't be read.

Nothing here judges the dish. What a person wrote never raises: all faults of a file come back at once.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING

from spoonproof.model.finding import Finding
from spoonproof.model.kitchen import Foods, Verbs
from spoonproof.model.recipe import AgeRange, FoodLine, Keeps, Makes, Next, Recipe, Step
from spoonproof.model.record import NamedTuple, replace
from spoonproof.model.text import NOWHERE, Document, Passage, Span, Text
from spoonproof.model.tree import Listing, Mapped, Node, Scalar
from spoonproof.reading import recipe_keys as keys
from spoonproof.reading.faults import fault, quoted
from spoonproof.reading.film import corrections, film, pictures, review, trials, video
from spoonproof.reading.food_lines import as_written, heading_note, is_heading, read_entry
from spoonproof.reading.food_mapping import food_from_mapping
from spoonproof.reading.front_matter import split_head
from spoonproof.reading.markdown import read_prose
from spoonproof.reading.measures import Measures
from spoonproof.reading.placing import FewHints, Page
from spoonproof.reading.slugs import slug_of, slug_problem, suggested
from spoonproof.reading.statements import Statement, passage_of
from spoonproof.reading.typed import Sink, Values, is_empty, parse_colon, read_keys, short, unknown_key, wrong
from spoonproof.reading.yaml_tree import read_yaml

if TYPE_CHECKING:
    from spoonproof.reading.kept import Kept

_NOTHING = Text("", NOWHERE)
_TITLE = re.compile(r"[^\W\d_](?:[^\W_]|[ ,.'’()&!?-]){0,119}")


Read = tuple[Recipe | None, list[Finding]]


class Reading(NamedTuple):
    """A recipe as read: ``head_faults`` are the faults of its head alone, ``of_head`` how many of its passages, which
    come first, stand there. ``rest``: the recipe but for a key that can't be read, where all that a dish is judged by
    can be; nothing is made of it. ``foods_alone``: a step or a food of it can't be read, so that only what the other
    foods are is known, and not what becomes of them."""

    recipe: Recipe | None
    faults: list[Finding]
    head_faults: Sequence[Finding] = ()
    of_head: int = 0
    rest: Recipe | None = None
    foods_alone: bool = False


def read_recipe(document: Document, foods: Foods, verbs: Verbs, measures: Measures) -> Read:
    """The recipe in ``document`` and every fault of reading, in the order of the file.

    The recipe is None when its head can't be found or its structure can't be read.
    """
    return read_whole(document, foods, verbs, measures)[:2]


def read_whole(document: Document, foods: Foods, verbs: Verbs, measures: Measures, kept: Kept | None = None) -> Reading:
    """As ``read_recipe``, and what ``read_story`` needs to go on from there. ``kept``: what was read of the file
    before, with the same tables."""
    head, story, findings = split_head(document)
    if head is None:
        return Reading(None, findings)
    root, more = read_yaml(document, head)
    findings += more
    if not isinstance(root, Mapped):
        if not more:
            where = root.span if root is not None else Span(max(0, head.start - 4), head.start)
            message = "The head should be made of keys and values, like title: Parsnip mash."
            findings.append(fault("front-matter-not-a-mapping", document, short(where), message))
        else:
            return _read_on(document, head, story, findings, _Reader(document, foods, verbs, measures, None))
        return Reading(None, findings)
    reader = _Reader(document, foods, verbs, measures, kept)
    recipe = reader.recipe(root)
    findings += reader.sink.findings
    return _with_story(recipe, document, story, findings)


def _read_on(document: Document, head: Span, story: Span, findings: list[Finding], reader: _Reader) -> Reading:
    """What can be told of a recipe of which a part can't be read: no recipe, and the faults of the other parts."""
    from spoonproof.reading.front_matter import JUDGED_BY, LOCAL, OF_ABSENCE, items_alone, read_rest, told

    if findings[-1].rule not in LOCAL:
        return Reading(None, findings)
    rest = read_rest(document, head, findings)
    if rest is not None:
        findings = rest.faults
    stop = next(at for at, one in enumerate(findings) if one.rule in LOCAL)
    findings[stop] = replace(findings[stop], message=f"{findings[stop].message} {told(rest)}")
    if rest is None:
        return Reading(None, findings)
    recipe = reader.recipe(rest.root)
    findings += [found for found in reader.sink.findings if found.rule not in OF_ABSENCE]
    whole = _with_story(recipe, document, story, findings)
    of_foods = items_alone(rest)
    judged = whole.recipe if of_foods or not JUDGED_BY & {*rest.passed_over} else None
    return Reading(None, whole.faults, rest=judged, foods_alone=of_foods)


def read_story(before: Reading, document: Document) -> Reading | None:
    """The recipe in ``document`` where nothing but its story differs from one that was read before; None where its
    head must be read."""
    recipe = before.recipe
    if recipe is None or document.path != recipe.document.path:
        return None
    begin = recipe.story_span.start
    if document.text[:begin] != recipe.document.text[:begin]:
        return None
    head, story, _ = split_head(document)
    if head is None or story.start != begin:
        return None
    passages = tuple(replace(passage, document=document) for passage in recipe.passages[: before.of_head])
    faults = [_moved(finding, document) for finding in before.head_faults]
    return _with_story(replace(recipe, passages=passages), document, story, faults)


def _moved(finding: Finding, document: Document) -> Finding:
    """A fault of the head in a document with the same head."""
    own = finding.document
    related = tuple(one._replace(document=document) if one.document is own else one for one in finding.related)
    return replace(finding, document=document, related=related)


def _with_story(recipe: Recipe, document: Document, story: Span, faults: Sequence[Finding]) -> Reading:
    """A recipe of which the head was read, with its story."""
    prose, more = read_prose(document, story)
    passages = (*recipe.passages, *prose)
    whole = replace(recipe, document=document, story=document.at(story), story_span=story, passages=passages)
    found = sorted([*faults, *more], key=lambda finding: finding.span)
    return Reading(whole, found, faults, len(recipe.passages))


class _Reader:
    """One recipe file on its way to a ``Recipe``."""

    def __init__(self, document: Document, foods: Foods, verbs: Verbs, measures: Measures, kept: Kept | None) -> None:
        self.document = document
        self.foods = FewHints(foods)
        self.verbs = verbs
        self.page = Page(document, self.foods, measures)
        self.kept = kept
        if kept is not None:
            kept.begin()
        self.sink = Sink(document)
        self.passages: list[Passage] = []

    def add(self, statement: Statement | None, kind: str, where: str, leave: Scalar | None = None) -> Text | None:
        """Keep a statement as a passage; its text for the recipe. ``leave``: a mark that covers what is around it."""
        if statement is None:
            return None
        self.passages.append(passage_of(statement.node, self.document, kind, where, statement.leave or leave))
        return statement.text

    def recipe(self, root: Mapped) -> Recipe:
        """The recipe but for its story."""
        values = read_keys(root, keys.RECIPE_KEYS, self.sink, "a recipe")
        add = self.add
        title = add(values.get(keys.TITLE), "title", "title")
        summary = add(values.get(keys.SUMMARY), "description", "summary")
        lines = self._lines(values.node(keys.FOODS))
        steps = self._steps(values.node(keys.STEPS), lines, title.value if title else "")
        after = self._next(values)
        made = film(values.get(keys.FILM), add, self.sink, len(steps))
        shown = pictures(values, add)
        fixed = corrections(values, add)
        age = values.get(keys.AGES)
        recipe = Recipe(
            document=self.document,
            slug=self._slug(),
            title=title or _NOTHING,
            ages=AgeRange(*age.value, age.span) if age is not None else AgeRange(6, None, NOWHERE),
            foods=lines,
            steps=steps,
            next=after,
            makes=_makes(values),
            keeps=_keeps(values),
            trials=trials(values),
            film=made,
            pictures=shown,
            video=video(values.get(keys.VIDEO), self.sink),
            corrections=fixed,
            review=review(values.get(keys.REVIEW)),
            renamed_from=self._renamed(values),
            summary=summary,
            passages=tuple(self.passages),
            keys=values.spans,
        )
        plain = {"texture": keys.TEXTURE, "season": keys.SEASON, "paid": keys.PAID_KEY, "sources": keys.SOURCES}
        return values.put_into(recipe, **plain, draft=keys.DRAFT, published=keys.PUBLISHED)

    def _slug(self) -> str:
        slug = slug_of(self.document)
        problem = slug_problem(slug)
        if problem:
            better = suggested(slug)
            hint = f" Rename the file, for example to {better}.md." if better and not slug_problem(better) else ""
            message = f"The page is named by this file's name, and {problem}.{hint}"
            self.sink.add("unsafe-slug", self.document.whole, message)
        return slug

    def _renamed(self, values: Values) -> tuple[str, ...]:
        slugs = []
        for node in values.or_else(keys.RENAMED, ()):
            slug = node.value.strip().removesuffix(".md")
            problem = slug_problem(slug)
            if problem:
                self.sink.add("unsafe-slug", short(node.span), f"This can't be a former name: {problem}.")
            else:
                slugs.append(slug)
        return tuple(slugs)

    def _lines(self, node: Node | None) -> tuple[FoodLine, ...]:
        return tuple(line for item in _items(node) for line in self._entry(item))

    def _entry(self, item: Node) -> tuple[FoodLine, ...]:
        """The lines of one entry of ``foods``."""
        if isinstance(item, Scalar):
            kept = self.kept.entry(item, self.page, self.foods) if self.kept is not None else None
            return self._noted(*(kept or read_entry(item, self.page)))
        if not isinstance(item, Mapped):
            wrong(item, self.sink, "a food line like 300 g parsnips, peeled")
            return ()
        if len(item.entries) == 1 and _heads(*item.entries[0]):  # "- For the sauce:"
            name, under = item.entries[0]
            self.sink.findings.append(heading_note(name.value, name.span, self.document))
            return self._lines(under if isinstance(under, Listing) else None)
        if (written := as_written(item, self.document, keys.FOOD_KEYS)) is not None:
            read, more = read_entry(written, self.page)
            if any(line.food or line.amount for line in read):
                return self._noted(read, more)
        if not self._known_keys(item, keys.FOOD_KEYS, "a food", ("food", "recipe")):
            return ()
        line, more = food_from_mapping(item, self.page)
        return self._noted((self._recipe_line(line) if line.recipe is not None else line,), more)

    def _noted(self, lines: tuple[FoodLine, ...], findings: list[Finding]) -> tuple[FoodLine, ...]:
        self.sink.findings += findings
        return lines

    def _recipe_line(self, line: FoodLine) -> FoodLine:
        slug = (line.recipe or "").removesuffix(".md")
        problem = slug_problem(slug)
        if problem and _TITLE.fullmatch(slug) and not slug_problem(suggested(slug)):
            return replace(line, recipe=suggested(slug))  # a title, looked up among the channel's
        if problem:
            self.sink.add("unsafe-slug", short(line.name_span), f"This can't be the name of a recipe: {problem}.")
            return replace(line, recipe=None)
        return replace(line, recipe=slug)

    def _known_keys(self, node: Mapped, known: Mapping[str, str], what: str, main: tuple[str, ...]) -> bool:
        """Whether a mapping can be used; unknown and empty keys, and a text that only has a colon in it, are said."""
        if not any(node.get(name) for name in main) and len(node.entries) == 1:
            name, value = node.entries[0]
            if name.value not in known and isinstance(value, Scalar):
                parse_colon(node, self.sink, what)
                return False
        for name, value in node:
            if name.value not in known:
                unknown_key(name, value, known, self.sink, what)
            elif is_empty(value):
                self.sink.add("empty-value", name.span, f"{quoted(name.value)} has no value. Fill it or take it out.")
        return True

    def _steps(self, node: Node | None, lines: tuple[FoodLine, ...], title: str) -> tuple[Step, ...]:
        usable: list[Scalar | Mapped] = []
        for item in _items(node):
            where = f"step {len(usable) + 1}"
            if isinstance(item, Scalar):
                usable.append(item)
                self.add(Statement(item), "step", where)
            elif isinstance(item, Mapped):
                if not self._known_keys(item, keys.STEP_KEYS, "a step", ("do", "step")):
                    continue
                sentence = item.get("do") or item.get("step")
                if not isinstance(sentence, Scalar) or is_empty(sentence):
                    message = "A step written as a mapping needs “do”: the sentence the reader reads."
                    self.sink.add("missing-key", short(item.span), message)
                    continue
                leave = item.get("leave")
                usable.append(item)
                self.add(Statement(sentence, leave if isinstance(leave, Scalar) else None), "step", where)
            else:
                wrong(item, self.sink, "a step: a sentence like Steam the parsnips for 16 minutes.")
        from spoonproof.reading.step import read_steps

        steps, more = read_steps(usable, lines, self.page, self.verbs, title, self.kept)
        self.sink.findings += more
        return steps

    def _next(self, values: Values) -> Next | None:
        after = values.get(keys.NEXT)
        texture = after.get(keys.NEXT_TEXTURE) if after is not None else None
        if after is None or texture is None:
            return None
        how = self.add(after.get(keys.NEXT_HOW), "note", "the next texture")
        return Next(texture, after.get(keys.NEXT_FROM), how.value if how is not None else "", after.mapped.span)


def _items(node: Node | None) -> Iterable[Node]:
    """The items of a list of foods or steps; one text counts as a list of one."""
    if node is None:
        return
    if not isinstance(node, Listing):
        yield node
        return
    for item in node.items:
        if not is_empty(item):  # the list's own reader has said so
            yield item


def _heads(name: Scalar, under: Node) -> bool:
    return is_heading(name.value) and (is_empty(under) or isinstance(under, Listing))


def _makes(values: Values) -> Makes | None:
    made = values.get(keys.MAKES)
    if made is None:
        return None
    if not isinstance(made, Values):
        return made
    portions = made.get(keys.MAKES_PORTIONS)
    if portions is None:
        return None
    family = made.or_else(keys.MAKES_FAMILY, "")
    each = made.or_else(keys.MAKES_GRAMS, portions.grams)
    return replace(portions, grams=each, family=family, span=made.mapped.span)


def _keeps(values: Values) -> Keeps | None:
    kept = values.get(keys.KEEPS)
    if kept is None:
        return None
    if not isinstance(kept, Values):
        return Keeps(*kept, values.span(keys.KEEPS) or NOWHERE)
    fridge, freezer = kept.get(keys.FRIDGE), kept.get(keys.FREEZER)
    hours, days = (None if fridge is None else fridge / 3600), (None if freezer is None else freezer / 86_400)
    return Keeps(hours, days, None, kept.mapped.span)
