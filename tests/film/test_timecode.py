"""Time codes against known values and, over a whole day, against a reference library."""

import pytest

from spoonproof.film.timecode import NTSC_DROP, PAL
from tests.each import each

# Published drop-frame values: SMPTE ST 12-1 counting, as tabulated in editing manuals.
KNOWN = [
    (0, "00:00:00;00"), (1799, "00:00:59;29"), (1800, "00:01:00;02"), (17981, "00:09:59;29"),
    (17982, "00:10:00;00"), (107892, "01:00:00;00"), (2589407, "23:59:59;29"),
]  # fmt: skip


@each(("frame", "code"), KNOWN)
def test_drop_frame_known_values(frame: int, code: str) -> None:
    assert NTSC_DROP.code(frame) == code


def test_a_whole_day_agrees_with_a_reference_library() -> None:
    otio = pytest.importorskip("opentimelineio.opentime", reason="opentimelineio is a development extra")
    rate = 30000 / 1001
    for frame in [*range(40_000), *range(40_000, 2_589_408, 101)]:
        assert NTSC_DROP.code(frame) == otio.to_timecode(otio.RationalTime(frame, rate), rate, True)
    for frame in range(0, 2_160_000, 97):
        assert PAL.code(frame) == otio.to_timecode(otio.RationalTime(frame, 25), 25, False)


def test_no_number_comes_twice_in_an_hour() -> None:
    codes = [NTSC_DROP.code(frame) for frame in range(107_892)]
    assert len(set(codes)) == 107_892
    assert codes == sorted(codes)


def test_a_moment_is_its_nearest_frame() -> None:
    assert PAL.frame(1.0) == 25
    assert NTSC_DROP.frame(60.0) == 1798
