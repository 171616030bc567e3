"""The script as Fountain, the open plain text format of screenplays."""

from __future__ import annotations

from spoonproof.film.script import Script
from spoonproof.film.text import clock, total


def fountain(script: Script) -> str:
    """Title page, one scene a take; picture as action, sound as the presenter's dialogue, supers as action."""
    lines = [f"Title: {_one_line(script.title)}", f"Credit: {_one_line(script.channel)}", f"Notes: {total(script)}", ""]
    for number, take in enumerate(script.takes, 1):
        lines += [f".{_one_line(take.name).upper()} #{number}#", ""]
        lines += [f"!{_one_line(take.shot)} ({clock(take.start)}, {clock(take.runs)})", ""]
        for each in take.supers:
            lines += [f"!SUPER: {_one_line(each.text)}", ""]
        if take.twin:
            lines += [f"[[Twin: {_one_line(take.twin.text)}]]", ""]
        if take.say:
            lines += [f"@{_one_line(take.presenter).upper() or 'PRESENTER'}", _dialogue(take.say), ""]
    return "\n".join(lines).rstrip("\n") + "\n"


def _one_line(text: str) -> str:
    return " ".join(text.split())


def _dialogue(text: str) -> str:
    """Speech in one block: an empty line would end it, notes or a boneyard would swallow it, and stars and underlines
    would set it in italics."""
    plain = _one_line(text).replace("*", "\\*").replace("_", "\\_")
    return plain.replace("[[", "[ [").replace("]]", "] ]").replace("/\\*", "/ \\*").replace("\\*/", "\\* /")
