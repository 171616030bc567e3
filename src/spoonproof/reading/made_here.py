"""Foods that the recipe itself makes: "whisk the yolk and the oil into a mayonnaise", later "the mayonnaise".

Nobody lists them, and nothing hides in them that is not listed: what they are made of is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.model.kitchen import Foods
from spoonproof.reading.mentions import DEFINITE, Mention

_GROUPS = frozenset({"sauce", "prepared", "egg", "baked", "dairy", "cheese", "nut", "seed", "sweet", "grain"})
_MADE = re.compile(
    r"\b(?:(?:whisk|beat|blend|blitz|mash|mix|cook|work|turn|shape|pound|grind|knead|purée|puree|process|simmer|reduce"
    r"|stir|boil|set|thicken|curdle)\w*\b[^.;]{0,80}?\b(?:in)?to|to make|makes?|making|forms?|becomes?"
    r"|(?:have|is|are|you've made|that is|that's) (?:your|the|a))[ \t]+(?:an?[ \t]+|the[ \t]+|your[ \t]+)?"
    r"(?:(?:thick|thin|smooth|quick|loose|plain|simple|runny|stiff|soft|light|creamy|coarse|rough)[ \t]+){0,2}$",
    re.I,
)


def without_made(text: str, mentions: Sequence[Mention], foods: Foods, title: str, made: set[str]) -> list[Mention]:
    """``mentions`` without the foods of no line that this sentence makes or an earlier one made.

    ``made`` is carried from step to step and grows; ``title``: the dish goes by its own name as well.
    """
    kept: list[Mention] = []
    for one in mentions:
        record = foods.get(one.food) if one.food else None
        if record is None or record.group not in _GROUPS:
            kept.append(one)
            continue
        before = text[max(0, one.start - 120) : one.start]
        if _MADE.search(before):
            made.add(one.food)
        elif not (DEFINITE.search(before) and (one.food in made or _is_dish(text[one.start : one.end], title))):
            kept.append(one)
    return kept


def _is_dish(words: str, title: str) -> bool:
    """Whether the title names it as the dish, not as something that goes with it ("toast with hummus")."""
    head = re.split(r"\b(?:with|on|over|and|in)\b", title, maxsplit=1, flags=re.I)[0]
    return re.search(rf"\b{re.escape(words)}\b", head, re.I) is not None
