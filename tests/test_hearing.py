"""What is heard in speech: claims, and what is said against a caution, each once."""

from __future__ import annotations

import pytest

from spoonproof.claims.judge import statement_key
from spoonproof.hearing import hear
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from spoonproof.report.mend import mend
from tests import kitchen
from tests.each import each


def heard(text: str) -> list[JudgedClaim]:
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", text), lines=True)
    return hear(passages, known, known.judge_without_dish(None, (), None), apart=True)


@pytest.mark.parametrize(
    ("said", "caution"),
    [
        ("Leave the mash on the counter overnight, nothing happens.", "keep-chill"),
        ("You can reheat it as often as you like.", "reheat"),
        ("feed him in the bouncer if that is easier", "upright"),
    ],
)
def test_speech_against_a_caution_is_heard_and_cut(said: str, caution: str) -> None:
    found = [one for one in heard(said) if one.claim.relates_to == caution]
    assert len(found) == 1
    assert found[0].advice == "cut-untrue" and found[0].harm >= 2 and found[0].sources
    assert found[0].claim.quote in said


@each(
    "said, advice",
    [
        ("Three spoons of zurek a day prevent asthma, my aunt was sure of it.", "cut-untrue"),
        ("A slurp of pot liquor prevents anaemia.", "cut-untrue"),
        ("Fresh air prevents colds, my father always said, and out we went.", ""),
        ("Clean hands prevent tummy bugs.", ""),
        ("You need never wait for honey till one.", "cut-untrue"),
        ("Purees only until two.", "cut-untrue"),
        ("Nothing with lumps in it: blended until he's two.", "cut-untrue"),
        ("Lumps before one.", "keep"),
        ("Blend until smooth, 2 minutes.", ""),
        ("She had a rash after sesame, so no sesame until the allergy clinic.", "keep"),
        ("There are no spores in boiled honey.", "cut-untrue"),
    ],
)
def test_what_is_said_is_cut_kept_or_passed_over(said: str, advice: str) -> None:
    assert {one.advice for one in heard(said)} == ({advice} if advice else set())


@pytest.mark.parametrize(
    ("said", "kind"),
    [
        ("Peanut butter from six months.", "allergen"),
        ("Egg can be given from six months.", "allergen"),
        ("No nuts before five.", "safety-age"),
        ("Cow's milk from one year.", "safety-age"),
    ],
)
def test_when_an_allergen_comes_is_the_allergens_and_what_chokes_is_not(said: str, kind: str) -> None:
    assert [one.claim.kind for one in heard(said)] == [kind]


@pytest.mark.parametrize(
    "said", ["Let him gnaw on a thick stick of raw swede.", "Give her a handful of whole blueberries after lunch."]
)
def test_a_shape_that_chokes_is_heard_where_it_is_handed_over(said: str) -> None:
    found = [one for one in heard(said) if one.advice == "cut-untrue"]
    assert len(found) == 1 and found[0].harm == 3 and found[0].sources


@pytest.mark.parametrize(
    "said",
    [
        "She gets a lick of honey off my finger.",
        "Stir a spoon of brown sugar into her porridge.",
        "he sits on my lap and shares a few cashews",
        "Whole blueberries for his tray, just as they come.",
        "My three-year-old has whole nuts in the buggy",
        "The cherry tomatoes are quartered for his brother but the baby has hers whole",
        "a few gulps of my latte pep our one-year-old up",
    ],
)
def test_a_line_alone_is_heard_where_it_names_the_child(said: str) -> None:
    assert [one for one in heard(said) if one.advice == "cut-untrue" and one.harm == 3]


@pytest.mark.parametrize(
    "said",
    ["A drizzle of honey lifts the whole cake.", "They drink sweet tea with their lunch.", "He took my honey jar."],
)
def test_a_line_alone_about_nobodys_baby_is_not(said: str) -> None:
    assert not [one for one in heard(said) if one.claim.effect == "danger"]


