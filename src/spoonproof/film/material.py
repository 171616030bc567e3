"""What a dish brings to its script: texts ready to be read aloud or shown."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from spoonproof.dish import Dish
from spoonproof.film.script import Material, Warned
from spoonproof.model.recipe import AgeRange, FoodLine

DISCLOSURE: Mapping[str, str] = {
    "gifted": "Advertisement: some of what you see was given to us.",
    "affiliate": "Advertisement: we earn from links to what you see.",
    "sponsored": "Advertisement: this film is paid for.",
    "own-product": "Advertisement: we sell what you see.",
}


def material(dish: Dish) -> Material:
    """The material of a dish's film."""
    recipe, channel = dish.recipe, dish.channel
    film = recipe.film
    return Material(
        title=(film.title.value if film and film.title else recipe.title.value),
        channel=channel.title,
        ages=ages_in_words(recipe.ages),
        texture=recipe.texture.value if recipe.texture else "",
        foods=tuple(food_said(line) for line in recipe.foods),
        steps=tuple(step.text for step in recipe.steps),
        step_minutes=tuple(_minutes(dish, number) for number in range(len(recipe.steps))),
        segments=film.segments if film else (),
        target=film.runs if film else None,
        words_a_minute=channel.speech,
        cautions=tuple(
            Warned(caution.screen or caution.text, caution.spoken, caution.where or "tasting")
            for caution in dish.cautions
        ),
        allergens=tuple(label.word for label in dish.allergen_labels),
        sources=tuple(_cited(dish)),
        disclosure=DISCLOSURE.get(recipe.paid or channel.paid, ""),
    )


def ages_in_words(ages: AgeRange) -> str:
    """ "7 to 9 months" or "From 7 months"."""
    if ages.high is None:
        return f"From {ages.low} months"
    return f"{ages.low} to {ages.high} months"


def food_said(line: FoodLine) -> str:
    """A food as a presenter says it: without its amount and its cut."""
    return line.alias or line.name or line.text


def _minutes(dish: Dish, step: int) -> float:
    """The longest time stated in a step, 0 when none is."""
    actions = dish.recipe.steps[step].actions
    return max((action.time.high for action in actions if action.time is not None), default=0.0)


def _cited(dish: Dish) -> Iterable[str]:
    """The sources of statements said in the film, as short citations, each once."""
    from spoonproof.model.citation import short

    said = {"say", "super", "title", "description", "social"}
    ids = [
        ref.id
        for judged in dish.claims
        if judged.claim.passage.kind in said
        for ref in judged.sources
        if ref.id not in ("own", "common-practice", "from-memory")
    ]
    return [f"Source: {short(source, dish.knowledge.sources)}" for source in dict.fromkeys(ids)]
