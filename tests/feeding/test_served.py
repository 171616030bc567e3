"""How a food reaches the bowl: eggs, what stays in the pot, dishes that are cut up, recipes used as foods."""

from __future__ import annotations

import pytest

from spoonproof.feeding.served import Served, line_served
from tests import kitchen
from tests.each import each
from tests.feeding.dishes import dish, hazard_ids


@each(
    ("steps", "runny"),
    [
        (["Boil the eggs for 5 minutes.", "Serve."], True),
        (["Boil the eggs for 10 minutes and mash them."], False),
        (["Scramble the eggs over a low heat and take them off while they are still soft and wet."], True),
        (["Scramble the eggs until nothing is runny and no part is still wet."], False),
        (["Fry the eggs for 3 minutes; the yolks should still wobble."], True),
        (["Fry the eggs for 3 minutes; the yolks ooze."], True),
        (["Crack in the eggs, cover the pan and turn the heat off."], True),
        (["Crack in the eggs, cover, turn the heat off and leave for 12 minutes, until the yolks are firm."], False),
    ],
)
def test_an_egg_is_runny_by_its_words_or_its_minutes(steps: list[str], runny: bool) -> None:
    assert bool({"runny-egg", "raw-egg"} & hazard_ids(dish("12-24", ["2 eggs"], steps))) is runny


def test_what_is_lifted_out_leaves_its_salt_and_iodine_behind() -> None:
    steps = ["Simmer the kombu and the noodles in the water for 8 minutes and discard the kombu.", "Chop the noodles."]
    assert "seaweed" in hazard_ids(dish("9-12", ["5 g kombu", "80 g egg noodles", "500 ml water"], steps))
    steps = ["Simmer the bay leaf and the noodles in the water for 8 minutes and discard the bay leaf."]
    assert not hazard_ids(dish("9-12", ["1 bay leaf", "80 g egg noodles", "500 ml water"], steps))


@pytest.mark.parametrize("last", ["Cool and cut into strips.", "Slice into squares.", "Cut into bars."])
def test_cutting_up_a_dish_cuts_no_olive_in_it(last: str) -> None:
    steps = ["Stir the flour, the eggs and the olives together and bake for 25 minutes.", last]
    assert "round-uncut" in hazard_ids(dish("24-36", ["100 g plain flour", "2 eggs", "8 pitted olives"], steps))


def test_a_mayonnaise_stays_raw_while_the_salmon_is_poached() -> None:
    steps = [
        "Whisk the yolk, then whisk in the oil to make a mayonnaise.",
        "Poach the salmon for 9 minutes and flake it.",
        "Spoon the mayonnaise over the salmon.",
    ]
    foods = ["1 egg yolk", "100 ml rapeseed oil", "150 g boneless salmon fillet"]
    assert "raw-egg" in hazard_ids(dish("12-24", foods, steps))


@pytest.mark.parametrize(
    ("step", "burst"),
    [
        ("Simmer the cherry tomatoes until they burst.", True),
        ("Stir the mushrooms and the cherry tomatoes together.", False),
        ("Spoon the passion fruit pulp over the cherry tomatoes.", False),
    ],
)
def test_only_what_bursts_is_burst(step: str, burst: bool) -> None:
    found = hazard_ids(dish("24-36", ["100 g cherry tomatoes", "100 g mushrooms, sliced", "1 passion fruit"], [step]))
    assert ("round-uncut" not in found) is burst


def test_small_balls_that_nothing_flattens_are_a_shape() -> None:
    foods = ["100 g pitted dates", "60 g rolled oats"]
    assert "rolled-ball" in hazard_ids(dish("18-36", foods, ["Blend everything and roll it into small balls."]))
    flat = ["Blend everything and roll it into small balls.", "Press each one flat."]
    assert "rolled-ball" not in hazard_ids(dish("18-36", foods, flat))


