"""The foods of a step that are read against the list and what went before: kinds, counted lines, all but some."""

from __future__ import annotations

import re

from spoonproof.reading.kinds import all_but, in_state
from spoonproof.reading.mentions import Mention
from spoonproof.reading.pointed import (
    former_or_latter,
    kept_back,
    made_into,
    one_of_the_list,
    pair_of,
    pieces_of,
    pointed_at,
)
from spoonproof.reading.step_reader import StepReader


def of_the_pot(reader: StepReader, mention: Mention) -> Mention:
    """Of several lines that words may mean, those of the common pot: "the spices" is no garam masala for the adults."""
    common = tuple(i for i in mention.lines if i not in reader.apart)
    if not common or common == mention.lines:
        return mention
    return mention._replace(lines=common, unsure=mention.unsure and len(common) > 1)


_BESIDE = re.compile(r"(?i)([a-z]{4,20})[ \t]+$|^[ \t]+([a-z]{4,20})")


def told_by_state(reader: StepReader, text: str, mention: Mention) -> Mention:
    """Of several lines that words may mean, those that the word in or beside them tells apart: "the grated cucumber",
    "the cucumber batons", "the dried fruit" beside a pear."""
    if len(mention.lines) < 2:
        return mention
    ahead = _BESIDE.search(text[max(0, mention.start - 24) : mention.start])
    after = _BESIDE.match(text[mention.end :])
    inside = text[mention.start : mention.end].split()[:-1]
    for word in (*inside, *(found[0].strip() for found in (ahead, after) if found)):
        having = tuple(i for i in mention.lines if in_state(word.lower(), reader.lines[i], reader.names.records[i]))
        if having and having != mention.lines:
            return mention._replace(lines=having, unsure=mention.unsure and len(having) > 1)
    return mention


def with_pointed(reader: StepReader, text: str, mentions: list[Mention]) -> list[Mention]:
    """The mentions with the lines that words without a food's name point at, in the order of the text."""
    mentions.sort(key=lambda m: m.start)
    counted = list(pointed_at(reader, text, mentions, reader.to_come))
    mentions = [m for m in mentions if not any(one.start <= m.start < one.end for one in counted)]
    pieces = [*pieces_of(reader, text, mentions), *kept_back(text, reader.held - reader.used)]
    reader.pieces |= made_into(text, mentions)
    pieces += former_or_latter(text, reader.pair)
    reader.pair = pair_of(mentions) or reader.pair
    pieces = [of_the_pot(reader, one) for one in pieces]
    return sorted([*mentions, *counted, *pieces], key=lambda m: m.start)


def all_but_some(reader: StepReader, text: str) -> list[Mention]:
    """ "Add everything but the harissa", "everything else except the salt": the lines that are meant."""
    found: list[Mention] = []
    for start, end, rest, words in all_but(text):
        counted = pointed_at(reader, words, ())
        left = {i for mention in (*reader.names.find(words), *counted) for i in mention.lines}
        left = left or one_of_the_list(words, reader.lines)
        others = [i for i in range(len(reader.lines)) if i not in left]
        meant = tuple(i for i in others if not (rest and i in reader.used)) or tuple(others)
        if left and meant:
            found.append(Mention(start, end, meant))
            reader.held = left
    return found
