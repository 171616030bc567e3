"""The filming package: every file of it is made before any is written, and written whole."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from pathlib import Path

from spoonproof.dish import Dish
from spoonproof.film.captions import captions, subrip, webvtt
from spoonproof.film.fountain import fountain
from spoonproof.film.markers import edit_list, timeline
from spoonproof.film.material import material
from spoonproof.film.script import Script, write_script
from spoonproof.film.text import chapters, clock, script_text, total
from spoonproof.film.timecode import NTSC_DROP, PAL


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
        "shots.csv": _shots(script),
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
    parts = [recipe.title.value]
    if recipe.summary is not None:
        parts.append(recipe.summary.value)
    marks = chapters(script)
    if marks:
        parts.append("\n".join(f"{clock(second)} {name}" for second, name in marks))
    parts.append("You need\n" + "\n".join(f"- {line.text}" for line in recipe.foods))
    if dish.allergen_labels:
        parts.append("Contains: " + ", ".join(label.word for label in dish.allergen_labels) + ".")
    parts.append("\n".join(caution.text for caution in dish.cautions))
    sources = material(dish).sources
    if sources:
        parts.append("\n".join(sources))
    return "\n\n".join(part for part in parts if part) + "\n"


def _page(template: str, **values: object) -> str:
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    from spoonproof.reading.bundle import bundle_root

    templates = Environment(
        loader=FileSystemLoader(bundle_root() / "site" / "film"), autoescape=True, undefined=StrictUndefined
    )
    return templates.get_template(template).render(**values) + "\n"


def _shots(script: Script) -> str:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["shot", "segment", "size and angle", "starts", "seconds", "twin", "takes", "notes"])
    for number, take in enumerate(script.takes, 1):
        row = [str(number), take.name, take.shot, clock(take.start), f"{take.runs:g}", take.twin, "", ""]
        writer.writerow([_plain_cell(cell) for cell in row])
    return out.getvalue()


def _plain_cell(cell: str) -> str:
    """A cell no spreadsheet takes for a formula."""
    return f"'{cell}" if cell[:1] in ("=", "+", "-", "@", "\t", "\r") else cell
