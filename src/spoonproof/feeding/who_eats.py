"""Who eats a food that a sentence names, and whether the sentence turns it round.

Asked of the clauses that tell of the food: who is given it or eats it (the child, or somebody else), whether it is
denied before it is named, called bad, or made otherwise for the baby.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

from spoonproof.feeding.clauses import Clause, Place, clauses, harms_child, meet, standing
from spoonproof.feeding.defied import given_after_all, given_anyway, still_done
from spoonproof.feeding.handed import ANY_FORM
from spoonproof.feeding.recipients import ONE_CHILD
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.told_patterns import Hit
from spoonproof.feeding.words import Found
from spoonproof.model.record import NamedTuple

_BY_SHAPE = frozenset("nut seed-large dried-fruit bone-in string-cheese crunchy crisp-snack".split())
NO_CUT_HELPS = ANY_FORM - _BY_SHAPE
"""Kinds that no cutting or cooking makes safe."""
_TOLD_ALIKE = frozenset(
    """mould-cheese raw-dish mercury-fish raw-milk raw-milk-cheese nut popcorn honey salt sausage sweetener herbal-tea
    tea juice alcohol small-round dried-fruit shellfish egg raw-sprout hard-raw""".split()
)
"""Kinds of which a warning about one food is about another: "sashimi is tender, but raw fish is for adults"."""
_SPARED = re.compile(
    r"\b(?:hers|theirs|his)(?: (?:is|are|was|were|stays?|stayed|comes?|came|got|all|made|done)){0,3} (?:made|plain"
    r"|without|ground|chopped|quartered|mashed|grated|squashed|smooth|stoned|pitted|cooked|steamed|boiled|flaked"
    r"|blended"
    r"|thinned|cut|unsalted|hard|firm|solid|set|scrambled|well done)\b",
    re.I,
)
"""The baby's own, made otherwise: "hers stay plain"."""
_LIKENED = re.compile(
    r"\b(?:like|as|than|from|by|with|the way)(?: (?:my|our|the|his|her))?(?: (?:own|big|older))? $", re.I
)
"""Words before somebody who is only likened to: "like my mother does it"."""
_SO = re.compile(r"\W*so\b", re.I)
_OWNS = re.compile(r"(?:['’]s|s['’]) (?!(?:with|and|in|on|is|are|stays?|gets?|has)\b)\w", re.I)
"""Somebody's thing: "our neighbour's hens"; but "the big children's with icing" is their plate."""
_PLATE_OF = re.compile(r"\b(?:on|in|over|into|onto) (?:(?:my|our|the) )?$", re.I)
"""Words before somebody whose food it goes into: "on Dad's porridge"."""
_FOR = re.compile(r"\W*(?:as )?for\b", re.I)
"""What opens a sentence for somebody: "for the grown-ups, the same mash is good with mustard"."""
_REASON = re.compile(r"\W*(?:because|cos|since)\b", re.I)
"""What opens a reason, which hands nothing over: "because raw sponge mix has egg in it"."""
_MOTIVE = re.compile(
    r"\W*(?:because|cos|since|or|or else|otherwise) (?:s?he|they|(?:my|the|our) \w+(?: \w+)?)"
    r" (?:won['’]t|will not|wouldn['’]t|doesn['’]t|does not|refuses to) (?:eat|touch|take|have|like|drink|look at"
    r"|open)\b",
    re.I,
)
"""What opens the reason for which a food is given: "or he won't touch it"."""
_NOT_PLAIN = re.compile(
    r"\W*(?:s?he|they|(?:my|the|our) (?:\w+ )?\w+)"
    r" (?:won['’]t|will not|wouldn['’]t|doesn['’]t|does not|refuses to) (?:eat|touch|take|have|like|drink)"
    r" (?:\w+ ){0,3}(?:plain|bland|dry|without|as it is|on its own)\b",
    re.I,
)
"""What opens the reason for which something is put in: "he won't eat it plain, so"."""
_UNLESS = re.compile(r"\W*(?:unless|without|until|till)\b", re.I)
"""What opens the condition on which it is eaten: "he won't touch rice unless it's had soy sauce over it"."""
_FOR_WHOM = re.compile(r"\bfor (?:(?:the|my|our|your|an?) )?(?:\w+ )?$", re.I)
"""Words before who gets it: "for the ten-month-old, same as what her sister has"."""
_THING = re.compile(r" (?!own\b|and\b|in\b|on\b|at\b|with\b|to\b)[a-z]", re.I)
"""What "his" is said of: "on his rusk", not "on his"."""
_DONE_FIRST = re.compile(
    r"s?(?:(?: (?:all|both|each|always))? (?:is|are|was|were|gets?|got)(?: (?:all|both|each|always))?)? $", re.I
)
"""What stands between a food and what is done to it: "cherry tomatoes get quartered"."""
_LEFT_WHOLE = re.compile(r"\b(?:whole|uncut|as (?:they|it) (?:are|is|comes?))\b", re.I)
_BECAUSE = re.compile(r"\b(?:because|cos|since|as|so)\b[^,;]*$", re.I)
_OWN_PLATE = re.compile(
    r"\bfor (?:(?:my|our|the|his|her|their) )?[\w-]+(?: [\w-]+)?(?:['’]s|s['’]) (?:own )?"
    r"(?:lunch|tea|supper|dinner|breakfast|snack|plate|sandwich|toast|board|crackers"
    r"|(?:party |lunch |school )?(?:bag|box|tin))\b",
    re.I,
)
"""Whose meal it is for: "brie is for the nanny's own lunch"."""
_AND_GIVES = re.compile(r"\band (?:then )?(?:give|offer|serve|feed|hand) (?:your|the|my|our|her|him)\b", re.I)
_ANOTHER_ONE = re.compile(r"\bthe (?!other\b|same\b|whole\b|big\b)[\w-]+ ones?$", re.I)
_OURS_TO_HAVE = re.compile(r"\bi(?:['’]ve)? (?:have|had|like|love|enjoy|drink|need) (?:\w+ ){0,2}$", re.I)
"""Words before what the speaker has herself: "I have wine"."""
_SITS_WITH = re.compile(
    r"\b(?:i|we)(?:['’](?:m|re)| am| are)? (?:sat|sit|sitting|stand|standing|perched|opposite|beside|next)\b[^,;.]*"
    r"\bwith (?:an?|my|our|some) (?:\w+ ){0,4}$",
    re.I,
)
"""Words before what somebody has who only sits by: "I'm sat opposite with a cup of tea"."""
_IS_FOR = re.compile(r"s? (?:is|are|was|were|stays?)(?: (?:only|just|strictly))?(?: for(?: (?:the|my|our))?)? ", re.I)
"""Words between a food and whose it is: "camomile is for mothers"."""
_ONE_EACH = re.compile(
    r"\b(one|some|half|a few|a bit) for (?:me|us|mum|dad|you|yourself)\b[^.;]*"
    r"\b(?:one|some|half|a few|a bit|another|the rest) for (?:the|my|our|her|him)\b",
    re.I,
)
"""What is shared out: "one for me, one for the eight-month-old"."""
_NOT_BECAUSE = re.compile(r"\bnot (?:because|that|as if|as though)\b(?:(?!\bbut\b)[^.;,])*$", re.I)
"""Words before what is no reason: "not because anyone put sugar in it"."""
_THOSE_HOLD = re.compile(
    r"\W*(?:because|cos|since|as) (?:th(?:ose|ese|ey|is|at|ere)|it|most|many|some|such|all)\b"
    r"|(?<=:)\W*(?:there(?:['’]s| is| are)|th(?:ey|ose|ese) (?:have|contain|hold)|it (?:has|contains|holds))\b",
    re.I,
)
"""What opens the reason why something is not given, which names what is in it: "because those have added sugar"."""
_IN_BRACKETS = re.compile(r"\(((?:or|and|nor) [^()]*)\)")
"""What is named beside another: "without added sugar (or sugar substitutes)"."""
_BABY = ("child", "they", "babys")
_DENY = ("denies", "wary")
"""A food is held back by what is said, how much of it or how careful one is; what is done by a denial alone."""
_NO_NAMES = ("they", "plural")
_NO_SHAPE = re.compile(r"(?:boiled|steamed|peeled|plain)$", re.I)
_NO_HEAT = re.compile(r"(?!cook|bak|fr[iy]|roast|simmer|boil|steam|poach)", re.I)
_NOTHING = re.compile(r"(?!)")
"""What is done to a food and helps nothing where its shape is the danger, or its germs, or neither."""
_ANSWERS = re.compile(r"no, (?:i|we|he|she|you)\b", re.I)
"""A denial of what was asked before: "Grated? No, I give a stick of raw carrot"."""
_DEED = re.compile(r"\W*[a-z]{2,}ing\b", re.I)
"""What opens a sentence that judges what is done: "stirring honey in is not for us"."""
_A_DEED = re.compile(r" (?:it|them|one|each)\b", re.I)
"""What stands behind a deed that is named like a food: "mash one"."""
_SUBJECT_NEAR = 12
"""Characters between who eats and the verb: "Great-aunt Joan has"."""
_OF_MANY = frozenset({"them", "these", "those", "each", "both", "one", "ones", "some"})
_OBJECT_NEAR = 8
"""Characters between what is done and the word for the food: "squash each one", "has them ground"."""
_VERB_NEAR = 24
"""Characters between a denial and the verb that it denies: "isn't something I'd give"."""


