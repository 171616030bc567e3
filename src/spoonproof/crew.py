"""Work over many things in several processes, where there are enough of them and cores to spare.

Each process gets a share and the caller keeps one; what a process that ends badly did not come to is worked by the
caller, so the answer is the same with one process, with two, or with one that was killed. What comes back passes
through a pipe between a process and its own child, and nowhere else.
"""

from __future__ import annotations

import gc
import io
import os
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Any, Generic, NoReturn, TypeVar

if TYPE_CHECKING:
    from pickle import Pickler, Unpickler
else:
    try:
        from _pickle import Pickler, Unpickler  # the same, without what stands around it
    except ImportError:
        from pickle import Pickler, Unpickler

T = TypeVar("T")
R = TypeVar("R")

WORKERS = "SPOONPROOF_WORKERS"
"""How many processes at most, in the environment; "1" keeps everything in one."""

MOST = 8

SWEPT = 50
"""Things worked after which what nobody holds any more is swept out."""

_spreading = 0
"""How often work is being spread now: what that work spreads in turn asks the collector nothing."""


def workers() -> int:
    """How many processes there may be: as many as cores we may use, 1 where a process can't be split safely."""
    if not hasattr(os, "fork") or sys.platform == "darwin":
        return 1
    import threading

    if threading.active_count() > 1:
        return 1  # a fork copies locks that another thread may hold
    stated = os.environ.get(WORKERS, "")
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    return max(1, min(MOST, int(stated) if stated.isdecimal() and len(stated) < 4 else cores))


def spread(
    work: Callable[[Sequence[T]], Iterable[R]], items: Sequence[T], least: int, shared: Sequence[object] = ()
) -> Iterator[R]:
    """What ``work`` gives for ``items``, one for each and in their order, each as soon as it is there: nothing is held.

    ``work`` gets shares of them (every n-th goes to a share); a process whose answers nobody takes yet waits.
    ``least``: fewer items a process than this are not worth one. ``shared``: objects that come back as the caller's
    own (documents, which are told apart by identity). What ``work`` raises is raised here.
    """
    most = max(1, len(items) // max(1, least))
    count = min(workers(), most) if most > 1 else 1
    sys.stdout.flush()
    sys.stderr.flush()
    children: list[_Child[T, R]] = []
    global _spreading
    _spreading += 1
    first = (
        _spreading == 1 and not gc.get_freeze_count()
    )  # what a caller has laid aside stays aside; counting it takes long
    if first or len(items) > SWEPT:
        gc.freeze()  # what is there already is not gone through again and again
    try:
        for start in range(1, count):
            children.append(_Child(work, items[start::count], shared))
        streams = [_tidied(work(items[::count])), *(child.answers() for child in children)]
        for number in range(len(items)):
            yield next(streams[number % count])
        for stream in streams:  # what a process does after its last answer
            for _ in stream:
                pass
    finally:
        _spreading -= 1
        if first:
            gc.unfreeze()
        for child in children:
            child.end()


def _tidied(answers: Iterable[R]) -> Iterator[R]:
    """The same; rings of objects that were let go are swept often enough that memory stays flat."""
    for number, answer in enumerate(answers, 1):
        yield answer
        if number % SWEPT == 0:
            gc.collect(1)  # of what came since the last sweep: what stayed then is not gone through again


class _Child(Generic[T, R]):
    """A process that works a share, and the pipe its answers come out of."""

    def __init__(
        self, work: Callable[[Sequence[T]], Iterable[R]], share: Sequence[T], shared: Sequence[object]
    ) -> None:
        self._work, self._share, self._shared = work, share, shared
        reading, writing = os.pipe()
        self._process = os.fork()
        if not self._process:
            os.close(reading)
            self._give(writing)
        os.close(writing)
        self._pipe = os.fdopen(reading, "rb")
        self._ended = False

    def _give(self, writing: int) -> NoReturn:
        code = 1
        try:
            with os.fdopen(writing, "wb") as pipe:
                places = {id(item): place for place, item in enumerate(self._shared)}
                for answer in _tidied(self._work(self._share)):
                    body = packed(answer, lambda item: places.get(id(item)))
                    pipe.write(len(body).to_bytes(8, "big"))
                    pipe.write(body)
            code = 0
        except BaseException:  # the caller works what is left of the share, and meets what was met here
            code = 1
        finally:
            os._exit(code)

    def answers(self) -> Iterator[R]:
        """What the process gives; what it did not come to is worked here."""
        done = 0
        while (found := self._answer()) is not None:
            yield found[0]
            done += 1
        self._ended = True
        if done < len(self._share):
            yield from self._work(self._share[done:])

    def _answer(self) -> tuple[R] | None:
        size = int.from_bytes(self._pipe.read(8), "big")
        body = self._pipe.read(size)
        return (unpacked(body, self._shared.__getitem__),) if size and len(body) == size else None

    def end(self) -> None:
        """Nobody waits for it any more: it has ended, or something was raised here."""
        self._pipe.close()
        if not self._ended:
            os.kill(self._process, 9)
        os.waitpid(self._process, 0)


def packed(value: object, place_of: Callable[[object], int | None]) -> bytes:
    """``value`` for ``unpacked``. ``place_of``: the place of an object that both sides have, None for any other."""
    body = io.BytesIO()
    _Packer(body, place_of).dump(value)
    return body.getvalue()


def unpacked(body: bytes, at: Callable[[int], object]) -> Any:
    """The value that this very process or its child packed. ``at``: the object at a place."""
    return _Unpacker(io.BytesIO(body), at).load()


class _Packer(Pickler):
    def __init__(self, file: io.BytesIO, place_of: Callable[[object], int | None]) -> None:
        super().__init__(file, 5)
        self._place_of = place_of

    def persistent_id(self, obj: object) -> int | None:
        """The place of an object that both sides have."""
        return self._place_of(obj)


class _Unpacker(Unpickler):
    def __init__(self, file: io.BytesIO, at: Callable[[int], object]) -> None:
        super().__init__(file)
        self._at = at

    def persistent_load(self, pid: int) -> object:
        """The object at a place."""
        return self._at(pid)
