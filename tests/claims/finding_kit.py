"""What the tests of the finder share: the lexicon, loaded once, and a one-line way to ask it."""

from __future__ import annotations

from functools import cache

from spoonproof.claims.find import find_claims
from spoonproof.claims.lexicon import Lexicon
from spoonproof.knowledge import Knowledge
from spoonproof.model.claim import Claim
from spoonproof.model.text import Document, Passage, Piece


@cache
def lexicon() -> Lexicon:
    """The project's own lexicon."""
    return Knowledge().lexicon


def passage(text: str) -> Passage:
    """A passage that stands in its document as it is."""
    return Passage(text, Document("t.md", text), (Piece(0, 0, len(text)),))


def claims(*texts: str) -> list[Claim]:
    """The claims of the texts, each a passage of a document of its own."""
    return find_claims([passage(text) for text in texts], lexicon())


def only(text: str, kind: str) -> Claim:
    """The one claim of this kind."""
    found = [claim for claim in claims(text) if claim.kind == kind]
    assert len(found) == 1, found
    return found[0]
