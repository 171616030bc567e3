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


def test_what_the_starting_recipe_tells_its_author_reaches_no_reader() -> None:
    from spoonproof.reading.markdown import story_text
    from spoonproof.starters import RECIPE

    story = RECIPE.rpartition("---\n")[2]
    assert "Write over" in story and not story_text(story).strip()


@pytest.mark.parametrize("name", ["../x", "a/b", "..", "a\\b"])
def test_a_path_is_no_name_of_a_recipe(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "channel.yaml").write_text("title: Here\nmeasures: UK\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert main(["new", "recipe", name]) == 2
    assert "is a path" in capsys.readouterr().err
    assert [path.name for path in tmp_path.rglob("*")] == ["channel.yaml"]


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
    from spoonproof.checks.rule import Fault, Rule, all_rules

    def broken(_dish: object) -> list[Fault]:
        raise RuntimeError("boom")

    rules = (*all_rules(), Rule("broken-on-purpose", "dish", "page", "error", (), "A rule.", broken))
    monkeypatch.setattr(engine, "all_rules", lambda: rules)
    assert main(["check"]) == 3
    said = capsys.readouterr()
    assert "broken-on-purpose" in said.out
    assert "Traceback" not in said.out + said.err


@pytest.mark.parametrize("words", ["explain carrot", "--help"])
def test_a_reader_that_goes_away_is_no_fault(new_channel: Path, words: str) -> None:
    command = f"{{ {sys.executable} -m spoonproof {words}; echo code $? >&2; }} | true"
    done = subprocess.run(["sh", "-c", command], capture_output=True, text=True, cwd=new_channel, check=False)
    assert done.stderr == "code 0\n"


def test_a_file_given_twice_is_checked_once(new_channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    recipe = "recipes/potato-and-courgette-mash.md"
    (new_channel / "other.md").symlink_to(recipe)
    assert main(["check", recipe, f"./{recipe}", str(new_channel / recipe), "recipes", "recipes/../" + recipe]) == 0
    assert "1 recipe checked" in capsys.readouterr().out


def test_two_recipes_of_one_name_are_told(new_channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = (new_channel / "recipes" / "potato-and-courgette-mash.md").read_bytes()
    (new_channel / "recipes" / "old").mkdir()
    (new_channel / "recipes" / "old" / "potato-and-courgette-mash.md").write_bytes(text)
    assert main(["check", "--format", "jsonl"]) == 1
    found = [json.loads(line) for line in capsys.readouterr().out.split("\n") if line]
    (clash,) = [each for each in found if each["rule"] == "duplicate-id"]
    assert clash["related"][0]["file"] != clash["file"]


def test_folders_that_are_links_are_not_entered(
    new_channel: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "outside").mkdir()
    (tmp_path / "outside" / "not-ours.md").write_text("secret")
    (new_channel / "recipes" / "more").symlink_to(tmp_path / "outside")
    assert main(["check"]) == 0
    assert "1 recipe checked" in capsys.readouterr().out


def test_too_many_files_are_refused(
    new_channel: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from spoonproof.reading import limits

    monkeypatch.setattr(limits, "CHANNEL_FILES", 1)
    (new_channel / "recipes" / "b.md").write_text("x")
    assert main(["check"]) == 2
    assert "more than 1 recipe files" in capsys.readouterr().err


def test_an_own_table_with_faults_makes_the_channel_unusable(
    new_channel: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (new_channel / "shared").mkdir()
    (new_channel / "shared" / "fods.csv").write_text("id\nx\n")
    assert main(["check"]) == 2
    assert "foods.csv" in capsys.readouterr().err
    (new_channel / "shared" / "fods.csv").unlink()
    (new_channel / "shared" / "foods.csv").write_text("id,name,density\nmoon-dust,moon dust,heavy\n")
    assert main(["check"]) == 2
    said = capsys.readouterr().err
    assert "shared/foods.csv:2" in said and "fault of ours" not in said


def _git(folder: Path, *arguments: str) -> None:
    who = ["-c", "user.name=A Cook", "-c", "user.email=cook@example.org", "-c", "commit.gpgsign=false"]
    subprocess.run(["git", *who, *arguments], cwd=folder, check=True, capture_output=True)


def test_changed_since_checks_what_changed_and_what_is_new(
    new_channel: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    recipe = new_channel / "recipes" / "potato-and-courgette-mash.md"
    _git(new_channel, "init", "-q")
    _git(new_channel, "add", ".")
    _git(new_channel, "commit", "-qm", "Start")
    assert main(["check", "--changed-since", "HEAD"]) == 0
    assert "1 recipe" not in capsys.readouterr().out
    assert main(["new", "recipe", "leek-and-pea-mash"]) == 0
    (new_channel / "recipes" / "new one ü.md").write_text(recipe.read_text())
    capsys.readouterr()
    assert main(["check", "--changed-since", "HEAD", "--format", "jsonl"]) == 1
    found = [json.loads(line) for line in capsys.readouterr().out.split("\n") if line]
    assert {each["file"] for each in found} == {"recipes/new one ü.md"}
    (new_channel / "recipes" / "new one ü.md").unlink()
    pot = (new_channel / "recipes" / "leek-and-pea-mash.md").read_text()
    pot = pot.replace("  - 2 tsp rapeseed oil", "  - {recipe: potato-and-courgette-mash, amount: 50 g}")
    (new_channel / "recipes" / "leek-and-pea-mash.md").write_text(pot)
    _git(new_channel, "add", ".")
    _git(new_channel, "commit", "-qm", "Another")
    recipe.write_text(recipe.read_text() + "More of it.\n")
    main(["check", "--changed-since", "HEAD"])
    assert "2 recipes checked" in capsys.readouterr().out, "the one that changed, and the one that has it as a food"
    _git(new_channel, "checkout", "-q", ".")
    with (new_channel / "channel.yaml").open("a") as file:
        file.write("# another remark\n")
    main(["check", "--changed-since", "HEAD"])
    assert "2 recipes checked" in capsys.readouterr().out, "the channel has a say in all of them"
    for wrong in ("no-such-revision", "--output=x"):
        assert main(["check", f"--changed-since={wrong}"]) == 2
        assert "Traceback" not in capsys.readouterr().err


def test_an_accepted_finding_hides_itself_alone_and_for_its_time(
    new_channel: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    recipe = new_channel / "recipes" / "potato-and-courgette-mash.md"
    recipe.write_text(recipe.read_text().replace("  - 2 tsp rapeseed oil", "  - 2 tsp rapeseed oil\n  - 1 tbsp honey"))
    monkeypatch.setenv("SPOONPROOF_TODAY", "2026-11-25")

    def rules() -> list[tuple[str, str]]:
        capsys.readouterr()
        main(["check", "--format", "jsonl"])
        lines = capsys.readouterr().out.split("\n")
        return [(each["rule"], each["file"]) for line in lines if line for each in [json.loads(line)]]

    before = rules()
    name = before[0][0]
    channel = new_channel / "channel.yaml"
    plain = channel.read_text().replace("accepted: []\n", "")
    entry = f"accepted:\n  - {{rule: {name}, place: recipes/{recipe.name}:%s, reason: shown as a warning, until: %s}}\n"
    line = recipe.read_text()[: recipe.read_text().index("1 tbsp honey")].count("\n") + 1
    channel.write_text(plain + entry % (line, "2026-12-31"))
    after = rules()
    assert len(after) < len(before) and set(after) <= set(before)
    channel.write_text(plain + entry % (line, "2026-11-24"))
    assert sorted(rules()) == sorted([*before, ("accepted-out-of-date", "channel.yaml")])
    channel.write_text(plain + entry % (line + 1, "2026-12-31"))
    assert sorted(rules()) == sorted([*before, ("accepted-for-nothing", "channel.yaml")])


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["check", "--level", "silly"], "--level can't be 'silly'; it is one of error, warning, note"),
        (["nutrients"], "what is missing: RECIPE"),
        (["sources", "all"], "one word too many: all"),
        (["calendar", "--age", "six"], "--age is a whole number, not 'six'"),
        (["calendar", "--from"], "--from wants a word after it"),
        (["calendar", "--meals", "3"], "--meals goes with --week"),
    ],
)
def test_arguments_that_cannot_be_used_are_told_in_one_line(
    arguments: list[str], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(arguments) == 2
    told = capsys.readouterr().err
    assert words in told
    assert told.count("\n") == 1
    assert "usage:" not in told


def test_no_argument_is_printed_raw_nor_taken_for_a_fault_of_ours(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "channel.yaml").write_text("title: Row\n")
    assert main(["publish", "--out", "a\0b"]) == 2
    assert main(["check", "--channel", "\x1b[2J"]) == 2
    assert "\x1b" not in capsys.readouterr().err
    assert main(["new", "recipe", "caf\udce9"]) == 0, "a name in bytes that are no text"
    assert "title: Caf\n" in (tmp_path / "recipes" / "caf.md").read_text(encoding="utf-8")


def test_what_to_type_for_an_extra_is_for_the_environment_that_runs() -> None:
    from spoonproof.commands import install_line

    checkout = Path(__file__).parents[1]
    assert install_line("desk") == f'{sys.executable} -m pip install --editable "{checkout}[desk]"'
