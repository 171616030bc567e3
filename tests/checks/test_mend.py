"""Mending: only what is safe, nothing else in the file touched."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from spoonproof.checks.mend import difference, safe_edits
from spoonproof.model.finding import Edit, Remedy
from spoonproof.model.text import Document, Span
from spoonproof.reading.edits import apply_edits
from tests.report.findings import document, honey


def test_safe_edits_are_made_and_the_rest_stays() -> None:
    where = document()
    edits = safe_edits([honey(where)])
    after = apply_edits(where, edits[where])
    assert after == where.text.replace("1 tbsp honey", "1 ripe pear")
    assert "+  - 1 ripe pear, 100 % raw" in list(difference(where, after))


def test_a_remedy_that_is_not_safe_is_left() -> None:
    finding = honey()
    assert finding.remedy is not None
    assert safe_edits([replace(finding, remedy=replace(finding.remedy, safe=False))]) == {}


def test_two_remedies_for_one_place_do_not_both_happen() -> None:
    where = document()
    once = safe_edits([honey(where)])
    twice = safe_edits([honey(where), honey(where)])
    assert once == twice


@given(
    st.text(max_size=50), st.lists(st.tuples(st.integers(0, 50), st.integers(0, 50), st.text(max_size=5)), max_size=6)
)
def test_what_no_edit_covers_stays(text: str, wanted: list[tuple[int, int, str]]) -> None:
    where = Document("recipes/x.md", text)
    findings = [
        replace(
            honey(),
            document=where,
            span=Span(0, 0),
            remedy=Remedy("x", True, (Edit(Span(*sorted((min(a, len(text)), min(b, len(text))))), new),)),
        )
        for a, b, new in wanted
    ]
    edits = safe_edits(findings).get(where, ())
    after = apply_edits(where, edits)
    assert len(after) == len(text) + sum(len(e.replacement) - (e.span.end - e.span.start) for e in edits)
