"""JSON Schemas (2020-12), made from the typed readers so that they can't differ from them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from spoonproof.reading.channel import CHANNEL_KEYS
from spoonproof.reading.recipe_keys import FOOD_KEYS, RECIPE_KEYS, STEP_KEYS
from spoonproof.reading.typed import Schema, keys_schema

_DRAFT = "https://json-schema.org/draft/2020-12/schema"


def channel_schema() -> Schema:
    """The schema of channel.yaml."""
    return {"$schema": _DRAFT, "title": "channel.yaml", **keys_schema(CHANNEL_KEYS)}


def recipe_schema() -> Schema:
    """The schema of a recipe's head."""
    schema = dict(keys_schema(RECIPE_KEYS))
    properties = dict(schema["properties"])  # type: ignore[call-overload]  # a mapping: keys_schema makes it
    properties["foods"] = properties["foods"] | _lines("A food line.", FOOD_KEYS, ("food", "recipe"))
    properties["steps"] = properties["steps"] | _lines("A sentence of the method.", STEP_KEYS, ("do", "step"))
    return {"$schema": _DRAFT, "title": "The head of a recipe", **schema, "properties": properties}


def _lines(doc: str, keys: Mapping[str, str], main: Sequence[str]) -> Schema:
    """The schema of a list of lines, each a text or a mapping with one of the ``main`` keys."""
    any_value: Schema = {"type": ["string", "number", "array", "object"]}
    mapping = {
        "type": "object",
        "properties": {key: {**any_value, "description": words} for key, words in keys.items()},
        "additionalProperties": False,
        "anyOf": [{"required": [key]} for key in main],
    }
    return {"type": "array", "items": {"description": doc, "anyOf": [{"type": "string"}, mapping]}, "maxItems": 500}