class Stance(NamedTuple):
    """What a sentence does with a food: ``eaters`` "baby", "others" or "" where nobody is named; ``turned``: why it is
    not given, "" where it is."""

    eaters: str
    turned: str


def stance(
    said: str,
    hit: Found,
    tables: FeedingTables,
    speaks_on: int | None = None,
    names: Mapping[str, str] = MappingProxyType({}),
) -> Stance:
    """What ``said`` does with the food at ``hit``; ``speaks_on``: where words begin that stand for it; ``names``: of
    ``people``."""
    said = _IN_BRACKETS.sub(r" \1 ", said)
    others = [
        one
        for one in tables.phrases.find(said, negated=True)
        if (one.end <= hit.start or hit.end <= one.start) and not _A_DEED.match(said, one.end)
    ]
    foods = sorted([*others, hit], key=lambda one: one.start)
    kinds = tables.kinds[hit.value]
    in_vain = _NO_SHAPE if "small-round" in kinds else _NO_HEAT if "shellfish" in kinds else _NOTHING
    food = _Food(said, foods, foods.index(hit), not kinds & NO_CUT_HELPS, in_vain)
    parts = clauses(said, [(one.start, one.end) for one in foods], tables, names)
    home = next(clause for clause in parts if food.which in clause.named)
    eaters = _eaters(said, home, (hit.start, hit.end))
    if speaks_on is not None and home.has("brings"):
        eaters = ""  # who eats it what follows tells
    there = _in_its_clause(food, home, parts, eaters)
    if there is not None:
        return there
    alike = {at for at, one in enumerate(foods) if one is hit or tables.kinds[one.value] & kinds & _TOLD_ALIKE}
    others_about = []  # what else is said of it, of one like it, or of what stands for it
    for clause in parts:
        speaks = speaks_on is not None and clause.end > speaks_on and not clause.named
        if clause is not home and (speaks or alike & {*clause.about}):
            others_about.append((clause, speaks))
    return _in_the_others(food, home, others_about, eaters)


