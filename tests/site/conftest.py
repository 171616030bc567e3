"""A real Chromium over the built sample site; stands aside, saying why, where there is none (never with CI=true)."""

from __future__ import annotations

import os
import threading
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from spoonproof.site import build
from spoonproof.site.guide import guide_files
from spoonproof.site.pages import Theme
from tests.site import sample

PIXEL = bytes.fromhex("47494638396101000100800000000000ffffff2c00000000010001000002024401003b")
"""A picture of one pixel; browsers look at the bytes."""


def missing(what: str) -> None:
    """Skip, or fail where the tests must run."""
    if os.environ.get("CI") == "true":
        pytest.fail(f"{what}, and with CI=true these tests must run")
    pytest.skip(f"{what}: the page was not looked at in a browser")


@dataclass(frozen=True)
class Built:
    """The sample site: its folder, and its address on this machine."""

    folder: Path
    address: str

    def url(self, path: str) -> str:
        """The address of a page."""
        return f"{self.address}/{path}"


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Built]:
    """The sample site, served on loopback as a host would; under ``odd/`` a second one, under ``guide/`` the guide."""
    out = tmp_path_factory.mktemp("built") / "site"
    theme = Theme([sample.THEME])
    files = build.files(sample.site(), theme, sample.pictures())
    film = {"videos/pot.mp4": b"", "videos/pot.vtt": b"WEBVTT\n", "videos/pot-chapters.vtt": b"WEBVTT\n"}
    odd = build.files(sample.odd_site(), theme, {"pictures/pot-960.jpg": PIXEL, "pictures/pot-480.jpg": PIXEL, **film})
    files |= {f"odd/{path}": body for path, body in odd.items()}
    files |= {f"guide/{path}": body for path, body in guide_files(sample.THEME.parent / "guide", theme).items()}
    build.write(out, files, ())
    handler = partial(Quiet, directory=str(out))
    server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield Built(out, f"http://127.0.0.1:{server.server_address[1]}")
    server.shutdown()
    server.server_close()


class Quiet(SimpleHTTPRequestHandler):
    """Says nothing of each request."""

    def log_message(self, format: str, *args: Any) -> None:
        """Nothing."""
