"""The family pot: where a sentence lifts out the baby's portion, and whose bowl words are about.

Taking a sentence for a split that is none would hide salt from the checks, so only plain wordings count.
"""

from __future__ import annotations

import re

from spoonproof.model.finding import Bowl
from spoonproof.reading.hidden import hidden_parts

_WHO = r"(?:(?:the|your|our|my|a|her|his|their)[ \t]+)?(?:bab(?:y|ies)|little ones?|toddlers?|infants?|child|children)"
_PART = (
    r"(?:portions?|shares?|servings?|helpings?|parts?|food|dinner|supper|lunch|meal|tea|amount|some|bit|batch"
    r"|spoonfuls?|pieces?|bowls?(?:ful)?|half|quarter|plates?)"
)
_BABYS = (
    rf"(?:{_WHO}(?:['’]s|s['’]|['’])(?:[ \t]+(?:small |little |own )?{_PART})?"
    rf"|(?:(?:the|a|your|one|two|three|four|[0-9]) )?baby[ \t]+{_PART}"
    rf"|(?:the |a |your )?(?:baby|toddler)[- ]sized?[ \t]+{_PART})"
)
_SOME = (
    r"(?:some|enough|a little|a (?:small |little |good |generous )?(?:portion|share|serving|helping|bowl(?:ful)?"
    r"|spoonful|ladle(?:ful)?|cup(?:ful)?|"
    r"plate|bit|part)|(?:a )?(?:few|couple of|one|two|three|four|five|six|several|[0-9]+)(?: ?[-–] ?[0-9]+)?(?: ?g"
    r"| ?ml)?(?: (?:tbsp|tablespoons?|spoonfuls?|spoons?|ladles?|ladlefuls?|pieces?|cups?|portions?|servings?|florets?"
    r"|batons?))?|half|a (?:quarter|third)|what (?:the baby|you) needs?|as much as (?:the baby|you) needs?)"
)
_TAKE = (
    r"(?:lift|dig|take|taking|set|setting|put|putting|spoon|spooning|scoop|scooping|ladle|ladling|remove|removing"
    r"|reserve|"
    r"reserving|keep|keeping|separate|dish|portion|transfer|transferring|move|divide|hold|save|saving|decant|tip|pour|"
    r"split|measure|pull|fish|leave|serve|lifting|weigh|pick|get|help yourself to)"
)
_AWAY = r"(?:out|aside|off|away|back|apart|first|to one side|on one side|over|by|up)"
_CLAUSE = r"[^.;!?]"
_SPLITS = (
    # lift out the baby's portion; set some aside for the baby
    re.compile(rf"(?i)\b{_TAKE}(?:[ \t]+{_AWAY})[ \t]+(?:{_BABYS}|{_SOME}\b{_CLAUSE}{{0,60}}?\bfor[ \t]+{_WHO}\b)"),
    # take the baby's portion out; lift the baby's share into a bowl
    re.compile(
        rf"(?i)\b{_TAKE}[ \t]+{_BABYS}(?:[ \t]+of[ \t]+(?:the[ \t]+)?[\w-]+[ \t]+and[ \t]+(?:the[ \t]+)?[\w-]+)?"
        rf"(?:(?!\band\b){_CLAUSE}){{0,40}}?\b(?:{_AWAY}|from the pan|from the pot|into|to|in|onto|before)\b"
    ),
    # spoon some into the baby's bowl; put a portion for the baby in another bowl
    re.compile(
        rf"(?i)\b{_TAKE}[ \t]+(?:{_AWAY}[ \t]+)?{_SOME}(?:[ \t]+(?:of (?:it|this|the [\w -]{{1,30}}?)|mixture|out|aside"
        rf"|off))?(?:[ \t]+(?:into|in|to|onto)[ \t]+(?:an?|another|the)[ \t]+(?:[\w-]+[ \t]+)?[\w-]+)?"
        rf"[ \t]+(?:into|in|onto|to|for|aside for|out for|away for|back for)[ \t]+(?:{_BABYS}|{_WHO})\b"
    ),
    # scoop out what the baby will eat; take out as much as your little one needs
    re.compile(
        rf"(?i)\b{_TAKE}[ \t]+{_AWAY}[ \t]+(?:what|whatever|as much as|all that|enough of it as)[ \t]+{_WHO}[ \t]+"
        r"(?:needs?|eats?|has|gets|(?:will|can|would|might|may|is going to|is likely to) "
        r"(?:need|eat|have|get|manage|want))\b"
    ),
    # take a slice of breast off the bone for the baby
    re.compile(
        rf"(?i)\b(?:{_TAKE}|cut|carve|flake|break|snip|slice)[ \t]+(?:{_AWAY}[ \t]+)?(?:an?|one|two|some|a few)[ \t]+"
        rf"(?:(?:small|thin|soft|lean|little|good)[ \t]+)?(?:slice|piece|strip|fillet|flake|leg|thigh|roll|parcel)s?\b"
        rf"{_CLAUSE}{{0,40}}?\bfor[ \t]+{_WHO}\b(?!['’])"
    ),
    # set aside, before seasoning, a portion for the baby; for the baby, take out three spoonfuls
    re.compile(
        rf"(?i)\bfor[ \t]+{_WHO}(?:['’]s[ \t]+{_PART})?,?[ \t]+(?:first[ \t]+)?{_TAKE}[ \t]+(?:{_AWAY}|{_SOME})\b"
    ),
    re.compile(
        rf"(?i)\b(?:reserve|remove|separate|decant|set aside|portion off)[ \t]+(?:{_BABYS}"
        rf"|{_SOME}[ \t]+for[ \t]+{_WHO}\b)"
    ),
    # fill the baby's bowl
    re.compile(r"(?i)\bfill(?:ing)?[ \t]+(?:the[ \t]+)?baby['’]s[ \t]+(?:own[ \t]+)?(?:bowl|plate|dish|cup)\b"),
    # spoon out the meat and veg for the baby
    re.compile(
        r"(?i)\b(?:spoon|scoop|ladle|fork|lift)(?:ing)?[ \t]+(?:out|off|up)[ \t]+"
        r"(?:(?:some|most|half|plenty) of )?(?:the|your)"
        rf"(?:,?[ \t]+(?!for\b)[\w-]+){{1,6}}?[ \t]+for[ \t]+{_WHO}\b(?!['’])"
    ),
    re.compile(rf"(?i)\b{_TAKE}[ \t]+{_SOME}[ \t]+{_AWAY}[ \t]+(?:for|as)[ \t]+(?:{_BABYS}|{_WHO})"),
    re.compile(rf"(?i)\b{_BABYS}[ \t]+(?:comes|goes|is (?:lifted|taken|spooned|set|scooped))[ \t]+{_AWAY}\b"),
    # give the baby a helping before you salt the rest; serve the baby first and season the rest
    re.compile(
        rf"(?i)\b(?:give|serve|serving|feed|plate|dish)(?:[ \t]+up)?(?:[ \t]+for)?[ \t]+(?:{_BABYS}|{_WHO})\b(?!['’])"
        rf"{_CLAUSE}{{0,40}}?\b(?:before|first)\b"
    ),
    re.compile(
        rf"(?i)\b(?:divide|split)\b{_CLAUSE}{{0,40}}?\bbetween\b{_CLAUSE}{{0,20}}?{_BABYS}{_CLAUSE}{{0,20}}?\band\b"
    ),
)
_ANYONE_SMALL = re.compile(r"(?i)bab(?:y|ies)|little one|toddler|infant|child")
"""One of whom each of the splits names: most steps name nobody."""
_BABY = re.compile(
    rf"(?i)\b(?:{_BABYS}|(?:for|to|with)[ \t]+{_WHO}|{_WHO}(?=[ \t]+(?:can|will|has|have|gets?|eats?)\b))\b"
    rf"|{_WHO}['’]s\b"
)
_BABY_PLANT = re.compile(
    r"(?i)\bbaby[ \t-]+(?:spinach|carrots?|corn|leeks?|leaves|leaf|potato(?:es)?|sweetcorn|kale|greens|plum"
    r"|tomato(?:es)?|beets?|courgettes?|marrows?|rice|cereal|formula|milk|monitor|spoons?|food|gem|turnips?|onions?"
    r"|broccoli|octopus|squid|clams?|peas)\b"
)
_FAMILY = re.compile(
    r"(?i)\b(?:famil(?:y|ies)(?:['’]s)?|grown[ -]?ups?(?:['’]s?)?|adults?(?:['’]s?)?|everyone else|older (?:children"
    r"|ones|siblings?)|bigger (?:children|ones)|big ones|parents?(?:['’])?|the rest|what(?:['’]s| is| was)? (?:left"
    r"|remains|remaining)|the remaining|the remainder|(?:your|our)(?: own)?[ \t]+(?:portions?|bowls?|plates?|share)"
    r"|(?:your|our) own|ours|yours|(?:your|our)selves|(?:the )?main (?:pot|pan))\b"
)
_OF_THEM = r"(?:dishes|bowls|pots|pans|portions|helpings|plates|trays|tins)"
_BOTH = re.compile(
    r"(?i)\b(?:bake|cook|warm|heat|simmer|roast|chill|serve|grill|cover)[ \t]+(?:them[ \t]+)?both\b(?![ \t]+sides)"
    rf"|\bboth(?:[ \t]+of)?(?:[ \t]+(?:the|your))?[ \t]+{_OF_THEM}\b"
)
"""The baby's and the family's, whoever else is named beside them."""
_ALL_OF_THEM = re.compile(
    rf"(?i)\b(?:(?:all|each)(?: of)?(?: (?:the|your|our|\d|two|three|four))? ?{_OF_THEM}"
    r"|(?:each|every) (?:bowl|plate|portion|helping)|every(?:one|body)(?:['’]s)?(?! else))\b"
)
"""The same, where no word names the family: "each plate" of the grown-ups' is theirs."""
_DISHES = (
    r"(?:portions?|helpings?|servings?|pots?|pans?|bowls?|plates?|share|half|food|dinners?|suppers?|lunch|meals?|pancakes?|"
    r"burgers?|patties|meatballs?|pasta|rice|curry|stew|soup|sauce|mash|porridge|toast|salad|wraps?|eggs?|batch)"
)
_GROWN = r"(?:grown[ -]?ups?|adults?|parents?|everyone else|older (?:children|ones|siblings?))"
_FAMILY_PLAIN = re.compile(
    rf"(?i)\b(?:for|to)[ \t]+(?:the[ \t]+|all the[ \t]+)?(?:family|{_GROWN})\b"
    rf"|\b(?:family|families|grown[ -]?ups?|adults?|parents?)['’]s?[ \t]+{_DISHES}\b"
    rf"|\b(?:grown[ -]?ups['’]|adults['’]|grown[ -]?up['’]s|adult['’]s)[ \t]+[a-z]+|\byour own[ \t]+{_DISHES}\b"
    r"|\b(?:in|into|to|for|on)[ \t]+(?:ours|yours)\b"
    rf"|\b{_GROWN} (?:can |will |may |might )?"
    r"(?:(?:have|eat|get|take|like|love|want|enjoy|add) (?:theirs|their own|it|them)"
    r"|(?:add|stir in|drizzle|sprinkle|spoon|grate|pour|scatter) (?:the|some|a|more|their)"
    r"|(?:season|salt|spice|dress|top|finish|drizzle|sprinkle) (?:theirs|their own))\b"
)

