"""Feed changed inputs to the targets: ``python -m tests.fuzz.fuzz TARGET SECONDS [SEED]``.

Guided by coverage where atheris is installed (it is not among our extras), else by a seeded mutator without eyes.
Each new way to fail is kept once as ``crashes/TARGET-HASH`` and the run goes on; exit 1 when there was one.
A crash stays in that folder as a case of ``test_fuzz.py`` once it is mended.
"""

from __future__ import annotations

import hashlib
import random
import sys
import time
import traceback
from collections.abc import Callable
from pathlib import Path

KEPT = Path(__file__).with_name("crashes")
SLOW = 2.0
"""Seconds of work after which an input counts as a failure."""


class Keeper:
    """Runs a target over inputs, counts them, and keeps one input for each place that fails."""

    def __init__(self, name: str, target: Callable[[bytes], None], kept: Path = KEPT) -> None:
        self.name, self.target, self.kept = name, target, kept
        self.runs = 0
        self.seen: set[str] = set()

    def __call__(self, data: bytes) -> None:
        """Run the target once; what it raises is kept, not passed on."""
        self.runs += 1
        started = time.process_time()
        try:
            self.target(data)
        except (Exception, RecursionError) as error:
            frames = traceback.extract_tb(error.__traceback__)
            self._keep(f"{type(error).__name__} {frames[-1].filename}:{frames[-1].lineno}", data, error)
        else:
            if time.process_time() - started > SLOW:
                self._keep("slow", data, None)

    def _keep(self, way: str, data: bytes, error: BaseException | None) -> None:
        if way in self.seen:
            return
        self.seen.add(way)
        self.kept.mkdir(exist_ok=True)
        path = self.kept / f"{self.name}-{hashlib.sha256(data).hexdigest()[:10]}"
        path.write_bytes(data)
        print(f"KEPT {path.name}: {way}: {error}", flush=True)


def changed(data: bytes, others: list[bytes], chance: random.Random) -> bytes:
    """``data`` with one to eight small changes."""
    out = bytearray(data)
    for _ in range(chance.randint(1, 8)):
        at = chance.randint(0, len(out))
        match chance.randrange(7):
            case 0:
                out[at : at + chance.randint(1, 40)] = b""
            case 1:
                out[at:at] = chance.choice(PIECES)
            case 2:
                other = chance.choice(others)
                start = chance.randint(0, len(other))
                out[at:at] = other[start : start + chance.randint(1, 200)]
            case 3 if at < len(out):
                out[at] = chance.randrange(256)
            case 4:
                part = out[at : at + chance.randint(1, 30)]
                out[at:at] = part * chance.randint(1, 5)
            case 5:
                lines = out.split(b"\n")
                chance.shuffle(lines)
                out = bytearray(b"\n".join(lines))
            case _:
                end = at + chance.randint(1, 20)
                out[at:end] = chance.choice(PIECES)
    return bytes(out[:60_000])


PIECES = [
    piece.encode()
    for piece in (
        "---\n", "- ", ": ", "\r", "\r\n", "\n\n", "\t", "&a", "*a", "!t ", "|\n", ">-\n", "'", '"', "[", "]", "{", "}",
        "#", "½", "1/0", "1e400", "-0", "NaN", "2-3", "3-2", "1,5", "٣", "\u202e", "\u2028", "\x00", "\x1b[2J", "🥄",
        "é", " " * 40, "<!--", "-->", "<b>", "](", "![", "`", "```\n", "00:01.000 --> 00:02.000\n", "WEBVTT\n", "g",
        "cup", "minutes", "°C", "until soft", "for the baby", "the family", "cures", "rich in iron", "no added sugar",
        "honey", "is", "not", "%", ".", "?", "<<: ", "? ", "=", "foods:\n", "steps:\n", "ages: 6-8 months\n",
    )
]  # fmt: skip


def blind(keeper: Keeper, first: list[bytes], seconds: float, seed: int) -> None:
    """The mutator without eyes: the same seed walks the same inputs."""
    chance = random.Random(seed)
    pool = first or [b""]
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        keeper(changed(chance.choice(pool), pool, chance))


def main(arguments: list[str]) -> int:
    """Run one target for so many seconds."""
    name, seconds = arguments[0], float(arguments[1])
    seed = int(arguments[2]) if len(arguments) > 2 else 1
    started = time.monotonic()
    try:
        import atheris
    except ImportError:
        from tests.fuzz.targets import TARGETS, seeds

        keeper = Keeper(name, TARGETS[name])
        blind(keeper, seeds(name), seconds, seed)
        print(f"{name}: {keeper.runs} inputs in {time.monotonic() - started:.0f} s, seed {seed}, without coverage")
        return bool(keeper.seen)
    with atheris.instrument_imports(include=["spoonproof", "markdown_it"]):
        from tests.fuzz.targets import TARGETS, seeds
    import tempfile

    keeper = Keeper(name, TARGETS[name])
    with tempfile.TemporaryDirectory(prefix="corpus-") as corpus:
        for number, text in enumerate(seeds(name)):
            (Path(corpus) / str(number)).write_bytes(text)
        words = Path(corpus).with_suffix(".dict")
        words.write_text("".join('"' + "".join(f"\\x{b:02x}" for b in piece) + '"\n' for piece in PIECES))
        limits = [f"-max_total_time={seconds:.0f}", f"-seed={seed}", "-max_len=12000", "-timeout=60", "-rss_limit_mb=0"]
        atheris.Setup(["fuzz", *limits, f"-dict={words}", "-print_final_stats=1", corpus], keeper)
        atheris.Fuzz()  # ends the process
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
