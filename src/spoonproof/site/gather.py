"""A dish to its page: every value worded, every source numbered, nothing judged here."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise

from spoonproof.dish import Dish
from spoonproof.feeding.allergens import labels
from spoonproof.feeding.cautions import Caution as FoundCaution
from spoonproof.model.durations import days_kept, hours_kept
from spoonproof.model.recipe import Recipe, Step
from spoonproof.model.text import Passage
from spoonproof.model.version import reviewed_version
from spoonproof.reading.recipe_keys import MONTHS
from spoonproof.site import amounts, claims, figures, foods, prose, timeline
from spoonproof.site.claims import Said
from spoonproof.site.picture import PlatePart
from spoonproof.site.sources import Numbered
from spoonproof.site.view import (
    Allergen,
    Caution,
    CorrectionItem,
    Fault,
    Link,
    Marked,
    Picture,
    RecipePage,
    Reviewed,
    Run,
    StepItem,
    Timer,
)

KEEPING_CAUTIONS = frozenset({"keep-chill", "keep-rice", "keep-nitrate", "reheat", "defrost"})
"""Cautions on what is kept for later: they stand under Keeping."""

EVERY_MEAL = frozenset({"first-aid", "ready", "appetite", "professional", "special-needs", "upright"})
"""Cautions that hold for every meal and stand together further down; any other stands at the top."""

PAID = {
    "gifted": "Some foods in this recipe were gifts",
    "affiliate": "This page earns from some of its links",
    "sponsored": "Sponsored",
    "own-product": "Made with a product of our own",
}


def recipe_page(
    dish: Dish, published: Mapping[str, Recipe], faults: Sequence[Fault] = (), checked: str = ""
) -> RecipePage:
    """The page of a dish. ``published``: recipes that have a page, by slug. ``faults``: errors to own up to.
    ``checked``: an ISO date when the whole was checked, "" to take the sources' own."""
    recipe = dish.recipe
    own = {str(item["id"]): item for item in recipe.sources if item.get("id")}
    cited = Numbered(dish.knowledge.sources, own)
    said = claims.said(dish.claims, cited)
    worked = dish.plan
    cautions = [(c.id, _caution(c, cited)) for c in dish.cautions]
    nutrients = figures.nutrients(dish, cited)
    keeping = _keeping(dish, cited, [c for id, c in cautions if id in KEEPING_CAUTIONS])
    cited.numbers(own)
    dates = sorted(d for d in _dates(recipe) if d)
    return RecipePage(
        slug=recipe.slug,
        title=said.marked(_passage(recipe, "title"), recipe.title.value),
        summary=said.marked(_passage(recipe, "description", "summary"), recipe.summary.value) if recipe.summary else (),
        ages=recipe.ages.told,
        age_low=recipe.ages.low,
        age_high=recipe.ages.high,
        texture=recipe.texture.value if recipe.texture else "",
        next=_next(recipe),
        portions=recipe.makes.told if recipe.makes else "",
        servings=recipe.makes.count if recipe.makes and recipe.makes.in_portions else None,
        portion_grams=recipe.makes.grams if recipe.makes else None,
        minutes=round(max(worked.total, worked.hands_on)) or None,  # a reader has two hands, whoever helps us
        hands_on=round(worked.hands_on) or None,
        cook=round(worked.cook) or None,
        season=_season(recipe),
        months=_months(recipe),
        paid=PAID.get(recipe.paid or dish.channel.paid, ""),
        allergens=allergens(dish),
        allergen_note="Read the labels of what you buy: makers change their recipes.",
        cautions=tuple(c for id, c in cautions if id not in KEEPING_CAUTIONS | EVERY_MEAL),
        every_meal=tuple(c for id, c in cautions if id in EVERY_MEAL),
        foods=foods.food_items(dish, _links(published)),
        systems=amounts.SYSTEMS,
        scales=amounts.SCALES,
        steps=tuple(_step(step, said, recipe) for step in recipe.steps),
        timeline=timeline.timeline(worked),
        squash=squash(dish),
        family=_family(recipe),
        nutrients=nutrients,
        keeping=keeping,
        story=prose.render(
            recipe.story,
            [(offset - recipe.story_span.start, number) for offset, number in said.in_story],
            lambda slug: f"{slug}.html" if slug in published else "",
            curled=dish.channel.language.lower().startswith("en"),
        ),
        statements=said.statements,
        citations=cited.citations(),
        checked=checked or _oldest_check(dish),
        published=recipe.published,
        changed=dates[-1] if dates else "",
        review=_review(recipe),
        corrections=tuple(CorrectionItem(c.on, c.said, c.holds) for c in recipe.corrections),
        drawing=Picture(f"pictures/{recipe.slug}.svg", 960, 720, picture_text(recipe)),
        renamed_from=recipe.renamed_from,
        unfinished=tuple(faults),
        author=dish.channel.author,
        words=" ".join(dict.fromkeys(_search_words(dish))),
    )


