"""Sentences that are ordinary recipe talk whatever words they hold."""

from __future__ import annotations

import re

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import end_of, said_at
from spoonproof.claims.scan import Tagged

_SAYS = frozenset(
    """
    benefit choking contain copula effect energy health goodfor harm harmful healthier high loose low need per-day
    per-portion source
    """.split()
)
_PORTION = frozenset({"per-portion"})
_HEALTH = frozenset({"effect", "disease", "benefit", "harm", "energy", "harmful", "allergy", "common-allergen"})
_NUTRIENT = frozenset({"nutrient", "energy"})
# "we started her on rice", "my sister gave him egg": what somebody did once is no advice.
_TOLD = re.compile(
    r"\b(?:i|we|my \w+|our \w+|she|he)\b(?: \w+){0,4}? (?:gave|began|started|introduced|fed|tried|offered|put"
    r"|retried|switched)\b"
    r"|\b(?:i|we) (?:decided|chose|opted|planned|waited) (?:\w+ )?to (?:start|begin|introduce|wean|wait)\b"
    r"|\b(?:i|we|my \w+) (?:still )?(?:haven't|have not|hasn't) (?:\w+ )?(?:started|given|offered|tried|fed)\b"
    r"|\b(?:i|we|my \w+) (?:didn't|did not) (?:start|begin|introduce|give|offer|try|wean|feed)\b"
    r"|\b(?:friends|mums|moms|mothers) (?:of \w+ )?(?:have|had) been (?:weaning|giving|feeding|offering"
    r"|starting)\b"
    r"|(?<!till )(?<!until )(?<!before )(?<!when )\b(?:he|she) was "
    r"(?:(?:only|just|about|barely|nearly|almost|over|around|not) ){0,3}"
    r"(?:an? |\d[\d.]* ?|[a-z]+ (?:and a half )?)(?:weeks?|months?|years?)\b"
    r"|(?:\b(?:had|have|has)|'d|'ve) (?:\w+ )?been (?:\w+ )?(?:hoping|planning|meaning|wanting|waiting|trying) "
    r"to\b"
    r"|\b(?:he|she|my \w+|our \w+|son|daughter)(?:'s| is| was| has| had)(?: \w+)?(?: never| not| hardly| barely"
    r"| always)(?: been)? (?:\w+ ){0,2}interested\b"
    r"|\b(?:went|worked|did) (?:\w+ )?(?:for|with) us\b"
    r"|\b(?:wasn't|weren't) (?:\w+ )?ready\b"
    r"|^\W*(?:yes|so|well|and|now|but),? (?!bab|child|infant|toddler|if|when|once)[a-z]+ is (?:now |only "
    r")?\d[\d./ ]* ?(?:weeks?|months?)\b"
    r"|\b(?:i'd|i had|we'd|we had) (?:\w+ )?(?:put off|planned|meant|wanted|hoped)\b"
    r"|\b(?:my|our) (?:intention|plan|idea) was\b"
    r"|\b(?:i|we) (?:want|wanted|plan|hope|hoped|intend) to (?:wait|hold off)\b"
    r"|\b(?:kid|child|baby|toddler|little one|son|daughter) (?:gave up|refused)\b"
    r"|^\W*(?!bab|child|infant|toddler)[a-z]+ (?:(?:reached|turned|hit) |is (?:now |only )?\d[\d./ ]* "
    r"?(?:weeks?|months?)\b)"
    r"|\bwhen (?!bab|child|infant|toddler)[a-z]+ was (?:\w+ ){0,2}\w+ (?:weeks?|months?|years?)\b"
)
# Told of one's own, and nobody advised: "hoping to hold off weaning for another two weeks, to give us time".
_OURS = re.compile(r"\b(?:i|we|my|our|us|me)\b|^\W*(?:and |but |so )?(?:he|she|his|her)\b")
_AT_AN_AGE = (
    re.compile(  # what is done at an age is held up as a way to do it: "we give her cow's milk from seven months"
        r"\b(?:from|at|before|after|until|till|by|under|since|over|when) (?:the age of |the |about |around )?"
        r"(?:\w+ )?[\w½-]+ (?:weeks?|months?|years?)\b"
    )
)
_ADVICE = re.compile(
    r"\b(?:you|your|yours|bab(?:y|ies)|infants?|child(?:ren)?|toddlers?|kids?|little ones?|should|must|never|do|can|"
    r"cannot|\w+n't|may|might|wants?|plan|going to|needs?|recommend\w*|advi[sc]\w*|guid\w+|say|says|said|told|doctors?|"
    r"nurses?|midwife|visitors?|p(?:a|ae)?ediatricians?|gp|nhs|safe|safely|fine|ok|okay|great|good|avoid"
    r"|not|no|harm\w*|"
    r"risk\w*|chok\w*|tell (?:parents|mums|mothers|families|people|everyone)|so (?:he|she)(?:'s| is) ready)\b"
)
_TURNS = re.compile(
    r"\b(?:you|babies|children|toddlers|little ones) (?:can|should|could|must|may|shouldn't|can't|need)\b"
)
_LABEL_SAYS = re.compile(r"^according|\b(?:label|packet|packaging|advert\w*) (?:claims|says|promises|boasts|states)\b")
_DANGERS = frozenset(
    "never-yet hazard-food hazard-food-weak drink-not-yet sweet-drink sweet-juice forbid avoid okay fine "
    "harmful".split()
)
_TURNING = 3  # items before a match within which it may turn
_EATEN = frozenset("food dish generic-food solids hazard-food ambiguous-nutrient".split())
_BARE = frozenset("food eating diet intake consumption".split())  # what is eaten, whatever it is
_ASKING = frozenset({"why", "what", "how"})
_ASKED = frozenset("is are do does can should".split())
_POINTING = frozenset("it they this these them its their".split())
_ANNOUNCES = frozenset({"announces"})
_COUNT = frozenset({"number"})
_AGES = frozenset({"age-unit"})
_TO_AGE = 4  # items: "6 to 8 *months*"
_MEASURE = frozenset({"household", "unit"})
_TOLD_OF_IT = frozenset({"readiness", "enough"})  # "babies are born with *enough* iron for a year"


