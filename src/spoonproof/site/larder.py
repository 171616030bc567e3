"""Foods as they lie on the cloth before cooking: their colours, and a simple drawing of each kind of shape."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial
from random import Random

from spoonproof.cache import hashed
from spoonproof.model.record import NamedTuple, dataclass
from spoonproof.model.table import Row
from spoonproof.site.colour import RGB, lighter, parse
from spoonproof.site.shapes import Disc, Line, Patch, Point, Shape, around, moved, put


class FoodColours(NamedTuple):
    """Cooked, raw and skin colour of a food, and the shape it is drawn in when raw."""

    cooked: RGB
    raw: RGB
    skin: RGB
    shape: str


@dataclass(frozen=True, slots=True)
class Palette:
    """Food words to colours; the longest word that begins a word of the food's name wins. ``stamp`` stands for all of
    them."""

    rows: Mapping[str, FoodColours]
    stamp: str = ""

    @classmethod
    def from_rows(cls, rows: Iterable[Row]) -> Palette:
        """From ``colours.csv``; ValueError names file and line of a colour that is none."""
        out = {}
        for row in rows:
            try:
                cooked, raw, skin = (parse(row.text(column)) for column in ("cooked", "raw", "skin"))
            except ValueError as error:
                raise ValueError(f"{row.file}:{row.line}: {error}") from None
            out[row.text("word")] = FoodColours(cooked, raw, skin, row.text("shape"))
        return cls(out, hashed(repr(out)))

    def of(self, name: str) -> FoodColours:
        """Colours of a food by its name or id; a quiet oat colour where the table knows none."""
        text = " " + name.lower().replace("-", " ")
        known = [word for word in self.rows if f" {word}" in text]
        if not known:
            return FoodColours((222, 200, 160), (228, 208, 170), (200, 175, 130), "none")
        return self.rows[max(known, key=lambda word: (len(word), word))]


def blob(centre: Point, radius: float, rng: Random, wobble: float, count: int = 11) -> tuple[Point, ...]:
    x, y = centre
    dice, cos, sin = rng.random, math.cos, math.sin
    turn = dice() * math.tau
    out = []
    for k in range(count):
        angle = turn + math.tau * k / count
        across = radius * (1 + wobble * (dice() - 0.5)) * cos(angle)
        out.append(put((x + across, y + radius * (1 + wobble * (dice() - 0.5)) * sin(angle))))
    return tuple(out)


def raw(colours: FoodColours, at: Point, size: float, rng: Random) -> list[Shape]:
    """A food as it was bought, lying on the cloth at ``at``, about ``size`` in radius."""
    return _SHAPES.get(colours.shape, _round)(colours, _Spot(at, size, rng.random() * math.tau), rng)


class _Spot(NamedTuple):
    """Where a food lies: its middle, size, and how it is turned."""

    at: Point
    size: float
    turn: float

    def put(self, u: float, v: float) -> Point:
        """A point of the food's own frame (1 is its size) on the picture."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        return Point(self.at.x + self.size * (u * cos - v * sin), self.at.y + self.size * (u * sin + v * cos))


def _shadow(points: Iterable[Point]) -> Patch:
    return Patch(moved(points, 2, 4), (60, 60, 70), 0.16)


_TAPER = ((-1.3, 0), (-1, -0.36), (-0.3, -0.33), (0.7, -0.18), (1.5, 0), (0.7, 0.18), (-0.3, 0.33), (-1, 0.36))
_BLOCK = ((-1.1, -0.5), (0, -0.66), (1.05, -0.45), (1.15, 0.3), (0.2, 0.66), (-1, 0.5))
_HEADS = ((-0.6, 0), (0, -0.5), (0.6, 0), (0.1, 0.15), (-0.25, -0.3), (0.35, -0.3))


def _long(colours: FoodColours, spot: _Spot, _rng: Random) -> list[Shape]:
    body = tuple(spot.put(u, v) for u, v in _TAPER)
    rings = [
        Line((spot.put(u, -0.2), spot.put(u + 0.05, -0.02)), lighter(colours.skin, -0.1), 1.4, 0.5)
        for u in (-0.6, -0.1, 0.45)
    ]
    glint = Line((spot.put(-0.9, -0.15), spot.put(0.6, -0.06)), lighter(colours.skin, 0.1), 3, 0.5)
    return [_shadow(body), Patch(body, colours.skin), *rings, glint]


def _leaves(
    colours: FoodColours, spot: _Spot, rng: Random, leans: Sequence[float], length: float, width: float
) -> list[Shape]:
    out: list[Shape] = []
    outline = ((0, 0), (0.35, -1), (0.75, -0.7), (1, 0), (0.75, 0.7), (0.35, 1))
    for lean in leans:
        c, s = math.cos(lean), math.sin(lean)
        leaf = tuple(spot.put(length * u * c - width * v * s, length * u * s + width * v * c) for u, v in outline)
        out += [_shadow(leaf), Patch(leaf, lighter(colours.raw, (rng.random() - 0.5) * 0.06))]
        vein = (spot.put(0, 0), spot.put(length * 0.85 * c, length * 0.85 * s))
        out.append(Line(vein, lighter(colours.raw, 0.14), 1.6, 0.8))
    return out


