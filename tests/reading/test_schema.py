"""Schemas and the table of faults: valid, complete, and one with what the readers do."""

from __future__ import annotations

import re
from pathlib import Path

import jsonschema
import pytest
import yaml

from spoonproof.model.finding import AREAS, LEVELS
from spoonproof.model.text import Document
from spoonproof.reading import faults
from spoonproof.reading.channel import CHANNEL_KEYS, read_channel
from spoonproof.reading.recipe_keys import RECIPE_KEYS, channel_schema, recipe_schema
from spoonproof.reading.slugs import clashes, slug_problem, suggested
from tests.reading.test_channel import FULL as FULL_CHANNEL
from tests.reading.test_recipe import FULL as FULL_RECIPE

READING = Path(faults.__file__).parent


def head_of(text: str) -> object:
    return yaml.load(text.split("---\n")[1], Loader=yaml.BaseLoader)


def test_the_schemas_are_schemas_and_take_what_the_readers_take() -> None:
    for schema, value in (
        # Other capitals and spellings are the readers' kindness, not the schema's.
        (
            channel_schema(),
            yaml.load(
                FULL_CHANNEL.replace("EU, UK", "EU, GB").replace(": uk", ": UK").replace("Gifted", "gifted"),
                Loader=yaml.BaseLoader,
            ),
        ),
        (recipe_schema(), head_of(FULL_RECIPE.replace("Mashed", "mashed"))),
    ):
        jsonschema.Draft202012Validator.check_schema(schema)
        errors = [error.message for error in jsonschema.Draft202012Validator(schema).iter_errors(value)]
        assert errors == []


@pytest.mark.parametrize("text", ["titel: x\n", "kitchen: {cook: 1}\n", "ages: [1]\n", "day: soon\n"])
def test_the_schema_refuses_what_the_reader_refuses(text: str) -> None:
    validator = jsonschema.Draft202012Validator(channel_schema())
    assert not validator.is_valid(yaml.load(text, Loader=yaml.BaseLoader))
    assert read_channel(Document("channel.yaml", text))[1]


def test_every_key_has_a_line_for_people() -> None:
    for keys in (CHANNEL_KEYS, RECIPE_KEYS):
        assert len(keys) == len({key.name for key in keys})
        assert all(key.doc.endswith(".") and key.reader.words for key in keys)


def test_every_fault_is_written_out_once_and_used() -> None:
    table = faults.all_faults()
    code = "".join(path.read_text(encoding="utf-8") for path in READING.glob("*.py"))
    for name, fault in table.items():
        assert fault.name == name
        assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)+", name)
        assert fault.area in AREAS
        assert fault.level in LEVELS
        assert fault.why.endswith(".")
        assert not fault.wrong.endswith(".")
        assert code.count(f'"{name}"') >= 2, f"{name} is told by nobody"


@pytest.mark.parametrize(
    ("name", "slug"),
    [("Purée of leeks!", "puree-of-leeks"), ("Ärger & Über", "arger-uber"), ("  a  b ", "a-b"), ("x" * 200, "x" * 80)],
)
def test_a_name_gives_a_slug(name: str, slug: str) -> None:
    assert suggested(name) == slug
    assert slug_problem(slug) == ""


def test_names_that_look_the_same_clash() -> None:
    names = [
        "recipes/soup.md",
        "recipes/Soup.md",
        "recipes/pur\u00e9e.md",
        "recipes/pure\u0301e.md",
        "recipes/other.md",
    ]
    found = clashes(Document(name, "x") for name in names)
    assert [(f.rule, f.document.path, f.related[0].document.path) for f in found] == [
        ("duplicate-id", names[1], names[0]),
        ("duplicate-id", names[3], names[2]),
    ]
