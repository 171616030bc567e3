"""What goes up with the film: title, description, the text of a post, and what the thumbnail shows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from spoonproof.dish import Dish
from spoonproof.film.briefly import sentence, small_eaters
from spoonproof.film.captions import captions, too_fast
from spoonproof.film.material import cautions_of, cited, contained
from spoonproof.film.said import Statement
from spoonproof.film.script import Script
from spoonproof.film.text import chapters, clock
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.recipe import FoodLine
from spoonproof.reading.disclosure import DISCLOSURE, disclosed

TITLE_CHARACTERS = 70
"""What lists of films show of a title before they cut it (common practice, no source)."""

POST_CHARACTERS = 280
"""What a short post may hold (common practice, no source)."""

OPENING_CHARACTERS = 150
"""What is shown of a description before it is opened (common practice, no source)."""


def title(dish: Dish) -> str:
    """The film's title: its own, else the recipe's with the age it is for."""
    film = dish.recipe.film
    if film is not None and film.title is not None:
        return " ".join(film.title.value.split())
    plain = dish.recipe.title.value
    aged = f"{plain}{_age_mark(dish)}"
    return aged if len(aged) <= TITLE_CHARACTERS else plain


def _age_mark(dish: Dish) -> str:
    return f" ({dish.recipe.ages.low} months+)"


def description(dish: Dish, script: Script, claims: Sequence[JudgedClaim], older: Sequence[str] = ()) -> str:
    """The words under the film: what, chapters, foods, allergens, cautions, sources, corrections.

    ``claims``: those of the film, judged; ``older``: corrections of older films, a line each.
    """
    return "\n\n".join(text for _, text in _parts(dish, script, claims, older)) + "\n"


def statements(dish: Dish, script: Script, claims: Sequence[JudgedClaim]) -> tuple[Statement, ...]:
    """Title, description and post as statements to be judged.

    What a correction takes back is no statement; age and texture as the recipe declares them are judged with its food.
    """
    said = [Statement(title(dish).removesuffix(_age_mark(dish)), "title", "title")]
    for name, text in _parts(dish, script, claims, ()):
        if name not in ("corrections", "sources", "ages"):
            said += [Statement(line.lstrip("- "), "description", f"description, {name}") for line in text.split("\n")]
    said.append(Statement(post(dish), "social", "post"))
    return tuple(each for each in said if each.text.strip())


def _parts(
    dish: Dish, script: Script, claims: Sequence[JudgedClaim], older: Sequence[str]
) -> Iterator[tuple[str, str]]:
    recipe = dish.recipe
    own = recipe.film.description.value.strip() if recipe.film and recipe.film.description else ""
    about = own or (sentence(recipe.summary.value) if recipe.summary is not None else "")
    paid = DISCLOSURE.get(dish.paid, "")
    if paid and not disclosed(about):
        yield "disclosure", paid
    yield "opening", about or sentence(recipe.title.value)
    yield "ages", f"{_ages(dish)} {_page(dish)}".strip()
    marks = chapters(script)
    if marks:
        yield "chapters", "\n".join(f"{clock(second)} {name}" for second, name in marks)
    yield "foods", "You need\n" + "\n".join(f"- {_with_swaps(line)}" for line in recipe.foods)
    if dish.allergen_labels:
        yield "allergens", f"Contains: {', '.join(contained(dish))}."
    sure = {label.allergen for label in dish.allergen_labels}
    perhaps = (one.allergen for one in dish.allergens if one.how == "may-contain")
    if maybe := dict.fromkeys(allergen for allergen in perhaps if allergen not in sure):
        yield "allergens", f"May contain, by its foods' labels: {', '.join(maybe)}."
    cautions = list(dict.fromkeys(caution.text for caution in cautions_of(dish)))
    if cautions:
        yield "cautions", "Please read\n" + "\n".join(f"- {text}" for text in cautions)
    sources = cited(dish, claims)
    if sources:
        yield "sources", "Sources\n" + "\n".join(f"- {source}" for source in sources)
    fixed = [f"{each.on}: we said “{each.said}”. What holds: {sentence(each.holds)}" for each in recipe.corrections]
    if fixed:
        yield "corrections", "Corrections\n" + "\n".join(f"- {line}" for line in fixed)
    if older:
        yield "corrections", "Corrections of earlier films\n" + "\n".join(f"- {line}" for line in older)


def _with_swaps(line: FoodLine) -> str:
    """A food line as written, with what may stand in its place where the line itself does not say it."""
    swaps = [choice.text for choice in line.choices if choice.text != line.text]
    return f"{line.text} (or {', or '.join(swaps)})" if swaps else line.text


def _ages(dish: Dish) -> str:
    ages = dish.recipe.ages
    lead = f"For {small_eaters(ages.low)}{'' if ages.high is None else ' of'}"
    texture = f", {dish.recipe.texture.value}" if dish.recipe.texture else ""
    return f"{lead} {ages.told}{texture}."


def _page(dish: Dish) -> str:
    base = dish.channel.base_url
    return f"The recipe: {base}/recipes/{dish.recipe.slug}.html" if base else ""


def post(dish: Dish) -> str:
    """A short text for a post: the author's own, else what it is, for whom, its allergens, and where to find it."""
    film = dish.recipe.film
    own = film.social.value.strip() if film is not None and film.social is not None else ""
    paid = DISCLOSURE.get(dish.paid, "")
    if own:
        return own if not paid or disclosed(own) else f"{paid} {own}"
    title = f"{dish.recipe.title.value.rstrip('.')}."
    summary = sentence(dish.recipe.summary.value) if dish.recipe.summary is not None else ""
    marks = f"For {small_eaters(dish.recipe.ages.low)} from {dish.recipe.ages.low} months."
    if dish.allergen_labels:
        marks += f" Contains: {', '.join(contained(dish))}."
    whole = _lines(f"{paid} {title} {summary}", marks, _page(dish))
    return whole if len(whole) <= POST_CHARACTERS else _lines(f"{paid} {title}", marks, _page(dish))


