"""What was read and found in a recipe's text before: its head, its steps, its claims; never what was thought of them.

An entry is kept under the text, the name it is shown by, the kitchen measures, the tables and the code. Judging needs
the day, the register and the other recipes, and is done afresh each time.
"""

from __future__ import annotations

import contextlib
import json
from collections.abc import Sequence
from pathlib import Path

from spoonproof.cache import Cache, hashed
from spoonproof.compiled import stamp
from spoonproof.model.channel import Channel
from spoonproof.model.claim import Claim
from spoonproof.model.finding import Finding
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import NamedTuple
from spoonproof.model.text import Document
from spoonproof.packing import NotPackable, pack, unpack


class Read(NamedTuple):
    """A recipe as read, the faults of its reading, and the claims found in it, unjudged."""

    recipe: Recipe
    faults: Sequence[Finding]
    claims: Sequence[Claim]


class Recall:
    """The readings of one channel that are at hand."""

    def __init__(self, root: Path, own_tables: Sequence[Path], measures: str) -> None:
        """``root``: the channel's folder. ``own_tables``: its own tables, which have a say in what is read.
        Raises OSError when one of them can't be read."""
        tables = [part for path in own_tables for part in (path.name, path.read_bytes())]
        self._cache = Cache(root, f"read-{hashed(stamp(), measures, *tables)}")

    def get(self, document: Document) -> Read | None:
        """What was read in this very text."""
        body = self._cache.get(_key(document))
        if body is None:
            return None
        try:
            recipe, faults, claims = unpack(json.loads(body), document)
        except (ValueError, TypeError, RecursionError):
            return None
        usual = isinstance(recipe, Recipe) and all(isinstance(found, Finding) for found in faults)
        return Read(recipe, faults, claims) if usual and all(isinstance(found, Claim) for found in claims) else None

    def keep(self, read: Read) -> None:
        """Keep it for the next time; what holds something we can't keep is read again then."""
        if not self._cache.keeps:
            return
        document = read.recipe.document
        try:
            data = pack((read.recipe, tuple(read.faults), tuple(read.claims)), document)
        except NotPackable:
            return
        self._cache.put(_key(document), json.dumps(data, separators=(",", ":")).encode())


class ChannelRecall:
    """channel.yaml as it was read before."""

    def __init__(self, root: Path) -> None:
        """``root``: the channel's folder."""
        self._cache = Cache(root, f"channel-{hashed(stamp())}")

    def get(self, document: Document) -> tuple[Channel, Sequence[Finding]] | None:
        """The channel of this very text and the faults of its reading."""
        body = self._cache.get(_key(document))
        if body is None:
            return None
        try:
            channel, faults = unpack(json.loads(body), document)
        except (ValueError, TypeError, RecursionError):
            return None
        if isinstance(channel, Channel) and all(isinstance(found, Finding) for found in faults):
            return channel, faults
        return None

    def keep(self, document: Document, channel: Channel, faults: Sequence[Finding]) -> None:
        """Keep it for the next time."""
        if not self._cache.keeps:
            return
        with contextlib.suppress(NotPackable):
            data = pack((channel, tuple(faults)), document)
            self._cache.put(_key(document), json.dumps(data, separators=(",", ":")).encode())


def _key(document: Document) -> str:
    return hashed(document.path, document.text)
