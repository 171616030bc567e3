"""Files in and out: strict UTF-8 in, whole files out, nothing outside the folder that was asked for."""

from __future__ import annotations

import contextlib
import os
import stat
from collections.abc import Iterator
from pathlib import Path

from spoonproof.model.finding import Finding
from spoonproof.model.text import Document, Span
from spoonproof.reading import limits
from spoonproof.reading.characters import check_characters
from spoonproof.reading.faults import fault, quoted

# What the first bytes give away when a file is not text at all, or text in another encoding.
_BYTES_OF = (
    (b"\xff\xfe\x00\x00", "UTF-32"),
    (b"\xff\xfe", "UTF-16"),
    (b"\xfe\xff", "UTF-16"),
    (b"\x1f\x8b", "a gzip archive"),
    (b"PK\x03\x04", "a zip archive or an office document"),
    (b"\x89PNG", "a PNG picture"),
    (b"\xff\xd8\xff", "a JPEG picture"),
    (b"%PDF", "a PDF"),
)
Read = tuple[Document | None, list[Finding]]
_BOM = b"\xef\xbb\xbf"


def read_document(path: Path, shown: str, root: Path | None = None) -> Read:
    """The text of a file that a person wrote, and what is wrong with its characters.

    ``shown`` is the path people see; ``root`` the folder that a link may not lead out of (by default the
    folder that ``shown`` starts from). The document is None when nothing can be read. Never raises OSError.
    """
    try:
        data = _read_bytes(path, _root_of(path, shown) if root is None else root)
    except _RefusedError as refused:
        document = Document(shown, "")
        return None, [fault(refused.rule, document, document.whole, str(refused))]
    except (OSError, ValueError, RuntimeError) as problem:  # a loop of links is a RuntimeError before Python 3.13
        document = Document(shown, "")
        why = problem.strerror if isinstance(problem, OSError) and problem.strerror else str(problem)
        return None, [fault("file-unreadable", document, document.whole, f"This file can't be read: {why}.")]
    return decode(data, shown)


def unsaved_document(text: str, shown: str) -> Read:
    """``read_document`` for a text that is not in a file yet: the same limits and the same faults."""
    data = text.encode("utf-8", "surrogatepass")
    if len(data) > limits.FILE_BYTES:
        document = Document(shown, "")
        message = f"This file is larger than {limits.FILE_BYTES >> 10} KiB and was not read. Split it."
        return None, [fault("file-too-large", document, document.whole, message)]
    return decode(data, shown)


def decode(data: bytes, shown: str) -> Read:
    """The document of these bytes: UTF-8 without its byte order mark, or the finding that says where it is not."""
    findings: list[Finding] = []
    marked = data.startswith(_BOM)
    data = data.removeprefix(_BOM)
    try:
        if data.count(0) > len(data) // 4 > 0:
            return None, [_not_utf8(data, data.index(0), shown)]
        text = data.decode("utf-8")
    except UnicodeDecodeError as problem:
        return None, [_not_utf8(data, problem.start, shown)]
    document = Document(shown, text)
    if marked:
        message = "The file starts with a byte order mark. It is left out of what we read; save as plain UTF-8."
        findings.append(fault("byte-order-mark", document, document.whole, message))
    if not text.strip():
        findings.append(fault("empty-file", document, document.whole, "This file is empty. Write it, or delete it."))
        return None, findings
    findings.extend(check_characters(document))
    return document, findings


def write_atomically(path: Path, data: bytes, new: bool = False) -> None:
    """Write a whole file or nothing: a reader sees the old bytes or the new ones, never a part.

    Keeps the mode of a file that was there. Raises OSError when it can't be written; the old file stands then.
    ``new``: the name must be free up to the last moment, FileExistsError where it is not.
    """
    import tempfile

    path = path.resolve() if path.is_symlink() else path
    try:
        mode = stat.S_IMODE(path.stat().st_mode)
    except FileNotFoundError:
        mode = 0o644
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name[:40]}.", suffix=".part")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(name).chmod(mode)
        if new:
            _name_anew(Path(name), path)
        else:
            Path(name).replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            Path(name).unlink()
        raise


def _name_anew(part: Path, path: Path) -> None:
    """Give ``part`` the name ``path`` unless somebody has it."""
    try:
        path.hardlink_to(part)
    except FileExistsError:
        raise
    except OSError:  # a disk without hard links: what is left is to look just before
        if path.exists():
            raise FileExistsError(17, "the file is there already", str(path)) from None
        part.replace(path)
    else:
        part.unlink()


class _RefusedError(Exception):
    """A file we will not read; carries the name of the rule."""

    def __init__(self, rule: str, message: str) -> None:
        super().__init__(message)
        self.rule = rule


def _root_of(path: Path, shown: str) -> Path:
    """The folder that ``shown`` is relative to; the file's own folder when it is not the tail of the path."""
    tail = Path(shown).parts
    parts = path.absolute().parts
    if tail and not Path(shown).is_absolute() and ".." not in tail and parts[-len(tail) :] == tail:
        return Path(*parts[: -len(tail)])
    return path.absolute().parent


def _read_bytes(path: Path, root: Path) -> bytes:
    if not path.resolve(strict=True).is_relative_to(root.resolve()):
        outside = "This is a link to a file outside the channel, and is not followed. Copy the file."
        raise _RefusedError("link-out-of-channel", outside)
    # Without O_NONBLOCK a named pipe without a writer would hang here before its kind can be asked.
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0))
    with os.fdopen(handle, "rb") as file:
        status = os.fstat(file.fileno())
        if not stat.S_ISREG(status.st_mode):
            raise _RefusedError("not-a-file", "This is no ordinary file (a folder, a pipe or a device).")
        if status.st_size <= limits.FILE_BYTES:
            data = file.read(limits.FILE_BYTES + 1)
            if len(data) <= limits.FILE_BYTES:
                return data
    most = limits.FILE_BYTES >> 10
    large = f"This file is larger than {most} KiB and was not read. Split it, or remove what is not text."
    raise _RefusedError("file-too-large", large)


def _not_utf8(data: bytes, at: int, shown: str) -> Finding:
    kind = next((name for head, name in _BYTES_OF if data.startswith(head)), "")
    before = data[:at].decode("utf-8")
    if kind:
        guess = f"it looks like {kind}"
    elif data.count(0) > len(data) // 4:
        guess = "it looks like UTF-16"
    else:
        guess = f"in Windows-1252 it would be {quoted(data[at : at + 1].decode('cp1252', 'replace'))}"
    # Enough of the text to show the line; what can't be read shows as the replacement character.
    document = Document(shown, data[: at + 200].decode("utf-8", "replace"))
    message = f"This is not UTF-8 text at byte {at}: {guess}. Save the file as UTF-8."
    return fault("not-utf-8", document, Span(len(before), len(before) + 1), message)


def files_below(folder: Path) -> Iterator[Path]:
    """Every file below ``folder``; folders that are links are not entered.

    Raises OSError where a folder may not be looked into: passed over in silence, its recipes would pass for clean, and
    a site would be made without them.
    """
    for place, _, names in os.walk(folder, onerror=unless_missing):
        yield from (Path(place, name) for name in names)


def unless_missing(error: OSError) -> None:
    """What a walk does with a folder it can't enter: one that is not there holds no files; else raise."""
    if not isinstance(error, FileNotFoundError):
        raise error
