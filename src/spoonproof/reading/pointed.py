"""Words that point at lines of the list without naming a food: "the first two", "both liquids", "the next three veg",
"the sprig", "those" of what was kept back.

They are read against the list alone, in its order, and so never hide a food that stands on no line: where the list
does not bear the words out, they point at nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet

from spoonproof.model.recipe import FoodLine
from spoonproof.reading.instruction import StepReader
from spoonproof.reading.kinds import GROUPS, all_but, in_state, of_kind
from spoonproof.reading.mentions import Mention, Names
from spoonproof.reading.runs import compared, key_of

_NUMBERS = {"both": 2, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8}
_POINTS = re.compile(
    r"(?i)\b(?P<lead>(?P<both>both)(?:[ \t]of)?(?:[ \t](?:the|these|those|your))?|(?:all[ \t])?(?:the|these|those"
    r"|your))(?:[ \t](?P<order>first|last|next|final|other))?(?:[ \t](?P<count>two|three|four|five|six|seven|eight"
    r"|[2-8]))?(?P<noun>[ \t](?P<one>[a-z]{3,14})(?:[ \t](?P<two>[a-z]{3,14}))?)?(?![a-z-])"
)
_ALONE = re.compile(  # "the first two into the pan", not "the first two minutes"
    r"(?i)[ \t]{0,3}(?:[.,;:)]|$|[ \t](?:in|into|to|with|until|together|for|and|on|onto|over|then|through|under)\b)"
)
_OF_A_TIME = re.compile(  # "adding the peas for the last two", but "stir in the last two"
    r"(?i)(?:\b(?:for|during)"
    r"|(?:^|[^ \w]|\b(?!stir|mix|fold|beat|tip|whisk|put|throw|pour|drop|swirl|goes)[a-z]{2,12})[ ]in)[ \t]$"
)
_THROWS = re.compile(r"(?i)\b(?:discard|bin|throw|remove|lift|take|chuck)\b[^.;]{0,12}$")
_ANY = frozenset({"ingredient", "thing", "item", "food", "one", "line"})
_WIDER: dict[str, tuple[str, ...]] = {
    "vegetable": ("vegetable", "pulse"), "veg": ("vegetable", "pulse"), "veggie": ("vegetable", "pulse"),
    "grain": ("grain", "pulse"), "meat": ("meat", "poultry", "offal", "processed-meat"), "dairy": ("dairy", "cheese"),
    "leaf": ("herb",), "fish": ("fish", "shellfish"), "herb": ("herb", "spice"), "spice": ("spice", "herb"),
}  # fmt: skip

_PIECES = (
    r"lea(?:f|ves)|sprigs?|slices?|fillets?|sticks?|cloves?|nests?|sheets?|pods?|stalks?|strips?|cubes?|hal(?:f|ves)"
    r"|quarters?|chunks?|thighs?|breasts?|drumsticks?|steaks?|chops?|loins?|rashers?|wedges?|segments?|florets?|rounds?"
    r"|batons?|dice|blocks?|rinds?|shapes?|shells?|stars?|matchsticks?|spears?|ribbons?|bulbs?|cobs?"
)
_THE_PIECE = re.compile(rf"(?i)\b(?P<the>the|both|those|these|your|each)[ \t](?P<word>{_PIECES})\b(?![ \t-]of\b)")
_MADE_INTO = re.compile(rf"(?i)\b(?:in|into|as|lengthways)\b[^.;,]{{0,30}}?\b(?P<word>{_PIECES})\b")
_IN_A_PACK = re.compile(  # "mash the drained tin"; "grease the tin" and "into the tin" are of a baking tin
    r"(?i)\b(?:add|mash|tip|pour|stir|mix|drain|rinse|empty|open|blend|crush|in go(?:es)?|with|and|contents of)"
    r"(?:[ \t](?:in|up|out|through))?[ \t](?:the|your|both(?:[ \t]the)?)[ \t]"
    r"(?:drained[ \t]|whole[ \t]|rinsed[ \t]|entire[ \t])?"
    r"(?P<word>tin|can|jar|packet|carton|pouch|sachet|pack)s?\b(?![ \t-](?:of|lid)\b)"
)
_THINGS = re.compile(  # "the chopped things", "the torn pieces", "the frozen ones"
    r"(?i)\bthe[ \t](?P<state>[a-z]{2,12}(?:ed|en|nd|rn))[ \t](?:things|ones|bits|pieces|stuff|ingredients)\b"
)
_THE_FAT = re.compile(r"(?i)\b(?:melt|heat|warm)(?:ing)? the (?P<fat>fat)\b")
_THOSE = re.compile(
    r"(?i)\b(?:cook|boil|simmer|steam|fry|bake|add|stir|mix|fold|tip|put|drop|throw|toss|beat|scatter|swirl"
    r"|pour)\b(?:[ \t](?:in|through))?[ \t](?P<those>those|these|them|that)\b"
)


Lines = tuple[int, ...]
Others = Sequence[AbstractSet[int]]
Named = Sequence[Mention]
Pointed = Iterator[Mention]


def pointed_at(reader: StepReader, text: str, named: Named, to_come: AbstractSet[int] | None = None) -> Pointed:
    """Where ``text`` counts lines off the list. ``named``: the foods that the sentence names, those before a place
    being used there too; ``to_come``: lines that later steps name, None where words only say what is left out, of
    which the grown-ups' lines may be."""
    names = reader.names
    apart = frozenset[int]() if to_come is None else reader.apart
    taken, counted = set(reader.used), set[int]()
    for found in _POINTS.finditer(text):
        noun, end = _noun(found, names)
        order = (found["order"] or "").lower()
        count = _NUMBERS["both"] if found["both"] else _number(found["count"])
        if (not order and not count) or (not noun and not (order and count and _ALONE.match(text, end))):
            continue
        if noun in ("", "one") and _OF_A_TIME.search(text[: found.start()]):
            continue
        spoken = tuple(dict.fromkeys(i for one in named if one.end <= found.start() for i in one.lines))
        if not noun and count < len(spoken) and order in ("first", "last") and _THROWS.search(text[: found.start()]):
            # "fish out the onion, the leek and the bay; discard the last two": of those just named
            yield Mention(found.start(), end, spoken[:count] if order == "first" else spoken[-count:])
            continue
        own = tuple(i for i in _of(noun, names) if i not in apart)
        if found["two"] and end == found.end("two"):  # "the two ground ones"
            state = found["one"].lower()
            own = tuple(i for i in own if in_state(state, names.lines[i], names.records[i])) or own
        if order == "other" and counted:  # "beat the first two, and fold in the other two"
            meant = tuple(i for i in own if i > max(counted))[:count]
        else:
            wider = tuple(i for i in _wider(noun, names) if i not in apart)
            prepared = {i for i, r in enumerate(names.records) if r is not None and r.state in ("canned", "cooked")}
            meant = _meant(order, count, own, wider, taken.union(spoken), (prepared, to_come or set()))
        if meant:
            taken.update(meant)
            counted.update(meant)
            yield Mention(found.start("both") if found["both"] else found.start(), end, meant)


