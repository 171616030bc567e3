import random

from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.cooking.treatment import treat
from spoonproof.model.recipe import Minutes
from spoonproof.model.treatment import Treatment
from tests.cooking.bench import Larder, food_line, recipe, times, treated, verbs
from tests.kitchen import dish

RANK = {"raw": 0, "hard": 1, "crisp-tender": 2, "maybe-soft": 3, "soft": 4, "spent": 5}


def minutes(treatment: Treatment) -> Minutes | None:
    return treatment.heated_minutes


def test_what_went_in_first_cooks_on_while_later_foods_cook() -> None:
    parsnip, pear, oil = treated(
        ["parsnip, 10 mm dice", "pear, 10 mm dice", "oil"],
        ["Steam the parsnip for 14-16 minutes.", "Add the pear and steam 4 minutes more.", "Mash with the oil."],
    )
    assert minutes(parsnip) == (18, 20)
    assert minutes(pear) == (4, 4)
    assert oil.heats == () and oil.joined == 2
    assert {t.made for t in (parsnip, pear, oil)} == {"mashed"}
    assert pear.joined == 1


def test_inch_pieces_of_a_hard_vegetable_are_not_soft_after_five_to_seven_minutes() -> None:
    for food in ("carrot", "parsnip", "potato", "swede", "sweet potato", "beetroot"):
        (story,) = treated([f"{food}, 25 mm chunk"], [f"Steam the {food} for 5-7 minutes."])
        assert RANK[story.softness] <= RANK["crisp-tender"], food
        assert story.needed is not None and story.needed.low > 7


def test_a_second_pan_cooks_on_its_own() -> None:
    onion, lentils, stock = treated(
        ["onion, 10 mm dice", "red lentils", "stock"],
        [
            "Soften the onion for 10 minutes.",
            "Simmer the red lentils in the stock in another pan for 20 minutes.",
            "Stir the onion into the red lentils and simmer for 5 minutes.",
        ],
    )
    assert minutes(onion) == (15, 15)
    assert minutes(lentils) == (25, 25)
    assert lentils.softness == "soft"
    assert minutes(stock) == (25, 25)


def test_drained_water_is_marked_and_the_water_left_out() -> None:
    potato, water = treated(
        ["potato, 10 mm dice", "water"],
        ["Put the potato and water in a pan.", "Boil for 25 minutes.", "Drain and mash the potato."],
    )
    assert [heat.water for heat in potato.heats] == ["drained"]
    assert water.left_out
    kept = treated(["potato, 10 mm dice", "water"], ["Boil the potato in the water for 25 minutes and mash."])
    assert [heat.water for heat in kept[0].heats] == ["kept"]
    assert not kept[1].left_out


def test_the_familys_additions_are_the_familys() -> None:
    potato, cumin, milk = treated(
        ["potato, 10 mm dice", "cumin", "milk"],
        [
            "Boil the potato for 25 minutes.",
            "Lift out the baby's portion.",
            "[baby] Mash with the milk.",
            "[family] Add the cumin and fry for 5 minutes.",
        ],
    )
    assert (cumin.bowl, milk.bowl, potato.bowl) == ("family", "baby", None)
    assert minutes(potato) == (25, 25), "what the family's pan gets later does not reach the baby's portion"
    assert potato.made == "mashed"


def test_what_is_cut_into_the_pot_is_in_the_pot() -> None:
    potato, carrot, salt = treated(
        ["potato, 10 mm dice", "carrot", "salt"],
        ["Boil the potato for 20 minutes.", "Grate the carrot into the pan and simmer for 8 minutes."],
    )
    assert minutes(carrot) == (8, 8)
    assert minutes(potato) == (28, 28)
    assert salt.joined is None
    (_, apart) = treated(
        ["potato, 10 mm dice", "carrot"],
        ["Boil the potato for 20 minutes.", "Grate the carrot into another bowl.", "Simmer the potato for 2 minutes."],
    )
    assert apart.heats == ()


def test_what_is_only_cut_after_the_split_is_the_familys() -> None:
    steps = ["Boil the potato for 20 minutes.", "Lift out the baby's portion.", "[family] Grate the carrot over it."]
    assert [t.bowl for t in treated(["potato", "carrot"], steps)] == [None, "family"]
    before = ["Grate the carrot.", "Chop the potato.", *steps]
    assert [t.bowl for t in treated(["potato", "carrot"], before)] == [None, None]


def test_added_after_the_heat_stays_raw() -> None:
    _, apple = treated(
        ["porridge oats", "apple, grated"], ["Simmer the porridge oats for 4 minutes.", "Stir in the apple."]
    )
    assert apple.softness == "raw"


