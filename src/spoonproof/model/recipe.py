"""A recipe as its author wrote it, read but not judged."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Literal

from spoonproof.model.finding import Bowl
from spoonproof.model.record import NamedTuple, dataclass
from spoonproof.model.text import NOWHERE, Document, Passage, Span, Text

TextureWord = Literal["smooth", "thick", "mashed", "lumpy", "minced", "soft finger food", "family food"]
TEXTURES: tuple[TextureWord, ...] = ("smooth", "thick", "mashed", "lumpy", "minced", "soft finger food", "family food")

CutShape = Literal[
    "whole", "half", "quarter", "slice", "coin", "dice", "chunk", "baton", "strip", "wedge", "floret",
    "chopped", "shredded", "grated", "minced", "ground", "flaked", "mashed", "puréed", "crumbled", "torn",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class AgeRange:
    """Months from birth, both ends included; ``high`` None is open."""

    low: int
    high: int | None
    span: Span

    @property
    def told(self) -> str:
        """ "from 7 months", "7 to 9 months", "8 months"."""
        if self.high is None:
            return f"from {self.low} months"
        return f"{self.low} to {self.high} months" if self.high != self.low else f"{self.low} months"


class Minutes(NamedTuple):
    """A stated time in minutes, ``low`` equal to ``high`` unless a range was written."""

    low: float
    high: float

    @property
    def told(self) -> str:
        """ "1 minute", "16–20 minutes"."""
        span = f"{self.low:g}" if self.low == self.high else f"{self.low:g}–{self.high:g}"
        return f"{span} {'minute' if self.high == 1 else 'minutes'}"


def _high(time: Minutes) -> float:
    return time.high


@dataclass(frozen=True, slots=True)
class Amount:
    """An amount as written. ``unit`` is a unit id (g, kg, mg, oz, lb, ml, l, tsp, tbsp, cup, fl-oz, pint,
    piece, pinch, dash, handful, bunch, sprig, slice, clove, stick, tin, pack, knob, drop, thumb ...).

    ``size`` is small, medium, large or "" ; ``each`` the mass or volume of one unit where it was written
    ("2 x 400 g tins"); ``about`` when the author hedged; ``to_taste`` when no number was given.
    """

    low: Fraction
    high: Fraction
    unit: str
    span: Span
    size: str = ""
    each: Amount | None = None
    about: bool = False
    to_taste: bool = False


@dataclass(frozen=True, slots=True)
class Cut:
    """How a food is cut: the shape word's id, and its size in mm where it was written."""

    shape: CutShape
    span: Span
    low_mm: float | None = None
    high_mm: float | None = None
    lengthways: bool = False


@dataclass(frozen=True, slots=True)
class FoodLine:
    """One line of ``foods``. Exactly one of ``food`` (a food id) and ``recipe`` (a slug) is set;
    both are None when the name was not found (a finding says so).

    ``name`` is the words that name the food; ``prepared`` the closed words of preparation found
    (peeled, unpeeled, cored, stoned, deseeded, washed, drained, soaked, toasted, melted, cooked, ripe,
    skinned, boned, trimmed, ground, unsalted, ...) each with its span; ``state`` the state asked for
    (raw, cooked, dried, canned, frozen or ""). ``choices`` are the ``or:`` swaps. ``label`` is what
    ``may_contain`` lists. ``span`` covers the whole line.
    """

    text: str
    span: Span
    name: str
    name_span: Span
    amount: Amount | None = None
    food: str | None = None
    recipe: str | None = None
    cuts: tuple[Cut, ...] = ()
    prepared: tuple[tuple[str, Span], ...] = ()
    state: str = ""
    choices: tuple[FoodLine, ...] = ()
    alias: str = ""
    label: tuple[str, ...] = ()
    rest: str = ""  # words that were not understood

    def has(self, *words: str) -> bool:
        """Whether any of these preparation words stands on the line."""
        return any(word in words for word, _ in self.prepared)


@dataclass(frozen=True, slots=True)
class Action:
    """One thing done in a step. ``verb`` is a verb id of the verb table; ``foods`` are indexes into
    ``Recipe.foods`` in the order named; ``everything`` when all that is in the pot is meant;
    ``until`` the words of the end point; ``soft_test`` when that end point is a squash test."""

    verb: str
    span: Span
    foods: tuple[int, ...] = ()
    everything: bool = False
    time: Minutes | None = None
    time_span: Span | None = None
    more: bool = False  # "4 minutes more"
    until: str = ""
    soft_test: bool = False
    heat_c: float | None = None
    covered: bool | None = None
    water_ml: float | None = None
    cuts: tuple[Cut, ...] = ()
    with_liquid: bool = False
    unlisted: tuple[tuple[str, Span], ...] = ()  # ids of foods named here that no line has (never water)
    bowl: Bowl | None = None  # whose bowl this action is about, where one step speaks of both
    last: bool = False  # "for the last 4 minutes": the time lies inside the heat before it
    after: Minutes | None = None  # "after 10 minutes": counted from the start of the heat before it


