"""Which noun before a claim is likeliest what it is about, and which pronoun stands for one."""

from __future__ import annotations

from spoonproof.claims.finding.phrase import ARTICLES, NAMED, NO_FOOD, NOUNS, previous, widen
from spoonproof.claims.scan import Tagged

_VERBS = frozenset(
    "copula contain have benefit harm need goodfor high hedge negation make keep child-can forbid should"
    " comes-up can-ask".split()
)
_PRONOUNS = frozenset(
    {"it", "they", "theyre", "them", "this", "these", "both", "both of them", "the two", "all of them", "its", "their"}
    | {"he", "she"}
)
_THAT = frozenset({"that", "those"})
THEY = frozenset({"they", "theyre", "these", "those", "their", "them"})
_PERSONAL = frozenset({"it", "they", "theyre", "he", "she"})
_TAKING = frozenset({"give", "avoid", "from", "than", "high", "contain"})  # what follows is their object
_BEFORE_OBJECT = frozenset("with of in to for than from like as into by on without unlike your our other any".split())
_RELATIVES = frozenset({"which", "that", "who"})
REACH = 18
_DIET = -3  # the rank of "diet" in "added to your baby's diet from six months": no more than where a food goes
_COPULA = frozenset({"copula"})
_GIVES = frozenset({"copula", "contain"})
# How a baby is fed is less likely what is spoken of than a food by name.
FEEDING = frozenset("breastfeeding breastfeed breastfed nursing eating weaning blw".split())
_KIND_ALONE = frozenset({"generic-food", "solids"})
_AND = frozenset({"and", "&"})
_SERVED_AS = frozenset({"generic-food", "solids", "dish"})
_DOING = frozenset("mash puree purée stew salt toast roast juice bake braise spread drink squash".split())
_DRUNK = frozenset({"squash", "drink", "juice"})
_DOERS = frozenset("i you we they to i'll we'll you'll i'd you'd just then can could".split())
_DONE_TO = frozenset("it them up down everything".split())
_BESIDE = frozenset("beside with on next alongside over under near to".split())  # "berries beside *them* bring ..."
_AT_A_MEAL = frozenset({"after", "before"})  # "a ripe pear *after lunch*"
_MAY = frozenset({"question", "negation", "hedge"})
_OPENERS = frozenset("a an the and but so or well now plus also no any these those your her his their".split())
_SAID_OF_IT = frozenset({"high", "goodfor", "have", "contain"})
_ASIDE = frozenset({"although", "though", "while", "another", "a", "an", "also", "or", "like", "unlike", "just"})


def begin_of(tagged: Tagged, at: int) -> int:
    """Where the clause that holds ``at`` begins, at most ``REACH`` items back."""
    for index in range(at - 1, max(-1, at - REACH), -1):
        if tagged.symbols[index] in ".?":
            return index + 1
    return max(0, at - REACH)


def is_doing(tagged: Tagged, at: int) -> bool:
    """Whether a word for a dish is what somebody does here: "which I *mash* up with a fork", "then *stew* it"."""
    if tagged.items[at].words not in _DOING:
        return False
    before = tagged.items[at - 1].words.rpartition(" ")[2] if at else ""
    after = tagged.items[at + 1].words.partition(" ")[0] if at + 1 < len(tagged.items) else ""
    drunk = tagged.items[at].words in _DRUNK and after == "it"  # "*squash it* rots teeth" speaks of the drink
    return before in _DOERS or (after in _DONE_TO and not drunk)


