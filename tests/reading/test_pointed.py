"""Words that point at lines of the list without a food's name, and what they must never point at."""

from __future__ import annotations

from tests.each import each
from tests.reading.readings import read_method

BROTH = (
    "1 onion, sliced", "2 turnips, 1 cm dice", "1 slice of fresh ginger", "2 tomatoes, chopped", "120 g chard",
    "60 g green beans", "90 g orzo", "1 sprig thyme", "2 hake fillets", "400 ml water", "150 ml coconut milk",
)  # fmt: skip


def acted_on(*steps: str) -> list[set[str]]:
    """The names that each action of the last step acts on."""
    read, _, lines, _ = read_method(BROTH, steps)
    return [{lines[i].name for i in action.foods} for action in read[-1].actions]


def faults(foods: tuple[str, ...], *steps: str) -> set[str]:
    """The findings' rules with the words they stand at."""
    _, found, _, document = read_method(foods, steps)
    return {f"{one.rule} {document.at(one.span)}" for one in found}


@each(
    ("words", "names"),
    [
        ("Put the first two into a pot.", {"onion", "turnips"}),
        ("Add the first two vegetables.", {"onion", "turnips"}),
        ("Pour in the last two.", {"water", "coconut milk"}),
        ("Stir in the final two ingredients.", {"water", "coconut milk"}),
        ("Pour in both liquids.", {"water", "coconut milk"}),
        ("Tip in the two liquids.", {"water", "coconut milk"}),
        ("Add both greens.", {"chard", "green beans"}),
        ("Drop in the sprig.", {"thyme"}),
        ("Lay the fillets on top.", {"hake fillets"}),
    ],
)
def test_lines_are_counted_off_the_list(words: str, names: set[str]) -> None:
    assert acted_on(words)[0] == names


def test_the_next_are_those_that_no_step_used() -> None:
    assert acted_on("Sweat the onion and turnips.", "Stir in the next two, then the tomatoes.")[0] == {
        "fresh ginger", "tomatoes",
    }  # fmt: skip


def test_a_piece_that_a_step_cut_is_no_line_with_such_pieces() -> None:
    assert acted_on("Simmer the water with the ginger, then fish out the slice.")[-1] == {"fresh ginger"}
    assert acted_on("Cut the turnips into slices.", "Add the slices.")[-1] == {"turnips"}


def test_minutes_are_no_lines() -> None:
    assert acted_on("Simmer the turnips for 9 minutes, adding the chard for the last two.")[-1] == {"chard"}
    assert acted_on("Simmer the turnips for the first two minutes with a lid on.")[0] == {"turnips"}


def test_what_the_list_does_not_bear_out_points_at_nothing() -> None:
    foods = ("1 leek, sliced", "2 eggs")
    assert "food-never-used leek" in faults(foods, "Put both fillets in a bowl.", "Whisk the eggs.")


def test_those_are_what_was_kept_back() -> None:
    steps = ("Put everything but the orzo into a pot and simmer for 20 minutes.", "Add that and cook for 12 minutes.")
    assert acted_on(*steps)[0] == {"orzo"}


def test_fresh_herbs_are_those_of_the_list() -> None:
    foods = ("1 leek, sliced", "a handful of dill, chopped")
    assert not faults(foods, "Steam the leek for 15 minutes.", "Scatter over the fresh herbs.")
    assert any(
        "fresh herbs" in one for one in faults(("1 leek, sliced",), "Steam the leek. Scatter over the fresh herbs.")
    )


def test_juices_of_a_roast_are_no_lemon() -> None:
    read, _, lines, _ = read_method(("4 chicken thighs", "1 lemon"), ("Shred the chicken with its juices.",))
    assert {lines[i].name for i in read[0].actions[0].foods} == {"chicken thighs"}


SAUCE = (
    "1 onion, chopped", "20 g butter", "1 tsp ground cumin", "1 tsp sweet paprika",
    "1 tsp hot curry powder, for the adults", "60 g stelline", "1 slice of rye bread, in crumbs",
    "2 aubergines, halved", "90 g peas",
)  # fmt: skip


