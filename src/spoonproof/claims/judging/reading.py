"""What a claim says for itself: its subjects as ids, the age it speaks of, its sentence and its clause."""

from __future__ import annotations

import math
import re
from functools import lru_cache

from spoonproof.claims.judging.context import Context
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain, slug
from spoonproof.model.claim import Claim
from spoonproof.model.plural import singular
from spoonproof.model.record import replace

ADULT_MONTHS = 216
_NEAR = 120
_STOPS = (".", "!", "?", "\n", ";")
_CLAUSE_STOPS = (*_STOPS, ",", " but ", " anyway ", " by the way ", " mind you ")
_CLAUSE = 60
_SO = re.compile(
    r"\s?[,;]? so (?:it|they|this|that|these|you|your|babies|baby|skip|avoid|never|don['’]t)\b[^.!?;,\n]{0,60}",
    re.IGNORECASE,
)
_NEWBORN = ("newborn", "newborns", "new born", "new borns", "from birth", "at birth")
_ADULT = ("adult", "adults", "mother", "mothers", "mum", "mums", "women", "men", "pregnant", "pregnancy", "athlete")
_MANKIND = ("humans", "human beings", "human body", "mankind", "evolution*")
_AGE = re.compile(r"(\d{1,3}|[a-z]+) (month|months|mo|year|years|yr|week|weeks)(?: olds?)? ")
_HOW_OFTEN = re.compile(r"(?:per|each|every|a (?!year))")
_BARE = re.compile(
    r"(?:before|under|until|till|after|from|over|past|age|of) "
    r"(?:(?:he's|she's|they're|baby's|(?:he|she|they|baby) (?:is|are|turns?)) )?(\d{1,2}|[a-z]+) "
)
_FROM_AGE = re.compile(
    r"^ (?:from|at|around) (?:about |around |the age of )?[a-z0-9]+ (?:months?|years?|mo) "
    r"(?!.* (?:months?|years?|birthday|no|not|never|avoid) )"
)
"""An age that opens the claim as its beginning: "from six months, cooked until soft" waits for nothing."""
_ONLY_LATER = re.compile(
    r"(?<! not)(?<!n't)(?<! longer) only (?:[a-z]+ ){0,3}"
    r"(?:after|once|past|from (?:the age of )?(?:a year|one|two|three|four|five|12 months|twelve months)) "
)
_SINCE = re.compile(r" (?:after|past) (?:the|their|her|his|your baby's) first | (?:once|after) they turn ")
_FIRST = ("first year", "first birthday", "a year", "one year", "their first")


def subjects_of(claim: Claim) -> frozenset[str]:
    """Ids a claim is about: foods, nutrients, and every run of words of its subjects as a slug."""
    found: set[str] = set(claim.nutrients) | set(claim.allergens)
    for text in (*claim.foods, *claim.subjects):
        found |= runs_of(text)
    return frozenset(found)


@lru_cache(maxsize=4096)
def runs_of(text: str) -> frozenset[str]:
    """Every run of up to three words as a slug, and with its last word in the singular."""
    parts = slug(text).split("-")[:40]
    found: set[str] = set()
    for start in range(len(parts)):
        for end in range(start + 1, min(start + 3, len(parts)) + 1):
            run = parts[start:end]
            found.add("-".join(run))
            found.add("-".join([*run[:-1], singular(run[-1])]))
    return frozenset(found)


