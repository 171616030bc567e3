"""Edits keep everything else of a file: words by place, structure by a round trip."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.model.finding import Edit
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Mapped, Scalar
from spoonproof.reading.edits import apply_edits, fitted, with_value, yaml_text
from spoonproof.reading.yaml_tree import read_yaml
from tests.each import each

HEAD = """---
title:   Leek bowl     # the working name
foods:
    - 200 g leeks   # the thin ones

    - {food: 1 egg, as: egg}
summary: "Soft \\"green\\" spoons"
texture: 'mother''s mash'
---
Leeks: a story.
"""


def change(text: str, old: str, new: str) -> str:
    document = Document("a.md", text)
    at = text.index(old)
    return apply_edits(document, [fitted(document, Edit(Span(at, at + len(old)), new))])


def test_edits_are_made_from_the_front_and_refused_where_they_overlap() -> None:
    document = Document("a", "one two three")
    edits = [Edit(Span(8, 13), "3"), Edit(Span(0, 3), "1"), Edit(Span(4, 4), "x ")]
    assert apply_edits(document, edits) == "1 x two 3"
    with pytest.raises(ValueError, match="overlap"):
        apply_edits(document, [Edit(Span(0, 5), ""), Edit(Span(4, 6), "")])
    with pytest.raises(ValueError, match="outside"):
        apply_edits(document, [Edit(Span(10, 99), "")])


@each(
    ("old", "new", "line"),
    [
        ("bowl", "pot", "title:   Leek pot     # the working name"),
        ("bowl", "pot: green", 'title:   "Leek pot: green"     # the working name'),
        ("bowl", "pot #1", 'title:   "Leek pot #1"     # the working name'),
        ("leeks", 'leeks, "thin"', '    - "200 g leeks, \\"thin\\""   # the thin ones'),
        ("spoons", 'a "b" \\', 'summary: "Soft \\"green\\" a \\"b\\" \\\\"'),
        ("mash", "it's", "texture: 'mother''s it''s'"),
        ("a story", "x: {y}", "Leeks: x: {y}."),
        ("a story", "A tale.", "Leeks: A tale."),
        ("a story.", "A tale.", "Leeks: A tale."),
    ],
)
def test_replacements_are_written_as_their_place_asks(old: str, new: str, line: str) -> None:
    changed = change(HEAD, old, new).split("\n")
    assert line in changed
    assert len(changed) == len(HEAD.split("\n"))


@given(st.text(alphabet=st.sampled_from("ab :#-'\"[]{},&*!|>%@`\\?é😀\t\n"), min_size=1, max_size=20))
def test_any_words_written_as_yaml_read_back(words: str) -> None:
    for text in (f"k: {yaml_text(words)}\n", f"k: {{a: {yaml_text(words)}, b: c}}\n"):
        node, findings = read_yaml(Document("a", text))
        assert findings == []
        assert isinstance(node, Mapped)
        value = node.entries[0][1]
        inner = value.entries[0][1] if isinstance(value, Mapped) else value
        assert isinstance(inner, Scalar)
        assert inner.value == words


@given(st.text(alphabet=st.sampled_from("ab :#-'\"[]{},&*é"), max_size=12), st.sampled_from(["bowl", "green", "mash"]))
def test_a_fitted_edit_leaves_a_head_that_reads(words: str, old: str) -> None:
    changed = Document("a.md", change(HEAD, old, words))
    node, findings = read_yaml(changed, Span(4, changed.text.index("\n---\n") + 1))
    assert findings == []
    assert isinstance(node, Mapped)
    assert [name.value for name, _ in node] == ["title", "foods", "summary", "texture"]


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_structure_changes_keep_comments_blanks_and_story(end: str) -> None:
    document = Document("a.md", HEAD.replace("\n", end))
    added = with_value(document, ["season"], ["October", "November"])
    assert added.replace(end, "\n") == HEAD.replace("---\nLeeks", "season:\n    - October\n    - November\n---\nLeeks")
    longer = with_value(document, ["foods", 2], "1 tsp oil")
    assert longer.replace(end, "\n") == HEAD.replace("as: egg}\n", "as: egg}\n    - 1 tsp oil\n")
    gone = with_value(document, ["texture"], None)
    assert gone.replace(end, "\n") == HEAD.replace("texture: 'mother''s mash'\n", "")
    deep = with_value(document, ["foods", 1, "as"], "the egg")
    assert deep.replace(end, "\n") == HEAD.replace("as: egg", "as: the egg")


def test_a_path_that_leads_nowhere_is_a_key_error() -> None:
    document = Document("a.md", HEAD)
    nowhere: tuple[list[str | int], ...] = (["film", "runs"], ["foods", 9], ["foods", "x", 1])
    for path in nowhere:
        with pytest.raises(KeyError):
            with_value(document, path, None)
    with pytest.raises(ValueError, match="head"):
        with_value(Document("a.md", "no head"), ["title"], "x")
