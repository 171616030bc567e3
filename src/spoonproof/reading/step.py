"""The method: what an ordinary sentence tells the cook to do, to what, for how long, until when.

The verb table says where a sentence gives an instruction. Each instruction reaches to the next one; what stands
there (foods, times, end point, lid, water, cuts) is its own. What can't be read is a finding, never a guess.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from spoonproof.model.finding import Bowl, Finding, Related
from spoonproof.model.kitchen import Foods, Verb, VerbMatch, Verbs
from spoonproof.model.recipe import Action, Cut, FoodLine, Step
from spoonproof.model.text import Document, Passage, Span
from spoonproof.model.tree import Listing, Mapped, Scalar
from spoonproof.reading.amount import amount_at
from spoonproof.reading.bowls import split_at, whose
from spoonproof.reading.kitchen_faults import kitchen_fault
from spoonproof.reading.measures import Measures
from spoonproof.reading.mentions import Mention, Names, hidden_parts
from spoonproof.reading.placing import passage_of
from spoonproof.reading.times import FoundTime, find_heat, find_times, lid

_SENTENCE_END = re.compile(r"[.!?](?=[ \t\r\n]|$)|[;\n]")
_ABBREVIATION = re.compile(r"\b(?:approx|tbsp|tsp|min|mins|hr|hrs|oz|lb|ca|e\.g|i\.e|etc|no|fl)$", re.I)
_ADDING = re.compile(r"\b(?:adding|stirring in|mixing in|tipping in|throwing in|putting in)\b", re.I)
_UNTIL = re.compile(r"\b(?:until|till|til)[ \t]+", re.I)
_UNTIL_END = re.compile(
    r"[;!?(]|[.](?=[ \t]|$)|,[ \t]*(?:then|and then|about|for|turning|stirring|adding|shaking|with|leaving|about)\b|\band then\b"
)
_SQUASH = re.compile(
    r"(?:squash|squish|crush|mash|smush|squeeze|press|flatten|collapse|break|fall|give)\w*\b[^.;]{0,50}?"
    r"\b(?:between|finger|fingers|thumb|tongue|roof of (?:the|your) mouth|gums|with (?:a |the (?:back|side) of a )?(?:fork|spoon)|against the)"
    r"|\bsquash(?:es|ed)? (?:easily|flat|with no effort|without effort)|\bsquash test|\bsquish(?:es|y)? (?:easily|between)",
    re.I,
)
_ALL = re.compile(
    r"\b(?:everything|it all|all of it|them all|all of them|all together|the lot|the (?:whole )?mixture|the (?:whole )?(?:pan|pot|contents)(?= (?:to|until|for|with|is|boils)\b)|"
    r"the contents|the mash|the pur[ée]e|the stew|the soup|the sauce|the porridge|the batter|the mix|all (?:of )?the (?:ingredients|foods?)|the ingredients)\b",
    re.I,
)
_ALL_LISTED = re.compile(
    r"\b(?:all (?:of )?(?:the |your )?(?:other )?(?:ingredients|foods)|everything together|the ingredients)\b", re.I
)
_REMAINING = re.compile(r"\b(?:the )?(?:remaining|rest of the|other) (?:ingredients|foods|things)\b", re.I)
_THEM = re.compile(r"\b(?:them|it|both|these|those|each one|the pieces)\b", re.I)
_ADJECTIVE = re.compile(r"\b(?:it|them|still|while|serve|eat|offer|lukewarm|is|are|keep|stay|stays|kept)[ \t]+$", re.I)
_OF_A_PERSON = re.compile(r"\b(?:your|my|clean|between|wet|both|her|his|their)[ \t]+(?:clean |wet )?$", re.I)
_EQUIPMENT = re.compile(
    r"[ \t]*(?:up[ \t]+)?(?:(?:the|your)[ \t]+(?:\w+[ \t]+){0,2}?(?:oven|grill|griddle|steamer|kettle|microwave|air fryer|frying pan|barbecue)"
    r"|an?[ \t]+(?:[\w-]+[ \t]+){0,3}?(?:oven|pan|saucepan|skillet|wok|griddle|steamer|pot|casserole|dish|tin|tray|kettle))\b",
    re.I,
)
_CONNECT = re.compile(
    r"(?:[ \t,]|\b(?:and|then|or|gently|lightly|carefully|well|thoroughly|finely|roughly|thinly|coarsely)\b)*", re.I
)
_LEAD_CLAUSE = re.compile(r"\b(?:when|once|while|whilst|if|as soon as|after|before|as|unless)\b", re.I)
_LIQUID = re.compile(
    r"\b(?:in|with|add|into|under|splash of|little|some|covered? (?:in|with))\b[^.;]{0,40}?\b(?:water|stock|broth|liquid|milk|juice)\b",
    re.I,
)
_WATER = re.compile(r"[ \t]+(?:of[ \t]+)?(?:the[ \t]+)?(?:[a-z-]+[ \t]+){0,3}?water\b", re.I)
_CUT_PHRASE = re.compile(
    r"\b(?:cut|sliced?|chopped|diced|torn|broken|flaked|halved|quartered)(?:[ \t]+(?:up|in|into|lengthways))*[ \t]*$",
    re.I,
)
_ADVERB = re.compile(r"\b(?:very finely|finely|thinly|thickly|roughly|coarsely)\b", re.I)
_LENGTHWAYS = re.compile(r"\b(?:lengthways|lengthwise|length-ways|along (?:its|their|the) length)\b", re.I)
_WHOLE_POT = ("drain", "mix", "strain", "shape")


@dataclass(slots=True)
class _Draft:
    """One instruction while it is read; offsets are into the sentence's text."""

    match: VerbMatch
    verb: Verb
    start: int
    end: int  # of its own words
    lead: int  # from where words before it count as its own
    action: Action
    mentions: list[Mention] = field(default_factory=list)


