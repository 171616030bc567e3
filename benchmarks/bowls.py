"""Recipes for measuring: varied (foods, amounts, ages, statements, film), each with a story, made from a fixed seed.

Beside each lies the same story under the same title as a plain Markdown page, for builders and linters that know no
recipes.
"""

from __future__ import annotations

import random
from pathlib import Path

ROOTS = (
    ("potatoes, peeled, 1 cm dice", "Boil the {} for 20-25 minutes, until a cube squashes between finger and thumb."),
    ("parsnips, peeled, 1 cm dice", "Steam the {} for 18-22 minutes, until a cube squashes between finger and thumb."),
    (
        "sweet potatoes, peeled, 1 cm dice",
        "Steam the {} for 18-20 minutes, until it squashes between finger and thumb.",
    ),
    (
        "butternut squash, peeled, 1 cm dice",
        "Steam the {} for 15-20 minutes, until it squashes between finger and thumb.",
    ),
    ("cauliflower, small florets", "Steam the {} for 15-18 minutes, until a floret squashes between finger and thumb."),
    ("courgettes, 1 cm dice", "Steam the {} for 10-12 minutes, until a cube squashes between finger and thumb."),
)
MORE = (
    "frozen peas",
    "red lentils",
    "cooked chickpeas",
    "millet",
    "plain yoghurt",
    "leeks, sliced",
    "broccoli florets",
)
SAID = (
    "{} are a source of vitamin C.", "{} keep well for a day.", "A bowl for a cold day.", "{} boost the immune system.",
    "Give small spoons and wait.", "There is iron in it.", "{} are high in fibre.", "My sister makes it with leeks.",
)  # fmt: skip
PLACES = ("market", "allotment", "back garden", "corner shop", "harbour", "kitchen drawer", "village fair", "old barn")


def recipe(number: int, dice: random.Random) -> tuple[str, str]:
    """The text of a recipe, and its story with its title as a page of any builder."""
    food, step = dice.choice(ROOTS)
    name = food.partition(",")[0]
    other = dice.choice(MORE)
    low = dice.choice((7, 8, 9, 10))
    title = f"{name.capitalize()} with {other.partition(',')[0]}, bowl {number}"
    said = " ".join(dice.choice(SAID).format(name.capitalize()) for _ in range(4))
    story = "\n\n".join(
        f"We found the {name} at the {dice.choice(PLACES)} on day {dice.randrange(1, 400)}, and carried them home past "
        f"the {dice.choice(PLACES)}. {dice.choice(SAID).format(name.capitalize())} Nobody at our table leaves any."
        for _ in range(4)
    )
    head = f"""title: {title}
summary: {name.capitalize()} and {other.partition(",")[0]}, crushed with a fork.
ages: {low}-{low + 3} months
texture: mashed
next: {{texture: lumpy, from: {low + 2} months, how: crush it less}}
makes: 6 x 60 g
foods:
  - {dice.randrange(20, 60) * 10} g {food}
  - {dice.randrange(5, 15) * 10} g {other}
  - {dice.choice((1, 2))} tsp rapeseed oil
steps:
  - {step.format(name)}
  - Add the {other.partition(",")[0]} and simmer for {dice.randrange(18, 26)} minutes more.
  - Mash the {name} with the oil.
keeps: fridge 48 h, freezer 1 month
film:
  segments:
    - {{name: Hook, say: "{said}", shot: the bowl}}
"""
    return f"---\n{head}---\n{story}\n", f"---\ntitle: {title}\ndate: 2026-01-01\n---\n{story}\n"


def make(folder: Path, count: int) -> Path:
    """A channel of ``count`` recipes, with the plain pages beside it in ``content``."""
    dice = random.Random(count)
    (folder / "recipes").mkdir(parents=True)
    (folder / "content").mkdir()
    (folder / "channel.yaml").write_text("title: A thousand bowls\nmeasures: UK\nmarkets: [GB]\n", "utf-8")
    for number in range(count):
        own, plain = recipe(number, dice)
        (folder / "recipes" / f"bowl-{number}.md").write_text(own, "utf-8")
        (folder / "content" / f"bowl-{number}.md").write_text(plain, "utf-8")
    return folder
