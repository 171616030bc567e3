# ruff: noqa: E501 (one value a line reads better than a page of brackets)
"""Views made by hand: an invented channel with two recipes, as full as a page can be."""

from __future__ import annotations

import csv
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

from spoonproof.model.recipe import Amount
from spoonproof.model.table import Row
from spoonproof.model.text import NOWHERE
from spoonproof.site import amounts, prose
from spoonproof.site.larder import Palette
from spoonproof.site.picture import PlatePart, draw
from spoonproof.site.shapes import to_svg
from spoonproof.site.view import (
    Allergen,
    Bar,
    Caution,
    Chapter,
    Citation,
    CorrectionItem,
    Fault,
    Film,
    FoodItem,
    Lane,
    Link,
    MarketLine,
    NutrientRow,
    Nutrients,
    Picture,
    RecipePage,
    Reviewed,
    Run,
    Statement,
    StepItem,
    Timeline,
    Timer,
)
from spoonproof.site.view_site import Calendar, CalendarDay, EntryItem, Listed, RuleItem, Site

THEME = Path(__file__).parents[2] / "site"

_HOLDS = {"g": ("g", Fraction(1)), "kg": ("g", Fraction(1000)), "ml": ("ml", Fraction(1)), "tsp": ("ml", Fraction(5)), "tbsp": ("ml", Fraction(15))}  # fmt: skip


def palette() -> Palette:
    """The theme's food colours."""
    path = THEME / "colours.csv"
    with path.open(encoding="utf-8", newline="") as file:
        rows = [Row(cells, path.name, at) for at, cells in enumerate(csv.DictReader(file), 2)]
    return Palette.from_rows(rows)


def food(low: int | str, unit: str, name: str, detail: str = "", size: str = "", **more: Any) -> FoodItem:
    """A food item with its amounts in every measure."""
    amount = Amount(Fraction(low), Fraction(low), unit, NOWHERE, size=size)
    line = f"{amounts.written(amount, Fraction(1))} {name}{', ' + detail if detail else ''}"
    return FoodItem(name, amounts.shown(amount, _HOLDS.get), detail, text=line, **more)


CITATIONS = (
    Citation(1, "nhs-start-for-life", "NHS Start for Life. Your baby's first solid foods.", "https://www.nhs.uk/"),
    Citation(2, "efsa-iron", "EFSA (2015). Scientific opinion on dietary reference values for iron. EFSA Journal 13(10): 4254.", "http://www.efsa.europa.eu/en/efsajournal/pub/4254"),
    Citation(3, "common-practice", "Common practice in the kitchen, without a published source.", basis="common practice"),
)  # fmt: skip


