"""The claim lexicon: words and phrases with their classes, inflected and compiled when it is built.

A class is a word such as ``nutrient``, ``effect`` or ``benefit``. A phrase may belong to several
classes; each *set* of classes gets one private character, so that a sentence becomes a short string
of characters and the grammar is a handful of regular expressions over classes, not over words.
A term written with a trailing ``?`` in the tables is weak: it goes to ``<class>-weak`` and counts
only where the words around it support it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from typing import Any

from spoonproof.claims.inflect import forms
from spoonproof.claims.sentences import BreathRow
from spoonproof.model.record import NamedTuple, dataclass, field, replace
from spoonproof.model.remembered import WorkedOut
from spoonproof.model.table import Row

# "it's" is two words, so that what is said of "it" is found either way.
TOKEN = re.compile(
    r"(?:it|they|that|this|these|those|he|she|there|what)(?='(?:s|re)\b)|'(?:s|re)\b"
    r"|e\.g\.|i\.e\.|etc\.|vs\.|\d+(?:[.,]\d+)*|[½¼¾⅓⅔⅛]|[^\W\d_]+(?:'[^\W\d_]+)*|[^\w\s]|_+"
)
_JOINED = re.compile(r"(?<=\d) (?=s\b)|(?<=\bb) (?=\d)")  # "omega 3s", "b12" are written in one
_PLAIN_TERM = re.compile(r"[a-z]+(?: [a-z]+)*")
_FOLD = str.maketrans("’‘`´áàâäãåéèêëíìîïóòôöõúùûüñç", "''''aaaaaaeeeeiiiiooooouuuunc")
# A sentence holding none of these is never looked at.
TRIGGERS = frozenset(
    """
    absorb additive adjectival age age-unit allergen-word allergy allergy-weak ambiguous-nutrient anything avoid
    baby-milk bodily body body-process bound can-ask choking choking-weak common-allergen contaminant cut-safe digest
    disease disease-weak effect effect-verb effect-weak energy feel-better fine food-allergy forbid free-from
    free-suffixed goodfor harmful harmful-weak harmless hazard-food health health-weak healthier healthiest healthy hide
    introduce invalid loose loose-noun loose-noun-weak loose-weak medicinal milk-feed most need never-yet
    main-food new-food no-need nutrient nutrient-weak okay per-day percent praised-food pregnant reaction readiness
    readiness-weak remedy safe seat sit-well soft-enough solids strong suffix-free suits supervise thanks this-age
    too-much traces unfit unsafe-place until-is wait-until weaning-time weight-unit what-not when-ask allows
    fit starter at-a-time tolerance in-early healthy-kinds
    coins cooks-off does-well left-whole gum-place coarse drops allergen-gone rubbish sleepy has-all on-it
    calms for-fun only-need let-choke vaccine sweetener
    airway-part nothing-lost good-sources sources-are formed-in reacted
    small-unit can-be-given find-it-in is-got their-needs about-as-much
    for-water through-day reaction-sign the-change milk-bottle no-teeth no-worry unbeaten underdone
    goes-without made-beside
    cut-act waste-of-time round-food sausage risk-with wary symptoms eye-on run-about cannot-cope upright
    all-sugar first-food introduced-early per-week fed-so as-sweet did-it
    unsweetened label-abroad ill-sign none-of-us armour sun-up is-gone
    this-problem worsens-it works-well best-of-drinks best-drink in-bottle watch-for meat-free crowds-out
    bung no-harm in-mouth small-pieces shape-kind sitting hard-to-manage mistake
    """.split()
)
PLAIN, COMMA, STOP, COLON, OPEN, CLOSE, QUERY = "_", ",", ".", ":", "(", ")", "?"
MARKS = {
    ",": COMMA, ";": STOP, ".": STOP, "!": STOP, "…": STOP, "?": QUERY, ":": COLON, "(": OPEN, ")": CLOSE,
    "[": OPEN, "]": CLOSE, "—": COMMA, "–": COMMA, "/": COMMA, "|": COMMA, "•": COMMA, "→": COLON, "=": COLON,
    "+": COMMA, "-": COMMA, "&": PLAIN, ">": COLON, "*": COMMA,
}  # fmt: skip
_WORDS = 50_000  # tokens whose terms are at hand: some 5 MB of all that a person's texts can hold
_SYMBOL_BASE = 0xE000  # the private use area: no text of a person ever meets these


class Sense(NamedTuple):
    """What a phrase is in one class: its id, and the class's own value (a level, a strength ...)."""

    cls: str
    id: str
    value: str = ""
    allergens: tuple[str, ...] = ()
    base: str = ""  # the term as its table writes it: the singular, the British spelling


