"""A good order of many dishes: always the one that opens soonest, the first iron-rich one before all.

What a dish still brings changes only when one of its foods, or an allergen of theirs, comes to be known, so it is
counted again then and not at every step. The days that new foods take are few different numbers: the dishes of each
stand in a queue of their own, and the soonest of all is first in one of these.
"""

from __future__ import annotations

import heapq
from collections.abc import Callable, Iterator, Sequence
from functools import partial

from spoonproof.feeding.calendar_order import Candidate, Gaps, Had, merged, opens_on
from spoonproof.model.record import NamedTuple

Opening = tuple[int, int]
"""The day on which a dish opens, and its number in the order given: the least of these comes next."""


def nearest_first(
    ordered: Sequence[Candidate], known: frozenset[str], gaps: Gaps, age_months: int | None
) -> list[Candidate]:
    """The dishes of ``ordered``, each the one that opens soonest; ties go by the order given."""
    had = Had(known, merged(ordered))
    bring = _bringing(ordered, had)
    floors = [opens_on(one, 1, age_months) for one in ordered]
    days = [had.new_in(one).days(gaps) for one in ordered]
    queues: dict[int, _Queue] = {}
    left = set(range(len(ordered)))
    for number in left:
        queues.setdefault(days[number], _Queue([], [])).add((floors[number], number))

    def stands(taken: int, number: int) -> bool:
        return number in left and days[number] == taken

    def soonest(day: int) -> Iterator[Opening]:
        for taken, queue in queues.items():
            first = queue.first(day + taken, partial(stands, taken))
            if first is not None:
                yield first

    order: list[Candidate] = []
    day = 1
    iron = [(max(day + days[number], floors[number]), number) for number in left if ordered[number].iron_rich]
    while left:
        _, number = min(iron if iron and not order else soonest(day))
        left.remove(number)
        order.append(ordered[number])
        day += days[number] + 1
        news = had.add(ordered[number].foods)
        for other in {other for new in news for other in bring.get(new, ())} & left:
            fresh = had.new_in(ordered[other]).days(gaps)
            if fresh != days[other]:
                days[other] = fresh
                queues.setdefault(fresh, _Queue([], [])).add((floors[other], other))
    return order


def _bringing(ordered: Sequence[Candidate], had: Had) -> dict[tuple[str, str], list[int]]:
    """The dishes that bring each food, and each allergen, by their numbers."""
    found: dict[tuple[str, str], list[int]] = {}
    for number, one in enumerate(ordered):
        for food in one.foods:
            for thing in had.things(food):
                found.setdefault(thing, []).append(number)
    return found


class _Queue(NamedTuple):
    """Dishes whose new foods take the same number of days: ``waiting`` for their age, the earliest first, and ``come``
    of age, by number. One that has left stays until it would be first."""

    waiting: list[Opening]
    come: list[int]

    def add(self, floor: Opening) -> None:
        """``floor``: the first day by age, and the dish's number."""
        heapq.heappush(self.waiting, floor)

    def first(self, ready: int, holds: Callable[[int], bool]) -> Opening | None:
        """The dish that opens soonest when all of these are ready on day ``ready``, which never goes back."""
        while self.waiting and (self.waiting[0][0] <= ready or not holds(self.waiting[0][1])):
            number = heapq.heappop(self.waiting)[1]
            if holds(number):
                heapq.heappush(self.come, number)
        while self.come and not holds(self.come[0]):
            heapq.heappop(self.come)
        if self.come:
            return ready, self.come[0]
        return self.waiting[0] if self.waiting else None
