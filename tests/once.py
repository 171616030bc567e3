"""Read and compiled once a process of tests: our own tables, and the templates of pages.

A command in a process of its own does each of these once, and a desk does them once for all of its pages; a test that
runs twenty commands need not do them twenty times. Nothing writes into what is kept but what is unpacked of it when it
is first asked for. Who tests the reading itself gives other places (a wheel's, a channel's own tables), read as ever.
"""

from __future__ import annotations

import gc
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from spoonproof import compiled
from spoonproof.model.table import Row
from spoonproof.model.text import Document
from spoonproof.reading import bundle, register_files
from spoonproof.reading.bundle import read_table
from spoonproof.reading.files import read_document
from spoonproof.reading.yaml_tree import read_yaml


def keep(patch: pytest.MonkeyPatch) -> None:
    """All of it, until ``patch`` is undone."""
    _parts(patch)
    _rows(patch)
    _entries(patch)
    _templates(patch)
    _counted(patch)
    patch.setattr(gc, "get_freeze_count", lambda: 1)  # tests lay aside what is loaded; counting it takes 6 ms each time


def _kept(make: Callable[..., Any]) -> Callable[..., Any]:
    """``make(key, *given)``, called once a key; what it gives is held."""
    made: dict[Any, Any] = {}

    def found(key: Any, *given: Any) -> Any:
        if made.get(key) is None:
            made[key] = make(*given)
        return made[key]

    return found


def _parts(patch: pytest.MonkeyPatch) -> None:
    load, unpack = _kept(compiled.load), compiled.unpack_lexicon
    lexicon = _kept(lambda packed: (packed, unpack(packed)))  # with what it was made of, whose id is then its own
    patch.setattr(compiled, "load", lambda name: load((compiled._place(), name), name))
    patch.setattr(compiled, "unpack_lexicon", lambda packed: lexicon(id(packed), packed)[1])


def _rows(patch: pytest.MonkeyPatch) -> None:
    kept = _kept(read_table)

    def rows(path: Path) -> list[Row]:
        if path.parent != bundle.bundle_root() / "shared":
            return read_table(path)
        state = path.stat()
        return list(kept((path, state.st_mtime_ns, state.st_size), path))

    patch.setattr(bundle, "read_table", rows)


def _entries(patch: pytest.MonkeyPatch) -> None:
    """The register's own files and what YAML makes of them: a quarter of a second each time it is read whole."""
    document, tree = _kept(read_document), _kept(read_yaml)
    ours: set[int] = set()

    def read(path: Path, shown: str, *more: Any) -> Any:
        if path.parent != bundle.bundle_root() / "claims":
            return read_document(path, shown, *more)
        state = path.stat()
        found, faults = document((path, state.st_mtime_ns, state.st_size), path, shown, *more)
        ours.add(id(found))  # held, so its id is its own
        return found, list(faults)

    def parsed(given: Document) -> Any:
        if id(given) not in ours:
            return read_yaml(given)
        found, faults = tree(id(given), given)
        return found, list(faults)

    patch.setattr(register_files, "read_document", read)
    patch.setattr(register_files, "read_yaml", parsed)


def _templates(patch: pytest.MonkeyPatch) -> None:
    from jinja2 import Environment

    whole = Environment.compile
    kept = _kept(whole)

    def compiled_once(env: Environment, source: Any, name: Any = None, filename: Any = None, raw: Any = False) -> Any:
        how = env.sandboxed, env.trim_blocks, env.lstrip_blocks, str(env.autoescape)
        ways = *how, tuple(env.filters), tuple(env.globals)
        return kept((ways, source, name, filename, raw), env, source, name, filename, raw)

    patch.setattr(Environment, "compile", compiled_once)


def _counted(patch: pytest.MonkeyPatch) -> None:
    """What a site is made from of ours, counted three times a build (eight megabytes and six hundred files), and the
    register as its page lists it."""
    from spoonproof.site import census, reference
    from spoonproof.site.reference import entry_items

    own, package = census._ours, census._PACKAGE
    kept = _kept(own)

    def counted() -> list[str]:
        return kept((vars(census)["__version__"], *sys.path)) if package == census._PACKAGE else own()

    patch.setattr(census, "_ours", counted)
    listed = _kept(lambda register: (register, entry_items(register)))  # with what it was made of, as above
    patch.setattr(reference, "entry_items", lambda register: listed(id(register), register)[1])