@dataclass(frozen=True, slots=True)
class Step:
    """One sentence of the method with what was read out of it, and whose bowl it is about.

    ``bowl`` is None while the pot is common, "family" for what happens after the baby's portion
    was lifted out, "baby" for what is done to the baby's portion. ``lifted_at``: where in ``text`` it is
    lifted out (0 where all before it tells what comes behind: "before you salt it, ..."), None in a step that does not.
    """

    index: int
    text: str
    span: Span
    actions: tuple[Action, ...] = ()
    bowl: Bowl | None = None
    lifted_at: int | None = None

    @property
    def splits(self) -> bool:
        """Whether this step lifts out the baby's portion."""
        return self.lifted_at is not None

    @property
    def until(self) -> str:
        """The words of the last end point in it, "" where it has none."""
        return next((action.until for action in reversed(self.actions) if action.until), "")

    @property
    def longest(self) -> Minutes | None:
        """The longest time stated in it."""
        return max((action.time for action in self.actions if action.time is not None), key=_high, default=None)


@dataclass(frozen=True, slots=True)
class Makes:
    """``count`` portions (to ``most``, where a range was written) of ``grams`` each; grams None when only a number was
    written. ``ml``, ``all_grams``: all of it where that was written instead ("900 ml" of a stock): one batch, its
    portions left open."""

    count: int
    grams: float | None
    span: Span
    family: str = ""  # what is left for the family, in the author's words
    ml: float | None = None
    most: int | None = None
    all_grams: float | None = None

    @property
    def in_portions(self) -> bool:
        """Whether it says how many portions there are."""
        return self.ml is None and self.all_grams is None

    @property
    def told(self) -> str:
        """All of it in words, for page and desk alike: "6 portions of 60 g", "900 ml"."""
        if self.ml is not None:
            return f"{self.ml:g} ml"
        if self.all_grams is not None:
            return f"{self.all_grams:g} g"
        count = f"{self.count}–{self.most}" if self.most else f"{self.count}"
        noun = f"{'baby ' if self.family else ''}portion{'' if (self.most or self.count) == 1 else 's'}"
        grams = f" of {self.grams:g} g" if self.grams else ""
        return f"{count} {noun}{grams}" + (f", and {self.family} for the family" if self.family else "")

    @property
    def whole_grams(self) -> float | None:
        """All of it in grams, as it was written; None where only a number or a volume was."""
        return self.all_grams if self.grams is None else self.count * self.grams


@dataclass(frozen=True, slots=True)
class Next:
    """The texture that comes next, from which month, and how."""

    texture: str
    from_months: int | None
    how: str
    span: Span


@dataclass(frozen=True, slots=True)
class Keeps:
    """How long it keeps: hours in the fridge, days in the freezer, hours out of both; None when not said."""

    fridge_hours: float | None
    freezer_days: float | None
    room_hours: float | None
    span: Span


@dataclass(frozen=True, slots=True)
class Trial:
    """A weighed trial: the date as written (ISO), grams on the scale, and whether it squashed."""

    on: str
    grams: float | None
    squash: bool | None
    note: str
    span: Span


@dataclass(frozen=True, slots=True)
class Segment:
    """One segment of the film as the author wrote it; any part may be empty."""

    name: str
    span: Span
    say: Text | None = None
    shot: str = ""
    super: Text | None = None
    step: int | None = None
    runs: float | None = None
    presenter: str = ""


@dataclass(frozen=True, slots=True)
class Film:
    """The author's film block: target seconds and segments in order."""

    span: Span
    runs: float | None = None
    segments: tuple[Segment, ...] = ()
    title: Text | None = None
    description: Text | None = None
    social: Text | None = None


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture: file name, text alternative, and what it shows in the author's words."""

    file: str
    text: Text | None
    shows: tuple[Text, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Video:
    """A finished video of this recipe: its address on the web ("" when it has none), and ``file`` when the page itself
    shows it. ``uploaded`` is an ISO date, ``seconds`` its length, ``captions`` a WebVTT file."""

    url: str
    span: Span
    uploaded: str = ""
    seconds: float | None = None
    captions: str = ""
    file: str = ""


@dataclass(frozen=True, slots=True)
class Correction:
    """A correction kept visible: ISO date, what was said, what holds."""

    on: str
    said: str
    holds: str
    span: Span


@dataclass(frozen=True, slots=True)
class Review:
    """Who looked at which version, and when (ISO)."""

    who: str
    on: str
    version: str
    span: Span


@dataclass(frozen=True, slots=True)
class Recipe:
    """One recipe file, read. Everything carries its span; ``passages`` are all its statements."""

    document: Document
    slug: str
    title: Text
    ages: AgeRange
    foods: tuple[FoodLine, ...]
    steps: tuple[Step, ...]
    texture: Text | None = None
    next: Next | None = None
    makes: Makes | None = None
    season: tuple[Text, ...] = ()
    paid: str = ""
    keeps: Keeps | None = None
    trials: tuple[Trial, ...] = ()
    film: Film | None = None
    pictures: tuple[Picture, ...] = ()
    video: Video | None = None
    corrections: tuple[Correction, ...] = ()
    review: Review | None = None
    renamed_from: tuple[str, ...] = ()
    sources: tuple[Mapping[str, object], ...] = ()
    summary: Text | None = None
    story: str = ""
    story_span: Span = NOWHERE
    draft: bool = False
    published: str = ""  # the day the page went up (ISO), "" when not said
    passages: tuple[Passage, ...] = ()
    keys: Mapping[str, Span] | None = None  # where each key of the head stands

    @property
    def youngest(self) -> int:
        """The month at which hazards are judged."""
        return self.ages.low
