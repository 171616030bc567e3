"""Wordings of the register that stand for this dish: each is judged here as if it had been written."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import islice

from spoonproof.dish import Dish
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.text import Document, Passage, Piece, Span

_TYPED = 4
"""Letters that must be there before wordings are looked for."""
_TRIED = 60
_SENTENCE = re.compile(r"[^.!?\n:\"'“”]*$")


def claims_beside(dish: Dish, at: int) -> list[JudgedClaim]:
    """The claims at an offset that a better wording is known for."""
    return [
        judged for judged in dish.claims if judged.wording and judged.claim.span.start <= at <= judged.claim.span.end
    ]


def wordings(dish: Dish, document: Document, at: int) -> Iterator[tuple[str, Span, str]]:
    """Sentences that go on from what is typed and may be said of this dish, each with what it replaces and why.

    A wording that the dish does not bear out, or that one of the channel's markets forbids, is not offered.
    """
    start = document.line_starts[document.position(at)[0] - 1]
    sentence = _SENTENCE.search(document.text[start:at])
    typed = sentence.group().lstrip() if sentence is not None else ""
    if len(typed) < _TYPED:
        return
    span = Span(at - len(typed), at)
    for text in islice(_candidates(dish, typed.lower()), _TRIED):
        judged = judged_as_written(dish, text)
        if judged and all(each.advice in ("keep", "add") for each in judged):
            yield text, span, judged[0].why


def _candidates(dish: Dish, typed: str) -> Iterator[str]:
    register = dish.knowledge.register
    texts = [wording.text for wording in register.wordings.values() if wording.market in dish.channel.markets]
    texts += [text for entry in register.entries for text in entry.wording if text[:1].isupper() and "{" not in text]
    yield from (text for text in dict.fromkeys(texts) if text.lower().startswith(typed))


def judged_as_written(dish: Dish, text: str) -> list[JudgedClaim]:
    """The claims of ``text``, judged as a statement of this dish."""
    from spoonproof.claims.find import find_claims
    from spoonproof.claims.judge import judge

    known = dish.knowledge
    passage = Passage(text, Document("wording", text), (Piece(0, 0, len(text)),))
    context = known.claim_context(dish.channel, dish.recipe, dish.paid)
    return [judge(claim, known.register, dish.numbers, context) for claim in find_claims([passage], known.lexicon)]
