"""The cache: the same answers with and without it, and nothing that happens to its folder can do harm."""

from __future__ import annotations

import contextlib
import json
import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.cache import FOLDER, LARGEST, OFF, Cache, Contents, hashed
from spoonproof.checks.engine import check
from spoonproof.cli import main
from spoonproof.folder import ChannelFolder
from spoonproof.model.text import Document
from spoonproof.packing import NotPackable, pack, unpack

ROOT = Path(__file__).resolve().parents[1]
RECIPES = ("parsnip-and-pear-spoon-mash.md", "first-winter-bowl.md")


@pytest.fixture
def channel(tmp_path: Path) -> Path:
    """A small channel of its own."""
    root = tmp_path / "channel"
    (root / "recipes").mkdir(parents=True)
    shutil.copy(ROOT / "channel.yaml", root)
    for name in RECIPES:
        shutil.copy(ROOT / "recipes" / name, root / "recipes")
    return root


def entries(root: Path) -> list[Path]:
    """What is kept in a channel's cache."""
    return sorted(path for path in (root / FOLDER).glob("read-*/*") if path.is_file())


def told(root: Path) -> list[tuple[object, ...]]:
    """Every finding of the channel, drafts included."""
    folder = ChannelFolder(root)
    found = check(folder, folder.select((), drafts=True)).findings
    return [(f.rule, f.level, f.message, f.document.path, f.span, f.related and len(f.related)) for f in found]


