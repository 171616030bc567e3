"""Verbs are spelled as English spells them."""

from __future__ import annotations

from spoonproof.model.verb_forms import participle, past, third_person
from tests.each import each


@each(
    ("verb", "forms"),
    [
        ("chop", ("chops", "chopping", "chopped")),
        ("steam", ("steams", "steaming", "steamed")),
        ("mash", ("mashes", "mashing", "mashed")),
        ("bake", ("bakes", "baking", "baked")),
        ("dry", ("dries", "drying", "dried")),
        ("fray", ("frays", "fraying", "frayed")),
        ("mix", ("mixes", "mixing", "mixed")),
        ("season", ("seasons", "seasoning", "seasoned")),
        ("purée", ("purées", "puréeing", "puréed")),
        ("tie", ("ties", "tying", "tied")),
        ("agree", ("agrees", "agreeing", "agreed")),
    ],
)
def test_regular_forms(verb: str, forms: tuple[str, str, str]) -> None:
    assert (third_person(verb), participle(verb), past(verb)) == forms
