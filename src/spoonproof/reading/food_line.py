"""A food line in a cook's words: amount, food, cut and preparation in any usual order.

The food's name is read first, as long as the table knows it ("ground almonds", "smooth peanut butter");
what the name does not hold is preparation. A name that the table does not know is an error with the
nearest names, never a guess.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.model.finding import Finding
from spoonproof.model.recipe import Amount, Cut, FoodLine
from spoonproof.model.record import replace
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Scalar
from spoonproof.reading.amount import Reading
from spoonproof.reading.asides import (
    choices_of,
    left_over,
    offered_foods,
    second_food,
    shared_head,
    use_denied,
    use_other_amount,
)
from spoonproof.reading.faults import fault
from spoonproof.reading.food_name import FoodName, LineDraft, draft_of, food_name, part_used
from spoonproof.reading.limits import FOOD_LINE_CHARACTERS
from spoonproof.reading.line_amount import (
    LAST_WORD,
    checked_ounces,
    later_amount,
    later_measure,
    leading_amount,
    part_after,
)
from spoonproof.reading.measures import FoundWord
from spoonproof.reading.placing import Page

_LABEL = re.compile(  # "Veg to serve: steamed broccoli"
    r"[ \t]*(?P<words>[^\W\d_]{2,20}(?:[ \t]+[^\W\d_]{2,20}){0,4})[ \t]*:[ \t]+(?=\S)"
)
_KIND = re.compile(r"(?i)[ \t]*(?P<words>veg(?:gies?|etables?)?|fruits?|spices?|herbs?)[ \t]*[-–—][ \t]*(?=[0-9½⅓⅔¼¾])")
_LEFT_OUT = re.compile(r"(?i)[ \t]*[(\[]optional[^()\[\]]{0,40}[)\]][ \t:,–—-]*")
_HOW_LEAN = re.compile(
    r"(?i)\b[0-9]{1,2}[ \t]?(?:%|per cent)[ \t](?:extra[ \t])?lean\b|\b[789][0-9]/[0-9]{1,2}\b"
)  # of meat
_INNER_BRACKET = re.compile(r"(?<=[^(\[]{1})\[[^()\[\]]{1,40}\](?=[^(\[]{0,40}\))")  # "(3 pounds [1.4 kg])"
_FOR_OTHERS = re.compile(  # "salt, for the grown-ups", "to season the adults' bowls"
    r"(?i)\b(?:for|to|on|over|in|into|to [a-z]{3,9}) (?:the |all the |our )?"
    r"(?:grown[ -]?ups?|adults?|parents?|older (?:children|ones|siblings?))\b(?:['’]s?(?: [a-z]{3,12}){0,2})?"
    r"(?!,? (?:and|or|as well as) (?:the )?bab)"
    r"|[,(][ \t]*(?:(?:grown[ -]?ups|adults|parents) only|for the table)\b"
)
_SERVED_WITH = re.compile(r"(?i)\b(?:serve|serving|garnish|optional)\b")
_ROUND = str.maketrans("{}", "()")  # "{optional}", as pages print their notes
_NO_QUOTES = str.maketrans("", "", '“”"')  # “Sugar pie” pumpkin
_STATES = {"canned": "tinned", "dried": "dried", "frozen": "frozen", "cooked": "cooked", "raw": "fresh"}


def read_food_line(scalar: Scalar, page: Page) -> tuple[FoodLine, list[Finding]]:
    """Read one line of ``foods``. Never raises; what could not be read is a finding at its exact span."""
    if len(scalar.value) > FOOD_LINE_CHARACTERS:
        return _too_long(scalar, page.document)
    draft = draft_of(replace(scalar, value=scalar.value.translate(_ROUND)), page)
    label = _LEFT_OUT.match(draft.text) or _LABEL.match(draft.text)
    kind = _KIND.match(draft.text)
    if kind is not None and page.foods.find(draft.text[kind.end() :]):  # "veg – 1 cup cauliflower"
        label = kind
    if label is not None and (not label.groupdict() or not page.foods.find(label["words"])):
        draft.begin = label.end()
        draft.use(0, label.end())
    reading = leading_amount(draft)
    for said in (*_HOW_LEAN.finditer(draft.text), *_INNER_BRACKET.finditer(draft.text)):
        draft.use(said.start(), said.end())
    amount = reading.amount if reading else None
    name = shared_head(draft, draft.open_text()) or food_name(draft)
    if name is None and amount is not None and (name := _unit_is_food(draft, amount)) is not None:
        amount = replace(amount, unit="piece")
    if name is None:
        if draft.findings == [] or reading is None or not draft.open_text().strip(" ,;.()"):
            _say_missing(draft, reading)
        return _line(draft, scalar, amount, None), draft.findings
    if amount is not None and name.food is not None:
        name = _with_its_unit(draft, amount, name)
    if draft.amount_lost:
        amount = None
    elif amount is None and reading is None:
        amount = later_amount(draft, name)
    elif amount is not None:
        amount = later_measure(draft, amount, name)
    if amount is not None and _is_grams(amount):
        written = draft.document.at(amount.span).strip()
        message = f"“{written}” has no unit: it is read as {written} g."
        remedy = f"Write “{written} g”, or say what is counted."
        draft.findings.append(fault("unit-not-said", page.document, amount.span, message, remedy))
        amount = replace(amount, unit="g")
    return _line(draft, scalar, amount, name), draft.findings


_NEVER_COUNTED = 100  # from here on, in whole fives, a number without a unit is a weight ("200 bacon")


def _is_grams(amount: Amount) -> bool:
    plain = amount.unit == "piece" and not amount.size and amount.each is None and not amount.to_taste
    return plain and amount.low == amount.high and amount.low >= _NEVER_COUNTED and amount.low % 5 == 0


def _unit_is_food(draft: LineDraft, amount: Amount) -> FoodName | None:
    """ "2 cloves", "4 rashers": nothing stands after the unit, and the unit's word is a food by itself."""
    word = LAST_WORD.search(draft.text.rstrip(" ."))
    found = draft.foods.match(word[0]) if word is not None else None
    if word is None or found is None or amount.unit == "piece" or draft.open_text().strip(" ."):
        return None
    return FoodName(word.start(), word.end(), found.food)


