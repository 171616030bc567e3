"""``explain``: a rule, a food, a register entry, a texture, a policy, a source or a file's keys, in words."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from spoonproof.commands import channel_or_none, new_parser

if TYPE_CHECKING:
    from spoonproof.claims.entries import Entry
    from spoonproof.knowledge import Knowledge
    from spoonproof.model.food import Food

Lines = Iterator[str]


def parser() -> ArgumentParser:
    """The arguments of ``explain``."""
    found = new_parser(
        "explain",
        "Explain a rule, a food, a register entry, a texture, a policy, a source, or the keys of channel and recipe.",
    )
    found.add_argument("name", nargs="+", metavar="NAME", help="its name or id")
    return found


def run(options: Namespace) -> int:
    """Print what is known of the name; exit 2 when nothing is."""
    from spoonproof.cli import UsageError
    from spoonproof.knowledge import Knowledge
    from spoonproof.report.terminal import write

    folder = channel_or_none(options)
    knowledge = folder.knowledge if folder else Knowledge()
    name = " ".join(options.name).strip()
    tellers = (_file, _rule, _reading_rule, _entry, _texture, _policy, _food, _source)
    lines = [line for teller in tellers for line in teller(name, knowledge)]
    if not lines:
        raise UsageError(f"nothing here is called {name!r}{_near(name, knowledge)}")
    write(lines)
    return 0


def _near(name: str, knowledge: Knowledge) -> str:
    from difflib import get_close_matches

    from spoonproof.checks.rule import all_rules
    from spoonproof.reading.faults import all_faults

    names = [rule.name for rule in all_rules()] + list(all_faults()) + [e.id for e in knowledge.register.entries]
    names += ["channel", "recipe", *(row.text("topic") for row in knowledge.rows("policies"))]
    names += [food for food, _ in knowledge.foods.names()] + [row.text("word") for row in knowledge.rows("textures")]
    near = get_close_matches(name.lower(), names, 3, 0.75)
    return f"; did you mean {' or '.join(dict.fromkeys(near))}?" if near else ""


def _file(name: str, knowledge: Knowledge) -> Lines:  # noqa: ARG001 - one shape for all tellers
    """The keys of a file; or, of either file, every key of that name with those below it."""
    from spoonproof.reading.recipe_keys import channel_schema, recipe_schema
    from spoonproof.reference.keys import key_rows

    files = {"channel": ("channel.yaml", channel_schema()), "recipe": ("a recipe's head", recipe_schema())}
    for file, (title, schema) in files.items():
        asked = name.lower().removesuffix(".yaml") == file
        rows = [
            f"  {key}{' (needed)' if needed else ''}: {words} ({values.replace('`', '')})"
            for key, words, needed, values in key_rows(schema)
            if asked or f".{name}." in f".{key}."
        ]
        if rows:
            yield f"{title}: {'its keys' if asked else 'the key'}"
            yield from rows


def _rule(name: str, knowledge: Knowledge) -> Lines:
    from spoonproof.checks.rule import all_rules
    from spoonproof.model.citation import short

    for rule in all_rules():
        if rule.name == name:
            yield f"{rule.name}: a rule over a {rule.scope} ({rule.area}, {rule.level})"
            yield ""
            yield rule.doc.strip()
            yield ""
            yield from (f"Source: {short(source, knowledge.sources)}" for source in rule.sources)


def _reading_rule(name: str, knowledge: Knowledge) -> Lines:  # noqa: ARG001 - one shape for all tellers
    from spoonproof.reading.faults import all_faults

    found = all_faults().get(name)
    if found is not None:
        yield f"{found.name}: a rule of reading ({found.area}, {found.level})"
        yield ""
        yield f"{found.wrong}. {found.why}"


def _entry(name: str, knowledge: Knowledge) -> Lines:
    from spoonproof.claims.conditions_told import in_words
    from spoonproof.model.citation import short

    entry = knowledge.register.get(name)
    if entry is None:
        return
    line = entry.document.position(entry.span.start)[0]
    yield f"{entry.id}: an entry of the claims register ({entry.document.path}:{line})"
    yield from _where_known(
        ("about: ", ", ".join(entry.about or ("any food",))), ("effect: ", ", ".join(entry.effects))
    )
    yield from _words_of(entry)
    yield from _where_known(
        ("true: ", entry.truth),
        ("why: ", entry.why),
        ("holds for a food with ", in_words(entry.condition) if entry.condition is not None else ""),
        ("the same as a row of shared/: ", entry.points_at),
    )
    for allowance in entry.allowed:
        yield f"  {', '.join(allowance.markets)}: {allowance.answer}" + (f" ({allowance.why})" if allowance.why else "")
        if allowance.condition not in (None, entry.condition):
            yield f"    for a food with {in_words(allowance.condition)}"
        yield from (f"    {line}" for line in _wordings(allowance.wording or entry.wording, knowledge))
    for ref in dict.fromkeys((*entry.refs, *(ref for allowance in entry.allowed for ref in allowance.refs))):
        yield f"  source: {short(ref.id, knowledge.sources)}" + (f"; {ref.locator}" if ref.locator else "")
    yield "  These answers are not legal advice."


def _words_of(entry: Entry) -> Lines:
    """For which statements an entry speaks, so that entries about the same foods can be told apart."""
    from spoonproof.claims.conditions_told import age_in_words, words_in_words

    stances = {
        "permits": "that it may be given",
        "warns": "that it is kept from them",
        "dismisses": "that it is no danger",
    }
    yield from _where_known(
        ("kind of statement: ", ", ".join(entry.kinds)),
        ("says how much: ", ", ".join(entry.levels)),
        ("says: ", stances[entry.stance] if entry.stance else ""),
        ("must say one of: ", words_in_words(entry.said) if entry.said else ""),
        ("and one of: ", words_in_words(entry.also) if entry.also else ""),
        ("and none of: ", words_in_words(entry.unless) if entry.unless else ""),
        ("said of: ", age_in_words(entry.ages)),
        ("judged with its “no”", " as it stands" if entry.negation else ""),
    )


def _where_known(*rows: tuple[str, str | None]) -> Lines:
    """A line for each that has something to say after its lead."""
    return (f"  {lead}{told}" for lead, told in rows if told)


def _wordings(wordings: Iterable[str], knowledge: Knowledge) -> Lines:
    """Authorised wordings in full, for whom and on what terms; plain ones as they are."""
    for wording in wordings:
        found = knowledge.register.wordings.get(wording.removeprefix("authorised:"))
        if found is None:
            yield f"wording that stands: {wording}"
            continue
        yield f"authorised wording: “{found.text}” ({found.article}; for: {found.population.lower() or 'not said'})"
        if found.conditions:
            yield f"its conditions of use: {found.conditions}"


def _texture(name: str, knowledge: Knowledge) -> Lines:
    from spoonproof.model.citation import short
    from spoonproof.reading.recipe_keys import TEXTURES_AS_SAID

    asked = TEXTURES_AS_SAID.get(name.lower(), name.lower())
    for row in knowledge.rows("textures"):
        if row.text("word") == asked:
            yield f"{asked}: a texture, from about {row.text('from_months')} months"
            yield f"  {row.text('says')}"
            yield f"  source: {short(row.text('source'), knowledge.sources)}; {row.text('locator')}"


def _policy(name: str, knowledge: Knowledge) -> Lines:
    """Where authorities differ on a topic (or on each topic of an authority): who says what, and which one holds unless
    the channel names another."""
    from itertools import groupby

    from spoonproof.model.citation import short

    every = list(knowledge.rows("policies"))
    topics = {row.text("topic") for row in every if name in (row.text("topic"), row.text("authority"))}
    for topic, rows in groupby(every, key=lambda row: row.text("topic")):
        if topic not in topics:
            continue
        for number, row in enumerate(rows):
            if not number:
                yield f"{topic}: a policy; in channel.yaml: policies: {{{topic}: {row.text('authority')}}}"
            default = " (the default)" if row.text("default") == "yes" else ""
            yield f"  {row.text('authority')}{default}: {row.text('says')}"
            yield f"    source: {short(row.text('source'), knowledge.sources)}"


def _food(name: str, knowledge: Knowledge) -> Lines:
    from spoonproof.model.citation import short

    match = knowledge.foods.match(name)
    food = knowledge.foods.get(name) or (knowledge.foods.get(match.food) if match else None)
    if food is None:
        return
    yield f"{food.name}: a food ({food.group}, {food.state}), record {food.record or 'none'}"
    yield from _where_known(
        ("", food.scientific),
        ("also: ", ", ".join(each.removeprefix("=") for each in food.names)),
        ("allergens: ", ", ".join(sorted(food.allergens))),
    )
    if food.traits:
        meanings = {row.text("trait"): row.text("meaning") for row in knowledge.rows("traits")}
        yield from (f"  {trait}: {meanings.get(trait, '')}".rstrip(": ") for trait in sorted(food.traits))
    yield from _where_known(
        ("", food.note),
        ("not eaten: ", f"{food.refuse_pct:g} % of the weight as bought" if food.refuse_pct else ""),
        ("source: ", short(food.source, knowledge.sources)),
    )
    yield from _per_100g(food, knowledge)
    for portion in food.portions:
        yield f"    1 {(portion.size + ' ') if portion.size else ''}{portion.unit} = {portion.grams:g} g"


def _per_100g(food: Food, knowledge: Knowledge) -> Lines:
    """Every nutrient; a mark where its source is not the record's own."""
    from spoonproof.foods.show import NAMES
    from spoonproof.model.citation import short
    from spoonproof.model.food import NUTRIENT_UNITS

    yield "  per 100 g edible:"
    others: dict[str, str] = {}
    for key, label in NAMES.items():
        unit = NUTRIENT_UNITS[key]
        value = food.per_100g.get(key)
        if value is not None and value.source and value.source != food.source:
            label += others.setdefault(value.source, "*" * (len(others) + 1))
        if value is None:
            yield f"    {label:<18} not determined"
        elif value.kind == "assumed-zero":
            yield f"    {label:<18} {0:>9} {unit:<4} assumed zero by the source"
        else:
            spread = f"({value.low:g} to {value.high:g})" if value.low != value.high else ""
            yield f"    {label:<18} {value.amount:>9g} {unit:<4} {spread}".rstrip()
    yield from (f"    {mark} {short(source, knowledge.sources)}" for source, mark in others.items())


def _source(name: str, knowledge: Knowledge) -> Lines:
    from spoonproof.model.citation import address, short

    if name in knowledge.sources:
        yield f"{name}: a source"
        yield from _where_known(("", short(name, knowledge.sources)), ("", address(name, knowledge.sources)))
