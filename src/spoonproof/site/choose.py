"""Which recipes of a channel are published, and which are left out for their errors."""

from __future__ import annotations

from pathlib import Path

from spoonproof.checks.accepted import without_accepted
from spoonproof.checks.drawer import in_order
from spoonproof.checks.engine import check_dish
from spoonproof.dish import Dish
from spoonproof.folder import ChannelFolder, RecipeFile
from spoonproof.model.finding import Finding
from spoonproof.reading.bundle import bundle_root
from spoonproof.site.view import Fault


def faults_of(file: RecipeFile, dish: Dish) -> tuple[Fault, ...]:
    """The errors of a recipe, as its page would own up to them; what the channel accepts is none."""
    found = without_accepted([*file.faults, *check_dish(dish)], dish.channel)
    return tuple(_told(one) for one in in_order(found) if one.level == "error" and one.document.path == file.shown)


def unreadable(file: RecipeFile) -> str:
    """That a recipe is left out since it can't be read."""
    return f"{file.shown}: left out, it can't be read (spoonproof check {file.shown} says why)"


def left_out(file: RecipeFile, count: int) -> str:
    """That a recipe is left out for its errors."""
    return f"{file.shown}: left out, it has {count} error{'' if count == 1 else 's'} (spoonproof check {file.shown})"


def _told(finding: Finding) -> Fault:
    line = finding.document.position(finding.span.start)[0]
    return Fault(f"Line {line}: {finding.message}", finding.rule)


def theme_folders(folder: ChannelFolder) -> tuple[Path, ...]:
    """The channel's own ``site`` folder first, then the bundled one."""
    bundled = bundle_root() / "site"
    own = folder.root / "site"
    return (own, bundled) if own.is_dir() and own.resolve() != bundled.resolve() else (bundled,)
