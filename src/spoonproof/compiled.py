"""Our own tables as they are once read: made when the wheel is built, loaded at once when a command starts.

In a wheel the made files lie beside the tables and belong to them, as ``.pyc`` files belong to their modules. In a
checkout they lie in ``src/spoonproof/made`` (never committed) and are made anew when the content of a table or the
code that reads it is another. A file that is damaged or of another version is passed over and the tables are read.
Nothing that a person wrote ever goes through here: these are pickles of ours alone.
"""

from __future__ import annotations

import contextlib
import io
import os
import pickle
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from spoonproof import __version__
from spoonproof.model.record import replace
from spoonproof.reading.bundle import bundle_root

if TYPE_CHECKING:
    from spoonproof.claims.lexicon import Lexicon
    from spoonproof.claims.register import Register
    from spoonproof.feeding.tables import FeedingTables
    from spoonproof.foods.changes import Changes
    from spoonproof.knowledge import Knowledge
    from spoonproof.model.finding import Finding
    from spoonproof.reading.measures import Measures

PACKAGE = Path(__file__).resolve().parent
_PACKED_FOODS = ("foods", "values", "sources", "portions")
_CODE = ("", "claims", "claims/finding", "claims/judging", "cooking", "feeding", "foods", "model", "reading")


class Packed(Mapping[Any, Any]):
    """A mapping whose values are unpacked one by one, each when it is first asked for."""

    def __init__(self, packed: Mapping[Any, bytes]) -> None:
        self._packed = packed
        self._unpacked: dict[Any, Any] = {}

    def __reduce__(self) -> tuple[Any, ...]:
        return Packed, (self._packed,)

    @classmethod
    def of(cls, values: Mapping[Any, Any]) -> Packed:
        """``values`` packed."""
        return cls({key: pickle.dumps(value, 5) for key, value in values.items()})

    def __getitem__(self, key: Any) -> Any:
        found = self._unpacked.get(key)
        if found is None:
            found = self._unpacked[key] = pickle.loads(self._packed[key])
        return found

    def __contains__(self, key: object) -> bool:
        return key in self._packed

    def __iter__(self) -> Iterator[Any]:
        return iter(self._packed)

    def __len__(self) -> int:
        return len(self._packed)


class PackedRow(Sequence[Any]):
    """A row of values that are unpacked one by one, each when it is first asked for; what many of them hold, once."""

    def __init__(self, packed: Sequence[bytes], shared: Sequence[Any]) -> None:
        """``packed`` as ``of`` makes it, ``shared`` the objects that are left out of it."""
        self._packed = packed
        self._shared = shared
        self._unpacked: dict[int, Any] = {}

    def __reduce__(self) -> tuple[Any, ...]:
        return PackedRow, (self._packed, self._shared)

    @classmethod
    def of(cls, values: Sequence[Any], shared: Sequence[Any]) -> PackedRow:
        """``values`` packed."""
        places = {id(each): place for place, each in enumerate(shared)}
        packed = []
        for value in values:
            body = io.BytesIO()
            pickler = pickle.Pickler(body, 5)
            pickler.persistent_id = lambda each: places.get(id(each))  # type: ignore[method-assign]  # as pickle has it
            pickler.dump(value)
            packed.append(body.getvalue())
        return cls(packed, shared)

    def __getitem__(self, at: Any) -> Any:
        if isinstance(at, slice):
            return [self[each] for each in range(*at.indices(len(self)))]
        if at not in self._unpacked:
            unpickler = pickle.Unpickler(io.BytesIO(self._packed[at]))
            unpickler.persistent_load = self._shared.__getitem__  # type: ignore[method-assign]  # as pickle has it
            self._unpacked[at] = unpickler.load()
        return self._unpacked[at]

    def __len__(self) -> int:
        return len(self._packed)


class Branches(dict[str, Any]):
    """The first words of the lexicon; what stands behind one is unpacked when it is first looked up."""

    def __init__(self, packed: Mapping[str, bytes]) -> None:
        super().__init__()
        self._packed = packed

    def get(self, word: str, default: Any = None) -> Any:
        """The branch of ``word``."""
        found = super().get(word)
        if found is None and word in self._packed:
            found = self[word] = pickle.loads(self._packed[word])
        return default if found is None else found


def pack_foods(data: Mapping[str, Any]) -> dict[str, Any]:
    """The compiled food table, its foods packed one by one."""
    return {key: Packed.of(value) if key in _PACKED_FOODS else value for key, value in data.items()}


def pack_lexicon(lexicon: Lexicon) -> tuple[Any, ...]:
    """A lexicon with its branches packed and the grammar's rules laid out for it; the automaton as its phrases, since
    its own form is one machine's."""
    from spoonproof.claims.grammar import RuleBook
    from spoonproof.claims.grammar_rules import RULES

    branches = {word: pickle.dumps(node, 5) for word, node in lexicon.root.next.items()}
    phrases = tuple(lexicon.automaton.keys())
    laid = RuleBook.lay_out(lexicon, RULES)
    return branches, phrases, lexicon.symbols, lexicon.number_symbol, lexicon.classes, lexicon.breaths, laid


