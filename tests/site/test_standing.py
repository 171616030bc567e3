"""An unchanged build is done at once; whatever changed, here or there, the site is made again."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from spoonproof.cache import FOLDER, own_seal
from spoonproof.cli import main
from spoonproof.site import census, standing

ROOT = Path(__file__).resolve().parents[2]
FILES = {
    "channel.yaml": "title: Quay Spoons\nmarkets: [GB]\nmeasures: UK\n",
    "recipes/one.md": "---\ntitle: One\nages: 7-9 months\ntexture: mashed\n---\nOne.\n",
    "recipes/more/two.md": "---\ntitle: Two\nages: 7-9 months\ntexture: mashed\n---\nTwo.\n",
    "claims/own.yaml": "- id: own\n",
    "shared/storage.csv": "id\n",
    "shared/sources/own.yaml": "[own]\n",
    "site/look.css": ":root {}\n",
    "site/templates/404.html": "away\n",
    "pictures/bowl.jpg": "a photograph",
    "recipes/beside.jpg": "another",
    "videos/bowl.mp4": "a film",
    "bowl.vtt": "WEBVTT\n",
}
MEDIA = (("pictures", "bowl.jpg"), ("pictures", "beside.jpg"), ("videos", "bowl.mp4"), ("videos", "bowl.vtt"))


def laid(root: Path) -> Path:
    """A channel's folder with one file of every kind, touched a while ago."""
    for name, text in FILES.items():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text(text, encoding="utf-8")
    return root


def made_from(root: Path, *options: str) -> str | None:
    """What stands for all that the site is made from; None in doubt."""
    counted = census.take(root, options)
    return standing._made_from(root, counted, MEDIA) if counted is not None else None


def _unnoticed(path: Path) -> None:
    """Another content of the same size under the same time."""
    before = path.stat()
    path.write_text("".join("x" if c.isalnum() else c for c in path.read_text(encoding="utf-8")), encoding="utf-8")
    os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))


def _folder_instead(path: Path) -> None:
    path.unlink()
    path.mkdir()


CHANGES: dict[str, Callable[[Path], object]] = {
    "longer": lambda path: path.write_text(path.read_text(encoding="utf-8") + "\n", encoding="utf-8"),
    "unnoticed": _unnoticed,
    "away": lambda path: path.unlink(),
    "empty": lambda path: path.write_text("", encoding="utf-8"),
    "a link": lambda path: path.symlink_to(path.rename(path.with_name("elsewhere"))),
    "a folder": _folder_instead,
    "another name": lambda path: path.rename(path.with_name(f"other{path.suffix}")),
}


