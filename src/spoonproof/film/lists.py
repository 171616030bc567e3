"""Lists for the day and the edit: shots by set-up, twins, supers and chapters as timed text."""

from __future__ import annotations

import csv
import io

from spoonproof.film.captions import vtt_escaped, vtt_time
from spoonproof.film.script import Script
from spoonproof.film.setups import read_shot
from spoonproof.film.text import chapters, clock

COLUMNS = (
    "set-up", "shot", "segment", "size", "angle", "movement", "subject", "audio", "food state", "starts", "seconds",
    "takes", "notes",
)  # fmt: skip


def shot_list(script: Script) -> str:
    """CSV, one row a take, those of one set-up together in the order in which the set-ups first come."""
    numbered = [(number, take, read_shot(take.shot)) for number, take in enumerate(script.takes, 1)]
    order = list(dict.fromkeys(shot.setup for _, _, shot in numbered))
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(COLUMNS)
    for number, take, shot in sorted(numbered, key=lambda row: (order.index(row[2].setup), row[0])):
        audio = "sync" if take.role == "opening" and take.say else "voice-over" if take.say else "natural sound"
        row = [shot.setup, str(number), take.name, shot.size, shot.angle, shot.movement, shot.subject, audio]
        row += [take.twin.text if take.twin else "", clock(take.start), f"{take.runs:g}", "", ""]
        writer.writerow([_plain_cell(cell) for cell in row])
    return out.getvalue()


def _plain_cell(cell: str) -> str:
    """A cell no spreadsheet takes for a formula."""
    return f"'{cell}" if cell[:1] in ("=", "+", "-", "@", "\t", "\r") else cell


def twins_text(script: Script) -> str:
    """What is made ahead, longest first: that is the order in which it is put on."""
    lines = ["Made ahead for the camera, the longest first", ""]
    for twin in sorted(script.twins, key=lambda twin: (-twin.minutes, twin.step)):
        lines.append(f"- {twin.text} ({twin.waits:.0f} minutes of waiting that nobody films)")
    if not script.twins:
        lines.append("Nothing: every step is done in front of the camera.")
    return "\n".join(lines) + "\n"


def supers_vtt(script: Script) -> str:
    """Every super with the time it stands, as WebVTT (source: webvtt); no two at once."""
    blocks = ["WEBVTT supers"]
    for number, each in enumerate(script.supers, 1):
        text = "\n".join(vtt_escaped(line) for line in each.lines)
        blocks.append(f"{each.kind}-{number}\n{vtt_time(each.start)} --> {vtt_time(each.end)}\n{text}")
    return "\n\n".join(blocks) + "\n"


def chapters_vtt(script: Script) -> str:
    """The chapters as WebVTT chapter cues, each up to the next; the header alone where there are none."""
    marks = chapters(script)
    ends = [float(second) for second, _ in marks[1:]] + [script.runs]
    blocks = ["WEBVTT chapters"]
    for (second, name), end in zip(marks, ends[-len(marks) :] if marks else [], strict=True):
        blocks.append(f"{vtt_time(second)} --> {vtt_time(end)}\n{vtt_escaped(' '.join(name.split()))}")
    return "\n\n".join(blocks) + "\n"
