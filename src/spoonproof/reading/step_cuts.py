"""How an instruction cuts its foods: "slice into thin rounds", "serve cut in strips", "the raisins, chopped small"."""

from __future__ import annotations

import re

from spoonproof.model.kitchen import Verb
from spoonproof.model.recipe import Cut
from spoonproof.model.record import replace
from spoonproof.model.text import Passage
from spoonproof.reading.measures import Measures

_CUT_PHRASE = re.compile(
    r"(?i)\b(?:cut|sliced?|chopped|diced|torn|broken|flaked|halved|quartered)"
    r"(?:[ \t]{1,9}(?:up|in|into|lengthways)){0,3}[ \t]{0,9}$"
)
_PARTICIPLE = re.compile(  # "stir in the raisins, chopped small"
    r"(?i),[ \t]+(?:(?:very |quite )?(?:finely|roughly|thinly|coarsely) )?"
    r"(?:chopped|sliced|diced|grated|crushed|mashed|halved|quartered|shredded|flaked|crumbled|torn)[^,.;]{0,24}$",
)
_SERVED_AS = re.compile(r"(?i)\b(?:cut|sliced|chopped|in|into|as)[ \t]{1,9}(?:[a-z-]+[ \t]{1,9})?$")
_ADVERB = re.compile(r"(?i)\b(?:very finely|finely|thinly|thickly|roughly|coarsely)\b")
_FINE = re.compile(  # "chop the meat very fine", "dice it as small as you can"
    r"(?i)\b(?:(?:very |really |quite |nice and )?(?:fine|small)"
    r"(?=[ \t]{0,3}(?:[.,;)]|$|\b(?:and|before|for|then|with)\b))"
    r"|as (?:fine|finely|small) as (?:you can|possible))",
)
_LENGTHWAYS = re.compile(r"(?i)\b(?:lengthways|lengthwise|length-ways|along (?:its|their|the) length)\b")
_OF_A_PERSON = re.compile(r"(?i)\b(?:your|my|clean|between|wet|both|her|his|their)[ \t]{1,9}(?:clean |wet )?$")


def cuts_of(passage: Passage, own: tuple[int, int], verb: Verb, measures: Measures) -> tuple[Cut, ...]:
    """The cuts that an instruction makes or gives; ``own``: where its words stand in the passage."""
    base, end = own
    part = passage.text[base:end]
    found = list(measures.cuts.find(part, verbs=verb.role == "cut"))
    found = [f for f in found if not _OF_A_PERSON.search(part[max(0, f.start - 24) : f.start])]
    if verb.role != "cut":
        phrase = _SERVED_AS if verb.role == "serve" else _CUT_PHRASE
        found = [
            f
            for f in found
            if f.cut.shape != "whole"
            and (phrase.search(part[max(0, f.start - 40) : f.start]) or _PARTICIPLE.search(part[: f.end]))
        ]
    elif len(found) > 1 and found[0].start == 0:
        found = found[1:]  # "slice into thin rounds": the shape counts, not the verb
    elif len(found) == 1 and found[0].start == 0:
        adverb = _ADVERB.search(part, found[0].end)
        said = adverb[0].lower() if adverb else "finely" if _FINE.search(part, found[0].end) else ""
        word = part[: found[0].end].split()[0].lower() if part else ""
        meaning = measures.cuts.verbs.get(f"{said} {word}") if said else None
        if meaning is not None:
            cut = replace(found[0].cut, shape=meaning.shape, low_mm=meaning.low_mm, high_mm=meaning.high_mm)
            found = [found[0]._replace(cut=cut)]
    along = _LENGTHWAYS.search(part) is not None
    return tuple(
        replace(f.cut, span=passage.span(base + f.start, base + f.end), lengthways=f.cut.lengthways or along)
        for f in found
    )
