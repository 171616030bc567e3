"""How long heat takes to reach the middle of a piece: a lower bound for softness.

Transient conduction from a uniform start into a slab, a long cylinder, a cube or a sphere whose surface meets a
medium at a fixed temperature; series solution of the heat equation (H. S. Carslaw and J. C. Jaeger, Conduction of
Heat in Solids). A cube is the product of three slabs. With no Biot number the surface has the medium's temperature
from the first moment, which is the fastest that conduction can be: condensing steam and boiling water come close.
Nothing is soft before its middle is hot.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache
from typing import Literal

Shape = Literal["slab", "cylinder", "cube", "sphere"]

ALPHA = 1.4e-7  # m²/s, what most vegetables and fruit have
ALPHA_FAST = 1.82e-7  # m²/s, the highest of the table: for the bound
SOFTENING_C = 85.0  # °C: below this the pectins that hold vegetables together hardly give way
KITCHEN_C = 20.0
_TERMS = 12


def centre_ratio(shape: Shape, fourier: float, biot: float = math.inf) -> float:
    """Share of the temperature difference still left at the centre, 0 to 1.

    ``fourier`` is alpha x time / half-thickness², at least 0; ``biot`` is the surface's heat transfer coefficient x
    half-thickness / conductivity. Raises ValueError for negative input.
    """
    if fourier < 0 or biot <= 0:
        raise ValueError("the Fourier number is at least 0, the Biot number above 0")
    if fourier == 0:
        return 1.0
    if shape == "cube":
        return centre_ratio("slab", fourier, biot) ** 3
    if fourier < 0.025:  # the centre has lost less than 0.05 % and the series needs many terms
        return 1.0
    total = sum(c * math.exp(-(z * z) * fourier) for z, c in series(shape, biot))
    return min(1.0, max(0.0, total))


def minutes_to_heat(
    shape: Shape,
    mm: float,
    *,
    alpha: float = ALPHA,
    start_c: float = KITCHEN_C,
    medium_c: float = 100.0,
    centre_c: float = SOFTENING_C,
    biot: float = math.inf,
) -> float:
    """Minutes until the centre of a piece ``mm`` thick has ``centre_c``.

    ``mm`` is the full thickness (slab), diameter (cylinder, sphere) or edge (cube); ``alpha`` in m²/s; temperatures
    in °C. Infinite when the medium is no hotter than ``centre_c``; 0 when the piece is that hot already.
    """
    if mm < 0 or alpha <= 0:
        raise ValueError("thickness is at least 0, thermal diffusivity above 0")
    if start_c >= centre_c or mm == 0:
        return 0.0
    if medium_c <= centre_c:
        return math.inf
    target = (medium_c - centre_c) / (medium_c - start_c)
    half = mm / 2000
    return _fourier_for(shape, target, biot) * half * half / alpha / 60


@lru_cache(maxsize=256)
def _fourier_for(shape: Shape, target: float, biot: float) -> float:
    low, high = 0.0, 1.0
    while centre_ratio(shape, high, biot) > target:
        high *= 2
    for _ in range(60):
        middle = (low + high) / 2
        if centre_ratio(shape, middle, biot) > target:
            low = middle
        else:
            high = middle
    return high


@lru_cache(maxsize=64)
def series(shape: Shape, biot: float) -> tuple[tuple[float, float], ...]:
    """Roots and coefficients of the centre's series, as handbooks tabulate the first (slab, cylinder, sphere)."""
    if shape == "slab":
        return tuple(_slab_term(n, biot) for n in range(_TERMS))
    if shape == "sphere":
        return tuple(_sphere_term(n, biot) for n in range(_TERMS))
    if shape == "cylinder":
        return tuple(_cylinder_term(n, biot) for n in range(6))
    raise ValueError(f"a {shape} has no series of its own")


def _slab_term(n: int, biot: float) -> tuple[float, float]:
    # z tan z = Bi, one root in every [n pi, n pi + pi/2)
    if math.isinf(biot):
        z = (n + 0.5) * math.pi
    else:
        z = _bisect(lambda x: x * math.sin(x) - biot * math.cos(x), n * math.pi, (n + 0.5) * math.pi)
    return z, 4 * math.sin(z) / (2 * z + math.sin(2 * z))


def _sphere_term(n: int, biot: float) -> tuple[float, float]:
    # 1 - z cot z = Bi, one root in every (n pi, n pi + pi)
    if math.isinf(biot):
        z = (n + 1) * math.pi
    else:
        z = _bisect(lambda x: (1 - biot) * math.sin(x) - x * math.cos(x), n * math.pi + 1e-9, (n + 1) * math.pi - 1e-9)
    return z, 4 * (math.sin(z) - z * math.cos(z)) / (2 * z - math.sin(2 * z))


def _cylinder_term(n: int, biot: float) -> tuple[float, float]:
    # z J1(z) = Bi J0(z); between the zeros of J1 and J0, which lie near (n + 1/4) pi and (n + 3/4) pi
    zero = _bisect(lambda x: bessel(0, x), (n + 0.5) * math.pi, (n + 1) * math.pi)
    if math.isinf(biot):
        z = zero
    else:
        lower = 0.0 if n == 0 else _bisect(lambda x: bessel(1, x), n * math.pi, (n + 0.5) * math.pi)
        z = _bisect(lambda x: x * bessel(1, x) - biot * bessel(0, x), lower, zero)
    return z, 2 * bessel(1, z) / (z * (bessel(0, z) ** 2 + bessel(1, z) ** 2))


def bessel(order: int, x: float) -> float:
    """Bessel function of the first kind, order 0 or 1, by its power series: good to 1e-8 up to x = 20."""
    term = 1.0 if order == 0 else x / 2
    total, k = term, 1
    while abs(term) > 1e-17 or k < x:
        term *= -(x * x / 4) / (k * (k + order))
        total += term
        k += 1
    return total


def _bisect(f: Callable[[float], float], low: float, high: float) -> float:
    sign = f(low) > 0
    for _ in range(80):
        middle = (low + high) / 2
        if (f(middle) > 0) == sign:
            low = middle
        else:
            high = middle
    return (low + high) / 2
