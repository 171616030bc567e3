"""Run the rules over dishes and gather what they find.

A rule that raises is reported as our fault and the others go on. The same statement in several
places is one finding with the other places beside it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from spoonproof.checks.accepted import without_accepted
from spoonproof.checks.rule import Fault, Rule, Scope, all_rules
from spoonproof.dish import Dish
from spoonproof.folder import ChannelFolder, RecipeFile
from spoonproof.model.finding import AREAS, LEVELS, Finding, Related
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass, field, replace
from spoonproof.model.text import Document


@dataclass(frozen=True, slots=True)
class ChannelView:
    """What channel-wide rules look at."""

    folder: ChannelFolder
    dishes: tuple[Dish, ...]


@dataclass(slots=True)
class Outcome:
    """What a check gave: findings in the order a person should meet them, rules that broke, and the dishes looked at
    (with all that was worked out about them)."""

    findings: list[Finding] = field(default_factory=list)
    broken: list[str] = field(default_factory=list)
    files: int = 0
    rules: int = 0
    dishes: tuple[Dish, ...] = ()


CHECK_LEAST = 60
"""Recipes for which another process is worth its start."""


def check(
    folder: ChannelFolder, files: Sequence[RecipeFile], whole_channel: bool = False, keep: bool = False
) -> Outcome:
    """Findings over ``files``, and over the channel and its register when ``whole_channel``.

    ``keep``: the dishes are kept with what was worked out about them; without it many recipes are checked in
    several processes and each dish is forgotten when its rules have spoken.
    """
    outcome = Outcome(files=len(files), rules=len(all_rules()))
    outcome.findings += folder.channel_faults
    readable = [(file.recipe, folder.dish(file.recipe)) for file in files if file.recipe is not None]
    looked = _by_dish([dish for _, dish in readable]) if keep else _by_recipe(folder, [r for r, _ in readable])
    found = iter(looked)
    for file in files:
        outcome.findings += file.faults
        if file.recipe is not None:
            findings, broken = next(found)
            outcome.findings += findings
            outcome.broken += broken
        elif file.document is not None:
            outcome.findings += _of_the_rest(folder, file.document)
    outcome.dishes = tuple(dish for _, dish in readable)
    _run("channel", ChannelView(folder, outcome.dishes), folder.channel.document, outcome)
    if whole_channel:
        from spoonproof.reading.slugs import clashes

        outcome.findings += clashes(file.document for file in folder.files if file.document is not None)
        _run("register", folder.knowledge, folder.channel.document, outcome)
    outcome.findings = in_order(
        without_accepted(group_repeats(outcome.findings), folder.channel, complain_unused=whole_channel)
    )
    return outcome


def _of_the_rest(folder: ChannelFolder, document: Document) -> list[Finding]:
    """What endangers a baby or is wrongly claimed in a recipe that can't be read as a whole, as far as it can: one
    missing colon must not hide the honey. What else the rules say may come of what is missing."""
    from spoonproof.reading.recipe import read_whole

    known = folder.knowledge
    reading = read_whole(document, known.foods, known.verbs, folder.measures)
    if reading.rest is None:
        return []
    dish = folder.dish(reading.rest)
    ((findings, _),) = _by_dish([dish])
    if not reading.foods_alone:
        return [finding for finding in findings if finding.area in ("baby", "words")]
    tables = ("choking", "foods_not_yet")
    by_method = {row.text("id") for table in tables for row in known.rows(table) if row.text("when")}
    unsure = {hazard.span for hazard in dish.hazards if hazard.id in by_method}  # "raw": a step may cook it
    lines = [line.span for line in reading.rest.foods]
    return [
        replace(one, message=one.message + _NOT_ALL_READ)
        for one in findings
        if one.rule in _OF_A_FOOD and one.span not in unsure and any(a <= one.span.start < b for a, b in lines)
    ]


_OF_A_FOOD = ("food-not-yet", "added-salt", "added-sugar", "choking-shape", "hidden-allergen")
_NOT_ALL_READ = " Not all of this recipe could be read: what is done to it there may change this."


def _by_dish(dishes: Sequence[Dish]) -> list[tuple[list[Finding], list[str]]]:
    """For each dish what its rules found, and the rules that broke on it."""
    looked = []
    for dish in dishes:
        one = Outcome()
        _run("dish", dish, dish.recipe.document, one)
        looked.append((one.findings, one.broken))
    return looked


def _by_recipe(folder: ChannelFolder, recipes: Sequence[Recipe]) -> list[tuple[list[Finding], list[str]]]:
    """The same for recipes whose dishes nobody asks for again."""
    from spoonproof.crew import spread

    def work(share: Sequence[Recipe]) -> list[tuple[list[Finding], list[str]]]:
        return [looked for recipe in share for looked in _by_dish([folder.dish(recipe)])]

    documents = [recipe.document for recipe in recipes]
    first = work(recipes[:1])  # what it loads the processes have in common
    rest = recipes[1:]
    shares = spread(work, rest, CHECK_LEAST, [*documents, folder.channel.document])
    looked: list[tuple[list[Finding], list[str]]] = [([], [])] * len(rest)
    for start, share in enumerate(shares):
        looked[start :: len(shares)] = share
    return first + looked


def check_dish(dish: Dish) -> list[Finding]:
    """Findings of the dish rules over one dish, in order: for pages and editors."""
    outcome = Outcome()
    _run("dish", dish, dish.recipe.document, outcome)
    return in_order(group_repeats(outcome.findings))


def _run(scope: Scope, subject: Any, document: Document, outcome: Outcome) -> None:
    for rule in all_rules():
        if rule.scope != scope:
            continue
        try:
            outcome.findings += [finding_of(rule, fault, document) for fault in rule.check(subject)]
        except Exception as error:  # a rule of ours broke: say so, and let the others speak
            from spoonproof.reading.own_tables import says_own

            if isinstance(error, ValueError) and says_own(error):
                raise  # no rule broke: a table of the channel's own can't be used
            outcome.broken.append(f"{rule.name} on {document.path}")
            outcome.findings.append(_internal_error(rule, document, error))


def _internal_error(rule: Rule, document: Document, error: Exception) -> Finding:
    return Finding(
        rule="internal-error",
        area=rule.area,
        level="error",
        message=f"Our fault, not yours: the rule {rule.name} broke on this file ({type(error).__name__}: {error}). "
        "It was not checked; everything else was. Please report it with this file.",
        document=document,
        span=document.whole,
    )


def finding_of(rule: Rule, fault: Fault, document: Document) -> Finding:
    """A rule's fault as a finding of that rule."""
    return Finding(
        rule=rule.name,
        area=fault.area or rule.area,
        level=fault.level or rule.level,
        message=fault.message,
        document=fault.document or document,
        span=fault.span,
        bowl=fault.bowl,
        related=fault.related,
        remedy=fault.remedy,
        sources=fault.sources,
        claim=fault.claim,
    )


def group_repeats(findings: Iterable[Finding]) -> list[Finding]:
    """One finding for the same statement judged alike in several places: the first place leads."""
    grouped: dict[tuple[str, ...], Finding] = {}
    for number, finding in enumerate(findings):
        key = _repeat_key(finding) or (str(number),)
        first = grouped.get(key)
        if first is None:
            grouped[key] = finding
        else:
            again = Related(finding.document, finding.span, "said here too")
            grouped[key] = replace(first, related=(*first.related, again))
    return list(grouped.values())


def _repeat_key(finding: Finding) -> tuple[str, ...] | None:
    if finding.claim is None:
        return None
    words = " ".join(
        "".join(c if c.isalnum() or c in "%½¼¾" else " " for c in finding.claim.claim.quote.lower()).split()
    )
    return finding.rule, finding.level, finding.claim.claim.kind, finding.claim.advice, words


def in_order(findings: Iterable[Finding]) -> list[Finding]:
    """The baby's findings first, then words, cooking, film and page; worst first; then by place."""
    return sorted(
        findings,
        key=lambda f: (
            AREAS.index(f.area),
            LEVELS.index(f.level),
            f.document.path,
            f.span.start,
            f.span.end,
            f.rule,
            f.message,
        ),
    )
