"""What a statement claims, and how it was judged."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from spoonproof.model.record import dataclass, field
from spoonproof.model.text import Passage, Span

if TYPE_CHECKING:
    from spoonproof.model.finding import SourceRef

Kind = Literal[
    "nutrient-content",
    "quantity",
    "comparative",
    "function",
    "disease",
    "general-benefit",
    "allergen",
    "safety-age",
    "process",
]
Polarity = Literal["asserts", "denies", "hedges", "asks", "refutes"]
Truth = Literal["true", "overstated", "false", "unproven", "unlisted"]
Answer = Literal["yes", "with-wording", "no"]
Advice = Literal["keep", "add", "soften", "cut-untrue", "cut-not-allowed", "source-it"]
Market = Literal["EU", "GB", "US", "Codex"]
Paid = Literal["editorial", "gifted", "affiliate", "sponsored", "own-product"]
PAID: tuple[Paid, ...] = ("editorial", "gifted", "affiliate", "sponsored", "own-product")
Strength = Literal["contains", "mild", "plain", "strong", "absolute"]


UNNAMED = "nothing that is named"
"""Why a claim has no subject, and none is carried to it from before."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """A stated number: ``high`` equals ``value`` unless a range was said.

    ``unit`` as in nutrient keys (g, mg, ug, kcal, kJ) or "%", "x" (times as much), "months" ...;
    ``basis`` what it is said of: "100 g", "portion", "piece", "tbsp", "day", "reference" or "".
    """

    value: float
    high: float
    unit: str
    basis: str = ""


@dataclass(frozen=True, slots=True)
class Claim:
    """One claim found in a passage: ``start``/``end`` are offsets into ``passage.text``.

    ``subjects`` are the words for what it is about ("it" already carried back to its noun);
    ``foods`` and ``nutrients`` the ids the lexicon knows among them and among what it relates to
    (nutrient ids are nutrient keys such as ``iron_mg``); ``effect`` the effect's id in the lexicon
    (``immunity``), None when the lexicon does not know the object; ``trigger`` the words that gave
    it away; ``steps`` how it was found, for the trail; ``sentence`` the sentence (in unpunctuated speech the
    breath) it was found in, as offsets into the passage, None where a claim was not made by the finder.
    """

    passage: Passage
    start: int
    end: int
    kind: Kind
    subjects: tuple[str, ...] = ()
    relates_to: str | None = None
    polarity: Polarity = "asserts"
    strength: Strength = "plain"
    audience: str | None = None
    number: Quantity | None = None
    foods: tuple[str, ...] = ()
    nutrients: tuple[str, ...] = ()
    effect: str | None = None
    level: str | None = None  # contains, source, high, low, free, none, complete, reduced, more, less
    allergens: tuple[str, ...] = ()
    of_dish: bool = False
    trigger: str = ""
    steps: tuple[str, ...] = ()
    sentence: tuple[int, int] | None = None

    @property
    def quote(self) -> str:
        """The words of the claim as the passage has them."""
        return self.passage.text[self.start : self.end]

    @property
    def span(self) -> Span:
        """Where the words stand in the document."""
        return self.passage.span(self.start, self.end)

    def overlaps(self, other: Claim) -> bool:
        """Whether both stand on some of the same words of one passage."""
        return self.passage is other.passage and self.start < other.end and other.start < self.end

    def is_another_danger(self, other: Claim) -> bool:
        """Whether both endanger a baby, each in its own way: almonds and popcorn in one breath are told one by one."""
        return self.effect == other.effect == "danger" and self.relates_to != other.relates_to


@dataclass(frozen=True, slots=True)
class MarketAnswer:
    """What one market's law says: ``bound`` is False where it does not reach this speech."""

    market: Market
    bound: bool
    answer: Answer
    entry: str | None = None
    source: SourceRef | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class JudgedClaim:
    """A claim with both answers: is it true, and may it be said here. Not legal advice."""

    claim: Claim
    truth: Truth
    allowed: tuple[MarketAnswer, ...]
    advice: Advice
    harm: int
    why: str
    wording: str | None = None
    entry: str | None = None
    sources: tuple[SourceRef, ...] = ()
    trail: tuple[str, ...] = field(default=())

    @property
    def stays(self) -> bool:
        """Whether its words may stay, as they are or with something added."""
        return self.advice in ("keep", "add")