@dataclass(frozen=True, slots=True)
class Term:
    """A phrase of the lexicon with all its senses; ``symbol`` stands for its set of classes."""

    words: tuple[str, ...]
    senses: Mapping[str, Sense]
    symbol: str


@dataclass(slots=True)
class _Node:
    term: Term | None = None
    next: dict[str, _Node] = field(default_factory=dict)


def fold(text: str) -> str:
    """Lower case, straight apostrophes, no accents; as long as ``text``, so offsets hold."""
    low = text.lower()
    if low.isascii() and "`" not in low:
        return low  # most text: there is nothing to translate
    if len(low) != len(text):
        low = "".join(c if len(c.lower()) != 1 else c.lower() for c in text)
    return low.translate(_FOLD)


def words_of(term: str) -> tuple[str, ...]:
    """The tokens of a table's term, hyphens dropped, as the scanner would cut them."""
    if _PLAIN_TERM.fullmatch(term):
        return tuple(term.split(" "))
    return tuple(t for t in TOKEN.findall(fold(term)) if t != "-")


@dataclass(frozen=True)
class Lexicon:
    """A compiled lexicon. ``root`` is a trie over words, ``automaton`` finds trigger phrases in folded text."""

    root: _Node
    automaton: Any
    symbols: Mapping[str, str]  # class -> every symbol whose set of classes holds it
    number_symbol: str
    classes: Mapping[str, frozenset[str]]  # symbol -> its set of classes
    breaths: tuple[BreathRow, ...] = ()  # what begins and ends a sentence, for speech without punctuation
    laid: object = None  # the grammar's rules as laid out for this lexicon before (grammar.py), None where they weren't

    @classmethod
    def from_rows(cls, tables: Mapping[str, Sequence[Row]], food_names: Iterable[tuple[str, str]] = ()) -> Lexicon:
        """Build from the rows of ``claims/lexicon/en/*.csv`` (by table name) and the food table's names.

        ``food_names`` are (name, food id) pairs; where a name is also in the lexicon the food table's id wins.
        Raises ValueError with file and line for a row without class or terms.
        """
        senses: dict[tuple[str, ...], dict[str, Sense]] = {}
        for name in sorted(tables.keys() - {"breaths"}):
            for row in tables[name]:
                _add_row(senses, row)
        known: dict[tuple[str, ...], str] = {}
        for name, food in food_names:
            known.setdefault(words_of(name), food)
            _add_food(senses, name, food)
        _same_food(senses, known)
        breaths = tuple(
            (row.text("class"), int(row.text("value")), row.text("terms")) for row in tables.get("breaths", ())
        )
        return replace(_compile(senses), breaths=breaths)

    @cached_property
    def sets(self) -> Mapping[frozenset[str], frozenset[str]]:
        """By a set of classes: all symbols of any of them."""
        return WorkedOut(lambda classes: frozenset(self.symbols_of(classes)))

    @cached_property
    def classes_of(self) -> Mapping[str, frozenset[str]]:
        """By symbol: its set of classes, an empty one for a mark."""
        return WorkedOut(lambda symbol: self.classes.get(symbol, frozenset()))

    @cached_property
    def words(self) -> Mapping[str, tuple[Term | None, str, _Node | None]]:
        """By a token: its term, its symbol, and the phrases that begin with it (None each where there is none)."""
        return WorkedOut(self._word, _WORDS)

    def _word(self, word: str) -> tuple[Term | None, str, _Node | None]:
        node = self.root.next.get(word)
        owner = self.root.next.get(word[:-2]) if word.endswith("'s") else None
        term = (node.term if node is not None else None) or (owner.term if owner is not None else None)
        node = node or owner  # "a toddler's plate" holds a toddler, whatever "toddler's food" is
        if term is not None:
            symbol = term.symbol
        elif word.isalpha():
            symbol = PLAIN
        else:
            symbol = self.number_symbol if word[0].isnumeric() else MARKS.get(word, PLAIN)
        return term, symbol, node if node is not None and node.next else None

    def symbols_of(self, classes: Iterable[str]) -> str:
        """All symbols of any of ``classes``, sorted: the inside of a character class."""
        return "".join(sorted({s for name in classes for s in self.symbols.get(name, "")}))


