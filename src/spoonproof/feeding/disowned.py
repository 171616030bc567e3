"""Whether the next words disown what somebody is told to have done: "Gran hands him a rusk, I've asked her to stop".

A tale of what others do warns as often as it recommends; what its teller says of it next tells which.
"""

from __future__ import annotations

import re
from functools import lru_cache

from spoonproof.feeding.asked import only_asked
from spoonproof.feeding.clauses import Clause, clause_of, clauses, names_child
from spoonproof.feeding.tables import FeedingTables

_OTHERWISE = re.compile(r"\b(?:i|we)(?:['’]d| would) (?:normally|usually|always|often)\b[^.;!?\n]{1,60}$", re.I)
_NOT_NOW = re.compile(r"\b(?:but|except|only|today|tonight|this time|instead)\b", re.I)
"""What is done at other times, and not now: "I'd normally pour in wine, but"."""
_WRONG_THEN = re.compile(
    r"\b(?:what|where) (?:i|we) (?:got|did) (?:it )?wrong\b|\b(?:i|we) (?:\w+ )?got (?:it|this|that) (?:\w+ )?wrong\b"
    r"|\bmy (?:\w+ )?mistakes?\b|\bi(?:['’]m not proud| regret)\b",
    re.I,
)
"""What opens a tale of regret, whose deeds are its warning: "what I got wrong with my first. I gave him ..."."""
_DONE_THEN = re.compile(r"\b(?:i|we) (?:\w+ )?(?:gave|put|did|let|made|fed|used|propped|left|mixed|added)\b", re.I)
_LED_TO_IT = re.compile(r"\b(?:(?<!not )because|after|since|all because) (?:i|we|he|she|they|\w+)\b", re.I)
"""What names the cause of what went wrong before it: "we ended up in hospital because we ..."."""
_USED_TO = re.compile(r"\b(?:i|we) (?:always )?(?:used to|would always)\b", re.I)
_TILL_TOLD = re.compile(
    r"\b(?:until|till|before) (?!(?:i|we) (?:told|warned)\b)(?:[\w’'-]+ ){1,5}?"
    r"(?:told|said|warned|showed|explained|pointed|stopped|put|read|learn\w+|found|heard|reali[sz]ed|saw|choked|caught)\b",
    re.I,
)
"""What was done until somebody learned better: "I used to prop the bottle, until the health visitor told me off"."""
_NOT_US = re.compile(
    r"[,;:.–—-]+ ?(?:but )?(?:i|we) (?:(?:do|did|would|will)(?: not|n['’]t)|won['’]t|never(?: do| did| would| will)?)"
    r"(?: (?:do|did) (?:it|that|so))?\s*(?=[.!?;,]|$)",
    re.I,
)
"""What others do and the teller does not, said of no other deed: "other people prop the bottle, I do not"."""
_THIS_HAS_NONE = re.compile(
    r"[.!?\s]*(?:(?:but|and|so) )?(?:this(?: (?:one|bowl|version))?|these|mine|ours|hers|his|the baby['’]s)"
    r" (?:has|have|needs?|gets?|takes?|goes? with|contains?|does with) (?:neither|none|no such thing"
    r"|nothing of the (?:kind|sort))\b",
    re.I,
)
"""What the next sentence says of the own dish: "Hers had wine. This has neither"."""
_NONE_DONE = re.compile(
    r"\b(?:none|not one|nothing) of (?:which|it|that|them|these) (?:did )?(?:i|we) (?:did|do|took|tried|follow|heed)",
    re.I,
)
"""What opens a list of advice that its teller took none of, until she says what she did."""
_BAD_ONES = re.compile(
    r"\b(?:(?:things?|foods?|tips?|advice|habits?|ideas?|drinks?|snacks?|mistakes?|errors?"
    r"|traps?|myths?)\b[^.:!?\n]{0,30}?\b(?:never to"
    r"|not to|to avoid|to skip"
    r"|forbidden|banned|(?:i|we|you)(?:['’]d| would| should)? (?:never|not|ignored?|laughed|refused?|threw|binned"
    r"|avoid))"
    r"|what (?:never|not) to|what (?:i|we|you|nobody) (?:never|(?:do|does|did|would|will|should|must|can)(?: not"
    r"|n['’]t)|won['’]t|can(?:no|['’])t|avoid)"
    r"|(?:worst|bad|terrible|dreadful|awful|silly|daft|dangerous) (?:\w+ )?(?:tips?|advice|ideas?|habits)"
    r"|(?:avoid|never \w+|do(?: not|n['’]t) \w+|skip|forget) (?:\w+ ){0,3}?(?:these|the following|the old"
    r"|all that)|no-nos)\b[^.:!?\n]*[.:!]",
    re.I,
)
"""What opens a list of what is not to be done: "five things never to do", "the worst tips I got"."""
_PRAISES = re.compile(r"\b(?:works?|worked|loves?|true|right|best|miss)\b", re.I)
_TURNS = re.compile(
    r"\b(?:instead|rather|but (?:i|we|do|here)|what (?:i|we) do|(?:i|we) (?:do|give|let|put)|now (?:for|the)|do give"
    r"|the good|better ones?)\b"
    r"|[.!?][ ;][^.!?]{0,40}?\b(?:i|we) (?!never|(?:do|did|would|could|should|must|ca)(?: not|n['’]t)|won['’]t|refuse"
    r"|would never)\w+"
    r"|[.!?][ ;](?:so |and )?(?:s?he|they|(?:the|my|our) \w+) (?:gets?|has|have|eats?|loves?|likes?|drinks?|sleeps?)\b",
    re.I,
)
"""Where such a list ends, and what is done begins."""
_NOT_FOLLOWED = re.compile(
    r"\b(?:i|we) (?:\w+ (?:and \w+ )?){0,3}(?:did|do|took|followed|heeded|tried|listened to) (?:none"
    r"|nothing|not one|neither)\b"
    r"|\b(?:i|we) (?:\w+ ){0,2}ignored (?:it|them|all|every|each|the lot)\b",
    re.I,
)
_LIST = 420
"""Characters that a list of bad advice may have."""
_PLEASE_DONT = re.compile(
    r"\bplease (?:do not|don['’]t|never)\b(?=\W*$|\s*[.,;!:]| (?:ever|copy|do|try|follow|repeat|give|use|put)\b)", re.I
)
_PAST = re.compile(
    r"\b(?:(?:in|since|during|until|till|of|from) (?:the )?(?:late |early |mid )?(?:1[5-9]\d\d"
    r"|(?:nineteen|eighteen) \w+ties"
    r"|(?:twen|thir|for|fif|six|seven|eigh|nine)ties|antiquity|middle ages|war years|(?:\w+ )?centur(?:y"
    r"|ies)|olden days"
    r"|old days)|long ago|before the war|museum|generation|great[- ]?(?:great[- ]?)?grand\w+|victorian|medieval"
    r"|roman|edwardian|(?:great[- ])?(?:gran|grandmother|nan|grandma"
    r"|granny)(?:['’]s)? (?:grew up"
    r"|was (?:one|a girl|little|born|young)|(?:day|time|youth|childhood))|in those days|back then)\b",
    re.I,
)
"""Times long gone, of which a tale tells."""
_PAST_DEED = re.compile(
    r"\b(?:\w+ed|left|held|kept|took|gave|had|was|were|put|fed|told|said|got|did|went|let|made|would|used to)\b", re.I
)
_OF_NOW = re.compile(
    r"\b(?:now|nowadays|today|these days|tonight|still|my (?!(?:great|gran|nan|mum|mother|own mother)\w*)\w+"
    r"|our (?:baby|son|daughter|little|youngest)|(?:i|we)(?:['’](?:m|ve|re|d|ll)| \w+))\b",
    re.I,
)
"""Words by which a tale of the past speaks of who tells it."""
_STOP = re.compile(r"[.!?\n]")
_BEHIND = 140
"""Characters after what is told within which its teller disowns it."""
_BEHIND_ALONE = 100
_BEFORE = 240
"""Characters before it in which a tale of regret begins."""


