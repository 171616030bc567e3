"""``publish --watch``: the site over loopback, rebuilt when a file of the channel changes.

The page asks for ``/reload`` (an event stream from the same address, which its policy allows) and loads
itself again after a build. Nothing but this machine can reach it.
"""

from __future__ import annotations

import contextlib
import os
import stat
import sys
import threading
import time
from collections.abc import Callable
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

PERIOD = 0.4
"""Seconds between two looks at the folder."""

SCRIPT = b'new EventSource("/reload").onmessage = () => location.reload();\n'
_SKIPPED = frozenset({"out", ".git", ".venv", "node_modules", "__pycache__", ".spoonproof"})


def snapshot(root: Path, out: Path) -> dict[str, tuple[int, int]]:
    """Size and time of every file a site is made from; ``out`` and tool folders left out."""
    found: dict[str, tuple[int, int]] = {}
    for folder, below, files in os.walk(root):
        below[:] = sorted(name for name in below if name not in _SKIPPED and Path(folder, name) != out)
        for path in (Path(folder, name) for name in sorted(files) if name not in _SKIPPED):
            with contextlib.suppress(OSError):
                state = path.lstat()
                if stat.S_ISREG(state.st_mode):
                    found[path.as_posix()] = (state.st_mtime_ns, state.st_size)
    return found


class Reloads:
    """How many builds there were, and who waits for the next."""

    def __init__(self) -> None:
        """Starts at build 0."""
        self.count = 0
        self.changed = threading.Condition()

    def again(self) -> None:
        """A new build is there."""
        with self.changed:
            self.count += 1
            self.changed.notify_all()

    def wait(self, seen: int, seconds: float) -> int:
        """The count once it is past ``seen``, or after ``seconds``."""
        with self.changed:
            self.changed.wait_for(lambda: self.count > seen, seconds)
            return self.count


class _Handler(SimpleHTTPRequestHandler):
    def __init__(self, *args: Any, reloads: Reloads, **kwargs: Any) -> None:
        self.reloads = reloads
        super().__init__(*args, **kwargs)

    def parse_request(self) -> bool:
        """Whatever is asked for, it is not answered under another name than this machine's."""
        if not super().parse_request():
            return False
        host = (self.headers.get("Host") or "").rpartition(":")[0]
        if host not in ("127.0.0.1", "localhost"):
            self.send_error(403, "only this machine")  # another site's name pointed at us
            return False
        return True

    def do_GET(self) -> None:
        """A file of the site, its script with the reload line added, or the event stream."""
        script = Path(self.translate_path(self.path))
        if self.path == "/reload":
            self._stream()
        elif script.name == "site.js" and script.is_file():
            body = script.read_bytes() + SCRIPT
            self.send_response(200)
            self.send_header("Content-Type", "text/javascript; charset=utf-8")
            self.send_header("Content-Length", str(len(body)))
            self.end_headers()
            self.wfile.write(body)
        else:
            super().do_GET()

    def _stream(self) -> None:
        self.send_response(200)
        self.send_header("Content-Type", "text/event-stream")
        self.end_headers()
        seen = self.reloads.count
        try:
            while True:
                now = self.reloads.wait(seen, 15)
                self.wfile.write(b"data: built\n\n" if now > seen else b": still here\n\n")
                self.wfile.flush()
                seen = now
        except OSError:
            return

    def end_headers(self) -> None:
        """Nothing is kept by the browser while one is writing."""
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def log_message(self, format: str, *args: Any) -> None:
        """Quiet."""


def serve(out: Path, port: int, reloads: Reloads) -> ThreadingHTTPServer:
    """A server on loopback; port 0 takes a free one. The caller runs and closes it."""
    server = ThreadingHTTPServer(("127.0.0.1", port), partial(_Handler, directory=str(out), reloads=reloads))
    server.daemon_threads = True
    return server


def watch(root: Path, out: Path, build: Callable[[], int], port: int) -> int:
    """Build, serve, and build again on every change until stopped with Ctrl-C.

    ``build`` reads the channel afresh each time and must not raise on what a person wrote.
    """
    reloads = Reloads()
    code = build()
    server = serve(out, port, reloads)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    print(f"http://127.0.0.1:{server.server_address[1]}/index.html  (Ctrl-C stops)", flush=True)
    before = snapshot(root, out)
    try:
        while True:
            time.sleep(PERIOD)
            now = snapshot(root, out)
            if now != before:
                before = now
                code = build()
                reloads.again()
    except KeyboardInterrupt:
        print("stopped", file=sys.stderr)
        return code if code in (0, 1) else 0
    finally:
        server.shutdown()
        server.server_close()
