"""What is never kept: dangers waved away, overclaims, and whatever else is asked; a true warning is never silenced."""

from __future__ import annotations

from typing import Any, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from judging_kit import TODAY, Kitchen, claim, exact, judged, the_register

from spoonproof.claims.judge import Context, judge, level_of, statement_key
from spoonproof.claims.trail import rerun
from spoonproof.model.claim import Kind, Polarity, Strength
from tests.each import each

STEW = Kitchen(
    dish_100g={"protein_g": exact(3, "g"), "iron_mg": exact(1.5), "energy_kcal": exact(80, "kcal")},
    grams=exact(200, "g"),
    units={("", "tbsp"): exact(15, "g"), ("banana", "piece"): exact(118, "g")},
    bowl=("lentils",),
    foods={"banana": {"energy_kcal": exact(40, "kcal"), "water_g": exact(88, "g"), "potassium_mg": exact(358)}},
)


# --- safety ----------------------------------------------------------------------------------------------

HONEY: dict[str, Any] = {"foods": ("honey",), "subjects": ("honey",), "effect": "age"}


@pytest.mark.parametrize("paid", ["editorial", "sponsored", "own-product"])
def test_a_true_warning_is_never_silenced(paid: Any) -> None:
    context = Context(paid=paid, today=TODAY)
    for text in ("no honey before one", "never give honey under twelve months", "honey can cause infant botulism"):
        assert judged(text, "safety-age", None, context, **HONEY).advice == "keep", text
    peanut = judged("offer peanut early to lower the risk of peanut allergy", "allergen", None, context,
                    foods=("peanut",), subjects=("peanut",), effect="allergy")  # fmt: skip
    assert peanut.advice == "add"
    assert "doctor" in peanut.why
    for text in ("grapes are a choking hazard", "cut grapes, they are a choking risk"):
        assert judged(text, "safety-age", None, context, foods=("grape",), effect="choking").advice == "keep"


@pytest.mark.parametrize(
    "text",
    ["honey is perfectly safe at eight months", "honey is fine from six months", "you can give honey at 9 months",
     "avoid salt, but honey is fine at eight months"],
)  # fmt: skip
def test_denying_a_true_danger_is_cut(text: str) -> None:
    found = judged(text, "safety-age", **HONEY)
    assert (found.truth, found.advice, found.harm, level_of(found)) == ("false", "cut-untrue", 3, "error")


def test_a_danger_waved_away() -> None:
    for text in ("grapes are not a choking hazard", "there is no choking risk with grapes", "grapes are harmless"):
        found = judged(text, "safety-age", foods=("grape",), subjects=("grapes",), effect="choking", polarity="denies")
        assert (found.truth, found.advice, found.harm) == ("false", "cut-untrue", 3), text


def test_leave_for_one_food_is_no_leave_for_another() -> None:
    both = judged("pear and popcorn are fine from six months", "safety-age", foods=("pear", "popcorn"), effect="age",
                  subjects=("pear", "popcorn"))  # fmt: skip
    assert both.advice != "keep"
    one = judged("pear is fine from six months", "safety-age", foods=("pear",), subjects=("pear",), effect="age")
    assert one.advice == "keep"


def test_a_question_asserts_nothing_and_is_answered() -> None:
    found = judged("is honey safe at eight months?", "safety-age", polarity="asks", **HONEY)
    assert found.advice == "add"
    assert "botulism" in found.why


def test_refuting_and_denying() -> None:
    myth = judged(
        "it is a myth that carrots improve eyesight",
        "function",
        effect="eyesight",
        foods=("carrot",),
        polarity="refutes",
    )
    assert (myth.truth, myth.advice) == ("true", "keep")
    wrong = judged("it is a myth that vitamin C helps the immune system", "function", effect="immunity",
                   nutrients=("vitamin_c_mg",), strength="mild", polarity="refutes")  # fmt: skip
    assert (wrong.truth, wrong.advice) == ("false", "cut-untrue")
    flat = judged(
        "turmeric does not cure inflammation", "disease", effect="inflammation", foods=("turmeric",), polarity="denies"
    )
    assert flat.advice != "keep" and flat.advice != "cut-untrue"


