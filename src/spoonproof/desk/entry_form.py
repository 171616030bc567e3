"""An entry of the register by form: written into the channel's own ``claims/own.yaml``, once the register with it in
has nothing against it. Her own source goes into ``shared/sources/own.yaml``."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

from spoonproof.knowledge import Knowledge
from spoonproof.model.finding import Finding
from spoonproof.model.text import Document
from spoonproof.model.tree import Listing, Mapped

FIELDS = (
    "id", "said", "about", "kind", "truth", "why", "wording", "harm", "ages", "source", "locator", "basis",
    "checked", "due", "new_title", "new_author", "new_year", "new_url",
)  # fmt: skip
_PLAIN = ("kind", "truth", "why", "wording", "harm", "ages", "locator", "basis", "checked", "due")
_HARMS = ("0", "1", "2", "3")
_LISTS = ("about", "said")
ENTRIES = "claims/own.yaml"
SOURCES = "shared/sources/own.yaml"


def name_of(given: str) -> str:
    """An entry's id as the register writes ids."""
    return re.sub(r"[^a-z0-9]+", "-", given.lower()).strip("-")[:60]


def save(root: Path, known: Knowledge, given: Mapping[str, str]) -> list[str]:
    """Save what the form gives; [] when saved, else what is wrong with it in words, and nothing is written.

    Raises OSError when the machine says no.
    """
    from spoonproof.reading.edits import with_value
    from spoonproof.reading.files import write_atomically

    given = {name: " ".join(value.split()) for name, value in given.items()}
    name = name_of(given["id"])
    wrong = _missing(name, given)
    if not wrong and known.register.get(name) is not None:
        wrong.append(f"The register has an entry called {name} already; give this one another name.")
    if wrong:
        return wrong
    source, source_text = _source(root, known, given)
    entries = _file(
        root, ENTRIES, "# Entries of this channel's own, beside the register's.\ntopic: our own\nentries: []\n"
    )
    if entries is None:
        return [f"{ENTRIES} can't be read as it is; put it right by hand first."]
    document, tree = entries
    listed = tree.get("entries") if isinstance(tree, Mapped) else None
    if listed is not None and not isinstance(listed, Listing):
        return [f"{ENTRIES} should hold a list under entries; put it right by hand first."]
    value = _entry(name, source, given)
    if listed is None or not listed.items:
        text = with_value(document, ["entries"], [value])
    else:
        text = with_value(document, ["entries", len(listed.items)], value)
    extra = [source] if source_text is not None else []
    wrong = [finding.message for finding in faults_with(root, known, text, extra) if finding.level == "error"]
    if wrong:
        return wrong
    for path, content in ((SOURCES, source_text), (ENTRIES, text)):
        if content is not None:
            (root / path).parent.mkdir(parents=True, exist_ok=True)
            write_atomically(root / path, content.encode("utf-8"))
    return []


def faults_with(root: Path, known: Knowledge, text: str, more_sources: list[str]) -> list[Finding]:
    """What the register would find wrong with itself if ``claims/own.yaml`` held ``text``, beyond what it finds now."""
    from spoonproof.claims.register import Register
    from spoonproof.clock import today
    from spoonproof.reading.register_files import register_files
    from spoonproof.reading.yaml_tree import read_yaml

    trees, authorised, _ = register_files(root)
    document = Document(ENTRIES, text)
    tree, problems = read_yaml(document)
    if not isinstance(tree, Mapped | Listing):
        return list(problems)
    trees = [each for each in trees if each[0].path != ENTRIES] + [(document, tree)]
    _, found = Register.from_nodes(
        trees,
        authorised,
        reference_rows=known.rows("claim_references"),
        allergen_rows=known.rows("allergen_lists"),
        source_ids={*known.sources, *more_sources},
        today=today().isoformat(),
    )
    before = {(fault.rule, fault.message) for fault in known.register_faults}
    return [*problems, *(fault for fault in found if (fault.rule, fault.message) not in before)]


def _missing(name: str, given: Mapping[str, str]) -> list[str]:
    wrong = []
    if not name:
        wrong.append("Give the entry a short name, such as beetroot-blood.")
    if not given["said"] and not given["about"]:
        wrong.append("Say which words it answers, or which food or nutrient it is about.")
    if not given["why"]:
        wrong.append("Say in a sentence why: it is what a reader will see.")
    if not given["source"] and not given["new_title"]:
        wrong.append("Choose the source it rests on, or name a new one.")
    if given["new_title"] and not (given["new_author"] and given["new_year"]):
        wrong.append("A new source needs who published it and the year, besides its title.")
    if given["new_year"] and not re.fullmatch(r"\d{4}", given["new_year"]):
        wrong.append("The year of the new source should be four digits.")
    if given["new_url"] and not re.match(r"https?://", given["new_url"]):
        wrong.append("The address of the new source should start with https://")
    if given["harm"] and given["harm"] not in _HARMS:
        wrong.append("How much harm it could do is a number from 0 to 3.")
    if not given["locator"]:
        wrong.append("Say where in the source it stands: a page, a table, a section.")
    return wrong


def _entry(name: str, source: str, given: Mapping[str, str]) -> dict[str, object]:
    value: dict[str, object] = {"id": name}
    for key in _LISTS:
        words = [word.strip() for word in given[key].split(",") if word.strip()]
        if words:
            value[key] = words
    value["source"] = source
    for key in _PLAIN:
        if given[key]:
            value[key] = int(given[key]) if key == "harm" else given[key]
    return value


def _source(root: Path, known: Knowledge, given: Mapping[str, str]) -> tuple[str, str | None]:
    """The id of the source, and the new text of the channel's sources where it is a new one."""
    from spoonproof.reading.edits import yaml_text

    if not given["new_title"]:
        return given["source"], None
    base = name_of(f"own {given['new_author'].split()[0]} {given['new_year']}")
    name, number = base, 2
    while name in known.sources:
        name, number = f"{base}-{number}", number + 1
    path = root / SOURCES
    before = path.read_text(encoding="utf-8") if path.is_file() else "# Sources of this channel's own, as CSL-JSON.\n"
    lines = [
        f"- id: {name}",
        "  type: document",
        f"  title: {yaml_text(given['new_title'])}",
        f"  author: [{{literal: {yaml_text(given['new_author'])}}}]",
        f"  issued: {{date-parts: [[{given['new_year']}]]}}",
    ]
    if given["new_url"]:
        lines.append(f"  URL: {yaml_text(given['new_url'])}")
    lines.append(f"  custom: {{basis: {'read' if given['basis'] == 'read' else 'from-memory'}, copy: secondary}}")
    return name, before.rstrip("\n") + "\n" + "\n".join(lines) + "\n"


def _file(root: Path, name: str, start: str) -> tuple[Document, Mapped | Listing] | None:
    from spoonproof.reading.yaml_tree import read_yaml

    path = root / name
    document = Document(name, path.read_text(encoding="utf-8") if path.is_file() else start)
    tree, _ = read_yaml(document)
    return (document, tree) if isinstance(tree, Mapped) else None
