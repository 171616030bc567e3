"""Steps in ordinary sentences: a table of readings, whose bowl they are about, and what must never be unseen."""

from __future__ import annotations

import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Mapped
from spoonproof.reading.yaml_tree import read_yaml
from tests import kitchen
from tests.each import each
from tests.reading.readings import action_words, read_method
from tests.reading.test_food_line import HOSTILE

FOODS = (
    "300 g parsnips, peeled, 1 cm dice", "2 medium pears, peeled, cored", "200 g split red lentils",
    "2 tsp rapeseed oil", "25 g unsalted butter", "150 g skinless salmon fillet", "100 ml whole milk",
    "1 tsp ground cumin", "80 g frozen peas", "1 clove garlic, crushed", "2 tbsp chopped parsley", "1 egg",
    "1 tbsp smooth peanut butter", "10 grapes",
)  # fmt: skip
BLOCKS = [
    block
    for block in (Path(__file__).parent / "steps.txt").read_text(encoding="utf-8").strip().split("\n\n")
    if not block.startswith("#")
]


def step_words(sentence: str) -> str:
    """A step as the table writes it: the sentence with its marks, its actions, its findings."""
    (step,), found, lines, document = read_method(FOODS, [sentence])
    marks = ([f"bowl {step.bowl}"] if step.bowl else []) + (["splits"] if step.splits else [])
    rows = [sentence + "".join(f" [{mark}]" for mark in marks)]
    rows += ["    " + action_words(action, lines) for action in step.actions]
    said = {f"{f.rule} {document.at(f.span)!r}" for f in found if f.rule != "food-never-used"}
    return "\n".join([*rows, *(f"    ! {one}" for one in sorted(said))])


def test_the_table_is_large_enough_to_mean_something() -> None:
    assert len(BLOCKS) >= 100


@each("block", BLOCKS)
def test_readings(block: str) -> None:
    sentence = block.split("\n")[0]
    for mark in (" [splits]", " [bowl baby]", " [bowl family]"):
        sentence = sentence.replace(mark, "")
    assert step_words(sentence) == block


SPLITS = (
    "Lift out the baby's portion.",
    "Lift out the baby’s portion before seasoning.",
    "Take out the baby's share now.",
    "Set aside a portion for the baby.",
    "Set the baby's portion aside to cool.",
    "Before seasoning, scoop out a portion for the baby.",
    "Scoop some out for the baby.",
    "Spoon out the baby's helping.",
    "Remove the baby's portion from the pan.",
    "Reserve a few spoonfuls for your baby.",
    "Keep some back for the little one.",
    "Put some aside for baby.",
    "Ladle two spoonfuls into the baby's bowl.",
    "Transfer the baby's portion to a small bowl.",
    "Separate the baby's portion.",
    "Dish out the baby's portion first.",
    "The baby's portion comes out now.",
)
NO_SPLITS = (
    "Mash the baby's portion with a fork.",
    "Serve the baby's portion lukewarm.",
    "Stir a spoonful of yogurt into the baby's portion.",
    "Let the baby scoop it up by hand.",
    "Do not set aside the baby's portion yet.",
    "Set the pan aside.",
    "Take out the bay leaf.",
    "Add the baby spinach.",
    "Set aside the baby carrots.",
    "Sit with the baby while she eats.",
    "Lift out the peas.",
)


@each("sentence", SPLITS)
def test_ordinary_ways_to_lift_out_the_baby_portion(sentence: str) -> None:
    (step,), _, _, _ = read_method(FOODS, [sentence])
    assert step.splits and any(action.verb == "lift-out" for action in step.actions)


@each("sentence", NO_SPLITS)
def test_what_is_no_lifting_out(sentence: str) -> None:
    (step,), _, _, _ = read_method(FOODS, [sentence])
    assert not step.splits


@each(
    ("sentence", "bowl"),
    [
        ("Season with salt.", "family"),
        ("Season the rest with salt.", "family"),
        ("Season the family's pot with soy sauce.", "family"),
        ("Stir in the salt and serve.", "family"),
        ("Mash the baby's portion with a fork.", "baby"),
        ("Stir the butter into the baby's bowl.", "baby"),
        ("For the baby, mash it well.", "baby"),
        ("For the grown-ups, add chilli flakes.", "family"),
    ],
)
def test_after_the_split_a_step_is_the_familys_unless_it_says_so(sentence: str, bowl: str) -> None:
    steps, _, _, _ = read_method(FOODS, ["Lift out the baby's portion.", sentence])
    assert steps[1].bowl == bowl
    assert {action.bowl for action in steps[1].actions} == {bowl}


def test_before_the_split_the_pot_is_common() -> None:
    steps, _, _, _ = read_method(FOODS, ["Season with salt.", "Lift out the baby's portion.", "Add chilli flakes."])
    assert [step.bowl for step in steps] == [None, None, "family"]
    assert steps[0].actions[0].unlisted[0][0] == "salt"


