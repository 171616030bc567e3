"""What the fuzzer feeds: each target takes bytes, hands them to a reader as a command would, and holds what comes out.

Law of all: nothing is raised, and every place told lies inside the text.
"""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache
from pathlib import Path

from spoonproof.checks.engine import check_dish
from spoonproof.claims.find import find_claims
from spoonproof.claims.register import Register
from spoonproof.corrections import CorrectionsError, read_corrections, read_views
from spoonproof.dish import Dish
from spoonproof.knowledge import Knowledge
from spoonproof.model.channel import Channel
from spoonproof.model.finding import Finding
from spoonproof.model.text import Document, Passage, Span
from spoonproof.model.tree import Listing, Mapped, Node
from spoonproof.reading.bundle import read_table
from spoonproof.reading.channel import read_channel
from spoonproof.reading.echo import echo
from spoonproof.reading.files import decode
from spoonproof.reading.recipe import read_recipe
from spoonproof.reading.speech import read_statements
from spoonproof.reading.yaml_tree import read_yaml

SEEDS_FROM = Path(__file__).resolve().parents[2]


@lru_cache(maxsize=1)
def known() -> Knowledge:
    """The bundled tables."""
    return Knowledge()


@lru_cache(maxsize=1)
def _bowl() -> Channel:
    return read_channel(Document("channel.yaml", "title: Bowl\nmarkets: [GB, US]\n"))[0]


def _text(data: bytes, shown: str) -> Document | None:
    document, findings = decode(data[:60_000], shown)
    _hold(findings)
    return document


def _hold(findings: Iterable[Finding]) -> None:
    for finding in findings:
        _inside(finding.document, finding.span)
        assert finding.message
        for other in finding.related:
            _inside(other.document, other.span)
        for edit in finding.remedy.edits if finding.remedy else ():
            _inside(finding.document, edit.span)


def _inside(document: Document, span: Span) -> None:
    assert 0 <= span.start <= span.end <= max(1, len(document.text) + 1), (span, len(document.text))


def recipe(data: bytes) -> None:
    """A recipe file, read and checked by every rule over one dish."""
    document = _text(data, "recipes/bowl.md")
    if document is None:
        return
    found, faults = read_recipe(document, known().foods, known().verbs, known().measures("UK"))
    _hold(faults)
    if found is not None:
        _hold(check_dish(Dish(found, _bowl(), known(), {found.slug: found})))
        echo(found, known().foods, known().verbs)


def channel(data: bytes) -> None:
    """A channel.yaml."""
    document = _text(data, "channel.yaml")
    if document is not None:
        _hold(read_channel(document)[1])


def yaml(data: bytes) -> None:
    """Any YAML: the tree's own places are held too."""
    document = _text(data, "claims/x.yaml")
    if document is None:
        return
    root, findings = read_yaml(document)
    _hold(findings)
    todo: list[Node] = [root] if root is not None else []
    while todo:
        node = todo.pop()
        _inside(document, node.span)
        if isinstance(node, Listing):
            todo += node.items
        elif isinstance(node, Mapped):
            todo += [part for pair in node.entries for part in pair]


def register(data: bytes) -> None:
    """A file of the claims register."""
    document = _text(data, "claims/own.yaml")
    if document is None:
        return
    root, findings = read_yaml(document)
    _hold(findings)
    if isinstance(root, Mapped | Listing):
        _hold(Register.from_nodes([(document, root)], source_ids=known().sources, today="2026-11-25")[1])


def _statements(data: bytes, shown: str) -> None:
    document = _text(data, shown)
    if document is None:
        return
    for lines in (False, True):
        passages, findings = read_statements(document, lines)
        _hold(findings)
        for passage in passages:
            _inside(document, passage.span(0, len(passage.text)))
    _claims(passages)


def captions(data: bytes) -> None:
    """A caption file, and the claims in it."""
    _statements(data, "said.vtt" if data[:1] == b"W" else "said.srt")


def transcript(data: bytes) -> None:
    """A text file, and the claims in it."""
    _statements(data, "said.txt")


def story(data: bytes) -> None:
    """Markdown without a head, and the claims in it."""
    _statements(data, "said.md")


def _claims(passages: list[Passage]) -> None:
    for claim in find_claims(passages, known().lexicon):
        assert 0 <= claim.start <= claim.end <= len(claim.passage.text)
        _inside(claim.passage.document, claim.passage.span(claim.start, claim.end))


@lru_cache(maxsize=1)
def _place() -> Path:
    return Path(tempfile.mkdtemp(prefix="fuzz-"))


def table(data: bytes) -> None:
    """A channel's own table, its corrections and its views."""
    path = _place() / "textures.csv"
    path.write_bytes(data)
    try:
        read_table(path)
    except ValueError as problem:
        assert str(problem).startswith("textures.csv"), problem
    text = data.decode("utf-8", "replace")
    for read in (read_corrections, lambda text: read_views(text, "views.csv")):
        try:
            read(text)
        except CorrectionsError as problem:
            assert str(problem)


TARGETS: Mapping[str, Callable[[bytes], None]] = {
    target.__name__: target for target in (recipe, channel, yaml, register, captions, transcript, story, table)
}

SEEDS: Mapping[str, tuple[str, ...]] = {
    "recipe": ("recipes/*.md", "tests/red_team/*.md", "tests/bad_inputs/*/*.md"),
    "channel": ("channel.yaml", "tests/bad_inputs/*/channel.yaml"),
    "yaml": ("channel.yaml", "claims/*.yaml", "tests/bad_inputs/*/*.yaml"),
    "register": ("claims/*.yaml",),
    "captions": ("tests/**/*.vtt", "tests/**/*.srt"),
    "transcript": ("tests/claims/labelled/*", "README.md"),
    "story": ("guide/*.md", "README.md", "recipes/*.md"),
    "table": ("shared/*.csv",),
}
"""Where the first inputs of each target lie, from the repository's root."""


def seeds(target: str) -> list[bytes]:
    """The first inputs of a target, cut to what is quick to change."""
    found = sorted({path for pattern in SEEDS[target] for path in SEEDS_FROM.glob(pattern) if path.is_file()})
    texts = [path.read_bytes()[:8_000] for path in found]
    if target == "captions":
        texts += [
            b"WEBVTT\n\nNOTE hello\n\n1\n00:01.000 --> 00:04.000 line:0\n<v Ann>Carrots cure &amp; colds.\n",
            b"1\r\n00:00:01,000 --> 00:00:02,500\r\n- Honey is fine\r\n\r\n"
            b"2\r\n00:00:02,500 --> 00:00:04,000\r\nfine from six.\r\n",
        ]
    return texts
