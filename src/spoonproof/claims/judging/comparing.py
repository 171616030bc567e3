"""One food, or the dish, held against another: the figures of both as eaten, and what they say."""

from __future__ import annotations

import re

from spoonproof.claims.conditions import show
from spoonproof.claims.entries import Key
from spoonproof.claims.judging.content import composition, nutrient_of
from spoonproof.claims.judging.context import Context
from spoonproof.claims.judging.probes import AnyProbe, FoodProbe, NoProbe
from spoonproof.claims.judging.reading import around, clause
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.number_words import number_of
from spoonproof.claims.wording import nutrient_name
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim, Truth
from spoonproof.model.finding import SourceRef
from spoonproof.model.numbers import Numbers
from spoonproof.model.plural import singular

_LESS = ("less", "fewer", "lower", "half the", "half as much")
_HALF = ("half the", "half as much")
_HALVED = 2.0
_TWICE = ("twice", "double")
_BEATS = ("beats", "beat", "trumps", "trump", "outdoes", "outdo", "tops", "outshines", "outshine")
_MORE_OR_LESS = (*_LESS, *_TWICE, *"more higher richer poorer greater times".split(), "as much", "as many", *_BEATS)
_REACH = 6
_PASSED = frozenset(
    "the a an one each every some plain ordinary regular normal usual standard everyday in from with there is are does"
    " do you find".split()
)
_COOKED = frozenset("mashed steamed boiled cooked roast roasted baked pureed stewed poached tinned canned".split())
"""How a food is cooked: where the table knows it by no such name, the food itself is meant ("mashed potato")."""
_MORE_FOODS = frozenset({"and", "or", "nor"})
_SORTS = frozenset("red green yellow white brown black purple".split())
_ALL = frozenset({"any", "most", "all", "other", "many"})


def comparison(claim: Claim, key: Key, probe: AnyProbe) -> Verdict | None:
    """More or less of one nutrient than another food; None when no nutrient or second food is known."""
    nutrient = nutrient_of(claim)
    if not nutrient or isinstance(probe, NoProbe) or not probe.other:
        return None
    if isinstance(probe, FoodProbe) and probe.food == probe.other:
        return None  # two names that the table has one row for
    if key.near.count(" than ") > 1 or not (has_any(key.near, _MORE_OR_LESS) or equalled(claim)):
        return None  # "calcium than milk, protein than yoghurt": which food is held against which can't be told
    refs = (SourceRef("eu-1924-2006", "Art 9(1)-(2)", "read"),)
    pair = probe.compared(nutrient)
    name = nutrient_name(nutrient)
    if pair is None:
        return Verdict("unproven", f"The two foods cannot be compared for {name} as eaten.", None, refs)
    one, two = pair
    this = probe.food.replace("-", " ") if isinstance(probe, FoodProbe) else "this dish"
    other = probe.other.replace("-", " ")
    step = f"{name} per 100 g as eaten: {this} {show(one)}, {other} {show(two)}"
    less = claim.level in ("less", "reduced", "low") or has_any(key.near, _LESS)
    first, second = (two, one) if less else (one, two)
    said = claim.number.value if claim.number is not None and claim.number.unit == "x" else 1.0
    times = _HALVED if has_any(key.near, _HALF) else 1.0 if less else max(said, _times(key.near))
    if first.low >= second.high * times and first.low > second.high:
        truth: Truth = "true"
    elif first.high < second.low * times or first.high <= second.low:
        truth = "overstated" if first.low > second.high else "false"
    else:
        truth = "unproven"
    why = f"Per 100 g as eaten {this} has {show(one)} {name}, {other} {show(two)}."
    return Verdict(truth, why, None, (*refs, *composition(one), *composition(two)), steps=[f"{step} -> {truth}"])


def _times(words: str) -> float:
    """How many times as much plain words say that it is, 1 where they say no such thing; "times" by itself is many."""
    found = _SO_MANY_TIMES.search(words)
    if found is None:
        return 2.0 if has_any(words, _TWICE) else 1.0
    number = number_of(found[1])
    return _MANY if number is None else max(number, 1.0)


_SO_MANY_TIMES = re.compile(r" ([a-z0-9]+) times (?:the|as|more|higher|richer|greater|over) ")
_MANY = 10.0
"""What "many times" and "several times" are held to."""


