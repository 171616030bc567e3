"""The pages in a real Chromium: accessibility, keyboard, no script, small screens, print, and what is fetched."""

from __future__ import annotations

import re
from importlib import util
from pathlib import Path
from typing import Any

import pytest

from tests.site.conftest import Built, missing
from tests.site.sample import THEME
from tests.sitting import sit_down

pytestmark = [pytest.mark.browser, pytest.mark.timeout(240)]

KINDS = (
    "index.html", "404.html", "sources.html", "rules.html", "register.html", "calendar.html",
    "recipes/red-lentil-and-sweet-potato-pot.html", "recipes/parsnip-and-pear-spoon-mash.html",
    "odd/recipes/full-house.html", "guide/index.html", "guide/editor.html",
)  # fmt: skip
FULL = "recipes/red-lentil-and-sweet-potato-pot.html"
WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
COLOURS = ["color-contrast", "link-in-text-block"]
LAYOUT = ["target-size", "scrollable-region-focusable", "heading-order", "region", "landmark-one-main", "skip-link"]


def axe_script() -> Path:
    """The accessibility engine, as a package of the test extras ships it."""
    spec = util.find_spec("axe_playwright_python")
    if spec is None or spec.origin is None:
        missing("axe-core (axe-playwright-python) is not installed")
        raise AssertionError
    return Path(spec.origin).with_name("axe.min.js")


def open_page(chromium: Any, built: Built, path: str, **options: Any) -> Any:
    """A page of the site."""
    return sit_down(chromium, built.url(path), **options)


@pytest.mark.parametrize("path", KINDS)
def test_axe_finds_nothing_on_any_kind_of_page(chromium: Any, built: Built, path: str) -> None:
    # The policy rightly refuses scripts that are not the site's: the engine needs it lifted.
    page = open_page(chromium, built, path, viewport=(390, 900), bypass_csp=True)
    faults = axe_everywhere(page)
    assert not faults, "\n".join(faults)


def axe_everywhere(page: Any) -> list[str]:
    """What the engine finds: all its rules on a phone; on a desk and in the dark those that these may change.

    Contrast is the dearest of them. Widths change no colour (``test_widths_change_no_colour``): it is
    looked at twice.
    """
    page.evaluate("document.querySelectorAll('details').forEach((d) => { d.open = true; })")
    page.evaluate(axe_script().read_text(encoding="utf-8"))
    faults = axe(page, "390", {"type": "tag", "values": WCAG})
    page.set_viewport_size({"width": 1280, "height": 900})
    page.emulate_media(color_scheme="dark")  # changes colours and nothing else
    return faults + axe(page, "1280, dark", {"type": "rule", "values": LAYOUT + COLOURS})


def axe(page: Any, where: str, only: dict[str, Any]) -> list[str]:
    """What the engine finds, a line a place."""
    run = "(only) => axe.run({exclude: [['iframe']]}, {runOnly: only, resultTypes: ['violations']})"
    return [
        f"{where} {v['id']}: {n['target']} {n.get('failureSummary', '')}"
        for v in page.evaluate(run, only)["violations"]
        for n in v["nodes"]
    ]


@pytest.mark.parametrize("sheet", ["style.css", "look.css", "desk/desk.css"])
def test_widths_change_no_colour(sheet: str) -> None:
    text = (THEME / sheet).read_text(encoding="utf-8")
    widths = re.findall(r"@media \((?:min|max)-width:[^{]+\{((?:[^{}]*\{[^{}]*\})*)\s*\}", text)
    assert len(widths) == len(re.findall(r"@media[^{]*-width", text))
    assert not re.search(r"colou?r|background|opacity|filter|fill|var\(--(?!line)", "".join(widths))


def test_axe_would_find_a_fault(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, "404.html", bypass_csp=True)
    page.evaluate("document.querySelector('main').innerHTML += '<img src=\"icon.svg\"><a href=\"#\"></a>'")
    page.evaluate(axe_script().read_text(encoding="utf-8"))
    found = {v["id"] for v in page.evaluate("axe.run(document)")["violations"]}
    assert {"image-alt", "link-name"} <= found


