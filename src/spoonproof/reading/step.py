"""The method: what an ordinary sentence tells the cook to do, to what, for how long, until when.

What can't be read is a finding, never a guess.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from typing import TYPE_CHECKING

from spoonproof.model.finding import Bowl, Finding
from spoonproof.model.kitchen import VerbMatch, Verbs
from spoonproof.model.recipe import Action, FoodLine, Step
from spoonproof.model.record import replace
from spoonproof.model.shares import of_the_grown_ups
from spoonproof.model.text import Document, Passage, Span
from spoonproof.model.tree import Mapped, Scalar
from spoonproof.reading.bowls import after_serving, put_off, serves_baby, split_at, whose
from spoonproof.reading.faults import fault
from spoonproof.reading.instruction import Instruction, StepReader, Tables, find_instructions, give_mentions, in_until
from spoonproof.reading.instruction_words import (
    TEST_FIRST,
    cooks_on,
    fill,
    later_times,
    note_tests,
    share_objects,
    under_a_lid,
)
from spoonproof.reading.kinds import left_of_kind
from spoonproof.reading.limits import STEP_CHARACTERS
from spoonproof.reading.made_here import made_so_far, named_later, put_in_later, to_come, without_made
from spoonproof.reading.mentions import Mention, Names
from spoonproof.reading.placing import Page, passage_of
from spoonproof.reading.pointed import all_but_some, of_the_pot, told_by_state, with_pointed
from spoonproof.reading.step_beside import beside
from spoonproof.reading.step_list import note_shared, note_unlisted, note_used, report_unlisted, report_unused
from spoonproof.reading.times import SQUASH, FoundTime, find_times, temperature_faults, time_faults

if TYPE_CHECKING:
    from spoonproof.reading.kept import Kept

_PAN_OF = re.compile(
    r"(?i)"
    r"\b(?:cm|mm|inch(?:es)?|centimetres?|pan|saucepan|pot|kettle|steamer|bowl)[ \t]+of[ \t]+(?:[a-z-]+[ \t]+){0,2}$"
)

_PLENTY = re.compile(r"(?i)\b(?:plenty|lots|loads) of[ \t]+(?:[a-z-]+[ \t]+){0,2}$")
_OTHER = re.compile(
    r"(?i)\bin[ \t]+(?:(?:lightly|gently|barely)[ \t]+)?"
    r"(?:(?:boiling|salted|unsalted|simmering|hot|fresh|clean)[ \t]+){0,2}$"
)
_OVEN = re.compile(
    r"(?i)\b(?:ovens?|gas mark|baking (?:tray|sheet|dish|tin)|roasting (?:tin|tray)|airfry\w*|air fry\w*)\b|°"
)


def read_steps(
    entries: Sequence[Scalar | Mapped],
    lines: Sequence[FoodLine],
    page: Page,
    verbs: Verbs,
    title: str = "",
    kept: Kept | None = None,
) -> tuple[tuple[Step, ...], list[Finding]]:
    """Read the method. One ``Step`` an entry, in order; never raises.

    An entry is a sentence, or a mapping with the sentence under ``do`` and keys beside it (``minutes``,
    ``foods``, ``bowl``) that are used in place of what the sentence says; where they disagree is a finding. ``kept``:
    what was read of the file before, with the same tables.
    """
    document = page.document
    names = kept.names(lines, page.foods, title, document) if kept is not None else Names.of(lines, page.foods)
    reader = StepReader(document, lines, Tables(page.foods, verbs, page.measures), names, title=title)
    sentences = [_sentence_of(entry) for entry in entries]
    texts = [sentence.value if sentence is not None else "" for sentence in sentences]
    reader.oven = any(_OVEN.search(text) for text in texts)
    last_lift = max((at for at, text in enumerate(texts) if split_at(text) is not None), default=-1)
    steps: list[Step] = []
    for index, (entry, sentence) in enumerate(zip(entries, sentences, strict=True)):
        if sentence is None or len(sentence.value) > STEP_CHARACTERS:
            steps.append(_unread(reader, index, entry, sentence))
            continue
        reader.lifts_later = index <= last_lift and serves_baby(texts[index])
        _look_on(reader, texts[index + 1 :])
        step = kept.step(reader, index, sentence, _read) if kept is not None else _read(reader, index, sentence)
        if isinstance(entry, Mapped):
            step = beside(reader, step, entry)
        steps.append(step)
        if any(action.verb == "test" for action in step.actions):
            _tested(steps, verbs)
        elif len(steps) > 1 and TEST_FIRST.match(step.text):
            _tested(steps, verbs, skip=1)
    report_unlisted(reader)
    if steps:
        report_unused(reader, steps)
    return tuple(steps), reader.findings


def _look_on(reader: StepReader, to_come_texts: Sequence[str]) -> None:
    """Note of the lines whose turn has not come yet what a step is read by."""
    lines = reader.lines
    reader.apart = frozenset(i for i, line in enumerate(lines) if line.has("for-others") and not reader.split)
    reader.later = named_later(lines, to_come_texts)
    reader.to_come = to_come(lines, to_come_texts)
    reader.not_in_yet = put_in_later(lines, to_come_texts) - reader.used


def _unread(reader: StepReader, index: int, entry: Scalar | Mapped, sentence: Scalar | None) -> Step:
    """A step that has no sentence or one of a length that nobody cooks by, with the finding."""
    span, text = (sentence.span, sentence.value) if sentence is not None else (entry.span, "")
    if sentence is None:
        found = fault("step-not-understood", reader.document, span, "This step has no sentence.", "Add “do:”.")
    else:
        start = Span(span.start, min(span.end, span.start + 40))
        message = f"This step has {len(text)} characters and is not read."
        remedy = "Give each thing to do a step of its own."
        found = fault("value-too-long", reader.document, start, message, remedy)
    reader.findings.append(found)
    return Step(index, text, span)


def _sentence_of(entry: Scalar | Mapped) -> Scalar | None:
    nodes = (entry,) if isinstance(entry, Scalar) else (entry.get("do"), entry.get("step"))
    return next((node for node in nodes if isinstance(node, Scalar)), None)


def _read(reader: StepReader, index: int, scalar: Scalar) -> Step:
    passage = passage_of(scalar, reader.document)
    text = passage.text
    drafts = find_instructions(reader.tables, text, " ".join(line.name for line in reader.lines))
    mentions = _mentions(reader, passage, drafts)
    cut = split_at(text) if not reader.split else None  # where this step lifts out the baby's portion
    if cut is not None:
        drafts = _lifted(reader, drafts, cut, text)
    drafts = give_mentions(reader.tables, drafts, mentions, text)
    times = find_times(text)
    _fill_in_turn(reader, passage, drafts, times)
    note_tests(text, drafts)
    share_objects(drafts, text)
    under_a_lid(text, drafts)
    cooks_on(text, drafts)
    _give_bowls(reader, drafts, text, cut)
    actions = tuple(later_times(passage, [draft.action for draft in drafts], drafts, times))
    reader.used.update(i for action in actions if action.verb == "crack" for i in action.foods)
    note_used(reader, text, mentions, drafts)
    bowl = _step_bowl(reader, passage, actions, drafts, cut)
    lifted_at = None if cut is None else 0 if put_off(text[: cut[0]]) else cut[0]
    step = Step(index, text, scalar.span, actions, bowl, lifted_at)
    reader.split = reader.split or cut is not None
    note_shared(reader, text, mentions, drafts)
    note_unlisted(reader, passage, mentions)
    if not actions and cut is None:
        message = "Nothing to do was found in this step, so no check looks at it."
        remedy = "Start with a verb of the kitchen, as in “Steam the pears for 4 minutes.”"
        reader.findings.append(fault("step-not-understood", reader.document, scalar.span, message, remedy))
    reader.findings += time_faults(passage, reader.document)
    reader.findings += temperature_faults(passage, reader.document, reader.tables.measures)
    return step


def _mentions(reader: StepReader, passage: Passage, drafts: Sequence[Instruction]) -> list[Mention]:
    """The foods that the sentence names, each of one line or of none."""
    text = passage.text
    mentions = reader.names.find(text, [draft.start for draft in drafts])
    mentions = [m for m in mentions if not any(d.match.start <= m.start < d.match.end for d in drafts)]
    mentions = [m._replace(lines=(), food="water") if _pan_water(reader, text, m) else m for m in mentions]
    mentions = [told_by_state(reader, text, of_the_pot(reader, m)) for m in mentions]
    left = [left_of_kind(text, m.start, m.lines, reader.used) for m in mentions]
    mentions = [m._replace(lines=own, unsure=m.unsure and len(own) > 1) for m, own in zip(mentions, left, strict=True)]
    mentions = [_one_of(reader, passage, m) for m in mentions if not in_until(reader.tables, text, m, drafts)]
    mentions = made_so_far(reader, text, mentions)
    mentions = with_pointed(reader, text, [*mentions, *all_but_some(reader, text)])
    return without_made(reader, text, mentions)


def _fill_in_turn(reader: StepReader, passage: Passage, drafts: list[Instruction], times: list[FoundTime]) -> None:
    """Give each draft its action; "it" is what the one before acted on."""
    lid_now: bool | None = None
    used = set(reader.used)
    for draft in drafts:
        action, lid_now = fill(reader.tables, passage, draft, times, lid_now, reader.last_foods)
        bare = not action.foods and not action.everything and not draft.mentions
        if bare and draft.verb.role == "cut":
            action = replace(action, foods=_to_be_cut(reader, used))
        elif _works(draft) and action.everything and _EACH.search(passage.text, draft.match.start, draft.end):
            pieces = _to_be_cut(reader, used)  # "quarter them", "mash each one"
            action = replace(action, foods=pieces, everything=not pieces) if pieces else action
        if bare and draft.verb.id == "crack":  # "crack one into each hollow"
            eggs = (i for i, line in enumerate(reader.lines) if line.food == "egg" and i not in reader.used)
            action = replace(action, foods=tuple(eggs), everything=False)
        if draft.verb.id == "roast" and not reader.oven and action.heat_c is None:
            action = replace(action, verb=_roasted_in_a_pan(reader, action) or action.verb)
        draft.action = action
        used.update(action.foods)
        if action.foods or action.everything:
            lifted = draft.verb.role == "split" and all(_flavours(reader, at) for at in action.foods)
            reader.last_foods = () if action.everything or lifted else action.foods


_PIECES = (
    "vegetable",
    "fruit",
    "meat",
    "poultry",
    "fish",
    "shellfish",
    "cheese",
    "nut",
    "seed",
    "pulse",
    "dried-fruit",
)
_EACH = re.compile(r"(?i)\b[ \t](?:them|each(?: one)?|every(?: one| piece)|the pieces)\b")
_SHAPELESS = ("liquid", "powder", "paste", "none")


def _works(draft: Instruction) -> bool:
    """Whether it cuts, mashes or flattens what it acts on."""
    return draft.verb.role in ("cut", "blend") or draft.verb.id == "shape"


def _to_be_cut(reader: StepReader, used: AbstractSet[int]) -> tuple[int, ...]:
    """What "cut lengthways into strips" cuts: the food that the words before acted on, or else the only one of the
    list that a knife can cut, before it is part of a dish."""
    records = reader.names.records
    in_the_pan = {i for i, one in enumerate(records) if one and one.group in ("oil", "fat")}
    last = tuple(i for i in reader.last_foods if i not in in_the_pan)
    if reader.last_foods:
        return last if len(last) == 1 else ()
    solid = [i for i, one in enumerate(records) if one and one.group in _PIECES and one.hardness not in _SHAPELESS]
    pieces = tuple(i for i in solid if i not in reader.apart)
    return pieces if len(pieces) == 1 and used <= {*pieces, *in_the_pan} else ()


_DRY = ("spice", "grain", "pulse", "nut", "seed", "herb")
_LONGEST_IN_A_PAN = 15.0  # minutes


def _roasted_in_a_pan(reader: StepReader, action: Action) -> str:
    """ "Roast the semolina for 5 minutes", and no oven in the whole method: toasted in a dry pan, fried where fat is
    named; "" where it may be the oven after all."""
    groups = [record.group for at in action.foods if (record := reader.names.records[at])]
    fat = [group for group in groups if group in ("oil", "fat")]
    short = action.time is not None and action.time.high <= _LONGEST_IN_A_PAN
    dry = all(group in (*_DRY, "oil", "fat") for group in groups) and len(groups) == len(action.foods)
    if not dry or not (short or groups):
        return ""
    return "fry" if fat else "toast"


def _flavours(reader: StepReader, at: int) -> bool:
    """A herb or a spice: "take out the thyme; let it cool and blend it" speaks of the pot."""
    record = reader.names.records[at]
    return record is not None and record.group in ("herb", "spice")


def _give_bowls(reader: StepReader, drafts: Sequence[Instruction], text: str, cut: tuple[int, int] | None) -> None:
    reader.turn = "baby" if cut is not None else None
    if not drafts:
        _note_share(reader, text)  # "give the baby a few pieces"
    for draft in drafts:
        _note_share(reader, text[draft.lead : draft.start])
        bowl = _bowl(reader, draft, text, cut)
        reader.cooked = reader.cooked or draft.verb.role == "heat"
        _note_share(reader, text[draft.start : draft.end])
        draft.action = replace(draft.action, bowl=bowl)
        reader.turn = bowl or reader.turn


def _note_share(reader: StepReader, words: str) -> None:
    """Note that the baby's share was taken out of what was cooked, where nothing lifts it out in so many words."""
    reader.shared_out = reader.shared_out or (reader.cooked and not reader.lifts_later and serves_baby(words))


