"""Numbers as people type them in recipes, read exactly or refused with the reason.

Whole numbers, decimals with a point, and fractions in any dress (1/2, 1⁄2, ½, 1½, 1 ½, 1 1/2) become
``Fraction``s. A comma is never guessed at, and only the plain digits 0-9 are digits.
"""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from spoonproof.model.record import NamedTuple

SMALLEST, LARGEST = Fraction(1, 1000), Fraction(100_000)
"""The range of numbers that a kitchen means (a milligram to a hundred kilograms, or as many pieces)."""

_LEXEME = re.compile(r"[0-9](?:[0-9.,_']*[0-9])?")
_EXPONENT = re.compile(r"[eE]([+\-−]?[0-9]+)(?![\w])")
_PLAIN = re.compile(r"(?<![0-9])[0-9]+(?:\.[0-9]+)?\Z")
_THOUSANDS = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+\Z")
_SLASH = re.compile(r"[ \t]?[/⁄∕÷][ \t]?(?=[0-9])")
_SPACES = re.compile(r"[ \t\u00a0\u2009\u202f]{0,9}")
_RANGE = re.compile(
    r"(?i)[ \t\u00a0\u2009\u202f]{0,9}(?:[-‐‑‒–—−~]|\bto\b|\bor\b"
    r"|\bup to\b)[ \t\u00a0\u2009\u202f]{0,9}(?=[0-9.½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅐⅑⅒])"
)
_NOT_FINITE = re.compile(r"(?i)[+\-−]?\.?(?:inf|infinity|∞)(?![\w])")
_NOT_NUMBER = re.compile(r"(?i)\.?nan(?![\w])")
_MINUS = "-−–"
_HYPHENED = re.compile(r"[-‐‑](?=([0-9]{1,3})/([0-9]{1,3})(?![0-9/])|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])")


class Number(NamedTuple):
    """A number at ``text[start:end]``: ``value`` exact, or None with the rule it breaks and why, for a cook."""

    value: Fraction | None
    start: int
    end: int
    rule: str = ""
    message: str = ""
    remedy: str = ""


def number_at(text: str, at: int) -> Number | None:
    """The number that starts exactly at ``at``; None when none does. Never raises; linear in its length."""
    if at >= len(text):
        return None
    char = text[at]
    if char in "+-−–.":
        return _signed(text, at)
    if char in "iI∞nN" and (no_number := _no_number(text, at)):
        return no_number
    if char in "0123456789":
        return _digits(text, at)
    if _vulgar(char) is not None:
        return _fraction_signs(text, at, at, Fraction(0))
    if char.isdigit():
        end = next((n for n in range(at, len(text)) if not text[n].isdigit()), len(text))
        message = f"“{text[at:end]}” is written with digits other than 0 to 9"
        return _no(at, end, "digits-not-plain", message, "Type the number with the plain digits 0 to 9.")
    return None


def _no_number(text: str, at: int) -> Number | None:
    """What stands for no number at all: "inf", ".nan"."""
    if found := _NOT_NUMBER.match(text, at):
        return _no(at, found.end(), "not-a-number", f"“{found[0]}” is not a number")
    if found := _NOT_FINITE.match(text, at):
        return _no(at, found.end(), "quantity-not-finite", f"“{found[0]}” is no amount that a pan can hold")
    return None


def range_sign(text: str, at: int) -> int | None:
    """Where the second number of a range starts, when a range sign ("-", "–", "to", "or") stands at ``at``."""
    found = _RANGE.match(text, at)
    return found.end() if found else None


def show(value: Fraction) -> str:
    """A number as a cook writes it: 2, 0.5, 1 1/3; what is read back from it is the same number."""
    if value.denominator == 1:
        return str(value.numerator)
    places = next((n for n in range(1, 22) if (value * 10**n).denominator == 1), 0)
    if places and value.denominator <= 10**6:  # a finite decimal: exact in as many places as the denominator has
        whole, part = divmod((value * 10**places).numerator, 10**places)
        return f"{whole}.{part:0{places}d}"
    whole, part = divmod(value.numerator, value.denominator)
    return f"{whole} {part}/{value.denominator}" if whole else f"{part}/{value.denominator}"