def _scatter(spot: _Spot, rng: Random) -> list[Point]:
    out = []
    for _ in range(16):
        r, angle = spot.size * 1.05 * math.sqrt(rng.random()), rng.random() * math.tau
        out.append(Point(spot.at.x + r * math.cos(angle), spot.at.y + r * math.sin(angle)))
    return out


def _lens(colours: FoodColours, spot: _Spot, rng: Random) -> list[Shape]:
    out: list[Shape] = []
    for centre in _scatter(spot, rng):
        fill = lighter(colours.raw, (rng.random() - 0.5) * 0.08)
        out.append(Disc(Point(centre.x + 0.8, centre.y + 1.8), 4.2, (60, 60, 70), 0.16))
        out += [Disc(centre, 4.2, fill), Disc(Point(centre.x - 1, centre.y - 1.2), 1.6, lighter(fill, 0.08), 0.8)]
    return out


def _grain(colours: FoodColours, spot: _Spot, rng: Random) -> list[Shape]:
    out: list[Shape] = []
    for centre in _scatter(spot, rng):
        lean = rng.random() * math.pi
        dx, dy = 3.4 * math.cos(lean), 3.4 * math.sin(lean)
        fill = lighter(colours.raw, (rng.random() - 0.5) * 0.08)
        out.append(Line((Point(centre.x - dx, centre.y - dy), Point(centre.x + dx, centre.y + dy)), fill, 4.6))
    return out


def _floret(colours: FoodColours, spot: _Spot, rng: Random) -> list[Shape]:
    out: list[Shape] = [Line((spot.at, spot.put(0.2, 1.3)), lighter(colours.raw, 0.16), spot.size * 0.5)]
    for u, v in _HEADS:
        head = blob(spot.put(u, v), spot.size * 0.5, rng, 0.3)
        out.append(Patch(head, lighter(colours.raw, (rng.random() - 0.5) * 0.1)))
    return out


def _slab(colours: FoodColours, spot: _Spot, _rng: Random) -> list[Shape]:
    slab = tuple(spot.put(u, v) for u, v in _BLOCK)
    grain = [
        Line((spot.put(u, -0.4), spot.put(u + 0.2, 0.4)), lighter(colours.raw, 0.07), 2.2, 0.8)
        for u in (-0.7, -0.2, 0.3, 0.75)
    ]
    return [_shadow(slab), Patch(slab, colours.raw), *grain]


def _round(colours: FoodColours, spot: _Spot, rng: Random) -> list[Shape]:
    rays = [spot.turn + math.tau * k / 8 for k in range(8)]
    return [
        _shadow(around(spot.at, spot.size, 14)),
        Disc(spot.at, spot.size, colours.skin),
        Disc(spot.at, spot.size * 0.87, colours.raw),
        Patch(blob(spot.at, spot.size * 0.4, rng, 0.3), lighter(colours.raw, 0.06), 0.9),
        *(
            Line(
                tuple(
                    Point(spot.at.x + r * spot.size * math.cos(a), spot.at.y + r * spot.size * math.sin(a))
                    for r in (0.3, 0.66)
                ),
                lighter(colours.raw, -0.07),
                spot.size * 0.075,
                0.6,
            )
            for a in rays
        ),
        Disc(Point(spot.at.x - spot.size * 0.3, spot.at.y - spot.size * 0.35), spot.size * 0.12, (255, 255, 255), 0.4),
    ]


def _egg(colours: FoodColours, spot: _Spot, _rng: Random) -> list[Shape]:
    outline = ((-1.15, 0), (-0.75, -0.72), (0.1, -0.9), (0.85, -0.6), (1.1, 0), (0.85, 0.6), (0.1, 0.9), (-0.75, 0.72))
    white = tuple(spot.put(u, v) for u, v in outline)
    yolk = spot.put(0.16, 0)
    return [
        _shadow(white),
        Patch(white, colours.skin),
        Disc(yolk, spot.size * 0.5, colours.raw),
        Disc(Point(yolk.x - spot.size * 0.14, yolk.y - spot.size * 0.16), spot.size * 0.14, (255, 255, 255), 0.4),
    ]


_SHAPES: Mapping[str, Callable[[FoodColours, _Spot, Random], list[Shape]]] = {
    "long": _long,
    "leaf": partial(_leaves, leans=(-0.5, 0.1, 0.65), length=1.5, width=0.5),
    "herb": partial(_leaves, leans=(-1.1, -0.35, 0.35, 1.1), length=0.95, width=0.3),
    "lens": _lens,
    "grain": _grain,
    "floret": _floret,
    "slab": _slab,
    "egg": _egg,
}