def test_a_shape_in_a_recipe_used_as_a_food_is_judged_at_the_ages_of_the_user() -> None:
    clusters, _ = kitchen.read(
        "title: Clusters\nages: 60-72 months\nfoods:\n  - 100 g rolled oats\n  - 40 g hazelnuts\n"
        "steps:\n  - Mix everything and bake for 20 minutes.\n",
        "recipes/clusters.md",
    )
    assert clusters is not None
    head = "ages: 12-24 months\nfoods:\n  - {recipe: clusters, amount: 40 g}\n  - 100 g plain yoghurt\nsteps:\n"
    whole = kitchen.dish(head + "  - Stir the clusters into the yoghurt.\n")
    ground = kitchen.dish(head + "  - Blend the clusters and the yoghurt until smooth.\n")
    for made in (whole, ground):
        made.others = {"clusters": clusters}
    assert "whole-nuts" in {hazard.id for hazard in whole.hazards}
    assert "whole-nuts" not in {hazard.id for hazard in ground.hazards}
    assert 'in "Clusters" that is used here' in next(h for h in whole.hazards if h.id == "whole-nuts").message


def test_an_allergen_of_any_market_is_named() -> None:
    made = dish("9-12", ["1 stick celery, finely chopped", "1 tbsp tahini"], ["Mix."], channel="markets: [US, EU]\n")
    assert [label.word for label in made.allergen_labels] == ["sesame", "celery"]


def test_what_is_served_is_kept_by_whoever_asks_alone() -> None:
    made = dish("9-12", ["100 g strawberries"], ["Mash the strawberries."])
    foods = made.knowledge.foods
    kept: Served = {}
    first = line_served(0, made.recipe, made.treatments, foods, kept)
    assert kept == {0: first}
    assert "mashed" in first
    assert line_served(0, made.recipe, made.treatments, foods, {0: frozenset({"raw"})}) == {"raw"}
    assert "mashed" not in line_served(0, made.recipe, (), foods)


def test_flour_of_a_root_is_no_raw_root() -> None:
    steps = ["Fry the onion for 8 minutes.", "Stir in the flour."]
    assert "hard-raw-chunk" not in hazard_ids(
        dish("12-24", ["1 onion, finely chopped", "2 tbsp coarse cassava flour"], steps)
    )


@pytest.mark.parametrize(
    ("last", "hot"), [("Mash it all.", True), ("Lift the scotch bonnet out and mash the rest.", False)]
)
def test_one_of_the_hottest_chillies_is_lifted_out(last: str, hot: bool) -> None:
    steps = ["Simmer the plantain and the scotch bonnet in the water for 30 minutes, until soft.", last]
    foods = ["2 plantains, peeled, 2 cm dice", "1 scotch bonnet", "400 ml water"]
    assert ("hot-chilli" in hazard_ids(dish("7-12", foods, steps))) is hot


def test_marbles_are_small_balls_whatever_they_are_made_of() -> None:
    foods = ["100 g ground almonds", "100 g dates, stoned and chopped"]
    steps = ["Blend the dates with the almonds.", "Roll into marbles and chill."]
    assert "rolled-ball" in hazard_ids(dish("24-36", foods, steps))
    assert "rolled-ball" not in hazard_ids(dish("24-36", foods, [*steps, "Press each one flat."]))


def test_fat_of_an_animal_is_no_meat() -> None:
    foods = ["1 onion, finely chopped", "1 tbsp goose fat"]
    assert "raw-meat-fish" not in hazard_ids(dish("12-24", foods, ["Stir the goose fat and the onion together."]))


def test_what_is_mashed_with_all_that_is_there_leaves_no_bean_whole() -> None:
    foods = ["1 x 400 g tin of butter beans in water, drained", "200 g courgettes, 1 cm dice"]
    steps = ["Simmer the beans and the courgettes for 15 minutes, until soft.", "Mash well, courgettes and all."]
    assert "beans-whole" not in hazard_ids(dish("9-12", foods, steps))
    steps[1] = "Mash the courgettes."
    assert "beans-whole" in hazard_ids(dish("9-12", foods, steps))


def test_flour_and_egg_to_a_soft_dough_leave_no_egg_soft() -> None:
    foods = ["1 egg", "150 g plain flour", "60 ml milk"]
    steps = ["Mix the flour, the milk and the egg to a soft dough.", "Boil small pieces for 5 minutes and halve them."]
    assert "runny-egg" not in hazard_ids(dish("12-24", foods, steps))
    assert "runny-egg" in hazard_ids(dish("12-24", ["1 egg"], ["Poach the egg until the egg is just soft."]))


