"""Whether the words around a food hand it to the baby, or put it into the baby's food."""

from __future__ import annotations

import re

from spoonproof.feeding.recipients import ADD, BABY
from spoonproof.feeding.words import Found

# Wrong in any form, so that naming them is enough.
ANY_FORM = frozenset(
    """honey salt stock-cube salty-sauce sugar syrup sugary condensed-milk flavoured-milk juice rice-drink sweetener
    popcorn marshmallow jelly-cube hard-sweet chewing-gum ice-cube crisp-snack alcohol tea coffee herbal-tea fennel-tea
    raw-milk raw-milk-cheese mould-cheese raw-dish raw-sprout pate nut hijiki
    seed-large dried-fruit bone-in string-cheese crunchy kelp
    salty-food mercury-fish mercury-us bran low-fat-dairy""".split()
)  # fmt: skip
MILKS = frozenset({"cow-milk", "animal-milk", "plant-milk"})
_A_LITTLE = re.compile(
    r"\b(?:drizzles?|spoon(?:ful)?s?|teaspoons?|tablespoons?|dash(?:es)?|splash(?:es)?|sprinkl(?:e|es|ing)|pinch(?:es)?"
    r"|squeezes?|licks?|drops?|handfuls?|bits?|dabs?|sips?|bottles?|beakers?|cups?|mugs?|thimbles?|swirls?|dollops?"
    r"|scatter(?:ing)?|flakes?|grains?|shakes?|grind)"
    r" of (?:\w+ ){0,3}$|\b(?:half|quarter of|third of|bit of) an? (?:\w+ )?$",
    re.I,
)
_GO_IN = re.compile(r"\b(?:in go(?:es)?|(?:you|we|i|you['’]ll) (?:will |just |only )?need|our ingredients are)\b", re.I)
_PUT_IN = re.compile(
    r" (?:(?:is|are|gets?|goes|go) )?(?:\w+ly )?(?:(?:stirred|whisked|folded|mixed|beaten|drizzled|poured|added"
    r"|tipped|swirled|scattered|sprinkled|crumbled) (?:in|into|through|over|on|onto|to)|in(?:to)?(?! (?:flower"
    r"|bloom|leaf|season)\b)|on top"
    r"|over the top)\b",
    re.I,
)
_THEN_IN = re.compile(
    r"\b(?:beat|whisk|fold|stir|mix|crack|tip|drop|pour)\w* (?:it|them) (?:in|into|through|over)\b", re.I
)
_PRAISED = re.compile(
    r"\b(?:mak(?:e|es|ing)|lifts?|helps?|works?|wonders|lovely|delicious|perfect|nice|good|great|better|best|hurts?"
    r"|long way|welcome|magic|sees? to (?:it|that)|do(?:es)? the job|gets? things|soothes?|settles?|wakes?|on top|trick"
    r"|brings?)\b",
    re.I,
)
_AT_TABLE = re.compile(r"\b(?:lunch ?box|finger foods?|picnic|snack box|party bag|on the side|alongside|tray)\b", re.I)
# "fruit yoghurts often have added sugar": what is in them, added by nobody here
_FOUND_IN = re.compile(
    r"\b(?:ha(?:s|ve|d)|with|contain(?:s|ing)?|full of|loaded with|lots of|much|any|hidden) (?:\w+ ){0,3}"
    r"added (?:\w+ )?$",
    re.I,
)

_RECKONED = re.compile(
    r"\b(?:under|below|within|over|above|(?:no |much )?(?:more|less) than|at most|up to|maximum of|limit of"
    r"|about|around|is|are|only|just)"
    r" (?:\d[\d.,]*|an?|one|two|half an?|half) ?(?:g|mg|grams?|grammes?|milligrams?) (?:of )?(?:\w+ )?$"
    r"|\b(?:hold|contain|carr(?:y|i)|pack|ha[sv]|got|with|is|are|be)\w* (?:\w+ ){0,3}?"
    r"(?:more|less|as much|most of (?:the|her|his|their) (?:\w+ )?) ?$",
    re.I,
)
_HOLDS_MUCH = re.compile(
    r"s?(?: (?:for|in|of) (?:\w+ ){0,2}?\w+)? (?:can |may |might |will |often )?"
    r"(?:hold|contain|carr(?:y|ie)|pack|has|have)s? (?:\w+ ){0,2}"
    r"(?:more|as much|most of|too much|lots of|plenty of|over)\b",
    re.I,
)
_A_DAY = re.compile(r"\b(?:a|per|each|in a(?: whole)?|every) day\b|\bdaily\b", re.I)
_AN_AMOUNT = re.compile(r"\b(?:g|mg|grams?|grammes?|milligrams?) (?:of )?(?:\w+ )?$", re.I)


