"""Two edits of one text laid together: both kept, or told apart; never one silently over the other."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from spoonproof.desk.merge import changes, merge

LINES = st.lists(st.sampled_from(["a\n", "b\n", "c\n", "d\n", "\n"]), max_size=8).map("".join)


def test_edits_apart_are_both_kept() -> None:
    both = merge("one\ntwo\nthree\nfour\n", "ONE\ntwo\nthree\nfour\n", "one\ntwo\nthree\nFOUR\nfive\n")
    assert (both.text, both.clashes) == ("ONE\ntwo\nthree\nFOUR\nfive\n", 0)


def test_edits_of_the_same_line_clash_and_mine_stands_in_the_editor() -> None:
    both = merge("one\ntwo\n", "one\nmine\n", "one\ntheirs\n")
    assert (both.text, both.clashes) == ("one\nmine\n", 1)


def test_the_same_edit_twice_is_one() -> None:
    assert merge("one\n", "two\n", "two\n").clashes == 0


def test_a_line_i_cut_and_they_changed_clashes() -> None:
    assert merge("one\ntwo\nthree\n", "one\nthree\n", "one\nTWO\nthree\n").clashes == 1


@given(LINES, LINES)
def test_one_edit_alone_is_taken_whole(base: str, new: str) -> None:
    assert merge(base, new, base) == merge(base, base, new)
    assert (merge(base, new, base).text, merge(base, new, base).clashes) == (new, 0)


@given(LINES, LINES, LINES)
def test_without_a_clash_no_new_line_of_either_is_lost(base: str, mine: str, theirs: str) -> None:
    both = merge(base, mine, theirs)
    if not both.clashes:
        old = set(base.split("\n"))
        assert (set(mine.split("\n")) | set(theirs.split("\n"))) - old <= set(both.text.split("\n"))


def test_changes_show_what_went_and_what_came() -> None:
    assert changes("a\nb\nc", "a\nB\nc") == [("same", "a"), ("gone", "b"), ("new", "B"), ("same", "c")]
