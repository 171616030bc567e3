"""The claims register's files as trees with places: the bundled ones, then a channel's own."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from spoonproof.model.finding import Finding
from spoonproof.model.table import Row
from spoonproof.model.text import Document
from spoonproof.model.tree import Listing, Mapped
from spoonproof.reading.bundle import bundle_root, own_root, read_table
from spoonproof.reading.faults import fault
from spoonproof.reading.files import read_document
from spoonproof.reading.yaml_tree import read_yaml

Tree = tuple[Document, Mapped | Listing]


def register_files(
    channel: Path | None, unsaved: Mapping[Path, Document] | None = None
) -> tuple[list[Tree], list[Row], list[Finding]]:
    """The trees of ``claims/*.yaml``, the rows of ``claims/authorised.csv``, and faults met while reading.

    ``unsaved``: documents that stand for the files at their paths.
    """
    instead = {path.resolve(): document for path, document in (unsaved or {}).items()}
    trees: list[Tree] = []
    rows: list[Row] = []
    faults: list[Finding] = []
    for root in (bundle_root(), own_root(channel)):
        if root is None:
            continue
        for path in sorted({*(root / "claims").glob("*.yaml"), *_beside(root / "claims", instead)}):
            problems: list[Finding] = []
            document = instead.get(path.resolve())
            if document is None:
                document, problems = read_document(path, f"claims/{path.name}")
            faults += problems
            if document is not None:
                tree, problems = read_yaml(document)
                faults += problems
                if isinstance(tree, Mapped | Listing):
                    trees.append((document, tree))
        wordings, problems = _wordings(root)
        rows += wordings
        faults += problems
    return trees, rows, faults


def _wordings(root: Path) -> tuple[list[Row], list[Finding]]:
    """The rows of ``claims/authorised.csv`` below ``root``: none, and told, where it can't be read."""
    path = root / "claims" / "authorised.csv"
    if root == bundle_root():
        return read_table(path), []
    if not path.exists():
        return [], []
    document, faults = read_document(path, "claims/authorised.csv", root)
    if document is None:
        return [], faults
    try:
        return read_table(path), faults
    except ValueError as problem:
        message = f"This table can't be read and is left out: {problem}."
        return [], [*faults, fault("own-table-not-read", document, document.whole, message)]


def _beside(folder: Path, unsaved: Mapping[Path, Document]) -> list[Path]:
    """Unsaved files of a folder, those that are not on the disk yet included."""
    return [folder / path.name for path in unsaved if path.parent == folder.resolve()]
