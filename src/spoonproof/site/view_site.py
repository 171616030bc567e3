"""What the templates see around the recipes: the index and its filters, rules, register, calendar, the whole site."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from spoonproof.model.record import NamedTuple, dataclass, field
from spoonproof.site.view import Choice, Citation, Link, MarketLine, RecipePage, href_of


class Listed(NamedTuple):
    """What the lists of a site say of a recipe's page: ``day`` is its own last one, ``former`` the slugs it had before;
    ``owns_up`` where it is published with errors."""

    name: str
    slug: str
    day: str = ""
    checked: str = ""
    owns_up: bool = False
    former: tuple[str, ...] = ()

    @classmethod
    def of(cls, page: RecipePage) -> Listed:
        """What they say of this page."""
        day = page.changed or page.published
        return cls(page.name, page.slug, day, page.checked, bool(page.unfinished), page.renamed_from)

    @property
    def link(self) -> Link:
        """Its name, and the path of its page from the site's root."""
        return Link(self.name, href_of(self.slug))


@dataclass(frozen=True, slots=True)
class Card:
    """One recipe on the index, with the values its filters look at."""

    page: RecipePage
    tokens: tuple[str, ...]  # "age-7", "texture-mashed", "without-milk", "month-11", "within-30"
    words: str


@dataclass(frozen=True, slots=True)
class Filter:
    """A group of the index's filters: the first choice is "any"; exactly one holds, or with ``many`` any number."""

    id: str
    label: str
    choices: tuple[Choice, ...]
    many: bool = False


@dataclass(frozen=True, slots=True)
class RuleItem:
    """A rule of the desk for its reference page."""

    name: str
    area: str
    level: str
    scope: str
    told: str
    why: str
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class EntryItem:
    """An entry of the claims register for its page."""

    id: str
    topic: str
    says: str
    truth: str
    markets: tuple[MarketLine, ...]
    wording: str = ""
    sources: tuple[str, ...] = ()
    checked: str = ""
    due: str = ""


@dataclass(frozen=True, slots=True)
class CalendarDay:
    """A day of the new-foods calendar: "Day 1", what is new, and what is served."""

    day: str
    new: tuple[str, ...]
    served: Link | None = None
    note: str = ""
    allergen: bool = False  # what is new is an allergen, given on its own


@dataclass(frozen=True, slots=True)
class Calendar:
    """The new-foods calendar: its policy in words, its days, what could not be placed."""

    policy: str
    days: Sequence[CalendarDay]
    notes: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Site:
    """The whole channel as pages. ``base_url`` has no slash at its end; "" when the channel gave none. ``listed``: of
    each of its ``recipes`` what lists say; the page is taken out of where it lies each time that it is asked for."""

    title: str
    base_url: str = ""
    language: str = "en-GB"
    author: str = ""
    about: str = ""
    recipes: Sequence[RecipePage] = ()
    listed: Sequence[Listed] = ()
    sources: tuple[Citation, ...] = ()
    used: Mapping[str, Sequence[Link]] = field(default_factory=dict)  # source id -> pages that rest on it
    rules: tuple[RuleItem, ...] = ()
    entries: tuple[EntryItem, ...] = ()
    calendar: Calendar | None = None
    loosened: tuple[str, ...] = ()  # safety rows this channel loosened, with its reasons
    measures: str = ""  # "A tablespoon here is 15 ml."

    def address(self, path: str) -> str:
        """The full address of a path, or the path itself when there is no base."""
        return f"{self.base_url}/{path}" if self.base_url else path
