"""Runs every row of this folder in one process and prints what came of each, as JSON Lines.

Started by ``test_bad_inputs.py`` in a process of its own, so that a row that takes too much memory or never ends
takes nothing else with it. A row is a folder: ``expect`` and what the tool is given, as files or made by the
function ``make(folder)`` in ``make.py`` where no file can hold it (pipes, links, megabytes).

A row behind one of the first three doors is also given to the command itself (its files laid into a channel, for
``check``; statements to ``listen``), which must say the same, end with 0, 1 or 2 and show no traceback.

Lines of ``expect``:
    # a remark
    door recipe | channel | statements | check [ARGUMENTS] | commands
    file NAME                  for the first three doors; without it every file of the row, by name
    run COMMAND [ARGUMENTS]    each command of the last door, in order
    env NAME=VALUE             for all of them
    exit N                     of the check; of the last door one for each command
    LINE:COLUMN RULE [LEVEL]   a finding; all of them for the first three doors (of lines and steps: the errors),
                               some among others for a check
    NAME LINE:COLUMN RULE      the same where a row has several files
    says WORDS                 in a message or in what was printed
    never WORDS                nowhere in what was printed
    inside FILE WORDS          in a file that a command wrote
    outside PATTERN WORDS      in no file of those that the pattern names, and there is one
    reads PATH = VALUE         what was read, by attributes of the recipe or channel
    seconds N                  where more than 2 are allowed
"""

from __future__ import annotations

import contextlib
import gc
import importlib.util
import io
import json
import os
import resource
import shlex
import shutil
import signal
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from types import FrameType
from typing import Any

HERE = Path(__file__).parent
SECONDS = 2.0
SWEPT_KB = 128 << 10
WORDS = ("door", "file", "run", "env", "exit", "says", "never", "inside", "outside", "reads", "seconds")

if str(HERE.parents[1]) not in sys.path:  # run as a script
    sys.path.insert(0, str(HERE.parents[1]))


class TooSlow(BaseException):
    """A row ran longer than it may; no Exception, so that nothing on the way takes it for a broken rule."""


def rows() -> list[Path]:
    """The folders of the rows, by number."""
    return sorted(
        (f for f in HERE.iterdir() if f.name[:2].isdigit()), key=lambda f: (int(f.name.partition("-")[0]), f.name)
    )


def expectation(folder: Path) -> dict[str, list[str]]:
    """The lines of ``expect`` by their first word; findings under ``found``."""
    wanted: dict[str, list[str]] = {}
    for line in (folder / "expect").read_text(encoding="utf-8").split("\n"):
        if line.strip() and not line.startswith("#"):
            word, _, rest = line.partition(" ")
            key = word if word in WORDS else "found"
            wanted.setdefault(key, []).append(rest.strip() if key != "found" else line.strip())
    return wanted


@contextlib.contextmanager
def laid_out(folder: Path) -> Iterator[Path]:
    """The row's files in a folder of their own."""
    with tempfile.TemporaryDirectory(prefix="row-") as name:
        place = Path(name) / "channel"
        shutil.copytree(folder, place, ignore=shutil.ignore_patterns("expect", "make.py", "__pycache__"), symlinks=True)
        if (folder / "make.py").exists():
            spec = importlib.util.spec_from_file_location(f"make_{folder.name[:2]}", folder / "make.py")
            assert spec is not None
            assert spec.loader is not None
            module = importlib.util.module_from_spec(spec)
            spec.loader.exec_module(module)
            module.make(place)
        yield place


