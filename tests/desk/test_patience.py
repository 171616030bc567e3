"""Who keeps the desk waiting is let go, and long readings leave it free for everybody else."""

from __future__ import annotations

import asyncio
import http.client
import socket
import threading
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
import uvicorn

from spoonproof.desk import app, patience, turns
from spoonproof.desk.desk import Desk
from tests.desk.conftest import new_channel

KEY = "potato-and-courgette-mash"
SHORT = 0.4


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return new_channel(tmp_path)


@pytest.fixture
def port(root: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[int]:
    """A desk in this process, of short patience."""
    monkeypatch.setattr(patience, "SECONDS", SHORT)
    listening = socket.create_server(("127.0.0.1", 0))
    port = int(listening.getsockname()[1])
    config = uvicorn.Config(
        app.make_app(Desk(root), "t", port), http=patience.Patient, log_level="critical", lifespan="off", ws="none"
    )
    server = uvicorn.Server(config)
    thread = threading.Thread(target=server.run, args=([listening],))
    thread.start()
    yield port
    server.should_exit = True
    thread.join(20)
    listening.close()


def head(port: int, method: str, path: str) -> bytes:
    return f"{method} {path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nX-Desk-Token: t\r\n".encode()


def ended(each: socket.socket, drop: bytes = b"") -> float:
    """The seconds until the desk ends a connection to which ``drop`` is sent again and again."""
    each.settimeout(0.1)
    start = time.monotonic()
    while time.monotonic() - start < 20:
        try:
            if drop:
                each.sendall(drop)
            if not each.recv(1 << 16):
                break
        except TimeoutError:
            continue
        except OSError:
            break
    else:
        raise AssertionError("it was waited for without end")
    return time.monotonic() - start


@pytest.mark.parametrize(
    ("begun", "drop"),
    [(b"", b""), (b"GET / HT", b""), (b"HEAD", b"x-a: b\r\n"), (b"POST", b""), (b"POST", b"x")],
    ids=["nothing", "half a line", "a line of the head now and then", "no body", "a byte of it now and then"],
)
def test_who_sends_nothing_or_a_drop_at_a_time_is_let_go(port: int, begun: bytes, drop: bytes) -> None:
    if begun == b"HEAD":
        begun = head(port, "GET", "/")
    elif begun == b"POST":
        begun = head(port, "POST", f"/read/{KEY}") + b"Content-Length: 100000\r\n\r\n"
    with socket.create_connection(("127.0.0.1", port)) as each:
        each.sendall(begun)
        assert SHORT / 2 < ended(each, drop) < 15


def test_who_never_takes_the_answer_is_let_go(port: int, root: Path) -> None:
    (root / "out" / "site").mkdir(parents=True)
    (root / "out" / "site" / "index.html").write_bytes(b"x" * (16 << 20))
    with socket.socket() as each:
        each.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
        each.connect(("127.0.0.1", port))
        each.sendall(head(port, "GET", "/site/index.html") + b"\r\n")
        time.sleep(SHORT * 4)
        each.settimeout(20)
        got = 0
        with pytest.raises(ConnectionError):
            while more := each.recv(1 << 20):
                got += len(more)
            raise ConnectionError
        assert got < 16 << 20


def asked(port: int, method: str, path: str, body: str = "") -> int:
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    headers = {"X-Desk-Token": "t", "Content-Type": "application/json"}
    connection.request(method, path, body or None, headers)
    code = connection.getresponse().status
    connection.close()
    return code


def test_the_desks_own_work_is_never_hurried(port: int, monkeypatch: pytest.MonkeyPatch) -> None:
    from spoonproof.desk import live

    read = live.read

    def slow(*given: object) -> live.Reading:
        time.sleep(SHORT * 4)
        return read(*given)  # type: ignore[arg-type]  # as it was given

    monkeypatch.setattr(live, "read", slow)
    assert asked(port, "GET", f"/write/{KEY}") == 200


def test_long_readings_leave_the_desk_free(port: int, monkeypatch: pytest.MonkeyPatch) -> None:
    from spoonproof.desk import live

    go, at_once, most = threading.Event(), [], []
    read = live.read

    def slow(*given: object) -> live.Reading:
        at_once.append(1)
        most.append(len(at_once))
        assert go.wait(60)
        at_once.pop()
        return read(*given)  # type: ignore[arg-type]  # as it was given

    monkeypatch.setattr(live, "read", slow)
    text = '{"text": "---\\ntitle: Mash\\n---\\n", "base": "", "base_text": "", "window": "%s"}'
    with ThreadPoolExecutor(60) as all_at_once:
        waiting = [all_at_once.submit(asked, port, "POST", f"/read/{KEY}", text % f"w{n}") for n in range(12)]
        while len(at_once) < turns.AT_ONCE:
            time.sleep(0.01)
        for page in ("/", "/out", "/register", f"/stamp/{KEY}"):
            assert asked(port, "GET", page) == 200
        again = [all_at_once.submit(asked, port, "POST", f"/read/{KEY}", text % "typing") for _ in range(6)]
        time.sleep(0.3)
        go.set()
        assert [each.result() for each in waiting] == [200] * 12
        codes = sorted(each.result() for each in again)
    assert codes == [200, 409, 409, 409, 409, 409], "of one window that types on only the newest text is read"
    assert max(most) == turns.AT_ONCE


def test_more_than_it_can_remember_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(turns, "MOST", 3)

    async def crowd() -> int:
        each, refused = turns.Turns(), 0
        hold = asyncio.Event()

        async def one() -> None:
            nonlocal refused
            try:
                async with each.turn(""):
                    await hold.wait()
            except turns.TooMany:
                refused += 1

        tasks = [asyncio.create_task(one()) for _ in range(9)]
        await asyncio.sleep(0.05)
        hold.set()
        await asyncio.gather(*tasks)
        async with each.turn("again") as mine:
            assert mine
        return refused

    with ThreadPoolExecutor(1) as alone:  # a browser opened by another test keeps a loop on this thread
        assert alone.submit(asyncio.run, crowd()).result(30) == 9 - 3 - turns.AT_ONCE
