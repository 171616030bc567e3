"""Shapes that two painters understand: SVG text for the page, pixels for link previews.

Coordinates are in a frame 480 wide and 360 high. A curve is given by points it passes through
(Catmull-Rom, drawn as cubic Béziers), so that both painters see the same line.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Sequence
from functools import partial

from spoonproof.model.record import NamedTuple, dataclass
from spoonproof.site.colour import RGB, show

WIDTH, HEIGHT = 480, 360


class Point(NamedTuple):
    """A point of the frame."""

    x: float
    y: float


put: Callable[[tuple[float, float]], Point] = partial(tuple.__new__, Point)
"""The point of a pair: a picture has a thousand, and naming their fields takes twice as long."""


def moved(points: Iterable[Point], x: float, y: float) -> tuple[Point, ...]:
    """The points, moved by so much."""
    return tuple([put((px + x, py + y)) for px, py in points])


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


def _bends(steps: int) -> tuple[tuple[float, float, float, float], ...]:
    """For each of ``steps`` points along a stretch: the weights of the points before, at start, at end and after."""
    out = []
    for k in range(1, steps + 1):
        t = k / steps
        a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
        out.append((-b / 6, a + b + c / 6, b / 6 + c + d, -c / 6))
    return tuple(out)


_BENDS = {steps: _bends(steps) for steps in (2, 3, 5, 8)}


def flatten(points: Sequence[Point], closed: bool) -> list[tuple[float, float]]:
    """The curve as a polyline, finer where its points are further apart."""
    (x0, y0), (x1, y1) = points[0], points[1]
    apart = abs(x1 - x0) + abs(y1 - y0)
    bends = _BENDS[2 if apart < 4 else 3 if apart < 10 else 5 if apart < 30 else 8]
    out: list[tuple[float, float]] = [points[0]]
    add = out.append
    for (x0, y0), (x1, y1), (x2, y2), (x3, y3) in _stretches(points, closed):
        for e, f, g, h in bends:
            add((e * x0 + f * x1 + g * x2 + h * x3, e * y0 + f * y1 + g * y2 + h * y3))
    return out


def _stretches(points: Sequence[Point], closed: bool) -> Iterable[tuple[Point, Point, Point, Point]]:
    """For each stretch of the curve: the point before it, its start, its end, the point after it."""
    row = (points[-1], *points, points[0], points[1]) if closed else (points[0], *points, points[-1])
    return zip(row, row[1:], row[2:], row[3:], strict=False)


def _path(points: Sequence[Point], closed: bool, sharp: bool) -> str:
    """Path data in tenths of a unit: whole numbers are shorter and quicker to write."""
    end = "Z" if closed else ""
    if sharp:
        return "M" + "L".join(f"{x * 10:.0f} {y * 10:.0f}" for x, y in points) + end
    x, y = points[0]
    before, after = (points[-1], points[1]) if closed else (points[0], points[1])
    # Where the curve stands and how it goes on from there: worked out once for the two stretches that meet there.
    x, y, along, down = x * 10, y * 10, (after[0] - before[0]) / 0.6, (after[1] - before[1]) / 0.6
    numbers = [x, y]
    for _, (x1, y1), (x2, y2), (x3, y3) in _stretches(points, closed):
        x0, y0 = x + along, y + down
        x, y, along, down = x2 * 10, y2 * 10, (x3 - x1) / 0.6, (y3 - y1) / 0.6
        numbers += (x0, y0, x - along, y - down, x, y)
    curves = (len(numbers) - 2) // 6
    return ("M%.0f %.0f" + "C%.0f %.0f %.0f %.0f %.0f %.0f" * curves) % tuple(numbers) + end


_HEAD = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH * 10} {HEIGHT * 10}" width="960" height="720">'
_LINE = re.compile(
    r'<(?:path d="[MLCZ0-9 \-]+"|circle cx="-?[0-9]+" cy="-?[0-9]+" r="[0-9]+") fill="(?:#[0-9a-f]{6}|none)"'
    r'(?: stroke="#[0-9a-f]{6}" stroke-width="[0-9]+" stroke-linecap="round" stroke-linejoin="round")?'
    r'(?: opacity="[0-9.]+")?/>'
)


def is_drawing(svg: str) -> bool:
    """Whether ``to_svg`` could have written this: shapes and nothing else."""
    head, *lines = svg.split("\n")
    return head == _HEAD and lines[-2:] == ["</svg>", ""] and all(_LINE.fullmatch(line) for line in lines[:-2])


def to_svg(shapes: Iterable[Shape]) -> str:
    """A whole SVG file. No style sheet, no script, no reference to anything outside."""
    out = [_HEAD]
    for shape in shapes:
        opacity = "" if shape.opacity >= 1 else f' opacity="{shape.opacity:.2f}"'
        if isinstance(shape, Disc):
            x, y = shape.centre
            out.append(
                f'<circle cx="{x * 10:.0f}" cy="{y * 10:.0f}" r="{shape.radius * 10:.0f}"'
                f' fill="{show(shape.fill)}"{opacity}/>'
            )
        elif isinstance(shape, Patch):
            out.append(f'<path d="{_path(shape.points, True, shape.sharp)}" fill="{show(shape.fill)}"{opacity}/>')
        else:
            out.append(
                f'<path d="{_path(shape.points, False, False)}" fill="none" stroke="{show(shape.colour)}"'
                f' stroke-width="{shape.width * 10:.0f}" stroke-linecap="round" stroke-linejoin="round"{opacity}/>'
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