@each(
    ("words", "names"),
    [
        ("Melt the fat in a pan.", {"butter"}),
        ("Stir in both spices.", {"ground cumin", "sweet paprika"}),
        ("Add the spices.", {"ground cumin", "sweet paprika"}),
        ("Tip in the stars.", {"stelline"}),
        ("Scatter the crumbs over.", {"rye bread"}),
        ("Lay the halves cut side up in a dish.", {"aubergines"}),
        ("Squash the peas with the back of a spoon.", {"peas"}),
    ],
)
def test_words_of_a_cook_find_their_lines(words: str, names: set[str]) -> None:
    read, _, lines, _ = read_method(SAUCE, (words,))
    assert [{lines[i].name for i in action.foods} for action in read[0].actions] == [names]


def test_what_was_left_out_may_be_cooked_beside() -> None:
    read, _, lines, _ = read_method(
        SAUCE, ("Simmer everything bar the stelline for 20 minutes.", "Boil that for 9 minutes.")
    )
    assert {lines[i].name for i in read[1].actions[0].foods} == {"stelline"}


def test_peas_that_can_be_squashed_are_not_squashed_yet() -> None:
    read, _, _, _ = read_method(SAUCE, ("Steam the peas until you can squash the peas between two fingers.",))
    assert [action.verb for action in read[0].actions] == ["steam"]


def test_the_former_and_the_latter_are_those_of_the_step_before() -> None:
    read, _, lines, _ = read_method(
        SAUCE, ("Rinse the aubergines and shell the peas.", "Fry the former.", "Add the latter.")
    )
    assert [{lines[i].name for i in step.actions[0].foods} for step in read[1:]] == [{"aubergines"}, {"peas"}]


def test_all_but_the_last_and_an_egg_that_is_cracked() -> None:
    foods = ("300 g veal mince", "1 onion, grated", "2 eggs", "60 g yoghurt, to serve")
    read, _, lines, _ = read_method(foods, ("Knead everything but the last.",))
    assert {lines[i].name for i in read[0].actions[0].foods} == {"veal mince", "onion", "eggs"}
    read, _, lines, _ = read_method(foods, ("Make two hollows and crack one into each.",))
    assert {lines[i].name for i in read[0].actions[-1].foods} == {"eggs"}


def test_both_vegetables_are_neither_tinned_nor_those_to_come() -> None:
    foods = ("1 carrot, diced", "1 courgette, diced", "400 g tin chopped tomatoes", "100 g frozen peas")
    method = ("Simmer both vegetables in the tomatoes for 40 minutes.", "Stir in the peas for 5 minutes.")
    read, _, lines, _ = read_method(foods, method)
    assert {lines[i].name for i in read[0].actions[0].foods} == {"carrot", "courgette", "chopped tomatoes"}


NOODLES = ("60 g smooth peanut butter", "200 g egg noodles", "1 tbsp soy sauce", "30 g roasted peanuts")


def test_the_sauce_and_the_mixture_are_what_was_made_so_far() -> None:
    method = (
        "Whisk the peanut butter with hot water.",
        "Boil the noodles and toss them with the peanut mixture.",
        "Turn the noodles through the sauce.",
        "Stir the soy sauce into the grown-ups' bowls.",
    )
    read, _, lines, _ = read_method(NOODLES, method)
    used = [{lines[i].name for action in step.actions for i in action.foods} for step in read]
    assert "smooth peanut butter" in used[1] and "roasted peanuts" not in used[1]
    assert "soy sauce" not in used[2] and "soy sauce" in used[3]


def test_the_sauce_is_the_bottled_one_where_nothing_else_names_it() -> None:
    read, _, lines, _ = read_method(NOODLES, ("Boil the noodles.", "Stir in the sauce."))
    assert {lines[i].name for i in read[1].actions[0].foods} == {"soy sauce"}