_ENDS_A_NAME = frozenset(("cube", "leaf", "pod", "sheet", "block", "fillet", "breast", "thigh", "cob", "rasher"))

_POURED = frozenset(("ml", "l", "glass"))


def _with_its_unit(draft: LineDraft, amount: Amount, name: FoodName) -> FoodName:
    """ "1 cube chicken stock", "6 leaves sage": the unit is the last word of the food's own name; "100 ml squash" is
    poured, and no vegetable."""
    record = draft.foods.get(name.food or "")
    hard = record is not None and record.hardness in ("hard", "firm")
    last = "drink" if hard and amount.unit in _POURED else amount.unit
    if (last == amount.unit and amount.unit not in _ENDS_A_NAME) or name.words:
        return name
    words = f"{draft.text[name.start : name.end]} {last}"
    whole = draft.foods.match(words)
    if whole is None or (whole.start, whole.end) != (0, len(words)):
        return name
    return FoodName(name.start, name.end, whole.food)


def _too_long(scalar: Scalar, document: Document) -> tuple[FoodLine, list[Finding]]:
    span = Span(scalar.span.start, min(scalar.span.end, scalar.span.start + 40))
    message = f"This food line has {len(scalar.value)} characters and is not read: a line is one food."
    found = fault("value-too-long", document, span, message, "Give each food a line of its own.")
    return FoodLine(text=scalar.value, span=scalar.span, name="", name_span=span), [found]


_CUTS_IN_NAMES = ("ground", "flaked", "chopped", "minced", "grated", "crumbled", "shredded", "puréed", "mashed")
_WHOLE_OTHER = re.compile(r"(?i)[ \t-]{0,9}(?:milk|grain|wheat|meal|cow|food)")
_PLUS_EXTRA = re.compile(r"(?i)[, \t]{0,9}\bplus (?:a (?:little|bit) )?(?:extra|more)\b[^,;()]*")


def _say_missing(draft: LineDraft, reading: Reading | None) -> None:
    if not draft.text.strip():
        draft.find("food-missing", 0, len(draft.text), "This line is empty.", "Write a food, or take the line out.")
    elif reading is not None:
        message, end = f"“{draft.text.strip()}” is an amount with no food.", max(reading.end, reading.start + 1)
        draft.find("food-missing", reading.start, end, message, "Write what it is an amount of.")
    else:
        message = f"“{draft.text.strip()}” names no food."
        draft.find("food-missing", 0, len(draft.text), message, "Write the food's plain name.")


def _line(draft: LineDraft, scalar: Scalar, amount: Amount | None, name: FoodName | None) -> FoodLine:
    """Put the line together: cuts, preparation, state, and what is left over."""
    food = name.food if name is not None else None
    if name is not None and amount is not None and amount.unit == "piece" and not amount.to_taste:
        amount = part_after(draft, amount, name, food)
    offered = offered_foods(draft, name, food) if name is not None else []
    _use_what_is_beside(draft, name)
    cuts = _cuts(draft, name)
    parts, pressed = part_used(draft, name) if name is not None else ([], None)
    prepared, states = _prepared(draft, name)
    prepared += parts
    food = pressed or food
    if (served := _SERVED_WITH.search(draft.text, 0, draft.begin)) is not None:
        prepared.append(("optional", draft.place(served.start(), served.end())))
    if (others := _FOR_OTHERS.search(draft.text)) is not None:
        prepared.append(("for-others", draft.place(*others.span())))
        draft.use(*others.span())
    food, state = _with_states(draft, name, food, states, amount)
    amount = checked_ounces(draft, amount, food)
    second_food(draft, food)
    line = FoodLine(
        text=scalar.value,
        span=scalar.span,
        name=(name.words or draft.text[name.start : name.end]).translate(_NO_QUOTES) if name is not None else "",
        name_span=draft.place(name.start, name.end) if name is not None else draft.place(0, 0),
        amount=amount,
        food=food,
        cuts=cuts,
        prepared=tuple(prepared),
        state=state,
        rest=left_over(draft),
    )
    return replace(line, choices=choices_of(line, draft, name, offered)) if name and offered else line


