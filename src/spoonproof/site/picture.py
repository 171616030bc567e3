"""The dish drawn from its recipe: an enamel bowl seen from above, the colours of its foods, its texture.

A channel without photographs still shows what is in the bowl: a smooth dish has a swirl, a mashed one
the tracks of a fork, a lumpy one lumps in the colours of its foods; beside the bowl lie the foods as
they were bought. The drawing is decoration and claims nothing; the same recipe gives the same drawing.
"""

from __future__ import annotations

import hashlib
import math
from collections.abc import Callable, Iterable, Mapping
from random import Random

from spoonproof.model.record import NamedTuple
from spoonproof.site import larder
from spoonproof.site.colour import RGB, cloth, lighter, mix
from spoonproof.site.larder import FoodColours, Palette, blob
from spoonproof.site.shapes import HEIGHT, WIDTH, Disc, Line, Patch, Point, Shape, moved, put

BOWL = Point(226, 186)
RIM = (40, 68, 120)
ENAMEL = (252, 251, 247)


class PlatePart(NamedTuple):
    """A food of the bowl: its name, its grams (or any weight), and whether it is raw beside the bowl."""

    name: str
    grams: float


def _spread(rng: Random, count: int, radius: float, gap: float) -> list[Point]:
    """Points inside the bowl that keep their distance, from a sunflower with a little disorder."""
    golden = math.pi * (3 - math.sqrt(5))
    turn = rng.random() * math.tau
    out = []
    for k in range(count):
        r = radius * math.sqrt((k + 0.5) / count)
        angle = turn + k * golden
        out.append(
            Point(
                BOWL.x + r * math.cos(angle) + gap * (rng.random() - 0.5),
                BOWL.y + r * math.sin(angle) + gap * (rng.random() - 0.5),
            )
        )
    return out


def _pick(rng: Random, parts: list[tuple[FoodColours, float]]) -> FoodColours:
    at = rng.random() * sum(weight for _, weight in parts)
    for colours, weight in parts:
        at -= weight
        if at <= 0:
            return colours
    return parts[-1][0]


_Parts = list[tuple[FoodColours, float]]


def _smooth(rng: Random, blend: RGB, _parts: _Parts) -> list[Shape]:
    turn = rng.random() * math.tau
    swirl = [
        Point(
            BOWL.x + (6 + 66 * k / 30) * math.cos(turn + 3.6 * math.pi * k / 30),
            BOWL.y + (6 + 66 * k / 30) * math.sin(turn + 3.6 * math.pi * k / 30),
        )
        for k in range(31)
    ]
    low = moved(swirl, 2, 4)
    return [
        Line(low, lighter(blend, -0.07), 13, 0.55),
        Line(tuple(swirl), lighter(blend, 0.05), 11, 0.9),
        Line(moved(swirl[4:], -1.5, -2), lighter(blend, 0.11), 3, 0.7),
    ]


def _thick(rng: Random, blend: RGB, parts: _Parts) -> list[Shape]:
    out: list[Shape] = []
    for k in range(5):
        r = 24 + 14 * k
        start = rng.random() * math.tau
        arc = tuple(
            Point(BOWL.x + r * math.cos(start + a / 9), BOWL.y + r * math.sin(start + a / 9)) for a in range(16)
        )
        out.append(Line(moved(arc, 1, 4), lighter(blend, -0.06), 9, 0.5))
        out.append(Line(arc, lighter(blend, 0.06), 8, 0.85))
    return out + _specks(rng, parts, 14, 1.6, 3.2)


def _specks(rng: Random, parts: _Parts, count: int, low: float, high: float) -> list[Shape]:
    out: list[Shape] = []
    for point in _spread(rng, count, 80, 16):
        fill = lighter(_pick(rng, parts).cooked, (rng.random() - 0.6) * 0.12)
        out.append(Patch(blob(point, low + (high - low) * rng.random(), rng, 0.5, 7), fill, 0.9))
    return out


def _mashed(rng: Random, blend: RGB, parts: _Parts) -> list[Shape]:
    out: list[Shape] = _specks(rng, parts, 46, 3, 8)
    for track in range(4):
        turn = -0.5 + track * 0.42 + 0.2 * rng.random()
        cos, sin = math.cos(turn), math.sin(turn)
        for tine in range(4):
            offset = -66 + track * 40 + tine * 8
            half = math.sqrt(max(0.0, 82**2 - offset**2)) * (0.62 + 0.2 * rng.random())
            line = []
            for k in range(7):
                along = -half + 2 * half * k / 6
                across = offset + 5 * math.sin(along / 22 + track)
                line.append(put((BOWL.x + along * cos - across * sin, BOWL.y + along * sin + across * cos)))
            out.append(Line(moved(line, 1.2, 2), lighter(blend, -0.09), 3.4, 0.5))
            out.append(Line(tuple(line), lighter(blend, 0.07), 2.6, 0.8))
    return out


