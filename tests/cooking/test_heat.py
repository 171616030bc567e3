import math
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.cooking.heat import ALPHA, ALPHA_FAST, Shape, bessel, centre_ratio, minutes_to_heat, series
from tests.cooking.bench import rows
from tests.each import each

SHAPES: tuple[Shape, ...] = get_args(Shape)

# First root and coefficient of the one-term solution, as handbooks of heat transfer tabulate them (Incropera and
# DeWitt, Fundamentals of Heat and Mass Transfer, Table 5.1; recalled, and recomputed below from the equations).
HANDBOOK = [
    ("slab", 0.1, 0.3111, 1.0161),
    ("slab", 1.0, 0.8603, 1.1191),
    ("slab", 100.0, 1.5552, 1.2731),
    ("cylinder", 0.1, 0.4417, 1.0246),
    ("cylinder", 1.0, 1.2558, 1.2071),
    ("sphere", 0.1, 0.5423, 1.0298),
    ("sphere", 1.0, 1.5708, 1.2732),
]


@each(("shape", "biot", "root", "coefficient"), HANDBOOK)
def test_roots_and_coefficients_are_the_handbooks(shape: Shape, biot: float, root: float, coefficient: float) -> None:
    found = series(shape, biot)[0]
    assert found == pytest.approx((root, coefficient), abs=6e-5)


def test_roots_solve_their_equations() -> None:
    for biot in (0.05, 0.7, 3.0, 40.0):
        z, _ = series("slab", biot)[0]
        assert z * math.tan(z) == pytest.approx(biot, rel=1e-9)
        z, _ = series("sphere", biot)[0]
        assert 1 - z / math.tan(z) == pytest.approx(biot, rel=1e-6)
        z, _ = series("cylinder", biot)[0]
        assert z * bessel(1, z) / bessel(0, z) == pytest.approx(biot, rel=1e-9)


def test_bessel_functions_at_known_places() -> None:
    assert bessel(0, 2.404825557695773) == pytest.approx(0, abs=1e-12)
    assert bessel(1, 3.831705970207512) == pytest.approx(0, abs=1e-12)
    assert bessel(0, 1.0) == pytest.approx(0.7651976865579666, rel=1e-12)


def numerical(shape: Shape, fourier: float, cells: int = 60) -> float:
    """The centre's share of the difference by explicit finite volumes: no series, no roots, no Bessel functions.

    The body is cut into ``cells`` layers of equal thickness from the centre; areas and volumes go with r^0, r^1, r^2.
    """
    power = {"slab": 0, "cylinder": 1, "sphere": 2}[shape]
    dx = 1 / cells
    edges = [i * dx for i in range(cells + 1)]
    area = [edge**power for edge in edges]
    volume = [(edges[i + 1] ** (power + 1) - edges[i] ** (power + 1)) / (power + 1) for i in range(cells)]
    steps = max(1, math.ceil(fourier / (0.2 * dx * dx)))
    dt = fourier / steps
    heat = [1.0] * cells
    for _ in range(steps):
        flow = [0.0] + [area[i] * (heat[i - 1] - heat[i]) / dx for i in range(1, cells)]
        flow.append(area[cells] * heat[cells - 1] / (dx / 2))
        heat = [heat[i] + dt * (flow[i] - flow[i + 1]) / volume[i] for i in range(cells)]
    return heat[0]


@pytest.mark.parametrize("shape", ["slab", "cylinder", "sphere"])
@pytest.mark.parametrize("fourier", [0.05, 0.15, 0.4])
def test_the_series_agrees_with_an_independent_numerical_solution(shape: Shape, fourier: float) -> None:
    assert centre_ratio(shape, fourier) == pytest.approx(numerical(shape, fourier), abs=0.004)


def test_a_cube_is_the_product_of_three_slabs_and_agrees_in_three_dimensions() -> None:
    # an eighth of the cube, 3-D explicit differences: planes of symmetry at 0, the surface at 1
    n, fourier = 10, 0.15
    dx = 1 / n
    steps = math.ceil(fourier / (0.15 * dx * dx))
    dt = fourier / steps / (dx * dx)
    size = n + 2
    grid = [[[1.0] * size for _ in range(size)] for _ in range(size)]

    def at(x: int, y: int, z: int) -> float:
        if n in (x, y, z):
            return 0.0
        return grid[abs(x)][abs(y)][abs(z)]

    for _ in range(steps):
        new = [[[0.0] * size for _ in range(size)] for _ in range(size)]
        for x in range(n):
            for y in range(n):
                for z in range(n):
                    here = at(x, y, z)
                    around = at(x - 1, y, z) + at(x + 1, y, z) + at(x, y - 1, z) + at(x, y + 1, z)
                    around += at(x, y, z - 1) + at(x, y, z + 1)
                    new[x][y][z] = here + dt * (around - 6 * here)
        grid = new
    assert centre_ratio("cube", fourier) == pytest.approx(grid[0][0][0], abs=0.02)


def test_the_time_goes_with_the_square_of_the_thickness() -> None:
    for shape in SHAPES:
        assert minutes_to_heat(shape, 24) == pytest.approx(4 * minutes_to_heat(shape, 12), rel=1e-6)


def test_below_twelve_millimetres_heating_hardly_counts() -> None:
    assert minutes_to_heat("cube", 12) < 1.5
    assert minutes_to_heat("cube", 38) > 10


def test_diffusivities_are_those_of_the_table() -> None:
    values = [row.number("alpha_1e7") or 0.0 for row in rows("thermal")]
    assert max(values) * 1e-7 == pytest.approx(ALPHA_FAST), "the bound must take the fastest food"
    assert min(values) * 1e-7 < ALPHA < max(values) * 1e-7
    plants = sorted(values)
    assert plants[len(plants) // 2] * 1e-7 == pytest.approx(ALPHA, rel=0.06)


@settings(max_examples=100, deadline=None)
@given(st.sampled_from(SHAPES), st.floats(0.001, 5), st.floats(0.001, 5))
def test_the_centre_never_cools_while_it_heats(shape: Shape, first: float, more: float) -> None:
    assert centre_ratio(shape, first + more) <= centre_ratio(shape, first) + 1e-12


def test_edges() -> None:
    assert centre_ratio("slab", 0) == 1
    assert minutes_to_heat("cube", 0) == 0
    assert minutes_to_heat("cube", 20, start_c=90) == 0
    assert minutes_to_heat("cube", 20, medium_c=80) == math.inf
    with pytest.raises(ValueError, match="Fourier"):
        centre_ratio("slab", -1)
    with pytest.raises(ValueError, match="thickness"):
        minutes_to_heat("slab", -1)
