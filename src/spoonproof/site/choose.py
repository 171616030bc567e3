"""Which recipes of a channel are published, and which are left out for their errors."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from spoonproof.checks.engine import check
from spoonproof.dish import Dish
from spoonproof.folder import ChannelFolder
from spoonproof.model.finding import Finding
from spoonproof.model.record import dataclass
from spoonproof.reading.bundle import bundle_root
from spoonproof.site.view import Fault


@dataclass(frozen=True, slots=True)
class Chosen:
    """What is published; by slug, the errors a page owns up to; and a line for each recipe left out."""

    dishes: tuple[Dish, ...]
    faults: Mapping[str, tuple[Fault, ...]]
    left_out: tuple[str, ...]


def choose(folder: ChannelFolder, *, drafts: bool = False, with_errors: bool = False) -> Chosen:
    """Recipes without an error-level finding; with ``with_errors`` the others too, their errors beside them.

    A recipe that cannot be read is never published.
    """
    files = folder.select((), drafts)
    outcome = check(folder, files, keep=True)
    looked_at = {dish.recipe.document: dish for dish in outcome.dishes}
    errors: dict[str, list[Finding]] = {}
    for finding in outcome.findings:
        if finding.level == "error":
            errors.setdefault(finding.document.path, []).append(finding)
    dishes, faults, left_out = [], {}, []
    for file in files:
        found = errors.get(file.shown, [])
        if file.recipe is None:
            left_out.append(f"{file.shown}: left out, it can't be read (spoonproof check {file.shown} says why)")
        elif found and not with_errors:
            count = f"{len(found)} error{'' if len(found) == 1 else 's'}"
            left_out.append(f"{file.shown}: left out, it has {count} (spoonproof check {file.shown})")
        else:
            dishes.append(looked_at[file.recipe.document])
            if found:
                faults[file.recipe.slug] = tuple(_told(finding) for finding in found)
    return Chosen(tuple(dishes), faults, tuple(left_out))


def _told(finding: Finding) -> Fault:
    line = finding.document.position(finding.span.start)[0]
    return Fault(f"Line {line}: {finding.message}", finding.rule)


def theme_folders(folder: ChannelFolder) -> tuple[Path, ...]:
    """The channel's own ``site`` folder first, then the bundled one."""
    bundled = bundle_root() / "site"
    own = folder.root / "site"
    return (own, bundled) if own.is_dir() and own.resolve() != bundled.resolve() else (bundled,)
