"""The clauses of a sentence, which of its foods each tells of, and what classes of words stand in it.

A sentence is parted where another one begins ("..., and she has"). A clause that names a food is about it; one that
names none speaks on of the foods of the clause before ("... because it is far too salty"), or of the next one's where
it comes first ("When she is teething, a cold carrot ..."). The classes of words are rows of ``telling_words``.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from types import MappingProxyType
from typing import cast

from spoonproof.feeding.recipients import UNCUT
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.told_patterns import Classes, Hit, Patterns
from spoonproof.feeding.words import MINE, words
from spoonproof.model.clause_words import IN_TIME, OPENERS
from spoonproof.model.record import NamedTuple
from spoonproof.model.remembered import Remembered

Place = tuple[int, int]
_VERBS = (
    r"(?:ha(?:s|ve)|gets?|got|is|are|was|were|goes|eats?|ate|drinks?|can|will|stays?|waits?|loves?|likes?|went"
    r"|took|says?"
    r"|said)"
)
_BEGINS = (
    r"(?:i|we|you|he|she|they|it|that|this|there|these|those|mine|hers|theirs|ours|nobody|everyone|everybody|then"
    r"|for (?:(?:her|him)(?= (?:an?|the|some|it)\b)|the baby)"
    r"|his(?= (?:is|are|stays|has|gets|goes|comes))|(?:i|we|you|he|she|they|it|that|there)['’]\w+"
    r"|(?:the|my|our|his|her|your) (?:little \w+|big \w+|[\w-]+-old|bab\w+|toddlers?|twins|mum|dad|nan|gran\w*|sister"
    rf"|brother|son|daughter|boy|girl|husband|wife|[\w'’]+(?: \w+){{0,4}} {_VERBS}))\b"
)
"""Words with which another clause begins after a comma, "and" or "or"."""
_OPENS = "|".join(sorted((OPENERS | IN_TIME) - {"as"}))
_BORDER = re.compile(
    rf"[;:.!?()\n]|\s[–—-]\s|[–—]|,(?= {_BEGINS})"
    r"|,? \b(?:(?<!nothing )(?<!anything )(?<!no one )but"
    rf"|so(?! (?:that|much|many|good|soft|sweet|far)\b)(?! \w+ (?:that|even|as)\b)|otherwise|which|who|{_OPENS})\b"
    rf"|,? \b(?:and|or) (?={_BEGINS})"
    r"|(?<=\w) (?=(?:s?he|we|the (?:baby|little one|\w+-\w+-old)|s?he['’]s) (?:has|gets?|have|eats?|ate|had"
    r"|got|works)\b)",
    re.I,
)
_MARKS = frozenset(";:.!?()\n–—-,")
_LEADING = re.compile(rf"\W*(?:and |but |so )?(?:as|instead of|rather than|{_OPENS})\b[^,]*(,)", re.I)
"""A clause that another follows without a word between: "while she ate, my toast went cold"."""
_THE_LAST = re.compile(
    r"\b(?:ha[sd]|have|gets?|got|eats?|ate|gives?|gave|likes?|loves?|takes?|took|tries|tried) (?:(?:her|him|them) )?"
    r"(?:it|that|them|those|these|some|one)\b(?! (?:(?:bit|kind|sort) )?(?:of|is|was)\b)"
    r"|\b(?:dip|dunk)\w* (?:\w+ ){0,3}in(?:to)? (?:it|them)\b"
    r"|^\W*(?:so |and )?(?:it|they)(?:['’](?:s|re)| is| are) (?:her|his|my|our|their|the)\b",
    re.I,
)
"""Words that speak on of the last food beside one of their own: "so she had that instead of the cod"."""
_MY_CHILD = r"(?:knees?|lap|arms?|hip|little|bab\w+|son|daughter|girl|boy|youngest|\w+[- ](?:months?|weeks?))\b"
_OURS = re.compile(rf"\b(?:ours|yours|(?:on|in|over|into|through) (?:our|my) (?!{_MY_CHILD})\w+)\b|\b{MINE}", re.I)
_HERS = re.compile(r"\b(?:hers|theirs|mine)\b", re.I)
"""Words that folding would take for "our" and "her": a baby is ours, a bowl that is ours is not hers."""
_GIVEN = re.compile(r"\b(?:giv\w+|gave|fe[e]?d\w*|let\w*|offer\w*|hand\w*) $", re.I)

_STOPS = re.compile(r"[.!?\n]")


class Clause(NamedTuple):
    """``said[start:end]``; ``named``: the foods of the sentence that it names, ``about``: those it tells of; ``marks``:
    what stands in it, by class of words."""

    start: int
    end: int
    named: tuple[int, ...]
    about: tuple[int, ...]
    marks: tuple[Hit, ...]

    def has(self, *classes: str) -> bool:
        """Whether words of one of ``classes`` stand in it."""
        return any(mark.value in classes for mark in self.marks)

    def of(self, *classes: str) -> list[Hit]:
        """The words of ``classes`` in it."""
        return [mark for mark in self.marks if mark.value in classes]


def clauses(
    said: str, foods: Sequence[Place], tables: FeedingTables, names: Mapping[str, str] = MappingProxyType({})
) -> list[Clause]:
    """The clauses of a sentence whose ``foods`` stand at these places; ``names``: of ``people``."""
    marks = [*_marks(said, tables), *_named(said, names)] if names else _marks(said, tables)
    marks = _standing(sorted(marks), said) if names else marks
    marks = [mark for mark in marks if not any(_in_name(mark, food) for food in foods)]
    found: list[Clause] = []
    for start, end in pairwise(_edges(said, foods)):
        named = tuple(at for at, food in enumerate(foods) if start <= food[0] < end)
        before = found[-1].about if found else ()
        about = (*before, *named) if named and _THE_LAST.search(said[start:end]) else named or before
        found.append(Clause(start, end, named, about, tuple(one for one in marks if start <= one.start < end)))
    found = _told_ahead(said, found)
    first = next((clause.about for clause in found if clause.about), ())
    return [clause if clause.about else clause._replace(about=first) for clause in found]


def _told_ahead(said: str, read: Sequence[Clause]) -> list[Clause]:
    """The clauses, of which one that opens a sentence speaks of the food that this sentence names, not of the last
    one's: "for Bea, who is ten months, there is salmon"."""
    found = list(read)
    opening: list[int] = []  # clauses since the last full stop that name no food
    for at, clause in enumerate(read):
        if at and _STOPS.search(said, max(0, clause.start - 2), clause.start + 1):
            opening = [at]
        elif opening:
            opening.append(at)
        if clause.named:
            for one in opening[:-1]:
                if not read[one].has("thereof"):
                    found[one] = read[one]._replace(about=clause.named)
            opening = []
    return found


