"""How the regular forms of an English verb are spelled: every table of verbs is inflected by it."""

from __future__ import annotations

import re

_VOWELS = "aeiou"
_SOUNDS = re.compile("[aeiouyé]+")


def third_person(verb: str) -> str:
    """ "chop" -> "chops", "mash" -> "mashes", "go" -> "goes", "dry" -> "dries"."""
    if verb.endswith(("s", "x", "z", "ch", "sh", "go", "do")):
        return verb + "es"
    return verb[:-1] + "ies" if _ends_in_y(verb) else verb + "s"


def participle(verb: str) -> str:
    """ "chop" -> "chopping", "bake" -> "baking", "lie" -> "lying"."""
    if verb.endswith("ie"):
        return verb[:-2] + "ying"
    if verb.endswith("e") and not verb.endswith(("ee", "ée", "oe", "ye")):
        return verb[:-1] + "ing"
    return doubled(verb) + "ing"


def past(verb: str) -> str:
    """ "chop" -> "chopped", "bake" -> "baked", "dry" -> "dried"; irregular pasts are for the tables to say."""
    if verb.endswith("e"):
        return verb + "d"
    return verb[:-1] + "ied" if _ends_in_y(verb) else doubled(verb) + "ed"


def doubled(verb: str) -> str:
    """The last consonant doubled after one short vowel: chop, chopped; steam, steamed. Verbs of two syllables are
    stressed on the first here: season, simmer, quarter."""
    if len(verb) < 3 or verb[-1] in _VOWELS + "wxyéh" or len(_SOUNDS.findall(verb)) > 1:
        return verb
    short = verb[-2] in _VOWELS and verb[-3] not in _VOWELS
    return verb + verb[-1] if short else verb


def _ends_in_y(verb: str) -> bool:
    return verb.endswith("y") and verb[-2:-1] not in _VOWELS
