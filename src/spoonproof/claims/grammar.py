"""The claim grammar: patterns over classes of words, compiled against a lexicon.

A pattern is written with classes in angle brackets and gaps: ``<benefit> ~4 <effect>`` is a benefit
word, at most four items that do not leave the clause, an effect. ``_4`` is a gap that does not cross a
comma either. ``T(...)`` marks the words that give the claim away, ``O(...)`` what it relates to,
``S(...)`` its subject. Blanks mean nothing; the rest is the language of ``re``. Patterns are linear:
every gap is bounded.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import cache, reduce
from operator import or_
from typing import Any, Protocol

from spoonproof.claims.lexicon import Lexicon
from spoonproof.model.claim import Kind
from spoonproof.model.record import NamedTuple, dataclass
from spoonproof.model.remembered import WorkedOut

_CLASSES = re.compile(r"<([a-z| -]+)>")
_GAP = re.compile(r"([~_])(\d+)")
_MARK = re.compile(r"\b([TOS])\(")
_NEVER = "\uf8ff"  # in no text and no lexicon: a class without terms matches nothing


@dataclass(frozen=True, slots=True)
class Rule:
    """One way of claiming. ``needs``: classes of which the sentence must hold one for the claim to stand
    (beside the pattern); ``veto``: classes that make it ordinary talk; ``level`` as in ``Claim``;
    ``loose``: yields to any surer rule on the same object, of whatever kind; ``named``:
    the sentence must name a food or nutrient, point back at one, or be a fragment that opens with the
    trigger; ``effect``: the effect's id where the words do not say it; ``tale``: what was told before the words that
    give it away belongs to the tale, so that only a "no" right before them denies."""

    name: str
    kind: Kind
    pattern: str
    level: str | None = None
    needs: tuple[str, ...] = ()
    veto: tuple[str, ...] = ()
    says: str = ""
    loose: bool = False
    named: bool = False
    effect: str = ""
    tale: bool = False


class Ways(Protocol):
    """Makes a rule of every pattern it is given; they share the other fields, classes written as words."""

    def __call__(
        self,
        name: str,
        *patterns: str,
        says: str,
        level: str | None = None,
        needs: str = "",
        veto: str = "",
        loose: bool = False,
        named: bool = False,
        effect: str = "",
        tale: bool = False,
    ) -> tuple[Rule, ...]: ...


def ways(kind: Kind) -> Ways:
    """For writing the rules of one kind: the ways in which one thing is said, pattern by pattern."""

    def made(name: str, *patterns: str, needs: str = "", veto: str = "", **shared: Any) -> tuple[Rule, ...]:
        needed, against = tuple(needs.split()), tuple(veto.split())
        return tuple(Rule(name, kind, pattern, needs=needed, veto=against, **shared) for pattern in patterns)

    return made


@dataclass(frozen=True, slots=True)
class CompiledRule:
    """A rule with its expression over symbols, which is compiled when a sentence first asks for it."""

    rule: Rule
    written: str

    @property
    def expression(self) -> re.Pattern[str]:
        """The compiled expression. Raises ``re.error`` where the pattern is none."""
        return _compiled(self.written)


@cache
def _compiled(written: str) -> re.Pattern[str]:
    return re.compile(written)


MACROS: dict[str, str] = {
    "FOOD": "food|dish",
    "THING": "food|dish|generic-food|pronoun",
    "EATABLE": "food|dish|ambiguous-nutrient|hazard-food|hazard-food-weak",
    "ANY": "food|dish|generic-food|pronoun|nutrient|ambiguous-nutrient",
    "NUT": "nutrient|nutrient-weak|ambiguous-nutrient|energy",
    "NUTRIENT": "nutrient|nutrient-weak",
    "ALLERGEN": "allergen-word|allergen-food",
    "ALLERGY": "allergy|allergy-weak|food-allergy",
    "AVOID": "avoid|avoid-weak|forbid",
    "EFFECT": "effect|effect-weak|digest|absorb",
    "DISEASE": "disease|disease-weak",
    "BENEFIT": "benefit|benefit-weak",
    "HARM": "harm|harm-weak",
    "HAVE": "contain|have",
    "NEED": "need|need-weak",
}
_MACRO = re.compile(r"\b[A-Z]{3,}\b")


class Laid(NamedTuple):
    """Rules laid out for a lexicon: each one's expression as written, and as bits of a number which rules are satisfied
    from the start and by which symbol, demand by demand."""

    written: tuple[str, ...]
    given: tuple[int, ...]
    by_symbol: Mapping[str, tuple[int, ...]]


class RuleBook:
    """Rules made ready for a lexicon, and which of them a sentence's symbols leave possible.

    A set of rules is one number, a bit a rule. For every symbol and every demand (a class the pattern
    cannot do without, ``needs``, ``veto``) the rules it satisfies are known beforehand, so that one pass
    over a sentence's distinct symbols settles which rules are worth running.
    """

    def __init__(self, lexicon: Lexicon, rules: Sequence[Rule]) -> None:
        laid = lexicon.laid if isinstance(lexicon.laid, Laid) else self.lay_out(lexicon, rules)
        self._made = WorkedOut[int, CompiledRule](lambda at: CompiledRule(rules[at], laid.written[at]), len(rules) + 1)
        self._given = laid.given
        self._by_symbol = WorkedOut[str, tuple[int, ...] | None](laid.by_symbol.get)

    @staticmethod
    def lay_out(lexicon: Lexicon, rules: Sequence[Rule]) -> Laid:
        """What takes time of it, done once."""
        demands = [[*_narrowest(lexicon, _required(rule.pattern)), _spread(rule.needs)] for rule in rules]
        # Where a rule demands nothing, it is satisfied from the start.
        given = tuple(
            sum(1 << number for number, asked in enumerate(demands) if not asked[slot]) for slot in range(_DEMANDS)
        )
        by_symbol: dict[str, tuple[int, ...]] = {}
        vetoes = [frozenset(_spread(rule.veto)) - NEARBY for rule in rules]
        wanted = [[frozenset(asked[slot]) for asked in demands] for slot in range(_DEMANDS)]
        by_class = {
            name: tuple(
                sum(1 << number for number, asked in enumerate(column) if name in asked) for column in (*wanted, vetoes)
            )
            for name in lexicon.symbols
        }
        for symbol, names in lexicon.classes.items():
            columns = zip(*(by_class[name] for name in names), strict=True)
            by_symbol[symbol] = tuple(reduce(or_, column) for column in columns)
        return Laid(tuple(_expression(lexicon, rule.pattern) for rule in rules), given, by_symbol)

    def applying(self, symbols: str) -> list[CompiledRule]:
        """The rules that may match, in their order."""
        first, second, third, needs = self._given
        veto = 0
        for symbol in set(symbols):
            found = self._by_symbol[symbol]
            if found is not None:
                first |= found[0]
                second |= found[1]
                third |= found[2]
                needs |= found[3]
                veto |= found[4]
        left = first & second & third & needs & ~veto
        possible: list[CompiledRule] = []
        while left:
            lowest = left & -left
            possible.append(self._made[lowest.bit_length() - 1])
            left ^= lowest
        return possible


# Vetoes that count only near the match: "cream" at the end of a long sentence does not make it one of cosmetics.
NEARBY = frozenset({"nonfood", "culinary", "other-doer"})
_OPENER = "(?:[^.?,:()]{1,2},)?"  # "however," or "in fact," moves no beginning
# "Six months", "her first birthday", "till they're five", "before your baby is one".
_AGE = (
    "(?:<number>(?:_1<number>)?[,_]?<age-unit>|<age>|(?:<until-is>|<age-of>"
    "|(?<=<bound|wait-until>)_?<audience-baby|pronoun>_?<turns>|(?<=<when-ill|once>)_?<audience-baby>_?<turns>)<number>(?![,_]?<age-unit|unit|household|time-unit|week>))"
)
_DEMANDS = 4  # three classes of the pattern, and what the rule needs beside it


def _narrowest(lexicon: Lexicon, parts: list[list[str]]) -> list[list[str]]:
    """The three narrowest of the sets a pattern cannot do without; empty ones where it has fewer."""
    distinct = {frozenset(part) for part in (_spread(names) for names in parts)}
    ranked = sorted(distinct, key=lambda part: (sum(len(lexicon.symbols.get(n, "")) for n in part), sorted(part)))
    return [*(sorted(part) for part in ranked[:3]), [], [], []][:3]


def _required(pattern: str) -> list[list[str]]:
    """The classes a pattern cannot do without: those outside alternatives, options and look-aheads."""
    plain = re.sub(r"\(\?<?[:!=][^()]*\)\??", "", pattern.replace("@AGE", ""))
    plain = re.sub(r"[TOS]\([^()]*\)\?|<[^<>]*>\?", "", plain)
    return [
        names.split("|") for names in _CLASSES.findall(_MACRO.sub(lambda m: MACROS.get(m.group(), m.group()), plain))
    ]


def _spread(names: Sequence[str]) -> list[str]:
    return [cls for name in names for cls in MACROS.get(name, name).split("|")]


def _expression(lexicon: Lexicon, pattern: str) -> str:
    pattern = pattern.replace("@AGE", _AGE)
    pattern = _MACRO.sub(lambda m: MACROS.get(m.group(), m.group()), pattern)
    if pattern.startswith("^"):
        pattern = f"^{_OPENER}{pattern[1:]}"

    def symbols(match: re.Match[str]) -> str:
        found = lexicon.symbols_of(match.group(1).split("|"))
        return f"[{found}]" if found else _NEVER

    def gap(match: re.Match[str]) -> str:
        inside = "[^.?]" if match.group(1) == "~" else "[^.?,:()]"
        return f"{inside}{{0,{match.group(2)}}}?"

    pattern = _MARK.sub(r"(?P<\1>", pattern)
    return re.sub(r"\s+", "", _CLASSES.sub(symbols, _GAP.sub(gap, pattern)))
