"""A server on this machine that misbehaves in every way a page can, and a fetcher that may reach it."""

from __future__ import annotations

import gzip
import socket
import ssl
import threading
import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from spoonproof.links.fetch import Fetcher
from spoonproof.links.guard import Guard, is_public
from spoonproof.links.manners import Manners

CERTIFICATE = Path(__file__).with_name("self_signed_test_certificate.pem")
PAGE = b"<html><title>Weaning</title><script>x()</script><p>Soft pear from six months.</p></html>"


ANSWERS: dict[str, tuple[int, bytes, dict[str, str]]] = {
    "marked": (200, PAGE, {"ETag": '"one"'}),
    "gone": (410, b"", {}),
    "forbidden": (403, b"", {}),
    "broken": (500, b"", {}),
    "busy_for_long": (503, b"", {"Retry_After": "86400"}),
    "busy_until": (429, b"", {"Retry_After": "Wed, 25 Nov 2026 10:00:00 GMT"}),
    "always_busy": (429, b"", {"Retry_After": "1"}),
    "soft": (200, b"<title>Page not found - Health</title><p>Sorry.</p>", {}),
    "heading": (200, b"<title>Health</title><h1 class=x>Sorry, <b>page not found</b></h1><p>Look elsewhere.</p>", {}),
    "empty": (200, b" \n", {}),
    "moved": (301, b"", {"Location": "/page"}),
    "elsewhere": (302, b"", {"Location": "/page"}),
    "home": (302, b"", {"Location": "/"}),
    "loop": (302, b"", {"Location": "/loop"}),
    "nowhere": (302, b"", {}),
    "inside": (302, b"", {"Location": "http://169.254.169.254/latest/meta-data/"}),
    "not_gzip": (200, b"plain", {"Content_Encoding": "gzip"}),
    "brotli": (200, b"plain", {"Content_Encoding": "br"}),
    "unasked": (304, b"", {}),
    "odd_status": (999, b"", {}),
    "other_charset": (200, PAGE.decode().encode("utf-16"), {"Content_Type": "text/html; charset=utf-8"}),
    "cookie": (200, PAGE, {"Set_Cookie": "taken=1", "Content_Type": "text/html; charset=no-such-thing"}),
    "headers": (200, PAGE, {f"X_{number}": "y" for number in range(150)}),
    "long_header": (200, PAGE, {"X_Long": "y" * 100_000}),
}
"""What needs no more than a status, a body and headers, by the name of its path."""