def _passage(recipe: Recipe, kind: str, where: str = "") -> Passage | None:
    return next((p for p in recipe.passages if p.kind == kind and (not where or p.where == where)), None)


def _next(recipe: Recipe) -> str:
    after = recipe.next
    if after is None:
        return ""
    when = f" from {after.from_months} months" if after.from_months is not None else ""
    how = f": {after.how.rstrip('.')}" if after.how else ""
    text = f"{after.texture}{when}{how}."
    return text[:1].upper() + text[1:]


def _months(recipe: Recipe) -> tuple[int, ...]:
    return tuple(dict.fromkeys(MONTHS.index(month.value) + 1 for month in recipe.season))


def _season(recipe: Recipe) -> str:
    months = _months(recipe)
    if len(months) == 12:
        return "all year"
    row = all(b == a % 12 + 1 for a, b in pairwise(months))
    if row and len(months) > 2:
        return f"{MONTHS[months[0] - 1]} to {MONTHS[months[-1] - 1]}"
    return ", ".join(MONTHS[m - 1] for m in months)


def _caution(found: FoundCaution, cited: Numbered) -> Caution:
    return Caution(found.text, cited.numbers([found.source]))


def allergens(dish: Dish) -> tuple[Allergen, ...]:
    """Allergens in the words of the channel's first market and in the order that captions and cautions name them,
    each with the foods that bring it; no market's list leaves one out that the table knows. "Gluten (wheat)" says wheat
    where no market has it named apart."""
    words = {label.allergen: label.word for label in dish.allergen_labels}
    order = {label.allergen: at for at, label in enumerate(labels(dish.knowledge.feeding, dish.markets))}
    out: list[Allergen] = []
    for maybe in (False, True):
        by_key: dict[str, dict[str, None]] = {}
        for found in dish.allergens:
            if (found.how == "may-contain") is maybe:
                food = f"{found.food} in {found.recipe}" if found.recipe else found.food
                more = " (as a swap)" if found.how == "choice" else "" if found.baby else " (family’s bowl only)"
                by_key.setdefault(found.allergen, {})[food + more] = None
        if "wheat" not in order and "gluten" in by_key:
            by_key.pop("wheat", None)
        sure = {a.key for a in out}
        keys = sorted((k for k in by_key if k not in sure), key=lambda k: (order.get(k, len(order)), k))
        out += [Allergen(words.get(k, k), tuple(by_key[k]), maybe, k) for k in keys]
    return tuple(out)


def _links(published: Mapping[str, Recipe]) -> Callable[[str], Link | None]:
    def link(slug: str) -> Link | None:
        other = published.get(slug)
        return Link(other.title.value, f"recipes/{slug}.html") if other is not None else None

    return link


def _step(step: Step, said: Said, recipe: Recipe) -> StepItem:
    passage = next((p for p in recipe.passages if p.kind == "step" and p.text == step.text), None)
    timers = []
    for action in step.actions:
        if action.time is None or action.time.low <= 0:
            continue
        low, high = (f"{value:g}" for value in action.time)
        span = low if low == high else f"{low} to {high}"
        timer = Timer(round(action.time.low * 60), f"{span} minute{'' if span == '1' else 's'}")
        if timer not in timers:
            timers.append(timer)
    marked: Marked = said.marked(passage, step.text) if passage else (Run(step.text),)
    return StepItem(step.index + 1, marked, step.bowl or "", step.splits, tuple(timers))


def squash(dish: Dish) -> tuple[str, ...]:
    """What to check before serving; common practice of the kitchen, said for this texture."""
    texture = dish.recipe.texture.value.lower() if dish.recipe.texture else ""
    heated = any(t.heats for t in dish.treatments if t.bowl != "family")
    lines = []
    test = (
        "press the {} piece between finger and thumb: it gives way at once, with no firm middle. If it doesn’t, "
        "cook on for 5 minutes and try again."
    )
    if texture in ("smooth", "thick"):
        if heated:
            lines.append(f"Before you blend, {test.format('hardest')}")
        lines.append("Rub a little of it between your fingers: no lumps, skins or strings.")
    elif texture == "mashed":
        if _softens_in_heat(dish):
            lines.append(f"Before you mash, {test.format('biggest')}")
        lines.append("Press a spoonful flat with the back of the spoon: no firm lump is left in it.")
    elif heated:
        lines.append(f"P{test.format('biggest')[1:]}")
    if heated:
        pieces = texture in ("soft finger food", "family food")
        how = "Break a piece open and touch the middle" if pieces else "Stir well and touch a little"
        lines.append(f"{how} to the inside of your wrist: it should feel warm, never hot.")
    return tuple(lines)


