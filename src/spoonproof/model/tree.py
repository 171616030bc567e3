"""A YAML text as a tree of scalars, lists and mappings: all scalars text, everything with its span."""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.model.record import dataclass
from spoonproof.model.text import Span


@dataclass(frozen=True, slots=True)
class Scalar:
    """A value as text. ``pieces`` maps the text back to the document when it was folded or escaped:
    (offset in value, offset in document, length)."""

    value: str
    span: Span
    pieces: tuple[tuple[int, int, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Listing:
    """A YAML sequence."""

    items: tuple[Node, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Mapped:
    """A YAML mapping; keys are text, in the order written, none twice."""

    entries: tuple[tuple[Scalar, Node], ...]
    span: Span

    def get(self, key: str) -> Node | None:
        """The value of ``key``; None when absent."""
        for name, node in self.entries:
            if name.value == key:
                return node
        return None

    def text(self, key: str, default: str = "") -> str:
        """The text of a scalar value; ``default`` when it is absent or no scalar."""
        node = self.get(key)
        return node.value if isinstance(node, Scalar) else default

    def texts(self, key: str) -> tuple[str, ...]:
        """The texts of a list of scalars (a single scalar counts as a list of one)."""
        node = self.get(key)
        if isinstance(node, Scalar):
            return (node.value,)
        if isinstance(node, Listing):
            return tuple(item.value for item in node.items if isinstance(item, Scalar))
        return ()

    def __iter__(self) -> Iterator[tuple[Scalar, Node]]:
        return iter(self.entries)


Node = Scalar | Listing | Mapped
