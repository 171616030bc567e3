"""A policy that nobody has is told where it stands, and never passed as chosen."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from spoonproof.cli import main
from spoonproof.folder import ChannelFolder

CHANNEL = "title: Row\nmeasures: UK\nmarkets: [GB]\n"


@pytest.mark.parametrize(
    ("line", "place", "says"),
    [
        ("policies: {nitrite: EFSA}", "4:12", "mean “nitrate”"),
        ("policies: {sugar: GB}", "4:12", "Known: new-foods"),
        ("policies: {fridge: {name: NASA, reason: it is cold up there}}", "4:27", "Write NHS or US"),
        ("policies:\n  eggs: solid\n  start: eggs", "6:10", "Write GB or ESPGHAN"),
    ],
)
def test_a_policy_nobody_has_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], line: str, place: str, says: str
) -> None:
    (tmp_path / "channel.yaml").write_text(f"{CHANNEL}{line}\n", encoding="utf-8")
    assert main(["check", "--channel", str(tmp_path)]) == 2
    said = capsys.readouterr().err
    assert f"channel.yaml:{place}  " in said and says in " ".join(said.split()) and "policy-unknown" in said


@pytest.mark.parametrize("line", ["policies: {nitrate: aesan}", "policies: {eggs: {name: GB}, new-foods: slow}"])
def test_one_there_is_stands_in_any_case_of_its_letters(tmp_path: Path, line: str) -> None:
    (tmp_path / "channel.yaml").write_text(f"{CHANNEL}{line}\n", encoding="utf-8")
    assert ChannelFolder(tmp_path).channel_faults == ()


def test_a_channel_that_was_read_is_asked_without_a_reader_of_yaml() -> None:
    """To bring it in costs every start: ``policies`` stays apart from ``channel``."""
    code = "import sys, spoonproof.folder, spoonproof.reading.policies; sys.exit('yaml' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
