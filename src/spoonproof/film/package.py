"""The filming package: every file of it is made before any is written, and written whole."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from spoonproof.dish import Dish
from spoonproof.film.captions import captions, subrip, webvtt
from spoonproof.film.fountain import fountain
from spoonproof.film.lists import chapters_vtt, shot_list, supers_vtt, twins_text
from spoonproof.film.markers import edit_list, timeline
from spoonproof.film.material import cited, material
from spoonproof.film.said import judged, statements
from spoonproof.film.script import Script, write_script
from spoonproof.film.text import chapters, clock, script_text, total
from spoonproof.film.timecode import NTSC_DROP, PAL
from spoonproof.reading.disclosure import DISCLOSURE, disclosed


def package(dish: Dish) -> Mapping[str, bytes]:
    """File name to content: the script as text, page, prompter and Fountain; captions; the words under the film;
    the shot list; markers as OpenTimelineIO and edit lists."""
    channel = dish.channel
    script = write_script(material(dish))
    cues = captions(script)
    files = {
        "script.txt": script_text(script),
        "script.html": _page("script.html", script=script, language=channel.language, clock=clock, total=total(script)),
        "prompter.html": _page(
            "prompter.html", script=script, language=channel.language, clock=clock, rate=round(channel.speech)
        ),
        "script.fountain": fountain(script),
        "markers.otio": timeline(script, PAL),
        "markers-25.edl": edit_list(script, PAL),
        "markers-29.97.edl": edit_list(script, NTSC_DROP),
        "captions.vtt": webvtt(cues),
        "captions.srt": subrip(cues),
        "description.txt": description(dish, script),
        "shots.csv": shot_list(script),
        "supers.vtt": supers_vtt(script),
        "chapters.vtt": chapters_vtt(script),
        "twins.txt": twins_text(script),
    }
    return {name: text.encode("utf-8") for name, text in files.items()}


def shoot(dish: Dish, out: Path) -> list[Path]:
    """Write the package of a dish into ``out``/<slug> and return the paths."""
    from spoonproof.reading.files import write_atomically

    folder = out / dish.recipe.slug
    folder.mkdir(parents=True, exist_ok=True)
    written = []
    for name, content in package(dish).items():
        write_atomically(folder / name, content)
        written.append(folder / name)
    return written


def description(dish: Dish, script: Script) -> str:
    """The words under the film: what, chapters, foods, allergens, cautions, where it comes from."""
    recipe = dish.recipe
    disclosure = DISCLOSURE.get(dish.paid, "")
    film = recipe.film
    own = film.description.value if film and film.description else ""
    parts = [film.title.value if film and film.title else recipe.title.value]
    if disclosure and not disclosed(own):
        parts.insert(0, disclosure)
    if own:
        parts.append(own)
    elif recipe.summary is not None:
        parts.append(recipe.summary.value)
    marks = chapters(script)
    if marks:
        parts.append("\n".join(f"{clock(second)} {name}" for second, name in marks))
    parts.append("You need\n" + "\n".join(f"- {line.text}" for line in recipe.foods))
    if dish.allergen_labels:
        parts.append("Contains: " + ", ".join(label.word for label in dish.allergen_labels) + ".")
    parts.append("\n".join(caution.text for caution in dish.cautions))
    sources = cited(dish, judged(dish, statements(script)))
    if sources:
        parts.append("\n".join(f"Source: {source}" for source in sources))
    fixed = [f"Correction, {each.on}: we said “{each.said}”. {each.holds}" for each in recipe.corrections]
    if fixed:
        parts.append("\n".join(fixed))
    return "\n\n".join(part for part in parts if part) + "\n"


def _page(template: str, **values: object) -> str:
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    from spoonproof.reading.bundle import bundle_root

    templates = Environment(
        loader=FileSystemLoader(bundle_root() / "site" / "film"), autoescape=True, undefined=StrictUndefined
    )
    return templates.get_template(template).render(**values) + "\n"
