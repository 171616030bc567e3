"""Who the names of a film or post belong to, where it says so: "Jonah's five and Pip's ten months"."""

from __future__ import annotations

import re
from collections.abc import Mapping

_YEARS = r"(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[2-9]|1[0-8])"
_MONTHS = r"(?:\w+|\d+)[- ](?:months?|weeks?)"
_NAME = r"(?P<{}>(?!It\b|He\b|She\b|They\b|We\b|That\b|This\b|There\b|Mine\b|Hers\b|His\b)[A-Z][a-z]+)"
_IS = r"(?:['’]s|,? (?:is|was|who['’]s|who is|aged))(?: (?:nearly|almost|just|only|turned|turning|now|about))* "
_KIN = (
    r"(?:eldest|oldest|big \w+|older \w+|toddler|husband|wife|partner|mum|dad|mother|father|gran\w*|nan|nana|uncle"
    r"|aunt\w*|friend|neighbour|sister|brother|cousin|teenager)"
)
_PEOPLE = re.compile(
    rf"\b{_NAME.format('baby')}{_IS}{_MONTHS}\b"
    rf"|\b(?:my|our|the) (?:bab(?:y|ies)(?: \w+)?|little (?:one|girl|boy)|youngest|newborn"
    rf"|{_MONTHS}[- ]old),? {_NAME.format('little')}"
    rf"|\b{_NAME.format('child')}{_IS}{_YEARS}\b(?=\W*(?:$|[.,;!?]|and\b|but\b|so\b|now\b|years?\b))"
    rf"|\b{_YEARS}[- ]year[- ]old,? (?:\w+ )?{_NAME.format('older')}"
    rf"|\b{_NAME.format('aged')}, {_YEARS}(?=[,.;]| and\b)"
    rf"|\b{_NAME.format('after')}, (?:the|my|our|her|his|who['’]s) (?:{_YEARS}[- ]year|{_KIN})"
    rf"|\b(?:my|our|his|her|their) {_KIN},? {_NAME.format('kin')}"
)
_PRONOUNS = ("he", "she", "his", "her", "him", "hers")


def people(text: str) -> Mapping[str, str]:
    """Each name of whom the text tells how old or whose they are: "child" is the baby, "other" anybody else."""
    found: dict[str, str] = {}
    for match in _PEOPLE.finditer(text):
        for group, name in match.groupdict().items():
            if name:
                found.setdefault(name, "child" if group in ("baby", "little") else "other")
    return found


def spoken_of(names: Mapping[str, str], before: str, said: str) -> Mapping[str, str]:
    """The ``names``, and where the sentence ``before`` speaks of an older one by name and this one only of "her": these
    words too."""
    if not names or any(name in said for name in names):
        return names
    last = [names[name] for name in names if name in before]
    return {**names, **dict.fromkeys(_PRONOUNS, "other")} if last and set(last) == {"other"} else names