def months_of(claim: Claim, context: Context, register: Register) -> tuple[int, bool]:
    """The month the claim speaks of, and whether it said so itself; else the youngest the dish is for."""
    words = plain(f"{claim.quote} {claim.relates_to or ''}" if claim.kind == "safety-age" else claim.quote)
    number = claim.number
    stated: float | None = None
    if number is not None and number.unit.startswith(("month", "year", "week")):
        per = 12.0 if number.unit.startswith("year") else 1.0 if number.unit.startswith("month") else 12 / 52
        stated = number.value * per
    elif match := _age_in(words):
        stated = _months(match, register)
    elif has_any(words, _FIRST):
        stated = 12
    elif claim.kind == "safety-age" and (match := _BARE.search(words)):
        value = _count(match[1], register)
        # "before one", "under two": years when it is a small bare number.
        years = value is not None and (value in _OF_AGE or value <= (_WEANED_AT - 1 if _WEANING.search(words) else 5))
        stated = value * 12 if value is not None and years else value
    if stated is None and claim.kind == "safety-age" and (match := _age_in(plain(clause(claim)))):
        stated = _months(match, register)  # "ready for solids at around two months": the age stands behind it
    if stated is not None:
        said_of = plain(_own_side(claim)) if claim.kind == "safety-age" else words
        before = has_any(said_of, register.words.get("before", ())) and not _since(words)
        begins = _FROM_AGE.search(plain(claim.quote))
        before = (before and not begins) or only_later(said_of)
        # "Before 17 weeks" is said of the fourth month still: its last whole month is the third.
        return (max(0, math.ceil(stated) - 1) if before and stated > 0 else int(stated)), True
    if has_any(plain(around(claim)), _NEWBORN):
        return 0, True
    audience = plain(claim.audience or "")
    if has_any(audience, _ADULT) or has_any(plain(around(claim)), _MANKIND):
        return ADULT_MONTHS, True
    if has_any(plain(around(claim)), _TODDLER) and not has_any(plain(around(claim)), _YOUNGER):
        return max(_TODDLER_MONTHS, context.ages[0]), True
    return context.ages[0], False


_WEANING = re.compile(r" (?:solids?|wean[a-z]*|first (?:foods?|tastes?)|puree[a-z]*|baby rice) ")
_OF_AGE = (16, 18)
"""Bare numbers that are years all the same: "for nobody under sixteen"."""
_WEANED_AT = 4
"""Months from which solid food is spoken of: "no solids before four" means no years."""
_TODDLER = ("toddlers", "a toddler")  # "your toddler" may be a baby still
_YOUNGER = ("bab*", "infant*", "under one", "under ones", "weaning", "first tastes", "all ages", "any age")
_TODDLER_MONTHS = 12
"""A toddler is past the first birthday (common practice): "honey is fine for toddlers" is said of no baby."""


def _since(words: str) -> bool:
    """Whether it begins at the age it names, whatever is said of the time before: "after the first birthday it is okay,
    before it never"; what waits until then is said of the time before."""
    return _SINCE.search(words) is not None and not has_any(words, ("until", "till", "wait*", "before"))


def only_later(words: str) -> bool:
    """Whether plain words keep something back by an "only": "egg white is only safe after one"."""
    return _ONLY_LATER.search(words) is not None


def _age_in(words: str) -> re.Match[str] | None:
    """The first age in plain words; how often is none: "twice a week from six months"."""
    return next((age for age in _AGE.finditer(words) if " old" in age[0] or not _HOW_OFTEN.match(age[0])), None)


def age_said(words: str, register: Register) -> float | None:
    """The months of the first age in plain words, None where they name none; "before one" is said of a year."""
    age = _age_in(words)
    if age is not None:
        return _months(age, register)
    bare = _BARE.search(words)
    value = None if bare is None else _count(bare[1], register)
    return None if value is None else value * 12 if value <= 5 else value


def _months(match: re.Match[str], register: Register) -> float | None:
    """The months of an age in words; None where its number is none."""
    value = 1.0 if match[1] == "a" else _count(match[1], register)  # "under a year"
    unit = match[2]
    per = 12 if unit.startswith("y") else 12 / 52 if unit.startswith("w") else 1
    return None if value is None else value * per


def _count(text: str, register: Register) -> float | None:
    if text.isdigit():
        return float(text)
    ages = register.words.get("ages", ())  # from one upwards, none left out
    return float(ages.index(text) + 1) if text in ages else None


def around(claim: Claim, stops: tuple[str, ...] = _STOPS, most: int = _NEAR) -> str:
    """The sentence the claim stands in, as far as it can be told: to the next of ``stops``, at most
    ``most`` characters either side, and in speech without stops no further than the breath it was said in."""
    start, end = place_of(claim, stops, most)
    return claim.passage.text[start:end]


def place_of(claim: Claim, stops: tuple[str, ...] = _STOPS, most: int = _NEAR) -> tuple[int, int]:
    """Where the words of ``around`` stand in the claim's passage."""
    text = claim.passage.text
    return _between(text, claim.start, claim.end, claim.sentence or (0, len(text)), stops, most)


