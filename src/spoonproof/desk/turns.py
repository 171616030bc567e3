"""Readings one after the other: the machine's two hands are for them and for the pages that need none.

A reading is work alone, so that twelve at once end no sooner than twelve in a row; but each page that is asked for
meanwhile would wait for all of them.
"""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

AT_ONCE = 2
MOST = 40
"""Readings that may wait; the next is refused in words."""


class TooMany(Exception):
    """More readings wait than the desk will remember."""


class Turns:
    """Who reads, and who waits."""

    def __init__(self) -> None:
        self._free = asyncio.Semaphore(AT_ONCE)
        self._newest: dict[str, object] = {}
        self._waiting = 0

    @asynccontextmanager
    async def turn(self, who: str) -> AsyncIterator[bool]:
        """Wait for a turn; False when ``who`` (a window; "" : nobody known) has asked again in the meantime.

        Raises TooMany.
        """
        if self._waiting >= MOST:
            raise TooMany
        mine = self._newest[who] = object()
        self._waiting += 1
        try:
            await self._free.acquire()
        finally:
            self._waiting -= 1
        try:
            yield not who or self._newest.get(who) is mine
        finally:
            self._free.release()
            if self._newest.get(who) is mine:
                del self._newest[who]
