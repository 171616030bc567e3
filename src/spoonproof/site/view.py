"""What the templates see: plain, frozen values, already worded, with nothing left to decide or compute.

Text here is raw text (templates escape it); the one field of HTML is ``RecipePage.story``, made by
``site.prose`` from Markdown with raw HTML off.
"""

from __future__ import annotations

from typing import Literal

from markupsafe import Markup

from spoonproof.model.record import NamedTuple, dataclass

NO_MARKUP = Markup("")
Bowl = Literal["", "baby", "family"]


class Run(NamedTuple):
    """A stretch of text; ``why`` is the number of the statement that ends with it, 0 for none."""

    text: str
    why: int = 0


Marked = tuple[Run, ...]


def plain(marked: Marked) -> str:
    """The words alone."""
    return "".join(run.text for run in marked)


def href_of(slug: str) -> str:
    """Where the page of a recipe lies, from the site's root."""
    return f"recipes/{slug}.html"


class Link(NamedTuple):
    """Words and where they lead (relative to the site's root, or a full address)."""

    text: str
    href: str


class Shown(NamedTuple):
    """An amount as shown in one measure system at one scale (both are ids of ``FoodList``)."""

    system: str
    scale: str
    text: str


@dataclass(frozen=True, slots=True)
class FoodItem:
    """One food of the list. ``detail`` is cut and preparation; ``swaps`` what may stand in for it."""

    name: str
    shown: tuple[Shown, ...]
    detail: str = ""
    swaps: tuple[str, ...] = ()
    allergens: tuple[str, ...] = ()
    bowl: Bowl = ""
    recipe: Link | None = None
    text: str = ""  # the author's whole line


class Timer(NamedTuple):
    """A time in a step: seconds of its low end, and how it reads ("14 to 16 minutes")."""

    seconds: int
    label: str


@dataclass(frozen=True, slots=True)
class StepItem:
    """One step in the author's words, numbered from 1."""

    number: int
    text: Marked
    bowl: Bowl = ""
    splits: bool = False
    timers: tuple[Timer, ...] = ()


class Bar(NamedTuple):
    """A stretch on the timeline in minutes; ``kind`` is hands, heat, rest or cool; ``step`` from 1, 0 for none."""

    start: float
    end: float
    label: str
    kind: str
    step: int = 0


class Lane(NamedTuple):
    """A row of the timeline: a food or a pan."""

    name: str
    bars: tuple[Bar, ...]


@dataclass(frozen=True, slots=True)
class Timeline:
    """Cook order as a picture: whole minutes, rows, and the same in sentences for those who can't see it."""

    minutes: int
    lanes: tuple[Lane, ...]
    ticks: tuple[int, ...]
    told: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class NutrientRow:
    """One nutrient of a portion. ``share`` is the part of the reference intake (1 = all of it), None where
    the authority sets none; ``coverage`` 0 to 1; ``doubt`` the range or "at least", in words."""

    key: str
    name: str
    amount: str
    unit: str
    doubt: str = ""
    share: float | None = None
    share_text: str = ""
    coverage: float = 1.0
    per_100g: str = ""


@dataclass(frozen=True, slots=True)
class Nutrients:
    """The portion against a reference intake."""

    portion: str
    rows: tuple[NutrientRow, ...]
    authority: str = ""
    age_band: str = ""
    sources: tuple[int, ...] = ()
    table_sources: tuple[int, ...] = ()
    leaves_out: str = ""
    assumed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution in one sentence with the numbers of its sources; ``local`` when guidance differs by country."""

    text: str
    sources: tuple[int, ...] = ()
    bowl: Bowl = ""


@dataclass(frozen=True, slots=True)
class Allergen:
    """An allergen and the foods that bring it; ``maybe`` when only a label may say so."""

    name: str
    foods: tuple[str, ...]
    maybe: bool = False
    key: str = ""


@dataclass(frozen=True, slots=True)
class MarketLine:
    """What one market's law says of a statement, in words."""

    market: str
    text: str