def _grains(rng: Random, around: Point, fill: RGB, blend: RGB) -> list[Shape]:
    """A few grains or small pulses together: they stay small, however lumpy the dish."""
    out: list[Shape] = []
    for _ in range(7):
        at = Point(around.x + 30 * (rng.random() - 0.5), around.y + 30 * (rng.random() - 0.5))
        shape = blob(at, 3.4 + 1.6 * rng.random(), rng, 0.5, 7)
        out.append(Patch(moved(shape, 0.7, 1.6), lighter(blend, -0.16), 0.4))
        out.append(Patch(shape, lighter(fill, (rng.random() - 0.5) * 0.05)))
    return out


def _pieces(
    count: int, low: float, high: float, corners: int, wobble: float
) -> Callable[[Random, RGB, _Parts], list[Shape]]:
    def draw(rng: Random, blend: RGB, parts: _Parts) -> list[Shape]:
        out: list[Shape] = []
        for point in _spread(rng, count, 80, 10):
            colours = _pick(rng, parts)
            fill = lighter(colours.cooked, (rng.random() - 0.5) * 0.08)
            if colours.shape in ("grain", "lens") and low > 6:
                out += _grains(rng, point, fill, blend)
                continue
            shape = blob(point, low + (high - low) * rng.random(), rng, wobble, corners)
            out.append(Patch(moved(shape, 1.5, 3.5), lighter(blend, -0.16), 0.45))
            out.append(Patch(shape, fill))
            at_x, at_y = point
            inner = tuple([put((at_x + (x - at_x) * 0.55 - 1, at_y + (y - at_y) * 0.5 - 2)) for x, y in shape])
            out.append(Patch(inner, lighter(fill, 0.06), 0.7))
        return out

    return draw


def _fingers(rng: Random, _blend: RGB, parts: _Parts) -> list[Shape]:
    out: list[Shape] = []
    by_weight = sorted(parts, key=lambda part: -part[1])
    # A piece is of a food that makes up much of the dish; what is less shows as flecks in it.
    main = [part for part in by_weight if part[1] >= 0.5 * by_weight[0][1]]
    flecks = [colours for colours, grams in by_weight[len(main) :] if grams >= 0.04 * by_weight[0][1]]
    for k in range(9):
        colours = _pick(rng, main)
        fill = lighter(colours.cooked, (rng.random() - 0.5) * 0.06)
        angle = -0.9 + 0.22 * k + 0.12 * (rng.random() - 0.5)
        centre = Point(BOWL.x - 62 + 15.5 * k + 4 * rng.random(), BOWL.y + 26 * math.sin(k * 0.9) * 0.6)
        long, wide = 40 + 6 * rng.random(), 8.5
        cos, sin = math.cos(angle + math.pi / 2.4), math.sin(angle + math.pi / 2.4)
        outline = []
        for u, v in ((-1, -0.7), (-0.5, -1), (0.5, -1), (1, -0.7), (1, 0.7), (0.5, 1), (-0.5, 1), (-1, 0.7)):
            outline.append(
                Point(centre.x + u * long * cos - v * wide * sin, centre.y + u * long * sin + v * wide * cos)
            )
        out.append(Patch(moved(outline, 2, 5), (90, 80, 70), 0.22))
        out.append(Patch(tuple(outline), fill))
        ridge = (
            Point(centre.x - 0.7 * long * cos + 3 * sin, centre.y - 0.7 * long * sin - 3 * cos),
            Point(centre.x + 0.7 * long * cos + 3 * sin, centre.y + 0.7 * long * sin - 3 * cos),
        )
        out.append(Line(ridge, lighter(fill, 0.09), 3.5, 0.8))
        for at in range(7 if flecks else 0):
            u, v = -0.8 + 0.26 * at + 0.1 * rng.random(), rng.random() - 0.5
            fleck = Point(centre.x + u * long * cos - v * wide * sin, centre.y + u * long * sin + v * wide * cos)
            colour = flecks[at % len(flecks)].cooked
            out.append(Patch(blob(fleck, 2.2 + 1.6 * rng.random(), rng, 0.6, 6), colour, 0.85))
    return out


_TEXTURES: Mapping[str, Callable[[Random, RGB, _Parts], list[Shape]]] = {
    "smooth": _smooth,
    "thick": _thick,
    "mashed": _mashed,
    "lumpy": _pieces(30, 10, 17, 9, 0.45),
    "minced": _pieces(110, 4.5, 7.5, 7, 0.6),
    "soft finger food": _fingers,
    "family food": _pieces(38, 11, 18, 5, 0.5),
}