def test_what_is_kept_gives_the_same_bytes(channel: Path, capsys: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    def printed() -> str:
        main(["check", "--channel", str(channel), "--drafts", "--level", "note", "--trail"])
        return str(capsys.readouterr().out)

    first = printed()
    assert len(entries(channel)) == len(RECIPES)
    again = printed()
    monkeypatch.setenv(OFF, "off")
    assert first == again == printed() and "recipes/first-winter-bowl.md" in first


def test_nothing_is_read_again_that_is_kept(channel: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = told(channel)

    def refuse(*_: object) -> Any:
        raise AssertionError("read again")

    monkeypatch.setattr("spoonproof.reading.recipe.read_recipe", refuse)
    monkeypatch.setattr("spoonproof.claims.find.find_claims", refuse)
    assert told(channel) == before
    path = channel / "recipes" / RECIPES[0]
    path.write_text(path.read_text() + "\nOne more line.\n")
    with pytest.raises(AssertionError, match="read again"):
        told(channel)


def test_judging_is_done_afresh(channel: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    told(channel)
    monkeypatch.setattr("spoonproof.claims.judge.judge", _no_judge)
    folder = ChannelFolder(channel)
    with pytest.raises(RuntimeError, match="asked"):
        _ = folder.dish(folder.recipes["first-winter-bowl"]).claims


def _no_judge(*_: object) -> Any:
    raise RuntimeError("asked")


@pytest.mark.parametrize(
    "harm",
    [
        lambda _body: b"",
        lambda body: body[:-9],
        lambda body: body[:40] + bytes([body[40] ^ 4]) + body[41:],
        lambda body: b"\x80\x05" + body,  # how a pickle starts
        lambda body: body + b" ",
    ],
)
def test_a_damaged_entry_gives_nothing(tmp_path: Path, harm: Callable[[bytes], bytes]) -> None:
    cache = Cache(tmp_path, "read-1")
    cache.put("a", b"body " * 20)
    (path,) = entries(tmp_path)
    path.write_bytes(harm(path.read_bytes()))
    assert cache.get("a") is None
    cache.put("a", b"new")
    assert cache.get("a") == b"new"


def test_a_content_is_given_as_it_lies_and_never_damaged(tmp_path: Path) -> None:
    shelf = Contents(tmp_path, "contents")
    key = hashed(b"a page")
    assert shelf.put(key, b"a page") and shelf.get(key) == b"a page"
    first, second, third = (tmp_path / name for name in ("first", "second", "third"))
    assert shelf.give(key, str(first)) and first.read_bytes() == b"a page"
    assert not shelf.give(key, str(first)), "what is there already is left alone"
    first.write_text("edited in place")  # whoever does that changes the entry too
    assert not shelf.give(key, str(second)) and not second.exists()
    assert shelf.get(key) is None and not shelf.has(key)
    link = tmp_path / FOLDER / "contents" / key
    link.symlink_to(first)
    assert shelf.get(key) is None and not shelf.give(key, str(third)) and not third.is_symlink()
    link.unlink(missing_ok=True)
    assert shelf.put(key, b"a page") and shelf.give(key, str(second)) and first.read_text() == "edited in place"


def test_pieces_are_kept_as_what_they_make(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shelf = Contents(tmp_path, "contents")
    assert shelf.gather([b"a ", b"page"]) == (hashed(b"a page"), 6) and shelf.get(hashed(b"a page")) == b"a page"

    def broken() -> Iterator[bytes]:
        yield b"a "
        raise KeyError("a fault of whoever makes the pieces")

    with pytest.raises(KeyError):
        shelf.gather(broken())
    assert shelf.gather([b"_" * LARGEST, b"_"]) is None, "nobody reads what is so large"
    assert [path.name for path in (tmp_path / FOLDER / "contents").iterdir()] == [hashed(b"a page")]
    monkeypatch.setenv(OFF, "off")
    assert Contents(tmp_path, "contents").gather([b"another"]) is None


def test_a_disk_without_second_names_gives_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise PermissionError("no second names here")

    shelf = Contents(tmp_path, "contents")
    key = hashed(b"a page")
    assert shelf.put(key, b"a page")
    monkeypatch.setattr(os, "link", refuse)
    assert not shelf.give(key, str(tmp_path / "page")) and shelf.get(key) == b"a page"


def test_a_damaged_entry_is_passed_over_and_replaced(channel: Path) -> None:
    before = told(channel)
    whole = {path: path.read_bytes() for path in entries(channel)}
    for path, body in whole.items():
        path.write_bytes(body[:-9])
    assert told(channel) == before
    assert {path: path.read_bytes() for path in entries(channel)} == whole


def test_a_sound_entry_that_holds_something_else_is_passed_over(channel: Path) -> None:
    told(channel)
    folder = ChannelFolder(channel)
    (document, *_) = [file.document for file in folder.select((), drafts=True)]
    assert folder._recall is not None and document is not None and folder._recall.get(document) is not None
    cache = Cache(channel, entries(channel)[0].parent.name)
    for body in (b"{}", b"[]", b"[99]", b"[-6,3]", b"[22,1]", b"no", b"[" * 100_000, b"null", b"[-1,1,[-1],[-1]]"):
        for path in entries(channel):
            cache.put(path.name, body)
        assert folder._recall.get(document) is None


@settings(max_examples=60)
@given(
    st.recursive(
        st.none() | st.booleans() | st.integers(-9, 40) | st.text(max_size=3),
        lambda inner: st.lists(inner, max_size=4),
        max_leaves=12,
    )
)
def test_unpacking_never_raises_anything_else(data: object) -> None:
    with contextlib.suppress(ValueError):
        unpack(json.loads(json.dumps(data)), Document("a.md", "text"))


def test_every_recipe_comes_back_as_it_was() -> None:
    folder = ChannelFolder(ROOT)
    for file in folder.select((), drafts=True):
        assert file.recipe is not None and file.document is not None
        value = (file.recipe, file.faults, (file.recipe.passages[0], file.recipe.passages[0]))
        recipe, faults, (one, other) = unpack(json.loads(json.dumps(pack(value, file.document))), file.document)
        assert (recipe, faults) == (file.recipe, file.faults)
        assert one is other is recipe.passages[0]


def test_what_cannot_be_kept_is_said() -> None:
    with pytest.raises(NotPackable):
        pack(print, Document("a.md", ""))


def test_a_full_disk_ends_the_keeping_and_nothing_else(channel: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    class Full:
        def __init__(self, handle: int, *_: object, **__: object) -> None:
            self.handle = handle

        def __enter__(self) -> Full:
            return self

        def __exit__(self, *_: object) -> None:
            os.close(self.handle)

        def write(self, body: bytes) -> int:
            os.write(self.handle, body[:7])
            raise OSError(28, "No space left on device")

    real = os.fdopen
    monkeypatch.setattr(os, "fdopen", lambda h, mode="r", *a, **k: Full(h) if mode == "wb" else real(h, mode, *a, **k))
    full = told(channel)
    assert entries(channel) == []
    monkeypatch.undo()
    assert told(channel) == full


def test_a_folder_that_cannot_be_written_is_no_fault(tmp_path: Path) -> None:
    (tmp_path / ".spoonproof").write_text("a file in the way")
    cache = Cache(tmp_path, "read-1")
    cache.put("a", b"body")
    assert cache.get("a") is None


@pytest.mark.parametrize("linked", [".spoonproof", ".spoonproof/cache", ".spoonproof/cache/read-1"])
def test_a_link_leads_nothing_out_of_the_channel(tmp_path: Path, linked: str) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "a").write_bytes(b"x" * 40)
    root = tmp_path / "channel"
    (root / linked).parent.mkdir(parents=True)
    (root / linked).symlink_to(outside)
    cache = Cache(root, "read-1")
    cache.put("b", b"body")
    assert cache.get("b") is None
    assert [path.name for path in outside.iterdir()] == ["a"]


def test_an_entry_that_is_a_pipe_or_a_link_or_too_large_is_not_read(tmp_path: Path) -> None:
    cache = Cache(tmp_path, "read-1")
    cache.put("a", b"body")
    assert cache.get("a") == b"body"
    folder = tmp_path / FOLDER / "read-1"
    os.mkfifo(folder / "pipe")
    (folder / "link").symlink_to(folder / "a")
    assert cache.get("pipe") is None and cache.get("link") is None
    cache.put("large", b"x" * (LARGEST + 1))
    assert cache.get("large") is None


WRITER = """
import sys
from pathlib import Path
from spoonproof.cache import Cache
cache = Cache(Path(sys.argv[1]), "read-1")
print("go", flush=True)
while True:
    for n in range(40):
        cache.put(f"entry{n}", f"{n} ".encode() * 4000)
"""


def test_killed_at_any_instant_every_entry_is_whole(tmp_path: Path) -> None:
    for pause in (0.0, 0.013, 0.04):
        two = [
            subprocess.Popen([sys.executable, "-c", WRITER, str(tmp_path)], stdout=subprocess.PIPE) for _ in range(2)
        ]
        for process in two:
            assert process.stdout is not None and process.stdout.readline() == b"go\n"
        time.sleep(pause)
        for process in two:
            process.send_signal(signal.SIGKILL)
            process.communicate()
        cache = Cache(tmp_path, "read-1")
        for path in (tmp_path / FOLDER / "read-1").glob("entry*"):
            assert cache.get(path.name) == f"{path.name[5:]} ".encode() * 4000
    assert any((tmp_path / FOLDER / "read-1").glob("entry*"))


def test_deleted_while_in_use_it_is_made_again_by_the_next(channel: Path) -> None:
    folder = ChannelFolder(channel)
    files = tuple(folder.select((), drafts=True))
    _ = [folder.dish(file.recipe).claims for file in files[:1] if file.recipe]
    shutil.rmtree(channel / ".spoonproof")
    _ = [folder.dish(file.recipe).claims for file in files if file.recipe]
    told(channel)
    assert len(entries(channel)) == len(RECIPES)


def test_tables_measures_and_name_have_a_say(channel: Path) -> None:
    told(channel)
    first = entries(channel)
    (channel / "shared").mkdir()
    (channel / "shared" / "verbs.csv").write_text((ROOT / "shared" / "verbs.csv").read_text())
    told(channel)
    second = [path for path in entries(channel) if path not in first]
    assert len(second) == len(RECIPES)
    shutil.copy(channel / "recipes" / RECIPES[0], channel / "recipes" / "another-name.md")
    told(channel)
    assert len(entries(channel)) == 2 * len(RECIPES) + 1
    assert hashed("ab", "c") != hashed("a", "bc")


def test_old_shelves_and_the_parts_of_killed_processes_are_swept(tmp_path: Path) -> None:
    Cache(tmp_path, "read-old").put("a", b"old")
    Cache(tmp_path, "read-young").put("a", b"young")
    mine = tmp_path / FOLDER / "read-1"
    mine.mkdir()
    (mine / ".a.1.part").write_bytes(b"half")
    long_ago = time.time() - 40 * 86_400
    for path in (tmp_path / FOLDER / "read-old", mine / ".a.1.part"):
        os.utime(path, (long_ago, long_ago))
    Cache(tmp_path, "read-1").put("b", b"body")
    assert {path.name for path in (tmp_path / FOLDER).iterdir()} == {".gitignore", "read-1", "read-young"}
    assert [path.name for path in mine.iterdir()] == ["b"]


def test_without_a_channel_nothing_is_kept(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "recipes", tmp_path / "recipes")
    folder = ChannelFolder(tmp_path)
    (file,) = folder.select([tmp_path / "recipes" / RECIPES[0]])
    assert file.recipe is not None and folder.dish(file.recipe).claims is not None
    assert not (tmp_path / ".spoonproof").exists()
