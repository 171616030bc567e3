"""Prints every regular expression that our code compiles, as JSON: (file, line, pattern, flags).

Run in a process of its own: it listens to the compiler of ``re`` before anything of ours is imported, imports every
module, and runs commands over a channel, so that what is compiled late or kept in a cache is heard too.
"""

from __future__ import annotations

import contextlib
import gc
import importlib
import io
import json
import os
import pkgutil
import re
import sys
import tempfile
from pathlib import Path

HEARD: dict[tuple[str, int], str] = {}
_compile = re._compiler.compile  # type: ignore[attr-defined]  # the library keeps it to itself


def _listen(pattern: object, flags: int = 0) -> object:
    frame = sys._getframe(1)
    while frame is not None and frame.f_code.co_filename.startswith(os.path.dirname(re.__file__)):  # noqa: PTH120
        frame = frame.f_back  # type: ignore[assignment]  # none above the first
    if frame is not None and "/spoonproof/" in frame.f_code.co_filename and isinstance(pattern, str):
        place = f"{frame.f_code.co_filename.rpartition('/spoonproof/')[2]}:{frame.f_lineno}"
        HEARD.setdefault((pattern, int(flags)), place)
    return _compile(pattern, flags)


def main() -> None:
    """Import all, run some, print what was heard."""
    re._compiler.compile = _listen  # type: ignore[attr-defined]  # as above
    import spoonproof

    for info in pkgutil.walk_packages(spoonproof.__path__, "spoonproof."):
        if not info.name.endswith("__main__"):
            with contextlib.suppress(ImportError):  # an extra that is not installed
                importlib.import_module(info.name)
    from spoonproof.claims.find import analyser
    from spoonproof.claims.grammar import CompiledRule
    from spoonproof.cli import main as run
    from spoonproof.knowledge import Knowledge

    _kept = analyser(Knowledge().lexicon)
    for rule in [found for found in gc.get_objects() if isinstance(found, CompiledRule)]:
        _ = rule.expression
    with tempfile.TemporaryDirectory() as name, contextlib.redirect_stdout(io.StringIO()):
        os.chdir(name)
        run(["new", "channel", "bowl"])
        os.chdir("bowl")
        (Path("said.vtt")).write_text("WEBVTT\n\n00:00.000 --> 00:04.000\nPears are rich in iron.\n")
        recipe = "recipes/potato-and-courgette-mash.md"
        for line in (
            f"check --echo --level note {recipe}", "check --format sarif", f"nutrients {recipe}", f"plan {recipe}",
            "publish --out pages", f"shoot {recipe} --out film", "listen --mend said.vtt", "where iron", "sources",
            "explain honey", "calendar",
        ):  # fmt: skip
            run(line.split())
    print(json.dumps([(place, pattern, flags) for (pattern, flags), place in HEARD.items()]))


if __name__ == "__main__":
    main()
