"""Characters that mislead: control characters, invisible ones, look-alikes, and mixed line endings."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from itertools import pairwise

from spoonproof.model.finding import Edit, Finding, Level, Remedy
from spoonproof.model.text import Document, Span
from spoonproof.reading import limits
from spoonproof.reading.faults import fault, quoted

# Tab and the line ends are the only control characters of a text; U+0085, U+2028 and U+2029 are no line ends of ours.
_CONTROL = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f]")
_TURNS = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
_HIDDEN = re.compile(
    "[\u0085\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\u3164\ufeff\uffa0"
    "\ufff9-\ufffb\ud800-\udfff\ue000-\uf8ff\U000e0000-\U000e007f\U000f0000-\U0010ffff]"
)
_JOINER = "\u200d"
_WORD = re.compile(r"[^\W\d_]+")
# Greek and Cyrillic letters that a reader takes for Latin ones, with the Latin letter meant.
_FOREIGN = "аеорсухіјѕһԁԛԝАВЕКМНОРСТУХІЈЅαονρκιΑΒΕΖΗΙΚΜΝΟΡΤΥΧ"
_LOOKS = dict(zip(_FOREIGN, "aeopcyxijshdqwABEKMHOPCTYXIJSaovpkiABEZHIKMNOPTYX", strict=False))
_LINE_END = re.compile(r"\r\n|\r|\n")
_END_NAMES = {"\r\n": "CRLF", "\r": "CR", "\n": "LF"}


def check_characters(document: Document) -> list[Finding]:
    """What stands in the text that its author can't see, or that looks like something else."""
    text = document.text
    findings = list(_capped(document, "control-character", _control(text)))
    if not text.isascii():
        findings += _capped(document, "hidden-character", _hidden(text))
        findings += _capped(document, "confusable-character", _confusable(text))
    findings += _line_ends(document)
    if len(text) > limits.LINE_CHARACTERS:
        findings += _long_lines(document)
    return findings


Found = tuple[Span, str, Level, str | None]


def unseen(value: str) -> tuple[str, str] | None:
    """The rule that a character breaks which an escape put into a value, and what is told; None where none does."""
    for rule, found in (("control-character", _control(value)), ("hidden-character", _hidden(value))):
        for _, message, _, _ in found:
            return rule, message
    return None


def _control(text: str) -> Iterator[Found]:
    for match in _CONTROL.finditer(text):
        name = f"U+{ord(match[0]):04X}"
        yield Span(*match.span()), f"A control character ({name}) stands here. Delete it.", "error", ""


def _hidden(text: str) -> Iterator[Found]:
    for match in _HIDDEN.finditer(text):
        char = match[0]
        at = match.start()
        if char == _JOINER and _joins_emoji(text, at):
            continue
        name = unicodedata.name(char, "no name").lower()
        level: Level = "error" if char in _TURNS else "warning"
        better = " " if char in "\u0085\u2028\u2029" else ""
        yield Span(at, at + 1), f"An invisible character (U+{ord(char):04X}, {name}) stands here.", level, better


def _joins_emoji(text: str, at: int) -> bool:
    """Whether a zero width joiner glues two pictures together, as in a cook's emoji."""
    return text[at - 1 : at] > "\u2190" and text[at + 1 : at + 2] > "\u2190"


def _confusable(text: str) -> Iterator[Found]:
    for match in _WORD.finditer(text):
        word = match[0]
        foreign = [i for i, char in enumerate(word) if "\u0370" <= char <= "\u052f"]
        if not foreign or (word[0] == "μ" and word[1:] in ("g", "l", "m", "L")):
            continue
        if len(foreign) < len(word) or all(char in _LOOKS for char in word):
            meant = "".join(_LOOKS.get(char, char) for char in word)
            at = match.start() + foreign[0]
            script = "Greek" if word[foreign[0]] < "\u0400" else "Cyrillic"
            yield (
                Span(at, at + 1),
                f"In {quoted(word)} this letter is {script} and only looks Latin. Type {quoted(meant)} anew.",
                "warning",
                _LOOKS.get(word[foreign[0]]),
            )


def _capped(document: Document, rule: str, found: Iterator[Found]) -> Iterator[Finding]:
    """The first findings of one kind in full, the rest as one that counts them."""
    told = 0
    rest: list[Span] = []
    for span, message, level, better in found:
        if told < limits.SAME_FAULT:
            told += 1
            remedy = None
            if better is not None:
                words = f"Write {quoted(better)}." if better else "Delete it."
                remedy = Remedy(words, False, (Edit(span, better),))
            yield fault(rule, document, span, message, level=level, remedy=remedy)
        else:
            rest.append(span)
    if rest:
        yield fault(rule, document, rest[0], f"{len(rest)} more characters of this kind follow.")


def _line_ends(document: Document) -> Iterator[Finding]:
    text = document.text
    if "\r" not in text:
        return
    returns, both, feeds = text.count("\r"), text.count("\r\n"), text.count("\n")
    if returns == feeds == both or (feeds == 0):
        return
    first = ""
    for match in _LINE_END.finditer(text):
        first = first or match[0]
        if match[0] != first:
            message = f"Lines end in {_END_NAMES[first]} above and in {_END_NAMES[match[0]]} here. Save with one kind."
            yield fault("mixed-line-endings", document, Span(*match.span()), message)
            return


def _long_lines(document: Document) -> Iterator[Finding]:
    starts = (*document.line_starts, len(document.text))
    for start, end in pairwise(starts):
        if end - start > limits.LINE_CHARACTERS + 2:
            message = f"This line is longer than {limits.LINE_CHARACTERS} characters. Break it."
            yield fault("line-too-long", document, Span(start, start + 1), message)
