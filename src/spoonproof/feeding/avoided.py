"""Words that offer a dish to a child who may not have what is in it: "great if your little one can't have eggs"."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from spoonproof.feeding.allergens import AllergenFound, of_text
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import keys
from spoonproof.model.record import dataclass
from spoonproof.model.text import Passage, Span

_KINDS = frozenset({"title", "description", "social", "story", "say", "super", "step", "note"})
_SENTENCE = re.compile(r"[^.!?;\n]+")
_WORD = r"(?!(?:so|but|who|this|these|it|i|we|he|she|they|whole|raw)\b)\w+"
_SOME = rf"((?:{_WORD}(?:['’]s)?,? ){{0,4}}{_WORD})"
"""Up to five words, among which the allergen is named, and none with which the sentence goes on."""
_AVOIDS = re.compile(
    rf"\b(?:allergic|intolerant|sensitive) to {_SOME}"
    rf"|\b(?:(?:ca|do|does|must|should)n['’]t|(?:can|do|does|must|should) ?not) (?:have|eat|tolerate|take|do) {_SOME}"
    rf"|\b(?:avoid\w*|react\w* to|(?:is|are|comes?|cut\w*) (?:off|out)|steer\w* clear of|stay\w* away from) {_SOME}"
    rf"|\b{_SOME}[ -](?:allerg|intoleran)\w+\b(?! to\b)"
    rf"|\b{_SOME}[ -]free (?:house|home|kitchen|famil|diet|bab|friend|cousin|nurser|childminder|school|guest|child)\w*"
    r"|\b(?P<ill>c(?:o)?eliacs?)\b",
    re.I,
)
"""Who may not have it, and what."""
_ABSENT = re.compile(
    rf"\bno {_SOME} (?:in (?:it|this|these|them|here|sight|any|either)|here|goes? in|need(?:ed)?\b|required)"
    rf"|\b(?:is|are)(?:n['’]t| not) an? {_SOME} in (?:it|this|these|them|here|sight)"
    rf"|\b(?:(?:won['’]t|will not) find(?: any)?|not a (?:drop|trace|scrap|crumb|bit) of|nothing with|free of"
    rf"|made with no|completely without|neither) {_SOME}",
    re.I,
)
"""That it is not in it."""
_FREE = re.compile(  # not "with dairy-free yoghurt", which is another food than the dish
    r"(?:^|(?<=[,:–—])|\b(?:an?|the|these|this|those|are|is|my|our|some|best|favourite|easy|quick|simple|soft|and"
    r"|\w+ly))[ \t]*"
    r"\b(?P<what>\w+)[ -]free(?P<of>(?: (?!(?:or|and|so|for|with|in|on|at|as|if|to|but|when|from)\b)\w+){1,4}?)"
    r"(?= ?(?:$|[,:–—]|(?:for|with|in|that|from|to|and|or|by|made|without|on|your|the)\b))",
    re.I,
)
_WITHOUT = re.compile(
    r"(?P<of>\b(?!(?:made|it|is|are|up|this|that|cook\w*|eat\w*|serve\w*|do|go|or|and)\b)\w+)"
    r",? (?:without|with no)(?: any)?"
    r" (?P<what>\w+(?:(?: or|,)(?: any)? \w+)?)(?= ?(?:$|[,:–—-]|in (?:it|them|sight)\b|at all\b))",
    re.I,
)
"""What dish is without it: "Egg-free banana muffins", "a porridge without nuts"."""
_HAS_NO = re.compile(
    r"\b(?:it|this|they|these|(?:it|this|these|the|our|my|a) (?P<of>\w+)) (?:contains?|has|have) no (?P<what>\w+)"
    r"(?= ?(?:$|[,:–—]|(?:or|and|at all|in it)\b))",
    re.I,
)
_LISTED = re.compile(  # by the allergen's own name: "no mayo" is not said of eggs
    r"(?:^|[,:–—]|\band) ?no (?P<what>eggs?|milk|dairy|wheat|gluten|(?:pea)?nuts?|sesame|soya?|fish|shellfish|mustard"
    r"|celery|lupin)(?= ?(?:$|[,:–—]|(?:or|and|but|just)\b))",
    re.I,
)
"""That it has none: "this mash contains no egg"; "soft, sweet, no egg"."""
_ANOTHER = re.compile(
    r"(?:version|alternative|option|swap|substitute|replacer|diet|house|home|kitchen|famil|bab|friend|cousin|nurser"
    r"|childminder|school|guest|child|day|week|range|product|food|recipe)\w*$",
    re.I,
)
_OFFERED = re.compile(
    r"\b(?:great|perfect|ideal|good|lovely|brilliant|suit\w*|works?|fine|safe|handy|treat|lifesaver|life saver|standby"
    r"|stand-by|go-to|favourite|favorite|for (?:\w+ ){0,3}(?:bab|little ones?|tots?|toddler|friend|cousin|nephew|niece"
    r"|anyone|any one|child|kid|coeliac|celiac|boy|girl)\w*|(?:can|could|may|able to) (?:have|eat|enjoy|share|join)"
    r"|(?:one|recipe|ones) (?:to|for)|(?:make|made|bring|brought|bake|baked|cook|cooked)"
    r" (?:it|this|these|them|one|some)|eats? (?:it|these|this|them)|this is (?:our|the))\b",
    re.I,
)
_TURNED = re.compile(
    r"\b(?:not|never|swap\w*|instead|replac\w*|leav\w+ (?:it |them |the \w+ )?out|skip\w*|use\w*|substitut\w*"
    r"|alternative|version|ask\w*|check\w*|outgr\w+|used to|watch\w*|signs?|introduc\w*|test\w*|doctor|unsuitable"
    r"|unless|contains?|without the|egg replacer|in place of|may be|might be|worr\w+|whole|\w+n['’]t)\b",
    re.I,
)
_TURNED_HERE = re.compile(r"\b(?:for an?|swap\w*|instead|not|never|isn['’]t|unless|make it|if you|to make)\b", re.I)
_ILL = ("gluten",)
"""What somebody ill with coeliac disease may not have."""


@dataclass(frozen=True, slots=True)
class Avoided:
    """Words that say or take for granted that the dish is without ``allergen``, and the ``food`` that brings it."""

    span: Span
    words: str
    allergen: str
    food: str


def avoided(
    passages: Iterable[Passage], found: Sequence[AllergenFound], tables: FeedingTables, foods: Iterable[str] = ()
) -> Iterator[Avoided]:
    """Each sentence that offers the dish to who avoids what is in the baby's bowl, or says that it is not in it.
    ``foods``: the lines' names, of which a word may be said ("dairy-free yoghurt") and be true of that food alone."""
    bought = frozenset[str]().union(*(keys(name) for name in foods))
    brought = {one.allergen: one.food for one in reversed(found) if one.baby and one.how in ("present", "hidden")}
    if not brought:
        return
    for passage in passages:
        if passage.leave is not None or passage.kind not in _KINDS:
            continue
        for sentence in _SENTENCE.finditer(passage.text):
            if passage.text[sentence.end() : sentence.end() + 1] == "?":
                continue  # "No eggs? Use mashed banana."
            said = sentence.group()
            for match in (*_avoiders(said), *_ABSENT.finditer(said), *_of_the_dish(said, bought)):
                called = match.groupdict()
                words = called.get("what") or " ".join(filter(None, match.groups()))
                named = _ILL if called.get("ill") else sorted(of_text(words, tables) | _said_of_nuts(words))
                hit = next((one for one in named if one in brought), None)
                if hit is not None:
                    start = sentence.start() + match.start()
                    place = passage.span(start, start + len(match.group()))
                    yield Avoided(place, match.group(), hit, brought[hit])
                    break


def _said_of_nuts(words: str) -> frozenset[str]:
    """Peanuts, where words say nuts: who reads "no nuts" expects none of them either."""
    return frozenset({"peanut"}) if keys(words) & {"nut"} else frozenset()


def _of_the_dish(said: str, bought: frozenset[str]) -> list[re.Match[str]]:
    """Where a dish is called free of something, and no food of the list: the last word is no word of a line."""
    if _TURNED_HERE.search(said):
        return []
    found = [match for pattern in (_FREE, _WITHOUT, _HAS_NO, _LISTED) for match in pattern.finditer(said)]
    called = [(match, (match.groupdict().get("of") or "").split()) for match in found]
    return [match for match, of in called if not ((of and keys(of[-1]) & bought) or any(map(_ANOTHER.match, of)))]


def _avoiders(said: str) -> list[re.Match[str]]:
    """Who avoids something, where the sentence offers them the dish: "if she can't have eggs, swap them" does not."""
    found = list(_AVOIDS.finditer(said))
    if not found:
        return []
    rest = _AVOIDS.sub(lambda match: " " if match.group("ill") is None else match.group(), said)
    offered = _OFFERED.search(rest) or _OFFERED.search(said[: found[0].end()])
    return found if offered and not _TURNED.search(rest) else []