@dataclass(slots=True)
class _Reader:
    """What is carried from step to step."""

    document: Document
    lines: Sequence[FoodLine]
    foods: Foods
    verbs: Verbs
    measures: Measures
    names: Names
    findings: list[Finding] = field(default_factory=list)
    used: set[int] = field(default_factory=set)
    split: bool = False
    last_foods: tuple[int, ...] = ()  # what "it" and "them" mean; none: all that is in the pot
    unlisted: dict[str, tuple[int, Span, str]] = field(default_factory=dict)
    also: dict[str, list[Span]] = field(default_factory=dict)
    asked: set[tuple[int, ...]] = field(default_factory=set)


def read_steps(
    scalars: Sequence[Scalar | Mapped],
    document: Document,
    lines: Sequence[FoodLine],
    foods: Foods,
    verbs: Verbs,
    measures: Measures,
) -> tuple[tuple[Step, ...], list[Finding]]:
    """Read the method. One ``Step`` an entry, in order; never raises.

    An entry is a sentence, or a mapping with the sentence under ``step`` and keys beside it (``minutes``,
    ``foods``, ``bowl``) that are used in place of what the sentence says; where they disagree is a finding.
    """
    reader = _Reader(document, lines, foods, verbs, measures, Names.of(lines, foods))
    steps: list[Step] = []
    for index, entry in enumerate(scalars):
        sentence = _sentence_of(entry)
        if sentence is None:
            steps.append(Step(index, "", entry.span))
            message = "This step has no sentence."
            reader.findings.append(kitchen_fault("step-not-understood", document, entry.span, message, "Add “step:”."))
            continue
        step = _read(reader, index, sentence)
        if isinstance(entry, Mapped):
            step = _beside(reader, step, entry)
        steps.append(step)
        if any(action.verb == "test" for action in step.actions):
            _tested(steps, verbs)
    _report_unlisted(reader)
    if steps:
        _report_unused(reader)
    return tuple(steps), reader.findings


def _sentence_of(entry: Scalar | Mapped) -> Scalar | None:
    if isinstance(entry, Scalar):
        return entry
    for key in ("step", "do", "text", "say"):
        node = entry.get(key)
        if isinstance(node, Scalar):
            return node
    return None


