"""YAML to a tree: places, folds and escapes, and everything that is refused as it streams."""

from __future__ import annotations

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Listing, Mapped, Node, Scalar
from spoonproof.reading import limits
from spoonproof.reading.yaml_tree import read_yaml
from tests import kitchen
from tests.each import each


def tree(text: str) -> tuple[Document, Node | None, list[str]]:
    document = Document("a.yaml", text)
    node, findings = read_yaml(document)
    return document, node, [f"{document.position(f.span.start)[0]}:{f.rule}" for f in findings]


def written(document: Document, scalar: Scalar) -> list[str]:
    """What the file has where each character of the value is said to stand."""
    pieces = scalar.pieces or ((0, scalar.span.start, len(scalar.value)),)
    return [document.text[offset : offset + length] for _, offset, length in pieces]


def test_spans_are_code_points_and_survive_emoji_and_windows_line_ends() -> None:
    document, node, faults = tree("who: 👩‍🍳 and é\r\nwhat: [one, two]\r\n")
    assert faults == []
    assert isinstance(node, Mapped)
    assert [document.at(value.span) for _, value in node] == ["👩‍🍳 and é", "[one, two]"]
    items = node.get("what")
    assert isinstance(items, Listing)
    assert [document.at(item.span) for item in items.items] == ["one", "two"]


def test_a_part_of_a_document_gets_spans_in_the_whole() -> None:
    document = Document("a.md", "---\ntitle: Soup\n---\n")
    node, _ = read_yaml(document, Span(4, 16))
    assert isinstance(node, Mapped)
    assert document.at(node.entries[0][1].span) == "Soup"


@each(
    ("text", "value", "runs"),
    [
        ("a: one\n  two\n", "one two", ["one", "\n", "two"]),
        ("a: 'it''s'\n", "it's", ["it", "'", "s"]),
        ('a: "r\\u00e9d \\"x\\""\n', 'réd "x"', ["r", "\\", "d ", "\\", "x", "\\"]),
        ("a: >\n  one\n  two\n", "one two\n", ["one", "two"]),
        ("a: |\r\n  one\r\n    two\r\n", "one\n  two\n", ["one", "  two"]),
        ("a: >-\n  one\n\n  two\n", "one\ntwo", ["one", "two"]),
        ('a: "one \\\n   two"\n', "one two", ["one ", "two"]),
        ("a: |2\n    x\n  y\n", "  x\ny\n", ["  x", "y"]),
    ],
)
def test_folded_and_escaped_values_map_back(text: str, value: str, runs: list[str]) -> None:
    document, node, faults = tree(text)
    assert faults == []
    assert isinstance(node, Mapped)
    scalar = node.entries[0][1]
    assert isinstance(scalar, Scalar)
    assert scalar.value == value
    assert written(document, scalar) == runs


@each(
    ("text", "fault"),
    [
        ("a: 1\nb: 2\na: 3\n", "3:duplicate-key"),
        ("a: &x 1\n", "1:alias-not-allowed"),
        ("a: *x\n", "1:alias-not-allowed"),
        ("a: &a [*a]\n", "1:alias-not-allowed"),
        ("a: {<<: {b: 1}}\n", "1:alias-not-allowed"),
        ("a: !!python/object/apply:os.system [ls]\n", "1:yaml-tag-not-allowed"),
        ("a: !include x\n", "1:yaml-tag-not-allowed"),
        ("a: !!binary aGk=\n", "1:yaml-tag-not-allowed"),
        ("a: 1\n--- \nb: 2\n", "2:second-document"),
        ("a: 1\n...\nb: 2\n", "3:second-document"),
        ("1: x\n", "1:key-not-text"),
        ("? [a, b]\n: x\n", "1:key-not-text"),
        ("null: x\n", "1:key-not-text"),
        ("a:\n\t- x\n", "2:tab-indentation"),
        ("a: 1\nb: 2\nc: d: e\n", "3:yaml-syntax"),
        ("a: 'open\nb: 1\n", "1:yaml-syntax"),
        ("a: [1, 2\nb: 3\n", "2:yaml-syntax"),
        ("a: @home\n", "1:yaml-syntax"),
        ("a: x\nfoo\nb: 1\n", "2:yaml-syntax"),
        ('a: "\\q"\n', "1:yaml-syntax"),
        ("a: 1\n- b\n", "2:yaml-syntax"),
        ('a: "200 g e\\u200bgg"\n', "1:hidden-character"),
        ('a: "e\\0gg"\n', "1:control-character"),
    ],
)
def test_what_is_refused_is_said_at_its_line(text: str, fault: str) -> None:
    assert tree(text)[2] == [fault]


@pytest.mark.parametrize(
    ("text", "marked", "wanted"),
    [
        ("steps:\n1. Peel the swede.\n2. Dice it.\n", "1.", "hyphen"),
        ("steps:\n  - Peel the swede.\n  2) Dice it.\n", "2)", "hyphen"),
        ("foods:\n• 200 g swede\n", "•", "hyphen"),
        ("foods:\n\t- 200 g swede\n", "\t", "2 spaces"),
        ("title: Swede: the soft way\n", ":", '"Swede: the soft way"'),
    ],
)
def test_what_a_cook_types_out_of_habit_is_told_with_its_mending(text: str, marked: str, wanted: str) -> None:
    document = Document("a", text)
    _, (finding,) = read_yaml(document)
    assert document.at(finding.span) == marked
    assert finding.remedy is not None
    assert wanted in finding.remedy.text


