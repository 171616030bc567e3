"""Run the rules over dishes and gather what they find.

A rule that raises is reported as our fault and the others go on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from spoonproof.checks.accepted import Acceptance
from spoonproof.checks.drawer import Findings, Gathering, gathered
from spoonproof.checks.rule import Fault, Rule, Scope, all_rules
from spoonproof.dish import Dish
from spoonproof.folder import KEPT, ChannelFolder, Chosen, RecipeFile
from spoonproof.model.finding import Finding
from spoonproof.model.record import dataclass, replace
from spoonproof.model.text import Document


@dataclass(slots=True)
class Outcome:
    """What a check gave: findings in the order a person should meet them, rules that broke, and how many recipes and
    rules there were."""

    findings: Findings
    broken: list[str]
    files: int
    rules: int


CHECK_LEAST = 50
"""Recipes for which another process is worth its start."""


def check(folder: ChannelFolder, files: Chosen | Sequence[RecipeFile], whole_channel: bool = False) -> Outcome:
    """Findings over ``files``, and over the channel and its register when ``whole_channel``. Files that are chosen
    and not yet read are read here, by several processes where there are many, and let go when their rules have spoken.
    """
    accepted = Acceptance(folder.channel)
    gathering = Gathering()
    gathering.add(folder.channel_faults, accepted)
    broken: list[str] = []
    count = 0
    looked = _in_turn(folder, files) if isinstance(files, Chosen) else (_looked(folder, file) for file in files)
    for one in looked:
        if one is not None:
            count += 1
            gathering.add(one.findings, accepted)
            broken += one.broken
    if whole_channel:
        from spoonproof.reading.slugs import clashes

        alike = (folder.read(path).document for path in folder.namesakes)
        gathering.add(clashes(document for document in alike if document is not None), accepted)
        register = _run("register", folder.knowledge, folder.channel.document)
        gathering.add(register.findings, accepted)
        broken += register.broken
    gathering.add(accepted.complaints(unused=whole_channel))
    return Outcome(gathering.found(), broken, count, len(all_rules()))


@dataclass(frozen=True, slots=True)
class Looked:
    """What rules found in one thing, and those that broke on it."""

    findings: list[Finding]
    broken: list[str]


def _looked(folder: ChannelFolder, file: RecipeFile) -> Looked:
    if file.recipe is not None:
        one = _run("dish", folder.dish(file.recipe), file.recipe.document)
        return Looked([*file.faults, *one.findings], one.broken)
    rest = _of_the_rest(folder, file.document) if file.document is not None else []
    return Looked([*file.faults, *rest], [])


def _in_turn(folder: ChannelFolder, chosen: Chosen) -> Iterator[Looked | None]:
    """The same for each of the files that are chosen; None for a draft that is not."""
    from spoonproof.crew import spread

    def work(share: Sequence[tuple[Path, bool]]) -> Iterator[Looked | None]:
        for file in Chosen(folder, share).in_turn():
            yield _looked(folder, file) if file is not None else None
            folder.let_go(KEPT)

    yield from work(chosen.places[:1])  # what it loads the processes have in common
    yield from spread(work, chosen.places[1:], CHECK_LEAST, [folder.channel.document])


def _of_the_rest(folder: ChannelFolder, document: Document) -> list[Finding]:
    """What endangers a baby or is wrongly claimed in a recipe that can't be read as a whole, as far as it can: one
    missing colon must not hide the honey. What else the rules say may come of what is missing."""
    from spoonproof.reading.recipe import read_whole

    known = folder.knowledge
    reading = read_whole(document, known.foods, known.verbs, folder.measures)
    if reading.rest is None:
        return []
    dish = folder.dish(reading.rest)
    findings = _run("dish", dish, document).findings
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


def check_dish(dish: Dish) -> list[Finding]:
    """Findings of the dish rules over one dish, in order: for pages and editors."""
    return gathered(_run("dish", dish, dish.recipe.document).findings)


def _run(scope: Scope, subject: Any, document: Document) -> Looked:
    one = Looked([], [])
    for rule in all_rules():
        if rule.scope != scope:
            continue
        try:
            one.findings.extend([finding_of(rule, fault, document) for fault in rule.check(subject)])
        except Exception as error:  # a rule of ours broke: say so, and let the others speak
            from spoonproof.reading.own_tables import says_own

            if isinstance(error, ValueError) and says_own(error):
                raise  # no rule broke: a table of the channel's own can't be used
            one.broken.append(f"{rule.name} on {document.path}")
            one.findings.append(_internal_error(rule, document, error))
    return one


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
