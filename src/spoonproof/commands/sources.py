"""``sources``: what is cited, incomplete, uncited or due. Asks no network unless told to."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import channel_or_none, new_parser

if TYPE_CHECKING:
    from spoonproof.folder import ChannelFolder
    from spoonproof.knowledge import Knowledge
    from spoonproof.links.results import Result

RESULTS = Path(".spoonproof") / "links.json"


def parser() -> ArgumentParser:
    """The arguments of ``sources``."""
    found = new_parser("sources", "List the sources: complete, cited, due, and what they cover.", ("text", "jsonl"))
    found.add_argument(
        "--online",
        action="store_true",
        help="ask the network whether each page still stands: slowly, as robots.txt allows, and never inside a "
        f"private network. What was found stands with its date in {RESULTS.as_posix()} of the channel (else of this "
        "folder), and a page asked today is not asked again",
    )
    return found


def run(options: Namespace) -> int:
    """Print every source with its state; 1 when one is incomplete or gone, or an entry is due; 3 with no network."""
    import json

    from spoonproof.knowledge import Knowledge
    from spoonproof.report.terminal import write

    folder = channel_or_none(options)
    knowledge = folder.knowledge if folder else Knowledge()
    states = list(source_states(knowledge))
    results = _online(folder, states) if options.online else _known(folder)
    for state in states:
        result = results.get(str(state["address"]))
        if result is not None:
            state["online"] = {"state": result.state, "on": result.on, "note": result.note, "final": result.final}
            if result.state in ("gone", "refused"):
                _faults(state).append(f"{'is gone' if result.state == 'gone' else 'was not asked'}: {result.note}")
    due = list(_due(knowledge))
    if options.format == "jsonl":
        write(json.dumps(state, ensure_ascii=False) for state in [*states, *due])
    else:
        write(_lines(states, due, knowledge))
    if options.online and _no_network(results, states):
        import sys

        print("spoonproof sources: no host could be found: is there a network at all?", file=sys.stderr)
        return 3
    return 1 if due or any(state["faults"] for state in states) else 0


def source_states(knowledge: Knowledge) -> Iterator[dict[str, object]]:
    """Each source: id, citation, address, how often cited, and its faults in words."""
    from spoonproof.model.citation import UNPUBLISHED, address, full, issued_year, short

    cited = citations(knowledge)
    for source in sorted({*knowledge.sources, *cited} - set(UNPUBLISHED)):
        item = knowledge.sources.get(source)
        yield {
            "id": source,
            "citation": full(item) if item else short(source, knowledge.sources),
            "address": address(source, knowledge.sources),
            "year": issued_year(item) if item else "",
            "basis": _custom(item, "basis"),
            "copy": _custom(item, "copy"),
            "cited": cited.get(source, 0),
            "faults": faults_of(item),
            "without": {what: why for what in ("address", "publisher") if (why := _custom(item, f"no-{what}"))},
        }


def faults_of(item: Mapping[str, object] | None) -> list[str]:
    """What a source lacks for a reader to find it: a page needs an address, print an ISBN or its place.

    Where there is none to give, ``custom`` says why: ``no-address``, ``no-publisher``.
    """
    if item is None:
        return ["cited, but nowhere defined"]
    faults = [f"has no {key}" for key in ("type", "title") if not item.get(key)]
    held = any(item.get(key) for key in ("author", "editor", "publisher", "container-title"))
    if not held and not _custom(item, "no-publisher"):
        faults.append("has neither author nor publisher")
    printed = any(item.get(key) for key in ("ISBN", "ISSN", "number", "volume", "authority", "container-title"))
    if not item.get("DOI") and not item.get("URL") and not printed and not _custom(item, "no-address"):
        faults.append("has no address")
    return faults


def _custom(item: Mapping[str, object] | None, key: str) -> str:
    custom = item.get("custom") if item else None
    return str(custom.get(key, "")) if isinstance(custom, Mapping) else ""


def _faults(state: dict[str, object]) -> list[str]:
    faults = state["faults"]
    assert isinstance(faults, list)
    return faults


def citations(knowledge: Knowledge) -> dict[str, int]:
    """How often each source id is cited by the tables and the register."""
    from spoonproof.reading.bundle import bundle_root

    counts: dict[str, int] = {}
    for path in sorted((bundle_root() / "shared").glob("*.csv")):
        for row in knowledge.rows(path.stem):
            if source := row.text("source"):
                counts[source] = counts.get(source, 0) + 1
    for entry in knowledge.register.entries:
        for ref in {*entry.refs, *(ref for allowance in entry.allowed for ref in allowance.refs)}:
            counts[ref.id] = counts.get(ref.id, 0) + 1
    return counts


def _due(knowledge: Knowledge) -> Iterator[dict[str, object]]:
    from spoonproof.clock import today

    for entry in knowledge.register.due(today().isoformat()):
        yield {"entry": entry.id, "due": entry.due, "checked": entry.checked, "file": entry.document.path}


def _file(folder: ChannelFolder | None) -> Path:
    return (folder.root if folder is not None else Path.cwd()) / RESULTS


def _known(folder: ChannelFolder | None) -> dict[str, Result]:
    from spoonproof.links.results import read_results

    try:
        return read_results(_file(folder).read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError):
        return {}


def _online(folder: ChannelFolder | None, states: list[dict[str, object]]) -> dict[str, Result]:
    """Ask every address that was not asked today, and keep what was found."""
    import sys

    from spoonproof import __version__
    from spoonproof.clock import today
    from spoonproof.links.check import check_all
    from spoonproof.links.fetch import Fetcher
    from spoonproof.links.manners import Manners
    from spoonproof.links.results import results_text
    from spoonproof.reading.files import write_atomically

    day = today().isoformat()
    before = _known(folder)
    urls = [str(state["address"]) for state in states if state["address"]]
    fresh = {url for url in urls if (known := before.get(url)) and known.on == day and known.state != "could-not-check"}
    asked = [url for url in urls if url not in fresh]
    print(f"asking for {len(set(asked))} pages, one at a time to each host ...", file=sys.stderr)
    fetcher = Fetcher(f"spoonproof/{__version__}")
    found = {**before, **check_all(asked, Manners(fetcher), fetcher.guard, day, before)}
    _file(folder).parent.mkdir(exist_ok=True)
    write_atomically(_file(folder), results_text(found).encode("utf-8"))
    return found


def _no_network(results: Mapping[str, Result], states: list[dict[str, object]]) -> bool:
    asked = [results[str(s["address"])] for s in states if str(s["address"]) in results]
    return bool(asked) and all(result.rule in ("dns", "no-connection") for result in asked)


def _lines(states: list[dict[str, object]], due: list[dict[str, object]], knowledge: Knowledge) -> Iterator[str]:
    from spoonproof.claims.coverage import table

    for state in states:
        count, without = state["cited"], state["without"]
        assert isinstance(without, dict)
        yield f"{state['id']}: {state['citation']}"
        if state["address"]:
            yield f"    {state['address']}"
        read = {"from-memory": "recalled, not read", "read": "read"}.get(str(state["basis"]), "")
        copy = {"mirror": " in a mirror", "secondary": " in a secondary source"}.get(str(state["copy"]), "")
        times = f"cited {count} time{'s' if count != 1 else ''}" if count else "not cited by any table or entry"
        yield f"    {times}{'; ' + read + (copy if read == 'read' else '') if read else ''}"
        yield from (f"    no {what}: {why}" for what, why in without.items())
        online = state.get("online")
        if isinstance(online, dict):
            note = f": {online['note']}" if online["note"] else ""
            yield f"    {str(online['state']).replace('-', ' ')} on {online['on']}{note}"
        yield from (f"    needs mending: {fault}" for fault in _faults(state))
    yield ""
    yield table(knowledge.register)
    yield ""
    for entry in due:
        yield f"due since {entry['due']}: {entry['entry']} ({entry['file']}); spoonproof where {entry['entry']}"
    uncited = sum(1 for state in states if not state["cited"])
    wrong = sum(1 for state in states if state["faults"])
    yield f"{len(states)} sources; {uncited} not cited; {wrong} need mending; {len(due)} entries due."
