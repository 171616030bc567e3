"""What one instruction of a sentence says: its foods, time, end point, lid, water and cuts.

The verb table says where a sentence gives an instruction; each instruction reaches to the next one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.model.kitchen import Foods, Verb, VerbMatch, Verbs
from spoonproof.model.recipe import Action
from spoonproof.model.record import dataclass, field
from spoonproof.model.text import Passage, Span
from spoonproof.reading.amount import amount_at
from spoonproof.reading.measures import Measures
from spoonproof.reading.mentions import Mention, hidden_parts
from spoonproof.reading.step_cuts import cuts_of
from spoonproof.reading.times import FoundHeat, FoundTime, find_heat, lid

_SENTENCE_END = re.compile(r"[.!?](?=[ \t\r\n]|$)|[;\n]")
_ABBREVIATION = re.compile(r"\b(?:approx|tbsp|tsp|min|mins|hr|hrs|oz|lb|ca|e\.g|i\.e|etc|no|fl)$", re.I)
_ADDING = re.compile(
    r"\b(?:adding|stirring in|mixing in|tipping in|throwing in|putting in|goes? (?:in|into|on|onto))\b", re.I
)
_USE_TO = re.compile(r"\b(?:use|using)[ \t]{1,9}(?:an?|the|your)[ \t]{1,9}[^,.;]{1,40}?[ \t]to[ \t]{1,9}", re.I)
_INDIRECT = re.compile(r"\b(?:with|in|into|to|over|under|from|for|on|until)\b", re.I)
_TESTERS = ("knife", "skewer", "fork", "point", "tip")  # "until a knife goes in"
_NOT_ADDING = (*_TESTERS, "before", "after", "without", "of", "than", "by", "when", "while", "keep")
_UNTIL = re.compile(r"\b(?:until|till|til)[ \t]{1,9}", re.I)
_UNTIL_END = re.compile(
    r"[;!?(]|[.](?=[ \t]|$)|,[ \t]{0,9}(?:then|and then|about|for|turning|stirring|adding|shaking|with|leaving|about)\b"
    r"|\band then\b|,[ \t]{0,9}(?=[0-9])"
)
SQUASH = re.compile(
    r"(?:squash|squish|crush|mash|smush|squeeze|press|flatten|collapse|break|fall|give)\w*\b[^.;]{0,50}?"
    r"\b(?:between|finger|fingers|thumb|tongue|roof of (?:the|your) mouth|gums|with (?:a |the (?:back"
    r"|side) of a )?(?:fork|spoon)|against the)"
    r"|\bsquash(?:es|ed)? (?:easily|flat|with no effort|without effort)|\bsquash test|\bsquish(?:es|y)? (?:easily"
    r"|between)|\b(?:break|crush|squash|flatten|give)(?:s|es)?(?: up| apart| way)?(?: easily)? (?:when|if|as)"
    r"(?: it is| they are| you)? (?:gently )?press(?:ed)?\b|\b(?:pull|come)s? apart\b",
    re.I,
)
_ALL = re.compile(
    r"\b(?:everything|it all|all of it|them all|all of them|all together|the lot|the (?:whole )?mixture|the contents"
    r"|the mash|the pur[ée]e|the stew"
    r"|the soup|the sauce|the porridge|the batter|the mix|all (?:of )?the (?:ingredients|foods?)"
    r"|the ingredients)\b",
    re.I,
)
REMAINING = re.compile(
    r"\b(?:the )?(?:remaining|rest of the|other) (?:ingredients|foods|things)\b|\beverything else\b", re.I
)
_THEM = re.compile(r"\b(?:them|it|both|these|those|each one|the pieces)\b", re.I)
_ADJECTIVE = re.compile(
    r"\b(?:serve|eat|feed|enjoy|offer|keep|keeps|kept|stay|stays|still|while|lukewarm|is|are|be)"
    r"(?:[ \t]{1,9}(?:it|them))?(?:[ \t]{1,9}[\w-]{2,12}[ \t]{1,9}(?:and|but|or))?[ \t]{1,9}$",  # "nice and warm"
    re.I,
)
_NOUN_BEFORE = re.compile(
    r"\b(?:the|your|each|this|that|of|on|onto|over|to|with|a|hot|cold|buttered|wholemeal|fingers of|french"
    r"|(?:the|with|over|on|of)[ \t]{1,9}[\w-]+[ \t]{1,9}(?:and|or))[ \t]{1,9}$",
    re.I,
)
_NOUN_IN_LIST = re.compile(  # "add the lentils, purée and tomatoes"
    r"\b(?:the|of|your)[ \t]{1,9}(?:(?!and\b)[\w-]{2,20}[ \t]{1,9})?$"
    r"|\b(?:add|stir|tip|mix|pour|put|with)\b[^.;]{0,80}(?:,|\band)[ \t]{1,9}$",
    re.I,
)
_BESIDE_MINCE = re.compile(r"\b(?:the|your)[ \t]{1,9}[\w-]{2,20}[ \t]{1,9}and[ \t]{1,9}$", re.I)
_GOES_ON_HEATED = re.compile(r"[ \t]{1,9}(?:until|till|for|over)\b", re.I)
_EQUIPMENT = re.compile(
    r"[ \t]{0,9}(?:up[ \t]{1,9})?(?:(?:the|your)[ \t]{1,9}(?:\w+[ \t]{1,9}){0,2}?"
    r"(?:oven|grill|griddle|steamer|kettle|microwave"
    r"|air fryer|frying pan|barbecue)"
    r"|an?[ \t]{1,9}(?:[\w-]+[ \t]{1,9}){0,3}?"
    r"(?:oven|pan|saucepan|skillet|wok|griddle|steamer|pot|casserole|dish|tin|tray"
    r"|kettle))\b",
    re.I,
)
_LEAD_CLAUSE = re.compile(r"\b(?:when|once|while|whilst|if|as soon as|after|before|as|unless)\b", re.I)
_LIQUID = re.compile(
    r"\b(?:in|with|add|into|under|splash of|little|some|covered? (?:in|with))\b[^.;]{0,40}?\b(?:water|stock|broth"
    r"|liquid|milk|juice)\b",
    re.I,
)
_WATER = re.compile(r"[ \t]{1,9}(?:of[ \t]{1,9})?(?:the[ \t]{1,9})?(?:[a-z-]+[ \t]{1,9}){0,3}?water\b", re.I)
_JOINT_AT_END = re.compile(r"\b(?:and|then)\Z")
_OBJECT = re.compile(r"\b(?!(?:and|then|well|it)\b)[^\W\d_]{3,}", re.I)
_WITH_FIRST = re.compile(r"[ \t]{1,9}(?:(?:up|together|well|gently)[ \t]{1,9})?with\b", re.I)
_IN_FIRST = re.compile(
    r"[ \t]{1,9}(?:(?:gently|quickly|lightly)[ \t]{1,9})?in[ \t]{1,9}(?:the|a little|some|hot)\b", re.I
)
_MASHED_IN = re.compile(
    r"[ \t]{1,9}(?:(?:it|them|this|the \w+)[ \t]{1,9})?(?:in|into)\b(?![ \t]{1,9}(?:a|an|your)\b)", re.I
)
_WHOLE_POT = ("drain", "mix", "strain", "shape")
GRAVE = frozenset(("honey", "salt", "salty", "added-salt", "free-sugar", "nut-whole", "alcohol"))


@dataclass(frozen=True, slots=True)
class Tables:
    """What the method is read with."""

    foods: Foods
    verbs: Verbs
    measures: Measures


@dataclass(slots=True)
class Instruction:
    """One instruction while it is read; offsets are into the sentence's text."""

    match: VerbMatch
    verb: Verb
    start: int
    end: int  # of its own words
    lead: int  # from where words before it count as its own
    action: Action
    mentions: list[Mention] = field(default_factory=list)