class Misbehaving(BaseHTTPRequestHandler):
    """Each path is one way to answer."""

    protocol_version = "HTTP/1.1"
    server: Server

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""

    def do_HEAD(self) -> None:
        self.answer()

    def do_GET(self) -> None:
        self.answer()

    def answer(self) -> None:
        self.server.asked.append((self.command, self.path, dict(self.headers), time.monotonic()))
        name = self.path.lstrip("/").split("?")[0].split("/")[0] or "page"
        name = "robots" if name == "robots.txt" else name.replace("-", "_")
        status, body, headers = ANSWERS.get(name, (404, b"", {}))
        getattr(self, f"on_{name}", lambda: self.send(status, body, **headers))()

    def send(self, status: int, body: bytes = b"", **headers: str) -> None:
        self.send_response(status)
        for key, value in headers.items():
            self.send_header(key.replace("_", "-"), value)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def begin(self, status: int = 200, **headers: str) -> None:
        """A head alone; what comes of the body is the caller's affair, and the connection ends with it."""
        self.send_response(status)
        for key, value in headers.items():
            self.send_header(key.replace("_", "-"), value)
        self.end_headers()
        self.close_connection = True

    def write_slowly(self, parts: Iterable[bytes], pause: float) -> None:
        for part in parts:
            self.wfile.write(part)
            self.wfile.flush()
            time.sleep(pause)

    def unless_head(self, on_head: Callable[[], None]) -> None:
        on_head() if self.command == "HEAD" else self.send(200, PAGE)

    def on_robots(self) -> None:
        self.send(self.server.robots_status, self.server.robots)

    def on_page(self) -> None:
        self.send(200, self.server.page)

    def on_no_head(self) -> None:
        self.unless_head(lambda: self.send(405))

    def on_head_missing(self) -> None:
        self.unless_head(lambda: self.send(404))

    def on_head_resets(self) -> None:
        self.unless_head(self.on_reset)

    def on_busy(self) -> None:
        self.server.busy -= 1
        self.send(429, Retry_After="2") if self.server.busy >= 0 else self.send(200, PAGE)

    def on_chain(self) -> None:
        left = int(self.path.rsplit("/", 1)[1])
        self.send(302, Location=f"/chain/{left - 1}") if left else self.send(200, PAGE)

    def on_to(self) -> None:
        self.send(302, Location=self.path.split("?", 1)[1])

    def on_silent(self) -> None:
        time.sleep(20)

    def on_drip(self) -> None:
        self.begin(Content_Length="100000")
        self.write_slowly([b"x"] * 200, 0.1)

    def on_reset(self) -> None:
        self.connection.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, b"\x01\x00\x00\x00\x00\x00\x00\x00")
        self.close_connection = True
        self.connection.close()

    def on_half(self) -> None:
        self.begin(Content_Length="1000")
        self.wfile.write(b"x" * 500)

    def on_nonsense(self) -> None:
        self.wfile.write(b"GARBAGE \x00\xff\r\n\r\n")
        self.close_connection = True

    def on_endless(self) -> None:
        self.begin(Connection="close")
        for _ in range(20_000 if self.command == "GET" else 0):
            self.wfile.write(b"y" * 65536)

    def on_huge(self) -> None:
        self.begin(Content_Length=str(500 * 1024 * 1024))
        for _ in range(8000 if self.command == "GET" else 0):
            self.wfile.write(b"y" * 65536)

    def on_bomb(self) -> None:
        self.send(200, gzip.compress(b"0" * 200_000_000), Content_Encoding="gzip")

    def on_unchanged(self) -> None:
        """Nothing of its own on HEAD; on GET it answers conditions."""
        if self.command == "HEAD":
            self.send(200)
        elif self.headers.get("If-None-Match") == '"one"':
            self.send(304, ETag='"one"')
        else:
            self.send(200, PAGE, ETag='"one"')

    def on_nothing(self) -> None:
        self.send_response(204)
        self.end_headers()

    def on_wait_and_see(self) -> None:
        self.write_slowly([b"HTTP/1.1 100 Continue\r\n\r\n"] * 400, 0.02)
        self.send(200, PAGE)

    def on_drip_headers(self) -> None:
        head = b"HTTP/1.1 200 OK\r\nContent-Length: 3\r\nX: " + b"y" * 200
        self.write_slowly((bytes([byte]) for byte in head), 0.05)

    def on_bad_chunk(self) -> None:
        self.begin(Transfer_Encoding="chunked")
        self.wfile.write(b"zz\r\nabc\r\n")

    def on_endless_chunk(self) -> None:
        self.begin(Transfer_Encoding="chunked")
        self.wfile.write(b"ffffffffff\r\nabc")

    def on_minus(self) -> None:
        self.begin(Content_Length="-5")
        self.wfile.write(PAGE)


class Server(ThreadingHTTPServer):
    """Remembers what it was asked."""

    daemon_threads = True
    request_queue_size = 32

    def __init__(self) -> None:
        super().__init__(("127.0.0.1", 0), Misbehaving)
        self.asked: list[tuple[str, str, dict[str, str], float]] = []
        self.page = PAGE
        self.robots = b""
        self.robots_status = 404
        self.busy = 1

    def handle_error(self, request: object, client_address: object) -> None:
        """A client that hangs up is what is tested here."""

    @property
    def port(self) -> int:
        return int(self.server_address[1])

    def url(self, path: str, scheme: str = "http") -> str:
        return f"{scheme}://pages.test:{self.port}/{path.lstrip('/')}"

    def guard(self) -> Guard:
        """``*.test`` is this server; every other name resolves to itself when it is an address."""

        def resolver(host: str, port: int) -> list[str]:
            return ["127.0.0.1"] if host.endswith(".test") else [host]

        return Guard(resolver, lambda ip: ip == "127.0.0.1" or is_public(ip), frozenset({self.port}))

    def fetcher(self, wait: float = 2.0, total: float = 4.0) -> Fetcher:
        return Fetcher("spoonproof-test/1", self.guard(), wait, total)

    def manners(self, wait: float = 2.0, total: float = 4.0) -> Manners:
        return Manners(self.fetcher(wait, total), pause=0.0)


@contextmanager
def running(tls: bool = False) -> Iterator[Server]:
    """A server on a port of its own while the block runs."""
    server = Server()
    if tls:
        context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
        context.load_cert_chain(CERTIFICATE)
        server.socket = context.wrap_socket(server.socket, server_side=True)
    thread = threading.Thread(target=server.serve_forever, args=(0.05,), daemon=True)
    thread.start()
    try:
        yield server
    finally:
        server.shutdown()
        server.server_close()
