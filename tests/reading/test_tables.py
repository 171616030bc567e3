"""Our own tables and sources, the bundle, and a channel's rows laid over them by key."""

from __future__ import annotations

from pathlib import Path

import pytest

from spoonproof.model.table import Row
from spoonproof.reading.bundle import (
    KEYS,
    OWN,
    bundle_root,
    merge,
    overridden,
    own_file,
    read_sources,
    read_table,
    sources,
    table_rows,
)


def test_rows_have_stripped_cells_and_the_line_they_start_on(tmp_path: Path) -> None:
    path = tmp_path / "t.csv"
    path.write_text(' id , name\na,"two\nlines"\n\nb,\nc \n', encoding="utf-8")
    rows = read_table(path)
    assert [(row.line, row.text("id"), row.text("name")) for row in rows] == [
        (2, "a", "two\nlines"),
        (5, "b", ""),
        (6, "c", ""),
    ]


@pytest.mark.parametrize(
    ("text", "message"), [("id,id\n", "t.csv:1"), ("id,\n", "t.csv:1"), ("id\na,b\n", "t.csv:2"), ('id\n"a\n', "t.csv")]
)
def test_a_broken_table_of_ours_says_where(tmp_path: Path, text: str, message: str) -> None:
    (tmp_path / "t.csv").write_text(text)
    with pytest.raises(ValueError, match=message):
        read_table(tmp_path / "t.csv")


def test_a_source_id_stands_once(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text("- {id: x, type: book}\n- {id: y, type: book}\n")
    assert list(read_sources(tmp_path)) == ["x", "y"]
    (tmp_path / "b.yaml").write_text("- {id: x, type: book}\n")
    with pytest.raises(ValueError, match=r"b\.yaml.*'x'.*a\.yaml"):
        read_sources(tmp_path)


def test_every_bundled_table_has_the_columns_it_is_keyed_by() -> None:
    tables = sorted((bundle_root() / "shared").glob("*.csv"))
    assert tables
    for path in tables:
        rows = read_table(path)
        for column in KEYS.get(path.stem, ("id",)):
            assert column in rows[0].cells, f"{path.name} has no column {column}"


def test_own_rows_replace_by_key_and_further_ones_follow() -> None:
    bundled = [Row({"id": "a", "v": "1"}), Row({"id": "b", "v": "2"}), Row({"id": "b", "v": "3"})]
    own = [Row({"id": "c", "v": "9"}), Row({"id": "b", "v": "8"})]
    assert [(r.text("id"), r.text("v")) for r in merge(bundled, own)] == [("a", "1"), ("b", "8"), ("c", "9")]


def test_a_channel_lays_its_rows_over_ours(tmp_path: Path) -> None:
    plain = table_rows("traits")
    assert table_rows("traits", tmp_path) == plain
    (tmp_path / "shared").mkdir()
    first = plain[0].text("trait")
    (tmp_path / "shared" / "traits.csv").write_text(f"trait,meaning,reason\n{first},ours,we asked\nnew-one,x,\n")
    rows = table_rows("traits", tmp_path)
    assert len(rows) == len(plain) + 1
    assert rows[0].text("meaning") == "ours"
    assert rows[0].file == f"{OWN}traits.csv"
    ((before, after),) = overridden("traits", tmp_path)
    assert (before.text("trait"), after.text("reason")) == (first, "we asked")


def test_the_bundle_is_not_laid_over_itself() -> None:
    root = bundle_root()
    assert own_file(root, "shared", "traits.csv") is None
    assert table_rows("traits", root) == table_rows("traits")
    assert overridden("traits", root) == []


def test_a_link_out_of_the_channel_is_no_table_of_it(tmp_path: Path) -> None:
    (tmp_path / "x.csv").write_text("trait,meaning,source\n")
    channel = tmp_path / "channel"
    (channel / "shared").mkdir(parents=True)
    (channel / "shared" / "traits.csv").symlink_to(tmp_path / "x.csv")
    assert own_file(channel, "shared", "traits.csv") is None


def test_a_channel_may_bring_sources(tmp_path: Path) -> None:
    (tmp_path / "shared" / "sources").mkdir(parents=True)
    (tmp_path / "shared" / "sources" / "mine.yaml").write_text("- {id: mine, type: webpage}\n")
    assert "mine" in sources(tmp_path)
    assert len(sources(tmp_path)) == len(sources()) + 1