def find_instructions(tables: Tables, text: str) -> list[Instruction]:
    """The verbs of the sentence, each with the stretch of text that is its own."""
    matches = [m for m in tables.verbs.find(text) if not _describes(text, m)]
    for use in _USE_TO.finditer(text):
        tail = tables.verbs.find(text[use.end() : use.end() + 40])[:1]
        matches += [VerbMatch(m.start + use.end(), m.end + use.end(), m.verb) for m in tail if m.start == 0]
    named = tables.foods.find(text)
    # "stir in the tomato purée": the end of a food's name is no instruction
    matches = [m for m in dict.fromkeys(matches) if not any(f.start < m.start and m.end <= f.end for f in named)]
    matches += _adding(tables.verbs, text, matches)
    matches.sort(key=lambda match: match.start)
    ends = _sentence_ends(text)
    drafts: list[Instruction] = []
    for at, match in enumerate(matches):
        following = matches[at + 1].start if at + 1 < len(matches) else len(text)
        stop = min([following, *(end for end in ends if end >= match.end)], default=len(text))
        last = drafts[-1].end if drafts else 0
        before = max([last, *(end for end in ends if end <= match.start)])
        try:
            verb = tables.verbs.get(match.verb)
        except KeyError:
            continue
        drafts.append(Instruction(match, verb, match.start, stop, before, Action(match.verb, Span(0, 0))))
    return drafts


