"""The command line: exit codes, plain words, never a traceback."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from spoonproof import __version__
from spoonproof.cli import COMMANDS, main


@pytest.fixture
def new_channel(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    assert main(["new", "channel", "Sunday Spoon"]) == 0
    monkeypatch.chdir(tmp_path / "sunday-spoon")
    return tmp_path / "sunday-spoon"


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--version"]) == 0
    assert capsys.readouterr().out == f"spoonproof {__version__}\n"


def test_help_lists_every_command(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--help"]) == 0
    said = capsys.readouterr().out
    assert all(command in said for command in COMMANDS)


def test_an_unknown_command_names_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["chekc"]) == 2
    assert "did you mean check?" in capsys.readouterr().err


@pytest.mark.parametrize(
    "arguments", [["check", "--nonsense"], ["check", "no-such-file.md"], ["check", "--level", "loud"], ["plan"]]
)
def test_unusable_arguments_exit_2_in_words(
    arguments: list[str], new_channel: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(arguments) == 2
    said = capsys.readouterr()
    assert said.err and "Traceback" not in said.err


def test_without_a_channel_it_says_how_to_start_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["check"]) == 2
    assert "spoonproof new channel" in capsys.readouterr().err


def test_a_new_channel_checks_clean(new_channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check"]) == 0, capsys.readouterr().out
    assert main(["new", "recipe", "Crème of leek"]) == 0
    assert (new_channel / "recipes" / "creme-of-leek.md").is_file()
    capsys.readouterr()
    assert main(["check"]) == 0, capsys.readouterr().out


def test_new_never_overwrites(new_channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    recipe = new_channel / "recipes" / "potato-and-courgette-mash.md"
    before = recipe.read_bytes()
    assert main(["new", "recipe", "potato-and-courgette-mash"]) == 2
    assert recipe.read_bytes() == before


def test_findings_are_json_lines_of_the_contract(new_channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    recipe = new_channel / "recipes" / "potato-and-courgette-mash.md"
    recipe.write_text(recipe.read_text().replace("  - 2 tsp rapeseed oil", "  - 2 tsp rapeseed oil\n  - 1 tbsp honey"))
    assert main(["check", "--format", "jsonl"]) == 1
    found = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    honey = [each for each in found if each["area"] == "baby" and each["line"] == 12]
    assert honey, found
    assert {
        "area", "bowl", "file", "line", "column", "end_line", "end_column", "rule", "level", "message", "related",
        "remedy", "sources",
    } <= honey[0].keys()  # fmt: skip
    assert honey[0]["level"] == "error"
    assert honey[0]["sources"]


def test_a_broken_channel_file_is_exit_2_with_its_place(new_channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (new_channel / "channel.yaml").write_text("title: Sunday Spoon\nmeasures: firkins\n")
    assert main(["check"]) == 2
    assert "channel.yaml:2:" in capsys.readouterr().err


def test_a_rule_that_breaks_is_our_fault_and_the_others_go_on(
    new_channel: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from spoonproof.checks import engine
    from spoonproof.checks.rule import Rule, all_rules

    def broken(_dish: object) -> list[object]:
        raise RuntimeError("boom")

    rules = (*all_rules(), Rule("broken-on-purpose", "dish", "page", "error", (), "A rule.", broken))  # type: ignore[arg-type]
    monkeypatch.setattr(engine, "all_rules", lambda: rules)
    assert main(["check"]) == 3
    said = capsys.readouterr()
    assert "broken-on-purpose" in said.out
    assert "Traceback" not in said.out + said.err


def test_a_reader_that_goes_away_is_no_fault(new_channel: Path) -> None:
    command = f"{sys.executable} -m spoonproof explain carrot | head -1"
    done = subprocess.run(["sh", "-c", command], capture_output=True, text=True, cwd=new_channel, check=False)
    assert "Traceback" not in done.stderr and "BrokenPipe" not in done.stderr
    assert done.stdout.startswith("carrot")
