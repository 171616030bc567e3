"""A recipe's text as the desk shows it beside the editor: what was read out of it, what is wrong, what it claims.

Offsets here are those of a browser: UTF-16 code units from 0.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from pathlib import Path

from spoonproof.checks import from_claims
from spoonproof.checks.engine import check
from spoonproof.desk.shelf import DeskFolder
from spoonproof.dish import Dish
from spoonproof.folder import RecipeFile
from spoonproof.model.citation import Csl, address, short
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.finding import AREAS, LEVELS, Area, Edit, Finding, Level, SourceRef
from spoonproof.model.record import dataclass
from spoonproof.model.text import Document

AREA_NAMES: Mapping[Area, str] = {
    "baby": "The baby",
    "words": "The words",
    "cooking": "The cooking",
    "film": "The film",
    "page": "The page",
}


@dataclass(frozen=True, slots=True)
class Cited:
    """A source as shown: who, what, when; where in it; its link or ""."""

    words: str
    locator: str
    href: str


@dataclass(frozen=True, slots=True)
class ClaimView:
    """A claim with its answer. ``start`` and ``end`` mark it in the editor; ``takes`` when one click takes its wording
    over."""

    key: str
    quote: str
    advice: str
    keep: bool
    truth: str
    why: str
    wording: str
    takes: bool
    entry: str
    line: int
    where: str
    start: int
    end: int
    time: str
    sources: tuple[Cited, ...]
    trail: tuple[str, ...]
    markets: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FindingView:
    """A finding; ``mends`` when its remedy can be applied with one click; ``here`` when it stands in this text."""

    key: str
    level: Level
    rule: str
    message: str
    line: int
    start: int
    end: int
    here: bool
    file: str
    remedy: str
    mends: bool
    sources: tuple[Cited, ...]
    claim: ClaimView | None


@dataclass(frozen=True, slots=True)
class Group:
    """The findings of one area."""

    area: Area
    name: str
    findings: tuple[FindingView, ...]


@dataclass(frozen=True, slots=True)
class FoodRow:
    """What was read of a food line; grams in words; ``doubt`` when something was not understood."""

    read: tuple[str, ...]
    grams: str
    doubt: bool


@dataclass(frozen=True, slots=True)
class StepRow:
    """What was read of a step, and whose bowl it is about ("" for both)."""

    read: tuple[str, ...]
    bowl: str


@dataclass(frozen=True, slots=True)
class Reading:
    """All of it. ``readable`` False: the head could not be understood; then there are findings alone."""

    readable: bool
    title: str
    glance: tuple[tuple[str, str], ...]
    foods: tuple[FoodRow, ...]
    steps: tuple[StepRow, ...]
    groups: tuple[Group, ...]
    claims: tuple[ClaimView, ...]
    counts: Mapping[Level, int]


class Units:
    """Offsets in a document as a browser counts them."""

    def __init__(self, document: Document) -> None:
        self._wide = [at for at, char in enumerate(document.text) if ord(char) > 0xFFFF]

    def of(self, offset: int) -> int:
        """The UTF-16 offset of a code point offset."""
        return offset + bisect_left(self._wide, offset)


def findings_of(folder: DeskFolder, file: RecipeFile) -> list[Finding]:
    """The findings of one recipe, in order."""
    return list(check(folder, [file]).findings)


def counted(findings: Sequence[Finding]) -> Mapping[Level, int]:
    """How many findings there are of each level."""
    return {level: sum(finding.level == level for finding in findings) for level in LEVELS}


def read(folder: DeskFolder, path: Path, text: str) -> Reading:
    """How ``text`` is read as the recipe at ``path``."""
    return reading_of(folder, folder.with_text(path, text))


def reading_of(folder: DeskFolder, file: RecipeFile) -> Reading:
    """How a recipe file is read."""
    findings = findings_of(folder, file)
    document = file.document or Document(file.shown, "")
    units = Units(document)
    sources = _sources(folder, file)
    views = [(finding.area, _finding(finding, document, units, sources)) for finding in findings]
    groups = tuple(
        Group(area, AREA_NAMES[area], tuple(view for at, view in views if at == area))
        for area in AREAS
        if any(at == area for at, _ in views)
    )
    counts = counted(findings)
    recipe = file.recipe
    if recipe is None:
        return Reading(False, "", (), (), (), groups, (), counts)
    dish = folder.dish(recipe)
    claims = tuple(claim_view(judged, sources, units) for judged in dish.claims)
    return Reading(True, recipe.title.value, _glance(dish), _foods(dish), _steps(dish), groups, claims, counts)


def _sources(folder: DeskFolder, file: RecipeFile) -> Mapping[str, Csl]:
    own = {str(item["id"]): item for item in file.recipe.sources if item.get("id")} if file.recipe else {}
    return {**folder.knowledge.sources, **own}


def _finding(finding: Finding, document: Document, units: Units, sources: Mapping[str, Csl]) -> FindingView:
    here = finding.document is document
    claim = claim_view(finding.claim, sources, units) if finding.claim is not None and here else None
    remedy = finding.remedy
    return FindingView(
        key=key_of(finding),
        level=finding.level,
        rule=finding.rule,
        message=finding.message,
        line=finding.document.position(finding.span.start)[0],
        start=units.of(finding.span.start) if here else 0,
        end=units.of(finding.span.end) if here else 0,
        here=here,
        file=finding.document.path,
        remedy=remedy.text if remedy is not None else "",
        mends=here and remedy is not None and bool(remedy.edits),
        sources=cited(finding.sources, sources),
        claim=claim,
    )


def key_of(finding: Finding) -> str:
    """What names a finding among those of one text."""
    return f"{finding.rule}:{finding.span.start}:{finding.span.end}"


def claim_key(judged: JudgedClaim) -> str:
    """What names a claim among those of one text."""
    return f"claim:{judged.claim.span.start}:{judged.claim.span.end}:{judged.claim.kind}"


def claim_view(judged: JudgedClaim, sources: Mapping[str, Csl], units: Units | None = None) -> ClaimView:
    """A judged claim as shown."""
    from spoonproof.report.heard import advice_words, timecode

    claim = judged.claim
    span = claim.span
    seconds = claim.passage.seconds(claim.start, claim.end)
    units = units or Units(claim.passage.document)
    answers = {"yes": "may be said", "with-wording": "may be said in the law's words", "no": "may not be said"}
    return ClaimView(
        key=claim_key(judged),
        quote=" ".join(claim.quote.split()),
        advice=advice_words(judged),
        keep=judged.advice == "keep",
        truth=judged.truth,
        why=judged.why,
        wording=judged.wording or "",
        takes=_takes_over(judged),
        entry=judged.entry or "",
        line=claim.passage.document.position(span.start)[0],
        where=claim.passage.where or claim.passage.kind,
        start=units.of(span.start),
        end=units.of(span.end),
        time=timecode(seconds[0]) if seconds else "",
        sources=cited(judged.sources, sources),
        trail=judged.trail,
        markets=tuple(
            f"{answer.market}: a food business {answers[answer.answer]}"
            + ("" if answer.bound else "; your own editorial speech is not bound by this")
            for answer in judged.allowed
        ),
    )


def _takes_over(judged: JudgedClaim) -> bool:
    """A whole sentence can be taken over as it is; a hint ("say what it is a source of") can't."""
    return judged.advice != "keep" and bool(from_claims.remedy(judged).edits)