_A_CUBE = re.compile(r"\b(?:ice|stock|bouillon)[ -]$|\b(?:the|an?|each|every|one|your)(?: \w{2,20})? $", re.I)


def _describes(text: str, match: VerbMatch) -> bool:
    """ "Serve it warm": no instruction to warm it."""
    word = text[match.start : match.end].lower()
    if word in ("cube", "cubes") and _A_CUBE.search(text[max(0, match.start - 40) : match.start]):
        return True
    if word == "toast" and _NOUN_BEFORE.search(text[max(0, match.start - 24) : match.start]):
        return True
    if word in ("purée", "puree") and _NOUN_IN_LIST.search(text[: match.start]):
        return True
    if word == "mince" and _GOES_ON_HEATED.match(text, match.end):  # "fry the bacon and mince until no pink remains"
        return _BESIDE_MINCE.search(text[max(0, match.start - 50) : match.start]) is not None
    return word in ("warm", "cool") and _ADJECTIVE.search(text[max(0, match.start - 32) : match.start]) is not None


def _adding(verbs: Verbs, text: str, matches: Sequence[VerbMatch]) -> list[VerbMatch]:
    """ "Steam the parsnip for 16 minutes, adding the pear for the last 4": an instruction to add."""
    add = next(iter(verbs.find("Add it.")), None)
    hidden = hidden_parts(text)
    found: list[VerbMatch] = []
    for word in _ADDING.finditer(text) if add is not None else ():
        assert add is not None  # nothing is looked for without it
        ahead = text[max(0, word.start() - 12) : word.start()].rstrip().lower()
        taken = any(m.start < word.end() and word.start() < m.end for m in matches)
        if not taken and not ahead.endswith(_NOT_ADDING) and not any(a <= word.start() < b for a, b in hidden):
            found.append(VerbMatch(word.start(), word.end(), add.verb))
    return found


def in_until(tables: Tables, text: str, mention: Mention, drafts: Sequence[Instruction]) -> bool:
    """Whether a food of no line only stands in an end point ("until it stops dripping"); honey counts anywhere."""
    if not mention.food:
        return False
    record = tables.foods.get(mention.food)
    if record is not None and record.traits & GRAVE:
        return False
    own = next((d for d in drafts if d.start <= mention.start < d.end), None)
    if own is None:
        return False
    start, end = _until_span(text, own)
    return start <= mention.start < end


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


