"""A week against what a baby needs from food: notes only, the unknown said."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from spoonproof.feeding.week import DishFigures, served, week_notes
from spoonproof.model.numbers import Estimate
from spoonproof.week import figures_of
from tests import kitchen
from tests.feeding.dishes import dish


def known(value: float, unit: str) -> Estimate:
    return Estimate(value, value, value, unit)


THIN = DishFigures("Thin soup", known(100, "g"), known(30, "kcal"), known(0.2, "mg"))
RICH = DishFigures("Beef mash", known(100, "g"), known(90, "kcal"), known(2.0, "mg"), iron_rich=True)
DARK = DishFigures("Unknown stew")


def notes(days: list[list[DishFigures]], months: int) -> dict[str, str]:
    return {note.id: note.text for note in week_notes(days, months, kitchen.knowledge().feeding)}


def test_a_thin_dish_a_day_without_iron_and_few_meals_are_noted() -> None:
    found = notes([[THIN], [RICH, THIN]], 7)
    assert "Thin soup (0.3 kcal/g)" in found["energy-density"]
    assert "Beef mash" not in found["energy-density"]
    assert "day 1." in found["iron-daily"]
    assert "Fewer than 2 to 3 meals on day 1." in found["meals-6-8"]
    assert "meals-9-11" not in found


def test_what_is_not_known_is_said_and_makes_no_zero() -> None:
    found = notes([[RICH, DARK]], 8)
    assert "Energy not known for Unknown stew" in found["energy-density"]
    assert "at least 2.0 mg" in found["iron-7-11"]


def test_a_good_week_keeps_quiet() -> None:
    assert set(notes([[RICH, RICH, RICH]], 10)) == {"iron-7-11"}


def test_liver_more_than_once_a_week_is_noted() -> None:
    liver = DishFigures("Liver mash", known(100, "g"), known(90, "kcal"), known(4.0, "mg"), iron_rich=True, liver=True)
    week = [[liver, RICH], [RICH, RICH], [RICH, liver]]
    assert notes(week, 8)["liver-weekly"].startswith("Liver 2 times, on days 1 and 3.")
    assert "liver-weekly" not in notes(week[:2], 8)


def test_the_need_changes_at_a_year() -> None:
    assert "iron-1-3" in notes([[RICH, RICH, RICH]], 13)


@given(st.lists(st.booleans(), min_size=1, max_size=12), st.integers(1, 4))
def test_each_day_has_iron_where_dishes_allow_and_all_come_round(rich: list[bool], meals: int) -> None:
    dishes = [DishFigures(f"Dish {number}", iron_rich=has) for number, has in enumerate(rich)]
    week = served(dishes, meals, 7)
    assert [len(day) for day in week] == [meals] * 7
    if sum(rich) > meals:  # one at least was not served the day before
        assert all(any(dish.iron_rich for dish in day) for day in week)
    if len(dishes) <= meals:
        assert all(set(day) == set(dishes) for day in week if not any(rich) or any(d.iron_rich for d in day))


def test_the_longest_not_served_comes_first_and_iron_is_spread() -> None:
    names = ["Pear", "Plum", "Beef", "Dal"]
    dishes = [DishFigures(name, iron_rich=name in {"Beef", "Dal"}) for name in names]
    week = [[dish.title for dish in day] for day in served(dishes, 2, 3)]
    assert week == [["Pear", "Beef"], ["Plum", "Dal"], ["Pear", "Beef"]]


def test_no_dish_makes_no_day() -> None:
    assert served([], 2, 7) == []


def iron_rich(fish: str) -> bool:
    foods = ["400 g potatoes, peeled, 1 cm dice", fish]
    made = dish("9-12", foods, ["Boil the potatoes for 20 minutes and mash everything."])
    text = made.recipe.document.text.replace("foods:", "makes: 4 x 90 g\nfoods:")
    return figures_of(kitchen.dish(text)).iron_rich


def test_a_taste_of_fish_is_no_dish_of_fish() -> None:
    assert iron_rich("80 g tinned salmon in water, drained")
    assert not iron_rich("4 g bonito flakes")