def _sentence_end(text: str, at: int) -> int:
    stop = _STOP.search(text, at)
    return stop.start() if stop else len(text)


def disowned(text: str, start: int, place: tuple[int, int], tables: FeedingTables) -> bool:
    """Whether what ``text`` tells at ``place``, in a clause from ``start`` on, is refused by the words that follow."""
    behind = text[place[1] : place[1] + _BEFORE]
    for one in clauses(behind, (), tables):
        if one.has("condemns-all") or (one.start < _BEHIND_ALONE and _PLEASE_DONT.search(behind, one.start, one.end)):
            return True
        if one.has("condemns") and one.start < _BEHIND_ALONE and not _of_another(text, start, place, one, tables):
            return True
    if _THIS_HAS_NONE.match(text, _sentence_end(text, place[1])):
        return True
    if _WRONG_THEN.search(text, max(0, start - _BEFORE), start) and _DONE_THEN.search(text, start, place[1]):
        return True
    if _NOT_US.search(text, place[1], _sentence_end(text, min(len(text), _sentence_end(text, place[1]) + 1))):
        return True
    if _LED_TO_IT.search(text, start, place[1]) and any(
        one.has("condemns") for one in clauses(text[start : place[0]], (), tables)
    ):
        return True
    if _USED_TO.search(text, start, place[1]) and _TILL_TOLD.search(text, place[1], place[1] + _BEHIND):
        return True
    if _listed_only(text, start, place) or _of_the_past(text, start, place):
        return True
    after = place[1], place[1] + _BEHIND_ALONE
    if _OTHERWISE.search(text, start, place[0]) and _NOT_NOW.search(text, *after):
        return True
    reach = place[1] + _BEHIND
    refused = any(clause.has("refuses") for clause in clauses(text[place[1] : reach], (), tables))
    return refused and any(
        clause.has("other", "tells")
        for clause in clauses(text[start:reach], (), tables)
        if clause.start + start < place[1]
    )


