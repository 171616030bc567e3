"""Temperatures written twice in one sentence: two scales, one heat."""

from __future__ import annotations

from itertools import pairwise

from spoonproof.model.finding import Finding
from spoonproof.model.text import Document, Passage
from spoonproof.reading.kitchen_faults import kitchen_fault
from spoonproof.reading.measures import Measures
from spoonproof.reading.times import find_heat


def temperature_faults(passage: Passage, document: Document, measures: Measures) -> list[Finding]:
    """180 °C beside 450°F: one of them is wrong. A fan oven runs about 20 °C lower."""
    findings: list[Finding] = []
    for one, two in pairwise(find_heat(passage.text, measures)):
        near = two.start - one.end < 12
        even = [h.celsius + (20 if h.fan else 0) for h in (one, two)]
        if near and abs(even[0] - even[1]) > 15:
            words = passage.text[one.start : two.end]
            span = passage.span(one.start, two.end)
            message = f"“{words}” names two temperatures that are not the same."
            remedy = f"The first one is {even[0]:g} °C, the second {even[1]:g} °C in an oven without a fan."
            findings.append(kitchen_fault("temperatures-disagree", document, span, message, remedy))
    return findings