@dataclass(frozen=True, slots=True)
class Statement:
    """A health statement of the page: its words, both answers, the reason and the sources."""

    number: int
    quote: str
    where: str
    truth: str
    answer: str
    why: str
    wording: str = ""
    markets: tuple[MarketLine, ...] = ()
    sources: tuple[int, ...] = ()
    entry: str = ""
    health: bool = True


@dataclass(frozen=True, slots=True)
class Citation:
    """A source of this page, numbered from 1. ``basis`` is "" when it was read, else how it is known."""

    number: int
    id: str
    text: str
    url: str = ""
    basis: str = ""


class CorrectionItem(NamedTuple):
    """A correction kept visible."""

    on: str
    said: str
    holds: str


class Reviewed(NamedTuple):
    """Who looked at which version, and when; ``lapsed`` when the reviewed part has changed since."""

    who: str
    on: str
    version: str
    lapsed: bool = False


class Fault(NamedTuple):
    """An error that a page owns up to: what is wrong and where, and the name of the rule that says so."""

    text: str
    rule: str = ""


class Chapter(NamedTuple):
    """A chapter of the film: seconds from its start, end, and its name."""

    start: float
    end: float
    name: str


@dataclass(frozen=True, slots=True)
class Film:
    """The finished video. ``local`` when the file is part of the site (``kind`` its media type, ``captions`` and
    ``track``, the chapters, paths of WebVTT files beside it); else only a link is made."""

    url: str
    title: str
    local: bool = False
    uploaded: str = ""
    seconds: float | None = None
    captions: str = ""
    chapters: tuple[Chapter, ...] = ()
    kind: str = ""
    track: str = ""


@dataclass(frozen=True, slots=True)
class Picture:
    """An image file of the site: path from the root, pixel size, text alternative ("" for decoration)."""

    file: str
    width: int
    height: int
    text: str = ""
    larger: tuple[tuple[str, int], ...] = ()  # (path, width) of other sizes


@dataclass(frozen=True, slots=True)
class Choice:
    """One value of a filter or a switch: id for attributes, and its label."""

    id: str
    label: str


@dataclass(frozen=True, slots=True)
class RecipePage:
    """All of one recipe's page. Ages in months, minutes in minutes, grams in grams."""

    slug: str
    title: Marked
    summary: Marked = ()
    ages: str = ""
    age_low: int = 6
    age_high: int | None = None
    texture: str = ""
    next: str = ""
    portions: str = ""
    servings: int | None = None
    portion_grams: float | None = None
    minutes: int | None = None
    hands_on: int | None = None
    cook: int | None = None  # minutes in which something is on the heat
    season: str = ""
    months: tuple[int, ...] = ()  # 1 to 12; empty for all year
    paid: str = ""
    allergens: tuple[Allergen, ...] = ()
    allergen_note: str = ""
    cautions: tuple[Caution, ...] = ()
    every_meal: tuple[Caution, ...] = ()
    foods: tuple[FoodItem, ...] = ()
    systems: tuple[Choice, ...] = ()
    scales: tuple[Choice, ...] = ()
    steps: tuple[StepItem, ...] = ()
    timeline: Timeline | None = None
    squash: tuple[str, ...] = ()
    family: str = ""
    nutrients: Nutrients | None = None
    keeping: tuple[Caution, ...] = ()
    story: Markup = NO_MARKUP
    statements: tuple[Statement, ...] = ()
    citations: tuple[Citation, ...] = ()
    checked: str = ""
    published: str = ""
    changed: str = ""
    review: Reviewed | None = None
    corrections: tuple[CorrectionItem, ...] = ()
    film: Film | None = None
    drawing: Picture | None = None
    photos: tuple[Picture, ...] = ()
    social: tuple[Picture, ...] = ()  # the Open Graph and structured data pictures
    renamed_from: tuple[str, ...] = ()
    unfinished: tuple[Fault, ...] = ()  # said at the top when a page is published with errors
    author: str = ""
    words: str = ""  # what search looks through beside the title

    @property
    def name(self) -> str:
        """The title without marks."""
        return plain(self.title)

    @property
    def href(self) -> str:
        """Path from the site's root."""
        return href_of(self.slug)
