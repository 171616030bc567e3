"""The closed table of kitchen verbs, and where a sentence uses one to tell the cook to do something.

A form is found as an instruction only: "steam the parsnip", "keep steaming", "is steamed for 14 minutes".
It is not found where it is a noun ("a gentle simmer", "the rest"), an adjective ("the steamed parsnip"), an end
point ("until soft enough to mash"), a condition ("once it boils") or forbidden ("don't blend").
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import cast

from spoonproof.cooking.inflect import Kind, inflections
from spoonproof.model.clause_words import OPENERS
from spoonproof.model.kitchen import Medium, Verb, VerbMatch
from spoonproof.model.record import NamedTuple, dataclass, field
from spoonproof.model.remembered import Remembered
from spoonproof.model.table import Row

_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*|\d+(?:[.,/]\d+)*")
_STOP = re.compile(r"[.,;:!?()\[\]—–/]|\s-\s")
_GAP_WORDS = 7  # the most words a split phrase may hold between its halves ("bring the pan ... to the boil")


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


_DETERMINERS = _words(
    "a an the this that these those your my our his her its their any some no each every another more of "
    "one two three baby's family's"
)
_PREPOSITIONS = _words(
    "in on at by from with for into onto under over through as like without per than cm mm g kg ml tbsp tsp cup"
)
_GO_ON = _words("keep continue start begin by finish")
_CARRY = _words("keep go carry")
_LETS = _words("let leave left allow set put return allowing leaving start begin continue go watch")
_LET_TO = _words("let leave left allow set put return start begin continue go back bring on want use using")
_AUXILIARIES = _words("is are gets get be being been")
_NEGATIONS = _words("not don't don’t never without avoid cannot can't can’t won't won’t needn't doesn't")
_CLAUSES = OPENERS | {"as", "after", "before"}
_ENDS = _words("until till til")
_SUBJECTS = _words("you they we i will can could may might would should must")
"""Whose verb has the form of an instruction ("until they squash and mash"); not so "it"."""
_DEGREES = _words("low lowest medium high highest moderate gentle steady full")  # of heat
_HEAT_NOUNS = _words("heat boil simmer")
_JOINERS = _words("and or then but now next gently to first finally also just simply lightly again")
_OBJECTS = _words("the it them this these those your half all both everything")
_TIMES = _words("whistle whistles minute minutes min mins hour hours hr hrs second seconds")
_AMOUNT_AFTER_FOR = _words("a an another about around one two three four five ten")


class _Token(NamedTuple):
    start: int
    end: int
    word: str
    stop: bool  # a clause ends between the word before and this one
    comma: bool  # nothing but a comma ends it: it may go on as a list
    hyphen: bool  # this word hangs on the one before by a hyphen


class _Form(NamedTuple):
    words: tuple[str, ...]
    verb: str  # "" for a phrase that is never a verb
    kind: Kind


@dataclass(frozen=True, slots=True)
class VerbTable:
    """The verbs by id, and their forms by first word, longest first."""

    verbs: Mapping[str, Verb]
    forms: Mapping[str, tuple[_Form, ...]]
    _found: Remembered[str, Sequence[VerbMatch]] = field(default_factory=Remembered, compare=False, repr=False)

    @classmethod
    def from_rows(cls, rows: Iterable[Row]) -> VerbTable:
        """Build from the rows of the verb table.

        Columns: id, words (base forms), past (irregular), phrases (``*`` stands for up to seven words), never
        (phrases that are no verb), role, medium, texture, water, retention, hands, tool, minutes, source.
        Raises ValueError naming file and line when an id or a form stands there twice, or a share is not 0 to 1.
        """
        verbs: dict[str, Verb] = {}
        owner: dict[tuple[str, ...], _Form] = {}
        never: list[_Form] = []
        for row in rows:
            where = f"{row.file}:{row.line}"
            verb = _verb(row, where)
            if verb.id in verbs:
                raise ValueError(f"{where}: the verb {verb.id} stands in the table twice")
            verbs[verb.id] = verb
            for text, kind in _forms(row):
                form = _Form(_split(text), verb.id, kind)
                held = owner.setdefault(form.words, form)
                if held.verb != verb.id:
                    raise ValueError(f"{where}: {text!r} is a form of both {held.verb} and {verb.id}")
            never.extend(_Form(_split(text), "", "phrase") for text in row.items("never"))
        for form in never:
            owner.setdefault(form.words, form)
        by_first: dict[str, list[_Form]] = {}
        for form in owner.values():
            by_first.setdefault(form.words[0], []).append(form)
        return cls(verbs, {word: tuple(sorted(found, key=_longest)) for word, found in by_first.items()})

    def get(self, verb: str) -> Verb:
        """The row of a verb id; KeyError when there is none."""
        return self.verbs[verb]

    def find(self, text: str) -> Sequence[VerbMatch]:
        """Every form used as an instruction, left to right, longest first, not overlapping.

        A split phrase ("bring the pan to the boil") is found at its first words alone, so that the foods between
        stay readable. Takes time in proportion to the text.
        """
        known = self._found.get(text)
        return known if known is not None else self._found.keep(text, self._look_for(text))

    def _look_for(self, text: str) -> Sequence[VerbMatch]:
        tokens = _tokens(text)
        found: list[VerbMatch] = []
        at = 0
        while at < len(tokens):
            form, length = self._form_at(tokens, at)
            if form is not None and form.verb and self._instructs(tokens, at, length, form.kind):
                found.append(VerbMatch(tokens[at].start, tokens[at + length - 1].end, form.verb))
            at += max(1, length)
        return tuple(found)

    def _form_at(self, tokens: Sequence[_Token], at: int) -> tuple[_Form | None, int]:
        for form in self.forms.get(tokens[at].word, ()):
            length = self._match(form.words, tokens, at)
            if length:
                return form, length
        return None, 0

    def _match(self, words: tuple[str, ...], tokens: Sequence[_Token], at: int) -> int:
        """How many tokens the phrase takes at ``at`` (up to its gap); 0 when it does not stand there."""
        position = at
        for index, word in enumerate(words):
            if word == "*":
                if position < len(tokens) and tokens[position].hyphen:
                    return 0  # "stir-fry the leek in the oil": no stirring in
                rest = words[index + 1 :]
                for skip in range(1, _GAP_WORDS + 1):
                    if position + skip > len(tokens) - len(rest) or self._breaks(tokens[position + skip - 1]):
                        return 0
                    if self._match(rest, tokens, position + skip):
                        return position - at
                return 0
            if position >= len(tokens) or tokens[position].word != word or (index and tokens[position].stop):
                return 0
            position += 1
        return position - at

    def _breaks(self, token: _Token) -> bool:
        """Whether a split phrase can't reach over this word: "bring the rice, water and ginger to a boil" goes on."""
        return token.stop and not (token.comma and self._kind(token.word) is None)

    def _instructs(self, tokens: Sequence[_Token], at: int, length: int, kind: Kind) -> bool:
        """Whether the form at ``at`` tells the cook to do it."""
        after = at + length
        if tokens[at].hyphen or (after < len(tokens) and tokens[after].hyphen):
            return False
        before = [token.word for token in tokens[_clause_start(tokens, at) : at]]
        last = before[-1] if before else ""
        kind_before = self._kind(last)
        done_to = after < len(tokens) and tokens[after].word in _OBJECTS and not tokens[after].stop
        closed = kind_before == "s" or (kind_before == "past" and done_to)
        if _NEGATIONS.intersection(before[-4:]) or _subordinate(before, kind, closed, done_to):
            return False
        if kind == "ing":
            return last in _GO_ON or (last == "on" and len(before) > 1 and before[-2] in _CARRY)
        if kind == "past":
            return last in _AUXILIARIES
        if kind == "s":
            lasts = after + 1 < len(tokens) and tokens[after].word == "for" and _counts(tokens[after + 1].word)
            return lasts and _not_a_noun(before, kind)  # "boil them in their skins for 25 minutes"
        # "add brown rice", "shred roast chicken": what follows a verb at once describes a food; "off the heat stir" not
        heat = last in _HEAT_NOUNS and len(before) > 1 and before[-2] in _DETERMINERS | _DEGREES
        noun = heat or (done_to and len(before) > 1 and before[-2] in _DETERMINERS)  # "in a casserole soften the leek"
        return _not_a_noun(before, kind, done_to) and (kind_before != "base" or last in _LETS or noun)

    def _kind(self, word: str) -> Kind | None:
        for form in self.forms.get(word, ()):
            if len(form.words) == 1 and form.verb:
                return form.kind
        return None


