"""Our own drawings in a page whose policy allows no inline style: each style as the attribute it stands for."""

from __future__ import annotations

import re

_STYLE = re.compile(r' style="([^"]{0,400})"')


def without_styles(svg: str) -> str:
    """An SVG of ours with ``style="fill:x;stroke:y"`` written ``fill="x" stroke="y"``."""
    return _STYLE.sub(_attributes, svg)


def _attributes(found: re.Match[str]) -> str:
    pairs = (part.partition(":") for part in found[1].split(";") if ":" in part)
    return "".join(f' {name.strip()}="{value.strip()}"' for name, _, value in pairs)
