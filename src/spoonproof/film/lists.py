"""Lists for the day and the edit: shots by set-up, twins, supers and chapters as timed text."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Sequence

from spoonproof.film.captions import vtt_escaped, vtt_time
from spoonproof.film.screen import TITLE_SAFE, type_height
from spoonproof.film.script import Script, Take
from spoonproof.film.setups import Shot, read_shot
from spoonproof.film.text import chapters, clock
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.record import NamedTuple

PICTURES = ((1920, 1080), (1080, 1920), (1080, 1080))
"""Sizes of picture for which the height of type is told: wide, upright, square."""

COLUMNS = (
    "set-up", "shot", "segment", "size", "angle", "movement", "subject", "audio", "food state", "starts", "seconds",
    "takes", "notes",
)  # fmt: skip


class Row(NamedTuple):
    """A take on the shot list: its number in the film, the take, and its shot in the trade's terms."""

    number: int
    take: Take
    shot: Shot

    @property
    def audio(self) -> str:
        """How its sound is recorded."""
        if not self.take.say:
            return "natural sound"
        seen = self.take.role in ("opening", "close") or "presenter" in self.take.shot
        return "sync" if seen else "voice-over"


def by_setup(script: Script) -> list[Row]:
    """The takes with those of one set-up together, in the order in which the set-ups first come."""
    rows = [Row(number, take, read_shot(take.shot)) for number, take in enumerate(script.takes, 1)]
    order = list(dict.fromkeys(row.shot.setup for row in rows))
    return sorted(rows, key=lambda row: (order.index(row.shot.setup), row.number))


def shot_list(script: Script) -> str:
    """CSV, one row a take, grouped by set-up."""
    return as_csv(COLUMNS, map(cells_of, by_setup(script)))


def as_csv(columns: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A table as CSV."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(columns)
    writer.writerows([_plain_cell(cell) for cell in row] for row in rows)
    return out.getvalue()


def cells_of(row: Row) -> list[str]:
    """A row of the shot list as it stands under ``COLUMNS``."""
    take, shot = row.take, row.shot
    return [shot.setup, str(row.number), take.name, shot.size, shot.angle, shot.movement, shot.subject, row.audio,
            take.twin.text if take.twin else "", clock(take.start), f"{take.runs:g}", "", ""]  # fmt: skip


def _plain_cell(cell: str) -> str:
    """A cell no spreadsheet takes for a formula."""
    return f"'{cell}" if cell[:1] in ("=", "+", "-", "@", "\t", "\r") else cell


def made_ahead(script: Script) -> list[tuple[float, str]]:
    """What is made ahead, longest first (the order in which it is put on): its minutes, and what, for which shot."""
    found = []
    for number, take in enumerate(script.takes, 1):
        if take.twin is not None:
            start = f"start it {take.twin.minutes:.0f} minutes before shot {number}, {take.name}."
            found.append((take.twin.minutes, f"{take.twin.state}; {start}"))
    return sorted(found, key=lambda pair: -pair[0])


def twins_text(script: Script) -> str:
    """What is made ahead, as text."""
    lines = ["Made ahead for the camera, the longest first", ""]
    lines += [f"- {text}" for _, text in made_ahead(script)] or ["Nothing: every step is done in front of the camera."]
    return "\n".join(lines) + "\n"


def supers_vtt(script: Script) -> str:
    """Every super with the time it stands, as WebVTT (source: webvtt); no two at once, and clear of the captions."""
    sizes = "; ".join(f"{wide} x {high}: at most {type_height(wide, high)} px" for wide, high in PICTURES)
    note = f"NOTE Title-safe is {TITLE_SAFE:.0%} of width and height. Height of the type that keeps inside it: {sizes}."
    blocks = ["WEBVTT supers", note]
    for number, each in enumerate(script.supers, 1):
        text = "\n".join(vtt_escaped(line) for line in each.lines)
        blocks.append(f"{each.kind}-{number}\n{vtt_time(each.start)} --> {vtt_time(each.end)} line:10%\n{text}")
    return "\n\n".join(blocks) + "\n"


def chapters_vtt(script: Script) -> str:
    """The chapters as WebVTT chapter cues, each up to the next; the header alone where there are none."""
    marks = chapters(script)
    ends = [float(second) for second, _ in marks[1:]] + [script.runs]
    blocks = ["WEBVTT chapters"]
    for (second, name), end in zip(marks, ends[-len(marks) :] if marks else [], strict=True):
        blocks.append(f"{vtt_time(second)} --> {vtt_time(end)}\n{vtt_escaped(' '.join(name.split()))}")
    return "\n\n".join(blocks) + "\n"


def claims_vtt(claims: Sequence[tuple[JudgedClaim, float, float]]) -> str:
    """The claims as WebVTT metadata cues: what is said when, how it was judged, and on what that rests, as JSON."""
    blocks = ["WEBVTT claims"]
    for number, (judged, start, end) in enumerate(claims, 1):
        blocks.append(f"claim-{number}\n{vtt_time(start)} --> {vtt_time(end)}\n{_in_a_cue(judged)}")
    return "\n\n".join(blocks) + "\n"


def _in_a_cue(judged: JudgedClaim) -> str:
    """A judged claim as one line of JSON by the names of the contract, without marks that mean something in a cue."""
    claim = judged.claim
    data = {
        "quote": claim.quote,
        "kind": claim.kind,
        "subjects": list(claim.subjects),
        "polarity": claim.polarity,
        "truth": judged.truth,
        "allowed": [{"market": a.market, "bound": a.bound, "answer": a.answer} for a in judged.allowed],
        "advice": judged.advice,
        "harm": judged.harm,
        "wording": judged.wording,
        "entry": judged.entry,
        "why": judged.why,
        "sources": [{"id": ref.id, "locator": ref.locator, "basis": ref.basis} for ref in judged.sources],
    }
    line = json.dumps(data, ensure_ascii=False)
    return line.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")
