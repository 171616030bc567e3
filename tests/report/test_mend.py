"""What is posted reads like a person: the truth first, the false words never again, sources at the end."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

import pytest

from spoonproof.checks.from_claims import once
from spoonproof.claims.find import find_claims
from spoonproof.hearing import hear
from spoonproof.knowledge import Knowledge
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.finding import SourceRef
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from spoonproof.report.heard import Heard, corrections, folded
from spoonproof.report.mend import CARD_LENGTH, Mend, mend, postable, reason_of
from spoonproof.report.quoting import quoted


@lru_cache(maxsize=1)
def known() -> Knowledge:
    return Knowledge()


def worst(text: str) -> JudgedClaim:
    passages, _ = read_statements(Document("said.txt", text), lines=True)
    judge = known().judge_without_dish(None, (), None)
    return max((judge(claim) for claim in find_claims(passages, known().lexicon)), key=lambda one: one.harm)


def mended(text: str, *times: str) -> Mend:
    return mend(worst(text), times, known().sources, "2 May 2026")


@pytest.mark.parametrize(
    ("text", "says", "never"),
    [
        ("Honey is fine from six months.", ["botulism", "I am sorry", "health visitor"], ["fine", "six months"]),
        ("Kohlrabi cures reflux.", ["no evidence shows", "about kohlrabi", "health visitor"], ["cures reflux"]),
        (
            "Pears are packed with iron.",
            ["mg iron per 100 g in pear", "at least 4.2 mg"],
            ["the claim needs", "packed"],
        ),
        ("A slice of cheddar has 900 mg of calcium.", ["By the food tables it is"], ["Computed", "900"]),
        ("Quinoa strengthens the lungs.", ["differently today"], ["authorised wording", "strengthens"]),
        ("Steaming keeps more vitamin C than boiling.", ["I should have added", "only until soft"], ["sorry"]),
    ],
)
def test_comments(text: str, says: list[str], never: list[str]) -> None:
    found = mended(text, "1:23")
    for words in says:
        assert words in found.comment, found.comment
    for words in never:
        assert words not in found.comment, found.comment
    assert "at 1:23" in found.comment and "(at 1:23)" in found.description
    assert len(found.card) <= CARD_LENGTH
    for part in (found.comment, found.description):
        assert not any(mark in part for mark in ("..", "  ", " .", "None", "{"))


def test_what_stands_comes_first_and_hints_are_not_posted() -> None:
    found = mended("Carrots improve eyesight.", "0:10", "2:00")
    assert "at 0:10 and 2:00" in found.comment
    stands = "Vitamin A contributes to the maintenance of normal vision"
    assert found.description.startswith(f"Correction, 2 May 2026 (at 0:10 and 2:00): {stands}.")
    assert found.card == f"Correction: {stands}."
    assert postable("say what it is a good source of") == "" and postable("made without {absent}") == ""


def test_a_note_is_no_correction() -> None:
    found = mended("Steaming keeps more vitamin C than boiling.")
    assert found.card.startswith("Note: ") and found.description.startswith("Note, 2 May 2026: ")


def test_a_recalled_source_is_told_to_her_and_not_to_the_audience() -> None:
    judged = replace(worst("Honey is fine from six months."), sources=(SourceRef("nhs-avoid", "honey", "from-memory"),))
    found = mend(judged, (), known().sources, "2 May 2026")
    assert "from memory" in found.to_you and "from memory" not in found.comment


def test_reasons_never_talk_to_the_author() -> None:
    for entry in known().register.entries:
        reason = reason_of(_with_why(entry.why))
        assert not reason.startswith(("Say ", "Name ", "Bring ", "Cite ")) and "?" not in reason, entry.id


def _with_why(why: str) -> JudgedClaim:
    return replace(worst("Honey is fine from six months."), why=why)


def test_a_comment_names_a_source_shortly_and_the_description_in_full() -> None:
    told = mended("Semolina is naturally gluten free.")
    assert "(EU) No 828/2014, https://" in told.comment
    assert "on the absence or reduced presence of gluten in food" not in told.comment
    assert "on the absence or reduced presence of gluten in food" in told.description


def drafted(text: str) -> list[str]:
    passages, _ = read_statements(Document("said.txt", text))
    found = hear(passages, known(), known().judge_without_dish(None, (), None))
    heard = [Heard(judged) for judged in once(found)]
    return [line.strip() for line in corrections(folded(heard), known().sources, "2 May 2026")]


def test_each_danger_of_a_sentence_has_a_correction_that_speaks_to_those_who_cook() -> None:
    lines = drafted("A day of food for my eight month old. She has a mini box of raisins and some popcorn on the side.")
    cards = [line for line in lines if line.startswith("Correction: ")]
    assert [card.split()[1] for card in cards] == ["Raisins", "Popcorn"]
    told = " ".join(lines)
    assert "What I said about popcorn was wrong" in " ".join(told.split())
    assert "these words" not in told and "Take the words out" not in told


@pytest.mark.parametrize(
    ("said", "card"),
    [
        ("Lentils are high in calcium.", "Correction: Lentils are high in folate."),
        ("Oats are gluten-free.", "Correction: Porridge oats contain gluten."),
        ("Quinoa contains iron.", "Note: Quinoa contains iron, 0.9 to 2.1 mg in 100 g."),
    ],
)
def test_a_card_names_its_food_and_agrees_with_it(said: str, card: str) -> None:
    assert mended(said).card == card


@pytest.mark.parametrize(
    ("said", "quote"),
    [
        ("You know what, parsnips have more iron than liver, honestly.", "“parsnips have more iron than liver”"),
        ("And a bowl of pears prevents colds all winter long", "“And a bowl of pears prevents colds all winter long”"),
        (
            "and so the three of us went down to the shore and there we said that honey is fine at six months old "
            "and then we all went home again and had a nap",
            "said that honey is fine at six months",
        ),
    ],
)
def test_a_quote_ends_where_its_clause_does(said: str, quote: str) -> None:
    text = quoted(worst(said).claim)
    assert quote in text
    assert len(text) < 160
    assert ("…" in text) is (not quote.startswith("“"))