_SERVED_TO = re.compile(rf"(?i)\b(?:give|serve|offer)[ \t]+{_WHO}\b(?!['’])|\bfor[ \t]+{_WHO}\b(?!['’])")
_BABYS_SHARE = re.compile(rf"(?i)\b{_WHO}['’]s[ \t]+(?:\w+[ \t]+)?(?:portion|share|helping|serving|bowl)s?\b")
_PARTLY = re.compile(rf"(?i)\b(?:{_SOME}|(?:one|two|some|a few|most) of|(?:spoon|ladle|handful)\w*)\b")
_REST_OF_A_FOOD = re.compile(r"(?i)\bthe (?:rest|remainder) of (?:the|your) [a-z]+|\bthe remaining [a-z]+")


def serves_baby(words: str) -> bool:
    """Whether ``words`` take the baby's share without lifting it out: "mash some of it with rice for the baby", "give
    the baby three spoonfuls"."""
    served = _SERVED_TO.search(words) is not None and _PARTLY.search(words) is not None
    return served or _BABYS_SHARE.search(words) is not None


def after_serving(words: str) -> bool:
    """Whether ``words`` behind such a share are of the family's bowl: those that name a food's rest tell nothing."""
    return whose(_REST_OF_A_FOOD.sub(" ", words), True) == ("family", True)