def give_mentions(
    tables: Tables, drafts: list[Instruction], mentions: Sequence[Mention], text: str
) -> list[Instruction]:
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
            add = next(iter(tables.verbs.find("Add it.")), None)
            if add is not None:
                match = VerbMatch(mention.start, mention.end, add.verb)
                verb = tables.verbs.get(add.verb)
                own = Instruction(match, verb, mention.start, len(text), 0, Action(add.verb, Span(0, 0)))
                drafts = [*drafts, own]
        if own is not None and mention not in own.mentions:
            own.mentions.append(mention)
    return drafts


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
    lead = text[draft.lead : draft.start]
    until_at = _UNTIL.search(rest)
    objects = rest[: until_at.start()] if until_at else rest
    hidden = _until_span(text, draft)
    foods = tuple(dict.fromkeys(i for m in draft.mentions for i in m.lines if not hidden[0] <= m.start < hidden[1]))
    unlisted = tuple(
        dict.fromkeys(
            (m.food, passage.span(m.start, m.end))
            for m in draft.mentions
            if m.food and not is_water(tables, m.food) and not _only_before(text, draft, m)
        )
    )
    goes = own[:2].lower() == "go"
    # "mash it in with the butter", "mash the peas into the potatoes": the whole pot is mashed
    mashed_in = draft.verb.role == "blend" and _MASHED_IN.match(rest) is not None
    everything = _ALL.search(lead if goes else objects) is not None or (
        not foods and REMAINING.search(objects) is not None
    )
    if not everything and _THEM.search(text[draft.match.end : _first(draft, draft.match.end + len(objects))]):
        everything = not last
        foods = tuple(dict.fromkeys((*last, *foods)))
    everything = everything or mashed_in
    heated_in = draft.verb.role == "heat" and _IN_FIRST.match(rest) is not None  # "brown in the oil"
    if heated_in or (draft.verb.role in ("blend", "join", "heat") and _WITH_FIRST.match(rest)):
        if foods and last:
            foods = tuple(dict.fromkeys((*last, *foods)))  # "flake the fish and blend with the cheese"
        elif draft.verb.role == "heat":
            everything = True  # "stew with the water": what is in the pot
    if not foods and not everything and draft.verb.role == "cut" and not _OBJECT.search(objects):
        foods = last
    heating = draft.verb.role in ("heat", "blend", "soak", "chill", "cool", "serve") or draft.verb.id in _WHOLE_POT
    if heating and not foods and not _other_object(text, draft) and not _EQUIPMENT.match(rest):
        everything = True
    said = lid(text[draft.lead : draft.end] if not draft.lead else own + lead)
    lid_now = said if said is not None else lid_now
    time = _time_of(draft, times)
    heat = [
        found
        for found in find_heat(text[draft.lead : draft.end], tables.measures)
        if not hidden[0] <= draft.lead + found.start < hidden[1]  # "until a thermometer reads 74 °C"
    ]
    until = _until(rest)
    water = _water_ml(objects, tables.measures)
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
        heat_c=_oven(heat),
        covered=lid_now if draft.verb.role in ("heat", "soak") or said is not None else None,
        water_ml=water,
        cuts=cuts_of(passage, (draft.start, draft.end), draft.verb, tables.measures),
        with_liquid=water is not None or _LIQUID.search(own) is not None,
        unlisted=unlisted,
        last=bool(time and time.last),
        after=time.time if time and time.after else None,
    )
    return action, lid_now


def _other_object(text: str, draft: Instruction) -> bool:
    """Whether what the verb acts on is a food of no line or water: "bring 3 cm of water to the boil"."""
    after = [m for m in draft.mentions if m.start >= draft.match.end]
    first = min(after, key=lambda m: m.start, default=None)
    return first is not None and bool(first.food) and not _INDIRECT.search(text[draft.match.end : first.start])


def _first(draft: Instruction, end: int) -> int:
    """Where the first food after the verb starts; ``end`` when none does."""
    return min((m.start for m in draft.mentions if draft.match.end <= m.start < end), default=end)


def _until_span(text: str, draft: Instruction) -> tuple[int, int]:
    """Where the end point of an instruction stands: foods there are tested, not used."""
    until = _UNTIL.search(text, draft.match.end, draft.end)
    if until is None:
        return draft.end, draft.end
    end = _UNTIL_END.search(text, until.end(), draft.end)
    return until.start(), end.start() if end else draft.end


def _time_of(draft: Instruction, times: Sequence[FoundTime]) -> FoundTime | None:
    inside = [t for t in times if draft.start <= t.start < draft.end]
    if inside:
        return inside[0]
    ahead = [t for t in times if draft.lead <= t.start < draft.start]
    return ahead[-1] if ahead else None


def _oven(found: Sequence[FoundHeat]) -> float | None:
    plain = [heat for heat in found if not heat.fan] or list(found)
    return plain[0].celsius if plain else None


def _until(rest: str) -> str:
    match = _UNTIL.search(rest)
    if match is None:
        return ""
    end = _UNTIL_END.search(rest, match.end())
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


def is_water(tables: Tables, food: str) -> bool:
    record = tables.foods.get(food)
    return food == "water" or (record is not None and record.parent == "water")
