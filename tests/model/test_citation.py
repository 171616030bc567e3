"""Citations of every type of source: nothing invented, nothing said twice."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
import yaml

from spoonproof.model.citation import address, full, issued_year, short
from tests.each import each

ROOT = Path(__file__).resolve().parents[2]
ITEMS = [
    item
    for path in sorted((ROOT / "shared/sources").glob("*.yaml"))
    for item in yaml.load(path.read_text(encoding="utf-8"), yaml.CSafeLoader)  # every worker reads them
]


@pytest.mark.parametrize(
    ("item", "text"),
    [
        (
            {"type": "article-journal",
             "author": [{"family": "Ito", "given": "Aya May"},
                        {"family": "Wit", "given": "J", "non-dropping-particle": "de"}],
             "issued": {"date-parts": [[2018, 3]]}, "title": "Soft peas.", "container-title": "J Peas", "volume": "27",
             "issue": 2, "page": "33-42"},
            "Ito AM and de Wit J (2018). Soft peas. J Peas 27(2): 33-42.",
        ),
        (
            {"type": "chapter", "author": [{"family": "Roe"}], "title": "Roots", "container-title": "All foods",
             "publisher": "Field Press", "edition": "2", "issued": {"literal": "no year"}},
            "Roe (no year). Roots. In: All foods. Edition 2. Field Press.",
        ),
        (
            {"type": "book", "editor": [{"family": "Moss", "given": "B"}], "title": "Stems", "publisher": "Field Press",
             "ISBN": "978-0", "issued": 2001},
            "Moss B (ed.) (2001). Stems. Field Press. ISBN 978-0.",
        ),
        (
            {"type": "legal_case", "authority": "Court of Leaves", "title": "Beet v Kale", "number": "C-1/20"},
            "Court of Leaves. Beet v Kale. C-1/20.",
        ),
        (
            {"type": "webpage", "publisher": "Health Office", "title": "Drinks",
             "accessed": {"date-parts": [[2026, 3, 9]]}},
            "Health Office. Drinks. Read on 2026-03-09.",
        ),
        (
            {"type": "report", "author": [{"literal": "A"}, {"literal": "B"}, {"literal": "C"}, {"literal": "D"}],
             "title": "T", "publisher": "P", "number": "WP 3"},
            "A and others. T. P. WP 3.",
        ),
        ({"title": "Bare"}, "Bare."),
    ],
)  # fmt: skip
def test_full(item: dict[str, object], text: str) -> None:
    assert full(item) == text


@each("item", ITEMS)
def test_every_source_of_ours_reads_well(item: dict[str, object]) -> None:
    for text in (full(item), short(str(item["id"]), {str(item["id"]): item})):
        assert str(item["title"]).rstrip(".") in text
        assert not any(mark in text for mark in ("{", "None", "..", "[]", " ,", ". .", "()"))
    if item.get("issued"):
        assert issued_year(item).isdigit() and issued_year(item) in full(item)


@pytest.mark.parametrize(
    "item", [{}, {"author": "x", "issued": [], "title": 3}, {"author": [1], "issued": {"date-parts": []}}]
)
def test_odd_items_do_not_raise(item: dict[str, object]) -> None:
    assert isinstance(full(item), str) and isinstance(short("a", {"a": item}), str)
    json.dumps(issued_year(item))


def test_a_doi_comes_before_an_address() -> None:
    assert address("a", {"a": {"DOI": "10.1/x", "URL": "https://b.example"}}) == "https://doi.org/10.1/x"
    assert address("b", {}) == ""
