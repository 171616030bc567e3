"""What was said off script, checked: claims, cautions taken back, food brought in, numbers changed."""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.drawer import in_order
from spoonproof.checks.from_claims import once
from spoonproof.claims.judge import level_of
from spoonproof.dish import Dish
from spoonproof.feeding.pictures import picture_hazards
from spoonproof.film.checked import of_claim
from spoonproof.film.timed import Edited, OffScript
from spoonproof.hearing import hear, row_level
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.finding import Area, Finding, Level, Remedy, SourceRef
from spoonproof.model.recipe import Picture
from spoonproof.model.record import replace
from spoonproof.model.text import Span, Text
from spoonproof.reading.spoken import number_words, tokens

RULE = "said-off-script"
UNSAID = "caution-not-said"
_NUMBERS = frozenset(word for number in range(1, 101) for word in number_words(number).split()) | {"half", "quarter"}
_TURNED = re.compile(r"\b(?:no|not|never|without|nor|don['’]t|leave (?:it |them )?out|instead of)\b", re.IGNORECASE)


def claims_said(dish: Dish, film: Edited) -> list[JudgedClaim]:
    """Every claim of the finished film, and whatever it says that endangers a baby of the recipe's age, judged on the
    dish, in the order in which it is said."""
    chosen, months = dish.channel.policies, dish.recipe.youngest
    return once(hear(film.passages, dish.knowledge, dish.judge(), months=months, for_babies=True, policies=chosen))


def findings(dish: Dish, film: Edited, claims: list[JudgedClaim]) -> list[Finding]:
    """Findings for what was said off script, in order; a sentence in which nothing is wrong is a note. A caution of
    the script that nobody says is a warning; cues that can't be read are told too."""
    found: list[Finding] = list(film.faults)
    for off in film.off_script:
        wrong = list(_of(dish, off, claims))
        found += wrong or [_finding(off, "note", "Not in the script; nothing wrong was found in it.")]
    for words, take in film.unsaid:
        document = film.passages[0].document
        text = f"The script has this caution in {take}, and nobody says it in these words: “{words}”"
        mend = Remedy("Record it as a pick-up, or put it into the words of another shot.")
        found.append(Finding(UNSAID, "film", "warning", text, document, document.whole, remedy=mend))
    return in_order(found)


def _of(dish: Dish, off: OffScript, claims: list[JudgedClaim]) -> Iterator[Finding]:
    for judged in claims:
        danger = row_level(judged)
        level = danger or level_of(judged)
        claim = judged.claim
        if claim.passage is off.passage and level is not None and off.touches(claim.start, claim.end):
            found = of_claim(RULE, judged, level)
            yield replace(found, area="baby") if danger else found
    yield from _brought_in(dish, off)
    changed = _numbers(off.said) - _numbers(off.instead)
    if changed and _numbers(off.instead):
        yield _finding(
            off,
            "warning",
            f"“{off.said}” was said where the script has “{off.instead}”: a number is not the recipe's.",
            "Say the recipe's number in a pick-up, or change the recipe if the new one is right.",
        )


def _brought_in(dish: Dish, off: OffScript) -> Iterator[Finding]:
    """Food that is wrong for this age, or a way of eating that is dangerous, by the rows that judge pictures."""
    words = off.said
    if _TURNED.search(off.text):
        return
    shown = Picture("", None, (Text(words, _span(off)),), _span(off))
    for hazard in picture_hazards(
        replace(dish.recipe, pictures=(shown,)), dish.knowledge.feeding, dish.channel.policies
    ):
        text = hazard.message.replace("The picture shows ", "Off script there is talk of ")
        mend = hazard.remedy.replace("Choose another picture. ", "")
        yield _finding(off, hazard.level, text, mend, hazard.sources, area="baby")


def _numbers(text: str) -> set[str]:
    return {word for token in tokens(text) for word in token.words if word in _NUMBERS}


def _span(off: OffScript) -> Span:
    return off.passage.span(off.words[0][0], off.words[-1][1])


def _finding(
    off: OffScript,
    level: Level,
    text: str,
    mend: str = "",
    sources: tuple[SourceRef, ...] = (),
    span: Span | None = None,
    area: Area = "film",
) -> Finding:
    return Finding(
        RULE,
        area,
        level,
        text,
        off.passage.document,
        span or _span(off),
        remedy=Remedy(mend) if mend else None,
        sources=sources,
    )
