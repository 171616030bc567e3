"""All that is heard in speech that belongs to no recipe: its claims, judged, and what it says that endangers a baby.

Claims and feeding know nothing of each other; this joins what the two hear in the same words.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import pairwise
from types import MappingProxyType

from spoonproof.claims.judging.frames import called_untrue, frames
from spoonproof.claims.judging.read_as import as_found
from spoonproof.claims.judging.waived import waived
from spoonproof.claims.register import Register
from spoonproof.claims.sentences import BreathRow, Sentence, cut_points, lines_apart, sentences
from spoonproof.claims.words import has_any, plain
from spoonproof.feeding.advised import advised
from spoonproof.feeding.asked import answered_no
from spoonproof.feeding.clauses import clauses
from spoonproof.feeding.contradictions import Contradiction, contradictions
from spoonproof.feeding.defied import defies, hedged, still_done, waved_aside
from spoonproof.feeding.disowned import set_aside
from spoonproof.feeding.of_bottles import ROWS, with_bottle
from spoonproof.feeding.quoted import clause_around, sentence_around
from spoonproof.feeding.who_eats import Stance, stance
from spoonproof.knowledge import Knowledge
from spoonproof.model.claim import Claim, JudgedClaim
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.record import replace
from spoonproof.model.text import Passage
from spoonproof.reading.meant_for import YOUNGEST, meant_for

_LEVELS: Mapping[int, Level] = {3: "error", 2: "warning", 1: "note"}
_HARM = {level: harm for harm, level in _LEVELS.items()}
_MARKETS = ("EU", "GB", "US")
_SENTENCE = 180
"""Characters: in a longer stretch without a full stop nobody can say which words hand which food to whom."""


# What a breath begins with; one that begins otherwise ("bone with a little meat on it") speaks on of the last.
_BEGINS = re.compile(
    r"\s*(?:i|we|you|he|she|they|it|this|that|there|these|my|our|his|her|let|just|don['’]t|never|please|for|in|on|at"
    r"|the|some|once|after|before|next|first|so|and|but|then|now|okay|ok|right|because|if|when|while|as|what|how|who"
    r"|no|not|nobody|always|one|everyone|everybody|anyway|also|or|to|by|with)(?:['’]\w+)?\b|[A-Z]"
)
_ANEW = re.compile(
    r" (?=(?:and then|then|so|and (?:i|we|he|she|they|it)|but|now|okay|anyway|next|also"
    r"|finally) )",
    re.IGNORECASE,
)
_COUNTED = re.compile(r" (?=number (?:one|two|three|four|five|six|seven|eight|nine|ten) )", re.IGNORECASE)
_AT_LEAST = re.compile(r" (?=(?:he|she|they|i|we|you|my|there) )", re.IGNORECASE)
_DO_THIS = re.compile(
    r"(?<! to)(?<! i)(?<! we)(?<! you)(?<! and)(?<! can)(?<! will) (?=(?:meanwhile|(?:add|bake|blend|boil|chop|cook"
    r"|cut|dip|dollop|drain|drizzle|fold|fry|get|give|grate|heat|let|mash|mix|peel|pop|pour|put|roast|scatter|serve"
    r"|slice|spoon|spread|sprinkle|steam|stir|take|tip|toast|whisk) "
    r"(?:the|that|this|an?|some|it|them|your|his|hers?|in|up|over)) )",
    re.IGNORECASE,
)
"""Where a stretch is parted that has nothing better; a recipe read out has but its steps."""


def hear(
    passages: Sequence[Passage],
    knowledge: Knowledge,
    judge: Callable[[Claim], JudgedClaim],
    *,
    apart: bool = False,
    months: int = YOUNGEST,
    for_babies: bool = False,
    policies: Mapping[str, str] = MappingProxyType({}),
) -> list[JudgedClaim]:
    """The claims of ``passages`` by ``judge``, and each statement that endangers a baby of ``months`` ("leave it out
    overnight", "let her gnaw on raw apple") that no claim to be mended stands on already, in the order they are said.
    ``apart``: no subject is carried from one passage to the next, and no age: else the passages are one film or page,
    and where it says for which babies it is, what it puts into their food is heard too ("a drizzle of honey").
    ``for_babies``: who asks says that they are meant for babies of ``months``, whatever they say themselves;
    ``policies``: whose advice holds for them where authorities differ (lightly cooked British Lion eggs)."""
    from spoonproof.claims.find import find_claims
    from spoonproof.claims.judging.fragments import without_fragments, worse_reading

    heard = [judge(claim) for claim in find_claims(passages, knowledge.lexicon, apart=apart)]
    judged = without_fragments([one for one in heard if not (_only_told(one, knowledge) or _not_given(one, knowledge))])
    more: list[JudgedClaim] = []
    named = None if apart else meant_for((passage.text for passage in passages), months)
    if named is None and for_babies:
        named = months
    for one in _dangers(passages, knowledge, months if named is None else named, policies, by_shape=named is None):
        known = frames(one.claim, knowledge.register) == 1 or called_untrue(one.claim.quote)
        taken_back = known and not waved_aside(
            one.claim.passage.text, one.claim.start, one.claim.end, knowledge.feeding
        )
        if taken_back or any(_same(other, one) for other in more):
            continue
        if not any(_says_as_much(other, one) or _speaks_against(other, one, knowledge) for other in judged):
            more.append(one)
    if more:
        judged = [one for one in judged if not any(worse_reading(danger, one) for danger in more)]
        place = {id(passage): at for at, passage in enumerate(passages)}
        judged = sorted([*judged, *more], key=lambda one: (place[id(one.claim.passage)], one.claim.start))
    return [as_found(one, knowledge.register) for one in judged]


def _only_told(one: JudgedClaim, knowledge: Knowledge) -> bool:
    """Whether what would be cut is nobody's advice: only asked about, once believed, or disowned by what follows."""
    claim = one.claim
    if claim.kind not in ("safety-age", "disease", "function") or one.advice not in ("keep", "cut-untrue", "add"):
        return False
    if one.advice == "keep" and _stance_of_entry(one, knowledge.register) != "permits":
        return False
    if _answered(claim) or frames(claim, knowledge.register) > 1:
        return False
    start, place = claim.sentence[0] if claim.sentence else claim.start, (claim.start, claim.end)
    aside = answered_no if one.advice == "add" else set_aside  # what is asked and not answered stays open
    return aside(claim.passage.text, start, place, knowledge.feeding)


def _answered(claim: Claim) -> bool:
    """Whether a claim is a question that is denied: "can she choke on it? Not if you watch her"."""
    return claim.polarity == "refutes" and claim.passage.text[claim.end :].lstrip()[:1] == "?"


_FOR_ALL_THAT = re.compile(
    r"\b(?:fine|ok|okay|safe|(?<!as )harmless|nonsense|rubbish|myth|but|though|although|yet"
    r"|however|anyway|still|even)\b",
    re.I,
)
"""Words of a sentence that gives after all what it calls bad."""
_AVOID = re.compile(
    r"\W*(?:(?:always|please|so) )?(?:avoid|instead of|rather than) (?!(?:\w+ ){0,3}(?:rule|advice|fuss|worry|delay))",
    re.I,
)
_NOT_DONE = re.compile(
    r"\b(?:i|we) (?:did not|didn['’]t|do not|don['’]t|never|won['’]t|would never) "
    r"(?:put|give|gave|feed|fed|offer|rub|add|use|pour|dip|serve)\b",
    re.I,
)
_HARM_TOLD = re.compile(
    r"\b(?:ill|sick|poorly|botulism|listeria|salmonella|mercury|poison\w*|chok\w*|hospital|harm\w*|risks?|danger\w*)\b",
    re.I,
)


def _not_given(one: JudgedClaim, knowledge: Knowledge) -> bool:
    """Whether what would be cut as given is, by the words around the food, kept from the baby, made safe for it, or
    somebody else's: "we leave shark for others, for the mercury"."""
    claim = one.claim
    if not one.advice.startswith("cut") or claim.sentence is None or _answered(claim):
        return False
    decided = _stance_of_entry(one, knowledge.register)
    if decided is None:
        return False
    said = claim.passage.text[slice(*claim.sentence)]
    permits = one.advice == "cut-untrue" and decided == "permits"
    if permits and _AVOID.match(said):
        return True
    if (
        _FOR_ALL_THAT.search(said)
        or waived(plain(said))
        or not (permits or (_NOT_DONE.search(said) and _HARM_TOLD.search(said)))
    ):
        return False
    tables, subjects = knowledge.feeding, {subject.lower() for subject in claim.subjects}
    foods = tables.phrases.find(said, negated=True)
    about = [food for food in foods if _same_food(said[food.start : food.end].lower(), subjects)]
    about = about or [food for food in foods if claim.start <= claim.sentence[0] + food.start < claim.end]
    denial = any(clause.has("denies", "wary") for clause in clauses(claim.quote, (), tables))
    return bool(about) and all(_kept(stance(said, food, tables), permits=permits and denial) for food in about)


def _same_food(name: str, subjects: Iterable[str]) -> bool:
    """Whether one name holds the other: "almonds", "whole almonds"."""
    return any(subject in name or name in subject for subject in subjects)


def _stance_of_entry(one: JudgedClaim, register: Register) -> str | None:
    """What the entry that decided a claim does with its food: "permits", "warns"; None where no entry decided."""
    entry = register.get(one.entry) if one.entry else None
    return None if entry is None else entry.stance


def _kept(told: Stance, *, permits: bool) -> bool:
    """Whether the food is not handed to the baby; a denial alone may be that of the danger."""
    return told.eaters == "others" or told.turned not in (("", "denied") if permits else ("",))


def row_level(judged: JudgedClaim) -> Level | None:
    """How bad a danger is by the row of the table that knows it; None for what is no such danger."""
    told = judged.claim.steps[:1] == (_told(judged.claim.relates_to or ""),)
    return _LEVELS[judged.harm] if told else None


def _told(about: str) -> str:
    """The first step of the trail of a danger."""
    return f"endangers a baby: {about}"


def _says_as_much(other: JudgedClaim, one: JudgedClaim) -> bool:
    """Whether a statement to be cut tells of the danger ``one`` already: of safety, and in its words."""
    if not other.advice.startswith("cut") or other.claim.kind != "safety-age" or not other.claim.overlaps(one.claim):
        return False
    quote = other.claim.quote.lower()
    return not one.claim.subjects or any(food in quote for food in one.claim.subjects)


def _speaks_against(other: JudgedClaim, one: JudgedClaim, knowledge: Knowledge) -> bool:
    """Whether a statement that stands is the very words of a danger, and takes them back or warns of it: "some say wait
    till one for egg, you don't need to", "honey harms babies"."""
    if not other.claim.overlaps(one.claim) or not (other.stays or _only_an_effect(other, one)):
        return False
    at, tables = other.claim.end, knowledge.feeding
    text = one.claim.passage.text
    stop = _STOPS.search(text, one.claim.end)
    said = text[one.claim.start : stop.start() if stop else len(text)]
    if still_done(text, at) or defies(said, tables) or hedged(one.claim.quote, at - one.claim.start, tables):
        return False
    if other.claim.polarity == "refutes":
        return True
    if not one.claim.subjects or not _tells_all(other.claim, one.claim):
        return False  # what is done about choking, or waited with, no warning of a food takes back
    register = knowledge.register
    if _stance_of_entry(other, register) == "warns" or _only_an_effect(other, one):
        return True
    harm = register.words.get("harm told", ())
    return other.claim.polarity == "asserts" and has_any(plain(other.claim.quote), harm)


def _only_an_effect(other: JudgedClaim, one: JudgedClaim) -> bool:
    """Whether the words of a danger say no more than what a food does or doesn't do, or is needed for: "prunes keep
    babies regular", "sugar doesn't make them hyper" hand nothing to anybody. Judging has its own word on it."""
    claim = other.claim
    judged_so = other.advice == "keep" if claim.kind == "disease" else not other.advice.startswith("cut")
    before = plain(one.claim.passage.text[one.claim.start : claim.start])
    begins = _HANDS_OVER.search(before) is None and not any(food in before for food in one.claim.subjects)
    if claim.kind not in ("function", "disease") or not (judged_so and begins):
        return False
    return _GIVEN.search(claim.quote) is None and _tells_all(claim, one.claim)


_GIVEN = re.compile(r"\b(?:give|hand|offer|feed|let) (?:her|him|them|the|your|a) ", re.I)
"""Words of an effect that hand its food over: "for teething, give her ice"."""
_STOPS = re.compile(r"[.!?;\n]")


_HANDS_OVER = re.compile(
    r" (?:(?:giv|gav|offer|feed|fed|serv|add|put|us|mix|stir|pour|pop|hand|let|eat|ate|drink|drank|dip|tak|get|got"
    r"|bring|buy|bought)[a-z]*|ha(?:ve|s|d)(?! (?:my|always|been|no idea)\b)|them|this|these|with) |(?<=[a-z]) it "
)
"""Words before an effect that may hand its food to somebody."""


def _tells_all(warning: Claim, danger: Claim) -> bool:
    """Whether the words of a danger are those of a warning, or name its food nowhere else and speak on of nothing: "we
    left a raw milk co-op when we had our son, because germs can make a baby ill"."""
    behind = _COMMENT.sub("", danger.passage.text[warning.end : danger.end])
    if len(behind) < _A_WORD or _WHICH_HARMS.match(behind):
        return True
    said, warned = danger.quote.lower(), warning.quote.lower()
    once = all(said.count(food) == 1 and food in warned for food in danger.subjects)
    return once and _SPEAKS_ON.search(behind) is None


_WHICH_HARMS = re.compile(
    r",? (?:that|which|and) (?:(?:can|could|may|might) )?(?:make|harm|hurt|cause|kill|poison)s?\b[^,;.]*\W*$"
)
"""What says on of a warning's own food how it harms: "raw milk can carry germs *that make children ill*"."""
_COMMENT = re.compile(
    r",? (?:and )?(?:(?:that|it)(?:['’]s| is) (?:just |simply )?(?:a fact|the truth|true|the case|final|that)"
    r"|(?:even if|whatever|no matter what) (?:some|they|people|anyone|others|the \w+|your \w+|my \w+) (?:may |might )?"
    r"(?:laughs?|says?|thinks?|disagrees?|tells? you|claims?|believes?))\W*$",
    re.IGNORECASE,
)
"""What a teller puts behind a statement to vouch for it: "..., and that's a fact", "whatever they say"."""
_A_WORD = 16
"""Characters that a danger's clause may have behind a warning: "... 's kidneys"."""
_SPEAKS_ON = re.compile(
    r"\b(?:it|them|that|those|these|this|some|one|any|but|except|unless|until|till)\b", re.IGNORECASE
)
"""Words behind a warning that may hand over after all what it keeps back."""


def _same(other: JudgedClaim, one: JudgedClaim) -> bool:
    """Whether two dangers are one, heard twice."""
    return not other.claim.is_another_danger(one.claim) and other.claim.overlaps(one.claim)


def _dangers(
    passages: Sequence[Passage], knowledge: Knowledge, months: int, policies: Mapping[str, str], *, by_shape: bool
) -> Iterator[JudgedClaim]:
    tables = knowledge.feeding
    for whole in passages:
        lines = lines_apart(whole, knowledge.lexicon.breaths)
        breaths = list(_breaths(whole, knowledge.lexicon.breaths, lines))
        for told in advised([_by_breath(whole, breaths, lines)], months, tables, policies, _MARKETS, by_shape=by_shape):
            place = told.sentence
            if place[1] - place[0] <= _SENTENCE:
                name = whole.text[slice(*told.name)].lower()
                quote = clause_around(whole.text, place, told.said_at)
                yield _as_judged(whole, quote, told.id, told.level, told.why, told.sources, (name,))
        parted = _by_breath(whole, breaths, lines, mark=";")
        for one in contradictions([parted], tables):
            start = max(parted.text.rfind(mark, 0, one.start) for mark in ".!?;\n") + 1
            if not set_aside(parted.text, start, (one.start, one.end), tables):
                yield _as_told(whole, parted.text, one, (one.start, one.end))
        named = with_bottle(parted.text, tables)
        for one in contradictions([replace(parted, text=named.text)], tables) if named else ():
            there = named.place(one.start, one.end) if named and one.row in ROWS else None
            if there is not None:
                yield _as_told(whole, parted.text, one, there)


def _as_told(whole: Passage, text: str, one: Contradiction, place: tuple[int, int]) -> JudgedClaim:
    quote = sentence_around(text, place)
    return _as_judged(whole, quote, one.caution or one.row, one.level, f"{one.why} {one.remedy}", (one.source,))


def _by_breath(passage: Passage, breaths: Sequence[Sentence], lines: Sequence[int], mark: str = "\n") -> Passage:
    """The passage with a ``mark`` between its breaths and lines, so that each is a sentence, and its places the same; a
    breath too long to be one is parted where its words begin anew."""
    text = list(passage.text)
    starts = list(lines)
    starts += [breath.start for breath in breaths[1:] if _BEGINS.match(passage.text, breath.start)]
    starts += [match.end() for match in _COUNTED.finditer(passage.text)]
    for where in (_ANEW, _AT_LEAST, _DO_THIS):
        for start, end in pairwise(sorted({0, *starts, len(passage.text)})):
            if end - start > _SENTENCE:
                starts += _parted(passage.text, start, end, where)
    for start in starts:
        if start and text[start - 1] == " ":
            text[start - 1] = mark
    return replace(passage, text="".join(text), pieces=(), cues=())


def _parted(text: str, start: int, end: int, where: re.Pattern[str]) -> list[int]:
    """Where to part a stretch that is too long: as seldom as its words allow."""
    cuts, last = [], start
    for match in where.finditer(text, start, end):
        if match.end() - last > (_SENTENCE // 2 if where is _AT_LEAST else _SENTENCE // 4):
            cuts.append(match.end())
            last = match.end()
    return cuts


def _breaths(passage: Passage, rows: Sequence[BreathRow], lines: Sequence[int]) -> Iterator[Sentence]:
    """The sentences of a passage, and of speech without full stops its breaths: a "no" of one doesn't deny the next."""
    cuts = cut_points(passage.text, lines)
    for start, end in zip(cuts, [*cuts[1:], len(passage.text)], strict=True):
        yield from sentences(passage.text, start, end, rows)


def _as_judged(
    passage: Passage,
    within: tuple[int, int],
    about: str,
    level: Level,
    why: str,
    sources: tuple[SourceRef, ...],
    foods: tuple[str, ...] = (),
) -> JudgedClaim:
    claim = Claim(
        passage=passage,
        start=within[0],
        end=within[1],
        kind="safety-age",
        subjects=foods,
        relates_to=about,
        effect="danger",
        steps=(_told(about),),
    )
    return JudgedClaim(
        claim=claim,
        truth="false",
        allowed=(),
        advice="cut-untrue",
        harm=_HARM[level],
        why=why,
        sources=sources,
        trail=(*claim.steps, "advice: false -> cut-untrue"),
    )