@pytest.mark.parametrize("name", sorted(FILES))
def test_no_change_of_any_kind_of_input_goes_unseen(tmp_path: Path, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(census, "_ours", list)
    monkeypatch.setattr(census, "TICK", 0)
    for number, change in enumerate(CHANGES.values()):
        channel = laid(tmp_path / str(number))
        before = made_from(channel)
        assert before is not None and made_from(channel) == before
        change(channel / name)
        assert made_from(channel) != before


@pytest.mark.parametrize(
    "name",
    [
        "recipes/three.md", "claims/x.yaml", "shared/cuts.csv", "site/templates/moved.html",
        "pictures/beside.jpg", "videos/bowl.vtt", "recipes/bowl.jpg",  # in place of one that was found elsewhere
    ],
)  # fmt: skip
def test_a_new_file_is_seen(tmp_path: Path, name: str) -> None:
    before = made_from(laid(tmp_path))
    (tmp_path / name).write_text("new", encoding="utf-8")
    assert made_from(tmp_path) != before


def test_day_options_settings_and_what_stands_beside_us_have_a_say(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    laid(tmp_path)
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    monkeypatch.setenv("SPOONPROOF_TODAY", "2026-11-25")
    seen = [made_from(tmp_path), made_from(tmp_path, "drafts"), made_from(tmp_path, "with_errors")]
    monkeypatch.setenv("SPOONPROOF_TODAY", "2026-11-26")
    seen.append(made_from(tmp_path))
    monkeypatch.setenv("SPOONPROOF_PREVIEWS", "off")
    seen.append(made_from(tmp_path))
    (tmp_path / "beside" / "painter-9.dist-info").mkdir(parents=True)
    monkeypatch.syspath_prepend(str(tmp_path / "beside"))
    seen.append(made_from(tmp_path))
    monkeypatch.setattr(census, "__version__", "99")
    seen.append(made_from(tmp_path))
    assert len(set(seen)) == len(seen) and None not in seen
    monkeypatch.setenv("SPOONPROOF_WORKERS", "1")
    assert made_from(tmp_path) == seen[-1]  # how many work at it changes no byte


def test_our_own_code_and_tables_have_a_say(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    laid(tmp_path / "channel")
    package, bundle = tmp_path / "package", tmp_path / "bundle"
    for path in (package / "rules" / "a.py", *(bundle / folder / "a.csv" for folder in census.FOLDERS)):
        path.parent.mkdir(parents=True)
        path.write_text("a", encoding="utf-8")
    monkeypatch.setattr(census, "_PACKAGE", package)
    monkeypatch.setattr("spoonproof.reading.bundle.bundle_root", lambda: bundle)
    seen = {made_from(tmp_path / "channel")}
    for path in (package / "rules" / "a.py", *(bundle / folder / "a.csv" for folder in census.FOLDERS)):
        path.write_text("another", encoding="utf-8")
        seen.add(made_from(tmp_path / "channel"))
    assert len(seen) == 5 and None not in seen


def test_a_file_touched_after_the_census_is_told(tmp_path: Path) -> None:
    counted = census.take(laid(tmp_path), ())
    assert counted is not None and counted.holds()
    _unnoticed(tmp_path / "recipes" / "one.md")
    assert not counted.holds() and counted.holds(["channel.yaml"])


@pytest.fixture
def published(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A small channel with its site."""
    monkeypatch.setenv("SPOONPROOF_PREVIEWS", "off")
    (tmp_path / "recipes").mkdir()
    shutil.copy(ROOT / "channel.yaml", tmp_path)
    shutil.copy(ROOT / "recipes" / "plum-and-millet-porridge.md", tmp_path / "recipes")
    assert publish(tmp_path) == 0
    return tmp_path


def publish(root: Path, *more: str) -> int:
    return main(["publish", "--channel", str(root), *more])


def tree(root: Path) -> dict[str, bytes]:
    site = root / "out" / "site"
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}


def looks(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """The channels that are looked at from now on: none where a build goes by what stands."""
    from spoonproof.site import renewal

    seen: list[Path] = []
    build = renewal._built

    def counted(root: Path, *more: Any) -> standing.Said:
        seen.append(root)
        return build(root, *more)

    monkeypatch.setattr(renewal, "_built", counted)
    return seen


def test_nothing_changed_says_the_same_and_looks_at_nothing(
    published: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    shutil.rmtree(published / "out")
    assert publish(published) == 0
    said = capsys.readouterr().out
    seen = looks(monkeypatch)
    assert publish(published) == 0
    assert (
        "written" in said and not seen and capsys.readouterr().out == said.replace("written", "already as it should be")
    )


TAMPERED: dict[str, Callable[[Path], object]] = {
    "edited": lambda site: (site / "index.html").write_text("mine", encoding="utf-8"),
    "edited unnoticed": lambda site: _unnoticed(site / "index.html"),
    "deleted": lambda site: (site / "feed.xml").unlink(),
    "another file": lambda site: (site / "recipes" / "mine.html").write_text("mine", encoding="utf-8"),
    "no mark": lambda site: (site / ".spoonproof-site").write_text("", encoding="utf-8"),
    "gone": lambda site: shutil.rmtree(site),
}


@pytest.mark.parametrize("how", TAMPERED)
def test_a_site_that_was_touched_is_mended(published: Path, how: str, monkeypatch: pytest.MonkeyPatch) -> None:
    before = tree(published)
    seen = looks(monkeypatch)
    TAMPERED[how](published / "out" / "site")
    assert publish(published) == 0
    assert seen and {**tree(published), ".spoonproof-site": b""} == {**before, ".spoonproof-site": b""}


def test_what_is_left_out_is_told_again(
    published: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (published / "recipes" / "bad.md").write_text("---\ntitle: Bad\nages: 6 months\n---\nNothing.\n", encoding="utf-8")
    assert publish(published) == 1
    first = capsys.readouterr().err
    seen = looks(monkeypatch)
    assert "left out" in first and publish(published) == 1 and not seen
    assert capsys.readouterr().err == first


def test_a_record_of_somebody_else_counts_for_nothing(
    published: Path, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen = looks(monkeypatch)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("somebody")))
    assert publish(published) == 0 and len(seen) == 1
    assert publish(published) == 0 and len(seen) == 1
    for path in (published / FOLDER / "standing").iterdir():
        path.write_bytes(path.read_bytes()[:-9] + b'"code":1}')
    assert publish(published) == 0 and len(seen) == 2


def test_without_a_place_for_the_seal_nothing_is_kept(published: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    seen = looks(monkeypatch)
    monkeypatch.setenv("XDG_CACHE_HOME", "/dev/null/nowhere")
    assert own_seal() is None
    assert publish(published) == 0 and publish(published) == 0 and len(seen) == 2


def test_the_day_on_which_something_falls_due_is_looked_at(
    published: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    seen = looks(monkeypatch)
    monkeypatch.setenv("SPOONPROOF_TODAY", "2090-01-01")
    publish(published)
    assert len(seen) == 1


def test_the_desk_tells_how_far_it_is_and_goes_by_what_stands(
    published: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from spoonproof.desk.work import main as desk

    seen = looks(monkeypatch)
    assert desk([str(published), "publish"]) == 0 and not seen
    assert "already as it should be" in capsys.readouterr().out
    shutil.rmtree(published / ".spoonproof")
    shutil.rmtree(published / "out")
    assert desk([str(published), "publish"]) == 0 and len(seen) == 1
    said = capsys.readouterr().out
    count = len(list((published / "recipes").rglob("*.md")))
    assert f"\t{count}\tmaking the page of" in said and ", written" in said
    assert publish(published) == 0 and len(seen) == 1, "the command does not know what the desk left"
    (published / "channel.yaml").write_text("title: [\n", encoding="utf-8")
    assert desk([str(published), "publish"]) == 2 and "channel.yaml, line" in capsys.readouterr().out
