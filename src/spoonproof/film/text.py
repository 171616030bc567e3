"""The script as plain text: time at the left, picture, then sound; readable in any editor."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from math import ceil

from spoonproof.film.script import Script, Take

_PICTURE = 34
_SOUND = 62
CHAPTER_LEAST_SECONDS = 10  # source: youtube-chapters
CHAPTERS_LEAST = 3


def clock(seconds: float) -> str:
    """``m:ss``, rounded to the nearest second."""
    whole = round(seconds)
    return f"{whole // 60}:{whole % 60:02d}"


def script_text(script: Script) -> str:
    """The two-column script, with its running total against the target."""
    lines = [script.title, script.channel, "", total(script), ""]
    lines.append(f"{'TIME':<6}{'PICTURE':<{_PICTURE}}  SOUND")
    lines.append("-" * (6 + _PICTURE + 2 + _SOUND))
    for take in script.takes:
        lines += _take_lines(take)
        lines.append("")
    return "\n".join(line.rstrip() for line in lines) + "\n"


def total(script: Script) -> str:
    """The running time against the target, and what to trim first."""
    if script.target is None:
        return f"Runs {clock(script.runs)}."
    if script.over <= 0:
        return f"Runs {clock(script.runs)} of {clock(script.target)}; {clock(-script.over)} to spare."
    over = f"Runs {clock(script.runs)}, {clock(script.over)} over the target of {clock(script.target)}."
    trims = ", ".join(f"{take.name} ({clock(take.runs)})" for take in script.trim_first())
    longer = f"give it {ceil(script.runs)} s, or make two films of it: then nothing more need go."
    over += f" Trim first: {trims}. Or {longer}" if trims else f" {longer.capitalize()}"
    if script.silent is not None:
        over += f" The steps stay spoken: without a word on them the film would still run {clock(script.silent)}."
    return over


def _take_lines(take: Take) -> Iterator[str]:
    picture = [f"{take.name.upper()} ({clock(take.runs)})", *textwrap.wrap(take.shot, _PICTURE - 1)]
    for each in take.supers:
        picture += textwrap.wrap(
            f"SUPER {clock(each.start)} ({each.kind}): {each.text}", _PICTURE - 1, subsequent_indent="  "
        )
    if take.twin:
        picture += textwrap.wrap(f"TWIN: {take.twin.text}", _PICTURE - 1, subsequent_indent="  ")
    voice = f"{take.presenter.upper()}: " if take.presenter and take.say else ""
    sound = textwrap.wrap(voice + take.say, _SOUND, break_on_hyphens=False) or ["(natural sound)"]
    for number in range(max(len(picture), len(sound))):
        time = clock(take.start) if number == 0 else ""
        left = picture[number] if number < len(picture) else ""
        right = sound[number] if number < len(sound) else ""
        yield f"{time:<6}{left:<{_PICTURE}}  {right}"


def chapters(script: Script) -> list[tuple[int, str]]:
    """Chapters as (second, name): first at 0, each at least ten seconds long; [] when fewer than three fit."""
    marks: list[tuple[int, str]] = []
    for take in script.takes:
        second = round(take.start) if marks else 0
        if not marks or second - marks[-1][0] >= CHAPTER_LEAST_SECONDS:
            marks.append((second, take.chapter or take.name))
    while len(marks) > 1 and script.runs - marks[-1][0] < CHAPTER_LEAST_SECONDS:
        marks.pop()
    return marks if len(marks) >= CHAPTERS_LEAST else []