def test_meat_taken_off_the_drumsticks_is_off_the_bone() -> None:
    foods, first = ["6 chicken drumsticks", "500 ml water"], "Simmer the drumsticks in the water for 45 minutes."
    assert "bones-meat" in hazard_ids(dish("12-24", foods, [first, "Shred the drumsticks finely."]))
    for off in ("Take the meat off the drumsticks and shred it finely.", "Shred the meat from the drumsticks finely."):
        assert "bones-meat" not in hazard_ids(dish("12-24", foods, [first, off])), off


def test_what_is_rolled_round_by_the_teaspoon_is_a_small_ball() -> None:
    foods, steps = (
        ["300 g turkey mince", "1 l water"],
        ["Take a teaspoon at a time and roll each one round.", "Poach for 12 minutes."],
    )
    assert "rolled-ball" in hazard_ids(dish("12-24", foods, steps))
    assert "rolled-ball" not in hazard_ids(dish("12-24", foods, [*steps, "Squash each one flat."]))


def test_meat_in_fine_threads_is_in_no_piece() -> None:
    first = "Roast the duck legs for 2 hours."
    foods = ["2 duck legs"]
    off = "Take the meat off the bones and {}."
    assert "meat-chunk" in hazard_ids(dish("9-12", foods, [first, off.format("put it on the plates")]))
    assert "meat-chunk" not in hazard_ids(dish("9-12", foods, [first, off.format("tease it into thin threads")]))


def test_beans_that_sprout_at_home_are_raw_sprouts() -> None:
    foods = ["100 g green lentils"]
    grown = "Soak the lentils overnight, then rinse them twice a day until they sprout."
    assert "raw-sprouts" in hazard_ids(dish("12-24", foods, [grown, "Scatter the lentils over the rice."]))
    cooked = "Boil the lentils for 20 minutes and mash them."
    assert "raw-sprouts" not in hazard_ids(dish("12-24", foods, [grown, cooked]))


@pytest.mark.parametrize(("line", "in_chunks"), [("80 g lardons", True), ("80 g lardons, finely chopped", False)])
def test_lardons_are_chunks_of_meat(line: str, in_chunks: bool) -> None:
    steps = ["Fry the lardons for 6 minutes.", "Stir in the pasta."]
    assert ("meat-chunk-toddler" in hazard_ids(dish("12-24", [line, "100 g small pasta"], steps))) is in_chunks


@pytest.mark.parametrize(
    ("last", "whole"),
    [
        ("Spread the tortillas with the avocado, scatter on the seeds and roll up. Cut in two.", True),
        ("Chop the seeds. Spread the tortillas with the avocado and scatter them on.", False),
    ],
)
def test_a_roll_cut_in_two_leaves_the_seeds_in_it_whole(last: str, whole: bool) -> None:
    foods = ["4 small corn tortillas", "1 ripe avocado, mashed", "20 g pumpkin seeds"]
    assert ("whole-seeds" in hazard_ids(dish("12-24", foods, [last]))) is whole


@pytest.mark.parametrize(("size", "raw"), [("6 mm", True), ("2 mm", False)])
def test_a_raw_stick_is_small_by_its_thickness_alone_where_it_bends(size: str, raw: bool) -> None:
    foods = [f"150 g kohlrabi, peeled, {size} sticks", "2 tbsp yoghurt"]
    found = hazard_ids(dish("12-24", foods, ["Toss the kohlrabi with the yoghurt."]))
    assert ("raw-stick" in found) is raw


@pytest.mark.parametrize(
    ("line", "drunk"), [("200 ml whole milk, or oat drink", False), ("200 ml whole milk, to drink", True)]
)
def test_a_swap_called_a_drink_is_not_poured(line: str, drunk: bool) -> None:
    foods = ["40 g porridge oats", line]
    found = hazard_ids(dish("7-9", foods, ["Simmer the oats in the milk for 5 minutes."]))
    assert ("milk-drink" in found) is drunk
