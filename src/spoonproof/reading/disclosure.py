"""Words by which a paid film says that it is paid for, and whether a text has them."""

from __future__ import annotations

import re
from collections.abc import Mapping

DISCLOSURE: Mapping[str, str] = {
    "gifted": "Advertisement: some of what you see was given to us.",
    "affiliate": "Advertisement: we earn from links to what you see.",
    "sponsored": "Advertisement: this film is paid for.",
    "own-product": "Advertisement: we sell what you see.",
}
"""What is said and shown for each way of being paid; nothing for editorial work."""

_DISCLOSED = re.compile(
    r"(?i)\b(?:ad|advert|advertisement|advertising|advertorial|sponsor|sponsors|sponsored|"
    r"paid (?:for|partnership|promotion))\b"
)


def disclosed(text: str) -> bool:
    """Whether ``text`` says in plain words that it is advertising or paid for."""
    return _DISCLOSED.search(text) is not None
