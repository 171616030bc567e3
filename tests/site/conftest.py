"""A real Chromium over the built sample site; stands aside, saying why, where there is none (never with CI=true)."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from spoonproof.site import build
from spoonproof.site.pages import Theme
from tests.site import sample


def missing(what: str) -> None:
    """Skip, or fail where the tests must run."""
    if os.environ.get("CI") == "true":
        pytest.fail(f"{what}, and with CI=true these tests must run")
    pytest.skip(f"{what}: the page was not looked at in a browser")


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample site as a folder."""
    out = tmp_path_factory.mktemp("built") / "site"
    build.write(out, build.files(sample.site(), Theme([sample.THEME]), sample.pictures()), ())
    return out


@pytest.fixture(scope="session")
def chromium() -> Iterator[Any]:
    """The browser, started once."""
    path = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    if path is None:
        missing("no Chromium here")
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        missing("playwright is not installed")
    quiet = ["--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"]
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=["--no-sandbox", "--disable-gpu", *quiet])
        yield browser
        browser.close()
