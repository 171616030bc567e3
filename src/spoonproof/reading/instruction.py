"""The instructions of a sentence: where each one stands, and which foods are its own.

The verb table says where a sentence gives an instruction; each instruction reaches to the next one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.model.finding import Bowl, Finding
from spoonproof.model.kitchen import Foods, Verb, VerbMatch, Verbs
from spoonproof.model.recipe import Action, FoodLine
from spoonproof.model.record import dataclass, field
from spoonproof.model.text import Document, Span
from spoonproof.reading.hidden import hidden_parts
from spoonproof.reading.measures import Measures
from spoonproof.reading.mentions import Mention, Names

_SENTENCE_END = re.compile(r"[.!?](?=[ \t\r\n]|$)|[;\n]")
_ABBREVIATION = re.compile(r"(?i)\b(?:approx|tbsp|tsp|min|mins|hr|hrs|oz|lb|ca|e\.g|i\.e|etc|no|fl)$")
_ADDING = re.compile(
    r"(?i)\b(?:adding|stirring in|mixing in|tipping in|throwing in|putting in"
    r"|(?<=, )[a-z]{3,12}ing(?= (?:the|your|both|all)\b[^.;,]{1,40}? (?:in|into|through)\b)"  # "slipping the pears in"
    r"|goes? (?:in|into|on|onto)|in for the (?:last|final)"
    r"|(?:with|and)(?=[ \t](?:the|your)[ \t][\w-]{2,20}(?:[ \t][\w-]{2,20})?[ \t]for the (?:last|final)\b))\b"
)
_USE_TO = re.compile(r"(?i)\b(?:use|using)[ \t]{1,9}(?:an?|the|your)[ \t]{1,9}[^,.;]{1,40}?[ \t]to[ \t]{1,9}")
_TESTERS = ("knife", "skewer", "fork", "point", "tip")  # "until a knife goes in"
_NOT_ADDING = (*_TESTERS, "before", "after", "without", "of", "than", "by", "when", "while", "keep")
UNTIL = re.compile(r"(?i)\b(?:until|till|til)[ \t]{1,9}")
UNTIL_END = re.compile(
    r"[;!?(]|[.](?=[ \t]|$)|,[ \t]{0,9}(?:then|and then|about|for|turning|stirring|adding|shaking|with|leaving)\b"
    r"|\band then\b|,[ \t]{0,9}(?=[0-9])"
)
_ADJECTIVE = re.compile(
    r"(?i)\b(?:serve|eat|feed|enjoy|offer|keep|keeps|kept|stay|stays|still|while|lukewarm|is|are|be)"
    r"(?:[ \t]{1,9}(?:it|them))?(?:[ \t]{1,9}[\w-]{2,12}[ \t]{1,9}(?:and|but|or))?[ \t]{1,9}$",  # "nice and warm"
    re.I,
)
_NOUN_BEFORE = re.compile(
    r"(?i)\b(?:the|your|each|this|that|of|on|onto|over|to|with|a|hot|cold|buttered|wholemeal|fingers of|french"
    r"|(?:the|with|over|on|of)[ \t]{1,9}[\w-]+[ \t]{1,9}(?:and|or))[ \t]{1,9}$"
)
_OF_A_FOOD = re.compile(r"(?i)\b(?:the|of|your)[ \t]{1,9}(?:(?!and\b)[\w-]{2,20}[ \t]{1,9})?$")  # "the fruit purée"
_ENDS_A_LIST = re.compile(r"(?i)^(?=[^.;:]{0,100}$)[^.;:]{0,90}\w(?:,|,? and)[ \t]{1,9}(?:the[ \t]{1,9})?$")
_DONE_TO = re.compile(
    r"(?i)[ \t]+(?:(?:in|with) (?:an?|the|your) (?:[a-z]{4,6} )?(?:blender|processor|liquidiser)"
    r"|it|them|this|these|those|the|your|everything|all|both|half)\b"
)
_IN_THE_OVEN = re.compile(
    r"(?i)\b(?:in|inside) (?:an?|the|your) (?:very )?(?:(?:pre-?heated|hot|warm|cool|slow|moderate|low) )?oven\b"
)
_MOVED_ON = re.compile(r"(?i)\b(?:before|then|and) (?:put|popp?|transferr?|mov|return|plac)(?:ing|e|s)?\b")
_INTO_THE_OVEN = re.compile(
    r"(?i)\bbefore (?:putting|popping|transferring|moving|returning|placing) [^.;,]{0,30}?oven\b"
)
_MANY = r"(?:[0-9]{1,2}(?: ?(?:-|–|to|or) ?[0-9]{1,2})?|one|two|three|four|five|six|a (?:few|couple of))"
_WHISTLES = re.compile(rf"(?i)\b{_MANY} whistles?\b|\bwhistles? (?:{_MANY} times|once|twice)\b")
_CLAUSE_ENDS = re.compile(r"[.;!]")
_ON_A_RING = ("cook", "simmer", "stew", "braise")
_STIRRED = ("mix", "whisk")
_OVER_HEAT = re.compile(r"(?i)\b(?:over|on) (?:an? |the )?(?:[a-z-]{3,9} (?:to |or )?){0,3}(?:heat|flame)\b")
_SLOW = re.compile(  # a slow cooker is set to low or high, and for hours
    r"(?i)\bon (?:the )?(?:low|high|auto)(?: setting)?,? (?:for |about |around ){0,2}[0-9½¼¾]{1,2}"
    r"(?:[- –]?(?:[0-9½¼¾]{1,2}|to [0-9]{1,2}))?"
    r"[ \t]?(?:hours?|hrs?|h)\b|\b(?:in|inside) (?:an?|the|your) (?:pre-?heated )?slow[- ]cooker\b"
)
_LEAD_CLAUSE = re.compile(r"(?i)\b(?:when|once|while|whilst|if|as soon as|after|before|as|unless|during)\b")
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


def find_instructions(tables: Tables, text: str, listed: str) -> list[Instruction]:
    """The verbs of the sentence, each with the stretch of text that is its own; ``listed``: its foods' names."""
    said = tables.verbs.find(text)
    matches = [m for m in said if not _describes(tables, text, m, said, listed)]
    for use in _USE_TO.finditer(text):
        tail = tables.verbs.find(text[use.end() : use.end() + 40])[:1]
        matches += [VerbMatch(m.start + use.end(), m.end + use.end(), m.verb) for m in tail if m.start == 0]
    named = tables.foods.find(text)
    # "stir in the tomato purée": the end of a food's name is no instruction
    matches = [m for m in dict.fromkeys(matches) if not any(f.start < m.start and m.end <= f.end for f in named)]
    matches += _adding(tables.verbs, text, matches)
    matches += _whistles(text, matches)
    matches += [VerbMatch(into.start(), into.end(), "bake") for into in _INTO_THE_OVEN.finditer(text)]
    matches.sort(key=lambda match: match.start)
    ends = _sentence_ends(text)
    drafts: list[Instruction] = []
    for at, match in enumerate(matches):
        following = matches[at + 1].start if at + 1 < len(matches) else len(text)
        stop = min([following, *(end for end in ends if end >= match.end)], default=len(text))
        last = drafts[-1].end if drafts else 0
        before = max([last, *(end for end in ends if end <= match.start)])
        if match.verb in _ON_A_RING and _in_the_oven(text[match.start : stop]):
            match = match._replace(verb="bake")
        if match.verb in _ON_A_RING and _WHISTLES.search(text, match.start, stop):
            match = match._replace(verb="pressure-cook")  # "cook for 3 whistles"
        if match.verb in _ON_A_RING and _SLOW.search(text, match.start, stop):
            match = match._replace(verb="slow-cook")
        if match.verb in _STIRRED and _OVER_HEAT.search(text, match.start, stop):
            match = match._replace(verb="cook")  # "stir over a low heat until thick"
        try:
            verb = tables.verbs.get(match.verb)
        except KeyError:
            continue
        drafts.append(Instruction(match, verb, match.start, stop, before, Action(match.verb, Span(0, 0))))
    return drafts


