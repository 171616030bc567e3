"""How a child is fed safely: shapes cut, eaters watched, allergies minded; and what is no such thing."""

from __future__ import annotations

import pytest
from finding_kit import claims

from tests.each import each


@each(
    ("text", "about", "relates"),
    [
        ("For toddlers, squash blueberries.", "blueberr", "blueberries"),
        ("With whole olives about, be sure to halve them for the children.", "olive", "olives"),
        ("There is a risk with whole almonds on a party table.", "almond", "almonds"),
        ("Avoid giving tough or stringy bites of any sort at all, like whole nuts or popcorn.", "nut", "popcorn"),
        ("Keep a close eye on young children while they eat.", "eating", "eat"),
        ("Toddlers should not be allowed to run about with food in their mouths.", "food", "mouths"),
        ("Children must not walk or play while eating.", "eating", "walk"),
        ("Keep a watchful eye on your toddler while she eats.", "eating", "eats"),
        ("Young ones, like all children, should be supervised while being fed.", "eating", "supervised"),
        ("Make sure your child sits at the table while eating.", "eating", "at the table"),
        ("Have your toddler eat in a high chair.", "eating", "high chair"),
        ("Chop foods for your toddler into small pieces.", "food", "small pieces"),
        ("Hot dogs should be cut into thin strips for a child.", "hot dog", ""),
        ("Squash cherries and other round foods.", "round foods", "round foods"),
        ("Chipolatas should always be cut lengthways.", "chipolata", "chipolata"),
        ("Finger foods should be tender and cut into tiny pieces.", "finger food", "tiny pieces"),
        ("Mash or cut his food into small pieces.", "", "small pieces"),
        ("Stay nearby whenever your toddler is eating.", "eating", "stay nearby"),
        ("There's no need to add salt to your baby's food.", "salt", "baby's food"),
        ("Avoid these foods in the first year.", "food", "first year"),
        ("A grape can get stuck in a child's airway.", "grape", "stuck in"),
        ("Stringy foods are hard to chew for a toddler.", "food", "hard to chew"),
        ("Make sure toddlers are sitting while they eat.", "eating", "sitting"),
        ("Offer food only where your toddler can be supervised.", "food", "supervised"),
        ("A usual mistake is to start solids too early.", "solid food", "too early"),
        ("Firm foods that slide about are harder for a toddler to eat.", "food", "eat"),
        ("Do not give any seafood (prawns, mussels, cockles or whelks) to babies.", "seafood", "babies"),
        ("Feed your toddler only when she is sitting down.", "eating", "sitting down"),
        ("Salt is one to be careful with for your baby.", "salt", "baby"),
        ("Offering solids too soon can upset the tummy of a small baby.", "solids", "too soon"),
        ("Don't introduce a new food when your baby is unwell.", "new food", "unwell"),
        ("Avoid all honey, homemade or shop-bought, until your baby is one year old.", "honey", "one year old"),
    ],
)
def test_safety_at_the_table_is_heard(text: str, about: str, relates: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == "safety-age"]
    assert any(
        about in " ".join(claim.subjects) and relates.lower() in (claim.relates_to or "").lower() for claim in found
    ), found


@pytest.mark.parametrize(
    ("text", "polarity"),
    [
        ("Serve this to a toddler with a milk allergy.", "asserts"),
        ("A child with an egg allergy can have this.", "asserts"),
        ("Give it to anyone who is allergic to eggs.", "asserts"),
        ("Never serve this to anyone who is allergic to eggs.", "denies"),
    ],
)
def test_a_dish_given_to_those_with_an_allergy_is_called_free_of_it(text: str, polarity: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == "allergen"]
    assert [(claim.level, claim.polarity) for claim in found] == [("free", polarity)], found


@pytest.mark.parametrize(
    ("text", "effect"),
    [
        ("If all is well, you can then introduce sesame in your own kitchen.", "allergen-introduction"),
        ("A reaction usually shows within minutes of eating.", "allergic-reaction"),
        ("Some foods can bring on a bad allergic flare.", "allergy"),
        ("It is best to introduce new foods one at a time.", "allergen-introduction"),
        ("An allergy can show within minutes, or an hour or so after eating.", "allergic-reaction"),
        ("A few welts need not be a sign of an allergic reaction.", "allergic-reaction"),
        ("Introduce your baby to each of the common allergens in turn.", "allergen-introduction"),
        ("Putting off the introduction of foods may raise the risk of an allergy to them.", "allergen-introduction"),
    ],
)
def test_an_allergen_tried_at_home_is_heard(text: str, effect: str) -> None:
    assert effect in {claim.effect for claim in claims(text) if claim.kind == "allergen"}


def test_new_foods_apart_are_what_is_spoken_of() -> None:
    assert "new foods" in claims("Wait three days between new foods.")[0].subjects


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("Steamed carrots hold more beta-carotene than raw ones.", {"process"}),
        ("Cooked tomatoes have more lycopene than raw.", {"process"}),
        ("Carrots have more beta-carotene than peas.", {"comparative"}),
        ("Small kidneys cannot withstand high salt levels.", {"function"}),
    ],
)
def test_one_thing_is_said_once_under_the_kind_that_says_most(text: str, kinds: set[str]) -> None:
    assert {claim.kind for claim in claims(text)} == kinds


@pytest.mark.parametrize(
    ("text", "about"),
    [
        ("Toddlers on a vegan diet may not get enough zinc from beans.", "vegan diet"),
        ("Those on a low fat or restricted diet may not be getting enough iron from their drops.", "restricted diet"),
        ("A planned vegetarian (with eggs and some fish) diet is healthy.", "diet"),
    ],
)
def test_a_diet_is_what_is_spoken_of(text: str, about: str) -> None:
    found = claims(text)
    assert any(about in claim.subjects for claim in found), found
    assert not any("fat" in (claim.relates_to or "") for claim in found), found


@each(
    "text",
    [
        "Advice about when to introduce egg has changed a lot.",
        "Set aside a bowl for baby and mash the chickpeas.",
        "Drain the chickpeas and mash them with a fork for your baby.",
        "She let the children run about in the garden before lunch.",
        "Keep an eye on the onions while they brown.",
        "Growing babies like new foods.",
        "Let the dough sit while the children eat.",
        "The crust is hard to chew once cold.",
        "The commonest mistake is to start stirring too early.",
        "Once the olives have drained they should be chopped and stirred in.",
        "Cut the pastry into small pieces.",
        "It's good to learn back blows in case a baby chokes.",
        "Once she is over six months, mums cannot wait to introduce solids.",
        "Slice the grapes in half and stir them into the salad.",
        "Make sure the table is laid before the children eat.",
    ],
)
def test_ordinary_talk_stays_ordinary(text: str) -> None:
    assert not claims(text)


def test_a_throat_that_something_sticks_in_is_not_ill() -> None:
    assert not [claim for claim in claims("He had a grape stuck in his small throat.") if claim.kind == "disease"]