def test_oats_soak_or_cook() -> None:
    (soaked,) = treated(["porridge oats"], ["Leave the porridge oats to soak for 10 minutes."])
    (cooked,) = treated(["porridge oats"], ["Simmer the porridge oats for 6 minutes."])
    (neither,) = treated(["porridge oats"], ["Simmer the porridge oats for 1 minutes."])
    assert soaked.soaked_minutes == 10
    assert soaked.softness in ("maybe-soft", "soft")
    assert cooked.softness == "soft"
    assert RANK[neither.softness] < RANK["maybe-soft"]


def test_cut_at_the_time_of_the_heat_counts_not_the_cut_on_the_plate() -> None:
    whole, diced = (
        treated(["beetroot, whole"], ["Steam the beetroot for 20 minutes.", "Dice the beetroot."])[0],
        treated(["beetroot, 10 mm dice"], ["Steam the beetroot for 20 minutes."])[0],
    )
    assert RANK[whole.softness] < RANK[diced.softness]
    assert whole.cuts[-1].shape == "dice"


def test_without_a_time_the_squash_test_decides_and_without_either_nothing_is_said() -> None:
    (tested,) = treated(["carrot, 10 mm dice"], ["Steam the carrot until a piece squashes."])
    (open_ended,) = treated(["carrot, 10 mm dice"], ["Steam the carrot."])
    assert (tested.softness, open_ended.softness) == ("soft", "not-judged")


def test_a_food_the_table_does_not_know_is_not_judged() -> None:
    (durian,) = treated(["durian, 20 mm dice"], ["Steam the durian for 1 minutes."])
    assert durian.softness == "not-judged"


def test_soft_food_in_too_early_is_spent() -> None:
    (spinach,) = treated(["spinach"], ["Steam the spinach for 20 minutes."])
    assert spinach.softness == "spent"


def test_a_food_never_used_has_not_joined() -> None:
    _, left = treated(["potato, 10 mm dice", "leek"], ["Boil the potato for 20 minutes."])
    assert left.joined is None


def test_everything_takes_all_in() -> None:
    stories = treated(
        ["carrot, 5 mm dice", "red lentils", "water"], ["Put everything in the pan.", "Simmer for 40 minutes."]
    )
    assert all(minutes(story) == (40, 40) for story in stories)


def test_a_bay_leaf_lifted_out_for_good_is_left_out() -> None:
    _, bay = treated(
        ["red lentils", "bay leaf"],
        ["Simmer the red lentils and bay leaf for 20 minutes.", "Remove the bay leaf and mash."],
    )
    assert bay.left_out and bay.made == ""


def test_what_joins_for_the_last_minutes_is_heated_for_them_alone() -> None:
    lentils, cumin = treated(
        ["red lentils", "cumin"],
        ["Simmer the red lentils for 20 minutes.", "Stir in the cumin for the last 2 minutes."],
    )
    assert minutes(cumin) == (2, 2)
    assert minutes(lentils) == (20, 20)


def test_scooped_flesh_is_what_was_baked() -> None:
    potato, pea = treated(
        ["sweet potato", "pea"],
        [
            "Bake the sweet potato for 60 minutes.",
            "Boil the pea for 5 minutes and drain.",
            "Scoop out the flesh, add the pea and mash.",
        ],
    )
    assert potato.made == pea.made == "mashed"


def test_what_is_lifted_out_for_good_leaves_its_own_pot_at_hand() -> None:
    tomato, rice, bay = treated(
        ["carrot, grated", "white rice", "bay leaf"],
        [
            "Simmer the carrot and bay leaf for 20 minutes.",
            "Boil the white rice in another pan for 15 minutes.",
            "Remove the bay leaf and stir the white rice in.",
            "Simmer for 2 minutes.",
        ],
    )
    assert minutes(tomato) == (22, 22)
    assert minutes(rice) == (17, 17)
    assert bay.left_out


def test_what_is_not_named_is_not_blended() -> None:
    carrot, pear = treated(
        ["carrot, 10 mm dice", "pear, 10 mm dice"],
        ["Steam the carrot and pear for 20 minutes.", "Blend the carrot until smooth."],
    )
    assert (carrot.made, pear.made) == ("smooth", "")


SENTENCES = st.sampled_from(
    [
        "Steam the parsnip for 10 minutes.", "Add the pear.", "Drain.", "Mash with the oil.",
        "Lift out the baby's portion.",
        "[family] Fry the onion for 5 minutes.", "[baby] Blend.", "Remove the onion.", "Soak overnight.", "Cool.",
        "Stir everything together.", "Put everything in another pan.", "Scoop out the flesh.", "Cut the pear.",
        "Meanwhile boil the pear and the onion in water for 3 minutes.", "Stir the onion into the parsnip.", "Serve.",
        "Stir in the oil for the last 2 minutes.", "Chill.", "Grate the parsnip and the pear into the pan.",
    ]
)  # fmt: skip


