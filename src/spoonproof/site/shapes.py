"""Shapes that two painters understand: SVG text for the page, pixels for link previews.

Coordinates are in a frame 480 wide and 360 high. A curve is given by points it passes through
(Catmull-Rom, drawn as cubic Béziers), so that both painters see the same line.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from spoonproof.site.colour import RGB, show

WIDTH, HEIGHT = 480, 360


class Point(NamedTuple):
    """A point of the frame."""

    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Disc:
    """A filled circle."""

    centre: Point
    radius: float
    fill: RGB
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Patch:
    """A filled closed curve, or with ``sharp`` a polygon."""

    points: tuple[Point, ...]
    fill: RGB
    opacity: float = 1.0
    sharp: bool = False


@dataclass(frozen=True, slots=True)
class Line:
    """An open curve with round ends."""

    points: tuple[Point, ...]
    colour: RGB
    width: float
    opacity: float = 1.0


Shape = Disc | Patch | Line


def _controls(points: Sequence[Point], closed: bool) -> list[tuple[Point, Point, Point]]:
    """For each stretch of the curve: two control points and its end."""
    count = len(points)
    out = []
    for i in range(count if closed else count - 1):
        if closed:
            before, start, end, after = (points[(i + k) % count] for k in (-1, 0, 1, 2))
        else:
            before, start, end, after = points[max(0, i - 1)], points[i], points[i + 1], points[min(count - 1, i + 2)]
        first = Point(start.x + (end.x - before.x) / 6, start.y + (end.y - before.y) / 6)
        second = Point(end.x - (after.x - start.x) / 6, end.y - (after.y - start.y) / 6)
        out.append((first, second, end))
    return out


def flatten(points: Sequence[Point], closed: bool, steps: int = 8) -> list[Point]:
    """The curve as a polyline."""
    out = [points[0]]
    start = points[0]
    for first, second, end in _controls(points, closed):
        for k in range(1, steps + 1):
            t = k / steps
            a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
            out.append(
                Point(
                    a * start.x + b * first.x + c * second.x + d * end.x,
                    a * start.y + b * first.y + c * second.y + d * end.y,
                )
            )
        start = end
    return out


def _n(value: float) -> str:
    text = f"{value:.1f}"
    text = text[:-2] if text.endswith(".0") else text
    return "0" if text == "-0" else text


def _path(points: Sequence[Point], closed: bool, sharp: bool) -> str:
    head = f"M{_n(points[0].x)} {_n(points[0].y)}"
    if sharp:
        return head + "".join(f"L{_n(p.x)} {_n(p.y)}" for p in points[1:]) + ("Z" if closed else "")
    body = "".join(
        f"C{_n(a.x)} {_n(a.y)} {_n(b.x)} {_n(b.y)} {_n(e.x)} {_n(e.y)}" for a, b, e in _controls(points, closed)
    )
    return head + body + ("Z" if closed else "")


def to_svg(shapes: Iterable[Shape]) -> str:
    """A whole SVG file. No style sheet, no script, no reference to anything outside."""
    out = [f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" width="960" height="720">']
    for shape in shapes:
        opacity = "" if shape.opacity >= 1 else f' opacity="{shape.opacity:.2f}"'
        if isinstance(shape, Disc):
            out.append(
                f'<circle cx="{_n(shape.centre.x)}" cy="{_n(shape.centre.y)}" r="{_n(shape.radius)}"'
                f' fill="{show(shape.fill)}"{opacity}/>'
            )
        elif isinstance(shape, Patch):
            out.append(f'<path d="{_path(shape.points, True, shape.sharp)}" fill="{show(shape.fill)}"{opacity}/>')
        else:
            out.append(
                f'<path d="{_path(shape.points, False, False)}" fill="none" stroke="{show(shape.colour)}"'
                f' stroke-width="{_n(shape.width)}" stroke-linecap="round" stroke-linejoin="round"{opacity}/>'
            )
    out.append("</svg>\n")
    return "\n".join(out)


def around(centre: Point, radius: float, count: int, turn: float = 0.0) -> list[Point]:
    """``count`` points on a circle."""
    return [
        Point(
            centre.x + radius * math.cos(turn + 2 * math.pi * k / count),
            centre.y + radius * math.sin(turn + 2 * math.pi * k / count),
        )
        for k in range(count)
    ]