def _longest(form: _Form) -> tuple[int, int, tuple[str, ...]]:
    return (-len(form.words), -sum(map(len, form.words)), form.words)


def _verb(row: Row, where: str) -> Verb:
    if not row.text("source"):
        raise ValueError(f"{where}: the verb {row.text('id')} has no source")
    hands = row.number("hands")
    hands = 1.0 if hands is None else hands
    if not 0 <= hands <= 1:
        raise ValueError(f"{where}: hands is a share from 0 to 1, not {hands:g}")
    minutes = row.number("minutes")
    return Verb(
        id=row.text("id"),
        forms=tuple(sorted({text for text, _ in _forms(row)})),
        role=row.text("role"),
        medium=cast(Medium, row.text("medium") or "none"),
        texture=row.text("texture"),
        water=row.text("water") or "none",
        retention=row.text("retention"),
        hands=hands,
        tool=row.text("tool"),
        minutes=1.0 if minutes is None else minutes,
        source=row.text("source"),
    )


def _forms(row: Row) -> Iterable[tuple[str, Kind]]:
    for base in row.items("words"):
        yield from inflections(base)
    for text in row.items("past"):
        yield text, "past"
    for text in row.items("phrases"):
        yield text, "phrase"


def _split(text: str) -> tuple[str, ...]:
    return tuple(text.casefold().replace("-", " ").split())


