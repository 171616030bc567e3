"""What to quote of a danger told in words: the clause around it, with the verb that hands the food over.

A breath of speech runs on for forty words, and three dangers in it would be quoted alike.
"""

from __future__ import annotations

import re
from itertools import pairwise

from spoonproof.feeding.recipients import ADD, BABY, GIVE

_WHOLE = 60
"""Characters: what is no longer is quoted as it is said."""
_WIDE = 110
"""Characters that a quote grows to at most, unless the words found are longer themselves."""
_MORE = 30
"""Characters that the clause may say more than the words found."""
_END = re.compile(r"[.!?;\n]+\s*")
_LEAST = 12
"""Characters: a shorter piece ("and grapes") says nothing by itself."""
_CUT = re.compile(
    r"[,;:()–—\n]+\s*"
    r"|\s(?=(?:and|but|so|because|cos|while|whilst|then|now|right|okay|ok|which|anyway)\s)",
    re.I,
)
_JOINS = re.compile(r"(?:(?:and|but|so|because|cos|while|whilst|then|now|right|okay|ok|anyway)\s+)+", re.I)

_LEFT_OVER = re.compile(r"(?:\W+(?:okay|ok|right|now|then|so|and|but|anyway))+\W*$", re.I)


def clause_around(text: str, within: tuple[int, int], words: tuple[int, int]) -> tuple[int, int]:
    """The place in ``text`` to quote for the danger at ``words`` in the sentence ``within``: the pieces between marks
    and joining words that hold it, and the next ones as far as they tell who gets it and how. Never less than
    ``words``."""
    if within[1] - within[0] <= _WHOLE:
        return within
    cuts = sorted({match.end() for match in _CUT.finditer(text, *within) if not words[0] < match.end() < words[1]})
    edges = [within[0], *(cut for cut in cuts if within[0] < cut < within[1]), within[1]]
    pieces = [piece for piece in pairwise(edges) if text[slice(*piece)].strip()]
    held = [at for at, piece in enumerate(pieces) if piece[0] < words[1] and words[0] < piece[1]]
    if not held:
        return within
    first, last = held[0], held[-1]
    while not _tells(text, pieces[first][0], pieces[last][1]):
        wider = _wider(text, pieces, first, last)
        if wider is None:
            break
        first, last = wider
    return _trimmed(text, pieces[first][0], pieces[last][1], words)


def sentence_around(text: str, words: tuple[int, int]) -> tuple[int, int]:
    """The place to quote for ``words`` that tell of a danger by themselves: their clause in their sentence, or they
    alone where the clause is much longer."""
    start = max((match.end() for match in _END.finditer(text, 0, words[0])), default=0)
    end = _END.search(text, words[1])
    found = _trimmed(text, *_pieces_around(text, (start, end.start() if end else len(text)), words), words)
    return found if found[1] - found[0] <= max(_WHOLE, words[1] - words[0] + _MORE) else words


def _pieces_around(text: str, within: tuple[int, int], words: tuple[int, int]) -> tuple[int, int]:
    """Where the pieces begin and end that hold ``words``."""
    cuts = [match.end() for match in _CUT.finditer(text, *within)]
    start = max((cut for cut in cuts if cut <= words[0]), default=within[0])
    return start, min((cut for cut in cuts if cut >= words[1]), default=within[1])


def _tells(text: str, start: int, end: int) -> bool:
    """Whether the words say by themselves what is done with the food, and are enough to be found again."""
    said = text[start:end]
    return len(said.strip()) >= _LEAST and (GIVE.search(said) or ADD.search(said)) is not None


def _wider(text: str, pieces: list[tuple[int, int]], first: int, last: int) -> tuple[int, int] | None:
    """The same with the neighbour before or behind it, that which tells who gets it and how first; None where there is
    none that tells, or it would be too much."""
    before = (first - 1, last) if first else None
    behind = (first, last + 1) if last + 1 < len(pieces) else None
    best: tuple[int, tuple[int, int]] | None = None
    for option, added in ((before, first - 1), (behind, last + 1)):
        if option is None or pieces[option[1]][1] - pieces[option[0]][0] > _WIDE:
            continue
        said = text[slice(*pieces[added])]
        verb, child = (GIVE.search(said) or ADD.search(said)) is not None, BABY.search(said) is not None
        score = 2 * verb + child
        short = len(text[pieces[first][0] : pieces[last][1]].strip()) < _LEAST
        if (score or short) and (best is None or score > best[0]):
            best = score, option
    return best[1] if best else None


def _trimmed(text: str, start: int, end: int, words: tuple[int, int]) -> tuple[int, int]:
    """Without the joining words at its ends and the marks around."""
    joins = _JOINS.match(text, start, end)
    if joins and joins.end() <= words[0]:
        start = joins.end()
    while start < words[0] and text[start] in " \n,;:–—(":
        start += 1
    left = _LEFT_OVER.search(text, words[1], end)
    end = left.start() if left and left.end() == end else end
    while end > words[1] and text[end - 1] in " \n,;:–—(":
        end -= 1
    return start, end