@lru_cache(maxsize=64)  # a claim's sentence is asked for by one judge after the other
def _between(
    text: str, begun: int, ended: int, sentence: tuple[int, int], stops: tuple[str, ...], most: int
) -> tuple[int, int]:
    first, last = max(begun - most, sentence[0]), min(ended + most, sentence[1])
    start = max(_before(text, mark, first, begun) + 1 for mark in stops)
    ends = [found for mark in stops if (found := _behind(text, mark, ended, last + len(mark) - 1)) >= 0]
    return max(start, first), min([*ends, last])


def _own_side(claim: Claim) -> str:
    """Its sentence as far as the next "but" on either side: "solids at around six months, but not before four" begin at
    six."""
    at_but = claim.start + len(_BUT) - 2 if claim.quote.lower().startswith("but ") else claim.start
    return around(replace(claim, start=at_but), (*_STOPS, _BUT))


def said_before(claim: Claim) -> str:
    """The claim's sentence up to it."""
    text = claim.passage.text[max(0, claim.start - _NEAR) : claim.start]
    return text[max(text.rfind(mark) for mark in ".!?;\n") + 1 :]


def only_that(claim: Claim) -> bool:
    """Whether it is said of its food alone: "*only* white sugar harms teeth"."""
    return said_before(claim).lower().rstrip().endswith("only")


def said_behind(claim: Claim) -> str:
    """What stands behind the claim in its sentence."""
    text = claim.passage.text
    ends = [found for mark in ".!?;\n" if (found := text.find(mark, claim.end, claim.end + _NEAR)) >= 0]
    return text[claim.end : min([*ends, claim.end + _NEAR])]


def _before(text: str, mark: str, first: int, end: int) -> int:
    """Where ``mark`` stands last before ``end``, -1 where it does not; the point of "22.5 g" is no stop."""
    at = text.rfind(mark, first, end)
    while at > 0 and mark == "." and text[at - 1].isdigit() and text[at + 1 : at + 2].isdigit():
        at = text.rfind(mark, first, at)
    return at


def _behind(text: str, mark: str, start: int, last: int) -> int:
    """Where ``mark`` stands first from ``start`` on, -1 where it does not; decimal points apart."""
    at = text.find(mark, start, last)
    while at > 0 and mark == "." and text[at - 1].isdigit() and text[at + 1 : at + 2].isdigit():
        at = text.find(mark, at + 1, last)
    return at


def clause(claim: Claim) -> str:
    """The claim's own clause: to the next stop, comma or "but"; what is drawn from it ("it is wheat-free, so it is fine
    for coeliacs") belongs to it."""
    words = around(_behind_but(claim), _CLAUSE_STOPS, _CLAUSE)
    drawn = _SO.match(claim.passage.text, claim.end)
    if drawn and drawn[0].strip(", ") not in words:
        words = f"{words} {drawn[0]}"
    return words


def _behind_but(claim: Claim) -> Claim:
    """The claim from its "but" on, where all it is about stands behind that: "nut butter is fine from six months, but
    whole nuts have to wait" has a clause for each."""
    at = claim.quote.rfind(_BUT)
    if at < 0:
        return claim
    subjects = subjects_of(claim)
    before, behind = runs_of(claim.quote[:at]), runs_of(claim.quote[at + len(_BUT) :])
    if subjects & before or not subjects & behind:
        return claim
    return replace(claim, start=claim.start + at + len(_BUT))


_BUT = " but "


def only_named(claim: Claim) -> bool:
    """Whether its words are but the subject of what its sentence says: "sodium in cheese doesn't count"."""
    if claim.kind != "nutrient-content" or claim.level != "contains":
        return False
    behind = claim.passage.text[claim.end : claim.end + _NEAR]
    return _NAMED.match(claim.quote) is not None and _SAYS_OF_IT.match(behind) is not None


_NAMED = re.compile(r"(?:the |all the )?(?:[\w-]+ ){1,3}(?:in|from) [\w'’-]+(?: [\w'’-]+){0,3}\s?$", re.IGNORECASE)
_SAYS_OF_IT = re.compile(
    r" (?:(?:is|are|was|were|do|does|did|can|could|may|might|will|would|should|has|have)(?:n['’]t|not)?"
    r"|[a-z]{3,12}[^s\W]s) ",
    re.IGNORECASE,
)
