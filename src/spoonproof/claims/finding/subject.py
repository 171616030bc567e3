"""What a claim is about: the food, nutrient or dish among the words around its trigger."""

from __future__ import annotations

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.scan import Tagged
from spoonproof.model.claim import Kind
from spoonproof.model.record import dataclass, replace

_FOOD = frozenset({"food", "dish"})
_NUTRIENT = frozenset({"nutrient", "ambiguous-nutrient", "contaminant", "additive"})
_NAMED = _FOOD | _NUTRIENT
_HELD = _NUTRIENT | {"nutrient-weak"}
_EATEN = _FOOD | {"ambiguous-nutrient", "hazard-food", "hazard-food-weak"}
_GENERIC = frozenset({"generic-food"})
_NOUNS = _NAMED | _GENERIC
_IN_NAME = frozenset({"process", "food"})  # "sprouted *wheat flour*"
_TAKING = frozenset({"give", "avoid", "from", "than", "high", "contain"})  # what follows is their object
_HOUSEHOLD = frozenset({"household"})
_VERBS = frozenset(
    {"copula", "contain", "have", "benefit", "harm", "need", "goodfor", "high", "hedge", "negation", "make", "keep"}
)
_PRONOUNS = frozenset({"it", "they", "them", "this", "these", "both", "both of them", "the two", "all of them", "its",
                       "their", "he", "she"})  # fmt: skip
_PERSONAL = frozenset({"it", "they", "he", "she"})
_OURS = frozenset({"this", "these", "my", "our", "that", "those"})
_JOIN = frozenset({"and", "or", "&", "plus", "along", "with", "including", "like", "in", "into", "to"})
_MEASURING = frozenset({"household", "number", "unit", "amount"})  # "ghee and *a few cloves* of garlic"
_ARTICLES = frozenset({"a", "an", "the", "some", "your", "other", "even", "any", "such", "as"})
_BEFORE_OBJECT = frozenset("with of in to for than from like as into by on without unlike your our other any".split())
_RELATIVES = frozenset({"which", "that", "who"})
_DISH_KINDS = ("nutrient-content", "general-benefit", "allergen", "process")
_REACH = 18


@dataclass(frozen=True, slots=True)
class Subject:
    """``range`` of items, their texts, the foods' ids, and how it was settled in words."""

    range: tuple[int, int] | None
    texts: tuple[str, ...]
    foods: tuple[str, ...]
    of_dish: bool
    pronoun: bool
    why: str


def subject_of(tagged: Tagged, match: Match) -> Subject:
    """The subject of a match; ``pronoun`` is set where the sentence does not name one."""
    found = _subject_of(tagged, match)
    if found.pronoun or found.range is None:
        return found
    if (holder := _holder(tagged, found.range[0])) is not None:
        found = _both(_named(tagged, holder, range(*found.range)), found)
    if not found.foods and (listed := _listed(tagged, match.end)) is not None:
        found = _both(found, listed)
    if match.rule.kind not in ("function", "disease"):
        return found
    # "the nitrates in beetroot help ...", "beans are rich in fibre, which ...": both are what it is about.
    end = min(match.trigger[0], (match.object or match.trigger)[0])
    begin = max(_begin(tagged, end), end - 12)
    more = [
        noun(tagged, i, _HELD)
        for i in tagged.find(_HELD, begin, end)
        if not (match.object and match.object[0] <= i < match.object[1])
    ]
    texts = tuple(dict.fromkeys((*found.texts, *more[-4:])))
    return replace(found, texts=texts, why="“" + "”, “".join(texts) + "”") if texts != found.texts else found


