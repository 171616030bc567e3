"""The keys of a file with what they are for, from the schemas that the readers make of themselves."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from typing import Any

Schema = Mapping[str, Any]


@lru_cache(maxsize=3)
def schema_of(what: str) -> Schema:
    """The schema of a recipe's head or of channel.yaml; an empty one for anything else."""
    from spoonproof.reading.recipe_keys import channel_schema, recipe_schema

    if what == "recipe":
        return recipe_schema()
    return channel_schema() if what == "channel" else {}


def key_doc(what: str, name: str) -> str:
    """What a key at the top is for, "" when it is none."""
    found = schema_of(what).get("properties", {}).get(name, {})
    return str(found.get("description", ""))


def keys_at(what: str, path: Sequence[str]) -> dict[str, Schema]:
    """The keys that may stand below ``path`` ("film", "segments"; a list's items stand for the list)."""
    found: dict[str, Schema] = {}
    for schema in _below(schema_of(what), list(path)):
        for each in _flat(schema):
            found |= each.get("properties", {})
    return found


def values_at(what: str, path: Sequence[str]) -> list[str]:
    """The words that a key may have, where they are a closed list."""
    found: list[str] = []
    for schema in _below(schema_of(what), list(path)):
        for each in _flat(schema):
            found += [word for word in each.get("enum", ()) if isinstance(word, str)]
    return list(dict.fromkeys(found))


def _below(schema: Schema, path: list[str]) -> Iterator[Schema]:
    if not path:
        yield schema
        return
    for each in _flat(schema):
        child = each.get("properties", {}).get(path[0])
        if child is not None:
            yield from _below(child, path[1:])


def _flat(schema: Schema) -> Iterator[Schema]:
    """A schema with the shapes it may take, and the items of a list."""
    yield schema
    for each in schema.get("anyOf", ()):
        yield from _flat(each)
    items = schema.get("items")
    if isinstance(items, Mapping):
        yield from _flat(items)
