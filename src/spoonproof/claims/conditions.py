"""The closed grammar of conditions: what a food must be for a statement to hold.

A condition is ``all``, ``any``, ``at least``, ``at most``, ``absent``, ``present`` or ``reduced by``; nothing else, no
code and no free text. It answers yes, no or unknown: an input that is missing, or a range that
straddles the threshold, is unknown and never a pass.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal, Protocol

from spoonproof.model.numbers import Estimate
from spoonproof.model.record import NamedTuple, dataclass, replace
from spoonproof.model.tree import Listing, Mapped, Node, Scalar

Reply = Literal["yes", "no", "unknown"]
Basis = Literal["100g", "100kcal", "portion", "energy"]

BASES: Mapping[str, Basis] = {"100 g": "100g", "100 kcal": "100kcal", "portion": "portion", "energy": "energy"}
"""How a basis is written. ``energy``: the percent of the food's energy that the nutrient brings."""

KCAL_PER_G: Mapping[str, float] = {
    "protein_g": 4.0,
    "carbohydrate_g": 4.0,
    "sugars_g": 4.0,
    "fat_g": 9.0,
    "saturated_fat_g": 9.0,
}
"""Energy factors, kcal per g: Regulation (EU) No 1169/2011, Annex XIV."""

_UNITS = {"mg": "mg", "ug": "µg", "g": "g", "kcal": "kcal"}

CLAIMED = "claimed"
"""Stands for the nutrient that the statement names."""


class ConditionError(ValueError):
    """A condition that the grammar does not know; ``node`` is where it stands."""

    def __init__(self, message: str, node: Node) -> None:
        super().__init__(message)
        self.node = node


class References(Protocol):
    """Reference amounts by name, in the unit of the nutrient key."""

    def amount(self, reference: str, nutrient: str) -> float | None:
        """The day's reference amount; None when the list has none for this nutrient."""


class Probe(Protocol):
    """What a condition asks of the food it is about; None and "unknown" mean not known."""

    def measure(self, nutrient: str, basis: Basis) -> Estimate | None:
        """The nutrient in the food as eaten (for ``energy``: percent of the energy)."""

    def contains(self, what: str) -> Reply:
        """Whether an ingredient class or an allergen is in it ("added salt", "sweeteners", "milk")."""

    def compared(self, nutrient: str) -> tuple[Estimate, Estimate] | None:
        """The nutrient here and in the food it is compared with, on one basis."""


class Result(NamedTuple):
    """The answer of a condition and how it came about, one line a step."""

    answer: Reply
    steps: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Threshold:
    """``at least``/``at most``: an amount, or a share (percent) of a named reference, on a basis."""

    op: Literal["at least", "at most"]
    nutrient: str
    basis: Basis
    amount: float | None = None
    share: float | None = None
    reference: str = ""


@dataclass(frozen=True, slots=True)
class Absent:
    """None of these ingredient classes or allergens may be in it."""

    what: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Present:
    """One of these ingredient classes or allergens must be in it."""

    what: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ReducedBy:
    """At least ``percent`` less of a nutrient than the food it is compared with."""

    nutrient: str
    percent: float


@dataclass(frozen=True, slots=True)
class Group:
    """``all`` or ``any`` of several conditions."""

    op: Literal["all", "any"]
    parts: tuple[Condition, ...]


Condition = Threshold | Absent | Present | ReducedBy | Group

_THRESHOLD_KEYS = frozenset({"nutrient", "amount", "share", "reference", "per"})


def read_condition(node: Node) -> Condition:
    """A condition out of its YAML node; ConditionError names the node at fault."""
    if not isinstance(node, Mapped) or len(node.entries) != 1:
        raise ConditionError("a condition is one of all, any, at least, at most, absent, present, reduced by", node)
    key, value = node.entries[0]
    match key.value:
        case "all" | "any" as op:
            if not isinstance(value, Listing) or not value.items:
                raise ConditionError(f"{op} needs a list of conditions", value)
            return Group(op, tuple(read_condition(item) for item in value.items))
        case "at least" | "at most" as op:
            return _threshold(op, value)
        case "absent" | "present" as op:
            what = _texts(value)
            if not what:
                raise ConditionError(f"{op} needs what must {'' if op == 'present' else 'not '}be in it", value)
            return Present(what) if op == "present" else Absent(what)
        case "reduced by":
            if not isinstance(value, Mapped):
                raise ConditionError("reduced by needs {nutrient, percent}", value)
            return ReducedBy(value.text("nutrient", CLAIMED), _number(value, "percent", value))
        case other:
            raise ConditionError(f"no condition is called {other!r}", key)


def _threshold(op: Literal["at least", "at most"], node: Node) -> Threshold:
    if not isinstance(node, Mapped):
        raise ConditionError(f"{op} needs {{nutrient, amount or share and reference, per}}", node)
    for key, _ in node:
        if key.value not in _THRESHOLD_KEYS:
            raise ConditionError(f"{op} knows no key {key.value!r}", key)
    basis = BASES.get(node.text("per", "100 g"))
    if basis is None:
        raise ConditionError(f"per is one of {', '.join(BASES)}", node.get("per") or node)
    amount = _number(node, "amount", node) if node.get("amount") is not None else None
    share = _number(node, "share", node) if node.get("share") is not None else None
    reference = node.text("reference")
    if (amount is None) == (share is None) or (share is not None and not reference):
        raise ConditionError(f"{op} needs either an amount, or a share and its reference", node)
    return Threshold(op, node.text("nutrient", CLAIMED), basis, amount, share, reference)


