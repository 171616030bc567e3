"""In which order dishes open up: provably best where the set is small, good where it is large.

Every new allergen takes ``Gaps.allergen`` days, every other new food ``Gaps.food``, and every dish a day of its own; a
dish for a later age waits for it while the next foods go on. The best order opens the first iron-rich dish as early
as may be, then the allergens, then all dishes (least sum of opening days); ties go by the order given.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from spoonproof.model.record import NamedTuple, dataclass, field

EXACT_MOST = 12
"""Recipes up to which every order is weighed."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A recipe as the calendar sees it: its foods (ids), which of them bring a common allergen, and iron.

    ``allergens`` maps a food id to the allergens it brings; ``iron_rich`` whether it is a good source of iron;
    ``from_months`` the age it is for; ``names`` the foods' names by id, where they differ from the id; ``unfit`` what
    of it is no food for a baby of that age, and ``unknown`` what no record is known of, both in words for people;
    ``traces`` the allergens that a food holds next to nothing of, so that it introduces none.
    """

    slug: str
    title: str
    foods: tuple[str, ...]
    allergens: Mapping[str, tuple[str, ...]]
    iron_rich: bool = False
    from_months: int = 0
    names: Mapping[str, str] | None = None
    unfit: tuple[str, ...] = ()
    unknown: tuple[str, ...] = ()
    traces: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


class Gaps(NamedTuple):
    """Days from one new plain food, and from one new allergen, to the next new one; 0: the same day will do."""

    food: int
    allergen: int


class New(NamedTuple):
    """What a dish brings that is new: plain foods, and foods with a new allergen, each in the dish's order."""

    plain: tuple[str, ...]
    strong: tuple[str, ...]

    def days(self, gaps: Gaps) -> int:
        """Days these take before the dish can be served whole."""
        return len(self.plain) * gaps.food + len(self.strong) * gaps.allergen


def merged(candidates: Sequence[Candidate]) -> dict[str, tuple[str, ...]]:
    """The allergens of every food of every dish."""
    return {food: allergens for one in candidates for food, allergens in one.allergens.items()}


class Had:
    """What a baby knows: foods, and the allergens that came with them."""

    def __init__(self, known: Iterable[str], allergens: Mapping[str, tuple[str, ...]]) -> None:
        """``known``: ids of foods; ``allergens``: those that each food brings."""
        self.foods: set[str] = set()
        self.allergens: set[str] = set()
        self._of = allergens
        self.add(known)

    def things(self, food: str) -> Iterator[tuple[str, str]]:
        """A food and the allergens it brings, each told from the other."""
        yield "food", food
        for allergen in self._of.get(food, ()):
            yield "allergen", allergen

    def add(self, foods: Iterable[str]) -> set[tuple[str, str]]:
        """Foods come to be known; what is new of them, as ``things`` tells it."""
        fresh = {food for food in foods if food not in self.foods}
        brought = {allergen for food in fresh for allergen in self._of.get(food, ())} - self.allergens
        self.foods |= fresh
        self.allergens |= brought
        return {("food", food) for food in fresh} | {("allergen", allergen) for allergen in brought}

    def new_in(self, one: Candidate) -> New:
        """What is new in a dish. An allergen that the baby knows by another food is known."""
        plain: list[str] = []
        strong: list[str] = []
        met: set[str] = set()
        for food in dict.fromkeys(one.foods):
            if food in self.foods:
                continue
            brought = self._of.get(food, ())
            (strong if any(a not in self.allergens and a not in met for a in brought) else plain).append(food)
            met.update(brought)
        return New(tuple(plain), tuple(strong))


def opens_on(one: Candidate, day: int, age_months: int | None) -> int:
    """The day from 1 on which a dish ready on ``day`` can be served to a baby of ``age_months`` on the first day."""
    if age_months is None or one.from_months <= age_months:
        return day
    return max(day, 1 + round((one.from_months - age_months) * 365.25 / 12))


def best_order(
    ordered: Sequence[Candidate], known: frozenset[str], gaps: Gaps, age_months: int | None
) -> tuple[list[Candidate], bool]:
    """The best order, and whether no order is better."""
    if len(ordered) > EXACT_MOST:
        from spoonproof.feeding.calendar_nearest import nearest_first

        return nearest_first(ordered, known, gaps, age_months), False
    return [ordered[index] for index in _weighed(ordered, known, gaps, age_months)], True


class _Way(NamedTuple):
    """One way to have opened a set of dishes: its measure so far, and the day on which the next thing may come."""

    iron: int
    strong: int
    total: int
    order: tuple[int, ...]
    day: int


def _weighed(
    ordered: Sequence[Candidate], known: frozenset[str], gaps: Gaps, age_months: int | None
) -> tuple[int, ...]:
    """All sets of dishes by size; of each set only ways that no other way beats in day and in measure."""
    allergens = merged(ordered)
    ways: dict[int, list[_Way]] = {0: [_Way(0, 0, 0, (), 1)]}
    full = (1 << len(ordered)) - 1
    for done in range(full):
        here = _unbeaten(ways.pop(done))
        had = Had(known.union(*(ordered[i].foods for i in range(len(ordered)) if done >> i & 1)), allergens)
        for index, one in enumerate(ordered):
            if done >> index & 1:
                continue
            new = had.new_in(one)
            for way in here:
                ready = way.day + new.days(gaps)
                opens = opens_on(one, ready, age_months)
                ways.setdefault(done | 1 << index, []).append(
                    _Way(
                        way.iron or (opens if one.iron_rich else 0),
                        way.strong + len(new.strong) * ready,
                        way.total + opens,
                        (*way.order, index),
                        ready + 1,
                    )
                )
    return min(ways[full], key=_measure).order if ordered else ()


def _measure(way: _Way) -> tuple[int, int, int, tuple[int, ...]]:
    return way.iron, way.strong, way.total, way.order


def _unbeaten(ways: list[_Way]) -> list[_Way]:
    """Ways to the same set that may still turn out best: a later day only with a better measure of some kind."""
    kept: list[_Way] = []
    for way in sorted(ways, key=_measure):
        if not any(
            other.day <= way.day and other.iron <= way.iron and other.strong <= way.strong and other.total <= way.total
            for other in kept
        ):
            kept.append(way)
    return kept