def lentil_pot() -> RecipePage:
    """A family pot with a baby's portion lifted out: every part of the page is used."""
    return RecipePage(
        slug="red-lentil-and-sweet-potato-pot",
        title=(Run("Red lentil and sweet potato pot"),),
        summary=(Run("One pan, two bowls: the baby’s is lifted out soft and unsalted before yours gets its lemon and chilli."),),
        ages="9 to 12 months",
        age_low=9,
        age_high=12,
        texture="lumpy",
        next="Minced with soft pieces from 12 months: mash half of it and leave the rest as it is.",
        portions="4 baby portions of 90 g, and supper for two",
        servings=4,
        portion_grams=90,
        minutes=38,
        hands_on=12,
        season="October to February",
        months=(10, 11, 12, 1, 2),
        paid="",
        allergens=(Allergen("milk", ("yoghurt",)), Allergen("celery", ("stock",), maybe=True)),
        allergen_note="Read the labels of what you buy: recipes of brands change.",
        cautions=(
            Caution("Stay with your baby while they eat, sitting upright.", (1,)),
            Caution("No salt in the pot before the baby’s portion is out, and a stock without salt.", (1,)),
            Caution("Lift out any bay leaf, and check the tomato for skin: thin skins stick.", (3,)),
        ),
        every_meal=(Caution("Learn what to do when a baby chokes.", (1,)), Caution("Your baby decides how much.", (1,))),
        foods=(
            food(150, "g", "red lentils", "rinsed"),
            food(400, "g", "sweet potato", "peeled, 1 cm dice", swaps=("400 g carrot, 5 mm dice (cook it 8 minutes longer)",)),
            food(1, "tin", "chopped tomatoes", "no salt added"),
            food(700, "ml", "vegetable stock", "no salt added", recipe=Link("Galley stock", "recipes/parsnip-and-pear-spoon-mash.html")),
            food(1, "tbsp", "rapeseed oil"),
            food(2, "", "celery", "very finely chopped", size="small"),
            food("1/2", "tsp", "ground cumin"),
            food(4, "tbsp", "plain yoghurt, full fat", allergens=("milk",)),
            food(1, "", "lemon", "juice only", bowl="family"),
            food(1, "pinch", "chilli flakes", bowl="family"),
        ),
        systems=amounts.SYSTEMS,
        scales=amounts.SCALES,
        steps=(
            StepItem(1, (Run("Warm the oil in a wide pan and soften the celery in it for 5 minutes, lid on."),), timers=(Timer(300, "5 minutes"),)),
            StepItem(2, (Run("Stir in the cumin, then the lentils, sweet potato, tomatoes and stock."),)),
            StepItem(3, (Run("Simmer for 22–25 minutes, until a cube of sweet potato squashes between finger and thumb."),), timers=(Timer(1320, "22 to 25 minutes"),)),
            StepItem(4, (Run("Lift out the baby’s portion, about 360 g."),), splits=True),
            StepItem(5, (Run("Mash the baby’s portion roughly with a fork, stir in the yoghurt and let it cool until it is just warm."),), bowl="baby"),
            StepItem(6, (Run("Season the rest with lemon, chilli and salt, and let it bubble for 3 minutes more."),), bowl="family", timers=(Timer(180, "3 minutes"),)),
        ),
        timeline=Timeline(
            38,
            (
                Lane("celery", (Bar(3, 8, "soften", "heat"), Bar(8, 33, "simmer", "heat"))),
                Lane("red lentils", (Bar(0, 2, "rinse", "hands"), Bar(8, 33, "simmer 25 min", "heat"))),
                Lane("sweet potato", (Bar(2, 8, "dice", "hands"), Bar(8, 33, "simmer 25 min", "heat"))),
                Lane("baby’s bowl", (Bar(33, 35, "mash", "hands"), Bar(35, 38, "cool", "cool"))),
                Lane("family’s bowl", (Bar(35, 38, "bubble", "heat"),)),
            ),
            (0, 10, 20, 30, 38),
            (
                "From the start: rinse the lentils and dice the sweet potato while the celery softens.",
                "At 8 minutes: everything goes in and simmers for 25 minutes.",
                "At 33 minutes: the baby’s portion comes out and is mashed; the rest gets its seasoning.",
            ),
        ),
        squash=(
            "Take the biggest cube of sweet potato and press it between finger and thumb: it should give way at once, with no firm middle. If it doesn’t, simmer 5 minutes more and try again.",
            "Touch a spoonful to the inside of your wrist: just warm.",
        ),
        family="What is left makes two bowls. It gets its salt, lemon and chilli only after the baby’s portion is out.",
        nutrients=Nutrients(
            "a portion of 90 g",
            (
                NutrientRow("energy_kcal", "Energy", "104", "kcal", per_100g="115", doubt="", share=None),
                NutrientRow("protein_g", "Protein", "5.1", "g", "4.8 to 5.4", 0.46, "46 %", 1.0, "5.7"),
                NutrientRow("iron_mg", "Iron", "1.4", "mg", "1.2 to 1.6", 0.13, "13 %", 1.0, "1.6"),
                NutrientRow("zinc_mg", "Zinc", "0.7", "mg", "", 0.24, "24 %", 1.0, "0.8"),
                NutrientRow("vitamin_a_rae_ug", "Vitamin A", "310", "µg", "", 1.24, "over 100 %", 1.0, "344"),
                NutrientRow("vitamin_c_mg", "Vitamin C", "5", "mg", "at least; raw stock not counted", 0.25, "at least 25 %", 0.72, "6"),
                NutrientRow("iodine_ug", "Iodine", "not known", "", "no published value for most of the weight", None, "", 0.08, "–"),
            ),
            authority="EFSA",
            age_band="7 to 11 months",
            sources=(2,),
            table_sources=(2,),
            leaves_out="Milk feeds are not counted: they bring most of a baby’s energy at this age.",
            assumed=("The stock is counted as water.", "The yield is computed: nobody has weighed this pot yet."),
        ),
        keeping=(
            Caution("Chill within 1 to 2 hours. In the fridge up to 48 hours, in the freezer up to 1 month.", (1,)),
            Caution("Warm until it steams all through, once only; let it cool and stir before you serve.", (1,)),
        ),
        story=prose.render(
            "Rain on the roof, two rings, one pan. This is the pot we make when the towpath has turned to soup.\n\n"
            "Red lentils melt without any soaking and bring **iron** to the bowl. The sweet potato makes it sweet enough "
            "that nobody asks where the salt went.\n\n## If the lumps come back on the spoon\n\nThat is practice, not "
            "refusal. Mash a little more, wait a few days, and try again; see [first textures](https://www.nhs.uk/).",
            [(162, 1)],
        ),
        statements=(
            Statement(
                1,
                "Red lentils … bring iron to the bowl",
                "the story",
                "true",
                "It holds.",
                "A portion has 1.4 mg of iron, about an eighth of the reference intake at this age.",
                "",
                (MarketLine("EU", "would not be allowed as “source of iron”: 1.6 mg in 100 g is under the 15 % that the words need"), MarketLine("US", "editorial speech that the food law does not reach")),
                (2,),
            ),
            Statement(2, "sweet enough that nobody asks", "the story", "unproven", "We can’t show it, so we say it as our own experience.", "It is about taste, and taste differs.", "we find it sweet enough", (), (3,)),
        ),
        citations=CITATIONS,
        checked="2026-11-20",
        published="2026-11-02",
        changed="2026-11-20",
        review=Reviewed("M. Okafor, home economist", "2026-11-10", "2", False),
        corrections=(CorrectionItem("2026-11-18", "simmer 12 minutes", "22 to 25 minutes: at 12 the cubes still had a firm middle."),),
        film=Film("https://video.example/watch?v=pot", "the pot being made", uploaded="2026-11-02", seconds=92, chapters=(Chapter(0, 10, "Two bowls from one pan"), Chapter(10, 60, "Into the pan"), Chapter(60, 92, "Squash test"))),
        drawing=Picture("pictures/red-lentil-and-sweet-potato-pot.svg", 960, 720, "Drawing: an enamel bowl of orange stew with soft lumps, seen from above"),
        social=(Picture("pictures/red-lentil-and-sweet-potato-pot-16x9.png", 1200, 675, "Drawing: an enamel bowl of orange stew"),),
        renamed_from=("lentil-pot",),
        author="Ines and Rob",
        words="red lentils sweet potato tomatoes stock celery cumin yoghurt lemon chilli",
    )  # fmt: skip