def run(folder: Path) -> dict[str, object]:
    """What came of one row."""
    wanted = expectation(folder)
    door = wanted.get("door", ["recipe"])[0]
    runs = max(2, len(wanted.get("run", ())))  # all are run twice at least: for text and JSON Lines, or read and run
    limit = runs * float(wanted.get("seconds", [str(SECONDS)])[0])
    outcome: dict[str, object] = {"row": folder.name}

    def stop(_signal: int, _frame: FrameType | None) -> None:
        raise TooSlow

    with laid_out(folder) as place:
        # Seconds of work, which a busy machine does not change; and of waiting, for a pipe that never answers.
        signal.signal(signal.SIGPROF, stop)
        signal.signal(signal.SIGALRM, stop)
        signal.setitimer(signal.ITIMER_PROF, limit)
        signal.setitimer(signal.ITIMER_REAL, 20 * limit)
        started = time.process_time()
        try:
            if door == "commands":
                outcome |= commanded(place, wanted)
            elif door.startswith("check"):
                outcome |= checked(place, door.split()[1:])
            else:
                outcome |= read(place, door, wanted.get("file", []), wanted.get("reads", []))
                outcome |= told(place, door)
        except TooSlow:
            outcome["broke"] = f"took more than {limit} s"
        except Exception as error:  # a row must never raise: say which did
            outcome["broke"] = f"{type(error).__name__}: {error}"
        finally:
            signal.setitimer(signal.ITIMER_PROF, 0)
            signal.setitimer(signal.ITIMER_REAL, 0)
        outcome["seconds"] = round((time.process_time() - started) / runs, 3)
    # Kilobytes at the highest point of this process so far; what a command leaves to the end of its process goes
    # once there is much of it.
    outcome["memory"] = memory("VmHWM")
    if memory("VmRSS") > SWEPT_KB:
        gc.collect()
        gc.freeze()  # what it left is not looked through again after the next row
    return outcome


def memory(mark: str) -> int:
    """Kilobytes at this process's highest point (``VmHWM``) or now. Linux lets ``ru_maxrss`` start at what the process
    that started this one held, a whole test run; the high water mark of the memory itself begins anew."""
    with contextlib.suppress(OSError):
        for line in Path("/proc/self/status").read_text(encoding="ascii").split("\n"):
            if line.startswith(f"{mark}:"):
                return int(line.split()[1])
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss


def read(place: Path, door: str, names: list[str], paths: list[str]) -> dict[str, object]:
    """The findings of one of the reading doors, and what was read."""
    from spoonproof.knowledge import Knowledge
    from spoonproof.reading.channel import read_channel
    from spoonproof.reading.files import read_document
    from spoonproof.reading.recipe import read_recipe
    from spoonproof.reading.speech import read_statements

    global _knowledge
    _knowledge = _knowledge or Knowledge()
    assert isinstance(_knowledge, Knowledge)
    given = names or sorted(
        str(path.relative_to(place)) for path in place.rglob("*") if path.is_file() or path.is_fifo()
    )
    found: list[str] = []
    said: list[str] = []
    values: list[str] = []
    for name in given:
        document, findings = read_document(place / name, name)
        thing: object = None
        if document is not None and door == "recipe":
            thing, more = read_recipe(document, _knowledge.foods, _knowledge.verbs, _knowledge.measures("UK"))
            findings += more
        elif document is not None and door == "channel":
            thing, more = read_channel(document)
            findings += more
        elif document is not None:
            thing, more = read_statements(document)
            findings += more
        for finding in findings:
            if finding.area in ("cooking", "baby") and finding.level != "error":
                continue  # what food lines and steps make of it has tests of its own
            line, column = finding.document.position(finding.span.start)
            prefix = f"{name} " if len(given) > 1 else ""
            found.append(f"{prefix}{line}:{column} {finding.rule} {finding.level}")
            said.append(finding.message)
            assert 0 <= finding.span.start <= finding.span.end <= max(1, len(finding.document.text) + 1)
        for path in paths:
            steps = path.partition("=")[0].strip()
            values.append(f"{steps} = {_follow(thing, steps)!r}")
    return {"found": found, "said": said, "values": values}


_knowledge: object = None


def _follow(thing: Any, path: str) -> object:
    for step in path.split("."):
        thing = thing[int(step)] if step.isdigit() else getattr(thing, step)
    return thing


def checked(place: Path, arguments: list[str]) -> dict[str, object]:
    """The findings and the exit code of a check of the row's channel, and all that was printed."""
    from spoonproof.cli import main

    printed, complained = io.StringIO(), io.StringIO()
    before = Path.cwd()
    os.chdir(place)
    try:
        with contextlib.redirect_stdout(printed), contextlib.redirect_stderr(complained):
            text_code = main(["check", *arguments])
            text = printed.getvalue()
            printed.seek(0)
            printed.truncate()
            code = main(["check", "--format", "jsonl", *arguments])
    finally:
        os.chdir(before)
    findings = [json.loads(line) for line in printed.getvalue().split("\n") if line.startswith("{")]
    assert text_code == code, f"text says {text_code}, jsonl {code}: {complained.getvalue()[:500]}"
    names = {str(f["file"]) for f in findings}
    found = [_line_of(f, len(names) > 1) for f in findings]
    output = text + complained.getvalue()
    return {"found": found, "said": [output, *(str(f["message"]) for f in findings)], "exit": code, "printed": output}


