"""Modules out of one file are the modules of the files, and every doubt sends back to the files."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from spoonproof import modules

LOOK = """
import sys
from spoonproof import modules
found = modules.opened(sys.argv[1], sys.argv[2])
if found is not None:
    sys.meta_path.insert(0, found)
for piece in sys.argv[3:]:
    found.bring_in(int(piece))
import pantry.shelf, pantry.deep.box
for module in (pantry, pantry.shelf, pantry.deep, pantry.deep.box):
    where = module.__file__, list(getattr(module, "__path__", []))
    print(module.__name__, module.SAYS, type(module.__loader__).__name__, *where)
print(pantry.shelf.place.__code__.co_filename)
"""


@pytest.fixture
def pantry(tmp_path: Path) -> Path:
    """A package of our own, not brought in by anybody."""
    package = tmp_path / "pantry"
    (package / "deep").mkdir(parents=True)
    (package / "__init__.py").write_text("SAYS = 'whole'\n")
    (package / "shelf.py").write_text("SAYS = 'shelf'\ndef place():\n    return SAYS\n")
    (package / "deep" / "__init__.py").write_text("SAYS = 'deep'\n")
    (package / "deep" / "box.py").write_text("from .. import shelf\nSAYS = 'box on ' + shelf.SAYS\n")
    (package / "bundle").mkdir()
    (package / "bundle" / "left.py").write_text("no python at all")
    return package


def look(pantry: Path, file: Path, *pieces: str) -> list[list[str]]:
    """What a fresh process sees of the package's modules."""
    paths = os.pathsep.join((str(pantry.parent), str(Path(modules.PACKAGE).parent)))
    command = [sys.executable, "-c", LOOK, str(file), str(pantry), *pieces]
    done = subprocess.run(command, env={**os.environ, "PYTHONPATH": paths}, capture_output=True, text=True, check=True)
    return [line.split(" ") for line in done.stdout.split("\n") if line]


def loaders(seen: list[list[str]]) -> set[str]:
    return {line[-3] if line[-1].startswith("[") else "" for line in seen} - {""}


def test_they_are_the_same_modules(pantry: Path, tmp_path: Path) -> None:
    by_file = look(pantry, tmp_path / "nothing")
    file = modules.lay(tmp_path, pantry)
    by_one = look(pantry, file)
    assert loaders(by_file) == {"SourceFileLoader"} and loaders(by_one) == {"Modules"}
    assert [[part for part in line if part != "SourceFileLoader"] for line in by_file] == [
        [part for part in line if part != "Modules"] for line in by_one
    ]


def test_those_that_lie_together_are_the_same_too(pantry: Path, tmp_path: Path) -> None:
    alone = look(pantry, modules.lay(tmp_path, pantry))
    file = modules.lay(tmp_path, pantry, ["pantry", "pantry.deep.box", "pantry.gone"], ["pantry.shelf"])
    assert look(pantry, file) == look(pantry, file, "0") == look(pantry, file, "1", "0", "0") == alone
    found = modules.opened(str(file), str(pantry))
    assert found is not None
    code = found._code(*found._places["pantry"][3:])
    (piece,) = found._pieces.values()
    assert piece.count(None) == 1 and len(piece) == 2, "what was had is held no longer"
    assert found._code(*found._places["pantry"][3:]) == code


@pytest.mark.parametrize("spoil", ["cut", "other interpreter", "empty"])
def test_a_file_that_is_not_sound_is_passed_over(pantry: Path, tmp_path: Path, spoil: str) -> None:
    file = modules.lay(tmp_path, pantry)
    whole = file.read_bytes()
    file.write_bytes({"cut": whole[:40], "other interpreter": b"cpython-27" + whole, "empty": b""}[spoil])
    assert loaders(look(pantry, file)) == {"SourceFileLoader"}


@pytest.mark.parametrize("change", ["another size", "later"])
def test_a_source_that_was_changed_is_read_itself(pantry: Path, tmp_path: Path, change: str) -> None:
    file = modules.lay(tmp_path, pantry)
    shelf = pantry / "shelf.py"
    shelf.write_text(shelf.read_text().replace("'shelf'", "'board'" if change == "later" else "'plank of wood'"))
    if change == "later":
        later = file.stat().st_mtime + 3600
        os.utime(shelf, (later, later))
    seen = {line[0]: line[1:] for line in look(pantry, file)}
    assert "board" in seen["pantry.shelf"][0] or "plank" in seen["pantry.shelf"][0]
    assert "SourceFileLoader" in seen["pantry.shelf"] and "Modules" in seen["pantry.deep"]


def test_a_module_that_went_away_is_not_there(pantry: Path, tmp_path: Path) -> None:
    file = modules.lay(tmp_path, pantry)
    (pantry / "shelf.py").unlink()
    with pytest.raises(subprocess.CalledProcessError):
        look(pantry, file)


def test_our_own_are_all_laid_down(tmp_path: Path) -> None:
    file = modules.lay(tmp_path, Path(modules.PACKAGE))
    found = modules.opened(str(file), modules.PACKAGE)
    assert found is not None
    for name in ("spoonproof", "spoonproof.cli", "spoonproof.checks.rules.hot_food_in_a_sealed_blender"):
        spec = found.find_spec(name)
        assert spec is not None and spec.origin is not None and Path(spec.origin).is_file()
    assert found.find_spec("spoonproof.bundle.left") is None and found.find_spec("json") is None
