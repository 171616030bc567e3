"""Words for babies and for giving, whether a food is kept back, and for which later age it is."""

from __future__ import annotations

import re
from math import inf

from spoonproof.feeding.words import Found

GIVE = re.compile(
    r"\b(?:giv(?:e|es|ing|en)|gave|(?<!on )offer|hand|let|feed|feeds|fed|feeding|pass|slip|share"
    r"|lick|suck|nibbl|gnaw|chew|munch"
    r"|crunch|sip|drink|dip|sooth|tast|snack|keeps?|eat|eats|bite|pop|put|got|get|gets|have|has|treat|finish|tuck|wash"
    r"|favou?rite|lov|ask|beg|rub|serv|wet|dunk|smear|fish|pinch|steal|stole|nick|grab|scoff|gobble|swallow|guzzl"
    r"|thriv|rais)\w*\b|\bis (?:hers|his)\b|\bin(?:to)? (?:her|his|their) (?:palm|fist|mouth|cheek)s?\b"
    r"|\bgo(?:es)? (?:on|in|into|over|to)\b|\bhelps? (?:her|him|them)sel|\bworks? through\b"
    r"|\b(?:is|are|keeps? (?:her|him)|stays?) (?:happy|quiet|content|busy)\b|\bpicks? (?:\w+ ){1,4}out of\b"
    r"|\b(?:for|on|against) (?:(?:her|his|their|sore|tender|the|those|aching|swollen) ){1,2}gums\b",
    re.I,
)
_MONTHS = r"[2-9]|1[01]|two|three|four|five|six|seven|eight|nine|ten|eleven"
_ONE_CHILD = (
    r"\b(?:bab(?:y|ies)|her|hers|herself|him|his|himself|he|she"
    r"|(?:little|small|tiny|wee|weeny|teeny|smallest|youngest|littlest|tiniest) (?:ones?|fingers|hands|gums"
    r"|mouths?)|first (?:drinks?|milk|tastes?|foods?|fish|meat|meals?|finger foods?)"
    rf"|(?:at|from|is|are|aged?|s?he['’]s) (?:about |around |just )?(?:{_MONTHS}) months|(?:{_MONTHS})[- ](?:month"
    rf"|week)s?[- ]olds?|bubs?|bubba|tots?|lads?|lass|little"
    r" (?:man|lady|girl|boy|fella|fellow|guy|dude|lad|lass|princess|monkey|bloke)"
    r"|my (?:daughter|son|granddaughter|grandson|boy|girl|lad|lass)"
    r"|toddlers?|infants?|child|children|kids?|kiddos?|gums?|dummy"
    r"|pacifier|teether|highchair|high chair)\b"
)
ONE_CHILD = re.compile(_ONE_CHILD, re.I)
"""A child named, or pointed at as one: in talk of no one dish "they" are anybody."""
BABY = re.compile(_ONE_CHILD + r"|\b(?:them|they|theirs)\b", re.I)
ADD = re.compile(
    r"\b(?:add|stir|swirl|drizzl|sprinkl|top|finish|sweeten|season|dust|serve|mix|thin|spread|glaz|swap|replace|crumbl"
    r"|scatter|try|use|bulk|dilut|tip|pour|grate|shav|melt|fold|whisk|grind|enrich|fortif|thicken|throw|toss|pop"
    r"|put|roll|squeez|loosen|lift|crumble|work|drop)\w*\b|\bwater(?:ed|s|ing)? (?:it |them |the \w+ )?down\b",
    re.I,
)
# "fishes out of my bowl", "grandpa slips her": whoever's plate it was, it ends in the baby's mouth
TO_BABY = re.compile(
    r"\b(?:out of|from|off) (?:my|our|your|\w+['’]s) (?:own )?(?:bowl|plate|glass|cup|mug|spoon)\b"
    r"|\b(?:her|his|their|the|baby['’]s) (?:dummy|pacifier|soother|lips|gums|tongue|teether)\b"
    r"|\bin(?:to)? (?:her|his|their) (?:palm|fist|mouth|cheek)s?\b|\bto (?:her|him|the bab(?:y|ies))\b"
    r"|\bfor (?:her|him|the bab(?:y|ies)) to\b"
    r"|\b(?:bab(?:y|ies)|her|him) (?:included|too|as well)\b|\bincluding (?:the baby|her|him)\b"
    r"|\b(?:gives?|gave|lets?|feeds?|fed|slips?|slipped|offers?|hands?|sneaks?)"
    r" (?:her|him|the bab(?:y|ies)|the little one)\b",
    re.I,
)
_AGE = r"(?:one|two|three|four|five)\b(?! (?:of|or|and|more|in|o['’]clock|\w+s\b))"
_LATER = re.compile(
    r"\b(?:from|after|past|over|once|when|until|till|before|under|at|by|wait|since|now|as)\b[^.;]{0,40}"
    r"\b(?:a year|(?<!new )years?|birthday|twelve|1[2-9] months|[2-6] years|older|bigger|at school"
    rf"|(?:s?he|they|it|bab(?:y|ies)|aged?|turn\w*)(?:['’]s|['’]re| is| are| was| were)? {_AGE}"
    rf"|\w+est(?:['’]s| is| was) {_AGE})\b"
    r"|\bfor (?:his|her|their|the|a) (?:first|second|third|fourth|\d\w\w) birthday\b"
    rf"|\b(?:from|after|past|over|until|till|before|under|at|(?<!one )by) (?:age |about )?{_AGE}",
    re.I,
)
_DONE_WITHOUT = re.compile(
    r"\b(?:ditch|omit|forgo|forwent|drop|scrap|cut|swapp|lea(?:ve|ving) off|left off)\w* (?:the |any |all |all the )?$",
    re.I,
)
_SWAPPED = re.compile(r"\b(?:swap|replac|trad|exchang|substitut)\w* (?:out )?(?:(?!(?:for|with|by)\b)\w+ ){0,5}$", re.I)
_FOR_ANOTHER = re.compile(r"(?: \w+){0,3} (?:for|with|by) ", re.I)
"""What is taken out for what stands behind: "swap the honey for date paste"."""
_STILL_IN = re.compile(r"^\W+(?:in|into|on|onto|over|to|through|up|small|lengthways)\b", re.I)
_POURED = re.compile(r"\b(?:salt|sugar|honey|syrup)$", re.I)
_BEFORE_IT = re.compile(
    r"\bbefore (?:(?:i|you|we|she|he|they) (?:(?:\w+ )?(?:add|stir in|put in|season|salt|pour in)(?: it)?(?: with)? )?"
    r"|(?:adding|stirring in|seasoning with|putting in) )?(?:the |any |your |my |our )?(?:\w+ (?:and|or) (?:the )?)?$",
    re.I,
)
_CONTAINER = re.compile(
    r"^[ -](?:trays?|moulds?|molds?|makers?|jars?|pots?|cupboard|pans?|tubs?|pickers?|stall|shop|farms?|aisle|counter"
    r"|machines?|festival|fair|factory|sellers?|van|hut|labels?|hives?|adverts?|bath|lotion|shampoo|balm|soap"
    r"|candles?|wipes|plants?|lawn)\b",
    re.I,
)

