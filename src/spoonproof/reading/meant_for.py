"""For babies of what age speech is meant, by its own words: "a purée for babies from seven months"."""

from __future__ import annotations

import re
from collections.abc import Iterable

from spoonproof.reading.spoken import number_words

YOUNGEST = 6
"""Months: the age that speech to a baby's family is taken to be for, where nothing says another (about when solid food
begins)."""
_OLDEST = 36
_WORDS = {number_words(months): months for months in range(3, _OLDEST)}
_NUMBER = r"\d{1,2}|" + "|".join(sorted(_WORDS, key=len, reverse=True))
_AGE = re.compile(
    r"(?i)"
    r"\b(?P<before>(?:from|at|aged?|of|turn(?:s|ed|ing)?|for|is|are|(?:she|he|they|who|bub|baby)['’](?:s|re)|around|about)\s{1,3}(?:about\s|around\s|just\s)?)?"
    rf"(?P<months>{_NUMBER})(?:\s?(?:to|or|and|-|–)\s?(?:{_NUMBER}))?[\s-]?months?\b"
    r"(?P<after>[\s-]old|\s?\+|\splus\b|\sand\s(?:up|over|older|above)\b|\son(?:wards?)?\b|\sbab(?:y|ies)\b)?"
)
_KEPT = re.compile(r"(?i)\b(?:fr(?:eez|oze)\w*|fridge|kept|keeps?|keeping|store[ds]?|lasts?|season)\b")
_BABIES = re.compile(
    r"(?i)"
    r"\b(?:weaning|babies|baby(?:['’]s)? (?:food|pur[ée]es?|cereal|porridge|meals?|bowl|portion)|first (?:foods|tastes)"
    r"|(?:your|my|our|the|a) (?:bab(?:y|ies)|little ones?)|baby[- ]led|little ones|bubs?|bubba|littlies?|tots"
    r"|high ?chair|bugg(?:y|ies)|prams?|pushchairs?|strollers?|napp(?:y|ies)|diapers?|teething"
    r"|(?:her|his|the) (?:dummy|cot|crib|bouncer|sippy cup|beaker))\b"
)
_AROUND = 40
"""Characters before a number of months in which "freezes" or "keeps" says that no age is meant."""


def meant_for(texts: Iterable[str], otherwise: int = YOUNGEST) -> int | None:
    """Months: the youngest age that the texts name; ``otherwise`` where they speak of babies and name none, None where
    they speak of no baby."""
    babies, ages = False, []
    for text in texts:
        babies = babies or _BABIES.search(text) is not None
        for match in _AGE.finditer(text):
            before = text[max(0, match.start() - _AROUND) : match.start()]
            if (match["before"] or match["after"]) and not _KEPT.search(before):
                word = match["months"].lower()
                ages.append(int(word) if word.isdigit() else _WORDS[word])
    return min((age for age in ages if 0 < age <= _OLDEST), default=otherwise if babies else None)