def _read(reader: _Reader, index: int, scalar: Scalar) -> Step:
    passage = passage_of(scalar, reader.document)
    text = passage.text
    drafts = _instructions(reader, text)
    starts = [draft.start for draft in drafts]
    mentions = reader.names.find(text, starts)
    mentions = [m for m in mentions if not any(d.match.start <= m.start < d.match.end for d in drafts)]
    mentions = [
        _one_of(reader, passage, mention) for mention in mentions if not _in_until(reader, text, mention, drafts)
    ]
    cut = split_at(text)
    split_before = reader.split
    splits = cut is not None and not split_before
    drafts = _with_mentions(reader, drafts, mentions, text)
    times = find_times(text)
    lid_now: bool | None = None
    done: list[_Draft] = []
    for at, draft in enumerate(drafts):
        action, lid_now = _fill(
            reader, passage, draft, drafts[at + 1] if at + 1 < len(drafts) else None, times, lid_now
        )
        draft.action = action
        done.append(draft)
        if action.foods or action.everything:
            reader.last_foods = () if action.everything else action.foods
    _share_objects(done, text)
    actions = [_bowl(reader, draft, text, cut if splits else None, done) for draft in done]
    actions = _later_times(passage, actions, done, times)
    for mention in mentions:
        reader.used.update(mention.lines)
    if _ALL_LISTED.search(text) or (any(d.action.everything for d in done) and not reader.used):
        reader.used.update(range(len(reader.lines)))
    if _REMAINING.search(text):
        reader.used.update(range(len(reader.lines)))
    step = Step(
        index, text, scalar.span, tuple(actions), _step_bowl(reader, passage, actions, done, cut, splits), splits
    )
    reader.split = reader.split or splits
    _note_unlisted(reader, passage, mentions, index)
    if not actions and not splits:
        message = "Nothing to do was found in this step, so no check looks at it."
        remedy = "Start with a verb of the kitchen, as in “Steam the pears for 4 minutes.”"
        reader.findings.append(kitchen_fault("step-not-understood", reader.document, scalar.span, message, remedy))
    _temperatures(reader, passage)
    return step


def _tested(steps: list[Step], verbs: Verbs) -> None:
    """A squash test that is a sentence of its own is the end point of the heat before it."""
    current = steps[-1]
    if not _SQUASH.search(current.text) or any(a.soft_test for a in current.actions):
        return
    for at in range(len(steps) - 1, max(-1, len(steps) - 3), -1):
        actions = list(steps[at].actions)
        for i in range(len(actions) - 1, -1, -1):
            if verbs.get(actions[i].verb).role == "heat":
                actions[i] = replace(actions[i], soft_test=True)
                steps[at] = replace(steps[at], actions=tuple(actions))
                return


def _instructions(reader: _Reader, text: str) -> list[_Draft]:
    """The verbs of the sentence, each with the stretch of text that is its own."""
    matches = [
        m
        for m in reader.verbs.find(text)
        if not (text[m.start : m.end].lower() in ("warm", "cool") and _ADJECTIVE.search(text[: m.start]))
    ]
    add = next(iter(reader.verbs.find("Add it.")), None)
    hidden = hidden_parts(text)
    for found in _ADDING.finditer(text) if add is not None else ():
        taken = any(m.start < found.end() and found.start() < m.end for m in matches)
        ahead = text[: found.start()].rstrip().lower()
        if not taken and not ahead.endswith(
            ("before", "after", "without", "of", "than", "by", "when", "while", "keep")
        ):
            if not any(a <= found.start() < b for a, b in hidden):
                assert add is not None
                matches.append(VerbMatch(found.start(), found.end(), add.verb))
    matches.sort(key=lambda match: match.start)
    ends = _sentence_ends(text)
    drafts: list[_Draft] = []
    for at, match in enumerate(matches):
        following = matches[at + 1].start if at + 1 < len(matches) else len(text)
        stop = min([following, *(end for end in ends if end >= match.end)], default=len(text))
        before = max([0, *(end for end in ends if end <= match.start), *(drafts[-1:] and [drafts[-1].end])])
        try:
            verb = reader.verbs.get(match.verb)
        except KeyError:
            continue
        drafts.append(_Draft(match, verb, match.start, stop, before, Action(match.verb, Span(0, 0))))
    return drafts