def test_what_the_steps_shape_needs_no_line_and_what_is_bought_does() -> None:
    foods = ("300 g minced beef", "1 egg", "60 g plain flour", "300 g swede, diced")
    for made in (
        ("Roll the beef and the egg into 12 balls.", "Halve the baby's meatballs."),
        ("Work the swede and the flour into a dough and roll it into ropes.", "Halve the baby's gnocchi lengthways."),
        ("Knead the flour and the egg to a dough.", "Cook each flatbread in a dry pan."),
    ):
        assert "food-not-listed" not in {f.rule for f in read_method(foods, made)[1]}, made
    for bought in (
        ("Fry the beef and the swede.", "Serve with the falafels."),
        ("Roll the beef and the egg into 12 balls.", "Serve with the flatbreads."),
    ):
        assert "food-not-listed" in {f.rule for f in read_method(foods, bought)[1]}, bought


def test_a_rolled_sausage_and_excess_oil_are_no_foods_of_the_list() -> None:
    foods = ("300 g minced lamb", "1 egg")
    for step in ("Roll each piece of the lamb and egg into a short sausage.", "Fry the lamb and blot the excess oil."):
        assert "food-not-listed" not in {f.rule for f in read_method(foods, (step,))[1]}, step
    assert "food-not-listed" in {f.rule for f in read_method(foods, ("Fry the lamb with a sausage.",))[1]}


def test_shaped_cakes_need_no_article() -> None:
    foods = ("300 g cod", "300 g potatoes, boiled")
    method = ("Mash the cod and the potatoes and shape into 8 patties.", "Fry fish cakes for 4 minutes a side.")
    assert "food-not-listed" not in {f.rule for f in read_method(foods, method)[1]}


def test_twenty_walnuts_and_fifty_meatballs_are_what_is_rolled() -> None:
    foods = ("300 g minced turkey", "1 egg")
    for step in (
        "Mix the turkey and the egg and form the mixture into 20 walnuts.",
        "Mix the turkey and the egg and roll into about 50 small meatballs.",
    ):
        assert "food-not-listed" not in {f.rule for f in read_method(foods, (step,))[1]}, step
    assert "food-not-listed" in {f.rule for f in read_method(foods, ("Fold 20 walnuts into the turkey.",))[1]}


PANTRY = ("1 tin lentils, drained", "3 prunes", "1 pear", "60 g frozen peas", "2 carrots, grated", "2 tsp fish sauce")


@each(
    ("step", "names"),
    [
        ("Mash the drained tin.", {"lentils"}),
        ("Soak the dried fruit.", {"prunes"}),
        ("Fry the grated veg.", {"carrots"}),
        ("Add the frozen veg.", {"frozen peas"}),
        ("In a casserole cook the pear.", {"pear"}),
        ("Grease the tin.", set()),
        ("Poach the fish.", set()),
    ],
)
def test_a_state_or_a_pack_tells_which(step: str, names: set[str]) -> None:
    steps, _, lines, _ = read_method(PANTRY, (step,))
    assert {lines[i].name for action in steps[0].actions for i in action.foods} == names


def test_pieces_are_of_what_a_step_cut_into_them() -> None:
    foods = ("2 leeks", "80 g smoked lardons, in strips", "20 g unsalted butter")
    steps, _, lines, _ = read_method(foods, ("Cut the leeks into thin strips.", "Fry the strips for 8 minutes."))
    assert {lines[i].name for i in steps[1].actions[0].foods} == {"leeks"}


@each(
    ("step", "names"),
    [
        ("Simmer the apples in the water.", {"eating apples", "Bramley apple", "water"}),
        ("Simmer the eating apples in the water.", {"eating apples", "water"}),
        ("Grate the Bramley apple.", {"Bramley apple"}),
        ("Fry the onions.", {"onion", "red onion"}),
    ],
)
def test_the_plural_is_of_all_that_bear_the_name(step: str, names: set[str]) -> None:
    foods = ("2 eating apples", "1 Bramley apple", "1 onion", "1 red onion", "200 ml water")
    steps, _, lines, _ = read_method(foods, (step,))
    assert {lines[i].name for action in steps[0].actions for i in action.foods} == names
