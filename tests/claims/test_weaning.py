"""When a food may be given, and how it is made safe to eat; and what is no such statement."""

from __future__ import annotations

import pytest
from finding_kit import claims

from tests.each import each


@each(
    ("text", "about", "relates"),
    [
        ("Serve this from eight months.", "", "8 months"),
        ("Start this at three months.", "", "3 months"),
        ("Strawberries? Yes, from eight months.", "strawberry", "8 months"),
        ("I wouldn't offer this before a year.", "", "before a year"),
        ("No chutney before two.", "chutney", "24 months"),
        ("It can wait till he's older.", "", "older"),
        ("Milk stays the main drink until one.", "milk", "until one"),
        ("By nine months, babies can handle lumps.", "", "9 months"),
        ("Plums can be added to your baby's diet as early as seven months.", "plum", "7 months"),
        ("We don't advise cow's milk at this stage.", "cow's milk", "at this stage"),
        ("When can toddlers have blue cheese?", "blue cheese", ""),
        ("What should pregnant women avoid?", "", "pregnant women"),
        ("You can have one espresso a day while breastfeeding.", "espresso", "while breastfeeding"),
        ("Take out the stones before you give cherries to your toddler.", "cherry", "stones"),
        ("Never let your toddler eat while running.", "", "while running"),
        ("Seat your toddler for meals.", "", "seat"),
        ("Almond butter, thinly spread, is the way to serve it.", "almond butter", "choking"),
        ("Popcorn, grapes and other foods can cause choking.", "popcorn", "choking"),
        ("The pieces should be soft enough for gums.", "", "gums"),
        ("Green potatoes should not be eaten.", "potato", "harm"),
        ("Old tins leach BPA into soup.", "", "BPA"),
        ("Starting earlier than seventeen weeks is not advised.", "", "seventeen weeks"),
    ],
)
def test_when_a_food_may_be_given(text: str, about: str, relates: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == "safety-age"]
    assert any(
        about in " ".join(claim.subjects) and relates.lower() in (claim.relates_to or "").lower() for claim in found
    ), found


@pytest.mark.parametrize(
    "text",
    [
        "Serve this at once, from the pan.",
        "We go around to my sister's at three.",
        "Take out the stones and halve the plums.",
        "Wait until the dough looks bigger.",
        "Keep the jar for six months at the back of the cupboard.",
        "She is nine months now and loves her bath.",
        "Cook until soft enough to mash with a fork.",
    ],
)
def test_ordinary_talk_of_time_is_left_alone(text: str) -> None:
    assert [claim for claim in claims(text) if claim.kind == "safety-age"] == []


def test_peanut_early_is_about_an_allergen() -> None:
    assert [(c.kind, c.relates_to) for c in claims("Offer peanut early.")] == [
        ("allergen", "peanut (allergen introduction)")
    ]


def test_what_leads_a_phrase_and_what_it_is_made_of_are_both_its_subject() -> None:
    (claim,) = (c for c in claims("A stew with barley and leeks is high in fibre.") if c.kind == "nutrient-content")
    assert {"barley", "leek"} <= set(claim.subjects)


def test_a_share_says_what_it_is_a_share_of() -> None:
    assert "water" in " ".join(c.relates_to or "" for c in claims("Cucumber is 95% water."))


def test_praise_says_how_it_praises() -> None:
    assert "wonderful for toddlers" in " ".join(
        c.relates_to or "" for c in claims("Lentils are wonderful for toddlers.")
    )


def test_what_belongs_to_a_child_speaks_of_the_child() -> None:
    (claim,) = claims("Swordfish has no place on a toddler's plate.")
    assert (claim.kind, claim.relates_to) == ("safety-age", "toddler's")
    kinds = {claim.kind for claim in claims("Too much salt is bad for a baby's kidneys.")}
    assert kinds == {"function"}


@pytest.mark.parametrize(
    ("text", "kind", "relates"),
    [
        ("An orange a day helps her grow.", "function", "grow"),
        ("Children who eat breakfast do better in class.", "function", "do better"),
        ("Growing girls need more iron.", "function", "need"),
        ("Babies can't digest raw onion.", "function", "digest"),
        ("Starchy meals give lasting energy.", "function", "energy"),
        ("Mint tea cools you down.", "function", "cools"),
        ("Barley soup will help you feel better.", "disease", "feel better"),
        ("Parents should avoid adding salt to their baby's food.", "safety-age", "baby's food"),
        ("After their second birthday, you can switch to semi-skimmed.", "safety-age", "24 months"),
        ("Toddlers need about 300 ml of milk a day.", "quantity", "300"),
        ("Four to six months is the recommended age.", "safety-age", "six months"),
        ("Look for any sign of an allergy.", "allergen", "allergy"),
        ("If her bowels become loose, omit the plums.", "disease", "loose"),
        ("So, is papaya good for toddlers?", "general-benefit", "good for toddlers"),
    ],
)
def test_what_a_food_does_for_someone(text: str, kind: str, relates: str) -> None:
    assert any(relates in f"{c.relates_to} {c.quote}" for c in claims(text) if c.kind == kind), claims(text)


@each(
    ("text", "about"),
    [
        ("Most babies are ready to try tastes at around six months.", "solid food"),
        ("At eight months a baby can handle a variety of foods.", "food"),
        ("Never leave her eating alone.", "eating"),
        ("Marrow can be introduced to a baby's diet from six months.", "marrow"),
        ("Steam or stew the pears so that they retain their vitamins.", "pear"),
        ("Breast or bottle feed exclusively for the first six months.", "breast milk"),
        ("For exclusively breastfed babies, wait until six months to start solids.", "solid food"),
        ("Scones, a well-loved snack, that are high in salt.", "scone"),
        ("They love healthy plant foods like plums and pears.", "plum"),
        ("A supper that includes plums is high in fibre.", "plum"),
        ("If he has constipation, try plums.", "plum"),
        ("Without breakfast children are tired.", "breakfast"),
        ("Avoid crisps and olives, because these foods are high in salt.", "olive"),
        ("Toddlers should get 10 micrograms of vitamin D from a supplement a day.", "vitamin d"),
        ("Once your son turns 2, you can start giving him semi-skimmed milk.", "semi-skimmed milk"),
        ("So, can babies be given curd?", "curd"),
    ],
)
def test_what_advice_is_about_where_it_hardly_says_so(text: str, about: str) -> None:
    found = claims(text)
    assert any(about in claim.subjects for claim in found), found


def test_a_danger_at_an_age_names_both() -> None:
    relates = [claim.relates_to or "" for claim in claims("Whole nuts are a choking hazard for children under five.")]
    assert any("60 months, 5 years" in said and "choking" in said for said in relates), relates
