"""Whether the baby's share is out before a food goes in: "lift out her portion first, then salt the rest".

What goes in after that is for the others, but for what the sentence hands over by itself: "hers goes first, and I stir
honey into her bowl".
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from spoonproof.feeding.clauses import clause_at
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.who_eats import Stance, stance
from spoonproof.feeding.words import Found

_HERS = (
    r"\b(?:hers|his|theirs|(?:her|his|their|(?:the |your |my )?baby['’]?s|the little one['’]s) (?:\w+ )?"
    r"(?:bowl|portion|share|helping|plate|part|bit|spoonful|serving|scoop|dish|katori|tub))\b"
)
_FIRST = re.compile(
    rf"{_HERS}(?:['’]s)?(?: (?:is|are|has been|was|safely|already|well|gone|goes|comes|gets|filled|ladled)){{0,3}}"
    r" (?:out|aside|first(?! \w+)|first(?= (?:and|then|before|so)\b)|away|lifted|scooped|ladled|spooned|taken"
    r"|removed|already|dished|served)\b"
    rf"|{_HERS} (?:\w+ ){{0,4}}(?:before|beforehand)(?:$|[,;:.])"
    rf"|{_HERS}(?:['’]s)? (?:goes|comes|leaves|is) (?:\w+ )?before (?:the|any|we|i|you)\b"
    r"|\bfirst (?:(?:comes?|goes?|(?:(?:we|you|i) )?(?:serve|fill|dish up|dish out) for) )?"
    rf"(?:{_HERS}|(?:the |your |our )?bab(?:y|ies)\b),? (?:and )?then\b"
    rf"|\bfirst (?:we|i|you) (?:\w+ ){{1,2}}{_HERS}"
    r"|\b(?:spoon|ladl|scoop|lift|dish|tak|set|put)\w* (?:\w+ ){0,3}(?:out|aside|by|off) for (?:the |your |my |our )?"
    r"(?:bab(?:y|ies)|little ones?|\w+est|[\w-]+[- ]months?[- ]olds?)\b(?=.*\bthen\b)"
    rf"|\b(?:once|after|when) {_HERS} (?:has|have|had|is|are) (?:safely |already )?(?:left|gone)\b"
    r"|\b(?:dish|serv|ladl|spoon|plat)\w* (?:up |out )?for (?:the |your |my |our )(?:bab(?:y|ies)|little ones?"
    r"|\w+est) first\b"
    r"|\bbab(?:y|ies) first,? (?:and )?(?:\w+ ){1,2}(?:second|afterwards?|later|last)\b"
    r"|\b(?:bowl|portion|share|helping) (?:that )?(?:you|i|we)(?:['’]ve| have| had)? (?:already )?"
    r"(?:set aside|kept|saved|took out|lifted out|put by|put aside)\b"
    rf"|\b(?:after|once) (?:i|we|you)(?:['’]ve| have)? (?:\w+ ){{1,2}}{_HERS}"
    r"|\b(?:after|once|when) (?:her|his|their|hers|(?:the |your |my )?baby['’]?s) (?:\w+ ){0,2}(?:is|are|has been"
    r"|have been)"
    r" (?:safely |already |well )?(?:scooped|taken|lifted|ladled|spooned|dished|served|filled|set|put|out|aside|away"
    rf"|in the bowl)\b|\b(?:lift|take|took|taking|scoop|ladle|remov|reserv|set|spoon|dish|put)\w*"
    rf" (?:(?:out|off|up|aside) {_HERS}|{_HERS} (?:out|off|up|aside|by))"
    rf"|\b(?:lift|scoop|ladle)\w* {_HERS}(?=\W*$|,| (?:and|then|before|first)\b)",
    re.I,
)
_BEFORE = re.compile(r"\b(?:before|until|till) (?:\w+ ){0,2}$", re.I)
_WITH_IT = re.compile(r",? (?:(?:\w+ ){0,2}(?:with|gets?|has)|under|in|on)\b", re.I)
"""What follows the share at once and so goes with it: "hers goes first, with a drizzle of honey"."""
_TO_IT = re.compile(r" (?:to|into|in|on|onto|over|through) it\b", re.I)
_IT_WITH = re.compile(r"\b\w+ it with (?:\w+ ){0,3}$", re.I)
"""The share, spoken on of: "set his bowl aside first, add the blueberries to it", "sweeten it with honey"."""


def hers_first(said: str) -> bool:
    """Whether the baby's share is out before what the sentence tells: "salt the batter only after I've fried hers"."""
    return _out(said) is not None


def beside_hers(said: str, hit: Found, tables: FeedingTables, names: Mapping[str, str]) -> Stance | None:
    """What a sentence that has the baby's share out first does with a food, by the food's own clause alone; None where
    no share is out."""
    out = _out(said)
    if out is None:
        return None
    if out.end() <= hit.start and (_TO_IT.match(said, hit.end) or _IT_WITH.search(said, out.end(), hit.start)):
        return Stance("baby", "")
    start, end = clause_at(said, (hit.start, hit.end))
    with_it = start <= out.start() and out.end() <= hit.start and _WITH_IT.match(said, out.end())
    share = "hers" if with_it else ""
    own = said[: out.start()] + share.ljust(out.end() - out.start()) + said[out.end() :]
    alone = hit._replace(start=hit.start - start, end=hit.end - start)
    told = stance(own[start:end], alone, tables, names=names)
    return told if told.eaters == "baby" else Stance("others", "")


@lru_cache(maxsize=500)  # each food of a sentence asks
def _out(said: str) -> re.Match[str] | None:
    """The words by which the baby's share is out."""
    hers = _FIRST.search(said)
    return None if hers is None or _BEFORE.search(said[: hers.start()]) else hers
