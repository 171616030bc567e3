"""Ways through a text: to the entry a claim rests on, to the recipe used as a food, and the outline."""

from __future__ import annotations

from lsprotocol import types

from spoonproof.editor.bench import Look
from spoonproof.editor.diagnostics import file_of
from spoonproof.editor.places import UTF16, Encoding, offset, range_of
from spoonproof.editor.told import claim_at, line_at
from spoonproof.model.recipe import Recipe
from spoonproof.model.text import Span

_Kind = types.SymbolKind


def definition(look: Look, place: types.Position, encoding: Encoding) -> list[types.Location]:
    """The register's entries behind a claim (what decided first), or the recipe that a food line uses."""
    if look.dish is None:
        return []
    at = offset(look.document, place, encoding)
    judged = claim_at(look.dish, at)
    if judged is not None:
        names = [judged.entry, *(answer.entry for answer in judged.allowed)]
        register = look.folder.knowledge.register
        entries = [register.get(name) for name in dict.fromkeys(name for name in names if name)]
        return [
            types.Location(file_of(e.document, look.folder).as_uri(), range_of(e.document, e.span, encoding))
            for e in entries
            if e is not None
        ]
    line = line_at(look.dish.recipe.foods, at)
    other = look.dish.others.get(line.recipe) if line is not None and line.recipe else None
    if other is None:
        return []
    there = range_of(other.document, other.title.span, encoding)
    return [types.Location((look.folder.root / other.document.path).as_uri(), there)]


def outline(look: Look, encoding: Encoding = UTF16) -> list[types.DocumentSymbol]:
    """Title with foods, steps and segments below it; the entries of a file of the register."""
    if look.what == "register":
        return _entries(look, encoding)
    recipe = look.file.recipe if look.file is not None else None
    if recipe is None:
        return []
    keys = recipe.keys or {}
    foods = [_symbol(look, line.text or line.name, line.span, _Kind.Field, encoding) for line in recipe.foods]
    steps = [
        _symbol(look, f"{step.index + 1}. {step.text}", step.span, _Kind.Method, encoding) for step in recipe.steps
    ]
    segments = [
        _symbol(look, part.name, part.span, _Kind.Event, encoding)
        for part in (recipe.film.segments if recipe.film else ())
    ]
    below = [
        _group(look, name, keys[key], children, encoding)
        for key, name, children in (("foods", "Foods", foods), ("steps", "Steps", steps), ("film", "Film", segments))
        if key in keys and children
    ]
    title = _symbol(look, recipe.title.value, recipe.title.span, _Kind.String, encoding)
    return [_around(look, title, below, recipe, encoding)]


def _entries(look: Look, encoding: Encoding) -> list[types.DocumentSymbol]:
    register, _ = look.folder.knowledge.register_with(look.text.path, look.document)
    mine = [entry for entry in register.entries if entry.document is look.document]
    return [_symbol(look, entry.id, entry.span, _Kind.Key, encoding) for entry in mine]


def _symbol(look: Look, name: str, span: Span, kind: types.SymbolKind, encoding: Encoding) -> types.DocumentSymbol:
    there = range_of(look.document, span, encoding)
    words = " ".join(name.split()) or "(nothing yet)"
    return types.DocumentSymbol(name=words[:120], kind=kind, range=there, selection_range=there)


def _group(
    look: Look, name: str, key: Span, children: list[types.DocumentSymbol], encoding: Encoding
) -> types.DocumentSymbol:
    start = range_of(look.document, key, encoding)
    end = max((child.range.end for child in children), key=lambda p: (p.line, p.character))
    return types.DocumentSymbol(
        name=name,
        kind=_Kind.Array,
        range=types.Range(start.start, end),
        selection_range=start,
        children=children,
        detail=str(len(children)),
    )


def _around(
    look: Look, title: types.DocumentSymbol, below: list[types.DocumentSymbol], recipe: Recipe, encoding: Encoding
) -> types.DocumentSymbol:
    """The recipe as a whole, shown by its title: a symbol's range must hold those of its children."""
    whole = range_of(look.document, Span(0, len(recipe.document.text)), encoding)
    return types.DocumentSymbol(
        name=title.name, kind=title.kind, range=whole, selection_range=title.selection_range, children=below
    )
