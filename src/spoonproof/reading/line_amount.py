"""The amount of a food line, wherever on the line it stands: before the name, after it, or in two parts."""

from __future__ import annotations

import re
from fractions import Fraction

from spoonproof.model.food import Food
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Amount
from spoonproof.model.record import replace
from spoonproof.model.text import Span
from spoonproof.reading.amount import Reading, amount_at, bracket_at, moved
from spoonproof.reading.amount_again import is_count, measure_at, share_of, sum_of
from spoonproof.reading.faults import fault
from spoonproof.reading.food_name import OF_ONE, FoodName, LineDraft, first_word, skip_spaces
from spoonproof.reading.runs import tokens_of

_TO_TASTE = re.compile(
    r"(?i)[, \t]{0,9}\b(?:(?:as per|according to) (?:your )?taste|to taste|as needed|as required|if needed|optional)\b"
)
_IN_WORDS = re.compile(  # "turmeric – a pinch", "saffron a generous pinch"
    r"(?i)(?:[,:(–—-][ \t]{0,9}|[ \t]{1,3}(?=an? (?:[a-z]{3,8} )?(?:pinch|handful|dash|drop)\b))"
    r"(?P<amount>(?:an?|one|two|half)[ \t])"
)
_PIECE = re.compile(
    r"(?i)[ \t-]{0,9}(?:long |thick |thumb |knob |)(?:piece|length|chunk|knob|strip|stick)s?(?:[ \t]{1,9}of)?(?![\w-])"
)
_APART = re.compile(r"(?i)[,–—-][ \t]{0,9}(?=(?:about|approx|around|roughly|~|≈)?[^\W\d_]{0,9}\.?[ \t]{0,3}\d)")
_DRAINED = re.compile(r"(?i)[ \t]{0,3}(?:when |once )?drained")
_PART_END = re.compile(r"[,;()]")
LAST_WORD = re.compile(r"[^\W\d_]{1,40}$")
_PLUS_LATER = re.compile(r"(?i)[ \t]{0,3},?[ \t]{0,3}(?:\+|(?:and|plus)\b)[ \t]{0,3}(?=[0-9½⅓⅔¼¾]|an?[ \t])")
_IS_FOR = re.compile(r"(?i)[ \t]{0,3}(?:extra|more)?[ \t]{0,3}(?:(?:for|to)[ \t][^,;()]{1,60})?(?=[,;()]|$)")
_EACH = re.compile(r"(?i)[ \t]{0,3}each\b")


def leading_amount(draft: LineDraft) -> Reading | None:
    """The amount at the start, "juice of 1 lemon" included; its words are used up."""
    text = draft.text
    lead = OF_ONE.match(text, first_word(draft))
    reading = amount_at(text, lead.end() if lead is not None else draft.begin, draft.measures)
    if reading is None:
        return None
    long = reading.amount is not None and reading.amount.unit in ("cm", "mm", "inch")
    if long and not _PIECE.match(text, reading.end) and not _names_food(draft, reading.end):
        return None  # "1 cm dice of parsnip": a cut, not an amount; "2 cm ginger" is one
    if reading.amount is not None and (reading.amount.each is not None or reading.amount.unit == "bottle"):
        reading = _without_container(text, reading, reading.amount.each, draft.foods)
    draft.report(reading.problems)
    draft.use(reading.start, reading.end)
    reading = _two_sorts(draft, reading)
    if reading.amount is not None and reading.amount.unit in ("cm", "mm", "inch"):
        piece = _PIECE.match(text, reading.end)
        draft.use(reading.end, piece.end() if piece is not None else reading.end)
    amount = moved(reading.amount, draft.place) if reading.amount is not None else None
    return reading._replace(amount=amount)


_AND_MORE = re.compile(
    r"(?i)[ \t]{0,3}(?P<sort>[^\W\d_]{3,12})?[ \t]{0,3}(?:and|&|\+)[ \t](?=[0-9½]|an?[ \t]|one[ \t])"
)


