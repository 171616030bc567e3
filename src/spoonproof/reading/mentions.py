"""Which foods a sentence of the method speaks of: those of the list by any of their usual names, and others.

"The pear", "parsnips", "the oil" (for rapeseed oil), "the salmon" (for salmon fillet) find their lines; a food that
the table knows and no line has is unlisted, so that salt, honey or an allergen in a step is never unseen.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import zip_longest

from spoonproof.model.food import Food, NameMatch
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import FoodLine
from spoonproof.model.record import NamedTuple, dataclass, field
from spoonproof.reading.hidden import hidden_parts
from spoonproof.reading.kinds import GROUPS, dry_or_wet, of_kind
from spoonproof.reading.no_food import no_food
from spoonproof.reading.runs import WORD, Token, compared, key_of, runs_at

_DESCRIBING = frozenset(
    """
    sweet red green white brown black yellow orange purple whole fresh baby unsalted salted smooth crunchy ground
    plain natural full fat low dried tinned canned frozen cooked raw ripe large small medium big little mini tiny
    free range greek light dark extra virgin hot cold mild strong mature soft hard fine coarse thick thin split flat
    leaf new old wild long short grain skinless boneless smoked toasted rolled quick wholemeal wholewheat self raising
    double single half sun dry unsweetened sweetened reduced no added in of and with the lean boiled roast mixed
    spring baking sea rock table garden french british san flaked desiccated clear runny organic
    """.split()
)
_ANY_OF_A_KIND = frozenset({"fresh", "dried", "ground", "mixed", "frozen", "cooked", "chopped", "soft", "raw"})
# What is made of a food is not called by the food alone: "the chicken" is no chicken stock.
_MADE_OF = frozenset(
    "stock broth oil sauce juice milk butter flour paste powder vinegar extract syrup jam cream bread sugar".split()
)
_POINTING = r"\b(?:the|both|your|all|those|these|remaining|reserved|rest of the|other)"
DEFINITE = re.compile(rf"{_POINTING}(?:[ \t]{{1,9}}[\w-]+)?(?:[ \t]{{1,9}}and)?[ \t]{{1,9}}$", re.I)
_IN_LIST = re.compile(rf"(?i){_POINTING}(?:[ \t]{{1,9}}[\w-]+,?){{0,4}}(?:[ \t]{{1,9}}and)?[ \t]{{1,9}}$")
_IN_A_ROW = re.compile(r"(?i)(?P<word>[^\W\d_]{2,30})(?:,|,? and|,? or)[ \t]{1,9}$")
_WEIGHTY = frozenset({"salt", "salty", "added-salt", "free-sugar"})
_ADJECTIVES = frozenset({"crisp", "dripping"})  # in a method: "until dry and crisp"; the packet is "crisps"
_MADE = ("juice", "paste", "puree", "zest")
_MADE_BY: Mapping[str, tuple[str, ...]] = {
    "puree": ("puréed", "mashed"), "purée": ("puréed", "mashed"), "powder": ("ground",), "flour": ("ground",),
    "paste": ("ground", "puréed", "grated"), "mash": ("mashed", "puréed"), "meal": ("ground",),
}  # fmt: skip
_ALSO_CALLED = {"stock": ("broth",), "broth": ("stock",)}  # a recipe used as a food, by its slug
_MADE_SO = frozenset({"cream", "paste", "puree", "purée", "mash"})
_CUT_NOUN = re.compile(
    r"(?i)\b(?:chips|batons|wedges|matchsticks|spears|florets|ribbons|leaves|steaks?|chops|cutlets)\b"
)
_SALT_AND_PEPPER = re.compile(
    r"(?i)"
    r"\b(?:salt(?:[ \t]{1,9}and|[ \t]{0,9}&|,)[ \t]{1,9})((?:freshly[ \t]{1,9})?(?:ground[ \t]{1,9}|cracked[ \t]{1,9})?"
    r"(?:black[ \t]{1,9}|white[ \t]{1,9})?pepper)\b"
)


class Mention(NamedTuple):
    """``text[start:end]`` speaks of these food lines (indexes), or of the unlisted food ``food``."""

    start: int
    end: int
    lines: tuple[int, ...] = ()
    food: str = ""
    unsure: bool = False  # one of several lines, and the words don't say which


@dataclass(slots=True)
class Names:
    """The words by which a method may call each line; ``records``: what the table knows of each line's food, ``last``:
    the last word of its name, in the singular."""

    lines: Sequence[FoodLine]
    foods: Foods
    records: Sequence[Food | None]
    last: Sequence[str]
    phrases: dict[tuple[str, ...], dict[int, int]] = field(default_factory=dict)
    longest: int = 1
    butters: dict[str, int] = field(default_factory=dict)  # "peanut" of the line "peanut butter"

    @classmethod
    def of(cls, lines: Sequence[FoodLine], foods: Foods) -> Names:
        """Collect the names of all lines: the whole name first, then its last words, then its first."""
        records = [foods.get(line.food) if line.food else None for line in lines]
        names = cls(lines, foods, records, ["".join(key_of(line.name)[-1:]) for line in lines])
        for index, line in enumerate(lines):
            names._add_line(index, line)
            names._add_parts(index, line)
        names.longest = max(map(len, names.phrases), default=1)
        return names

    def _add_line(self, index: int, line: FoodLine) -> None:
        """The names of the line and of its food, whole and in parts."""
        recipe = key_of((line.recipe or "").replace("-", " "))
        for whole in (key_of(line.alias), key_of(line.name), recipe):
            self._add(whole, index, 0)
        for word in recipe:
            for name in (word, *_ALSO_CALLED.get(word, ())):
                self._add((name,), index, 1 if name in _MADE_OF else 2)
        record = self.records[index]
        if record is not None:
            self._add(key_of(record.name), index, 0)
            parent = self.foods.get(record.parent) if record.parent else None
            for name in (*record.names, *((parent.name, *parent.names) if parent is not None else ())):
                self._add(key_of(name), index, 1)
        for words in self._own(index, line):
            for cut in range(1, len(words)):
                if not set(words[cut:]) <= _DESCRIBING:
                    self._add(words[cut:], index, 1)
            ground = (
                self._group(index) == "spice"
            )  # "the chilli" of the line "chilli powder"; no apple of "apple juice"
            for word in words if words and (ground or words[-1] not in _MADE_OF) else ():
                if word not in _DESCRIBING and len(word) > 2 and not self._foreign(word, index):
                    self._add((word,), index, 2)

    def _own(self, index: int, line: FoodLine) -> list[tuple[str, ...]]:
        """The words of the line's name, and of its food's."""
        record = self.records[index]
        return [key_of(line.name), *([key_of(record.name)] if record is not None else [])]

    def _add_parts(self, index: int, line: FoodLine) -> None:
        """What a method calls by what it is made into, is a part of, or is used as."""
        record, own, words = self.records[index], self._own(index, line), key_of(line.text)
        if record is not None and "chilli" in record.id:
            self._add(("pepper",), index, 2)  # West African cooks call a scotch bonnet "the pepper"
        if record is not None and record.group == "baked" and (line.has("toasted") or "bread" in record.id):
            self._add(("toast",), index, 1)
        for name in own:
            called = " ".join(name[-2:-1])
            if name[-1:] == ("sauce",) and called not in GROUPS and not self.foods.match(called):
                self._add(name[-2:-1], index, 2)  # "the soy", where there is no such food
            if len(name) > 1 and name[-1] == "butter":
                self.butters.setdefault(name[-2], index)
                if record is not None and record.group == "nut":
                    self._add(("nut", "butter"), index, 1)
        for word in _CUT_NOUN.findall(line.text):  # "bake the chips", where the list has potatoes in chips
            self._add(key_of(word), index, 2)
        if {"sprouted", "sprout"} & {*words}:
            self._add(("sprout",), index, 1)
        if "mashed" in line.text.lower():
            self._add(("mash",), index, 1)  # "beat with the mash", where the list has mashed potato
        if "crumb" in words or any("breadcrumb" in name or name[-2:] == ("bread", "crumb") for name in own):
            self._add(("crumb",), index, 1)
        if record is not None and {"bone", "carcass"} & set(key_of(record.name)):
            self._add(("bone",), index, 1)
        if self._group(index) == "egg" and line.food not in ("egg-yolk", "egg-white"):
            for part in ("yolk", "white"):
                self._add(("egg", part), index, 1)
                self._add((part,), index, 2)
        for part in ("juice", "zest"):  # of a lemon that is listed; of other fruit only when the line says so
            if line.has(part) or (line.food in ("lemon", "lime") and not line.has("juice", "zest")):
                self._add((*key_of(line.name), part), index, 0)
                self._add((part,), index, 2)

    def _foreign(self, word: str, index: int) -> bool:
        """Whether one word of a name is itself a food of another kind ("salt" of a low-salt stock cube)."""
        line, group = self.lines[index], self._group(index)
        match = self.foods.match(word)
        record = self.foods.get(match.food) if match is not None else None
        if record is None or self._related(record.id, line.food) or record.group == group:
            return False
        if line.food is None and line.recipe is None:  # "the reblochon" of a cheese that no table knows by all its name
            return word not in key_of(line.name)[:1] and bool(record.traits & _WEIGHTY)
        if group == "spice" and self._allergens(index) >= record.allergens > frozenset():
            return False  # "crackle the mustard": its seeds
        return bool(record.allergens or record.traits & _WEIGHTY) or record.group not in ("herb", "spice", "vegetable")

    def _add(self, words: tuple[str, ...], index: int, rank: int) -> None:
        if words:
            ranks = self.phrases.setdefault(words, {})
            ranks[index] = min(rank, ranks.get(index, rank))

    def find(self, text: str, ends: Sequence[int] = ()) -> list[Mention]:
        """All foods that ``text`` speaks of, left to right, without what it forbids or only likens to.

        ``ends``: offsets where an instruction starts; a "do not" reaches no further than the next one.
        """
        hidden = hidden_parts(text, ends)
        tokens = [(m.start(), m.end(), compared(m[0])) for m in WORD.finditer(text)]
        known = {match.start: match for match in self.foods.find(text)}
        pepper = {m.start(1): m.end(1) for m in _SALT_AND_PEPPER.finditer(text)}
        found: list[Mention] = []
        at = 0
        while at < len(tokens):
            start = tokens[at][0]
            if start in pepper and (pepper_id := self._pepper()):
                one: Mention | None = self._resolve(start, pepper[start], pepper_id)
            else:
                one = self._at(text, tokens, at, known)
            if one is None:
                at += 1
                continue
            if not _unsaid(text, found, one) and not any(a <= one.start < b for a, b in hidden):
                found.append(self._meant(text, one))
            while at < len(tokens) and tokens[at][0] < one.end:
                at += 1
        found = [one for one, after in zip_longest(found, found[1:]) if not self._glossed(text, one, after)]
        found += [Mention(*one) for one in dry_or_wet(text, self.lines, self.records)]
        return sorted(found, key=lambda one: one.start)

    def _glossed(self, text: str, one: Mention, after: Mention | None) -> bool:
        """ "The pork (guanciale or pancetta)": a kind, of which the bracket says which line it is."""
        if not one.food or after is None or not after.lines or text[one.end : after.start].strip(" \t") != "(":
            return False
        record, told = self.foods.get(one.food), self.records[after.lines[0]]
        return (
            record is not None
            and told is not None
            and record.allergens <= told.allergens
            and not record.traits & _WEIGHTY
        )

    def _at(self, text: str, tokens: Sequence[Token], at: int, known: Mapping[int, NameMatch]) -> Mention | None:
        start = tokens[at][0]
        match = known.get(start)
        food, match_end = (match.food, match.end) if match is not None else ("", 0)
        for run in runs_at(text, tokens, at, self.longest, " \t\r\n-‑"):
            ranks = self.phrases.get(tuple(token[2] for token in run))
            if ranks is None:
                continue
            end = run[-1][1]
            if match_end > end:
                break
            best = min(ranks.values())
            lines = tuple(sorted(i for i, rank in ranks.items() if rank == best))
            own = tuple(token[2] for token in run)
            if best > 0 and food and not self._plainly(own, lines) and self._another(text, start, food, lines):
                break
            exact = tuple(i for i in lines if key_of(self.lines[i].name) == own)
            last = text[run[-1][0] : end]
            plural = compared(last) != last.lower()
            # "The lentils": the red ones and the green ones; "the onions": one onion, and a red one.
            all_of_them = plural and not any(self.lines[i].name.lower().endswith(last.lower()) for i in exact)
            if all_of_them and len(own) == 1:
                lines = tuple(sorted({*lines, *(i for i in ranks if self.last[i] == own[0])}))
            elif exact:
                lines = exact  # "the water", beside hot water
            if len(lines) > 1 and match is not None:
                lines = self._nearer(food, lines)
            return Mention(start, end, lines, unsure=len(lines) > 1 and not all_of_them)
        butter = self.butters.get(text[start:match_end].lower())
        if butter is not None and DEFINITE.search(text[max(0, start - 48) : start]):
            return Mention(start, match_end, (butter,))  # "swirl the peanut through", not "the peanuts"
        if match is not None and tokens[at][2] not in _ADJECTIVES:
            return self._resolve(start, match_end, food, key_of(text[start:match_end]))
        word = tokens[at][2]
        if GROUPS.get(word) or (word in GROUPS and _IN_LIST.search(text[max(0, start - 72) : start])):
            lines = of_kind(word, self.records, self.last)
            return Mention(start, tokens[at][1], lines) if lines else None
        return None

    def _nearer(self, food: str, lines: tuple[int, ...]) -> tuple[int, ...]:
        """Among lines that share a word, the one the table means by it, unless the others are of its kind: "butter"
        is not the peanut butter, but "oil" may be either oil."""
        near = tuple(i for i in lines if self._related(food, self.lines[i].food))
        kinds = {self._group(i) for i in near}
        others = {self._group(i) for i in lines if i not in near}
        return near if near and not kinds & others else lines

    def _another(self, text: str, start: int, food: str, lines: tuple[int, ...]) -> bool:
        """Whether "butter" or "a knob of butter" is another food than the line "peanut butter" that shares the word;
        "the butter" is not."""
        if any(self._related(food, self.lines[i].food) for i in lines):
            return False
        record = self.foods.get(food)
        groups = {self._group(i) for i in lines}
        if record is not None and record.group in groups:
            return False
        before = text[max(0, start - 72) : start]
        if record is not None and self._beside_its_kind(before, record, lines):
            return False
        if record is not None and record.group == "spice" and not record.allergens and not record.traits & _WEIGHTY:
            return _IN_LIST.search(before) is None  # "the beans, pepper and water": the pepper of the list
        return DEFINITE.search(before[-48:]) is None

    def _plainly(self, words: tuple[str, ...], lines: tuple[int, ...]) -> bool:
        """Whether only a describing word stands before them on the line: "mustard" of the line "dry mustard"."""
        own = ((word for word in key_of(self.lines[i].name) if word not in _DESCRIBING) for i in lines)
        return words in map(tuple, own)

    def _beside_its_kind(self, before: str, food: Food, lines: tuple[int, ...]) -> bool:
        """ "Blitz tomatoes, pepper and onion", "put oats and milk": said in a row with another line, without articles,
        it is the line, where nothing of the other food (an allergen, salt) would go unseen."""
        row = _IN_A_ROW.search(before)
        if row is None or food.traits & _WEIGHTY:
            return False
        beside = self.phrases.get((compared(row["word"]),), {})
        groups = {"vegetable", "fruit", "grain", "pulse"}
        if not any(self._group(i) in groups for i in beside):
            return False
        return all(self._group(i) and food.allergens <= self._allergens(i) for i in lines)

    def _resolve(self, start: int, end: int, food: str, words: tuple[str, ...] = ()) -> Mention:
        lines = tuple(i for i, line in enumerate(self.lines) if line.food == food)
        lines = lines or tuple(i for i, line in enumerate(self.lines) if self._related(food, line.food))
        lines = lines or tuple(
            i for i, line in enumerate(self.lines) if any(self._related(food, one.food) for one in line.choices)
        )
        if not lines:  # "horseradish and lemon" where the list has lemon juice
            lines = tuple(i for i, line in enumerate(self.lines) if line.food in {f"{food}-{made}" for made in _MADE})
        if not lines and words == ("sugar",):  # "stir in the sugar", where the list has gula melaka
            lines = tuple(i for i, record in enumerate(self.records) if record and _is_sugar(record))
        if not lines and words[-1:] == ("whole",):  # "add the chicken whole" is no other bird
            lines = tuple(self.phrases.get(words[:-1], ()))
        if not lines and words[-1:] and words[-1] in _MADE_BY:  # "almond powder" of almonds that the line has ground
            lines = self._made_so(words)
        if not lines and len(words) > 1:  # "the jelly cubes" of the line "raspberry jelly cubes"
            lines = tuple(i for i, line in enumerate(self.lines) if set(words) <= set(key_of(line.text)))
        if not lines and words and words[-1] in GROUPS and set(words[:-1]) <= _ANY_OF_A_KIND:
            lines = of_kind(words[-1], self.records, self.last)  # "the cheese", "the berries", "the fresh herbs"
            return Mention(start, end, lines) if lines else Mention(start, end, (), food)
        return Mention(start, end, lines[:1]) if lines else Mention(start, end, (), food)

    def _made_so(self, words: tuple[str, ...]) -> tuple[int, ...]:
        """The line that the words before the last name, where its own words say that it was made so."""
        done = _MADE_BY[words[-1]]
        named = self.phrases.get(words[:-1], {})
        return tuple(
            i for i in named if self.lines[i].has(*done) or {cut.shape for cut in self.lines[i].cuts} & set(done)
        )

    def _meant(self, text: str, mention: Mention) -> Mention:
        """ "The parsnips" where the list has "parsnpis": the line's misspelling is told once, at the line."""
        if not mention.food:
            return mention
        words = text[mention.start : mention.end].lower()
        for index, line in enumerate(self.lines):
            unknown = line.food is None and line.recipe is None and bool(line.name)
            same_end = key_of(line.name)[-1:] == key_of(words)[-1:]  # "the salt" where the list has "smoked river salt"
            if unknown and (same_end or _alike(words, line.name.lower())):
                return mention._replace(lines=(index,), food="")
        return mention

    def _related(self, one: str, two: str | None) -> bool:
        if two is None or not one:
            return False
        a, b = self.foods.get(one), self.foods.get(two)
        if a is None or b is None:
            return one == two
        return (a.parent or a.id) == (b.parent or b.id)

    def _allergens(self, index: int) -> frozenset[str]:
        record = self.records[index]
        return record.allergens if record is not None else frozenset()

    def _group(self, index: int) -> str:
        record = self.records[index]
        return record.group if record is not None else ""

    def _pepper(self) -> str:
        match = self.foods.match("black pepper")
        return match.food if match is not None else ""


def _is_sugar(record: Food) -> bool:
    return any(key_of(name)[-1:] == ("sugar",) for name in (record.name, *record.names))


def _unsaid(text: str, found: Sequence[Mention], one: Mention) -> bool:
    """Whether the words at ``one`` name no food after all."""
    return no_food(text, one.start, one.end, listed=not one.food) or _made_of_it(text, found, one)


def _made_of_it(text: str, found: Sequence[Mention], one: Mention) -> bool:
    """ "The cashew *cream*": made of the cashews of the list, no other food."""
    if not found or one.lines or text[one.start : one.end].lower() not in _MADE_SO:
        return False
    of = found[-1]
    beside = bool(of.lines) and not text[of.end : one.start].strip(" \t-")
    return beside and DEFINITE.search(text[max(0, of.start - 48) : of.start]) is not None


def _alike(one: str, other: str) -> bool:
    from difflib import SequenceMatcher

    return SequenceMatcher(None, one, other, autojunk=False).ratio() >= 0.75
