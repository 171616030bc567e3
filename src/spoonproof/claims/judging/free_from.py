"""Statements that list allergens as left out, or as in it: each is looked for, and the worst answer is the answer."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set

from spoonproof.claims.conditions import Absent, Group
from spoonproof.claims.judging.context import Context
from spoonproof.claims.judging.polarity import without_phrases
from spoonproof.claims.judging.probes import AnyProbe, DishProbe
from spoonproof.claims.judging.reading import around
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim, Truth
from spoonproof.model.finding import SourceRef
from spoonproof.model.plural import singular

_LISTED = re.compile(
    r" (?:free from|free of|without|none of|no|not|minus|zero|neither|nor|contain no|contains no) (.*)"
)
_ON = re.compile(
    r"(?:[ ,]{1,3}(?:and |or |nor )?(?:no|without|zero|free from|free of) [\w’' -]{1,40}){1,6}", re.IGNORECASE
)
_ENDS = re.compile(r"(.*) free ")
_JOINED = re.compile(r" (?:and|or) ")
_MARKS = re.compile(r"[,;:(]")
_BUT = re.compile(r" (?:but|with|contains|has|only|just|so) ")
_ABSENT = frozenset({"free", "none"})
_NEXT = re.compile(r" ([a-z]+)\b(?!-)( ?[,(])?")
_A_WORD = 24  # characters that hold the next word


def named_absent(claim: Claim, register: Register) -> tuple[str, ...]:
    """The allergens that its words say are not in it: "made without milk or egg", "nut and egg free"."""
    region = _region(claim, register)
    return _and_peanuts(region, register) if region else ()


def _and_peanuts(region: str, register: Register) -> tuple[str, ...]:
    """The allergens that some words name; who reads "no nuts" reads no peanuts."""
    named = _named(region, register)
    unsaid = "nuts" in named and "peanut" not in named and " tree nut" not in region
    return (*named, "peanut") if unsaid else named


def _region(claim: Claim, register: Register) -> str:
    """The words that list what it says is not in it, "" where it says no such thing."""
    if claim.level not in _ABSENT:
        return ""
    # "Contains no milk", and then "and no soya": what goes on with another "no" belongs to the list.
    on = _ON.match(claim.passage.text, claim.end)
    said = _after_its_name(claim.quote) + (on[0] if on else "")
    words = without_phrases(plain(said), register.words.get("no allergen", ()))
    if listed := _LISTED.search(words):
        return _BUT.split(f" {listed[1]} ", maxsplit=1)[0]  # "without milk, but with sesame"
    before = _ENDS.match(words)
    return before[1] if before else ""


def _after_its_name(quote: str) -> str:
    """What a dish is free from without what it is called: "Egg, leek and pea tart, *nut-free*". A list stays whole:
    "milk, egg and nut free", "milk, egg, nut-free"."""
    *called, last = _MARKS.split(quote)
    name = ",".join(called)
    a_list = _JOINED.search(last) or " " not in name or (len(called) > 1 and not _JOINED.search(name))
    return quote if a_list or " free" in plain(name) or not _ENDS.search(plain(last)) else last


def of_what_is_made(claim: Claim, called: Set[str]) -> bool:
    """Whether the food that is said to be free of an allergen is but the first word of what is made of it: of the dish,
    whose words are ``called`` ("dairy-free carrot porridge"), or of another ("spinach ribbons, egg-free")."""
    if claim.level not in _ABSENT:
        return False
    said = claim.passage.text[claim.start : claim.end + _A_WORD].lower()
    behind = (_NEXT.match(said.partition(subject.lower())[2]) for subject in claim.subjects)
    return any(word is not None and (word[1] in called or word[2] is not None) for word in behind)


def heads_the_page(claim: Claim) -> bool:
    """Whether a title or a summary says it of the dish: "Sugar-free pancakes"; "Apples, no added sugar"; "Cauliflower
    and potato, whipped up light and dairy-free". Not "oat milk is dairy-free", nor "with dairy-free yoghurt"."""
    if claim.passage.kind != "description":
        return claim.passage.kind == "title"
    said = plain(claim.quote)
    behind = said.rpartition(" free ")[2] if claim.foods else ""
    left_out = claim.kind == "allergen" and not IS_FREE.search(said)
    return "sugars_g" in claim.nutrients or (left_out and not any(plain(food) in behind for food in claim.subjects))


