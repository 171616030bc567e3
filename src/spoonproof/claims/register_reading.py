"""Reading the register's YAML trees into entries, with all that is wrong told at its place."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from itertools import product
from typing import cast, get_args

from spoonproof.claims.conditions import Condition, ConditionError, read_condition
from spoonproof.claims.entries import ANY, Allowance, Entry, Interval, Stance, TruthWord, Wording
from spoonproof.model.claim import Answer, Kind, Market
from spoonproof.model.finding import Basis, Finding, Level, Related, SourceRef
from spoonproof.model.table import Row
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Listing, Mapped, Node, Scalar

_ENTRY_KEYS = frozenset(
    "id about kind level effect said also unless stance negation ages valid truth source locator basis sources "
    "condition lesser allowed guidance wording add why harm points checked due".split()
)
_ALLOWED_KEYS = frozenset("market answer source locator basis ages condition wording why guidance".split())
_FILE_KEYS = frozenset({"topic", "defaults", "entries", "sets", "words"})
_DEFAULT_KEYS = _ENTRY_KEYS - {"id", "allowed", "condition", "lesser", "sources"}
_AGES = re.compile(r"(?:from (?P<from>\d{1,4})|under (?P<under>\d{1,4})|(?P<a>\d{1,4})-(?P<b>\d{1,4})) months")
_CHOICE = re.compile(r"[()]")
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}")
_BASES: tuple[Basis, ...] = ("read", "common-practice", "from-memory", "own")


def read_wordings(rows: Sequence[Row]) -> dict[str, Wording]:
    """``claims/authorised.csv`` by id: columns id, market, article, wording, population, conditions,
    source, locator, basis."""
    found: dict[str, Wording] = {}
    for row in rows:
        ref = SourceRef(row.text("source"), row.text("locator"), cast(Basis, row.text("basis") or "read"))
        found[row.text("id")] = Wording(
            row.text("id"),
            cast(Market, row.text("market")),
            row.text("article"),
            row.text("wording"),
            row.text("population"),
            row.text("conditions"),
            ref,
        )
    return found


def read_ages(text: str) -> Interval | None:
    """ "6-12 months", "from 12 months", "under 24 months" as months, both ends in; None when unreadable."""
    match = _AGES.fullmatch(text.strip())
    if not match:
        return None
    if match["from"]:
        return int(match["from"]), None
    if match["under"]:
        return 0, int(match["under"]) - 1
    return int(match["a"]), int(match["b"])


class EntryReader:
    """Collects entries, subject sets, words and findings over all files of the register."""

    def __init__(self, wordings: Mapping[str, Wording], source_ids: Collection[str] | None) -> None:
        self.wordings = wordings
        self.source_ids = source_ids
        self.entries: list[Entry] = []
        self.sets: dict[str, frozenset[str]] = {}
        self.words: dict[str, tuple[str, ...]] = {}
        self.findings: list[Finding] = []
        self._seen: dict[tuple[str, str], Related] = {}

    def read(self, document: Document, root: Mapped | Listing) -> None:
        """Read one file: a mapping of topic, defaults, sets, words and entries, or just a list of entries."""
        defaults: Mapped | None = None
        entries: Node | None = root
        if isinstance(root, Mapped):
            self._keys(document, root, _FILE_KEYS, "a register file")
            found = root.get("defaults")
            defaults = found if isinstance(found, Mapped) else None
            if defaults is not None:
                self._keys(document, defaults, _DEFAULT_KEYS, "defaults")
            sets, words = root.get("sets"), root.get("words")
            if isinstance(sets, Mapped):
                for key, _ in sets:
                    self._set(document, key, sets.texts(key.value))
            if isinstance(words, Mapped):
                for key, _ in words:
                    self.words[key.value] = self._phrases(document, key.span, words.texts(key.value))
            entries = root.get("entries")
        if entries is None:
            return
        if not isinstance(entries, Listing):
            self._tell(document, entries.span, "register-entry-unreadable", "entries should be a list of entries.")
            return
        for node in entries.items:
            if not isinstance(node, Mapped):
                self._tell(document, node.span, "register-entry-unreadable", "an entry is a mapping with an id.")
                continue
            self._entry(document, node, defaults)

    def _set(self, document: Document, name: Scalar, members: Sequence[str]) -> None:
        """Entries ask for a set by its name, from any file: a second one of that name would take the first away."""
        if not self._twice(document, name.span, "set", name.value):
            self.sets[name.value] = frozenset(members)

    def _twice(self, document: Document, span: Span, what: str, name: str) -> bool:
        first = self._seen.setdefault((what, name), Related(document, span, "it stands here too"))
        if first.document is document and first.span == span:
            return False
        self._tell(document, span, f"register-{what}-twice", f"{name} is defined twice.", first)
        return True

    def _entry(self, document: Document, node: Mapped, defaults: Mapped | None) -> None:
        self._keys(document, node, _ENTRY_KEYS, "an entry")
        key = node.get("id")
        name = node.text("id")
        span = key.span if key is not None else node.span
        if not name:
            self._tell(document, span, "register-entry-unreadable", "this entry has no id.")
            return
        if self._twice(document, span, "entry", name):
            return
        both = _Both(node, defaults)
        problems = len(self.findings)
        refs = self._refs(document, node, both, span, name)
        entry = Entry(
            id=name,
            document=document,
            span=span,
            about=both.texts("about"),
            kinds=cast(tuple[Kind, ...], self._closed(document, both, "kind", get_args(Kind), name)),
            levels=both.texts("level"),
            effects=both.texts("effect"),
            said=self._phrases(document, span, both.texts("said")),
            also=self._phrases(document, span, both.texts("also")),
            unless=self._phrases(document, span, both.texts("unless")),
            stance=cast(
                Stance, (self._closed(document, both, "stance", ("permits", "warns", "dismisses"), name) or ("",))[0]
            ),
            negation=both.text("negation") == "included",
            ages=self._ages(document, both.get("ages"), name),
            valid=self._valid(both),
            truth=self._truth(document, both, name),
            refs=refs,
            condition=self._condition(document, node.get("condition")),
            lesser=self._condition(document, node.get("lesser")),
            allowed=self._allowed(document, both, refs, name),
            wording=both.texts("wording"),
            add=both.text("add"),
            why=both.text("why"),
            harm=int(both.text("harm")) if both.text("harm") in {"0", "1", "2", "3"} else None,
            points_at=both.text("points"),
            checked=both.text("checked"),
            due=both.text("due"),
        )
        self._words(entry)
        self._complete(entry)
        self._wordings(entry)
        self._dates(entry)
        if not any(f.level == "error" for f in self.findings[problems:]):
            self.entries.append(entry)

    def _refs(self, document: Document, node: Mapped, both: _Both, span: Span, name: str) -> tuple[SourceRef, ...]:
        refs: list[SourceRef] = []
        if both.text("source"):
            refs.append(SourceRef(both.text("source"), both.text("locator"), _basis(both.text("basis"))))
        listed = node.get("sources")
        if isinstance(listed, Listing):
            for item in listed.items:
                if isinstance(item, Mapped):
                    refs.append(SourceRef(item.text("id"), item.text("locator"), _basis(item.text("basis"))))
        for ref in refs:
            self._known(document, ref, span, name)
        return tuple(refs)

    def _known(self, document: Document, ref: SourceRef, span: Span, name: str) -> None:
        if self.source_ids is not None and ref.id not in self.source_ids and ref.id != "common-practice":
            self._tell(
                document,
                span,
                "register-unknown-source",
                f"{name} cites {ref.id!r}, which no file of shared/sources defines.",
            )

    def _allowed(
        self, document: Document, both: _Both, refs: tuple[SourceRef, ...], name: str
    ) -> tuple[Allowance, ...]:
        if both.text("guidance") == "yes":
            return (Allowance(get_args(Market), "yes", refs, guidance=True),)
        listed = both.node.get("allowed")
        if listed is None:
            return ()
        items = listed.items if isinstance(listed, Listing) else (listed,)
        found: list[Allowance] = []
        for item in items:
            if not isinstance(item, Mapped):
                self._tell(document, item.span, "register-entry-unreadable", "allowed is a list of mappings.")
                continue
            self._keys(document, item, _ALLOWED_KEYS, "allowed")
            one = _Both(item, None)
            markets = self._closed(document, one, "market", get_args(Market), name)
            answers = self._closed(document, one, "answer", get_args(Answer), name)
            own = refs
            if one.text("source"):
                own = (SourceRef(one.text("source"), one.text("locator"), _basis(one.text("basis"))),)
                self._known(document, own[0], item.span, name)
            if not markets or not answers:
                self._tell(
                    document, item.span, "register-entry-incomplete", f"{name}: allowed needs market and answer."
                )
                continue
            if not own or not own[0].locator:
                self._tell(
                    document,
                    item.span,
                    "register-entry-incomplete",
                    f"{name}: say on what the answer rests: a source and the place in it.",
                )
            found.append(
                Allowance(
                    cast(tuple[Market, ...], markets),
                    cast(Answer, answers[0]),
                    own,
                    self._ages(document, one.get("ages"), name),
                    self._condition(document, item.get("condition")),
                    one.texts("wording"),
                    one.text("why"),
                    one.text("guidance") == "yes",
                )
            )
        return tuple(found)

    def _phrases(self, document: Document, span: Span, texts: Sequence[str]) -> tuple[str, ...]:
        """Phrases as written out: "words:NAME" is a list of a file's words, "(a|b) (c|d)" each way of saying it."""
        found: dict[str, None] = {}
        for text in texts:
            if text.startswith("words:") and text[6:] not in self.words:
                self._tell(document, span, "register-unknown-word", f"no list of words above is called {text[6:]!r}.")
            parts = (option.split("|") for option in _CHOICE.split(text))
            said = (" ".join("".join(choice).split()) for choice in product(*parts))
            found |= dict.fromkeys(self.words.get(text[6:], ()) if text.startswith("words:") else said)
        return tuple(found)

    def _truth(self, document: Document, both: _Both, name: str) -> TruthWord | None:
        words = self._closed(document, both, "truth", get_args(TruthWord), name)
        if words == ("computed",) and both.get("condition") is None:
            node = both.get("truth")
            if node is not None:
                self._tell(document, node.span, "register-entry-incomplete", f"{name}: computed needs a condition.")
        return cast(TruthWord, words[0]) if words else None

    def _closed(self, document: Document, both: _Both, key: str, known: Collection[str], name: str) -> tuple[str, ...]:
        found = both.texts(key)
        for text in found:
            if text not in known:
                node = both.get(key)
                self._tell(
                    document,
                    node.span if node else Span(0, 1),
                    "register-unknown-word",
                    f"{name}: {key} is one of {', '.join(known)}, not {text!r}.",
                )
        return tuple(text for text in found if text in known)

    def _ages(self, document: Document, node: Node | None, name: str) -> Interval:
        if node is None:
            return ANY
        ages = read_ages(node.value) if isinstance(node, Scalar) else None
        if ages is None:
            self._tell(
                document,
                node.span,
                "register-unknown-word",
                f'{name}: ages are written "6-12 months", "from 12 months" or "under 24 months".',
            )
        return ages or ANY

    def _valid(self, both: _Both) -> tuple[str, str]:
        texts = both.texts("valid")
        return (texts[0], texts[1] if len(texts) > 1 else "") if texts else ("", "")

    def _condition(self, document: Document, node: Node | None) -> Condition | None:
        if node is None:
            return None
        try:
            return read_condition(node)
        except ConditionError as error:
            self._tell(document, error.node.span, "register-condition-unreadable", f"{error}.")
            return None

    def _words(self, entry: Entry) -> None:
        """A word of no letter or one would be found in every sentence."""
        for key, words in (("said", entry.said), ("also", entry.also), ("unless", entry.unless)):
            for word in words:
                if len(word.strip("* ")) < 2:
                    self._tell(
                        entry.document,
                        entry.span,
                        "register-unknown-word",
                        f"{entry.id}: {key} asks for words of two letters at least, not {word!r}.",
                    )

    def _complete(self, entry: Entry) -> None:
        if entry.truth is None and not entry.allowed:
            self._tell(
                entry.document,
                entry.span,
                "register-entry-incomplete",
                f"{entry.id} says neither whether it is true (truth) nor whether it may be said (allowed).",
            )
        if entry.truth is not None and (not entry.refs or any(not r.id or not r.locator for r in entry.refs)):
            self._tell(
                entry.document,
                entry.span,
                "register-entry-incomplete",
                f"{entry.id}: give the source its truth rests on, and the place in it (locator).",
            )
        if not entry.checked or not entry.due:
            self._tell(
                entry.document,
                entry.span,
                "register-entry-incomplete",
                f"{entry.id}: say when it was checked and when it is due again.",
                level="warning",
            )

    def _wordings(self, entry: Entry) -> None:
        named = [*entry.wording, *(w for allowance in entry.allowed for w in allowance.wording)]
        for wording in named:
            if wording.startswith("authorised:") and wording[11:] not in self.wordings:
                self._tell(
                    entry.document,
                    entry.span,
                    "register-wording-missing",
                    f"{entry.id}: claims/authorised.csv has no wording {wording[11:]}.",
                )

    def _dates(self, entry: Entry) -> None:
        for name, date in (("checked", entry.checked), ("due", entry.due), *(("valid", d) for d in entry.valid)):
            if date and not _DATE.fullmatch(date):
                self._tell(
                    entry.document,
                    entry.span,
                    "register-unknown-word",
                    f"{entry.id}: {name} is a date like 2026-11-25.",
                )

    def _keys(self, document: Document, node: Mapped, known: Collection[str], what: str) -> None:
        for key, _ in node:
            if key.value not in known:
                self._tell(
                    document,
                    key.span,
                    "register-unknown-key",
                    f"{what} knows no key {key.value!r}; it knows {', '.join(sorted(known))}.",
                )

    def _tell(
        self,
        document: Document,
        span: Span,
        rule: str,
        message: str,
        other: Related | None = None,
        level: Level = "error",
    ) -> None:
        text, beside = message[:1].upper() + message[1:], (other,) if other else ()
        self.findings.append(
            Finding(rule=rule, area="words", level=level, message=text, document=document, span=span, related=beside)
        )


class _Both:
    """An entry's values with the file's defaults behind them."""

    def __init__(self, node: Mapped, defaults: Mapped | None) -> None:
        self.node = node
        self.defaults = defaults

    def get(self, key: str) -> Node | None:
        own = self.node.get(key)
        return own if own is not None or self.defaults is None else self.defaults.get(key)

    def text(self, key: str) -> str:
        found = self.get(key)
        return found.value if isinstance(found, Scalar) else ""

    def texts(self, key: str) -> tuple[str, ...]:
        found = self.get(key)
        if isinstance(found, Scalar):
            return (found.value,) if found.value else ()
        if isinstance(found, Listing):
            return tuple(item.value for item in found.items if isinstance(item, Scalar))
        return ()


def _basis(text: str) -> Basis:
    return next((basis for basis in _BASES if basis == text), "read")
