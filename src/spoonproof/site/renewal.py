"""One build of a channel's site, unless it stands as it should: the same for the command and the desk."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.site import census, standing
from spoonproof.site.standing import Said, silent

if TYPE_CHECKING:
    from spoonproof.folder import ChannelFolder
    from spoonproof.site.publish import Built
    from spoonproof.site.standing import Tell


class Refused(Exception):
    """The site can't be made: why, and how to put it right."""


def renew(
    root: Path, out: Path, options: Sequence[str], opened: Callable[[], ChannelFolder], tell: Tell = silent
) -> Said:
    """Build the site of the channel at ``root`` in ``out`` and say what was made.

    ``options``: "drafts", "with_errors". ``opened`` gives the folder where it must be read; ``tell`` hears how far it
    is. Raises Refused, what ``opened`` raises, ClockError or OSError; the old site is whole then.
    """
    counted = census.take(root, options)
    said = standing.stands(root, out, counted) if counted is not None else None
    return said if said is not None else _built(root, out, options, opened(), counted, tell)


def _built(
    root: Path, out: Path, options: Sequence[str], folder: ChannelFolder, counted: census.Census | None, tell: Tell
) -> Said:
    from spoonproof.clock import stated_day
    from spoonproof.site.pages import ThemeError
    from spoonproof.site.press import Wanted
    from spoonproof.site.publish import publish
    from spoonproof.swap import OutputRefused

    wanted = Wanted(out, "drafts" in options, "with_errors" in options, stated_day())
    try:
        made = publish(folder, wanted, counted, tell)
    except (OutputRefused, ThemeError) as error:
        raise Refused(str(error)) from None
    there = _said(made, "already as it should be")
    if counted is not None:
        standing.keep(root, out, counted, made.media, there)
    return _said(made, "written") if made.report.changed else there


def _said(made: Built, state: str) -> Said:
    report = made.report
    what = f"{made.recipes} recipe{'' if made.recipes == 1 else 's'}, {report.pages} pages, {report.files} files"
    return Said((f"{what}, {state}", *report.notes), made.left_out, 1 if made.left_out else 0)
