"""What a child is said to need in a day, held against the reference intakes.

Values: EFSA's dietary reference values and the US dietary reference intakes, as in shared/intakes.csv.
"""

from __future__ import annotations

import pytest

from spoonproof.claims.find import find_claims
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.text import Document, Passage, Piece
from tests import kitchen


def amounts(said: str) -> list[JudgedClaim]:
    known = kitchen.knowledge()
    judge = known.judge_without_dish(None, (), None)
    passage = Passage(said, Document("said", said), (Piece(0, 0, len(said)),))
    return [judge(claim) for claim in find_claims([passage], known.lexicon) if claim.kind == "quantity"]


@pytest.mark.parametrize(
    "said",
    [
        "Babies need 11 mg of iron a day from seven months.",
        "Toddlers need about 7 mg of iron a day.",
        "Babies need 400 IU of vitamin D a day.",
    ],
)
def test_a_reference_value_stands_with_its_source(said: str) -> None:
    (one,) = amounts(said)
    assert one.advice == "keep" and one.sources


@pytest.mark.parametrize("said", ["Babies need 2 mg of iron a day.", "Toddlers need 50 mg of iron a day."])
def test_what_no_authority_says_is_false(said: str) -> None:
    (one,) = amounts(said)
    assert one.advice == "cut-untrue" and "iron" in (one.wording or "")


def test_another_authoritys_figure_asks_whose_it_is() -> None:
    (one,) = amounts("Babies need 5 mg of zinc a day.")
    assert one.truth == "unproven" and one.advice != "keep" and "whose figure" in one.why


def test_what_a_bowl_has_is_no_need() -> None:
    assert all("Reference intake" not in one.why for one in amounts("This bowl has 7 mg of iron for the day."))


DAL = """---
title: Red lentil dal
ages: 7-9 months
texture: mashed
makes: 6 x 80 g
foods: [150 g red lentils, 1 tbsp rapeseed oil, 400 ml water]
steps:
  - Simmer the lentils, the oil and the water, covered, for 25 minutes, until the lentils fall apart.
---
{said}
"""


@pytest.mark.parametrize(
    ("said", "truth"),
    [
        ("A portion brings about a tenth of the iron a baby needs in a day.", "true"),
        ("One portion holds about a third of a baby's folate for the day.", "true"),
        ("One portion gives half of a baby's iron for the day.", "false"),
        ("One portion gives 90% of a baby's zinc for the day.", "false"),
    ],
)
def test_a_share_of_a_babys_day_is_worked_out_of_the_dish(said: str, truth: str) -> None:
    found = [one for one in kitchen.dish(DAL.replace("{said}", said)).claims if one.claim.quote in said]
    assert {one.truth for one in found} == {truth} and all("EFSA" in one.why for one in found)


@pytest.mark.parametrize(
    ("said", "false"),
    [
        ("One blueberry has a full day's vitamin C.", True),
        ("Two tablespoons of jackfruit have a full day's iron.", True),
        ("Two heaped tablespoons of jackfruit have a full day's iron.", False),
        ("One jackfruit has a full day's iron.", False),  # no table has its weight
        ("One slice of cucumber has a full day's iron.", False),
    ],
)
def test_a_day_in_one_piece_is_false_only_where_its_weight_is_known(said: str, false: bool) -> None:
    found = {one.truth for one in amounts(said)}
    assert found <= {"false", "unproven"} and ("false" in found) is false
