"""A server on this machine that misbehaves in every way a page can, and a fetcher that may reach it."""

from __future__ import annotations

import gzip
import socket
import ssl
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from spoonproof.links.fetch import Fetcher
from spoonproof.links.guard import Guard, is_public
from spoonproof.links.manners import Manners

CERTIFICATE = Path(__file__).with_name("self_signed_test_certificate.pem")
PAGE = b"<html><title>Weaning</title><script>x()</script><p>Soft pear from six months.</p></html>"


class Misbehaving(BaseHTTPRequestHandler):
    """Each path is one way to answer."""

    protocol_version = "HTTP/1.1"

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""

    def do_HEAD(self) -> None:
        self.answer()

    def do_GET(self) -> None:
        self.answer()

    def answer(self) -> None:
        server = self.server
        assert isinstance(server, Server)
        server.asked.append((self.command, self.path, dict(self.headers), time.monotonic()))
        name = self.path.lstrip("/").split("?")[0].split("/")[0] or "page"
        name = "robots" if name == "robots.txt" else name.replace("-", "_")
        getattr(self, f"on_{name}", self.on_missing)()

    def send(self, status: int, body: bytes = b"", **headers: str) -> None:
        self.send_response(status)
        for key, value in headers.items():
            self.send_header(key.replace("_", "-"), value)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def to(self, where: str, status: int = 302) -> None:
        self.send(status, Location=where)

    def on_robots(self) -> None:
        server = self.server
        assert isinstance(server, Server)
        self.send(server.robots_status, server.robots)

    def on_missing(self) -> None:
        self.send(404)

    def on_page(self) -> None:
        server = self.server
        assert isinstance(server, Server)
        self.send(200, server.page)

    def on_marked(self) -> None:
        self.send(200, PAGE, ETag='"one"')

    def on_gone(self) -> None:
        self.send(410)

    def on_no_head(self) -> None:
        self.send(405) if self.command == "HEAD" else self.send(200, PAGE)

    def on_head_missing(self) -> None:
        self.send(404) if self.command == "HEAD" else self.send(200, PAGE)

    def on_head_resets(self) -> None:
        self.on_reset() if self.command == "HEAD" else self.send(200, PAGE)

    def on_forbidden(self) -> None:
        self.send(403)

    def on_broken(self) -> None:
        self.send(500)

    def on_busy(self) -> None:
        server = self.server
        assert isinstance(server, Server)
        server.busy -= 1
        self.send(429, Retry_After="2") if server.busy >= 0 else self.send(200, PAGE)

    def on_busy_for_long(self) -> None:
        self.send(503, Retry_After="86400")

    def on_soft(self) -> None:
        self.send(200, b"<title>Page not found - Health</title><p>Sorry.</p>")

    def on_moved(self) -> None:
        self.to("/page", 301)

    def on_elsewhere(self) -> None:
        self.to("/page", 302)

    def on_loop(self) -> None:
        self.to("/loop")

    def on_chain(self) -> None:
        left = int(self.path.rsplit("/", 1)[1])
        self.to(f"/chain/{left - 1}") if left else self.send(200, PAGE)

    def on_nowhere(self) -> None:
        self.send(302)

    def on_inside(self) -> None:
        self.to("http://169.254.169.254/latest/meta-data/")

    def on_to(self) -> None:
        self.to(self.path.split("?", 1)[1])

    def on_silent(self) -> None:
        time.sleep(20)

    def on_drip(self) -> None:
        self.send_response(200)
        self.send_header("Content-Length", "100000")
        self.end_headers()
        for _ in range(200):
            self.wfile.write(b"x")
            self.wfile.flush()
            time.sleep(0.1)

    def on_reset(self) -> None:
        self.connection.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, b"\x01\x00\x00\x00\x00\x00\x00\x00")
        self.close_connection = True
        self.connection.close()

    def on_half(self) -> None:
        self.send_response(200)
        self.send_header("Content-Length", "1000")
        self.end_headers()
        self.wfile.write(b"x" * 500)
        self.close_connection = True

    def on_nonsense(self) -> None:
        self.wfile.write(b"GARBAGE \x00\xff\r\n\r\n")
        self.close_connection = True

    def on_endless(self) -> None:
        self.send_response(200)
        self.send_header("Connection", "close")
        self.end_headers()
        self.close_connection = True
        if self.command == "GET":
            for _ in range(20_000):
                self.wfile.write(b"y" * 65536)

    def on_huge(self) -> None:
        self.send_response(200)
        self.send_header("Content-Length", str(500 * 1024 * 1024))
        self.end_headers()
        self.close_connection = True
        if self.command == "GET":
            for _ in range(8000):
                self.wfile.write(b"y" * 65536)

    def on_bomb(self) -> None:
        self.send(200, gzip.compress(b"0" * 200_000_000), Content_Encoding="gzip")

    def on_not_gzip(self) -> None:
        self.send(200, b"plain", Content_Encoding="gzip")

    def on_brotli(self) -> None:
        self.send(200, b"plain", Content_Encoding="br")

    def on_unchanged(self) -> None:
        """Nothing of its own on HEAD; on GET it answers conditions."""
        if self.command == "HEAD":
            self.send(200)
        elif self.headers.get("If-None-Match") == '"one"':
            self.send(304, ETag='"one"')
        else:
            self.send(200, PAGE, ETag='"one"')

    def on_unasked(self) -> None:
        self.send(304)

    def on_heading(self) -> None:
        self.send(200, b"<title>Health</title><h1 class=x>Sorry, <b>page not found</b></h1><p>Look elsewhere.</p>")

    def on_empty(self) -> None:
        self.send(200, b" \n")

    def on_nothing(self) -> None:
        self.send_response(204)
        self.end_headers()

    def on_home(self) -> None:
        self.to("/")

    def on_other_charset(self) -> None:
        self.send(200, PAGE.decode().encode("utf-16"), Content_Type="text/html; charset=utf-8")

    def on_busy_until(self) -> None:
        self.send(429, Retry_After="Wed, 25 Nov 2026 10:00:00 GMT")

    def on_always_busy(self) -> None:
        self.send(429, Retry_After="1")

    def on_headers(self) -> None:
        self.send(200, PAGE, **{f"X_{number}": "y" for number in range(150)})

    def on_long_header(self) -> None:
        self.send(200, PAGE, X_Long="y" * 100_000)

    def on_wait_and_see(self) -> None:
        for _ in range(400):
            self.wfile.write(b"HTTP/1.1 100 Continue\r\n\r\n")
            time.sleep(0.02)
        self.send(200, PAGE)

    def on_drip_headers(self) -> None:
        for byte in b"HTTP/1.1 200 OK\r\nContent-Length: 3\r\n" + b"X: " + b"y" * 200:
            self.wfile.write(bytes([byte]))
            self.wfile.flush()
            time.sleep(0.05)

    def on_bad_chunk(self) -> None:
        self.send_response(200)
        self.send_header("Transfer-Encoding", "chunked")
        self.end_headers()
        self.wfile.write(b"zz\r\nabc\r\n")
        self.close_connection = True

    def on_endless_chunk(self) -> None:
        self.send_response(200)
        self.send_header("Transfer-Encoding", "chunked")
        self.end_headers()
        self.wfile.write(b"ffffffffff\r\nabc")
        self.close_connection = True

    def on_odd_status(self) -> None:
        self.send(999)

    def on_minus(self) -> None:
        self.send_response(200)
        self.send_header("Content-Length", "-5")
        self.end_headers()
        self.wfile.write(PAGE)
        self.close_connection = True

    def on_cookie(self) -> None:
        self.send(200, PAGE, Set_Cookie="taken=1", Content_Type="text/html; charset=no-such-thing")


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
