"""Tables of many small values, each packed for itself and taken out when it is first asked for.

A check touches some hundred of the twenty thousand values in our tables. So a part as made (see ``compiled``) holds
where each value lies, and the values lie behind it in the same file, unread until somebody wants one.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping, Sequence
from io import BytesIO
from typing import IO, TYPE_CHECKING, Any

if TYPE_CHECKING:
    from pickle import Pickler, Unpickler, dumps, loads
else:
    try:
        from _pickle import Pickler, Unpickler, dumps, loads  # the same, without what stands around it
    except ImportError:
        from pickle import Pickler, Unpickler, dumps, loads

__all__ = ["Heap", "Packed", "PackedRow", "Pickler", "Unpickler", "dumps", "loads"]

_BOUND = 4  # bytes in which a place in the heap is written
_APART = "\0"


class Heap:
    """Values packed one after another. As made they stay in the file they were written to."""

    def __init__(self) -> None:
        self._made: list[bytes] = []
        self.size = 0
        self._file = self._start = -1
        self._body = b""

    def put(self, body: bytes) -> int:
        """Lay ``body`` at the end; where that is."""
        self._made.append(body)
        self.size += len(body)
        return self.size

    def get(self, start: int, end: int) -> bytes:
        """What lies from ``start`` to ``end``."""
        if self._file >= 0:
            return os.pread(self._file, end - start, self._start + start)
        if self._made:
            self._body, self._made = self._body + b"".join(self._made), []
        return self._body[start:end]

    def write(self, value: object, file: IO[bytes]) -> None:
        """Write ``value``, which holds parcels out of this heap, and the heap behind it."""
        pickler = _pickler(file, {id(self): "heap"})
        pickler.dump((self.size, value))
        file.write(self.get(0, self.size))

    @classmethod
    def read(cls, file: IO[bytes]) -> Any:
        """The value that ``write`` wrote. Raises ValueError where the heap is not whole, or as pickle does."""
        heap = cls()
        unpickler = Unpickler(file)
        unpickler.persistent_load = lambda _: heap  # type: ignore[method-assign]  # as pickle has it
        heap.size, value = unpickler.load()
        start = file.tell()
        if os.fstat(file.fileno()).st_size != start + heap.size:
            raise ValueError("the heap is not whole")
        if hasattr(os, "pread"):
            heap._file, heap._start = os.dup(file.fileno()), start
        else:
            heap._body = file.read()
        return value


class _Places:
    """Where values lie in a heap, in a row."""

    __slots__ = ("_bounds", "_heap")

    def __init__(self, bounds: bytes, heap: Heap) -> None:
        self._bounds, self._heap = bounds, heap

    def __reduce__(self) -> tuple[Any, ...]:
        return _Places, (self._bounds, self._heap)

    @classmethod
    def of(cls, bodies: Sequence[bytes], heap: Heap) -> _Places:
        """``bodies`` laid in a heap."""
        bounds = [heap.size, *map(heap.put, bodies)]
        return cls(b"".join(bound.to_bytes(_BOUND, "little") for bound in bounds), heap)

    def __getitem__(self, at: int) -> bytes:
        here = at * _BOUND
        start, end, bounds = here, here + _BOUND, self._bounds
        return self._heap.get(
            int.from_bytes(bounds[start:end], "little"), int.from_bytes(bounds[end : end + _BOUND], "little")
        )


class Packed(dict[Any, Any]):
    """A mapping whose values are taken out one by one; none of them is None. What was taken out before is had as
    quickly as from any dictionary. ``known``: its keys, laid out when the first is asked for."""

    __slots__ = ("_keys", "_places", "known")
    known: Mapping[Any, int]

    def __init__(self, keys: Sequence[Any] | str, places: _Places) -> None:
        super().__init__()
        self._keys, self._places = keys, places

    def __getattr__(self, name: str) -> Any:
        if name != "known":
            raise AttributeError(name)
        keys, self._keys = self._keys, ()
        keys = keys.split(_APART) if isinstance(keys, str) else keys
        self.known = found = dict(zip(keys, range(len(keys)), strict=True))
        return found

    def __reduce__(self) -> tuple[Any, ...]:
        keys: Sequence[Any] = tuple(self.known)
        if keys and all(isinstance(key, str) and _APART not in key for key in keys):
            keys = _APART.join(keys)
        return Packed, (keys, self._places)

    @classmethod
    def of(cls, values: Mapping[Any, Any], heap: Heap) -> Packed:
        """``values`` packed."""
        return cls(tuple(values), _Places.of([dumps(value, 5) for value in values.values()], heap))

    def __missing__(self, key: Any) -> Any:
        found = self[key] = loads(self._places[self.known[key]])
        return found

    def get(self, key: Any, default: Any = None) -> Any:
        """The value of ``key``."""
        return self[key] if key in self.known else default

    def __contains__(self, key: object) -> bool:
        return key in self.known

    def __iter__(self) -> Iterator[Any]:
        return iter(self.known)

    def __len__(self) -> int:
        return len(self.known)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Mapping) and dict(self.items()) == dict(other.items())

    __hash__ = None
    keys, values, items = Mapping.keys, Mapping.values, Mapping.items  # type: ignore[assignment]  # of all that is known


class PackedRow(Sequence[Any]):
    """A row of values that are taken out one by one; what many of them hold lies beside them, once."""

    def __init__(self, count: int, places: _Places, shared: Sequence[Any]) -> None:
        self._count, self._places, self._shared = count, places, shared
        self._taken: dict[int, Any] = {}

    def __reduce__(self) -> tuple[Any, ...]:
        return PackedRow, (self._count, self._places, self._shared)

    @classmethod
    def of(cls, values: Sequence[Any], heap: Heap, shared: Sequence[Any] = ()) -> PackedRow:
        """``values`` packed; the objects in ``shared`` are left out of them."""
        places = {id(each): place for place, each in enumerate(shared)}
        bodies = []
        for value in values:
            body = BytesIO()
            _pickler(body, places).dump(value)
            bodies.append(body.getvalue())
        return cls(len(bodies), _Places.of(bodies, heap), cls.of(shared, heap) if shared else ())

    def __getitem__(self, at: Any) -> Any:
        found = self._taken.get(at) if at.__class__ is int else None
        if found is None:
            if isinstance(at, slice):
                return [self[each] for each in range(*at.indices(self._count))]
            if not -self._count <= at < self._count:
                raise IndexError(at)
            unpickler = Unpickler(BytesIO(self._places[at % self._count]))
            unpickler.persistent_load = self._shared.__getitem__  # type: ignore[method-assign]  # as pickle has it
            found = self._taken[at] = unpickler.load()
        return found

    def __len__(self) -> int:
        return self._count


def _pickler(file: IO[bytes], known: Mapping[int, Any]) -> Pickler:
    """A pickler that writes the objects of these identities as what stands for them."""
    pickler = Pickler(file, 5)
    pickler.persistent_id = lambda each: known.get(id(each))  # type: ignore[method-assign]  # as pickle has it
    return pickler
