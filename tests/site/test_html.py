"""The reference HTML checker over every page, where its jar is named by VNU_JAR and Java is there."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from pathlib import Path

import pytest

from spoonproof.site import build
from spoonproof.site.guide import guide_files
from spoonproof.site.pages import Theme
from tests.site import sample


@pytest.mark.timeout(180)
def test_the_reference_checker_has_nothing_to_say(tmp_path: Path) -> None:
    jar = os.environ.get("VNU_JAR", "")
    java = shutil.which("java")
    if not jar or java is None:
        pytest.skip("VNU_JAR names no checker here, or there is no Java: html5lib alone looked at the pages")
    out = tmp_path / "site"
    theme = Theme([sample.THEME])
    files = build.files(sample.site(), theme, sample.pictures())
    files |= {f"odd/{path}": body for path, body in build.files(sample.odd_site(), theme, {}).items()}
    files |= {f"guide/{path}": body for path, body in guide_files(sample.THEME.parent / "guide", theme).items()}
    build.write(out, files, ())
    said = []
    for option, suffix in ((None, "html"), ("--css", "css"), ("--svg", "svg")):
        paths = sorted(str(path) for path in out.rglob(f"*.{suffix}"))
        command = [java, "-jar", jar, "--format", "json", *([option] if option else []), *paths]
        messages = json.loads(subprocess.run(command, capture_output=True, text=True).stderr)["messages"]
        # The checker takes a page in a folder to have no origin, so that 'self' matches nothing there.
        said += [m for m in messages if "Content Security Policy" not in m["message"]]
    assert said == []
