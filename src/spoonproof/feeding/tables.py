"""The feeding tables, typed: which food is of which kind, and the rows that hazards, textures, cautions,
allergens and keeping rest on. Rows are data; the rooms' code knows the closed words in them and nothing else."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from spoonproof.feeding.served import FACTS
from spoonproof.feeding.told_patterns import Patterns
from spoonproof.feeding.words import Pack, Phrases
from spoonproof.model.finding import Basis, Level, SourceRef
from spoonproof.model.record import dataclass, field, replace
from spoonproof.model.table import Row

HEAD = "head"
"""The class of a row whose names say what a food is where they end the name of one that no table knows."""
_LEVELS: Mapping[str, Level] = {"error": "error", "warning": "warning", "note": "note"}
_BASES: Mapping[str, Basis] = {"read": "read", "common-practice": "common-practice", "from-memory": "from-memory"}


@dataclass(frozen=True, slots=True)
class HazardRow:
    """One row of ``choking`` or ``foods_not_yet``.

    It holds for foods of any of ``classes`` ("*": any food) below ``until`` months, when one of the groups of
    ``when`` is all present (no group: always) and none of the groups of ``unless`` is. ``policy`` is
    ("topic", "authority"): the row counts only where that policy is chosen. ``problem`` follows the food's name;
    ``edit`` replaces the words of the cut ("REMOVE": the line goes). ``others``: (source id, what it says).
    """

    id: str
    kind: str
    classes: frozenset[str]
    until: float
    level: Level
    when: tuple[frozenset[str], ...]
    unless: tuple[frozenset[str], ...]
    problem: str
    remedy: str
    edit: str
    policy: tuple[str, str] | None
    source: SourceRef
    others: tuple[tuple[str, str], ...]
    group: str = ""  # of the rows of one group only the gravest speaks, and of equals the first
    markets: tuple[str, ...] = ()  # empty: all

    @property
    def sources(self) -> tuple[SourceRef, ...]:
        """Its own source, then the others that say the same."""
        return (self.source, *(SourceRef(source, says) for source, says in self.others))

    def holds(self, classes: frozenset[str], facts: frozenset[str], months: float) -> bool:
        """Whether a food of these ``classes``, served as ``facts`` say, is meant at this age."""
        if months >= self.until or not ("*" in self.classes or classes & self.classes):
            return False
        if self.when and not any(group <= facts for group in self.when):
            return False
        return not any(group <= facts for group in self.unless)


@dataclass(frozen=True, slots=True)
class PolicyRow:
    """A policy by the name of its authority."""

    topic: str
    authority: str
    default: bool
    says: str
    source: str


@dataclass(frozen=True, slots=True)
class FeedingTables:
    """All that the feeding room knows. Build with :meth:`from_rows`."""

    kinds: Mapping[str, frozenset[str]]  # entry id -> classes
    phrases: Phrases
    heads: Phrases  # last words of a name ("drops", "beads"), asked for a food that no table knows
    traits: Mapping[str, frozenset[str]]  # food trait -> classes
    choking: frozenset[str]  # the classes that a row on choking asks for
    hazards: tuple[HazardRow, ...]
    policies: tuple[PolicyRow, ...]
    rows: Mapping[str, Sequence[Row]] = field(default_factory=dict)
    _by_table: dict[str, Phrases] = field(default_factory=dict, compare=False, repr=False)

    _by_id: dict[str, Mapping[str, Row]] = field(default_factory=dict, compare=False, repr=False)
    # What kinds.py, allergens.py and contradictions.py remember.
    record_kinds: dict[str, frozenset[str]] = field(default_factory=dict, compare=False, repr=False)
    record_names: dict[str, frozenset[tuple[str, ...]]] = field(default_factory=dict, compare=False, repr=False)
    labels: dict[object, object] = field(default_factory=dict, compare=False, repr=False)
    spelled_out: dict[str, object] = field(default_factory=dict, compare=False, repr=False)

    def by_id(self, table: str) -> Mapping[str, Row]:
        """A table's rows by id, laid out once."""
        if table not in self._by_id:
            self._by_id[table] = {row.text("id"): row for row in self.rows.get(table, ())}
        return self._by_id[table]

    def phrases_of(self, table: str, column: str = "names") -> Phrases:
        """The phrases of a table's rows by id, made once."""
        if table not in self._by_table:
            self._by_table[table] = Phrases({r.text("id"): r.items(column) for r in self.rows.get(table, ())})
        return self._by_table[table]

    @classmethod
    def from_rows(cls, tables: Mapping[str, Sequence[Row]]) -> FeedingTables:
        """``tables``: table name -> rows of ``feeding_foods``, ``choking``, ``foods_not_yet``, ``policies``,
        ``textures``, ``allergens``, ``allergen_labels``, ``cautions``, ``storage`` and ``introduction``.

        Raises ValueError with file and line when a cell holds a word that the code does not know.
        """
        kinds: dict[str, frozenset[str]] = {}
        names: dict[str, tuple[str, ...]] = {}
        heads: dict[str, tuple[str, ...]] = {}
        traits: dict[str, frozenset[str]] = {}
        for row in tables.get("feeding_foods", ()):
            classes = frozenset(row.items("classes"))
            kinds[row.text("id")] = classes
            (heads if HEAD in classes else names)[row.text("id")] = row.items("names")
            for trait in row.items("traits"):
                traits[trait] = traits.get(trait, frozenset()) | classes
        hazards = tuple(
            _hazard(row, kind)
            for table, kind in (("choking", "choking"), ("foods_not_yet", "not-yet"))
            for row in tables.get(table, ())
        )
        choking = frozenset[str]().union(*(row.classes for row in hazards if row.kind == "choking"))
        policies = tuple(
            PolicyRow(
                row.text("topic"),
                row.text("authority"),
                row.text("default") == "yes",
                row.text("says"),
                row.text("source"),
            )
            for row in tables.get("policies", ())
        )
        return cls(kinds, Phrases(names), Phrases(heads), traits, choking, hazards, policies, dict(tables))

    def laid_out(self, pack: Pack, pack_row: Callable[[Sequence[Any]], Sequence[Any]]) -> FeedingTables:
        """The same tables with what they hold of single values as ``pack`` and ``pack_row`` make it."""
        for told in self.spelled_out.values():
            if isinstance(told, Patterns):
                told.lay_out(pack, pack_row)
        for phrases in (self.phrases, self.heads, *self._by_table.values()):
            phrases.lay_out(pack)
        by_id = {table: pack(rows) for table, rows in self._by_id.items()}
        return replace(self, kinds=pack(self.kinds), rows=pack(self.rows), _by_id=by_id)

    def authority(self, topic: str, chosen: Mapping[str, str]) -> str:
        """The authority that holds for ``topic``: the channel's choice, else the default, else ""."""
        known = [row for row in self.policies if row.topic == topic]
        wish = chosen.get(topic, "").casefold()
        for row in known:
            if row.authority.casefold() == wish:
                return row.authority
        return next((row.authority for row in known if row.default), "")

    def counts(self, row: HazardRow, policies: Mapping[str, str], markets: Sequence[str]) -> bool:
        """Whether a hazard row counts by the chosen ``policies`` and in one of ``markets`` (none: in all)."""
        chosen = row.policy is None or self.authority(row.policy[0], policies) == row.policy[1]
        return chosen and (not row.markets or not markets or bool(set(row.markets) & set(markets)))

    def source(self, row: Row) -> SourceRef:
        """The source of a row, with its locator and basis."""
        return _source(row)


