"""Our own tables as they are once read: made when the wheel is built, loaded at once when a command starts.

In a wheel the made files lie beside the tables and belong to them, as ``.pyc`` files belong to their modules. In a
checkout they lie in ``src/spoonproof/made`` (never committed) and are made anew when the content of a table or the
code that reads it is another. A file that is damaged or of another version is passed over and the tables are read.
Nothing that a person wrote ever goes through here: these are pickles of ours alone.
"""

from __future__ import annotations

import contextlib
import os
from collections import ChainMap
from collections.abc import Callable, Mapping, Sequence
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any

from spoonproof import __version__
from spoonproof.model.record import replace
from spoonproof.parcels import Heap, Packed, PackedRow, Unpickler, dumps
from spoonproof.reading.bundle import bundle_root

if TYPE_CHECKING:
    from spoonproof.claims.lexicon import Lexicon
    from spoonproof.claims.register import Register
    from spoonproof.cooking.verbs import VerbTable
    from spoonproof.feeding.tables import FeedingTables
    from spoonproof.foods.changes import Changes
    from spoonproof.knowledge import Knowledge
    from spoonproof.model.finding import Finding
    from spoonproof.reading.measures import Measures

PACKAGE = Path(__file__).resolve().parent
_PACKED_FOODS = ("foods", "values", "sources", "portions")
_CODE = ("", "claims", "claims/finding", "claims/judging", "cooking", "feeding", "foods", "model", "reading")


def pack_foods(data: Mapping[str, Any], heap: Heap) -> Mapping[str, Any]:
    """The compiled food table, its foods packed one by one, and what names are looked up in as a whole."""
    packed = {key: Packed.of(data[key], heap) for key in _PACKED_FOODS}
    return ChainMap(packed, Packed.of({key: value for key, value in data.items() if key not in packed}, heap))


def pack_lexicon(lexicon: Lexicon, heap: Heap) -> tuple[Any, ...]:
    """A lexicon with its branches packed and the grammar's rules laid out for it; the automaton as its phrases, since
    its own form is one machine's."""
    from spoonproof.claims.grammar import RuleBook
    from spoonproof.claims.grammar_rules import RULES

    laid = RuleBook.lay_out(lexicon, RULES)
    return (
        Packed.of(lexicon.root.next, heap),
        "\n".join(lexicon.automaton.keys()),
        lexicon.symbols,
        lexicon.number_symbol,
        Packed.of(lexicon.classes, heap),
        lexicon.breaths,
        laid._replace(by_symbol=Packed.of(laid.by_symbol, heap)),
    )


def unpack_lexicon(packed: tuple[Any, ...]) -> Lexicon:
    """The lexicon that ``pack_lexicon`` packed."""
    from spoonproof.claims.lexicon import Lexicon, _Node, automaton_of

    branches, phrases, *rest = packed
    return Lexicon(_Node(next=branches), automaton_of(phrases.split("\n")), *rest)


def pack_register(found: tuple[Register, Sequence[Finding]], heap: Heap) -> tuple[Register, Sequence[Finding]]:
    """The register with its entries packed one by one, and what is wrong with it on any day."""
    register, faults = found
    documents = list({id(entry.document): entry.document for entry in register.entries}.values())
    entries = PackedRow.of(register.entries, heap, documents)
    return register.laid_out(entries, lambda values: Packed.of(values, heap)), faults


def pack_feeding(tables: FeedingTables, heap: Heap) -> FeedingTables:
    """The feeding tables with their phrases laid out, and their rows packed table by table."""
    from spoonproof.feeding.allergens import of_text
    from spoonproof.feeding.clauses import clauses
    from spoonproof.feeding.contradictions import contradictions

    of_text("", tables)
    contradictions((), tables)
    clauses("", (), tables)
    return tables.laid_out(lambda values: Packed.of(values, heap), lambda values: PackedRow.of(values, heap))


def pack_changes(changes: Changes, heap: Heap) -> Changes:
    """The retention factors, packed way by way."""
    return replace(changes, factors=Packed.of(changes.factors, heap))


def pack_verbs(verbs: VerbTable, heap: Heap) -> VerbTable:
    """The verbs, their forms packed word by word."""
    return replace(verbs, forms=Packed.of(verbs.forms, heap))


def pack_measures(read: Callable[[str], Measures], heap: Heap) -> Packed:
    """The measures of every system."""
    from spoonproof.reading.measures import SYSTEMS

    return Packed.of({system: read(system) for system in SYSTEMS}, heap)


PARTS: Mapping[str, Callable[[Knowledge, Heap], Any]] = {
    "foods": lambda known, heap: pack_foods(known.food_data(), heap),
    "lexicon": lambda known, heap: pack_lexicon(known.read_lexicon(), heap),
    "register": lambda known, heap: pack_register(known.read_register(""), heap),
    "feeding": lambda known, heap: pack_feeding(known.read_feeding(), heap),
    "changes": lambda known, heap: pack_changes(known.read_changes(), heap),
    "intakes": lambda known, _: known.read_intakes(),
    "measures": lambda known, heap: pack_measures(known.read_measures, heap),
    "verbs": lambda known, heap: pack_verbs(known.read_verbs(), heap),
    "cook_times": lambda known, _: known.read_cook_times(),
    "sources": lambda known, heap: Packed.of(known.read_sources(), heap),
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
        heap, body = Heap(), BytesIO()
        body.write(dumps(stamp, 5))
        heap.write(make(known, heap), body)
        write_atomically(path, body.getvalue())
        written.append(path)
    return written


def load(name: str) -> Any:
    """A part, None where there is none to be had."""
    path, stamp = _place()
    for again in (False, True):
        try:
            with (path / f"{name}.pickle").open("rb") as file:
                if Unpickler(file).load() == stamp:
                    return Heap.read(file)
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
