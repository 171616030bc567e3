"""What every test shares: hypothesis without deadlines (machines differ; time is held by each test's own limit)."""

import gc
import os
import shutil
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import HealthCheck, settings
from hypothesis.internal import entropy

settings.register_profile(
    "house", deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow], max_examples=80
)
settings.load_profile("house")
entropy.NP_RANDOM = entropy  # type: ignore[assignment]
"""Nothing of ours throws numpy's dice; to set them before each example took twice the time of setting all others."""


def pytest_configure() -> None:
    """What a checkout makes of its tables is made before there are workers: else each of them makes all of it.

    Expressions are taken from there as a command takes them: collecting the tests compiled 1,400.
    """
    from spoonproof.compiled import load, made_folder
    from spoonproof.expressions import take_from

    if "PYTEST_XDIST_WORKER" not in os.environ:
        load("sources")
    take_from(made_folder())


@pytest.fixture(scope="session", autouse=True)
def once() -> Iterator[None]:
    """Our own tables and templates, read once a process."""
    from tests.once import keep

    with pytest.MonkeyPatch.context() as patch:
        keep(patch)
        yield


SLOWEST_FIRST = (
    "desk/test_windows", "site/test_browser", "desk/test_afternoon", "bad_inputs/test_bad_inputs", "test_patterns",
    "test_wheel", "red_team/test_red_team", "reading/test_kept", "bad_inputs/test_machine",
    "site/test_publish", "editor/test_server", "site/test_standing", "reading/test_markdown", "reading/test_speech",
    "feeding/test_properties",
)  # fmt: skip
"""Modules that take more than three seconds of work, the longest first, so that no worker ends with one alone."""


gc.set_threshold(200_000, 20, 100)
"""As our own commands do (``cli``)."""


def pytest_collection_finish() -> None:
    """What is loaded and collected stays to the end: it is not looked through again and again (5 % of all work)."""
    gc.collect()
    gc.freeze()


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The slowest modules first; all others as they were found."""
    place = {f"tests/{name}.py": number for number, name in enumerate(SLOWEST_FIRST)}
    items.sort(key=lambda item: place.get(item.nodeid.partition("::")[0], len(place)))


TOGETHER = {
    "one browser and one desk": (
        "desk/test_windows", "desk/test_afternoon", "site/test_browser", "film/test_prompter", "desk/test_security",
        "desk/test_odd_requests",
    ),
    "one language server": ("editor/test_hostile", "editor/test_odd_messages"),
}  # fmt: skip
"""Modules that one worker takes, so that what is dear to start is started once."""


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Any:
    """As ``--dist loadscope``, modules that belong together taken as one."""
    from xdist.scheduler import LoadScopeScheduling  # type: ignore[import-untyped]

    places = {f"tests/{name}.py": group for group, names in TOGETHER.items() for name in names}

    class Grouped(LoadScopeScheduling):  # type: ignore[misc]  # has no types
        def _split_scope(self, nodeid: str) -> str:
            scope = str(super()._split_scope(nodeid))
            return places.get(scope, scope)

    return Grouped(config, log) if config.getoption("dist") == "loadscope" else None


BROWSERS = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")


@pytest.fixture(scope="session")
def chromium() -> Iterator[Any]:
    """The browser, started once: the one without windows where there is one, at three fifths of the work."""
    from tests.site.conftest import missing

    path = next(filter(None, map(shutil.which, BROWSERS)), None)
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