@pytest.mark.parametrize(
    "said",
    [
        "Never leave the mash on the counter overnight.",
        "Do not reheat it twice.",
        "Never let him gnaw on raw swede.",
        "Give her blueberries, each squashed flat.",
        "Stir a little honey into our own bowls.",
        "she's nine years old now and she eats whole grapes like sweets",
        "Sweeten the grown-ups' kheer with honey and give your eight month old plain rice",
    ],
)
def test_a_warning_is_not(said: str) -> None:
    assert not [one for one in heard(said) if one.claim.effect == "danger"]


def test_what_a_claim_says_already_is_told_once_and_in_order() -> None:
    said = "Swede is rich in iron. Leave it on the counter overnight. Honey is fine at six months."
    found = heard(said)
    assert [one.claim.start for one in found] == sorted(one.claim.start for one in found)
    assert len([one for one in found if one.claim.effect == "danger"]) == 1
    assert any("oney" in one.claim.quote and one.advice == "cut-untrue" for one in found)


def test_a_no_before_another_clause_makes_no_warning_of_advice() -> None:
    found = heard("nobody says babies can't have flavour anyway you can give her honey from seven months")
    honey = [one for one in found if "honey" in one.claim.subjects]
    assert honey and all(one.advice == "cut-untrue" for one in honey)


def film(text: str, months: int = 6) -> list[JudgedClaim]:
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", text))
    return hear(passages, known, known.judge_without_dish(None, (), None), months=months)


UNPUNCTUATED = (
    "hello again in this film i make a swede and pear mash for babies from seven months it is really quick and the "
    "steamer does the work for us while we lay the table {} then i mash it all with a fork and a spoonful of the "
    "water from the steamer and it is ready to go in the bowl so thank you for watching and see you next week"
)


@each(
    ("said", "about"),
    [
        ("i like to stir in a little drizzle of honey because there is no risk of anything", "honey"),
        ("at the end i add a good pinch of salt to the pan", "added-salt"),
        ("so we need a pear and two tablespoons of maple syrup", "added-sugar"),
        ("some soy sauce goes in at the end", "salty-sauce"),
        ("i scatter a few whole blueberries over it", "berry-whole-baby"),
        ("there is no need to hurry you can leave the rest on the counter until the evening", "keep-chill"),
    ],
)
def test_speech_without_full_stops_is_heard_breath_by_breath_for_the_age_that_it_names(said: str, about: str) -> None:
    found = [one for one in film(UNPUNCTUATED.format(said)) if one.claim.effect == "danger"]
    assert [one.claim.relates_to for one in found] == [about]
    assert found[0].advice == "cut-untrue" and found[0].sources


@pytest.mark.parametrize(
    "said",
    [
        "her bowl goes out before i add the salt",
        "we never stir honey into it at this age",
        "the rest of us like a pinch of salt on ours",
        "she has her milk and goes to bed",
        "i scatter a few blueberries over it each of them quartered",
    ],
)
def test_what_a_film_for_babies_says_rightly_is_no_danger(said: str) -> None:
    assert not [one for one in film(UNPUNCTUATED.format(said)) if one.claim.effect == "danger"]


def test_what_goes_into_a_dish_for_nobody_named_is_left_alone() -> None:
    assert not [one for one in film("We add a drizzle of honey to the cake. It serves eight.") if one.advice != "keep"]


def test_a_danger_is_told_beside_a_lesser_fault_of_the_same_words() -> None:
    found = film("A mash for babies from six months. Add a drizzle of honey because it boosts their immune system.")
    assert "honey" in [one.claim.relates_to for one in found]


def test_each_danger_of_one_breath_is_told() -> None:
    said = "she has a mini box of raisins and some popcorn on the side"
    found = [one.claim.relates_to or "" for one in film(UNPUNCTUATED.format(said)) if one.claim.effect == "danger"]
    assert sorted(found) == ["dried-fruit-whole", "popcorn"]


@pytest.mark.parametrize(
    "said",
    [
        "Simmer the prunes and blend them for her.",
        "he was bunged up until we tried prunes",
        "Grind the almonds and stir them into his porridge.",
        "Chop the raisins and give her a few.",
    ],
)
def test_what_is_done_to_it_first_makes_it_no_danger(said: str) -> None:
    assert [one for one in heard(said) if one.claim.effect == "danger"] == []


