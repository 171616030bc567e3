"""One reading of a sentence's words: which of the judged claims say no more than another one, and are told with it and
not scolded beside it; and where words are kept in one reading and not in another, that the worse one is told."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Sequence

from spoonproof.claims.judging.reading import only_named
from spoonproof.model.claim import Claim, JudgedClaim
from spoonproof.model.record import replace


def without_fragments(claims: Sequence[JudgedClaim]) -> list[JudgedClaim]:
    """The claims without those on no list that lie within a longer one that is kept, or that say besides such a one for
    whom it is: "vitamin C helps the body" says nothing that "vitamin C helps the body absorb iron" doesn't, nor does
    "fat gives energy to babies" beside "fat gives energy"."""
    sentences: dict[tuple[int, tuple[int, int] | None], list[JudgedClaim]] = defaultdict(list)
    for one in claims:
        sentences[id(one.claim.passage), one.claim.sentence].append(one)
    left = {id(one): told for together in sentences.values() for one, told in _without_fragments(together)}
    return [left[id(one)] for one in claims if id(one) in left]


def _without_fragments(claims: Sequence[JudgedClaim]) -> Iterator[tuple[JudgedClaim, JudgedClaim]]:
    """The same of the claims of one sentence, each with itself as it is told: a long film has many claims, a sentence
    few."""
    claims = [one for one in claims if one.claim.nutrients or not any(_same_number(one, other) for other in claims)]
    claims = [one for one in claims if len(claims) < 2 or not only_named(one.claim)]
    claims = [one for one in claims if len(claims) < 2 or not _an_age(one.claim)]
    kept = [one for one in claims if one.truth == "true" and one.stays]
    claims = [one for one in claims if not any(_only_a_part(one, other) for other in kept)]
    for one in claims:
        if not any(worse_reading(other, one) for other in claims):
            yield one, _beside(one, [other for other in claims if worse_reading(one, other)])


def worse_reading(other: JudgedClaim, one: JudgedClaim) -> bool:
    """Whether ``one`` stands on words that ``other`` has something against: of two readings of the same words the worse
    decides ("babies need 90 mg of iron" is more than that they need iron). A part that says another kind of thing may
    stand beside what is cut of the whole ("carrots have vitamin A, which cures colds"), as long as none of the words
    that are cut are its own; what is only to be softened or sourced decides where it says all that the other does."""
    a, b = one.claim, other.claim
    if not a.overlaps(b) or not one.stays or other.stays:
        return False
    if b.effect == "danger" and a.kind in _PRAISE and b.subjects:
        return any(food in a.quote.lower() for food in b.subjects)  # "a swordfish steak brings omega-3": it is given
    part_of_worse = b.start <= a.start and a.end <= b.end
    if not other.advice.startswith("cut"):
        return (a.kind == b.kind and part_of_worse) or b.kind == "quantity"
    return a.kind == b.kind or not part_of_worse or a.end - a.start == b.end - b.start


_PRAISE = frozenset({"nutrient-content", "quantity", "comparative", "function", "general-benefit"})


def _beside(one: JudgedClaim, better: Sequence[JudgedClaim]) -> JudgedClaim:
    """The claim, its trail saying which readings of its words it outweighs."""
    steps = tuple(f"read as {other.claim.kind} (“{other.claim.quote.strip()}”) it would stand" for other in better)
    return replace(one, trail=(*one.trail, *steps, "of two readings the worse is told")) if better else one


def _only_a_part(one: JudgedClaim, other: JudgedClaim) -> bool:
    """Whether there is nothing against ``one`` but that it says too little to be on a list, and ``other`` says it."""
    if one.claim.kind == "disease" and other.claim.kind == "allergen" and _WITH_IT.search(one.claim.quote):
        a, b = one.claim, other.claim
        return b.start <= a.start and a.end < b.end  # "for babies with eczema, lowered the rate of peanut allergy"
    if one.truth == "unlisted" and (one.claim.start, one.claim.end) == (other.claim.start, other.claim.end):
        return True  # the very words that are kept by what they say
    if one.truth == "unproven" and not one.advice.startswith("cut"):
        return _within(one, other)
    return one.truth == "unlisted" and _said_by(one, other)


def _said_by(one: JudgedClaim, other: JudgedClaim) -> bool:
    a, b = one.claim, other.claim
    if a.kind == b.kind == "function" and a.effect is None and a.overlaps(b) and not a.foods and a.nutrients:
        return set(a.nutrients) <= set(b.nutrients)  # "kids need protein", and then "protein for their bones"
    return _within(one, other) or (
        _within(other, one) and one.claim.kind == other.claim.kind and _for_whom(one.claim, other.claim)
    )


def _same_number(one: JudgedClaim, other: JudgedClaim) -> bool:
    """Whether the other says of what the number of the one is: "1 g of salt" beside "1 g of salt a day"."""
    a, b = one.claim, other.claim
    both = a.kind == b.kind == "quantity" and one.truth == "unproven" and bool(b.nutrients)
    return both and a.number == b.number and a.overlaps(b)


_WITH_IT = re.compile(
    r"\bfor (?:[a-z]+ )?(?:bab(?:y|ies)|infants?|children|those|ones) with (?:[a-z]+ ){0,2}[a-z]+$", re.IGNORECASE
)
"""An illness at the end of a claim that says for whom what follows was shown."""


def _an_age(claim: Claim) -> bool:
    """Whether its number ends a range of ages, and is no amount: "from six months to five"."""
    before = claim.passage.text[max(0, claim.start - 24) : claim.start]
    return claim.kind == "quantity" and _UP_TO.search(before) is not None


_UP_TO = re.compile(r"\b(?:months?|years?|birth) (?:to|until|till|and) $", re.IGNORECASE)


def _for_whom(longer: Claim, shorter: Claim) -> bool:
    text = longer.passage.text
    return longer.effect is None and bool(
        _FOR_WHOM.fullmatch(f"{text[longer.start : shorter.start]}{text[shorter.end : longer.end]}")
    )


_FOR_WHOM = re.compile(
    r"\s+(?:for|in|to) (?:(?:your|young|small|growing|all|little|our) ){0,2}"
    r"(?:bab(?:y|ies)|infants?|toddlers?|children|kids|ones)[.,!]?",
    re.IGNORECASE,
)


def _within(one: JudgedClaim, other: JudgedClaim) -> bool:
    """Whether one is a part of a longer claim of its kind, or of a comparison: "iron from meat is absorbed" says what
    it does by itself, and with "better than" behind it holds one against another."""
    a, b = one.claim, other.claim
    if not (b.start <= a.start and a.end <= b.end) or b.end - b.start <= a.end - a.start:
        return False
    compared = b.kind == "comparative" and a.kind in ("function", "nutrient-content") and a.effect is None
    # "Iron from plants isn't absorbed" breaks off what goes on "as well as iron from meat".
    held_against = (
        a.kind == "function" and b.kind == "nutrient-content" and _HELD_AGAINST.search(b.quote[len(a.quote) :])
    )
    # "Juice is not needed" says of what it is not good, and "by babies under one" whose drink it is not.
    broken_off = a.polarity == "denies" and a.start == b.start and a.kind in ("function", "comparative")
    return bool(held_against) or (a.polarity == b.polarity and (a.kind == b.kind or compared or broken_off))


_HELD_AGAINST = re.compile(r"^ (?:as (?:well|much|easily|readily) as|(?:less|more)(?: \w+)? than) ", re.IGNORECASE)