_NO_PIECES = frozenset({"liquid", "powder", "paste", "grain"})


def _softens_in_heat(dish: Dish) -> bool:
    """Whether something in the baby's bowl is cooked in pieces: porridge under mashed berries is not. What no record
    is known of counts as pieces."""
    for treatment in dish.treatments:
        if treatment.heats and treatment.bowl != "family" and not treatment.left_out:
            food = dish.knowledge.foods.get(dish.recipe.foods[treatment.line].food or "")
            if food is None or food.hardness not in _NO_PIECES:
                return True
    return False


def _family(recipe: Recipe) -> str:
    if not any(step.splits for step in recipe.steps):
        return ""
    left = recipe.makes.family if recipe.makes and recipe.makes.family else ""
    own = [step.index + 1 for step in recipe.steps if step.bowl == "family"]
    steps = f" It is finished in step{'s' if len(own) > 1 else ''} {' and '.join(map(str, own))}." if own else ""
    what = f"What is left makes {left}." if left else "What is left is the family’s."
    return f"{what}{steps} Salt and sharp seasoning go in only after the baby’s portion is out."


def _keeping(dish: Dish, cited: Numbered, cautions: Sequence[Caution]) -> tuple[Caution, ...]:
    keeps = dish.recipe.keeps
    lines = []
    if keeps is not None:
        parts = []
        if keeps.fridge_hours is not None:
            parts.append(f"in the fridge for up to {hours_kept(keeps.fridge_hours)}")
        if keeps.freezer_days is not None:
            parts.append(f"in the freezer for up to {days_kept(keeps.freezer_days)}")
        if keeps.room_hours is not None:
            parts.append(f"out of the fridge for up to {hours_kept(keeps.room_hours)}")
        if parts:
            text = ", ".join(parts)
            refs = [limit.source for fact in ("fridge_hours", "freezer_days") if (limit := dish.keeping.of(fact))]
            lines.append(Caution(f"{text[:1].upper()}{text[1:]}.", cited.numbers(refs)))
    return (*lines, *cautions)


def _dates(recipe: Recipe) -> list[str]:
    return [
        *(trial.on for trial in recipe.trials),
        *(correction.on for correction in recipe.corrections),
        *([recipe.video.uploaded[:10]] if recipe.video else []),
        recipe.published,
    ]


def _oldest_check(dish: Dish) -> str:
    """The day on which the register entry behind this page that was looked at longest ago was checked."""
    used = {judged.entry for judged in dish.claims if judged.entry}
    entries = map(dish.knowledge.register.get, used)
    days = sorted(entry.checked for entry in entries if entry is not None and entry.checked)
    return days[0] if days else ""


def _review(recipe: Recipe) -> Reviewed | None:
    if recipe.review is None:
        return None
    held = recipe.review
    return Reviewed(held.who, held.on, held.version, held.version != reviewed_version(recipe))


def picture_text(recipe: Recipe) -> str:
    """What the drawing shows."""
    texture = recipe.texture.value if recipe.texture else "food"
    looks = {
        "smooth": "a smooth purée with a swirl",
        "thick": "a thick purée with spoon marks",
        "mashed": "a mash with fork marks",
        "lumpy": "a stew of soft lumps",
        "minced": "finely minced food",
        "soft finger food": "soft sticks of food",
    }.get(texture.lower(), "a dish of soft pieces")
    return f"Drawing: an enamel bowl of {looks}, seen from above, with some of its foods beside it"


def _search_words(dish: Dish) -> list[str]:
    words = []
    for line in dish.recipe.foods:
        words.append(line.name)
        food = dish.knowledge.foods.get(line.food) if line.food else None
        if food is not None:
            words += [food.name, *food.names[:4]]
    return [word.lower() for word in words]


def plate(dish: Dish) -> list[PlatePart]:
    """The foods of the drawing: the baby's bowl, by weight."""
    return [
        PlatePart(f"{part.name} {part.food.id if part.food else ''}", max(part.cooked.mid, part.raw.mid, 1.0))
        for part in dish.facts.all_ingredients
        if part.bowl != "family" and not part.left_out
    ]