def test_a_hedge_softens_and_does_not_save() -> None:
    words: dict[str, Any] = {"effect": "immunity", "nutrients": ("zinc_mg",), "strength": "plain"}
    assert judged("zinc improves immunity", "function", **words).truth == "overstated"
    assert judged("zinc may improve immunity", "function", polarity="hedges", **words).truth == "true"
    assert (
        judged("turmeric may fight cancer", "disease", effect="cancer", foods=("turmeric",), polarity="hedges").advice
        != "keep"
    )


# --- never keep ------------------------------------------------------------------------------------------

OVERCLAIMS: list[tuple[str, str, dict[str, Any]]] = [
    ("parsnip prevents colds", "disease", {"effect": "infection"}),
    ("this cures constipation", "disease", {"effect": "constipation"}),
    ("pear soup keeps cancer away", "disease", {"effect": "cancer"}),
    ("spinach prevents anaemia", "disease", {"effect": "anaemia", "foods": ("spinach",)}),
    ("iron cures anaemia", "disease", {"effect": "anaemia", "nutrients": ("iron_mg",)}),
    ("swede boosts immunity", "function", {"effect": "immunity"}),
    ("vitamin C boosts immunity", "function", {"effect": "immunity", "nutrients": ("vitamin_c_mg",)}),
    ("zinc supercharges the immune system", "function", {"effect": "immunity", "nutrients": ("zinc_mg",)}),
    ("builds your baby's immunity", "function", {"effect": "immunity"}),
    ("a detox for little livers", "function", {"effect": "detox"}),
    ("no risk of allergy", "allergen", {"effect": "allergy", "polarity": "denies"}),
    ("hypoallergenic", "allergen", {"effect": "allergy"}),
    (
        "there is no risk of allergy with peanut",
        "allergen",
        {"effect": "allergy", "foods": ("peanut",), "polarity": "denies"},
    ),
    ("balances hormones", "function", {"effect": "metabolism"}),
    ("beetroot is brain food", "function", {"effect": "brain-development"}),
    ("iron makes babies smarter", "function", {"effect": "brain-development", "nutrients": ("iron_mg",)}),
    ("omega-3 guarantees a sharper brain", "function", {"effect": "brain-development", "nutrients": ("omega-3",)}),
    ("a superfood", "general-benefit", {"effect": "superfood"}),
    ("clean eating for babies", "general-benefit", {"effect": "health"}),
    ("chemical-free goodness", "general-benefit", {"effect": "health"}),
    ("paediatrician approved", "general-benefit", {}),
    ("packed with antioxidants", "nutrient-content", {"level": "high", "nutrients": ("antioxidants",)}),
    ("packed with nutrients", "nutrient-content", {"level": "high", "nutrients": ("nutrients",)}),
    ("full of probiotics", "nutrient-content", {"level": "high", "nutrients": ("probiotics",)}),
    ("better than breast milk", "comparative", {}),
    ("healthier than a jar", "comparative", {}),
    ("helps them sleep through the night", "function", {"effect": "sleep"}),
    ("milk makes mucus", "disease", {"effect": "infection", "foods": ("milk",)}),
    ("ginger soothes the tummy", "function", {"effect": "gut", "foods": ("ginger",)}),
    ("everything your baby needs in one bowl", "general-benefit", {}),
    ("without it they fall behind", "general-benefit", {}),
    ("start solids at two months", "safety-age", {"effect": "age"}),
    ("popcorn is fine at two years", "safety-age", {"effect": "age", "foods": ("popcorn",)}),
    ("whole nuts are great for toddlers from 18 months", "safety-age", {"effect": "age", "foods": ("nuts",)}),
    ("raw milk is safe for babies", "safety-age", {"effect": "safety", "foods": ("milk",)}),
    ("blue cheese is a good first cheese at 8 months", "safety-age", {"effect": "age", "foods": ("blue-cheese",)}),
    ("a pinch of salt is fine at eight months", "safety-age", {"effect": "age", "nutrients": ("salt",)}),
    ("cow's milk is fine as the main drink at eight months", "safety-age", {"effect": "age", "foods": ("milk",)}),
    ("liver every day is good for babies", "safety-age", {"effect": "safety", "foods": ("liver",)}),
    ("waiting until two with egg prevents allergies", "allergen", {"effect": "allergy", "foods": ("egg",)}),
    ("vegan, so safe for milk allergy", "allergen", {"effect": "allergy"}),
    ("the microwave destroys all the nutrients", "process", {"nutrients": ("nutrients",)}),
    ("boiling keeps more vitamin C than steaming", "process", {"nutrients": ("vitamin_c_mg",)}),
    ("steaming keeps all the vitamins", "process", {"nutrients": ("vitamins",)}),
    ("it does zorgly things to the spleen", "function", {"relates_to": "the spleen"}),
    ("durian is good from six months", "safety-age", {"effect": "age", "foods": ("durian",)}),
]