def _add_row(senses: dict[tuple[str, ...], dict[str, Sense]], row: Row) -> None:
    cls, terms = row.text("class"), row.items("terms")
    if not cls or not terms:
        raise ValueError(f"{row.file}:{row.line}: a lexicon row needs a class and terms")
    how = row.text("forms") or "fixed"
    for term in terms:
        weak = term.endswith("?")
        name = f"{cls}-weak" if weak else cls
        # A row may be a family: where it says "each", every term is a thing of its own.
        identifier = _slug(term) if row.text("each") else row.text("id")
        sense = Sense(name, identifier, row.text("value"), row.items("allergens"), term.rstrip("?"))
        for form in forms(term.rstrip("?"), how):
            if key := words_of(form):
                senses.setdefault(key, {}).setdefault(name, sense)
                if sense.allergens:
                    senses[key].setdefault("allergen-food", sense)


def _add_food(senses: dict[tuple[str, ...], dict[str, Sense]], name: str, food: str) -> None:
    for form in forms(fold(name), "noun"):
        key = words_of(form)
        # "Kidney" and "heart" are said of the child's own far more often than of offal.
        if not key or "," in key or not _NO_FOOD_NAMES.isdisjoint(senses.get(key, {})):
            continue
        old = senses.setdefault(key, {}).get("food")
        senses[key]["food"] = Sense("food", food, "", old.allergens if old else (), old.base if old else fold(name))


_NO_FOOD_NAMES = frozenset({"ambiguous-nutrient", "nutrient", "body"})
_PLAIN_WORDS = frozenset(
    "raw manuka unheated organic pure fresh ripe whole natural plain tender virgin cow cows".split()
)


def _slug(term: str) -> str:
    return "-".join(words_of(term))


def _same_food(senses: dict[tuple[str, ...], dict[str, Sense]], known: Mapping[tuple[str, ...], str]) -> None:
    """ "Manuka honey" is honey: a lexicon food that differs from a record by a plain word takes its id."""
    ids = set(known.values())
    for found in senses.values():
        sense = found.get("food")
        if sense is None or sense.id in ids:
            continue
        base = words_of(sense.base)
        while len(base) > 1 and base[0] in _PLAIN_WORDS:
            base = base[1:]
        if base in known:
            found["food"] = sense._replace(id=known[base])


def automaton_of(phrases: Iterable[str]) -> Any:
    """What finds these phrases in a text: at each one's last character its length."""
    import ahocorasick

    automaton = ahocorasick.Automaton(ahocorasick.STORE_LENGTH)
    for phrase in phrases:
        automaton.add_word(phrase)
    automaton.make_automaton()
    return automaton


def _compile(senses: Mapping[tuple[str, ...], Mapping[str, Sense]]) -> Lexicon:
    by_set: dict[frozenset[str], str] = {}
    root, phrases = _Node(), set[str]()
    sets = {frozenset(found) for found in senses.values()} | {frozenset({"number"})}
    for number, classes in enumerate(sorted(sets, key=sorted)):
        by_set[classes] = chr(_SYMBOL_BASE + number)
    for key in sorted(senses):
        found = senses[key]
        term = Term(key, dict(found), by_set[frozenset(found)])
        node = root
        for word in key:
            node = node.next.setdefault(word, _Node())
        node.term = term
        if not TRIGGERS.isdisjoint(found):
            # Joined by a space here; the scanner folds hyphens to spaces before it looks.
            phrase = " ".join(key)
            phrases |= {phrase, _JOINED.sub("", phrase)}
    symbols: dict[str, str] = {}
    for classes, symbol in by_set.items():
        for name in classes:
            symbols[name] = symbols.get(name, "") + symbol
    numbers = by_set[frozenset({"number"})]
    triggers = sorted(phrase for phrase in phrases if not _goes_on_from_another(phrase, phrases))
    return Lexicon(root, automaton_of(triggers), symbols, numbers, {symbol: found for found, symbol in by_set.items()})


def _goes_on_from_another(phrase: str, phrases: set[str]) -> bool:
    """Whether a phrase begins with a whole other one: where it stands the other stands too, so three of ten need not
    be looked for."""
    return any(phrase[:at] in phrases for at in range(1, len(phrase)) if not phrase[at].isalpha())