_DUG_INTO = re.compile(r"\b(?:dig|dip|tuck|stick|spoon)\w* (?:\w+ )?(?:in|into|from|out of) (?:the|a|her|his) $", re.I)

UNCUT = re.compile(
    r"\b(?:not|never|no need to|without|no longer|stopped|hardly ever|rarely|\w+n['’]t)\b(?: \w+){0,3}"
    r" (?<!\bthe )(?<!\bhis )(?<!\bher )(?<!\bmy )"
    r"(?:cut|cutting|halv\w*|quarter\w*|slic\w*|chop\w*|blend\w*|mash\w*|grind\w*|grat\w*|soak\w*)\b"
    r"(?! (?:\w+ ){0,4}(?:into|across) )",
    re.I,
)
"""Words that say of food that it stays as it is: "we never bother to cut his"."""


def kept_back(said: str, hit: Found) -> bool:
    """Whether it goes in behind the baby's share, it went for something else, or it names a thing, not food."""
    before = said[: hit.start]
    return bool(
        _done_without(said, hit)
        or _BEFORE_IT.search(before)
        or (_CONTAINER.search(said[hit.end :]) and not _DUG_INTO.search(before))
    )


def later(said: str, hit: Found) -> float:
    """Months of age for which the words say it is meant ("from two he can have ..."): 0 where they name no later age,
    endless where they only put it off ("not until she's one", "when he's older")."""
    found = _LATER.search(said[: _own_end(said, hit)])
    if found is None and not _YOUNGER.search(said):
        found = _IS_OLD.search(said)
    if found is None:
        aged = min(
            _WHOSE_AGE.finditer(said),
            key=lambda one: min(abs(one.start() - hit.end), abs(hit.start - one.end())),
            default=None,
        )
        if aged and aged[1]:
            return {"two": 24.0, "2": 24.0, "three": 36.0, "3": 36.0}.get(aged[1].lower(), 48.0)
        return 12.0 if _TODDLER.search(said) and not _YOUNGER.search(said) else 0.0
    if _PUT_OFF.match(found[0]):
        return inf
    return next((months for word, months in _YEARS if word.search(found[0])), inf)