@settings(max_examples=300, deadline=None)
@given(st.lists(SENTENCES, max_size=8))
def test_no_order_of_steps_breaks_the_kitchen(steps: list[str]) -> None:
    stories = treated(["parsnip, 10 mm dice", "pear", "oil", "onion, chopped"], steps)
    assert [story.line for story in stories] == [0, 1, 2, 3]
    for story in stories:
        assert all(heat.minutes is None or heat.minutes.low <= heat.minutes.high for heat in story.heats)
        assert (story.joined is None) <= (not story.heats), "what is heated is in the pot"
        assert [heat.step for heat in story.heats] == sorted(heat.step for heat in story.heats)


FOODS = st.sampled_from(["carrot", "parsnip", "potato", "swede", "courgette", "apple", "leek", "pear"])


@settings(max_examples=150, deadline=None)
@given(FOODS, st.integers(3, 45), st.integers(1, 90), st.integers(1, 60))
def test_longer_steaming_never_makes_it_harder(food: str, mm: int, first: int, more: int) -> None:
    def rank(time: int) -> int:
        return RANK[treated([f"{food}, {mm} mm dice"], [f"Steam the {food} for {time} minutes."])[0].softness]

    assert rank(first) <= rank(first + more)


@settings(max_examples=150, deadline=None)
@given(
    FOODS, st.integers(2, 45), st.integers(1, 30), st.sampled_from(["steam", "boil", "oven", "microwave", "pressure"])
)
def test_a_finer_cut_never_needs_longer(food: str, mm: int, coarser: int, method: str) -> None:
    fine = times().needed(food, food_line(f"{food}, {mm} mm dice").cuts[0], method)
    coarse = times().needed(food, food_line(f"{food}, {mm + coarser} mm dice").cuts[0], method)
    if fine and coarse:
        assert fine.soft.low <= coarse.soft.low + 1e-9
        assert fine.soft.high <= coarse.soft.high + 1e-9


@settings(max_examples=60, deadline=None)
@given(st.randoms(use_true_random=False))
def test_shuffling_the_food_lines_changes_nothing(rng: random.Random) -> None:
    foods = ["parsnip, 10 mm dice", "pear, 10 mm dice", "oil", "spinach", "onion, 5 mm dice"]
    steps = [
        "Soften the onion in the oil for 8 minutes.",
        "Steam the parsnip in another pan for 15 minutes.",
        "Add the pear and steam 4 minutes more.",
        "Stir in the onion and spinach and cook 3 minutes more.",
        "Blend everything.",
    ]
    shuffled = rng.sample(foods, len(foods))
    plain = dict(zip(foods, treated(foods, steps), strict=True))
    mixed = dict(zip(shuffled, treated(shuffled, steps), strict=True))
    for food in foods:
        a, b = plain[food], mixed[food]
        assert (a.joined, a.heats, a.made, a.softness, a.needed) == (b.joined, b.heats, b.made, b.softness, b.needed)


def test_the_same_recipe_gives_the_same_story() -> None:
    dish = recipe(["carrot, 10 mm dice"], ["Steam the carrot for 20 minutes."])
    assert treat(dish, Larder(), verbs(), times()) == treat(dish, Larder(), verbs(), times())


def test_the_babys_portion_out_of_two_pots_is_cut_whole() -> None:
    from tests.kitchen import dish

    made = dish(
        "---\ntitle: Chicken and rice\nages: 9-18 months\ntexture: minced\nmakes: 4 portions\nfoods:\n"
        "  - 400 g chicken thighs, boned, skinned, diced\n  - 400 ml water\n  - 150 g rice\nsteps:\n"
        "  - Simmer the chicken in the water for 25 minutes.\n  - Meanwhile boil the rice for 12 minutes and drain.\n"
        "  - Lift out the baby's portion and mince it with a knife.\n---\n"
    )
    chicken = made.treatments[0]
    assert "minced" in {cut.shape for cut in chicken.cuts}


def test_whistles_are_no_clock_that_could_be_too_short() -> None:
    for method in (
        "Cook the red lentils in a pressure cooker for 4 whistles.",
        "Simmer the red lentils for 4 whistles.",
    ):
        (story,) = treated(["red lentils"], [method, "Simmer for 2 minutes."])
        assert story.heats[0].medium == "pressure" and story.softness == "not-judged", method
    (story,) = treated(["red lentils"], ["Simmer the red lentils for 2 minutes."])
    assert story.softness == "hard"


