"""Work over many things in several processes, where there are enough of them and cores to spare.

Each process gets a share and the caller keeps one; a share whose process ends badly is worked by the caller, so the
answer is the same with one process, with two, or with one that was killed. What comes back passes through a pipe
between a process and its own child, and nowhere else.
"""

from __future__ import annotations

import contextlib
import io
import os
import sys
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any, TypeVar

if TYPE_CHECKING:
    from pickle import Pickler, Unpickler, UnpicklingError
else:
    try:
        from _pickle import Pickler, Unpickler, UnpicklingError  # the same, without what stands around it
    except ImportError:
        from pickle import Pickler, Unpickler, UnpicklingError

T = TypeVar("T")
R = TypeVar("R")

WORKERS = "SPOONPROOF_WORKERS"
"""How many processes at most, in the environment; "1" keeps everything in one."""

MOST = 8


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


def spread(work: Callable[[Sequence[T]], R], items: Sequence[T], least: int, shared: Sequence[object] = ()) -> list[R]:
    """``work`` over shares of ``items`` (every n-th goes to a share), the results in the order of the shares.

    ``least``: fewer items a process than this are not worth one. ``shared``: objects that come back as the caller's
    own (documents, which are told apart by identity). What ``work`` raises is raised here.
    """
    most = max(1, len(items) // max(1, least))
    count = min(workers(), most) if most > 1 else 1
    shares = [items[start::count] for start in range(count)]
    if count == 1:
        return [work(items)]
    sys.stdout.flush()
    sys.stderr.flush()
    children = [_child(work, share, shared) for share in shares[1:]]
    try:
        results = [work(shares[0])]
        for (process, pipe), share in zip(list(children), shares[1:], strict=True):
            found = _answer(pipe, shared)
            os.waitpid(process, 0)
            children.remove((process, pipe))
            results.append(found[0] if found else work(share))
    finally:
        for process, pipe in children:  # only when something was raised: nobody waits for them any more
            os.close(pipe)
            with contextlib.suppress(OSError):
                os.kill(process, 9)
                os.waitpid(process, 0)
    return results


def _child(work: Callable[[Sequence[T]], R], share: Sequence[T], shared: Sequence[object]) -> tuple[int, int]:
    """A process that works a share, with the end of the pipe its answer comes out of."""
    reading, writing = os.pipe()
    process = os.fork()
    if process:
        os.close(writing)
        return process, reading
    code = 1
    try:
        os.close(reading)
        body = io.BytesIO()
        _Packer(body, shared).dump(work(share))
        with os.fdopen(writing, "wb") as pipe:
            pipe.write(body.getbuffer())
        code = 0
    except BaseException:  # the caller works the share itself, and meets what was met here
        code = 1
    finally:
        os._exit(code)


def _answer(pipe: int, shared: Sequence[object]) -> tuple[Any] | None:
    """What a child gave, None where it did not end well."""
    try:
        with os.fdopen(pipe, "rb") as file:
            return (_Unpacker(io.BytesIO(file.read()), shared).load(),)
    except (EOFError, UnpicklingError, OSError):
        return None


class _Packer(Pickler):
    def __init__(self, file: io.BytesIO, shared: Sequence[object]) -> None:
        super().__init__(file, 5)
        self._places = {id(item): place for place, item in enumerate(shared)}

    def persistent_id(self, obj: object) -> int | None:
        """The place of an object that both sides have."""
        return self._places.get(id(obj))


class _Unpacker(Unpickler):
    def __init__(self, file: io.BytesIO, shared: Sequence[object]) -> None:
        super().__init__(file)
        self._shared = shared

    def persistent_load(self, pid: int) -> object:
        """The object at a place."""
        return self._shared[pid]
