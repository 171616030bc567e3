"""What was found when a page was last asked, kept in a plain JSON file."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, fields
from typing import Literal, get_args

State = Literal["alive", "moved", "gone", "changed", "could-not-check", "refused"]
_FORM = 1


@dataclass(frozen=True, slots=True)
class Result:
    """``on`` is the ISO day; ``final`` where it led; ``etag``, ``modified`` and ``digest`` tell the next time
    whether the page has changed; ``rule`` one word for why it could not be checked or was refused."""

    state: State
    on: str
    note: str = ""
    final: str = ""
    rule: str = ""
    etag: str = ""
    modified: str = ""
    digest: str = ""


def read_results(text: str) -> dict[str, Result]:
    """Results by address; a file that is cut short, of another form or not ours is as good as none."""
    names = {field.name for field in fields(Result)}
    try:
        data = json.loads(text)
        if data["form"] != _FORM:
            return {}
        found = {}
        for url, cells in data["links"].items():
            whole = set(cells) == names and all(isinstance(cell, str) for cell in cells.values())
            if whole and cells["state"] in get_args(State):
                found[url] = Result(**cells)
        return found
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return {}


def results_text(results: Mapping[str, Result]) -> str:
    """The file's text: sorted, so that the same results are the same bytes."""
    links = {url: asdict(results[url]) for url in sorted(results)}
    return json.dumps({"form": _FORM, "links": links}, ensure_ascii=False, indent=1) + "\n"
