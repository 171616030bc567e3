"""Marks, dashes and spaces as a printer sets them; no word changes."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from spoonproof.site.typeset import lasting, typeset
from tests.each import each


@each(
    ("written", "shown"),
    [
        ("the baby's bowl", "the baby’s bowl"),
        ('a "may contain" word', "a “may contain” word"),
        ("('soft')", "(‘soft’)"),
        ("25-30 minutes", "25–\u206030\u00a0minutes"),
        ("25–30 minutes", "25–\u206030\u00a0minutes"),
        ("12.5-13 g", "12.5–\u206013\u00a0g"),
        ("60 grams", "60 grams"),
        ("½ tsp salt", "½\u00a0tsp salt"),
        ("2026-11-02", "2026-11-02"),
        ("pie-2-go, 017-1234-5", "pie-2-go, 017-1234-5"),
        ("slow-cooked", "slow-cooked"),
    ],
)
def test_typeset(written: str, shown: str) -> None:
    assert typeset(written) == shown


@given(st.text(alphabet="ab1-2 '\"(gm\n", max_size=60))
def test_only_marks_and_spaces_change_and_twice_is_once(text: str) -> None:
    made = typeset(text)
    back = made.replace("\u2060", "").translate(str.maketrans("“”‘’–\u00a0", "\"\"''- "))
    assert back == text and typeset(made) == made


def test_it_is_linear() -> None:
    for hard in ("1-" * 50_000, "'" * 100_000, "9." * 50_000):
        assert len(typeset(hard)) <= 2 * len(hard)


def test_a_time_stays_with_its_unit() -> None:
    assert (lasting(1), lasting(93)) == ("1\u00a0minute", "1\u00a0h 33\u00a0min")
