"""The forms of English verbs: every table names a verb once, and is inflected by it."""

from __future__ import annotations

import re

_IRREGULAR = {
    "beat": ("beat", "beaten"), "begin": ("began", "begun"), "bind": ("bound",), "bite": ("bit", "bitten"),
    "blow": ("blew", "blown"), "break": ("broke", "broken"), "bring": ("brought",), "build": ("built",),
    "burn": ("burnt", "burned"), "buy": ("bought",), "catch": ("caught",), "come": ("came",), "cut": ("cut",),
    "dig": ("dug",), "do": ("did", "done"), "drink": ("drank", "drunk"), "drive": ("drove", "driven"),
    "eat": ("ate", "eaten"), "fall": ("fell", "fallen"), "feed": ("fed",), "feel": ("felt",), "fight": ("fought",),
    "find": ("found",), "freeze": ("froze", "frozen"), "get": ("got", "gotten"), "give": ("gave", "given"),
    "go": ("went", "gone"), "hang": ("hung",), "have": ("had",), "hide": ("hid", "hidden"), "hold": ("held",),
    "hurt": ("hurt",), "keep": ("kept",), "lay": ("laid",), "lead": ("led",), "leave": ("left",), "lend": ("lent",),
    "let": ("let",), "lie": ("lay", "lain"), "lose": ("lost",), "make": ("made",), "meet": ("met",),
    "put": ("put",), "rid": ("rid",), "ride": ("rode", "ridden"), "run": ("ran", "run"), "say": ("said",),
    "see": ("saw", "seen"), "set": ("set",), "shake": ("shook", "shaken"), "shut": ("shut",), "sit": ("sat",),
    "sleep": ("slept",), "slide": ("slid",), "speed": ("sped",), "spend": ("spent",), "spit": ("spat", "spit"),
    "split": ("split",), "stand": ("stood",), "steal": ("stole", "stolen"), "stick": ("stuck",), "sweep": ("swept",),
    "swell": ("swelled", "swollen"), "swim": ("swam",), "take": ("took", "taken"), "tear": ("tore", "torn"),
    "tell": ("told",), "throw": ("threw", "thrown"), "wake": ("woke",), "wear": ("wore", "worn"),
}  # fmt: skip
_VOWELS = "aeiou"
_SOUNDS = re.compile("[aeiouyé]+")


def third_person(verb: str) -> str:
    """ "chop" -> "chops", "mash" -> "mashes", "go" -> "goes", "dry" -> "dries"."""
    if verb == "have":
        return "has"
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
    """ "chop" -> "chopped", "bake" -> "baked", "dry" -> "dried", as if it were regular."""
    if verb.endswith("e"):
        return verb + "d"
    return verb[:-1] + "ied" if _ends_in_y(verb) else doubled(verb) + "ed"


def pasts(verb: str) -> tuple[str, ...]:
    """The past and its participle: "pop" -> popped; "give" -> gave, given; "refreeze" as "freeze"."""
    if verb.startswith("re") and verb[2:] in _IRREGULAR:
        return tuple(f"re{one}" for one in _IRREGULAR[verb[2:]])
    return _IRREGULAR.get(verb) or (past(verb),)


def forms(verb: str) -> tuple[str, ...]:
    """Every form of ``verb``, itself first: "pop" -> pop, pops, popping, popped."""
    return tuple(dict.fromkeys((verb, third_person(verb), participle(verb), *pasts(verb))))


def doubled(verb: str) -> str:
    """The last consonant doubled after one short vowel: chop, chopped; steam, steamed. Verbs of two syllables are
    stressed on the first here: season, simmer, quarter."""
    if len(verb) < 3 or verb[-1] in _VOWELS + "wxyéh" or len(_SOUNDS.findall(verb)) > 1:
        return verb
    short = verb[-2] in _VOWELS and verb[-3] not in _VOWELS
    return verb + verb[-1] if short else verb


def _ends_in_y(verb: str) -> bool:
    return verb.endswith("y") and verb[-2:-1] not in _VOWELS
