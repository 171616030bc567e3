"""One keystroke to findings: a real server process, a real recipe, measured from sending the change to the findings.

    python benchmarks/editor.py [RECIPE] [KEYSTROKES] [OTHERS]

Typed in the story, and in a step. Prints percentiles in milliseconds for the whole way on the clock (with the delay of
quiet set to nothing), for the look alone in this process by processor time, and their ratio; then the look alone in a
channel of OTHERS recipes (5,000), where the recipe that is typed in uses another one as a food, so that its rules look
across. Another machine has other milliseconds; the ratio travels, and so does processor time beside a bare
interpreter's start.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from bowls import make  # noqa: E402

from spoonproof.editor.bench import Bench, OpenText  # noqa: E402
from spoonproof.editor.diagnostics import diagnostics  # noqa: E402
from spoonproof.model.text import Document  # noqa: E402
from tests.editor.client import Client  # noqa: E402


def main(arguments: Sequence[str]) -> None:
    """Measure and print."""
    name = arguments[0] if arguments else "recipes/parsnip-and-pear-spoon-mash.md"
    count = int(arguments[1]) if len(arguments) > 1 else 200
    text = (ROOT / name).read_text(encoding="utf-8")
    print(f"{name}: {len(text)} characters, {count} keystrokes")
    for where, texts in (("in the story", _in_story(text, count)), ("in a step", _in_step(text, count))):
        whole = through_the_server(name, text, texts)
        alone = in_this_process(name, text, texts)
        print(where)
        for label, times in (("keystroke to findings", whole), ("the look, processor", alone)):
            p50, p95, worst = percentile(times, 50), percentile(times, 95), max(times)
            print(f"  {label:<22} median {p50:6.1f} ms   p95 {p95:6.1f} ms   worst {worst:6.1f} ms")
        print(f"  whole way / look alone: {percentile(whole, 50) / percentile(alone, 50):.2f}")
    others = int(arguments[2]) if len(arguments) > 2 else 5000
    across = among(others, count)
    print(f"a recipe that uses another, among {others}: {count} keystrokes")
    p50, p95, worst = percentile(across, 50), percentile(across, 95), max(across)
    print(f"  {'the look, processor':<22} median {p50:6.1f} ms   p95 {p95:6.1f} ms   worst {worst:6.1f} ms")


def _in_story(text: str, count: int) -> list[str]:
    return [text + "The bowl is warm and good. "[: n % 27 + 1] + "\n" for n in range(count)]


def _in_step(text: str, count: int) -> list[str]:
    """The first step grows by one letter at a time."""
    at = text.index("\n", text.index("\nsteps:\n") + 8)
    return [text[:at] + " Stir it now and then."[: n % 22 + 1] + text[at:] for n in range(count)]


def through_the_server(name: str, text: str, texts: Sequence[str]) -> list[float]:
    """Milliseconds from each change to its findings, over the protocol."""
    times = []
    with Client(ROOT, delay=0) as client:
        client.open(name, text)
        for each in texts:
            start = time.perf_counter()
            client.change(name, [{"text": each}])
            client.findings(name)
            times.append((time.perf_counter() - start) * 1000)
        client.leave()
    return times


def in_this_process(name: str, text: str, texts: Sequence[str]) -> list[float]:
    """Milliseconds of processor for reading, checking and making diagnostics, without the protocol."""
    bench, path, times = Bench(), ROOT / name, []
    bench.look(OpenText(path.as_uri(), path, 0, Document(name, text)))
    for number, each in enumerate(texts, 1):
        opened = OpenText(path.as_uri(), path, number, Document(name, each))
        start = time.process_time()
        diagnostics(bench.look(opened))
        times.append((time.process_time() - start) * 1000)
    return times


def among(others: int, count: int) -> list[float]:
    """Milliseconds of processor for looking at a recipe with a ``recipe:`` food in a channel of many."""
    with tempfile.TemporaryDirectory(prefix="among-") as name:
        folder = make(Path(name) / "channel", others)
        path = folder / "recipes" / "bowl-0.md"
        text = path.read_text("utf-8").replace("foods:\n", "foods:\n  - 60 g recipe:bowl-1\n", 1)
        bench, times = Bench(), []
        for number in range(count + 1):
            typed = text + "The bowl is warm and good. "[: number % 27 + 1] + "\n"
            opened = OpenText(path.as_uri(), path, number, Document("recipes/bowl-0.md", typed))
            start = time.process_time()
            diagnostics(bench.look(opened))
            times.append((time.process_time() - start) * 1000)
        return times[1:]


def percentile(times: Sequence[float], share: int) -> float:
    """The nearest-rank percentile."""
    ordered = sorted(times)
    return ordered[min(len(ordered) - 1, max(0, -(-len(ordered) * share // 100) - 1))]


if __name__ == "__main__":
    main(sys.argv[1:])
