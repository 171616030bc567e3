"""One window of the browser for all who need no other: a new one costs half a second and shows nothing more.

It is handed on at its next address, with an empty jar of cookies, at the usual size and in the usual colours. Who
changes what an address can't put back (a clock, a page offline) closes its window's context and the next has a new one.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

_OPEN: dict[tuple[Any, ...], Any] = {}


def sit_down(
    chromium: Any,
    address: str,
    cookies: Sequence[dict[str, str]] = (),
    viewport: tuple[int, int] = (1280, 900),
    own: bool = False,
    **options: Any,
) -> Any:
    """A page at ``address``. ``options`` are the context's; ``own``: a window that nobody had or will have."""
    width, height = viewport
    key = (chromium, *sorted(options.items()))
    page = None if own else _OPEN.get(key)
    if page is None or page.is_closed():
        page = chromium.new_context(viewport={"width": width, "height": height}, **options).new_page()
        if not own:
            _OPEN[key] = page
    else:
        page.goto("about:blank")
        page.context.clear_cookies()
        page.set_viewport_size({"width": width, "height": height})
        page.emulate_media(media="null", color_scheme="light", reduced_motion="no-preference", forced_colors="none")
    if cookies:
        page.context.add_cookies(cookies)
    page.goto(address)
    return page
