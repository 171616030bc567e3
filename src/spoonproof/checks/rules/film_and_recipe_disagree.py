"""The film says another age or time than the recipe.

Whoever cooks from the film never opens the page. An earlier age than the recipe's brings a texture too soon; a shorter
time than the step's brings a piece that is still hard. Say what the recipe says, or change the recipe.

Fails::

    ages: 7-9 months
    film:
      runs: 60 s
      segments:
        - {name: Hook, say: "Potatoes for spoons, from five months."}

Passes::

    ages: 7-9 months
    film:
      runs: 60 s
      segments:
        - {name: Hook, say: "Potatoes for spoons, from seven months."}
        - {name: Boil, step: 1, say: "They boil for twenty minutes, and five more if they fight back."}
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Related, Remedy
from spoonproof.model.recipe import Segment, Step
from spoonproof.model.text import Text
from spoonproof.reading.spoken import as_spoken, number_words

AREA = "film"
LEVEL = "warning"
SOURCES = ("common-practice",)

_VALUES = {number_words(number): number for number in range(1, 241)}
_WORDS = "|".join(sorted({word for words in _VALUES for word in words.split()}))
_NUMBER = rf"(?P<number>(?:(?:{_WORDS}) ){{1,5}})"
_FROM = re.compile(rf"\bfrom (?:the age of |about |around )?{_NUMBER}months?\b")
_MINUTES = re.compile(rf"(?P<more>\band )?\b{_NUMBER}(?P<and>more )?minutes?\b(?P<after> more| longer)?")
_SPAN = re.compile(rf"\b(?P<low>(?:(?:{_WORDS}) ){{1,5}})to (?:(?:{_WORDS}) ){{1,5}}minutes?\b")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each segment that names an earlier age than the recipe's, or less time than its step's."""
    film = dish.recipe.film
    for segment in film.segments if film is not None else ():
        for text in (segment.say, segment.super):
            if text is not None:
                yield from _ages(dish, text)
                yield from _times(dish, segment, text)


def _ages(dish: Dish, text: Text) -> Iterator[Fault]:
    low = dish.recipe.ages.low
    for match in _FROM.finditer(_even(text.value)):
        age = _VALUES.get(match["number"].strip())
        if age is not None and age < low:
            yield Fault(
                text.span,
                f"The film says from {age} months, and the recipe is for {low} months on.",
                related=(Related(dish.recipe.document, dish.recipe.ages.span, "the recipe's ages"),),
                remedy=Remedy(f"Say from {low} months."),
            )
            return


def _times(dish: Dish, segment: Segment, text: Text) -> Iterator[Fault]:
    if segment.step is None or segment.step > len(dish.recipe.steps):
        return
    step = dish.recipe.steps[segment.step - 1]
    least = _least(step)
    said = _minutes(_even(text.value))
    if least is not None and said and max(said) < least:
        yield Fault(
            text.span,
            f"The film says {max(said)} minutes, and step {segment.step} takes {least:g} at least.",
            related=(Related(dish.recipe.document, step.span, "the step"),),
            remedy=Remedy(f"Say {least:g} minutes, or change the step if the shorter time was tried and is enough."),
        )


def _least(step: Step) -> float | None:
    """The shortest time that the step's longest cooking may take, in minutes; None when it states none."""
    times = [action.time for action in step.actions if action.time is not None]
    return max(times, key=lambda time: time.high).low if times else None


def _minutes(text: str) -> list[int]:
    """The minutes that a text states; both ends of a range, and not what is given on top ("five more minutes")."""
    found = [_VALUES.get(match["low"].strip()) for match in _SPAN.finditer(text)]
    for match in _MINUTES.finditer(text):
        if not (match["and"] or match["after"]):
            found.append(_VALUES.get(match["number"].strip()))
    return [number for number in found if number is not None]


def _even(text: str) -> str:
    return " ".join(re.findall(r"[a-z]+", as_spoken(text).lower()))
