"""The words of the reference pages: what is said by its letters stands in capitals, numbers keep their names."""

from __future__ import annotations

from spoonproof.site.reference import entry_items
from tests import kitchen


def test_entries_are_named_as_a_reader_says_them() -> None:
    said = {item.id: item.says for item in entry_items(kitchen.knowledge().register)}
    assert said["docosahexaenoic-acid-brain-development-children"].startswith("DHA, omega-3 fatty acids: brain")
    assert said["alpha-linolenic-acid-cholesterol"] == "ALA: blood"
    assert said["source-of-omega-3"] == "Source of omega 3"
    assert said["fda-approved"] == "FDA approved"