def _number(word: str | None) -> int:
    return _NUMBERS.get((word or "").lower(), int(word) if word and word.isdigit() else 0)


def _noun(found: re.Match[str], names: Names) -> tuple[str, int]:
    """The word that says of what, in the singular ("" for none), and where the words that point end."""
    for group in ("one", "two"):
        word = compared(found[group]) if found[group] else ""
        if word and (word in _ANY or _of(word, names)):
            return word, found.end(group)
    return "", found.end("count" if found["count"] else "order" if found["order"] else "lead")


def _of(noun: str, names: Names) -> tuple[int, ...]:
    """The lines that the noun may speak of, in their order; every line for "" and "ingredients"."""
    if not noun or noun in _ANY:
        return tuple(range(len(names.lines)))
    known = [(i, record) for i, record in enumerate(names.records) if record is not None]
    if noun in ("liquid", "powder"):
        return tuple(i for i, record in known if record.hardness == noun and record.group != "oil")
    if noun in GROUPS:
        return of_kind(noun, names.records, names.last)
    called = {i for i, record in known if key_of(record.name)[-1:] == (noun,)}
    return tuple(sorted(called | {i for i, last in enumerate(names.last) if last == noun}))


def _wider(noun: str, names: Names) -> tuple[int, ...]:
    """What the noun may speak of besides where its own lines are too few for the number: courgette of "both greens"."""
    own = set(_of(noun, names))
    groups = _WIDER.get(noun, ())
    more = {i for i, record in enumerate(names.records) if record is not None and record.group in groups}
    if noun == "green":
        nameless = [""] * len(names.lines)
        others = [None if i in own else record for i, record in enumerate(names.records)]
        more |= {*of_kind("leaf", names.records, nameless), *of_kind("green", others, nameless)}
    return tuple(sorted(own | more))