IS_FREE = re.compile(
    r" (?:is|are|was|were|isn't|aren't|wasn't|weren't)(?: not| never| naturally| always)?(?: [a-z]+)? free "
)


def _goes_in(claim: Claim, probe: AnyProbe, register: Register) -> str:
    """A food of the dish that its words say is not in it, and that is on no list of allergens: "coconut-free"; "" where
    there is none."""
    if claim.kind != "allergen" or not isinstance(probe, DishProbe):
        return ""
    region = _region(claim, register)
    # "Rice, pea and sesame-free cakes" are of rice and pea: a food that is no allergen is left out next to "free".
    left_out = region.split()[-1:] if _ENDS.search(plain(claim.quote)) else region.split()
    said = {singular(word) for word in left_out}
    said -= {
        singular(word) for words in register.allergens.words.values() for phrase in words for word in phrase.split()
    }
    return next((food for food in probe.numbers.dish_foods() if said & {singular(w) for w in food.split("-")}), "")


def _named(words: str, register: Register) -> tuple[str, ...]:
    """The allergens that some words name, in their order."""
    region = f" {words.strip()} "
    found = [name for name, said in register.allergens.words.items() if has_any(region, said)]
    places = {name: [region.find(plain(word)) for word in register.allergens.words[name]] for name in found}
    found.sort(key=lambda name: min(place for place in places[name] if place >= 0))
    # Wheat is one of the cereals with gluten: who names wheat says nothing of barley.
    return tuple(name for name in found if name != "gluten" or "wheat" not in found or " gluten " in region)


def listed_absent(claim: Claim, probe: AnyProbe, register: Register) -> Verdict | None:
    """The truth of a list of what is left out that no entry is about; None where it names no allergen.

    That no ingredient brings gluten is not that there is none: it stays unproven.
    """
    if food := _goes_in(claim, probe, register):
        return _by_law("false", f"It goes in: {food.replace('-', ' ')}.", [_IN_IT.format(food)])
    named = named_absent(claim, register)
    if claim.kind != "allergen" or not named:
        return None
    answers, wording = {allergen: probe.contains(allergen) for allergen in named}, _without(named, claim)
    if there := next((allergen for allergen in named if probe.bringing(allergen)), None):
        return _by_law("false", _contains(there, probe.bringing(there)), _looked(answers))
    if set(answers.values()) != {"no"} or "gluten" in named:
        return _by_law("unproven", "Whether all of it is left out is not known here.", _looked(answers), wording)
    verdict = _by_law("true", "It holds for what goes in.", _looked(answers), wording, harm=None)
    _but_for_the_family(claim, verdict, probe, named)
    return verdict


def for_the_allergic(claim: Claim, probe: AnyProbe, register: Register) -> Verdict | None:
    """The truth of "safe for children with an egg allergy", "for anyone who avoids milk": false where it goes in. Where
    it does not, traces keep it unproven: what is left out may be said. None where it says no such thing, or where what
    goes in is not known."""
    if claim.kind != "allergen" or claim.level not in _ABSENT or claim.polarity not in ("asserts", "hedges"):
        return None
    whose = _WHOSE.search(plain(claim.quote))
    named = _and_peanuts(whose[0], register) if whose is not None else ()
    answers = {allergen: probe.contains(allergen) for allergen in named}
    if not named or _region(claim, register) or "unknown" in answers.values():
        return None
    if there := next((allergen for allergen in named if answers[allergen] == "yes"), None):
        return _by_law("false", _contains(there, probe.bringing(there)), _looked(answers))
    why = "None of it goes in; traces cannot be ruled out here: say what it is made without."
    return _by_law("unproven", why, _looked(answers), _without(named, claim))


def _by_law(truth: Truth, why: str, steps: list[str], wording: str | None = None, harm: int | None = 3) -> Verdict:
    """An answer that rests on the law's list of allergens."""
    return Verdict(truth, why, None, (SourceRef("eu-1169-2011", "Annex II", "read"),), wording, harm=harm, steps=steps)


_WHOSE = re.compile(
    r" (?:[a-z']+ ){0,3}?(?:allerg[a-z]+|intoleran[a-z]+|avoid[a-z]*"
    r"|(?:can't|cannot|don't|doesn't) (?:have|eat|tolerate)) (?:to )?(?:[a-z']+ ){0,3}"
)
"""Who goes without it, with what they go without: "an *egg allergy*", "those who *can't have milk*"."""


