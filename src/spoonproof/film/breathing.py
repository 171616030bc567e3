"""Where a sentence breathes: speech cut into captions and captions into lines, at the pauses a speaker makes.

A break after a mark of punctuation is best, then one before a conjunction, then before a preposition; an article and
its noun, a preposition and its phrase, a figure and its unit stay together (source: bbc-subtitle-guidelines).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

LINE_CHARACTERS = 32  # source: dcmp-guidelines; it keeps within the 37 of bbc-subtitle-guidelines
LINES = 2  # source: bbc-subtitle-guidelines, for a wide picture

_SENTENCE_END = re.compile(r"(?<=[.!?…])\s+|(?<=[.!?…][\"”’)])\s+")
_GAP = re.compile(r"\s+")
_CONJUNCTIONS = frozenset(
    "and but or nor so yet because until till when while if unless although though since then which who that where "
    "before after whereas".split()
)
_PREPOSITIONS = frozenset(
    "of in on at for from with by into onto over under through without about around between to off up down out".split()
)
_HOLDS_ON = _PREPOSITIONS | frozenset(
    "a an the my your his her its our their this these those some any no not every each i you he she it we they is are "
    "was were be been has have had will can may must should do does did very too as and but or if when until than one "
    "two three four five six seven eight nine ten half about so what how why whether same other own such".split()
)
"""Words that belong to what comes after them: no break behind them."""

_HELD = frozenset("it them him us me".split())
"""Words that belong to what comes before them."""

_FIGURE = re.compile(r"[\d½¼¾⅓⅔.,–-]+")
_MARK, _BEFORE_CONJUNCTION, _BEFORE_PREPOSITION, _PLAIN, _TORN = 0.0, 2.0, 4.0, 12.0, 25.0
"""What a break costs, beside how far it lies from the middle (0 to 10)."""

_SHORT_COST = 4.0  # a part too short to be read in peace


def sentences(text: str) -> list[str]:
    """The sentences of a spoken line; a full stop inside a number does not end one."""
    guarded = re.sub(r"(?<=\d)\.(?=\d)", "\u2024", " ".join(text.split()))
    return [part.replace("\u2024", ".") for part in _SENTENCE_END.split(guarded) if part]


def chunks(
    text: str,
    lasts: Callable[[str], float],
    least: float,
    most: float,
    needs: Callable[[str], float] | None = None,
    spare: float = 0.0,
) -> list[str]:
    """``text`` cut into parts that fit two lines and last at most ``most`` seconds by ``lasts``.

    A sentence of less than ``least`` seconds is taken together with the one after it (the last with the one before),
    unless the two are more than one part: then each stands by itself, where the short one can take what it lacks of
    the seconds it ``needs``, ``spare`` at most, from a part beside it.
    """
    groups: list[str] = []
    for sentence in sentences(text):
        if groups and lasts(groups[-1]) < least:
            groups[-1] += f" {sentence}"
        else:
            groups.append(sentence)
    if len(groups) > 1 and lasts(groups[-1]) < least:
        last = groups.pop()
        groups[-1] += f" {last}"
    result: list[str] = []
    for group in groups:
        together = _fitting(group, lasts, least, most)
        apart = [part for sentence in sentences(group) for part in _fitting(sentence, lasts, least, most)]
        can_be = len(together) > 1 and needs is not None and _can_borrow(apart, lasts, needs, spare)
        result += apart if can_be else together
    return result


def _can_borrow(
    parts: Sequence[str], lasts: Callable[[str], float], needs: Callable[[str], float], spare: float
) -> bool:
    """Whether each part that is too short for its words finds what it lacks in a part beside it."""
    over = [lasts(part) - needs(part) for part in parts]
    beside = [max(over[at - 1 : at] + over[at + 1 : at + 2], default=0.0) for at in range(len(parts))]
    return all(own >= 0 or -own <= min(spare, other) for own, other in zip(over, beside, strict=True))


def _fitting(text: str, lasts: Callable[[str], float], least: float, most: float) -> list[str]:
    at = None
    made = lines(text)
    unquiet = len(made) == LINES and torn(*made) and lasts(text) >= 2 * least
    if len(made) > LINES or lasts(text) > most or unquiet:
        at = _best(text, lambda left, right: _SHORT_COST * ((lasts(left) < least) + (lasts(right) < least)))
    if at is None:
        return [text]
    left, right = text[:at].rstrip(), text[at:].lstrip()
    return [*_fitting(left, lasts, least, most), *_fitting(right, lasts, least, most)]


def lines(text: str, width: int = LINE_CHARACTERS) -> list[str]:
    """``text`` in lines of at most ``width`` characters; in two that breathe where two are enough."""
    if len(text) <= width:
        return [text]
    at = _best(text, lambda left, right: 0.0 if max(len(left), len(right)) <= width else 1000.0)
    if at is not None:
        pair = [text[:at].rstrip(), text[at:].lstrip()]
        if max(map(len, pair)) <= width:
            return pair
    found: list[str] = []
    for word in text.split():
        if found and len(found[-1]) + 1 + len(word) <= width:
            found[-1] += f" {word}"
        else:
            found.append(word)
    return found


def _best(text: str, more: Callable[[str, str], float]) -> int | None:
    """Where the break with the least cost ends; None when there is no gap."""
    words = text.split()
    gaps = [match.end() for match in _GAP.finditer(text)]
    if not gaps:
        return None
    middle = len(text) / 2

    def cost(pair: tuple[int, int]) -> tuple[float, int]:
        number, at = pair
        return (
            _tears(words, number) + 10 * abs(at - middle) / middle + more(text[:at].rstrip(), text[at:].lstrip()),
            at,
        )

    return min(enumerate(gaps), key=cost)[1]


def _tears(words: Sequence[str], gap: int) -> float:
    """What a break after word ``gap`` costs by the words around it."""
    before, after = words[gap], words[gap + 1]
    plain = after.lower().strip("\"'“”‘’()")
    if before[-1] in ".!?…:;—" or (len(before) > 1 and before[-1] in '"”’)' and before[-2] in ".!?…"):
        return _MARK
    if before[-1] == ",":
        return _MARK + 1.0
    held = before.lower() in _HOLDS_ON and [word.lower() for word in words[gap - 1 : gap + 1]] != ["to", "do"]
    if held or _FIGURE.fullmatch(before) or plain in _HELD:
        return _TORN
    if plain == "to" and before[-1:].isdigit():
        return _TORN
    if plain in _CONJUNCTIONS:
        return _BEFORE_CONJUNCTION
    return _BEFORE_PREPOSITION if plain in _PREPOSITIONS else _PLAIN


def torn(first: str, second: str) -> bool:
    """Whether a break between these two parts tears apart what belongs together."""
    words = [*first.split(), *second.split()]
    return _tears(words, len(first.split()) - 1) >= _TORN
