"""The list of foods against the steps: what a step uses and no line lists, and what is listed and no step uses."""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.model.finding import Level, Related
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import FoodLine, Step
from spoonproof.model.text import Passage
from spoonproof.reading.bowls import whose
from spoonproof.reading.faults import fault
from spoonproof.reading.instruction import GRAVE, Instruction, StepReader, is_water
from spoonproof.reading.instruction_words import REMAINING
from spoonproof.reading.mentions import Mention

_FOR_THE_PAN = re.compile(
    r"(?i)\b(?:for|to) (?:(?:shallow|deep)[ -])?(?:fry|greas|brush)\w*|\bfor (?:the pan|the tin|the table|cooking)\b"
)
_GREASED = re.compile(
    r"(?i)\b(?:oiled|greased|buttered|grease|oil(?=[ \t]{1,3}an?\b|[ \t]{1,3}the (?:tin|dish|tray)))\b"
)
_ALL_LISTED = re.compile(
    r"(?i)\b(?:all (?:of )?(?:the |your )?(?:other )?(?:ingredients|foods)|everything together|the ingredients)\b"
    r"|\b(?:put|arrange|lay|set|plate|pile|toss|mix|stir|serve|pack) (?:it all|the lot)\b"
    r"|(?<!before )\beverything\b(?! (?:but|except|else|from|bar))"
)
_BEAT_THE_REST = re.compile(
    r"(?i)\b(?:whisk|beat|mix|combine|stir|add|blend|blitz|put|tip)(?:[ \t]+(?:in"
    r"|together))?[ \t]+(?:all[ \t]+)?the[ \t]+(?:rest|others)(?=[ \t]+(?:together|in|into)\b|[ \t]{0,3}[.,;]|[ \t]*$)"
)
_SPREAD = re.compile(r"(?i)\bspread\b")
_IN_WATER = re.compile(r"(?i)\b(?:poach|boil|simmer|steam)\w*")
_SALTS = re.compile(r"(?i)\bsalt(?:ed|ing)?\b")


def note_used(reader: StepReader, text: str, mentions: Sequence[Mention], drafts: Sequence[Instruction]) -> None:
    """Note which lines this step uses."""
    none_yet = not reader.used
    for mention in mentions:
        reader.used.update(mention.lines)
    all_at_first = none_yet and any(draft.action.everything for draft in drafts)
    rest = not reader.split and _BEAT_THE_REST.search(text) is not None
    if all_at_first:
        reader.excused.update(i for i in range(len(reader.lines)) if i not in reader.held)
    if rest or _ALL_LISTED.search(text) or REMAINING.search(text):
        reader.used.update(range(len(reader.lines)))
    if _SPREAD.search(text):  # "toast the crumpets, spread thinly": with what is spread
        reader.used.update(i for i, line in enumerate(reader.lines) if line.name.lower().endswith("spread"))
    if _GREASED.search(text):  # "in an oiled tin": the fat of the list
        reader.used.update(i for i, line in enumerate(reader.lines) if _is_fat(reader.tables.foods, line))


def note_shared(reader: StepReader, text: str, mentions: Sequence[Mention], drafts: Sequence[Instruction]) -> None:
    """Note the foods of no line that reach more than the family's bowl."""
    family = {mention for draft in drafts if draft.action.bowl == "family" for mention in draft.mentions}
    reader.shared |= {
        mention.food
        for mention in mentions
        if mention not in family and whose(_sentence_around(text, mention.start), reader.split)[0] != "family"
    }


def _is_fat(foods: Foods, line: FoodLine) -> bool:
    record = foods.get(line.food) if line.food else None
    return record is not None and (record.group == "oil" or (record.parent or record.id) == "butter")


def _sentence_around(text: str, at: int) -> str:
    start = text.rfind(". ", 0, at) + 1
    end = text.find(". ", at)
    return text[start : end if end >= 0 else len(text)]


def note_unlisted(reader: StepReader, passage: Passage, mentions: Sequence[Mention], index: int) -> None:
    for mention in mentions:
        if not mention.food or is_water(reader.tables, mention.food):
            continue
        span = passage.span(mention.start, mention.end)
        if mention.food in reader.unlisted:
            reader.also.setdefault(mention.food, []).append(span)
        else:
            reader.unlisted[mention.food] = (index, span, passage.text[mention.start : mention.end])


def report_unlisted(reader: StepReader) -> None:
    for food, (_, span, words) in reader.unlisted.items():
        record = reader.tables.foods.get(food)
        name = record.name if record is not None else food
        grave = record is not None and bool(record.allergens or record.traits & GRAVE)
        if not grave and not reader.lines:
            continue  # there is no list at all, which is said where it should stand
        slight = record is not None and record.group in ("herb", "spice")
        if food not in reader.shared and record is not None and not record.allergens and "honey" not in record.traits:
            grave, slight = False, True  # salt that goes into the family's bowl alone
        called = f"“{words}”" if words.lower() == name.lower() else f"“{words}” ({name})"
        related = tuple(Related(reader.document, s, "and here") for s in reader.also.get(food, ()))
        message = f"{called} is used here and does not stand under foods."
        remedy = f"Add a line for {name}, with its amount, or take it out of the step."
        level: Level | None = "error" if grave else "note" if slight else None
        reader.findings.append(
            fault("food-not-listed", reader.document, span, message, remedy, level=level, related=related)
        )


def report_unused(reader: StepReader, steps: Sequence[Step]) -> None:
    slices = any(re.search(r"\bslices?\b", step.text, re.I) for step in steps)  # "spread on two slices"
    served_apart = any(action.bowl == "family" for step in steps for action in step.actions)
    for index, line in enumerate(reader.lines):
        unknown = line.food is None and line.recipe is None  # said at the line already
        if index in reader.used | reader.excused or unknown or line.has("optional") or _FOR_THE_PAN.search(line.text):
            continue
        if line.food == "water" and any(_IN_WATER.search(step.text) for step in steps):
            continue  # "poach for ten minutes": in what, nobody need say
        if slices and (
            (line.amount is not None and line.amount.unit == "slice") or any(cut.shape == "slice" for cut in line.cuts)
        ):
            continue  # "spread it on each slice"
        if served_apart and line.has("for-others"):
            continue  # "pepper, for the grown-ups", and "season the rest"
        if line.name.lower().endswith("salt") and any(_SALTS.search(step.text) for step in steps):
            continue  # "salt the courgette, and squeeze it": the verb is the salt
        name = line.alias or line.name
        message = f"“{name}” stands under foods and no step uses it."
        remedy = "Say in a step what happens to it, or take the line out."
        reader.findings.append(fault("food-never-used", reader.document, line.name_span, message, remedy))
