"""What is laid down for ``re`` is what ``re`` itself makes, and is passed over wherever it isn't."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any, cast

import pytest

from spoonproof import expressions

_library: Any = re  # its private parts, looked at on purpose

SOME = [
    (r"\b(?P<low>\d+) ?(?:to|-) ?(?P<high>\d+)\b", 0),
    (r"[é\ue000-\uf8ff]+|(a)|(b)", re.IGNORECASE),
    (r"(?m)^x.*?$ | y", re.VERBOSE),
]


@pytest.fixture
def laid(tmp_path: Path) -> Iterator[Path]:
    """A folder in which ``SOME`` lie; ``re`` is as it was afterwards."""
    before = _library._compile
    _library._compile = _compile_of_the_library()
    _write(tmp_path, _some())
    yield tmp_path
    _library._compile = before


def _some() -> dict[tuple[str, int], expressions.Laid]:
    re.purge()
    with expressions._noted() as noted:
        for pattern, flags in SOME:
            re.compile(pattern, flags)
    return noted


def _write(folder: Path, laid: dict[tuple[str, int], expressions.Laid]) -> None:
    (folder / expressions.FILE).write_bytes(expressions._written(laid, {}))


def _compile_of_the_library() -> Any:
    """The library's own function, whoever has his hand on it."""
    found = _library._compile
    while found.__module__ != _library.__name__:
        found = next(cell.cell_contents for cell in found.__closure__ if callable(cell.cell_contents))
    return found


def test_what_is_laid_down_finds_what_the_library_finds(laid: Path) -> None:
    whole = [re.compile(pattern, flags) for pattern, flags in SOME]
    anew = _library._compile
    expressions.take_from(laid)
    assert _library._compile is not anew
    for (pattern, flags), made in zip(SOME, whole, strict=True):
        taken = re.compile(pattern, flags)
        assert taken is not made and taken is re.compile(pattern, int(flags))
        assert cast(Any, taken)._made == made and taken.flags == made.flags and taken.groupindex == made.groupindex
        for text in ("9 to 12 months", "É Aab", "x y\nx", ""):
            assert [m.groups() for m in taken.finditer(text)] == [m.groups() for m in made.finditer(text)]


def test_what_is_not_laid_down_is_compiled(laid: Path) -> None:
    expressions.take_from(laid)
    assert re.compile("pear", 0).search("a pear")
    assert re.compile(b"pear", 0).search(b"a pear")
    assert re.compile(re.compile(SOME[0][0])).search("9 to 12")
    with pytest.raises(re.error):
        re.compile("(", 0)


@pytest.mark.parametrize("spoil", ["program", "cut", "other interpreter", "nothing"])
def test_a_damaged_file_changes_nothing(laid: Path, spoil: str) -> None:
    path = laid / expressions.FILE
    head, body = path.read_bytes().split(b"\n", 1)
    if spoil == "program":
        _write(laid, {key: (own, b"\xff" * 36, n, by, names) for key, (own, _, n, by, names) in _some().items()})
    elif spoil == "cut":
        path.write_bytes(head + b"\n" + body[: len(body) // 2])
    elif spoil == "other interpreter":
        path.write_bytes(b"cpython-27\n" + body)
    else:
        path.unlink()
    expressions.take_from(laid)
    assert re.compile(*SOME[0]).search("9 to 12").groupdict() == {"low": "9", "high": "12"}  # type: ignore[union-attr]


DEAR = frozenset(
    "asyncio concurrent.futures dataclasses email http.client inspect jinja2 logging markdown_it multiprocessing "
    "ortools PIL ruamel ssl starlette syntok xml".split()
)
"""Libraries that take a part of a cold start that can be felt, and that a check of a plain recipe has no use for."""


def test_a_command_in_a_checkout_or_a_wheel_compiles_next_to_nothing_and_reads_no_table(tmp_path: Path) -> None:
    """What was laid down of our own modules and tables serves: of the expressions a check compiles few are left."""
    from spoonproof.compiled import PACKAGE, load, made_folder

    load("sources")
    laid, newest = made_folder() / expressions.FILE, max(path.stat().st_mtime for path in PACKAGE.rglob("*.py"))
    if not laid.exists() or laid.stat().st_mtime < newest:  # a checkout keeps what it laid down once
        expressions.lay(made_folder())
    (tmp_path / "channel.yaml").write_text("title: Row\nmarkets: [GB]\n", encoding="utf-8")
    (tmp_path / "recipes").mkdir()
    shutil.copy(Path(__file__).parents[1] / "recipes" / "parsnip-and-pear-spoon-mash.md", tmp_path / "recipes")
    counting = (
        "import re, sys, json\n"
        "made, own = [], re._compiler._code\n"
        "def code(*parts): made.append(1); return own(*parts)\n"
        "re._compiler._code = code\n"
        "from spoonproof.cli import main\n"
        "from spoonproof.reading import bundle\n"
        "read, own_read = [], bundle.read_table\n"
        "bundle.read_table = lambda path: read.append(path.name) or own_read(path)\n"
        "main(['check', '--format', 'jsonl'])\n"
        "print(json.dumps([len(made), read, list(sys.modules)]), file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", counting], cwd=tmp_path, capture_output=True, text=True, check=True)
    compiled, tables, brought_in = json.loads(done.stderr.strip().split("\n")[-1])
    assert compiled < 60 and tables == []
    assert len(brought_in) < 500 and not DEAR & set(brought_in), "a cold start brings in more than it did"