def unpack_lexicon(packed: tuple[Any, ...]) -> Lexicon:
    """The lexicon that ``pack_lexicon`` packed."""
    import ahocorasick

    from spoonproof.claims.lexicon import Lexicon, _Node

    branches, phrases, *rest = packed
    automaton = ahocorasick.Automaton()
    for phrase in phrases:
        automaton.add_word(phrase, len(phrase))
    automaton.make_automaton()
    return Lexicon(_Node(next=Branches(branches)), automaton, *rest)


def pack_register(found: tuple[Register, Sequence[Finding]]) -> tuple[Register, Sequence[Finding]]:
    """The register with its entries packed one by one, and what is wrong with it on any day."""
    register, faults = found
    documents = list({id(entry.document): entry.document for entry in register.entries}.values())
    return replace(register, entries=PackedRow.of(register.entries, documents)), faults


def pack_feeding(tables: FeedingTables) -> FeedingTables:
    """The feeding tables with their phrases laid out, and their rows packed table by table."""
    from spoonproof.feeding.allergens import of_text
    from spoonproof.feeding.contradictions import contradictions

    of_text("", tables)
    contradictions((), tables)
    return replace(tables, rows=Packed.of(tables.rows))


def pack_changes(changes: Changes) -> Changes:
    """The retention factors, packed way by way."""
    return replace(changes, factors=Packed.of(changes.factors))


def pack_measures(read: Callable[[str], Measures]) -> Packed:
    """The measures of every system."""
    from spoonproof.reading.measures import SYSTEMS

    return Packed.of({system: read(system) for system in SYSTEMS})


PARTS: Mapping[str, Callable[[Knowledge], Any]] = {
    "foods": lambda known: pack_foods(known.food_data()),
    "lexicon": lambda known: pack_lexicon(known.read_lexicon()),
    "register": lambda known: pack_register(known.read_register("")),
    "feeding": lambda known: pack_feeding(known.read_feeding()),
    "changes": lambda known: pack_changes(known.read_changes()),
    "intakes": lambda known: known.read_intakes(),
    "measures": lambda known: pack_measures(known.read_measures),
    "verbs": lambda known: known.read_verbs(),
    "cook_times": lambda known: known.read_cook_times(),
    "sources": lambda known: dict(known.read_sources()),
}
"""Each part by name, with how it is made out of the bundled tables."""


def write_parts(folder: Path, stamp: str) -> list[Path]:
    """Make every part anew in ``folder``, each whole or not at all. Raises OSError."""
    from spoonproof.knowledge import Knowledge
    from spoonproof.reading.files import write_atomically

    folder.mkdir(parents=True, exist_ok=True)
    known = Knowledge(made=False)
    written = []
    for name, make in PARTS.items():
        path = folder / f"{name}.pickle"
        write_atomically(path, pickle.dumps(stamp, 5) + pickle.dumps(make(known), 5))
        written.append(path)
    return written


def load(name: str) -> Any:
    """A part, None where there is none to be had."""
    path, stamp = _place()
    for again in (False, True):
        try:
            with (path / f"{name}.pickle").open("rb") as file:
                if pickle.load(file) == stamp:
                    return pickle.load(file)
        except Exception:  # missing, cut short, of another version: the tables themselves are there
            pass
        if again or stamp == __version__:
            break  # in a wheel nothing is made
        with contextlib.suppress(OSError):
            write_parts(path, stamp)
            _lay_expressions(path)
    return None


def _lay_expressions(folder: Path) -> None:
    """In a checkout once: one that is another since then is compiled as ever."""
    from subprocess import CalledProcessError

    from spoonproof.expressions import FILE, lay

    if not (folder / FILE).exists():
        with contextlib.suppress(CalledProcessError):
            lay(folder)


def stamp() -> str:
    """What changes with our tables or with the code that reads them."""
    return _place()[1]


def code_stamp(*folders: str) -> str:
    """What changes with the code in these folders of the package: the version in a wheel, size and time beside it."""
    if bundle_root().parent == PACKAGE:
        return __version__
    return f"{__version__} {[_code_in(folder) for folder in folders]}"


def _code_in(folder: str) -> list[tuple[str, int, int]]:
    """The modules of a folder, with size and time, as Python itself tells them apart."""
    with os.scandir(PACKAGE / folder) as entries:
        return sorted((e.name, e.stat().st_size, e.stat().st_mtime_ns) for e in entries if e.name.endswith(".py"))


def made_folder() -> Path:
    """Where the made files lie."""
    root = bundle_root()
    return root / "compiled" if root.parent == PACKAGE else PACKAGE / "made"


def _place() -> tuple[Path, str]:
    root = bundle_root()
    if root.parent == PACKAGE:
        return made_folder(), __version__
    global _stamp
    if _stamp is None:
        _stamp = _checkout_stamp(root)
    return made_folder(), _stamp


_stamp: str | None = None


def _checkout_stamp(root: Path) -> str:
    """What the parts were made from: the tables by content, the code by size and time as Python itself does."""
    from spoonproof.cache import blake2b

    found = blake2b(__version__.encode(), digest_size=16)
    for folder in ("shared", "shared/sources", "claims", "claims/lexicon/en"):
        for name in sorted(path.name for path in (root / folder).iterdir()):
            if name.endswith((".csv", ".yaml")):
                found.update(f"{folder}/{name}".encode())
                found.update((root / folder / name).read_bytes())
    for folder in _CODE:
        found.update(repr(_code_in(folder)).encode())
    return found.hexdigest()
