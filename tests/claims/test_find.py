"""Claims are found with what they are about; ordinary talk is left alone."""

from __future__ import annotations

import csv
import time
from pathlib import Path

import pytest
from finding_kit import claims, lexicon, only, passage

from spoonproof.claims.find import analyser, find_claims
from spoonproof.claims.judging.quantity import number_in
from spoonproof.model.text import Document, Passage, Piece
from tests.each import each

LABELLED = Path(__file__).parent / "labelled" / "invented.csv"


def test_a_nutrient_claim_has_all_its_fields() -> None:
    claim = only("Broad beans are a great source of iron and fibre for toddlers.", "nutrient-content")
    assert claim.subjects == ("broad bean",)
    assert claim.foods == ("broad-bean",)
    assert claim.nutrients == ("iron_mg", "fibre_g")
    assert claim.level == "high"
    assert claim.polarity == "asserts"
    assert claim.audience == "toddlers"


def test_the_quote_is_exact_to_the_character() -> None:
    text = "Nothing here. Mango boosts immunity. Nothing there."
    claim = only(text, "function")
    assert claim.quote == "Mango boosts immunity"
    assert text[claim.span.start : claim.span.end] == "Mango boosts immunity"


@each(
    ("text", "quote"),
    [
        ("No honey before twelve months.", "No honey before twelve months"),
        ("There's no need to wait three days between new foods.", "no need to wait three days between new foods"),
        ("Lentils, full of protein and iron, help them sleep.", "Lentils, full of protein and iron, help them sleep"),
        ("I put cinnamon on top, because cinnamon keeps colds away.", "cinnamon keeps colds away"),
        ("Milk gives you calcium, and calcium builds bones.", "Milk gives you calcium"),
        (
            "There is no proof, they say, but no evidence that honey cures coughs.",
            "no evidence that honey cures coughs",
        ),
        ("It is a myth that spinach makes you strong.", "It is a myth that spinach makes you strong"),
        ("Plums are not just sweet, they are full of fibre.", "Plums are not just sweet, they are full of fibre"),
        ("You shouldn't give cow's milk as a drink before one.", "shouldn't give cow's milk as a drink before one"),
    ],
)
def test_a_quote_begins_at_its_subject_or_its_no(text: str, quote: str) -> None:
    assert quote in [claim.quote for claim in claims(text)]


def test_a_no_in_the_clause_before_denies_nothing() -> None:
    claim = only("No added sugar in this one and it keeps tummies calm.", "function")
    assert (claim.polarity, claim.subjects) == ("asserts", ())


@each(
    ("text", "polarity"),
    [
        ("Kale strengthens bones.", "asserts"),
        ("Kale does not strengthen bones.", "denies"),
        ("Kale may strengthen bones.", "hedges"),
        ("Does kale strengthen bones?", "asks"),
        ("Zinc is not needed for bones.", "denies"),
    ],
)
def test_polarity(text: str, polarity: str) -> None:
    assert only(text, "function").polarity == polarity


def test_an_unknown_object_of_an_effect_verb_with_an_effect_is_still_a_claim() -> None:
    assert claims("Parsnip cures almost everything.")[0].kind == "disease"
    assert claims("Parsnip cures almost everything.")[0].effect is None


@each(
    ("text", "value", "high", "unit", "basis"),
    [
        ("Each bowl gives 4 g of protein per portion.", 4, 4, "g", "portion"),
        ("Oats have 350-370 kcal per 100 g.", 350, 370, "kcal", "100 g"),
        ("One spoonful covers 20% of the daily iron.", 20, 20, "%", "day"),
        ("A litre and 1,200 mg of calcium a day.", 1200, 1200, "mg", "day"),
        ("One spoonful of this gives four grams of protein", 4, 4, "g", "spoonful"),
        ("Two tablespoons of lentils have 3 g of protein.", 3, 3, "g", "tbsp"),
    ],
)
def test_numbers(text: str, value: float, high: float, unit: str, basis: str) -> None:
    number = next(claim.number for claim in claims(text) if claim.kind == "quantity" and claim.nutrients)
    assert number is not None
    assert (number.value, number.high, number.unit, number.basis) == (value, high, unit, basis)


