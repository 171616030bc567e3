"""The lexicon is inflected when it is built, and says where a row is wrong."""

from __future__ import annotations

import pytest
from finding_kit import lexicon

from spoonproof.claims.inflect import forms, plural, verb_forms
from spoonproof.claims.lexicon import Lexicon, fold
from spoonproof.claims.scan import hits, tag
from spoonproof.model.table import Row


@pytest.mark.parametrize(
    ("word", "more"), [("berry", "berries"), ("leaf", "leaves"), ("potato", "potatoes"), ("date", "dates")]
)
def test_plurals(word: str, more: str) -> None:
    assert plural(word) == more


@pytest.mark.parametrize(
    ("verb", "form"),
    [("stop", "stopping"), ("soothe", "soothed"), ("fortify", "fortifies"), ("fuel", "fuelling"), ("keep", "kept")],
)
def test_verbs(verb: str, form: str) -> None:
    assert form in verb_forms(verb)


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [("fibre", "fiber"), ("anaemia", "anemia"), ("diarrhoea", "diarrhea"), ("stabilise", "stabilize")],
)
def test_both_spellings(ours: str, theirs: str) -> None:
    assert theirs in list(forms(ours, "fixed"))


def test_a_row_without_terms_names_its_place() -> None:
    with pytest.raises(ValueError, match=r"words\.csv:7"):
        Lexicon.from_rows({"words": [Row({"class": "benefit", "terms": ""}, "words.csv", 7)]})


def test_the_food_table_gives_the_id() -> None:
    rows = [
        Row(
            {"class": "food", "id": "roots", "terms": "carrot;manuka beet", "forms": "noun", "each": "yes"},
            "foods.csv",
            2,
        )
    ]
    built = Lexicon.from_rows({"foods": rows}, [("carrot", "carrot"), ("beet", "beetroot")])
    ids = [item.term.senses["food"].id for item in tag(built, "carrots, manuka beet").items if item.term]
    assert ids == ["carrot", "beetroot"]


def test_hits_stand_on_word_boundaries() -> None:
    assert hits(lexicon(), "environment irony") == []
    assert hits(lexicon(), "Iron-rich") == [0]


def test_folding_keeps_offsets() -> None:
    for text in ("İrön’s purée", "ẞtraße", "ﬁbre"):
        assert len(fold(text)) == len(text)


def test_building_twice_gives_the_same() -> None:
    from spoonproof.knowledge import Knowledge

    one, two = Knowledge().lexicon, Knowledge().lexicon
    assert one.symbols == two.symbols
