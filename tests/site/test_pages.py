"""Values on a page: whatever a template is given, it is escaped as the library escapes it."""

from __future__ import annotations

from pathlib import Path

import pytest
from jinja2 import Environment, StrictUndefined, UndefinedError
from markupsafe import Markup

from spoonproof.site.pages import Theme

TEMPLATE = """{% macro told(value) %}[{{ value }}]{% endmacro -%}
{{ value }} {{ told(value) }} {{ value ~ "<" }} {{ value|string }} <a title="{{ value }}">
{% autoescape false %}{{ value }}{% endautoescape %}{% for one in [value] %}{{ one }}{% endfor %}
{% set held %}<i>{{ value }}</i>{% endset %}{{ held }}"""


class Word(str):
    """Text of another kind."""


class Thing:
    """Something with words of its own."""

    def __str__(self) -> str:
        return "<thing>"


VALUES = ("<b>'Tom' & \"Jo\"</b>", "", "plain", Markup("<b>&amp;</b>"), 3, True, 2.5, None, Word("<w>"), Thing(), ["<"])


@pytest.mark.parametrize("value", VALUES, ids=lambda value: type(value).__name__)
def test_a_value_is_escaped_as_by_the_library(tmp_path: Path, value: object) -> None:
    (tmp_path / "templates").mkdir()
    (tmp_path / "templates" / "page.html").write_text(TEMPLATE, encoding="utf-8")
    usual = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)
    ours = Theme([tmp_path]).environment()
    assert ours.get_template("page.html").render(value=value) == usual.from_string(TEMPLATE).render(value=value)


def test_a_name_that_is_not_there_is_no_empty_text(tmp_path: Path) -> None:
    with pytest.raises(UndefinedError, match="salt"):
        Theme([tmp_path]).environment().from_string("{{ salt }}").render()
