"""Every page of the reference by file name."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.reference.commands import commands_page
from spoonproof.reference.keys import channel_page, recipe_page
from spoonproof.reference.register import register_page
from spoonproof.reference.rules import rules_page
from spoonproof.reference.tables import tables_page

NOTE = "Made from the code by `python -m spoonproof.reference`; change the code, not this page."


def pages() -> Mapping[str, str]:
    """File name to Markdown, each ending in a newline."""
    made = {
        "commands.md": commands_page(),
        "recipe-file.md": recipe_page(),
        "channel-file.md": channel_page(),
        "rules.md": rules_page(),
        "register.md": register_page(),
        "tables.md": tables_page(),
    }
    return {name: f"{text.rstrip()}\n\n---\n\n{NOTE}\n" for name, text in made.items()}