def _holder(tagged: Tagged, at: int) -> int | None:
    """What holds or is the thing at ``at``: "*mangoes* contain polyphenols that ...", "*ghee* is a food that ..."."""
    verbs = [i for i in tagged.find(_PREDICATING, at - _PREDICATE_REACH, at) if not _crossed(tagged, i, at)]
    if not verbs:
        return None
    before = [i for i in tagged.find(_FOOD, _begin(tagged, verbs[-1]), verbs[-1]) if not _measures(tagged, i)]
    pronoun = _pronoun(tagged, _begin(tagged, verbs[-1]), verbs[-1])
    if not before or (pronoun is not None and pronoun > before[-1]):
        return None
    return _best(tagged, before, verbs[-1])


def _listed(tagged: Tagged, end: int) -> Subject | None:
    """The foods a general word is spelled out with after a claim: "herbs that ... include *sage and mint*"."""
    for at in tagged.find(_FOOD, end, end + 10):
        before = at - 1 - (tagged.items[at - 1].words in _ARTICLES)
        if tagged.symbols[before] == ":" or tagged.is_any(before, _SPELLING_OUT):
            return _named(tagged, at, range(0))
    return None


def _crossed(tagged: Tagged, verb: int, at: int) -> bool:
    """Whether another noun or the end of a clause stands between a verb and ``at``."""
    between = tagged.symbols[verb + 1 : at]
    return any(mark in between for mark in ".?,:") or bool(tagged.find(_NAMED, verb + 1, at))


def _both(holder: Subject, held: Subject) -> Subject:
    """A food and what it holds or is called: both are what the claim is about."""
    texts = tuple(dict.fromkeys((*holder.texts, *held.texts)))
    foods = tuple(dict.fromkeys((*holder.foods, *held.foods)))
    return Subject(holder.range, texts, foods, holder.of_dish, False, "“" + "”, “".join(texts) + "”")


def _subject_of(tagged: Tagged, match: Match) -> Subject:
    kind = match.rule.kind
    taken = range(*match.object) if match.object else range(0)
    if kind in ("safety-age", "process", "allergen") and match.rule.name != "free-from":
        taken = range(0)
    wanted = _EATEN if kind in ("safety-age", "quantity") else _FOOD if kind in _DISH_KINDS else _NAMED
    at = match.trigger[0] if match.object is None else min(match.trigger[0], match.object[0])
    if (usual := _usual(tagged, match)) is not None:
        return usual
    if kind == "process" and match.subject is not None:
        return _process(tagged, match)
    if kind == "safety-age":
        found = [i for i in tagged.find(wanted, match.start, match.end) if i not in taken]
        if found:
            return _named(tagged, found[0], taken)
    begin = _begin(tagged, at)
    before = [
        i
        for i in tagged.find(wanted | _GENERIC, begin, at)
        if i not in taken and not _measures(tagged, i) and not _says_how(tagged, i, kind)
    ]
    pronoun = _pronoun(tagged, begin, at)
    best = _best(tagged, before, at)
    if pronoun is not None and (beside := _beside(tagged, before, pronoun)) is not None:
        best, pronoun = beside, None  # "try goat's milk: it is ..."
    if best is not None and pronoun is not None:
        # "It is a grain that ..." is about "it"; "oats, they are ..." is about oats.
        further = pronoun > best and not _is_subject(tagged, best)
        if further or (pronoun < best and _rank(tagged, best) <= -2):
            best = None
    if best is not None:
        return _named(tagged, best, taken)
    if pronoun is None:
        later = [i for i in tagged.find(wanted, at, match.end + _REACH) if i not in taken]
        later = [i for i in later if not _says_how(tagged, i, kind)] or later
        if later:
            return _named(tagged, later[0], taken)
        if kind == "quantity" and match.object is not None and _stands_alone(tagged):
            return _named(tagged, match.object[0], range(0))
    elsewhere = [i for i in tagged.find(wanted, 0, at) if i not in taken and not _says_how(tagged, i, kind)]
    if elsewhere:
        return _named(tagged, max(elsewhere, key=lambda i: (_rank(tagged, i), -i)), taken)
    if before:
        return _named(tagged, before[-1], taken)
    if pronoun is None and wanted is _FOOD and (other := [i for i in tagged.find(_NAMED) if i not in taken]):
        return _named(tagged, other[0], taken)
    said = tagged.words(pronoun, pronoun + 1) if pronoun is not None else ""
    if pronoun is not None and said.lower() in ("this", "these") and tagged.find(_HOUSEHOLD, pronoun - 2, pronoun):
        return Subject((pronoun, pronoun + 1), (said,), (), True, False, f"“{said}”, the dish itself")
    return Subject(None, (), (), False, True, f"“{said}”, named before" if said else "what was named before")


