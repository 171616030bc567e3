"""Ways of saying that there is much of a vitamin or mineral, over demo dishes that hold less than "high" asks."""

from __future__ import annotations

from test_judge_labelled import SLUGS, STANDS, Labelled, dish, heard

from tests.each import each

NRV = {
    "iron": ("iron_mg", 14),
    "zinc": ("zinc_mg", 10),
    "folate": ("folate_ug", 200),
    "vitamin C": ("vitamin_c_mg", 80),
}
"""Reg. (EU) No 1169/2011 Annex XIII Part A point 1; "high" is 30 % in 100 g (Annex of Reg. 1924/2006)."""
SAID = (
    "This dish is high in {}.",
    "It is packed with {}.",
    "There is plenty of {} in it.",
    "It gives your baby loads of {}.",
    "A fantastic source of {}.",
    "It contains all the {} they need.",
    "It meets their daily {}.",
    "All the {} your baby needs.",
    "It has so much {}.",
    "Super high in {}.",
)


@each("slug", SLUGS[::2])
def test_much_is_kept_only_where_there_is_much(slug: str) -> None:
    for name, (key, day) in NRV.items():
        held = dish(slug).numbers.dish(key, "100g")
        if held is None or held.low >= 0.3 * day:
            continue
        for said in SAID:
            row = Labelled(slug, "EU GB US", "editorial", said.format(name), "", "", "")
            found = [judged.advice for judged in heard(row)]
            assert not found or not all(advice in STANDS for advice in found), row.statement
