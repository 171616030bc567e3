"""``listen``: one text or a back catalogue, ranked; corrections drafted, noted and kept."""

from __future__ import annotations

import io
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from spoonproof import swap
from spoonproof.cli import main
from spoonproof.corrections import read_corrections
from spoonproof.swap import locked

FILM = """WEBVTT

00:00:01.000 --> 00:00:04.000
never give honey before twelve months

00:01:23.000 --> 00:01:26.000
and kohlrabi prevents colds

00:02:00.000 --> 00:02:03.000
pears are packed with iron
"""


@pytest.fixture
def channel(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("SPOONPROOF_TODAY", "2026-11-25")
    (tmp_path / "channel.yaml").write_text("title: Test\nbase_url: https://test.example\nmarkets: [EU]\n")
    (tmp_path / "captions").mkdir()
    (tmp_path / "captions/one.vtt").write_text(FILM)
    (tmp_path / "captions/two.txt").write_text("Honey is fine for babies from six months.\n")
    (tmp_path / "captions/three.txt").write_text("Swede prevents colds.\n")
    (tmp_path / "views.csv").write_text("file,views\ncaptions/one.vtt,50\ncaptions/three.txt,9000\n")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def lines(capsys: pytest.CaptureFixture[str], *arguments: str, code: int = 1) -> list[dict[str, Any]]:
    assert main(["listen", "--format", "jsonl", *arguments]) == code
    return [json.loads(line) for line in capsys.readouterr().out.splitlines()]


def test_a_folder_is_ranked_by_harm_then_by_views(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = lines(capsys, "captions")
    harms = [claim["harm"] for claim in found]
    assert harms == sorted(harms, reverse=True)
    worst = [str(claim["file"]) for claim in found if claim["harm"] == 3]
    assert worst.index("captions/three.txt") < worst.index("captions/one.vtt") < worst.index("captions/two.txt")
    assert {claim.get("views") for claim in found if claim["file"] == "captions/three.txt"} == {9000}


def test_one_file_stays_in_the_order_said(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    starts = [claim["start"] for claim in lines(capsys, "captions/one.vtt")]
    assert starts == sorted(starts) and len(starts) >= 3


def test_states_are_noted_and_hers_stay(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["listen", "captions", "--mend"]) == 1
    assert "new in corrections.csv as drafted" in capsys.readouterr().out
    file = channel / "corrections.csv"
    first = file.read_text()
    assert "captions/one.vtt,1:23,kohlrabi prevents colds,drafted" in first
    assert "twelve months" not in first
    file.write_text(first.replace("kohlrabi prevents colds,drafted", "kohlrabi prevents colds,pinned"))
    edited = file.read_bytes()
    assert main(["listen", "captions", "--mend"]) == 1
    assert "0 new" in capsys.readouterr().out
    assert file.read_bytes() == edited
    states = {claim["quote"]: claim.get("correction") for claim in lines(capsys, "captions")}
    assert states["kohlrabi prevents colds"] == "pinned"


def test_what_she_posts_is_kind_and_puts_the_truth_first(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["listen", "captions", "--mend"]) == 1
    printed = capsys.readouterr().out
    cards = printed.split("Card on the screen:\n")[1:]
    assert len(cards) == 4 and all(len(card.splitlines()[0].strip()) <= 90 for card in cards)
    text = " ".join(printed.split())
    honey = text[text.index("two.txt:1:1") :]
    comment = honey[honey.index("Comment to pin:") : honey.index("For the description:")]
    assert "botulism" in comment and "twelve months" in comment and "sorry" in comment
    assert comment.index("twelve months") < comment.index("What I said")
    assert "six months" not in comment and "fine" not in comment  # the false words are not said again
    assert "health visitor" in comment and "https://www.nhs.uk" in comment
    assert "Correction, 25 November 2026" in honey
    pears = text[text.index("pears are packed") :]
    assert "mg iron per 100 g in pear" in pears and "the claim needs" not in pears


def test_a_pasted_reply_on_standard_input(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)

    class Pasted:
        buffer = io.BytesIO("You’re wrong – honey is fine at 6 months!".encode())

    monkeypatch.setattr(sys, "stdin", Pasted())
    (found,) = {claim["advice"] for claim in lines(capsys, "-", "--market", "GB", "--ages", "6-12 months")}
    assert found == "cut-untrue"


def test_standard_input_that_is_no_text(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    class Pasted:
        buffer = io.BytesIO(b"caf\xe9")

    monkeypatch.setattr(sys, "stdin", Pasted())
    assert main(["listen", "-"]) == 2
    assert "not UTF-8" in capsys.readouterr().err


def test_one_bad_file_does_not_stop_the_others(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (channel / "captions/bad.txt").write_bytes(b"\xff\xfe\x00h\x00i")
    (channel / "captions/broken.vtt").write_text("WEBVTT\n\n1:2 --> nonsense\nhoney is fine\n")
    assert main(["listen", "captions"]) == 1
    caught = capsys.readouterr()
    assert "bad.txt" in caught.err and "not UTF-8" in caught.err
    assert "broken.vtt:3" in caught.err and "not at their time" in caught.err
    assert "honey is fine" in caught.out, "words under a broken time are heard"
    assert "two.txt" in caught.out
    assert main(["listen", "captions/bad.txt"]) == 2


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("corrections.csv", "file,statement,state\na,b,done\n", "corrections.csv:2: state is one of"),
        ("views.csv", "file,views\na,lots\n", "views.csv:2: views is a whole number"),
    ],
)
def test_a_table_that_can_not_be_used_is_told(
    channel: Path, capsys: pytest.CaptureFixture[str], name: str, text: str, said: str
) -> None:
    (channel / name).write_text(text)
    assert main(["listen", "captions", "--mend"]) == 2
    assert said in capsys.readouterr().err
    assert (channel / name).read_text() == text


def test_a_reply_that_asks_is_answered(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    reply = b"Does honey stop a cough at seven months?"
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(reply)))
    assert main(["listen", "-"]) == 1
    out = capsys.readouterr().out
    assert "answer it" in out and "keep it" not in out


def test_nothing_on_standard_input_is_told(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b" \n")))
    assert main(["listen", "-"]) == 2
    assert "nothing came in" in capsys.readouterr().err


