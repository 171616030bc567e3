"""Stories: passages that read plainly and map back to every character; marks, comments, links."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.model.finding import Finding
from spoonproof.model.text import Document, Passage, Span
from spoonproof.reading.markdown import prose_parser, read_prose, story_text
from tests.growth import grown

STORY = """# A *cold* start #

Parsnips are **sweet** and [full of _good_](https://a.example "t") things
that keep `a week` &amp; more\\*  ![bowl of mash](bowl.jpg) end * there 😀 é.

> - quoted *twice*
>   over

| food | why|
|---|---|
| pear | soft\\|ripe *now* |

1. one_two_three
   goes on
"""


def prose(text: str) -> tuple[Document, list[Passage], list[Finding]]:
    document = Document("a.md", text)
    return (document, *read_prose(document, Span(0, len(text))))


def unmapped(document: Document, passage: Passage) -> list[str]:
    """Characters that are said to stand where something else stands (blanks for line ends apart)."""
    return [
        char for at, char in enumerate(passage.text) if char != " " and document.at(passage.span(at, at + 1)) != char
    ]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_passages_read_plainly_and_map_back(end: str) -> None:
    document, passages, findings = prose(STORY.replace("\n", end))
    assert findings == []
    assert [passage.text for passage in passages] == [
        "A cold start",
        "Parsnips are sweet and full of good things that keep a week & more*   end * there 😀 é.",
        "bowl of mash",
        "quoted twice over",
        "food",
        "why",
        "pear",
        "soft|ripe now",
        "one_two_three goes on",
    ]
    assert [p.kind for p in passages if p.kind != "story"] == ["picture"]
    # An escape maps to its backslash, an entity to its first character.
    assert [wrong for passage in passages for wrong in unmapped(document, passage)] == ["*"]


def test_a_phrase_across_a_line_end_and_markup_has_its_place() -> None:
    document, (passage,), _ = prose("So **rich\nin** iron.")
    start = passage.text.index("rich in iron")
    assert document.at(passage.span(start, start + len("rich in iron"))) == "rich\nin** iron"


def test_a_mark_leaves_the_block_after_it_and_only_that() -> None:
    _, passages, findings = prose(
        "<!-- leave: a myth -->\nHoney cures coughs.\n\nCarrots.\n\n- a\n<!--leave:b-->\n- c\n\n"
        "<!-- a note -->Pear <!-- x -->mash"
    )
    assert findings == []
    assert [(p.text, p.leave) for p in passages] == [
        ("Honey cures coughs.", "a myth"),
        ("Carrots.", None),
        ("a", None),
        ("c", "b"),
        ("Pear mash", None),
    ]


def test_a_mark_before_a_list_covers_all_of_it() -> None:
    _, passages, _ = prose("<!-- leave: old sayings -->\n- one\n- two\n\nthree")
    assert [(p.text, p.leave) for p in passages] == [("one", "old sayings"), ("two", "old sayings"), ("three", None)]


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        ("<!-- leave -->\nx", ["1:leave-without-reason"]),
        ("<!-- leave: -->\nx", ["1:leave-without-reason"]),
        ("x\n\n<!-- leave: y -->\n", ["3:leave-marks-nothing"]),
        ("x\n<!-- open\ny", ["2:comment-not-closed"]),
        ("a [x](javascript:alert) b", ["1:unsafe-link"]),
        ("[x](JaVaScRiPt:1)", ["1:unsafe-link"]),
        ("[x](java&#115;cript:1)", ["1:unsafe-link"]),
        ("[x](data:text/html,1)", ["1:unsafe-link"]),
        ("one\n\n![x](file:///etc/passwd)", ["3:unsafe-link"]),
        ("<vbscript:1>", ["1:unsafe-link"]),
        ("[x]\n\n[x]: javascript:1", ["1:unsafe-link"]),
        ("[x](https://a.b) <me@a.b> [y](/z?a:b) [z](recipe:soup) [w](#a:b)", []),
    ],
)
def test_marks_comments_and_links_that_are_wrong(text: str, faults: list[str]) -> None:
    document, _, findings = prose(text)
    assert [f"{document.position(f.span.start)[0]}:{f.rule}" for f in findings] == faults


def test_html_and_unsafe_links_stay_words() -> None:
    html = prose_parser().render(story_text("<script>x</script> <!-- gone --> [go](javascript:x) **b**"))
    assert html == "<p>&lt;script&gt;x&lt;/script&gt;  go <strong>b</strong></p>\n"


MAKERS: dict[str, Callable[[int], str]] = {
    "emphasis": lambda n: "*_" * n,
    "pictures": lambda n: "![" * n,
    "empty links": lambda n: '[](" ' * n,
    "underlines": lambda n: "?c_" * n,
    "brackets": lambda n: "[" * n,
    "quotes": lambda n: ">" * n,
    "angles": lambda n: "<" * n,
    "ticks": lambda n: "".join("`" * k + " " for k in range(int(n**0.5))),
    "marks": lambda n: "\"'" * n,
    "comments": lambda n: "<!--" * n,
    "closed comments": lambda n: "<!-- leave: x -->" * (n // 4),
    "definitions": lambda n: "".join(f"[a{k}]: b\n" for k in range(n // 4)),
    "lists": lambda n: "".join(" " * (2 * k) + "- a\n" for k in range(min(n, 60))),
    "table": lambda n: "|a" * (n // 50) + "|\n" + "|-" * (n // 50) + "|\n" + ("|b" * (n // 50) + "|\n") * 20,
}


@pytest.mark.parametrize("maker", MAKERS)
def test_hostile_stories_grow_in_time_as_in_length(maker: str) -> None:
    texts = {size: MAKERS[maker](size) for size in (2000, 8000)}
    # Four times the text: linear is 4, quadratic 16.
    assert grown(lambda size: prose(texts[size]), 2000, 8000, times=9, spare=0.1, most=4) == ""


@given(st.text(alphabet=st.sampled_from("ab *_`[]()<>!-|\\&;#\n\r:.1é😀"), max_size=80))
def test_any_story_is_read_and_its_places_lie_inside(text: str) -> None:
    _, passages, findings = prose(text)
    for finding in findings:
        assert 0 <= finding.span.start <= finding.span.end <= len(text)
    for passage in passages:
        for at in range(len(passage.text)):
            span = passage.span(at, at + 1)
            assert 0 <= span.start < span.end <= len(text)


@given(
    st.lists(
        st.sampled_from(["so ", "**rich** ", "*in* ", "iron\n", "`x` ", "[y](z) ", "a\\*b ", "- ", "# ", "> "]),
        max_size=12,
    )
)
def test_windows_line_ends_change_nothing(parts: list[str]) -> None:
    text = "".join(parts)
    _, one, _ = prose(text)
    document, two, _ = prose(text.replace("\n", "\r\n"))
    assert [p.text for p in one] == [p.text for p in two]
    for passage in two:
        assert set(unmapped(document, passage)) <= {"*"}
