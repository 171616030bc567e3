"""A person's afternoon at the desk, in a real Chromium: from an empty folder to a page and a printed script."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from tests.desk.conftest import Served, until

pytestmark = [pytest.mark.browser, pytest.mark.timeout(240)]

RECIPE = """---
title: Swede and red lentil mash
summary: Swede and lentils, crushed soft.
ages: 7-9 months
texture: mashed
next: {texture: lumpy, from: 9 months, how: crush it less}
makes: 6 x 60 g
foods:
  - 250 g swede, peeled, 1 cm dice
  - 60 g split red lentils
  - 300 ml water
  - 1 tbsp honey
  - 2 tsp rapeseed oil   # the cold-pressed one
steps:
  - Put the swede, the lentils and the water in a pan and bring to the boil.
  - Simmer, covered, for 25-30 minutes, until a cube of swede squashes between finger and thumb.
  - Stir in the honey.
  - Let it cool for 5 minutes.
  - Mash everything with the oil.
keeps: fridge 48 h, freezer 1 month
film:
  runs: 120 s
---
Swede boosts immunity. A mash for grey evenings.
"""
KEY = "swede-and-red-lentil-mash"
CAPTIONS = """WEBVTT

00:00:01.000 --> 00:00:04.000
Carrots cure colds.