def _in_until(reader: _Reader, text: str, mention: Mention, drafts: Sequence[_Draft]) -> bool:
    """Whether a food of no line only stands in an end point ("until it stops dripping"). Honey and salt count anywhere."""
    if not mention.food:
        return False
    record = reader.foods.get(mention.food)
    if record is not None and record.traits & _GRAVE:
        return False
    own = next((d for d in drafts if d.start <= mention.start < d.end), None)
    until = _UNTIL.search(text, own.match.end, own.end) if own is not None else None
    if until is None or until.start() > mention.start:
        return False
    end = _UNTIL_END.search(text, until.end())
    return end is None or mention.start < end.start()


def _sentence_ends(text: str) -> list[int]:
    ends: list[int] = []
    for found in _SENTENCE_END.finditer(text):
        if (
            found[0] == "."
            and _ABBREVIATION.search(text[max(0, found.start() - 8) : found.start()])
            and found.end() < len(text)
        ):
            continue
        ends.append(found.end())
    return ends


def _one_of(reader: _Reader, passage: Passage, mention: Mention) -> Mention:
    """Where the words fit two lines: the first one not used yet, and a finding."""
    if not mention.unsure:
        return mention
    fresh = [i for i in mention.lines if i not in reader.used]
    chosen = fresh[0] if fresh else mention.lines[0]
    if mention.lines not in reader.asked:
        reader.asked.add(mention.lines)
        words = passage.text[mention.start : mention.end]
        lines = " or ".join(f"“{reader.lines[i].text.strip()}”" for i in mention.lines[:3])
        reader.findings.append(
            kitchen_fault(
                "which-food",
                reader.document,
                passage.span(mention.start, mention.end),
                f"“{words}” can be {lines}.",
                "Name it in full, or give each line a name with “as:”.",
            )
        )
    return mention._replace(lines=(chosen,))


def _with_mentions(reader: _Reader, drafts: list[_Draft], mentions: Sequence[Mention], text: str) -> list[_Draft]:
    """Give each food to the instruction in whose stretch it stands; one before the first verb of its sentence
    goes to that verb. A sentence with a food of no line and no verb gets an "add", so that the food is seen."""
    for mention in mentions:
        own = next((d for d in drafts if d.start <= mention.start < d.end), None)
        if own is None:
            own = next((d for d in drafts if d.lead <= mention.start < d.start), None)
            if own is not None and _LEAD_CLAUSE.search(text[own.lead : mention.start]) and mention.lines:
                continue  # "once the carrots are soft, drain": no object of the verb
        if own is None and mention.food:
            own = max((d for d in drafts if d.start <= mention.start), key=lambda d: d.start, default=None)
            own = own or (drafts[0] if drafts else None)
        if own is None and mention.food:
            add = next(iter(reader.verbs.find("Add it.")), None)
            if add is not None:
                match = VerbMatch(mention.start, mention.end, add.verb)
                verb = reader.verbs.get(add.verb)
                own = _Draft(match, verb, mention.start, len(text), 0, Action(add.verb, Span(0, 0)))
                drafts = [*drafts, own]
        if own is not None and mention not in own.mentions:
            own.mentions.append(mention)
    return drafts