@pytest.mark.parametrize(
    "said",
    [
        "Don't bother blending the prunes, just give him one to hold.",
        "Give her almonds without grinding them.",
        "Give him a prune to chew on.",
        "I give him dates.",
    ],
)
def test_what_is_left_undone_leaves_the_danger(said: str) -> None:
    assert [one.harm for one in heard(said) if one.claim.effect == "danger"] == [3]


@pytest.mark.parametrize(
    "said",
    ["Shark, swordfish and marlin are the ones to avoid for all children.", "Salt is something we avoid for her."],
)
def test_what_is_called_one_to_avoid_is_no_danger(said: str) -> None:
    assert all(one.advice == "keep" for one in heard(said))


@pytest.mark.parametrize(
    "said", ["We don't avoid honey, she has it on toast.", "Honey isn't one to avoid, give her a spoon."]
)
def test_what_is_not_avoided_is_one(said: str) -> None:
    found = heard(said)
    assert found and {one.advice for one in found} == {"cut-untrue"}


@pytest.mark.parametrize(
    "said",
    ["Mine eats it with whole cherry tomatoes on the side.", "Reheat it as often as you like; mine eats it cold."],
)
def test_mine_may_be_a_child(said: str) -> None:
    assert [one.claim.effect for one in heard(said)] == ["danger"]


@each(
    "said",
    [
        "soft blue cheese isn't for the baby, listeria is the worry",
        "camembert is for the childminder's own lunch, and the baby has mild cheddar",
        "we keep the swordfish for others because of the mercury",
        "cherry tomatoes get quartered because a whole one can pop",
        "my nan said to dip the dummy in honey and I said no way",
        "Gripe water was what grandmothers gave in those days, we do without",
    ],
)
def test_what_is_not_given_is_not_cut(said: str) -> None:
    assert not [one for one in heard(said) if one.advice.startswith("cut")]


def test_what_is_low_in_salt_hands_nobody_salt() -> None:
    assert all(one.advice == "keep" for one in heard("Peas give him vitamin C, and I love that they are low in salt."))


def test_each_danger_is_a_correction_of_its_own() -> None:
    said = (
        "Two drops of eucalyptus oil on her pillow. It stands on the stove until the next day. "
        "The bottle is wedged against a cushion. I leave him to it while he eats."
    )
    dangers = [one for one in heard(said) if one.claim.effect == "danger"]
    assert len(dangers) == len({statement_key(one) for one in dangers}) == 4


@pytest.mark.parametrize(
    ("said", "card"),
    [
        ("The salt goes in with the turmeric for the baby.", "No salt should be added in the first year."),
        ("She eats whole blueberries by the handful.", "blueberries"),
        ("I hand her frozen mango chunks to suck.", "thaw"),
    ],
)
def test_a_card_about_a_danger_never_reads_as_advice_to_do_it(said: str, card: str) -> None:
    danger = next(one for one in heard(said) if one.claim.effect == "danger")
    text = mend(danger, (), kitchen.knowledge().sources, "1 May 2026").card
    assert card in text.replace("Blueberries", "blueberries") and "goes into" not in text


def heard_for_babies(text: str) -> list[JudgedClaim]:
    """What is to be cut of lines that somebody says are meant for babies of six months and more."""
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", text), lines=True)
    found = hear(passages, known, known.judge_without_dish(None, (), None), apart=True, months=6, for_babies=True)
    return [one for one in found if one.advice == "cut-untrue"]


@each(
    "said",
    [
        "a stick of celery straight from the fridge",
        "a wedge of raw turnip to gnaw on",
        "an ice cube to suck on in the heat",
        "honey on the end of a breadstick for dunking",
        "a squeeze of honey over the warm oats before it cools",
        "milky tea in a beaker like grandad",
        "blue top in a beaker with lunch for the baby",
        "whole hazelnuts pressed into the top of her flapjack",
        "walnut halves make a lovely finger food at ten months",
        "grilled king mackerel mashed with potato for my eight month old",
        "raw milk for the whole family, baby included",
        "squash in his bottle because he won't take water",
        "a plum, stone in, to gnaw",
        "boil his egg three minutes so the yolk runs",
        "let her dig into the peanut butter jar with a spoon",
    ],
)
def test_lines_said_to_be_for_babies_are_heard_without_a_child_in_them(said: str) -> None:
    assert heard_for_babies(said)


