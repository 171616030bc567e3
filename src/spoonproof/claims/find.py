"""Find claims in passages: the door of the claim finder.

What a claim's fields mean where it matters for judging: ``level`` "none"/"free"/"low" says what the
claim asserts of the nutrient, and ``polarity`` denies says that the sentence takes the whole relation
back ("contains no sugar": level none, asserts; "is not high in iron": level high, denies).
"""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.claims.finding.analyse import Analyser
from spoonproof.claims.lexicon import Lexicon
from spoonproof.model.claim import Claim
from spoonproof.model.text import Passage

_ANALYSERS: dict[int, tuple[Lexicon, Analyser]] = {}


def analyser(lexicon: Lexicon) -> Analyser:
    """The analyser of a lexicon, compiled once."""
    kept = _ANALYSERS.get(id(lexicon))
    if kept is None or kept[0] is not lexicon:
        kept = (lexicon, Analyser(lexicon))
        _ANALYSERS.clear()
        _ANALYSERS[id(lexicon)] = kept
    return kept[1]


def find_claims(passages: Sequence[Passage], lexicon: Lexicon, *, apart: bool = False) -> list[Claim]:
    """Every claim of ``passages``, in order of passage and position.

    A pronoun subject is carried from the passages before it of the same document; not so where the passages
    are ``apart``, statements that have nothing to do with each other. Nothing is judged here.
    """
    known = analyser(lexicon)
    return [claim for passage in passages for claim in known.claims([passage])] if apart else known.claims(passages)
