"""Our own modules in one file, compiled when the wheel is built: a command brings in two hundred of them, and looking
for each one's file, opening and checking it took a tenth of its time.

The file belongs to the interpreter that wrote it, as ``.pyc`` files do; another one passes it over. So is a module
whose source isn't the one that was compiled: of another size, or changed after the wheel was installed.
"""

from __future__ import annotations

import _imp
import marshal
import os
import sys
from _frozen_importlib_external import MAGIC_NUMBER
from collections.abc import Collection, Mapping, Sequence
from importlib import import_module
from importlib.machinery import ModuleSpec
from pathlib import Path
from types import CodeType, ModuleType
from typing import Any

FILE = "modules.marshal"
PACKAGE = os.path.dirname(os.path.abspath(__file__))  # noqa: PTH100, PTH120 - before anything is brought in
INSTALLED = os.path.join(PACKAGE, "bundle", "compiled", FILE)  # noqa: PTH118 - as above
_SPARE = 60
"""Seconds within which an installer writes all of a wheel's files."""

Place = tuple[bool, str, int, int, int, int]
"""Whether it is a package, its source below the package's folder, the source's size, where its code lies, how long it
is, and which one it is of those that lie there together (-1: it lies there alone)."""


class Modules:
    """Finds and loads our modules out of the one file."""

    def __init__(self, file: int, start: int, places: Mapping[str, Place], package: str, made: float) -> None:
        """``file`` is open for reading, code lies from ``start`` on; ``made``: when it was written, in seconds."""
        self._file, self._start, self._places, self._package, self._made = file, start, places, package, made
        self._pieces: dict[int, list[Any]] = {}
        self._waiting: dict[int, list[str]] = {}
        for name, place in places.items():
            if place[5] >= 0:
                self._waiting.setdefault(place[3], []).append(name)

    def find_spec(self, name: str, _path: Sequence[str] | None = None, _target: object = None) -> ModuleSpec | None:
        """The specification of one of our modules, None where its own file must be asked."""
        place = self._places.get(name)
        if place is None:
            return None
        origin = f"{self._package}/{place[1]}"
        try:
            source = os.stat(origin)  # noqa: PTH116 - as above
        except OSError:
            return None
        if source.st_size != place[2] or source.st_mtime > self._made + _SPARE:
            return None
        spec = ModuleSpec(name, self, origin=origin, is_package=place[0])  # type: ignore[arg-type]  # finds and loads
        if spec.submodule_search_locations is not None:
            spec.submodule_search_locations.append(origin.rpartition("/")[0])
        return spec

    def create_module(self, _spec: ModuleSpec) -> None:
        """The usual kind of module."""

    def exec_module(self, module: ModuleType) -> None:
        """Run the module's code."""
        spec = module.__spec__
        assert spec is not None and spec.origin is not None
        code = self._code(*self._places[spec.name][3:])
        _imp._fix_co_filename(code, spec.origin)  # type: ignore[attr-defined]  # as the library's own loaders do
        module.__file__ = spec.origin  # set here, the library would also work out where a .pyc might lie
        exec(code, module.__dict__)

    def bring_in(self, piece: int) -> None:
        """Bring in the modules of a piece, once, in the order in which each was ready when they were brought in one by
        one: what a module imports is there by then, and the library need not look for it."""
        start = sorted(self._waiting)[piece]
        names, self._waiting[start] = self._waiting[start], []
        for name in names:
            if name not in sys.modules:
                self._bring_in(name)

    def _bring_in(self, name: str) -> None:
        above, _, last = name.rpartition(".")
        spec = self.find_spec(name) if above in sys.modules else None
        if spec is None:
            import_module(name)  # as any other: its source was changed, or its package is to come
            return
        module = ModuleType(name)
        module.__spec__, module.__loader__, module.__package__ = spec, spec.loader, above
        if spec.submodule_search_locations is not None:
            module.__package__, module.__path__ = name, spec.submodule_search_locations
        sys.modules[name] = module
        try:
            self.exec_module(module)
        except BaseException:
            del sys.modules[name]
            raise
        setattr(sys.modules[above], last, module)

    def _code(self, offset: int, length: int, which: int) -> Any:
        """The code at a place, which is had once."""
        piece = self._pieces.get(offset, ())
        if which < 0 or (piece and piece[which] is None):
            code = marshal.loads(os.pread(self._file, length, self._start + offset))
            return code if which < 0 else code[which]
        if not piece:
            piece = self._pieces[offset] = list(marshal.loads(os.pread(self._file, length, self._start + offset)))
        code, piece[which] = piece[which], None
        return code


