"""One sentence, one reading: whose view it is, which reading of its words is told, and which food a name means."""

from __future__ import annotations

import pytest
from judging_kit import Kitchen, judged
from test_judge_labelled import STANDS, spoken

from spoonproof.claims.judging.fragments import without_fragments
from spoonproof.hearing import hear
from spoonproof.knowledge import Knowledge
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements


def _advice(said: str) -> set[str]:
    return {one.advice for one in without_fragments(spoken(said))}


def _heard(said: str) -> set[str]:
    known = Knowledge()
    passages, _ = read_statements(Document("said.txt", said), lines=True)
    return {one.advice for one in hear(passages, known, known.judge_without_dish(None, (), None), apart=True)}


@pytest.mark.parametrize(
    "said",
    [
        "Lots of parents say babies can't have fish before one, but that's outdated.",
        "Our gran told us honey is fine at seven months. It isn't.",
    ],
)
def test_what_others_hold_and_the_author_waves_aside_is_taken_back(said: str) -> None:
    assert _advice(said) <= set(STANDS)


@pytest.mark.parametrize(
    "said",
    [
        "Everybody told us no honey before one, but you don't have to wait.",
        "They tell you to keep cow's milk back until one, but as the only drink at nine months it is just the same.",
    ],
)
def test_a_right_view_of_others_that_is_gainsaid_is_not_kept(said: str) -> None:
    assert not _advice(said) & set(STANDS)


@pytest.mark.parametrize(
    "said", ["They say no honey before one, and they are right.", "The NHS says no honey before one."]
)
def test_a_view_that_is_shared_stands(said: str) -> None:
    assert _advice(said) == {"keep"}


@pytest.mark.parametrize(
    "said", ["Lentil iron is hard to take up, so it cures anaemia.", "Tap water with fluoride harms babies."]
)
def test_words_kept_in_one_reading_and_not_in_another_are_not_kept(said: str) -> None:
    assert not _advice(said) & set(STANDS)


def test_the_trail_says_which_reading_was_outweighed() -> None:
    told = without_fragments(spoken("Babies need 90 mg of iron a day."))
    assert any("of two readings the worse is told" in step for one in told for step in one.trail)


@pytest.mark.parametrize(
    "said", ["Cashew milk is a source of calcium.", "Vegan cheese holds protein.", "Peanut yoghurt has calcium."]
)
def test_another_food_is_not_measured_as_the_one_in_its_name(said: str) -> None:
    assert not _advice(said) & set(STANDS)


@pytest.mark.parametrize(
    "said", ["Greek yoghurt has protein.", "Salmon fillet has vitamin D.", "Whole milk yoghurt has calcium."]
)
def test_a_name_that_only_says_more_of_the_food_is_measured(said: str) -> None:
    assert _advice(said) <= set(STANDS)


def test_what_food_keeps_is_what_is_done_to_it() -> None:
    assert not _heard("Serve the egg runny, it keeps more iron.") & set(STANDS)
    assert not _advice("Kale loses no vitamin C when it is boiled.") & set(STANDS)


def test_better_than_what_is_kept_from_them_is_right_and_no_more() -> None:
    assert _advice("Full-fat yoghurt is better for babies than low-fat yoghurt.") == {"keep"}
    assert not _advice("Agave syrup is better for babies than honey.") & set(STANDS)


def test_an_illness_that_occurs_is_no_cure() -> None:
    assert "cut-untrue" not in _advice("Constipation can happen when solids begin.")


def test_a_true_warning_is_not_heard_as_the_danger_it_warns_of() -> None:
    assert _heard("Honey harms babies.") == {"keep"}
    assert "cut-untrue" in _heard("Nothing in honey is too much for babies.")


@pytest.mark.parametrize("said", ["Honey is fine for toddlers.", "Cow's milk is fine as a main drink for toddlers."])
def test_a_toddler_is_past_the_first_birthday(said: str) -> None:
    assert _heard(said) == {"keep"}
    assert not _heard(said.replace("toddlers", "babies and toddlers")) & set(STANDS)


@pytest.mark.parametrize("said", ["Whole nuts are fine for toddlers.", "Raw milk is fine for toddlers."])
def test_what_is_no_food_for_under_fives_is_none_for_toddlers(said: str) -> None:
    assert "cut-untrue" in _heard(said) and "keep" not in _heard(said)


def test_an_illness_that_is_exempted_is_not_treated() -> None:
    assert "cut-untrue" not in _advice("You can offer egg from six months, unless there's severe eczema.")
    assert "cut-untrue" in _advice("Egg heals eczema from six months unless she is allergic.")


def test_what_is_left_out_is_looked_for_among_all_that_goes_in() -> None:
    dish = Kitchen(bowl=("coconut-milk", "lentils"))
    cut = judged("coconut-free", "allergen", dish, level="free", subjects=("it",), of_dish=True)
    assert (cut.truth, cut.advice) == ("false", "cut-untrue")
    assert "coconut milk" in cut.why


def test_a_warning_taken_back_for_an_earlier_age_gives_it() -> None:
    assert _advice("No honey before one, but a drizzle is fine at nine months.") == {"cut-untrue"}
    assert "cut-untrue" not in _advice("No honey before one, but it is fine at two years.")


@pytest.mark.parametrize(
    "said", ["Sodium in feta doesn't count, so give plenty.", "A baby who refuses lumps at eight months stays fussy."]
)
def test_what_is_only_named_is_not_kept(said: str) -> None:
    assert _advice(said) and not _advice(said) & set(STANDS)


def test_plants_are_no_better_source_of_iron_than_meat() -> None:
    assert not _advice("Lentils are a better source of iron than red meat.") & set(STANDS)


def test_that_none_was_shown_to_cure_is_right() -> None:
    assert _advice("No tea has ever been shown to cure a cold.") <= set(STANDS)