00:01:05.000 --> 00:01:09.000
Honey is fine from six months.
"""


def test_from_an_empty_folder_to_a_published_page_and_a_printed_script(chromium: Any, desk: Served) -> None:
    context = chromium.new_context(viewport={"width": 1280, "height": 900})
    context.set_default_timeout(90_000)  # a busy machine is no fault of the desk's
    page = context.new_page()
    said: list[str] = []
    asked: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(desk.address)
    page.get_by_role("heading", name="Recipes", level=1).wait_for()
    assert "token" not in page.url

    # Start a recipe, write it, and hear what is wrong while typing.
    page.get_by_label("A new one, called").fill("Swede and red lentil mash")
    page.get_by_role("button", name="Start it").click()
    file = desk.root / "recipes" / f"{KEY}.md"
    assert file.is_file()
    text = page.get_by_label("The recipe’s text")
    text.fill(RECIPE)
    honey = page.locator(".findings li", has_text="botulism")
    honey.wait_for()
    assert page.locator("#kept").inner_text() == "Not saved yet"
    assert "250 g" in page.locator("ul.echo li").first.inner_text()
    assert "25-30 min" in page.locator("ol.echo").inner_text()

    # A claim is underlined; the cursor in it opens its trail; its wording is taken over with one click.
    assert page.locator(".under mark.mend").first.inner_text() == "Swede boosts immunity"
    at = RECIPE.index("boosts")
    text.evaluate("(area, at) => { area.focus(); area.setSelectionRange(at, at); }", at)
    page.keyboard.press("ArrowRight")
    claim = page.locator(".claims details[open]", has_text="Swede boosts immunity")
    claim.wait_for()
    assert "Register entry" in claim.inner_text() or claim.get_by_text("How this was judged").is_visible()
    claim.get_by_role("button", name="Take this wording over").click()
    until(page, "!document.querySelector('#text').value.includes('boosts')")
    assert "normal function of the immune system. A mash" in text.input_value()

    # A remedy with one click; the step that names it by hand; a field by form. Comments stay.
    honey.get_by_role("button", name="Put it right").click()
    until(page, "!/tbsp honey/.test(document.querySelector('#text').value)")
    text.fill(text.input_value().replace("  - Stir in the honey.\n", ""))
    page.get_by_text("Fill in by form").click()
    page.get_by_label("Makes").fill("8 x 60 g")
    page.get_by_label("Makes").press("Enter")
    until(page, "document.querySelector('#text').value.includes('makes: 8 x 60 g')")
    until(page, "!document.querySelector('.findings li.error')")
    page.keyboard.press("Control+s")
    until(page, "document.querySelector('#kept').textContent === 'Saved'")
    written = file.read_text(encoding="utf-8")
    assert "honey" not in written and "oil   # the cold-pressed one" in written and "makes: 8 x 60 g" in written
    assert "next: {texture: lumpy, from: 9 months, how: crush it less}" in written
    assert not list((desk.root / ".spoonproof").rglob("*.json")), "what is saved is no longer kept as unsaved"

    # See it: figures, timeline, the page at phone width, the script with its clock.
    page.get_by_role("link", name="See", exact=True).click()
    phone = page.frame_locator("iframe.phone")
    assert phone.get_by_role("heading", level=1).inner_text() == "Swede and red lentil mash"
    assert page.locator("iframe.phone").evaluate("frame => frame.clientWidth") <= 390
    page.locator("section", has_text="The cooking").locator("svg").first.wait_for()
    page.get_by_text("Every figure").click()
    page.get_by_role("rowheader", name="iron, mg").wait_for()
    page.get_by_role("rowheader", name="0:00", exact=True).wait_for()

    # Listen to an old film, and write what to post.
    page.get_by_role("link", name="Listen").click()
    page.get_by_label("Caption file").set_input_files(
        {"name": "old.vtt", "mimeType": "text/vtt", "buffer": CAPTIONS.encode()}
    )
    page.get_by_role("heading", name="2 claims heard").wait_for()
    assert page.locator(".claims time").all_inner_texts() == ["0:01", "1:05"]
    page.get_by_role("checkbox", name="Mend “Carrots cure colds”").uncheck()
    page.get_by_role("button", name="Write the correction").click()
    correction = page.locator("#correction").input_value()
    assert "Honey" in correction and "1:05" in correction and "Carrots" not in correction

    # A reply to a comment.
    page.get_by_role("link", name="Comments").click()
    page.get_by_label("Your reply").fill("Honey is perfectly safe for a baby of six months.")
    page.get_by_role("button", name="See what it claims").click()
    page.locator(".claims .mend").first.wait_for()
    assert page.locator(".claims .mend").count() == 1

    # An entry of the register of her own; what is missing is told, and nothing is written.
    page.get_by_role("link", name="Register").click()
    page.get_by_role("link", name="Add an entry").click()
    page.get_by_label("Its name").fill("Swede mends knees")
    page.get_by_label("Words it answers").fill("good for the knees, good for your knees")
    page.get_by_label("Why, in a sentence").fill("No study shows that a root mends knees.")
    page.get_by_label("Where in it").fill("p. 12")
    page.get_by_role("button", name="Check and save").click()
    assert "source it rests on" in page.get_by_role("alert").inner_text()
    assert not (desk.root / "claims").exists()
    page.get_by_label("Or a new one: title").fill("Roots and joints, an overview")
    page.get_by_label("Who published it").fill("Moth Institute")
    page.get_by_label("Year").fill("2024")
    page.get_by_role("button", name="Check and save").click()
    page.get_by_role("heading", name="swede mends knees").wait_for()
    page.goto(f"{desk.origin}/comments")
    page.get_by_label("Your reply").fill("Swede is good for your knees.")
    page.get_by_role("button", name="See what it claims").click()
    page.get_by_text("No study shows that a root mends knees.").first.wait_for(state="attached")

    # New foods in their order, moved by hand; the filming day, and what breaks.
    page.get_by_role("link", name="New foods").click()
    for name in ("Potato and courgette mash", "Swede and red lentil mash"):
        page.get_by_role("checkbox", name=name).check()
    page.get_by_role("button", name="Make the calendar").click()
    page.get_by_role("heading", name=re.compile(r"\d+ days")).wait_for()
    page.locator(".moves li").first.get_by_role("button", name="later").click()
    page.get_by_role("heading", name="What your order changes").wait_for()
    page.get_by_role("link", name="Filming day").click()
    page.get_by_role("checkbox", name="Swede and red lentil mash").check()
    page.get_by_role("button", name="Plan the day").click()
    page.get_by_label(re.compile("^Start of: Mash")).fill("09:31")
    page.get_by_role("button", name="See what breaks").click()
    assert "before this is done" in page.locator(".told.clash").inner_text()

    # A dietitian signs off; the recipe carries the version.
    page.goto(f"{desk.origin}/review/{KEY}")
    page.get_by_label("Read over by").fill("R. Okoro, dietitian")
    page.get_by_role("button", name="Sign off").click()
    page.get_by_text("Signed off by R. Okoro, dietitian").first.wait_for()
    assert "has lapsed" not in page.content()
    assert re.search(r"review:\n  who: R\. Okoro, dietitian\n", file.read_text(encoding="utf-8"))

    # Out: the site, and the film package; the script on paper.
    page.get_by_role("link", name="Out").click()
    page.get_by_role("button", name="Publish the site").click()
    page.locator(".ended.done").wait_for(timeout=120_000)
    made = desk.root / "out" / "site" / "recipes" / f"{KEY}.html"
    assert "Swede and red lentil mash" in made.read_text(encoding="utf-8")
    assert desk.get("/site/index.html").code == 200
    page.get_by_label("Recipe", exact=True).fill(KEY)
    page.get_by_role("button", name="Make its film package").click()
    page.get_by_role("link", name="script to print").wait_for(timeout=120_000)
    page.goto(f"{desk.origin}/film/{KEY}/script.html")
    assert page.pdf()[:5] == b"%PDF-" and "Simmer, covered" in page.inner_text("main")
    assert (desk.root / "out" / "film" / KEY / "captions.vtt").is_file()

    assert not said, said
    assert all(url.startswith((desk.origin, "data:")) for url in asked), "nothing is fetched from anywhere else"
    context.close()


def test_a_changed_recipe_lapses_its_sign_off(desk: Served) -> None:
    key = "potato-and-courgette-mash"
    path: Path = desk.root / "recipes" / f"{key}.md"
    base = re.search(r'name="base" value="([0-9a-f]+)"', desk.get(f"/review/{key}").body)
    assert base is not None
    form = {"X-Desk-Token": desk.token, "Origin": desk.origin, "Content-Type": "application/x-www-form-urlencoded"}
    assert desk.ask("POST", f"/review/{key}", form, f"who=R.+Okoro&base={base[1]}").code == 303
    assert "has lapsed" not in desk.get(f"/review/{key}").body
    assert desk.ask("POST", f"/review/{key}", form, f"who=R.+Okoro&base={base[1]}").code == 409, "it was another file"
    path.write_text(path.read_text(encoding="utf-8").replace("300 g floury", "310 g floury"), encoding="utf-8")
    assert "has lapsed" in desk.get(f"/review/{key}").body