def pear_mash() -> RecipePage:
    """A small recipe with little on it: most optional parts are missing."""
    return RecipePage(
        slug="parsnip-and-pear-spoon-mash",
        title=(Run("Parsnip and pear spoon-mash"),),
        summary=(Run("Sweet roots, ripe fruit, a fork."),),
        ages="7 to 9 months",
        age_low=7,
        age_high=9,
        texture="mashed",
        portions="9 portions of 60 g",
        servings=9,
        minutes=30,
        cautions=(Caution("Stay with your baby while they eat, sitting upright.", (1,)),),
        foods=(
            food(300, "g", "parsnip", "peeled, 1 cm dice"),
            food(2, "", "pears", "peeled, cored, 1 cm dice", size="medium"),
            food(1, "tsp", "rapeseed oil"),
        ),
        systems=amounts.SYSTEMS,
        scales=amounts.SCALES,
        steps=(
            StepItem(1, (Run("Steam the parsnip for 14–16 minutes."),), timers=(Timer(840, "14 to 16 minutes"),)),
            StepItem(2, (Run("Add the pear and steam 4 minutes more, until a cube squashes between finger and thumb."),), timers=(Timer(240, "4 minutes"),)),
            StepItem(3, (Run("Let the steam off for 5 minutes, then mash with the oil."),)),
        ),
        squash=("Press a cube between finger and thumb: it should give way with no firm middle.",),
        citations=CITATIONS[:1],
        drawing=Picture("pictures/parsnip-and-pear-spoon-mash.svg", 960, 720, "Drawing: an enamel bowl of pale mash with fork marks, seen from above"),
        words="parsnip pears rapeseed oil",
    )  # fmt: skip