def likeliest(tagged: Tagged, candidates: list[int], at: int) -> int | None:
    """The likeliest subject: the noun before "which", else the one a verb follows, else the nearest."""
    # "give milk as a drink": what it is given as is not what is spoken of.
    candidates = [i for i in candidates if not is_said_as(tagged, i)] or candidates
    # "too much swede in one meal may ...": nor is when it is eaten.
    candidates = [i for i in candidates if not _is_occasion(tagged, i)] or candidates
    if not candidates:
        return None
    nearest = candidates[-1]
    after = nearest + 1 + (tagged.symbols[nearest + 1 : nearest + 2] == ",")
    relative = after < len(tagged.items) and tagged.items[after].words in _RELATIVES
    beside = after >= at and (len(candidates) == 1 or rank(tagged, nearest) > _DIET)
    if (relative or beside) and not _is_predicate(tagged, nearest, _COPULA):
        return nearest
    return max(candidates, key=lambda i: (rank(tagged, i), i))


def is_said_as(tagged: Tagged, at: int) -> bool:
    """Whether a food is only what another is served or given as: "swede *as a mash*", "*as a drink*"."""
    if not tagged.is_any(at, _SERVED_AS) or (tagged.has(at, "food") and not tagged.has(at, "solids")):
        return False
    before = [item.words for item in tagged.items[max(0, at - 3) : at]]
    return any(word in ("as a", "as an", "as") for word in before)


def _is_occasion(tagged: Tagged, at: int) -> bool:
    if not tagged.has(at, "generic-food"):
        return False
    before = tagged.items[at - 1].words.rpartition(" ")[2] if at else ""
    return before in _AT_A_MEAL or (tagged.has(at, "eating") and _is_object(tagged, at))


def rank(tagged: Tagged, at: int) -> int:
    """How well a noun stands as a subject: higher is likelier, below zero is an object or an aside."""
    rank = 0
    if is_subject(tagged, at):
        rank += 3
    if _is_object(tagged, at):
        rank -= 2
    if _is_predicate(tagged, at):
        rank -= 2
    inside = tagged.symbols[max(0, at - 14) : at]
    if inside.rfind("(") > inside.rfind(")"):
        rank -= 4
    if _is_aside(tagged, at):
        rank -= 4
    named = tagged.has(at, "food") and not tagged.has(at, "solids")
    if (not named and tagged.is_any(at, _KIND_ALONE)) or tagged.items[at].words in FEEDING:
        rank -= 3
    return rank


def is_subject(tagged: Tagged, at: int) -> bool:
    """A verb follows at once or after an adverb, or after the rest of its list."""
    for index in range(at + 1, min(at + 4, len(tagged.items))):
        if tagged.is_any(index, _VERBS):
            return True
        if tagged.symbols[index] not in "_" and not tagged.is_any(index, NOUNS):
            return False
    return False


def is_about_no_food(tagged: Tagged, at: int) -> bool:
    """Whether a sentence says before ``at`` what it is about, and that is nothing that is eaten: "*Teething* doesn't
    cause", "*Amber beads* do nothing for colic"."""
    first = next((i for i, item in enumerate(tagged.items[:at]) if item.words not in _OPENERS), at)
    return (
        first < at
        and bool(tagged.is_any(first, NO_FOOD))
        and (is_subject(tagged, first) or bool(tagged.is_any(first + 1, _MAY)))
    )


def _is_object(tagged: Tagged, at: int) -> bool:
    first = at
    while (left := previous(tagged, first, NAMED)) is not None:
        first = left
    for begin in (widen(tagged, at), widen(tagged, first)):
        before = begin - 1 - (begin > 1 and tagged.items[begin - 1].words in ARTICLES)
        if before > 0 and tagged.items[before].words.endswith("bought"):
            before -= 1  # "unlike *bought* crackers"
        if before >= 0 and (tagged.items[before].words in _BEFORE_OBJECT or tagged.is_any(before, _TAKING)):
            return True
    return False


def _is_aside(tagged: Tagged, at: int) -> bool:
    """What a food is called in passing: "ragi, although a tiny millet, is", "amla, a fruit, has"."""
    for index in range(at - 1, max(-1, at - 7), -1):
        if tagged.symbols[index] == ",":
            return index > 0 and tagged.items[index + 1].words in _ASIDE and "," in tagged.symbols[at + 1 : at + 8]
    return False