def _groups(row: Row, column: str) -> tuple[frozenset[str], ...]:
    groups = tuple(frozenset(part.split("+")) for part in row.items(column))
    for group in groups:
        for word in group - FACTS:
            raise ValueError(
                f"{row.file}:{row.line}: {column} has the word {word!r}, which says nothing of a food as served"
            )
    return groups


def _source(row: Row) -> SourceRef:
    basis = _BASES.get(row.text("basis") or "read")
    if basis is None:
        raise ValueError(f"{row.file}:{row.line}: basis should be read, common-practice or from-memory")
    return SourceRef(row.text("source"), row.text("locator"), basis)


def _hazard(row: Row, kind: str) -> HazardRow:
    level = _LEVELS.get(row.text("level"))
    source = _source(row)
    if level is None:
        raise ValueError(f"{row.file}:{row.line}: level should be error, warning or note")
    if level == "error" and source.basis == "from-memory":
        raise ValueError(f"{row.file}:{row.line}: a recalled figure never makes an error")
    topic, _, authority = row.text("policy").partition("=")
    until = row.number("until_months")
    return HazardRow(
        id=row.text("id"),
        kind=kind,
        classes=frozenset(row.items("classes")),
        until=float("inf") if until is None else until,
        level=level,
        when=_groups(row, "when"),
        unless=_groups(row, "unless"),
        problem=row.text("problem"),
        remedy=row.text("remedy"),
        edit=row.text("edit"),
        policy=(topic, authority) if authority else None,
        source=source,
        group=row.text("group") or row.text("id"),
        markets=row.items("markets"),
        others=tuple((part.partition(":")[0], part.partition(":")[2]) for part in row.items("others")),
    )
