"""Of matches that say one thing twice, which one stands: a claim is put out once, under the kind that says most."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.model.claim import Kind

# "Six grams of protein", "twice the iron of beef", "less vitamin C once boiled": that the food holds it at all is said
# by the number, the comparison, the process; of what makes ill, nothing more is said by the part of the body it hits;
# a rash that comes of a food is no illness the food is said to treat.
_SAID_BY: Mapping[Kind, Mapping[Kind, frozenset[str]]] = {
    "nutrient-content": {
        "quantity": frozenset(),
        "comparative": frozenset({"more-than", "more-without-than", "as-much-as", "as-good-as", "times-the"}),
        "process": frozenset({"process-changes", "when-cooked", "better-so", "lost-in-water"}),
        "allergen": frozenset(),
    },
    "comparative": {"process": frozenset({"two-processes", "better-so", "when-cooked"})},
    "general-benefit": {"comparative": frozenset({"better-for", "as-much-as"})},
    "function": {"disease": frozenset(), "process": frozenset({"process-makes"})},
    "disease": {
        "process": frozenset({"process-kills"}),
        "safety-age": frozenset({"contaminant", "not-while-ill"}),
        "allergen": frozenset({"reaction-signs", "reaction-waved-off"}),
    },
}
"""Kind, the kinds that say it on the same object, and the rules of those that do (none named: all)."""


def says_again(match: Match, other: Match) -> bool:
    """Whether ``match`` says what ``other``, which is surer, has said."""
    if match.rule.name == "limit-a-day" and other.rule.name == "grams-of" and match.trigger[0] == other.trigger[0]:
        return True  # "11 mg of iron a day" is one amount
    within = match.start >= other.start and match.end <= other.end
    if other.rule.name == "takes-up" and match.rule.kind == "function" and within:
        return True  # "helps the *body* to *absorb* the calcium" helps neither by itself
    if match.object is None or other.object is None:
        overlap = match.start < other.end and other.start < match.end
        return overlap and (match.rule.kind == other.rule.kind or _said_by(match, other))
    if not same_object(match, other):
        return False
    # A loose rule says nothing new about an object that a surer rule has taken, whatever its kind.
    return match.rule.kind == other.rule.kind or match.rule.loose or _said_by(match, other)


def same_object(match: Match, other: Match) -> bool:
    """Whether the objects of both share a word; False where one has none."""
    if match.object is None or other.object is None:
        return False
    return match.object[0] < other.object[1] and other.object[0] < match.object[1]


def outdoes(match: Match, other: Match) -> bool:
    """Whether a surer ``match`` takes the words of a loose one of another kind: "cheese *supplies* protein"."""
    return (
        other.rule.loose
        and not match.rule.loose
        and match.rule.kind != other.rule.kind
        and match.trigger == other.trigger
        and same_object(match, other)
    )


def _said_by(match: Match, other: Match) -> bool:
    rules = _SAID_BY.get(match.rule.kind, {}).get(other.rule.kind)
    return rules is not None and (not rules or other.rule.name in rules)