def test_what_is_posted_is_not_drafted_again(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["listen", "captions", "--mend"]) == 1
    file = channel / "corrections.csv"
    file.write_text(file.read_text().replace("kohlrabi prevents colds,drafted", "kohlrabi prevents colds,posted"))
    capsys.readouterr()
    assert main(["listen", "captions", "--mend"]) == 1
    out = capsys.readouterr().out
    assert "kohlrabi" not in out and "1 more posted or pinned already" in out


def test_a_trail_says_each_step_once(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (channel / "captions/four.txt").write_text("Dry oats are packed with iron.\n")
    assert main(["listen", "captions/four.txt", "--trail"]) == 1
    steps = [
        line.strip().partition(" ")[2] for line in capsys.readouterr().out.splitlines() if line.startswith("      ")
    ]
    assert steps and len(steps) == len(set(steps))


def test_captions_that_bear_a_dish_s_name_are_judged_on_it(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (channel / "recipes").mkdir()
    (channel / "recipes/pear-mash.md").write_text(
        "---\ntitle: Pear mash\nages: 7-9 months\ntexture: mashed\nmakes: 4 x 60 g\nfoods:\n"
        "  - 300 g pears, peeled, 1 cm dice\nsteps:\n  - Steam the pears for 12 minutes.\n  - Mash with a fork.\n"
        "---\nA story.\n"
    )
    for name, truth in (("pear-mash.en.vtt", "false"), ("another.vtt", "unproven")):
        (channel / "captions" / name).write_text("WEBVTT\n\n00:01.000 --> 00:03.000\nthis is high in iron\n")
        assert [claim["truth"] for claim in lines(capsys, f"captions/{name}")] == [truth]


def test_a_trail_is_run_again(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["listen", "captions", "--trail"]) == 1
    out = capsys.readouterr().out
    heard = out.split(" claims heard")[0].split()[-1]
    assert f"Judged once more from the start: {heard} of {heard} by the same steps" in out


def test_two_at_once_lose_no_draft_and_no_state(channel: Path) -> None:
    (channel / "corrections.csv").write_text(
        "file,at,statement,state,advice,entry,since\ncaptions/old.vtt,0:01,Dill heals,pinned,,,2026-01-01\n"
    )
    runs = [
        subprocess.Popen(
            [sys.executable, "-m", "spoonproof", "listen", f"captions/{name}", "--mend"],
            cwd=channel,
            stdout=subprocess.DEVNULL,
        )
        for name in ("one.vtt", "two.txt", "three.txt")
    ]
    assert [run.wait() for run in runs] == [1, 1, 1]
    noted = {row.file: row.state for row in read_corrections((channel / "corrections.csv").read_text()).rows}
    assert noted == {
        "captions/old.vtt": "pinned",
        "captions/one.vtt": "drafted",
        "captions/two.txt": "drafted",
        "captions/three.txt": "drafted",
    }


def test_a_lock_that_is_held_on_is_told_and_nothing_is_written(
    channel: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(swap, "PATIENCE", 0.0)
    with locked(channel / "corrections.csv"):
        assert main(["listen", "captions", "--mend"]) == 2
    assert "wait for it or stop it" in capsys.readouterr().err
    assert not (channel / "corrections.csv").exists()


def test_what_lies_within_another_is_mended_with_it(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (channel / "four.txt").write_text("Raw carrot sticks are perfect for teething.\n")
    main(["listen", "four.txt", "--mend"])
    assert capsys.readouterr().out.count("Comment to pin") == 1


@pytest.mark.parametrize(
    "time", ["99999:00:00.000 --> 99999:00:04.000", "0:1 --> 0:4", "100:00:00,000 --> 100:00:09,000"]
)
def test_a_time_that_cannot_be_meant_is_a_finding(time: str, channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (channel / "late.vtt").write_text(f"WEBVTT\n\n{time}\nMash the swede with a fork.\n")
    assert main(["listen", "late.vtt"]) == 1
    assert "late.vtt:3: This time line can't be read" in capsys.readouterr().err
    (channel / "late.vtt").write_text("WEBVTT\n\n00:01.000 --> 00:04.000\nMash the swede with a fork.\n")
    assert main(["listen", "late.vtt"]) == 0


def test_a_file_of_a_folder_that_cannot_be_read_is_a_finding(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (channel / "shelf").mkdir()
    (channel / "shelf/good.txt").write_text("Mash the swede with a fork.\n")
    assert main(["listen", "shelf"]) == 0
    (channel / "shelf/bad.txt").write_bytes(b"cr\xe8me")
    assert main(["listen", "shelf"]) == 1
    assert "shelf/bad.txt" in capsys.readouterr().err
