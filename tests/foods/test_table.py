"""Which food a name means: the table's own names, plurals, spellings, and never a guess."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.foods.table import FoodTable
from spoonproof.foods.words import key, tokens
from spoonproof.model.table import Row
from tests.each import each
from tests.foods.bench import rows, table

MEANT = {
    "honeydew melon": "melon-honeydew",
    "butternut squash": "butternut-squash",
    "eggplant": "aubergine",
    "brinjal": "aubergine",
    "egg plant": "aubergine",
    "sugar snap peas": "mangetout",
    "peanut butter": "peanut-butter",
    "smooth peanut butter": "peanut-butter",
    "coconut milk": "coconut-milk",
    "unsalted butter": "butter",
    "salted butter": "salted-butter",
    "oat milk": "oat-drink",
    "baby spinach": "spinach",
    "large ripe bananas": "banana",
    "tomatoes": "tomato",
    "cherry tomatoes, quartered": "cherry-tomato",
    "Brussels sprouts": "brussels-sprout",
    "chick peas": "chickpea-canned",
    "chickpeas in water": "chickpea-canned",
    "dried chickpeas": "chickpea",
    "fresh coriander": "coriander",
    "cilantro": "coriander",
    "ground coriander": "coriander-seed",
    "curd": "plain-yoghurt",
    "full-fat Greek yogurt": "greek-yoghurt",
    "crème fraîche": "creme-fraiche",
    "creme fraiche": "creme-fraiche",
    "ladies' fingers": "okra",
    "bhindi": "okra",
    "zucchini": "courgette",
    "besan": "gram-flour",
    "red onion": "onion",
    "skinless chicken thighs": "chicken-thigh",
    "peppers": "red-pepper",
    "pepper": "black-pepper",
    "black pepper": "black-pepper",
    "whole milk": "whole-milk",
    "cow’s milk": "whole-milk",
    "low-salt stock cube": "stock-cube-low-salt",
    "frozen peas": "pea-frozen",
    "cooked quinoa": "quinoa-boiled",
    "hard-boiled eggs": "egg-boiled",
    "pear purée": "pear",
    "usda:11124": "carrot",
    "Medjool dates": "date-medjool",
    "ground almonds": "ground-almonds",
    "sweet potatoes": "sweet-potato",
    "self-raising flour": "self-raising-flour",
    "yoghurt": "plain-yoghurt",
    "egg yolks": "egg-yolk",
}
NOT_GUESSED = [
    "dragon fruit chutney",
    "vegan butter",
    "vegan yoghurt",
    "mango vinegar",
    "cream of barley",
    "cashew cheese",
    "chocolate milk powder drink",
    "honey mustard dressing",
    "vegan mozzarella",
    "smoked mackerel pâté",
    "flurbs",
    "",
    "300",
]


@each(("words", "food"), MEANT.items())
def test_a_name_finds_its_food(words: str, food: str) -> None:
    match = table().match(words)
    assert match is not None
    assert match.food == food


@pytest.mark.parametrize("words", NOT_GUESSED)
def test_what_is_not_known_is_not_guessed(words: str) -> None:
    assert table().match(words) is None


def test_a_match_says_where_the_name_stands() -> None:
    match = table().match("  large ripe bananas, mashed")
    assert match is not None
    assert "  large ripe bananas, mashed"[match.start : match.end] == "bananas"


def test_every_name_of_every_food_finds_a_food_and_its_own_name_finds_itself() -> None:
    lost = [
        (name, food.id)
        for food in table()
        for name in (food.name, *food.names)
        if not name.startswith("=") and table().match(name) is None
    ]
    assert not lost
    wrong = [food.id for food in table() if (match := table().match(food.name)) is None or match.food != food.id]
    assert not wrong


def test_nearest_names_come_for_what_was_mistyped() -> None:
    assert "parsnip" in table().nearest("parsnpi")
    assert "courgette" in table().nearest("corgette")
    assert table().nearest("courgete")[0] == "courgette"
    assert table().nearest("parsnpis") == ("parsnip",)
    assert table().nearest("zzzzqqqq") == ()
    assert table().nearest("") == ()


def test_states_and_forms() -> None:
    known = table()
    assert known.variant("carrot", "cooked") == "carrot-boiled"
    assert known.variant("carrot", "canned") == "carrot-canned"
    assert known.variant("chickpea-canned", "dried") == "chickpea"
    assert known.variant("chickpea", "canned") == "chickpea-canned"
    assert known.variant("apple", "peeled") == "apple-peeled"
    assert known.variant("apricot", "dried") == "apricot-dried"
    assert known.variant("carrot-boiled", "raw") == "carrot"
    assert known.variant("honey", "canned") == "honey"
    assert known.variant("no such food", "canned") == "no such food"


def test_running_text() -> None:
    text = "Mash until a cube squashes between finger and thumb; stir in the sweet potato, peanut butter and peas."
    assert [m.food for m in table().find(text)] == ["sweet-potato", "peanut-butter", "pea"]
    assert [m.food for m in table().find("Serve the squash with butter beans.")] == ["winter-squash", "butter-beans"]
    assert [text[m.start : m.end] for m in table().find(text)] == ["sweet potato", "peanut butter", "peas"]
    assert table().find("To date nobody can squash it flat.") == []


@given(st.text(max_size=60))
def test_any_text_is_looked_at_without_harm(text: str) -> None:
    known = table()
    match = known.match(text)
    assert match is None or 0 <= match.start < match.end <= len(text)
    ends = 0
    for found in known.find(text):
        assert ends <= found.start < found.end <= len(text)
        ends = found.end
    assert all(text[token.start : token.end] for token in tokens(text))


def test_spellings_share_a_key() -> None:
    assert key("Brussels sprouts") == key("brussels-sprout")
    assert key("crème fraîche") == key("Creme fraiche")
    assert key("chillies") == key("chilis")
    assert key("leaves") == key("leaf")
    assert key("peaches") == key("peach")
    assert key("couscous") == key("cous cous")


def _row(**cells: str) -> Row:
    return Row(cells, "foods.csv", 7)


def test_a_broken_table_says_where() -> None:
    with pytest.raises(ValueError, match=r"foods\.csv:7.*parent"):
        FoodTable.from_rows([_row(id="a", name="a", group="g", parent="nobody")])
    with pytest.raises(ValueError, match=r"foods\.csv:7.*refuse_pct"):
        FoodTable.from_rows([_row(id="a", name="a", group="g", refuse_pct="100")])
    with pytest.raises(ValueError, match=r"foods\.csv:7.*density"):
        FoodTable.from_rows([_row(id="a", name="a", group="g", density="thick")])
    with pytest.raises(ValueError, match="grams"):
        FoodTable.from_rows([_row(id="a", name="a", group="g")], (), [_row(food="a", unit="cup", grams="0")])


def test_the_table_is_large_and_whole() -> None:
    known = list(table())
    assert len({food.id for food in known}) == len(known) >= 600
    assert len({food.record for food in known if food.record.startswith("usda:")}) >= 550
    traits = {row.text("trait") for row in rows("traits")}
    assert {trait for food in known for trait in food.traits} == traits
    assert not [food.id for food in known if not food.record and not food.note]
    assert {food.state for food in known} <= {"raw", "cooked", "dried", "canned", "frozen", "prepared"}
    known_groups = {row.text("group") for row in rows("retention")}
    assert {food.retention for food in known if food.retention} <= known_groups


def test_the_foods_that_babies_must_not_have_are_there_to_be_seen() -> None:
    wanted = {
        "honey": "honey",
        "salt": "salt",
        "sugar": "free-sugar",
        "stock-cube": "salty",
        "soy-sauce": "salty",
        "almond": "whole-nut",
        "popcorn": "popcorn",
        "marshmallow": "marshmallow",
        "red-wine": "alcohol",
        "rice-drink": "rice-drink",
        "black-tea": "tea",
        "coffee": "coffee",
        "brie": "mould-ripened",
        "swordfish": "shark-swordfish-marlin",
        "chicken-liver": "liver",
        "grape": "round",
    }
    for food, trait in wanted.items():
        record = table().get(food)
        assert record is not None
        assert trait in record.traits


def test_allergens_stand_on_the_foods_that_bring_them() -> None:
    def of(food: str) -> frozenset[str]:
        record = table().get(food)
        assert record is not None
        return record.allergens

    assert of("butter") == {"milk"}
    assert of("pasta") == of("couscous") == {"gluten", "wheat"}
    assert of("porridge-oats") == {"gluten"}
    assert of("hummus") == of("tahini") == {"sesame"}
    assert "fish" in of("worcestershire-sauce")
    assert {"soya", "wheat"} <= of("soy-sauce")
    assert "celery" in of("stock-cube")
    assert {"mustard", "celery"} <= of("curry-powder")
    assert of("quinoa") == of("carrot") == frozenset()
