"""The noun phrase at the place of the subject, whatever it names: "*this traybake* has no egg"."""

from __future__ import annotations

import re

from spoonproof.claims.finding.clauses import clause_begin
from spoonproof.claims.finding.phrase import Subject
from spoonproof.claims.scan import Tagged

_VERBS = frozenset("copula contain have make keep holds free-from suits can-eat child-can hide conceals".split())
_PEOPLE = frozenset({"audience-baby", "audience-adult", "the-child", "goes-without", "age", "age-unit"}) | {
    "household",
    "per-portion",
    "unit",
    "body",
    "inner-body",
}
_OPENS = frozenset(
    "this these our my your the every everything all each that those a an its his her their both one most any".split()
)
_OURS = frozenset({"this", "these", "our"})
_WHOLE = frozenset({"whole", "entire", "pan", "tray", "pot", "batch", "bowl", "lot"})
_FILLS = frozenset(
    "okay ok so right well now and but oh hey yes also all both always totally completely entirely fully naturally "
    "100 % just only still even usually often again in fact because since as here here's can "
    "could may might will would should must couldn't".split()
)
_SOMEBODY = frozenset(
    "i we you he she they it who there what which nobody somebody anyone anybody everyone people study studies "
    "research evidence science scientists experts doctors trial trials review reviews".split()
)
_NOBODY = frozenset("with without nothing no none".split())
_JOINTS = frozenset("and or to that which".split())
_GOES_ON = frozenset("of on in at from with for by to".split())
_APART = frozenset(",.?:()")
_LONGEST = 7
"""Items of such a phrase: "everything on the second page of this menu"."""
_TO_VERB = 5


def at_its_place(tagged: Tagged, at: int, reach: int = _TO_VERB) -> Subject | None:
    """The noun phrase before the verb that is at most ``reach`` items before ``at``; None where it is somebody, or
    names nothing."""
    verb = next((i for i in range(at, max(-1, at - reach), -1) if tagged.is_any(i, _VERBS)), None)
    if verb is None:
        return None
    while verb > 0 and (tagged.is_any(verb - 1, _VERBS) or tagged.items[verb - 1].words in _FILLS):
        verb -= 1
    begin = max(clause_begin(tagged, verb), verb - _LONGEST)
    begin = max((i + 1 for i in range(begin, verb) if tagged.symbols[i] in _APART), default=begin)
    while begin < verb and tagged.items[begin].words in _FILLS - _OPENS:
        begin += 1
    opens = next((i for i in range(begin, verb) if tagged.items[i].words in _OPENS), begin)
    words = [item.words for item in tagged.items[opens:verb]]
    if not words or words[0] in _NOBODY or not _SOMEBODY.isdisjoint(re.findall("[a-z]+", " ".join(words))):
        return None
    head = next((i - 1 for i in range(opens + 1, verb) if tagged.items[i].words in _GOES_ON), verb - 1)
    if (
        tagged.is_any(head, _PEOPLE)
        or tagged.has(opens, "audience-baby")
        or words[-1].rpartition(" ")[2] in _JOINTS
        or tagged.find(_VERBS, opens, verb)
    ):
        return None
    named = opens + (words[0] in _OPENS and words[0] != "everything" and words[1:] not in ([], ["one"]))
    if words[-1] in _OPENS - {"everything", "one"}:
        return None  # "these are": what was named before
    text = tagged.words(named, verb).lower()
    itself = words[0] in _OURS or not _WHOLE.isdisjoint(words)
    return Subject((opens, verb), (text,), (), itself, not itself, f"“{text}”" + ", the dish itself" * itself, words[0])
