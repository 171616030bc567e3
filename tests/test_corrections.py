"""The corrections file: read back as written, edited by hand, safe in a spreadsheet; views beside it."""

from __future__ import annotations

import pytest

from spoonproof.corrections import Correction, Corrections, CorrectionsError, read_corrections, read_views, words_of

HEAD = "file,at,statement,state,advice,entry,since\n"


def test_what_is_written_reads_back() -> None:
    rows = [
        Correction(
            "a.vtt", "1:02", 'she said "honey, any time"', "posted", "cut-untrue", "honey-given-early", "2026-11-25"
        ),
        Correction("b.txt", "line 3", "=cmd|' /C calc'!A0", "drafted"),
        Correction("c.txt", "line 1", "-10 % salt", "pinned"),
    ]
    text = Corrections(rows).text()
    assert read_corrections(text).rows == rows
    cells = [line.split(",") for line in text.splitlines()]
    assert not any(cell.startswith(("=", "+", "-", "@")) for line in cells for cell in line)


def test_a_state_is_found_whatever_the_marks() -> None:
    notes = read_corrections(HEAD + "a.vtt,0:01,Honey is fine!,posted,,,\n")
    assert notes.state("a.vtt", "honey  is fine") == "posted"
    assert notes.state("b.vtt", "honey is fine") == ""


def test_what_was_pinned_stays_pinned_where_the_statement_is_heard_anew() -> None:
    notes = read_corrections(HEAD + "a.vtt,0:36,the dill because dill keeps colds,pinned,,botanicals-disease,\n")
    assert notes.state("a.vtt", "dill keeps colds away", "0:36", "botanicals-disease") == "pinned"
    assert notes.state("a.vtt", "because dill keeps colds", "0:36", "botanicals-disease") == "pinned"
    assert notes.state("a.vtt", "dill keeps reflux away", "0:36", "botanicals-disease") == ""
    assert notes.state("a.vtt", "dill keeps colds away", "0:52", "botanicals-disease") == ""
    assert notes.state("a.vtt", "dill is high in iron", "0:36", "") == ""


def test_columns_in_any_order_and_of_ones_own() -> None:
    notes = read_corrections("state,by,file,statement\npinned,me,a.vtt,so it is\n")
    assert notes.state("a.vtt", "So it is.") == "pinned"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "1: the first line names the columns"),
        ("file,statement\na,b\n", "1: the first line names the columns"),
        (HEAD + "a,1,b,done,,,\n", "2: state is one of drafted, posted, pinned"),
        (HEAD + "a,1,b\n", "2: state is one of"),
        (HEAD + "a,1,b,posted,,,\n\na,1,B.,pinned,,,\n", "4: this statement stands in line 2 already"),
        (HEAD + '"a,1,b\n', "corrections.csv"),
    ],
)
def test_what_can_not_be_understood_is_told_with_its_line(text: str, said: str) -> None:
    with pytest.raises(CorrectionsError) as error:
        read_corrections(text)
    assert said in str(error.value)


def test_views() -> None:
    assert read_views('file,views\na.vtt,"12,345"\nb.vtt,7\n', "views.csv") == {"a.vtt": 12345, "b.vtt": 7}
    assert read_views("file,views\na.vtt,\nb.vtt,0\n", "views.csv") == {"b.vtt": 0}  # not known is not none
    for bad in ("many", "1.5", "-3", "12,34"):
        with pytest.raises(CorrectionsError, match=r"views\.csv:2: views is a whole number"):
            read_views(f'file,views\na.vtt,"{bad}"\n', "views.csv")
    with pytest.raises(CorrectionsError, match=r"3: a\.vtt stands twice"):
        read_views("file,views\na.vtt,1\na.vtt,2\n", "views.csv")


def test_words() -> None:
    assert words_of("Four  GRAMS, of ½ “it’s”") == "four grams of ½ it s"
