"""What the author's words advise beside the recipe that endangers a baby: "let her nibble whole grapes meanwhile".

A food in a sentence counts where the words around it hand it to the baby ("give him", "a drizzle of ... on top") and
show the danger ("whole", "raw", or a food that is wrong in any form). What is turned round ("never give"), kept for
a later age or for somebody else's plate does not.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from spoonproof.feeding.named import in_everyday_sense
from spoonproof.feeding.step_words import WORD_FACTS
from spoonproof.feeding.tables import FeedingTables, HazardRow
from spoonproof.feeding.wording import sentence
from spoonproof.feeding.words import Found, keys
from spoonproof.model.finding import LEVELS, Level, Remedy, SourceRef
from spoonproof.model.record import dataclass
from spoonproof.model.text import Passage, Span

_KINDS = frozenset({"story", "step", "say", "description", "social", "note", "super", "speech"})
_SENTENCE = re.compile(r"[^.!?;\n]+(?:\.(?=\d)[^.!?;\n]*)*")
_CLAUSE_END = re.compile(r",|\bbut\b|\bwhile\b|\bthough\b|–|—|\(")

_GIVE = re.compile(
    r"\b(?:giv(?:e|es|ing|en)|gave|offer|hand|let|feed|feeds|fed|feeding|pass|slip|share|lick|suck|nibbl|gnaw|chew|munch"
    r"|crunch|sip|drink|dip|sooth|tast|snack|keeps?|eat|eats|bite|pop|put|get|gets|have|has|treat|finish|tuck|wash"
    r"|favou?rite|lov|ask|beg|rub|serv|wet|dunk|smear|fish|pinch|steal|stole|nick|grab|scoff|gobble|swallow|guzzl)\w*\b"
    r"|\bgo(?:es)? (?:on|in|into|over|to)\b|\bhelps? (?:her|him|them)sel|\bworks? through\b"
    r"|\b(?:for|on|against) (?:(?:her|his|their|sore|tender|the|those|aching|swollen) ){1,2}gums\b",
    re.I,
)
_BABY = re.compile(
    r"\b(?:bab(?:y|ies)|her|hers|herself|him|his|himself|he|she|them|they|theirs|little (?:ones?|fingers|hands|gums)"
    r"|bubs?|bubba|tots?|toddlers?|infants?|child|children|kids?|kiddos?|gums?|dummy|pacifier|teether|highchair"
    r"|high chair)\b",
    re.I,
)
_ADD = re.compile(
    r"\b(?:add|stir|swirl|drizzl|sprinkl|top|finish|sweeten|season|dust|serve|mix|thin|spread|glaz|swap|replace|crumbl"
    r"|scatter|try|use|throw|toss|pop|put|roll|squeez|loosen|lift|crumble|work|drop)\w*\b",
    re.I,
)
_A_LITTLE = re.compile(
    r"\b(?:drizzles?|spoon(?:ful)?s?|teaspoons?|tablespoons?|dash(?:es)?|splash(?:es)?|sprinkl(?:e|es|ing)|pinch(?:es)?|squeezes?"
    r"|licks?|drops?|handfuls?|bits?|dabs?|sips?|bottles?|beakers?|cups?|mugs?|thimbles?|swirls?|dollops?|scatter(?:ing)?|flakes?|grains?|shakes?|grind)"
    r" of (?:\w+ ){0,3}$",
    re.I,
)
_GO_IN = re.compile(r"\b(?:in go(?:es)?|(?:you|we|i|you['’]ll) (?:will |just |only )?need|our ingredients are)\b", re.I)
_PUT_IN = re.compile(
    r" (?:(?:is|are|gets?|goes|go|went) )?(?:\w+ly )?(?:(?:stirred|whisked|folded|mixed|beaten|drizzled|poured|added"
    r"|tipped|swirled|scattered|sprinkled|crumbled) (?:in|into|through|over|on|onto|to)|in(?:to)?|on top"
    r"|over the top)\b",
    re.I,
)
_PRAISED = re.compile(
    r"\b(?:mak(?:e|es|ing)|lifts?|helps?|works?|wonders|lovely|delicious|perfect|nice|good|great|better|best|hurts?"
    r"|long way|welcome|magic|sees? to (?:it|that)|do(?:es)? the job|gets? things|soothes?|settles?|wakes?|on top|trick"
    r"|brings?)\b",
    re.I,
)
# "wets her dummy in his stout": said of a drink, not of a stout pot
_DIPPED = re.compile(r"\b(?:dip|dunk|wet|rub|smear|dab|moisten)\w*\b[^.;]{0,40}\b(?:in|with) (?:\w+ ){0,2}$", re.I)
# "fishes out of my bowl", "grandpa slips her": whoever's plate it was, it ends in the baby's mouth
_TO_BABY = re.compile(
    r"\b(?:out of|from|off) (?:my|our|your|\w+['’]s) (?:own )?(?:bowl|plate|glass|cup|mug|spoon)\b"
    r"|\b(?:her|his|their|the|baby['’]s) (?:dummy|pacifier|soother|lips|gums|tongue|teether)\b"
    r"|\bto (?:her|him|the bab(?:y|ies))\b"
    r"|\b(?:gives?|gave|lets?|feeds?|fed|slips?|slipped|offers?|hands?|sneaks?)"
    r" (?:her|him|the bab(?:y|ies)|the little one)\b",
    re.I,
)
_BABYS_FOOD = re.compile(
    r"\b(?:her|his|their|baby['’]?s|toddler['’]?s) (?:\w+ )?(?:bowl|food|portion|plate|porridge|oats|cereal|yogh?urt"
    r"|mash|pur[ée]es?|toast|pasta|rice|soup|stew|fruit|apple|pear|banana|milk|pancakes?|egg|lunch|dinner|tea|breakfast"
    r"|supper|snack)\b",
    re.I,
)
_UNCOOKED = re.compile(
    r"\b(?:cold|chilled|frozen|icy|crisp|fridge-cold"
    r"|(?:straight|fresh) from the (?:fridge|freezer|crisper|tree|garden))\b",
    re.I,
)
_ONE_NUT = re.compile(r"\b(?:an?|one|odd|each|every)(?: \w+)? $", re.I)
_AT_TABLE = re.compile(r"\b(?:lunch ?box|picnic|snack box|party bag|on the side|alongside|tray)\b", re.I)
_OTHERS = re.compile(
    r"\b(?:ours|mine|our own|our (?:\w+ )?(?:bowls?|plates?|portions?|share|half)|yours|yourself|yourselves|myself"
    r"|my (?:\w+ )?(?:bowl|plate|portion|half)|your (?:own )?(?:bowl|plate|portion)|ourselves|adults?|grown[- ]?ups?"
    # but not "he's such a big boy now"
    r"|parents?|family|older|(?<!a )big (?:ones?|brother|sister|boy|girl|kids?|children)|elder|brothers?|sisters?"
    r"|siblings?|(?<!works )(?<!work )(?<!good )for us"
    r"|dad|daddy|mum|mummy|mom|grandpa|grandad|grandma|granny|cook|rest of us|everyone else|neighbou?rs?|dogs?|hens"
    r"|birds|school)\b(?!['’]s)"
    r"|\bmy (?!bab|little|son|daughter|girl|boy|child|kid|toddler|twin|bub|tot|smallest|youngest)\w+",  # "my nonno"
    re.I,
)
_LATER = re.compile(
    r"\b(?:from|after|past|over|once|when|until|till|before|under|at|by|wait|since|now|as)\b[^.;]{0,40}"
    r"\b(?:(?<!little )one|a year"
    r"|years?|birthday|twelve|1[2-9] months|[2-6] years|two|three|four|five|older|bigger|at school)\b",
    re.I,
)
_NOT = re.compile(
    r"\b(?:no|not|never|without|nobody|nor|avoid|stop|skip|eliminat\w*|exclud\w*|instead|than|rather|unless|myth|wrong"
    r"|wanted|wants to"
    r"|tempt\w*|told|said|says|thought|used to|might|would|forbid\w*|banned|ban|resist\w*|refus\w*|careful|cannot"
    r"|\w+n['’]t|dangerous|danger|free|(?:leav(?:e|es|ing)|left) out|keep away|out of reach|away from|in place of)\b",
    re.I,
)
_NOT_AFTER = re.compile(
    r"\b(?:never|not|none|nothing) (?:in|on|into|onto|for) (?:hers|his|theirs|the baby)\b"
    r"|^(?: (?!(?:so|because|and|while|when|if|since|as|where)\b)\w+){0,2},? (?:(?:is|are|was|were|has|have|can|must"
    r"|should|do|does)"
    r"(?:n['’]t| not| never)|never|not for"
    r"|can wait|must wait|should wait|will wait|later|stays? (?:out|off|away)|belongs? to|forbidden|banned"
    r"|off the menu|out of bounds|away|out(?! of)|stay(?:s|ed) behind|left in the (?:shaker|cupboard|jar|cellar))\b"
    r"|^ (?:is|was|are|were|has been|have been|had been|got|gets|stays?|stayed) (?:\w+ )?(?:left (?:out|behind|off)"
    r"|off (?:the|our) (?:list|menu|table)|crossed (?:off|out)|dropped|omitted|skipped|ditched|put away|gone|missing"
    r"|in the cupboard)\b"
    # but not "no risk of anything"
    r"|(?<!\bno )(?<!\bzero )(?<!\bany )(?<!\bwithout )\b(?:chok\w+|danger\w*|risk\w*|unsafe|botulism)\b",
    re.I,
)
# What a recipe does without: "I ditched the sugar". What is dropped *into* the bowl is there, and so are cut apricots.
_DONE_WITHOUT = re.compile(
    r"\b(?:ditch|omit|forgo|forwent|drop|scrap|cut|swapp|lea(?:ve|ving) off|left off)\w* (?:the |any |all |all the )?$",
    re.I,
)
_STILL_IN = re.compile(r"^\W+(?:in|into|on|onto|over|to|through|up|small|lengthways)\b", re.I)
_POURED = re.compile(r"\b(?:salt|sugar|honey|syrup)$", re.I)
_LIKE_THEM = re.compile(r"\b(?:like|same as|as well as|along with|together with) (?:all )?(?:the )?$", re.I)
_BEFORE_IT = re.compile(
    r"\bbefore (?:(?:i|you|we|she|he|they) (?:\w+ )?(?:add|stir in|put in|season|salt|pour in)(?: it)?(?: with)? "
    r"|(?:adding|stirring in|seasoning with|putting in) )?(?:the |any |your |my |our )?(?:\w+ (?:and|or) (?:the )?)?$",
    re.I,
)
_ASLEEP = re.compile(r"\b(?:once|when|after|until)\b[^.;,]{0,30}\b(?:in bed|asleep)\W{0,3}$", re.I)
_FOR_OTHERS = re.compile(r"^\s*(?:for|as for)\b[^,]*,", re.I)
_VESSEL = re.compile(r"\b(?:bottle|cup|beaker|sip|drink|glass|mug)\w*\b", re.I)
_CRUNCH = re.compile(r"\b(?:gnaw|crunch|teeth|munch|chew)\w*\b", re.I)
_WHOLE_LATER = re.compile(r"\b(?:them|it|each|one)(?: \w+){0,2} whole\b", re.I)  # "he pops them in whole"
_GUMS = re.compile(r"\b(?:gums?|teeth|teething|teether|tooth|fist)\b", re.I)
_CUT_SAID = re.compile(r"\b(?:cubes?|chunks?|lumps?|dice)\b", re.I)
_ROUNDS = re.compile(r"\b(?:slices?|rounds?|coins?|bits?|chunks?|pieces?|whole)\b", re.I)
_SPOONED = re.compile(r"\bspoon(?:ful)?s?\b|\bfinger\b", re.I)
_MEASURE = re.compile(
    r"\b(?:sips?|cups?|bottles?|beakers?|mugs?|drops?|tastes?|bit|cubes?|splash) of (?:\w+ ){0,2}$", re.I
)
_CONTAINER = re.compile(
    r"^[ -](?:trays?|moulds?|molds?|makers?|jars?|pots?|cupboard|pans?|pickers?|stall|shop)\b", re.I
)
_IN_HALVES = re.compile(r"\b(?:halve[sd]?|halving|in half|in two|in halves)\b(?! (?:length|and))", re.I)
_HANDFUL = re.compile(r"\b(?:whole|handfuls?|bunch|punnet|few)\b", re.I)

# Wrong in any form, so that naming them is enough.
_ANY_FORM = frozenset(
    """honey salt stock-cube salty-sauce sugar syrup sugary condensed-milk flavoured-milk juice rice-drink sweetener
    popcorn marshmallow jelly-cube hard-sweet chewing-gum ice-cube crisp-snack alcohol tea coffee herbal-tea fennel-tea
    raw-milk raw-milk-cheese mould-cheese raw-dish nut seed-large dried-fruit bone-in string-cheese crunchy kelp
    salty-food mercury-fish mercury-us""".split()
)  # fmt: skip
_MILKS = frozenset({"cow-milk", "animal-milk", "plant-milk"})
_MADE_SAFE = re.compile(
    r"\b(?:cook|steam|boil|bak|roast|stew|poach|soft|toast|soak|mash|blend|purée|puree|grat|ground|grind|squash|quarter"
    r"|flatten|halv|thin(?!g|k)|shred|stoned|pitted|chop|crush|smooth|powder|flour|flak|tray)\w*\b",
    re.I,
)


@dataclass(frozen=True, slots=True)
class Advised:
    """A danger that words hand to the baby: ``id`` of the hazard row, ``sentence`` and ``name`` of the food as places
    in ``passage``."""

    id: str
    level: Level
    message: str
    remedy: Remedy
    name: tuple[int, int]
    sentence: tuple[int, int]
    sources: tuple[SourceRef, ...]
    passage: Passage
    why: str  # for anybody: what is wrong with the food, and how it is safe

    @property
    def span(self) -> Span:
        """The food's name in the passage's document."""
        return self.passage.span(*self.name)


def advised(
    passages: Iterable[Passage],
    months: float,
    tables: FeedingTables,
    policies: Mapping[str, str],
    markets: Sequence[str],
    listed: Iterable[str] = (),
    *,
    by_shape: bool = False,
) -> Iterator[Advised]:
    """Every food that ``passages`` hand to a baby of ``months`` though it is a danger at that age.

    ``listed``: names of the dish's own foods, which the steps are judged for elsewhere. ``by_shape``: only what its
    shape or state makes a danger ("gnaw on raw apple"), for talk of no one dish, which names honey and juice freely.
    """
    rows = [row for row in tables.hazards if row.level != "note" and _counts(row, tables, policies, markets)]
    own = [keys(name) for name in listed]
    for passage in passages:
        if passage.leave is not None or passage.kind not in _KINDS:
            continue
        film = passage.kind == "speech" and not by_shape
        for match in _SENTENCE.finditer(passage.text):
            said = match.group()
            for hit in tables.phrases.find(said):
                if passage.kind == "step" and any(set(hit.phrase) <= name for name in own):
                    continue
                classes = _shown(tables.kinds[hit.value], said, hit)
                if by_shape:
                    classes -= _ANY_FORM | _MILKS
                if passage.kind == "speech" and hit.phrase == ("milk",):
                    classes -= _MILKS  # "then it's milk and bed": the milk she always has
                handed = _handed(said, hit, passage.kind, classes) or (film and _in_the_pot(said, hit, classes))
                if not classes or not handed or _elsewhere(said, hit):
                    continue
                held = [row for row in rows if row.holds(classes, _facts(said, hit), months)]
                if held:
                    row = min(held, key=lambda one: LEVELS.index(one.level))
                    yield _found(row, said, hit, match.start(), passage)


def _counts(row: HazardRow, tables: FeedingTables, policies: Mapping[str, str], markets: Sequence[str]) -> bool:
    chosen = row.policy is None or tables.authority(row.policy[0], policies) == row.policy[1]
    return chosen and (not row.markets or not markets or bool(set(row.markets) & set(markets)))


def _found(row: HazardRow, said: str, hit: Found, start: int, passage: Passage) -> Advised:
    name = said[hit.start : hit.end]
    sources = (row.source, *(SourceRef(source, says) for source, says in row.others))
    return Advised(
        row.id,
        row.level,
        sentence(name, row.problem, "which these words hand to the baby"),
        Remedy(f"Take the words out, or turn them into a warning. {row.remedy}"),
        (start + hit.start, start + hit.end),
        (start + len(said) - len(said.lstrip()), start + len(said.rstrip())),
        sources,
        passage,
        f"{sentence(name, row.problem)} {row.remedy}",
    )


def _near(said: str, hit: Found, before: int = 30, after: int = 34) -> str:
    return said[max(0, hit.start - before) : hit.end + after]


def _shown(kinds: frozenset[str], said: str, hit: Found) -> frozenset[str]:
    """The kinds of the food whose danger the words show."""
    before = said[max(0, hit.start - 60) : hit.start]
    everyday = in_everyday_sense(hit, said) and not _MEASURE.search(before) and not _DIPPED.search(before)
    shown = frozenset() if everyday else kinds & _ANY_FORM
    near = _near(said, hit)
    nut_itself = _ONE_NUT.search(said[: hit.start]) or _TO_BABY.search(said[hit.end :])
    if not said[hit.start : hit.end].lower().endswith("s") and "whole" not in keys(near) and not nut_itself:
        shown -= {"nut"}  # "if peanut is new to your baby": the allergen, not a nut left whole
    if kinds & {"small-round", "berry", "cheese-ball", "big-bean"} and (
        _HANDFUL.search(near) or _WHOLE_LATER.search(said, hit.end)
    ):
        shown |= kinds & {"small-round", "berry", "cheese-ball", "big-bean"}
    if kinds & {"hard-raw", "firm-raw", "crisp-raw", "hard-raw-unless-ripe"} and (
        "raw" in keys(near)
        or ((_CRUNCH.search(said) or (_UNCOOKED.search(near) and _GUMS.search(said))) and not _MADE_SAFE.search(said))
    ):
        shown |= kinds & {"hard-raw", "firm-raw", "crisp-raw", "hard-raw-unless-ripe"}
    if "small-round" in kinds and _IN_HALVES.search(near):
        shown |= {"small-round"}
    if "egg" in kinds and keys(near) & {"raw", "runny", "dippy"}:
        shown |= {"egg"}
    if "sausage" in kinds and _ROUNDS.search(near):
        shown |= {"sausage"}
    if "hard-cheese" in kinds and _CUT_SAID.search(near):
        shown |= {"hard-cheese"}
    if "nut-butter" in kinds and _SPOONED.search(near):
        shown |= {"nut-butter"}
    if kinds & _MILKS and _VESSEL.search(said):
        shown |= kinds & _MILKS
    return shown


def _facts(said: str, hit: Found) -> frozenset[str]:
    near = keys(_near(said, hit))
    facts = {fact for key in near if (fact := WORD_FACTS.get(key, ""))}
    facts |= (
        {"raw"} if not near & {"cooked", "steamed", "boiled", "baked", "roasted", "stewed", "poached"} else {"cooked"}
    )
    facts |= {"drink"} if _VESSEL.search(said) else set()
    facts |= {"runny"} if near & {"runny", "dippy"} else set()
    facts |= {"glob"} if _SPOONED.search(_near(said, hit)) and "mixed" not in facts else set()
    facts |= {"chunk"} if _CUT_SAID.search(_near(said, hit)) else set()
    if not facts & {"quartered", "fine", "blended", "mashed", "squashed", "halved", "chunk", "stick", "thin"}:
        facts.add("whole")
    return frozenset(facts)


def _handed(said: str, hit: Found, kind: str, classes: frozenset[str]) -> bool:
    """Whether the words around the food give it to the baby, or put it into the baby's food."""
    before = said[: hit.end - len(said[hit.start : hit.end].rpartition(" of ")[2])]  # the name may be "pinch of salt"
    if _BABY.search(said) and _GIVE.search(said):
        return True
    if classes & _ANY_FORM and _A_LITTLE.search(before[-60:]) and (_PRAISED.search(said) or _ADD.search(before)):
        return True
    if kind != "step" and classes & _ANY_FORM and _ADD.search(before[-70:]):
        # A story tells of the cook's own tea as well.
        return bool(_BABYS_FOOD.search(said)) or not re.search(r"\b(?:I|we)\b", before)
    return bool(_AT_TABLE.search(said))