def listed_present(claim: Claim, probe: AnyProbe, register: Register) -> Verdict | None:
    """The truth of "contains: milk, sesame"; None where it says no such thing, or nothing is known."""
    if claim.kind != "allergen" or claim.level is not None or claim.polarity != "asserts" or claim.effect:
        return None  # "no more allergies with eggs" lists nothing
    words = plain(claim.quote)
    after = next((words.partition(f" {word} ")[2] for word in CONTAINING if f" {word} " in words), "")
    named = _named(without_phrases(f" {after} ", register.words.get("no allergen", ())), register)
    answers = {allergen: probe.contains(allergen) for allergen in named}
    if not named or "unknown" in answers.values():
        return None
    absent = [allergen for allergen, answer in answers.items() if answer == "no"]
    if isinstance(probe, DishProbe):
        absent = [allergen for allergen in absent if not probe.of_family(allergen)]
    if absent:
        return _by_law("false", f"Nothing that goes in brings {' or '.join(absent)}.", _looked(answers), harm=1)
    return _by_law("true", "It holds for what goes in.", _looked(answers), harm=None)


def says_what_is_in_it(claim: Claim) -> bool:
    """Whether its own words say that an allergen is in it, whatever its name is free of: "lactose-free milk contains
    milk"."""
    words = plain(claim.quote)
    contains = any(f" {word} " in words for word in CONTAINING) and " may " not in words
    return claim.kind == "allergen" and claim.level is None and claim.polarity == "asserts" and contains


def what_it_is(claim: Claim, context: Context, register: Register) -> Verdict | None:
    """The truth of "tahini is sesame", "ghee is not milk", by the table of foods; None where it says no such thing, or
    where what it names is on no table."""
    found = _IS.search(plain(claim.quote)) if claim.kind == "allergen" and claim.level is None else None
    named = _named(found["what"], register) if found is not None else ()
    if found is None or len(named) != 1 or len(claim.foods) != 1 or claim.polarity not in ("asserts", "denies"):
        return None
    food = claim.foods[0].replace("-", " ")
    brought = context.allergens.get(claim.foods[0], frozenset(_named(food, register)))  # "groundnut" is its own name
    if claim.foods[0] not in context.allergens and not brought:
        return None
    has = named[0] in brought
    if not has and "whole-nut" in context.traits.get(claim.foods[0], ()):
        return None  # "chestnut isn't a nut", "pine nuts aren't nuts": on no list of the law, and eaten for nuts
    why = f"{food[:1].upper()}{food[1:]} {'counts as' if has else 'does not count as'} {named[0]}."
    truth: Truth = "true" if has is not bool(found["no"]) else "false"
    verdict = _by_law(truth, why, ["truth: looked for among the food's allergens"])
    verdict.stanced = True
    return verdict


_IS = re.compile(
    r"^ (?:an? |the |and |but |all )?(?:[a-z'é-]+ ){1,3}?(?:is|are)(?P<no> not|n't| never)? "
    r"(?:(?:an?|just|really|simply|only|pure|made of|made from|a kind of|a form of) ){0,3}"
    r"(?P<what>(?:[a-z]+ )?[a-z]+) $"
)
"""A food that is called an allergen, and no more is said: "groundnut is peanut", "nutmeg isn't a nut"."""


def counted_among(claim: Claim, context: Context, register: Register) -> Verdict | None:
    """The truth of "is one of the nine allergens", or is not one of them, by the law's lists; None where it says no
    such thing, or where what it names is on no table. Nine are those of the United States, fourteen Europe's."""
    found = _COUNTED.search(plain(claim.quote)) if claim.kind == "allergen" else None
    if found is None or not claim.foods or any(food not in context.allergens for food in claim.foods):
        return None
    market = "US" if found["how"] in _AMERICAN else "EU"
    listed = register.allergens.named(market)
    among = [bool(context.allergens[food] & set(listed)) for food in claim.foods]
    refs = tuple(dict.fromkeys(listed.values()))[:1]
    names = " and ".join(food.replace("-", " ") for food in claim.foods)
    law = "the nine of the law in the United States" if market == "US" else "the fourteen of the law in Europe"
    if all(among) or not any(among):
        why = f"{names[:1].upper()}{names[1:]}: {'among' if among[0] else 'not among'} {law}."
        truth: Truth = "true" if among[0] is not bool(found["no"]) else "false"
        return Verdict(
            truth, why, None, refs, harm=2, stanced=True, steps=[f"truth: looked for on the list of {market}"]
        )
    return None