def _lines(*parts: str) -> str:
    return "\n".join(part.strip() for part in parts if part.strip())


def sheet(dish: Dish, script: Script) -> str:
    """What to look at before the film goes up: title, first lines, chapters, thumbnail, post."""
    named = title(dish)
    lines = ["Before it goes up", "", f"Title ({len(named)} characters): {named}"]
    lines += [f"  {note}" for note in _title_notes(dish, named)]
    shown = " ".join(description(dish, script, ()).split())[:OPENING_CHARACTERS]
    lines.append(f"Description, before it is opened: {shown.rsplit(' ', 1)[0]} …")
    marks = chapters(script)
    if marks:
        lines.append(f"Chapters: {len(marks)}, the first at 0:00, each ten seconds or longer.")
    else:
        lines.append("Chapters: none; fewer than three takes of ten seconds fit.")
    cues = captions(script)
    fast = too_fast(cues)
    if cues:
        most = max(cue.words_a_minute for cue in cues)
        lines.append(f"Captions: {len(cues)}; the fastest is read at {most:.0f} words a minute (BBC: at most 180).")
    lines += [f"  Too fast at {clock(cue.start)}: “{cue.text}”" for cue in fast]
    text = post(dish)
    long = "" if len(text) <= POST_CHARACTERS else f"; a short post holds {POST_CHARACTERS}"
    lines.append(f"Post ({len(text)} characters{long}): {' '.join(text.split())}")
    lines += _thumbnail(dish)
    return "\n".join(lines) + "\n"


def _title_notes(dish: Dish, named: str) -> Iterator[str]:
    if len(named) > TITLE_CHARACTERS:
        yield f"Lists show about {TITLE_CHARACTERS} characters: “{named[:TITLE_CHARACTERS].rstrip()}…”"
    if named.isupper():
        yield "All capitals are read as shouting, and letter by letter by some screen readers."
    if str(dish.recipe.ages.low) not in named:
        yield f"It does not say from which age: {dish.recipe.ages.low} months."


def _thumbnail(dish: Dish) -> Iterator[str]:
    """The first picture, by what it is said to show."""
    from spoonproof.feeding.pictures import picture_hazards

    if not dish.recipe.pictures:
        yield "Thumbnail: the recipe has no picture; what it shows could not be checked."
        return
    first = dish.recipe.pictures[0]
    shows = ", ".join(each.value for each in first.shows)
    if not shows:
        yield f"Thumbnail {first.file}: the recipe does not say what it shows (shows: ...), so it could not be checked."
        return
    yield f"Thumbnail {first.file}: shows {shows}."
    hazards = picture_hazards(dish.recipe, dish.knowledge.feeding, dish.channel.policies)
    mine = [hazard for hazard in hazards if any(each.span == hazard.span for each in first.shows)]
    for hazard in mine:
        yield f"  {hazard.message} {hazard.remedy}"
    if not mine:
        yield "  Nothing dangerous is said to be in it."