def test_pages_meet_their_own_policy_and_fetch_nothing_else(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, "404.html", own=True)
    said: list[str] = []
    asked: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("request", lambda request: asked.append(request.url))
    for path in KINDS:
        asked.clear()
        page.goto(built.url(path))
        page.wait_for_load_state("load")
        assert not said, path
        assert asked and all(url.startswith(built.address) for url in asked), path
        assert page.context.cookies() == []
        assert page.evaluate("getComputedStyle(document.body).borderTopWidth") == "7px", "the style sheet was refused"
    page.context.close()


def test_pages_open_from_a_folder_too(chromium: Any, built: Built) -> None:
    page = chromium.new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.goto((built.folder / FULL).as_uri())
    page.get_by_role("link", name="Recipes", exact=True).first.click()
    page.wait_for_url("**/index.html")
    assert page.locator("#count").inner_text() == "2 recipes"
    assert not said
    page.close()


def test_small_screens_and_200_per_cent_never_scroll_sideways(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, "404.html")
    for path in KINDS:
        page.goto(built.url(path))
        for width in (320, 640):  # the second is a window of 1280 pixels at 200 per cent
            page.set_viewport_size({"width": width, "height": 700})
            wide = page.evaluate("document.documentElement.scrollWidth")
            assert wide <= width, f"{path} is {wide} wide at {width}"


@pytest.mark.parametrize("script", [True, False])
def test_scaling_and_measures_work_with_and_without_script(chromium: Any, built: Built, script: bool) -> None:
    page = open_page(chromium, built, FULL, java_script_enabled=script)
    first = page.locator(".foods li").first
    spoon = page.locator(".foods li", has_text="rapeseed oil")
    assert first.inner_text().startswith("150\u00a0g red lentils")
    page.locator("#x-2").check(force=True)
    assert first.inner_text().startswith("300\u00a0g red lentils")
    assert spoon.inner_text().startswith("2\u00a0tbsp")
    page.locator("#s-us").check(force=True)
    assert first.inner_text().startswith("10½\u00a0oz red lentils")
    page.locator("#s-metric").check(force=True)
    assert spoon.inner_text().startswith("30\u00a0ml")


@pytest.mark.parametrize("script", [True, False])
def test_filters_work_with_and_without_script(chromium: Any, built: Built, script: bool) -> None:
    page = open_page(chromium, built, "index.html", java_script_enabled=script)
    shown = page.locator("#cards > .card:visible")
    assert shown.count() == 2
    page.locator("#f-texture-mashed").check(force=True)
    assert shown.count() == 1 and "Parsnip" in shown.first.inner_text()
    page.locator("#f-any-texture").check(force=True)
    page.locator("summary").click()
    page.locator("#f-without-milk").check(force=True)
    assert shown.count() == 1 and "Parsnip" in shown.first.inner_text()
    page.locator("#f-without-celery").check(force=True)  # both at once: a baby may have two allergies
    assert page.locator("#f-without-milk").is_checked() and shown.count() == 1
    page.locator("#f-age-10").check(force=True)
    assert shown.count() == 0


def test_search_finds_by_food_and_says_how_many(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, "index.html")
    page.locator("#find").press_sequentially("cumin lentil")
    page.locator("#count").get_by_text("1 recipe", exact=True).wait_for(state="attached")
    assert page.locator("#cards > .card:visible").count() == 1
    page.locator("#find").fill("durian")
    page.locator("#none-left").wait_for(state="visible")
    assert not open_page(chromium, built, "index.html", java_script_enabled=False).locator("#find").is_visible()


