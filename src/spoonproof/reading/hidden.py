"""What a sentence of the method forbids ("without salt") or only likens to ("the size of a pea"): nothing goes in."""

from __future__ import annotations

import re
from collections.abc import Sequence

_LIKENESS = re.compile(
    r"(?i)\b(?:(?:the |a )?(?:size|consistency|texture|thickness|shape|colour|color|look) of|looks? like|resembles?"
    r"|resembling|(?:in )?the same (?:way|manner|method) as"
    r"|(?:the one|just as|as|than) (?:we|you) (?:would |normally )?(?:use|do|cook|make) (?:for|with)?"
    r"|(?<!you )(?<!they )(?<!’d )(?<!'d )like (?=an? |thick |thin |wet |fine |soft |single |double "
    r"|coarse |porridge|breadcrumbs|custard|yog)|(?:shape|shapes|shaped|form|roll|mould|mold|twist"
    r"|press)\b[^.;,]{0,60}? like)[^,;.()]{1,40}?(?=,|;|\.|\)|\(|\b(?:and|then|before|or until|so)\b|$)|\b(?:to|into"
    r"|forms?|makes?|making) an? (?:[\w-]{2,12} ){0,2}(?:paste|pur[ée]e|powder|flour|crumbs?|mash|mince|cream)\b"
)
_AS_AS = re.compile(
    r"(?i)\b(?:as[ \t]{1,9}\w+|thick|thin|smooth|loose|dark|brown|sticky|stiff)[ \t]{1,9}as"
    r"[ \t]{1,9}(?:an?[ \t]{1,9})?(?:\w+[ \t]{1,9})?\w+"
)
_NOT = re.compile(
    r"(?i)\b(?:do not|don['’]t|does not|doesn['’]t|never|no need (?:to|for)|without|instead of|rather than|avoid"
    r"|avoiding|omit|skip|leave out|leaving out|hold the|free (?:of|from)|not|no|nor|neither|except(?: for)?|apart from"
    r"|(?:everything|all)(?: else)?(?: but| bar)|other than)\b"
)
_NOT_NOT = re.compile(
    r"(?i)"
    r"(?:[ \t]{1,9}(?:to[ \t]{1,9})?(?:forget|skip|omit|be (?:shy|afraid|tempted to skip)|leave out|leave off|hold back"
    r"|only|just|until|too|more than|less than|quite|all|yet|hesitate|worry if))\b"
)
_NOT_ENDS = re.compile(
    r"(?i)[.;!?()—]|,[ \t]{0,9}(?:but|then|just|instead|and then)\b|\b(?:but|instead,|then)\b|\s[–-]\s"
)


def hidden_parts(text: str, ends: Sequence[int] = ()) -> list[tuple[int, int]]:
    """The parts of ``text`` that forbid something or only liken to it; a double negative hides nothing."""
    parts = [(m.start(), m.end()) for m in _LIKENESS.finditer(text)]
    parts += [(m.start(), m.end()) for m in _AS_AS.finditer(text)]
    reach = -1
    for match in _NOT.finditer(text):
        if match.start() < reach:
            continue
        if _NOT_NOT.match(text, match.end()):
            continue
        end = _NOT_ENDS.search(text, match.end())
        stop = end.start() if end else len(text)
        reach = min([stop, *(e for e in ends if e > match.end())])
        parts.append((match.start(), reach))
    return sorted(parts)
