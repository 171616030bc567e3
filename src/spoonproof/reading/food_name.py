"""Which food a line names: the longest name the table knows, or an error with the nearest ones."""

from __future__ import annotations

import re
from collections.abc import Sequence
from difflib import get_close_matches

from spoonproof.model.finding import Edit, Finding, Remedy
from spoonproof.model.food import NameMatch
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Amount
from spoonproof.model.record import NamedTuple, dataclass, field
from spoonproof.model.text import Document, Passage, Span
from spoonproof.model.tree import Scalar
from spoonproof.reading.amount_again import Problem
from spoonproof.reading.faults import fault
from spoonproof.reading.measures import Measures
from spoonproof.reading.name_ends import PREPOSITION, parts_of
from spoonproof.reading.placing import Page, passage_of
from spoonproof.reading.runs import tokens_of

OF_ONE = re.compile(
    r"(?i)(?:(?:the|finely|freshly|squeezed|grated)[ \t]+)*(?P<what>juice|zest|rind"
    r"|flesh|seeds)(?:[ \t]+and[ \t]+(?P<also>juice|zest))?[ \t]+(?:of|from)[ \t]+"
)
_OF_IT = re.compile(  # "1 lime, juice only", "1 lemon, juiced"
    r"(?i)[,(][ \t]{0,30}(?:(?:the|its|finely|grated)[ \t]{1,9}){0,2}(?P<what>juiced?|zest|rind)"
    r"(?:[ \t]{1,9}(?:and|&|plus)[ \t]{1,9}(?P<also>juice|zest|rind))?(?:[ \t]{1,9}(?:only|of))?[ \t.)]{0,9}(?=[,;]|$)"
)


def _part_word(part: re.Match[str]) -> str:
    """What a match of ``OF_ONE`` or ``_OF_IT`` takes of the fruit: juice or zest."""
    return {"rind": "zest", "juiced": "juice"}.get(part["what"].lower(), part["what"].lower())


def _pressed_food(fruit: str, part: re.Match[str], foods: Foods) -> str | None:
    """The food that the one ``part`` (a match of ``OF_ONE`` or ``_OF_IT``) of a fruit is: lemon juice. None where the
    table has none, or where two parts are used."""
    what = _part_word(part)
    made = foods.match(f"{fruit} {what}") or foods.match(f"{fruit.removesuffix('s')} {what}")
    whole = made is not None and made.end - made.start > len(fruit) and not part["also"]
    return made.food if made is not None and whole else None


_BEFORE_A_NAME = ("prepared", "state", "size", "sort", "ignored")
_RECORD = re.compile(r"(?<![\w:])[a-z]{2,12}:[0-9A-Za-z]{1,12}(?![\w:])")
_WORD_OF = re.compile(r"(?i)[ \t]{0,9}(?P<word>[^\W\d_]{2,20})[ \t]{1,9}of[ \t]{1,9}")
_DASHED = re.compile(r"(?<=[^\W\d_])[ \t]{0,2}[-–—][ \t]{0,2}(?=[^\W\d_])")
_FIRST_WORD = re.compile(r"(?i)[ \t]{0,9}(?P<word>[^\W\d_]{2,12})\.?[ \t]{1,9}(?:of[ \t]{1,9})?")
_SHORT_WORDS = frozenset({"of", "or", "hot", "raw", "red", "fat", "big", "black", "pink", "hard", "lean"})
_GLOSS = re.compile(r"[ \t]*(?P<part>[^\W\d_]{3,12}[ \t]+)?\((?P<food>[^\W\d_][^()]{1,40})\)")
_BRACKET = re.compile(r"\([^()]{0,120}\)")


@dataclass(slots=True)
class LineDraft:
    """What has been read of a line so far; offsets are into the line's own text."""

    text: str
    passage: Passage
    document: Document
    foods: Foods
    measures: Measures
    used: bytearray
    begin: int = 0  # where the line's own words begin, after a label ("For the top: 1 tbsp oats")
    amount_lost: bool = False  # the word after the number is no unit, so the number counts for nothing
    offered: list[Alternative] = field(default_factory=list)  # foods that share their last word with the line's own
    findings: list[Finding] = field(default_factory=list)

    def use(self, start: int, end: int) -> None:
        self.used[start:end] = b"\1" * (end - start)

    def place(self, start: int, end: int) -> Span:
        return self.passage.span(start, end)

    def find(self, rule: str, start: int, end: int, message: str, remedy: Remedy | str = "") -> None:
        """Note a fault of the rule at ``text[start:end]``."""
        self.findings.append(fault(rule, self.document, self.place(start, end), message, remedy))

    def report(self, problems: Sequence[Problem]) -> None:
        for problem in problems:
            self.find(problem.rule, problem.start, problem.end, f"{problem.message}.", problem.remedy)

    def open_text(self) -> str:
        """The text with everything that is used blanked out, offsets kept."""
        return "".join([" " if used else char for char, used in zip(self.text, self.used, strict=True)])


