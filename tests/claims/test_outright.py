"""What is told outright, with no reason beside it: stay off it, cut it so, leave it if you are allergic."""

from __future__ import annotations

from finding_kit import claims, only

from tests.each import each


@each(
    ("text", "kind", "subject"),
    [
        ("Stay away from honey.", "safety-age", "honey"),
        ("Stay well away from marshmallows.", "safety-age", "marshmallow"),
        ("Steer well clear of whole almonds.", "safety-age", "whole almond"),
        ("Keep popcorn away from your toddler.", "safety-age", "popcorn"),
        ("Honey goes in the granola but never raw until they turn one.", "safety-age", "honey"),
        ("Eggs can wait until he reaches seven months.", "allergen", "egg"),
        ("Give mackerel a try between 7-9 months.", "safety-age", "mackerel"),
        ("At ten months, offer your baby the family's food.", "safety-age", "food"),
        ("By nine months yoghurt can then be introduced.", "safety-age", "yoghurt"),
        ("Always quarter blueberries.", "safety-age", "blueberry"),
        ("Remember to halve the cherry tomatoes.", "safety-age", "cherry tomato"),
        ("Grapes must be quartered for toddlers.", "safety-age", "grape"),
        ("To be on the safe side, cut the blueberries small.", "safety-age", "blueberry"),
        ("Cashews can get caught in a toddler's throat.", "safety-age", "cashew"),
        ("Hard pears pose a danger if inhaled.", "safety-age", "pear"),
        ("Don't add salt to the food you cook for your baby.", "safety-age", "salt"),
        ("If your child has a cashew allergy, skip it.", "allergen", "cashew"),
        ("Skip this if your daughter has a pistachio allergy.", "allergen", "pistachio"),
        ("Babies with eczema can be introduced to peanut at home.", "allergen", "peanut"),
        ("Leave it out if your child has a pecan allergy.", "allergen", "pecan"),
        ("Dentists advise that apple juice not be given.", "safety-age", "apple juice"),
        ("Finger food is cut small to prevent choking.", "safety-age", "finger food"),
        ("Tempeh contains soya.", "allergen", "tempeh"),
        ("Couscous contains wheat.", "allergen", "couscous"),
        ("This bake contains: milk, egg.", "allergen", "bake"),
        ("Certain foods cause an allergic reaction in some babies.", "allergen", "food"),
        ("Freezing keeps every vitamin.", "process", "freezing"),
        ("Nothing is lost when you steam parsnips.", "process", "parsnip"),
        ("The peas lose nothing when they are frozen.", "process", "pea"),
    ],
)
def test_what_is_told_outright_is_heard(text: str, kind: str, subject: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == kind]
    assert any(subject in said.lower() for claim in found for said in claim.subjects), claims(text)


@each(
    "text",
    [
        "Stay away from the hot oven.",
        "Keep the cat away from your baby.",
        "Always cut the pastry with a cold knife.",
        "Always quarter the dough.",
        "The onions should be halved.",
        "Nothing is lost if you arrive late.",
        "The tin contains twelve pieces.",
        "Turn the trays until they turn brown.",
        "Between three and four o'clock we bake.",
        "The lid got stuck in the drawer.",
        "At nine months, offer your sister a hand.",
    ],
)
def test_ordinary_talk_in_those_words_is_not(text: str) -> None:
    assert claims(text) == []


def test_a_food_kept_off_until_an_age_is_one_claim() -> None:
    found = only("Stay away from honey until she is one.", "safety-age")
    assert found.number is not None and found.number.value == 12


def test_choking_at_an_age_is_heard_where_no_food_is_named() -> None:
    assert only("Toddlers under the age of 3 are at risk of choking.", "safety-age").relates_to == "choking"


def test_what_a_baby_is_provided_with_is_given() -> None:
    assert only("It is best to provide your baby with raw eggs.", "safety-age").subjects == ("raw eggs",)


def test_what_is_said_to_be_given_to_babies_is_heard_without_an_age() -> None:
    assert only("Prunes can be given in small spoonfuls for babies.", "safety-age").subjects == ("prune",)


def test_foods_kept_until_an_age_are_heard_without_their_names() -> None:
    assert only("These foods are best avoided until 6 months of age.", "safety-age").subjects == ("food",)


def test_no_reason_to_avoid_it_is_not_free_of_it() -> None:
    found = claims("Mothers have no reason to avoid sesame to prevent allergies in their babies.")
    assert found
    assert "free" not in {claim.level for claim in found}
    assert all("sesame" in claim.subjects for claim in found)
