"""The words that were said laid beside the words of the script: which are the script's own, and which are not."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import SequenceMatcher

from spoonproof.model.record import dataclass
from spoonproof.reading.spoken import Token, number_words, tokens

ALIKE = 0.8
"""How like two words must be written for one to be the other misheard."""

NEAR = 3
"""How many words apart two matches may be to belong together."""

_HESITATIONS = frozenset("um uh er erm mm hmm mhm".split())
_FILLERS = _HESITATIONS | frozenset("ah oh okay ok well so right yeah like".split())
_NUMBERS = frozenset(word for number in range(101) for word in number_words(number).split()) | {"half", "quarter"}


@dataclass(frozen=True, slots=True)
class Alignment:
    """``said[n]`` is the script's token for the said token ``n``, None where it is off script; ``told`` are the numbers
    of the script's tokens that were said."""

    said: tuple[int | None, ...]
    told: frozenset[int]


def align(said: Sequence[Token], script: Sequence[Token]) -> Alignment:
    """Match what was said with the script, word by word as they are spoken; a token matches whole or not at all."""
    ours, theirs = _spread(said), _spread(script)
    pairs = _pairs([word for word, _ in ours], [word for word, _ in theirs])
    # A token is the script's own when each of its words is, and each of the words of the tokens it stands for.
    bad_said = {owner for at, (_, owner) in enumerate(ours) if at not in pairs}
    matched = set(pairs.values())
    bad_script = {owner for at, (_, owner) in enumerate(theirs) if at not in matched}
    grew = True
    while grew:
        more_said = {ours[a][1] for a, b in pairs.items() if theirs[b][1] in bad_script} - bad_said
        bad_said |= more_said
        more_script = {theirs[b][1] for a, b in pairs.items() if ours[a][1] in bad_said} - bad_script
        bad_script |= more_script
        grew = bool(more_said or more_script)
    own: dict[int, int] = {}
    for a, b in pairs.items():
        if ours[a][1] not in bad_said:
            own.setdefault(ours[a][1], theirs[b][1])
    told = frozenset(theirs[b][1] for a, b in pairs.items() if ours[a][1] not in bad_said)
    return Alignment(tuple(own.get(number) for number in range(len(said))), told)


def _spread(pieces: Sequence[Token]) -> list[tuple[str, int]]:
    return [(word, number) for number, piece in enumerate(pieces) for word in piece.words]


def _pairs(ours: list[str], theirs: list[str]) -> dict[int, int]:
    """Positions in ``ours`` by positions in ``theirs`` of the same word, in order; words misheard by a letter too."""
    found: dict[int, int] = {}
    for tag, a, b, c, d in SequenceMatcher(None, ours, theirs, autojunk=False).get_opcodes():
        if tag == "equal" or (tag == "replace" and b - a == d - c):
            for one, other in zip(range(a, b), range(c, d), strict=True):
                if tag == "equal" or _misheard(ours[one], theirs[other]):
                    found[one] = other
    return _without_strays(found, ours)


def _without_strays(pairs: dict[int, int], ours: list[str]) -> dict[int, int]:
    """The pairs without little words that match far from everything around them: "and" stands in every sentence."""
    blocks: list[list[tuple[int, int]]] = []
    for pair in sorted(pairs.items()):
        last = blocks[-1][-1] if blocks else (-9, -9)
        if pair[0] - last[0] <= NEAR and pair[1] - last[1] <= NEAR:
            blocks[-1].append(pair)
        else:
            blocks.append([pair])
    kept: dict[int, int] = {}
    for block in blocks:
        if len(block) > 2 or any(len(ours[at]) > 3 for at, _ in block) or len(ours) <= 2:
            kept.update(block)
    return kept


def _misheard(one: str, other: str) -> bool:
    if one in _NUMBERS or other in _NUMBERS or min(len(one), len(other)) < 4:
        return False
    return SequenceMatcher(None, one, other).ratio() >= ALIKE


def only_filler(words: Sequence[str]) -> bool:
    """Whether these words say nothing: "um", "well"."""
    return all(word in _FILLERS for word in words)


def only_hesitation(words: Sequence[str]) -> bool:
    """Whether these words are no words: "um"."""
    return bool(words) and all(word in _HESITATIONS for word in words)


def script_tokens(says: Sequence[str]) -> list[tuple[Token, int]]:
    """The tokens of all that is said, each with the number of the speech it is of."""
    return [(token, number) for number, say in enumerate(says) for token in tokens(say)]