def _number(node: Mapped, key: str, where: Node) -> float:
    try:
        return float(node.text(key))
    except ValueError:
        raise ConditionError(f"{key} should be a number", node.get(key) or where) from None


def _texts(node: Node) -> tuple[str, ...]:
    if isinstance(node, Scalar):
        return (node.value,)
    if isinstance(node, Listing):
        return tuple(item.value for item in node.items if isinstance(item, Scalar))
    return ()


def evaluate(condition: Condition, probe: Probe, references: References, claimed: str = "") -> Result:
    """Yes, no or unknown. ``claimed`` is the nutrient key that the word ``claimed`` stands for."""
    match condition:
        case Group(op, parts):
            results = [evaluate(part, probe, references, claimed) for part in parts]
            steps = tuple(step for result in results for step in result.steps)
            answers = [result.answer for result in results]
            return Result(_all(answers) if op == "all" else _any(answers), steps)
        case Absent(what):
            found = {item: probe.contains(item) for item in what}
            present = [item for item, reply in found.items() if reply == "yes"]
            if present:
                return Result("no", (f"it contains {', '.join(present)}",))
            unknown = [item for item, reply in found.items() if reply == "unknown"]
            if unknown:
                return Result("unknown", (f"whether it contains {', '.join(unknown)} is not known",))
            return Result("yes", (f"none of it: {', '.join(what)}",))
        case Present(what):
            answer = _any([probe.contains(item) for item in what])
            return Result(answer, (f"contains {' or '.join(what)}: {answer}",))
        case ReducedBy(nutrient, percent):
            return _reduced(nutrient.replace(CLAIMED, claimed), percent, probe)
        case Threshold():
            return _compare(condition, probe, references, claimed)


def _all(answers: Iterable[Reply]) -> Reply:
    seen = set(answers)
    return "no" if "no" in seen else "unknown" if "unknown" in seen else "yes"


def _any(answers: Iterable[Reply]) -> Reply:
    seen = set(answers)
    return "yes" if "yes" in seen else "unknown" if "unknown" in seen else "no"


def limit_of(condition: Threshold, references: References, claimed: str = "") -> float | None:
    """The threshold as an amount in the nutrient's unit; None when the reference has no such value."""
    if condition.amount is not None:
        return condition.amount
    day = references.amount(condition.reference, condition.nutrient.replace(CLAIMED, claimed))
    return None if day is None or condition.share is None else day * condition.share / 100


def _compare(condition: Threshold, probe: Probe, references: References, claimed: str) -> Result:
    nutrient = condition.nutrient.replace(CLAIMED, claimed)
    limit = limit_of(condition, references, claimed)
    wanted = f"{nutrient} {condition.op} "
    if limit is None:
        return Result("unknown", (f"{wanted}a share of {condition.reference}, which has no value for it",))
    unit = "" if condition.basis == "energy" else f" {_UNITS.get(nutrient.rsplit('_', 1)[-1], '')}".rstrip()
    wanted += f"{limit:g}{unit} per {condition.basis}"
    if condition.share is not None:
        wanted += f" ({condition.share:g} % of {condition.reference})"
    if condition.basis == "energy":
        wanted = f"{condition.op} {limit:g} % of its energy from {nutrient}"
    found = probe.measure(nutrient, condition.basis)
    if found is None:
        return Result("unknown", (f"{wanted}: not known",))
    answer = at_least(found, limit) if condition.op == "at least" else at_most(found, limit)
    return Result(answer, (f"{wanted}: {show(found)} -> {answer}", *found.assumed))


def at_least(found: Estimate, limit: float) -> Reply:
    """Yes when the whole range reaches ``limit``, no when none of it does, else unknown."""
    if found.low >= limit:
        return "yes"
    return "no" if found.high < limit else "unknown"


def at_most(found: Estimate, limit: float) -> Reply:
    """Yes when the whole range stays at or under ``limit``, no when none of it does, else unknown."""
    if found.high <= limit:
        return "yes"
    return "no" if found.low > limit else "unknown"


def _reduced(nutrient: str, percent: float, probe: Probe) -> Result:
    pair = probe.compared(nutrient)
    if pair is None:
        return Result("unknown", (f"{nutrient} reduced by {percent:g} %: nothing named to compare with",))
    here, there = pair
    share = 1 - percent / 100
    if here.high <= there.low * share:
        answer: Reply = "yes"
    elif here.low > there.high * share:
        answer = "no"
    else:
        answer = "unknown"
    return Result(answer, (f"{nutrient} reduced by {percent:g} %: {show(here)} against {show(there)} -> {answer}",))


def show(found: Estimate) -> str:
    """An estimate in few characters: "3.6 mg", "3.1 to 4.0 mg", "at least 3.1 mg"."""
    if found.high == float("inf"):
        return f"at least {short(found.low)} {found.unit}"
    if found.high - found.low > 0.005 * max(abs(found.high), 1e-9):
        return f"{short(found.low)} to {short(found.high)} {found.unit}"
    return f"{short(found.amount)} {found.unit}"


def spoken(found: Estimate) -> str:
    """An estimate as one would say it, in two figures: "0.4 g", "3.1 to 4 mg", "at least 3.1 mg"."""
    low, amount, high = (float(f"{value:.2g}") for value in (found.low, found.amount, found.high))
    return show(replace(found, low=low, amount=amount, high=high))


def short(amount: float) -> str:
    """A number with three figures, never in powers of ten."""
    return f"{amount:.0f}" if abs(amount) >= 1000 else f"{amount:.3g}"