def _use_what_is_beside(draft: LineDraft, name: FoodName | None) -> None:
    """A second measure, what is said not to be in it, "plus extra to serve": said, and nothing to weigh or cut."""
    if name is not None:
        use_other_amount(draft, name.end)
    use_denied(draft)
    if (extra := _PLUS_EXTRA.search(draft.open_text())) is not None:
        draft.use(extra.start(), extra.end())


def _with_states(
    draft: LineDraft, name: FoodName | None, food: str | None, states: Sequence[FoundWord], amount: Amount | None
) -> tuple[str | None, str]:
    """The food in the state that the words or the tin say, and that state; "" where none is said."""
    said = [(found.word, draft.place(found.start, found.end), found.end > found.start) for found in states]
    if amount is not None and (amount.unit == "tin" or (amount.unit == "jar" and amount.each is not None)):
        said.append(("canned", amount.span, True))
    elif amount is not None and amount.unit in ("carton", "pouch") and _is_pulse(draft, food):
        said.append(("canned", amount.span, True))  # "1 carton borlotti beans": nobody sells dry ones so
    for at, (state, where, apart) in enumerate(said):
        again = any(one[0] == state and one[2] for one in said[:at])  # "leftover roast lamb"
        if name is not None and food is not None and apart and not again:  # a state in the name is told by that
            food = _in_state(draft, food, draft.text[name.start : name.end], state, where)
    return food, said[-1][0] if said else ""


def _is_pulse(draft: LineDraft, food: str | None) -> bool:
    record = draft.foods.get(food or "")
    return record is not None and record.group == "pulse"


def _cuts(draft: LineDraft, name: FoodName | None) -> tuple[Cut, ...]:
    cuts: list[Cut] = []
    text = draft.open_text()
    if name is not None:
        # "ground almonds", "date paste": the cut is part of the name and still a cut; a curry paste was never whole
        record = draft.foods.get(name.food or "")
        is_paste = record is not None and (record.hardness in ("paste", "liquid") or record.name.endswith("paste"))
        for found in draft.measures.cuts.find(draft.text[name.start : name.end]):
            word = draft.text[name.start + found.start : name.start + found.end].lower()
            if found.cut.shape in _CUTS_IN_NAMES and not (is_paste and word == "paste"):
                span = draft.place(name.start + found.start, name.start + found.end)
                cuts.append(replace(found.cut, span=span))
    said = draft.measures.preparations.find(text, ("prepared",))
    for found in draft.measures.cuts.find(text):
        if any(word.start < found.start and found.end <= word.end for word in said):
            continue  # "bones mashed": no cut of the fish
        draft.use(found.start, found.end)
        cuts.append(replace(found.cut, span=draft.place(found.start, found.end)))
    return tuple(cuts)


def _prepared(draft: LineDraft, name: FoodName | None) -> tuple[list[tuple[str, Span]], list[FoundWord]]:
    prepared: list[tuple[str, Span]] = []
    states: list[FoundWord] = []
    for found in draft.measures.preparations.find(draft.text, ("prepared", "state")):
        inside = name is not None and name.start <= found.start and found.end <= name.end
        free = not any(draft.used[found.start : found.end])
        over = name is not None and found.start < name.end and found.end > name.start
        if not (inside or free or (found.word in ("ground", "whole", "packed") and not over)):
            continue  # said of the food, but for these, which a cut may have used up
        if found.word == "whole" and _WHOLE_OTHER.match(draft.text, found.end):
            continue
        if found.kind == "prepared":
            prepared.append((found.word, draft.place(found.start, found.end)))
        else:
            states.append(found if not inside else found._replace(start=0, end=0))
        draft.use(found.start, found.end)
    return prepared, states


def _in_state(draft: LineDraft, food: str, words: str, state: str, where: Span) -> str:
    """The id of ``food`` in a state; a finding at ``where`` when the table has only one that weighs differently."""
    other = draft.foods.variant(food, state)
    record = draft.foods.get(food)
    untinned = record is not None and record.group == "pulse" and record.state in ("raw", "dried")
    if other == food and state == "canned" and untinned:
        other = draft.foods.variant(
            food, "cooked"
        )  # as the table has other tinned beans: figures of the same beans boiled
    named = draft.foods.match(
        f"{_STATES.get(state, state)} {words}"
    )  # "tinned pink salmon", whose fresh one is another food
    same = draft.foods.get(named.food) if named is not None and not named.start else None
    if other == food and same is not None and same.state == state:
        return same.id
    if other != food or record is None or state in ("raw", "frozen") or record.state not in ("raw", "dried"):
        return other
    if record.state != state and record.hardness not in ("liquid", "powder", "paste"):
        message = f"{record.name} is in the food table {record.state} only, not {_STATES.get(state, state)}."
        remedy = f"The figures are those of it {record.state}. Name a record of your choice (usda:...), or weigh it so."
        draft.findings.append(fault("state-not-in-table", draft.document, where, message, remedy))
    return food