_IS_OLD = re.compile(
    r"\b(?:s?he|they)(?:['’](?:s|re)| is| are| was| were) (?:now |nearly |already )?"
    r"(?:[\w-]+ years old|(?:one|two|three|four|five|six|seven|eight|nine|ten)(?: now| already)?(?=,| and\b))"
    r"|\b(?:is|was|are) (?:now |nearly |already )?[\w-]+ years old(?: now)?,? and s?he\b",
    re.I,
)
"""How old the one is who eats: "he's eight years old now and he shares our popcorn"."""
_TODDLER = re.compile(r"\b(?:toddlers|a toddler)\b(?!['’-])", re.I)
_WHOSE_AGE = re.compile(
    r"\b(two|three|four|[234])[- ]years?[- ]olds?\b|\b(?:bab(?:y|ies)|infants?|newborns?|one[- ]year|months?)\b", re.I
)
"""Who is named as a child past the second birthday, or as one before it: the nearest is the one who eats."""
_YOUNGER = re.compile(r"\b(?:bab(?:y|ies)|infants?|newborns?|under (?:a year|ones?)|weaning|months)\b", re.I)
"""Who is past the first birthday by name (common practice), and words for who is not."""
_PUT_OFF = re.compile(r"(?:until|till|before|under|wait)\b", re.I)
_YEARS = (
    (re.compile(r"\b(?:one|a year|first|12 months|twelve)\b", re.I), 12.0),
    (re.compile(r"\b(?:two|second|2 years)\b", re.I), 24.0),
    (re.compile(r"\b(?:three|third|3 years)\b", re.I), 36.0),
    (re.compile(r"\b(?:four|fourth|4 years)\b", re.I), 48.0),
)
"""A later age by its words, in months; from five years on a choking row holds nothing back."""
_ANOTHER = re.compile(r"\b(?:and|but) (?=(?:i|we|you|s?he|they) (?:\w+ ){0,2}(?:never|don['’]t|won['’]t|wait)\b)", re.I)
"""Where it goes on about something else: "popcorn, since it's air, and I never give him honey before one"."""


def _own_end(said: str, hit: Found) -> int:
    """Where the sentence leaves the food for another that is turned round."""
    other = _ANOTHER.search(said, hit.end)
    if other is None or re.match(r"(?:\w+ ){2,5}(?:it|them|that|those|any)\b", said[other.end() :], re.I):
        return len(said)
    return other.start()


def _done_without(said: str, hit: Found) -> bool:
    """Whether the sentence says that it went: "the recipe cut the sugar and she eats it all the same"."""
    before = said[max(0, hit.start - 30) : hit.start]
    if _SWAPPED.search(before) and _FOR_ANOTHER.match(said, hit.end):
        return True
    gone = _DONE_WITHOUT.search(before)
    if not gone or _STILL_IN.search(said[hit.end :]):
        return False
    return not gone.group().lower().startswith("cut") or bool(_POURED.search(said[hit.start : hit.end]))
