"""A day on which several recipes are filmed: one shopping list, one list of props, all shots by set-up, all twins."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from spoonproof.dish import Dish
from spoonproof.film.lists import COLUMNS, Row, as_csv, by_setup, cells_of, made_ahead
from spoonproof.film.material import material
from spoonproof.film.pages import render
from spoonproof.film.script import Script
from spoonproof.film.writing import write_script
from spoonproof.model.recipe import Amount, FoodLine
from spoonproof.model.record import dataclass, field

_OF_TOOL = {
    "steamer": "steamer with its lid", "ring": "pan with a lid", "blender": "blender", "oven": "baking tray",
    "microwave": "bowl for the microwave",
}  # fmt: skip
_OF_VERB = {
    "mash": "fork or masher", "fork-mash": "fork or masher", "whisk": "whisk", "grate": "grater",
    "press-through": "sieve", "strain": "sieve", "drain": "colander", "rinse": "sieve", "fry": "frying pan",
    "deep-fry": "frying pan", "stir-fry": "frying pan", "saute": "frying pan", "scramble": "frying pan",
    "knead": "board for kneading", "soak": "bowl for soaking",
    "flake": "plate and fork for flaking",
}  # fmt: skip
_OF_PREPARED = {
    "peeled": "peeler",
    "grated": "grater",
    "rinsed": "sieve",
    "drained": "sieve",
    "crushed": "garlic press",
}
_ALWAYS = ("kitchen scales", "baby's bowl and two spoons", "high chair, bib and a cloth")


@dataclass(slots=True)
class Bought:
    """One thing to buy over the day: grams in all (0.0 where a line could not be weighed) and the lines it is in."""

    name: str
    grams: float = 0.0
    weighed: bool = True
    lines: list[tuple[str, str]] = field(default_factory=list)
    amounts: list[Amount | None] = field(default_factory=list)

    @property
    def told(self) -> str:
        """What to buy: how many, or how much of a liquid, where each line says so; else what it weighs."""
        units = {amount.unit if amount is not None and amount.each is None else "" for amount in self.amounts}
        total = sum(amount.high for amount in self.amounts if amount is not None)
        weight = f"{_grams(self.grams)} g{'' if self.weighed else ' and more'}"
        if units == {"ml"}:
            return f"{float(total):g} ml"
        if units == {"piece"}:
            return f"{math.ceil(total)} ({weight})" if self.grams else str(math.ceil(total))
        return weight if self.grams else "see the recipe"


def _grams(grams: float) -> str:
    """Whole grams, of a pinch its tenths: nobody buys 0 g."""
    return f"{grams:.0f}" if grams >= 0.95 else f"{max(grams, 0.1):.1f}"


def day_files(dishes: Sequence[Dish]) -> Mapping[str, bytes]:
    """File name to content: the day's page, its shopping list and its shots."""
    scripts = [write_script(material(dish)) for dish in dishes]
    rows = shots(scripts)
    page = render(
        "day.html",
        language=dishes[0].channel.language,
        channel=dishes[0].channel.title,
        scripts=scripts,
        shopping=shopping(dishes),
        props=props(dishes),
        twins=twins(scripts),
        timetable=timetable(dishes),
        setups=[(name, list(group)) for name, group in groupby(rows, key=lambda row: row[1].shot.setup)],
    )
    shot_rows = as_csv(("film", *COLUMNS), ([title, *cells_of(row)] for title, row in rows))
    files = {"day.html": page, "shopping.csv": _shopping_csv(shopping(dishes)), "shots.csv": shot_rows}
    return {name: text.encode("utf-8") for name, text in files.items()}


def timetable(dishes: Sequence[Dish]) -> list[tuple[str, str, str]]:
    """Clock time, film and work over the day of the channel's kitchen, twins included; [] when they don't all fit.

    A first order, quickly made: ``plan --day`` looks for the shortest one.
    """
    from spoonproof.cooking.day import schedule_day
    from spoonproof.cooking.day_drawing import clock
    from spoonproof.cooking.day_work import day_problem

    channel = dishes[0].channel
    problem = day_problem([dish.plan for dish in dishes], channel.kitchen, channel.day)
    found = schedule_day(problem, channel.day.start, solver=False)
    if found.dropped:
        return []
    titles = {dish.recipe.slug: dish.recipe.title.value for dish in dishes}
    return [
        (clock(found.start + slot.start), titles.get(slot.task.recipe, ""), slot.task.label) for slot in found.slots
    ]


def shopping(dishes: Sequence[Dish]) -> list[Bought]:
    """Every food of the day by name, once, with its weight as bought where it can be worked out; no water."""
    found: dict[str, Bought] = {}
    for dish in dishes:
        grams = {part.line: part.bought.mid for part in dish.facts.ingredients if not part.why}
        for number, line in enumerate(dish.recipe.foods):
            name = _name(dish, line)
            if line.food == "water":
                continue
            item = found.setdefault(line.food or line.recipe or name, Bought(name))
            item.lines.append((dish.recipe.title.value, line.text))
            item.amounts.append(line.amount)
            if grams.get(number):
                item.grams += grams[number]
            else:
                item.weighed = False
    return sorted(found.values(), key=lambda item: item.name.lower())


def _name(dish: Dish, line: FoodLine) -> str:
    if line.recipe is not None:
        other = dish.others.get(line.recipe)
        return f"{other.title.value if other is not None else line.recipe} (cook it first)"
    return line.name or line.text


def props(dishes: Sequence[Dish]) -> list[tuple[str, list[str]]]:
    """Each prop with the titles it is for; what every film needs comes first, with no title."""
    found: dict[str, list[str]] = {name: [] for name in _ALWAYS}
    for dish in dishes:
        for name in dict.fromkeys(_props_of(dish)):
            found.setdefault(name, []).append(dish.recipe.title.value)
    always = [(name, found.pop(name)) for name in _ALWAYS]
    return always + sorted(found.items())


def _props_of(dish: Dish) -> Iterator[str]:
    for line in dish.recipe.foods:
        if line.cuts:
            yield "knife and board"
        yield from (_OF_PREPARED[word] for word, _ in line.prepared if word in _OF_PREPARED)
    for step in dish.recipe.steps:
        if step.splits:
            yield "ladle and a bowl for the baby's portion"
        for action in step.actions:
            verb = dish.knowledge.verbs.get(action.verb)
            if action.verb in _OF_VERB:
                yield _OF_VERB[action.verb]
            elif verb.tool in _OF_TOOL:
                yield _OF_TOOL[verb.tool]


def twins(scripts: Sequence[Script]) -> list[tuple[str, str]]:
    """Everything made ahead, with its film, the longest first: the order in which it is put on."""
    made = [(minutes, script.title, text) for script in scripts for minutes, text in made_ahead(script)]
    return [(title, text) for _, title, text in sorted(made, key=lambda row: -row[0])]


def shots(scripts: Sequence[Script]) -> list[tuple[str, Row]]:
    """Every shot of the day with its film's title, those of one set-up together, in the order they first come."""
    rows = [(script.title, row) for script in scripts for row in by_setup(script)]
    order = list(dict.fromkeys(row.shot.setup for _, row in rows))
    return sorted(rows, key=lambda pair: order.index(pair[1].shot.setup))


def _shopping_csv(items: Sequence[Bought]) -> str:
    rows = []
    for item in items:
        grams = f"{_grams(item.grams)}{'' if item.weighed else ' and more'}" if item.grams else ""
        rows.append([item.name, grams, "; ".join(f"{title}: {text}" for title, text in item.lines)])
    return as_csv(("food", "grams as bought", "for"), rows)
