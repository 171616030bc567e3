"""Foods that the recipe itself makes: "whisk the yolk and the oil into a mayonnaise", later "the mayonnaise".

Nobody lists them, and nothing hides in them that is not listed: what they are made of is.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from spoonproof.model.recipe import FoodLine
from spoonproof.reading.instruction import StepReader
from spoonproof.reading.mentions import DEFINITE, Mention
from spoonproof.reading.runs import key_of

_GROUPS = frozenset({"sauce", "prepared", "egg", "baked", "dairy", "cheese", "nut", "seed", "sweet", "grain"})
# What a thing that a recipe makes is made of: "pour the custard over" where eggs are listed.
_OF = {
    "custard": ("egg",), "meringue": ("egg",), "mayonnaise": ("egg",), "pastry": ("flour",), "pesto": ("basil",),
    "hummus": ("chickpea",), "houmous": ("chickpea",), "guacamole": ("avocado",), "porridge": ("oat", "semolina"),
    "gravy": ("flour", "cornflour", "coconut milk", "yoghurt", "yogurt", "curd", "tomato", "passata"),
    "bechamel": ("flour",), "béchamel": ("flour",), "white sauce": ("flour",),
    "tomato sauce": ("tomato",), "salsa": ("tomato",), "caramel": ("sugar",), "dal": ("lentil", "dal"),
    "raita": ("yoghurt",), "tzatziki": ("yoghurt",), "chips": ("potato",), "fries": ("potato",),
    "meatballs": ("mince", "minced", "ground"), "jelly": ("agar", "gelatine", "gelatin"),
    "pap": ("maize", "corn", "cornmeal", "millet", "sorghum"), "ugali": ("maize", "cornmeal"),
}  # fmt: skip
_MADE = re.compile(
    r"(?i)\b(?:(?:whisk|beat|blend|blitz|mash|mix|cook|work|turn|shape|pound|grind|knead|purée|puree|process|simmer"
    r"|reduce|stir|boil|set|thicken|curdle|roll|form|press|pat|mould|mold|stretch|cut"
    r"|slice)\w*\b[^.;]{0,80}?\b(?:in)?to|to make|makes?|making|forms?|becomes?|(?:have|is|are|you've made|that is"
    r"|that's) (?:your|the|a))[ \t]+(?:(?:an?|the|your|(?:about[ \t]+)?(?:[0-9]{1,2}|a dozen|ten|twelve|six"
    r"|eight))[ \t]+)?(?:(?:thick|thin|smooth|quick|loose|plain|simple|runny|stiff|soft|light|creamy|coarse|rough"
    r"|short|long|little|small|flat|neat|fat|chunky)[ \t]+){0,2}$"
)

# What is shaped by hand or spooned out: once a step has shaped something, "the meatballs" are what was shaped; bread
# and pasta only where a step made a dough, so that the bought buns of home-made burgers are not passed over.
_SHAPED = re.compile(
    r"(?i)"
    r"\b(?:meat ?balls?|balls?|patt(?:y|ies)|burgers?|dumplings?|gnocchi|fritters?|nuggets?|falafels?|koftas?|bites?"
    r"|croquettes?|fish ?cakes?|rissoles?)\Z"
)
_BAKED = re.compile(
    r"(?i)"
    r"\b(?:pancakes?|flatbreads?|breads|rotis?|chapatis?|tortillas?|pikelets?|drop scones?|scones?|biscuits?|crackers?"
    r"|cookies?|muffins?|waffles?|cr[eê]pes?|sp[aä]e?tzle|pierogi|ravioli|tortellini|noodles?|pasta|dough|idlis?|dosas?)\Z"
)
_SHAPES = re.compile(
    r"(?i)\b(?:shap|roll|form|mould|mold|pinch|pat|press|flatten)\w*\b[^.;]{0,80}?\b(?:balls?|patt(?:y|ies)|burgers?"
    r"|ropes?|sausages?|rounds?|discs?|cakes?|logs?|walnuts?|pieces|portions|ovals?|cylinders?|fingers?|off|bites"
    r"|nuggets|dumplings?)\b|\b(?:drop|spoon|ladle|fry|cook)\w*\b[^.;]{0,30}?\b(?:spoonfuls?|tablespoons?|teaspoons?"
    r"|ladles?|ladlefuls?|heaps|blobs)\b"
)
_EACH = re.compile(r"(?i)\b(?:each|every)[ \t]{1,9}$")
_OUT_OF_IT = re.compile(r"(?i)\b(?:of|and|some|extra|more|enough)[ \t]{1,9}$")
_DOUGH = re.compile(r"(?i)\b(?:dough|batter)\b")
_ROLLED = re.compile(r"(?i)\b(?:sausages?|burgers?|balls?|fingers?|walnuts?|hazelnuts?)\Z")
_FOR_THEIRS = re.compile(
    r"(?i)\b(?:for|to make|into) (?:the |your |our )?(?:grown[ -]?ups?|adults?|parents?|family)['’]s?[ \t]$"
)
_EXCESS = re.compile(r"(?i)\b(?:excess|surplus)[ \t]$")
_BESIDE = re.compile(r"(?i)(?:\b(?:with|on|in|into|or|some|of|over|and|\d{1,3})|,)[ \t]$")
_OURS = re.compile(
    r"(?i)"
    rf"{DEFINITE.pattern}|\b(?:each|every|an?|one|two|some|of)[ \t]{{1,9}}$|['’]s?[ \t]{{1,9}}(?:[\w-]+[ \t]{{1,9}})?$"
)
_PART_OF = re.compile(r"(?i)\b(?:of|each|every|an?)[ \t]{1,9}$")  # "bits of roti", once rotis were rolled

# What a pan or a bowl gives, and a jar or a carton may hold as well: "the sauce", where soy sauce comes later.
_HEADS = frozenset("sauce paste puree purée dressing dip dough batter mash mix mixture".split())
_MIXED = re.compile(
    r"(?i)[ \t](?:mixture|mix|sauce|dressing|paste|cream|batter|dip|mash|pur[ée]e|filling|topping|dough)\b"
)


_PUTS_IN = re.compile(
    r"\b(?:add|put|pop|toss|throw|scatter|arrange|serve|stir in|fold in|mix in|top with|finish with)\b[^.;:]*$"
)
"""What stands before a food that goes in only there."""


def named_later(lines: Sequence[FoodLine], texts: Iterable[str]) -> set[int]:
    """The lines with a head that a recipe can make itself, that one of ``texts`` names in full ("the soy sauce")."""
    later = " ".join(texts).lower()
    named = {i: line.name.lower() for i, line in enumerate(lines) if key_of(line.name)[-1:] and " " in line.name}
    return {i for i, name in named.items() if key_of(name)[-1] in _HEADS and name in later}


def to_come(lines: Sequence[FoodLine], texts: Iterable[str]) -> set[int]:
    """The lines that one of ``texts`` names by their last word at least."""
    words = set(key_of(" ".join(texts)))
    return {i for i, line in enumerate(lines) if words.intersection(key_of(line.name)[-1:])}


def put_in_later(lines: Sequence[FoodLine], texts: Iterable[str]) -> set[int]:
    """The lines that one of ``texts`` puts in by their name in full ("add the cherry tomatoes"): till then the others
    that share a word with them are meant ("the tomatoes", of a tin)."""
    later = " ".join(texts).lower()
    return {
        i
        for i, line in enumerate(lines)
        if " " in line.name
        and (at := later.find(line.name.lower())) >= 0
        and _PUTS_IN.search(later[max(0, at - 60) : at])
    }


def made_so_far(reader: StepReader, text: str, mentions: Sequence[Mention]) -> list[Mention]:
    """ "The sauce" is what was made so far, where soy sauce is not in yet and a later step names it in full, or it is
    the grown-ups'; "the peanut mixture" is the peanut butter that is in, not the peanuts to come."""
    kept: list[Mention] = []
    for one in mentions:
        words = key_of(text[one.start : one.end])
        definite = DEFINITE.search(text[max(0, one.start - 48) : one.start]) is not None
        if reader.used and one.lines and not set(one.lines) & reader.used and definite and len(words) == 1:
            if words[0] in _HEADS and set(one.lines) <= reader.later | reader.apart:
                continue
            if _MIXED.match(text, one.end):
                within = tuple(i for i in sorted(reader.used) if words[0] in key_of(reader.lines[i].name))
                one = one._replace(lines=within or one.lines, unsure=False)
        kept.append(one)
    return kept