def test_keyboard_alone_reaches_everything_and_shows_where_it_is(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, FULL)
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    assert page.evaluate("document.activeElement.getBoundingClientRect().top") >= 0
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "content"
    page.locator("#x-1").focus()
    page.keyboard.press("ArrowRight")
    assert page.locator(".foods li").first.inner_text().startswith("300\u00a0g")
    outline = "getComputedStyle(document.activeElement.nextElementSibling).outlineStyle"
    assert page.evaluate(outline) != "none"
    wanted = page.evaluate("document.querySelectorAll('a[href], button, summary, [tabindex=\"0\"]').length")
    seen = set()
    page.evaluate("document.activeElement.blur(); window.scrollTo(0, 0)")
    for _ in range(wanted + 12):
        page.keyboard.press("Tab")
        seen.add(page.evaluate("[...document.querySelectorAll('*')].indexOf(document.activeElement)"))
    assert len(seen) >= wanted * 0.95


def test_timer_runs_stops_and_says_when_time_is_up(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, FULL, own=True)
    page.clock.install()
    button = page.locator(".timer").first
    assert button.inner_text() == "Time 5 minutes"
    button.click()
    page.clock.run_for(60_000)
    assert button.inner_text() == "4:00 left, tap to stop"
    button.click()
    assert button.inner_text() == "Time 5 minutes"
    button.click()
    page.clock.run_for(301_000)
    assert "squash test" in button.inner_text()
    assert "Time is up for step 1" in page.locator("body > [role=status]").inner_text()
    page.context.close()


def test_chapters_are_found_in_the_player_and_by_address(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, "odd/recipes/full-house.html")
    at = "document.getElementById('film-itself').currentTime"
    page.locator(".chapters a").nth(1).click()
    assert page.evaluate(at) == 10 and page.url.endswith("full-house.html")
    assert page.evaluate("document.activeElement.id") == "film-itself"
    page.goto(built.url("odd/recipes/full-house.html?t=60"))
    assert page.evaluate(at) == 60
    kinds = "[...document.querySelectorAll('track')].map((t) => t.kind + ' ' + t.srclang)"
    assert page.evaluate(kinds) == ["captions en-GB", "chapters en-GB"]
    plain = open_page(chromium, built, "odd/recipes/full-house.html", java_script_enabled=False)
    assert (plain.locator(".chapters a").nth(1).get_attribute("href") or "").endswith("videos/pot.mp4#t=10")


def test_an_address_in_a_closed_part_opens_it(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, "register.html#at-iron-oxygen")
    assert page.locator("details.drawer").first.get_attribute("open") is not None


def test_reduced_motion_stills_everything(chromium: Any, built: Built) -> None:
    for wish, moves in (("reduce", False), ("no-preference", True)):
        page = open_page(chromium, built, "index.html")
        page.emulate_media(reduced_motion=wish)
        lasts = page.evaluate("getComputedStyle(document.querySelector('.card')).transitionDuration")
        smooth = page.evaluate("getComputedStyle(document.documentElement).scrollBehavior") == "smooth"
        assert (lasts not in ("0s", "")) is moves and smooth is moves


def test_forced_colours_still_show_which_choice_holds(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, FULL)
    page.emulate_media(forced_colors="active")
    fills = page.evaluate(
        "[...document.querySelectorAll('.switch .pick span')].map((s) => getComputedStyle(s).backgroundColor)"
    )
    assert len(set(fills)) == 2


def test_prints_on_one_sheet(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, FULL)
    sheet = page.pdf(prefer_css_page_size=True, print_background=False)
    assert len(re.findall(rb"/Type\s*/Page\b", sheet)) == 1
    page.emulate_media(media="print")
    assert page.locator("#steps").is_visible() and page.locator(".first").is_visible()
    assert not page.locator("nav").first.is_visible() and not page.locator("#why").is_visible()


def test_a_former_address_leads_on(chromium: Any, built: Built) -> None:
    page = open_page(chromium, built, "recipes/lentil-pot.html")
    page.wait_for_url("**/red-lentil-and-sweet-potato-pot.html")