def clause_at(said: str, food: Place) -> Place:
    """Where the clause begins and ends that names the food at this place."""
    return next((start, end) for start, end in pairwise(_edges(said, (food,))) if start <= food[0] < end)


def clause_of(said: str, food: Place) -> str:
    """The words of the clause that names the food at this place."""
    return said[slice(*clause_at(said, food))]


def names_child(said: str, tables: FeedingTables) -> bool:
    """Whether words for a child stand in it, or for one already spoken of: "they" are anybody."""
    return any(mark.value in ("child", "they", "babys") for mark in _marks(said, tables))


def _edges(said: str, foods: Sequence[Place]) -> list[int]:
    """Where the clauses begin and end; no food's name is parted, and no clause is a single joining word."""
    borders = (match.end() if match.group().strip() in _MARKS else match.start() for match in _BORDER.finditer(said))
    edges = sorted({0, *borders, len(said)})
    edges = [edge for edge in edges if not any(start < edge < end for start, end in foods)]
    short = {end for start, end in pairwise(edges) if end < len(said) and len(said[start:end].split()) < _LEAST}
    edges = [edge for edge in edges if edge not in short]
    leading = [match.end() for start, end in pairwise(edges) if (match := _LEADING.match(said, start, end))]
    return sorted({*edges, *(edge for edge in leading if not any(start < edge < end for start, end in foods))})


def harms_child(clause: Clause) -> bool:
    """Whether it says of something that it harms a child: "can harm a baby", and not "harms the cough bugs"."""
    children = clause.of("child", "plural", "they")
    return any(0 < child.start - harm.end <= _OBJECT_NEAR for harm in clause.of("harms") for child in children)


def meet(said: Clause | Hit, place: Place) -> bool:
    """Whether its words have a character in common with a place: a phrase leaves room between its own."""
    own = said.own if isinstance(said, Hit) and said.own else ((said.start, said.end),)
    return any(start < place[1] and place[0] < end for start, end in own)


def standing(said: str, clause: Clause, own: Sequence[Place], *classes: str) -> list[Hit]:
    """The words of ``classes`` that are none of the danger's ``own``, and neither a hedge nor a condition."""
    hedges = clause.of("hedges")
    return [
        mark
        for mark in clause.of(*classes)
        if not any(meet(mark, place) for place in own)
        and not any(meet(mark, (hedge.start, hedge.end)) for hedge in hedges)
        and not _CONDITION.search(said, clause.start, mark.start)
    ]


