"""What a child needs of a nutrient in a day, as one room tells another of it."""

from __future__ import annotations

from spoonproof.model.record import NamedTuple


class Need(NamedTuple):
    """One authority's reference value for a day: ``value`` in ``unit`` for the age ``band`` ("7-11 months");
    ``source`` is an id."""

    authority: str
    band: str
    value: float
    unit: str
    source: str