def _fill(
    reader: _Reader,
    passage: Passage,
    draft: _Draft,
    following: _Draft | None,
    times: Sequence[FoundTime],
    lid_now: bool | None,
) -> tuple[Action, bool | None]:
    """Everything that the stretch of one instruction says."""
    text = passage.text
    own = text[draft.start : draft.end]
    rest = text[draft.match.end : draft.end]
    lead = text[draft.lead : draft.start]
    until_at = _UNTIL.search(rest)
    objects = rest[: until_at.start()] if until_at else rest
    in_until = draft.match.end + until_at.start() if until_at else draft.end
    foods = tuple(
        dict.fromkeys(i for m in draft.mentions for i in m.lines if not draft.match.end < in_until <= m.start)
    )
    unlisted = tuple(
        dict.fromkeys(
            (m.food, passage.span(m.start, m.end)) for m in draft.mentions if m.food and not _is_water(reader, m.food)
        )
    )
    only_water = not foods and any(_is_water(reader, m.food) for m in draft.mentions if m.food)
    everything = _ALL.search(objects) is not None or (not foods and _REMAINING.search(objects) is not None)
    if not foods and not everything and _THEM.search(objects):
        foods = reader.last_foods
        everything = not foods
    heating = draft.verb.role in ("heat", "blend", "soak", "chill", "cool", "serve") or draft.verb.id in _WHOLE_POT
    if heating and not foods and not only_water and not _EQUIPMENT.match(rest):
        everything = True
    said = lid(text[draft.lead : draft.end] if not draft.lead else own + lead)
    lid_now = said if said is not None else lid_now
    time = _time_of(draft, times)
    heat = find_heat(text[draft.lead : draft.end], reader.measures)
    until = _until(rest)
    water = _water_ml(objects, reader.measures)
    action = Action(
        verb=draft.match.verb,
        span=passage.span(draft.start, len(text[: draft.end].rstrip())),
        foods=foods,
        everything=everything,
        time=time.time if time and not time.after else None,
        time_span=passage.span(time.start, time.end) if time else None,
        more=bool(time and time.more),
        until=until,
        soft_test=bool(until and _SQUASH.search(until)),
        heat_c=_oven(heat),
        covered=lid_now if draft.verb.role in ("heat", "soak") or said is not None else None,
        water_ml=water,
        cuts=_cuts(reader, passage, draft),
        with_liquid=water is not None or _LIQUID.search(own) is not None,
        unlisted=unlisted,
        last=bool(time and time.last),
        after=time.time if time and time.after else None,
    )
    return action, lid_now


def _time_of(draft: _Draft, times: Sequence[FoundTime]) -> FoundTime | None:
    inside = [t for t in times if draft.start <= t.start < draft.end]
    if inside:
        return inside[0]
    ahead = [t for t in times if draft.lead <= t.start < draft.start]
    return ahead[-1] if ahead else None


def _oven(found: Sequence[object]) -> float | None:
    plain = [heat for heat in found if not getattr(heat, "fan", False)] or list(found)
    return float(getattr(plain[0], "celsius", 0.0)) if plain else None


def _until(rest: str) -> str:
    match = _UNTIL.search(rest)
    if match is None:
        return ""
    end = _UNTIL_END.search(rest, match.end())
    words = rest[match.end() : end.start() if end else len(rest)]
    return re.sub(r"[ \t,.]*(?:\b(?:and|then)\b)?[ \t,.]*$", "", words).strip()


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


def _cuts(reader: _Reader, passage: Passage, draft: _Draft) -> tuple[Cut, ...]:
    text = passage.text
    part = text[draft.start : draft.end]
    base = draft.start
    found = list(reader.measures.cuts.find(part, verbs=draft.verb.role == "cut"))
    found = [f for f in found if not _OF_A_PERSON.search(part[: f.start])]
    if draft.verb.role != "cut":
        found = [f for f in found if f.cut.shape != "whole" and _CUT_PHRASE.search(part[: f.start])]
    elif len(found) > 1 and found[0].start == 0:
        found = found[1:]  # "slice into thin rounds": the shape counts, not the verb
    elif len(found) == 1 and found[0].start == 0:
        adverb = _ADVERB.search(part, found[0].end)
        word = part[: found[0].end].split()[0].lower() if part else ""
        meaning = reader.measures.cuts.verbs.get(f"{adverb[0].lower()} {word}") if adverb else None
        if meaning is not None:
            cut = replace(found[0].cut, shape=meaning.shape, low_mm=meaning.low_mm, high_mm=meaning.high_mm)
            found = [found[0]._replace(cut=cut)]
    along = _LENGTHWAYS.search(part) is not None
    return tuple(
        replace(f.cut, span=passage.span(base + f.start, base + f.end), lengthways=f.cut.lengthways or along)
        for f in found
    )


def _share_objects(drafts: Sequence[_Draft], text: str) -> None:
    """ "Peel and dice the parsnip": both verbs have the one object."""
    for one, two in zip(reversed(drafts[:-1]), reversed(drafts[1:]), strict=False):
        between = text[one.match.end : two.match.start]
        same = _CONNECT.fullmatch(between) is not None
        if same and not one.action.foods and two.action.foods and one.verb.role in ("cut", "other", "heat", "join"):
            one.action = replace(one.action, foods=two.action.foods, everything=False)


