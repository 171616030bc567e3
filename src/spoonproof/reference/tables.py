"""The page of tables: every file of ``shared/`` with its rows, columns and sources."""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.knowledge import Knowledge
from spoonproof.model.citation import short
from spoonproof.reading.bundle import bundle_root
from spoonproof.reference.markdown import code, table


def tables_page() -> str:
    """Tables with what they hold, then every source they cite."""
    knowledge = Knowledge()
    cited = [(code(name), short(name, knowledge.sources)) for name in sorted(knowledge.sources)]
    return "\n\n".join(
        [
            "# Tables",
            "One fact a row, a source id on each. A channel lays its own rows over them by id, in its own `shared/`. "
            "`shared/README.md` says what each is for, `shared/LICENCES.md` whose terms hold.",
            table(("table", "rows", "columns"), _tables(knowledge)),
            "## Sources",
            table(("id", "source"), cited),
        ]
    )


def _tables(knowledge: Knowledge) -> Iterator[tuple[str, str, str]]:
    for name in sorted(path.stem for path in (bundle_root() / "shared").glob("*.csv")):
        rows = knowledge.rows(name)
        yield code(name), str(len(rows)), ", ".join(rows[0].cells) if rows else ""