_PUT_OFF = re.compile(r"(?i)\W*(?:just |right )?before\b[^.;!?]*,\W*(?:(?:always|first|you|now) )*$")


def put_off(words: str) -> bool:
    """Whether the ``words`` in front of the lifting out tell what comes behind it: "before you add the salt, ..."."""
    return _PUT_OFF.match(words) is not None


def split_at(text: str) -> tuple[int, int] | None:
    """Where ``text`` lifts out the baby's portion; None when it does not (or forbids it)."""
    if _ANYONE_SMALL.search(text) is None:
        return None
    hidden = hidden_parts(text)
    best: tuple[int, int] | None = None
    for pattern in _SPLITS:
        match = pattern.search(text)
        if match is None or any(a <= match.start() < b for a, b in hidden):
            continue
        if _BABY_PLANT.search(match[0]) and not re.search(r"\bfor[ \t]", match[0]):
            continue
        if best is None or match.start() < best[0]:
            best = (match.start(), match.end())
    return best


def whose(text: str, split_before: bool) -> tuple[Bowl | None, bool]:
    """Whose bowl words are about, and whether they say so. Before any split only words that name the
    family's portion count: "let the baby scoop it up" speaks of the one bowl there is."""
    plain = _BABY_PLANT.sub(lambda found: " " * len(found[0]), text)
    if not split_before:
        return ("family", True) if _FAMILY_PLAIN.search(plain) and not _BABY.search(plain) else (None, False)
    if _BOTH.search(plain):
        return None, True
    baby, family = bool(_BABY.search(plain)), bool(_FAMILY.search(plain))
    if (baby and family) or (not family and _ALL_OF_THEM.search(plain)):
        return None, True
    if baby:
        return "baby", True
    if family:
        return "family", True
    return None, False