def _but_for_the_family(claim: Claim, verdict: Verdict, probe: AnyProbe, absent: Iterable[str]) -> None:
    """Ask for "in the baby's portion" where what is said to be ``absent`` goes into the family's bowl ("no added salt
    anywhere in the pot"), unless the words speak of her portion."""
    if not isinstance(probe, DishProbe) or claim.level not in _ABSENT or _HER_SHARE.search(plain(around(claim))):
        return
    brought = ((what,) if probe.of_family(what) else probe.brought_to_the_family(what) for what in absent)
    food = next((food.replace("-", " ") for foods in brought for food in foods), "")
    if food:
        verdict.add = f"that it is so of the baby's portion: the family's has {food}"
        verdict.wording = f"{claim.quote.strip().rstrip('.,;')} in the baby's portion"
        verdict.steps.append(f"the family's bowl has {food}")


def _said_absent(verdict: Verdict) -> Iterator[str]:
    """What the condition of the entry behind a verdict wants to be absent."""
    condition = verdict.entry.condition if verdict.entry is not None else None
    for part in condition.parts if isinstance(condition, Group) else (condition,):
        if isinstance(part, Absent):
            yield from part.what


_HER_SHARE = re.compile(r" (?:baby(?:'s)?|little ones?|(?:her|his|their) (?:portion|bowl)|for (?:her|him)) ")
_IN_IT = "truth: {} is said to be left out, and goes in"
_COUNTED = re.compile(
    r" (?P<no>(?:is|are|was|were)(?: not|n't| never| no longer)(?: even| actually| in fact)?|not|none|never )?"
    r" ?(?:one of|among|amongst|on the list of) (?:the |our |its )?(?:big |top |main |major |law's |so called )?"
    r"(?P<how>nine|9|big nine|fourteen|14|major|main|listed|us|top)? ?"
    r"(?:[a-z]+ ){0,3}?allergens? "
)
_AMERICAN = frozenset({"nine", "9", "us", "big nine"})


def _looked(answers: Mapping[str, str]) -> list[str]:
    """One step: what was looked for among what goes in, and what was found."""
    found = {"yes": "goes in", "no": "doesn't go in", "unknown": "not known"}
    return [
        "truth: looked for in what goes in: " + ", ".join(f"{name} {found[said]}" for name, said in answers.items())
    ]


CONTAINING = ("contain", "contains", "containing", "has", "with", "brings")


def _without(named: Sequence[str], claim: Claim) -> str:
    """The list in words, as it was said: "made without milk, egg or nuts"."""
    quote = plain(claim.quote)
    said = [name for name in named if name != "peanut" or "peanut" in quote]
    said = ["tree nuts" if name == "nuts" and "tree nut" in quote else name for name in said]
    return "made without " + " or ".join(part for part in (", ".join(said[:-1]), said[-1]) if part)


def _contains(allergen: str, foods: Sequence[str]) -> str:
    return f"It contains {allergen}, from {' and '.join(food.replace('-', ' ') for food in foods)}."


def all_absent(claim: Claim, verdict: Verdict, probe: AnyProbe, register: Register) -> None:
    """Take back that it is true where one of the allergens named goes in, or where that is not known."""
    computed = verdict.entry is not None and verdict.entry.truth == "computed"
    if verdict.truth != "true" or not computed or claim.polarity not in ("asserts", "hedges"):
        return
    named = named_absent(claim, register)
    _but_for_the_family(claim, verdict, probe, (*_said_absent(verdict), *named))
    if food := _goes_in(claim, probe, register):
        verdict.truth, verdict.why = "false", f"It goes in: {food.replace('-', ' ')}."
        verdict.wording, verdict.harm = None, 3
        verdict.steps.append(_IN_IT.format(food))
        return
    if verdict.wording is not None and len(named) > 1:
        verdict.wording = _without(named, claim)
    for allergen in named:
        if probe.contains(allergen) == "no":
            continue
        foods = probe.bringing(allergen)
        verdict.truth = "false" if foods else "unproven"
        verdict.why = _contains(allergen, foods) if foods else f"Whether {allergen} goes in is not known."
        verdict.wording, verdict.harm = None, 3
        verdict.steps.append(f"named as absent: {allergen}, which {'goes in' if foods else 'is not known'}")
        if foods:
            return
