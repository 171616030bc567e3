"""The trail: how an answer came about, step by step, and whether it comes about again."""

from __future__ import annotations

import re
from collections.abc import Callable

from spoonproof.claims.entries import Key
from spoonproof.claims.wording import nutrient_name
from spoonproof.model.claim import JudgedClaim


def describe_key(key: Key) -> str:
    """What the register was asked, in one line."""
    parts = [f"kind {key.kind}", f"about {', '.join(sorted(key.subjects)) or 'nothing named'}"]
    if key.effect:
        parts.append(f"effect {key.effect}")
    if key.level:
        parts.append(f"level {key.level}")
    if key.kind == "safety-age":
        parts.append(f"stance {key.stance}")
    parts.append(f"at {key.months} months")
    if key.today:
        parts.append(f"on {key.today}")
    return "asked: " + "; ".join(parts)


def in_words(step: str) -> str:
    """A step with its nutrients by name and its basis in words: "iron at least 2.1 mg in 100 g"."""
    named = _NUTRIENT.sub(lambda key: nutrient_name(key[0]), step)
    return named.replace(" per 100g", " in 100 g").replace(" per 100kcal", " in 100 kcal")


_NUTRIENT = re.compile(r"\b[a-z][a-z0-9]{0,20}(?:_[a-z0-9]{1,20}){0,3}_(?:mg|ug|g|kcal)\b")


def rerun(judged: JudgedClaim, again: Callable[[], JudgedClaim]) -> bool:
    """Whether judging once more (``again``) gives the same answers by the same steps."""
    once_more = again()
    return (judged.truth, judged.allowed, judged.advice, judged.trail) == (
        once_more.truth,
        once_more.allowed,
        once_more.advice,
        once_more.trail,
    )