def _ground(colour: RGB) -> list[Shape]:
    """The cloth, wider than the frame: link previews show more of it."""

    def strip(x: float, width: float) -> Patch:
        lean = 46
        points = (
            Point(x + lean, 0), Point(x + lean + width, 0), Point(x + width - lean, HEIGHT), Point(x - lean, HEIGHT),
        )  # fmt: skip
        return Patch(points, lighter(colour, -0.055), 0.8, sharp=True)

    corners = (Point(-100, 0), Point(WIDTH + 100, 0), Point(WIDTH + 100, HEIGHT), Point(-100, HEIGHT))
    return [Patch(corners, colour, sharp=True), strip(384, 10), strip(402, 3), strip(60, 10), strip(78, 3)]


def _bowl() -> list[Shape]:
    below = Point(BOWL.x + 6, BOWL.y + 12)
    return [
        Disc(below, 138, (40, 40, 60), 0.10),
        Disc(Point(BOWL.x + 4, BOWL.y + 7), 135, (40, 40, 60), 0.14),
        Disc(BOWL, 132, RIM),
        Disc(BOWL, 125, ENAMEL),
        Disc(Point(BOWL.x, BOWL.y + 2), 112, (226, 226, 224), 0.75),
        Disc(Point(BOWL.x + 1, BOWL.y + 4), 109, (240, 239, 236)),
    ]


def _spoon(blend: RGB, rng: Random) -> list[Shape]:
    angle = -0.72 + 0.2 * rng.random()
    cos, sin = math.cos(angle), math.sin(angle)
    tip = Point(404, 262)

    def put(u: float, v: float) -> Point:
        return Point(tip.x + u * sin + v * cos, tip.y + u * cos - v * sin)

    def oval(size: float) -> tuple[Point, ...]:
        return tuple(
            put(size * 15 * math.cos(math.tau * k / 12), size * 23 * math.sin(math.tau * k / 12)) for k in range(12)
        )

    bowl = oval(1.0)
    handle = (put(0, 20), put(1, 60), put(0, 108))
    return [
        Line(moved(handle, 2, 5), (40, 40, 60), 9, 0.14),
        Patch(moved(bowl, 2, 5), (40, 40, 60), 0.14),
        Line(handle, lighter(RIM, 0.12), 8),
        Patch(bowl, lighter(RIM, 0.12)),
        Patch(oval(0.82), lighter(RIM, 0.2)),
        Patch(blob(put(0, -2), 12, rng, 0.3), blend),
        Patch(blob(put(-2, -6), 5.5, rng, 0.3), lighter(blend, 0.08), 0.8),
    ]


def draw(name: str, texture: str, parts: Iterable[PlatePart], palette: Palette) -> list[Shape]:
    """The dish as shapes, back to front. ``name`` (the slug) seeds what is left to chance."""
    rng = Random(int.from_bytes(hashlib.sha256(name.encode()).digest()[:8], "big"))
    foods = [(palette.of(part.name), max(part.grams, 0.1)) for part in parts] or [(palette.of(""), 1.0)]
    # What is poured or stirred in tints the whole, but makes no lumps of its own.
    solid = [food for food in foods if food[0].shape != "none"] or foods
    blend = mix((colours.cooked, grams if colours.shape != "none" else grams / 3) for colours, grams in foods)
    shapes = [*_ground(cloth(blend)), *_bowl()]
    if texture != "soft finger food":
        shapes.append(Patch(blob(Point(BOWL.x + 1, BOWL.y + 5), 97, rng, 0.07, 16), lighter(blend, -0.1), 0.8))
        shapes.append(Patch(blob(BOWL, 95, rng, 0.07, 16), blend))
    shapes += _TEXTURES.get(texture, _thick)(rng, blend, solid)
    herbs = [colours for colours, _ in foods if colours.shape == "herb"]
    for point in _spread(rng, 14, 60, 20) if herbs else ():
        shapes.append(Patch(blob(point, 3.2, rng, 0.7, 6), herbs[0].cooked))
    if texture != "soft finger food":
        # Light from the window lies on what is moist.
        shine = tuple(Point(BOWL.x + 80 * math.cos(a / 10), BOWL.y + 80 * math.sin(a / 10)) for a in range(33, 44))
        shapes += [Line(shine, (255, 255, 255), 7, 0.13), Line(shine[2:9], (255, 255, 255), 3.2, 0.3)]
    glint = tuple(Point(BOWL.x + 118 * math.cos(a / 10), BOWL.y + 118 * math.sin(a / 10)) for a in range(36, 45))
    shapes += [Line(glint, (255, 255, 255), 4, 0.9), *_spoon(blend, rng)]
    beside = [colours for colours, _ in sorted(foods, key=lambda pair: -pair[1]) if colours.shape != "none"][:4]
    spots = ((410, 74, 27), (62, 306, 25), (52, 52, 22), (330, 334, 17))
    for (x, y, size), colours in zip(spots, beside, strict=False):
        shapes += larder.raw(colours, Point(x, y), size, rng)
    return shapes
