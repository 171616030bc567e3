"""``sources``: what is cited, incomplete, uncited or due. Asks no network unless told to."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from typing import TYPE_CHECKING

from spoonproof.commands import channel_or_none, new_parser

if TYPE_CHECKING:
    from spoonproof.knowledge import Knowledge


def parser() -> ArgumentParser:
    """The arguments of ``sources``."""
    return new_parser("sources", "List the sources: cited, incomplete, uncited, due.", ("text", "jsonl"))


def run(options: Namespace) -> int:
    """Print every source with its state; 1 when one is incomplete, missing or due."""
    import json

    from spoonproof.knowledge import Knowledge
    from spoonproof.report.terminal import write

    folder = channel_or_none(options)
    knowledge = folder.knowledge if folder else Knowledge()
    states = list(source_states(knowledge))
    if options.format == "jsonl":
        write(json.dumps(state, ensure_ascii=False) for state in states)
    else:
        write(_lines(states))
    return 1 if any(state["faults"] for state in states) else 0


def source_states(knowledge: Knowledge) -> Iterator[dict[str, object]]:
    """Each source: id, citation, address, how often cited, and its faults in words."""
    from spoonproof.model.citation import UNPUBLISHED, address, issued_year, short

    cited = citations(knowledge)
    for source in sorted({*knowledge.sources, *cited} - set(UNPUBLISHED)):
        item = knowledge.sources.get(source)
        faults = []
        if item is None:
            faults.append("cited, but nowhere defined")
        else:
            faults += [f"has no {key}" for key in ("type", "title") if not item.get(key)]
            if not item.get("author") and not item.get("publisher"):
                faults.append("has neither author nor publisher")
            if not address(source, knowledge.sources) and not item.get("ISBN"):
                faults.append("has no address")
        yield {
            "id": source,
            "citation": short(source, knowledge.sources),
            "address": address(source, knowledge.sources),
            "year": issued_year(item) if item else "",
            "cited": cited.get(source, 0),
            "faults": faults,
        }


def citations(knowledge: Knowledge) -> dict[str, int]:
    """How often each source id is cited by the tables and the register."""
    from pathlib import Path

    from spoonproof.reading.bundle import bundle_root

    counts: dict[str, int] = {}
    for path in sorted((bundle_root() / "shared").glob("*.csv")):
        for row in knowledge.rows(Path(path).stem):
            if source := row.text("source"):
                counts[source] = counts.get(source, 0) + 1
    for entry in knowledge.register.entries:
        for ref in {*entry.refs, *(ref for allowance in entry.allowed for ref in allowance.refs)}:
            counts[ref.id] = counts.get(ref.id, 0) + 1
    return counts


def _lines(states: list[dict[str, object]]) -> Iterator[str]:
    for state in states:
        count = state["cited"]
        yield f"{state['id']}: {state['citation']}"
        if state["address"]:
            yield f"    {state['address']}"
        yield f"    cited {count} time{'s' if count != 1 else ''}" if count else "    not cited by any table or entry"
        faults = state["faults"]
        yield from (f"    needs mending: {fault}" for fault in (faults if isinstance(faults, list) else ()))
    wrong = sum(1 for state in states if state["faults"])
    yield f"{len(states)} sources; {wrong} need mending."
