"""The filming package: every file of it is made before any is written, and written whole."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from spoonproof.dish import Dish
from spoonproof.film import offscript, upload
from spoonproof.film.captions import captions, subrip, webvtt
from spoonproof.film.checked import findings
from spoonproof.film.fountain import fountain
from spoonproof.film.lists import chapters_vtt, claims_vtt, shot_list, supers_vtt, twins_text
from spoonproof.film.markers import edit_list, timeline
from spoonproof.film.material import material
from spoonproof.film.pages import prompter_page, script_page, shots_page
from spoonproof.film.said import statements, timed_claims
from spoonproof.film.script import Script
from spoonproof.film.text import script_text, total
from spoonproof.film.timecode import NTSC_DROP, PAL
from spoonproof.film.timed import edited
from spoonproof.film.writing import write_script
from spoonproof.model.finding import Finding
from spoonproof.model.record import dataclass
from spoonproof.model.text import Document

AFTER = "after-edit"
"""The folder in a package for what was made from the finished film."""


@dataclass(frozen=True, slots=True)
class Package:
    """Files by name, and what is wrong with the words in them."""

    files: Mapping[str, bytes]
    findings: tuple[Finding, ...] = ()


def package(dish: Dish) -> Mapping[str, bytes]:
    """File name to content: the script as text, page, prompter and Fountain; captions; the words under the film;
    the shot list; markers as OpenTimelineIO and edit lists."""
    return before_edit(dish).files


def before_edit(dish: Dish, older: Sequence[str] = ()) -> Package:
    """The package before anything is filmed, in planned time. ``older``: corrections of older films, a line each."""
    script = write_script(material(dish))
    claims = timed_claims(dish, script)
    cues = captions(script)
    judged = [claim for claim, _, _ in claims]
    files = {
        "script.txt": script_text(script),
        "script.html": script_page(dish, script),
        "prompter.html": prompter_page(dish, script),
        "script.fountain": fountain(script),
        "markers.otio": timeline(script, PAL),
        "markers-29.97.otio": timeline(script, NTSC_DROP),
        "markers-25.edl": edit_list(script, PAL),
        "markers-29.97.edl": edit_list(script, NTSC_DROP),
        "captions.vtt": webvtt(cues),
        "captions.srt": subrip(cues),
        "title.txt": f"{upload.title(dish)}\n",
        "description.txt": upload.description(dish, script, judged, older),
        "post.txt": f"{upload.post(dish)}\n",
        "before-it-goes-up.txt": upload.sheet(dish, script),
        "shots.csv": shot_list(script),
        "shots.html": shots_page(dish, script),
        "supers.vtt": supers_vtt(script),
        "chapters.vtt": chapters_vtt(script),
        "claims.vtt": claims_vtt(claims),
        "twins.txt": twins_text(script),
    }
    said = (*statements(script), *upload.statements(dish, script, judged))
    return Package(_encoded(files), (*_too_long(dish, script), *findings(dish, said)))


def _too_long(dish: Dish, script: Script) -> list[Finding]:
    """A finding where the film runs over its target with all that could be cut."""
    film = dish.recipe.film
    if film is None or script.over <= 0:
        return []
    return [Finding("film-over-target", "film", "warning", total(script), dish.recipe.document, film.span)]


def after_edit(dish: Dish, document: Document, older: Sequence[str] = ()) -> Package:
    """What the timed text of the finished film gives: captions in its time and the script's words, claims, chapters
    and description at the film's times, and findings for what was said off script. Raises ValueError."""
    film = edited(document, write_script(material(dish)))
    claims = offscript.claims_said(dish, film)
    timed = []
    for each in claims:
        seconds = each.claim.passage.seconds(each.claim.start, each.claim.end)
        if seconds is not None:
            timed.append((each, *seconds))
    files = {
        f"{AFTER}/captions.vtt": webvtt(film.captions),
        f"{AFTER}/captions.srt": subrip(film.captions),
        f"{AFTER}/claims.vtt": claims_vtt(sorted(timed, key=lambda row: row[1:])),
        f"{AFTER}/chapters.vtt": chapters_vtt(film.script),
        f"{AFTER}/description.txt": upload.description(dish, film.script, claims, older),
    }
    return Package(_encoded(files), tuple(offscript.findings(dish, film, claims)))


def _encoded(files: Mapping[str, str]) -> Mapping[str, bytes]:
    return {name: text.encode("utf-8") for name, text in files.items()}


def shoot(dish: Dish, out: Path) -> list[Path]:
    """Write the package of a dish into ``out``/<slug> and return the paths."""
    return write(before_edit(dish), out / dish.recipe.slug)


def write(made: Package, folder: Path) -> list[Path]:
    """Put the files of a package into ``folder`` all at once and return their paths.

    What else lies there (notes, takes, what was made after the edit) stays. Raises OutputRefused where another run
    writes it, OSError when it can't be written: the folder is then as it was.
    """
    from spoonproof.film.placing import place

    place(made.files, folder)
    return [folder / name for name in made.files]
