"""Colours that mix like food does: OKLab, so that orange and green make olive and not grey mud."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

RGB = tuple[int, int, int]
_Lab = tuple[float, float, float]


def parse(text: str) -> RGB:
    """``#rrggbb`` to numbers; ValueError when it is not one."""
    if len(text) != 7 or text[0] != "#":
        raise ValueError(f"{text!r} is not a colour such as #e0913a")
    return int(text[1:3], 16), int(text[3:5], 16), int(text[5:7], 16)


def show(rgb: RGB) -> str:
    """Numbers to ``#rrggbb``."""
    return f"#{rgb[0] << 16 | rgb[1] << 8 | rgb[2]:06x}"


@lru_cache(maxsize=1024)  # a food's colours come in every dish that it is in
def _to_lab(rgb: RGB) -> _Lab:
    r, g, b = (c / 3294.6 if c <= 10 else ((c / 255 + 0.055) / 1.055) ** 2.4 for c in rgb)
    long = (0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b) ** (1 / 3)
    medium = (0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b) ** (1 / 3)
    short = (0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b) ** (1 / 3)
    return (
        0.2104542553 * long + 0.7936177850 * medium - 0.0040720468 * short,
        1.9779984951 * long - 2.4285922050 * medium + 0.4505937099 * short,
        0.0259040371 * long + 0.7827717662 * medium - 0.8086757660 * short,
    )


def _to_rgb(lab: _Lab) -> RGB:
    light, a, b = lab
    long = (light + 0.3963377774 * a + 0.2158037573 * b) ** 3
    medium = (light - 0.1055613458 * a - 0.0638541728 * b) ** 3
    short = (light - 0.0894841775 * a - 1.2914855480 * b) ** 3
    linear = (
        4.0767416621 * long - 3.3077115913 * medium + 0.2309699292 * short,
        -1.2684380046 * long + 2.6097574011 * medium - 0.3413193965 * short,
        -0.0041960863 * long - 0.7034186147 * medium + 1.7076147010 * short,
    )
    return _byte(linear[0]), _byte(linear[1]), _byte(linear[2])


def _byte(c: float) -> int:
    """A part of linear light, 0 to 1, as a screen wants it."""
    if c <= 0.0031308:
        return round(255 * (12.92 * c)) if c > 0.0 else 0
    return round(255 * (1.055 * c ** (1 / 2.4) - 0.055)) if c < 1.0 else 255


def mix(parts: Iterable[tuple[RGB, float]]) -> RGB:
    """The colour of a blend, weighted; weights must add to more than 0."""
    light = a = b = total = 0.0
    for rgb, weight in parts:
        lab = _to_lab(rgb)
        # Strong pigments tint a pan well beyond their weight.
        weight *= 0.5 + 5 * (lab[1] ** 2 + lab[2] ** 2) ** 0.5
        light, a, b, total = light + lab[0] * weight, a + lab[1] * weight, b + lab[2] * weight, total + weight
    # A blend loses a little of its colour in the arithmetic; the pan does not.
    return _to_rgb((light / total, 1.12 * a / total, 1.12 * b / total))


@lru_cache(maxsize=1024)  # a picture asks for a few of them again and again
def lighter(rgb: RGB, by: float) -> RGB:
    """The colour with ``by`` added to its lightness (-1 to 1), keeping its hue."""
    light, a, b = _to_lab(rgb)
    return _to_rgb((min(1.0, max(0.0, light + by)), a, b))


def cloth(rgb: RGB) -> RGB:
    """A pale linen that a dish of this colour stands out from: warm, turned a little to the far side of its hue."""
    _, a, b = _to_lab(rgb)
    size = max(0.02, (a * a + b * b) ** 0.5)
    return _to_rgb((0.926, 0.006 - 0.016 * a / size, 0.021 - 0.012 * b / size))