class _Food(NamedTuple):
    """The food asked about, the ``which``-th of those that a sentence names."""

    said: str
    foods: list[Found]
    which: int
    cut_helps: bool  # it may be cut or cooked so that it is no danger
    in_vain: re.Pattern[str]  # what is done to it that helps nothing

    @property
    def hit(self) -> Found:
        return self.foods[self.which]

    def made_safe(self, clause: Clause) -> bool:
        return self.cut_helps and _made_safe(self.said, clause, self.hit, self.in_vain)


def _in_its_clause(food: _Food, home: Clause, parts: list[Clause], eaters: str) -> Stance | None:
    """What the clause that names the food does with it, None where it turns nothing round."""
    given = any(given_anyway(food.said, one.start, one.end) and one.has(*_BABY) for one in parts)
    after_all = given_after_all(food.said, (one for one in parts if one.start >= home.end and not one.named))
    if (home.has("bad") and given) or (home.has("bad", *_DENY) and (after_all or still_done(food.said, food.hit.end))):
        return Stance("baby", "")
    bad = home.of("bad")
    denials = [
        mark
        for mark in standing(food.said, home, (), *_DENY)
        if not _ANSWERS.match(food.said, mark.start) and not any(meet(mark, (one.start, one.end)) for one in bad)
    ]
    if any(mark.start < food.hit.start or _governs(mark, home, "gives") for mark in denials):
        return Stance(eaters, "denied")
    if _NOT_BECAUSE.search(food.said[: food.hit.start]) or _reason_against(food.said, home, parts):
        return Stance(eaters, "denied")
    if _called_bad(home) or (home.has("faults") and _DEED.match(food.said, home.start)):
        return Stance(eaters, "called bad")
    if _UNLESS.match(food.said, home.start) and any(
        clause.end == home.start and clause.has(*_BABY) and clause.has("denies") for clause in parts
    ):
        return Stance("baby", "")
    return Stance(eaters, "made safe") if food.made_safe(home) else None