CHECKING, READING = 0, 1
"""The pieces: what a check of a recipe brings in that was read before, and what reading it adds."""
_taken: Modules | None = None


def take() -> None:
    """Bring in our modules out of the installed wheel's one file, where there is one that this interpreter wrote."""
    global _taken
    _taken = found = opened(INSTALLED, PACKAGE)
    if found is not None:
        sys.meta_path.insert(0, found)


def bring_in(piece: int) -> None:
    """Bring in all modules of a piece at once, where they lie in the one file."""
    if _taken is not None:
        _taken.bring_in(piece)


def opened(path: str, package: str) -> Modules | None:
    """The file at ``path`` with the modules of the folder ``package``; None where it can't be used."""
    if sys.flags.optimize or not hasattr(os, "pread"):
        return None
    try:
        file = os.open(path, os.O_RDONLY)
    except OSError:
        return None
    try:
        head = os.pread(file, 200, 0)
        mark, _, length = head.partition(b"\n")[0].rpartition(b" ")
        if mark == _mark() and length.isdigit():
            start = len(mark) + len(length) + 2
            places = marshal.loads(os.pread(file, int(length), start))
            return Modules(file, start + int(length), places, package, os.fstat(file).st_mtime)
    except (OSError, ValueError, EOFError, TypeError):
        pass
    os.close(file)
    return None


def lay(folder: Path, package: Path, *pieces: Collection[str]) -> Path:
    """Write every module of the folder ``package`` into one file in ``folder``; those of each of ``pieces`` in one
    piece, which is read the quicker for what they have in common. Raises OSError, SyntaxError."""
    places: dict[str, Place] = {}
    codes: list[bytes] = []
    offset = 0
    shared: list[dict[str, tuple[bool, str, int, CodeType]]] = [{} for _ in pieces]
    for path in sorted(package.rglob("*.py")):
        parts = path.relative_to(package).with_suffix("").parts
        if parts[0] in ("bundle", "made"):
            continue
        whole = parts[-1] == "__init__"
        name = ".".join((package.name, *(parts[:-1] if whole else parts)))
        source, shown = path.read_bytes(), path.relative_to(package).as_posix()
        compiled = compile(source, f"{package.name}/{shown}", "exec", dont_inherit=True)
        piece = next((found for names, found in zip(pieces, shared, strict=True) if name in names), None)
        if piece is not None:
            piece[name] = whole, shown, len(source), compiled
            continue
        code = marshal.dumps(compiled)
        places[name] = whole, shown, len(source), offset, len(code), -1
        codes.append(code)
        offset += len(code)
    for names, unordered in zip(pieces, shared, strict=True):
        ordered = [name for name in names if name in unordered]
        code = marshal.dumps(tuple(unordered[name][3] for name in ordered))
        for which, name in enumerate(ordered):
            places[name] = *unordered[name][:3], offset, len(code), which
        codes.append(code)
        offset += len(code)
    index = marshal.dumps(places, 2)
    target = folder / FILE
    target.write_bytes(b"%s %d\n" % (_mark(), len(index)) + index + b"".join(codes))
    return target


def _mark() -> bytes:
    """What compiled code depends on."""
    return f"{sys.implementation.cache_tag} {MAGIC_NUMBER.hex()}".encode()
