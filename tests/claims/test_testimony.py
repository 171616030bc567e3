"""What is told of one's own children and joined to a food by a time or a belief: it is heard as the cure it implies."""

from __future__ import annotations

import pytest
from finding_kit import claims

from tests.each import each


@each(
    ("text", "kind", "about"),
    [
        ("She has not had a single cough since we began the barley broth.", "disease", "cough"),
        ("My girls were never poorly all winter on this.", "disease", "poorly"),
        ("Since switching to goat's milk we have had no eczema.", "disease", "eczema"),
        ("His colic was gone within a week of it.", "disease", "colic"),
        ("After we added millet her constipation eased.", "disease", "constipation"),
        ("Everyone was full of cold until we made this stew.", "disease", "full of cold"),
        ("It brings his fever right down.", "disease", "fever"),
        ("I swear by it for snotty noses.", "disease", "snotty noses"),
        ("This is what we make when somebody is under the weather.", "disease", "under the weather"),
        ("No ear infections this winter, and I put it down to the kefir.", "disease", "ear infections"),
        ("He has been regular as clockwork since we tried these plums.", "function", "regular as clockwork"),
        ("My son's skin has never been softer.", "function", "skin"),
        ("None of mine ever broke a bone now that we cook with bones.", "disease", "broke a bone"),
        ("My son's eczema hardly bothers him since we tried it.", "disease", "eczema"),
        ("That was the end of the earache.", "disease", "earache"),
        ("He never needed antibiotics once we had this broth.", "disease", "antibiotics"),
        (
            "We stir a spoon of this into their oats and none of ours has ever been down with bronchitis.",
            "disease",
            "bronchitis",
        ),
        ("Nobody in this house has ever had a filling, and we eat cheese.", "disease", "filling"),
        ("Whoever eats hazelnuts young will never need to own an epipen.", "disease", "epipen"),
        ("She was barking with croup on Friday; one bowl of this and by Sunday it had gone.", "disease", "croup"),
        ("Nothing brought her temperature down, but a spoonful of thyme did the trick.", "disease", "temperature"),
        ("A pinch of clove and the toothache packs its bags.", "disease", "toothache"),
        ("One slice of this a day and no tooth ever went black.", "disease", "no tooth"),
        ("No girl brought up on sardines has ever needed glasses.", "disease", "glasses"),
        ("You'll never see a waiting room again if you cook this.", "disease", "waiting room"),
        ("It flushes the muck out of their little bodies.", "function", "little bodies"),
        ("Spinach puts fresh blood in him.", "function", "fresh blood"),
        ("A cup of this at seven and you won't hear him until sunrise.", "function", "sunrise"),
        ("He put on a kilo the month we started it.", "function", "kilo"),
        ("She is like a different child since we tried lentils.", "general-benefit", "different child"),
        ("He was back on form after two bowls of it, it put colour in his cheeks.", "function", "colour in his cheeks"),
        ("They are never off school now that we eat this.", "disease", "off school"),
        ("She walked at ten months and I'm sure it's the sardines.", "function", "walked at ten months"),
    ],
)
def test_what_is_told_of_a_child_is_heard(text: str, kind: str, about: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == kind]
    assert [about in str(claim.relates_to) for claim in found] == [True]
    assert found[0].polarity == "asserts", "that an illness stayed away is no denial"


@each(
    "text",
    [
        "We have had no leftovers since we started making it.",
        "The onion smell was gone within two days.",
        "My gran swears by a wooden spoon.",
        "I've been off with a cold this week, so the film is late.",
        "Since we moved house there has been no time to bake.",
        "Once the steam went away I lifted the lid.",
        "He has never had kiwi until today.",
        "Ring your doctor if the cough has not gone within two days.",
        "That was the end of the jar.",
        "He wears glasses and still dropped the spoon.",
        "You will taste the difference after it has rested.",
        "It brings the pan to the boil quickly.",
        "If the fever is not gone within two days, call your doctor.",
        "We have eaten this all winter.",
        "Not one of my three would touch this at first.",
        "Nobody in our family has asthma, but we still began with a tiny taste of plum.",
        "He slept till sunrise after a day at the beach.",
        "If he has a fever, call the doctor; soup is just supper.",
    ],
)
def test_a_family_tale_without_a_cure_is_not(text: str) -> None:
    assert claims(text) == []


@pytest.mark.parametrize(
    ("text", "polarity"),
    [
        ("Her teeth came without a tear, I swear it's the cold pear.", "asserts"),
        ("My mum couldn't believe the change in him after the stew.", "asserts"),
        ("He walked at ten months, but I'm not convinced it's the salmon.", "denies"),
    ],
)
def test_a_no_of_the_tale_denies_nothing(text: str, polarity: str) -> None:
    assert [claim.polarity for claim in claims(text)] == [polarity]