def _pan_water(reader: StepReader, text: str, mention: Mention) -> bool:
    """ "3 cm of water", "a pan of water": the water below a steamer, not the line of the list."""
    if not any((reader.lines[i].food or "") == "water" for i in mention.lines):
        return False
    before = text[max(0, mention.start - 40) : mention.start]
    spent = all(i in reader.used for i in mention.lines)  # "boil the rice in salted water": the list's is in the stew
    return any(said.search(before) for said in (_PAN_OF, _PLENTY, *((_OTHER,) if spent else ())))


def _tested(steps: list[Step], verbs: Verbs, skip: int = 0) -> None:
    """A squash test that is a sentence of its own, or opens one ("when a cube squashes easily, drain"; ``skip`` 1), is
    the end point of the heat before it."""
    current = steps[-1]
    if not skip and (not SQUASH.search(current.text) or any(a.soft_test for a in current.actions)):
        return
    for at in range(len(steps) - 1 - skip, max(-1, len(steps) - 3 - skip), -1):
        actions = list(steps[at].actions)
        for i in range(len(actions) - 1, -1, -1):
            if verbs.get(actions[i].verb).role == "heat":
                actions[i] = replace(actions[i], soft_test=True)
                steps[at] = replace(steps[at], actions=tuple(actions))
                return


