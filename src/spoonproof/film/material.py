"""What a dish brings to its script: texts ready to be read aloud or shown."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from spoonproof.dish import Dish
from spoonproof.feeding.cautions import Caution
from spoonproof.film.briefly import LISTED_FOODS, listed
from spoonproof.film.said import every_wording, judged
from spoonproof.film.screen import fits_screen
from spoonproof.film.script import Heard, Material, Shown
from spoonproof.film.setups import shot_of
from spoonproof.film.twins import twins
from spoonproof.model.citation import short
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.durations import days_kept, hours_kept
from spoonproof.model.recipe import FoodLine, Step
from spoonproof.model.record import replace
from spoonproof.reading.disclosure import DISCLOSURE

STRICTER = {"keep-chill": frozenset({"keep-rice", "keep-nitrate"})}
"""Cautions that are not shown beside a stricter one about the same."""

_KINDS = re.compile(r"\([^()]{0,200}\)")
_TITLE_GOES_ON = re.compile(r"(?:[,:;]| on| for| as)[ ]")
_CONTAINS = re.compile(r"It contains ([^.]{1,300})\.")

UNSHOWN_SOURCES = frozenset({"own", "common-practice", "from-memory"})


def material(dish: Dish) -> Material:
    """The material of a dish's film."""
    recipe, channel = dish.recipe, dish.channel
    film = recipe.film
    made = Material(
        title=recipe.title.value,
        channel=channel.title,
        ages=recipe.ages.told.capitalize(),
        texture=recipe.texture.value if recipe.texture else "",
        foods=_foods(dish),
        steps=tuple(step.text for step in recipe.steps),
        segments=film.segments if film else (),
        target=film.runs if film else None,
        words_a_minute=channel.speech,
        summary=recipe.summary.value if recipe.summary else "",
        step_shots=tuple(shot_of(dish, step) for step in recipe.steps),
        step_tests=tuple(map(_test, recipe.steps)),
        twins=twins(dish),
        heard=tuple(dict.fromkeys(Heard(_aloud(e.spoken), e.where) for e in cautions_of(dish) if e.spoken)),
        shown=tuple(_shown(dish)),
        keeping=_keeping(dish),
        disclosure=DISCLOSURE.get(dish.paid, ""),
        presenters=channel.presenters,
    )
    return replace(made, shown=(*made.shown, *_sources(dish, made)))


def food_said(line: FoodLine, dish: Dish) -> str:
    """A food as a presenter says it: without its amount and its cut; another recipe by its title."""
    other = dish.others.get(line.recipe) if line.recipe is not None else None
    if other is not None and not line.alias:
        title = other.title.value
        return title[:1].lower() + title[1:]
    name = line.alias or line.name or line.text
    return f"your baby's {name}" if name.lower() == "usual milk" else name


def _shown(dish: Dish) -> Iterator[Shown]:
    """What must stand on the screen: allergens, and cautions in their short words; each once."""
    for text in allergens_shown(contained(dish)):
        yield Shown(text, "allergens", "foods")
    seen: set[str] = set()
    for caution in cautions_of(dish):
        words = caution.screen or caution.text
        if words not in seen:
            seen.add(words)
            yield Shown(words, "caution", caution.where, full="" if caution.spoken else caution.text)


def contained(dish: Dish) -> list[str]:
    """The allergens in the words of the channel's markets; last, and marked, what only the family's bowl has."""
    babys = {found.allergen for found in dish.allergens if found.baby}
    marked = [(label.allergen not in babys, label.word) for label in dish.allergen_labels]
    return [f"{word} (family's bowl)" if apart else word for apart, word in sorted(marked, key=lambda pair: pair[0])]


def cautions_of(dish: Dish) -> tuple[Caution, ...]:
    """The cautions as the film has them: none beside a stricter one about the same."""
    ids = {caution.id for caution in dish.cautions}
    return tuple(caution for caution in dish.cautions if not ids & STRICTER.get(caution.id, frozenset()))


def _foods(dish: Dish) -> tuple[str, ...]:
    """The foods as they are said, each once and without water; the most there is of comes first in a long list."""
    lines = [(number, line) for number, line in enumerate(dish.recipe.foods) if line.food != "water"]
    if len(lines) > LISTED_FOODS:
        grams = {part.line: part.raw.mid for part in dish.facts.ingredients}
        lines.sort(key=lambda pair: -grams.get(pair[0], 0.0))
    return tuple(dict.fromkeys(food_said(line, dish) for _, line in lines))


