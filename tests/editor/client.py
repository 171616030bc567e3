"""A small editor: starts the language server as editors do and speaks JSON-RPC with it, framed by Content-Length."""

from __future__ import annotations

import json
import os
import queue
import subprocess
import sys
import threading
from pathlib import Path
from typing import Any

TIMEOUT = 45.0


class Client:
    """One server process with one editor before it. Use it as a context manager: it shuts the server down."""

    def __init__(self, folder: Path, *, capabilities: dict[str, Any] | None = None, delay: int = 10) -> None:
        environment = {**os.environ, "SPOONPROOF_TODAY": "2026-11-25"}
        self.process = subprocess.Popen(
            [sys.executable, "-m", "spoonproof", "editor", "--delay", str(delay)],
            cwd=folder,
            env=environment,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,  # a pipe that nobody reads fills up, and the server would wait
        )
        self.folder = folder
        self.texts: dict[str, str] = {}
        self._versions: dict[str, int] = {}
        self._last_version = 0
        self._number = 0
        self._messages: queue.Queue[dict[str, Any] | None] = queue.Queue()
        self.kept: list[dict[str, Any]] = []
        threading.Thread(target=self._read, daemon=True).start()
        answer = self.ask(
            "initialize", {"processId": os.getpid(), "rootUri": folder.as_uri(), "capabilities": capabilities or {}}
        )
        self.capabilities = answer["capabilities"]
        self.tell("initialized", {})

    def __enter__(self) -> Client:
        return self

    def __exit__(self, *_: object) -> None:
        if self.process.poll() is None:
            self.process.kill()
        self.process.wait(10)
        for stream in (self.process.stdin, self.process.stdout):
            assert stream is not None
            stream.close()

    def leave(self) -> int:
        """Shut down in order; the exit code."""
        assert self.ask("shutdown", None) is None
        self.tell("exit", None)
        return self.process.wait(20)

    def _read(self) -> None:
        stdout = self.process.stdout
        assert stdout is not None
        while True:
            header = stdout.readline()
            if not header:
                self._messages.put(None)
                return
            # Anything but the protocol on standard output breaks the framing, and the test.
            if not header.startswith((b"Content-Length:", b"Content-Type:")):
                self._messages.put({"method": "garbage", "params": header.decode("utf-8", "replace")})
                return
            length = 0
            while header.strip():
                if header.startswith(b"Content-Length:"):
                    length = int(header.partition(b":")[2])
                header = stdout.readline()
            self._messages.put(json.loads(stdout.read(length)))

    def send(self, message: dict[str, Any]) -> None:
        """One message as it is."""
        data = json.dumps({"jsonrpc": "2.0", **message}).encode()
        self.send_bytes(b"Content-Length: %d\r\n\r\n" % len(data) + data)

    def send_bytes(self, data: bytes) -> None:
        """Bytes as they are, a message or none."""
        stdin = self.process.stdin
        assert stdin is not None
        stdin.write(data)
        stdin.flush()

    def tell(self, method: str, params: Any) -> None:
        """A notification."""
        self.send({"method": method, "params": params})

    def ask(self, method: str, params: Any) -> Any:
        """A request and its result; fails on an error."""
        self._number += 1
        number = self._number
        self.send({"id": number, "method": method, "params": params})
        while True:
            message = self.next()
            if message.get("id") == number and "method" not in message:
                assert "error" not in message, message["error"]
                return message["result"]
            self.kept.append(message)

    def next(self) -> dict[str, Any]:
        """The next message of the server; fails when it ended or said something else."""
        message = self._messages.get(timeout=TIMEOUT)
        assert message is not None, f"the server ended: {self.process.poll()}"
        assert message.get("method") != "garbage", message
        return message

    def open(self, name: str, text: str) -> list[dict[str, Any]]:
        """Open a text; its diagnostics."""
        self.texts[name], version = text, self._next_version(name)
        document = {"uri": self.uri(name), "languageId": "markdown", "version": version, "text": text}
        self.tell("textDocument/didOpen", {"textDocument": document})
        return self.findings(name)

    def uri(self, name: str) -> str:
        """The address of a file of the folder."""
        return (self.folder / name).as_uri()

    def change(self, name: str, changes: list[dict[str, Any]]) -> None:
        """Send changes as they are; the version goes up by one."""
        document = {"uri": self.uri(name), "version": self._next_version(name)}
        self.tell("textDocument/didChange", {"textDocument": document, "contentChanges": changes})

    def _next_version(self, name: str) -> int:
        """A number no text of this editor had before: what is late from a text now closed is not taken for another."""
        self._last_version += 1
        self._versions[name] = self._last_version
        return self._last_version

    def version(self, name: str) -> int:
        """The version that was sent last."""
        return self._versions[name]

    def close_all(self) -> None:
        """Close every text and forget what came of it."""
        for name in self._versions:
            self.tell("textDocument/didClose", {"textDocument": {"uri": self.uri(name)}})
        self.ask(
            "textDocument/hover", {"textDocument": {"uri": "file:///none.md"}, "position": {"line": 0, "character": 0}}
        )
        self._versions.clear()
        self.texts.clear()
        self.kept.clear()

    def findings(self, name: str) -> list[dict[str, Any]]:
        """The diagnostics published for the version that was sent last."""
        uri = self.uri(name)
        while True:
            for message in self.kept:
                params = message.get("params") or {}
                if (
                    message.get("method") == "textDocument/publishDiagnostics"
                    and params["uri"] == uri
                    and params.get("version") == self._versions[name]
                ):
                    self.kept.remove(message)
                    return list(params["diagnostics"])
            self.kept.append(self.next())

    def at(self, name: str, method: str, line: int, character: int) -> Any:
        """A question about a place."""
        place = {"textDocument": {"uri": self.uri(name)}, "position": {"line": line, "character": character}}
        return self.ask(f"textDocument/{method}", place)

    def fixes(self, name: str, finding: dict[str, Any]) -> list[dict[str, Any]]:
        """The code actions where a finding stands."""
        params = {
            "textDocument": {"uri": self.uri(name)},
            "range": finding["range"],
            "context": {"diagnostics": [finding]},
        }
        return list(self.ask("textDocument/codeAction", params))


def units(text: str) -> int:
    """The length of a text in UTF-16 code units, by another way than the server's."""
    return len(text.encode("utf-16-le")) // 2


def place(text: str, words: str, after: int = 0) -> dict[str, int]:
    """Where ``words`` start, as the protocol counts."""
    at = text.index(words, after)
    before = text[:at]
    line = before.count("\n")
    return {"line": line, "character": units(before.rpartition("\n")[2])}


def taken(text: str, there: dict[str, Any]) -> str:
    """The text that a range covers."""
    start, end = (_offset(text, there[end]) for end in ("start", "end"))
    return text[start:end]


def applied(text: str, edits: list[dict[str, Any]]) -> str:
    """``text`` with text edits made, from the last to the first."""
    for edit in sorted(edits, key=lambda e: (e["range"]["start"]["line"], e["range"]["start"]["character"]))[::-1]:
        start, end = (_offset(text, edit["range"][end]) for end in ("start", "end"))
        text = text[:start] + edit["newText"] + text[end:]
    return text


def _offset(text: str, where: dict[str, int]) -> int:
    lines = text.split("\n")
    line = lines[where["line"]]
    column = len(line.encode("utf-16-le")[: 2 * where["character"]].decode("utf-16-le"))
    return sum(len(each) + 1 for each in lines[: where["line"]]) + column
