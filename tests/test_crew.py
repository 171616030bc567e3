"""Work in several processes: the same answer as in one, whatever happens to a process."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from functools import partial
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


def squares(share: Sequence[int]) -> Iterator[tuple[int, int]]:
    """Each number squared, with the process that did it."""
    return ((number * number, os.getpid()) for number in share)


def test_answers_come_back_in_order_from_two_processes() -> None:
    found = list(spread(squares, range(101), 10))
    assert [square for square, _ in found] == [n * n for n in range(101)]
    mine, other = ({who for _, who in found[start::2]} for start in (0, 1))
    assert mine == {os.getpid()} and len(other) == 1 and mine != other


def test_few_things_stay_in_this_process() -> None:
    found = list(spread(squares, range(19), 10))
    assert {who for _, who in found} == {os.getpid()} and len(found) == 19
    assert list(spread(squares, [], 10)) == []


@pytest.mark.parametrize("end", ["killed", "raised", "cannot be pickled"])
def test_a_share_whose_process_ended_badly_is_worked_here(end: str) -> None:
    here = os.getpid()

    def work(last: int, share: Sequence[int]) -> Iterator[object]:
        for number in share:
            if os.getpid() != here and number >= last:
                if end == "killed":
                    os.kill(os.getpid(), signal.SIGKILL)
                if end == "raised":
                    raise ValueError(end)
                yield lambda: None
            yield number

    for last in (0, 21):
        assert list(spread(partial(work, last), range(40), 10)) == list(range(40))


def test_what_the_work_raises_is_raised_and_no_process_is_left(monkeypatch: pytest.MonkeyPatch) -> None:
    started: list[int] = []

    def work(share: Sequence[int]) -> Iterator[int]:
        raise ValueError(f"no {len(share)}")

    def noted(fork: Callable[[], int] = os.fork) -> int:
        process = fork()
        started.append(process)
        return process

    monkeypatch.setattr(os, "fork", noted)
    with pytest.raises(ValueError, match="no 20"):
        list(spread(work, range(40), 10))
    (process,) = started
    with pytest.raises(ChildProcessError):
        os.waitpid(process, os.WNOHANG)


def test_a_large_answer_passes() -> None:
    answers = spread(lambda share: (b"x" * (3_000_000 + number) for number in share), range(20), 10)
    assert [len(answer) for answer in answers] == list(range(3_000_000, 3_000_020))


def test_documents_come_back_as_ours() -> None:
    documents = [Document(f"{n}.md", "text") for n in range(40)]
    found = list(
        spread(lambda share: ((document, Document("new.md", "")) for document in share), documents, 10, documents)
    )
    assert all(one is own for (one, _), own in zip(found, documents, strict=True))
    assert all(new not in documents for _, new in found)


def test_a_check_in_two_processes_says_the_same(tmp_path: Path) -> None:
    (tmp_path / "recipes").mkdir()
    shutil.copy(ROOT / "channel.yaml", tmp_path)
    text = (ROOT / "recipes" / "first-winter-bowl.md").read_text().replace("draft: true", "draft: false")
    for number in range(5):
        (tmp_path / "recipes" / f"bowl-{number}.md").write_text(text.replace("Serve", f"Serve {number}"))
    script = (
        "import sys, spoonproof.checks.engine as e\n"
        "e.CHECK_LEAST = 2\n"
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
