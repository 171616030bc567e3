"""The page of the claims register: how many entries answer what, by kind and market."""

from __future__ import annotations

from collections import Counter

from spoonproof.claims.coverage import table as coverage_table
from spoonproof.knowledge import Knowledge
from spoonproof.reference.markdown import code, table


def register_page() -> str:
    """Topics with their counts, by basis, and the coverage table."""
    register = Knowledge().register
    files = Counter(entry.document.path.rpartition("/")[2] for entry in register.entries)
    bases = Counter(ref.basis for entry in register.entries for ref in entry.refs)
    return "\n\n".join(
        [
            "# The claims register",
            "`claims/*.yaml` hold the entries, one file a topic; `claims/README.md` says how an entry is written and "
            "which one speaks when several could. `spoonproof explain ENTRY` prints one with its sources. "
            "None of its answers is legal advice.",
            "## Topics",
            table(("file", "entries"), [(code(name), str(count)) for name, count in sorted(files.items())]),
            "## What the answers rest on",
            "Sources cited by entries: read by us, a rule of the trade, or recalled and waiting to be read. What is "
            "recalled never makes an error.",
            table(("basis", "citations"), [(basis, str(count)) for basis, count in sorted(bases.items())]),
            "## Which advice it can lead to",
            "Entries that can lead to an advice, by kind and market; a dash is a hole. An entry counts in each cell "
            "that it can lead to.",
            "```text\n" + coverage_table(register) + "\n```",
        ]
    )