def _whistles(text: str, matches: Sequence[VerbMatch]) -> list[VerbMatch]:
    """ "Give the cooker 4 whistles": a pressure cooker at work, where no verb of the same clause says so."""
    found = []
    for said in _WHISTLES.finditer(text):
        before = [one for one in matches if one.end <= said.start() and one.verb in (*_ON_A_RING, "pressure-cook")]
        if not before or _CLAUSE_ENDS.search(text, before[-1].end, said.start()):
            found.append(VerbMatch(said.start(), said.end(), "pressure-cook"))
    return found


def _in_the_oven(own: str) -> bool:
    """ "Cook in a preheated oven for 20 minutes": the oven does it, whatever the verb."""
    oven = _IN_THE_OVEN.search(own)
    return oven is not None and _MOVED_ON.search(own, 0, oven.start()) is None


_TEST_GOES_ON = re.compile(r"(?i)\b(?:until|till|when|once)\b[^.;]{0,80}\b(?:and|or)[ \t]+$")
_TEST_AHEAD = re.compile(r"(?i)\b(?:until|till|when|once|can|to|if)\b[^.;,]{0,60}$")
_BETWEEN = re.compile(r"(?i)(?:[ \t]+(?:easily|flat|right down))?[ \t]+(?:between|against)\b")