def _signed(text: str, at: int) -> Number | None:
    after = at + 1
    if no_number := _no_number(text, at):
        return no_number
    if text[at] == ".":
        if after >= len(text) or text[after] not in "0123456789":
            return None
        inner = _digits(text, after)
        if inner.value is None or inner.value.denominator != 1 or "." in text[after : inner.end]:
            return inner._replace(start=at)
        digits = inner.end - after
        return _in_range(Number(inner.value / 10**digits, at, inner.end), text)
    if after >= len(text) or not (text[after] in "0123456789." or _vulgar(text[after]) is not None):
        return None
    inner_any = number_at(text, after)
    if inner_any is None:
        return None
    if text[at] in _MINUS:
        message = f"“{text[at : inner_any.end]}” is below zero: an amount has to be more than nothing"
        remedy = "Take the minus sign away, or write a range as “2-3”."
        return _no(at, inner_any.end, "quantity-not-positive", message, remedy)
    return inner_any._replace(start=at)


def _digits(text: str, at: int) -> Number:
    found = _LEXEME.match(text, at)
    assert found is not None  # called on a digit
    written, end = found[0], found.end()
    power = _EXPONENT.match(text, end)
    if power is not None:
        return _scientific(text, at, written, power)
    if "," in written or "_" in written or "'" in written:
        return _ambiguous(at, end, written)
    if not _PLAIN.match(written):
        return _no(at, end, "not-a-number", f"“{written}” is not a number: it has more than one point")
    if len(written) > 1 and written[0] == "0" and written[1] != ".":
        plain = written.lstrip("0") or "0"
        message = f"“{written}” starts with a nought: it can mean {plain} or, with a point left out, 0.{written[1:]}"
        return _no(at, end, "ambiguous-number", message, f"Write {plain} or 0.{written[1:]}.")
    if len(written) > 13:
        return _out_of_range(at, end, written)
    value = Fraction(written)
    slash = _SLASH.match(text, end)
    if slash is not None:
        return _typed_fraction(text, at, at, value, end, slash.end(), Fraction(0))
    if value.denominator == 1 and "." not in written:
        mixed = _mixed(text, at, end, value)
        if mixed is not None:
            return mixed
    return _in_range(Number(value, at, end), text)


def _mixed(text: str, at: int, end: int, whole: Fraction) -> Number | None:
    """``1½``, ``1 ½``, ``1 1/2``, ``1 and 1/2``, ``1-1/2``: a whole number with a fraction after it."""
    hyphen = _HYPHENED.match(text, end)
    if hyphen is not None and hyphen[1] is not None and int(hyphen[1]) >= int(hyphen[2]):
        hyphen = None  # "1-3/2" is no mixed number
    spaces = hyphen or _SPACES.match(text, end)
    after = spaces.end() if spaces else end
    joint = next((joint for joint in ("and ", "& ") if text[after : after + len(joint)].lower() == joint), "")
    after += len(joint)
    if after >= len(text):
        return None
    if _vulgar(text[after]) is not None:
        return _fraction_signs(text, at, after, whole)
    if after > end and text[after] in "0123456789":
        second = _LEXEME.match(text, after)
        if second is not None and second[0].isdigit():
            slash = _SLASH.match(text, second.end())
            if slash is not None:
                top = Fraction(second[0]) if len(second[0]) < 10 else LARGEST * 2
                return _typed_fraction(text, at, after, top, second.end(), slash.end(), whole)
    return None