def _beside(tagged: Tagged, candidates: list[int], pronoun: int) -> int | None:
    """The food right before a pronoun, with no more than a mark or a joining word between."""
    between = pronoun - 1
    if between >= 0 and (tagged.symbols[between] in ",:" or tagged.items[between].words in _THEN):
        between -= 1
    return between if between in candidates and not tagged.is_any(between, _GENERIC) else None


def _measures(tagged: Tagged, at: int) -> bool:
    """A spoonful is no food: "one spoonful of this"."""
    return tagged.has(at, "household") and not tagged.has(at, "food")


def _says_how(tagged: Tagged, at: int, kind: Kind) -> bool:
    """Whether a noun only says how another thing is: "*iron*-rich lentils", "no *syrup*, no sugar"."""
    none_of = kind == "nutrient-content" and tagged.is_any(_widen(tagged, at) - 1, _NONE_OF)
    return none_of or tagged.is_any(at + 1, _SUFFIXES)


def _usual(tagged: Tagged, match: Match) -> Subject | None:
    """Readiness is about solid food and reactions about allergenic food, even where nobody says so."""
    effect = match.rule.effect
    if effect == "readiness-signs" or match.rule.name == "wait-until":
        named = tagged.find(frozenset({"solids"})) or tagged.find(_FOOD)
        return None if named else Subject(None, ("solid food",), (), False, False, "solid food, as usual")
    if match.rule.kind == "allergen" and (reacted := _reacted_to(tagged, match)) is not None:
        return reacted
    if effect == "allergen-introduction":
        named = tagged.find(frozenset({"allergen-food"}))
        if named:
            return _named(tagged, named[0], range(0))
        return Subject(None, ("allergenic food", "allergen"), (), False, False, "allergenic food, as usual")
    return None


def _reacted_to(tagged: Tagged, match: Match) -> Subject | None:
    """What an allergy is to: "allergic to *cow's milk*", "a *peanut* allergy"."""
    start, end = match.object or match.trigger
    if tagged.items[end - 1].words.endswith(" to") or tagged.items[min(end, len(tagged.items) - 1)].words == "to":
        foods = tagged.find(_FOOD, end, end + 4)
        return _named(tagged, foods[0], range(0)) if foods else None
    own = next((i for i in range(start, end) if tagged.has(i, "food-allergy")), None)
    if own is None or tagged.find(_FOOD, 0, own):
        return None
    said = tagged.items[own].words.rpartition(" ")[0]
    return Subject((own, own + 1), (said,), (), False, False, f"“{said}”") if said else None


def _process(tagged: Tagged, match: Match) -> Subject:
    """The foods of the sentence and the process itself: "steaming broccoli"."""
    assert match.subject is not None
    foods = [i for i in tagged.find(_FOOD) if not (match.object and match.object[0] <= i < match.object[1])]
    before = [i for i in foods if i < match.end]
    done = tagged.words(*match.subject)
    chosen = before[:1] or foods[:1]
    if not chosen:
        return Subject(match.subject, (done,), (), False, False, f"“{done}”")
    named = _named(tagged, chosen[0], range(0))
    texts = tuple(dict.fromkeys((*named.texts, done)))
    return Subject(named.range, texts, named.foods, named.of_dish, False, "“" + "”, “".join(texts) + "”")


