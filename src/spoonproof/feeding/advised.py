"""What the author's words advise beside the recipe that endangers a baby: "let her nibble whole grapes meanwhile".

A food in a sentence counts where the words around it hand it to the baby (``who_eats``, ``handed``) and show the danger
(``shown``: "whole", "raw", or a food that is wrong in any form). What is turned round ("never give"), kept for a later
age or for somebody else's plate does not.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial

from spoonproof.feeding.asked import acquitted
from spoonproof.feeding.carried_on import carried_on
from spoonproof.feeding.clauses import Place, names_child
from spoonproof.feeding.defied import defies
from spoonproof.feeding.disowned import set_aside
from spoonproof.feeding.handed import in_a_bowl, in_the_dish, in_the_pot, reckoned
from spoonproof.feeding.hers_first import beside_hers, hers_first
from spoonproof.feeding.list_of_foods import apart
from spoonproof.feeding.named import likened
from spoonproof.feeding.people import eats_it, no_baby, people, spoken_of
from spoonproof.feeding.recipients import GIVE, kept_back, later
from spoonproof.feeding.said_otherwise import said_otherwise
from spoonproof.feeding.shown import endangering, facts_told
from spoonproof.feeding.tables import FeedingTables, HazardRow
from spoonproof.feeding.who_eats import Stance, stance
from spoonproof.feeding.wording import sentence
from spoonproof.feeding.words import Found, keys
from spoonproof.model.finding import LEVELS, Level, Remedy, SourceRef
from spoonproof.model.record import dataclass, replace
from spoonproof.model.text import Passage, Span

_KINDS = frozenset({"story", "step", "say", "description", "social", "note", "super", "speech"})
_RAW_EGG = re.compile(
    r"\braw (?:eggs?|egg yolks?|yolks?|egg whites?)\b|\byolks?\b[^.;!?\n]{0,60}\boil\b"
    r"|\boil\b[^.;!?\n]{0,30}\byolks?\b",
    re.I,
)
_SCENE = re.compile(r"^\W*(?:\w+ ){0,2}there (?:was|were) (?!(?:always|usually)\b)[^,;]*$", re.I)
"""Words before a food that is only there to be seen: "there were marshmallows on the yams"."""
_FOR_NO_BABY = re.compile(
    r"\b(?:nobody|no one|none|no child|no baby) under (?:one|two|three|five) (?:gets?|has|eats?|is having)\b"
    r"|\bth(?:is|ese)(?: one| lot)?(?: is|['’]s| are) (?:only |just )?for the (?:big|older|grown)\b"
    r"|\bit(?:['’]s| is) (?:only |just )?for the (?:big|older|grown)\b",
    re.I,
)
"""Words by which what is made in a film is no baby's: who gets the rest, each sentence must say."""
_FIFTH = 60
"""Months until which a row holds that is no matter of a taste at a later age: what chokes, and alcohol."""
_SENTENCE = re.compile(r"[^.!?;\n]+(?:\.(?=\d)[^.!?;\n]*)*")


@dataclass(frozen=True, slots=True)
class Advised:
    """A danger that words hand to the baby: ``id`` of the hazard row, ``sentence`` and ``name`` of the food as places
    in ``passage``."""

    id: str
    level: Level
    message: str
    remedy: Remedy
    name: tuple[int, int]
    sentence: tuple[int, int]
    sources: tuple[SourceRef, ...]
    passage: Passage
    why: str  # for anybody: what is wrong with the food, and how it is safe
    said_at: tuple[int, int]  # what hands it over: the name, or the words of the next sentence that stand for it

    @property
    def span(self) -> Span:
        """The food's name in the passage's document."""
        return self.passage.span(*self.name)