def _called_bad(clause: Clause) -> bool:
    """Whether a clause calls its food bad: in itself, for a child that stands beside it, or as what harms one."""
    return clause.has("bad") or harms_child(clause) or (clause.has("apart") and clause.has("child", "plural", "they"))


def _reason_against(said: str, home: Clause, parts: list[Clause]) -> bool:
    """Whether it is named in the reason why something is not given: "no beater for the baby: there's raw egg"."""
    if not _THOSE_HOLD.match(said, home.start):
        return False
    before = next((clause for clause in parts if clause.end == home.start), None)
    return before is not None and before.has("denies") and not before.has("undenies", "hedges", "unbad")


def _in_the_others(food: _Food, home: Clause, clauses_about: list[tuple[Clause, bool]], eaters: str) -> Stance:
    """What the clauses besides its own do with it; each with whether it speaks on of the food without its name."""
    said, which = food.said, food.which
    reason = _REASON.match(said, home.start) is not None
    # "Coke through my straw won't hurt, he's one": who reassures speaks of the child.
    harmless = any(all(one.start < said_so.start for one in home.of("other")) for said_so in home.of("unbad"))
    for clause, speaks in clauses_about:
        motive = any(words.match(said, clause.start) for words in (_MOTIVE, _NOT_PLAIN))
        # "He doesn't like bland food, so ..." says nothing of what is put in then.
        of_another = clause.end <= home.start and not clause.named and _SO.match(said, home.start) is not None
        denied = any(_governs(mark, clause, "gives", "eats") for mark in clause.of(*_DENY))
        unwilling = denied and (clause.has("thereof") or not of_another)
        if (_called_bad(clause) or unwilling) and not motive:
            return Stance(eaters, "called bad")
        if _SPARED.search(said, clause.start, clause.end):
            return Stance("baby", "made otherwise")
        if not clause.named and food.made_safe(clause):
            return Stance(eaters, "made safe")
        if motive:
            eaters = eaters or "baby"  # "salt in it because he won't eat it bland"
        if reason and clause.has(*_BABY) and clause.has("eats") and _speaks_of_it(said, clause) and not denied:
            eaters = "baby"  # "she loves it because it has honey in it"
        if eaters == "baby" or (reason and not speaks):
            continue
        if clause.has("other") and not clause.has(*_BABY) and _FOR.match(said, clause.start):
            return Stance("others", "")
        if not speaks and which not in clause.about:  # it names another of its kind, or the same once more
            again = next((food.foods[at] for at in clause.named if food.foods[at].value == food.hit.value), None)
            eaters = eaters or (_eaters(said, clause, (again.start, again.end)) if again is not None else "")
        elif clause.has("asleep"):
            return Stance("others", "asleep")
        elif clause.has(*_BABY) and not clause.has("idle") and (not eaters or harmless or _speaks_of_it(said, clause)):
            eaters = "baby"
    if _SPARED.search(said, home.end):  # "Nan's has sherry, so the babies had theirs made with milk"
        return Stance(eaters, "made otherwise")
    return Stance(eaters, "")


def _speaks_of_it(said: str, clause: Clause) -> bool:
    """Whether a clause that names no food tells of one eaten: "and she has some too", not "she has the plain one"
    or "he had puffs that melt"."""
    if clause.has("eats") and _LEFT_WHOLE.search(said, clause.start, clause.end):
        return True  # "quartered for his brother, but the baby has hers whole"
    verbs = clause.of("eats", "gives")
    return bool(verbs) and any(
        not _ANOTHER_ONE.search(said[clause.start : one.end])
        and (
            said[one.start : one.end].lower() != "that"
            or any(0 < one.start - verb.end <= _OBJECT_NEAR for verb in verbs)
        )
        for one in clause.of("thereof")
    )


