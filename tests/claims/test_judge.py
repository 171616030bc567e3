"""Both answers of a claim: true by computing or evidence, allowed by market; in doubt never kept."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from judging_kit import TODAY, Kitchen, exact, judged

from spoonproof.claims.judge import Context, level_of, own_sources
from tests.each import each

WET = {"energy_kcal": exact(40, "kcal"), "water_g": exact(88, "g")}
DRY = {"energy_kcal": exact(379, "kcal"), "water_g": exact(10, "g")}


def food(name: str, dry: bool = False, **nutrients: float) -> Kitchen:
    """A kitchen whose table knows one food."""
    return Kitchen(foods={name: {**(DRY if dry else WET), **{key: exact(value) for key, value in nutrients.items()}}})


def says(level: str, nutrient: str, *foods: str, **more: Any) -> dict[str, Any]:
    return {"level": level, "nutrients": (nutrient,), "foods": foods, "subjects": foods, **more}


# --- nutrient content: computed, as eaten ---------------------------------------------------------------


@each(
    ("iron", "level", "truth", "advice"),
    [(4.3, "high", "true", "keep"), (2.71, "high", "overstated", "soften"), (0.9, "high", "false", "cut-untrue"),
     (2.2, "source", "true", "keep"), (1.2, "source", "overstated", "soften"), (0.9, "source", "false", "cut-untrue"),
     (0.9, "low", "true", "keep"), (4.3, "low", "false", "cut-untrue"), (0.5, "contains", "overstated", "soften")],
)  # fmt: skip
def test_thresholds_of_the_annex(iron: float, level: str, truth: str, advice: str) -> None:
    found = judged("chard and iron", "nutrient-content", food("chard", iron_mg=iron), **says(level, "iron_mg", "chard"))
    assert (found.truth, found.advice) == (truth, advice)


def test_what_does_hold_is_offered() -> None:
    kitchen = food("carrot", iron_mg=0.3, vitamin_a_rae_ug=835, potassium_mg=320)
    found = judged("carrots are rich in iron", "nutrient-content", kitchen, **says("high", "iron_mg", "carrot"))
    assert (found.truth, found.wording) == ("false", "high in vitamin A")


def test_dry_oats_are_not_porridge() -> None:
    alone = food("oats", dry=True, iron_mg=4.25)
    assert (
        judged("oats are high in iron", "nutrient-content", alone, **says("high", "iron_mg", "oats")).truth
        == "unproven"
    )
    porridge = Kitchen(
        foods=alone.foods,
        dish_100g={"iron_mg": exact(0.9), "energy_kcal": exact(71, "kcal")},
        grams=exact(150, "g"),
        in_portion={("oats", "iron_mg"): exact(1.35), ("oats", "energy_kcal"): exact(114, "kcal")},
        bowl=("oats", "milk"),
    )
    found = judged("oats are high in iron", "nutrient-content", porridge, **says("high", "iron_mg", "oats"))
    assert found.truth == "false"
    dish = judged("this is high in iron", "nutrient-content", porridge, **says("high", "iron_mg", of_dish=True))
    assert dish.truth == "false"
    assert "0.9 mg" in dish.why and "4.2" in dish.why


def test_a_spice_is_judged_by_the_pinch() -> None:
    kitchen = Kitchen(
        foods={"cumin": {**DRY, "iron_mg": exact(66.4)}},
        grams=exact(120, "g"),
        in_portion={("cumin", "iron_mg"): exact(0.13), ("cumin", "energy_kcal"): exact(0.75, "kcal")},
        bowl=("cumin", "carrot"),
    )
    found = judged("cumin is packed with iron", "nutrient-content", kitchen, **says("high", "iron_mg", "cumin"))
    assert found.truth == "false"
    assert found.advice == "cut-untrue"


def test_every_nutrient_that_is_named_must_hold() -> None:
    kitchen = food("kale", vitamin_c_mg=90, iron_mg=1.5)
    both = judged(
        "kale is rich in vitamin C and iron", "nutrient-content", kitchen,
        level="high", nutrients=("vitamin_c_mg", "iron_mg"), foods=("kale",), subjects=("kale",),
    )  # fmt: skip
    assert both.truth == "false"


def test_a_missing_value_or_a_wide_range_is_unproven() -> None:
    nothing = judged("kale is rich in iron", "nutrient-content", food("kale"), **says("high", "iron_mg", "kale"))
    assert (nothing.truth, nothing.advice) == ("unproven", "source-it")
    wide = Kitchen(foods={"kale": {**WET, "iron_mg": exact(3.0, high=5.0)}})
    assert (
        judged("kale is rich in iron", "nutrient-content", wide, **says("high", "iron_mg", "kale")).truth == "unproven"
    )
    partly = Kitchen(foods={"kale": {**WET, "iron_mg": exact(5.0, high=float("inf"), coverage=0.6)}})
    assert judged("kale is rich in iron", "nutrient-content", partly, **says("high", "iron_mg", "kale")).truth == "true"


def test_either_arm_serves_for_fibre_and_the_arm_is_said() -> None:
    kitchen = Kitchen(foods={"apple": {**WET, "energy_kcal": exact(52, "kcal"), "fibre_g": exact(2.4, "g")}})
    found = judged("apples are high in fibre", "nutrient-content", kitchen, **says("high", "fibre_g", "apple"))
    assert found.truth == "true"
    assert "per 100 kcal" in found.why


def test_vitamin_a_is_never_called_too_little_by_the_other_unit() -> None:
    kitchen = food("mango", vitamin_a_rae_ug=70)  # up to 140 in the EU's retinol equivalents
    assert (
        judged(
            "mango is a source of vitamin A", "nutrient-content", kitchen, **says("source", "vitamin_a_rae_ug", "mango")
        ).truth
        == "unproven"
    )


def test_no_added_sugar_is_about_ingredients() -> None:
    traits = {"carrot": frozenset[str](), "date-syrup": frozenset({"sweetener"})}
    context = Context(today=TODAY, traits=traits)
    words = says("free", "sugars_g", of_dish=True)
    sweet = judged("no added sugar", "nutrient-content", Kitchen(bowl=("carrot", "date-syrup")), context, **words)
    plain = judged("no added sugar", "nutrient-content", Kitchen(bowl=("carrot",)), context, **words)
    unknown = judged("no added sugar", "nutrient-content", Kitchen(bowl=("parsnip",)), context, **words)
    assert [found.truth for found in (sweet, plain, unknown)] == ["false", "true", "unproven"]


# --- amounts ---------------------------------------------------------------------------------------------

STEW = Kitchen(
    dish_100g={"protein_g": exact(3, "g"), "iron_mg": exact(1.5), "energy_kcal": exact(80, "kcal")},
    grams=exact(200, "g"),
    units={("", "tbsp"): exact(15, "g"), ("banana", "piece"): exact(118, "g")},
    bowl=("lentils",),
    foods={"banana": {**WET, "potassium_mg": exact(358)}},
)


@each(
    ("number", "truth"),
    [((6, "g", "portion"), "true"), ((7, "g", "portion"), "true"), ((40, "g", "portion"), "false"),
     ((3, "g", "100g"), "true"), ((4, "g", "tbsp"), "false"), ((0.45, "g", "tbsp"), "true"),
     ((6, "mg", "portion"), "false")],
)  # fmt: skip
def test_a_stated_amount_against_the_computed_one(number: tuple[float, str, str], truth: str) -> None:
    found = judged("so much protein", "quantity", STEW, of_dish=True, nutrients=("protein_g",), number=number)
    assert found.truth == truth
    if truth == "false":
        assert found.wording is not None and "about" in found.wording


def test_per_banana_uses_the_bananas_grams() -> None:
    words: dict[str, Any] = {"foods": ("banana",), "subjects": ("banana",), "nutrients": ("potassium_mg",)}
    right = judged("422 mg of potassium a banana", "quantity", STEW, number=(422, "mg", "piece"), **words)
    wrong = judged("4220 mg of potassium a banana", "quantity", STEW, number=(4220, "mg", "piece"), **words)
    assert (right.truth, wrong.truth) == ("true", "false")
    bare = judged("422 mg of potassium", "quantity", STEW, number=(422, "mg"), **words)
    assert (bare.truth, bare.advice) == ("true", "add")
    assert "per piece" in bare.why


def test_a_measure_named_beside_the_number_is_its_basis() -> None:
    words: dict[str, Any] = {"of_dish": True, "nutrients": ("protein_g",)}
    found = judged("one tablespoon gives six grams of protein", "quantity", STEW, number=(6, "g"), **words)
    assert found.truth == "false"  # 15 g of it bring 0.45 g
    assert judged("six grams of protein", "quantity", STEW, number=(6, "g"), **words).advice == "add"
    spice = Kitchen(foods={"cumin": {**DRY, "protein_g": exact(4, "g")}})
    dry = judged(
        "four grams of protein", "quantity", spice, nutrients=("protein_g",), foods=("cumin",), number=(4, "g")
    )
    assert dry.truth == "unproven"  # nobody means 100 g of a spice


def test_a_percentage_must_name_its_reference() -> None:
    # 3 mg a portion: 21 % of the adult NRV, 50 % of the EU baby-food value, 27 % of the US infant DV.
    words: dict[str, Any] = {"of_dish": True, "nutrients": ("iron_mg",)}
    bare = judged("half of the daily iron", "quantity", STEW, number=(50, "%", "day"), **words)
    assert (bare.truth, bare.advice) == ("unproven", "soften")
    assert "21 % of the EU NRV" in bare.why and "50 % of the EU baby-food NRV" in bare.why
    named = judged("21 % of the adult NRV of iron", "quantity", STEW, number=(21, "%", "day"), **words)
    assert (named.truth, named.advice) == ("true", "keep")
    wrong = judged("90 % of the adult NRV of iron", "quantity", STEW, number=(90, "%", "day"), **words)
    assert wrong.truth == "false"
    never = judged("400 % of the daily iron", "quantity", STEW, number=(400, "%", "day"), **words)
    assert never.truth == "false"


def test_a_number_without_anything_to_compute_from_is_unproven() -> None:
    found = judged("4 g of protein a spoonful", "quantity", None, nutrients=("protein_g",), number=(4, "g", "tbsp"))
    assert (found.truth, found.advice) == ("unproven", "source-it")


# --- effects ---------------------------------------------------------------------------------------------


def test_an_established_effect_stands_in_its_own_words() -> None:
    text = "Vitamin C contributes to the normal function of the immune system"
    words: dict[str, Any] = {"effect": "immunity", "strength": "mild", "nutrients": ("vitamin_c_mg",)}
    assert judged(text, "function", **words).advice == "keep"
    adult = Context(paid="sponsored", ages=(240, None), today=TODAY)
    assert judged(text, "function", None, adult, **words).advice == "keep"
    looser = judged("Vitamin C supports immunity", "function", None, adult, **words)
    assert (looser.advice, looser.wording) == ("soften", text)
    baby = judged(text, "function", None, Context(paid="sponsored", today=TODAY), **words)
    assert baby.advice == "cut-not-allowed"
    assert {answer.answer for answer in baby.allowed if answer.market == "EU"} == {"no"}


def test_editorial_speech_is_shown_the_answer_and_not_scolded() -> None:
    found = judged(
        "Vitamin C supports immunity", "function", effect="immunity", strength="mild", nutrients=("vitamin_c_mg",)
    )
    assert found.advice == "keep"
    assert [(a.market, a.bound) for a in found.allowed] == [("EU", False), ("GB", False), ("US", False)]
    assert found.allowed[0].answer == "no" and found.allowed[0].source is not None


def test_children_have_their_own_list() -> None:
    context = Context(paid="own-product", today=TODAY)
    found = judged(
        "Lentils give iron, which contributes to normal cognitive development", "function",
        food("lentils", iron_mg=3.3), context,
        effect="brain-development", strength="mild", nutrients=("iron_mg",), foods=("lentils",), subjects=("lentils",),
    )  # fmt: skip
    assert [a.answer for a in found.allowed if a.market in ("EU", "GB")] == ["with-wording", "with-wording"]
    assert (found.advice, found.wording) == ("cut-not-allowed", None) or found.wording is not None
    poor = judged(
        "Marrow gives iron for the brain", "function", food("marrow", iron_mg=0.2), context,
        effect="brain-development", strength="mild", nutrients=("iron_mg",), foods=("marrow",), subjects=("marrow",),
    )  # fmt: skip
    assert poor.truth == "overstated"
    assert [a.answer for a in poor.allowed if a.market == "EU"] == ["no"]


def test_a_whole_food_is_offered_the_wording_of_its_nutrient() -> None:
    found = judged("Carrots improve eyesight", "function", food("carrot", vitamin_a_rae_ug=835),
                   effect="eyesight", foods=("carrot",), subjects=("carrots",))  # fmt: skip
    assert (found.truth, found.advice) == ("overstated", "soften")
    assert found.wording == "Vitamin A contributes to the maintenance of normal vision"


def test_the_under_twos_in_the_united_states() -> None:
    context = Context(markets=("US",), paid="sponsored", ages=(8, 12), today=TODAY)
    spinach = food("spinach", iron_mg=5)
    iron = judged("spinach is high in iron", "nutrient-content", spinach, context, **says("high", "iron_mg", "spinach"))
    assert iron.allowed[0].answer == "with-wording"
    protein = Kitchen(foods={"tofu": {**WET, "protein_g": exact(9, "g")}})
    found = judged("tofu is high in protein", "nutrient-content", protein, context, **says("high", "protein_g", "tofu"))
    assert (found.truth, found.allowed[0].answer, found.advice) == ("true", "no", "cut-not-allowed")
    assert found.sources[0].locator == "101.13(b)(3)"
    disease = judged("keeps cancer away", "disease", None, context, effect="cancer")
    assert disease.allowed[0].source is not None and disease.allowed[0].source.locator == "101.14(e)(5)"


def test_codex_binds_no_one() -> None:
    found = judged(
        "rich in iron",
        "nutrient-content",
        food("kale", iron_mg=5),
        Context(("Codex",), "sponsored", today=TODAY),
        **says("high", "iron_mg", "kale"),
    )
    assert (found.allowed[0].bound, found.allowed[0].answer, found.advice) == (False, "no", "keep")


def test_a_source_of_her_own_is_shown_as_hers() -> None:
    item = {"id": "smith-2020", "custom": {"supports": ["rice strengthens the lungs"]}}
    context = Context(today=TODAY, own=own_sources([item, {"id": "no-words"}, {"custom": {"supports": "x y"}}]))
    assert [source.id for source in context.own] == ["smith-2020"]
    words: dict[str, Any] = {"effect": "zorg", "subjects": ("rice",)}
    backed = judged("rice strengthens the lungs", "function", None, context, **words)
    assert (backed.truth, backed.advice) == ("unlisted", "add")
    assert backed.sources[-1].basis == "own"
    bare = judged("rice strengthens the nose", "function", None, context, **words)
    assert bare.advice == "source-it"
    item["custom"] = {"supports": ["rice cures the lungs"]}
    ill = judged(
        "rice cures the lungs", "disease", None, Context(today=TODAY, own=own_sources([item])), effect="asthma"
    )
    assert ill.advice == "source-it"
    assert ill.sources[-1].basis == "own"


def test_the_trail_can_be_read() -> None:
    found = judged(
        "kale is high in iron", "nutrient-content", food("kale", iron_mg=1.5), **says("high", "iron_mg", "kale")
    )
    text = "\n".join((*found.trail, found.why))
    assert "high-vitamin-or-mineral" in text
    assert "4.2 mg in 100 g" in text
    assert "EU (not bound)" in text


def test_a_recalled_figure_makes_no_error() -> None:
    found = judged("it is vegan so safe for babies", "allergen", subjects=("it",))
    assert (found.advice, found.sources[0].basis, level_of(found)) == ("cut-untrue", "read", "error")
    recalled = replace(found, sources=tuple(source._replace(basis="from-memory") for source in found.sources))
    assert level_of(recalled) == "warning"
