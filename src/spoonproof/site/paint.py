"""Shapes to pixels with Pillow, for link previews and search engines, which show no SVG.

One master is painted at twice its size, made smaller once (smooth edges), given its palette once, and cut to
the three previews: cutting needs no further resampling, so a dish costs one painting.
"""

from __future__ import annotations

import io
import math
from collections.abc import Sequence
from importlib import util
from typing import Any

from spoonproof.site.shapes import HEIGHT, Disc, Line, Patch, Shape, flatten

MASTER = 640
"""Width of the scene that is painted, in the frame's units; the frame's 480 lie in its middle."""

SIDE = (MASTER - 480) / 2

FINE = 2
"""Pixels of a preview for one unit."""

OVER = 2
"""Pixels painted for one pixel of a preview."""

PREVIEWS = (("16x9", 1280, 720), ("4x3", 960, 720), ("1x1", 720, 720))
"""Name, width and height of each preview: the three shapes that search engines ask for."""

UNDER = 11
"""Shapes of a picture, from the first, that lie under every dish: cloth and bowl (see ``picture.draw``)."""

CENTRE = 226
"""Where the bowl's middle is: what every preview keeps in view."""


def available() -> bool:
    """Whether Pillow is installed (the extra ``pictures``)."""
    return util.find_spec("PIL") is not None


def version() -> str:
    """Part of a preview's name: another painter may give other bytes."""
    from PIL import __version__

    return f"{__version__}/2"


def previews(shapes: Sequence[Shape]) -> dict[str, bytes]:
    """The three previews as PNG, by name."""
    from PIL import Image

    master = _paint(shapes).reduce(OVER).quantize(128, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE)
    out = {}
    for name, width, height in PREVIEWS:
        left = round(min(max((CENTRE + SIDE) * FINE - width / 2, 0), MASTER * FINE - width))
        file = io.BytesIO()
        master.crop((left, 0, left + width, height)).save(file, "PNG", compress_level=3)
        out[name] = file.getvalue()
    return out


def _paint(shapes: Sequence[Shape]) -> Any:
    from PIL import ImageDraw

    from spoonproof.site import underlay

    picture = underlay.painted(shapes[:UNDER], (MASTER * FINE * OVER, HEIGHT * FINE * OVER))
    # A pen that mixes looks at every pixel it covers; most of what is drawn hides what lies under it.
    covers, mixes = ImageDraw.Draw(picture), ImageDraw.Draw(picture, "RGBA")
    for shape in shapes[UNDER:]:
        put(covers if shape.opacity >= 1 else mixes, shape, ink(shape))
    return picture


def ink(shape: Shape) -> tuple[int, ...]:
    """The colour of a shape, with its opacity of 255 where something shows through."""
    colour = shape.colour if isinstance(shape, Line) else shape.fill
    return colour if shape.opacity >= 1 else (*colour, round(255 * shape.opacity))


def put(pen: Any, shape: Shape, fill: Any) -> None:
    """Draw a shape with a pen of Pillow."""
    size = FINE * OVER
    if isinstance(shape, Disc):
        x, y, r = (shape.centre.x + SIDE) * size, shape.centre.y * size, shape.radius * size
        pen.ellipse((x - r, y - r, x + r, y + r), fill=fill)
        return
    if isinstance(shape, Patch):
        outline = shape.points if shape.sharp else flatten(shape.points, True)
    else:
        outline = _stroke(flatten(shape.points, False), shape.width / 2)
    pen.polygon([((x + SIDE) * size, y * size) for x, y in outline], fill=fill)


def _stroke(line: Sequence[tuple[float, float]], half: float) -> list[tuple[float, float]]:
    """The outline of a line with round ends: painted in one go, so that overlaps don't darken."""
    left, right = [], []
    for (x0, y0), (x, y), (x1, y1) in zip((line[0], *line), line, (*line[1:], line[-1]), strict=False):
        dx, dy = x1 - x0, y1 - y0
        long = math.hypot(dx, dy) or 1.0
        across, down = -dy / long * half, dx / long * half
        left.append((x + across, y + down))
        right.append((x - across, y - down))
    right.reverse()
    return [*left, *_end(line[-1], left[-1], half), *right, *_end(line[0], right[-1], half)]


def _end(middle: tuple[float, float], start: tuple[float, float], half: float) -> list[tuple[float, float]]:
    """The half circle around an end of a line, from the side ``start`` to the other."""
    turn = math.atan2(start[1] - middle[1], start[0] - middle[0])
    return [
        (middle[0] + half * math.cos(turn - math.pi * k / 8), middle[1] + half * math.sin(turn - math.pi * k / 8))
        for k in range(1, 8)
    ]
