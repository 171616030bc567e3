"""A plan drawn: as lines of text, and as an SVG that a page or a script can colour by its own style sheet.

The picture has one row a task: its words above, its bar below, solid where hands are needed, open where it runs on its
own; heat is told by colour and by a mark, never by colour alone. Colours are CSS custom properties with fallbacks:
``--plan-ink``, ``--plan-rule``, ``--plan-hands``, ``--plan-heat``, ``--plan-wait``, ``--plan-paper``.
"""

from __future__ import annotations

import math
from html import escape

from spoonproof.cooking.tasks import Task
from spoonproof.cooking.timeline import Plan
from spoonproof.model.durations import lasting_briefly

WIDTH = 640
_LEFT, _RIGHT, _TOP, _ROW = 8, 12, 34, 34
_LANES = {"ring": "ring", "steamer": "steamer", "oven": "oven", "microwave": "microwave", "blender": "blender"}
_HALO = "paint-order:stroke;stroke:var(--plan-paper,#fffdf7);stroke-width:4px;stroke-linejoin:round"
_INK = "fill:var(--plan-ink,#2b2a27)"
_TICKS = (1, 2, 5, 10, 15, 20, 30, 60, 120, 240)


def plan_text(plan: Plan) -> str:
    """The plan as plain text, 78 columns wide at most: times, bar, words, and what is assumed. Ends on a line end."""
    bars = 18
    scale = plan.total / bars if plan.total else 1.0
    lines = [plan.title, f"{_minutes(plan.total)} in all: {_summary(plan)}", ""]
    room = 78 - bars - 16
    for task in plan.tasks:
        first = min(bars - 1, int(task.start / scale))
        last = min(bars, max(first + 1, round(task.end / scale)))
        mark = "." if task.unattended else "#"
        bar = " " * first + mark * (last - first) + " " * (bars - last)
        star = "*" if task.index in plan.critical else " "
        tool = f" ({_LANES[task.lane]})" if task.lane in _LANES else ""
        words = f"{'~' if task.assumed else ' '}{task.label}{tool}"
        lines.append(f"{_clock(task.start):>5}-{_clock(task.end):<5}{star}|{bar}|{_cut(words, room)}")
    lines += ["", "# needs hands   . runs on its own   * decides the total   ~ by custom, no time given"]
    return "\n".join(line.rstrip() for line in lines) + "\n"


def plan_svg(plan: Plan) -> str:
    """The plan as an SVG element (no XML declaration), with title and desc."""
    height = _TOP + _ROW * len(plan.tasks) + 10
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="plan" viewBox="0 0 {WIDTH} {height}" role="img" '
        'aria-labelledby="plan-title plan-desc" font-family="inherit" font-size="13">',
        f'<title id="plan-title">{escape(f"Timeline: {plan.title}")}</title>',
        f'<desc id="plan-desc">{escape(_description(plan))}</desc>',
        *_axis(plan, height),
    ]
    for row, task in enumerate(plan.tasks):
        parts += _row(plan, task, _TOP + row * _ROW)
    parts.append("</svg>")
    return "\n".join(parts) + "\n"


def _axis(plan: Plan, height: int) -> list[str]:
    step = next((tick for tick in _TICKS if plan.total / tick <= 8), _TICKS[-1])
    parts = []
    minute = 0
    while minute <= plan.total + 1e-9:
        x = _x(plan, minute)
        anchor = "start" if minute == 0 else "end" if x > WIDTH - 30 else "middle"
        parts.append(
            f'<line x1="{x:.1f}" x2="{x:.1f}" y1="22" y2="{height - 6}" style="stroke:var(--plan-rule,#c9c4b8)" '
            'stroke-width="1"/>'
        )
        parts.append(f'<text x="{x:.1f}" y="15" text-anchor="{anchor}" style="{_INK}">{_clock(minute)}</text>')
        minute += step
    return parts


def _row(plan: Plan, task: Task, top: int) -> list[str]:
    left, right = _x(plan, task.start), _x(plan, task.end)
    wide = max(3.0, right - left)
    ink = "heat" if task.heat else "hands" if not task.unattended else "wait"
    fallback = {"heat": "#b4472c", "hands": "#2f6b5e", "wait": "#7d7768"}[ink]
    colour = f"var(--plan-{ink},{fallback})"
    fill = "var(--plan-paper,#fffdf7)" if task.unattended else colour
    words = _cut(_words(task), 92)
    # the words stand at the bar's start, or end at its end where they would run out of the picture
    room = (WIDTH - _RIGHT - left) / 6.6
    at, anchor = (
        (left, "start") if len(words) <= room else (min(WIDTH - _RIGHT, max(right, _LEFT + 6.6 * len(words))), "end")
    )
    return [
        f'<text x="{at:.1f}" y="{top + 12}" text-anchor="{anchor}" style="{_INK};{_HALO}">{escape(words)}</text>',
        f'<rect x="{left:.1f}" y="{top + 17}" width="{wide:.1f}" height="9" rx="3" '
        f'style="fill:{fill};stroke:{colour}" stroke-width="1.5"{_dash(task)}/>',
    ]


def _dash(task: Task) -> str:
    return ' stroke-dasharray="4 3"' if task.unattended and not task.heat else ""


def _x(plan: Plan, minute: float) -> float:
    return _LEFT + (WIDTH - _LEFT - _RIGHT) * (minute / plan.total if plan.total else 0.0)


def _words(task: Task) -> str:
    tail = [_LANES[task.lane]] if task.lane in _LANES else []
    tail.append(f"{'about ' if task.assumed else ''}{_minutes(task.minutes)}")
    if task.bowl:
        tail.append(f"{task.bowl}'s bowl")
    return f"{task.label} ({', '.join(tail)})"


def _summary(plan: Plan) -> str:
    return (
        f"{_minutes(plan.prep)} to prepare, {_minutes(plan.cook)} on the heat, {_minutes(plan.hands_on)} of it hands-on"
    )


def _description(plan: Plan) -> str:
    tasks = "; ".join(f"{_clock(task.start)} to {_clock(task.end)} {_words(task)}" for task in plan.tasks)
    return f"{_minutes(plan.total)} in all, {_summary(plan)}. {tasks}."


def _clock(minute: float) -> str:
    hours, rest = divmod(math.floor(minute + 0.5), 60)  # halves all one way: five minutes stay five
    return f"{hours}:{rest:02d}"


def _minutes(minutes: float) -> str:
    whole = round(minutes)
    if whole < 1 and minutes > 0:
        return "under 1 min"
    return lasting_briefly(whole)


def _cut(words: str, room: int) -> str:
    return words if len(words) <= room else words[: room - 1].rstrip() + "…"
