"""How much a person's file may hold, in one place. Our own tables are not bound by these.

Nobody writes a recipe near these sizes; a file that reaches one is broken or hostile, and stopping
early keeps every command quick. Messages name the limit that was met.
"""

from __future__ import annotations

from typing import Final

FILE_BYTES: Final = 1 << 20
"""Bytes of one recipe, channel or claims file."""

HEAD_CHARACTERS: Final = 64 << 10
"""Characters of the part of a recipe between its two ``---`` lines."""

YAML_DEPTH: Final = 32
YAML_NODES: Final = 20_000
LIST_LENGTH: Final = 500
SCALAR_CHARACTERS: Final = 10_000
LINE_CHARACTERS: Final = 10_000

FOOD_LINE_CHARACTERS: Final = 400
STEP_CHARACTERS: Final = 2_000
"""The longest food line and step that are read: nobody cooks from longer ones, and reading them takes time."""

STEP_DAYS: Final = 31
"""The longest time of a step that is read, in days: longer than the longest pickle (common practice, no source)."""

CHANNEL_FILES: Final = 20_000
"""Files of one channel."""

FILM_HOURS: Final = 99
"""The latest hour at which a cue of a film may stand."""

MARKDOWN_NESTING: Final = 20

SAME_FAULT: Final = 20
"""How often one kind of character fault is told in a file before the rest is only counted."""

NAME_HINTS: Final = 20
"""How many unknown foods of one file are given the names they may have meant."""

SLUG_CHARACTERS: Final = 80
"""Length of a recipe's slug; longer names break on some systems."""