def _stands_alone(tagged: Tagged) -> bool:
    """Whether a number is said of the nutrient itself: "babies need at most 1 g of salt a day"."""
    return bool(tagged.find(frozenset({"audience-baby", "copula", "need"})))


def _begin(tagged: Tagged, at: int) -> int:
    for index in range(at - 1, max(-1, at - _REACH), -1):
        if tagged.symbols[index] in ".?":
            return index + 1
    return max(0, at - _REACH)


def _best(tagged: Tagged, candidates: list[int], at: int) -> int | None:
    """The likeliest subject: the noun before "which", else the one a verb follows, else the nearest."""
    if not candidates:
        return None
    nearest = candidates[-1]
    after = nearest + 1 + (tagged.symbols[nearest + 1 : nearest + 2] == ",")
    relative = after < len(tagged.items) and tagged.items[after].words in _RELATIVES
    if (relative or after >= at) and not _is_predicate(tagged, nearest, frozenset({"copula"})):
        return nearest
    return max(candidates, key=lambda i: (_rank(tagged, i), i))


def _rank(tagged: Tagged, at: int) -> int:
    rank = 0
    if _is_subject(tagged, at):
        rank += 3
    if _is_object(tagged, at):
        rank -= 2
    if _is_predicate(tagged, at):
        rank -= 2
    inside = tagged.symbols[max(0, at - 14) : at]
    if inside.rfind("(") > inside.rfind(")"):
        rank -= 2
    if _is_aside(tagged, at):
        rank -= 4
    if tagged.has(at, "generic-food") and not tagged.has(at, "food"):
        rank -= 3
    return rank


def _is_subject(tagged: Tagged, at: int) -> bool:
    """A verb follows at once or after an adverb, or after the rest of its list."""
    for index in range(at + 1, min(at + 4, len(tagged.items))):
        if tagged.is_any(index, _VERBS):
            return True
        if tagged.symbols[index] not in "_" and not tagged.is_any(index, _NOUNS):
            return False
    return False


def _is_object(tagged: Tagged, at: int) -> bool:
    first = at
    while (left := _previous(tagged, first, _NAMED)) is not None:
        first = left
    return any(
        tagged.items[begin - 1].words in _BEFORE_OBJECT or bool(tagged.is_any(begin - 1, _TAKING))
        for begin in (_widen(tagged, at), _widen(tagged, first))
        if begin > 0
    )


_ASIDE = frozenset({"although", "though", "while", "another", "a", "an", "also", "or"})


def _is_aside(tagged: Tagged, at: int) -> bool:
    """What a food is called in passing: "ragi, although a tiny millet, is", "amla, a fruit, has"."""
    for index in range(at - 1, max(-1, at - 5), -1):
        if tagged.symbols[index] == ",":
            return index > 0 and tagged.items[index + 1].words in _ASIDE and "," in tagged.symbols[at + 1 : at + 8]
    return False


_GIVES = frozenset({"copula", "contain"})
_PREDICATING = frozenset({"copula", "contain", "has"})
_SUFFIXES = frozenset({"suffix-high", "suffix-free"})
_NONE_OF = frozenset({"free"})
_THEN = frozenset("and as because but if since so when".split())
_SPELLING_OUT = frozenset({"include", "contain", "copula"})
_PREDICATE_REACH = 6  # items between "is" and the noun it makes of its subject


def _is_predicate(tagged: Tagged, at: int, verbs: frozenset[str] = _GIVES) -> bool:
    """What a food is or has: "is a *grain*", "contains *pectin*"."""
    return bool(tagged.find(verbs, at - 4, at)) and "," not in tagged.symbols[at - 3 : at]


def _pronoun(tagged: Tagged, begin: int, at: int) -> int | None:
    """The last pronoun before ``at`` that stands for a noun (not "this purée")."""
    found = [
        i
        for i in range(begin, at)
        if tagged.items[i].words in _PRONOUNS
        # "this purée" names its noun; "it is packed with protein" does not
        and (tagged.items[i].words in _PERSONAL or not tagged.find(_NOUNS, i + 1, i + 3))
        and not _stands_for_nothing(tagged, i)
    ]
    return found[-1] if found else None