def _names_a_food(tables: Tables, text: str, match: VerbMatch, others: Sequence[VerbMatch], listed: str) -> bool:
    """ "Add the lentils, purée and tomatoes", "fry the onion and mince": a food of the list, the last of those that a
    verb before it acts on. "Add the milk and purée", where no line is called so, is an instruction."""
    word = text[match.start : match.end].lower()
    if _DONE_TO.match(text, match.end):
        return False
    before = [one for one in others if one.end <= match.start]
    if word != "mince" and _OF_A_FOOD.search(text[: match.start]):
        return not any(one.end + 5 > match.start for one in before)
    if not before:
        return False
    between = text[before[-1].end : match.start]
    in_the_list = word.replace("é", "e") in listed.lower().replace("é", "e")
    if not in_the_list and ("," not in between or word == "mince"):
        return False
    role = tables.verbs.get(before[-1].verb).role
    return (role == "join" or (role == "heat" and word == "mince")) and _ENDS_A_LIST.match(between) is not None


def _describes(tables: Tables, text: str, match: VerbMatch, others: Sequence[VerbMatch], listed: str) -> bool:
    """ "Serve it warm": no instruction to warm it."""
    word = text[match.start : match.end].lower()
    before = text[: match.start]
    if any(word in words and said.match(text, match.end) for words, said in _BY_WORDS_AFTER):
        return True
    if any(word in words and said.search(before[-reach:]) for words, said, reach in _BY_WORDS_BEFORE):
        return True
    if word.startswith("squash ") and _TEST_AHEAD.search(before):
        return True  # "until you can squash the beans"
    testing = word in ("crush", "squash", "mash", "squish") and _BETWEEN.match(text, match.end)
    if testing and _TEST_GOES_ON.search(before):
        return True  # "until the beans are soft and crush between two fingers"
    if word == "blend" and _THE_VESSEL.search(before):
        return False  # "tip into the blender, blend"
    return word in ("purée", "puree", "mince", "blend") and _names_a_food(tables, text, match, others, listed)


_BY_WORDS_AFTER = (
    (("cut",), re.compile(r"(?i)[ \t-]sides?\b")),  # "lay the halves cut side up"
    (("skin",), re.compile(r"(?i)[ \t-](?:sides?|on|off)\b")),  # "lay the salmon skin side down"
    (("lid",), re.compile(r"(?i)[ \t]{1,9}(?:firmly |tightly |half )?(?:on|off)\b")),  # "cook in the water, lid on"
    (  # "add the swede, brown sauce and water"
        ("brown",),
        re.compile(r"(?i)[ \t]{1,9}(?:sauce|rice|sugar|bread|toast|flour|lentils?|basmati|crab|shrimps?)\b"),
    ),
)
_BY_WORDS_BEFORE = (
    (
        ("cube", "cubes"),
        re.compile(r"(?i)\b(?:ice|stock|bouillon)[ -]$|\b(?:the|an?|each|every|one|your)(?: \w{2,20})? $"),
        40,
    ),
    (
        ("bake",),
        re.compile(r"(?i)\b(?:the|your|this|of|over)(?:[ \t](?!(?:and|then|or)\b)[\w-]{3,20}){1,2}[ \t]$"),
        48,
    ),  # "over the oat bake"
    (("toast",), _NOUN_BEFORE, 24),
    (("warm", "cool"), _ADJECTIVE, 32),
)
"""Words that are verbs elsewhere, what stands beside them where they are none, and how far before them."""
_THE_VESSEL = re.compile(r"(?i)\b(?:blender|processor|liquidiser|pan|pot|bowl|jug|heat)[ \t]{1,9}$")
_SAME_CLAUSE = re.compile(r"[^.;,]*\Z")