def site(*pages: RecipePage) -> Site:
    """The invented channel, with these pages where it is to have others than its own."""
    pages = pages or (lentil_pot(), pear_mash())
    return Site(
        title="Lockside Larder",
        base_url="https://lockside-larder.example",
        author="Ines and Rob",
        about="Family pots and first spoons from two rings on a narrowboat: soft enough for the baby, good enough for you.",
        recipes=pages,
        listed=tuple(map(Listed.of, pages)),
        sources=CITATIONS,
        used={"efsa-iron": (Link("Red lentil and sweet potato pot", "recipes/red-lentil-and-sweet-potato-pot.html"),)},
        rules=(RuleItem("too-hard-for-the-age", "baby", "error", "dish", "A food still hard for the age", "A hard cube is a choking risk.\n\nSoftness is judged at the youngest age.", ("nhs-start-for-life",)),),
        entries=(EntryItem("iron-oxygen", "iron", "Iron contributes to normal oxygen transport in the body", "True, for iron in general.", (MarketLine("EU", "allowed with this wording when the food is a source of iron"),), "Iron contributes to normal oxygen transport in the body", ("efsa-iron",), "2026-11-01", "2027-11-01"),),
        calendar=Calendar("One new food at a time; single allergens early in the day. No waiting days are asked for.", (CalendarDay("Day 1", ("parsnip",), Link("Parsnip and pear spoon-mash", "recipes/parsnip-and-pear-spoon-mash.html")), CalendarDay("Day 2", ("red lentils", "milk"), Link("Red lentil and sweet potato pot", "recipes/red-lentil-and-sweet-potato-pot.html"), "milk is an allergen: give it in the morning")),),
        measures="A tablespoon here is 15 ml and a teaspoon 5 ml.",
    )  # fmt: skip


def full_house() -> RecipePage:
    """A page with what the others lack: a film and a photograph of its own, and errors that it owns up to."""
    pot = lentil_pot().film
    assert pot
    film = Film(
        "videos/pot.mp4", "the pot being made", True, "2026-11-02", 92, "videos/pot.vtt",
        pot.chapters, "video/mp4", "videos/pot-chapters.vtt",
    )  # fmt: skip
    photo = Picture(
        "pictures/pot-960.jpg", 960, 640, "The pot", (("pictures/pot-480.jpg", 480), ("pictures/pot-960.jpg", 960))
    )
    faults = (Fault("Line 9: the parsnip is still hard.", "too-hard-for-the-age"),)
    return replace(
        lentil_pot(),
        slug="full-house",
        film=film,
        photos=(photo,),
        unfinished=faults,
        renamed_from=("old-house",),
        paid="Sponsored",
    )


def odd_site() -> Site:
    """A second channel: one page with everything, a row of its own, no calendar."""
    return replace(
        site(full_house()), calendar=None, loosened=("This channel goes by a row of its own for “nhs-fridge”: why.",)
    )


def pictures() -> dict[str, bytes]:
    """The drawings of the two recipes, as files."""
    colours = palette()
    plates = {
        "red-lentil-and-sweet-potato-pot": ("lumpy", (("red lentils", 150), ("sweet potato", 400), ("tomatoes", 200), ("celery", 60))),
        "parsnip-and-pear-spoon-mash": ("mashed", (("parsnip", 300), ("pears", 260), ("rapeseed oil", 5))),
    }  # fmt: skip
    return {
        f"pictures/{slug}.svg": to_svg(draw(slug, texture, [PlatePart(*p) for p in parts], colours)).encode()
        for slug, (texture, parts) in plates.items()
    }
