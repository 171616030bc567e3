"""What a claim is about in speech and on a page: the noun its words attach to, what "they" are, what is not carried."""

from __future__ import annotations

from dataclasses import replace

import pytest
from finding_kit import claims, lexicon, only, passage

from spoonproof.claims.find import find_claims
from spoonproof.model.claim import Claim
from spoonproof.model.text import Document, Span
from spoonproof.reading.markdown import read_prose
from tests.each import each


def _page(text: str) -> list[Claim]:
    return find_claims(read_prose(Document("page.md", text), Span(0, len(text)))[0], lexicon())


@pytest.mark.parametrize(
    ("text", "kind", "relates", "subjects"),
    [
        (
            "the plaice is low in salt and rich in selenium and selenium is vital for the thyroid",
            "function",
            "thyroid",
            ("selenium",),
        ),
        (
            "rice pudding made with cream and I fold chopped walnuts in because they bring magnesium",
            "nutrient-content",
            "magnesium",
            ("walnut",),
        ),
        ("crackers with cheddar, reduced fat cheddar has less salt", "comparative", "salt", ("cheddar",)),
        ("Because it holds so much iron, millet is a staple in our house.", "nutrient-content", "iron", ("millet",)),
        ("As they keep the bowels moving, oats are what I reach for.", "function", "bowels", ("oat",)),
        (
            "We use ragi porridge because of its high calcium, which is good for bones.",
            "function",
            "bones",
            ("ragi porridge", "calcium"),
        ),
        ("Two things get a stuck bowel going: fibre and water.", "function", "bowel", ("fibre", "water")),
        (
            "Vitamins suffer when heated, but studies show that steaming keeps more vitamins.",
            "process",
            "vitamins",
            ("steaming",),
        ),
        ("The folate drops by half in boiled kale.", "process", "folate", ("boiled kale",)),
        ("There is no milk in any of the dishes on this page.", "allergen", "no milk", ("dish",)),
        ("Oat milk lets a child with a dairy allergy join in.", "allergen", "dairy allergy", ("oat milk",)),
        ("Half of those with a milk allergy outgrow it by two.", "allergen", "milk allergy outgrow", ("milk",)),
        ("With a bad allergy a reaction can occur after a lick of egg.", "allergen", "reaction", ("egg",)),
        ("Don't put off introducing peanut.", "allergen", "peanut", ("peanut",)),
        ("Oats so milled are no more suitable for a gluten-free diet.", "allergen", "gluten-free diet", ("oat",)),
        ("Vegans who skip B12 risk anaemia.", "disease", "anaemia", ("b12",)),
    ],
)
def test_the_noun_that_the_words_attach_to(text: str, kind: str, relates: str, subjects: tuple[str, ...]) -> None:
    """A clause with a subject of its own takes no others along; "they" are what is many."""
    found = [c for c in claims(text) if c.kind == kind and relates in (c.relates_to or "")]
    assert [c.subjects for c in found] == [subjects]


def test_nothing_is_free_of_itself() -> None:
    """What is said not to be there is not what it is not in."""
    found = claims("I sweeten with mango purée. There is no refined sugar so she gets no sugar.")
    assert found and all(c.subjects == ("mango",) for c in found)


def test_they_are_many_and_it_may_be_the_dish() -> None:
    """ "They" go back to what is many; what is free of an allergen is the dish, not the last thing it holds."""
    they = _page("Stir beans into the polenta. They are full of folate.")
    assert they[-1].subjects == ("bean",)
    free = _page("# Courgette bake\n\nCarrots have vitamin A. It feeds four. It's nut free.")
    assert free[-1].kind == "allergen"
    assert not free[-1].foods


def test_nothing_is_carried_over_a_heading() -> None:
    """What stood before a heading is over with."""
    found = _page("Yoghurt is rich in calcium.\n\n## When do we start?\n\nIt protects her from colds.")
    assert [c.subjects for c in found] == [("yoghurt",), ()]
    kept = _page("## What about kale?\n\nIt protects her from colds.")
    assert kept[-1].subjects == ("kale",)


@pytest.mark.parametrize(
    "text",
    [
        "## Does the stew keep?\n\nYes, for up to two months.",
        "Oat drink is fine. What it does is it replaces iron-rich foods.",
        "Baby rice is mild. Teething doesn't cause a rash.",
        "Spoon on the labneh it's full fat labneh.",
        "spread it so thin you can see the cracker",
    ],
)
def test_said_of_no_food(text: str) -> None:
    """How long it keeps, what it takes the place of, another matter, which kind, how thin."""
    assert not [c for c in _page(text) if c.kind in ("safety-age", "nutrient-content", "disease", "function")]


