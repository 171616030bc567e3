"""The forms of English verbs, so that a table names each verb once."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.model.verb_forms import participle, past, third_person

_IRREGULAR = {
    "bite": ("bit", "bitten"), "blow": ("blew", "blown"), "break": ("broke", "broken"), "bring": ("brought",),
    "buy": ("bought",), "catch": ("caught",), "come": ("came",), "cut": ("cut",), "dig": ("dug",),
    "do": ("did", "done"),
    "drink": ("drank", "drunk"), "drive": ("drove", "driven"), "eat": ("ate", "eaten"), "fall": ("fell", "fallen"),
    "feed": ("fed",), "find": ("found",), "freeze": ("froze", "frozen"), "get": ("got",), "give": ("gave", "given"),
    "feel": ("felt",), "go": ("went", "gone"), "hang": ("hung",), "have": ("has", "had"), "hide": ("hid", "hidden"),
    "hold": ("held",), "keep": ("kept",), "leave": ("left",), "let": ("let",), "lie": ("lay", "lain", "lying"),
    "lay": ("laid",), "lose": ("lost",), "make": ("made",), "put": ("put",), "ride": ("rode", "ridden"),
    "run": ("ran", "run"), "say": ("said",), "see": ("saw", "seen"), "set": ("set",), "shake": ("shook", "shaken"),
    "shut": ("shut",), "sit": ("sat",), "sleep": ("slept",), "slide": ("slid",), "spend": ("spent",),
    "spit": ("spat", "spit"), "stand": ("stood",), "steal": ("stole", "stolen"), "stick": ("stuck",),
    "sweep": ("swept",), "swell": ("swelled", "swollen"), "take": ("took", "taken"), "tell": ("told",),
    "tear": ("tore", "torn"), "throw": ("threw", "thrown"), "wake": ("woke",), "wear": ("wore", "worn"),
    "hurt": ("hurt",), "split": ("split",), "swim": ("swam",), "lend": ("lent",),
}  # fmt: skip


def forms(verb: str) -> Sequence[str]:
    """Every form of ``verb``, itself first: "pop" -> pop, pops, popping, popped; "refreeze" as "freeze"."""
    again = verb.startswith("re") and verb not in _IRREGULAR
    irregular = [f"re{one}" for one in _IRREGULAR.get(verb[2:], ())] if again else _IRREGULAR.get(verb)
    return tuple(dict.fromkeys((verb, third_person(verb), participle(verb), *(irregular or (past(verb),)))))
