"""What a claim asks: its subjects as ids, the age it speaks of, and its stance on safety."""

from __future__ import annotations

import re
from functools import lru_cache

from spoonproof.claims.entries import Key, Stance
from spoonproof.claims.judging.context import Context
from spoonproof.claims.judging.probes import AnyProbe, DishProbe, FoodProbe, NoProbe
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, has_word, plain, singular, slug
from spoonproof.model.claim import Claim
from spoonproof.model.numbers import Numbers

ADULT_MONTHS = 216
_NEAR = 120
_STOPS = (".", "!", "?", "\n", ";")
_CLAUSE_STOPS = (*_STOPS, ",", " but ")
_CLAUSE = 60
_PARTS = re.compile(r"[,;]| but ")
_POINTING = frozenset(
    "it this that these those they them one dish recipe meal bowl pot".split()
    + [f"{which} {what}" for which in ("this", "the", "my", "our") for what in "dish recipe meal bowl one pot".split()]
)
_GENERIC = frozenset({"drinks", "baby-food", "seafood", "food"})
_ADULT = ("adult", "adults", "mother", "mothers", "mum", "mums", "women", "men", "pregnant", "pregnancy", "athlete")
_AGE = re.compile(r"(\d{1,3}|[a-z]+) (month|months|mo|year|years|yr|week|weeks)(?: olds?)? ")
_BARE = re.compile(r"(?:before|under|until|till|after|from|over|past|age|of) (\d{1,2}|[a-z]+) ")
_FIRST = ("first year", "first birthday", "a year", "one year", "their first")


def subjects_of(claim: Claim) -> frozenset[str]:
    """Ids a claim is about: foods, nutrients, and every run of words of its subjects as a slug."""
    found: set[str] = set(claim.nutrients) | set(claim.allergens)
    for text in (*claim.foods, *claim.subjects):
        found |= _runs(text)
    return frozenset(found)


@lru_cache(maxsize=4096)
def _runs(text: str) -> frozenset[str]:
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
    stated: int | None = None
    if number is not None and number.unit.startswith(("month", "year", "week")):
        per = 12.0 if number.unit.startswith("year") else 1.0 if number.unit.startswith("month") else 12 / 52
        stated = int(number.value * per)
    elif match := _AGE.search(words):
        value = _count(match[1], register)
        if value is not None:
            unit = match[2]
            stated = int(value * (12 if unit.startswith("y") else 12 / 52 if unit.startswith("w") else 1))
    elif has_any(words, _FIRST):
        stated = 12
    elif claim.kind == "safety-age" and (match := _BARE.search(words)):
        value = _count(match[1], register)
        # "before one", "under two": years when it is a small bare number.
        stated = None if value is None else int(value * 12 if value <= 5 else value)
    if stated is not None:
        said_of = plain(around(claim)) if claim.kind == "safety-age" else words
        before = has_any(said_of, register.words.get("before", ()))
        return (max(0, stated - 1) if before and stated > 0 else stated), True
    audience = plain(claim.audience or "")
    if has_any(audience, _ADULT):
        return ADULT_MONTHS, True
    return context.ages[0], False


def _count(text: str, register: Register) -> float | None:
    if text.isdigit():
        return float(text)
    numbers = dict(zip(register.words.get("ages", ()), (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 18), strict=False))
    return numbers.get(text)


def around(claim: Claim, stops: tuple[str, ...] = _STOPS, most: int = _NEAR) -> str:
    """The sentence the claim stands in, as far as it can be told: to the next of ``stops``, at most
    ``most`` characters either side (speech has no stops)."""
    text = claim.passage.text
    start = max(claim.start - most, 0, *(text.rfind(mark, 0, claim.start) + 1 for mark in stops))
    ends = [found for mark in stops if (found := text.find(mark, claim.end)) >= 0]
    return text[start : min([*ends, claim.end + most])]


def clause(claim: Claim) -> str:
    """The claim's own clause: to the next stop, comma or "but"."""
    return around(claim, _CLAUSE_STOPS, _CLAUSE)


