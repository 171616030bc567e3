"""The reference pages: what every recipe is checked for, what the register holds, the sources of it all."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from spoonproof.checks.rule import Rule
from spoonproof.claims.conditions_told import in_words
from spoonproof.claims.entries import Entry
from spoonproof.claims.register import Register
from spoonproof.claims.wording import nutrient_name
from spoonproof.site.sources import citation
from spoonproof.site.view import Citation, MarketLine
from spoonproof.site.view_site import EntryItem, RuleItem

TRUTHS = {
    "true": "True.",
    "overstated": "Overstated.",
    "false": "Not true.",
    "unproven": "Not proven.",
    "computed": "Depends on the numbers: they are computed for each dish.",
    None: "",
}
_LAW = {
    "yes": "a food business may say it",
    "with-wording": "a food business may say it in set words",
    "no": "a food business may not say it",
}

TOPICS = {
    "authorised children": "Authorised for children",
    "authorised functions": "Authorised for what nutrients do",
    "diseases": "Illness and allergy",
    "effects and refusals": "Effects, and what was refused",
    "free from": "“Free from”",
    "law": "What a market’s law says in general",
    "loose words": "Loose words",
    "nutrition claims": "What is in a food",
    "processes": "What cooking does",
    "safety": "What is safe at which age",
}
"""Topics of the register as a reader meets them; a channel's own file keeps its name."""

_NUTRIENT = re.compile(r"_(?:ug|mg|g|kcal)$|^omega-\d$")
_SECOND = re.compile(r"(?<!omega)-\d+$")
_LETTERS = frozenset("ala dha epa eu gb us fda nhs blw iq".split())
_BLANK = re.compile(r"\{[a-z_]{1,40}\}")


def rule_items(rules: Iterable[Rule]) -> tuple[RuleItem, ...]:
    """The rules by area and name."""
    items = [
        RuleItem(rule.name, rule.area, rule.level, rule.scope, rule.title.rstrip("."), _why(rule.doc), rule.sources)
        for rule in rules
    ]
    return tuple(sorted(items, key=lambda item: (item.area, item.name)))


def _why(doc: str) -> str:
    """The docstring's explanation: what stands between its title and its examples, paragraphs kept."""
    body = doc.strip().partition("\n")[2]
    for mark in ("\nFails::", "\nPasses::"):
        body = body.partition(mark)[0]
    paragraphs = [" ".join(part.split()) for part in body.split("\n\n")]
    return "\n\n".join(part for part in paragraphs if part)


def entry_items(register: Register) -> tuple[EntryItem, ...]:
    """The register by topic (the file an entry stands in) and id."""
    items = []
    for entry in register.entries:
        topic = entry.document.path.rpartition("/")[2].partition(".")[0].replace("_", " ").replace("-", " ")
        sources = dict.fromkeys(ref.id for ref in entry.refs)
        for allowance in entry.allowed:
            sources.update(dict.fromkeys(ref.id for ref in allowance.refs))
        items.append(
            EntryItem(
                entry.id,
                TOPICS.get(topic, topic[:1].upper() + topic[1:]),
                _says(entry),
                _truth(entry),
                tuple(
                    MarketLine(
                        ", ".join(allowance.markets),
                        _LAW[allowance.answer] + (f" ({allowance.why})" if allowance.why else ""),
                    )
                    for allowance in entry.allowed
                ),
                _wording(entry, register),
                tuple(sources),
                entry.checked,
                entry.due,
            )
        )
    return tuple(sorted(items, key=lambda item: (item.topic, item.id)))


def _truth(entry: Entry) -> str:
    """Whether it is true, of which food, and why."""
    when = f"It holds for a food with {in_words(entry.condition)}." if entry.condition is not None else ""
    return " ".join(part for part in (TRUTHS[entry.truth], when, entry.why) if part)


def _wording(entry: Entry, register: Register) -> str:
    """The wordings that stand: ours in our words, the law's quoted."""
    out: dict[str, None] = {}
    for word in (*entry.wording, *(w for allowance in entry.allowed for w in allowance.wording)):
        lawful = register.wordings.get(word.removeprefix("authorised:"))
        own = _BLANK.sub("…", word)
        out[f"“{lawful.text}” ({lawful.market}, {lawful.article})" if lawful is not None else own] = None
    return "; ".join(out)


def _says(entry: Entry) -> str:
    """What the entry is about: its subjects and its effects, or the words of its id."""
    if entry.effects:
        about = [_word(name) for name in entry.about] or ["any food"]
        text = f"{_first(about)}: {_first([_word(effect) for effect in entry.effects])}"
    else:
        text = _word(_SECOND.sub("", entry.id))
    return text[:1].upper() + text[1:]


def _first(words: Sequence[str]) -> str:
    told = list(dict.fromkeys(words))
    return ", ".join(told[:3]) + (" and more" if len(told) > 3 else "")


def _word(name: str) -> str:
    """An id of a food, nutrient, set or effect as words; what is said by its letters in capitals."""
    if _NUTRIENT.search(name):
        return nutrient_name(name)
    words = name.removeprefix("set:").replace("_", " ").replace("-", " ").split()
    return " ".join(word.upper() if word in _LETTERS else word for word in words)


def used_sources(
    known: Mapping[str, Mapping[str, object]],
    on_pages: Iterable[str],
    rules: Sequence[RuleItem],
    entries: Sequence[EntryItem],
) -> tuple[Citation, ...]:
    """Every source that something on the site rests on, by its text. ``on_pages``: those of the recipes' pages."""
    used = dict.fromkeys(on_pages)
    for ids in (*(rule.sources for rule in rules), *(entry.sources for entry in entries)):
        used.update(dict.fromkeys(ids))
    cited = [citation(source, known.get(source)) for source in used]
    return tuple(sorted(cited, key=lambda item: (item.text.casefold(), item.id)))
