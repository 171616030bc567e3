"""What the words around a claim make of it: two readings of one span, what is left out, a reaction, a question."""

from __future__ import annotations

import pytest
from test_judge_labelled import STANDS, spoken

from spoonproof.claims.judging.fragments import without_fragments


def _advice(said: str) -> set[str]:
    return {one.advice for one in without_fragments(spoken(said))}


@pytest.mark.parametrize("said", ["Toddlers need 70 mg of iron.", "Babies need 90 mg of iron a day."])
def test_of_two_readings_of_the_same_words_the_worse_one_is_told(said: str) -> None:
    assert _advice(said) and not _advice(said) & set(STANDS)


def test_a_day_s_need_that_is_right_stands() -> None:
    assert _advice("Toddlers need 7 mg of iron.") <= set(STANDS)


@pytest.mark.parametrize("said", ["No marlin because of its mercury.", "No shark because of all the mercury."])
def test_what_is_left_out_for_its_harm_is_held_back(said: str) -> None:
    assert _advice(said) == {"keep"}


def test_what_is_left_out_is_not_what_may_be_had() -> None:
    found = spoken("Nine month olds can have a bit of most dishes as long as there's no sugar or salt in it.")
    assert "cut-untrue" not in {one.advice for one in found}
    given = spoken("Nine month olds can have a bit of honey as long as there's no salt in it.")
    assert "cut-untrue" in {one.advice for one in given}


@pytest.mark.parametrize(
    "said",
    ["My cousin's boy came up in hives with cashew, so watch for that.", "He came out in a rash after peanut: stop."],
)
def test_a_skin_that_comes_up_after_a_food_is_no_eczema_to_be_treated(said: str) -> None:
    assert _advice(said) <= {"keep", "add", "source-it"}


def test_a_reaction_is_still_not_waved_off() -> None:
    assert _advice("She came up in hives with egg, ignore it and keep giving it.") & {"cut-untrue"}


@pytest.mark.parametrize("said", ["Beans make her gassy.", "Won't chickpeas make him windy?"])
def test_wind_that_is_brought_is_no_colic_that_is_cured(said: str) -> None:
    assert all(one.entry != "colic-probiotics" and one.advice != "cut-untrue" for one in spoken(said))


def test_what_is_called_a_medicine_is_judged_as_one() -> None:
    assert _advice("Turmeric is an antibiotic.") == {"cut-untrue"}


def test_iron_stores_that_run_low_say_no_more_than_was_shown() -> None:
    assert _advice("Iron stores run low at about six months, so there is something with iron.") <= set(STANDS)


def test_liver_by_itself_is_every_liver_that_the_tables_know() -> None:
    assert _advice("Liver is rich in iron.") <= set(STANDS)
    assert not _advice("Liver is rich in calcium.") & set(STANDS)


def test_where_a_range_settles_nothing_the_range_is_told() -> None:
    (one,) = spoken("Spinach is a good source of iron.")
    assert "mg per 100 g" in one.why and "needs 2.1 mg" in one.why


def test_a_harm_is_no_praise() -> None:
    assert "cut-untrue" not in _advice("Juice fills them up.")
    assert "cut-untrue" in _advice("Juice builds strong bones.")


@pytest.mark.parametrize("said", ["Mango won't make him clever.", "Avocado will not turn her legs into springs."])
def test_a_wonder_that_is_denied_is_right(said: str) -> None:
    assert _advice(said) <= {"keep"}


def test_a_plain_effect_that_is_denied_is_not_kept() -> None:
    assert not _advice("Lentils don't help digestion.") & set(STANDS)


def test_waiting_is_no_early_introduction() -> None:
    assert not _advice("Never give peanut before one because of allergies.") & set(STANDS)


@pytest.mark.parametrize("said", ["If he's allergic to egg, a little baked egg is safe."])
def test_with_an_allergy_to_it_nothing_is_given(said: str) -> None:
    assert _advice(said) and not _advice(said) & set(STANDS)


def test_what_somebody_has_in_a_condition_is_not_what_is_kept_from_them() -> None:
    assert not _advice("Toddlers don't need vitamin B12 if they eat nori.") & set(STANDS)


@pytest.mark.parametrize(
    "said",
    [
        "Almond butter should be smooth and thinly spread for babies.",
        "Red meat has iron that is easily absorbed.",
        "Peanut is fine from six months.",
    ],
)
def test_what_is_so_stands(said: str) -> None:
    assert _advice(said) and _advice(said) <= set(STANDS)


def test_what_was_shown_for_adults_is_not_said_of_babies_bowels() -> None:
    assert not _advice("Wheat bran helps babies' bowels.") & set(STANDS)


def test_nobody_needs_more_salt_than_the_most() -> None:
    assert not _advice("Toddlers need four grams of salt a day.") & set(STANDS)
    assert _advice("Toddlers should have no more than 2 g of salt a day.") == {"keep"}


def test_what_breaks_off_before_what_it_is_held_against_is_not_told() -> None:
    assert _advice("Iron from plants isn't absorbed as well as iron from meat.") == {"keep"}


@pytest.mark.parametrize(
    "said",
    [
        "If she coughs you should pause solids until she's one.",
        "Toddlers should drink a pint of goat's milk a day from one.",
        "Give them yoghurt from eleven months, never before, or they'll get an allergy.",
        "Salmon gives babies all the vitamin D for a month.",
    ],
)
def test_more_than_an_entry_says_is_not_kept(said: str) -> None:
    assert _advice(said) and not _advice(said) & set(STANDS)


@pytest.mark.parametrize(
    "said",
    ["I'd hold honey back until he's one.", "No whole nuts until she's five.", "There isn't a herb that cures a cold."],
)
def test_an_age_named_by_the_child_and_a_cure_denied_of_all_stand(said: str) -> None:
    assert _advice(said) <= set(STANDS)


@pytest.mark.parametrize(
    "said",
    [
        "Never stop breast milk before their first birthday.",
        "Breastfed babies need vitamin D.",
        "He can have almond butter, thinly spread on a pancake.",
        "Yeast extract is too salty for toddlers under one.",
    ],
)
def test_plain_guidance_stands(said: str) -> None:
    assert _advice(said) and _advice(said) <= set(STANDS)


def test_its_opposite_does_not() -> None:
    assert not _advice("Breastfed babies need no vitamin D.") & set(STANDS)
    assert not _advice("Stop breast milk before their first birthday, they don't need it.") & set(STANDS)
