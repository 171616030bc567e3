"""The closed grammar answers yes, no or unknown, and never passes what is not known."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from judging_kit import read_register

from spoonproof.claims.conditions import (
    Absent,
    Condition,
    ConditionError,
    Group,
    ReducedBy,
    Reply,
    Threshold,
    evaluate,
    read_condition,
)
from spoonproof.model.numbers import Estimate
from spoonproof.model.text import Document
from spoonproof.reading.yaml_tree import read_yaml
from tests.each import each

REFERENCES = read_register("entries: []")[0].references


class Bowl:
    """A probe with what it is told."""

    def __init__(self, found: Estimate | None, other: Estimate | None = None, inside: Reply = "unknown") -> None:
        self.found, self.other, self.inside = found, other, inside

    def measure(self, _nutrient: str, _basis: str) -> Estimate | None:
        return self.found

    def contains(self, _what: str) -> Reply:
        return self.inside

    def compared(self, _nutrient: str) -> tuple[Estimate, Estimate] | None:
        return None if self.found is None or self.other is None else (self.found, self.other)


def between(low: float, high: float) -> Estimate:
    return Estimate((low + high) / 2, low, high, "mg")


def read(text: str) -> Condition:
    node, findings = read_yaml(Document("x.yaml", text))
    assert node is not None and not findings
    return read_condition(node)


SOURCE = Threshold("at least", "iron_mg", "100g", share=15, reference="EU NRV")  # 15 % of 14 mg is 2.1 mg
amounts = st.floats(0, 50, allow_nan=False)


@each(
    ("low", "high", "answer"),
    [(2.1, 2.1, "yes"), (2.2, 9, "yes"), (0, 2.0, "no"), (1.9, 2.3, "unknown"), (2.0999, 2.0999, "no"),
     (3, float("inf"), "yes"), (1, float("inf"), "unknown")],
)  # fmt: skip
def test_a_range_that_straddles_is_unknown(low: float, high: float, answer: Reply) -> None:
    found = Estimate(low, low, high, "mg")
    assert evaluate(SOURCE, Bowl(found), REFERENCES).answer == answer


def test_a_missing_input_is_unknown_everywhere() -> None:
    for condition in (
        SOURCE,
        Group("all", (SOURCE,)),
        Group("any", (SOURCE,)),
        ReducedBy("iron_mg", 30),
        Absent(("milk",)),
    ):
        assert evaluate(condition, Bowl(None), REFERENCES).answer == "unknown"
    nameless = Threshold("at least", "iron_mg", "100g", share=15, reference="no such list")
    assert evaluate(nameless, Bowl(between(9, 9)), REFERENCES).answer == "unknown"


@given(amounts, amounts, amounts)
def test_more_of_a_nutrient_never_turns_yes_into_no(a: float, b: float, more: float) -> None:
    low, high = sorted((a, b))
    before = evaluate(SOURCE, Bowl(between(low, high)), REFERENCES).answer
    after = evaluate(SOURCE, Bowl(between(low + more, high + more)), REFERENCES).answer
    order = ("no", "unknown", "yes")
    assert order.index(after) >= order.index(before)


@given(amounts, amounts, amounts, amounts, st.sampled_from(["at least", "at most"]))
def test_widening_a_range_settles_nothing_new(a: float, b: float, down: float, up: float, op: Any) -> None:
    low, high = sorted((a, b))
    condition = Threshold(op, "iron_mg", "100g", amount=7)
    narrow = evaluate(condition, Bowl(between(low, high)), REFERENCES).answer
    wide = evaluate(condition, Bowl(between(low - down, high + up)), REFERENCES).answer
    assert wide in (narrow, "unknown")


@given(st.lists(st.sampled_from(["yes", "no", "unknown"]), min_size=1, max_size=5))
def test_all_and_any_are_each_others_mirror(answers: list[Reply]) -> None:
    made = {"yes": between(9, 9), "no": between(0, 0), "unknown": between(0, 9)}
    flipped: dict[Reply, Reply] = {"yes": "no", "no": "yes", "unknown": "unknown"}
    one = Threshold("at least", "iron_mg", "100g", amount=5)

    class Turn(Bowl):
        def __init__(self, queue: list[Reply]) -> None:
            self.queue = list(queue)

        def measure(self, _nutrient: str, _basis: str) -> Estimate | None:
            return made[self.queue.pop(0)]

    parts = (one,) * len(answers)
    every = evaluate(Group("all", parts), Turn(answers), REFERENCES).answer
    some = evaluate(Group("any", parts), Turn([flipped[a] for a in answers]), REFERENCES).answer
    assert every == flipped[some]


def test_reduced_by() -> None:
    less = ReducedBy("sugars_g", 30)
    assert evaluate(less, Bowl(between(7, 7), between(10, 10)), REFERENCES).answer == "yes"
    assert evaluate(less, Bowl(between(8, 8), between(10, 10)), REFERENCES).answer == "no"
    assert evaluate(less, Bowl(between(6, 8), between(10, 10)), REFERENCES).answer == "unknown"


@each(
    "text",
    ["{over: 3}", "[1]", "iron", "{all: []}", "{all: 3}", "{at least: 3}", "{at least: {nutrient: iron_mg}}",
     "{at least: {nutrient: iron_mg, amount: much}}", "{at least: {nutrient: iron_mg, amount: 3, per: spoon}}",
     "{at least: {nutrient: iron_mg, share: 15}}", "{at least: {amount: 3, eval: x}}", "{absent: []}",
     "{reduced by: {percent: lots}}", "{at least: {amount: 1}, at most: {amount: 2}}"],
)  # fmt: skip
def test_what_the_grammar_does_not_know_is_refused(text: str) -> None:
    with pytest.raises(ConditionError):
        read(text)


def test_a_condition_reads_as_written() -> None:
    condition = read(
        "{any: [{at least: {nutrient: fibre_g, amount: 6}}, {at least: {nutrient: fibre_g, amount: 3, per: 100 kcal}}]}"
    )
    assert condition == Group(
        "any", (Threshold("at least", "fibre_g", "100g", 6.0), Threshold("at least", "fibre_g", "100kcal", 3.0))
    )
