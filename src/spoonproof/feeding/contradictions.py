"""Sentences that take a caution back: coaxing, leaving a baby alone, food left standing, no doctor needed."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple, cast

from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import Found, Word, words
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.record import dataclass
from spoonproof.model.remembered import Remembered
from spoonproof.model.text import Passage, Span

_LEVELS: dict[str, Level] = {"error": "error", "warning": "warning", "note": "note"}
_END = re.compile(r"[.!?;:]")
# Words before the phrase in its clause that turn it round: "do not coax her to finish the bowl".
_TURNED = frozenset(
    """not never dont no without nobody avoid stop rather nor needn neednt shouldnt isnt arent wont myth wrong
    cannot pharmacist""".split()
)

# "If he will not open his mouth, ...": that denies the condition, not the advice.
_CONDITION_DENIED = re.compile(r"\b(?:if|when)\b[^,.;:]{0,20}?\b(?:not|\w+n['’]t|never)\b", re.I)


@dataclass(frozen=True, slots=True)
class Contradiction:
    """One statement against a caution: ``caution`` is its id, ``start`` and ``end`` its words in the passage."""

    caution: str
    level: Level
    why: str
    remedy: str
    start: int
    end: int
    source: SourceRef
    passage: Passage

    @property
    def span(self) -> Span:
        """The words in the passage's document."""
        return self.passage.span(self.start, self.end)

    @property
    def message(self) -> str:
        """The words, and what is wrong with them."""
        return f"“{self.passage.text[self.start : self.end]}”: {self.why}"


def contradictions(passages: Iterable[Passage], tables: FeedingTables) -> list[Contradiction]:
    """Every statement of ``passages`` that contradicts a caution; those marked ``leave`` and those turned
    round in their own clause ("never leave her alone") are none."""
    rows = tables.by_id("contradictions")
    patterns = _patterns(tables)
    found: list[Contradiction] = []
    for passage in passages:
        if passage.leave is not None or passage.kind == "shows":
            continue
        for hit in patterns.find(passage.text):
            holds = _HOLDS_WHERE.get(hit.value)
            if _turned(passage.text, hit.start) or (holds is not None and not holds(_sentence(passage.text, hit))):
                continue
            row = rows[hit.value]
            found.append(
                Contradiction(
                    row.text("caution"),
                    _LEVELS.get(row.text("level"), "warning"),
                    row.text("message"),
                    row.text("remedy"),
                    hit.start,
                    hit.end,
                    tables.source(row),
                    passage,
                )
            )
    return found


def _patterns(tables: FeedingTables) -> _Patterns:
    """The phrases of the table, spelled out once."""
    if "contradictions" not in tables.spelled_out:
        rows = tables.by_id("contradictions")
        tables.spelled_out["contradictions"] = _Patterns({key: row.items("phrases") for key, row in rows.items()})
    return cast("_Patterns", tables.spelled_out["contradictions"])


