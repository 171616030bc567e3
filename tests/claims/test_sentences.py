"""Where passages are cut: by stops where there are some, by breaths where speech has none."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from spoonproof.claims.sentences import around
from tests.kitchen import knowledge

SAID = (
    "so hello everyone and welcome back today we are making a soft pear porridge and i know that many of you have "
    "asked for it pears are full of fibre which keeps your baby regular you can start this from six months if your "
    "baby shows the signs just stir it well and let it cool before you serve it and never add any honey because it "
    "can make a young baby very ill"
)


def _cut(text: str) -> list[str]:
    hits = [at for at, char in enumerate(text) if not char.isspace()]
    return [text[found.start : found.end] for found in around(text, hits, knowledge().lexicon.breaths)]


def test_speech_is_cut_where_a_new_thing_is_said() -> None:
    breaths = _cut(SAID)
    assert any(breath.startswith("pears are full of fibre") for breath in breaths)
    assert any(breath.startswith("you can start this") for breath in breaths)
    assert " ".join(breaths) == SAID


def test_a_short_text_and_a_punctuated_one_keep_their_sentences() -> None:
    assert _cut("you can start this from six months if your baby is ready") == [
        "you can start this from six months if your baby is ready"
    ]
    assert _cut("Pears hold fibre. You can start at six months.") == [
        "Pears hold fibre.",
        "You can start at six months.",
    ]


@given(st.lists(st.sampled_from([*SAID.split(), "é", "1.5", "it’s"]), max_size=120))
def test_breaths_hold_every_word_once_and_in_order(words: list[str]) -> None:
    text = " ".join(words)
    hits = [at for at, char in enumerate(text) if not char.isspace()]
    found = list(around(text, hits, knowledge().lexicon.breaths))
    assert all(before.end <= after.start for before, after in pairwise(found))
    assert " ".join(text[one.start : one.end] for one in found).split() == words