def test_the_second_of_two_keys_points_at_the_first() -> None:
    document = Document("a", "salt: 1\noil: 2\nsalt: 3\n")
    _, (finding,) = read_yaml(document)
    assert document.place(finding.span)[:2] == (3, 1)
    assert document.at(finding.related[0].span) == "salt"
    assert finding.related[0].span.start == 0


def test_every_scalar_stays_text() -> None:
    _, node, faults = tree("a: NO\nb: yes\nc: 22:30\nd: 012\ne: 1_000\nf: 2024-02-30\ng: .nan\nh: true\n")
    assert faults == []
    assert isinstance(node, Mapped)
    values = [value.value for _, value in node if isinstance(value, Scalar)]
    assert values == ["NO", "yes", "22:30", "012", "1_000", "2024-02-30", ".nan", "true"]


def test_separators_that_are_no_line_ends_of_ours_stay_text() -> None:
    document, node, faults = tree("a: x\u2028y\x0cz\u0085w\nb: 1\n")
    assert faults == []
    assert isinstance(node, Mapped)
    assert [document.at(value.span) for _, value in node] == ["x\u2028y\x0cz\u0085w", "1"]
    assert node.text("a") == "x\u2028y\x0cz\u0085w"


@pytest.mark.parametrize("text", ["[" * 10_000, "{a: " * 10_000, "- " * 10_000, "? " * 10_000, "[" * 40 + "]" * 40])
def test_deep_nesting_is_a_finding(text: str) -> None:
    started = time.process_time()
    _, node, faults = tree(text)
    assert node is None
    assert [fault.partition(":")[2] for fault in faults] == ["nested-too-deep"]
    assert time.process_time() - started < 1


def test_a_billion_laughs_stops_at_the_first_anchor() -> None:
    lines = ["a0: &a0 [x, x]"] + [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 10)]
    started = time.process_time()
    assert tree("\n".join(lines))[2] == ["1:alias-not-allowed"]
    assert time.process_time() - started < 0.05


def test_too_many_values_and_too_long_lists_are_findings() -> None:
    many = "\n".join(f"k{n}: 1" for n in range(limits.YAML_NODES))
    assert [fault.partition(":")[2] for fault in tree(many)[2]] == ["too-many-values"]
    _, node, faults = tree("a:\n" + "- x\n" * (limits.LIST_LENGTH + 1))
    assert faults == [f"{limits.LIST_LENGTH + 2}:list-too-long"]
    assert isinstance(node, Mapped)
    items = node.get("a")
    assert isinstance(items, Listing)
    assert len(items.items) == limits.LIST_LENGTH


@given(st.text(alphabet=st.sampled_from("ab:-?[]{}#&*!|>'\"%@`,\\ \n\r\t1\u2028😀é"), max_size=80))
def test_any_text_gives_findings_and_spans_inside_the_file(text: str) -> None:
    document = Document("a", text)
    node, findings = read_yaml(document)
    for finding in findings:
        assert 0 <= finding.span.start <= finding.span.end <= len(text) + 1
    stack = [node] if node is not None else []
    while stack:
        one = stack.pop()
        assert 0 <= one.span.start <= one.span.end <= len(text)
        if isinstance(one, Listing):
            stack += one.items
        elif isinstance(one, Mapped):
            stack += [child for entry in one for child in entry]
        else:
            ends = 0
            for at, offset, length in one.pieces:
                assert ends <= at
                assert one.span.start <= offset
                assert offset + length <= max(one.span.end, one.span.start + 1)
                ends = at + length


@given(st.text(alphabet=st.sampled_from("abc d'\"\\é😀:#,-\n"), min_size=1, max_size=40))
def test_what_another_writer_folds_maps_back_character_by_character(value: str) -> None:
    import yaml

    for style in ('"', "'", "|", ">"):
        text = yaml.dump({"k": value}, default_style=style, width=15, allow_unicode=True)
        document = Document("a", text)
        node, findings = read_yaml(document)
        assert findings == []
        assert isinstance(node, Mapped)
        scalar = node.entries[0][1]
        assert isinstance(scalar, Scalar)
        assert scalar.value == value
        for at, offset, length in scalar.pieces:
            if length > 1:
                assert document.text[offset : offset + length] == value[at : at + length]


@pytest.mark.parametrize(("above", "mine"), [(2, 1), (4, 2), (3, 1)])
def test_a_hyphen_out_of_line_is_told_by_its_blanks(above: int, mine: int) -> None:
    foods = f"foods:\n{' ' * above}- 300 g carrots\n{' ' * mine}- 1 tsp oil\n"
    _, faults = kitchen.read_as_is(f"---\ntitle: Mash\n{foods}ages: 7-9 months\nsteps:\n  - Mash it.\n---\nWords.\n")
    (told,) = (fault for fault in faults if fault.rule == "yaml-syntax")
    assert f"This hyphen has {mine} blank" in told.message
    assert told.remedy is not None
    assert told.remedy.text.startswith(f"Write {above} blanks before it")