def test_salt_before_the_lifting_out_in_one_step_is_in_both_bowls() -> None:
    (step,), found, _, _ = read_method(FOODS, ["Add a pinch of salt, then lift out the baby's portion."])
    assert step.splits and step.bowl is None
    assert [a.bowl for a in step.actions if a.unlisted] == [None]
    assert not [f for f in found if f.rule == "split-within-a-step"]


def test_a_step_that_mixes_bowls_is_said() -> None:
    sentence = "Stir in the cumin, lift out the baby's portion, then season the rest with salt."
    (step,), found, _, _ = read_method(FOODS, [sentence])
    assert step.bowl is None and [a.bowl for a in step.actions] == [None, None, "family"]
    assert [f.rule for f in found if f.rule.startswith("split")] == ["split-within-a-step"]


@each(
    ("sentence", "foods"),
    [
        ("Add a pinch of salt.", ["salt"]),
        ("Drizzle with honey.", ["honey"]),
        ("Season with salt and pepper.", ["salt", "black-pepper"]),
        ("A drizzle of honey over the top.", ["honey"]),
        ("Don't be shy with the honey.", ["honey"]),
        ("Don't forget the salt.", ["salt"]),
        ("Sweeten with honey or maple syrup to taste.", ["honey", "maple-syrup"]),
        ("Cook until soft, then stir in honey.", ["honey"]),
        ("Serve with toast spread with cream cheese.", ["cream-cheese"]),
        ("Do not add salt.", []),
        ("Never add honey for a baby under one.", []),
        ("No salt is needed.", []),
        ("Mash without salt, honey or sugar.", []),
        ("Use olive oil instead of salt.", ["olive-oil"]),
        ("Roll into balls the size of a walnut.", []),
        ("Simmer in 200 ml water.", []),
        ("Cook until it is as thick as double cream.", []),
        ("Crush with a potato masher.", []),
    ],
)
def test_foods_of_no_line_are_never_unseen(sentence: str, foods: list[str]) -> None:
    (step,), found, _, document = read_method(FOODS, [sentence])
    unlisted = [food for action in step.actions for food, _ in action.unlisted]
    assert [food for food in unlisted if food != "white-bread"] == foods
    said = {document.at(f.span).lower() for f in found if f.rule == "food-not-listed"}
    assert len(said) == len(unlisted)


def test_a_grave_food_is_an_error_and_the_rest_a_warning() -> None:
    _, found, _, _ = read_method(FOODS, ["Stir in honey and parsnip and courgette."])
    assert [(f.rule, f.level) for f in found if f.rule == "food-not-listed"] == [
        ("food-not-listed", "error"),
        ("food-not-listed", "warning"),
    ]


def test_an_unused_food_is_said_on_its_line() -> None:
    _, found, _, document = read_method(
        ["1 parsnip", "2 pears", "1 tsp ground cumin"], ["Steam the parsnip and pears."]
    )
    assert [(f.rule, document.at(f.span)) for f in found] == [("food-never-used", "ground cumin")]


def test_a_misspelt_line_is_not_told_again_at_its_step() -> None:
    (step,), found, _, _ = read_method(
        ["150 g parsnpis", "1 pear"], ["Steam the parsnips and the pear for 16 minutes."]
    )
    assert found == [] and step.actions[0].foods == (0, 1)
    (step,), found, _, _ = read_method(["150 g blorp", "1 pear"], ["Steam the parsnips and the pear for 16 minutes."])
    assert [f.rule for f in found] == ["food-not-listed"]


def test_all_the_ingredients_uses_every_line() -> None:
    _, found, _, _ = read_method(
        ["1 parsnip", "2 pears"], ["Put all the ingredients in a pan and simmer for 20 minutes."]
    )
    assert found == []


def test_two_lines_that_fit_are_asked_about_once() -> None:
    foods = ["1 tsp rapeseed oil", "1 tsp olive oil", "1 parsnip"]
    _, found, _, document = read_method(foods, ["Fry the parsnip in the oil.", "Drizzle with the oil."])
    assert [(f.rule, document.at(f.span)) for f in found if f.rule == "which-food"] == [("which-food", "oil")]
    _, found, _, _ = read_method(foods, ["Fry the parsnip in the rapeseed oil.", "Drizzle with the olive oil."])
    assert found == []


def test_a_squash_test_of_its_own_ends_the_heat_before_it() -> None:
    steps, _, _, _ = read_method(
        FOODS, ["Steam the parsnips for 16 minutes.", "Check that a cube squashes between finger and thumb."]
    )
    assert steps[0].actions[0].soft_test


def _mapped(text: str) -> Mapped:
    node, _ = read_yaml(Document("x", text), Span(0, len(text)))
    assert isinstance(node, Mapped)
    return node