_CLASSES = {
    "EATS": "eat/eats/eating/ate/eaten/nibble/nibbles/nibbling/nibbled/munch/munches/munching/munched/chew/chews"
    "/chewing/chewed/gnaw/gnaws/gnawing/gnawed/gum/gums/gumming/gummed/suck/sucks/sucking/sucked/feed/feeds/feeding/fed/snack"
    "/snacks/snacking/snacked/graze/grazes/grazing/grazed/swallow/swallows/swallowed",
    "DRINKS": "drink/drinks/drinking/drank/sip/sips/sipping/sipped/slurp/slurps/slurping/slurped/suck/sucks/sucking",
    "LYING": "lying_back/lying_down/lying_flat/flat_on/laid_back/laid_flat/leaning_back/lies_back/tipped_back"
    "/tilted_back/reclining/reclined/slumped/half_lying/on_his_back/on_her_back/on_their_backs",
    "SLEEPY": "half_asleep/nodding_off/dozing/falling_asleep/drifting_off",
    "MOVING": "walking/crawling/running/toddling/bouncing/jumping/climbing/cruising/wandering/dancing/racing/scooting"
    "/tearing/charging",
    "BEDS": "cot/crib/pram/buggy/pushchair/stroller/car_seat/bouncer/bouncy_chair/sling/carrier/moses_basket",
    "FINISHES": "eat/eats/eating/ate/finish/finishes/finished/finishing/demolish/demolishes/demolished/polish_off"
    "/polishes_off/polished_off/munch/munches/munching/munched/scoff/scoffs/scoffed/devour/devours/devoured",
    "MEALS": "breakfast/lunch/supper/dinner/snack/snacks/toast/sandwich/sandwiches/finger_food",
    "WANDERS": "wander/wanders/wandering/wandered/roam/roams/roaming/roamed/run/runs/running/ran/crawl/crawls/crawling"
    "/crawled/toddle/toddles/toddling/toddled/potter/potters/pottering/pottered/cruise/cruises/cruising/walk/walks"
    "/walking/walked/climb/climbs/climbing/climbed/charge/charges/charging/charged",
    "STANDS": "sit/sits/sitting/sat/stand/stands/standing/stood/stay/stays/staying/stayed/leave/leaves/leaving/left"
    "/live/lives/lived/keep/keeps/keeping/kept/cool/cools/cooling/cooled/wait/waits/waiting/waited/rest/rests/rested"
    "/spend/spends/spent/goes/go/travels",
    "WARM": "on_the_hob/on_the_stove/on_the_counter/on_the_worktop/on_the_side/on_the_table/on_the_windowsill"
    "/on_the_sill/on_the_radiator/on_the_range/on_the_sideboard/on_the_bench/in_the_pan/in_the_pot/in_the_saucepan"
    "/in_the_steamer/in_the_rice_cooker/in_the_oven/in_the_changing_bag/in_the_nappy_bag/in_my_bag/in_my_handbag"
    "/in_the_rucksack/in_the_car/in_the_bag/in_foil/in_the_foil/in_the_basket/in_the_hamper/in_the_boot/in_their_foil"
    "/at_room_temperature/out_of_the_fridge/by_the_kettle/by_the_stove/by_the_hob"
    "/under_a_cloth/under_a_plate/under_a_lid/under_a_tea_towel",
    "LONG": "all_day/all_morning/all_afternoon/all_evening/all_night/overnight/for_hours/half_the_day/the_whole_day"
    "/the_whole_morning/the_whole_afternoon/a_good_few_hours/for_the_day"
    + "".join(
        f"/{bound}_{until}"
        for bound in ("till", "until")
        for until in "lunch lunchtime tea teatime supper dinner dinnertime bedtime evening the_evening tonight morning"
        " the_morning tomorrow the_afternoon nap_time naptime".split()
    ),
    "WARMS": "microwave/microwaves/microwaved/microwaving/zap/zaps/zapped/nuke/nuked/reheat/reheats/reheated/reheating"
    "/warm/warms/warmed/heat/heats/heated/heat_up/warm_up",
    "SLEEPS": "sleep/sleeps/slept/doze/dozes/dozed/snooze/snoozes/nap/naps/nod/nods/nodded/drift/drifts/drifted"
    "/drop_off/drops_off/dropped_off",
    "SPOONS": "spoon/spoons/spooned/pop/pops/popped/slip/slips/slipped/get/gets/got/tip/tips/tipped/trickle/trickles"
    "/feed/feeds/fed/finish/finishes/finished",
    "SNACKS": "rusk/biscuit/cracker/toast/crust/breadstick/rice_cake/oatcake/sandwich/banana/apple/pear/carrot/cheese"
    "/grapes/berries/raisins/puffs/crisps/a_snack/his_snack/her_snack/finger_food/pouch",
    "GIVES": "give/gives/gave/hand/hands/handed/offer/offers/offered/pass/passes/passed/slip/slips/slipped",
    "ALLERGENS": "egg/eggs/peanut/peanuts/peanut_butter/nuts/fish/wheat/gluten/sesame/milk/dairy/shellfish",
    "LICKS": "lick/licks/licked/licking/taste/tastes/tasted/eat/eats/ate/eating/nibble/nibbles/nibbled"
    "/suck/sucks/sucked",
    "PIECES": "one/it/some/these/them/this/a_few/a_piece/a_stick/a_slice/a_bit/a_crust/a_finger",
}
"""Words any of which will do, by the name in capitals under which the table's phrases ask for them."""

