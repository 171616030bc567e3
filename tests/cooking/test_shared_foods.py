"""A food of which two pots take a part, a pan that gets hot for what waits, a mash laid on top."""

from __future__ import annotations

from spoonproof.cooking.treatment import treat
from spoonproof.model.treatment import Treatment
from tests.kitchen import knowledge, read


def told(foods: list[str], steps: list[str]) -> dict[str, Treatment]:
    """What happens to each food, by the last word of its name."""
    written = "foods:\n" + "".join(f"  - {food}\n" for food in foods)
    recipe, _ = read(written + "steps:\n" + "".join(f'  - "{step}"\n' for step in steps))
    assert recipe is not None
    known = knowledge()
    stories = treat(recipe, known.foods, known.verbs, known.cook_times)
    return {recipe.foods[story.line].name.split()[-1]: story for story in stories}


def verbs_of(story: Treatment) -> list[str]:
    return [heat.verb for heat in story.heats]


def test_a_splash_of_the_milk_brings_no_pots_together() -> None:
    got = told(
        ["600 g potatoes, 2 cm dice", "300 g hake fillet", "400 ml milk", "1 bay leaf", "20 g butter"],
        [
            "Boil the potatoes for 20 minutes and mash with a splash of the milk and half of the butter.",
            "Meanwhile poach the hake with the bay leaf in the rest of the milk for 9 minutes.",
            "Strain the milk and flake the hake into it.",
            "Top with the mash and bake for 25 minutes.",
        ],
    )
    assert verbs_of(got["potatoes"]) == ["boil", "bake"]
    assert verbs_of(got["fillet"]) == ["poach", "bake"]
    assert got["leaf"].left_out, "it stays in the strainer"


def test_fat_gets_hot_for_the_batter_that_waits() -> None:
    got = told(
        ["80 g plain flour", "1 egg", "120 ml milk", "90 g raspberries", "10 g butter"],
        [
            "Whisk the flour, the egg and the milk.",
            "Cook the raspberries in a small pan for 5 minutes.",
            "Melt the butter in a frying pan and cook spoonfuls for 3 minutes a side.",
        ],
    )
    assert verbs_of(got["egg"]) == ["cook"] and verbs_of(got["raspberries"]) == ["cook"]
    assert got["egg"].heats[0].step == 2 and got["raspberries"].heats[0].step == 1


def test_with_them_is_what_was_in_the_pan() -> None:
    got = told(
        ["1 onion, chopped", "300 g pork mince", "1 tbsp oil", "400 g passata"],
        [
            "Fry the onion in the oil for 6 minutes. Brown the mince with it.",
            "Add the passata and simmer for 25 minutes.",
        ],
    )
    assert verbs_of(got["onion"])[-1] == verbs_of(got["mince"])[-1] == "simmer"


def test_salt_for_the_grown_ups_is_in_the_pot_only_where_a_step_puts_it_there() -> None:
    foods = ["300 g parsnips, 1 cm dice", "1 tsp salt, for the grown-ups"]
    boil = "Boil the parsnips for 18 minutes and mash."
    assert told(foods, [boil, "Lift out the baby's portion.", "Season the rest."])["salt"].bowl == "family"
    assert told(foods, ["Boil the parsnips with the salt for 18 minutes and mash."])["salt"].bowl is None