def _meant(order: str, count: int, own: Lines, wider: Lines, used: AbstractSet[int], others: Others) -> Lines:
    many = own if len(own) >= count else wider
    fresh = tuple(i for i in many if i not in used)
    if order == "first":
        return many[: count or 1] if len(many) > count else ()
    if order in ("last", "final"):
        return many[-(count or 1) :] if len(many) > count else ()
    if order == "next":
        return fresh[: count or 1] if len(fresh) >= count else ()
    if order == "other":
        return fresh if not count or len(fresh) == count else ()
    if len(many) == count:
        return many
    for other in others if len(fresh) != count else ():  # "both vegetables" beside tinned tomatoes, and peas to come
        fresh = tuple(i for i in fresh if i not in other)
        if len(fresh) <= count:
            break
    return fresh if len(fresh) == count else ()


_ENDS = re.compile(r"(?i)\bthe (?P<order>first|last|final)(?: (?:one|ingredient|item|thing))?[ \t]*$")


def one_of_the_list(words: str, lines: Sequence[FoodLine]) -> set[int]:
    """The line that "the last" speaks of in "everything but the last"; none where the words say anything else."""
    found = _ENDS.match(words)
    if found is None or not lines:
        return set()
    return {0 if found["order"].lower() == "first" else len(lines) - 1}


def pieces_of(reader: StepReader, text: str, named: Named) -> Pointed:
    """ "Fish out the sprig", "lay the fillets in": the line whose own words have the piece, or of which a step made
    such a piece."""
    lines, records, used = reader.lines, reader.names.records, reader.used
    for found in _THE_FAT.finditer(text):
        fats = tuple(i for i, record in enumerate(records) if record and record.group in ("fat", "oil"))
        yield from [Mention(*found.span("fat"), fats)] if len(fats) == 1 else []
    for found in _IN_A_PACK.finditer(text):
        word = _PACKS.get(found["word"].lower(), found["word"].lower())
        held = tuple(i for i, line in enumerate(lines) if line.amount is not None and line.amount.unit == word)
        fresh = tuple(i for i in held if i not in used) or held
        yield from [Mention(*found.span("word"), fresh)] if len(fresh) == 1 or found[0].endswith("s") else []
    for found in _THINGS.finditer(text):
        state = found["state"].lower()
        so = tuple(i for i, line in enumerate(lines) if in_state(state, line, records[i]))
        if so and len(so) < len(lines):
            yield Mention(found.start("state"), found.end(), tuple(i for i in so if i not in used) or so)
    for found in _THE_PIECE.finditer(text):
        having = _with_piece(reader, found, named)
        if having:
            yield Mention(*found.span("word"), having)


