"""Scan text with the automaton, and turn a sentence into tagged items and its string of symbols."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.claims.lexicon import COMMA, PLAIN, QUERY, STOP, TOKEN, Lexicon, Term, fold
from spoonproof.model.record import NamedTuple, dataclass
from spoonproof.model.remembered import WorkedOut


class Item(NamedTuple):
    """One word, phrase or mark of a sentence: ``text[start:end]`` of the sentence."""

    start: int
    end: int
    words: str
    term: Term | None


_item = tuple.__new__  # a thousand times a page: the class's own way of making one takes twice as long


_ENDS = frozenset({STOP, QUERY})
_SHORTENED = frozenset({"dr", "mr", "mrs", "ms", "prof", "st"})
_EATEN = frozenset({"food", "dish", "nutrient", "ambiguous-nutrient"})
_AFTER_IS = frozenset(
    "a an the one not got been so too very really actually just also still always never only mostly nearly almost "
    "quite pretty full packed loaded bursting fine ok okay brilliant great amazing out off why how where your my "
    "their".split()
)
"""Words that no noun has before it with an "'s" of its own: "salmon's *a* good source"."""
_SAID_OF = frozenset("good bad better best healthy unhealthy safe high low rich".split())
_OF_WHOM = frozenset("for to in from than if when and but because , .".split())
Token = tuple[str, int, int]
_TOKENS = WorkedOut[str, tuple[Token, ...]](lambda text: tuple((m.group(), *m.span()) for m in TOKEN.finditer(text)))
"""The tokens of what stands between two blanks: no token reaches over one, and most have been met before."""


@dataclass(frozen=True, slots=True)
class Tagged:
    """A sentence as items and, index for index, as symbols."""

    text: str
    low: str  # the text folded
    items: tuple[Item, ...]
    symbols: str
    lexicon: Lexicon

    def has(self, index: int, cls: str) -> bool:
        """Whether the item is of the class."""
        term = self.items[index].term
        return term is not None and cls in term.senses

    def is_any(self, index: int, classes: frozenset[str]) -> bool:
        """Whether the item is of any of ``classes``; False outside the sentence."""
        return 0 <= index < len(self.symbols) and self.symbols[index] in self.lexicon.sets[classes]

    def find(self, classes: frozenset[str], start: int = 0, end: int | None = None) -> list[int]:
        """Indices in [start, end) of the items that are of any of ``classes``."""
        wanted, begin = self.lexicon.sets[classes], start if start > 0 else 0
        if end is not None and end < 0:
            end = 0
        part = self.symbols[begin:end]
        if wanted.isdisjoint(part):
            return []
        return [i for i, symbol in enumerate(part, begin) if symbol in wanted]

    def words(self, start: int, end: int) -> str:
        """The text of items [start, end)."""
        return self.text[self.items[start].start : self.items[end - 1].end] if end > start else ""


def hits(lexicon: Lexicon, text: str) -> list[int]:
    """Offsets of trigger phrases that stand on word boundaries in ``text``."""
    low = fold(text).replace("-", " ").replace("\n", " ")
    found: list[int] = []
    size = len(low)
    for end, length in lexicon.automaton.iter(low):
        start = end - length + 1
        # "92%", "60mg": neither a sign nor a unit after its figure needs a gap before it
        if end + 1 < size and low[end + 1].isalpha():
            continue
        if not start or (not low[start - 1].isalpha() and (not low[start - 1].isdigit() or not low[start].isdigit())):
            found.append(start)
    found.sort()
    return found


def tag(lexicon: Lexicon, text: str) -> Tagged:
    """Tag a sentence: the longest phrase first, from the left."""
    low = fold(text)
    tokens: list[Token] = []
    at = 0
    for stretch in low.split(" "):
        for word, start, end in _TOKENS[stretch]:
            tokens.append((word, at + start, at + end))
        at += len(stretch) + 1
    if "-" in low:
        tokens = [t for t in tokens if t[0] != "-" or _spaced(low, t[1])]
    if "'s " in low:
        tokens = _parted(lexicon, tokens)
    items: list[Item] = []
    symbols: list[str] = []
    known, at, count = lexicon.words, 0, len(tokens)
    while at < count:
        word, start, end = tokens[at]
        term, symbol, node = known[word]
        at += 1
        if node is not None:
            stop = ahead = at
            while node is not None and ahead < count:
                node = node.next.get(tokens[ahead][0])
                ahead += 1
                if node is not None and node.term is not None:
                    term, stop = node.term, ahead
            if term is not None and stop > at:
                end, symbol, at = tokens[stop - 1][2], term.symbol, stop
                word = low[start:end]
        if symbol in _ENDS and at < count:
            if tokens[at][0] == ")":
                symbol = COMMA  # "babies (and adults!) with colic": no sentence ends inside brackets
            elif word == "." and _goes_on(text, tokens, at):
                symbol = PLAIN
        items.append(_item(Item, (start, end, word, term)))
        symbols.append(symbol)
    return Tagged(text, low, tuple(items), "".join(symbols), lexicon)


def _goes_on(text: str, tokens: Sequence[Token], at: int) -> bool:
    """Whether the full stop before ``at`` only shortens a word: "a 2 oz. bar", "says Dr. Lind"."""
    begin = tokens[at][1]
    return text[begin].islower() or text[begin].isdigit() or (at > 1 and tokens[at - 2][0] in _SHORTENED)


def _parted(lexicon: Lexicon, tokens: Sequence[Token]) -> list[Token]:
    """ "Butter's fine" is "butter is fine": food and verb are two words where no noun of its own follows."""
    found: list[Token] = []
    for at, (word, start, end) in enumerate(tokens):
        node = lexicon.root.next.get(word[:-2]) if word.endswith("'s") else None
        after = [one[0] for one in tokens[at + 1 : at + 3]]
        eaten = node is not None and node.term is not None and not _EATEN.isdisjoint(node.term.senses)
        if eaten and after and (after[0] in _AFTER_IS or (after[0] in _SAID_OF and after[1:] and after[1] in _OF_WHOM)):
            found += [(word[:-2], start, end - 2), ("'s", end - 2, end)]
        else:
            found.append((word, start, end))
    return found


def _spaced(low: str, at: int) -> bool:
    """Whether the hyphen at ``at`` stands as a dash, with blanks around it."""
    return (at == 0 or low[at - 1] == " ") and (at + 1 >= len(low) or low[at + 1] in " -")
