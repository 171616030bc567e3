"""One request, bounded in time and size: no cookies, no proxy, no credentials, TLS always checked."""

from __future__ import annotations

import contextlib
import http.client
import socket
import ssl
import threading
import time
import zlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from spoonproof.links.guard import Guard, Target

WAIT_SECONDS = 10.0
"""For connecting, and for each wait for more."""
TOTAL_SECONDS = 30.0
BODY_BYTES = 2 * 1024 * 1024
"""The most that is read of a body, counted after decompression."""
_CHUNK = 64 * 1024


class NoAnswer(Exception):
    """Nothing that can be judged came back; ``rule`` names why in one word, the words tell it."""

    def __init__(self, rule: str, words: str) -> None:
        super().__init__(words)
        self.rule = rule


@dataclass(frozen=True, slots=True)
class Answer:
    """A status with its headers (names in small letters); ``body`` is cut at ``BODY_BYTES``, ``cut`` says so."""

    target: Target
    status: int
    headers: Mapping[str, str]
    body: bytes = b""
    cut: bool = False


@dataclass(frozen=True, slots=True)
class Fetcher:
    """Sends requests where ``guard`` lets it. ``wait`` and ``total`` are seconds, ``tls`` makes the context."""

    agent: str
    guard: Guard = field(default_factory=Guard)
    wait: float = WAIT_SECONDS
    total: float = TOTAL_SECONDS
    tls: Callable[[], ssl.SSLContext] = ssl.create_default_context

    def ask(self, url: str, method: str = "GET", headers: Mapping[str, str] | None = None) -> Answer:
        """The answer to one request; redirects are not followed. Raises Refused, NoSuchHost, NoAnswer."""
        target = self.guard.target(url)
        expired = threading.Event()
        link = self._connected(target)
        open_now = [link]

        def stop() -> None:
            expired.set()
            with contextlib.suppress(OSError):
                # Past the TLS object, which another thread is reading from.
                socket.socket.shutdown(open_now[-1], socket.SHUT_RDWR)

        # A server that sends one byte now and then never trips a wait for the next one: this does.
        watch = threading.Timer(self.total, stop)
        watch.daemon = True
        watch.start()
        try:
            stream: socket.socket = link
            if target.scheme == "https":
                tls = self.tls().wrap_socket(link, server_hostname=target.host, do_handshake_on_connect=False)
                open_now.append(tls)
                tls.do_handshake()
                stream = tls
            answer = self._exchange(target, stream, method, headers or {})
            if expired.is_set():
                # Cut off in its headers an answer looks whole.
                raise NoAnswer("link-timeout", "it did not answer in time")
            return answer
        except ssl.SSLCertVerificationError as problem:
            raise NoAnswer("certificate", f"its certificate does not hold: {problem.verify_message}") from None
        except (OSError, http.client.HTTPException, ValueError) as problem:
            if expired.is_set() or isinstance(problem, TimeoutError):
                raise NoAnswer("link-timeout", "it did not answer in time") from None
            raise NoAnswer("broken-answer", f"its answer broke off ({type(problem).__name__})") from None
        finally:
            watch.cancel()
            for each in open_now:
                each.close()

    def _connected(self, target: Target) -> socket.socket:
        """A connection to the first of the checked addresses that takes it: many hosts name an IPv6 address that
        this machine has no way to. Raises NoAnswer."""
        problem: OSError | None = None
        until = time.monotonic() + self.total
        for address in (target.address, *target.others):
            try:
                return socket.create_connection((address, target.port), timeout=self.wait)
            except OSError as failed:
                problem = failed
            if time.monotonic() > until:
                break
        if isinstance(problem, TimeoutError):
            raise NoAnswer("link-timeout", "it did not answer in time") from None
        raise NoAnswer("no-connection", f"no connection ({getattr(problem, 'strerror', '') or problem})") from None

    def _exchange(self, target: Target, stream: socket.socket, method: str, headers: Mapping[str, str]) -> Answer:
        connection = http.client.HTTPConnection(target.host, target.port, timeout=self.wait)
        connection.sock = stream
        try:
            usual = target.port == (443 if target.scheme == "https" else 80)
            host = f"[{target.host}]" if ":" in target.host else target.host
            connection.putrequest(method, target.path, skip_host=True, skip_accept_encoding=True)
            sent = {
                "Host": host if usual else f"{host}:{target.port}",
                "User-Agent": self.agent,
                "Accept": "*/*",
                "Accept-Encoding": "gzip",
                "Connection": "close",
                **headers,
            }
            for name, value in sent.items():
                connection.putheader(name, value)
            connection.endheaders()
            response = connection.getresponse()
            found = {name.lower(): value for name, value in response.getheaders()}
            body, cut = (b"", False) if method == "HEAD" else _body(response, found)
            return Answer(target, response.status, found, body, cut)
        finally:
            connection.close()


def _body(response: http.client.HTTPResponse, headers: Mapping[str, str]) -> tuple[bytes, bool]:
    """The body up to ``BODY_BYTES`` after decompression, and whether there was more."""
    coding = headers.get("content-encoding", "identity").strip().lower()
    if coding not in ("", "identity", "gzip", "x-gzip", "deflate"):
        raise NoAnswer("broken-answer", "it is packed in a way that was not asked for")
    unpack = None if coding in ("", "identity") else zlib.decompressobj(wbits=47)
    parts: list[bytes] = []
    size = 0
    while size <= BODY_BYTES:
        data = response.read1(_CHUNK)
        if not data:
            # http.client is silent about a body that ends before its stated length when it is read in parts.
            if response.length:
                raise http.client.IncompleteRead(b"", response.length)
            return b"".join(parts), False
        try:
            while data and size <= BODY_BYTES:
                part = data if unpack is None else unpack.decompress(data, BODY_BYTES + 1 - size)
                data = b"" if unpack is None else unpack.unconsumed_tail
                parts.append(part)
                size += len(part)
        except zlib.error:
            raise NoAnswer("broken-answer", "its packing is broken") from None
    return b"".join(parts)[:BODY_BYTES], True
