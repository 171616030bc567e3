"""Whether words tell of an egg that is not set: "dippy", "the yolk runs like custard"."""

from __future__ import annotations

import re

_RUNNY = re.compile(
    r"\b(?:runny|dippy|jammy|oozing|oozy|oozes?|gooey|sunny side up|(?:golden|yellow|orange) and flowing"
    r"|(?<!\bno )yolks? (?:(?:is|are|was|still|all|that) )*(?:r[au]n(?:s|ning)?|flow\w*|drip\w*|spill\w*|ooz\w*|pour\w*"
    r"|burst\w*|trickl\w*|liquid|wet|loose|soft|molten)|yolks? (?:\w+ ){0,2}like (?:honey|cream|lava|syrup"
    r"|custard|treacle|gold)|(?<!nothing is )(?:glassy|slimy)|liquid yolk"
    r"|soft[- ]boiled|(?:barely|hardly|scarcely|half|not quite|never quite) (?:cooked|done|turned)|eggs? soft\b"
    r"|(?:dips?|dunks?|dipping) (?:\w+ )?(?:soldiers|fingers|toast|bread) in|in the (?:yellow|yolk)"
    r"|soft (?:yolks?|in the middle)|(?:barely|just|hardly|half)[- ]set|loose|wobbly|under(?:done|cooked)"
    r"|still (?:soft|wet|liquid|see-through))\b",
    re.I,
)
_SETTLED = re.compile(
    r"\b(?:no longer|nothing(?: is| was)?|not|never|no|stops? being|\w+n['’]t) (?:\w+ ){0,2}?(?:runny|wobbly"
    r"|jammy|loose|wet|liquid|soft|gooey|dippy|glassy)\b",
    re.I,
)
"""What denies it: "until the white is no longer glassy"."""

_LONG_BOILED = re.compile(r"\b(?:boil\w*|eggs?)\b[^.;]{0,24}\b(?:ten|twelve|1[0-5]) minutes\b", re.I)


def runny(said: str) -> bool:
    """Whether ``said`` calls it soft, and doesn't say that it is so no longer."""
    return _RUNNY.search(_SETTLED.sub(" ", said)) is not None and _LONG_BOILED.search(said) is None
