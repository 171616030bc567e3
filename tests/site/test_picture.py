"""The drawing of a dish: the same for the same dish, inside its frame, in the colours of its foods."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest

from spoonproof.model.recipe import TEXTURES
from spoonproof.model.table import Row
from spoonproof.site import paint
from spoonproof.site.album import sound_png
from spoonproof.site.colour import mix, parse, show
from spoonproof.site.larder import Palette
from spoonproof.site.picture import BOWL, PlatePart, draw
from spoonproof.site.shapes import Disc, Line, Patch, is_drawing, to_svg
from tests.each import each
from tests.site.sample import palette

PARTS = [PlatePart("red lentils", 150), PlatePart("sweet potato", 400), PlatePart("coriander", 5)]


@each("texture", [*TEXTURES, "", "something else"])
def test_every_texture_is_drawn_inside_the_bowl(texture: str) -> None:
    shapes = draw("pot", texture, PARTS, palette())
    svg = to_svg(shapes)
    ET.fromstring(svg)
    assert is_drawing(svg)
    assert "style" not in svg and "script" not in svg and "href" not in svg
    served = shapes[shapes.index(next(s for s in shapes if isinstance(s, Disc) and s.radius == 109)) + 1 :]
    centre = [
        s
        for s in served
        if isinstance(s, Patch) and all(abs(p.x - BOWL.x) < 115 and abs(p.y - BOWL.y) < 115 for p in s.points)
    ]
    assert centre
    for shape in centre:
        assert all((p.x - BOWL.x) ** 2 + (p.y - BOWL.y) ** 2 < 112**2 for p in shape.points)


def test_the_same_dish_gives_the_same_drawing_and_another_another() -> None:
    assert draw("a", "mashed", PARTS, palette()) == draw("a", "mashed", PARTS, palette())
    assert draw("a", "mashed", PARTS, palette()) != draw("b", "mashed", PARTS, palette())


def test_the_longest_word_decides_the_colour_and_unknown_foods_have_a_quiet_one() -> None:
    colours = palette()
    assert colours.of("sweet-potato-boiled") == colours.of("sweet potatoes")
    assert colours.of("sweet potato") != colours.of("potato")
    assert colours.of("dragonwort").shape == "none"


def test_a_colour_that_is_none_names_file_and_line() -> None:
    row = Row(
        {"word": "pear", "cooked": "green", "raw": "#ffffff", "skin": "#ffffff", "shape": "round"}, "colours.csv", 7
    )
    with pytest.raises(ValueError, match=r"colours\.csv:7: 'green'"):
        Palette.from_rows([row])


def test_colours_mix_like_food() -> None:
    assert show(parse("#e0913a")) == "#e0913a"
    red, green, _ = mix([(parse("#e68a34"), 1), (parse("#4c6b32"), 1)])
    assert red > green > 90  # carrot and spinach make olive, not grey
    with pytest.raises(ValueError, match="not a colour"):
        parse("e0913a")


def test_a_dish_of_nothing_is_still_a_bowl() -> None:
    assert any(isinstance(s, Line) for s in draw("x", "smooth", [], palette()))


def test_previews_have_the_sizes_search_engines_ask_for_and_the_same_bytes() -> None:
    image = pytest.importorskip("PIL.Image", reason="Pillow is not installed: no previews to look at")
    import io

    made = paint.previews(draw("pot", "lumpy", PARTS, palette()))
    assert made == paint.previews(draw("pot", "lumpy", PARTS, palette()))
    for name, width, height in paint.PREVIEWS:
        assert sound_png(made[name])
        with image.open(io.BytesIO(made[name])) as opened:
            assert opened.size == (width, height) and width * height >= 50_000


def test_a_damaged_preview_is_not_taken_over() -> None:
    pytest.importorskip("PIL", reason="Pillow is not installed")
    body = paint.previews(draw("pot", "smooth", PARTS, palette()))["16x9"]
    assert sound_png(body)
    assert not sound_png(body[:-20]) and not sound_png(b"") and not sound_png(b"GIF89a")
    middle = len(body) // 2
    assert not sound_png(body[:middle] + bytes([body[middle] ^ 1]) + body[middle + 1 :])


def test_what_lies_under_every_dish_comes_out_as_if_painted_shape_by_shape() -> None:
    pytest.importorskip("PIL", reason="Pillow is not installed")
    from PIL import Image, ImageDraw

    from spoonproof.site import underlay

    underlay._laid.cache_clear()
    size = (paint.MASTER * paint.FINE * paint.OVER, 360 * paint.FINE * paint.OVER)
    for foods, texture in ((["carrot"], "thick"), (["beetroot", "oats"], "soft finger food")):
        shapes = draw("pot", texture, [PlatePart(food, 100) for food in foods], palette())[: paint.UNDER]
        plain = Image.new("RGB", size, (255, 255, 255))
        covers, mixes = ImageDraw.Draw(plain), ImageDraw.Draw(plain, "RGBA")
        for shape in shapes:
            paint.put(covers if shape.opacity >= 1 else mixes, shape, paint.ink(shape))
        assert underlay.painted(shapes, size).tobytes() == plain.tobytes()
    assert underlay._laid.cache_info().misses == 1, "the outlines under two dishes differ: they are laid out each time"