_Part = tuple[tuple[tuple[str, ...], ...], ...]
"""The places of an unbroken stretch of words; each holds its alternatives, an alternative one or more folded words."""


class _Phrase(NamedTuple):
    """A phrase of the table row ``value``: the stretches between its "…", and the first words of what any text that
    holds it must hold."""

    value: str
    parts: tuple[_Part, ...]
    needed: tuple[frozenset[str], ...]


class _Patterns:
    """Phrases in which "…" stands for up to five words of the same clause ("leave … overnight"), and "/" parts words of
    which any will do ("eat/nibble … pram/car_seat")."""

    def __init__(self, entries: Mapping[str, Sequence[str]]) -> None:
        self._found: Remembered[str, list[Found]] = Remembered()
        self._by_word: dict[str, list[_Phrase]] = {}  # so that a text is gone through once
        for value, phrases in entries.items():
            for written in phrases:
                parts = tuple(_part(stretch) for stretch in written.split("…"))
                needed = tuple(frozenset(one[0] for one in place) for part in parts for place in part)
                phrase = _Phrase(value, parts, needed[1:])
                for word in needed[0]:
                    self._by_word.setdefault(word, []).append(phrase)

    def find(self, text: str) -> Sequence[Found]:
        known = self._found.get(text)
        return known if known is not None else self._found.keep(text, self._look_for(text))

    def _look_for(self, text: str) -> list[Found]:
        row = words(text)
        keys = tuple([word.key for word in row])
        said = frozenset(keys)
        found: list[Found] = []
        for at, one in enumerate(keys):
            for phrase in self._by_word.get(one, ()):
                if any(said.isdisjoint(needed) for needed in phrase.needed):
                    continue
                end = _end(text, row, keys, at, phrase.parts, 0)
                if end is not None:
                    found.append(Found(row[at].start, row[end - 1].end, phrase.value, keys[at:end]))
        kept: list[Found] = []
        for hit in sorted(found, key=lambda h: (h.start, -h.end, h.value)):
            if not any(hit.value == one.value and hit.start < one.end for one in kept):
                kept.append(hit)  # of those of one row that overlap the first tells it
        return sorted(kept, key=lambda h: (h.start, h.value))


def _part(stretch: str) -> _Part:
    places = []
    for token in stretch.split():
        options = "/".join(_CLASSES.get(one, one) for one in token.split("/")).split("/")
        read = (tuple(word.key for word in words(one.replace("_", " "))) for one in options)
        places.append(tuple(dict.fromkeys(one for one in read if one)))
    return tuple(places)


def _ends(keys: tuple[str, ...], at: int, part: _Part, place: int = 0) -> Iterator[int]:
    """Where ``part`` may end that begins at word ``at``."""
    if place == len(part):
        yield at
        return
    for one in part[place]:
        if keys[at : at + len(one)] == one:
            yield from _ends(keys, at + len(one), part, place + 1)


def _end(
    text: str, row: Sequence[Word], keys: tuple[str, ...], at: int, parts: tuple[_Part, ...], which: int
) -> int | None:
    """Where the parts from ``which`` on end, the first of them at word ``at``, each within five words of the last."""
    for end in _ends(keys, at, parts[which]):
        if which + 1 == len(parts):
            return end
        for start in range(end, min(end + 6, len(row))):
            if _END.search(text[row[end - 1].end : row[start].start]) or "never" in keys[end:start]:
                break  # "on a spoon, never in a bottle"
            last = _end(text, row, keys, start, parts, which + 1)
            if last is not None:
                return last
    return None


