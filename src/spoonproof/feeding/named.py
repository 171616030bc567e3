"""Food words in running text: whether they mean the food, and whose plate it goes to."""

from __future__ import annotations

import re

from spoonproof.feeding.words import Found

# Kinds that matter when a step alone names them: what people throw in without listing it.
STEP_KINDS = frozenset(
    """honey salt stock-cube stock salty-sauce sugar syrup sugary condensed-milk popcorn marshmallow jelly-cube
    hard-sweet alcohol tea rice-drink sweetener nut nut-butter dried-fruit raw-milk raw-milk-cheese kelp hijiki
    salty-food juice medicine raw-egg-product mould-cheese mercury-fish mercury-us coffee
    small-round berry raw-dish""".split()
)
ROUND = frozenset({"small-round", "berry"})
"""Kinds whose shape a step may change where it names them."""
_CUT_UP = re.compile(
    r"\b(?:quarter|chop|mash|crush|squash|squish|grat|blend|blitz|pur[eé]e|slic|simmer|stew|cook|roast|bak|burst|coulis"
    r"|compote|sauce|jam|flat|purée)\w*",
    re.I,
)
# Single words that a sentence uses for something else: "an easy tea", "for the sake of", "shape into cakes".
_ORDINARY_IN_STEPS = frozenset(
    """tea coffee juice sake port spirit stout ale gin mead syrup candy caramel toffee fudge cake cupcake jelly icing
    custard pickle brine mate nut pudding nectar panela soda matcha squash honeycomb icing frosting spam
    smarty""".split()
)
_ORDINARY_SINGULAR = frozenset({"date", "sprinkle", "currant"})  # "the date on the pack", "a sprinkle of water"
# "blend to a fine chutney": the recipe makes it of what it lists; nobody makes honey or salt.
NEVER_MADE = frozenset({"honey", "salt", "stock-cube", "sugar", "alcohol", "kelp", "hijiki", "raw-milk", "tea"})
MADE_HERE = re.compile(
    r"\b(?:whisk|beat|blend|blitz|mash|mix|cook|pound|grind|process|simmer|reduce|stir|boil|thicken|roll|shape"
    r"|form)\w*\b"
    r"[^.;]{0,60}\b(?:in)?to (?:an? )?(?:\w+ ){0,2}$",
    re.I,
)
_OTHERS_PLATE = re.compile(
    r"\b(?:adults?|grown[- ]?ups?|parents?|family|everyone else|older (?:children|kids)|rest of (?:us|you))\b"
    r"[^.;]{0,40}\b(?:plates?|bowls?|portions?|servings?|at the table|pan|pot)\b"
    r"|\b(?:salt|season)(?:s|ed|ing)? (?:the |your )?(?:rest|remainder|others?|main (?:pot|pan|bowl)|big (?:pot|pan)"
    r"|own|ours|yours)\b|\b(?:at the table|for (?:the )?(?:grown[- ]?ups|adults|rest of the family))\b",
    re.I,
)
_SIZE_OF = re.compile(
    r"\b(?:size|shape|consistency|thickness|texture|colou?r|look|weight) of (?:an? |the )?(?:\w+ )?$|-$", re.I
)
_LIKENESS = re.compile(
    r"\b(?:like|than|as \w+ as) (?:an? |the )(?:\w+ )?$|\blike (?:little|tiny|wee) $"
    # "as thick as jam", "brown as treacle"; but "as well as honey", "such as honey"
    r"|\b(?:thick|thin|smooth|runny|loose|soft|sticky|stiff|clear|dark|brown|golden|white|black|red|sweet|light|fine"
    r"|chewy|hard|bouncy|stretchy|tough) as $"
    r"|\b(?:is|are|was|feels?|looks?|tastes?|chews?|stretch(?:es)?|pulls?|sets?|smells?)"
    r" (?:it |just |a bit |rather )?like $"
    r"|\bcall(?:s|ed|ing)? (?:it|them|these|this|those)(?: \w+){0,2} $"
    r"|\b(?:felt|wooden|knitted|crocheted|plush|pretend|toy) $",
    re.I,
)

_A_PAN = re.compile(
    r"\b(?:(?<!crumble )(?<!stir )(?<!squeeze )in|into|to|from|fill) (?:an?|the|your) $"
    r"|\b(?:big|large|tall|deep|heavy|wide|medium|small|\w+-quart)(?:[- ](?:based|bottomed))? $",
    re.I,
)
_IN_ANOTHER_SENSE = {
    # "with some of the hot sauce": out of the pan; "in a stock pot": the pan
    ("hot", "sauce"): re.compile(r"\b(?:the|this|that|its|your) $", re.I),
    ("stock", "pot"): _A_PAN,
    ("stockpot",): _A_PAN,
    # "a little jaggery as sweetener": the jaggery is told by its own name
    ("sweetener",): re.compile(r"\bas (?:an? )?$|\bnatural $", re.I),
    ("sugar",): re.compile(r"\bblood $", re.I),
    # "to tide him over till tea": the meal
    ("camomile",): re.compile(r"\bbath (?:with|of) (?:\w+ )?$", re.I),
    ("tea",): re.compile(r"\b(?:till|until|before|after) $", re.I),
}
"""Words before a phrase that make another thing of it."""


_PLACES = frozenset("mayo cheddar turkey brie cayenne burgundy champagne madeira java".split())
_IN_A_PLACE = re.compile(r"\b(?:in|from|to|near|round|outside|across|County) $")
"""Names of foods that are places too, and the words before a place: "to my uncle's in Mayo"."""


def likened(text: str, hit: Found) -> bool:
    """Whether the words before it make it another thing, or compare with it: "till tea", "thick as honey"."""
    before = text[max(0, hit.start - 40) : hit.start]
    name = text[hit.start : hit.end]
    if name.istitle() and name.lower() in _PLACES and _IN_A_PLACE.search(before):
        return True
    another = _IN_ANOTHER_SENSE.get(hit.phrase)
    return _LIKENESS.search(before) is not None or (another is not None and another.search(before) is not None)


def in_everyday_sense(hit: Found, text: str) -> bool:
    """Whether it is only likened to, or a single word that is more likely meant in its everyday sense."""
    if likened(text, hit) or _SIZE_OF.search(text[max(0, hit.start - 40) : hit.start]):
        return True  # "the size of a hazelnut"
    name = text[hit.start : hit.end].lower()
    if name.endswith((" squashes", " juices")) and name != "fruit juices":
        return True  # "until the fruit squashes", "moisten with the apple juices": what ran out in the pan
    if len(hit.phrase) != 1:
        return False
    plural = text[hit.start : hit.end].lower().endswith("s")
    return hit.phrase[0] in _ORDINARY_IN_STEPS or (hit.phrase[0] in _ORDINARY_SINGULAR and not plural)


def for_others(text: str, hit: Found) -> bool:
    """Whether the sentence gives it to the grown-ups' plates."""
    start = max(text.rfind(".", 0, hit.start), text.rfind(";", 0, hit.start)) + 1
    ends = [at for at in (text.find(".", hit.end), text.find(";", hit.end)) if at >= 0]
    return bool(_OTHERS_PLATE.search(text, start, min(ends, default=len(text))))


def cut_up(text: str, hit: Found) -> bool:
    """Whether the words around a round food do something to its shape: "simmer the blueberries", not "mash, and top
    with blueberries"."""
    start = max(text.rfind(mark, 0, hit.start) for mark in (".", ";", ",", " and "))
    end = text.find(".", hit.end)
    return _CUT_UP.search(text, max(0, start), end if end >= 0 else len(text)) is not None
