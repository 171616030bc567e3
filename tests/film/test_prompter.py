"""The prompter in a real browser: it runs at the pace of speech, obeys keys, and needs no network."""

from pathlib import Path
from typing import Any

from spoonproof.film.package import package
from tests.film.test_lists import DISHES


def test_the_prompter_runs_stops_and_mirrors_without_a_network(chromium: Any, tmp_path: Path) -> None:
    made = package(DISHES[0])
    for name in ("prompter.html", "script.html", "shots.html"):
        (tmp_path / name).write_bytes(made[name])
    context = chromium.new_context(viewport={"width": 1180, "height": 820}, offline=True)  # a tablet, lying
    page = context.new_page()
    wrong: list[str] = []
    page.on("console", lambda message: wrong.append(message.text))
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.goto((tmp_path / "prompter.html").as_uri())
    look = page.evaluate
    assert look("parseFloat(getComputedStyle(document.querySelector('main p')).fontSize)") >= 48
    assert look("document.documentElement.scrollWidth <= innerWidth")

    page.keyboard.press(" ")
    page.wait_for_timeout(300)
    first, began = look("[scrollY, performance.now()]")
    page.wait_for_timeout(700)
    second, ended = look("[scrollY, performance.now()]")
    section = "document.querySelector('section')"
    pace = look(f"{section}.offsetHeight / Number({section}.dataset.said)")
    assert 0.7 * pace <= (second - first) / (ended - began) * 1000 <= 1.3 * pace
    page.keyboard.press("ArrowUp")
    assert page.text_content("#rate") == "150 words a minute"
    page.keyboard.press(" ")
    page.wait_for_timeout(50)
    held = look("scrollY")
    page.wait_for_timeout(150)
    assert look("scrollY") == held
    assert page.text_content("#go") == "Run"

    page.keyboard.press("m")
    assert look("new DOMMatrix(getComputedStyle(document.querySelector('main')).transform).a") == -1
    before = look("scrollY")
    page.keyboard.press("ArrowRight")
    assert look("scrollY") > before
    page.click("text=Script")
    assert page.url.endswith("/script.html")
    page.click("text=Shot list")
    page.click("text=prompter")
    assert page.url.endswith("/prompter.html")
    assert not wrong
    context.close()
