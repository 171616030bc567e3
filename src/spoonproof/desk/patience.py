"""A connection that keeps the desk waiting is ended: one that sends nothing, or a byte a minute, or never reads.

The server itself gives up only on a connection that rests after an answer. What is counted here is the time in which
the desk waits for the other side: for the head of a request, for its body, for an answer to be taken. The desk's own
work is never counted, however long a reading takes.
"""

from __future__ import annotations

import asyncio
from typing import Any

from uvicorn.protocols.http.h11_impl import H11Protocol

SECONDS = 20.0
"""How long the other side may take over each of the three; on one machine each is a matter of milliseconds."""


class Patient(H11Protocol):
    """The server's own protocol, with an end to its patience."""

    _owed: object = None
    _since = 0.0
    _look: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]  # as the library has it
        """Begin to look at the time."""
        super().connection_made(transport)
        self._since = self.loop.time()
        self._looks()

    def connection_lost(self, exc: Exception | None) -> None:
        """Nobody is waited for any more."""
        if self._look is not None:
            self._look.cancel()
        super().connection_lost(exc)

    def _looks(self) -> None:
        if self.transport.is_closing() and not self.transport.get_write_buffer_size():
            return
        owed, now = self._what_is_owed(), self.loop.time()
        if owed is None or owed != self._owed:
            self._owed, self._since = owed, now
        elif now - self._since >= SECONDS:
            self.transport.abort()
            return
        self._look = self.loop.call_later(SECONDS / 4, self._looks)

    def _what_is_owed(self) -> Any:
        """What the other side has to do next, None where it is our turn."""
        if self.transport.get_write_buffer_size():
            return self.cycle, "take the answer"
        if self.cycle is None or self.cycle.response_complete:
            return self.cycle, "ask"
        return (self.cycle, "send the rest") if self.cycle.more_body else None