def _bowl(reader: _Reader, draft: _Draft, text: str, cut: tuple[int, int] | None, drafts: Sequence[_Draft]) -> Action:
    """The instruction with whose bowl it is about."""
    after_cut = cut is not None and draft.start > cut[0]
    own = (
        text[max(draft.lead, 0) : draft.end] if draft is drafts[0] or draft.lead == 0 else text[draft.lead : draft.end]
    )
    if not (reader.split or after_cut):
        bowl, _ = whose(own, False)
        return replace(draft.action, bowl=bowl)
    bowl, said = whose(text[draft.start : draft.end] if after_cut else own, True)
    if said:
        return replace(draft.action, bowl=bowl)
    earlier = [d.action.bowl for d in drafts if d.start < draft.start and d.action.bowl]
    in_the_split = cut is not None and cut[0] <= draft.start
    pronoun = re.search(r"\b(?:it|this|them)\b", text[draft.start : draft.end], re.I) is not None
    bare = not draft.action.foods and draft.verb.role in ("blend", "cut", "cool", "chill", "serve")
    follows_baby = (in_the_split and not earlier) or (bool(earlier) and earlier[-1] == "baby")
    if follows_baby and (pronoun or bare) and draft.verb.role != "season":
        bowl = "baby"
        if pronoun:
            draft.action = replace(draft.action, foods=(), everything=True)
    else:
        bowl = "family"
    draft.action = replace(draft.action, bowl=bowl)
    return draft.action


def _later_times(
    passage: Passage, actions: list[Action], drafts: Sequence[_Draft], times: Sequence[FoundTime]
) -> list[Action]:
    """ "Roast for 20 minutes, then 10 minutes more": the second time is a second stretch of the same heat."""
    result: list[Action] = []
    for action, draft in zip(actions, drafts, strict=True):
        result.append(action)
        inside = [t for t in times if draft.start <= t.start < draft.end]
        for more in inside[1:]:
            if draft.verb.role == "heat" and (
                more.more or re.search(r"\bthen\b", passage.text[inside[0].end : more.start])
            ):
                span = passage.span(more.start, more.end)
                result.append(replace(action, span=span, time=more.time, time_span=span, more=True, unlisted=()))
    return result


def _step_bowl(
    reader: _Reader,
    passage: Passage,
    actions: Sequence[Action],
    drafts: Sequence[_Draft],
    cut: tuple[int, int] | None,
    splits: bool,
) -> Bowl | None:
    if not splits:
        bowls = {action.bowl for action in actions}
        if len(bowls) == 1:
            return bowls.pop()
        bowl, _ = whose(passage.text, reader.split)
        return bowl if not actions else None
    assert cut is not None
    before = [d for d in drafts if d.end <= cut[0] or (d.start < cut[0] and d.match.end <= cut[0])]
    after = {d.action.bowl for d in drafts if d.start > cut[0]}
    if not before and len(after) == 1:
        return after.pop()
    if (before and after) or len(after) > 1:
        message = "The baby's portion is lifted out in the middle of this step."
        remedy = "Give it a step of its own, so that reader and checks see what each bowl gets."
        span = passage.span(*cut)
        reader.findings.append(kitchen_fault("split-within-a-step", reader.document, span, message, remedy))
    return None


def _note_unlisted(reader: _Reader, passage: Passage, mentions: Sequence[Mention], index: int) -> None:
    for mention in mentions:
        if not mention.food or _is_water(reader, mention.food):
            continue
        span = passage.span(mention.start, mention.end)
        if mention.food in reader.unlisted:
            reader.also.setdefault(mention.food, []).append(span)
        else:
            reader.unlisted[mention.food] = (index, span, passage.text[mention.start : mention.end])


def _is_water(reader: _Reader, food: str) -> bool:
    record = reader.foods.get(food)
    return food == "water" or (record is not None and record.parent == "water")


