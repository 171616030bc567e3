"""The word model: what it may do, what it may not, and that its weights are those of its sentences."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from spoonproof.claims.finding import candidates
from spoonproof.claims.finding.analyse import Analyser
from spoonproof.claims.finding.candidates import DOUBT, PROPOSE, WordModel
from spoonproof.claims.finding.match import classes_in
from spoonproof.claims.judge import judge, level_of
from spoonproof.claims.judging.context import Context
from spoonproof.claims.lexicon import Lexicon
from spoonproof.claims.scan import tag
from spoonproof.knowledge import Knowledge
from spoonproof.model.claim import Claim
from spoonproof.model.text import Document, Passage, Piece
from tests.claims.judging_kit import read_register
from tests.kitchen import knowledge

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def lexicon() -> Lexicon:
    return knowledge().lexicon


def proposals(lexicon: Lexicon, text: str) -> list[Claim]:
    """What is proposed for a sentence that the grammar is kept from."""
    tagged = tag(lexicon, text)
    passage = Passage(text, Document("sentence", text), (Piece(0, 0, len(text)),))
    found = WordModel(lexicon, lexicon.weights).second_look(tagged, classes_in(tagged), ())
    return [
        Claim(passage, d.start, d.end, d.rule.kind, d.subjects, d.relates_to, steps=d.steps, proposed=d.proposed)
        for d in found
    ]


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Garlic lowers blood pressure and prevents heart disease.", "disease"),
        ("Ginger helps digestion and boosts the immune system.", "function"),
        ("Ghee is healthy and nutritious for babies.", "general-benefit"),
        ("Babies under one year must not have honey or salt.", "safety-age"),
    ],
)
def test_proposes_what_speaks_like_a_claim(lexicon: Lexicon, text: str, kind: str) -> None:
    (claim,) = proposals(lexicon, text)
    assert claim.proposed
    assert claim.kind == kind
    assert claim.steps[0].endswith("proposed by the word model (word-model)")
    assert claim.steps[1].startswith("words that weighed most: “")
    assert 0 <= claim.start < claim.end <= len(text)


@pytest.mark.parametrize(
    "text",
    [
        "We started with pear at six months and he pulled a face.",
        "The doctor listened to his chest and said it was a virus.",
        "Read the label and look for the salt.",
        "Brown the onions, add the lentils and simmer for twenty minutes.",
    ],
)
def test_proposes_nothing_of_ordinary_talk(lexicon: Lexicon, text: str) -> None:
    assert proposals(lexicon, text) == []


def test_a_proposal_is_asked_for_a_source(lexicon: Lexicon) -> None:
    (claim,) = proposals(lexicon, "Oats strengthen the immune system and aid digestion.")
    judged = judge(claim, read_register()[0], None, Context())
    assert (judged.truth, judged.advice, judged.entry, judged.allowed) == ("unlisted", "source-it", None, ())
    assert judged.trail[-1] == "not judged: only proposed"


def test_a_proposal_is_no_error_and_never_kept(lexicon: Lexicon) -> None:
    for text in (
        "Garlic lowers blood pressure and prevents heart disease.",
        "Whole nuts wait until your child is five.",
    ):
        for claim in proposals(lexicon, text):
            judged = judge(claim, knowledge().register, None, Context())
            assert judged.advice != "keep"
            assert level_of(judged) == "warning", "a guess is no error, even about an illness"


def test_doubts_what_the_words_speak_against(lexicon: Lexicon, monkeypatch: pytest.MonkeyPatch) -> None:
    finder = Analyser(lexicon)
    text = "I followed the recipe but left out the spinach that adds a nutritional punch."
    tagged = tag(lexicon, text)
    model = WordModel(lexicon, lexicon.weights)
    found = finder.sentence("Spinach is rich in iron.")
    assert found
    score = model.classes_score(classes_in(tagged)) + model.words_score(tagged)
    monkeypatch.setattr(candidates, "DOUBT", score + 0.1)
    monkeypatch.setattr(candidates, "_SURE", 99.0)
    assert model.second_look(tagged, classes_in(tagged), found) == ()
    monkeypatch.setattr(candidates, "DOUBT", score - 0.1)
    assert model.second_look(tagged, classes_in(tagged), found) == found


def test_without_weights_nothing_changes(lexicon: Lexicon) -> None:
    tagged = tag(lexicon, "Prunes are wonderful for constipation.")
    assert WordModel(lexicon, {}).second_look(tagged, classes_in(tagged), ()) == ()


def test_scores_add_up_to_the_weights_of_the_features(lexicon: Lexicon) -> None:
    model, weights = WordModel(lexicon, lexicon.weights), lexicon.weights["claim"]
    for text in ("Stewed apple is kind to an unsettled tummy.", "2 tbsp tahini, for the calcium (optional)"):
        tagged = tag(lexicon, text)
        present = classes_in(tagged)
        features = model.features(tagged, present)
        whole = model.classes_score(present) + model.words_score(tagged)
        assert whole == pytest.approx(sum(weights.get(f, 0.0) for f in features))


def test_the_compiled_weights_are_those_of_the_table() -> None:
    made, read = knowledge().lexicon.weights, Knowledge(made=False).read_lexicon().weights
    assert set(made) == set(read)
    assert all(made[of] == read[of] for of in read)


def test_the_table_is_small_and_every_sentence_stands_once() -> None:
    assert (ROOT / "claims" / "model" / "weights.csv").stat().st_size < 300_000
    with (ROOT / "training" / "claims" / "sentences.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert len({row["sentence"].lower() for row in rows}) == len(rows) > 4_000
    ordinary = sum(row["kind"] == "none" for row in rows)
    assert {row["kind"] for row in rows} == {"none", *candidates.RELATED}
    assert ordinary > len(rows) / 3
    assert DOUBT < 0 < PROPOSE
