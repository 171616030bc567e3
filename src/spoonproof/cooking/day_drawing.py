"""A filming day drawn: as lines of text by the clock, and as an SVG with a column for each recipe."""

from __future__ import annotations

from html import escape

from spoonproof.cooking.day import DayPlan, DayProblem, Slot

WIDTH = 860
_PX = 3.2  # a minute
_TOP, _LEFT = 44, 48
_INK = "fill:var(--plan-ink,#2b2a27)"
_RESOURCES = ("ring", "steamer", "oven", "microwave", "blender", "camera")


def day_text(plan: DayPlan, problem: DayProblem) -> str:
    """The day as plain text, one task a line by the clock; absences between; what is dropped, and how sure it is."""
    lines = []
    if plan.slots:
        end = clock(plan.start + plan.makespan)
        lines += [f"{clock(plan.start)} to {end}, {plan.makespan} minutes. {plan.words}", ""]
    gaps = [(begin, f"{_span(plan, begin, end)}  nobody in the kitchen") for begin, end in problem.away]
    rows = [(slot.start, f"{_span(plan, slot.start, slot.end)}  {_words(slot)}") for slot in plan.slots]
    lines += [text for _, text in sorted([*rows, *gaps], key=lambda row: row[0])]
    if plan.waiting:
        late = "; ".join(f"{slot.task.recipe}: {slot.task.label} ({minutes} min)" for slot, minutes in plan.waiting)
        lines += ["", f"A hot pan waits longer than is good before: {late}."]
    if plan.dropped:
        names = ", ".join(plan.dropped)
        sure = "No day holds more." if plan.certain else "A day that holds more was not found, but may exist."
        lines += ["", f"Does not fit into the day: {names}. Drop it, or make the day longer. {sure}"]
    return "\n".join(lines) + "\n"


def day_svg(plan: DayPlan, problem: DayProblem) -> str:
    """The day as an SVG element with title and desc: time runs down, a column a recipe, absences shaded."""
    recipes = list(dict.fromkeys(task.recipe for task in problem.tasks if task.recipe not in plan.dropped))
    length = max([plan.makespan, *(end for _, end in problem.away)], default=0)
    height = round(_TOP + length * _PX + 12)
    column = (WIDTH - _LEFT - 8) / max(1, len(recipes))
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="plan day" viewBox="0 0 {WIDTH} {height}" role="img" '
        'aria-labelledby="day-title day-desc" font-family="inherit" font-size="11">',
        f'<title id="day-title">{escape(f"A filming day of {len(recipes)} recipes")}</title>',
        f'<desc id="day-desc">{escape(" ".join(day_text(plan, problem).split()))}</desc>',
    ]
    for minute in range(0, length + 1, 30):
        y = _TOP + minute * _PX
        parts.append(
            f'<line x1="{_LEFT}" x2="{WIDTH - 8}" y1="{y:.1f}" y2="{y:.1f}" style="stroke:var(--plan-rule,#c9c4b8)"/>'
        )
        parts.append(f'<text x="4" y="{y + 4:.1f}" style="{_INK}">{clock(plan.start + minute)}</text>')
    for begin, end in problem.away:
        parts.append(
            f'<rect x="{_LEFT}" y="{_TOP + begin * _PX:.1f}" width="{WIDTH - _LEFT - 8}" '
            f'height="{(end - begin) * _PX:.1f}" style="fill:var(--plan-rule,#c9c4b8);fill-opacity:0.35"/>'
        )
    for at, name in enumerate(recipes):
        x = _LEFT + at * column
        parts.append(
            f'<text x="{x + 4:.1f}" y="24" font-weight="bold" style="{_INK}">{escape(_fit(name, column * 0.86))}</text>'
        )
        parts += _column([slot for slot in plan.slots if slot.task.recipe == name], x, column)
    parts.append("</svg>")
    return "\n".join(parts) + "\n"


def _column(slots: list[Slot], x: float, column: float) -> list[str]:
    """The bars of a recipe; bars at the same time stand side by side."""
    rows: list[list[Slot]] = []
    place: dict[str, int] = {}
    for slot in slots:
        at = next((i for i, row in enumerate(rows) if row[-1].end <= slot.start), len(rows))
        if at == len(rows):
            rows.append([])
        rows[at].append(slot)
        place[slot.task.id] = at
    wide = (column - 6) / max(1, len(rows))
    parts = []
    for slot in slots:
        left, top = x + 2 + place[slot.task.id] * wide, _TOP + slot.start * _PX
        tall = max(2.0, slot.task.minutes * _PX - 1)
        used = {use.resource for use in slot.task.uses}
        heat = bool(used & {"ring", "steamer", "oven", "microwave"})
        colour = (
            "var(--plan-heat,#b4472c)" if heat else "var(--plan-hands,#2f6b5e)" if used else "var(--plan-wait,#7d7768)"
        )
        film = "" if slot.task.filmed else ' stroke-dasharray="3 2"'
        parts.append(
            f'<rect x="{left:.1f}" y="{top:.1f}" width="{wide - 2:.1f}" height="{tall:.1f}" rx="3" '
            f'style="fill:var(--plan-paper,#fffdf7);stroke:{colour}" stroke-width="1.5"{film}/>'
        )
        if tall >= 13:
            words = escape(_fit(slot.task.label, wide - 6))
            parts.append(f'<text x="{left + 4:.1f}" y="{top + 11:.1f}" style="{_INK}">{words}</text>')
    return parts


def _words(slot: Slot) -> str:
    used = [use.resource for use in slot.task.uses]
    tools = [name for name in _RESOURCES if name in used]
    tail = f" ({', '.join(tools)})" if tools else ""
    return f"{slot.task.recipe}: {slot.task.label}{tail}"


def _span(plan: DayPlan, begin: int, end: int) -> str:
    return f"{clock(plan.start + begin)}-{clock(plan.start + end)}"


def clock(minute: int) -> str:
    """A minute of the day as the clock shows it: 09:05."""
    return f"{minute // 60 % 24:02d}:{minute % 60:02d}"


def _fit(words: str, width: float) -> str:
    most = max(1, int(width / 6.6))
    return words if len(words) <= most else words[: most - 1].rstrip() + "…"
