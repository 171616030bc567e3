"""The index's filters: which there are, what each recipe answers, and the style sheet that applies them.

They work without script: a chosen radio button hides, by CSS alone, the cards that lack its token.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from spoonproof.model.recipe import TEXTURES
from spoonproof.reading.recipe_keys import MONTHS
from spoonproof.site.view import Allergen, Choice, RecipePage
from spoonproof.site.view_site import Card, Filter

BANDS = ((4, 6, "about 6 months"), (7, 9, "7 to 9 months"), (10, 12, "10 to 12 months"), (13, 24, "1 to 2 years"))
"""Age bands of the filter in months, both ends in."""

TIMES = (20, 40, 60)


SHORT = {
    "gluten": "gluten", "wheat": "wheat", "crustaceans": "shellfish", "egg": "egg", "fish": "fish", "peanut": "peanut",
    "soya": "soya", "milk": "milk", "nuts": "nuts", "celery": "celery", "mustard": "mustard", "sesame": "sesame",
    "sulphites": "sulphites", "lupin": "lupin", "molluscs": "molluscs",
}  # fmt: skip
"""Allergens in one word, where the law's own words are too long: cards and filters."""


def short(allergen: Allergen) -> str:
    """An allergen in one word."""
    return SHORT.get(allergen.key, allergen.name)


def _slug(text: str) -> str:
    return "".join(c if c.isascii() and c.isalnum() else "-" for c in text.lower())


def _meet(low: int, high: int, from_months: int, to_months: int | None) -> bool:
    return from_months <= high and (to_months is None or to_months >= low)


def filters(pages: Iterable[RecipePage]) -> tuple[Filter, ...]:
    """Only choices that tell recipes apart: a filter with one answer for all is no filter."""
    ages, textures, allergens, months, minutes = (set[Any]() for _ in range(5))  # each page is taken out once
    for page in pages:
        ages.add((page.age_low, page.age_high))
        textures.add(page.texture)
        allergens.update(map(short, page.allergens))
        months.update(page.months)
        minutes.add(page.minutes or TIMES[-1] + 1)
    bands = [Choice(f"age-{low}", label) for low, high, label in BANDS if any(_meet(low, high, *own) for own in ages)]
    groups = (
        ("age", "Age", "any age", bands),
        ("texture", "Texture", "any texture", [Choice(f"texture-{_slug(t)}", t) for t in TEXTURES if t in textures]),
        ("without", "Leave out", "nothing", [Choice(f"without-{_slug(n)}", f"no {n}") for n in sorted(allergens)]),
        ("month", "In season in", "any month", [Choice(f"month-{m}", MONTHS[m - 1]) for m in sorted(months)]),
        (
            "within",
            "Ready within",
            "any time",
            [Choice(f"within-{t}", f"{t} minutes") for t in TIMES if min(minutes, default=t + 1) <= t],
        ),
    )
    return tuple(
        Filter(id, label, (Choice(f"any-{id}", any_label), *choices), many=id == "without")
        for id, label, any_label, choices in groups
        if choices and (id in ("age", "texture", "without") or len(choices) > 1)
    )


def card(page: RecipePage, every: Iterable[Filter]) -> Card:
    """The card of a recipe with every token it answers to."""
    has = {f"without-{_slug(short(a))}" for a in page.allergens}
    tokens = []
    for filter in every:
        for choice in filter.choices[1:]:
            kind, _, value = choice.id.partition("-")
            holds = (
                (
                    kind == "age"
                    and any(
                        low == int(value) and _meet(low, high, page.age_low, page.age_high) for low, high, _ in BANDS
                    )
                )
                or (kind == "texture" and _slug(page.texture) == value)
                or (kind == "without" and choice.id not in has)
                or (kind == "month" and (not page.months or int(value) in page.months))
                or (kind == "within" and page.minutes is not None and page.minutes <= int(value))
            )
            if holds:
                tokens.append(choice.id)
    return Card(page, tuple(tokens), page.words)


def style(every: Iterable[Filter]) -> str:
    """The style sheet of the filters: one rule a choice.

    Only where no script runs: with a thousand cards, ``:has`` is looked at anew for each card that a script hides.
    """
    lines = ["/* Filters without script: a chosen button hides the cards that lack its word. */"]
    lines.append("@media (scripting: none) {")
    for filter in every:
        for choice in filter.choices[1:]:
            lines.append(f'body:has(#f-{choice.id}:checked) .card:not([data-is~="{choice.id}"]) {{ display: none; }}')
    return "\n".join([*lines, "}", ""])


def switches(systems: Iterable[Choice], scales: Iterable[Choice]) -> str:
    """The style sheet of the foods' switches: shows the amount for the chosen measures and scale.

    Without ``:has`` a browser shows the amounts as written.
    """
    lines = ["/* Amounts without script: the chosen measures and scale are shown, the others not. */"]
    rows = [(system.id, scale.id) for system in systems for scale in scales]
    lines.append("@supports selector(:has(*)) {")
    lines.append(".foods .amount > .s-written.x-1 { display: none; }")
    for system, scale in rows:
        chosen = f"body:has(#s-{system}:checked):has(#x-{scale}:checked)"
        lines.append(f"{chosen} .amount > .s-{system}.x-{scale} {{ display: inline; }}")
    lines.append("}")
    return "\n".join([*lines, ""])
