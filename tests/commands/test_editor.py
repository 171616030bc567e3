"""The arguments of ``editor``."""

from __future__ import annotations

import pytest

from spoonproof.cli import UsageError
from spoonproof.commands import editor


def test_a_delay_that_is_none_is_refused() -> None:
    pytest.importorskip("pygls", reason="the extra “editor” is not installed")
    with pytest.raises(UsageError, match="--delay"):
        editor.run(editor.parser().parse_args(["--delay", "-1"]))
