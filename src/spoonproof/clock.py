"""The one clock: what "today" is, so that tests and repeated builds can set it."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from datetime import UTC, date, datetime
else:
    try:
        from _datetime import date, datetime, timezone  # the same; the module around it makes them all once more

        UTC = timezone.utc  # its other name would bring in what this spares
    except ImportError:
        from datetime import UTC, date, datetime

__all__ = ["ClockError", "date", "stated_day", "today"]


class ClockError(ValueError):
    """The environment names a day that is none."""


def today() -> date:
    """The day that due dates are held against.

    ``SPOONPROOF_TODAY`` (ISO date) comes first, then ``SOURCE_DATE_EPOCH`` (seconds), then the machine.
    Raises ClockError when either is set and can't be read.
    """
    if stated := os.environ.get("SPOONPROOF_TODAY"):
        try:
            return date.fromisoformat(stated)
        except ValueError:
            raise ClockError(f"SPOONPROOF_TODAY should be a date such as 2026-11-02, not {stated!r}") from None
    if epoch := os.environ.get("SOURCE_DATE_EPOCH"):
        try:
            return datetime.fromtimestamp(int(epoch), UTC).date()
        except (ValueError, OverflowError, OSError):
            raise ClockError(f"SOURCE_DATE_EPOCH should be whole seconds since 1970, not {epoch!r}") from None
    return date.today()


def stated_day() -> str:
    """Today's ISO date where the environment states the day; "" otherwise, so that a build on another day gives the
    same bytes."""
    stated = os.environ.get("SPOONPROOF_TODAY") or os.environ.get("SOURCE_DATE_EPOCH")
    return today().isoformat() if stated else ""
