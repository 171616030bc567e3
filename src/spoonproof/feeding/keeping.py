"""How long a dish keeps and how it is cooled, thawed and reheated, by authority: the strictest figure leads."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from spoonproof.feeding.bowl import baby_kinds
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import keys
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass
from spoonproof.model.text import Span
from spoonproof.model.treatment import Treatment


@dataclass(frozen=True, slots=True)
class Limit:
    """One figure for this dish: ``fact`` fridge_hours, freezer_days, cool_hours, room_hours, thawed_hours,
    reheat_times or core_c; ``value`` in that unit; ``why`` the class of food it hangs on ("*": any)."""

    fact: str
    value: float
    says: str
    authority: str
    why: str
    source: SourceRef


@dataclass(frozen=True, slots=True)
class KeepingFault:
    """A stated keeping time longer than an authority allows."""

    level: Level
    message: str
    remedy: str
    span: Span
    sources: tuple[SourceRef, ...]


@dataclass(frozen=True, slots=True)
class Keeping:
    """``limits``: the figure that leads for each fact; ``others`` the further authorities; ``faults`` found."""

    limits: tuple[Limit, ...]
    others: tuple[Limit, ...]
    faults: tuple[KeepingFault, ...]

    def of(self, fact: str) -> Limit | None:
        """The leading figure of a fact, None when no authority gives one."""
        return next((limit for limit in self.limits if limit.fact == fact), None)


_ROUNDED = 3.5  # days by which a month is longer than four weeks
_PUREES = ("smooth", "thick", "mashed")
"""Textures that an authority's advice on purées is taken to be about."""


def keeping(
    recipe: Recipe,
    treatments: Sequence[Treatment],
    foods: Foods,
    tables: FeedingTables,
    policies: Mapping[str, str] | None = None,
    others: Mapping[str, Recipe] | None = None,
) -> Keeping:
    """The keeping limits of a dish and what is wrong with its ``keeps``; ``others``: recipes used as foods."""
    kinds: set[str] = {"*"}
    if recipe.texture is None or recipe.texture.value in _PUREES:
        kinds.add("puree")
    kinds |= baby_kinds(recipe, treatments, foods, tables, others)
    authority = tables.authority("fridge", policies or {})
    lead: dict[str, Limit] = {}
    further: list[Limit] = []
    for row in tables.rows.get("storage", ()):
        value = row.number("value")
        if value is None or row.text("class") not in kinds:
            continue
        said, by, kind = (row.text(column) for column in ("says", "authority", "class"))
        limit = Limit(row.text("fact"), value, said, by, kind, tables.source(row))
        kept = lead.setdefault(limit.fact, limit)
        if kept is not limit:
            lead[limit.fact], behind = (limit, kept) if _leads(limit, kept, authority) else (kept, limit)
            further.append(behind)
    limits = tuple(lead.values())
    asked = {kind: tables.authority(topic, policies or {}) for kind, topic in _TOPICS.items()}
    every = [limit for limit in (*limits, *further) if limit.why == "*" and limit.source.basis == "read"]
    faults = _faults(recipe, lead, asked, every, _dry(recipe, treatments, foods))
    faults += _rice_again(recipe, treatments, lead.get("reheat_times"))
    return Keeping(limits, tuple(further), tuple(faults))


_MOIST = frozenset("vegetable fruit meat poultry offal fish shellfish pulse dairy cheese".split())


def _dry(recipe: Recipe, treatments: Sequence[Treatment], foods: Foods) -> bool:
    """Whether it is a bake of flour, fat and egg that keeps in a tin (common practice)."""
    groups = {food.group for line in recipe.foods if (food := foods.get(line.food or "")) is not None}
    return not groups & _MOIST and any(heat.medium == "oven" for one in treatments for heat in one.heats)


_LEFT_OVER = re.compile(r"\b(?:left[- ]?overs?|take-?away|take-?out|yesterday|last night|day[- ]old)\b", re.I)


def _rice_again(recipe: Recipe, treatments: Sequence[Treatment], once: Limit | None) -> list[KeepingFault]:
    """A fault where rice that was left over is heated in the dish, and the dish is kept to be heated once more."""
    if recipe.keeps is None or once is None:
        return []
    heated = {one.line for one in treatments if any(heat.medium not in ("none", "cold") for heat in one.heats)}
    if not any("rice" in keys(recipe.foods[at].name) and _LEFT_OVER.search(recipe.foods[at].text) for at in heated):
        return []
    message = f"The rice is left over and is heated here, and what is kept would be heated again. {once.says}"
    remedy = "Throw away what is not eaten, or start from freshly cooked rice."
    return [KeepingFault("warning", message, remedy, recipe.keeps.span, (once.source,))]


_TOPICS = {"nitrate-leaf": "nitrate"}
"""Kinds of food on whose keeping authorities differ, and the policy that chooses among them."""


def _leads(new: Limit, old: Limit, authority: str) -> bool:
    """Whether ``new`` goes before ``old``: read before recalled, shorter before longer, the chosen authority first."""
    if (new.source.basis == "from-memory") != (old.source.basis == "from-memory"):
        return old.source.basis == "from-memory"
    if new.value != old.value and new.fact != "core_c":
        return new.value < old.value
    return new.authority == authority and old.authority != authority


def _faults(
    recipe: Recipe, lead: Mapping[str, Limit], asked: Mapping[str, str], every: Sequence[Limit], dry: bool
) -> list[KeepingFault]:
    """``asked``: the authority chosen for a kind of food; ``every``: what was read about any food; ``dry``: a bake that
    keeps in its tin."""
    if recipe.keeps is None:
        return []
    found: list[KeepingFault] = []
    frozen = max((one.value for one in every if one.fact == "freezer_days"), default=None)
    pairs = (
        ("fridge_hours", recipe.keeps.fridge_hours, "h in the fridge"),
        ("freezer_days", recipe.keeps.freezer_days, "days in the freezer"),
        ("room_hours", None if dry else recipe.keeps.room_hours, "h out of the fridge"),
    )
    for fact, stated, unit in pairs:
        limit = lead.get(fact)
        if stated is None or limit is None or stated <= limit.value + (_ROUNDED if fact == "freezer_days" else 0):
            continue
        # One authority's word that the channel did not choose is told as that, unless any food is kept too long.
        alone = asked.get(limit.why, limit.authority) != limit.authority and not any(
            one.fact == fact and stated > one.value for one in every
        )
        level: Level = "warning" if limit.source.basis != "read" or alone or fact == "room_hours" else "error"
        if fact == "freezer_days":  # what is frozen stays safe; beyond the longest that is advised it is a slip
            level = "note" if frozen is not None and stated <= frozen + _ROUNDED else "warning"
        measure, _, where = unit.partition(" ")
        in_days = measure == "h" and stated >= 72 and stated % 24 == 0
        over = f"{stated / 24:g} days" if in_days else f"{stated:g} {measure}"
        text = f"{over} {where} is longer than {limit.value:g} {measure}. {limit.says}"
        if fact == "freezer_days":
            text += " Taste and texture suffer first: what stays frozen hard stays safe."
        if alone:
            text += f" This is the advice of {limit.authority} alone, which the channel has not chosen."
        remedy = f"Write {limit.value:g} {measure}, or less."
        found.append(KeepingFault(level, text, remedy, recipe.keeps.span, (limit.source,)))
    return found
