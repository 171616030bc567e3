"""A food and what is wrong with it as one sentence: "Grapes are round", "Tahini is sticky"."""

from __future__ import annotations

import re
from collections.abc import Iterable

_SINGULAR = frozenset("hummus houmous couscous asparagus watercress cress molasses swiss citrus octopus grass".split())
_VERBS = {"is": "are", "has": "have", "does": "do", "goes": "go"}
_THIRD_PERSON = re.compile(r"^(\w+)s$")


def is_plural(name: str) -> bool:
    """Whether a food's name is a plural: "grapes", "cherries in juice"; not "hummus"."""
    head = re.split(r"\s+(?:of|in|with|for|from)\s+|,", name.strip().lower(), maxsplit=1)[0]
    last = head.rpartition(" ")[2]
    return last.endswith("s") and not last.endswith(("ss", "us")) and last not in _SINGULAR


def listed(names: Iterable[str]) -> str:
    """The names as one speaks them: "carrots, pears and oats"."""
    *before, last = names or ("",)
    return f"{', '.join(before)} and {last}" if before else last


def sentence(name: str, problem: str, aside: str = "") -> str:
    """The sentence, with a full stop. ``problem`` is a predicate in the singular ("is round", "has a stone");
    ``aside`` stands between commas after the name."""
    shown = name[:1].upper() + name[1:]
    if aside:
        shown += f", {aside},"
    return f"{shown} {_agreeing(problem) if is_plural(name) else problem}."


def _agreeing(problem: str) -> str:
    verb, space, rest = problem.partition(" ")
    if verb in _VERBS:
        return _VERBS[verb] + space + rest
    match = _THIRD_PERSON.match(verb)
    return (match[1] + space + rest) if match else problem