def test_oats_that_stand_in_the_cold_overnight_are_soaked_and_cold_leftovers_are_not() -> None:
    oats, _ = treated(["porridge oats", "milk"], ["Stir the porridge oats into the milk and chill overnight."])
    assert oats.soaked_minutes >= 480
    oats, _ = treated(
        ["porridge oats", "milk"], ["Simmer the porridge oats in the milk for 1 minute.", "Chill overnight."]
    )
    assert oats.soaked_minutes == 0


def test_both_after_two_pots_are_the_two_pots() -> None:
    method = [
        "Stew the plums in the water for 10 minutes.",
        "Simmer the porridge oats in the milk in another pan for 6 minutes.",
        "Blend both together until smooth.",
    ]
    plums, _, oats, _ = treated(["plums", "water", "porridge oats", "milk"], method)
    assert plums.made == oats.made == "smooth"


def test_blending_a_part_of_the_pot_leaves_the_rest_as_it_was() -> None:
    foods, first = ["carrots", "water"], "Simmer the carrots in the water for 30 minutes."
    for part in (
        "Blend half of the soup and stir it back in.",
        "Blend a third of it until smooth.",
        "Tip some of the soup into a blender and blend until smooth.",
    ):
        assert treated(foods, [first, part])[0].made == "", part
    for whole in (
        "Blend the soup until smooth.",
        "Blend the soup with some of the milk until smooth.",
        "Blend some of the soup until smooth for the baby.",
    ):
        assert treated(foods, [first, whole])[0].made == "smooth", whole


def test_minutes_told_before_the_verb_are_the_last_of_the_pot() -> None:
    for step in ("In the last 6 minutes stir in the peas.", "Stir in the peas for the last 6 minutes."):
        carrots, _ = treated(["carrots", "peas"], ["Steam the carrots for 20 minutes.", step])
        assert sum(heat.minutes.high for heat in carrots.heats if heat.minutes) == 20, step


def test_what_is_fried_in_the_rest_of_the_oil_is_what_is_at_hand() -> None:
    foods = ["rapeseed oil", "shallot", "ground cumin", "minced beef"]
    method = [
        "Soften the shallot in 1 tsp of the oil for 4 minutes.",
        "Mix the minced beef with the shallot and the ground cumin and shape into 8 patties.",
        "Fry the patties in the rest of the oil for 8 minutes.",
    ]
    assert all(any(heat.step == 2 for heat in story.heats) for story in treated(foods, method)[1:])


def test_mash_spread_over_the_filling_is_baked_with_it() -> None:
    foods = ["minced beef", "peas", "potatoes"]
    method = [
        "Fry the minced beef for 8 minutes and stir in the peas.",
        "Boil the potatoes for 20 minutes and mash.",
        "Spread the mash over the filling and bake for 30 minutes.",
    ]
    assert all(any(heat.medium == "oven" for heat in story.heats) for story in treated(foods, method))


def test_rice_boiled_in_other_water_and_drained_leaves_the_stew_its_liquid() -> None:
    from tests.kitchen import dish

    head = "---\ntitle: Cod and rice\nages: 10-18 months\ntexture: lumpy\nmakes: 4 portions\nfoods:\n"
    foods = "  - 200 ml coconut milk\n  - 150 ml water\n  - 300 g cod fillet\n  - 150 g white rice\nsteps:\n"
    first = "  - Simmer the cod in the coconut milk and the water for 10 minutes.\n"
    for water in ("plenty of water", "plenty of boiling water", "lightly salted water", "boiling water"):
        rice = f"  - Meanwhile boil the rice in {water} for 12 minutes and drain.\n---\n"
        assert not any(one.left_out for one in dish(head + foods + first + rice).treatments), water
    alone = "  - Boil the rice in the water for 12 minutes and drain.\n---\n"
    assert dish(head + foods + alone).treatments[1].left_out


def test_two_pans_come_together_and_what_was_fished_out_stays_out() -> None:
    made = dish(
        "foods:\n  - 100 g pearl barley\n  - 500 ml water\n  - 1 cinnamon stick\n  - 2 apples, chopped\n"
        "steps:\n  - Simmer the barley in the water with the stick for 50 minutes. Remove the stick.\n"
        "  - Stew the apples in another pan for 12 minutes.\n  - Combine the two pans and blend until thick.\n"
    )
    assert [one.made for one in made.treatments] == ["thick", "thick", "", "thick"]
    assert made.treatments[2].left_out