def _aloud(words: str) -> str:
    """A caution as it is said: who hears "wheat" and "almonds" need not hear "gluten" and "nuts" too; that barley, rye
    and oats bring gluten is not known to everybody, and is said, last, so that nothing else seems to bring it."""
    match = _CONTAINS.match(words)
    if match is None:
        return words
    joined = _KINDS.sub(lambda found: re.sub(r", | and ", ";", found[0]), match[1])
    names = [name for each in re.split(r", | and ", joined) for name in _kinds_aloud(each)]
    if "wheat" in names and "gluten" in names:
        names.remove("gluten")
    names.sort(key=lambda name: name.startswith("gluten from"))
    return f"It contains {listed(list(dict.fromkeys(names)))}.{words[match.end() :]}"


def _kinds_aloud(allergen: str) -> list[str]:
    """The cereals and nuts named in brackets, with "gluten from" before cereals among which is no wheat."""
    name, _, bracket = allergen.partition(" (")
    kinds = bracket.rstrip(")").split(";") if bracket else [name]
    return [f"gluten from {listed(kinds)}"] if name == "gluten" and bracket and "wheat" not in kinds else kinds


def allergens_shown(words: Sequence[str]) -> list[str]:
    """The allergens in as few supers as hold them: "Contains egg, milk", and where they are many "Also ..."."""
    shown: list[str] = []
    for word in words:
        if shown and fits_screen(f"{shown[-1]}, {word}"):
            shown[-1] += f", {word}"
        else:
            shown.append(f"{'Also' if shown else 'Contains'} {word}")
    return shown


def _sources(dish: Dish, made: Material) -> Iterator[Shown]:
    """For each statement that may be said or shown and that rests on a source, a super that stands over it.

    What is not so gets none: a source under it would lend it weight.
    """
    seen: set[tuple[str, str]] = set()
    for each in filter(stands, judged(dish, every_wording(made))):
        # the first source is the one it rests on; all of them stand in the words under the film
        first = next((ref.id for ref in each.sources if ref.id not in UNSHOWN_SOURCES), None)
        if first is not None and (first, each.claim.quote) not in seen:
            seen.add((first, each.claim.quote))
            yield Shown(source_shown(first, dish), "source", quote=each.claim.quote)


def _keeping(dish: Dish) -> str:
    """How long it keeps, as it is said; "" where the recipe does not say, or says longer than is safe."""
    keeps = dish.recipe.keeps
    if keeps is None or dish.keeping.faults:
        return ""
    parts = []
    if keeps.fridge_hours is not None:
        parts.append(f"for {_hours(keeps.fridge_hours)} in the fridge")
    if keeps.freezer_days is not None:
        parts.append(f"for {days_kept(keeps.freezer_days)} in the freezer")
    if keeps.room_hours is not None:
        parts.append(f"for {_hours(keeps.room_hours)} out of the fridge")
    return f"It keeps {' and '.join(parts)}." if parts else ""


def _hours(hours: float) -> str:
    if hours >= 48 and hours % 24 == 0:
        return days_kept(hours / 24)
    return hours_kept(hours)


def source_shown(source: str, dish: Dish) -> str:
    """A source in the two lines a super has: in full where it fits, else who, when and how its title begins, as far as
    there is room."""
    sources = dish.knowledge.sources
    item = sources.get(source, {})
    full = f"Source: {short(source, sources)}"
    begins = _TITLE_GOES_ON.split(str(item.get("title", "")), maxsplit=1)[0]
    for title in (item.get("title", ""), begins, ""):
        line = f"Source: {short(source, {**sources, source: {**item, 'title': title}})}" if item else full
        if fits_screen(line) and not line.startswith("Source:  "):
            return line
    return f"{full[:70].rsplit(' ', 1)[0]} …"


def stands(claim: JudgedClaim) -> bool:
    """Whether a claim may be made as it is, or with something added."""
    return claim.truth == "true" and claim.stays


def cited(dish: Dish, claims: Sequence[JudgedClaim]) -> list[str]:
    """The sources of the claims that stand and of the cautions as short citations, each once."""
    refs = [
        *(ref.id for each in claims if stands(each) for ref in each.sources),
        *(caution.source.id for caution in dish.cautions),
    ]
    return list(dict.fromkeys(short(ref, dish.knowledge.sources) for ref in refs if ref not in UNSHOWN_SOURCES))


def _test(step: Step) -> str:
    """What stands on the screen when a step is shown in silence: its end point, else its time, else nothing."""
    if step.until and fits_screen(f"Until {step.until}"):
        return f"Until {step.until}"
    return step.longest.told if step.longest is not None else ""