def _of_another(text: str, start: int, place: tuple[int, int], behind: Clause, tables: FeedingTables) -> bool:
    """Whether a clause behind what is told names another food: "whole grapes. Popcorn, though, is very dangerous"."""
    if behind.start == 0:
        return False  # "salt in his vegetables is something we don't do"
    told = {food.value for food in tables.phrases.find(text[start : place[1]], negated=True)}
    said = text[place[1] + behind.start : place[1] + behind.end]
    named = {food.value for food in tables.phrases.find(said, negated=True)}
    return bool(named) and named.isdisjoint(told)


def _listed_only(text: str, start: int, place: tuple[int, int]) -> bool:
    """Whether it stands in a list of what is not to be done, or of advice that its teller says she took none of."""
    listed = _NONE_DONE.search(text, max(0, start - _BEFORE), start)
    listed = listed or next(
        (one for one in _BAD_ONES.finditer(text, max(0, start - _LIST), place[0]) if not _PRAISES.search(one[0])), None
    )
    if listed is not None:
        return not (_DONE_THEN.search(text, listed.end(), place[1]) or _TURNS.search(text, listed.end(), place[0] + 1))
    refused = _NOT_FOLLOWED.search(text, place[1], place[1] + _LIST)
    return refused is not None and not _DONE_THEN.search(text, start, refused.start())


_STILL = re.compile(
    r"\b(?:never|did ?n['’]t|not) (?:\w+ ){0,3}(?:harm|hurt)|\bsurvived\b|\bturned? out (?:fine|ok|okay|alright|well)\b"
    r"|\bstill (?:do|does|give|use|swear|works?)\b|\b(?:it|that|this) (?:works?|worked|helps?|helped)\b|\bgood advice\b"
    r"|\bwhat (?:i|we) (?:do|did)\b|\bso (?:i|we) (?:do|did|gave|give|put|let)\b"
    r"|\band so do (?:i|we)\b|\b(?:i|we) do the same\b|\b(?:i|we) swear by\b"
    r"|\b(?:they|she|he|gran|nan) (?:was|were) right\b|\banyway\b"
    r"|\bbut (?:i|we) (?:(?:do|did)\b(?! not|n['’]t)|gave|give|kept|carr)",
    re.I,
)
"""What is praised though it is of the past: "in my day it was whisky on the gums, and it never hurt us"."""


