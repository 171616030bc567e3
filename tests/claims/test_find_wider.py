"""Claims in verbs and nouns of every class of effect, with what each is about; kitchen talk in the same words."""

from __future__ import annotations

import pytest
from finding_kit import claims, only
from test_judge_labelled import STANDS, spoken

from tests.each import each


@each(
    ("text", "kind"),
    [
        ("Kale keeps them hydrated.", "function"),
        ("Blackcurrants sharpen a child's thinking.", "function"),
        ("Figs keep the bowels moving.", "function"),
        ("Barley staves off night waking.", "function"),
        ("Potassium steadies the heartbeat.", "function"),
        ("Liver helps red blood cell production.", "function"),
        ("Semolina fattens them up.", "function"),
        ("The food I cook at home will help you grow up healthy and strong.", "function"),
        ("Rice cereal plugs them up.", "disease"),
        ("Chilled melon eases tender gums.", "disease"),
        ("Cottage cheese remineralises teeth.", "function"),
        ("Tannins lock away iron.", "function"),
        ("Peas are rammed with protein.", "nutrient-content"),
        ("For iron, mussels are a great source.", "nutrient-content"),
        ("Canning wipes out the vitamin C.", "process"),
        ("Squash is fine instead of water for toddlers.", "safety-age"),
        ("Give him juice instead of water.", "safety-age"),
        ("Start solids when she has doubled her birth weight.", "safety-age"),
        ("A little pink in the middle is fine for toddlers.", "safety-age"),
        ("Barley porridge can be given to babies.", "safety-age"),
        ("Popcorn is hard for toddlers to chew.", "safety-age"),
        ("Marshmallows can be difficult for a young child to swallow.", "safety-age"),
        ("Kefir keeps a good microbial balance.", "function"),
        ("A frozen grape is a real risk.", "safety-age"),
        ("For the first six months, breast milk will suffice.", "safety-age"),
        ("Steaming cooks carrots with very little nutrient loss.", "process"),
        ("Shop cereals are full of sugar.", "nutrient-content"),
        ("Deep frying can produce toxic compounds.", "process"),
        ("Tinned peaches may contain preservatives or added sugar.", "nutrient-content"),
        ("Steaming keeps the peas' colour, sweetness and most of all their vitamins.", "process"),
        ("The nutritive value rises when the grain is sprouted.", "process"),
        ("Toxins formed when oil is fried again do no good.", "process"),
        ("Sprouting makes a huge difference to the vitamins.", "process"),
        ("Broth stimulates the production of gastric juice.", "function"),
        ("Cutting sweets helps children shed some weight.", "function"),
        ("Her teeth went black from sucking sweets.", "disease"),
        ("Sugary drinks are one of the main reasons why so many children have diabetes.", "disease"),
        ("That tin is said to have nearly ten teaspoons of sugar in it.", "quantity"),
        ("Sources include lentils, beans and beef.", "nutrient-content"),
        ("He has never reacted to peanuts.", "allergen"),
        ("It is very heavy on the tummy.", "function"),
        ("Since last night's broth both boys are feeling better.", "function"),
        ("You can add black pepper if your baby is old enough.", "safety-age"),
        ("Milk should be limited to less than 24 oz per day.", "quantity"),
        ("Oats satisfy your hunger for longer.", "function"),
        ("Children who eat eggs score higher in tests.", "function"),
        ("It is best to slowly introduce new foods.", "allergen"),
        ("Introduce new things slowly into your child's diet.", "allergen"),
    ],
)
def test_an_effect_is_heard_in_other_words(text: str, kind: str) -> None:
    assert kind in [claim.kind for claim in claims(text)]