def without_made(reader: StepReader, text: str, mentions: Sequence[Mention]) -> list[Mention]:
    """``mentions`` without the foods of no line that this sentence makes or an earlier one made; ``reader.made``
    grows."""
    shaped, dough = _SHAPES.search(text), _DOUGH.search(text)
    of_hand = [_SHAPED] if shaped or "shaped" in reader.made else []
    of_hand += [_BAKED] if dough or "dough" in reader.made else []
    kept = [one for one in mentions if not one.food or not _is_made(reader, text, one, of_hand)]
    reader.made.update(name for name, found in (("shaped", shaped), ("dough", dough)) if found is not None)
    return kept


def _is_made(reader: StepReader, text: str, one: Mention, of_hand: Sequence[re.Pattern[str]]) -> bool:
    """Whether a food of no line is one that the recipe makes. ``of_hand``: what may be shaped or baked of what was made
    so far."""
    record = reader.tables.foods.get(one.food)
    if record is None:
        return False
    made, listed = reader.made, [line.name for line in reader.lines]
    before, words = text[max(0, one.start - 120) : one.start], text[one.start : one.end].lower()
    definite = DEFINITE.search(before) is not None
    if (_ROLLED.search(words) and _MADE.search(before)) or _EXCESS.search(before):
        return True  # "roll each piece into a short sausage", "blot the excess oil"
    ours = _OURS.search(before) or not _BESIDE.search(before) or _is_dish(words, reader.title)
    if any(said.search(words) for said in of_hand) and (ours or _has_what_it_takes(words, listed)):
        made.add(one.food)  # "pinch off dumplings", later "the baby's dumplings"
        return True
    if _FOR_THEIRS.search(before) or (record.group == "fat" and _rendered(words, listed)):
        return True  # "into the juices for the adults' gravy": what it becomes
    if record.group not in _GROUPS and words not in _OF:
        return False
    if words == "hot sauce" and definite:
        return True  # "with some of the hot sauce": out of the pan
    if _MADE.search(before):
        made.add(one.food)
        return True
    if one.food in made and (definite or _PART_OF.search(before)):
        return True
    taken = _EACH.search(before) or (words == "gravy" and _OUT_OF_IT.search(before))
    if taken and _has_what_it_takes(words, listed):
        return True  # "cut each meatball into quarters", "with plenty of gravy"
    if not definite:
        return False
    return _is_dish(words, reader.title) or any(_has_what_it_takes(name, listed) for name in (words, record.name))


def _rendered(words: str, listed: Sequence[str]) -> bool:
    """ "Fry it in a little of the duck fat", where duck legs are listed."""
    beast, _, fat = words.rpartition(" ")
    named = re.compile(rf"\b{re.escape(beast)}\b", re.I)
    return fat in ("fat", "dripping", "drippings") and any(map(named.search, listed))


def _has_what_it_takes(words: str, listed: Sequence[str]) -> bool:
    name = words.lower()
    needs = _OF.get(name) or _OF.get(f"{name}s", ())
    return any(re.search(rf"\b{need}(?:e?s)?\b", name, re.I) for need in needs for name in listed)


def _is_dish(words: str, title: str) -> bool:
    """Whether the title names it as the dish, not as something that goes with it ("toast with hummus")."""
    head = re.split(r"\b(?:with|on|over|and|in)\b", title, maxsplit=1, flags=re.I)[0]
    return re.search(rf"\b{re.escape(words)}\b", head, re.I) is not None