def advised(
    passages: Iterable[Passage],
    months: float,
    tables: FeedingTables,
    policies: Mapping[str, str],
    markets: Sequence[str],
    listed: Iterable[str] = (),
    *,
    by_shape: bool = False,
) -> Iterator[Advised]:
    """Every food that ``passages`` hand to a baby of ``months`` though it is a danger at that age.

    ``listed``: names of the dish's own foods, which the steps are judged for elsewhere. ``by_shape``: only what its
    shape or state makes a danger ("gnaw on raw apple"), for talk of no one dish, which names honey and juice freely.
    """
    counting = (row for row in tables.hazards if row.level != "note" and tables.counts(row, policies, markets))
    rows = [row for row in counting if months < row.until]
    dangers: frozenset[str] = frozenset().union(*(row.classes for row in rows))
    own = [keys(name) for name in listed]
    for passage in passages:
        if passage.leave is not None or passage.kind not in _KINDS:
            continue
        raw_egg = _RAW_EGG.search(passage.text) is not None
        asked = _Asked(
            rows,
            months,
            tables,
            passage.kind,
            by_shape,
            people(passage.text),
            raw_egg,
            _FOR_NO_BABY.search(passage.text) is None,
        )
        places = [match.span() for match in _SENTENCE.finditer(passage.text)]
        at_once = list(_sentence_by_sentence(asked, passage, places, dangers, own))
        yield from at_once
        if passage.kind != "step":
            told = {(one.id, one.name[0]) for one in at_once}  # the next sentence may say the same once more
            yield from (one for one in _carried_on(asked, passage, places) if (one.id, one.name[0]) not in told)


def _sentence_by_sentence(
    asked: _Asked, passage: Passage, places: Sequence[Place], dangers: frozenset[str], own: Sequence[frozenset[str]]
) -> Iterator[Advised]:
    """What each sentence hands over by itself; ``dangers``: the kinds that rows of this age are about."""
    text, tables = passage.text, asked.tables
    others = no_baby(text)
    film = passage.kind == "speech" and not asked.by_shape
    spoken = spoken_of(asked.names, [text[start:end] for start, end in places])
    for at, (within, those) in enumerate(zip(places, spoken, strict=True)):
        start, end = within
        said = text[start:end]
        around = text[places[max(0, at - 1)][0] : start], text[end : places[min(len(places) - 1, at + 1)][1]]
        here = replace(asked, names={**those, **eats_it(others, said)})
        named = tables.phrases.find(said, negated=defies(said, tables))
        alone = {hit: (words, there) for hit, words, there in apart(said, named)}
        for hit in (*named, *said_otherwise(said, tables)):
            if passage.kind == "step" and any(set(hit.phrase) <= name for name in own):
                continue
            if "*" not in dangers and dangers.isdisjoint(tables.kinds[hit.value]):
                continue  # no row of this age is about it, whatever the words say
            if likened(said, hit):
                continue
            row = here.danger(said, hit, partial(here.stance, said, hit, around), around=around, film=film)
            if row is None and acquitted(text, start, (start + hit.start, start + hit.end), tables):
                harmless = here.stance(said, hit, around)._replace(turned="")
                row = here.danger(said, hit, harmless._replace, around=around, film=film)
            if row is None and hit in alone:
                own_words = partial(stance, *alone[hit], tables, names=here.names)
                row = here.danger(*alone[hit], own_words, around=around, film=film)
            place = start + hit.start, start + hit.end
            if row is not None and not set_aside(text, start, place, tables):
                yield _found(row, within, place, passage)


def _carried_on(asked: _Asked, passage: Passage, places: Sequence[Place]) -> Iterator[Advised]:
    """What a sentence hands over of a food that the one before it named."""
    text, tables = passage.text, asked.tables
    for one in carried_on(text, places, tables):
        begins = one.begins
        first = one.first._replace(start=one.first.start - begins, end=one.first.end - begins)
        over = partial(stance, text[begins : one.ends], first, tables, one.pointing[0] - begins, asked.names)
        name = one.first.start, one.first.end
        row = asked.danger(one.said, one.hit, over)
        if row is None and one.within[0] != name[0]:  # "a carrot, raw. I hand it over. If it snaps, he has more"
            own = text[begins : next(end for start, end in places if start == begins)]
            row = asked.danger(own, first, over)
        for hit in () if row else said_otherwise(one.said, tables):  # "it comes out of his own cows"
            row = row or asked.danger(one.said, hit, over)
        if row is not None and not set_aside(text, begins, name, tables):
            yield _found(row, one.within, name, passage, one.pointing)


