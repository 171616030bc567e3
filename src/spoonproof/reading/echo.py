"""The reading printed back for a cook: what was written on the left, what was understood on the right."""

from __future__ import annotations

from spoonproof.model.durations import HOURS_FROM, lasting_briefly
from spoonproof.model.kitchen import Foods, Verbs
from spoonproof.model.recipe import Action, Amount, Cut, FoodLine, Minutes, Recipe, Step
from spoonproof.reading.amount_words import show_amount

_WIDTH = 46


def echo(recipe: Recipe, foods: Foods, verbs: Verbs) -> str:
    """The food lines and steps of ``recipe``, each beside what was read out of it, in aligned columns.

    Plain text with a line end after every line; "?" marks what was not understood.
    """
    out = [recipe.title.value, "", "Foods"]
    for line in recipe.foods:
        out += _beside(line.text.strip(), food_words(line, foods))
    out += ["", "Steps"]
    for step in recipe.steps:
        out += _beside(f"{step.index + 1}. {step.text.strip()}", "\n".join(step_words(step, recipe, verbs)))
    return "\n".join(row.rstrip() for row in out) + "\n"


def food_words(line: FoodLine, foods: Foods) -> str:
    """What was read of a food line, in a few words between dots."""
    record = foods.get(line.food) if line.food else None
    name = f"the recipe {line.recipe}" if line.recipe else f"? {line.name}".rstrip()
    parts = [
        amount_words(line.amount) if line.amount is not None else "",
        f"{record.name} [{record.record or record.id}]" if record is not None else name,
        *map(cut_words, line.cuts),
        *dict.fromkeys(word for word, _ in line.prepared),
        f"called {line.alias}" if line.alias else "",
        f"? {line.rest}" if line.rest else "",
        *(f"or {food_words(choice, foods)}" for choice in line.choices),
    ]
    return " · ".join(filter(None, parts))


def amount_words(amount: Amount) -> str:
    """An amount for a reader: "2 medium", "1 tin of 400 g", "about 200 g"."""
    if amount.each is not None and not amount.to_taste:
        each = show_amount(amount.each)
        number = show_amount(Amount(amount.low, amount.high, "piece", amount.span, size=amount.size))
        unit = "" if amount.unit == "piece" else f" {amount.unit}"
        return f"{'about ' if amount.about else ''}{number}{unit} of {each} each"
    return show_amount(amount)


def cut_words(cut: Cut) -> str:
    """A cut for a reader: "dice 10 mm", "quarter lengthways"."""
    words: list[str] = [cut.shape]
    if cut.low_mm is not None and cut.high_mm is not None:
        words.append(f"{_span(cut.low_mm, cut.high_mm)} mm")
    if cut.lengthways:
        words.append("lengthways")
    return " ".join(words)


def step_words(step: Step, recipe: Recipe, verbs: Verbs) -> list[str]:
    """One row an instruction."""
    rows = [_action(action, step, recipe, verbs) for action in step.actions]
    if step.splits:
        rows.insert(0, "the baby's portion is lifted out here")
    return rows or ["? nothing was read out of this"]


def _action(action: Action, step: Step, recipe: Recipe, verbs: Verbs) -> str:
    named = [recipe.foods[i].alias or recipe.foods[i].name for i in action.foods if i < len(recipe.foods)]
    named += ["all that is in the pot"] if action.everything else []
    time = minutes_words(action.time) + (" more" if action.more else "") if action.time is not None else ""
    if action.time is None and (minutes := _assumed(action, verbs)) is not None:
        time = f"? no time, {minutes:g} min assumed"
    until = f"until {action.until}" if action.until else ""
    test = "" if not action.soft_test else " (squash test)" if until else "squash test"
    bowl = action.bowl or (None if step.splits else step.bowl)
    parts = [
        action.verb.replace("-", " "),
        ", ".join(named),
        time,
        f"after {minutes_words(action.after)}" if action.after is not None else "",
        until + test,
        f"{action.heat_c:g} °C" if action.heat_c is not None else "",
        "" if action.covered is None else "covered" if action.covered else "uncovered",
        f"{action.water_ml:g} ml water" if action.water_ml is not None else "",
        *map(cut_words, action.cuts),
        *(f"? {food}, not under foods" for food, _ in action.unlisted),
        f"{bowl}'s bowl" if bowl is not None else "",
    ]
    return " · ".join(filter(None, parts))


def _assumed(action: Action, verbs: Verbs) -> float | None:
    """The minutes the verb table assumes for a heat without a time; None where none is needed."""
    try:
        verb = verbs.get(action.verb)
    except KeyError:
        return None
    return verb.minutes if verb.role == "heat" and action.after is None else None


def minutes_words(time: Minutes) -> str:
    """A time for a reader: "14-16 min", "1 h 30 min", "30 s", "2 days"."""
    if time.low == time.high and time.low >= HOURS_FROM:
        return lasting_briefly(round(time.low))
    if time.high < 1:
        return f"{_span(round(time.low * 60), round(time.high * 60))} s"
    return f"{_span(time.low, time.high)} min"


def _span(low: float, high: float) -> str:
    return f"{low:g}" if low == high else f"{low:g}-{high:g}"


def _beside(left: str, right: str) -> list[str]:
    lefts, rights = _wrap(left, _WIDTH), [row for part in right.split("\n") for row in _wrap(part, 72)]
    height = max(len(lefts), len(rights))
    lefts += [""] * (height - len(lefts))
    rights += [""] * (height - len(rights))
    return [f"  {a:<{_WIDTH}}  {b}" for a, b in zip(lefts, rights, strict=True)]


def _wrap(text: str, width: int) -> list[str]:
    rows: list[str] = []
    row = ""
    for word in text.split():
        if row and len(row) + 1 + len(word) > width:
            rows.append(row)
            row = "  " + word if rows else word
        else:
            row = f"{row} {word}" if row else word
    return [*rows, row] if row or not rows else rows
