"""What grows with the square of a text is told from what grows with its length."""

from __future__ import annotations

from tests.growth import grown


def test_a_square_is_told_from_a_line() -> None:
    assert grown(lambda size: sum(range(400 * size)), 200, 800, times=9, spare=0.02) == ""
    assert "grew" in grown(lambda size: sum(range(size * size)), 600, 2400, times=9, spare=0.0)
    assert "grew" in grown(lambda size: sum(range(size)), 10, 10**6, times=10**6, spare=1.0, most=0.001)
