"""Who the names of a film or post belong to, where it says so: "Jonah's five and Pip's ten months"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

_FROM_FIVE = r"five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|[5-9]|1[0-8]"
_YEARS = rf"(?:two|three|four|[2-4]|{_FROM_FIVE})"
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


_OLDER = re.compile(
    r"\b(?:(?:my|our|his|her|their|the) (?:eldest|oldest|(?:big|older|elder) (?:one|(?P<boy>boy|brother|lad)"
    r"|(?P<girl>girl|sister))|(?P<brother>brother)|(?P<sister>sister)))(?! (?:says|said|thinks|told|tells|asks|asked"
    r"|wants|gives|gave|feeds|fed)\b)(?=['’ ])",
    re.I,
)
_MEANWHILE = re.compile(
    r"\b(?:baby|bab(?:y|ies)['’]?s?|him|(?:he|she) (?:grabbed|took|stole|watched|wanted)|\w+ months)\b", re.I
)
"""Words between an older child and "she" after which it may be the baby: "his sister feeds the baby and she"."""
_SPEAKS_ON = re.compile(r"\W*(?:(?:and|so|then|but) )?(?:s?he|they)\b", re.I)
_THEN = re.compile(r"\b(?:(?P<he>he)|(?P<she>she))(?:['’]s|['’]ll|['’]d)?\b", re.I)


def _others(words: Sequence[str]) -> Mapping[str, str]:
    """These words, small or at the beginning of a sentence, as such that stand for no baby."""
    return {form: "other" for word in words for form in (word, word.capitalize())}


_NAMES_BABY = re.compile(
    r"\b(?:bab(?:y|ies)|little (?:ones?|girl|boy|man|lady)|youngest|newborns?|toddlers?|infants?|months?|weeks?)\b",
    re.I,
)
_OLDER_ONES = re.compile(
    r"\b(?:eldest|oldest|older|elder|big(?:ger)?|teenage\w*)\b"
    r"|\b(?:is|are|was|were|(?:who|s?he|they)['’](?:s|re)|aged) (?:(?:now|nearly|both|all) )?"
    rf"(?:{_FROM_FIVE})\b(?! (?:of|or|minutes|times|o['’]clock)\b)",
    re.I,
)
_SEVERAL = re.compile(
    r"\b(?:friends|mates|classmates|cousins|brothers|sisters|siblings|twins|ones|two|three|four|lot|kids|children"
    r"|boys|girls|both)\b",
    re.I,
)
_MANY = _others(("they", "them", "their", "theirs"))
"""Older children told of, several of them, and the words for them."""


def _older_ones(said: str) -> Mapping[str, str]:
    """The words by which a sentence speaks on of an older child: "my eldest is six and she gets feta over hers"."""
    older = _OLDER.search(said)
    then = _THEN.search(said, older.end()) if older else None
    if not older or not then or _MEANWHILE.search(said, older.end(), then.start()):
        return {}
    male, female = older["boy"] or older["brother"], older["girl"] or older["sister"]
    if (male and then["she"]) or (female and then["he"]):
        return {}
    return _others(("he", "his", "himself") if then["he"] else ("she", "hers", "herself"))


def spoken_of(names: Mapping[str, str], sentences: Sequence[str]) -> Iterator[Mapping[str, str]]:
    """For each sentence the ``names``, and the words by which it speaks on of somebody who is no baby: of who alone was
    named in the sentence before ("her"), of an older child or of several ("My eldest is eight, and her friends are the
    same. They'll have popcorn"), as long as each sentence begins with such a word and none names a baby."""
    carried: Mapping[str, str] = {}
    for before, said in pairwise(["", *sentences]):
        speaks_on = _SPEAKS_ON.match(said) is not None
        baby = _NAMES_BABY.search(said) or any(names[name] == "child" for name in names if name in said)
        older = _older_ones(f"{before}{said}" if speaks_on else said)
        last = [] if any(name in said for name in names) else [names[name] for name in names if name in before]
        if last and set(last) == {"other"}:
            older = dict.fromkeys(_PRONOUNS, "other")
        older = older or (carried if speaks_on and not baby else {})
        yield {**names, **older} if older else names
        carried = {} if baby else _MANY if _OLDER_ONES.search(said) and _SEVERAL.search(said) else older


_AT_AGE = r"(?:['’]s|['’]ll be| is| was| are| turned)(?: \w+){0,2} (?:\w+|\d+)[- ](?:months?|weeks?)\b"
_SMALL = r"(?:(?:my|our|the|his|her) )(?:(?:little|baby|wee|own|youngest|tiny) ){0,2}"
_BABY_BOY = re.compile(
    rf"\bhe{_AT_AGE}|\bthe baby (?:has|gets|eats|had|got|ate) his\b(?! \w)"
    rf"|\b{_SMALL}(?:boy|son|grandson|lad|fella|nephew){_AT_AGE}"
    r"|\bmonths?[- ]old (?:\w+ )?(?:boy|son|grandson|lad|nephew)\b",
    re.I,
)
_BABY_GIRL = re.compile(
    rf"\bshe{_AT_AGE}|\bthe baby (?:has|gets|eats|had|got|ate) hers\b"
    rf"|\b{_SMALL}(?:girl|daughter|granddaughter|lass|niece){_AT_AGE}"
    r"|\bmonths?[- ]old (?:\w+ )?(?:girl|daughter|granddaughter|lass|niece)\b",
    re.I,
)
_NO_OTHER = r"(?<!big )(?<!older )(?<!elder )(?<!eldest )\b(?:{})\b(?! (?:is|turned|was) (?:nearly )?"
_MAYBE_GIRL = re.compile(_NO_OTHER.format("girls?|daughter|granddaughter|twins|triplets|niece") + rf"{_YEARS}\b)", re.I)
_MAYBE_BOY = re.compile(_NO_OTHER.format("boys?|son|grandson|twins|triplets|lad|nephew") + rf"{_YEARS}\b)", re.I)

_DOES = re.compile(
    r"\bs?he (?!(?:(?:can|will|may|does|always|just|still|only|now|really) )*(?:ha[sd]|have|having|gets?|got|eats?"
    r"|ate|loves?|likes?|wants?|is|was|drinks?|takes?|took)\b)\w",
    re.I,
)
"""Words by which one of them hands over or makes the food: who "he" feeds may be the baby still."""


def eats_it(others: Mapping[str, str], said: str) -> Mapping[str, str]:
    """The words for ``others`` that ``said`` tells of as eating, none where they do something else."""
    return {} if _DOES.search(said) else others


def no_baby(text: str) -> Mapping[str, str]:
    """The words that stand for no baby where all of the text's are boys, or girls: "he's nine months", so "she" is
    somebody else."""
    boy, girl = _BABY_BOY.search(text), _BABY_GIRL.search(text)
    if boy and not girl and not _MAYBE_GIRL.search(text):
        return _others(("she", "her", "hers", "herself"))
    if girl and not boy and not _MAYBE_BOY.search(text):
        return _others(("he", "him", "his", "himself"))
    return {}