def _tokens(text: str) -> list[_Token]:
    tokens: list[_Token] = []
    end = 0
    for match in _WORD.finditer(text):
        gap = text[end : match.start()]
        tokens.append(
            _Token(
                match.start(),
                match.end(),
                match.group().casefold(),
                not tokens or bool(_STOP.search(gap)),
                gap.strip() == ",",
                gap in ("-", "‐", "‑"),
            )
        )
        end = match.end()
    return tokens


def _not_a_noun(before: Sequence[str], kind: Kind, done_to: bool = False) -> bool:
    """Whether the words before leave it a verb; ``done_to``: its object follows ("in a bowl mix the oats")."""
    if not before:
        return True
    last = before[-1]
    if last == "to":
        return len(before) == 1 or bool(_LET_TO.intersection(before[:-1]))
    if kind == "phrase":
        return last not in ("a", "an", "the")
    if before[0] in ("to", "into") and before[1:] in (["this"], ["that"], ["these"], ["those"]):
        return True  # "to this add the carrot"
    if last in _DETERMINERS or last in _PREPOSITIONS or last in _DEGREES:
        return False  # "over medium heat"
    # "a gentle simmer"
    return done_to or not (len(before) > 1 and before[-2] in ("a", "an", "your") and last not in _JOINERS)


def _clause_start(tokens: Sequence[_Token], at: int) -> int:
    start = at
    while start > 0 and not tokens[start].stop and at - start < 40:
        start -= 1
    return start


def _subordinate(before: Sequence[str], kind: Kind, after_verb: bool, done_to: bool) -> bool:
    """Whether the words before open an end point or a condition that this verb belongs to.

    ``after_verb``: the word before is a verb that closes the condition ("once the water boils add ..."); ``done_to``:
    its object follows ("until they fall apart and mash them": they themselves mash nothing).
    """
    opener = next((i for i in range(len(before) - 1, -1, -1) if before[i] in _ENDS or before[i] in _CLAUSES), None)
    if opener is None:
        return False
    inside = before[opener + 1 :]
    if kind in ("base", "phrase") and inside:
        if inside[-1] == "then" or after_verb:
            return False
        if before[opener] == "after" and inside[-1] in _TIMES and _counts(inside[0]):
            return False  # "after 2 minutes add the chicken"
        theirs = _SUBJECTS - {"they"} if done_to else _SUBJECTS
        if inside[-1] == "and" and not theirs.intersection(inside):
            return False
    return True


def _counts(word: str) -> bool:
    return word[0].isdigit() or word in _AMOUNT_AFTER_FOR