def _one_of(reader: StepReader, passage: Passage, mention: Mention) -> Mention:
    """Where the words fit two lines: the first one not used yet, and a finding."""
    if not mention.unsure or not mention.lines:
        there = tuple(i for i in mention.lines if i not in reader.not_in_yet)
        return mention._replace(lines=there or mention.lines)
    ahead = passage.text[: mention.start].rstrip()  # "the 60 ml water": the amount says which
    said = [i for i in mention.lines if _ends_in_amount(ahead, reader.lines[i], reader.document)]
    if len(said) == 1:
        reader.used.add(said[0])
        return mention._replace(lines=(said[0],), unsure=False)
    fresh = [i for i in mention.lines if i not in reader.used]
    if not fresh:
        return mention._replace(unsure=False)  # "drain the dal", of two that went in before: both
    chosen = fresh[0]
    if mention.lines not in reader.asked:
        reader.asked.add(mention.lines)
        words = passage.text[mention.start : mention.end]
        lines = " or ".join(f"“{reader.lines[i].text.strip()}”" for i in mention.lines[:3])
        span, remedy = passage.span(mention.start, mention.end), "Name it in full, or give each line a name with “as:”."
        found = fault("which-food", reader.document, span, f"“{words}” can be {lines}.", remedy)
        reader.findings.append(found)
    return mention._replace(lines=(chosen,))