def called(arguments: list[str]) -> tuple[int, str, str]:
    """One command: its exit code, what it printed and what it complained of."""
    from spoonproof.cli import main

    printed, complained = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(printed), contextlib.redirect_stderr(complained):
        code = main(arguments)
    return code, printed.getvalue(), complained.getvalue()


def commanded(place: Path, wanted: dict[str, list[str]]) -> dict[str, object]:
    """What a row's commands found and printed, and their exit codes."""
    before, kept = Path.cwd(), dict(os.environ)
    os.environ.update(line.partition("=")[::2] for line in wanted.get("env", []))
    os.chdir(place)
    try:
        answers = [called(shlex.split(line)) for line in wanted["run"]]
    finally:
        os.chdir(before)
        os.environ.clear()
        os.environ.update(kept)
    found, said = [], []
    for _, printed, complained in answers:
        lines = [json.loads(line) for line in printed.split("\n") if line.startswith('{"area"')]
        names = {str(f["file"]) for f in lines}
        found += [_line_of(f, len(names) > 1) for f in lines]
        said += [printed, complained, *(str(f["message"]) for f in lines)]
    printed = "\n".join(said)
    codes = [code for code, _, _ in answers]
    return {"found": found, "said": said, "exit": codes, "printed": printed, "written": list(_written(place, wanted))}


def _written(place: Path, wanted: dict[str, list[str]]) -> Iterator[str]:
    """What is wrong with the files that the commands wrote."""
    for line in wanted.get("inside", []):
        name, _, words = line.partition(" ")
        if words.encode() not in (place / name).read_bytes():
            yield f"{words} does not stand in {name}"
    for line in wanted.get("outside", []):
        name, _, words = line.partition(" ")
        files = [path for path in place.glob(name) if path.is_file()]
        if not files:
            yield f"no file is named like {name}"
        yield from (f"{words} stands in {path.name}" for path in files if words.encode() in path.read_bytes())


def told(place: Path, door: str) -> dict[str, object]:
    """What the command itself says of the files of a row that a reading door has read."""
    channel = place / "channel"
    (channel / "recipes").mkdir(parents=True)
    files = [path for path in sorted(place.rglob("*")) if channel not in path.parents and not path.is_dir()]
    (channel / "channel.yaml").write_text("title: Row\nmeasures: UK\n")
    outcomes = []
    before = Path.cwd()
    os.chdir(channel)
    try:
        if door == "recipe":
            for path in files:
                path.rename(channel / "recipes" / path.name)
            outcomes.append(called(["check", "--drafts", "--format", "jsonl", "--level", "note"]))
        else:
            for path in files:
                if door == "channel":
                    path.replace(channel / "channel.yaml")
                    outcomes.append(called(["check"]))
                else:
                    outcomes.append(called(["listen", str(path)]))
    finally:
        os.chdir(before)
    return {"told": [list(outcome) for outcome in outcomes]}


def _line_of(finding: dict[str, object], named: bool) -> str:
    where = f"{finding['line']}:{finding['column']} {finding['rule']} {finding['level']}"
    return f"{finding['file']} {where}" if named else where


def warm_up() -> None:
    """Load our own tables, so that the first row's time is its own; they stay for all rows."""
    import pytest

    from tests import once
    from tests.bad_inputs.plain import RECIPE

    once.keep(pytest.MonkeyPatch())
    with tempfile.TemporaryDirectory(prefix="row-") as name:
        place = Path(name)
        (place / "channel.yaml").write_text("title: Row\nmarkets: [GB]\n")
        (place / "recipes").mkdir()
        (place / "recipes" / "leek-bowl.md").write_text(RECIPE)
        checked(place, [])
        read(place / "recipes", "recipe", [], [])
    gc.collect()
    gc.freeze()  # what is loaded once is not looked through again after each command


if __name__ == "__main__":
    warm_up()
    only = sys.argv[1:]
    for row in rows():
        if not only or row.name.split("-")[0] in only:
            print(json.dumps(run(row)), flush=True)
