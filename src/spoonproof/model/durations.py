"""How long something takes or keeps, in words: findings, pages, scripts, drawings and the echo say it alike."""

from __future__ import annotations

HOURS_FROM = 90
"""Minutes; fewer are said as minutes."""
_DAYS_FROM = 48
"""Hours; fewer are said as hours."""


def lasting(minutes: int) -> str:
    """Minutes in full: "64 minutes", "1 h 33 min", "3 hours", "12 days 12 hours"."""
    if minutes < HOURS_FROM:
        return _count(minutes, "minute")
    days, hours, rest = _parts(minutes)
    if not days:
        return f"{hours} h {rest} min" if rest else _count(hours, "hour")
    return f"{days} days {_count(hours, 'hour')}" if hours else f"{days} days"


def lasting_briefly(minutes: int) -> str:
    """The same where there is little room: "64 min", "1 h 33 min", "3 h", "12 days 12 h"."""
    if minutes < HOURS_FROM:
        return f"{minutes} min"
    days, hours, rest = _parts(minutes)
    if not days:
        return f"{hours} h {rest} min" if rest else f"{hours} h"
    return f"{days} days {hours} h" if hours else f"{days} days"


def hours_kept(hours: float) -> str:
    """Hours that something keeps: "1 hour", "48 hours"."""
    return _count(hours, "hour")


def days_kept(days: float) -> str:
    """Days that something keeps: "5 days", "a week", "a month" for thirty or thirty-one of them."""
    if days >= 28 and days % 30 in (0, 1):
        return _several(round(days / 30), "month")
    if days >= 7 and days % 7 == 0:
        return _several(round(days / 7), "week")
    return _count(days, "day")


def _parts(minutes: int) -> tuple[int, int, int]:
    """Days (none below two of them), hours and minutes."""
    hours, rest = divmod(minutes, 60)
    return (0, hours, rest) if hours < _DAYS_FROM else (*divmod(hours, 24), rest)


def _count(number: float, unit: str) -> str:
    return f"{number:g} {unit}{'' if number == 1 else 's'}"


def _several(number: int, unit: str) -> str:
    return f"a {unit}" if number == 1 else f"{number} {unit}s"
