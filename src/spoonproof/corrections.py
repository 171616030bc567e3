"""Corrections as a plain file: what was said wrongly, where, and how far its correction is: drafted, posted, pinned.

``corrections.csv`` stands at the channel's root; a person edits the state by hand. Pure: text in, text out.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence

from spoonproof.model.claim import JudgedClaim
from spoonproof.model.record import dataclass, field

FILE = "corrections.csv"
STATES = ("drafted", "posted", "pinned")
COLUMNS = ("file", "at", "statement", "state", "advice", "entry", "since")
_NOT_WORD = re.compile(r"[^\w%½¼¾]+")
_RUNS_IN_A_SHEET = ("=", "+", "-", "@", "\t")


class CorrectionsError(ValueError):
    """The file can't be understood; the words name line and remedy."""


@dataclass(frozen=True, slots=True)
class Correction:
    """One row. ``at`` is the time or line for people; ``since`` the ISO day on which the state began."""

    file: str
    at: str
    statement: str
    state: str
    advice: str = ""
    entry: str = ""
    since: str = ""

    @property
    def key(self) -> tuple[str, str]:
        """What makes two rows one: the file and the words said."""
        return self.file, words_of(self.statement)


@dataclass(slots=True)
class Corrections:
    """All rows of the file, in its order."""

    rows: list[Correction] = field(default_factory=list)

    def state(self, file: str, statement: str, at: str = "", entry: str = "") -> str:
        """The state of a statement's correction, "" when there is none yet.

        A row is found by the words said, else by its place, register entry and words that run into these: where a
        statement begins and ends may be heard anew, and what was pinned stays pinned."""
        wanted = (file, words_of(statement))
        here = (file, at, entry) if at and entry else None
        same = (row for row in self.rows if row.key == wanted)
        place = (row for row in self.rows if (row.file, row.at, row.entry) == here and _overlap(row.key[1], wanted[1]))
        row = next(same, None) or next(place, None)
        return row.state if row is not None else ""

    def draft(self, file: str, at: str, judged: JudgedClaim, today: str) -> bool:
        """Note a statement as drafted; False when it has a row already, whose state stands."""
        if self.state(file, judged.claim.quote, at, judged.entry or ""):
            return False
        quote = " ".join(judged.claim.quote.split())
        self.rows.append(Correction(file, at, quote, "drafted", judged.advice, judged.entry or "", today))
        return True

    def text(self) -> str:
        """The file: no cell runs in a spreadsheet, no line breaks inside a row."""
        out = io.StringIO()
        write = csv.writer(out, lineterminator="\n")
        write.writerow(COLUMNS)
        for row in self.rows:
            write.writerow([_safe(str(getattr(row, column))) for column in COLUMNS])
        return out.getvalue()


def words_of(text: str) -> str:
    """A statement as it is compared: small letters, no marks."""
    return _NOT_WORD.sub(" ", text.lower().replace("’", "'")).strip()


def _overlap(one: str, two: str) -> bool:
    """Whether two quotes can be of the same text, begun or ended elsewhere: one runs into the other by two words or
    more."""
    for first, second in ((one.split(), two.split()), (two.split(), one.split())):
        for start in range(len(first) - 1):
            run = first[start : start + len(second)]
            if len(run) > 1 and second[: len(run)] == run and (start + len(run) == len(first) or run == second):
                return True
    return False


def read_corrections(text: str, name: str = FILE) -> Corrections:
    """The rows of the file's text. Raises CorrectionsError with the line of what can't be understood."""
    found = Corrections()
    seen: dict[tuple[str, str], int] = {}
    for line, cells in csv_rows(text, name, ("file", "statement", "state")):
        row = Correction(**{column: _plain(cells.get(column, "")) for column in COLUMNS})
        if row.state not in STATES:
            raise CorrectionsError(f"{name}:{line}: state is one of {', '.join(STATES)}, not {row.state!r}")
        if row.key in seen:
            raise CorrectionsError(f"{name}:{line}: this statement stands in line {seen[row.key]} already")
        seen[row.key] = line
        found.rows.append(row)
    return found


def read_views(text: str, name: str) -> dict[str, int]:
    """Views by file out of a table with the columns ``file`` and ``views``; "12,345" is read as it is meant.

    Raises CorrectionsError with the line of what can't be understood.
    """
    found: dict[str, int] = {}
    for line, cells in csv_rows(text, name, ("file", "views")):
        number = cells["views"]
        if not number:
            continue  # not known, which is not none
        if not re.fullmatch(r"[0-9]{1,12}|[0-9]{1,3}(?:,[0-9]{3}){1,3}", number):
            raise CorrectionsError(
                f"{name}:{line}: views is a whole number, or nothing where it is not known, not {number!r}"
            )
        if cells["file"] in found:
            raise CorrectionsError(f"{name}:{line}: {cells['file']} stands twice")
        found[cells["file"]] = int(number.replace(",", ""))
    return found


def csv_rows(text: str, name: str, needed: Sequence[str]) -> Iterable[tuple[int, dict[str, str]]]:
    """Line and cells of each row that is not blank. Raises CorrectionsError."""
    try:
        reader = csv.reader(io.StringIO(text, newline=""), strict=True)
        columns = [cell.strip().lower() for cell in next(reader, [])]
        if any(column not in columns for column in needed):
            raise CorrectionsError(f"{name}:1: the first line names the columns: {', '.join(needed)}")
        for cells in reader:
            if any(cell.strip() for cell in cells):
                yield (
                    reader.line_num,
                    dict(zip(columns, (cell.strip() for cell in cells), strict=False))
                    | dict.fromkeys(needed[len(cells) :], ""),
                )
    except csv.Error as problem:
        raise CorrectionsError(f"{name}: {problem}") from None


def _safe(cell: str) -> str:
    return f"'{cell}" if cell.startswith(_RUNS_IN_A_SHEET) else cell


def _plain(cell: str) -> str:
    return cell[1:] if cell[:1] == "'" and cell[1:].startswith(_RUNS_IN_A_SHEET) else cell
