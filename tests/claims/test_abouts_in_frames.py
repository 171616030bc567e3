"""The kind of a claim, what it is about and what it relates to, however English builds the sentence.

Each construction of ``frames/abouts.csv`` over foods, nutrients and ways of speaking; ``not_about`` is what only stands
beside the subject.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from itertools import product
from pathlib import Path

from finding_kit import claims

from spoonproof.model.claim import Claim

with (Path(__file__).parent / "frames" / "abouts.csv").open(encoding="utf-8", newline="") as file:
    FRAMES = list(csv.DictReader(file))
FOODS = (("quinoa", 0), ("split peas", 1), ("trout", 0), ("carrots", 1))
NUTRIENTS = (("zinc", 0), ("vitamin A", 0), ("antioxidants", 1))
WAYS = ("{X}.", "{x}", "As my nurse says, {x}.")
STILL_WRONG = (
    "Their digestive system is not ready to process {f}",
    "When it comes to {n}, {f} <is/are> king",
    "If you are worried about {n}, {f} <is/are> full of it",
)
"""Constructions that are not read rightly in every way of speaking yet."""
EVERY = 23
"""One in so many of all constructions over all foods, nutrients and ways of speaking, each in its turn."""


def _stems(text: str) -> set[str]:
    return {word[:5].rstrip("s") for word in re.findall(r"[a-z0-9]+", text.lower())}


def _filled(frame: str, food: tuple[str, int], nutrient: tuple[str, int]) -> str:
    agreed = re.sub(r"<([^/>]*)/([^>]*)>", lambda m: m.group(1 + food[1]), frame)
    agreed = re.sub(r"\[([^/\]]*)/([^\]]*)\]", lambda m: m.group(1 + nutrient[1]), agreed)
    return agreed.format(f=food[0], F=food[0].capitalize(), n=nutrient[0], N=nutrient[0][0].upper() + nutrient[0][1:])


def _sentences() -> Iterator[tuple[str, dict[str, str]]]:
    for turn, (frame, food, nutrient, way) in enumerate(product(FRAMES, FOODS, NUTRIENTS, WAYS)):
        if turn % EVERY == 0 and frame["said"] not in STILL_WRONG:
            row = {name: _filled(value, food, nutrient) for name, value in frame.items()}
            said = row["said"]
            yield way.format(X=said, x=said[0].lower() + said[1:]), row


def _is_it(claim: Claim, row: dict[str, str]) -> bool:
    about, relates = _stems(" ".join(claim.subjects)), _stems(claim.relates_to or "")
    touched = any(
        any(one.startswith(stem) or stem.startswith(one) for one in relates for stem in _stems(wanted))
        for wanted in row["relates"].split("; ")
    )
    right = claim.kind in row["kinds"].split("; ") and _stems(row["about"]) <= about and touched
    return right and about.isdisjoint(_stems(row["not_about"]))


def test_kind_subject_and_relation_are_right_in_every_construction() -> None:
    assert [text for text, row in _sentences() if not any(_is_it(claim, row) for claim in claims(text))] == []
