"""The prompter in a real browser: it runs at the pace of speech, obeys keys, and needs no network."""

from pathlib import Path
from typing import Any

from spoonproof.film.package import package
from tests.film.test_lists import dishes

# Frames come when the test asks for them, at times it sets, so that a busy machine changes nothing.
FRAMES = """(() => {
  const waiting = [];
  let now = 1000;
  window.requestAnimationFrame = call => waiting.push(call);
  window.frames_of = (count, each) => {
    for (let frame = 0; frame < count; frame++) {
      now += each;
      waiting.splice(0).forEach(call => call(now));
    }
    return scrollY;
  };
})()"""


def test_the_prompter_runs_stops_and_mirrors_without_a_network(chromium: Any, tmp_path: Path) -> None:
    made = package(dishes()[0])
    for name in ("prompter.html", "script.html", "shots.html"):
        (tmp_path / name).write_bytes(made[name])
    context = chromium.new_context(viewport={"width": 1180, "height": 820}, offline=True)  # a tablet, lying
    page = context.new_page()
    page.add_init_script(FRAMES)
    wrong: list[str] = []
    page.on("console", lambda message: wrong.append(message.text))
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.goto((tmp_path / "prompter.html").as_uri())
    look = page.evaluate
    assert look("parseFloat(getComputedStyle(document.querySelector('main p')).fontSize)") >= 48
    assert look("document.documentElement.scrollWidth <= innerWidth")

    page.keyboard.press(" ")
    first = look("frames_of(20, 16)")
    second = look("frames_of(100, 16)")
    section = "document.querySelector('section')"
    pace = look(f"{section}.offsetHeight / Number({section}.dataset.said)")
    assert pace > 20
    assert 0.95 * pace <= (second - first) / 1.6 <= 1.05 * pace
    assert 0.95 * pace <= (look("frames_of(1, 800)") - second) / 0.8 <= 1.05 * pace  # a frame that came late
    page.keyboard.press("ArrowUp")
    assert page.text_content("#rate") == "150 words a minute"
    page.keyboard.press(" ")
    held = look("scrollY")
    assert look("frames_of(10, 16)") == held
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