@each(
    ("said", "value"),
    [("1,500", 1500), ("1.5", 1.5), ("1,5", 1.5), ("0,750", 0.75), ("seven", 7), ("12,345.6", 12345.6)],
)
def test_an_amount_is_read_alike_wherever_it_is_read(said: str, value: float) -> None:
    (amount,) = claims(f"A cup of curd contains {said} mg of calcium.")
    stated = number_in(amount)
    assert stated is not None and amount.number is not None
    assert (stated.value, amount.number.value, stated.unit) == (value, value, "mg")


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Kale has more calcium than chicory.", "comparative"),
        ("Tempeh contains eight grams of protein.", "quantity"),
        ("Fizzy drinks harm the teeth.", "disease"),
        ("Sardines supply calcium.", "nutrient-content"),
        ("Tahini is one of those healthy fats.", "nutrient-content"),
    ],
)
def test_what_is_said_once_is_put_out_once(text: str, kind: str) -> None:
    assert [claim.kind for claim in claims(text)] == [kind]


@each(
    ("text", "kind", "polarity"),
    [
        ("I'm no expert but this truly helped with his cough.", "disease", "asserts"),
        ("A no-bake snack that's full of slow-release energy.", "function", "asserts"),
        ("Fennel settles little tummies.", "function", "asserts"),
        ("Runny eggs only until she's a year old.", "safety-age", "asserts"),
        ("Cod is full of iodine but never before one.", "safety-age", "asserts"),
        ("Barley contains gluten.", "allergen", "asserts"),
        ("Go easy on the salt because their kidneys can't cope with it.", "function", "asserts"),
        ("that's how we tried it and you can give this from five months", "safety-age", "asserts"),
    ],
)
def test_what_follows_an_aside_is_heard(text: str, kind: str, polarity: str) -> None:
    assert [claim.polarity for claim in claims(text) if claim.kind == kind] == [polarity]


@pytest.mark.parametrize(
    "text",
    [
        "We gave her this from five months.",
        "After porridge I'm not hungry until one.",
        "Bread flour has more gluten so the dough stretches.",
        "We can't cope with the washing up.",
    ],
)
def test_a_story_and_a_kitchen_word_stay_unheard(text: str) -> None:
    assert claims(text) == []


def test_an_age_is_months() -> None:
    claim = only("No honey before the age of one.", "safety-age")
    assert claim.foods == ("honey",)
    assert claim.number is not None
    assert (claim.number.value, claim.number.unit) == (12, "months")


def test_a_pronoun_is_carried_back_to_its_noun() -> None:
    found = claims("We love tahini on toast. It is rich in calcium.")
    assert [claim.subjects for claim in found] == [("tahini",)]
    assert any("carried from before" in step for step in found[0].steps)


def test_a_pronoun_is_carried_over_passages_of_one_document_only() -> None:
    text = "Tahini is lovely.\nIt is rich in calcium."
    document = Document("t.md", text)
    first = Passage("Tahini is lovely.", document, (Piece(0, 0, 17),))
    second = Passage("It is rich in calcium.", document, (Piece(0, 18, 22),))
    assert find_claims([first, second], lexicon())[0].subjects == ("tahini",)
    assert find_claims([passage("Tahini is lovely."), passage("It is rich in calcium.")], lexicon())[0].subjects == ()


def test_statements_that_stand_apart_carry_nothing_over() -> None:
    document = Document("t.txt", "Beans are cheap.\nThey are full of iron.")
    passages = [
        Passage("Beans are cheap.", document, (Piece(0, 0, 16),)),
        Passage("They are full of iron.", document, (Piece(0, 17, 22),)),
    ]
    assert [c.subjects for c in find_claims(passages, lexicon())] == [("bean",)]
    assert [c.subjects for c in find_claims(passages, lexicon(), apart=True)] == [()]


@each(
    ("text", "kind", "subject"),
    [
        ("Mangoes contain polyphenols that protect against colds.", "disease", "mango"),
        ("If they won't drink, try goat's milk: it's easy to digest.", "function", "goat's milk"),
        ("Ingredients that raise milk supply include oats and flax.", "function", "oat"),
        ("Many babies are allergic to cow's milk.", "allergen", "cow's milk"),
        ("A peanut allergy is common.", "allergen", "peanut"),
        ("Tummy-friendly, iron-rich lentils.", "function", "lentil"),
        ("It's safe for babies to have cinnamon.", "safety-age", "cinnamon"),
    ],
)
def test_what_a_claim_is_about(text: str, kind: str, subject: str) -> None:
    assert subject in [s for claim in claims(text) if claim.kind == kind for s in claim.subjects]


