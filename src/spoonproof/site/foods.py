"""The food list of a page: each line with its amount in every measure, the rest in the author's words."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

from spoonproof.claims.inflect import plural
from spoonproof.dish import Dish
from spoonproof.model.recipe import Amount, FoodLine
from spoonproof.model.record import replace
from spoonproof.reading.measures import Measures
from spoonproof.site.amounts import Contents, shown
from spoonproof.site.view import FoodItem, Link

RecipeLinks = Callable[[str], Link | None]


def food_items(dish: Dish, links: RecipeLinks) -> tuple[FoodItem, ...]:
    """Every line. ``links`` gives the page of a recipe used as a food, None when it is not published."""
    holds = contents(dish.knowledge.measures(dish.channel.measures))
    bowls = {treatment.line: treatment.bowl for treatment in dish.treatments}
    out = []
    for index, line in enumerate(dish.recipe.foods):
        name, detail = _name_and_detail(line, dish)
        out.append(
            FoodItem(
                name=name,
                shown=shown(_counted(line.amount, name), holds),
                detail=detail,
                # Those that the line itself offers ("or olive oil") stand in its words.
                swaps=tuple(choice.text for choice in line.choices if choice.text != line.text),
                bowl=bowls.get(index) or "",
                recipe=links(line.recipe) if line.recipe else None,
                text=line.text,
            )
        )
    return tuple(out)


def _counted(amount: Amount | None, name: str) -> Amount | None:
    """The amount without a unit that the name says already: "1 bay leaf" is no "1 leaf bay leaf"."""
    words = re.findall(r"\w+", name.lower())
    said = amount is not None and amount.unit and {amount.unit, plural(amount.unit)} & set(words)
    return replace(amount, unit="") if amount is not None and said else amount


def contents(measures: Measures) -> Contents:
    """What a unit of the channel's measures holds, in g or ml; None for counts, pinches and handfuls."""

    def holds(unit: str) -> tuple[str, Fraction] | None:
        measure = measures.units.get(unit)
        if measure is None or measure.kind not in ("mass", "volume") or measure.value is None:
            return None
        return measure.per, measure.value

    return holds


def _name_and_detail(line: FoodLine, dish: Dish) -> tuple[str, str]:
    """The line without its amount, cut at its first comma."""
    text = line.text
    amount = line.amount
    if amount is not None:
        written = dish.recipe.document.at(amount.span)
        at = text.find(written)
        if at >= 0:
            text = text[:at] + " " + text[at + len(written) :]
    text = " ".join(text.split()).strip(" ,")
    if line.recipe:
        other = dish.others.get(line.recipe)
        return (other.title.value if other is not None else line.recipe.replace("-", " ")), ""
    if text.startswith("of ") and amount is not None:
        text = text[3:]
    name, _, detail = text.partition(",")
    return name.strip() or line.name, detail.strip()


def measures_note(system: str, measures: Measures) -> str:
    """What a spoon holds here, for readers from elsewhere."""
    spoons = [measures.units.get(unit) for unit in ("tbsp", "tsp", "cup")]
    if any(spoon is None or spoon.value is None for spoon in spoons):
        return ""
    tbsp, tsp, cup = (round(float(s.value)) for s in spoons if s and s.value)
    return f"Measures as written are {system}: a tablespoon is {tbsp} ml, a teaspoon {tsp} ml, a cup {cup} ml."