_FROZEN = re.compile(r"\b(?:freez|froze)", re.I)
_BABY = re.compile(r"\b(?:s?he|him|his|hers?|bab(?:y|ies)|toddlers?|little ones?)\b", re.I)
_DONE = re.compile(
    r"\b(?:cooked|through|well[- ]done|longer|back (?:in|under|on)|but (?:not )?(?:hers|his|theirs|for|the|i|we)|while"
    r"|no pink)\b",
    re.I,
)


def _not_frozen(said: str) -> bool:
    """Whether a sentence says nothing of the freezer, where a week is no long time."""
    return _FROZEN.search(said) is None


def _for_the_baby(said: str) -> bool:
    """Whether the baby too eats what a sentence likes pink: "and so does he", not "but hers goes back in"."""
    return _BABY.search(said) is not None and _DONE.search(said) is None


# What was advised once and is no longer: "they used to say keep it away till three".
_SUPERSEDED = re.compile(
    r"\bused to (?:say|think|tell|believe|advise|recommend|be told|swear)\b|\b(?:was|were|been) (?:once )?told to\b"
    r"|\bthe old (?:advice|rule|way|wisdom)\b|\byears ago\b",
    re.I,
)
_NO_DISH = re.compile(
    r"\b(?:basil|herbs?|parsley|mint|cress|plants?|seeds?|sprout\w*|dough|loaf|loaves|bread|yeast|starter"
    r"|soak\w*|ripen\w*|ripe|unripe|bananas?|avocados?|butter to soften|kettle|clock|radio|jug of water|bowl of fruit"
    r"|fruit bowl|tins?)\b",
    re.I,
)
_THROWN = re.compile(
    r"\b(?:bin|bins|compost|caddy|hens?|chickens|dogs?|cats?|birds|mine|my (?:own )?(?:mouth|plate|lunch|supper|tea)"
    r"|throw\w*|thrown)\b",
    re.I,
)
_NOT_THROWN = re.compile(
    r"\b(?:never|not|no|rather than|instead of|why|\w+n['’]t)\b[^,.;:]{0,16}\b(?:throw\w*|bin|compost)\b", re.I
)


def _of_a_dish(said: str) -> bool:
    """Whether it is food once cooked that stands there, not a herb in its pot, dough that rises or beans that soak."""
    return _NO_DISH.search(said) is None


def _not_thrown(said: str) -> bool:
    """Whether what was left is kept for the baby, not thrown away or eaten by somebody else."""
    return _THROWN.search(_NOT_THROWN.sub(" ", said)) is None


_TAKEN_BACK = re.compile(r"\b(?:never|not|no|far too|too hot|wait|cool\w*|\w+n['’]t)\b", re.I)


def _names_the_baby(said: str) -> bool:
    return _BABY.search(said) is not None


def _names_the_baby_alone(said: str) -> bool:
    """Whether the baby gets it, and nothing in the sentence takes that back."""
    return _names_the_baby(said) and _TAKEN_BACK.search(said) is None


_HOLDS_WHERE: Mapping[str, Callable[[str], bool]] = {
    "kept-long": _not_frozen,
    "left-rare": _for_the_baby,
    "left-out": _of_a_dish,
    "reheat-again": _not_thrown,
    "raw-batter": _names_the_baby_alone,
}
"""Rows whose phrases are a contradiction only in some sentences, with what is asked of the sentence."""


def _sentence(text: str, hit: Found) -> str:
    start = text.rfind(".", 0, hit.start) + 1
    end = text.find(".", hit.end)
    return text[start : end if end >= 0 else len(text)]


def _turned(text: str, start: int) -> bool:
    clause = 0
    for match in _END.finditer(text, max(0, start - 200), start):
        clause = match.end()
    if _SUPERSEDED.search(text, clause, start):
        return True
    before = _CONDITION_DENIED.sub(" ", text[max(clause, start - 200) : start])
    return any(word.key in _TURNED for word in words(before))