@each(
    ("text", "kind"),
    [
        ("Fizzy drinks rot their teeth.", "disease"),
        ("If the baby is constipated, try a spoon of prune purée.", "disease"),
        ("Wait three days between new foods.", "allergen"),
        ("Whole grapes are fine if you watch them.", "safety-age"),
        ("Salt is fine for babies.", "safety-age"),
        ("Undercooked chicken can carry salmonella.", "safety-age"),
        ("Goat's milk is better than formula.", "comparative"),
        ("The lentils make it more nourishing.", "general-benefit"),
        ("Sardines are among the healthiest things on toast.", "general-benefit"),
        ("Boiled in plenty of water, greens lose their vitamin C to the pan as it leaches out.", "process"),
        ("Omega-3s are plentiful in sardines.", "nutrient-content"),
        ("I stir in lentils to sneak some iron into their diet.", "nutrient-content"),
        ("Prunes are an old remedy for constipation.", "disease"),
        ("Cucumber is 96% water.", "quantity"),
    ],
)
def test_kinds(text: str, kind: str) -> None:
    assert kind in [claim.kind for claim in claims(text)]


def test_the_dish_itself() -> None:
    assert only("This mash is full of fibre.", "nutrient-content").of_dish


def test_a_spoonful_of_this_is_of_the_dish() -> None:
    claim = only("One spoonful of this gives four grams of protein", "quantity")
    assert claim.of_dish and claim.subjects == ("this",)


def test_a_function_is_of_the_nutrient_and_its_food() -> None:
    assert only("Lentils are rich in iron, which helps the brain grow.", "function").subjects == ("lentil", "iron")


def test_none_of_a_nutrient_is_a_level_not_a_denial() -> None:
    claim = only("The bars contain no sugar.", "nutrient-content")
    assert (claim.level, claim.polarity) == ("none", "asserts")
    claim = only("Spinach is not high in iron.", "nutrient-content")
    assert (claim.level, claim.polarity) == ("high", "denies")


def test_a_claim_may_straddle_lines_and_has_no_need_of_punctuation() -> None:
    found = claims("so yeah these red lentils they are just packed\nwith iron and protein and my kids love them")
    assert ("red lentil",) in [claim.subjects for claim in found]
    assert "iron_mg" in found[0].nutrients


def test_long_speech_without_punctuation_is_cut_into_breaths() -> None:
    talk = (
        "hello everyone so today we are going to make a soup with the last of the parsnips from the garden and i am "
        "going to peel them first and then we chop them quite small and put them in the big pan with some water and "
        "now parsnips are really high in fibre so they keep you full for longer and then we just let it all bubble "
        "away for twenty minutes or so while we clear up the kitchen and lay the table"
    )
    found = claims(talk)
    assert {claim.kind for claim in found} == {"nutrient-content", "function"}
    assert all(len(claim.quote.split()) < 15 for claim in found)


@each(
    "text",
    [
        "Rich, creamy and on the table in ten minutes.",
        "A good source of laughs at our table.",
        "A squeeze of lime will boost the flavour.",
        "Season with a healthy pinch of cumin.",
        "Serve with a lean protein such as turkey.",
        "200 g low-fat cream cheese",
        "Babies grow quickly in the first year.",
        "Healthy eating need not be dull.",
        "Offer an iron-rich food at every meal.",
        "Swede is perfect for busy parents.",
        "It is important for children to shell the peas themselves.",
        "Freeze in cubes for up to three months.",
    ],
)
def test_ordinary_talk_is_left_alone(text: str) -> None:
    assert claims(text) == []


def test_the_invented_sentences() -> None:
    """Bounds below what was measured, so that a change that costs much is seen."""
    with LABELLED.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    told = [row for row in rows if row["kind"] != "none"]
    ordinary = [row for row in rows if row["kind"] == "none"]
    assert len(ordinary) >= len(told)
    found = sum(bool(claims(row["sentence"])) for row in told)
    alarms = [row["sentence"] for row in ordinary if claims(row["sentence"])]
    assert found / len(told) >= 0.92
    assert len(alarms) / len(ordinary) <= 0.03, alarms


def test_time_grows_with_length_and_no_faster() -> None:
    unit = "Oats are rich in fibre, which helps digestion, and honey is not safe before one. Stir and serve. "

    def seconds(times: int) -> float:
        text = "".join(f"{unit} {number} " for number in range(times))
        analyser(lexicon()).forget()
        start = time.process_time()
        find_claims([passage(text)], lexicon())
        return time.process_time() - start

    seconds(50)
    assert seconds(800) < 24 * max(seconds(100), 0.002)


@each("text", ["", " ", "\n\n\n", "?", "iron", "ıİ ẞ iron-rich ﬁsh", "-" * 5000, "no " * 3000, "(" * 999])
def test_odd_text_is_no_trouble(text: str) -> None:
    for claim in claims(text):
        assert 0 <= claim.start < claim.end <= len(text)