@dataclass(slots=True)
class FoodName:
    """The words that name the food and the id found (None: unknown, said)."""

    start: int
    end: int
    food: str | None
    words: str = ""  # where a bracket stands inside the name


class Alternative(NamedTuple):
    """``text[start:end]`` names ``food``, offered in the place of the line's own by words that begin at ``says``."""

    start: int
    end: int
    food: str
    says: int
    amount: Amount | None = None


def draft_of(scalar: Scalar, page: Page) -> LineDraft:
    return LineDraft(scalar.value, passage_of(scalar, page.document, "food"), *page, bytearray(len(scalar.value)))


def first_word(draft: LineDraft) -> int:
    """Where the first word of the line stands, after its label."""
    return skip_spaces(draft.text, draft.begin)


def food_name(draft: LineDraft) -> FoodName | None:
    """Find the food. None when no word of the line names one (or could)."""
    record = _RECORD.search(draft.text)
    if record is not None:
        return _named_record(draft, record)
    text = draft.open_text()
    name = _pressed(draft, text) or _over_notes(draft, text) or _over_a_dash(draft, text)
    return name or next(filter(None, (_in_segment(draft, text, start, end) for start, end in parts_of(text))), None)


def _in_segment(draft: LineDraft, text: str, start: int, end: int) -> FoodName | None:
    """The food that a part of the line names, known or not; None where it holds nothing but words of preparation."""
    match = _match(draft, text, start, end)
    if match is not None:
        after = _of_two_flavours(draft, text, match.end, end) or _tail(draft, match, end)
        return _taken(draft, match) if after is None else _unknown(draft, match.start, after)
    near = _misspelt_unit(draft, text, start, end)
    if near is not None:
        return near
    left = _left_over(draft, text, start, end)
    if left is not None and (stop := PREPOSITION.search(text, *left)) is not None:
        left = left[0], len(text[: stop.start()].rstrip())  # "gigantes or butter beans"
    of = _WORD_OF.match(text, start, end)
    inner = _match(draft, text, of.end(), end) if of is not None else None
    if of is not None and inner is not None:
        return _of_a_cut(draft, of, inner) or _unknown_unit(draft, of, inner)
    if left is None:
        return None
    known = draft.foods.match(text[left[0] : left[1]])
    if known is None:
        return _glossed(draft, left) or _unknown(draft, *left)
    # "Beetroot powder": a known food, of which the words after it make another.
    stop = PREPOSITION.search(text, left[1], end)
    whole = left[0] + len(text[left[0] : stop.start() if stop else end].rstrip())
    if left == (known.start + left[0], whole) and known.end == whole - left[0]:  # "baby leaf spinach"
        return _taken(draft, NameMatch(*left, known.food))
    return _unknown(draft, left[0], whole, known.food)


def _taken(draft: LineDraft, match: NameMatch) -> FoodName:
    """The name that stands at ``match``, whose words are used up."""
    draft.use(match.start, match.end)
    return FoodName(match.start, match.end, match.food)


def _glossed(draft: LineDraft, left: tuple[int, int]) -> FoodName | None:
    """ "150 g kırmızı mercimek (red lentils)": a name of another kitchen, and behind it a food that we know."""
    gloss = _GLOSS.match(draft.text, left[1])
    if gloss is None or (gloss["part"] and not draft.measures.preparations.find(gloss["part"])):
        return None  # "cereal powder (baby cereal)"
    known = _named_at(draft, gloss["food"], 0, len(gloss["food"]))
    if known is None or known.end != len(gloss["food"]):
        return None
    draft.use(left[0], gloss.end())
    return FoodName(*left, known.food)


def _over_notes(draft: LineDraft, text: str) -> FoodName | None:
    """ "Flaked (slivered) almonds", "very hot (not boiling) stock": a name that a bracket stands in the middle of, or
    in front of; what the bracket says is still to be read."""
    notes = [found.span() for found in _BRACKET.finditer(text)]
    outside = _BRACKET.sub(lambda found: " " * len(found[0]), text)
    for start, end in parts_of(outside) if notes else ():
        match = _match(draft, outside, start, end)
        if match is None:
            return None
        inside = [(a, b) for a, b in notes if match.start < a and b < match.end]
        if not inside and not any(start <= a and b <= match.start for a, b in notes):
            return None
        at = match.start
        for a, b in (*inside, (match.end, match.end)):
            draft.use(at, a)
            at = b
        words = " ".join(outside[match.start : match.end].split())
        return FoodName(match.start, match.end, match.food, words)
    return None