def test_keys_beside_a_sentence_are_used_and_disagreement_is_said() -> None:
    node = _mapped("do: Steam the parsnips for 10 minutes.\nminutes: 14-16\nfoods: [parsnips]\n")
    (step,), found, _, _ = read_method(FOODS, [node])
    assert step.actions[0].time == (14, 16) and step.actions[0].foods == (0,)
    assert [f.rule for f in found if f.rule != "food-never-used"] == ["step-disagrees"]
    node = _mapped("do: Steam them until tender.\nminutes: 14-16\nfoods: [parsnips, pears]\n")
    (step,), found, _, _ = read_method(FOODS, [node])
    assert step.actions[0].time == (14, 16) and step.actions[0].foods == (0, 1)
    assert not [f for f in found if f.rule == "step-disagrees"]


@settings(max_examples=120, deadline=None)
@given(
    st.text(max_size=80)
    | st.lists(st.sampled_from(" ".join(block.split("\n")[0] for block in BLOCKS).split()), max_size=14).map(" ".join)
)
def test_any_step_is_read_without_a_crash_and_inside_itself(text: str) -> None:
    (step,), found, lines, document = read_method(FOODS[:5], [text])
    spans = [f.span for f in found]
    for action in step.actions:
        assert all(0 <= i < len(lines) for i in action.foods)
        assert action.time is None or 0 <= action.time.low <= action.time.high
        spans += [action.span, *(cut.span for cut in action.cuts), *(span for _, span in action.unlisted)]
    for span in spans:
        assert 0 <= span.start <= span.end <= len(document.text)


@each("piece", HOSTILE)
def test_a_hostile_step_is_read_in_time_or_refused(piece: str) -> None:
    start = time.process_time()
    read_method(["1 parsnip"], [(piece * 2000)[:2000]])
    _, found, _, _ = read_method(["1 parsnip"], [piece * 2001])
    assert "value-too-long" in [f.rule for f in found]
    assert time.process_time() - start < 2


@each(
    ("line", "sentence", "unlisted"),
    [
        ("1 low-salt stock cube", "Season with salt.", ["salt"]),
        ("1 low-salt stock cube", "Crumble in the stock cube.", []),
        ("1 tbsp peanut butter", "Add the peanuts.", ["peanut"]),
        ("1 tbsp peanut butter", "Stir in butter.", ["butter"]),
        ("1 tbsp peanut butter", "Stir in the peanut butter.", []),
        ("100 ml coconut milk", "Loosen with milk.", ["whole-milk"]),
        ("100 ml coconut milk", "Pour in the coconut milk.", []),
        ("200 g honeydew melon", "Drizzle with honey.", ["honey"]),
        ("200 g honeydew melon", "Serve the melon in strips.", []),
        ("1 eggplant", "Beat an egg.", ["egg"]),
        ("1 eggplant", "Roast the aubergine for 30 minutes.", []),
        ("300 g butternut squash", "Melt some butter.", ["butter"]),
        ("300 g butternut squash", "Roast the squash for 40 minutes.", []),
        ("25 g unsalted butter", "Add salt.", ["salt"]),
        ("100 g sugar snap peas", "Add a spoonful of sugar.", ["sugar"]),
        ("100 g sugar snap peas", "Steam the sugar snaps for 5 minutes.", []),
        ("2 tbsp tomato purée", "Stir in the tomato purée.", []),
        ("1 lemon", "Squeeze over the lemon juice.", []),
        ("1 egg", "Add the yolk.", []),
    ],
)
def test_a_shared_word_is_not_the_same_food(line: str, sentence: str, unlisted: list[str]) -> None:
    (step,), found, _, _ = read_method([line], [sentence])
    assert [food for action in step.actions for food, _ in action.unlisted] == unlisted
    assert len([f for f in found if f.rule == "food-not-listed"]) == len(unlisted)
    assert ("food-never-used" in [f.rule for f in found]) == bool(unlisted)


def test_the_order_of_the_foods_changes_no_reading() -> None:
    sentences = [block.split("\n")[0].split(" [")[0] for block in BLOCKS[:60]]
    straight, _, lines, _ = read_method(FOODS, sentences)
    turned, _, other, _ = read_method(tuple(reversed(FOODS)), sentences)
    for one, two in zip(straight, turned, strict=True):
        assert (one.bowl, one.splits) == (two.bowl, two.splits)
        for a, b in zip(one.actions, two.actions, strict=True):
            assert {lines[i].food for i in a.foods} == {other[i].food for i in b.foods}
            assert (a.verb, a.time, a.everything, a.until, a.heat_c) == (
                b.verb,
                b.time,
                b.everything,
                b.until,
                b.heat_c,
            )


