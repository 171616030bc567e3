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
