"""What the words of an instruction say (lines, time, heat, end point, lid, water, cuts), and what those of one sentence
share or have twice."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from spoonproof.model.recipe import Action
from spoonproof.model.record import replace
from spoonproof.model.text import Passage, Span
from spoonproof.reading.amount import amount_at
from spoonproof.reading.cuts import cuts_of
from spoonproof.reading.instruction import UNTIL, UNTIL_END, Instruction, Tables, is_water, until_span
from spoonproof.reading.measures import Measures
from spoonproof.reading.mentions import Mention
from spoonproof.reading.times import SQUASH, FoundTime, find_heat, lid

_INDIRECT = re.compile(r"(?i)\b(?:with|in|into|to|over|under|from|for|on|until)\b")
TEST_FIRST = re.compile(
    r"[ \t]{0,9}(?:when|once|as soon as)\b(?=[^.,;]{1,80})[^.;]{0,60}?" + f"(?:{SQUASH.pattern})", re.I
)
_SENTENCE = re.compile(r"[.;!?][ \t]{1,9}")
_ALL = re.compile(
    r"(?i)\b(?:everything(?![ \t]+(?:but|except|bar|apart|other|else)\b)|it all"
    r"|all of it|them all|all of them|all together|and all(?=[ \t]{0,3}(?:[.,;!]|$))|the lot"
    r"|the (?:whole )?mixture|the contents|the mash|the pur[ée]e|the stew"
    r"|the soup|the sauce|the porridge|the batter|the mix|all (?:of )?the (?:ingredients|foods?)|the ingredients)\b"
)
REMAINING = re.compile(
    r"(?i)\b(?:the )?(?:remaining|rest of the|other) (?:ingredients|foods|things)\b"
    r"|\beverything else\b(?!,?[ \t]+(?:but|except|bar|apart|other)\b)"
    r"|\bwith (?:all )?the rest(?=[ \t]{0,3}(?:[.,;]|$|and\b|to\b|until\b))"
)
_THEM = re.compile(
    r"(?i)\b(?:them|it|both(?![ \t]+(?!of\b|for\b|in\b|into\b|on\b|until\b|together\b|well\b|with\b|at\b|to\b|over\b"
    r"|then\b|and\b|sides\b)[a-z])|these|those|each one|each(?=[ \t]+(?:in|into|with|for|on|over)\b)|the pieces"
    r"|(?:half|some|a little|most) of each|the other half|half of it)\b"
)
_WITH_THEM = re.compile(r"(?i)\bwith (?:them|it|those|these)\b")
_BOTH_THE = re.compile(r"(?i)\b(?:both|these|those)(?:[ \t]+of)?(?:[ \t]+(?:the|your))?[ \t]+\Z")  # "both vegetables"
_EQUIPMENT = re.compile(
    r"(?i)[ \t]{0,9}(?:up[ \t]{1,9})?(?:(?:the|your)[ \t]{1,9}(?:\w+[ \t]{1,9}){0,2}?(?:oven|grill|griddle|steamer"
    r"|kettle|microwave|air fryer|frying pan|barbecue)|an?[ \t]{1,9}(?:[\w-]+[ \t]{1,9}){0,3}?(?:oven|pan|saucepan"
    r"|skillet|wok|griddle|steamer|pot|casserole|dish|tin|tray|kettle))\b"
)
_LIQUID = re.compile(
    r"(?i)\b(?:in|with|add|into|under|splash of|little|some|covered? (?:in|with))\b[^.;]{0,40}?\b(?:water|stock|broth"
    r"|liquid|milk|juice)\b"
)
_WATER = re.compile(r"(?i)[ \t]{1,9}(?:of[ \t]{1,9})?(?:the[ \t]{1,9})?(?:[a-z-]+[ \t]{1,9}){0,3}?water\b")
_JOINT_AT_END = re.compile(r"\b(?:and|then)\Z")
_OBJECT = re.compile(r"(?i)\b(?!(?:and|then|well|it)\b)[^\W\d_]{3,}")
_WITH_FIRST = re.compile(r"(?i)[ \t]{1,9}(?:(?:up|together|well|gently)[ \t]{1,9})?with\b")
_IN_FIRST = re.compile(
    r"(?i)[ \t]{1,9}(?:(?:gently|quickly|lightly)[ \t]{1,9})?in[ \t]{1,9}(?:the|a little|some|hot)\b"
)
_MASHED_IN = re.compile(
    r"(?i)[ \t]{1,9}(?:(?:it|them|this|the \w+)[ \t]{1,9})?(?:in|into)\b(?![ \t]{1,9}(?:a|an|your)\b)"
)
_WHOLE_POT = ("drain", "mix", "strain", "shape")


def fill(
    tables: Tables,
    passage: Passage,
    draft: Instruction,
    times: Sequence[FoundTime],
    lid_now: bool | None,
    last: tuple[int, ...],
) -> tuple[Action, bool | None]:
    """Everything that the stretch of one instruction says, and whether the pan is covered from here on.

    ``last``: what "it" and "them" mean here; empty: all that is in the pot.
    """
    text = passage.text
    own = text[draft.start : draft.end]
    rest = text[draft.match.end : draft.end]
    foods, everything = _acted_on(text, draft, last)
    said = lid(text[draft.lead : draft.end] if not draft.lead else own + text[draft.lead : draft.start])
    lid_now = said if said is not None else lid_now
    time = _time_of(draft, times)
    until = _until(rest)
    water = _water_ml(_before_until(rest), tables.measures)
    action = Action(
        verb=draft.match.verb,
        span=passage.span(draft.start, len(text[: draft.end].rstrip())),
        foods=foods,
        everything=everything,
        time=time.time if time and not time.after else None,
        time_span=passage.span(time.start, time.end) if time else None,
        more=bool(time and time.more),
        until=until,
        soft_test=bool(until and SQUASH.search(until)),
        heat_c=_oven(text, draft, tables.measures),
        covered=lid_now if draft.verb.role in ("heat", "soak") or said is not None else None,
        water_ml=water,
        cuts=cuts_of(passage, (draft.start, draft.end), draft.verb, tables.measures.cuts),
        with_liquid=water is not None or _LIQUID.search(own) is not None,
        unlisted=_unlisted(tables, passage, draft),
        last=bool(time and time.last),
        after=time.time if time and time.after else None,
    )
    return action, lid_now


def note_tests(text: str, drafts: Sequence[Instruction]) -> None:
    """ "Simmer for 12 minutes. When a cube squashes easily, drain": the test ends the heat before it."""
    for end in _SENTENCE.finditer(text):
        if not TEST_FIRST.match(text, end.end()):
            continue
        heats = [d for d in drafts if d.match.start < end.start() and d.verb.role == "heat"]
        if heats:
            heats[-1].action = replace(heats[-1].action, soft_test=True)


def _acted_on(text: str, draft: Instruction, last: tuple[int, ...]) -> tuple[tuple[int, ...], bool]:
    """The lines that an instruction acts on, and whether it acts on all that is in the pot."""
    role = draft.verb.role
    rest = text[draft.match.end : draft.end]
    objects = _before_until(rest)
    foods = _named(text, draft)
    everything = _says_all(text, draft, objects) or (not foods and REMAINING.search(objects) is not None)
    ahead = tuple(i for m in draft.mentions if m.start < draft.match.start for i in m.lines)
    last = ahead or last  # "scoop the flesh from the mango and crush half of it"
    before = _BOTH_THE.sub("", text[draft.match.end : _first(draft, draft.match.end + len(objects))])
    if not everything and _THEM.search(before):
        everything = not last
        foods = tuple(dict.fromkeys((*last, *foods)))
    if not everything and foods and _WITH_THEM.search(objects):  # "brown the mince with them"
        everything = not last
        foods = tuple(dict.fromkeys((*last, *foods)))
    # "mash it in with the butter", "mash the peas into the potatoes": the whole pot is mashed
    everything = everything or (role == "blend" and _MASHED_IN.match(rest) is not None)
    if _goes_with(draft, rest):
        if foods and last:
            foods = tuple(dict.fromkeys((*last, *foods)))  # "flake the fish and blend with the cheese"
        elif role == "heat":
            everything = True  # "stew with the water": what is in the pot
    if not foods and not everything and role == "cut" and not _OBJECT.search(objects):
        foods = last
    return foods, everything or (not foods and _needs_no_object(text, draft, rest))


def _named(text: str, draft: Instruction) -> tuple[int, ...]:
    """The lines that the instruction names, outside its end point."""
    start, end = until_span(text, draft)
    return tuple(dict.fromkeys(i for m in draft.mentions for i in m.lines if not start <= m.start < end))


def _says_all(text: str, draft: Instruction, objects: str) -> bool:
    goes = text[draft.start : draft.end][:2].lower() == "go"  # "everything goes in": its object stands before it
    return _ALL.search(text[draft.lead : draft.start] if goes else objects) is not None


def _goes_with(draft: Instruction, rest: str) -> bool:
    """ "Blend with the milk", "brown in the oil": the foods named join those of the words before."""
    if draft.verb.role == "heat" and _IN_FIRST.match(rest) is not None:
        return True
    return draft.verb.role in ("blend", "join", "heat") and _WITH_FIRST.match(rest) is not None


def _needs_no_object(text: str, draft: Instruction, rest: str) -> bool:
    """ "Simmer for 10 minutes", "drain": without an object it is all that is in the pot."""
    works = draft.verb.role in ("heat", "blend", "soak", "chill", "cool", "serve") or draft.verb.id in _WHOLE_POT
    return works and not _other_object(text, draft) and not _EQUIPMENT.match(rest)


def _unlisted(tables: Tables, passage: Passage, draft: Instruction) -> tuple[tuple[str, Span], ...]:
    """The foods of no line that go in here, each with its place."""
    return tuple(
        dict.fromkeys(
            (m.food, passage.span(m.start, m.end))
            for m in draft.mentions
            if m.food and not is_water(tables, m.food) and not _only_before(passage.text, draft, m)
        )
    )


def _other_object(text: str, draft: Instruction) -> bool:
    """Whether what the verb acts on is a food of no line or water: "bring 3 cm of water to the boil"."""
    after = [m for m in draft.mentions if m.start >= draft.match.end]
    first = min(after, key=lambda m: m.start, default=None)
    return first is not None and bool(first.food) and not _INDIRECT.search(text[draft.match.end : first.start])


def _first(draft: Instruction, end: int) -> int:
    """Where the first food after the verb starts; ``end`` when none does."""
    return min((m.start for m in draft.mentions if draft.match.end <= m.start < end), default=end)


def _time_of(draft: Instruction, times: Sequence[FoundTime]) -> FoundTime | None:
    inside = [t for t in times if draft.start <= t.start < draft.end]
    if inside:
        return inside[0]
    ahead = [t for t in times if draft.lead <= t.start < draft.start]
    return ahead[-1] if ahead else None


def _oven(text: str, draft: Instruction, measures: Measures) -> float | None:
    """The heat that is set, in °C; "until a thermometer reads 74 °C" sets none."""
    start, end = until_span(text, draft)
    found = find_heat(text[draft.lead : draft.end], measures)
    found = [heat for heat in found if not start <= draft.lead + heat.start < end]
    plain = [heat for heat in found if not heat.fan] or found
    return plain[0].celsius if plain else None


def _before_until(rest: str) -> str:
    until = UNTIL.search(rest)
    return rest[: until.start()] if until else rest


def _until(rest: str) -> str:
    match = UNTIL.search(rest)
    if match is None:
        return ""
    end = UNTIL_END.search(rest, match.end())
    words = rest[match.end() : end.start() if end else len(rest)]
    words = words.rstrip(" \t,.")
    joint = _JOINT_AT_END.search(words)
    return (words[: joint.start()].rstrip(" \t,.") if joint else words).strip()


def _water_ml(text: str, measures: Measures) -> float | None:
    """Millilitres of water that are named ("in 100 ml water"); a range counts by its upper end."""
    total = 0.0
    at = 0
    while at < len(text):
        if (text[at].isnumeric() or text[at] == "a") and (at == 0 or text[at - 1] in " \t("):
            reading = amount_at(text, at, measures)
            if reading is not None and reading.amount is not None and reading.end > at:
                one = measures.ml(reading.amount.unit)
                if one is not None and _WATER.match(text, reading.amount.span.end):
                    total += float(reading.amount.high * one)
                at = reading.end
                continue
        at += 1
    return total or None


def _only_before(text: str, draft: Instruction, mention: Mention) -> bool:
    """ "Before you add any salt, take out ...": the salt does not go in here."""
    lead = text[draft.lead : mention.start]
    return mention.start < draft.start and re.search(r"\bbefore\b", lead, re.I) is not None


_FOOD_BESIDE = re.compile(r"(?i)[ \t]*(?:,|;|\band\b|,[ \t]*and\b)[ \t]+(?:the|your)\b")
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
            early, late = _lines_between(draft, draft.start, before.end), _lines_between(draft, before.end, more.start)
            goes_on = more.more or re.search(r"\bthen\b", between) is not None
            beside = bool(late and early) and _FOOD_BESIDE.match(between) is not None
            if draft.verb.role != "heat" or not (goes_on or beside):
                continue
            span = passage.span(more.start, more.end)
            within = more.last or (not goes_on and more.time.high <= before.time.high)  # both cook at once
            if late and not further:
                first = replace(action, foods=early, everything=action.everything or not early)
            foods = late or first.foods
            again = replace(action, span=span, foods=foods, everything=action.everything and not late, unlisted=())
            further.append(replace(again, time=more.time, time_span=span, more=goes_on, last=within))
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


def _lines_between(draft: Instruction, start: int, end: int) -> tuple[int, ...]:
    """The food lines that the instruction names between two places."""
    named = (line for mention in draft.mentions if start <= mention.start < end for line in mention.lines)
    return tuple(dict.fromkeys(named))


def share_objects(drafts: Sequence[Instruction], text: str) -> None:
    """ "Peel and dice the parsnip": both verbs have the one object."""
    for one, two in zip(reversed(drafts[:-1]), reversed(drafts[1:]), strict=False):
        between = text[one.match.end : two.match.start]
        first = min((m.start for m in two.mentions if m.start >= two.match.end), default=two.match.end)
        same = _CONNECT.fullmatch(between) is not None and not _NOT_OBJECT.search(text[two.match.end : first])
        bare = not one.action.foods and one.verb.id != "turn-heat"
        if same and bare and two.action.foods and one.verb.role in ("cut", "other", "heat", "join"):
            one.action = replace(one.action, foods=two.action.foods, everything=False)