def _typed_fraction(
    text: str, start: int, top_at: int, top: Fraction, top_end: int, bottom_at: int, whole: Fraction
) -> Number:
    bottom = _LEXEME.match(text, bottom_at)
    assert bottom is not None  # the slash is only taken before a digit
    end = bottom.end()
    again = _SLASH.match(text, end)
    if again is not None:
        last = _LEXEME.match(text, again.end())
        end = last.end() if last else end
        return _no(start, end, "not-a-number", f"“{text[start:end]}” has two fraction bars")
    shown = text[start:end]
    if not bottom[0].isdigit() or not text[top_at:top_end].isdigit() or len(bottom[0]) > 9:
        return _no(start, end, "not-a-number", f"“{shown}” is not a fraction of two whole numbers")
    if int(bottom[0]) == 0:
        return _no(start, end, "not-a-number", f"“{shown}” divides by nought")
    if end < len(text) and _vulgar(text[end]) is not None:
        return _no(start, end + 1, "not-a-number", f"“{text[start : end + 1]}” is two fractions side by side")
    return _in_range(Number(whole + top / int(bottom[0]), start, end), text)


def _fraction_signs(text: str, start: int, at: int, whole: Fraction) -> Number:
    end = at + 1
    while end < len(text) and (_vulgar(text[end]) is not None or text[end] in "0123456789⁄"):
        end += 1
    if end > at + 1:
        message = f"“{text[start:end]}” is not a number: after “{text[at]}” nothing more can follow"
        return _no(start, end, "not-a-number", message, "Write one fraction, as in ½ or 1½.")
    part = _vulgar(text[at])
    assert part is not None  # called on a fraction sign
    return _in_range(Number(whole + part, start, end), text)


def _vulgar(char: str) -> Fraction | None:
    """The value of a fraction sign such as ½; None for anything else."""
    if char.isascii() or not unicodedata.decomposition(char).startswith("<fraction>"):
        return None
    top, _, bottom = unicodedata.normalize("NFKC", char).partition("⁄")
    return Fraction(int(top), int(bottom)) if top.isdigit() and bottom.isdigit() and int(bottom) else None


def _scientific(text: str, at: int, written: str, power: re.Match[str]) -> Number:
    end = power.end()
    shown = text[at:end]
    digits = power[1].replace("−", "-")
    if len(digits) > 4 or int(digits) > 308:
        return _no(at, end, "quantity-not-finite", f"“{shown}” is larger than any number a computer keeps")
    if not _PLAIN.match(written) or len(written) > 13 or abs(int(digits)) > 12:
        return _out_of_range(at, end, shown)
    return _in_range(Number(Fraction(written) * Fraction(10) ** int(digits), at, end), text)


def _ambiguous(at: int, end: int, written: str) -> Number:
    thousand = written.replace(",", "").replace("_", "").replace("'", "")
    if _THOUSANDS.match(written) and written.count(",") == 1:
        point = written.replace(",", ".")
    elif "." in written and written.rfind(".") < written.rfind(","):
        point, thousand = written.replace(".", "").replace(",", "."), f"a list, {written.replace(',', ', ')}"
    elif written.count(",") == 1 and "." not in written and "_" not in written:
        point, thousand = written.replace(",", "."), f"two numbers, {written.replace(',', ' and ')}"
    else:
        point = f"a list, {written.replace(',', ', ').replace('_', ' ')}"
    remedy = "Write decimals with a point (1.5) and thousands without a mark (1500)."
    return _no(at, end, "ambiguous-number", f"“{written}” can be read as {point} or as {thousand}", remedy)


def _in_range(number: Number, text: str) -> Number:
    value = number.value
    assert value is not None
    if value <= 0:
        message = f"“{text[number.start : number.end]}” is nothing: an amount has to be more than nought"
        remedy = "Write the amount that goes in, or take the line out."
        return _no(number.start, number.end, "quantity-not-positive", message, remedy)
    if not SMALLEST <= value <= LARGEST:
        return _out_of_range(number.start, number.end, text[number.start : number.end])
    return number


def _out_of_range(at: int, end: int, written: str) -> Number:
    shown = written if len(written) <= 24 else written[:21] + "..."
    message = f"“{shown}” is not an amount that anybody cooks with (0.001 to 100000)"
    return _no(at, end, "quantity-out-of-range", message, "Check the digits, and the unit.")


def _no(start: int, end: int, rule: str, message: str, remedy: str = "") -> Number:
    return Number(None, start, end, rule, message, remedy)