def _ends_in_amount(words: str, line: FoodLine, document: Document) -> bool:
    amount = document.at(line.amount.span).strip() if line.amount is not None else ""
    ends = r"(?<![\w.,])" + re.escape(amount) + r"(?:[ \t]+of(?:[ \t]+the)?|[ \t]+the)?$"
    return bool(amount) and re.search(ends, words, re.I) is not None


def _bowl(reader: StepReader, draft: Instruction, text: str, cut: tuple[int, int] | None) -> Bowl | None:
    """Whose bowl an instruction is about. ``cut``: where this step lifts out the baby's portion."""
    if cut is not None and cut[0] <= draft.start < cut[1]:
        return None  # the lifting out itself
    after_cut = cut is not None and draft.start >= cut[1]
    if not (reader.split or after_cut):
        own, led = text[draft.start : draft.end], text[draft.lead : draft.end]
        foods = [reader.lines[at] for at in draft.action.foods]
        grown_ups = bool(foods) and all(line.has("for-others") for line in foods)
        if _works(draft) and of_the_grown_ups(text):
            return None  # "quarter ours and leave hers whole": the food is in both bowls
        theirs = reader.shared_out and (after_serving(own) or grown_ups)
        return "family" if theirs else whose(own, False)[0] or whose(led, False)[0]
    start = max(draft.lead, cut[1]) if cut is not None and after_cut else draft.lead
    bowl, said = whose(text[start : draft.end], True)
    if said:
        return bowl
    if after_cut and reader.turn == "baby" and draft.verb.role == "split" and not draft.action.everything:
        return "baby"  # "spoon out the baby's bowl, take the bay leaf out and mince it": out of the portion
    pronoun = re.search(r"\b(?:it|this|that|them|these|those)\b", text[draft.start : draft.end], re.I) is not None
    works_on = draft.verb.role in ("blend", "cut", "cool", "chill", "serve") and (after_cut or not draft.action.foods)
    seasons_it = pronoun and after_cut  # "lift out the baby's portion and season it": said of the portion
    if reader.turn == "baby" and (pronoun or works_on) and (draft.verb.role != "season" or seasons_it):
        named = tuple(dict.fromkeys(i for mention in draft.mentions for i in mention.lines))
        if pronoun and draft.verb.role in ("season", "join") and named:
            draft.action = replace(draft.action, foods=named)
        elif pronoun:
            draft.action = replace(draft.action, foods=(), everything=True)
        return "baby"
    return "family"


