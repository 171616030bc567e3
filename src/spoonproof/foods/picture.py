"""A portion's share of a day as a small picture: one line a nutrient, a stroke from its low to its high end.

Strokes on a ruler, not a panel: it must not be taken for a label that a law prescribes.
"""

from __future__ import annotations

from html import escape
from math import inf

from spoonproof.foods.facts import Facts
from spoonproof.foods.intakes import Reference
from spoonproof.foods.show import ShownRow, number, rows

_SHOWN = (
    "protein_g",
    "iron_mg",
    "zinc_mg",
    "calcium_mg",
    "vitamin_a_rae_ug",
    "vitamin_c_mg",
    "vitamin_d_ug",
    "folate_ug",
    "vitamin_b12_ug",
    "fibre_g",
    "ala_g",
    "dha_mg",
)
_LINE, _LEFT, _RULER, _TOP = 30, 112, 400, 44
_NOTES = 190


def as_svg(facts: Facts, reference: Reference, title: str) -> str:
    """An SVG with title and description; "" where there is nothing to compare (no portion, no reference values).

    Colours come from the page (``currentColor`` and the classes ``range`` and ``middle``). The table of ``show.rows``
    belongs beneath it.
    """
    shown = [row for row in rows(facts, reference) if row.nutrient in _SHOWN and _drawable(row)]
    if not shown or facts.portion is None:
        return ""
    shown.sort(key=lambda row: _SHOWN.index(row.nutrient))
    reach = _reach(shown)
    height = _TOP + _LINE * len(shown) + 12
    width = _LEFT + _RULER + _NOTES
    name = f"{title}: one portion beside a day's reference intakes"
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" role="img" '
        'aria-labelledby="nutrients-title nutrients-desc" class="nutrient-strokes" '
        'font-family="inherit" font-size="13" fill="currentColor">',
        f'<title id="nutrients-title">{escape(name)}</title>',
        f'<desc id="nutrients-desc">{escape(_described(shown, reference, facts))}</desc>',
    ]
    for tick in range(6):
        x = _LEFT + _RULER * tick / 5
        label = f"{reach * tick / 5 * 100:.3g} %"
        parts.append(
            f'<line x1="{x:g}" x2="{x:g}" y1="{_TOP - 10}" y2="{height - 8}" stroke="currentColor" '
            'stroke-opacity="0.25" stroke-dasharray="2 4"/>'
        )
        parts.append(f'<text x="{x:g}" y="{_TOP - 18}" text-anchor="middle" font-size="11">{label}</text>')
    for i, row in enumerate(shown):
        parts.extend(_stroke(row, _TOP + _LINE * i + 10, reach))
    parts.append("</svg>")
    return "\n".join(parts) + "\n"


def _drawable(row: ShownRow) -> bool:
    """Whether there is something to draw: a share, and not only what is not known."""
    return row.share is not None and (row.high < inf or row.low > 0)


def _percent(row: ShownRow) -> str:
    share = row.share or 0
    if row.high == inf:
        return f"at least {share * 100:.0f} %"
    return "under 1 %" if 0 < row.high < 0.01 else f"{share * 100:.0f} %"


def _reach(shown: list[ShownRow]) -> float:
    """Where the ruler ends: the first of these that all middles fit under; never less than a quarter of a day."""
    most = max(row.share or 0 for row in shown)
    return next((end for end in (0.25, 0.5, 1.0, 2.0, 4.0) if most <= end), 8.0)


def _stroke(row: ShownRow, y: int, reach: float) -> list[str]:
    def at(share: float) -> float:
        return _LEFT + _RULER * min(max(share, 0.0), reach) / reach

    low, high = at(row.low), at(row.high)
    runs_on = row.high > reach
    parts = [
        f'<text x="{_LEFT - 12}" y="{y + 4}" text-anchor="end">{escape(row.name)}</text>',
        f'<line class="range" x1="{low:.1f}" x2="{max(high, low + 1):.1f}" y1="{y}" y2="{y}" '
        'stroke="currentColor" stroke-opacity="0.45" stroke-width="8" stroke-linecap="round"/>',
        f'<circle class="middle" cx="{at(row.share or 0):.1f}" cy="{y}" r="5"/>',
    ]
    if runs_on:
        parts.append(
            f'<path d="M{high - 2:.1f} {y - 7} l8 7 l-8 7" fill="none" stroke="currentColor" stroke-width="2"/>'
        )
    parts.append(
        f'<text x="{_LEFT + _RULER + 14}" y="{y + 4}" font-size="11">{_percent(row)} of '
        f"{escape(row.intake.kind if row.intake else '')} {number(row.intake.value) if row.intake else ''} "
        f"{escape(row.unit)}</text>"
    )
    return parts


def _described(shown: list[ShownRow], reference: Reference, facts: Facts) -> str:
    portion = f"{facts.portion.mid:.0f} g" if facts.portion is not None else ""
    said = "; ".join(f"{row.name} {_percent(row)}" for row in shown)
    return f"One portion of {portion} against the values of {reference.authority} for {reference.age_band}: {said}."
