"""Work in several processes: the same answer as in one, whatever happens to a process."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from spoonproof import crew
from spoonproof.crew import spread
from spoonproof.model.text import Document

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(autouse=True)
def two(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two processes, whatever this machine has and however the tests are run."""
    monkeypatch.setattr(crew, "workers", lambda: 2)


def squares(share: Sequence[int]) -> list[tuple[int, int]]:
    """Each number squared, with the process that did it."""
    return [(number * number, os.getpid()) for number in share]


def test_shares_come_back_in_order_from_two_processes() -> None:
    mine, other = spread(squares, range(101), 10)
    assert [square for square, _ in mine] == [n * n for n in range(0, 101, 2)]
    assert [square for square, _ in other] == [n * n for n in range(1, 101, 2)]
    assert {who for _, who in mine} == {os.getpid()} != {who for _, who in other}


def test_few_things_stay_in_this_process() -> None:
    (only,) = spread(squares, range(19), 10)
    assert {who for _, who in only} == {os.getpid()} and len(only) == 19
    assert spread(squares, [], 10) == [[]]


@pytest.mark.parametrize("end", ["killed", "raised", "cannot be pickled"])
def test_a_share_whose_process_ended_badly_is_worked_here(end: str) -> None:
    here = os.getpid()

    def work(share: Sequence[int]) -> list[object]:
        if os.getpid() != here:
            if end == "killed":
                os.kill(os.getpid(), signal.SIGKILL)
            if end == "raised":
                raise ValueError(end)
            return [lambda: None]
        return list(share)

    assert spread(work, range(40), 10) == [list(range(0, 40, 2)), list(range(1, 40, 2))]


def test_what_the_work_raises_is_raised_and_no_process_is_left(monkeypatch: pytest.MonkeyPatch) -> None:
    started: list[int] = []

    def work(share: Sequence[int]) -> int:
        raise ValueError(f"no {len(share)}")

    def noted(fork: Callable[[], int] = os.fork) -> int:
        process = fork()
        started.append(process)
        return process

    monkeypatch.setattr(os, "fork", noted)
    with pytest.raises(ValueError, match="no 20"):
        spread(work, range(40), 10)
    (process,) = started
    with pytest.raises(ChildProcessError):
        os.waitpid(process, os.WNOHANG)


def test_a_large_answer_passes() -> None:
    assert [len(part) for part in spread(lambda share: b"x" * 3_000_000 + bytes(share), range(40), 10)] == [
        3_000_020,
        3_000_020,
    ]


def test_documents_come_back_as_ours() -> None:
    documents = [Document(f"{n}.md", "text") for n in range(40)]
    shares = spread(lambda share: [(document, Document("new.md", "")) for document in share], documents, 10, documents)
    for start, share in enumerate(shares):
        assert all(found is own for (found, _), own in zip(share, documents[start::2], strict=True))
        assert all(new not in documents for _, new in share)


def test_a_check_in_two_processes_says_the_same(tmp_path: Path) -> None:
    (tmp_path / "recipes").mkdir()
    shutil.copy(ROOT / "channel.yaml", tmp_path)
    text = (ROOT / "recipes" / "first-winter-bowl.md").read_text().replace("draft: true", "draft: false")
    for number in range(5):
        (tmp_path / "recipes" / f"bowl-{number}.md").write_text(text.replace("Serve", f"Serve {number}"))
    script = (
        "import sys, spoonproof.folder as f, spoonproof.checks.engine as e\n"
        "f.READ_LEAST = e.CHECK_LEAST = 2\n"
        "from spoonproof.cli import main\n"
        "sys.exit(main(['check', '--drafts', '--format', 'jsonl', '--level', 'note']))"
    )
    told = []
    for workers in ("1", "2"):
        env = {**os.environ, crew.WORKERS: workers}
        done = subprocess.run([sys.executable, "-c", script], cwd=tmp_path, env=env, capture_output=True, check=False)
        assert done.returncode == 1, done.stderr
        told.append(done.stdout)
        if workers == "1":
            shutil.rmtree(tmp_path / ".spoonproof")
    assert told[0] == told[1] and told[0].count(b"\n") >= 5
