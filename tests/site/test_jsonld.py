"""Structured data: valid by the vocabulary, complete by what search engines ask, left out when too thin."""

from __future__ import annotations

import dataclasses
import json
from typing import Any

import pytest

from spoonproof.site import jsonld
from spoonproof.site.view import Chapter, Film, NutrientRow, Picture, Run
from spoonproof.site.view_site import Site
from tests.each import each
from tests.site import sample
from tests.site.vocabulary import RECOMMENDED_RECIPE, faults


def recipe() -> dict[str, Any]:
    blocks = [json.loads(block) for block in jsonld.blocks(sample.lentil_pot(), sample.site())]
    return next(block for block in blocks if block["@type"] == "Recipe")


def test_every_block_is_valid_by_the_vocabulary() -> None:
    blocks = [json.loads(b) for page in sample.site().recipes for b in jsonld.blocks(page, sample.site())]
    blocks.append(json.loads(jsonld.index(sample.site())))
    blocks.append(json.loads(jsonld.index(Site(title="No address"))))
    assert [fault for block in blocks for fault in faults(block)] == []
    assert {"Recipe", "BreadcrumbList", "ItemList", "WebSite"} == {block["@type"] for block in blocks}


def test_a_full_page_has_what_search_engines_recommend() -> None:
    block = recipe()
    assert not [name for name in RECOMMENDED_RECIPE if not block.get(name)]
    assert block["recipeYield"][0] == "4"
    assert block["nutrition"]["calories"] == "104 kcal"
    assert all(url.startswith("https://lockside-larder.example/pictures/") for url in block["image"])
    assert all(
        "Step" not in step["text"] and step["url"].endswith(f"#step-{n}")
        for n, step in enumerate(block["recipeInstructions"], 1)
    )
    assert [c["startOffset"] for c in block["video"]["hasPart"]] == [0, 10, 60]
    assert len({c["url"] for c in block["video"]["hasPart"]}) == 3
    assert block["citation"][1]["url"].startswith("http")


@each(
    ("change", "said"),
    [
        ({"@type": "Dish"}, "unknown type"),
        ({"ingredients": "x"}, "superseded"),
        ({"additionalProperty": "x"}, "unknown property"),
        ({"image": ""}, "lacks image"),
        ({"totalTime": "38 minutes"}, "no duration"),
        ({"startOffset": 3}, "not a property of Recipe"),
        ({"author": 7}, "no number"),
        ({"dateModified": "20 November"}, "no date"),
    ],
)
def test_the_check_itself_finds_faults(change: dict[str, Any], said: str) -> None:
    assert any(said in fault for fault in faults(recipe() | change))


def test_too_thin_a_page_gets_no_recipe_block_and_says_what_lacks() -> None:
    page = sample.pear_mash()  # no preview picture
    kinds = [json.loads(block)["@type"] for block in jsonld.blocks(page, sample.site())]
    assert kinds == ["BreadcrumbList"]
    assert jsonld.missing(page, sample.site()) == ("a picture with a full address",)
    assert jsonld.blocks(page, Site(title="No address")) == []
    assert jsonld.missing(dataclasses.replace(sample.lentil_pot(), title=(Run(" "),)), sample.site()) == ("a title",)


def test_a_figure_that_covers_only_part_of_the_dish_is_not_given_as_its_value() -> None:
    page = sample.lentil_pot()
    assert page.nutrients is not None
    row = NutrientRow("energy_kcal", "Energy", "80", "kcal", "at least", coverage=0.7)
    thin = dataclasses.replace(page, nutrients=dataclasses.replace(page.nutrients, rows=(row,)))
    assert "nutrition" not in jsonld.recipe(thin, sample.site())


def test_a_video_without_a_day_is_left_out_and_chapters_never_share_a_start() -> None:
    page = dataclasses.replace(sample.lentil_pot(), film=Film("https://video.example/a", "the pot"), published="")
    assert "video" not in jsonld.recipe(page, sample.site())
    chapters = (Chapter(0, 9, "A"), Chapter(0.4, 20, "B"), Chapter(20, 20, "C"), Chapter(21, 40, "D"))
    film = Film("https://v.example/a", "x", uploaded="2026-11-02", seconds=40, chapters=chapters)
    block = jsonld.recipe(dataclasses.replace(page, film=film), sample.site())["video"]
    assert [c["startOffset"] for c in block["hasPart"]] == [0, 21]
    assert faults(block) == []


def test_times_come_together_and_add_up() -> None:
    assert "cookTime" not in recipe() and "prepTime" not in recipe()
    block = jsonld.recipe(dataclasses.replace(sample.lentil_pot(), minutes=70, cook=55), sample.site())
    assert (block["prepTime"], block["cookTime"], block["totalTime"]) == ("PT15M", "PT55M", "PT1H10M")
    assert faults(block) == []


def test_chapters_of_a_film_on_the_page_lead_to_the_page() -> None:
    chapters = (Chapter(0, 12, "Hook"), Chapter(12, 40, "Into the pan"))
    film = Film("videos/pot.mp4", "x", True, "2026-11-02", 40, chapters=chapters, kind="video/mp4")
    block = jsonld.recipe(dataclasses.replace(sample.lentil_pot(), film=film), sample.site())["video"]
    page = "https://lockside-larder.example/recipes/red-lentil-and-sweet-potato-pot.html"
    assert block["contentUrl"] == "https://lockside-larder.example/videos/pot.mp4" and "url" not in block
    assert [clip["url"] for clip in block["hasPart"]] == [f"{page}?t=0", f"{page}?t=12"]
    assert faults(block) == []


def test_a_picture_too_small_for_search_engines_does_not_count() -> None:
    small = dataclasses.replace(sample.lentil_pot(), social=(Picture("pictures/a.jpg", 200, 200),))
    assert jsonld.missing(small, sample.site()) == ("a picture with a full address",)


@pytest.mark.parametrize(
    ("minutes", "text"), [(0, "PT0S"), (5, "PT5M"), (65, "PT1H5M"), (60, "PT1H"), (1.5, "PT1M30S")]
)
def test_durations(minutes: float, text: str) -> None:
    assert jsonld.duration(minutes) == text


def test_nothing_in_a_block_can_end_its_element() -> None:
    text = jsonld.dump({"name": "</script><!--<script> & \u2028\u2029"})
    assert not set("<>&\u2028\u2029") & set(text)
    assert json.loads(text)["name"] == "</script><!--<script> & \u2028\u2029"