def _of_the_past(text: str, start: int, place: tuple[int, int]) -> bool:
    """Whether it is a deed of a tale of times long gone: "in the fifties ... by nine weeks the baby had bacon"."""
    end = _sentence_end(text, place[1])
    gone = next(_PAST.finditer(text, max(0, start - _BEFORE), end), None)
    if gone is None or not _PAST_DEED.search(text, min(start, gone.start()), end):
        return False
    told = start if gone.start() > place[0] else max(gone.end(), start)  # "people propped bottles in the fifties"
    return not (_OF_NOW.search(text, told, end) or _STILL.search(text, start, place[1] + _BEHIND))


_CRAFT = re.compile(
    r"\b(?:salt[- ]dough|play[- ]?dough|beeswax|lye|soap[- ](?:bas|bar|mak|mould|mold)\w*|candle[- ]making|bath bombs?"
    r"|candles? from|bird feeders?|face masks?|wick|slime)\b",
    re.I,
)
_NEAR_CRAFT = 300
"""Characters around the name of a craft in which a food is none."""
_TOY = re.compile(
    r"\b(?:felt|stitched|sew\w*|knitt\w*|crochet\w*|wadding|glued|satin|pretend|dolls?|teddy|toys?|wooden|plastic"
    r"|play (?:kitchen|food|shop|caf[eé]))\b",
    re.I,
)
_TOYS = 4
"""Different words for toys in a text after which its food is one: "the popcorn box is glued shut"."""


@lru_cache(maxsize=8)
def _about_toys(text: str) -> bool:
    """Whether a text speaks of toys: asked of the same text for each danger and claim in it."""
    return len({match[0].lower() for match in _TOY.finditer(text)}) >= _TOYS


def _of_toys(text: str, place: tuple[int, int], tables: FeedingTables) -> bool:
    """Whether a text about toys or a craft speaks of food at ``place`` in a sentence that names no child."""
    start = max(text.rfind(mark, 0, place[0]) for mark in ".!?\n") + 1
    said = text[start : _sentence_end(text, place[1])]
    if _CRAFT.search(text, max(0, place[0] - _NEAR_CRAFT), place[1] + _NEAR_CRAFT):
        return not names_child(clause_of(said, (place[0] - start, place[1] - start)), tables)
    return _about_toys(text) and not names_child(said, tables)


_OTHERS_STILL = re.compile(
    r"\b(?:some|many|a few|plenty|lots|people|others|parents|they|mums|moms|families)\b[\w\s]{0,24}? "
    r"(?:still|give|feed|put|start|offer|use|swear by)\b",
    re.I,
)
_THOUGH = re.compile(
    r"[\s,;–—-]*(?:even )?(?:though|although|yet|but|when) (?:[\w’'-]+ ){0,6}?"
    r"(?:(?:is|are|was|do|does|should|must|need|ca|can)(?:n['’]t| not)|cannot|never|needn['’]t|nothing but|no need"
    r"|too young"
    r"|can (?:carry|choke|kill|harm|make|hold|block)|(?:is|are) (?:(?:a|an|real|serious) ){0,2}"
    r"(?:chok\w+|risk\w*|danger\w*|hazard\w*|unsafe|harmful))\b(?! (?:a |any |the )?(?:harm|hurt|risk|danger|problem))",
    re.I,
)
"""What others still do, and what its teller sets against it: "some still give water, *though he doesn't need it*"."""


def _set_against(text: str, start: int, place: tuple[int, int]) -> bool:
    """Whether what others are said to do still is answered at once with why it is wrong."""
    still = _OTHERS_STILL.search(text, start, place[1])
    if still is None:
        return False
    end = _sentence_end(text, place[0])
    return any(_THOUGH.match(text, at.start(), end) for at in _JOINS.finditer(text, still.end(), end))


_JOINS = re.compile(r",| (?=(?:even )?(?:though|although)\b)", re.I)


def set_aside(text: str, start: int, place: tuple[int, int], tables: FeedingTables) -> bool:
    """Whether a statement at ``place``, in a sentence from ``start`` on, is only asked about, told as what was once
    believed, or disowned."""
    if _listed_only(text, start, place) or _set_against(text, start, place):
        return True
    if _STILL.search(text, start, place[1] + _BEHIND):
        return False
    if _of_toys(text, place, tables) or only_asked(text, start, place, tables) or disowned(text, start, place, tables):
        return True
    told = clauses(text[start : place[1] + _BEHIND], (), tables)
    return next(clause for clause in told if place[1] <= start + clause.end).has("once")
