"""The pages of the two files a creator writes, from the schemas of their readers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, cast

from spoonproof.reading.recipe_keys import channel_schema, recipe_schema
from spoonproof.reference.markdown import code, table

Schema = Mapping[str, Any]


def recipe_page() -> str:
    """The keys of a recipe's head."""
    return _page(
        "A recipe file",
        "`recipes/<name>.md`: a head between two lines of `---`, then the story for the page in Markdown. A key may be "
        "left out unless it says *needed*. What is not in this list is a finding, never read in silence. Words that "
        "readers see may also be written as `{text: the words, leave: why they should not be judged}`.",
        recipe_schema(),
    )


def channel_page() -> str:
    """The keys of channel.yaml."""
    return _page(
        "The channel's file",
        "`channel.yaml` at the root of the channel's folder: what holds for all recipes.",
        channel_schema(),
    )


def _page(title: str, words: str, schema: Schema) -> str:
    return "\n\n".join([f"# {title}", words, table(("key", "what it is for", "what may stand there"), _cells(schema))])


def _cells(schema: Schema) -> Iterator[tuple[str, str, str]]:
    for key, words, needed, values in key_rows(schema):
        yield code(key), words + (" *needed*" if needed else ""), values


def key_rows(schema: Schema, above: str = "") -> Iterator[tuple[str, str, bool, str]]:
    """One row a key, those of a mapping below it as ``above.key``: the key, what it is for, whether it is needed,
    what may stand there."""
    needed = schema.get("required", ())
    for name, inner in cast(Mapping[str, Schema], schema.get("properties", {})).items():
        yield above + name, str(inner.get("description", "")), name in needed, _values(inner)
        for mapping in _mappings(inner):
            yield from key_rows(mapping, f"{above}{name}.")


def _mappings(schema: Schema) -> Iterator[Schema]:
    """The mappings that may stand as the value, or as an item of its list; a statement's own two keys are left out."""
    for one in (schema, *schema.get("anyOf", ())):
        if set(one.get("properties", ())) - {"text", "leave"}:
            yield one
        if "items" in one:
            yield from _mappings(one["items"])


def _values(schema: Schema) -> str:
    if "enum" in schema:
        return ", ".join(dict.fromkeys("yes" if v is True else "no" if v is False else str(v) for v in schema["enum"]))
    if "examples" in schema:
        return "like " + ", ".join(code(str(example)) for example in schema["examples"])
    if "anyOf" in schema:
        return " or ".join(dict.fromkeys(part for one in schema["anyOf"] for part in _values(one).split(" or ")))
    if schema.get("format") == "date":
        return "a date, like `2026-11-02`"
    kind = schema.get("type")
    if isinstance(kind, list):
        return "a text or a list" if "array" in kind else "a text or a number"
    if kind == "array":
        return f"a list of: {_values(schema.get('items', {}))}"
    if kind == "integer" and "minimum" in schema and "maximum" in schema:
        return f"a whole number, {schema['minimum']} to {schema['maximum']}"
    return {"object": "a mapping", "string": "text", "number": "a number", "integer": "a whole number"}.get(
        str(kind), "text or a mapping"
    )