def test_bones_left_in_are_nobodys() -> None:
    """A fish's bones are eaten, not strengthened."""
    assert not [c for c in claims("pilchards with the bones in because they've got calcium") if c.kind == "function"]
    only("The calcium in pilchards is good for the bones.", "function")


def test_what_is_counted_off_stands_for_itself() -> None:
    """Each of one, two, three has its own subject."""
    found = claims(
        "my three no's one rice milk because of arsenic two squash it rots teeth three goat's milk before one because"
        " it causes anaemia"
    )
    assert [c.subjects for c in found] == [("rice milk",), ("squash",), ("goat's milk",)]
    assert not claims("one cup of oats two cups of milk three bananas mashed up well")


@pytest.mark.parametrize(
    ("text", "kind", "subject"),
    [
        ("he had a cough on Monday and honestly the lentil stew sorted it", "disease", "lentil"),
        ("the plums have vitamin C which keeps her from getting ill", "disease", "plum"),
        ("give her vitamin D drops every day, about 10 micrograms", "quantity", "vitamin d drops"),
        ("little ones who are given lumps too late are more often picky eaters", "function", "lumps"),
        ("baby puffs can be as sugary as lemonade", "comparative", "baby puffs"),
    ],
)
def test_heard(text: str, kind: str, subject: str) -> None:
    """A tale of a cure, an illness kept away, a supplement's amount, lumps left late, sweetness told by likeness."""
    assert subject in only(text, kind).subjects


@each(
    "text, kind, subject",
    [
        ("Each rissole packs nine grams of protein.", "quantity", "rissole"),
        ("Those stars sneak in plenty of fibre.", "nutrient-content", "stars"),
        ("rye is great if they're constipated", "disease", "rye"),
        ("Toast sends their blood sugar up and down.", "function", "toast"),
        ("The vitamin D in salmon helps build bones.", "function", "vitamin d"),
        ("Neither the stew nor the dumplings contain added salt.", "nutrient-content", "stew"),
        ("To help her sleep, offer a small bowl of semolina first.", "function", "semolina"),
        ("It is the fibre in rye that lowers cholesterol.", "function", "fibre"),
        ("The spinach in this sauce brings plenty of folate.", "nutrient-content", "spinach"),
        ("Cheese on toast gives them calcium.", "nutrient-content", "cheese"),
        ("Ginger's active ingredient calms the stomach.", "function", "ginger"),
        ("Unlike shop-bought crackers, this one has no added sugar.", "nutrient-content", "this one"),
        ("Not only is skyr lower in sugar than fruit yoghurts, it also has twice the protein.", "comparative", "skyr"),
        ("In 40 g of this muesli there are 7 g of sugar, most of it from the fruit.", "quantity", "muesli"),
        ("Beef broths (among other foods like kimchi) heal the gut.", "function", "beef broth"),
        (
            "Stir in a spoonful of ground hemp, which nobody will notice, and you've just added omega-3 to the bowl.",
            "nutrient-content",
            "hemp",
        ),
    ],
)
def test_all_that_is_said_is_said_of_it(text: str, kind: str, subject: str) -> None:
    """A noun that no list knows, what leads a phrase, and the topic where another noun stands nearer."""
    found = [c for c in claims(text) if c.kind == kind]
    assert found and all(subject in c.subjects for c in found), found


def test_what_is_taken_up_is_named() -> None:
    """That the body takes something up relates to what it is."""
    assert "iron" in (
        only("Serve the dal with lime, since it makes the iron easier to absorb.", "function").relates_to or ""
    )


def test_loose_finds_stand_beside_what_does_it() -> None:
    """In a long sentence a relative joins the food to the body; vitamins count as what does it."""
    text = (
        "These crisps are fried in old oil and dusted with colours, smoke flavourings and trans fats that are really"
        " quite harmful to the liver and the heart."
    )
    assert any(c.kind == "function" for c in claims(text))
    assert passage(text).text == text


def test_it_is_what_it_was() -> None:
    """ "It" goes back to what is one, and stands for the same all through a sentence."""
    added = _page("Parsnips don't have much, so I'm adding minced lamb. It's a great source of zinc.")
    assert added[-1].subjects == ("minced lamb",)
    thinned = _page("Almond butter is for later. Loosen it with warm milk so it isn't a choking hazard.")
    assert thinned[-1].subjects == ("almond butter",)
    pan = _page("Butter the dish with olive oil. The whole tray is dairy free.")
    assert pan[-1].of_dish
    assert not pan[-1].foods


