"""Cooked food stands at room temperature for too long.

Germs grow fastest between the fridge and the heat. What is kept is cooled and chilled within one to two hours, rice
within one; what has stood for two hours is thrown away.

Fails::

    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes.
      - Leave the potatoes to cool for 3 hours.
      - Mash the potatoes with the oil.

Passes::

    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes.
      - Let the potatoes cool for 20 minutes.
      - Mash the potatoes with the oil.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterator

from spoonproof.checks.rule import Fault
from spoonproof.cooking.story import Event
from spoonproof.dish import Dish
from spoonproof.feeding.contradictions import contradictions
from spoonproof.model.finding import Remedy, SourceRef

AREA = "baby"
LEVEL = "warning"
SOURCES = ("nhs-storing", "kidshealth-nz")

_COLD = re.compile(r"\b(?:fridge|chill\w*|ice|freezer|refrigerat\w*|larder)\b", re.IGNORECASE)
_OVERNIGHT = re.compile(r"\bovernight\b", re.IGNORECASE)
_MOST, _THROW, _RICE = 60.0, 120.0, 60.0
_SOURCES = (SourceRef("nhs-storing"), SourceRef("kidshealth-nz"))

_KEPT_WARM = re.compile(
    r"\b(?:keep|hold|leave)\w*\b[^.;]{0,40}\b(?:warm|hot|out|on the (?!heat|flame|gas)\w+|at room temperature)\b",
    re.IGNORECASE,
)
_COUNTED = {word: float(at) for at, word in enumerate("two three four five six seven eight".split(), 2)}
_HOURS = re.compile(
    rf"\b(?P<hours>[0-9]{{1,2}}(?:\.[0-9])?|{'|'.join(_COUNTED)})[ \t-]{{0,3}}(?:hours?|hrs?|h)\b", re.IGNORECASE
)


def _hours(text: str, after: int = 0) -> float:
    """The most hours that are said behind an offset; 0 where none are."""
    said = [match["hours"].lower() for match in _HOURS.finditer(text, after)]
    return max((_COUNTED.get(one) or float(one) for one in said), default=0.0)


def _kept_warm(text: str, after: int) -> float:
    """Minutes for which a sentence keeps food warm ("keep it warm on the hob for 4 hours") behind an offset; 0 where
    it does not."""
    found = _KEPT_WARM.search(text, after)
    if found is None or _COLD.search(text):
        return 0.0
    if _OVERNIGHT.search(text):
        return 600.0
    return _hours(text, found.start()) * 60


_LEFT_OUT = re.compile(
    r"\b(?:left|kept|stood|standing|sat)\b[^.;]{0,20}\b(?:out\b|on the (?:hob|stove|counter|side|worktop|table|bench)"
    r"|at room temperature|in the pan)",
    re.IGNORECASE,
)

_COOKED = re.compile(r"\b(?:cooked|boiled|steamed|roast(?:ed)?|baked|fried|leftover|poached|stewed)\b", re.IGNORECASE)
_SPOILS = frozenset({"meat", "poultry", "fish", "shellfish", "dairy", "egg"})


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each stretch of standing, cooling or keeping warm of cooked food beyond an hour."""
    cooling = list(_cooling(dish))
    yield from (fault for _, fault in cooling)
    yield from _warm(dish, {event.step for event, _ in cooling})
    yield from _bought_so(dish)


def _bought_so(dish: Dish) -> Iterator[Fault]:
    """Food that has stood already when the cooking starts: "cooked rice, left on the hob overnight"."""
    for line in dish.recipe.foods:
        record = dish.knowledge.foods.get(line.food) if line.food else None
        spoils = _COOKED.search(line.text) or (record is not None and record.group in _SPOILS)
        if not spoils or _LEFT_OUT.search(line.text) is None or _COLD.search(line.text):
            continue
        hours = _hours(line.text)
        if _OVERNIGHT.search(line.text) or hours * 60 > _MOST:
            yield Fault(
                line.span,
                "It has stood at room temperature too long: cooked food belongs in the fridge within one to two hours.",
                "error" if _OVERNIGHT.search(line.text) or hours * 60 > _THROW else "warning",
                bowl="baby",
                remedy=Remedy("Throw it away, and use what was cooled and chilled at once."),
                sources=_SOURCES,
            )


def _cooling(dish: Dish) -> Iterator[tuple[Event, Fault]]:
    """Cooked food that is left to cool, with the event that says so; what cools in the cold may take its time."""
    kitchen = dish.walked
    hot: set[int] = set()
    for event in kitchen.events:
        if event.verb.role == "heat":
            hot.update(event.pot)
        if event.verb.role != "cool" or not hot.intersection(event.pot):
            continue
        text = dish.recipe.steps[event.step].text
        minutes = event.action.time.high if event.action.time else 600.0 if _OVERNIGHT.search(text) else 0.0
        if minutes <= _MOST or _COLD.search(text):
            continue
        rice = any("rice" in (kitchen.stories[i].line.food or "") for i in event.pot)
        limit = "one hour, since there is rice in it" if rice else "one to two hours"
        yield (
            event,
            Fault(
                event.action.time_span or event.action.span,
                f"Cooked food stands for {minutes / 60:.3g} hours: it belongs in the fridge within {limit}.",
                "error" if minutes > (_RICE if rice else _THROW) else "warning",
                bowl="baby" if event.bowl != "family" else "family",
                remedy=Remedy("Cool it quickly in a shallow dish and chill it within the hour."),
                sources=_SOURCES,
            ),
        )


def _warm(dish: Dish, told: Container[int]) -> Iterator[Fault]:
    """Cooked food that is kept warm, in steps that were not ``told`` of already."""
    # "Leave it on the counter overnight" takes a caution back, and is told as that.
    passages = [passage for passage in dish.recipe.passages if passage.kind == "step"]
    back = [one.span for one in contradictions(passages, dish.knowledge.feeding) if one.caution == "keep-chill"]
    heats = [event for event in dish.walked.events if event.verb.role == "heat"]
    spoils = any(story.food is not None and story.food.group in _SPOILS for story in dish.walked.stories)
    first = min((event.step for event in heats), default=0 if spoils else len(dish.recipe.steps))
    for step in dish.recipe.steps[first:]:
        cooked = min((event.action.span.start for event in heats if event.step == step.index), default=step.span.start)
        minutes = _kept_warm(step.text, max(0, cooked - step.span.start if step.index == first else 0))
        if step.index in told or minutes <= _MOST:
            continue
        if any(step.span.start <= span.start < step.span.end for span in back):
            continue
        yield Fault(
            step.span,
            f"Cooked food stands warm for {minutes / 60:.3g} hours: it belongs in the fridge within one to two hours.",
            "error" if minutes > _THROW else "warning",
            bowl="family" if step.bowl == "family" else "baby",
            remedy=Remedy("Cool it quickly in a shallow dish, chill it, and warm up one portion when it is wanted."),
            sources=_SOURCES,
        )
