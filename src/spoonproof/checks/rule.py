"""What a rule is, and how the rules are found.

A rule is one module in ``checks/rules/`` named by the bad pattern (``hot_food_in_a_sealed_blender.py``;
hyphens in the rule's printed name). It holds:

- a docstring: one title line; what goes wrong for the reader or the baby, and why; a block headed
  ``Fails::`` and one headed ``Passes::``, each an indented recipe head (YAML; keys that are left out are
  filled in from a plain recipe by the test, which runs both);
- ``SCOPE`` "register" where it asks the register and no dish; ``AREA``; ``LEVEL``, the level a fault has unless it says
  otherwise; ``SOURCES``, the source ids it rests on;
- ``check(subject)``, which yields ``Fault``s. The subject is a ``Dish`` or a ``Knowledge``.

Nothing else is touched to add a rule. Its cases are ``tests/checks/rules/<name>.md``.
"""

from __future__ import annotations

import importlib
from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any, Literal, cast

from spoonproof.model.claim import JudgedClaim
from spoonproof.model.finding import Area, Bowl, Level, Related, Remedy, SourceRef
from spoonproof.model.record import dataclass
from spoonproof.model.text import Document, Span

Scope = Literal["dish", "register"]


@dataclass(frozen=True, slots=True)
class Fault:
    """What a rule yields. ``span`` is in the dish's recipe unless ``document`` says otherwise;
    ``level`` and ``area`` default to the rule's own. ``sources`` do not: a fault names those that it rests on itself,
    and one about what was left unsaid names none."""

    span: Span
    message: str
    level: Level | None = None
    area: Area | None = None
    bowl: Bowl | None = None
    document: Document | None = None
    related: Sequence[Related] = ()
    remedy: Remedy | None = None
    sources: tuple[SourceRef, ...] = ()
    claim: JudgedClaim | None = None


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule as found: its name, what it says of itself, and its check."""

    name: str
    scope: Scope
    area: Area
    level: Level
    sources: tuple[str, ...]
    doc: str
    check: Callable[[Any], Iterable[Fault]]

    @property
    def title(self) -> str:
        """The first line of the docstring."""
        return self.doc.strip().partition("\n")[0]


@lru_cache(maxsize=1)
def all_rules() -> tuple[Rule, ...]:
    """Every rule in ``checks/rules``, by name."""
    from spoonproof.checks import rules as package

    # The library's own way to list a package's modules brings in ten milliseconds of other modules.
    names = {path.stem for folder in package.__path__ for path in Path(folder).glob("*.py")}
    return tuple(_load(f"{package.__name__}.{name}") for name in sorted(names) if not name.startswith("_"))


def _load(module_name: str) -> Rule:
    module = importlib.import_module(module_name)
    return Rule(
        name=module_name.rpartition(".")[2].replace("_", "-"),
        scope=cast(Scope, getattr(module, "SCOPE", "dish")),
        area=cast(Area, module.AREA),
        level=cast(Level, module.LEVEL),
        sources=tuple(module.SOURCES),
        doc=module.__doc__ or "",
        check=module.check,
    )