@each(
    "said",
    [
        "My husband eats honey on his porridge while the baby has hers plain",
        "a stick of celery cooked soft in the stew",
        "Whole grapes are the size of a windpipe",
        "Grandpa keeps boiled sweets on the shelf",
        "popcorn for us and soft pear for her",
        "an ice cube in my glass, cool water in her cup",
        "sea salt flakes on our avocado, a squeeze of lime on his",
        "I lick almond butter off the knife and she gets it stirred in porridge",
        "a lump of peanut butter can stick in a baby's throat",
        "brie and camembert are off the menu for her",
        "we boil any raw milk and the baby never drinks it",
        "the stock cube goes in after her mash is scooped out",
        "we use oat drink on his porridge",
        "a marshmallow toasted for her big sister",
        "a mousse with raw eggs in it, so she gets none",
        "boil his egg ten minutes so no yolk runs",
        "chicken wing meat pulled off and shredded for the ten month old",
    ],
)
def test_nor_does_a_line_for_babies_endanger_them_by_what_others_eat(said: str) -> None:
    assert not heard_for_babies(said)


def test_three_dangers_in_one_breath_are_quoted_apart() -> None:
    said = (
        "so today we are having raw carrot from the fridge which he chews while he's in his buggy"
        " and then I give her whole grapes because she loves them"
    )
    quotes = [one.claim.quote for one in heard_for_babies(said)]
    assert len(quotes) == 3 and len(set(quotes)) == 3 and all(len(quote) < 80 for quote in quotes)
    assert "give her whole grapes" in quotes[-1]


def test_a_head_held_steady_is_a_sign_and_no_force() -> None:
    said = "He sits up, holds his head steady and reaches for food: he is ready for solids."
    assert [one for one in heard(said) if one.claim.effect == "danger"] == []


def test_a_danger_of_one_line_silences_no_claim_of_another() -> None:
    """Of two readings of the same words the worse decides; lines that begin alike are not the same words."""
    found = heard(
        "Leave the mash on the counter overnight, nothing happens.\nLentils are a source of iron for babies.\n"
    )
    assert {one.claim.kind for one in found} == {"safety-age", "nutrient-content"}


@each(
    ("said", "about"),
    [
        ("Her bottle is at seven. I warm it under the tap. Then I wedge it with a muslin.", "wedge it"),
        ("He has four bottles a day. At night I stir a spoon of semolina into it.", "semolina"),
        ("I salt the baby's mash because he won't eat it plain.", "salt"),
        ("We make an aioli with two raw egg yolks. Put the aioli on the baby's plate.", "aioli on"),
        ("In my day it was brandy on the gums and it never hurt us, so I rub brandy on the baby's gums.", "brandy"),
        ("Can I give the baby whole grapes? Yes, all the time.", "whole grapes"),
    ],
)
def test_a_danger_told_over_several_sentences_is_heard(said: str, about: str) -> None:
    cut = [one for one in film(said) if one.advice == "cut-untrue"]
    assert any(about in one.claim.quote for one in cut)


@pytest.mark.parametrize(
    "said",
    [
        "The baby is seven months. My eldest is six and she gets a sprinkle of feta over hers.",
        "My son is nine months. His sister is four and has school tomorrow. She's having crisps with her lunch.",
        "My neighbour gave her baby a whole grape and they ended up in hospital.",
        "Does rice in the bottle help a baby sleep? It doesn't.",
        "I'd normally pour a glass of wine into the baby's stew, but today it stays in the bottle.",
        "Myth two: you should thin the formula for a baby with wind.",
        "In my day they put whisky on the baby's gums when they were teething.",
        "He takes four bottles a day, our baby. Please don't prop it on a cushion.",
        "Cook for a kid with a peanut allergy and the baby from the same pot.",
        "If the baby is constipated never give castor oil.",
    ],
)
def test_what_is_told_of_others_of_once_or_as_a_warning_is_not_cut(said: str) -> None:
    assert not [one for one in film(said) if one.advice == "cut-untrue"]