def _two_sorts(draft: LineDraft, reading: Reading) -> Reading:
    """ "1 red and 1 yellow pepper", "1 small and 2 large carrots": so many of one food together."""
    found = _AND_MORE.match(draft.text, reading.end)
    more = amount_at(draft.text, found.end(), draft.measures, whole=False) if found is not None else None
    if found is None or more is None or more.amount is None or reading.amount is None:
        return reading
    name = draft.foods.match(_before_break(draft.text, more.end))
    head = draft.text[more.end + name.start : more.end + name.end] if name is not None else ""
    sort = found["sort"]
    if name is None or name.start > 1 or not (sort or reading.amount.size):
        return reading
    other = draft.foods.match(f"{sort} {head.split()[-1]}") if sort else name
    one, two = (draft.foods.get(each.food) if each is not None else None for each in (other, name))
    if one is None or two is None or (sort and other is not None and other.end <= len(sort)):
        return reading
    summed = sum_of(reading.amount, more.amount, draft.measures)
    if summed is None or not _sorts_of_one(one, two):
        return reading
    draft.use(found.start(), more.end)
    same = reading.amount.size == more.amount.size
    return reading._replace(amount=replace(summed, size=summed.size if same else ""), end=more.end)


def _sorts_of_one(one: Food, two: Food) -> bool:
    """Red pepper and yellow pepper, not sweet potato and white potato."""
    if (one.parent or one.id) == (two.parent or two.id):
        return True
    last = one.name.split()[-1] == two.name.split()[-1] and one.group == two.group
    return last and one.allergens == two.allergens and len({one.scientific, two.scientific} - {""}) < 2


def later_amount(draft: LineDraft, name: FoodName) -> Amount | None:
    """An amount after the name: "parsnips, 300 g, peeled"; "rapeseed oil: 1 tsp"; "salt, to taste"."""
    text = draft.open_text()
    sizes = draft.measures.cuts.find(text)
    at = 0
    while at < len(text):
        inside = next((cut for cut in sizes if cut.start <= at < cut.end), None)
        if inside is not None:
            at = inside.end
            continue
        number = text[at + 1 : at + 2] if text[at] in "-−" and at >= name.end else text[at]
        starts = number.isnumeric() and (at == 0 or text[at - 1] in " \t(,;:–—-")
        reading = amount_at(text, at, draft.measures) if starts else None
        if reading is not None:
            draft.report(reading.problems)
            draft.use(reading.start, reading.end)
            return moved(reading.amount, draft.place) if reading.amount is not None else None
        at += 1
    for sign in _IN_WORDS.finditer(text, name.end):  # "turmeric – a pinch"; "a carrot" stays what it is
        reading = amount_at(text, sign.start("amount"), draft.measures)
        if reading is not None and reading.amount is not None and reading.amount.unit not in ("", "piece"):
            draft.use(reading.start, reading.end)
            return moved(reading.amount, draft.place)
    taste = _TO_TASTE.search(text)
    if taste is None:
        return None
    draft.use(*taste.span())
    return Amount(Fraction(0), Fraction(0), "", draft.place(*taste.span()), to_taste=True)


def later_measure(draft: LineDraft, amount: Amount, name: FoodName) -> Amount:
    """A weight in brackets after the name: "2 large sweet potatoes (about 500 g)". What the bracket says of the food
    beside it ("100 g peeled") is still to be read."""
    amount = _more_of_it(draft, amount, name)
    text = draft.open_text()
    at = text.find("(", name.end)
    while at != -1:
        found = bracket_at(text, at, draft.measures)
        if found is not None:
            inner, end, each = found
            draft.use(at, inner.span.end)
            draft.use(end - 1, end)
            if each:
                draft.use(inner.span.end, end)
            if amount.each is not None and _DRAINED.match(text, inner.span.end):
                return replace(amount, each=moved(inner, draft.place))
            if is_count(inner, draft.measures) or draft.measures.kind(amount.unit) == "mass" or amount.each is not None:
                return amount
            return share_of(amount, moved(inner, draft.place), each)
        at = text.find("(", at + 1)
    return _weight_apart(draft, amount, name)


