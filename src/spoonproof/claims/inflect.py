"""English word forms, made once when the lexicon is built: plurals, verb forms, two spellings."""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.model.verb_forms import participle, past, pasts, third_person

_DOUBLES = frozenset(
    {"begin", "control", "prefer", "expel", "repel", "infer", "propel", "fulfil", "regret", "refer", "submit", "fuel"}
)
_SURELY = ("usually", "generally", "normally", "safely", "certainly", "probably", "definitely", "easily", "happily",
           "even", "also", "then", "just")  # fmt: skip
# The left side is how our tables are written; the right side is the other spelling of English.
_SPELLINGS = (
    (re.compile(r"fibre"), "fiber"),
    (re.compile(r"aem"), "em"),
    (re.compile(r"rrhoea"), "rrhea"),
    (re.compile(r"\boe(?=[sd])"), "e"),
    (re.compile(r"foet"), "fet"),
    (re.compile(r"coeliac"), "celiac"),
    (re.compile(r"(?<=[a-z]{2})our(?=s|ed|ing|ings|\b)"), "or"),
    (re.compile(r"goitre"), "goiter"),
    (re.compile(r"sulph"), "sulf"),
    (re.compile(r"ageing"), "aging"),
    (re.compile(r"grey"), "gray"),
    (re.compile(r"(?<=[a-z]{3})is(?=(e|es|ed|er|ing|ation)\b)"), "iz"),
    (re.compile(r"caesar"), "cesar"),
    (re.compile(r"labell"), "label"),
    (re.compile(r"yoghurt"), "yogourt"),
    (re.compile(r"defence"), "defense"),
    (re.compile(r"fuell"), "fuel"),
)

_OTHER_SPELLING = re.compile("|".join(f"(?:{pattern.pattern})" for pattern, _ in _SPELLINGS))


def plural(word: str) -> str:
    """The plural of a singular noun; a word already ending in -s is given back."""
    if word.endswith("y") and len(word) > 2 and word[-2] not in "aeiou":
        return word[:-1] + "ies"
    if word.endswith(("ch", "sh", "x", "z", "ss")) or word in ("tomato", "potato", "mango"):
        return word + "es"
    if word.endswith("s"):
        return word
    if word.endswith("leaf"):
        return word[:-1] + "ves"
    return word + "s"


def verb_forms(verb: str) -> tuple[str, ...]:
    """Third person, past and -ing forms of a plain verb."""
    twice = verb + verb[-1] if verb in _DOUBLES else ""
    told = (f"{twice}ed",) if twice and pasts(verb) == (past(verb),) else pasts(verb)
    short = ("'ve",) if verb == "have" else ()
    return third_person(verb), *told, f"{twice}ing" if twice else participle(verb), *short


def forms(term: str, how: str) -> Iterator[str]:
    """Every written form of a table's term: ``how`` is noun, verb, fixed, or may (what somebody "can generally" or
    "may also" do); British spelling in, both out."""
    made = [term]
    if how == "noun":
        head, _, last = term.rpartition(" ")
        made.append(f"{head} {plural(last)}".strip())
    elif how == "verb":
        first, _, rest = term.partition(" ")
        made += [f"{form} {rest}".strip() for form in verb_forms(first)]
    elif how == "may":
        made = [f"{may} {surely} {term}" for may in ("can", "may") for surely in _SURELY]
    for form in made:
        yield form
        if _OTHER_SPELLING.search(form) is None:
            continue
        other = form
        for pattern, instead in _SPELLINGS:
            other = pattern.sub(instead, other)
        if other != form:
            yield other
