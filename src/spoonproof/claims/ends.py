"""Where a stretch of written text begins new sentences: what is plain is settled here, the rest asked of a splitter.

A full stop after a plain word or number, a quote or brackets within a sentence, with a capital after it, ends a
sentence; one with a small letter after it ends none.
The splitter would say the same (``tests/claims/test_ends.py`` holds them against each other; it takes the C of °C and
that of vitamin C for an initial, and we don't), but takes a token's time for every token. It is asked about a stretch
between two plain ends that holds anything else: sentences in brackets, quotes after a full stop, abbreviations.
"""

from __future__ import annotations

import re
from functools import lru_cache

_EVENT = re.compile(r"[^\w \n\t,:'\"“”‘’%…–—\-/&+*=~°#|`<>@$^\\]")
_PLAIN_END = re.compile(r"[.!?;][ \n\t]+(?=[A-Z“-]|\d{1,2}[ :])")
_WORD_BEFORE = re.compile(
    r"(?:[A-Z]?[a-z]+|°[CF]|\b[Vv]itamins? (?:[A-E],? (?:and |or |& ))?[A-EK]|[a-z:,] \d{1,3}|[a-z][/\"”]|[)\]}])\Z"
)
_INSIDE = r"(?:[^()\[\]{}.!?;…]|\.\.\.(?=[\w\"])){0,120}"
_GOES_ON = re.compile(
    r"[.!?;]++[\"”]?(?:[ \n\t]+(?=[a-z])|[ \n\t]*\Z)"
    r"|(?<=[a-z0-9])\.(?=[a-z0-9])|(?<=[A-Z]{3})\.(?=[a-z])|(?<=/\*)\.(?=[a-z])|(?<= )\.(?=[a-z])"
    rf"|(?<=[\w,:=] )(?:\({_INSIDE}\)|\[{_INSIDE}\]|{{{_INSIDE}}})(?=[ \n\t]+[a-z]|[,:]|(?<=[\w\"][)\]}}])[.!?])"
)
_RUN = re.compile(r"[.!?;]*")
_BRACKETS = frozenset("()[]{}")
_ENDS = frozenset(".!?")
_AMID = re.compile(r"[\w)\]}],? [a-z]+,? \Z")
_MONTHS = frozenset("Jän Jan Ene Feb Mär Mar Mzo Apr Abr May Jun Jul Ago Aug Sep Set Oct Okt Nov Dic Dez Dec".split())
_STARTER = re.compile(r"(?:The|This|It|In) [a-z]")
_LONGEST = 20  # letters looked back over
_NAME = 5  # letters of a capitalised word that is no abbreviation
ABBREVIATIONS = frozenset(
    "ap ca cf de dr dt en es ff fr mr ms mt no nr sr st vs "
    "adm afmo alt apdo approx art atte atto ave bmo brig bsp bspw bzgl bzw cap capt cmdt cnel col dgl emp etc evtl "
    "excl exca excmo exsmo fig figs gal gen ggf gob gral hno hnos incl inkl ldo lic lit mag max med min mos nat ntra "
    "ntro pag phil prof rer resp sci sra srta synth tab tel univ vda vol vta zit zzgl lun mar mie jue vie sab dom "
    "abl abr ago agto dic feb febr jul jun may mrs mzo nov oct sep sept set setbre novbre octbre dicbre ene".split()
)
"""In small letters: a full stop after one of these, as after a single letter, is asked about."""


@lru_cache(maxsize=4096)
def starts_in(part: str) -> tuple[int, ...]:
    """Offsets where sentences begin in a paragraph ``part``, ascending; the first is 0. Linear in its length."""
    starts, begin, unsure, at = [0], 0, False, 0
    while (event := _EVENT.search(part, at)) is not None:
        where = event.start()
        end = _PLAIN_END.match(part, where)
        if end is not None and _ends_word(part, where, end.end()):
            if unsure:
                starts += _asked(part[begin : end.end()], begin)
                unsure = False
            begin = at = end.end()
            starts.append(begin)
            continue
        found = _GOES_ON.match(part, where)
        if found is None or (
            part[found.end() : found.end() + 1] in _ENDS and event.group() in _BRACKETS and not _amid(part, where)
        ):
            if event.group() in _BRACKETS:
                # What stands in brackets may reach over ends that look plain; those before it stand.
                return (*starts, *_asked(part[begin:], begin))
            run = _RUN.match(part, where)
            unsure, at = True, max(where + 1, run.end() if run is not None else 0)
        else:
            at = found.end()
    if unsure:
        starts += _asked(part[begin:], begin)
    return tuple(starts)


def forget() -> None:
    """Forget every text that was cut: for measuring."""
    starts_in.cache_clear()
    _whole.cache_clear()


def _ends_word(part: str, at: int, after: int) -> bool:
    """Whether a plain word ends at ``at``, degrees, or a vitamin: nobody's initial follows that word. A number, a quote
    or a bracket may end there too; ``after`` is where the next sentence would begin."""
    found = _WORD_BEFORE.search(part, max(0, at - _LONGEST), at)
    if found is None:
        return False
    word, start = found.group(), found.start()
    if word[-1].isdigit():
        return part[after : after + 3] not in _MONTHS
    if word[0] == "°" or word[-1].isupper():
        return part[after].isupper()
    if not word[-1].isalpha():
        return True
    before = part[start - 1 : start]
    if before == ".":  # "in look.css. The colours"
        return (
            len(word) > 1
            and (part[start - 2].isalnum() or part[start - 2] == "*")
            and _STARTER.match(part, after) is not None
        )
    opens = before in " \n\t" or (before == "-" and part[start - 2 : start - 1].isalnum())
    return opens and len(word) >= (2 if word.islower() else _NAME) and word.lower() not in ABBREVIATIONS


def _amid(part: str, at: int) -> bool:
    """Whether at least two words of the sentence stand before the bracket at ``at``."""
    return _AMID.search(part, max(0, at - 2 * _LONGEST), at) is not None


def _asked(stretch: str, begin: int) -> list[int]:
    return [begin + start for start in _whole(stretch)[1:]]


@lru_cache(maxsize=4096)
def _whole(part: str) -> tuple[int, ...]:
    """What the splitter says; its tokens know where they stand."""
    import syntok.segmenter as segmenter

    starts = [
        sentence[0].offset for paragraph in segmenter.analyze(part) for sentence in paragraph if len(sentence) > 0
    ]
    return (0, *(s for s in starts if s > 0))