@each("text, kind, more, paid", [(*row, paid) for row in OVERCLAIMS for paid in ("editorial", "sponsored")])
def test_an_overclaim_is_never_kept(text: str, kind: str, more: dict[str, Any], paid: Any) -> None:
    subjects = more.get("foods", ())
    found = judged(text, kind, None, Context(paid=paid, today=TODAY), **{"subjects": subjects, **more})
    assert found.advice not in ("keep", "add"), (found.truth, found.entry, found.why)
    assert found.why and "\n" not in found.why
    if kind in ("disease", "safety-age") and not (found.sources and found.sources[0].basis == "from-memory"):
        assert level_of(found) == "error"


texts = st.sampled_from(
    [text for text, _, _ in OVERCLAIMS] + ["steamed pear", "no honey before one", "is a source of iron"]
)
ids = st.lists(
    st.sampled_from(["iron_mg", "vitamin_c_mg", "protein_g", "omega-3", "zorg", "salt", "nutrients"]), max_size=2
)
names = st.lists(st.sampled_from(["honey", "pear", "peanut", "milk", "grape", "turmeric", "zorgfruit"]), max_size=2)


@settings(max_examples=300, deadline=None)
@given(
    texts, st.sampled_from(get_args(Kind)), ids, names, st.sampled_from(get_args(Polarity)),
    st.sampled_from(get_args(Strength)),
    st.sampled_from([None, "immunity", "sleep", "allergy", "age", "choking", "cancer", "zorg", "superfood", "body"]),
    st.sampled_from([None, "high", "source", "low", "free", "contains", "more", "zorg"]),
    st.sampled_from(["editorial", "gifted", "affiliate", "sponsored", "own-product"]),
    st.booleans(), st.booleans(),
)  # fmt: skip
def test_whatever_is_asked_the_answer_is_whole(
    text: str, kind: Any, nutrients: list[str], foods: list[str], polarity: Any, strength: Any, effect: str | None,
    level: str | None, paid: Any, of_dish: bool, with_numbers: bool,
) -> None:  # fmt: skip
    asked = claim(text, kind, nutrients=tuple(nutrients), foods=tuple(foods), subjects=tuple(foods), polarity=polarity,
                  strength=strength, effect=effect, level=level, of_dish=of_dish)  # fmt: skip
    context = Context(("EU", "GB", "US", "Codex"), paid, today=TODAY)
    register = the_register()[0]
    numbers = STEW if with_numbers else None
    found = judge(asked, register, numbers, context)
    assert found.why and 0 <= found.harm <= 3 and found.trail
    assert [answer.market for answer in found.allowed] == list(context.markets)
    if found.advice == "keep" and polarity != "asks":
        assert found.truth == "true"
        guided = {e.id for e in register.entries if any(a.guidance for a in e.allowed)}
        if polarity not in ("denies", "refutes"):
            for answer in found.allowed:
                assert not (answer.bound and answer.answer == "no") or answer.entry in guided or found.entry in guided
    assert rerun(found, lambda: judge(asked, register, numbers, context))
    assert statement_key(found) == statement_key(judge(asked, register, numbers, context))
