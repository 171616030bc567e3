"""Regular expressions, and the initialisers of records, as they were compiled when the wheel was built: a command
starts without compiling them.

``re`` takes a tenth of a millisecond and more for each of the 170 to 430 expressions that a check needs, most of it
before the first recipe is opened. What it makes of an expression depends on the interpreter alone, so it is laid down
under the expression's own text and the name of the interpreter. Anything that isn't there, or was laid down by another
interpreter, is compiled as ever.
"""

from __future__ import annotations

import contextlib
import marshal
import re
import sys
from _frozen_importlib_external import MAGIC_NUMBER
from collections.abc import Callable, Iterator, Mapping
from io import BytesIO
from pathlib import Path
from typing import Any

from spoonproof.model import record
from spoonproof.parcels import Heap, Packed

FILE = "expressions.marshal"

_records: Any = record  # type checkers see the library's own in its place
_library: Any = re  # its own parts too
_compiler: Any = getattr(re, "_compiler", None)
_engine: Any = getattr(_compiler, "_sre", None)

Laid = tuple[int, bytes, int, dict[str, int], tuple[str | None, ...]]
"""Flags, program, number of groups, groups by name, names by group: what the engine itself is given."""


class _Waiting:
    """An expression that is taken out when something is first looked for with it: a check asks no more
    than half of them."""

    def __init__(self, laid: Packed, asked: tuple[Any, int]) -> None:
        self._laid, self._asked = laid, asked

    def _taken(self) -> Any:
        try:
            own, program, *groups = self._laid[self._asked]
            self._laid.pop(self._asked, None)
            return _engine.compile(self._asked[0], own, memoryview(program).cast("I").tolist(), *groups)
        except Exception:  # another thread has just taken it, or the engine refuses a program that is not sound
            return _compiler.compile(*self._asked)

    def __getattr__(self, name: str) -> Any:
        found = self._taken() if name == "_made" else getattr(self._made, name)
        setattr(self, name, found)
        return found


def take_from(folder: Path) -> None:
    """Let ``re`` take what lies in ``folder``, each expression when it first looks for something. Nothing changes where
    nothing lies there for this interpreter, or where somebody else has a hand on ``re``."""
    if not _is_the_librarys_own():
        return
    try:
        with (folder / FILE).open("rb") as file:
            if file.readline(200) != _interpreter():
                return
            laid, initialisers = Heap.read(file)
            _records.laid_down.update(marshal.loads(initialisers))
    except Exception:  # missing or damaged: they are compiled then
        return
    anew = _library._compile
    made: dict[tuple[object, int], _Waiting] = {}

    def compiled(pattern: Any, flags: int) -> Any:
        asked = pattern, flags
        found = made.get(asked)
        if found is None and asked in laid:
            found = made[asked] = _Waiting(laid, asked)
        elif pattern.__class__ is _Waiting:
            return pattern
        return anew(pattern, flags) if found is None else found

    _library._compile = compiled


def lay(folder: Path) -> Path:
    """Lay down in ``folder`` every expression that our modules and a check of the bundled recipes compile.

    In a process of its own, since what this one has compiled can't be had again. Raises OSError, CalledProcessError.
    """
    import subprocess

    path, package = folder / FILE, Path(__file__).resolve().parent
    start = (
        "import sys; sys.path.insert(0, sys.argv[1]); from spoonproof import cli, expressions; "
        "expressions._lay(sys.argv[2], cli.main)"
    )
    subprocess.run([sys.executable, "-c", start, package.parent, path], check=True, stdout=subprocess.DEVNULL)
    return path


