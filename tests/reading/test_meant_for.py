"""The age that a film or a text says it is for."""

from __future__ import annotations

from spoonproof.reading.meant_for import meant_for
from tests.each import each


@each(
    ("said", "months"),
    [
        ("a purée for babies from seven months", 7),
        ("Lunch for my 10 month old.", 10),
        ("this is for 8 months+ and there is a 12 months plus way of it", 8),
        ("from 6 to 9 months", 6),
        ("my little boy is fourteen months now", 14),
        ("a first mash for your baby", 9),
        ("It freezes well for 3 months. A mash for babies aged 8 months.", 8),
        ("keeps in the freezer for three months, good for your baby", 9),
        ("A cake for eight. It keeps for 2 months.", None),
        ("Roast the squash for 40 minutes.", None),
    ],
)
def test_the_youngest_age_named_holds(said: str, months: int | None) -> None:
    assert meant_for([said], otherwise=9) == months


def test_the_youngest_over_all_that_is_said() -> None:
    assert meant_for(["from ten months", "or from seven months, mashed"]) == 7
