"""The register: entries by subject set, relation, effect, market, age and validity; the most specific wins."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from typing import Any

from spoonproof.claims.conditions import Absent
from spoonproof.claims.entries import ANY, Allowance, Entry, Key, Wording, ages_overlap, expand, overlap, within
from spoonproof.claims.references import AllergenLists, ReferenceAmounts
from spoonproof.claims.register_reading import EntryReader, read_wordings
from spoonproof.claims.words import first_words, has_any
from spoonproof.model.claim import Kind, Market
from spoonproof.model.finding import Finding, Related
from spoonproof.model.plural import singular
from spoonproof.model.record import NamedTuple, dataclass, field, replace
from spoonproof.model.remembered import Remembered
from spoonproof.model.table import Row
from spoonproof.model.text import Document
from spoonproof.model.tree import Listing, Mapped

_SEVERITY: Mapping[str | None, int] = {"false": 5, "overstated": 4, "unproven": 3, "computed": 2, "true": 1, None: 0}
UNNAMED = "unnamed"
"""The effect of an entry that is for statements whose effect the lexicon does not know."""
REACTION = "allergic-reaction"
MARKETS: tuple[Market, ...] = ("EU", "GB", "US", "Codex")


class Head(NamedTuple):
    """What is looked at before an entry itself is: those as made are taken out one by one (``compiled.PackedRow``)."""

    id: str
    kinds: tuple[Kind, ...]
    levels: tuple[str, ...]
    about_any: bool
    checked: str
    due: str
    begins: frozenset[str]  # the words that what it answers begins with; none: no need of any (words.first_words)


@dataclass(frozen=True, slots=True)
class Register:
    """All entries with the tables they rest on. Build it with ``from_nodes``."""

    entries: Sequence[Entry] = ()
    wordings: Mapping[str, Wording] = field(default_factory=dict)
    sets: Mapping[str, frozenset[str]] = field(default_factory=dict)
    words: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    references: ReferenceAmounts = field(default_factory=ReferenceAmounts)
    allergens: AllergenLists = field(default_factory=AllergenLists)
    _about: Mapping[str, frozenset[str]] = field(default_factory=dict)
    _heads: tuple[Head, ...] = ()
    _by_effect: Mapping[str, tuple[int, ...]] = field(default_factory=dict)
    _narrowed: dict[tuple[str, str, str | None], tuple[list[int], dict[str, list[int]]]] = field(
        default_factory=dict, compare=False, repr=False
    )
    leads: Remembered[tuple[str, ...], tuple[int, str]] = field(default_factory=Remembered, compare=False, repr=False)
    frames: Remembered[tuple[str, ...], int] = field(default_factory=Remembered, compare=False, repr=False)
    """What was found around the words of a claim (see ``judging/polarity.py``): each claim is asked about often."""

    @classmethod
    def from_nodes(
        cls,
        files: Sequence[tuple[Document, Mapped | Listing]],
        authorised_rows: Sequence[Row] = (),
        *,
        reference_rows: Sequence[Row] = (),
        allergen_rows: Sequence[Row] = (),
        source_ids: Collection[str] | None = None,
        today: str = "",
    ) -> tuple[Register, list[Finding]]:
        """Read and check the register.

        ``files`` are the trees of ``claims/*.yaml``; ``source_ids`` the ids that ``shared/sources`` defines
        (None: not checked); ``today`` an ISO date for due dates ("" : not checked). Entries at fault are left
        out and told in the findings; nothing is raised for what a person wrote.
        """
        wordings = read_wordings(authorised_rows)
        reader = EntryReader(wordings, source_ids)
        for document, root in files:
            reader.read(document, root)
        sets = dict(reader.sets)
        entries = tuple(reader.entries)
        about = {entry.id: expand(entry.about, sets) for entry in entries}
        by_effect: dict[str, list[int]] = defaultdict(list)
        for at, entry in enumerate(entries):
            for effect in entry.effects or ("",):
                by_effect[effect].append(at)
        register = cls(
            entries,
            wordings,
            sets,
            dict(reader.words),
            ReferenceAmounts.from_rows(reference_rows),
            AllergenLists.from_rows(allergen_rows),
            about,
            tuple(Head(e.id, e.kinds, e.levels, not e.about, e.checked, e.due, first_words(e.said)) for e in entries),
            {effect: tuple(found) for effect, found in by_effect.items()},
        )
        return register, [*reader.findings, *register.conflicts(), *register.out_of_date(today)]

    def laid_out(self, entries: Sequence[Entry], pack: Callable[[Mapping[str, Any]], Mapping[str, Any]]) -> Register:
        """The same register with ``entries`` in the place of its own, and its tables as ``pack`` makes them."""
        return replace(
            self, entries=entries, wordings=pack(self.wordings), words=pack(self.words), _about=pack(self._about)
        )

    def get(self, entry: str) -> Entry | None:
        """The entry of an id."""
        return next((self.entries[at] for at, head in enumerate(self._heads) if head.id == entry), None)

    def of_effect(self, effect: str) -> Sequence[Entry]:
        """The entries whose key names an effect, in order."""
        return [self.entries[at] for at in self._by_effect.get(effect, ())]

    def due(self, today: str) -> tuple[Entry, ...]:
        """The entries whose date has gone by on an ISO day, the longest overdue first."""
        return tuple(sorted((e for e in self.entries if e.due and e.due < today), key=lambda e: (e.due, e.id)))

    def out_of_date(self, today: str) -> Iterator[Finding]:
        """A finding for each entry whose date has gone by on an ISO day, or that was checked later ("" : none)."""
        for at, head in enumerate(self._heads if today else ()):
            name = head.id[:1].upper() + head.id[1:]
            if head.due and head.due < today:
                words = f"{name} was due on {head.due}: look at its source again and give it new dates."
                yield _dated(self.entries[at], words)
            if head.checked > today:
                words = f"{name} says it was checked on {head.checked}, which is still to come."
                yield _dated(self.entries[at], words)

    def about(self, entry: Entry) -> frozenset[str]:
        """The ids an entry is about, its sets opened; empty means any."""
        return self._about.get(entry.id, frozenset())

    def matching(self, key: Key) -> list[Entry]:
        """All entries whose key fits, the most specific first; ages and allowances are looked at later."""
        fitting = [entry for entry in self._of_relation(key) if self._fits(entry, key)]
        # Where two are equally specific the severer one speaks: when in doubt, not a pass.
        return sorted(
            fitting,
            key=lambda entry: (entry.rank, _own_words(entry, key), _SEVERITY[entry.truth], entry.id),
            reverse=True,
        )

    def _of_relation(self, key: Key) -> list[Entry]:
        """The entries for the claim's effect, kind and level that are about anything or about one of its subjects, and
        whose words may stand in its own or beside them: few relations are asked for again and again."""
        relation = key.effect or UNNAMED, key.kind, key.level
        if relation not in self._narrowed:
            free: list[int] = []
            about: dict[str, list[int]] = defaultdict(list)
            for effect in ("", key.effect or UNNAMED):
                for at in self._by_effect.get(effect, ()):
                    head = self._heads[at]
                    if (head.kinds and key.kind not in head.kinds) or (head.levels and key.level not in head.levels):
                        continue
                    if head.about_any:
                        free.append(at)
                    for subject in self._about[head.id]:
                        about[subject].append(at)
            self._narrowed[relation] = free, dict(about)
        free, about = self._narrowed[relation]
        named = dict.fromkeys(at for subject in key.subjects for at in about.get(subject, ()))
        said = frozenset(f"{key.words} {key.near}".split(" "))
        heads = self._heads
        return [
            self.entries[at]
            for at in (*free, *named)
            if not (begins := heads[at].begins) or not begins.isdisjoint(said)
        ]

    def _fits(self, entry: Entry, key: Key) -> bool:
        """Whether an entry for the key's relation fits the rest of it."""
        if entry.stance and entry.stance != key.stance and (entry.stance, key.stance) != ("permits", "dismisses"):
            return False
        if entry.about and not self.about(entry) & key.subjects:
            return False
        leave = entry.stance == "permits" or (key.kind == "nutrient-content" and len(key.foods) > 1)
        if entry.truth == "true" and leave and entry.about and not self._covers(entry, key):
            return False
        if key.effect == REACTION and isinstance(entry.condition, Absent):
            return False  # "hives after egg, so no egg till the clinic" says nothing of what a dish is made without
        if not within(key.months, entry.ages):
            return False
        start, end = entry.valid
        if key.today and ((start and key.today < start) or (end and key.today > end)):
            return False
        # What makes a promise true, or a danger, or is known by its words alone, must stand in the promise's own words;
        # else what speaks against it may stand beside them.
        near = key.near or key.words
        by_words = not entry.about and not entry.effects
        own = key.kind in _PROMISES and (entry.truth == "true" or bool(entry.stance) or by_words)
        words = key.words if own else near
        return (
            (not entry.said or has_any(words, entry.said))
            and (not entry.also or has_any(words, entry.also))
            and not has_any(near, entry.unless)
            and not self._barred(entry, key)
        )

    def _barred(self, entry: Entry, key: Key) -> bool:
        """Whether a food of the statement belongs to a set that the entry is not for ("unless: [set:meat]")."""
        barred = [self.sets.get(item[4:], frozenset()) for item in entry.unless if item.startswith("set:")]
        return any(name in members for members in barred for food in key.foods for name in _names(food))

    def _covers(self, entry: Entry, key: Key) -> bool:
        """What is right of one food, or leave for it, holds for no other food of the statement, nor for rice milk."""
        about = self.about(entry)
        if about and all(item.endswith(_NUTRIENT_KEYS) for item in about):
            return True  # it is said of what is in the foods, whichever they are
        named = [food for food in key.foods if food not in KINDS_OF_MEAL]
        if _WITH_MILK.search(key.near):
            named = [food for food in named if food not in _USUAL_MILK]
        return all(any(name in about for name in _names(food)) for food in named)

    def truth(self, key: Key, matching: Sequence[Entry] | None = None) -> Entry | None:
        """The most specific entry that answers whether it is true; ``matching`` where it is at hand."""
        found = self.matching(key) if matching is None else matching
        return next((entry for entry in found if entry.truth is not None), None)

    def allowance(
        self, key: Key, market: Market, matching: Sequence[Entry] | None = None
    ) -> tuple[Entry, Allowance] | None:
        """The most specific entry that answers for a market, with its answer."""
        for entry in self.matching(key) if matching is None else matching:
            for allowance in entry.allowed:
                if market in allowance.markets and within(key.months, allowance.ages):
                    return entry, allowance
        return None

    def conflicts(self) -> list[Finding]:
        """Pairs that are equally specific, overlap and disagree: the register contradicts itself."""
        buckets: dict[tuple[int, ...], list[Entry]] = defaultdict(list)
        for entry in self.entries:
            buckets[entry.rank].append(entry)
        found: list[Finding] = []
        for bucket in buckets.values():
            for first, second in self._pairs(bucket):
                question = self._disagree(first, second)
                if question:
                    found.append(_conflict(first, second, question))
        return sorted(found, key=lambda f: (f.document.path, f.span))

    def _pairs(self, bucket: list[Entry]) -> Iterator[tuple[Entry, Entry]]:
        """Pairs of equally specific entries that share a part of their key."""
        groups: dict[str, list[Entry]] = defaultdict(list)
        seen: set[tuple[str, str]] = set()
        for entry in bucket:
            for part in entry.effects or entry.said or sorted(self.about(entry)) or ("",):
                groups[part].append(entry)
        for group in groups.values():
            for index, first in enumerate(group):
                for second in group[index + 1 :]:
                    if (first.id, second.id) not in seen:
                        seen.add((first.id, second.id))
                        yield first, second

    def _disagree(self, a: Entry, b: Entry) -> str:
        keys_meet = (
            overlap(a.kinds, b.kinds)
            and overlap(a.levels, b.levels)
            and overlap(a.effects, b.effects)
            and overlap(a.said, b.said)
            and (not a.stance or not b.stance or a.stance == b.stance)
            and ages_overlap(a.ages, b.ages)
            and _dates_meet(a.valid, b.valid)
        )
        if not keys_meet:
            return ""
        about_a, about_b = self.about(a), self.about(b)
        if about_a and about_b and not about_a & about_b:
            return ""
        if a.truth and b.truth and a.says(None) != b.says(None):
            return "whether it is true"
        for market in MARKETS:
            for one in (x for x in a.allowed if market in x.markets):
                for other in (x for x in b.allowed if market in x.markets):
                    if ages_overlap(one.ages, other.ages) and one.answer != other.answer:
                        return f"what {market} allows"
        return ""


_PROMISES = frozenset({"function", "disease", "general-benefit"})

_NUTRIENT_KEYS = ("_g", "_mg", "_ug", "_kcal")
_USUAL_MILK = frozenset("breast-milk breastmilk formula infant-formula expressed-milk".split())
_WITH_MILK = re.compile(
    r" (?:with|in|into|using) (?:(?:a|some|the|little|bit|of|your|their|her|his|baby's|usual|expressed|warm) ){0,4}"
    r"(?:breast milk|breastmilk|formula|infant formula|milk) "
)
"""What a baby drinks anyway, stirred into the food that is given: "porridge with breast milk"."""
KINDS_OF_MEAL = frozenset("finger-food baby-food solid-food first-food solids snack".split())
"""What a food is given as, and no food beside it: "quartered cherry tomatoes are finger food"."""
_ANOTHER = frozenset(
    "drink drinks milk juice oil syrup sugar tea wine vinegar sauce crisps chips cake cakes cracker crackers spirit "
    "biscuit biscuits ice-cream schnapps beer".split()
)
"""Nouns that make another thing of the food they follow: rice milk is no rice."""


def _dated(entry: Entry, words: str) -> Finding:
    return Finding("register-entry-due", "words", "warning", words, entry.document, entry.span)


def _names(food: str) -> Iterator[str]:
    """The names a food goes by: every run of its words ("lamb-leg" is lamb), and from its end alone where it ends in a
    noun that makes another thing of it ("rice-milk" is milk)."""
    parts = food.split("-")
    whole = len(parts)
    another = whole > 1 and parts[-1] in _ANOTHER
    for start in range(whole):
        for end in range(whole if another else start + 1, whole + 1):
            yield "-".join(parts[start:end])
            yield "-".join([*parts[start : end - 1], singular(parts[end - 1])])


def _own_words(entry: Entry, key: Key) -> bool:
    """Whether the claim itself says what the entry asks for, and not just its clause."""
    return has_any(key.words, entry.said)


def _dates_meet(a: tuple[str, str], b: tuple[str, str]) -> bool:
    return (not a[1] or not b[0] or b[0] <= a[1]) and (not b[1] or not a[0] or a[0] <= b[1])


def _conflict(first: Entry, second: Entry, question: str) -> Finding:
    return Finding(
        rule="register-entries-disagree",
        area="words",
        level="error",
        message=(
            f"{second.id} and {first.id} are equally specific, overlap and disagree on {question}. "
            "Make one of them more specific or take one out."
        ),
        document=second.document,
        span=second.span,
        related=(Related(first.document, first.span, f"{first.id} stands here"),),
    )


__all__ = ["ANY", "MARKETS", "Register"]