def _more_of_it(draft: LineDraft, amount: Amount, name: FoodName) -> Amount:
    """ "40 g butter, plus 25 g for the mash", "2 tbsp oil + 1 tsp to fry": as much again of the same food."""
    text = draft.open_text()
    sign = _PLUS_LATER.search(text, name.end)
    more = amount_at(text, sign.end(), draft.measures, whole=False) if sign is not None else None
    if sign is None or more is None or more.amount is None or amount.to_taste:
        return amount
    after = _IS_FOR.match(text, more.end)
    summed = sum_of(amount, more.amount, draft.measures) if after is not None else None
    if after is None or summed is None:
        return amount
    draft.use(sign.start(), after.end())
    return replace(summed, span=amount.span)


def _weight_apart(draft: LineDraft, amount: Amount, name: FoodName) -> Amount:
    """A weight after a comma or dash beside a count or cups: "1 apple, about 80 g", "4 pork chops, 400 g each"."""
    kind = draft.measures.kind(amount.unit)
    if amount.each is not None or amount.to_taste or kind not in ("count", "volume"):
        return amount
    text = draft.open_text()
    for sign in _APART.finditer(text, name.end):
        found = measure_at(text, sign.end(), draft.measures)
        if found is None:
            continue
        inner, end = found
        if kind == "volume" and draft.measures.kind(inner.unit) != "mass":
            continue
        each = _EACH.match(text, end)
        draft.use(sign.end(), each.end() if each else end)
        return share_of(amount, moved(inner, draft.place), each is not None)
    return amount


def checked_ounces(draft: LineDraft, amount: Amount | None, food: str | None) -> Amount | None:
    """An ounce of a liquid is a weight or a volume: refused, both readings named."""
    if amount is None or food is None or amount.unit != "oz" or "by weight" in draft.text:
        return amount
    record: Food | None = draft.foods.get(food)
    if record is None or record.hardness != "liquid":
        return amount
    message = f"“{draft.document.at(amount.span)}” of a liquid can be ounces by weight or fluid ounces."
    found = fault("ambiguous-unit", draft.document, amount.span, message, "Write fl oz, or g.")
    draft.findings.append(found)
    return None


def part_after(draft: LineDraft, amount: Amount, name: FoodName, food: str | None) -> Amount:
    """ "2 garlic cloves", "3 celery sticks": the unit stands after the name, or closes it."""
    words = tokens_of(draft.text[name.start : name.end])
    closing = draft.measures.unit(words[-1][2]) if len(words) > 1 else None
    record = draft.foods.get(food) if food is not None else None
    if closing is not None and record is not None and any(one.unit == closing for one in record.portions):
        return replace(amount, unit=closing)
    beside = draft.text[name.end :].partition(",")[0]  # not "1 banana, slices"
    for start, end, word in tokens_of(beside)[:1]:
        if beside[:start].strip(" \t-"):
            break  # "2 onions (1 bunch)"
        unit = draft.measures.unit(word)
        if unit is not None and draft.measures.kind(unit) in ("count", "about"):
            draft.use(name.end, name.end + end)
            return replace(amount, unit=unit)
    return amount


def _before_break(text: str, at: int) -> str:
    end = _PART_END.search(text, at)
    return text[at : end.start()] if end is not None else text[at:]


def _names_food(draft: LineDraft, at: int) -> bool:
    """Whether a food's name, and no cut, stands at ``at``."""
    at = skip_spaces(draft.text, at)
    found, cuts = draft.foods.match(_before_break(draft.text, at)), draft.measures.cuts.find(draft.text[at:])
    return found is not None and found.start == 0 and not (cuts and cuts[0].start == 0)


def _without_container(text: str, reading: Reading, each: Amount | None, foods: Foods) -> Reading:
    """ "150 g bottle gourd", "1 bottle gourd": the container is the first word of the food's name."""
    word = LAST_WORD.search(text, reading.start, reading.end)
    if word is None or (each is not None and word.start() < each.span.end):
        return reading
    found = foods.match(_before_break(text, word.start()))
    if found is None or found.start or word.start() + found.end <= word.end():
        return reading
    if each is None:
        assert reading.amount is not None
        end = word.start()
        return reading._replace(amount=replace(reading.amount, unit="piece", span=Span(reading.start, end)), end=end)
    return reading._replace(amount=each, end=each.span.end)
