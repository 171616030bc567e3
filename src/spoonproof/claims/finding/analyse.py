"""From passages to claims: scan, tag what was hit, match, fill, carry subjects over."""

from __future__ import annotations

import re
from collections import OrderedDict
from collections.abc import Sequence

from spoonproof.claims import ends
from spoonproof.claims.finding.draft import Draft
from spoonproof.claims.finding.fill import fill
from spoonproof.claims.finding.match import matches
from spoonproof.claims.finding.near import classes_in
from spoonproof.claims.finding.ordinary import is_ordinary
from spoonproof.claims.finding.pronouns import first_named, named_before
from spoonproof.claims.grammar import RuleBook
from spoonproof.claims.grammar_rules import RULES
from spoonproof.claims.lexicon import Lexicon
from spoonproof.claims.scan import hits, tag
from spoonproof.claims.sentences import around, lines_apart
from spoonproof.model.claim import Claim
from spoonproof.model.text import Document, Passage

_REMEMBERED = 20_000  # sentences; the same captions and pages come back again and again
_LOOK_BACK = 600  # characters before a claim in which its pronoun may find its noun
_ITEM = 5  # characters, about
_ALL = re.compile(r"\b(?:both|all (?:three|four|of (?:them|these|those)))\b", re.IGNORECASE)

_OF_ITS_OWN = frozenset({"title", "description"})
"""Passages whose every sentence speaks of the dish that they stand over, named or not: "a taste of the coast that
boosts your baby's immunity"."""

Carried = tuple[tuple[str, ...], tuple[str, ...]]  # subjects' words, food ids


class Analyser:
    """The finder over one lexicon; what a sentence says is remembered by its text."""

    def __init__(self, lexicon: Lexicon) -> None:
        self._lexicon = lexicon
        self._book = RuleBook(lexicon, RULES)
        self._memory: OrderedDict[tuple[str, bool], tuple[Draft, ...]] = OrderedDict()

    def forget(self) -> None:
        """Forget every sentence seen: for measuring."""
        self._memory.clear()
        ends.forget()

    def sentence(self, text: str, of_dish: bool = False) -> tuple[Draft, ...]:
        """The claims of one sentence, offsets into it; ``of_dish``: it speaks of a dish, whether it names it or not."""
        known = self._memory.get((text, of_dish))
        if known is None:
            known = self._analyse(text, of_dish)
            self._memory[text, of_dish] = known
            if len(self._memory) > _REMEMBERED:
                self._memory.popitem(last=False)
        return known

    def _analyse(self, text: str, of_dish: bool) -> tuple[Draft, ...]:
        tagged = tag(self._lexicon, text)
        present = classes_in(tagged)
        if is_ordinary(tagged, present):
            return ()
        rules = self._book.applying(tagged.symbols)
        return tuple(fill(tagged, match) for match in matches(tagged, rules, present, of_dish)) if rules else ()

    def claims(self, passages: Sequence[Passage]) -> list[Claim]:
        """All claims of the passages, in order."""
        found: list[Claim] = []
        topic: Carried = ((), ())
        document: Document | None = None
        set_at = -1  # the passage that the topic is of
        for index, passage in enumerate(passages):
            if passage.document is not document:
                document, topic, set_at = passage.document, ((), ()), index - 1
            where = hits(self._lexicon, passage.text)
            before = passages[index - 1].text if index and passages[index - 1].document is document else ""
            rows = self._lexicon.breaths
            for start, end in around(passage.text, where, rows, lines_apart(passage, rows)) if where else ():
                for draft in self.sentence(passage.text[start:end], passage.kind in _OF_ITS_OWN):
                    carried: Carried = ((), ())
                    if draft.pronoun:
                        every = _ALL.search(passage.text, start, end) is not None
                        # What stands over a part says what it is about: nothing is carried over a heading.
                        over = any(_is_heading(one) for one in passages[set_at + 1 : index])
                        known: Carried = ((), ()) if over or _of_dish(draft) else topic
                        made = self._made(passages, document) if draft.said == "portion" else None
                        carried = made or self._carried(passage.text, start, draft, every) or known
                        if not carried[0] and before and not (_of_dish(draft) and _is_heading(passages[index - 1])):
                            carried = self._carried(before, len(before), draft) or known
                    claim = _claim(passage, (start, end), draft, carried)
                    if claim.subjects:
                        topic, set_at = (claim.subjects, claim.foods), index
                    found.append(claim)
        return found

    def _made(self, passages: Sequence[Passage], document: Document) -> Carried | None:
        """What is made in a document: the food or dish that it names first."""
        first = next(one.text for one in passages if one.document is document)
        made = first_named(tag(self._lexicon, first[:_LOOK_BACK]))
        return None if made is None else (made.texts, made.foods)

    def _carried(self, text: str, at: int, draft: Draft, every: bool = False) -> Carried | None:
        """What was spoken of before ``at``; ``every``: with the others of its list."""
        tagged = tag(self._lexicon, text[max(0, at - _LOOK_BACK) : at])
        said, gap = "all" if every else draft.said, draft.start // _ITEM
        found = named_before(tagged, said, gap, draft.rule.kind, dish=_of_dish(draft))
        return None if found is None else (found.texts, found.foods)


def _is_heading(passage: Passage) -> bool:
    """Whether a passage is a heading in its document."""
    if not passage.pieces:
        return False
    text, at = passage.document.text, passage.span(0, 1).start
    return text[text.rfind("\n", 0, at) + 1 : at].lstrip().startswith("#")


def _of_dish(draft: Draft) -> bool:
    """Whether "it" or "they" are the dish where no one food was named just before: what is free of an allergen."""
    return draft.rule.name == "free-from"


def _claim(passage: Passage, sentence: tuple[int, int], draft: Draft, carried: Carried) -> Claim:
    at = sentence[0]
    steps = draft.steps
    if draft.pronoun and carried[0]:
        steps = (*steps, f"carried from before: “{carried[0][0]}”")
    return Claim(
        passage=passage,
        start=at + draft.start,
        end=at + draft.end,
        kind=draft.rule.kind,
        subjects=tuple(dict.fromkeys((*draft.subjects, *carried[0]))),
        relates_to=draft.relates_to,
        polarity=draft.polarity,
        strength=draft.strength,
        audience=draft.audience,
        number=draft.number,
        foods=draft.foods or carried[1],
        nutrients=draft.nutrients,
        effect=draft.effect,
        level=draft.level,
        allergens=draft.allergens,
        of_dish=draft.of_dish,
        trigger=draft.trigger,
        steps=steps,
        sentence=sentence,
    )
