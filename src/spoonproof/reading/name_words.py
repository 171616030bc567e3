"""The words of a food's name as a method is compared with them: small letters, singular, spellings made one."""

from __future__ import annotations

import re
from functools import lru_cache

WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)?")
_IRREGULAR = {"leaves": "leaf", "halves": "half", "loaves": "loaf", "yogurt": "yoghurt", "yogurts": "yoghurt"}


@lru_cache(maxsize=4096)  # two hundred times a recipe, of a few names
def key_of(name: str) -> tuple[str, ...]:
    """The words of a name, each in the singular."""
    return tuple(singular(m[0]) for m in WORD.finditer(name))


@lru_cache(maxsize=4096)  # a hundred times a recipe, of a few words
def singular(word: str) -> str:
    """One word in small letters, in the singular, without a possessive."""
    text = word.lower().replace("’", "'").removesuffix("'s")
    if text in _IRREGULAR:
        return _IRREGULAR[text]
    if len(text) < 4 or not text.endswith("s") or text.endswith(("ss", "us")):
        return text
    if text.endswith("ies") and len(text) > 4:
        return text[:-3] + "y"
    if text.endswith(("oes", "shes", "ches", "xes", "sses")):
        return text[:-2]
    return text[:-1]
