"""Shapes to pixels with Pillow, for link previews and search engines, which show no SVG."""

from __future__ import annotations

import io
from collections.abc import Sequence
from importlib import util
from typing import Any

from spoonproof.site.shapes import HEIGHT, Disc, Line, Patch, Point, Shape, flatten

MASTER = 640
"""Width of the scene that is painted, in the frame's units; the frame's 480 lie in its middle."""

OVER = 4
"""Pixels painted for one unit, before it is made smaller (smooth edges)."""

PREVIEWS = (("16x9", 1200, 675), ("4x3", 1200, 900), ("1x1", 1200, 1200))
"""Name, width and height of each preview: the three shapes that search engines ask for."""

CENTRE = 226
"""Where the bowl's middle is: what every preview keeps in view."""


def available() -> bool:
    """Whether Pillow is installed (the extra ``pictures``)."""
    return util.find_spec("PIL") is not None


def version() -> str:
    """Part of a preview's name: another painter may give other bytes."""
    from PIL import __version__

    return str(__version__)


def previews(shapes: Sequence[Shape]) -> dict[str, bytes]:
    """The three previews as PNG, by name."""
    from PIL import Image

    master = _paint(shapes)
    out = {}
    for name, width, height in PREVIEWS:
        wide = HEIGHT * width / height  # in the frame's units
        left = min(max(CENTRE - wide / 2 + (MASTER - 480) / 2, 0), MASTER - wide)
        box = (round(left * OVER), 0, round((left + wide) * OVER), HEIGHT * OVER)
        picture = master.crop(box).resize((width, height), Image.Resampling.LANCZOS)
        file = io.BytesIO()
        picture.quantize(160, method=Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE).save(
            file, "PNG", optimize=True
        )
        out[name] = file.getvalue()
    return out


def _paint(shapes: Sequence[Shape]) -> Any:
    from PIL import Image, ImageDraw

    picture = Image.new("RGB", (MASTER * OVER, HEIGHT * OVER), (255, 255, 255))
    pen = ImageDraw.Draw(picture, "RGBA")

    def at(p: Point) -> tuple[float, float]:
        return (p.x + (MASTER - 480) / 2) * OVER, p.y * OVER

    for shape in shapes:
        alpha = round(255 * shape.opacity)
        if isinstance(shape, Disc):
            x, y = at(shape.centre)
            r = shape.radius * OVER
            pen.ellipse((x - r, y - r, x + r, y + r), fill=(*shape.fill, alpha))
        elif isinstance(shape, Patch):
            outline = shape.points if shape.sharp else flatten(shape.points, True)
            pen.polygon([at(p) for p in outline], fill=(*shape.fill, alpha))
        elif isinstance(shape, Line):
            _stroke(picture, [at(p) for p in flatten(shape.points, False)], shape, alpha)
    return picture


def _stroke(picture: Any, points: list[tuple[float, float]], line: Line, alpha: int) -> None:
    """A line with round ends and joints, laid on once so that overlaps don't darken."""
    from PIL import Image, ImageDraw

    width = line.width * OVER
    left = max(0, int(min(x for x, _ in points) - width))
    top = max(0, int(min(y for _, y in points) - width))
    right = min(picture.width, int(max(x for x, _ in points) + width) + 1)
    bottom = min(picture.height, int(max(y for _, y in points) + width) + 1)
    if right <= left or bottom <= top:
        return
    mask = Image.new("L", (right - left, bottom - top), 0)
    pen = ImageDraw.Draw(mask)
    moved = [(x - left, y - top) for x, y in points]
    pen.line(moved, fill=alpha, width=max(1, round(width)), joint="curve")
    for x, y in (moved[0], moved[-1]):
        pen.ellipse((x - width / 2, y - width / 2, x + width / 2, y + width / 2), fill=alpha)
    picture.paste(line.colour, (left, top), mask)
