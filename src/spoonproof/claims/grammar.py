"""The claim grammar: patterns over classes of words, compiled against a lexicon.

A pattern is written with classes in angle brackets and gaps: ``<benefit> ~4 <effect>`` is a benefit
word, at most four items that do not leave the clause, an effect. ``_4`` is a gap that does not cross a
comma either. ``T(...)`` marks the words that give the claim away, ``O(...)`` what it relates to,
``S(...)`` its subject. Blanks mean nothing; the rest is the language of ``re``. Patterns are linear:
every gap is bounded.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from spoonproof.claims.lexicon import Lexicon
from spoonproof.model.claim import Kind

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
    trigger; ``effect``: the effect's id where the words do not say it."""

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


@dataclass(frozen=True, slots=True)
class CompiledRule:
    """A rule with its expression over symbols, which is compiled when a sentence first asks for it."""

    rule: Rule
    written: str
    needs: int
    veto: int
    parts: tuple[int, int, int]  # sets of classes, of each of which the sentence must hold one; -1 asks nothing

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
    "ANY": "food|dish|generic-food|pronoun|nutrient|ambiguous-nutrient",
    "NUT": "nutrient|nutrient-weak|ambiguous-nutrient|energy",
    "NUTRIENT": "nutrient|nutrient-weak",
    "AVOID": "avoid|avoid-weak|forbid",
    "EFFECT": "effect|effect-weak|digest|absorb",
    "DISEASE": "disease|disease-weak",
    "BENEFIT": "benefit|benefit-weak",
    "HARM": "harm|harm-weak",
    "HAVE": "contain|have",
    "NEED": "need|need-weak",
}
_MACRO = re.compile(r"\b[A-Z]{3,}\b")


def compile_rules(lexicon: Lexicon, rules: Sequence[Rule]) -> tuple[CompiledRule, ...]:
    """Make ``rules`` ready for a lexicon.

    Classes become bits, so that most rules are passed over with one look at what a sentence holds.
    """
    bits = class_bits(lexicon)

    def mask(names: Sequence[str]) -> int:
        return sum({bits.get(name, 0) for name in _spread(names)})

    return tuple(
        CompiledRule(
            rule,
            _expression(lexicon, rule.pattern),
            mask(rule.needs) if rule.needs else -1,
            mask(rule.veto),
            _three([mask(part) for part in _required(rule.pattern)]),
        )
        for rule in rules
    )


def _three(masks: list[int]) -> tuple[int, int, int]:
    """The three narrowest of the sets a pattern cannot do without."""
    first, second, third, *_ = [*sorted(set(masks), key=lambda m: (m.bit_count(), m)), -1, -1, -1]
    return first, second, third


def class_bits(lexicon: Lexicon) -> dict[str, int]:
    """One bit a class."""
    return {name: 1 << number for number, name in enumerate(sorted(lexicon.symbols))}


def symbol_masks(lexicon: Lexicon) -> dict[str, int]:
    """The bits of every symbol's classes."""
    bits = class_bits(lexicon)
    return {symbol: sum(bits[name] for name in found) for symbol, found in lexicon.classes.items()}


def _required(pattern: str) -> list[list[str]]:
    """The classes a pattern cannot do without: those outside alternatives, options and look-aheads."""
    plain = re.sub(r"\(\?[:!][^()]*\)\??|\(\?![^()]*\)", "", pattern.replace("@AGE", ""))
    plain = re.sub(r"[TOS]\([^()]*\)\?|<[^<>]*>\?", "", plain)
    return [
        names.split("|") for names in _CLASSES.findall(_MACRO.sub(lambda m: MACROS.get(m.group(), m.group()), plain))
    ]


def _spread(names: Sequence[str]) -> list[str]:
    return [cls for name in names for cls in MACROS.get(name, name).split("|")]


def _expression(lexicon: Lexicon, pattern: str) -> str:
    pattern = pattern.replace("@AGE", "(?:<number>(?:_1<number>)?[,_]?<age-unit>|<age>)")
    pattern = _MACRO.sub(lambda m: MACROS.get(m.group(), m.group()), pattern)

    def symbols(match: re.Match[str]) -> str:
        found = lexicon.symbols_of(match.group(1).split("|"))
        return f"[{found}]" if found else _NEVER

    def gap(match: re.Match[str]) -> str:
        inside = "[^.?]" if match.group(1) == "~" else "[^.?,:()]"
        return f"{inside}{{0,{match.group(2)}}}?"

    pattern = _MARK.sub(r"(?P<\1>", pattern)
    return re.sub(r"\s+", "", _CLASSES.sub(symbols, _GAP.sub(gap, pattern)))