def reckoned(said: str, hit: Found) -> bool:
    """Whether it is told how much there is or may be, and nothing is put in: "stay under 2 g of salt a day"."""
    before = said[: hit.start]
    if ADD.search(before) or re.search(r"\b(?:giv|gave|feed|offer)\w*\b", before, re.I):
        return False
    return (_RECKONED.search(before) or _HOLDS_MUCH.match(said, hit.end)) is not None or (
        _AN_AMOUNT.search(before) is not None and _A_DAY.search(said) is not None
    )


def in_a_bowl(said: str, hit: Found, kind: str, classes: frozenset[str]) -> bool:
    """Whether a food that is wrong in any form is put into food, or on the table, though nobody is named who eats."""
    before = said[: hit.end - len(said[hit.start : hit.end].rpartition(" of ")[2])]  # the name may be "pinch of salt"
    if classes & ANY_FORM and _A_LITTLE.search(before[-60:]) and (_PRAISED.search(said) or ADD.search(before)):
        return True
    if kind != "step" and classes & ANY_FORM and ADD.search(_FOUND_IN.sub(" ", before)[-70:]):
        # A story tells of the cook's own tea as well.
        return bool(BABY.search(said)) or not _BY_THE_COOK.search(before)
    return bool(_AT_TABLE.search(said))


_BY_THE_COOK = re.compile(r"\b(?:I|we)\b")

# "to gnaw on", "for little hands": nobody but a baby needs it said, in a film for babies
_TO_MOUTH = re.compile(
    r"\bto (?:gnaw|suck|chew|nibble|munch|crunch|gum|teethe)\b|\bfor (?:the )?(?:little|tiny|small) (?:hands|fingers"
    r"|mouths)\b"
    r"|\bfinger food\b|\b(?:from|off|by) (?:a|the) spoon\b|\bfor (?:dunking|dipping|sucking|gnawing|chewing|teething"
    r"|sore gums)\b"
    r"|\b(?:beaker|bottle|cup|sip)s? of (?:\w+ ){0,2}milk\b|\b(?:in|into|with) (?:the|a|their) (?:\w+ )?(?:beaker"
    r"|sippy cup|bottle)\b|\b(?:before|at) bed(?:time)?\b|\bteether\b",
    re.I,
)
_PIECE = (
    r"(?:pile|heap|mound|stick|wedge|spear|baton|chunk|slice|strip|handful|bowl|punnet|bunch|coin|round|spoon|spoonful"
    r"|lump|piece|half)"
)
_NAMED_FIRST = re.compile(
    r"^\W*(?:(?:and|or|maybe|just|then|also|now|okay|right|so) )*(?:(?:an?|some|one|two|half|whole|big|nice|good|long"
    rf"|thick|cold|raw|little|few|crisp|fresh) ){{0,4}}(?:{_PIECE}s? of (?:\w+ )?)?$",
    re.I,
)
_TELLS = re.compile(
    r"\b(?:is|are|was|were|am|be|can|could|may|might|will|would|must|should|need|needs|has|have|had|goes?|stays?|lives?"
    r"|keeps?|waits?|sits?|makes?|causes?|looks?|costs?|comes?|came|do|does|did|\w+n['’]t)\b",
    re.I,
)

