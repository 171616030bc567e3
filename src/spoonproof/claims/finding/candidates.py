"""A second look at a sentence by its words: what the grammar passed over is proposed, a weak find is doubted.

A small linear model, trained by ``training/claims/train.py`` on sentences of our own, weighs the words
of a sentence. It never judges: what it proposes is marked so, judging lets an entry of the register speak against
it, asks for a source otherwise and never passes it as fine; the trail says that it was proposed and
by which words.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from functools import lru_cache

from spoonproof.claims.finding.draft import Draft, Match
from spoonproof.claims.finding.fill import fill
from spoonproof.claims.grammar import Rule
from spoonproof.claims.lexicon import Lexicon
from spoonproof.claims.scan import Tagged
from spoonproof.model.claim import Kind
from spoonproof.model.record import replace

# Set on labelled sentences of others, half of them kept apart: see DEVELOPERS.md. In log odds.
PROPOSE = 6.0
DOUBT = -3.0
# Where the classes of a sentence alone say as little or as much, its words would not change the answer: spared.
_HOPELESS, _SURE = 0.5, 2.0

# What a word is where its class says more than the word: many foods, one way of speaking of them.
CONTENT = (
    ("food", "FOOD"), ("dish", "FOOD"), ("hazard-food", "FOOD"), ("nutrient", "NUTRIENT"),
    ("ambiguous-nutrient", "NUTRIENT"), ("energy", "NUTRIENT"), ("disease", "DISEASE"), ("food-allergy", "ALLERGY"),
    ("allergy", "ALLERGY"), ("effect", "EFFECT"), ("body", "BODY"), ("inner-body", "BODY"), ("age", "AGE"),
    ("allergen-word", "ALLERGY"), ("contaminant", "TOXIN"), ("additive", "ADDITIVE"), ("generic-food", "EATEN"),
    ("audience-baby", "BABY"), ("process", "PROCESS"), ("age-unit", "UNIT"), ("weight-unit", "UNIT"),
    ("unit", "UNIT"), ("household", "UNIT"),
)  # fmt: skip
_WORTH_A_LOOK = frozenset(
    """
    food dish generic-food hazard-food nutrient ambiguous-nutrient nutrient-weak disease disease-weak effect effect-weak
    body inner-body allergy allergy-weak food-allergy solids health healthy loose choking
    """.split()
)
RELATED: Mapping[Kind, frozenset[str]] = {
    "nutrient-content": frozenset("nutrient nutrient-weak ambiguous-nutrient energy additive contaminant".split()),
    "quantity": frozenset("nutrient ambiguous-nutrient energy unit weight-unit percent".split()),
    "comparative": frozenset("nutrient healthier more less healthy digest absorb effect".split()),
    "function": frozenset("effect effect-weak digest absorb body inner-body health weight-verb".split()),
    "disease": frozenset("disease disease-weak invalid remedy anything".split()),
    "general-benefit": frozenset("healthy health health-weak loose loose-weak loose-noun goodfor medicinal".split()),
    "allergen": frozenset("food-allergy allergy allergy-weak reaction allergen-word free-from".split()),
    "safety-age": frozenset("choking choking-weak harmful harmful-weak safe age readiness contaminant solids".split()),
    "process": frozenset("nutrient health health-weak digest absorb disease contaminant process".split()),
}
ALWAYS = "always"  # the feature of every sentence
_ENDING = re.compile(r"(?:ings?|ed|es|s|ly|er|est)$")


@lru_cache(maxsize=8192)
def stem(word: str) -> str:
    """A word without its ending, cut after six letters."""
    return _ENDING.sub("", word)[:6] if len(word) > 4 else word


def _length(words: Sequence[str]) -> str:
    return f"length {min(6, (len(words) + 2) // 6)}"


def _met(named: frozenset[str]) -> list[str]:
    """Pairs of classes that a sentence holds."""
    ordered = sorted(named)
    return [f"{one}&{other}" for at, one in enumerate(ordered) for other in ordered[at + 1 :]]


class WordModel:
    """Weights over a lexicon, unpacked when a sentence first asks for them.

    ``weights`` are {"claim": {feature: weight}, kind: {class: weight}}; empty ones do nothing.
    """

    def __init__(self, lexicon: Lexicon, weights: Mapping[str, Mapping[str, float]]) -> None:
        self._weights = weights
        self._claim: Mapping[str, float] = {}
        self._classes: Mapping[str, float] = {}
        self._met: dict[frozenset[str], float] = {}  # classes that met before, and what that weighed
        self._words = {
            symbol: next((name for cls, name in CONTENT if cls in classes), "")
            for symbol, classes in lexicon.classes.items()
        }
        self._words[lexicon.number_symbol] = "#"

    def second_look(self, tagged: Tagged, present: frozenset[str], found: tuple[Draft, ...]) -> tuple[Draft, ...]:
        """``found`` as it is, nothing where the words speak against a single find, or a proposal where there was none.

        ``present`` are the classes of the sentence.
        """
        if len(found) > 1 or not self._weights or present.isdisjoint(_WORTH_A_LOOK):
            return found
        classes = self.classes_score(present)
        if found:
            return () if classes < _SURE and classes + self.words_score(tagged) < DOUBT else found
        if classes > _HOPELESS and classes + self.words_score(tagged) > PROPOSE:
            return (self._proposal(tagged, present),)
        return ()

    def classes_score(self, present: frozenset[str]) -> float:
        """How surely the classes of a sentence make a claim, in log odds."""
        if not self._claim:
            self._claim = self._weights["claim"]
            self._classes = {name[1:-1]: weight for name, weight in self._claim.items() if name[0] == "<"}
        weigh = self._classes.get
        # Added up exactly, so that the order of a set changes nothing.
        return math.fsum([weigh(name, 0.0) for name in present]) + self._claim.get(ALWAYS, 0.0)

    def words_score(self, tagged: Tagged) -> float:
        """What the words say beside their classes, once ``classes_score`` was asked."""
        weigh, words = self._claim.get, self.words(tagged)
        distinct = {*words, *map(" ".join, zip(["^", *words], [*words, "$"], strict=True)), _length(words)}
        named = frozenset(filter(str.isupper, words))
        return math.fsum([weigh(feature, 0.0) for feature in distinct]) + self._together(named)

    def features(self, tagged: Tagged, present: frozenset[str]) -> set[str]:
        """What is weighed: words and pairs of words (or their classes), classes, classes met together, length."""
        words = self.words(tagged)
        named = frozenset(filter(str.isupper, words))
        pairs = map(" ".join, zip(["^", *words], [*words, "$"], strict=True))
        classes = (f"<{name}>" for name in present)
        return {*words, *pairs, *classes, *_met(named), _length(words), ALWAYS}

    def words(self, tagged: Tagged) -> list[str]:
        """Each item as its class in capitals where that says more, else as its stem."""
        known = self._words
        return [
            known.get(symbol) or stem(item.words) for item, symbol in zip(tagged.items, tagged.symbols, strict=True)
        ]

    def _together(self, named: frozenset[str]) -> float:
        found = self._met.get(named)
        if found is None:
            found = self._met[named] = math.fsum(self._claim.get(pair, 0.0) for pair in _met(named))
        return found

    def kind(self, present: frozenset[str]) -> Kind:
        """The likeliest kind of a sentence with these classes."""
        best: Kind = "function"
        most = -math.inf
        for kind in RELATED:
            weights = self._weights[kind]
            score = math.fsum(weights.get(name, 0.0) for name in (*present, ALWAYS))
            if score > most:
                best, most = kind, score
        return best

    def _proposal(self, tagged: Tagged, present: frozenset[str]) -> Draft:
        kind = self.kind(present)
        heavy = self._heaviest(tagged)
        first = heavy[0]
        related = tagged.find(RELATED[kind])
        target = min(related, key=lambda i: (abs(i - first), i)) if related else first
        match = Match(
            Rule("word-model", kind, "", says="proposed by the word model", loose=True),
            min(first, target),
            max(first, target) + 1,
            (first, first + 1),
            (target, target + 1),
            None,
        )
        draft = fill(tagged, match)
        weighed = ", ".join(f"“{tagged.words(i, i + 1)}”" for i in heavy)
        steps = (draft.steps[0], f"words that weighed most: {weighed}", *draft.steps[2:])
        return replace(draft, number=None, effect=None, level=None, nutrients=(), steps=steps, proposed=True)

    def _heaviest(self, tagged: Tagged) -> Sequence[int]:
        """The three items that speak most for a claim, the heaviest first."""
        weights, words = self._claim, self.words(tagged)
        pairs = [weights.get(f"{a} {b}", 0.0) / 2 for a, b in zip(["^", *words], [*words, "$"], strict=True)]
        own = [weights.get(word, 0.0) + pairs[i] + pairs[i + 1] for i, word in enumerate(words)]
        said = [i for i, word in enumerate(words) if word[0].isalnum()] or list(range(len(words)))
        return sorted(said, key=lambda i: (-own[i], i))[:3]