def _is_predicate(tagged: Tagged, at: int, verbs: frozenset[str] = _GIVES) -> bool:
    """What a food is or has: "is a *grain*", "contains *pectin*"."""
    return bool(tagged.find(verbs, at - 4, at)) and "," not in tagged.symbols[at - 3 : at]


def pronoun_before(tagged: Tagged, begin: int, at: int) -> int | None:
    """The last pronoun before ``at`` that stands for a noun (not "this purée")."""
    found = [
        i
        for i in range(begin, at)
        if (said_by(tagged, i) in _PRONOUNS or _is_demonstrative(tagged, i))
        # "this purée" names its noun; "it is packed with protein" does not
        and (said_by(tagged, i) in _PERSONAL or _is_it_is(tagged, i) or not _names_its_noun(tagged, i))
        and not _stands_for_nothing(tagged, i)
        and not names_both(tagged, i)
        and not (tagged.items[i].words == "them" and i and tagged.items[i - 1].words.rpartition(" ")[2] in _BESIDE)
    ]
    return found[-1] if found else None


def _names_its_noun(tagged: Tagged, at: int) -> bool:
    """Whether "this" stands before the noun it means: "this purée", "*this* type of *fibre*"."""
    of = at + 2 < len(tagged.items) and tagged.items[at + 2].words == "of"
    return bool(tagged.find(NOUNS, at + 1, at + 3 + of))


def said_by(tagged: Tagged, at: int) -> str:
    """The pronoun at ``at`` without the verb it is written with: "*they*'ve"; any other word as it is."""
    words = tagged.items[at].words
    head, mark, _ = words.partition("'")
    return head if mark and head in _PERSONAL else words


def is_what_it_is(tagged: Tagged, at: int) -> bool:
    """Whether a noun only says what another is: "cucumber is nearly all *water*"."""
    return not is_subject(tagged, at) and _is_predicate(tagged, at, _COPULA)


def _is_demonstrative(tagged: Tagged, at: int) -> bool:
    """Whether "that" or "those" opens a clause and stands for a noun: "I add lamb, *that is* rich in zinc"."""
    if tagged.items[at].words not in _THAT or not tagged.is_any(at + 1, _VERBS):
        return False
    return at == 0 or tagged.symbols[at - 1] in ".?:" or tagged.items[at - 1].words in _OPENERS


def names_both(tagged: Tagged, at: int) -> bool:
    """Whether "both" goes with the two things after it: "for *both* babies and adults", "*both* now and later"."""
    if tagged.items[at].words != "both" or tagged.is_any(at + 1, _VERBS) or at + 1 >= len(tagged.items):
        return False
    return any(item.words in _AND for item in tagged.items[at + 2 : at + 5])


def _is_it_is(tagged: Tagged, at: int) -> bool:
    """Whether "its" is "it's" without its mark: "*its* full of iron"."""
    return tagged.items[at].words == "its" and bool(tagged.is_any(at + 1, _SAID_OF_IT))


def _stands_for_nothing(tagged: Tagged, at: int) -> bool:
    """ "It is safe for babies to have cinnamon": what is safe comes after "to"."""
    words = [item.words for item in tagged.items[at : at + 8]]
    if words[:3] == ["it", "comes", "to"]:
        return True  # "when *it comes to* iron, kale is ..."
    if words[0] != "it" or words[1:2] not in (["is"], ["was"], ["'s"]):
        return False
    noun = at + 2 + (words[2:3] == ["the"])
    if tagged.is_any(noun, NAMED) and not _RELATIVES.isdisjoint(words[3:]) and "," not in words:
        return True  # "*it is* the fibre in oats that keeps": what it is comes before "that"
    return "to" in words[2:] and "," not in words and "way" not in words  # "*it* is a good way to get iron in"
