"""The forms of English verbs, so that a table names each verb once."""

from __future__ import annotations

from collections.abc import Sequence

_IRREGULAR = {
    "bite": ("bit", "bitten"), "blow": ("blew", "blown"), "break": ("broke", "broken"), "bring": ("brought",),
    "buy": ("bought",), "catch": ("caught",), "come": ("came",), "cut": ("cut",), "dig": ("dug",),
    "do": ("did", "done"),
    "drink": ("drank", "drunk"), "drive": ("drove", "driven"), "eat": ("ate", "eaten"), "fall": ("fell", "fallen"),
    "feed": ("fed",), "find": ("found",), "freeze": ("froze", "frozen"), "get": ("got",), "give": ("gave", "given"),
    "go": ("goes", "went", "gone"), "hang": ("hung",), "have": ("has", "had"), "hide": ("hid", "hidden"),
    "hold": ("held",), "keep": ("kept",), "leave": ("left",), "let": ("let",), "lie": ("lay", "lain", "lying"),
    "lay": ("laid",), "lose": ("lost",), "make": ("made",), "put": ("put",), "ride": ("rode", "ridden"),
    "run": ("ran", "run"), "say": ("said",), "see": ("saw", "seen"), "set": ("set",), "shake": ("shook", "shaken"),
    "shut": ("shut",), "sit": ("sat",), "sleep": ("slept",), "slide": ("slid",), "spend": ("spent",),
    "spit": ("spat", "spit"), "stand": ("stood",), "steal": ("stole", "stolen"), "stick": ("stuck",),
    "sweep": ("swept",), "swell": ("swelled", "swollen"), "take": ("took", "taken"), "tell": ("told",),
    "tear": ("tore", "torn"), "throw": ("threw", "thrown"), "wake": ("woke",), "wear": ("wore", "worn"),
    "hurt": ("hurt",), "split": ("split",), "squeeze": (), "swim": ("swam",), "drip": (), "lend": ("lent",),
}  # fmt: skip
_VOWELS = "aeiou"


def forms(verb: str) -> Sequence[str]:
    """Every form of ``verb``, itself first: "pop" -> pop, pops, popping, popped."""
    third = verb + ("es" if verb.endswith(("ch", "sh", "ss", "x", "zz")) else "s")
    if verb.endswith("y") and verb[-2:-1] not in _VOWELS:
        third = verb[:-1] + "ies"
    stem = _stem(verb)
    past = _IRREGULAR.get(verb) or ((verb[:-1] + "ied") if third.endswith("ies") else stem + "ed",)
    return tuple(dict.fromkeys((verb, third, stem + "ing", *past)))


def _stem(verb: str) -> str:
    """What "-ing" and "-ed" come to: without a silent e, with the last consonant doubled after one short vowel."""
    if verb.endswith("ie"):
        return verb[:-2] + "y"
    if verb.endswith("e") and not verb.endswith(("ee", "oe", "ye")):
        return verb[:-1]
    vowels = sum(letter in _VOWELS for letter in verb)
    short = len(verb) > 2 and verb[-1] not in "aeiouwxy" and verb[-2] in _VOWELS and verb[-3:-2] not in _VOWELS
    return verb + verb[-1] if short and vowels == 1 else verb