def is_ordinary(tagged: Tagged, present: frozenset[str]) -> bool:
    """Whether the sentence claims nothing by its form: an ingredient line, say."""
    if "label" in present and present.isdisjoint(_HEALTH) and _LABEL_SAYS.search(tagged.low) is None:
        return True
    if "definition" in present or ("announces" in present and tagged.find(_ANNOUNCES, 0, 3)):
        return True
    if (
        "physiology" in present
        and present.isdisjoint(_TOLD_OF_IT)
        and not any(tagged.items[i].words not in _BARE for i in tagged.find(_EATEN))
    ):
        return True
    return _ingredient_line(tagged, present) or _heading(tagged, present)


def _heading(tagged: Tagged, present: frozenset[str]) -> bool:
    """ "Why is vitamin D important?": a question that names no food is answered by what comes after it."""
    if said_at(tagged, 0) not in _ASKING or said_at(tagged, 1) not in _ASKED:
        return False
    return present.isdisjoint(_EATEN) and not any(item.words in _POINTING for item in tagged.items)


def is_story(text: str) -> bool:
    """Whether a sentence tells what somebody once did. ``text`` is in lower case."""
    return _TOLD.search(text) is not None


def is_ours(text: str, present: frozenset[str]) -> bool:
    """Whether a sentence tells of one's own family and advises nobody. ``text`` is in lower case."""
    if not present.isdisjoint(_DANGERS) or _OURS.search(text) is None:
        return False
    return _ADVICE.search(text) is None and _AT_AN_AGE.search(text) is None


def advises(tagged: Tagged, match: Match) -> bool:
    """Whether a sentence that tells a story turns to whoever listens before what was matched ends: "that's why I put it
    in *you can give* this from four months"."""
    last = end_of(match)
    text = tagged.low
    begin = tagged.items[max(0, match.start - _TURNING)].start
    turns = [turn.start() for turn in _TURNS.finditer(text, begin, tagged.items[last - 1].end)]
    return bool(turns) and not is_story(text[turns[-1] :])


def _ingredient_line(tagged: Tagged, present: frozenset[str]) -> bool:
    """ "2 tbsp flaxseed", "1/2 cup iron-fortified cereal": an amount first, and nothing said of it."""
    items = tagged.items
    begin = next((i for i, s in enumerate(tagged.symbols) if s not in ",_()" or items[i].words.isalpha()), 0)
    if begin >= len(items):
        return False
    counted = tagged.is_any(begin, _COUNT) and tagged.is_any(begin + 1, _MEASURE)
    if not (counted or items[begin].words[0].isnumeric()):
        return False
    if tagged.find(_AGES, begin + 1, begin + _TO_AGE):
        return False  # "6-month-olds can have yogurt", "6m+: avocado"
    if not tagged.find(_MEASURE, begin, begin + 5) and len(items) > 9:
        return False
    if "small-unit" in present or ("have" in present and not _NUTRIENT.isdisjoint(present)):
        return False  # nobody weighs milligrams out in a kitchen
    handfuls = all(said_at(tagged, i + 1) == "of" for i in tagged.find(_PORTION))  # "*a handful of* kale" says no share
    return (_SAYS - _PORTION if handfuls else _SAYS).isdisjoint(present)
