"""A kind of food named by its plural ("beans", "nuts", "oily fish"): what is said of it must hold for every one of them
that the tables know, so the least and the most of them are what is measured."""

from __future__ import annotations

import re

from spoonproof.claims.conditions import Basis
from spoonproof.claims.judging.probes import FoodProbe
from spoonproof.claims.register import Register
from spoonproof.claims.words import plain
from spoonproof.model.claim import Claim
from spoonproof.model.numbers import Estimate
from spoonproof.model.plural import singular
from spoonproof.model.record import dataclass, replace

_KIND = "kind-"
"""How the sets are named that hold the members of a kind, as they are eaten (claims/nutrition_claims.yaml)."""
_BEFORE = 16
"""Characters before a claim in which a word may stand that makes another food of it: "jelly beans"."""
_LEADS = frozenset(
    "and or but so because as since that like most all both many plain cooked boiled steamed mashed soft tinned canned"
    " of in with for yes well actually did know".split()
)


def kind_of(claim: Claim, register: Register) -> str:
    """The kind that a claim's one subject names, "" where it names none, or one that a word before it narrows."""
    if len(claim.subjects) != 1:
        return ""
    words = plain(claim.subjects[0]).split()
    kind = "-".join([*words[:-1], singular(words[-1])]) if words else ""
    if f"{_KIND}{kind}" not in register.sets:
        return ""
    said = f"{claim.passage.text[max(0, claim.start - _BEFORE) : claim.start]}{claim.quote}"
    before = re.split(r"[.!?,;:\n]", said[: said.lower().find(words[0])])[-1].split()
    return kind if not before or before[-1].lower() in _LEADS else ""


@dataclass(slots=True)
class KindProbe(FoodProbe):
    """The foods of a kind, each as eaten."""

    members: tuple[str, ...] = ()

    def measure(self, nutrient: str, basis: Basis) -> Estimate | None:
        """From the least to the most of its members; None where one of them is not known."""
        found: list[Estimate] = []
        for member in self.members:
            probe = FoodProbe(member, self.numbers, self.register, self.context)
            each = probe.measure(nutrient, basis)
            if each is None:
                return None
            found.append(each)
        if not found:
            return None
        least = min(found, key=lambda one: one.low)
        self._note(f"{self.food}: the worst of {len(found)} decides (least: {least.low:.3g} {least.unit})")
        sources = tuple(dict.fromkeys(source for one in found for source in one.sources))
        return replace(least, high=max(one.high for one in found), sources=sources)

    def small_or_dry(self) -> bool:
        """Never: its members are as they are eaten."""
        return False


def probe_of_kind(kind: str, probe: FoodProbe) -> KindProbe:
    """The probe of a kind that the register has a set for; ``probe`` holds the tables."""
    members = tuple(sorted(probe.register.sets[f"{_KIND}{kind}"]))
    return KindProbe(kind, probe.numbers, probe.register, probe.context, probe.other, members=members)
