"""Words that open a clause, as every reader of sentences knows them; each adds what only its sentences part at."""

from __future__ import annotations

OPENERS = frozenset("because cos since while whilst whereas although though when whenever once unless if".split())
IN_TIME = frozenset("as before after until till".split())
"""Those that say when, and as often stand before a noun: "after lunch", "as a snack"."""
