"""The script as timeline markers: OpenTimelineIO (its own JSON) and a CMX 3600 edit list.

Markers stand at the first frame of each take, so that an editor finds the script on the timeline.
"""

from __future__ import annotations

import json
import re
from typing import Any

from spoonproof.film.script import Script, Take
from spoonproof.film.timecode import Rate

_REEL = "AX"
_MARK_COLOUR = "GREEN"


def edit_list(script: Script, rate: Rate) -> str:
    """A CMX 3600 edit list: one event a take, source and record alike, with the take's name as clip and marker."""
    lines = [f"TITLE: {_plain(script.title)}", f"FCM: {'DROP FRAME' if rate.drop else 'NON-DROP FRAME'}", ""]
    for number, (take, start, end) in enumerate(frames(script, rate), 1):
        inn, out = rate.code(start), rate.code(end)
        lines.append(f"{number:03d}  {_REEL:<8} V     C        {inn} {out} {inn} {out}")
        lines.append(f"* FROM CLIP NAME: {_plain(take.name)}")
        lines.append(f"* LOC: {inn} {_MARK_COLOUR:<7} {_plain(take.name)}")
    return "\n".join(lines) + "\n"


def frames(script: Script, rate: Rate) -> list[tuple[Take, int, int]]:
    """Each take with its first frame and the frame after its last; each starts where the one before ends."""
    found = []
    for take in script.takes:
        start, end = rate.frame(take.start), rate.frame(take.start + take.runs)
        if end > start:
            found.append((take, start, end))
    return found


def timeline(script: Script, rate: Rate) -> str:
    """An OpenTimelineIO timeline with one gap as long as the film and a marker a take."""
    fps = float(rate.frames)
    marks = frames(script, rate)
    last = marks[-1][2] if marks else 0
    gap = _item("Gap.1", "", _range(0, last, fps), [])
    track = {**_item("Track.1", "Script", None, [_marker(t, a, b, fps) for t, a, b in marks]), "kind": "Video"}
    track["children"] = [gap]
    stack = {**_item("Stack.1", "tracks", None, []), "children": [track]}
    whole = {
        "OTIO_SCHEMA": "Timeline.1",
        "metadata": {},
        "name": script.title,
        "global_start_time": {"OTIO_SCHEMA": "RationalTime.1", "rate": fps, "value": 0.0},
        "tracks": stack,
    }
    return json.dumps(whole, ensure_ascii=False, indent=1) + "\n"


def _item(schema: str, name: str, source_range: dict[str, Any] | None, markers: list[dict[str, Any]]) -> dict[str, Any]:
    return {
        "OTIO_SCHEMA": schema,
        "metadata": {},
        "name": name,
        "source_range": source_range,
        "effects": [],
        "markers": markers,
        "enabled": True,
    }


def _marker(take: Take, start: int, end: int, fps: float) -> dict[str, Any]:
    return {
        "OTIO_SCHEMA": "Marker.2",
        "metadata": {"spoonproof": {"role": take.role, "supers": [each.text for each in take.supers]}},
        "name": take.name,
        "color": _MARK_COLOUR,
        "comment": take.say,
        "marked_range": _range(start, end - start, fps),
    }


def _range(start: int, duration: int, fps: float) -> dict[str, Any]:
    return {
        "OTIO_SCHEMA": "TimeRange.1",
        "start_time": {"OTIO_SCHEMA": "RationalTime.1", "rate": fps, "value": float(start)},
        "duration": {"OTIO_SCHEMA": "RationalTime.1", "rate": fps, "value": float(duration)},
    }


def _plain(text: str) -> str:
    """One line of the letters an edit list can carry."""
    import unicodedata

    kept = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()
    return re.sub(r"\s+", " ", re.sub(r"[^ -~]", " ", kept)).strip()[:70] or "untitled"
