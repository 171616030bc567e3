"""Longer work (publish, shoot) in a process of its own: its words as it goes, and a way to stop it.

Publishing puts the site in place as a whole at its very end, so a stop at any moment leaves the old one whole.
"""

from __future__ import annotations

import subprocess
import sys
import threading
import time
from pathlib import Path
from typing import Literal

from spoonproof.folder import ChannelFolder
from spoonproof.model.record import dataclass, field

State = Literal["running", "done", "left-out", "failed", "stopped"]
_LINES = 400
_STEP = "step\t"
_LEFT_OUT = 10


@dataclass(slots=True)
class Work:
    """One piece of work. ``done`` of ``all`` steps where they are known; ``lines`` what it said."""

    name: str
    process: subprocess.Popen[str]
    began: float
    state: State = "running"
    done: int = 0
    all: int = 0
    doing: str = "starting"
    lines: list[str] = field(default_factory=list)
    seconds: float = 0.0
    stopping: bool = False

    def told(self) -> dict[str, object]:
        """All of it, for a page."""
        seconds = time.monotonic() - self.began if self.state == "running" else self.seconds
        return {
            "name": self.name,
            "state": self.state,
            "done": self.done,
            "all": self.all,
            "doing": self.doing,
            "lines": list(self.lines),
            "seconds": round(seconds, 1),
        }


class Bench:
    """Where longer work is done, one piece at a time."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.work: Work | None = None
        self._lock = threading.Lock()

    @property
    def busy(self) -> bool:
        """Whether something is being made."""
        return self.work is not None and self.work.state == "running"

    def start(self, name: str, *arguments: str) -> bool:
        """Set to work; False when something else is being made."""
        with self._lock:
            if self.busy:
                return False
            command = [sys.executable, "-m", "spoonproof.desk.work", str(self.root), *arguments]
            process = subprocess.Popen(
                command,
                cwd=self.root,
                stdin=subprocess.DEVNULL,
                stdout=subprocess.PIPE,
                stderr=subprocess.STDOUT,
                text=True,
                encoding="utf-8",
                errors="replace",
            )
            self.work = Work(name, process, time.monotonic())
            threading.Thread(target=self._follow, args=(self.work,), daemon=True).start()
            return True

    def stop(self) -> None:
        """Stop what is being made, if anything is."""
        work = self.work
        if work is not None and work.state == "running":
            work.stopping = True
            work.process.terminate()

    def _follow(self, work: Work) -> None:
        for line in work.process.stdout or ():
            line = line.rstrip("\n")
            if line.startswith(_STEP):
                done, every, doing = line.removeprefix(_STEP).split("\t", 2)
                work.done, work.all, work.doing = int(done), int(every), doing
            elif len(work.lines) < _LINES:
                work.lines.append(line)
        code = work.process.wait()
        work.seconds = time.monotonic() - work.began
        ends: dict[int, State] = {0: "done", _LEFT_OUT: "left-out"}
        work.state = ends.get(code, "stopped" if work.stopping else "failed")


def main(arguments: list[str]) -> int:
    """``ROOT publish`` or ``ROOT shoot KEY``: 0 done, 10 with recipes left out, 2 refused, 3 a fault."""
    from spoonproof.site.renewal import Refused

    root, command, *keys = arguments
    try:
        return _publish(Path(root)) if command == "publish" else _shoot(_opened(Path(root)), keys)
    except Refused as error:
        print(error)
        return 2
    except OSError as error:
        print(f"The machine said no: {error.strerror or error}. What was there before is whole.")
        return 3
    except Exception as error:
        print(f"A fault of ours, not yours: {type(error).__name__}: {error}. What was there before is whole.")
        return 3


def _opened(root: Path) -> ChannelFolder:
    """The channel's folder. Raises Refused where its channel.yaml has errors."""
    from spoonproof.site.renewal import Refused

    folder = ChannelFolder(root)
    errors = [fault for fault in folder.channel_faults if fault.level == "error"]
    if errors:
        places = ((f.document.path, f.document.position(f.span.start)[0], f.message) for f in errors)
        raise Refused("\n".join(f"{path}, line {line}: {message}" for path, line, message in places))
    return folder


def _publish(root: Path) -> int:
    """As the command does it, with steps told on the way."""
    from spoonproof.site.renewal import renew

    _tell(0, 1, "looking at what has changed")
    said = renew(root, root / "out" / "site", (), lambda: _opened(root), _tell)
    print(*said.errors, *said.out, sep="\n")
    return _LEFT_OUT if said.errors else 0


def _shoot(folder: ChannelFolder, keys: list[str]) -> int:
    from spoonproof.film.package import shoot

    for number, key in enumerate(keys):
        _tell(number, len(keys), f"writing the film package of {key}")
        recipe = folder.read(folder.root / "recipes" / f"{key}.md").recipe
        if recipe is None:
            print(f"{key} can't be read yet: put its head right under Write first.")
            return 2
        for path in shoot(folder.dish(recipe), folder.root / "out" / "film"):
            print(path.relative_to(folder.root))
    return 0


def _tell(done: int, every: int, doing: str) -> None:
    print(f"{_STEP}{done}\t{every}\t{doing}", flush=True)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
