"""What the author's own words say of the cautions and the allergens of a dish, and what they leave out."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache

from spoonproof.feeding.allergens import AllergenFound, Label, named_in, of_text
from spoonproof.feeding.cautions import Caution
from spoonproof.feeding.tables import FeedingTables
from spoonproof.model.record import dataclass
from spoonproof.model.text import Passage, Span

# "Contains: milk and egg." A sentence that begins so is a list that the reader trusts to be whole.
_CONTAINS = re.compile(
    r"(?:^|[.!?]\s+|\n\s*)"
    r"(?P<list>(?:allergens?|(?:this |it |the dish )?contains?)\b(?! +(?:no|neither|nothing)\b)[^.!?\n]*)",
    re.I,
)
_KINDS = frozenset({"description", "social", "story", "say", "super", "step", "picture", "note"})


@dataclass(frozen=True, slots=True)
class ShortList:
    """A list of allergens in the author's words that leaves out some of the dish's: ``span`` the words of the list."""

    passage: Passage
    span: Span
    missing: tuple[Label, ...]


def untold(texts: Iterable[str], cautions: Sequence[Caution], tables: FeedingTables) -> list[Caution]:
    """The cautions that none of ``texts`` gives in any of the usual words, in the order of the table."""
    rows = {row.text("id"): row for row in tables.rows.get("cautions", ())}
    whole = " ".join(" ".join(text.lower().split()) for text in texts)
    return [
        caution
        for caution in cautions
        if not any(_saying(phrase).search(whole) for phrase in rows[caution.id].items("said"))
    ]


@lru_cache(maxsize=512)
def _saying(phrase: str) -> re.Pattern[str]:
    return re.compile(rf"\b{re.escape(phrase)}s?\b")


def short_lists(
    passages: Iterable[Passage], found: Sequence[AllergenFound], tables: FeedingTables, market: str
) -> Iterator[ShortList]:
    """Every "contains ..." that names some of the allergens of the baby's bowl and leaves others out."""
    labels = named_in([one for one in found if one.baby and one.how in ("present", "hidden")], tables, market)
    for passage in passages:
        if passage.leave is not None or passage.kind not in _KINDS:
            continue
        for match in _CONTAINS.finditer(passage.text):
            said = of_text(match["list"], tables)
            said |= {"gluten", "wheat"} if said & {"gluten", "wheat"} else set()
            words = match["list"].lower()
            missing = tuple(label for label in labels if label.allergen not in said and label.word.lower() not in words)
            if said and missing:
                yield ShortList(passage, passage.span(match.start("list"), match.end("list")), missing)
