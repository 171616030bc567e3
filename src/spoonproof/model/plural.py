"""One noun for one and many of a thing, as every room compares the words of cooks."""

from __future__ import annotations

_IRREGULAR = {"leaves": "leaf", "halves": "half", "loaves": "loaf", "calves": "calf"}


def singular(word: str) -> str:
    """A word in small letters, in the singular by its ending; "cress" and "couscous" are none of many."""
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if len(word) < 4 or not word.endswith("s") or word.endswith(("ss", "us")):
        return word
    if len(word) > 4 and word.endswith("ies"):
        return word[:-3] + "y"
    if len(word) > 4 and word.endswith(("oes", "shes", "ches", "xes", "sses")):
        return word[:-2]
    return word[:-1]
