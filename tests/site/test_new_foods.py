"""The calendar page: each food once, allergens on their own, only dishes that are first foods."""

from __future__ import annotations

from spoonproof.dish import Dish
from spoonproof.site.new_foods import new_foods
from spoonproof.site.view_site import Calendar
from tests.kitchen import channel, knowledge, read

MASH = "title: Swede mash\nfoods:\n  - 300 g swede, peeled, 1 cm dice\n  - 2 tsp rapeseed oil\n  - 30 ml water"
EGG = "title: Egg mash\nfoods:\n  - 300 g floury potatoes, peeled, 1 cm dice\n  - 1 medium egg"
OLD = "title: Toddler mash\nages: 18-24 months\nfoods:\n  - 300 g parsnips, peeled, 1 cm dice\n  - 2 tsp rapeseed oil"


def dish(text: str, slug: str) -> Dish:
    recipe, _ = read(text, f"recipes/{slug}.md")
    assert recipe is not None
    return Dish(recipe, channel(), knowledge())


def calendar_of(*dishes: Dish) -> Calendar | None:
    return new_foods(channel(), knowledge(), [one.candidate for one in dishes])


def test_a_candidate_has_the_foods_of_the_babys_bowl_and_no_water() -> None:
    one = dish(EGG, "egg-mash").candidate
    assert "egg" in one.foods and one.allergens["egg"] == ("egg",)
    assert "water" not in dish(MASH, "swede-mash").candidate.foods


def test_each_food_is_new_once_and_the_allergen_comes_on_its_own() -> None:
    made = calendar_of(dish(MASH, "swede-mash"), dish(EGG, "egg-mash"), dish(OLD, "toddler-mash"))
    assert made is not None
    new = [food for day in made.days for food in day.new]
    assert len(new) == len(set(new)) and any("egg" in food for food in new)
    served = {day.served.text for day in made.days if day.served}
    assert served == {"Swede mash", "Egg mash"}
    assert all("-oil" not in day.note for day in made.days)  # names, never ids
    assert made.sources and made.notes


def test_one_dish_is_no_calendar() -> None:
    assert calendar_of(dish(MASH, "swede-mash")) is None