def stance_of(claim: Claim, register: Register) -> Stance:
    """Whether a statement on safety says that a food may be given, may not (yet), or is no danger.

    The claim's own words decide where they can, else the clause around them: "avoid salt, but honey is
    fine" permits honey, "honey given before the age of one is a no-no" does not.
    """
    parts = [plain(part) for part in _PARTS.split(claim.quote)]
    subjects = subjects_of(claim)
    named = [part for part in parts if _runs(part) & subjects]
    for words in dict.fromkeys([*named[:1], plain(claim.quote)]):
        stance = _stance(words, register)
        if stance == "warns":
            # "No need to delay egg", "no way they can choke": what takes it back stands before the claim's own words.
            taken_back = _stance(plain(clause(claim)), register)
            held = has_any(words, register.words.get("holds back", ()))
            return taken_back if taken_back == "permits" or (taken_back == "dismisses" and not held) else stance
        if stance:
            return stance
        if has_any(words, register.words.get("allows", ())):
            return "permits"
    return _stance(plain(clause(claim)), register) or ("warns" if claim.polarity == "denies" else "permits")


def _stance(words: str, register: Register) -> Stance:
    def said(name: str) -> bool:
        return has_any(words, register.words.get(name, ()))

    if said("risk denied"):
        return "dismisses"
    if said("no need to hold back"):
        return "permits"
    before = has_any(words, register.words.get("before", ()))
    if said("holds back") or (before and has_word(words, "no")):
        return "warns"
    risks = [phrase for phrase in register.words.get("risk", ()) if has_word(words, phrase)]
    if risks:
        return "dismisses" if _negated(words, risks, register) else "warns"
    return ""


def _negated(words: str, phrases: list[str], register: Register) -> bool:
    """Whether a negation stands within four words before every one of these phrases."""
    negations = frozenset(register.words.get("negations", ()))
    tokens = words.split()
    firsts = {plain(phrase.rstrip("*")).split()[0] for phrase in phrases}
    places = [index for index, token in enumerate(tokens) if token in firsts]
    return bool(places) and all(negations & set(tokens[max(0, index - 4) : index]) for index in places)


def key_of_claim(claim: Claim, context: Context, register: Register) -> Key:
    """What the register is asked."""
    months, _ = months_of(claim, context, register)
    subjects = subjects_of(claim)
    near = plain(f"{clause(claim)} {claim.relates_to or ''}")
    if claim.kind == "safety-age" and set(claim.foods) <= _GENERIC:
        # "Cow's milk is fine as a main drink": what is drunk may stand outside the claim's own words.
        subjects |= _runs(near)
    return Key(
        kind=claim.kind,
        subjects=subjects,
        effect=claim.effect,
        level=claim.level,
        words=plain(claim.quote),
        near=near,
        months=months,
        today=context.today,
        stance=stance_of(claim, register),
        foods=tuple(_runs(food) for food in claim.foods),
    )


def probe_of(claim: Claim, numbers: Numbers | None, register: Register, context: Context) -> AnyProbe:
    """What to measure: the food it names, else the dish; nothing where neither is known."""
    if numbers is None:
        return NoProbe()
    foods = foods_of(claim, numbers)
    has_dish = bool(numbers.dish_foods())
    # "With no added sugar" under the title "Date and nut balls" is said of the balls, not of the dates.
    carried = any(step.startswith("carried from before") for step in claim.steps)
    if has_dish and carried and claim.level in ("none", "free"):
        return DishProbe(numbers, register, context)
    if foods and not claim.of_dish:
        return FoodProbe(foods[0], numbers, register, context, foods[1] if len(foods) > 1 else "")
    # In a recipe's own words "it" that points at nothing else is the dish.
    titled = claim.passage.kind == "title"  # "Sugar-free pancakes"
    pointing = all(plain(subject).strip() in _POINTING for subject in claim.subjects)
    if has_dish and (claim.of_dish or (not claim.foods and pointing) or (not foods and titled)):
        return DishProbe(numbers, register, context)
    return NoProbe()


def foods_of(claim: Claim, numbers: Numbers) -> list[str]:
    """The claim's foods that the food table knows, in order."""
    found: list[str] = []
    for food in (*claim.foods, *(slug(text) for text in claim.subjects)):
        for name in (food, singular(food)):
            if name not in found and numbers.food(name, "energy_kcal", "100g") is not None:
                found.append(name)
                break
    return found