def _with_piece(reader: StepReader, found: re.Match[str], named: Named) -> tuple[int, ...]:
    """The lines that "the slices" are of; () where it is not told."""
    lines = reader.lines
    word, at = compared(found["word"]), found.start("word")
    if word in {made for made, _ in reader.pieces}:  # "cut the leeks into strips. Fry the strips"
        return tuple(sorted(i for made, i in reader.pieces if made == word and i >= 0))
    if any(one.start <= at < one.end or one.start == found.end() + 1 for one in named):
        return ()
    shape = _SHAPES.get(word, word)
    having = tuple(i for i, line in enumerate(lines) if word in key_of(line.text))
    having = having or tuple(i for i, line in enumerate(lines) if any(cut.shape == shape for cut in line.cuts))
    if not having and word in _PASTA:  # "tip in the stars"
        having = tuple(i for i, r in enumerate(reader.names.records) if r and r.id in ("pasta", "fine-pasta"))
    plural = word != found["word"].lower() or found["the"].lower() in ("both", "each")
    return having if len(having) == 1 or plural else ()


_PACKS = {"can": "tin", "packet": "pack", "sachet": "pouch"}
_PASTA = frozenset({"star", "shape", "shell"})
_SHAPES = {"cube": "dice", "round": "coin"}


def made_into(text: str, named: Named) -> set[tuple[str, int]]:
    """The pieces that a step makes, each with the line it is made of (-1 for none): "slice" of "cut the pear into
    slices"."""
    made: set[tuple[str, int]] = set()
    for found in _MADE_INTO.finditer(text):
        of = next((one for one in reversed(named) if one.end <= found.start()), None)
        clause = text[of.end : found.start()] if of is not None else "."
        lines = of.lines if of is not None and not re.search(r"[.;]", clause) else ()
        made |= {(compared(found["word"]), i) for i in lines or (-1,)}
    return made


def kept_back(text: str, held: AbstractSet[int]) -> Pointed:
    """ "Put everything but the rice in. Add *that* for the last 20 minutes": what was left out and is now put in."""
    found = _THOSE.search(text) if held else None
    if found is not None:
        yield Mention(found.start("those"), found.end("those"), tuple(sorted(held)))


_FORMER = re.compile(r"(?i)\bthe (?P<which>former|latter)\b")


def pair_of(mentions: Sequence[Mention]) -> tuple[int, ...]:
    """The two lines that a step names, where it names just two: what "the former" and "the latter" then mean."""
    lines = tuple(dict.fromkeys(i for one in mentions for i in one.lines))
    return lines if len(lines) == 2 else ()


def former_or_latter(text: str, pair: tuple[int, ...]) -> Pointed:
    for found in _FORMER.finditer(text) if pair else ():
        yield Mention(*found.span("which"), (pair[found["which"].lower() == "latter"],))


def of_the_pot(reader: StepReader, mention: Mention) -> Mention:
    """Of several lines that words may mean, those of the common pot: "the spices" is no garam masala for the adults."""
    common = tuple(i for i in mention.lines if i not in reader.apart)
    if not common or common == mention.lines:
        return mention
    return mention._replace(lines=common, unsure=mention.unsure and len(common) > 1)


_WORD_BESIDE = re.compile(r"(?i)([a-z]{4,20})[ \t]+$|^[ \t]+([a-z]{4,20})")


def told_by_state(reader: StepReader, text: str, mention: Mention) -> Mention:
    """Of several lines that words may mean, those that the word in or beside them tells apart: "the grated cucumber",
    "the cucumber batons", "the dried fruit" beside a pear."""
    if len(mention.lines) < 2:
        return mention
    before = text[max(0, mention.start - 24) : mention.start]
    ahead = None if "/" in before else _WORD_BESIDE.search(before)  # "the chopped/grated vegetables" are both
    after = _WORD_BESIDE.match(text[mention.end :])
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
