"""The list of foods against the steps: what a step uses and no line lists, and what is listed and no step uses."""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.model.finding import Level, Related
from spoonproof.model.food import Food
from spoonproof.model.recipe import Step
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
        reader.used.update(i for i, record in enumerate(reader.names.records) if _is_fat(record))


def note_shared(reader: StepReader, text: str, mentions: Sequence[Mention], drafts: Sequence[Instruction]) -> None:
    """Note the foods of no line that reach more than the family's bowl."""
    family = {mention for draft in drafts if draft.action.bowl == "family" for mention in draft.mentions}
    reader.shared |= {
        mention.food
        for mention in mentions
        if mention not in family and whose(_sentence_around(text, mention.start), reader.split)[0] != "family"
    }


def _is_fat(record: Food | None) -> bool:
    return record is not None and (record.group == "oil" or (record.parent or record.id) == "butter")


def _sentence_around(text: str, at: int) -> str:
    start = text.rfind(". ", 0, at) + 1
    end = text.find(". ", at)
    return text[start : end if end >= 0 else len(text)]


def note_unlisted(reader: StepReader, passage: Passage, mentions: Sequence[Mention]) -> None:
    """Note where the foods stand that no line lists."""
    for one in mentions:
        if one.food and not is_water(reader.tables, one.food):
            told = passage.span(one.start, one.end), passage.text[one.start : one.end]
            reader.unlisted.setdefault(one.food, []).append(told)


def report_unlisted(reader: StepReader) -> None:
    """Tell each food that no line lists at its first place."""
    for food, ((span, words), *more) in reader.unlisted.items():
        record = reader.tables.foods.get(food)
        name = record.name if record is not None else food
        grave = record is not None and bool(record.allergens or record.traits & GRAVE)
        if not grave and not reader.lines:
            continue  # there is no list at all, which is said where it should stand
        slight = record is not None and record.group in ("herb", "spice")
        if food not in reader.shared and record is not None and not record.allergens and "honey" not in record.traits:
            grave, slight = False, True  # salt that goes into the family's bowl alone
        called = f"“{words}”" if words.lower() == name.lower() else f"“{words}” ({name})"
        related = tuple(Related(reader.document, again, "and here") for again, _ in more)
        message = f"{called} is used here and does not stand under foods."
        remedy = f"Add a line for {name}, with its amount, or take it out of the step."
        level: Level | None = "error" if grave else "note" if slight else None
        found = fault("food-not-listed", reader.document, span, message, remedy, level=level, related=related)
        reader.findings.append(found)


def report_unused(reader: StepReader, steps: Sequence[Step]) -> None:
    """Tell each line that no step uses."""
    texts = [step.text for step in steps]
    slices = any(re.search(r"\bslices?\b", text, re.I) for text in texts)
    water, salts = (any(said.search(text) for text in texts) for said in (_IN_WATER, _SALTS))
    served_apart = any(action.bowl == "family" for step in steps for action in step.actions)
    for index, line in enumerate(reader.lines):
        unknown = line.food is None and line.recipe is None  # said at the line already
        in_slices = (line.amount is not None and line.amount.unit == "slice") or "slice" in {c.shape for c in line.cuts}
        if (
            index in reader.used | reader.excused
            or unknown
            or line.has("optional")
            or _FOR_THE_PAN.search(line.text)
            or (line.food == "water" and water)  # "poach for ten minutes": in what, nobody need say
            or (slices and in_slices)  # "spread it on each slice"
            or (served_apart and line.has("for-others"))  # "pepper, for the grown-ups", and "season the rest"
            or (salts and line.name.lower().endswith("salt"))  # "salt the courgette": the verb is the salt
        ):
            continue
        name = line.alias or line.name
        message = f"“{name}” stands under foods and no step uses it."
        remedy = "Say in a step what happens to it, or take the line out."
        reader.findings.append(fault("food-never-used", reader.document, line.name_span, message, remedy))