def _adding(verbs: Verbs, text: str, matches: Sequence[VerbMatch]) -> list[VerbMatch]:
    """ "Steam the parsnip for 16 minutes, adding the pear for the last 4": an instruction to add."""
    add = next(iter(verbs.find("Add it.")), None)
    words = list(_ADDING.finditer(text)) if add is not None else []
    hidden = hidden_parts(text) if words else []
    found: list[VerbMatch] = []
    for word in words:
        assert add is not None  # nothing is looked for without it
        ahead = text[max(0, word.start() - 12) : word.start()].rstrip().lower()
        taken = any(m.start < word.end() and word.start() < m.end for m in matches)
        taken = taken or (
            bool(found)
            and word[0].lower().startswith("in for")
            and _SAME_CLAUSE.match(text[found[-1].end : word.start()]) is not None
        )
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
    start, end = until_span(text, own)
    return start <= mention.start < end


def _sentence_ends(text: str) -> list[int]:
    """Where the sentences end; a point behind "tbsp" ends one only at the end of all."""
    ends: list[int] = []
    for found in _SENTENCE_END.finditer(text):
        short = found[0] == "." and _ABBREVIATION.search(text[max(0, found.start() - 8) : found.start()])
        if not short or found.end() == len(text):
            ends.append(found.end())
    return ends


def give_mentions(tables: Tables, drafts: list[Instruction], mentions: list[Mention], text: str) -> list[Instruction]:
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


def until_span(text: str, draft: Instruction) -> tuple[int, int]:
    """Where the end point of an instruction stands: foods there are tested, not used."""
    until = UNTIL.search(text, draft.match.end, draft.end)
    if until is None:
        return draft.end, draft.end
    end = UNTIL_END.search(text, until.end(), draft.end)
    return until.start(), end.start() if end else draft.end


def is_water(tables: Tables, food: str) -> bool:
    record = tables.foods.get(food)
    return food == "water" or (record is not None and record.parent == "water")


@dataclass(slots=True)
class StepReader:
    """What is carried from step to step."""

    document: Document
    lines: Sequence[FoodLine]
    tables: Tables
    names: Names
    findings: list[Finding] = field(default_factory=list)
    used: set[int] = field(default_factory=set)
    pair: tuple[int, ...] = ()  # the two lines that the last step with two names
    excused: set[int] = field(default_factory=set)  # not used by name, and yet not to be asked for
    split: bool = False
    cooked: bool = False  # whether anything was heated so far
    lifts_later: bool = False  # whether this step or a later one lifts out the baby's portion
    shared_out: bool = False  # whether the baby's share was taken without that
    oven: bool = False  # whether any step of the method speaks of one
    turn: Bowl | None = None  # whose bowl the words before in this step were about
    last_foods: tuple[int, ...] = ()  # what "it" and "them" mean; none: all that is in the pot
    unlisted: dict[str, list[tuple[Span, str]]] = field(default_factory=dict)  # where each stands, in what words
    shared: set[str] = field(default_factory=set)  # unlisted foods that are not the family's bowl's alone
    asked: set[tuple[int, ...]] = field(default_factory=set)
    title: str = ""
    made: set[str] = field(default_factory=set)  # foods that the steps make
    pieces: set[tuple[str, int]] = field(default_factory=set)  # pieces that the steps cut: "slice" of which line
    later: set[int] = field(default_factory=set)  # lines of a head that may be made here, named in full further on
    to_come: set[int] = field(default_factory=set)  # lines that some later step names
    not_in_yet: set[int] = field(default_factory=set)  # lines that a later step puts in by their name in full
    apart: frozenset[int] = frozenset()  # the grown-ups' lines, till the baby's portion is out
    held: set[int] = field(default_factory=set)  # what "everything but ..." left out
