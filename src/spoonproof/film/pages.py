"""The film's pages: the script to print, the prompter, the shot list by set-up."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from itertools import groupby
from typing import TYPE_CHECKING

from spoonproof.dish import Dish
from spoonproof.film.lists import by_setup, made_ahead
from spoonproof.film.script import Script
from spoonproof.film.text import clock, total

if TYPE_CHECKING:
    from jinja2 import Environment


def script_page(dish: Dish, script: Script) -> str:
    """The two-column script: time at the left, picture, then sound."""
    return render("script.html", script=script, language=dish.channel.language, clock=clock, total=total(script))


def prompter_page(dish: Dish, script: Script) -> str:
    """The words in large type, running at the channel's rate."""
    return render(
        "prompter.html", script=script, language=dish.channel.language, clock=clock, rate=round(dish.channel.speech)
    )


def shots_page(dish: Dish, script: Script) -> str:
    """The shot list grouped by set-up, to tick off."""
    rows = by_setup(script)
    setups = [(name, list(group)) for name, group in groupby(rows, key=lambda row: row.shot.setup)]
    twins = [text for _, text in made_ahead(script)]
    values: Mapping[str, object] = {"script": script, "setups": setups, "twins": twins, "clock": clock}
    return render("shots.html", language=dish.channel.language, **values)


def render(template: str, **values: object) -> str:
    """A template of ``site/film`` with these values; every text is escaped, and an unknown name is an error."""
    return _templates().get_template(template).render(**values) + "\n"


@lru_cache(maxsize=1)
def _templates() -> Environment:
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    from spoonproof.reading.bundle import bundle_root

    return Environment(
        loader=FileSystemLoader(bundle_root() / "site" / "film"), autoescape=True, undefined=StrictUndefined
    )