def _over_a_dash(draft: LineDraft, text: str) -> FoodName | None:
    """ "Ginger – garlic paste": one name, written with spaces around its hyphen."""
    for dash in _DASHED.finditer(text):
        joined = text[: dash.start()] + " " * len(dash[0]) + text[dash.end() :]
        named = (_match(draft, joined, start, end) for start, end in parts_of(joined))
        match = next((one for one in named if one is not None), None)
        if match is not None and match.start < dash.start() and dash.end() < match.end:
            return _taken(draft, match)
    return None


def _match(draft: LineDraft, text: str, start: int, end: int) -> NameMatch | None:
    """The food a segment names. Where the name that is found stands behind a preposition ("chickpeas in
    water"), the words before it are asked first."""
    whole = _named_at(draft, text, start, end)
    for found in PREPOSITION.finditer(text, start, end):
        if whole is not None and whole.start < found.start():
            break
        head = _named_at(draft, text, start, found.start())
        if head is not None:
            return head
    return whole


def _named_at(draft: LineDraft, text: str, start: int, end: int) -> NameMatch | None:
    """The food that ``text[start:end]`` names, else the one it names without the closed words of preparation, state and
    size that it begins with."""
    part = text[start:end]
    found = draft.foods.match(part)
    at = 0
    words = draft.measures.preparations.find(part, _BEFORE_A_NAME) if found is None else ()
    for word in words:
        if part[at : word.start].strip(" \t-") or not part[word.end :].strip():
            return None
        at = word.end
        found = draft.foods.match(part[at:])
        if found is not None:
            break
    return NameMatch(start + at + found.start, start + at + found.end, found.food) if found is not None else None


_TWO_FLAVOURS = re.compile(  # "peach and mango yoghurt", "pork and apple sausages": what is made of both
    r"(?i)[ \t]+(?:and|&)[ \t]+(?P<made>[^\W\d_]+[ \t]+(?:(?:soft|cream|pasta|curry)[ \t]+)?(?:yogh?urts?|fromage frais"
    r"|cheese|crisps|chips|sausages?|soups?|stews?|pies?|past(?:a|ies|y)|tortellini|ravioli|gnocchi|hummus|dips?|dressing"
    r"|sauces?|pastes?|pesto|chutney|relish|stuffing|burgers?|nuggets?|cookies|biscuits?|crackers|oatcakes|muffins?"
    r"|bars?|bites|bread|buns?|scones?|cakes?|puffs|granola|muesli|porridge|cereal|pouch(?:es)?|squash|juice|drink|tea"
    r"|smoothies?|loll(?:y|ies)|ice cream|sorbet|jam|spread))(?![^\W\d_])"
)


def _of_two_flavours(draft: LineDraft, text: str, start: int, end: int) -> int | None:
    """Where a name ends that goes on with a second flavour of one thing, which no table knows by itself."""
    found = _TWO_FLAVOURS.match(text, start, end)
    alone = draft.foods.match(found["made"]) if found is not None else None
    whole = alone is not None and found is not None and (alone.start, alone.end) == (0, len(found["made"]))
    return found.end() if found is not None and not whole else None


def _tail(draft: LineDraft, match: NameMatch, end: int) -> int | None:
    """Where unknown words right after the name end ("rice flurbs"): they make it another food. None: all known."""
    text = draft.open_text()
    stop = PREPOSITION.search(text, match.end, end)
    left = _left_over(draft, text, match.end, stop.start() if stop else end)
    return left[1] if left is not None and left[0] == skip_spaces(text, match.end) else None


def skip_spaces(text: str, at: int) -> int:
    """Where the next word stands."""
    while at < len(text) and text[at] in " \t":
        at += 1
    return at


def _left_over(draft: LineDraft, text: str, start: int, end: int) -> tuple[int, int] | None:
    """First and last offset of the words in ``text[start:end]`` that no closed list knows; None when all are known."""
    known = bytearray(end - start)
    part = text[start:end]
    words = [(word.start, word.end) for word in draft.measures.preparations.find(part)]
    for a, b in (*words, *((cut.start, cut.end) for cut in draft.measures.cuts.find(part))):
        known[a:b] = b"\1" * (b - a)
    left = [(a, b) for a, b, word in tokens_of(part) if not known[a] and draft.measures.unit(word) is None]
    return (start + left[0][0], start + left[-1][1]) if left else None


