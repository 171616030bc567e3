"""How the work on a long text stands to that on a short one."""

from __future__ import annotations

import time
from collections.abc import Callable


def grown(work: Callable[[int], object], short: int, long: int, times: float, spare: float, most: float = 9.0) -> str:
    """Empty where ``work(long)`` takes at most ``times`` the seconds of ``work(short)`` and ``spare`` more, and less
    than ``most``; else what it took. Who is disturbed by others is tried again, the long one only if it must be."""

    def seconds(size: int) -> float:
        started = time.process_time()
        work(size)
        return time.process_time() - started

    least, found = min(seconds(short) for _ in range(3)), most
    for _ in range(3):
        found = seconds(long)
        if found < most and found < least * times + spare:
            return ""
    return f"{least:.3f} s grew to {found:.3f} s from {short} to {long}"