def compared_with(claim: Claim, numbers: Numbers, context: Context) -> str:
    """The food after "than", where the claim itself holds only the first of the two: "than in rice"; "" where none is
    known, where it is a whole class ("any other food"), or where more than one stands there."""
    if equalled(claim):
        return next(filter(None, (known_as(name.replace("-", " "), numbers, context) for name in claim.foods)), "")
    said = plain(clause(claim))
    _, than, rest = said.partition(" than ")
    if not than and (beats := next((one for one in _BEATS if f" {one} " in said), "")):
        _, than, rest = said.partition(f" {beats} ")
    if not than and (times := _TIMES_THAT_OF.search(said)):
        than, rest = "of", times[1]
    words = rest.split()[:_REACH] if than else []
    if set(words[:2]) & _ALL:
        return ""
    words = words[next((at for at, word in enumerate(words) if word not in _PASSED), len(words)) :]
    sort = words[0] if words and words[0] in _SORTS else ""
    if food := _first_known(words, numbers, context, least=2 if sort else 1):
        return food
    if words and words[0] in _COOKED:
        return _first_known(words[1:], numbers, context)
    if not words or not claim.foods:
        return ""
    return known_as(_same(claim, sort) if sort else _part(claim, words[0]), numbers, context)


_TIMES_THAT_OF = re.compile(
    r" (?:(?:twice|double|half|(?:two|three|four|five|six|seven|eight|nine|ten|\d+) times) the|as much) "
    r"(?:(?:amount|quantity) of )?(?!rest |other )(?:[a-z0-9]+ ){1,3}?(?:of|as) (.+)"
)
"""What it is held against where no "than" stands: "twice the vitamin C of an orange", "as much iron as a steak"."""


def equalled(claim: Claim) -> bool:
    """Whether its food is what something else is said to equal: "all the iron of a steak", "one steak of iron"."""
    said = plain(claim.passage.text[max(0, claim.start - _EQUAL_REACH) : claim.end])
    name = nutrient_name(claim.nutrients[0]) if claim.nutrients and claim.subjects else ""
    if not name or not (f" of {name} " in said or _OF_ONE.search(said)):
        return False  # most say no such thing, and what follows is made for each claim
    name, named = re.escape(name), "|".join(re.escape(plain(one).strip()) for one in claim.subjects)
    same = rf" (?:the|the same|as much) {name} (?:of|as|in|from) (?:half )?(?:an?|one|two|three)(?: \w+){{0,2}}?"
    many = rf" (?:an?|one|two|three|\d+)(?: \w+)? (?:{named})s?(?: s)?(?: worth)? of {name} "
    return re.search(rf"{same} (?:{named})s? |{many}", said) is not None


_OF_ONE = re.compile(r" (?:of|as|in|from) (?:half )?(?:an?|one|two|three) ")
_EQUAL_REACH = 30


def _first_known(words: list[str], numbers: Numbers, context: Context, least: int = 1) -> str:
    """The food that the first words name, the longest name first and of ``least`` words; "" where none is known, or
    where another food stands beside it."""
    for size in range(min(3, len(words)), least - 1, -1):
        said = " ".join(words[:size])
        for name in (said, " ".join([*words[: size - 1], singular(words[size - 1])])):
            food = known_as(_LEAST_OF.get(name, name), numbers, context)
            if food:
                return "" if _MORE_FOODS & set(words[size : size + 1]) else food
    return ""


def _same(claim: Claim, sort: str) -> str:
    """The same food of another sort: "red pepper has more than *green*" is held against green pepper."""
    return f"{sort} {claim.foods[0].rpartition('-')[2]}"


def _part(claim: Claim, part: str) -> str:
    """Another part of the same food: "chicken thigh has more than *breast*" is held against chicken breast."""
    return f"{claim.foods[0].partition('-')[0]} {part}"


_LEAST_OF = {"liver": "beef liver", "red meat": "beef mince"}
"""A kind by the one of it that holds the least iron, which it is praised for: less than that is less than any."""


def known_as(name: str, numbers: Numbers, context: Context) -> str:
    """The id of the food of a name, "" where the table has none: "rice" is white rice there."""
    food = "-".join(name.split())
    if numbers.food(food, "energy_kcal", "100g") is not None:
        return food
    return context.named.get(name, "")


def says_no_more(claim: Claim) -> bool:
    """Whether a denied comparison claims nothing for anything: "is no healthier than table salt", "does not mean
    healthier"; not where its "no" puts a food above all others or below another ("nothing is healthier than", "couldn't
    be healthier", "not as nutritious as home-made")."""
    words = plain(around(claim))
    return _NO_MORE.search(words) is not None and not _ABOVE_ALL.search(words)


_NO_MORE = re.compile(r" than | (?:not|never|[a-z]+n't) (?:always |automatically |necessarily )?(?:mean|make) ")
_ABOVE_ALL = re.compile(
    r" (?:nothing|none|nowhere|never)(?: [a-z']+){0,4} than "
    r"| no (?:other )?(?!more |less |better |healthier |richer )[a-z]+"
    r"(?: [a-z']+){0,3} (?:healthier|better|more|richer) | no (?:healthier|better) (?!than )[a-z]+ "
    r"| (?:couldn't|could not|can't|cannot) (?:be|get|have|find|ask for) "
)