_CONDITION = re.compile(
    r"\b(?:if|when|though)\b(?:[^,.;:]{0,20}|(?: (?!(?:is|are|was|has|gets?)\b)[\w'’-]+){1,4} )$", re.I
)
"""Words before a denial of the case that is spoken of, not of what is then done: "if he will not open his mouth"."""

_OBJECT_NEAR = 8
"""Characters between a harm and whom it strikes: "can hurt your baby"."""
_LEAST = 2
"""Words that a clause has at least: "so" belongs to what follows."""


def _marks(said: str, tables: FeedingTables) -> Sequence[Hit]:
    """The words of all classes that hold: each food of a sentence asks for them."""
    known = cast("Remembered[str, Sequence[Hit]]", tables.spelled_out.setdefault("marks of a sentence", Remembered()))
    marks = known.get(said)
    return marks if marks is not None else known.keep(said, _standing(list(_all_marks(said, tables)), said))


def _in_name(mark: Hit, food: Place) -> bool:
    """Whether a word stands in a food's name: a hot dog is no dog, a bread roll rolls nowhere."""
    part = food[0] <= mark.start and mark.end <= food[1] and mark.end - mark.start < food[1] - food[0]
    return part and mark.value != "child"  # "baby rice" is for one


def _named(said: str, names: Mapping[str, str]) -> Iterator[Hit]:
    for word in words(said):
        called = said[word.start : word.end].replace("’", "'").partition("'")[0]  # "Jonah's", "they'll"
        if who := names.get(called) or names.get(word.plain):
            yield Hit(word.start, word.end, who)


def _all_marks(said: str, tables: FeedingTables) -> Iterator[Hit]:
    yield from _words(tables).find(said)
    ours = [match.span() for match in _OURS.finditer(said)]
    hers = [match.span() for match in _HERS.finditer(said)]
    for start, end in ours:
        if not _GIVEN.search(said[:start]):
            yield Hit(start, end, "other")
    for start, end in hers:
        if (start, end) not in ours or _GIVEN.search(said[:start]):  # "mine eats it cold", "I give mine"
            yield Hit(start, end, "babys")
    for match in _STOPPED.finditer(said):
        yield Hit(*match.span(), "bad")
    for match in UNCUT.finditer(said):
        yield Hit(match.start(), match.end(), "undenies")


_CARE = (
    r"(?:worry|feel|car|bother|fret|fear|fuss|think|wait|avoid|skip|cut|halv|quarter|slic|chop|blend|mash|grind|grat|soak|cook|boil"
    r"|steam|peel|test|watch|check|chill|cool|steril|strap|measur|wash|breastfe|formula|supervis|count|ask)"
)
_STOPPED = re.compile(rf"\b(?:stop(?:s|ped)?|quit|g[ai]ven? up)(?= (?!{_CARE})[a-z]+ing\b)", re.I)
"""What is done no longer, unless it is what makes food safe or keeps the baby so: "we have stopped propping it"."""
_UNDONE = {
    "denies": "undenies",
    "wary": "undenies",
    "bad": "unbad",
    "harms": "unbad",
    "other": "babys",
    "child": "idle",
    "condemns": "pardons",
    "safe": "undenies",
    "refuses": "undenies",
}
"""What words of a class are not where they stand in words of another: "no need to avoid", "out of my bowl"."""


def _standing(marks: Sequence[Hit], said: str) -> list[Hit]:
    """The marks that hold."""
    held = [mark for mark in marks if not any(_undoes(one, mark) for one in marks)]
    others = [mark for mark in held if mark.value == "other"]
    return [
        one
        for one in held
        if one.value not in ("they", "plural", "child") or not any(_part_of(one, of, said) for of in others)
    ]


def _undoes(one: Hit, mark: Hit) -> bool:
    return one.value == _UNDONE.get(mark.value) and one.start < mark.end and mark.start < one.end


def _part_of(mark: Hit, other: Hit, said: str) -> bool:
    """Whether words for a child belong to those for somebody else: "the big children's", "his father", "the baby's
    brother"."""
    owns = mark.value in ("they", "plural") or said[mark.start : mark.end].endswith(("'s", "’s", "s'", "s’"))
    return other.start <= mark.start < other.end or (owns and mark.end + 1 == other.start)


def _words(tables: FeedingTables) -> Patterns:
    """The classes of words, spelled out once."""
    if "telling" not in tables.spelled_out:
        rows = tables.by_id("telling_words")
        tables.spelled_out["telling"] = Patterns({key: row.items("phrases") for key, row in rows.items()}, Classes({}))
    return cast("Patterns", tables.spelled_out["telling"])