def test_what_a_child_is_to_get_is_the_nutrient() -> None:
    """A daily amount is of the nutrient, whatever was spoken of before."""
    found = _page("Turnips are loaded with potassium. Our doctor wants him to get 10 micrograms of vitamin D a day.")
    assert next(c for c in found if c.kind == "quantity").subjects == ("vitamin d",)


@pytest.mark.parametrize(
    ("text", "kind", "subjects"),
    [
        ("stew with soured cream stirred through and the chickpeas theyre packed with zinc", "nutrient-content",
         ("chickpea",)),
        ("the lime helps her take the zinc in my aunt swears by fennel tea for wind", "disease", ("fennel tea",)),
        ("No green pepper, as fennel reduces bloating.", "disease", ("fennel",)),
        ("I bake fritters and they are rich in fibre.", "nutrient-content", ("fritter",)),
        ("he was bunged up last week and the pears got things moving", "disease", ("pear",)),
    ],
)  # fmt: skip
def test_no_list_is_made_of_what_belongs_to_two_clauses(text: str, kind: str, subjects: tuple[str, ...]) -> None:
    assert [c.subjects for c in claims(text) if c.kind == kind] == [subjects]


def test_asked_whether_and_since_it() -> None:
    """What people ask is not said; what "since it" gives as a reason is not denied with what goes before."""
    assert only("Many parents ask whether kefir will cause a cold in January.", "disease").polarity == "asks"
    lacks = only("goat's milk not as a drink before one since it lacks iron", "nutrient-content")
    assert lacks.polarity == "asserts"


def test_what_drinks_nothing_takes_no_food_along() -> None:
    """A cup is what it is about, not the food before it; they are the dish where none of the foods are many."""
    cups = _page("Squash the raspberry flat. Sippy cups can mess with teeth.")
    assert all(not c.foods for c in cups if c.kind == "disease")
    free = _page("We dropped dairy, and it helped. They're nut free.")
    assert not [c for c in free if c.kind == "allergen"][-1].foods


def test_what_somebody_does_is_no_food() -> None:
    """ "I squash" is done to the food before it."""
    assert only("cherries I squash since a whole one could make her choke", "safety-age").subjects == ("cherry",)


@each(
    ("text", "kind", "subjects"),
    [
        ("I stir in ricotta. That is high in calcium.", "nutrient-content", ("ricotta",)),
        ("Mangoes, plums or a pear will do. They make the iron easier to absorb.", "function",
         ("mango", "plum", "pear")),
        ("Swede and tahini go in. Both of them help build strong bones.", "function", ("swede", "tahini")),
        ("Swede, you know I love swede, there's more potassium in it than in a plum.", "comparative", ("swede",)),
        ("I add a green pepper. Its vitamin C helps her body take up the iron.", "function",
         ("vitamin c", "green pepper")),
        ("Plums are sweet. They keep most of their vitamin C in the oven.", "process", ("plum",)),
        ("Chop the swede. It's lean, so there isn't much saturated fat.", "nutrient-content", ("swede",)),
        ("Lentils hold phytate, which draws water into the gut.", "function", ("lentil", "phytate")),
        ("Serve it on oatcakes, they've got more fibre than rice.", "comparative", ("oatcake",)),
    ],
)  # fmt: skip
def test_what_a_pronoun_points_to(text: str, kind: str, subjects: tuple[str, ...]) -> None:
    """What was said last, a list, two named apart, what it is "in", what owns it, what a relative hangs on."""
    assert [c.subjects for c in claims(text) if c.kind == kind][-1:] == [subjects]


def test_a_portion_is_of_what_is_made() -> None:
    """So much in a portion is in what is made, not in the food named last; what is counted off stands for itself."""
    made = _page(
        "# Swede pancakes\n\nSwede is mild. Serve with rice. Per portion there are about four milligrams of iron."
    )
    assert [c.subjects for c in made if c.kind == "quantity"][-1] == ("swede pancake",)
    counted = _page("Sweeten with plums. One bar is two grams of fibre.")
    assert [c.subjects for c in counted if c.kind == "quantity"] == [("bar",)]


def test_title_and_description_speak_of_their_dish() -> None:
    """What stands over a recipe is said of the dish, though no word of it names a food; in a story it may be of all."""
    said = "A taste of the allotment that strengthens your toddler's bones."
    shown = [replace(passage(said), kind=kind) for kind in ("description", "title", "story")]
    assert [[c.kind for c in find_claims([one], lexicon())] for one in shown] == [["function"], ["function"], []]