@pytest.mark.parametrize(
    ("sentence", "unlisted"),
    [
        ("Whisk the yolk and the oil into a thick mayonnaise.", []),
        ("Whisk the yolk and the oil to make a quick mayonnaise and spread the mayonnaise on it.", []),
        ("Whisk the yolk and the oil and stir in 2 tbsp mayonnaise.", ["mayonnaise"]),
        ("Loosen the yolk with a spoonful of the pap.", []),
        ("Loosen the yolk with a spoonful of the custard, and the hummus.", ["hummus"]),
    ],
)
def test_what_the_recipe_makes_needs_no_line(sentence: str, unlisted: list[str]) -> None:
    _, found, _, _ = read_method(["1 egg yolk", "100 ml rapeseed oil", "50 g maize flour"], [sentence])
    assert [f.message.split("”")[0].strip("“") for f in found if f.rule == "food-not-listed"] == unlisted


def test_chopping_everything_on_the_board_puts_nothing_in_the_pot() -> None:
    made = kitchen.dish(
        "foods:\n  - 200 g potatoes, peeled\n  - 80 g frozen peas\n  - 400 ml water\nsteps:\n  - Chop everything up.\n"
        "  - Simmer the potatoes in the water for 25 minutes.\n  - Add the peas and simmer for 4 minutes.\n"
    )
    heated = {t.line: t.heated_minutes.high for t in made.treatments if t.heated_minutes is not None}
    assert heated[0] == 29 and heated[1] == 4


MORE_FOODS = (
    "200 g beef mince",
    "2 rashers bacon",
    "1 pointed pepper",
    "1 onion",
    "100 ml baby's usual milk",
    "60 g oats",
)


@each(
    ("sentence", "verbs", "foods"),
    [
        ("Fry the bacon and mince until no pink remains.", ["fry"], [0, 1]),
        ("Mince the bacon and fry for 5 minutes.", ["mince", "fry"], [1]),
        ("Blitz onion, pepper and oats.", ["blend"], [2, 3, 5]),
        ("Put oats and milk in a bowl.", ["add"], [4, 5]),
        ("Add the onion puree and stir.", ["add", "mix"], [3]),
        ("Add the bacon and mince and cook for 8 minutes.", ["add", "cook"], [0, 1]),
        ("Add the milk and purée until smooth.", ["add", "puree"], [4]),
        ("Chop the onion and mince the bacon.", ["chop", "mince"], [1, 3]),
        ("Mash well and feed warm.", ["mash"], []),
    ],
)
def test_a_word_that_can_be_a_noun_is_read_by_what_stands_beside_it(
    sentence: str, verbs: list[str], foods: list[int]
) -> None:
    (step,), found, _, _ = read_method(MORE_FOODS, [sentence])
    assert [action.verb for action in step.actions] == verbs
    assert sorted({i for action in step.actions for i in action.foods}) == foods
    assert not {"food-not-listed"} & {fault.rule for fault in found}


@pytest.mark.parametrize(
    ("foods", "sentence"),
    [
        (["1 tomato, pureed"], "Stir in the tomato purée and simmer for 5 minutes."),
        (["20 g walnuts, ground"], "Stir in walnut powder."),
        (["½ tsp dry mustard", "100 g cheddar, grated"], "Whisk cheddar and mustard into the milk."),
        (["1 tbsp olive oil", "1 carrot, grated"], "Bake the carrot in an oiled dish for 25 minutes."),
    ],
)
def test_a_food_called_by_what_was_done_to_it_is_its_line(foods: list[str], sentence: str) -> None:
    _, found, _, _ = read_method(["100 ml whole milk, optional", *foods], [sentence])
    assert [fault.rule for fault in found if fault.rule in ("food-not-listed", "food-never-used")] == []


def test_a_paste_that_foods_are_ground_to_is_no_paste_of_the_list() -> None:
    foods = ["1 onion", "1 tbsp curry paste"]
    (blended, _), _, _, _ = read_method(foods, ["Whizz the onion to a smooth paste.", "Fry the curry paste."])
    assert blended.actions[0].foods == (0,)


def test_butter_beside_another_line_is_still_no_nut_butter() -> None:
    _, found, _, _ = read_method(("60 g oats", "1 tbsp smooth peanut butter"), ["Stir oats and butter together."])
    assert "food-not-listed" in {fault.rule for fault in found}


def test_a_thermometers_end_point_is_no_oven_heat() -> None:
    (step,), _, _, _ = read_method(MORE_FOODS, ["Bake for 25 minutes, or until a thermometer reads 75 °C."])
    assert step.actions[0].heat_c is None


def test_what_adults_do_to_theirs_is_the_familys_bowl() -> None:
    (step,), _, _, _ = read_method(MORE_FOODS, ["Adults can season theirs with salt."])
    assert [action.bowl for action in step.actions] == ["family"]