def _made_safe(said: str, clause: Clause, food: Found, in_vain: re.Pattern[str]) -> bool:
    """Whether it is told behind a food's name that what makes it safe is done to it: "and grinds them to dust";
    ``in_vain``: what helps nothing ("a boiled one" is as round)."""
    many = said[food.start : food.end].lower().endswith("s")
    its = [one for one in clause.of("thereof") if not many or said[one.start : one.end].lower() in _OF_MANY]
    for done in clause.of("safe"):
        itself = said[done.start : done.end].endswith("s")  # "until it flakes" is not "has it flaked"
        to_it = any(0 < one.start - done.end <= _OBJECT_NEAR for one in its)
        so = not itself and any(0 < done.start - one.end <= _OBJECT_NEAR for one in its)
        if in_vain.match(said[done.start : done.end]):
            continue
        if done.start > food.end and (to_it or so or _passively(said, food, done)):
            return True
    return False


def _passively(said: str, food: Found, done: Hit) -> bool:
    """Whether this is done to the food itself, and none is said to stay whole but as a reason."""
    if not _DONE_FIRST.fullmatch(said, food.end, done.start):
        return False
    whole = _LEFT_WHOLE.search(said, done.end)
    return whole is None or _BECAUSE.search(said, done.end, whole.start()) is not None


def _governs(denial: Hit, clause: Clause, *verbs: str) -> bool:
    """Whether a verb of these classes is what is denied."""
    return any(0 < verb.start - denial.end <= _VERB_NEAR for verb in clause.of(*verbs))


def _eaters(said: str, clause: Clause, food: Place) -> str:
    """Who gets the food at this place of a clause: who is given it, else who eats, else whom the words nearest name."""
    babys = clause.of(*_BABY)
    if clause.has("eats", "gives"):  # else "they" are foods as easily: "the cold turns their starch to sugar"
        babys = sorted([*babys, *clause.of("plural")], key=lambda mark: mark.start)
    others = [
        one
        for one in clause.of("other")
        if not _LIKENED.search(said[: one.start])
        and (
            _PLATE_OF.search(said[: one.start])
            or not _OWNS.match(said, one.end - 2)
            or _OWN_PLATE.search(said, max(0, one.start - 12), clause.end)
        )
    ]
    if others:  # "the teenagers dip their hands in the tub"
        babys = [one for one in babys if one.start < others[0].start or not said.startswith("their", one.start)]
    if any(_given_to(said, mark, food, others) for mark in babys):
        return "baby"
    if any(_IS_FOR.fullmatch(said, food[1], one.start) for one in others):
        return "others"
    gives = _AND_GIVES.search(said, food[1], clause.end)
    if gives and len(clause.named) > 1 and any(mark.start < food[0] for mark in clause.of("other")):
        return "others"  # "sweeten the grown-ups' kheer with honey and give your baby plain rice"
    if others and not clause.has("gives") and all(others[0].start < mark.start for mark in babys):
        puts = clause.has("puts")  # "Gran puts it on his rusk", but "grandfather ate his popcorn"
        babys = [mark for mark in babys if mark.value not in _NO_NAMES or (puts and _THING.match(said, mark.end))]
    if _ONE_EACH.search(said, clause.start, clause.end) and babys:
        return "baby"
    if not babys and _SITS_WITH.search(said[: food[0]]):
        return "others"
    if not babys:
        return "others" if others or (_OURS_TO_HAVE.search(said[: food[0]]) and not ONE_CHILD.search(said)) else ""
    if clause.has("gives"):
        return "baby"
    if clause.has("idle"):
        return ""
    if not others:
        return "baby"
    for_whom = [mark for mark in babys if _FOR_WHOM.search(said[: mark.start])]
    if for_whom and _nearest(for_whom, food) < _nearest(others, food):
        return "baby"
    eats = clause.of("eats")
    for one in sorted([*babys, *others], key=lambda mark: mark.start):
        if any(0 <= verb.start - one.end <= _SUBJECT_NEAR for verb in eats):
            return "others" if one.value == "other" else "baby"
    return "baby" if _nearest(babys, food) <= _nearest(others, food) else "others"


def _given_to(said: str, mark: Hit, food: Place, others: list[Hit]) -> bool:
    """Whether the food is for the child that ``mark`` names: "we take a bag of raw carrot sticks for him to crunch"."""
    between = said[food[1] : mark.start]
    others_between = any(food[1] <= one.start <= mark.start for one in others)
    return between.endswith(" for ") and not others_between and not _THING.match(said, mark.end)


def _nearest(marks: list[Hit], food: Place) -> int:
    """Characters between a food and the nearest of ``marks``."""
    return min(max(mark.start - food[1], food[0] - mark.end, 0) for mark in marks)