def cited(refs: Sequence[SourceRef], sources: Mapping[str, Csl]) -> tuple[Cited, ...]:
    """Sources as shown, each once."""
    found = []
    for ref in dict.fromkeys(refs):
        link = address(ref.id, sources)
        words = short(ref.id, sources)
        if ref.basis == "from-memory" and ref.id in sources:
            words += " (from memory, to be verified)"
        found.append(Cited(words, ref.locator, link if link.startswith(("https://", "http://")) else ""))
    return tuple(found)


def mended(folder: DeskFolder, path: Path, text: str, key: str) -> str | None:
    """``text`` with the remedy of the finding, or the wording of the claim, that ``key`` names; None when the text has
    moved on and nothing of that name stands there."""
    from spoonproof.reading.edits import apply_edits, fitted

    file = folder.with_text(path, text)
    if file.document is None:
        return None
    edits: tuple[Edit, ...] = ()
    if key.startswith("claim:") and file.recipe is not None:
        for judged in folder.dish(file.recipe).claims:
            if claim_key(judged) == key and _takes_over(judged):
                edits = from_claims.remedy(judged).edits
    else:
        for finding in findings_of(folder, file):
            if key_of(finding) == key and finding.document is file.document and finding.remedy is not None:
                edits = edits or finding.remedy.edits
    if not edits:
        return None
    document = file.document
    return apply_edits(document, [fitted(document, edit) for edit in edits])


def _glance(dish: Dish) -> tuple[tuple[str, str], ...]:
    from spoonproof.film.material import contained

    facts, plan, recipe = dish.facts, dish.plan, dish.recipe
    rows = [("Ages", recipe.ages.told)]
    if recipe.texture is not None:
        rows.append(("Texture", recipe.texture.value))
    if facts.grams.mid > 0:
        rows.append(("Weighs about", f"{_grams(facts.grams.mid)} in all, for the baby"))
    if recipe.makes is not None:
        rows.append(("Makes", recipe.makes.told))
    if plan.total:
        rows.append(("Time", f"{round(plan.total)} min, {round(plan.hands_on)} of them with your hands"))
    words = contained(dish)
    rows.append(("Contains", ", ".join(words) if words else "none of the listed allergens"))
    return tuple(rows)


def _foods(dish: Dish) -> tuple[FoodRow, ...]:
    from spoonproof.reading.echo import food_words

    foods = dish.knowledge.foods
    weights = {part.line: part.raw for part in reversed(dish.facts.ingredients)}
    rows = []
    for number, line in enumerate(dish.recipe.foods):
        read = tuple(food_words(line, foods).split(" · "))
        weight = weights.get(number)
        grams = _grams(weight.mid) if weight is not None and weight.mid > 0 else "weight not known"
        doubt = (line.food is None and line.recipe is None) or any(word.startswith("?") for word in read)
        rows.append(FoodRow(read, grams, doubt))
    return tuple(rows)


def _steps(dish: Dish) -> tuple[StepRow, ...]:
    from spoonproof.reading.echo import step_words

    recipe = dish.recipe
    rows = []
    for step in recipe.steps:
        read = tuple(step_words(step, recipe, dish.knowledge.verbs))
        bowls = {action.bowl or step.bowl for action in step.actions} - {None}
        bowl = "" if step.splits or len(bowls) != 1 else f"{bowls.pop()}'s bowl"
        read = tuple(row.removesuffix(f" · {bowl}") for row in read)
        rows.append(StepRow(read, bowl))
    return tuple(rows)


def _grams(grams: float) -> str:
    return f"{grams:.0f} g" if grams >= 10 else f"{grams:.1f} g"