def _in_the_pot(said: str, hit: Found, classes: frozenset[str]) -> bool:
    """Whether who speaks over a film for babies puts the food into what she cooks: nobody says there for whom it is."""
    before = said[: hit.start][-70:]
    if _ADD.search(before) or _GO_IN.search(before) or _PUT_IN.match(said, hit.end):
        return True
    return bool(classes & _ANY_FORM and _A_LITTLE.search(before))


def _elsewhere(said: str, hit: Found) -> bool:
    """Whether it is turned round, meant for later, or for somebody else."""
    cuts = list(_CLAUSE_END.finditer(said))
    left = max((m.end() for m in cuts if m.end() <= hit.start), default=0)
    right = min((m.start() for m in cuts if m.start() >= hit.end), default=len(said))
    clause = said[left:right]
    others = _OTHERS.search(clause)
    if (
        others
        and not _LIKE_THEM.search(clause[: others.start()])
        and not re.search(r"\b(?:her|his|baby['’]s|their)s? (?:bowl|plate|portion)|\bhers\b", clause)
        and not _TO_BABY.search(clause)
    ):
        return True
    if _LATER.search(said) or _NOT_AFTER.search(said[hit.end :]):
        return True
    if _ASLEEP.search(said):
        return True  # "popcorn is for the film, once the baby is in bed"
    if _CONTAINER.search(said[hit.end :]):
        return True  # "an ice cube tray"
    opening = _FOR_OTHERS.search(said)
    if opening and _OTHERS.search(opening.group()) and not _BABY.search(opening.group()):
        return True  # "For the grown-ups, ..."
    if _BEFORE_IT.search(said[: hit.start]):
        return True  # "the baby's share leaves the pot before the salt"
    if _done_without(said, hit):
        return True
    return bool(_NOT.search(said[_verb_clause(said, hit) : hit.start]))


def _done_without(said: str, hit: Found) -> bool:
    """Whether the sentence says that it went: "the recipe cut the sugar and she eats it all the same"."""
    gone = _DONE_WITHOUT.search(said[max(0, hit.start - 30) : hit.start])
    if not gone or _STILL_IN.search(said[hit.end :]):
        return False
    return not gone.group().lower().startswith("cut") or bool(_POURED.search(said[hit.start : hit.end]))


def _verb_clause(said: str, hit: Found) -> int:
    """Where the clause of the verb that governs the food begins: a list ("no honey, salt or nuts") belongs to it."""
    verbs = [m.start() for m in (*_GIVE.finditer(said, 0, hit.start), *_ADD.finditer(said, 0, hit.start))]
    if not verbs:
        return 0
    at = max(verbs)
    commas = [m.end() for m in _CLAUSE_END.finditer(said, 0, at)]
    return next((end for end in reversed(commas) if at - end > 14), 0) if commas else 0
