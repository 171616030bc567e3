"""Foods that a line offers in the place of its own: "butter or olive oil", "white fish (cod, hake or coley)".

Each becomes an ``or:`` choice of the line, so that its allergens and hazards are seen as well.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.model.food import NameMatch
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Amount, FoodLine
from spoonproof.model.record import replace
from spoonproof.reading.amount import amount_at, moved
from spoonproof.reading.food_name import Alternative, FoodName, LineDraft

_LONGEST = 80  # characters between a food and the one that may stand in for it
_MOST_ITEMS = 4  # of "olive, sunflower or vegetable oil"
_MOST_HEAD = 2  # words that may belong to all of them
_MOST_WORDS = 3  # of one item of such a list
_OR = re.compile(r"(?i)[ \t]or[ \t]|(?<=[^\W\d_])[ \t]?/[ \t]?(?=[^\W\d_])")
_SIDE_END = re.compile(r"[;()\[\]–—]")
_RIGHT_END = re.compile(r"[,;()\[\]–—]")
_OFFERS = re.compile(
    r"(?i)\bor\b|(?<![0-9])/(?![0-9])|\be\.?g\b|\bi\.?e\b|\b(?:you can (?:also )?use|such as|can be|could be|may be"
    r"|for example|ideally|preferably|alias|aka|also called)\b"
)
_ADDS = re.compile(r"(?i)\b(?:plus|with|without|in|from|and not|not|no|for)\b")
_OPENS = re.compile(r"[(\[][ \t]{0,3}(?:[^\W\d_]{1,20}[ \t]{1,3}){0,2}$")
_GOES_ON = re.compile(r"(?i)[ \t]{0,3}(?:,|/|,?[ \t]{1,3}(?:or|and))[ \t]{0,3}(?:[^\W\d_]{1,20}[ \t]{1,3}){0,2}$")
_AND_WITH_IT = re.compile(  # "(or plain flour plus ½ tsp baking powder)"
    r"[ \t]{0,3}(?:,?[ \t](?:plus|and|with)|[+&])[ \t]{1,3}"
    r"(?:[0-9½⅓⅔¼¾/.]{1,5}[ \t]?[^\W\d_]{1,12}[ \t]{1,3}(?:of[ \t])?)?"
)
_DENIES = re.compile(r"(?i)\b(?:no|not|never|nor|without|free (?:of|from)|instead of)\b")
_AFTER_OR = re.compile(r"(?i)\bor[ \t]{1,3}")


def shared_head(draft: LineDraft, text: str) -> FoodName | None:
    """ "Beef or chicken stock", "olive, sunflower or vegetable oil": one last word belongs to all of them.

    The first is the line's food; the others are kept in ``draft.offered``. None where the words are foods each.
    """
    found = _OR.search(text)
    if found is None or _in_a_bracket_of_its_own(text, found.start(), draft.foods):
        return None
    end = _RIGHT_END.search(text, found.end())
    last = draft.foods.match(text[found.end() : end.start() if end else len(text)])
    if last is None:
        return None
    name = text[found.end() + last.start : found.end() + last.end]
    words = name.split()
    for count in range(1, min(_MOST_HEAD, len(words) - 1) + 1):  # "oil", then "oil spray"
        shared = _shared(draft, text, " ".join(words[-count:]), found, last)
        if shared is not None:
            return shared
    return None


def _shared(draft: LineDraft, text: str, head: str, found: re.Match[str], last: NameMatch) -> FoodName | None:
    """The food before the "or" that ends in ``head`` as the ``last`` one does; the others are kept as offered."""
    items: list[tuple[int, int, str]] = []
    for start, stop in reversed(_items(text, found.start())):
        match = _with_head(text[start:stop], head, draft.foods)
        if match is None:
            break
        items.append((start + match.start, stop, match.food))
        if items[-1][0] > start and text[start : items[-1][0]].strip():
            break  # "2 tbsp light olive or sunflower oil": the list begins here
    if not items:
        return None
    first = items[-1]
    draft.use(first[0], found.end() + last.end)
    others = [*reversed(items[:-1]), (found.end() + last.start, found.end() + last.end, last.food)]
    draft.offered += [Alternative(a, b, food, first[1]) for a, b, food in others]
    return FoodName(first[0], first[1], first[2])


def _in_a_bracket_of_its_own(text: str, at: int, foods: Foods) -> bool:
    """Whether ``at`` stands in a bracket behind a food: "milk (formula, or whole milk)"."""
    opens = text.rfind("(", 0, at)
    return opens > text.rfind(")", 0, at) and foods.match(text[:opens]) is not None


def _items(text: str, stop: int) -> list[tuple[int, int]]:
    """The parts between commas before ``stop``, back to a bracket; the last few of them."""
    begin = max((found.end() for found in _SIDE_END.finditer(text, 0, stop)), default=0)
    parts: list[tuple[int, int]] = []
    for piece in text[begin:stop].split(","):
        parts.append((begin, begin + len(piece)))
        begin += len(piece) + 1
    return [(a, b) for a, b in parts if text[a:b].strip()][-_MOST_ITEMS:]


def _with_head(item: str, head: str, foods: Foods) -> NameMatch | None:
    """The food that the last words of ``item`` and ``head`` name together, placed in ``item``."""
    words = item.split()
    for count in range(min(_MOST_WORDS, len(words)), 0, -1):
        own = " ".join(words[-count:])
        match = foods.match(f"{own} {head}")
        if match is not None and match.end == len(own) + 1 + len(head) and match.start < len(own):
            place = item.rfind(words[-count]) if count == 1 else item.find(words[-count])
            at = place + match.start
            return NameMatch(at, len(item.rstrip()), match.food)
    return None


def offered_foods(draft: LineDraft, name: FoodName, food: str | None) -> list[Alternative]:
    """Every food that the line offers in the place of its own; its words are used up."""
    found = list(draft.offered)
    text = draft.open_text()
    said = [(word.start, word.end) for word in draft.measures.preparations.find(text)]
    before = max([name.end, *(one.end for one in found)])
    for match in draft.foods.find(text):
        if match.start < before or any(a <= match.start and match.end <= b for a, b in said):
            continue
        if match.food == food and found:
            before = match.end  # "soya milk, because I was out of almond milk"
            continue
        between = draft.text[before : match.start]
        goes_on = bool(found) and (
            _GOES_ON.fullmatch(between) is not None or _with_the_other(draft.text, before, between)
        )
        if len(between) > _LONGEST or _DENIES.search(between) or not (goes_on or _offers(between)):
            break
        own = _of_kind(draft, match, name)
        amount = _own_amount(draft, before, match.start)
        offer = _AFTER_OR.search(draft.text, before, match.start)
        says = offer.start() if offer else match.start
        if own != food:
            found.append(Alternative(match.start, match.end, own, says, amount))
        if offer:
            draft.use(offer.start(), offer.end())
        draft.use(match.start, match.end)
        before = match.end
    return found


def _with_the_other(text: str, before: int, between: str) -> bool:
    """Whether what follows in a bracket goes with the food that the bracket offers."""
    return text.rfind("(", 0, before) > text.rfind(")", 0, before) and _AND_WITH_IT.fullmatch(between) is not None


def _offers(between: str) -> bool:
    offers = list(_OFFERS.finditer(between))
    if offers:
        return _ADDS.search(between, offers[-1].end()) is None
    return _OPENS.search(between) is not None and _ADDS.search(between) is None


def _of_kind(draft: LineDraft, match: NameMatch, name: FoodName) -> str:
    """ "Oil (olive)": the words in the bracket and the name make one name."""
    words = f"{draft.text[match.start : match.end]} {draft.text[name.start : name.end]}"
    whole = draft.foods.match(words)
    return whole.food if whole is not None and whole.end - whole.start == len(words) else match.food


def _own_amount(draft: LineDraft, start: int, end: int) -> Amount | None:
    """ "2 tsp honey or 1 tsp sugar"."""
    after = _AFTER_OR.search(draft.text, start, end)
    reading = amount_at(draft.text, after.end(), draft.measures) if after is not None else None
    if reading is None or reading.amount is None or reading.end > end:
        return None
    draft.use(reading.start, reading.end)
    return moved(reading.amount, draft.place)


def choices_of(
    line: FoodLine, draft: LineDraft, name: FoodName, offered: Sequence[Alternative]
) -> tuple[FoodLine, ...]:
    """The line once more for each food it offers. What stands between the line's own name and the offer belongs to
    its own food alone ("10 grapes, quartered, or 20 g raisins")."""
    choices: list[FoodLine] = []
    for one in offered:
        record = draft.foods.get(one.food)
        plain = record is not None and not record.parent
        food = draft.foods.variant(one.food, line.state) if line.state and plain else one.food
        if food == line.food or any(food == choice.food for choice in choices):
            continue
        own = draft.place(name.end, one.says) if one.says > name.end else None
        inside = [span for _, span in line.prepared if own and own.start <= span.start < own.end]
        choices.append(
            replace(
                line,
                name=draft.text[one.start : one.end],
                name_span=draft.place(one.start, one.end),
                food=food,
                amount=one.amount or line.amount,
                prepared=tuple(pair for pair in line.prepared if pair[1] not in inside),
                cuts=tuple(cut for cut in line.cuts if not (own and own.start <= cut.span.start < own.end)),
                choices=(),
            )
        )
    return tuple(choices)