@dataclass(frozen=True, slots=True)
class _Asked:
    """What every sentence of a passage is asked with: the ``rows`` that count, the baby's age in ``months``."""

    rows: Sequence[HazardRow]
    months: float
    tables: FeedingTables
    kind: str
    by_shape: bool
    names: Mapping[str, str]
    raw_egg: bool  # what is made here with raw egg is named later by what it has become
    for_babies: bool  # nothing says that no baby gets it

    def stance(self, said: str, hit: Found, around: tuple[str, str]) -> Stance:
        """What ``said`` does with the food, or where it names nobody, with the sentences ``around`` it."""
        alone = stance(said, hit, self.tables, names=self.names)
        if alone.eaters or alone.turned or self.kind == "step":
            return alone
        if _SCENE.search(said[: hit.start]):
            return alone  # who eats it a sentence tells that speaks on of it
        before, behind = ("" if hers_first(around[0]) else around[0]), around[1]
        there = hit._replace(start=hit.start + len(before), end=hit.end + len(before))
        return stance(f"{before}{said}{behind}", there, self.tables, names=self.names)

    def danger(
        self,
        said: str,
        hit: Found,
        stance_of: Callable[[], Stance],
        *,
        around: tuple[str, str] = ("", ""),
        film: bool = False,
    ) -> HazardRow | None:
        """The gravest row of what ``said`` does with the food, None where it isn't handed to the baby; ``stance_of``
        tells what these words, or more than these, do with it, and is asked only of a food that may be a danger."""
        by_shape = self.by_shape and not names_child("".join((around[0], said, around[1])), self.tables)
        classes = endangering(self.tables.kinds[hit.value], said, hit, self.kind, by_shape=by_shape)
        if self.raw_egg:
            classes |= self.tables.kinds[hit.value] & {"raw-egg-product"}
        if not classes or kept_back(said, hit) or reckoned(said, hit):
            return None
        told = beside_hers(said, hit, self.tables, self.names) or stance_of()
        if told.turned or told.eaters == "others":
            return None
        if told.eaters != "baby" and hers_first(around[0]):
            return None
        eaten = told.eaters == "baby" and (self.kind != "step" or GIVE.search(said) is not None)
        if not eaten and not self._for_babies(said, hit, classes, film=film):
            return None
        facts = facts_told(said, hit)
        age = later(said, hit)  # a whole grape is no safer for a child of two; a taste of sugar is
        counted = [row for row in self.rows if row.level == "error" or row.until >= _FIFTH] if age else self.rows
        held = [row for row in counted if row.holds(classes, facts, max(self.months, age))]
        return min(held, key=lambda one: LEVELS.index(one.level)) if held else None

    def _for_babies(self, said: str, hit: Found, classes: frozenset[str], *, film: bool) -> bool:
        """Whether words that name no eater put it into a baby's food all the same."""
        if not self.for_babies:
            return False
        if in_a_bowl(said, hit, self.kind, classes) or (film and in_the_pot(said, hit, classes)):
            return True
        return self.kind != "step" and not self.by_shape and in_the_dish(said, hit, classes)


def _found(
    row: HazardRow,
    within: tuple[int, int],
    name: tuple[int, int],
    passage: Passage,
    said_at: tuple[int, int] | None = None,
) -> Advised:
    food = passage.text[slice(*name)]
    said = passage.text[slice(*within)]
    return Advised(
        row.id,
        row.level,
        sentence(food, row.problem, "which these words hand to the baby"),
        Remedy(f"Take the words out, or turn them into a warning. {row.remedy}"),
        name,
        (within[0] + len(said) - len(said.lstrip()), within[0] + len(said.rstrip())),
        row.sources,
        passage,
        f"{_for_anybody(food, row.problem)} {row.remedy}",
        said_at or name,
    )


def _for_anybody(food: str, problem: str) -> str:
    """What is wrong, for who has no recipe before them: "salt goes into the portion" would read as telling them to."""
    state, _, rule = problem.partition(", and ")
    if rule and state.startswith("goes into"):
        return f"{rule[:1].upper()}{rule[1:]}."
    return sentence(food, problem)
