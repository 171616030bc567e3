"""Findings for the report tests."""

from __future__ import annotations

from spoonproof.model.finding import Edit, Finding, Related, Remedy, SourceRef
from spoonproof.model.text import Document, Span

TEXT = "title: 🥄 spoon\nfoods:\n  - 1 tbsp honey, 100 % raw\n  - 2 pears\n"
SOURCES = {
    "nhs-avoid": {
        "id": "nhs-avoid",
        "type": "webpage",
        "title": "Food and drinks to avoid",
        "publisher": "NHS",
        "URL": "https://www.nhs.uk/start-for-life/baby/weaning/",
    }
}


def document(path: str = "recipes/a b.md") -> Document:
    return Document(path, TEXT)


def honey(where: Document | None = None) -> Finding:
    found = where or document()
    start = found.text.index("honey")
    return Finding(
        rule="food-not-yet",
        area="baby",
        level="error",
        message="honey, 100 %: not yet\nnot even cooked",
        document=found,
        span=Span(start, start + 5),
        bowl="baby",
        related=(Related(found, Span(0, 5), "said here too"),),
        remedy=Remedy("Leave it out.", True, (Edit(Span(start - 7, start + 5), "1 ripe pear"),)),
        sources=(SourceRef("nhs-avoid", "honey"),),
    )
