"""How the language server ends."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.editor.client import Client

pytest.importorskip("pygls", reason="the extra “editor” is not installed")


def test_exit_without_shutdown_is_told_by_the_exit_code(tmp_path: Path) -> None:
    with Client(tmp_path) as client:
        client.tell("exit", None)
        assert client.process.wait(20) == 1