_AS_A_MEAL = re.compile(
    r"\bfor (?:pudding|breakfast|lunch|tea|dinner|supper|afters|dessert|snack|today)\W* (?:it['’]s|it is|there['’]s"
    r"|there is|we(?:['’]ve got|['’]re having| have)|they(?:['’]re having| have)|is) (?:(?:an?|some|our|the) )?$",
    re.I,
)
"""Words before what a meal is made of: "for pudding it's a honey custard"."""
_COUNTED = re.compile(
    r"^\W*(?:so |and )?(?:that['’]s|there['’]s|it['’]s) (?:two|three|four|five|\d+|half an?) (?:\w+ )?$"
    r"|^\W*(?:number|plate|snack|idea|option|day|meal|box|pot) \w+(?: (?:is|are|has to be|would be))?(?: \w+){0,3} $",
    re.I,
)
"""Words before the food in a list that is counted out: "number two whole blueberries"."""


def _shown_to_camera(said: str, hit: Found) -> bool:
    """Whether the food is only named, as over a picture: "a stick of celery straight from the fridge"."""
    return _NAMED_FIRST.search(said[: hit.start]) is not None and _TELLS.search(said, hit.end) is None


def in_the_pot(said: str, hit: Found, classes: frozenset[str]) -> bool:
    """Whether who speaks over a film for babies puts the food into what she cooks: nobody says there for whom it is."""
    before = _FOUND_IN.sub(" ", said[: hit.start])[-70:]
    if "egg" in classes and _YOLK_RUNS.search(said):
        return True
    if ADD.search(before) or _GO_IN.search(before) or _PUT_IN.match(said, hit.end) or _THEN_IN.search(said, hit.end):
        return True
    if (
        _TO_MOUTH.search(said)
        or _COUNTED.search(said[: hit.start])
        or (classes - ANY_FORM - MILKS and _shown_to_camera(said, hit))
    ):
        return True
    return bool(classes & ANY_FORM and (_A_LITTLE.search(before) or _AS_A_MEAL.search(before)))


_YOLK_RUNS = re.compile(r"\byolks? (?:\w+ )?(?:runs?|flows?|drips?|spills?|oozes?|trickles?|like)\b", re.I)
_COOKED_SO = re.compile(
    r"^\W*(?:(?:and|then|now|so|just|next|okay|you|i|we) ){0,2}(?:cook|fry|boil|poach|scramble|bake|coddle|simmer)\b"
    r"[^.;!?]*\b(?:until|till|so that|so|but|just|for)\b",
    re.I,
)
_STANDS_IN = re.compile(
    r" (?:\w+ ){0,2}(?:works?|does|will do|would do|can go in|goes in|is fine|is lovely|is good|stands in|can stand in)"
    r"\b[^.;!?]{0,24}\b(?:instead|in place|for|too|as well|also)\b",
    re.I,
)

_SERVED_WITH = re.compile(
    r"\b(?:go(?:es)?|serv\w+|eat|eaten|nice|lovely|good|great|delicious|perfect|best|pairs?|together"
    r"|along(?:side)?|team\w*)"
    r" (?:\w+ ){0,2}?with (?:\w+ ){0,4}$",
    re.I,
)
_SERVED_BY_IT = re.compile(
    r"(?: \w+){0,3} (?:on the side|beside (?:it|them)|alongside"
    r"|makes? (?:it|this|them) (?:into )?a (?:\w+ )?(?:meal|lunch|plate|supper|tea|snack)\b)",
    re.I,
)
"""What goes with the dish for the baby goes to the baby: "they go well with raw carrot sticks"."""

_FEW = 2
"""Words that may stand before a food of which a sentence says that it stands in for another."""


def in_the_dish(said: str, hit: Found, classes: frozenset[str]) -> bool:
    """Whether words beside a recipe for a baby tell how its food is cooked, or what may go into it instead, and so say
    for whom without saying it: "cook until the egg is still a bit runny", "honey works in place of the syrup"."""
    if "egg" in classes and _COOKED_SO.search(said):
        return True
    if _SERVED_WITH.search(said[: hit.start]) or _SERVED_BY_IT.match(said, hit.end):
        return True
    return (
        bool(classes & ANY_FORM)
        and len(said[: hit.start].split()) <= _FEW
        and _STANDS_IN.match(said, hit.end) is not None
    )