@each(
    "text",
    [
        "Wipe out the pan and stack the lids.",
        "Steaming saves time, washing up and a lot of shouting, and the vitamins can wait.",
        "The crust formed during baking is the best bit.",
        "She reacted to the spinach with a grimace and then ate it all.",
        "Since the soup went cold, we were feeling better about the salad.",
        "Add the peas if the kids are early enough for lunch.",
        "Be it lunch or nutrition in general, my sister is the boss.",
        "We kept sugar out for the lifespan of the cold.",
        "Slowly introduce the flour to the butter.",
        "Introduce the new things slowly when you rearrange the kitchen.",
        "In general I love a risotto, and it is one that I bake at least twice a month.",
        "Pour away the water and shake the colander.",
        "Use apple juice instead of water in the jelly.",
        "The dough plumps up overnight in the fridge.",
        "Numb fingers are the price of kneading cold butter.",
        "We drift off to the market on Saturdays.",
        "Leave the salmon a touch pinkish for the grown-ups' plates.",
        "Fire up the grill and tie up the parcels with string.",
        "They play with the spoons while I cook.",
        "Mop up the sauce with bread.",
        "Knock out the air and shape the loaf.",
        "He stirs up trouble whenever I stir up a batter.",
        "The bowl was blessed with a lovely glaze.",
        "Pink is fine for babies and so is blue.",
        "Help them roll the dough.",
        "You can also use juice instead of water.",
        "Juice is fine instead of water for the glaze.",
        "This knot is hard for children to manage.",
        "The rest of the cake can be given to the neighbours.",
        "Half a litre of stock will suffice.",
        "Stale toffee is hard to chew.",
        "Moving the pot with one hand is a real risk to the tablecloth.",
        "Gravy without loss of face: stir all the time.",
    ],
)
def test_kitchen_talk_in_the_same_words_claims_nothing(text: str) -> None:
    assert claims(text) == []


def test_a_lack_is_what_a_sentence_is_about() -> None:
    claim = only("Iron deficiency can lead to delayed development.", "disease")
    assert claim.subjects == ("iron deficiency",)


def test_what_they_play_a_role_in_is_theirs() -> None:
    claim = claims("Sunflower seeds come next. They play a key role in brain development.")[-1]
    assert (claim.kind, claim.subjects) == ("function", ("sunflower seed",))


def test_a_list_is_read_from_its_first_nutrient() -> None:
    claim = only("Goat's milk provides a good mix of vitamins, protein and fat.", "nutrient-content")
    assert (claim.relates_to or "").startswith("vitamins, protein and fat")


def test_a_list_goes_on_after_including() -> None:
    claim = only("Potassium is vital for bodily functions, including a healthy nervous system.", "function")
    assert "nervous system" in (claim.relates_to or "")


@pytest.mark.parametrize(
    ("text", "subjects"),
    [
        ("Too much nitrate intake is dangerous for babies.", ("nitrate",)),
        ("Carrots and beets as well as cherries contain nitrates.", ("carrot", "beet", "cherry")),
    ],
)
def test_a_subject_is_what_is_eaten_with_its_whole_list(text: str, subjects: tuple[str, ...]) -> None:
    assert claims(text)[0].subjects == subjects


@pytest.mark.parametrize(
    ("text", "stands"),
    [
        ("Marshmallows are hard for toddlers to chew.", True),
        ("Babies don't need teeth to eat whole nuts.", False),
        ("Honey can be given to babies.", False),
        ("Honey keeps them hydrated.", False),
        ("Give your baby juice instead of water.", False),
    ],
)
def test_what_is_newly_heard_is_judged_the_right_way_round(text: str, stands: bool) -> None:
    found = spoken(text, "EU")
    assert found
    assert all(one.advice in STANDS for one in found) is stands


@pytest.mark.parametrize(
    ("text", "subjects"),
    [
        ("Cod is packed with iodine and sweet potato keeps their eyes healthy.", ("sweet potato",)),
        ("Oats have plenty of fibre and pears keep tummies regular.", ("pear",)),
        ("Salmon and spinach keep eyes healthy.", ("salmon", "spinach")),
    ],
)
def test_a_second_clause_is_about_its_own_food(text: str, subjects: tuple[str, ...]) -> None:
    assert [claim.subjects for claim in claims(text) if claim.kind == "function"] == [subjects]