def _named_record(draft: LineDraft, record: re.Match[str]) -> FoodName:
    named = draft.foods.match(record[0]) or draft.foods.get(record[0])
    food = named.food if isinstance(named, NameMatch) else named.id if named is not None else None
    if food is None:
        message = f"There is no record {record[0]} in the food table."
        draft.find("unknown-food", *record.span(), message, "Check the number, or write the food's name.")
    draft.use(record.start(), record.end())
    return FoodName(record.start(), record.end(), food)


def _pressed(draft: LineDraft, text: str) -> FoodName | None:
    """ "Juice of 1 lemon": lemon juice where the table has it, else the lemon itself."""
    lead = OF_ONE.match(draft.text, first_word(draft))
    if lead is None:
        return None
    for start, end in parts_of(text):
        fruit = _match(draft, text, max(start, lead.end()), end) if end > lead.end() else None
        if fruit is not None:
            made = _pressed_food(text[fruit.start : fruit.end], lead, draft.foods)
            draft.use(0, lead.end())
            return _taken(draft, NameMatch(fruit.start, fruit.end, made or fruit.food))
    return None


def _of_a_cut(draft: LineDraft, of: re.Match[str], inner: NameMatch) -> FoodName | None:
    """ "Cubes of swede", "slices of orange": a cut, and no word of how many; it is still to be read."""
    if not draft.measures.cuts.find(of["word"]):
        return None
    draft.use(of.end("word"), inner.end)
    return FoodName(inner.start, inner.end, inner.food)


def _misspelt_unit(draft: LineDraft, text: str, start: int, end: int) -> FoodName | None:
    """ "2 tbps coconut oil": a slip of the keyboard in the unit; the food is known, how much of it is not."""
    word = _FIRST_WORD.match(text, start, end)
    if word is None or not any(draft.used[: word.start("word")]) or word["word"].lower() in _SHORT_WORDS:
        return None
    if any(char.isalpha() for char in draft.text[: word.start("word")]):  # the unit has been read: "2 slices stale"
        return None
    inner = _match(draft, text, word.end(), end)
    near = get_close_matches(word["word"].lower(), sorted(draft.measures.words), 1, 0.7)
    if near and (near[0][:1] != word["word"][:1].lower() or abs(len(near[0]) - len(word["word"])) > 2):
        near = []  # "pimento" is no slip for "pint"
    if inner is None or not near or draft.measures.unit(word["word"]) is not None:
        return None
    unit = draft.measures.words[near[0]]
    edit = Edit(draft.place(*word.span("word")), unit)
    return _unknown_unit(draft, word, inner, Remedy(f"Did you mean “{unit}”?", edits=(edit,)))


def _unknown_unit(draft: LineDraft, of: re.Match[str], inner: NameMatch, remedy: Remedy | str = "") -> FoodName:
    """ "3 firkins of parsnips": the food is known, how much of it is not."""
    remedy = remedy or "Write grams, millilitres, spoons, cups or a number of pieces."
    message = f"“{of['word']}” is no measure that is known here, so the amount can't be counted."
    draft.find("unknown-unit", *of.span("word"), message, remedy)
    draft.amount_lost = True
    draft.use(of.start(), of.end())
    return _taken(draft, inner)


def _unknown(draft: LineDraft, start: int, end: int, made_of: str = "") -> FoodName:
    """The finding about a food that nobody knows; ``made_of``: the food whose name is a part of its own."""
    words = draft.text[start:end]
    record = draft.foods.get(made_of) if made_of else None
    near = [*((record.name,) if record is not None else ()), *draft.foods.nearest(words)]
    nearest = [name for name in dict.fromkeys(near) if name.casefold() != words.casefold()][:3]
    message = f"“{words}” is not in the food table, so its allergens and figures are not known."
    remedy = Remedy("Write the food's plain name, or name a record as in usda:11124.")
    if nearest:
        meant = "Did you mean " + " or ".join(f"“{name}”" for name in nearest) + "?"
        remedy = Remedy(meant, edits=(Edit(draft.place(start, end), nearest[0]),))
    draft.find("unknown-food", start, end, message, remedy)
    draft.use(start, end)
    return FoodName(start, end, None)


def part_used(draft: LineDraft, name: FoodName) -> tuple[list[tuple[str, Span]], str | None]:
    """What is used of a fruit ("juice of 1 lemon", "1 lime, zest only"), and the food that is: None where the name
    tells it already, or the table has none."""
    of_one = OF_ONE.match(draft.text, first_word(draft))
    part = of_one or _OF_IT.search(draft.open_text(), name.end)
    if part is None:
        return [], None
    said = [(_part_word(part), draft.place(*part.span("what")))]
    if part["also"]:
        said.append((part["also"].lower(), draft.place(*part.span("also"))))
    if of_one is not None:
        return said, None
    draft.use(*part.span())
    return said, _pressed_food(draft.text[name.start : name.end], part, draft.foods)