def brought_in() -> tuple[list[str], list[str]]:
    """The modules that a check of one recipe brings in which was read before, and those beyond them where it was not.
    Raises OSError, CalledProcessError."""
    import subprocess
    from tempfile import TemporaryDirectory

    package = Path(__file__).resolve().parent
    start = (
        "import sys; sys.path.insert(0, sys.argv[1]); from spoonproof import cli; out = sys.stdout; "
        "sys.stdout = sys.stderr; cli.main(['check', '--channel', sys.argv[2]]); print(*sys.modules, file=out)"
    )
    with TemporaryDirectory() as name:
        (Path(name) / "channel.yaml").write_text("title: One bowl\n", encoding="utf-8")
        (Path(name) / "recipes").mkdir()
        (Path(name) / "recipes" / "bowl.md").write_text(_BOWL, encoding="utf-8")
        command = [sys.executable, "-c", start, str(package.parent), name]
        said = [subprocess.run(command, check=True, capture_output=True, text=True).stdout for _ in range(2)]
    first, then = ([name for name in one.split() if name.partition(".")[0] == "spoonproof"] for one in said)
    return then, [name for name in first if name not in then]


_BOWL = """---
title: Parsnip bowl
ages: 7-9 months
texture: mashed
foods:
  - 300 g parsnips, peeled
steps:
  - Steam the parsnips for 20 minutes, until they squash between finger and thumb. Mash them.
---
Parsnips are a source of vitamin C.
"""


def _is_the_librarys_own() -> bool:
    hands = [(re, "_compile"), (_compiler, "compile")]
    return _engine is not None and all(
        getattr(getattr(module, name, None), "__module__", "") == module.__name__ for module, name in hands
    )


def _interpreter() -> bytes:
    """What a program of the engine depends on."""
    engine = f"{sys.byteorder} {_engine.MAGIC} {_engine.CODESIZE}"
    return f"{sys.implementation.cache_tag} {MAGIC_NUMBER.hex()} {engine}\n".encode()


def _lay(path: str, command: Callable[[list[str]], int]) -> None:
    """Meet every expression, and write them down; ``command`` runs a command in this process."""
    import os
    import pkgutil
    from importlib import import_module

    os.environ["SPOONPROOF_CACHE"], os.environ["SPOONPROOF_WORKERS"] = "off", "1"
    initialisers: dict[str, Any] = {}
    _records.noted = initialisers
    with _noted() as laid:
        import spoonproof
        from spoonproof.reading.bundle import bundle_root

        for module in pkgutil.walk_packages(spoonproof.__path__, "spoonproof."):
            with contextlib.suppress(ImportError):  # an extra that is not installed
                if not module.name.endswith("__main__"):
                    import_module(module.name)
        if command(["check", "--channel", str(bundle_root())]) > 1:
            raise SystemExit("the bundled recipes can't be checked")
        command(["check", "--help"])
    from spoonproof.reading.files import write_atomically

    write_atomically(Path(path), _written(laid, initialisers))


def _written(laid: Mapping[tuple[str, int], Laid], initialisers: Mapping[str, Any]) -> bytes:
    """The file that ``take_from`` reads."""
    heap, body = Heap(), BytesIO()
    code = marshal.dumps(dict(sorted(initialisers.items())), 2)  # later forms tell shared objects apart
    heap.write((Packed.of(dict(sorted(laid.items())), heap), code), body)
    return _interpreter() + body.getvalue()


@contextlib.contextmanager
def _noted() -> Iterator[dict[tuple[str, int], Laid]]:
    """What is compiled meanwhile, as it is laid down."""
    laid: dict[tuple[str, int], Laid] = {}
    given: list[Any] = []
    anew = _compiler.compile

    class Engine:
        """The engine, noting what it is given."""

        def __getattr__(self, name: str) -> Any:
            return getattr(_engine, name)

        def compile(self, *parts: Any) -> Any:
            given.append(parts)
            return _engine.compile(*parts)

    def compiled(pattern: Any, flags: int = 0) -> Any:
        made = anew(pattern, flags)
        if pattern.__class__ is str and not flags & re.DEBUG:
            _, own, program, count, by_name, names = given.pop()
            laid[pattern, int(flags)] = int(own), _bytes(program), count, dict(by_name), tuple(names)
        return made

    _compiler.compile, _compiler._sre = compiled, Engine()
    try:
        yield laid
    finally:
        _compiler.compile, _compiler._sre = anew, _engine


def _bytes(program: list[int]) -> bytes:
    from array import array

    return array("I", program).tobytes()
