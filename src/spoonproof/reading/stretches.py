"""What instructions of one sentence share or have twice: two verbs with one object, two times behind one verb."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from spoonproof.model.recipe import Action
from spoonproof.model.record import replace
from spoonproof.model.text import Passage
from spoonproof.reading.instruction import Instruction
from spoonproof.reading.times import FoundTime

_BESIDE = re.compile(r"(?i)[ \t]*(?:,|;|\band\b|,[ \t]*and\b)[ \t]+(?:the|your)\b")
_NOT_OBJECT = re.compile(r"(?i)\b(?:with|in|into|to|over|onto|for|it|them|both|through)\b")
_CONNECT = re.compile(
    r"(?i)(?:[ \t,]|\b(?:and|then|or|gently|lightly|carefully|well|thoroughly|finely|roughly|thinly|coarsely)\b)*"
)


def later_times(
    passage: Passage, actions: list[Action], drafts: Sequence[Instruction], times: Sequence[FoundTime]
) -> list[Action]:
    """The actions with a further one for each second stretch.

    "Roast for 20 minutes, then 10 minutes more" goes on with the same foods; in "simmer for 20 minutes, then the apples
    for 8 minutes more" the apples join for the second stretch alone; in "steam the swede for 20 minutes and the peas
    for 5 minutes" each has its own.
    """
    result: list[Action] = []
    for action, draft in zip(actions, drafts, strict=True):
        inside = [t for t in times if draft.start <= t.start < draft.end]
        first: Action = action
        further: list[Action] = []
        for before, more in pairwise(inside):
            between = passage.text[before.end : more.start]
            late = _lines(draft, before.end, more.start)
            goes_on = more.more or re.search(r"\bthen\b", between) is not None
            beside = bool(late) and _BESIDE.match(between) is not None and bool(_lines(draft, draft.start, before.end))
            if draft.verb.role != "heat" or not (goes_on or beside):
                continue
            span = passage.span(more.start, more.end)
            within = more.last or (not goes_on and more.time.high <= before.time.high)  # both cook at once
            if late and not further:
                own = _lines(draft, draft.start, before.end)
                first = replace(action, foods=own, everything=action.everything or not own)
            foods = late or first.foods
            more_of_it = replace(
                action, span=span, time=more.time, time_span=span, more=goes_on, last=within, unlisted=()
            )
            further.append(replace(more_of_it, foods=foods, everything=action.everything and not late))
        result += [first, *further]
    return result


def under_a_lid(text: str, drafts: Sequence[Instruction]) -> None:
    """ "Bubble gently, lid ajar, for 30 minutes": minutes and end point are the heat's, whatever stands last."""
    for one, two in pairwise(drafts):
        late = two.action
        if two.verb.id != "cover" or one.verb.role != "heat" or one.verb.id == "bring-to-the-boil":
            continue
        if late.foods or _STOP.search(text[one.start : two.start]) or one.action.time is not None:
            continue
        if late.time is not None or (late.until and not one.action.until):
            ends = replace(one.action, time=late.time, time_span=late.time_span, more=late.more, covered=late.covered)
            if not one.action.until:
                ends = replace(ends, until=late.until, soft_test=late.soft_test)
            one.action = ends
            two.action = replace(late, time=None, time_span=None, more=False, until="", soft_test=False)


_STOP = re.compile(r"(?i)[.;]|\bthen\b")
_OFF = re.compile(r"(?i)\b(?:off|remove|removed)\b")


def cooks_on(text: str, drafts: Sequence[Instruction]) -> None:
    """ "Lower the heat and leave it for 40 minutes": the pot goes on cooking, which is what the minutes are for."""
    for draft in drafts:
        action = draft.action
        if draft.verb.id != "turn-heat" or action.time is None or action.last or action.after is not None:
            continue
        if not _OFF.search(text[draft.start : draft.end]):
            draft.action = replace(action, verb="cook", everything=action.everything or not action.foods)


def _lines(draft: Instruction, start: int, end: int) -> tuple[int, ...]:
    """The food lines that the instruction names between two places."""
    named = (line for mention in draft.mentions if start <= mention.start < end for line in mention.lines)
    return tuple(dict.fromkeys(named))


def share_objects(drafts: Sequence[Instruction], text: str) -> None:
    """ "Peel and dice the parsnip": both verbs have the one object."""
    for one, two in zip(reversed(drafts[:-1]), reversed(drafts[1:]), strict=False):
        between = text[one.match.end : two.match.start]
        first = min((m.start for m in two.mentions if m.start >= two.match.end), default=two.match.end)
        same = _CONNECT.fullmatch(between) is not None and not _NOT_OBJECT.search(text[two.match.end : first])
        if (
            same
            and not one.action.foods
            and one.verb.id != "turn-heat"
            and two.action.foods
            and one.verb.role in ("cut", "other", "heat", "join")
        ):
            one.action = replace(one.action, foods=two.action.foods, everything=False)
