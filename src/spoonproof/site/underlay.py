"""What lies under every dish, laid out once: cloth and bowl keep their outlines from picture to picture, and change
their colours alone.

Each pixel is known by the pile of shapes that shows there. There are few piles: a picture's colours are worked out for
each of them, by the same pens that paint, and put in the places of all its pixels at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import Any

from spoonproof.model.record import NamedTuple, replace
from spoonproof.site.paint import ink, put
from spoonproof.site.shapes import Line, Shape

Size = tuple[int, int]

MOST = 256
"""Piles that an image of bytes can tell apart."""

_BLACK, _WHITE = (0, 0, 0), (255, 255, 255)


class _Laid(NamedTuple):
    """``where``: for each pixel the number of its pile, as an image of bytes; ``piles``: the numbers of the shapes
    that show in each, from below."""

    where: Any
    piles: tuple[tuple[int, ...], ...]


def painted(shapes: Sequence[Shape], size: Size) -> Any:
    """The shapes on white, byte for byte as they come out when they are painted one over the other."""
    from PIL import Image, ImageDraw

    laid = _laid(tuple(_bare(shape) for shape in shapes), size)
    colours = Image.new("RGB", (len(laid.piles), 1), _WHITE)
    covers, mixes = ImageDraw.Draw(colours), ImageDraw.Draw(colours, "RGBA")
    for at, pile in enumerate(laid.piles):
        for number in pile:
            shape = shapes[number]
            (covers if shape.opacity >= 1 else mixes).point((at, 0), fill=ink(shape))
    picture = laid.where.copy()
    picture.putpalette(colours.tobytes())
    return picture.convert("RGB")


def _bare(shape: Shape) -> Shape:
    """The shape without its colour."""
    return replace(shape, colour=_BLACK) if isinstance(shape, Line) else replace(shape, fill=_BLACK)


@lru_cache(maxsize=1)
def _laid(shapes: tuple[Shape, ...], size: Size) -> _Laid:
    """Raises ValueError for more piles than ``MOST``."""
    from PIL import Image, ImageDraw

    where = Image.new("L", size, 0)
    piles: list[tuple[int, ...]] = [()]
    for number, shape in enumerate(shapes):
        mask = Image.new("L", size, 0)
        put(ImageDraw.Draw(mask), shape, 255)
        box = mask.getbbox()
        if box is None:
            continue
        mask, part = mask.crop(box), where.crop(box)
        become = list(range(MOST))
        for at, count in enumerate(part.histogram(mask)):
            if count:
                become[at] = len(piles)
                piles.append((number,) if shape.opacity >= 1 else (*piles[at], number))
        if len(piles) > MOST:
            raise ValueError("more ways to lie over each other than an image of bytes can tell apart")
        where.paste(part.point(become), box, mask)
    return _Laid(where, tuple(piles))