def _lifted(reader: StepReader, drafts: list[Instruction], cut: tuple[int, int], text: str) -> list[Instruction]:
    """The lifting out as one instruction, whatever verb it was said with ("set aside", "spoon some into ...")."""
    lift = next(iter(reader.tables.verbs.find("Lift out the baby's portion.")), None)
    if lift is None:
        return drafts
    inside = [d for d in drafts if cut[0] <= d.start < cut[1]]
    others = [d for d in drafts if d not in inside]
    following = min((d.start for d in others if d.start >= cut[1]), default=len(text))
    lead = max((d.end for d in others if d.end <= cut[0]), default=0)
    match = VerbMatch(cut[0], cut[1], lift.verb)
    own = Instruction(match, reader.tables.verbs.get(lift.verb), cut[0], following, lead, Action(lift.verb, Span(0, 0)))
    return sorted([*others, own], key=lambda d: d.start)


def _step_bowl(
    reader: StepReader,
    passage: Passage,
    actions: Sequence[Action],
    drafts: Sequence[Instruction],
    cut: tuple[int, int] | None,
) -> Bowl | None:
    if cut is None:
        bowls = {action.bowl for action in actions}
        if len(bowls) == 1:
            return bowls.pop()
        return whose(passage.text, reader.split)[0] if not actions else None
    before = [d for d in drafts if d.start < cut[0]]
    after = {d.action.bowl for d in drafts if d.start >= cut[1]}
    if not before and len(after) == 1:
        return after.pop()
    if (before and after) or len(after) > 1:
        message = "The baby's portion is lifted out in the middle of this step."
        remedy = "Give it a step of its own, so that reader and checks see what each bowl gets."
        span = passage.span(*cut)
        reader.findings.append(fault("split-within-a-step", reader.document, span, message, remedy))
    return None