def _report_unlisted(reader: _Reader) -> None:
    for food, (_, span, words) in reader.unlisted.items():
        record = reader.foods.get(food)
        name = record.name if record is not None else food
        grave = record is not None and bool(record.allergens or record.traits & _GRAVE)
        called = f"“{words}”" if words.lower() == name.lower() else f"“{words}” ({name})"
        related = tuple(Related(reader.document, s, "and here") for s in reader.also.get(food, ()))
        reader.findings.append(
            kitchen_fault(
                "food-not-listed",
                reader.document,
                span,
                f"{called} is used here and does not stand under foods.",
                f"Add a line for {name}, with its amount, or take it out of the step.",
                level="error" if grave else None,
                related=related,
            )
        )


_GRAVE = frozenset(("honey", "salt", "salty", "added-salt", "free-sugar", "nut-whole", "alcohol"))


def _report_unused(reader: _Reader) -> None:
    for index, line in enumerate(reader.lines):
        if index in reader.used or line.has("optional") or not line.name:
            continue
        name = line.alias or line.name
        message = f"“{name}” stands under foods and no step uses it."
        remedy = "Say in a step what happens to it, or take the line out."
        reader.findings.append(kitchen_fault("food-never-used", reader.document, line.name_span, message, remedy))


def _temperatures(reader: _Reader, passage: Passage) -> None:
    """180 °C beside 450°F: one of them is wrong. A fan oven runs about 20 °C lower."""
    found = find_heat(passage.text, reader.measures)
    for one, two in zip(found, found[1:], strict=False):
        near = two.start - one.end < 12
        even = [h.celsius + (20 if h.fan else 0) for h in (one, two)]
        if near and abs(even[0] - even[1]) > 15:
            words = passage.text[one.start : two.end]
            span = passage.span(one.start, two.end)
            message = f"“{words}” names two temperatures that are not the same."
            remedy = f"The first one is {even[0]:g} °C, the second {even[1]:g} °C in an oven without a fan."
            reader.findings.append(kitchen_fault("temperatures-disagree", reader.document, span, message, remedy))


def _beside(reader: _Reader, step: Step, node: Mapped) -> Step:
    """Keys beside a sentence: they are used, and what disagrees is a finding."""
    actions = list(step.actions)
    main = next((i for i, a in enumerate(actions) if a.time is not None), 0 if actions else None)
    for key, value in node:
        if main is None or not isinstance(value, Scalar | Listing):
            continue
        if key.value in ("minutes", "time") and isinstance(value, Scalar):
            text = value.value if re.search(r"[^\W\d_]", value.value) else f"{value.value} minutes"
            times = find_times(text)
            if not times:
                _disagrees(reader, value.span, f"“{value.value}” is no time.")
                continue
            if actions[main].time not in (None, times[0].time):
                _disagrees(reader, value.span, "The sentence and the key beside it give two different times.")
            actions[main] = replace(actions[main], time=times[0].time, time_span=value.span)
        elif key.value == "foods":
            items = value.items if isinstance(value, Listing) else (value,)
            named = [reader.names.find(item.value) for item in items if isinstance(item, Scalar)]
            lines = tuple(dict.fromkeys(i for mentions in named for m in mentions for i in m.lines))
            reader.used.update(lines)
            said = {i for action in actions for i in action.foods}
            if said and not said & set(lines):
                _disagrees(reader, value.span, "The sentence and the key beside it name different foods.")
            actions[main] = replace(actions[main], foods=lines, everything=False)
        elif key.value == "bowl" and isinstance(value, Scalar) and value.value in ("baby", "family"):
            bowl: Bowl = "baby" if value.value == "baby" else "family"
            if step.bowl not in (None, bowl):
                _disagrees(reader, value.span, "The sentence and the key beside it speak of two different bowls.")
            actions = [replace(action, bowl=bowl) for action in actions]
            step = replace(step, bowl=bowl)
            main = main if actions else None
    return replace(step, actions=tuple(actions))


def _disagrees(reader: _Reader, span: Span, message: str) -> None:
    remedy = "Make them the same; the key is used."
    reader.findings.append(kitchen_fault("step-disagrees", reader.document, span, message, remedy))
