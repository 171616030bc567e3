"""A desk over a channel in a folder of its own, as a person starts it; and a real Chromium to sit down at it."""

from __future__ import annotations

import http.client
import json
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest

from spoonproof.cli import main

ENV = {**os.environ, "SPOONPROOF_TODAY": "2026-11-25", "PYTHONUNBUFFERED": "1"}


@dataclass
class Answer:
    """What the desk answered."""

    code: int
    headers: Mapping[str, str]
    body: str

    @property
    def sent(self) -> Any:
        """The body as JSON."""
        return json.loads(self.body)


@dataclass
class Served:
    """A desk that is open: its folder, its port, its token, and the process."""

    root: Path
    port: int
    token: str
    process: subprocess.Popen[str]

    @property
    def origin(self) -> str:
        """The desk's own origin."""
        return f"http://127.0.0.1:{self.port}"

    @property
    def address(self) -> str:
        """The address it printed."""
        return f"{self.origin}/?token={self.token}"

    def ask(self, method: str, path: str, headers: Mapping[str, str] | None = None, body: str = "") -> Answer:
        """A raw request with these headers alone (and Host, unless given)."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        given = dict(headers or {})
        connection.putrequest(method, path, skip_host="Host" in given, skip_accept_encoding=True)
        for name, value in given.items():
            connection.putheader(name, value)
        if body:
            connection.putheader("Content-Length", str(len(body.encode())))
        connection.endheaders(body.encode() if body else None)
        answer = connection.getresponse()
        text = answer.read().decode()
        connection.close()
        return Answer(answer.status, {name.lower(): value for name, value in answer.getheaders()}, text)

    def get(self, path: str) -> Answer:
        """A page, asked for as the desk's own pages do."""
        return self.ask("GET", path, {"X-Desk-Token": self.token})

    def send(self, path: str, **sent: object) -> Answer:
        """What the desk's script sends."""
        headers = {"X-Desk-Token": self.token, "Origin": self.origin, "Content-Type": "application/json"}
        return self.ask("POST", path, headers, json.dumps(sent))

    def end(self) -> None:
        """End it as Ctrl+C does."""
        if self.process.poll() is None:
            self.process.terminate()
        self.process.wait(20)
        if self.process.stdout is not None:
            self.process.stdout.close()


def command(*arguments: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    """A command of ours, run to its end."""
    whole = [sys.executable, "-m", "spoonproof", *arguments]
    return subprocess.run(whole, cwd=cwd, env=ENV, capture_output=True, text=True, timeout=120)


def open_desk(root: Path, port: int = 0) -> Served:
    """Start the desk over ``root`` and wait for the address it prints."""
    whole = [sys.executable, "-m", "spoonproof", "desk", "--no-browser", "--port", str(port)]
    process = subprocess.Popen(whole, cwd=root, env=ENV, stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    lines = [process.stdout.readline(), process.stdout.readline()]
    parts = urlsplit(lines[1].strip())
    assert parts.port, lines
    return Served(root, parts.port, parse_qs(parts.query)["token"][0], process)


def until(page: Any, expression: str, seconds: float = 90) -> None:
    """Wait for an expression to hold in a page (whose policy lets no text be evaluated from inside)."""
    for _ in range(int(seconds * 10)):
        if page.evaluate(expression):
            return
        page.wait_for_timeout(100)
    raise AssertionError(f"never came true: {expression}")


def new_channel(place: Path) -> Path:
    """A channel as ``new`` makes it in ``place``."""
    before = Path.cwd()
    os.chdir(place)
    try:
        assert main(["new", "channel", "moth kitchen"]) == 0
    finally:
        os.chdir(before)
    return place / "moth-kitchen"


@pytest.fixture
def channel(tmp_path: Path) -> Path:
    """A channel as ``new`` makes it, with its one recipe."""
    return new_channel(tmp_path)


@pytest.fixture(scope="session")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """One desk for all tests; ``desk`` gives each of them its folder as ``new`` makes it."""
    root = new_channel(tmp_path_factory.mktemp("desk"))
    shutil.copytree(root, root.with_name("as made"))
    served = open_desk(root)
    yield served
    served.end()


@pytest.fixture(scope="session")
def asked_only(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """One desk for all: nothing that is asked of it may change its folder."""
    served = open_desk(new_channel(tmp_path_factory.mktemp("desk")))
    yield served
    served.end()


@pytest.fixture
def desk(shared: Served) -> Served:
    """A desk over a channel as ``new`` makes it: the module's own, with its folder laid out afresh."""
    for path in shared.root.iterdir():
        if path.is_dir():
            shutil.rmtree(path)
        else:
            path.unlink()
    shutil.copytree(shared.root.with_name("as made"), shared.root, dirs_exist_ok=True)
    return shared
