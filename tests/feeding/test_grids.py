"""Every danger and its safe twin, in many kitchen wordings: foods by other names, shapes as served, heat and texture.

Each list is crossed with ways of writing it; every third dish of the grid is run.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from tests.each import each
from tests.feeding.dishes import dish, hazard_ids


class Told(NamedTuple):
    """A dish in words, and whether it holds a danger."""

    ages: str
    foods: Sequence[str]
    steps: Sequence[str]
    danger: bool


YOGHURT = "100 g plain full-fat yoghurt"
SERVE = "Serve with the yoghurt."

# A food of the list, what makes a danger of it, and what makes it fit for a baby: no step names it.
SHAPES: tuple[tuple[str, str, Sequence[str], Sequence[str]], ...] = (
    (
        "12-24",
        "100 g grapes",
        ["Halve them.", "Freeze on a tray.", "Quarter the grapes for us and leave the baby's whole."],
        [
            "Quarter them.",
            "Squash each one flat.",
            "Cut lengthways into quarters.",
            "Leave ours whole and quarter hers.",
        ],
    ),
    (
        "12-24",
        "3 pork sausages",
        ["Grill for 15 minutes until cooked through, then slice into rounds."],
        [
            "Grill for 15 minutes until cooked through, peel off the skins and cut lengthways into thin strips.",
            "Bake for 25 minutes until cooked through. Slip off the skins and quarter lengthways.",
        ],
    ),
    (
        "12-24",
        "100 g mild cheddar",
        ["Cut into cubes.", "Chop into chunks.", "Grate it for the family and cube it for her."],
        ["Cut into thin slices.", "Grate finely.", "Cube it for the family and grate it for her."],
    ),
    (
        "10-14",
        "2 carrots, peeled",
        ["Slice into coins and steam for 15 minutes until tender.", "Cut into raw sticks."],
        ["Shred finely on the box grater.", "Cut into batons and steam for 20 minutes until they squash flat."],
    ),
    ("12-24", "60 g almonds", ["Toast and stir in."], ["Grind finely in the spice mill and stir through."]),
    ("12-24", "8 lychees", ["Peel and halve."], ["Peel, take out the stones and quarter lengthways."]),
    ("12-24", "200 g cantaloupe melon", ["Scoop into balls.", "Cut into cubes."], ["Cut into thin slices."]),
    (
        "8-12",
        "400 g tin chickpeas, no added salt, drained",
        ["Warm through for 5 minutes."],
        ["Press each one flat with a fork."],
    ),
    (
        "10-14",
        "250 g chicken breast",
        ["Poach for 20 minutes until cooked through and cut into cubes."],
        ["Bake for 25 minutes at 190 C until cooked through. Pull into fine shreds."],
    ),
    (
        "12-18",
        "250 g minced beef",
        ["Shape into burgers and cook to medium.", "Shape into burgers and cook to 55 C."],
        ["Shape into burgers and grill for 14 minutes until no pink is left."],
    ),
    ("10-14", "2 eggs", ["Boil for 5 minutes for a jammy middle."], ["Boil for 10 minutes, shell and mash."]),
)

# Names that hide a food that is not for a baby yet, and names that only look like one.
HIDDEN = (
    "fish sauce", "shoyu", "white miso", "jaggery", "gulkand", "barley malt", "zabaglione", "raki",
    "homemade mayonnaise", "aioli", "halloumi", "mirin",
    "rose syrup", "mango nectar", "ginger preserve", "rice malt", "sirop de Liège", "piloncillo", "mel de abelha",
)  # fmt: skip
HARMLESS = (
    "coconut milk", "tahini", "rice vinegar", "lemon juice", "ghee", "labneh", "malt vinegar", "asafoetida",
    "nutritional yeast", "mascarpone", "amchur", "unsalted vegetable stock",
)  # fmt: skip
WRITTEN = ("2 tsp {}", "20 g unsalted butter or {}", "1 tbsp {} (optional)", "2 tsp {}, for the glaze")
MASH = ("Steam the sweet potato for 15 minutes until soft.", "Mash everything together.")
POTATO = "400 g sweet potato, peeled, 1 cm dice"


def grid() -> Iterator[Told]:
    """All of it."""
    for ages, food, bad, good in SHAPES:
        for danger, ways in ((True, bad), (False, good)):
            for way in ways:
                yield Told(ages, [food, YOGHURT], [*(f"{one.rstrip('.')}." for one in way.split(". ")), SERVE], danger)
    for danger, names in ((True, HIDDEN), (False, HARMLESS)):
        for name in names:
            for written in WRITTEN:
                yield Told("10-14", [POTATO, written.format(name)], MASH, danger)
            if danger and name in ("homemade mayonnaise", "fish sauce", "shoyu", "mirin", "halloumi"):
                steps = [MASH[0], f"Mash, and finish with a little {name}."]
                yield Told("10-14", [POTATO], steps, danger)


@each("told", list(grid())[::3])
def test_a_danger_is_told_and_its_safe_twin_is_not(told: Told) -> None:
    found = hazard_ids(dish(told.ages, told.foods, told.steps, "lumpy"))
    assert bool(found) == told.danger, found