def _stands_for_nothing(tagged: Tagged, at: int) -> bool:
    """ "It is safe for babies to have cinnamon": what is safe comes after "to"."""
    words = [item.words for item in tagged.items[at : at + 8]]
    if words[0] != "it" or words[1:2] not in (["is"], ["was"], ["'s"]):
        return False
    return "to" in words[2:] and "," not in words


def _named(tagged: Tagged, at: int, taken: range) -> Subject:
    """The noun phrase around a named item, with its list to the left and right."""
    kinds = next((k for k in (_EATEN, _NUTRIENT, _GENERIC) if tagged.is_any(at, k)), _NAMED)
    first = last = at
    while (left := _previous(tagged, first, kinds)) is not None and left not in taken:
        first = left
    while (right := _next(tagged, last, kinds)) is not None and right not in taken:
        last = right
    begin = _widen(tagged, first)
    texts: list[str] = []
    foods: list[str] = []
    for index in tagged.find(kinds, first, last + 1):
        texts.append(noun(tagged, index, kinds))
        term = tagged.items[index].term
        if term is not None and "food" in term.senses:
            foods.append(term.senses["food"].id)
    named = tuple(dict.fromkeys(texts))
    before = tagged.items[begin - 1].words if begin > 0 else ""
    dishlike = not tagged.is_any(first, _NUTRIENT)
    of_dish = before in _OURS and dishlike and (before in ("this", "my", "our") or not tagged.has(first, "food"))
    why = "“" + "”, “".join(named) + "”" + (", the dish itself" if of_dish else "")
    return Subject((begin, last + 1), named, tuple(dict.fromkeys(foods)), of_dish, False, why)


def noun(tagged: Tagged, at: int, kinds: frozenset[str]) -> str:
    """The words of a noun phrase, its noun as the lexicon writes it: "sprouted broken wheat", "egg"."""
    term = tagged.items[at].term
    base = next((s.base for c, s in term.senses.items() if c in kinds and s.base), "") if term is not None else ""
    begin = _widen(tagged, at)
    said = tagged.words(begin, at + 1).lower()
    before = tagged.words(begin, at).lower()
    # A short noun stays as it is said ("oats", "eggs"): the plural is its name. So does another spelling ("fiber").
    last = said.removeprefix(before).strip()
    return said if len(base) < 5 or not last.startswith(base[:-2]) else f"{before} {base}".strip()


def _widen(tagged: Tagged, at: int) -> int:
    """The start of the noun phrase that ends at ``at``: kitchen words and foods before it."""
    begin = at
    while begin > 0 and at - begin < 4 and tagged.is_any(begin - 1, _IN_NAME):
        begin -= 1
    return begin


def _previous(tagged: Tagged, at: int, kinds: frozenset[str]) -> int | None:
    index = _widen(tagged, at) - 1
    joined = False
    while index >= 0 and at - index <= 7:
        words = tagged.items[index].words
        if words in _JOIN or tagged.symbols[index] == ",":
            joined = True
        elif tagged.is_any(index, kinds):
            return index if joined else None
        elif tagged.is_any(index, _MEASURING) or (joined and tagged.is_any(index, _GENERIC)):
            pass  # "a cup of", "beans and *other foods* like lentils"
        elif words not in _ARTICLES and (tagged.symbols[index] != "_" or not joined) and words != "of":
            return None
        index -= 1
    return None


def _next(tagged: Tagged, at: int, kinds: frozenset[str]) -> int | None:
    index, joined = at + 1, False
    while index < len(tagged.items) and index - at <= 5:
        words = tagged.items[index].words
        if words in _JOIN or tagged.symbols[index] in ",()":
            joined = True
        elif tagged.is_any(index, kinds):
            return index if joined else None
        elif not joined:
            return None
        index += 1
    return None
