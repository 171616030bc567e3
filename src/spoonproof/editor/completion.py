"""What may be written here: foods after an amount, textures, keys, closed words, wordings that stand, source ids."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from lsprotocol import types

from spoonproof.editor.bench import Look
from spoonproof.editor.cursor import Cursor, cursor, head_of
from spoonproof.editor.keys import keys_at, values_at
from spoonproof.editor.places import Encoding, offset, range_of
from spoonproof.editor.told import texture_lines
from spoonproof.model.citation import short
from spoonproof.model.text import Span
from spoonproof.reading.edits import fitted

MOST = 60
_WORD = re.compile(r"\S+")
_ITEM = re.compile(r"(?:^|[\s{,])(?:id|source):\s*[\"']?(?P<written>[A-Za-z0-9-]*)$")


def completion(look: Look, place: types.Position, encoding: Encoding) -> types.CompletionList:
    """The words that may stand at ``place``; ``is_incomplete`` as more typing may find others."""
    at = offset(look.document, place, encoding)
    found = [*_found(look, at, encoding)]
    return types.CompletionList(is_incomplete=len(found) > MOST or look.what == "recipe", items=found[:MOST])


def _found(look: Look, at: int, encoding: Encoding) -> Iterator[types.CompletionItem]:
    document = look.document
    if look.what == "recipe":
        head = head_of(document)
        if head is None or not head.start <= at <= head.end:
            yield from _statements(look, at, encoding)
            return
        here = cursor(document, at, head)
    elif look.what in ("channel", "register"):
        here = cursor(document, at, Span(0, len(document.text)))
    else:
        return
    if look.what == "register":
        yield from _sources(look, at, encoding)
        return
    if here.is_key:
        yield from _keys(look, here, encoding)
        return
    yield from _values(look, here, at, encoding)


def _values(look: Look, here: Cursor, at: int, encoding: Encoding) -> Iterator[types.CompletionItem]:
    if here.path[:1] == ("foods",) and here.path[-1:] in (("foods",), ("food",), ("or",)):
        yield from _foods(look, here, encoding)
        return
    if here.path[:1] == ("sources",) and here.path[-1:] == ("id",):
        yield from _sources(look, at, encoding)
        return
    if look.what == "channel" and here.path == ("accepted", "rule"):
        yield from _rules(look, here, encoding)
        return
    for word in values_at(look.what, here.path):
        if word.startswith(here.written.lower()):
            lines = texture_lines(word, look.folder.knowledge) if "texture" in here.path[-1:] else []
            yield _item(look, word, here.span, types.CompletionItemKind.EnumMember, encoding, lines=lines)
    yield from _statements(look, at, encoding)


def _foods(look: Look, here: Cursor, encoding: Encoding) -> Iterator[types.CompletionItem]:
    """Foods whose name goes on from the words after the amount; words of quality before the name are passed over."""
    words = _after_amount(look, here.written)
    if words is None:
        return
    names = list(look.folder.knowledge.foods.names())
    while True:
        found = _named(names, words.lower())
        if found or " " not in words:
            break
        words = words.partition(" ")[2].lstrip()
    span = Span(here.span.end - len(words), here.span.end)
    kind = types.CompletionItemKind.Value
    for number, (name, food) in enumerate(found[: MOST + 1]):
        record = look.folder.knowledge.foods.get(food)
        detail = f"{record.name} ({record.group}, {record.state})" if record is not None else ""
        lines = [f"Allergens: {', '.join(sorted(record.allergens))}."] if record and record.allergens else []
        yield _item(look, name, span, kind, encoding, detail, lines, order=number, typed=words)


def _named(names: Iterable[tuple[str, str]], wanted: str) -> list[tuple[str, str]]:
    """Names that start so, before those with a later word that does."""
    starts = sorted(pair for pair in names if pair[0].lower().startswith(wanted))
    holds = sorted(pair for pair in names if wanted and f" {wanted}" in pair[0].lower())
    return [*starts, *(pair for pair in holds if pair not in starts)]


def _after_amount(look: Look, written: str) -> str | None:
    """The words after the amount, None while the amount is being typed."""
    measures = look.folder.measures
    at = 0
    amount = False
    for word in _WORD.finditer(written):
        text = word.group()
        whole = word.end() < len(written)  # a blank after it: the word is done
        number = text[0].isdigit() or text[0] in "½¼¾⅓⅔⅛" or text in ("x", "×")
        sized = text.lower() in ("about", "a", "an", "small", "medium", "large", "heaped", "level", "of")
        if not number and not sized and (measures.unit(text.lower()) is None or not amount):
            break
        if not whole:
            return None if number else (text if amount else None)
        amount = amount or number or text.lower() in ("a", "an")
        at = word.end()
    rest = written[at:].lstrip()
    return rest if amount or rest else None


def _keys(look: Look, here: Cursor, encoding: Encoding) -> Iterator[types.CompletionItem]:
    for name, schema in keys_at(look.what, here.path).items():
        if name.startswith(here.written):
            doc = str(schema.get("description", ""))
            kind = types.CompletionItemKind.Property
            yield _item(look, name, here.span, kind, encoding, doc, [doc] if doc else [], text=f"{name}: ")


def _rules(look: Look, here: Cursor, encoding: Encoding) -> Iterator[types.CompletionItem]:
    from spoonproof.checks.rule import all_rules

    for rule in all_rules():
        if rule.name.startswith(here.written):
            yield _item(look, rule.name, here.span, types.CompletionItemKind.EnumMember, encoding, rule.title)


def _sources(look: Look, at: int, encoding: Encoding) -> Iterator[types.CompletionItem]:
    document = look.document
    start = document.line_starts[document.position(at)[0] - 1]
    found = _ITEM.search(document.text[start:at])
    if found is None:
        return
    span = Span(at - len(found["written"]), at)
    sources = look.folder.knowledge.sources
    for name in sorted(sources):
        if name.startswith(found["written"]):
            yield _item(look, name, span, types.CompletionItemKind.Reference, encoding, short(name, sources))


def _statements(look: Look, at: int, encoding: Encoding) -> Iterator[types.CompletionItem]:
    """The wordings that stand in place of the claim that is there: those that the rules give as its remedy."""
    if look.dish is None:
        return
    from spoonproof.checks.from_claims import once, remedy

    line = look.document.position(at)[0]
    for judged in once(look.dish.claims):
        if judged.advice == "keep" or not judged.wording:
            continue
        for edit in (fitted(look.document, edit) for edit in remedy(judged).edits):
            start, end = (look.document.position(offset)[0] for offset in edit.span)
            # The protocol lets a completion replace words of its own line alone; over several lines there is the fix.
            if edit.span.start <= at <= edit.span.end and start == end == line:
                typed = look.document.at(edit.span)
                kind = types.CompletionItemKind.Text
                yield _item(look, edit.replacement, edit.span, kind, encoding, judged.why, typed=typed)


def _item(
    look: Look,
    label: str,
    span: Span,
    kind: types.CompletionItemKind,
    encoding: Encoding,
    detail: str = "",
    lines: Iterable[str] = (),
    *,
    text: str = "",
    order: int | None = None,
    typed: str = "",
) -> types.CompletionItem:
    """``typed``: what stands there now, which editors filter by when the label starts otherwise."""
    words = "\n".join(lines)
    return types.CompletionItem(
        label=label,
        kind=kind,
        detail=detail or None,
        documentation=types.MarkupContent(types.MarkupKind.Markdown, words) if words else None,
        text_edit=types.TextEdit(range_of(look.document, span, encoding), text or label),
        filter_text=typed or None,
        sort_text=f"{order:04d}" if order is not None else None,
    )
