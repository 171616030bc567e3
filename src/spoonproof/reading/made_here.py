"""Foods that the recipe itself makes: "whisk the yolk and the oil into a mayonnaise", later "the mayonnaise".

Nobody lists them, and nothing hides in them that is not listed: what they are made of is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.model.kitchen import Foods
from spoonproof.reading.mentions import DEFINITE, Mention

_GROUPS = frozenset({"sauce", "prepared", "egg", "baked", "dairy", "cheese", "nut", "seed", "sweet", "grain"})
# What a thing that a recipe makes is made of: "pour the custard over" where eggs are listed.
_OF = {
    "custard": ("egg",), "meringue": ("egg",), "mayonnaise": ("egg",), "pastry": ("flour",), "pesto": ("basil",),
    "hummus": ("chickpea",), "houmous": ("chickpea",), "guacamole": ("avocado",), "porridge": ("oat", "semolina"),
    "gravy": ("flour", "cornflour"), "bechamel": ("flour",), "béchamel": ("flour",), "white sauce": ("flour",),
    "tomato sauce": ("tomato",), "salsa": ("tomato",), "caramel": ("sugar",), "dal": ("lentil", "dal"),
    "raita": ("yoghurt",), "tzatziki": ("yoghurt",), "chips": ("potato",), "fries": ("potato",),
    "meatballs": ("mince", "minced", "ground"), "jelly": ("agar", "gelatine", "gelatin"),
}  # fmt: skip
_MADE = re.compile(
    r"\b(?:(?:whisk|beat|blend|blitz|mash|mix|cook|work|turn|shape|pound|grind|knead|purée|puree|process|simmer|reduce"
    r"|stir|boil|set|thicken|curdle|roll|form|press|pat"
    r"|mould|mold|stretch)\w*\b[^.;]{0,80}?\b(?:in)?to|to make|makes?|making|forms?|becomes?"
    r"|(?:have|is|are|you've made|that is|that's) (?:your|the|a))[ \t]+(?:an?[ \t]+|the[ \t]+|your[ \t]+)?"
    r"(?:(?:thick|thin|smooth|quick|loose|plain|simple|runny|stiff|soft|light|creamy|coarse|rough)[ \t]+){0,2}$",
    re.I,
)

_EACH = re.compile(r"\b(?:each|every)[ \t]{1,9}$", re.I)
_PART_OF = re.compile(r"\b(?:of|each|every|an?)[ \t]{1,9}$", re.I)  # "bits of roti", once rotis were rolled


def without_made(
    text: str, mentions: Sequence[Mention], foods: Foods, title: str, made: set[str], listed: Sequence[str] = ()
) -> list[Mention]:
    """``mentions`` without the foods of no line that this sentence makes or an earlier one made.

    ``made`` is carried from step to step and grows; ``title``: the dish goes by its own name as well; ``listed``: the
    foods' names.
    """
    kept: list[Mention] = []
    for one in mentions:
        record = foods.get(one.food) if one.food else None
        if record is not None and record.group == "fat" and _rendered(text[one.start : one.end], listed):
            continue
        if record is None or (record.group not in _GROUPS and text[one.start : one.end].lower() not in _OF):
            kept.append(one)
            continue
        before = text[max(0, one.start - 120) : one.start]
        words = text[one.start : one.end]
        if words.lower() == "hot sauce" and DEFINITE.search(before):
            continue  # "with some of the hot sauce": out of the pan
        if _MADE.search(before):
            made.add(one.food)
        elif one.food in made and _PART_OF.search(before):
            continue
        elif _EACH.search(before) and _has_what_it_takes(words, listed):
            continue  # "cut each meatball into quarters"
        elif not DEFINITE.search(before) or not (
            one.food in made or _is_dish(words, title) or _has_what_it_takes(words, listed)
        ):
            kept.append(one)
    return kept


def _rendered(words: str, listed: Sequence[str]) -> bool:
    """ "Fry it in a little of the duck fat", where duck legs are listed."""
    beast, _, fat = words.lower().rpartition(" ")
    return fat in ("fat", "dripping", "drippings") and any(
        re.search(rf"\b{re.escape(beast)}\b", one, re.I) for one in listed
    )


def _has_what_it_takes(words: str, listed: Sequence[str]) -> bool:
    name = words.lower()
    needs = _OF.get(name) or _OF.get(f"{name}s", ())
    return any(re.search(rf"\b{need}(?:e?s)?\b", name, re.I) for need in needs for name in listed)


def _is_dish(words: str, title: str) -> bool:
    """Whether the title names it as the dish, not as something that goes with it ("toast with hummus")."""
    head = re.split(r"\b(?:with|on|over|and|in)\b", title, maxsplit=1, flags=re.I)[0]
    return re.search(rf"\b{re.escape(words)}\b", head, re.I) is not None
