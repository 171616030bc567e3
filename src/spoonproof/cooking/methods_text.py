"""Methods side by side, and the order of a pot, in words for the terminal."""

from __future__ import annotations

from spoonproof.cooking.methods import METHOD_WORDS, NUTRIENTS, MethodRow, VitaminsKept, side_by_side
from spoonproof.cooking.order import PotOrder
from spoonproof.cooking.pots import Kitchen
from spoonproof.cooking.softness import CookTimes
from spoonproof.cooking.time_row import STRETCH
from spoonproof.cooking.treatment import cut_when_heated, softens_as
from spoonproof.model.kitchen import Foods, Verbs
from spoonproof.model.recipe import Recipe

FOOTNOTE = (
    "Minutes are a range: always end on a squash test. * published crisp-tender times, stretched "
    f"{STRETCH[0]:g} to {STRETCH[1]:g} times for a baby. Softness comes before vitamins: no method is worth a shorter "
    "time than it needs. Shares kept are what single studies found, each with its method and time; where nothing "
    "stands, nothing was found, which does not mean nothing is kept."
)


def methods_of(
    recipe: Recipe, foods: Foods, verbs: Verbs, times: CookTimes, vitamins: VitaminsKept
) -> tuple[tuple[str, tuple[MethodRow, ...]], ...]:
    """For each food of the recipe that the cook-time table knows: its name and its rows, in the recipe's order."""
    found = []
    for story in Kitchen(recipe, foods, verbs).walk():
        food = story.food
        if food is None or food.hardness not in ("hard", "firm", "leaf", "soft") or not story.heats:
            continue
        name = softens_as(food, times)
        if name:
            found.append((story.line.name, side_by_side(name, cut_when_heated(story), times, vitamins)))
    return tuple(found)


def methods_text(compared: tuple[tuple[str, tuple[MethodRow, ...]], ...]) -> str:
    """The comparison as plain text, a block a food, with the source ids of every line; ends on a line end."""
    if not compared:
        return "Nothing in this recipe has cook times to compare.\n"
    lines: list[str] = []
    for name, rows in compared:
        lines += [name, "-" * len(name)]
        for row in rows:
            lines.append(f"  {METHOD_WORDS[row.method]:<14}{_need(row):<42} to wash: {', '.join(row.pots)}")
            for nutrient in NUTRIENTS:
                for kept in row.kept.get(nutrient, ()):
                    note = f"; {kept.note}" if kept.note else ""
                    lines.append(f"      {nutrient} kept: {kept.words}, {kept.source}{note}")
        lines.append("")
    return "\n".join([*lines, FOOTNOTE]) + "\n"


def _need(row: MethodRow) -> str:
    if row.need is None:
        return "time to soft not known"
    star = "*" if row.need.stretched else ""
    low, high = round(row.need.soft.low), round(row.need.soft.high)
    return f"{low}-{high} min to soft{star} ({', '.join(row.need.sources)})"


def order_text(order: PotOrder) -> str:
    """When each food of a pot goes in, in words: "0 min: parsnips (16 min; 9-24 makes them soft)"."""
    lines = [f"To {METHOD_WORDS.get(order.method, order.method)} together, {order.minutes:g} minutes in all:"]
    for entry in order.entries:
        low, high = round(entry.need.soft.low), round(entry.need.soft.high)
        lines.append(f"  after {entry.at:g} min: {entry.name}, for {entry.minutes:g} min ({low}-{high} makes it soft)")
    lines.append("  until the hardest piece squashes between finger and thumb")
    return "\n".join(lines) + "\n"
