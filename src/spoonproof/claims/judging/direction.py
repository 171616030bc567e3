"""The words that turn a true statement's direction: an entry that was shown one way answers for no other way.

Vitamin C *helps* iron to be taken up, and does not *harm* it; rice drinks are kept from those *under* five, and not
from those *over* it. Such a word stands where the entry knows it by its own words; else nobody has shown it.
"""

from __future__ import annotations

import re

from spoonproof.claims.entries import Entry, Key
from spoonproof.claims.judging.reading import age_said, around, clause, runs_of, subjects_of
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim

_TURNS = {
    "harms": re.compile(
        r" (?:harms?|harmed|harming|hinders?|hampers?|hindering|worsens?|impairs?|worse|disrupts?|undermines?|weakens?"
        r"|slows?|blocks?|damages?|hurts?|ruins?|stunts?|bad for|loss of) "
    ),
    "harmless": re.compile(r" (?:harmless|(?:does|do) no harm) "),
    "lacks": re.compile(
        r" (?:lacks?|lacked|lacking|devoid of|bereft of|(?:is|are|be|diet|foods?) (?:too )?(?:low|poor) in) "
    ),
    "is rare": re.compile(r" (?:unheard of|uncommon|rarest|rare|unusual|seldom|least common) "),
    "is less": re.compile(r" (?:less|fewer|least) "),
    "is not ready": re.compile(r" (?:unready|unprepared|born ready|too immature|far from ready) "),
    "is too little": re.compile(r" too (?:little|few) "),
    "is harder": re.compile(r" harder to (?:absorb|take up|take in|use|digest) "),
    "has no effect": re.compile(r" (?:has|have|had) no (?:effect|impact|influence|bearing) on "),
    "the more the better": re.compile(r" the more (?:[a-z0-9]+ ){1,4}?the better "),
    "is of no use": re.compile(r" (?:unneeded|useless|no use|pointless) "),
    "keeps it no longer": re.compile(
        r" (?:stops?|stopped|quits?|ceases?) (?:to )?(?:keep|hold|help|contain|support|retain)(?:ing)? "
    ),
}
"""Words of a direction, each with its name; an entry that says none of them was shown the other way."""
_LITTLE = re.compile(r" (?:harmless|low|lower|little|lacks?|less|poor|short) ")
_HARM = re.compile(
    r" (?:harm[a-z]*|hinder[a-z]*|wors[a-z]*|bad|slow[a-z]*|block[a-z]*|damag[a-z]*|hurt[a-z]*|too much|cannot"
    r"|can't|lack|harder|holds? back|less|stop[a-z]*|not) "
)
_KNOWN = {
    "harms": _HARM,
    "is too little": re.compile(r" (?:too little|lack|not enough|short of|deficien[a-z]*|low) "),
    "is harder": _HARM,
    "lacks": _LITTLE,
    "is less": re.compile(r" (?:less|fewer|least|lowers?|little|reduc[a-z]*) "),
}
"""What an entry says that knows of them where it is more than the words themselves."""
_UP = re.compile(r" (?:increas[a-z]*|rais(?:es?|ed|ing)|higher|boosts?) ")
_DOWN = re.compile(r" (?:reduc[a-z]*|lower[a-z]*|decreas[a-z]*) ")
"""Up and down: what was shown to increase was not shown to reduce."""
_TO_ITS_LOSS = re.compile(r" contributes? to (?:the |a |an )?(?:damage|loss|decline|breakdown|decrease) ")
_BAD_SOURCE = re.compile(
    r" (?:bad|lousy|miserable|worst|terrible|hopeless|useless) (?:an? )?(?:[a-z0-9]+ ){0,3}?"
    r"(?:sources?|protein|iron|calcium|way to top up) "
)
_HARMLESS = re.compile(
    r" (?:harmless|blessing|boon|godsend|(?:is|are|be|diet) (?:too )?low in|lacks?|lacking|risk (?:is )?low|low risk"
    r"|too little) "
)
"""What takes its reason from a warning."""
_NUMBER = r"(?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|seventeen|eighteen)"
_FROM_THEN = re.compile(
    r" (?:over|above|past|after|older than|beyond|(?<!no )more than|(?<!away )from(?: the)?(?: age)?(?: of)?) "
    r"(?:(?:the age of|about|around|(?:they|she|he) (?:are|is)|they're|he's|she's) )?"
    rf"(?:(?:{_NUMBER}|a) (?:months?|years?|weeks?) |(?:one|two|three|four|five) |(?:ones|twos|threes|fours|fives) "
    r"|(?:the|their|her|his|your baby's) first birthday |the end of the first year )"
)
"""An age from which on something is said."""
_UP_TO_THEN = re.compile(
    r" (?:under|below|before|until|till|up to|younger|waits?|waited|waiting|at least|even|only|save|later|then|also|but"
    r"|(?<!end of the )first (?:six|year|months)|keep (?:it|them|that)|reduce[ds]?|lowers?|needed"
    r"|delay|delays|delayed|delaying) "
)
_UNTIL_BEFORE = re.compile(r" (?:until|till) before | before [a-z' ]{1,30}(?:never|not|no longer) (?:after|later) ")
"""What waits "until before the first birthday", or is given "before it and never after"."""
_BEFORE_TOO = re.compile(r" before (?:it|that|then)(?: [a-z]+)? (?:always|only|too|as well|fine|okay|ok|also) ")
"""What lets them have it sooner, too: "honey after the first birthday is okay, before it always"."""
_ENDS_AS_IT_BEGINS = re.compile(
    r"(?<! not)(?<!n't) (?:until|till|up to) (?:(?:about|around|the|her|his|their|your baby's) ){0,2}"
    r"(?:four|five|six|seven|sixth|seventh|4|5|6|7|beginning|start) (?:months?|of (?:weaning|solids)) "
)
"""What is said to end when solid food begins: "eggs can go in until about six months"."""
_TOO_LATE = re.compile(
    r" after (?:(?:you|they|it|she|he|your [a-z]+(?: old)?) "
    r"(?:serve|go|goes|land|lands|hand|has|have|had|eats?|gives?|offer)"
    r"|(?:the|your|her|his|their) (?:first|baby's first) (?:tastes?|bites?|egg|peanuts?)|giving|offering|serving"
    r"|peanuts?|eating) "
)
"""What is done too late: a grape quartered "after they go on the tray", a doctor asked "after giving peanut"."""
_DONE_FIRST = re.compile(
    r" (?:quarter|quartered|cut|chop|slice|halve|squash|squashed|grate|grind|mash"
    r"|(?:see|ask|consult|phone|call|speak|talk)(?: to| with)? (?:a|the|your|their) "
    r"(?:doctor|gp|paediatrician|specialist|health visitor|allergist)) "
)
"""What helps only where it is done first."""
_WITHOUT = re.compile(
    r" without (?:(?:a|an|any|the|some|much|added|known|that much|having|even) ){0,2}((?:[a-z'-]+ ){1,2})"
)
_LEFT_WHOLE = re.compile(r" (?:leave|leaving|left) (?:[a-z]+ ){0,3}?(?:whole|uncut|unpeeled) ")
_SOFT = r"(?:quartered|mashed|squashed|ground|grated|pureed|stewed|steamed|finely chopped)"
_MADE_SAFE = re.compile(
    r" (?:(?:no|never|keep|avoid|since|that|because) "
    rf"(?:(?:your|the|a|an|babies|toddlers|to|any|baby|giving|give) ){{0,2}}{_SOFT} "
    r"(?!(?:[a-z]+ ){0,3}(?:fine|okay|safe|lengthways|in|into|until))"
    rf"|(?:never|not|[a-z]+n't) (?:serve|give|offer|get|have|eat)(?: [a-z]+){{0,3}} {_SOFT} "
    rf"|{_SOFT} [a-z]+(?: [a-z]+)? (?:is|are) (?:a |an |still ){{0,2}}"
    r"(?:choking|danger|dangerous|risk|risky|hazard|unsafe) "
    r"|choking [a-z ]{0,12}never give (?:cooked|soft) )"
)
"""What was made safe and is refused all the same."""
_INTO_ROUNDS = re.compile(
    r"(?<! never)(?<! not) (?:always |only |cut |sliced? )(?:[a-z]+ )?into (?:rounds|coins|discs) "
)
_GIVEN = re.compile(
    r" (?:always|only|do|must (?:always|only)|plenty of|lots of|loads of) (?:[a-z]+ )?"
    r"(?:give|serve|offer|eat|feed|have|add) "
)
_ALWAYS_WHOLE = re.compile(r" (?:always|only|plenty of|lots of|loads of) (?:whole|raw|round) ")
_LOTS_OF_IT = re.compile(r" no [a-z ]{1,30} (?:plenty|lots|loads) of (?:salt|sugar|honey|whole) ")
_BADLY_MADE = re.compile(
    r" (?:(?:barely|hardly|scarcely|half|only just) cooked|still (?:raw|pink|frozen)|unground|undiluted"
    r"|unless (?:it|they)(?:'s|'re| is| are) "
    r"(?:smooth|cooked|ground|soft|mashed|quartered|cut|thinned|squashed|fortified)) "
)
"""What takes from a food what makes it safe."""
_UNLESS_YOUNG = re.compile(r" unless (?:[a-z']+ ){0,4}?(?:under|younger than|less than|for a baby|for babies|a baby) ")
_ENDS = re.compile(
    r" (?:(?:until|till|only after|only from) (?:(?:about|around|they|she|he|baby|is|are|turns?|the age of|age) ){0,3})"
)
_MUCH_TOO_SOON = 0.7
"""The part of its entry's time that a warning must last: popcorn is held back "until four" as well as until five."""
_KEPT_TO_IT = re.compile(r" (?:must|should|has to|have to)(?: only)? be (?:given|offered|fed|eaten) (?:until|till) ")
_NO_LESS = re.compile(r" no less than ")
_NO = re.compile(r" (?:[a-z]+n't|not|never|no|nor|none|without|cannot|nobody) ")
_LEFT_ALONE = re.compile(
    r" (?:sit|sits|sitting|stay|stays|staying|be|remain)(?: [a-z]+){0,4} without "
    r"(?:him|her|them|your|the (?:baby|child|toddler)) "
)
"""A child who is left alone at the table."""


def turned(claim: Claim, key: Key, verdict: Verdict, register: Register) -> None:
    """Take the "true" from a statement whose words turn it the way that its entry was not shown."""
    if verdict.truth != "true":
        return
    if claim.polarity == "asks":
        way = _LEFT_ALONE.search(plain(around(claim))) and "the child is left alone"
    else:
        way = _way(claim, key, verdict.entry, register)
    if way:
        verdict.evidence = False
        why = f"Its words turn round what is known of it. {verdict.why}".strip()
        verdict.not_kept("unproven", why, f"its words turn it round ({way})")


def _way(claim: Claim, key: Key, entry: Entry | None, register: Register) -> str:
    """How its words turn it round, "" where they do not."""
    said, whole = plain(clause(claim)), plain(around(claim))
    own = "" if entry is None else _known(entry)
    way = _at_sight(claim, key, said, whole, own)
    if not way and key.stance == "permits":
        way = _let_have(claim, whole, own)
    if not way and entry is not None:
        way = _from_its_entry(claim, key, entry, (said, whole, own), register)
    if way or (entry is not None and entry.stance):
        return way
    if _TO_ITS_LOSS.search(said) or (entry is not None and _up_for_down(said, claim, entry, own)):
        return "up and down"
    skipped = _SAID_OF_CONTENT if entry is None or entry.truth == "computed" else ()
    skipped = (*skipped, "is less") if _NO.search(said) else skipped
    turns = ((way, words) for way, words in _TURNS.items() if way not in skipped)
    return next((way for way, words in turns if words.search(said) and not _KNOWN.get(way, words).search(own)), "")


def _at_sight(claim: Claim, key: Key, said: str, whole: str, own: str) -> str:
    """What turns it round whatever its entry is."""
    ready = _TURNS["is not ready"]
    if _LEFT_ALONE.search(whole):
        return "the child is left alone"
    if _UNTIL_BEFORE.search(said):
        return "before, and not after"
    if _TOO_LATE.search(whole) and _DONE_FIRST.search(whole) and " before " not in whole:
        return "done too late"
    if claim.kind == "nutrient-content" and _BAD_SOURCE.search(said):
        return "a bad source"
    if key.stance != "permits" and _LOTS_OF_IT.search(whole):
        return "lots of it are given"
    return "is not ready" if ready.search(whole) and not ready.search(own) else ""


def _from_its_entry(claim: Claim, key: Key, entry: Entry, words: tuple[str, str, str], register: Register) -> str:
    """What turns it from the very thing, the time or the amount that its entry speaks of: by the ``words`` of its
    clause, of its sentence, and of the entry itself."""
    said, whole, own = words
    if way := _without(said, claim, entry, own, register):
        return way
    if _of_the_time_after(said, key, entry, register):
        return "it is said of the time after"
    if _A_LIMIT.search(own) and _OVER_THE_LIMIT.search(whole):
        return "more than its limit"
    kept_safe = entry.stance == "warns" or has_any(said, register.words.get("made safe", ()))
    if kept_safe and _ends_too_soon(said, entry, register):
        return "its warning ends too soon"
    warns = entry.stance == "warns" or (claim.kind == "safety-age" and key.stance == "warns")
    return _against_the_warning(said, own, register) if warns else ""


_A_LIMIT = re.compile(r" (?:no more|less) than ")
_OVER_THE_LIMIT = re.compile(
    r" (?:should|must|can|may|needs?)(?: to)? (?:have |get |eat )?more than | no less than "
    r"|(?:n't| not) (?:have|get|eat) less than "
    r"| little [a-z]+ more than "
)
_SAID_OF_CONTENT = ("lacks", "is less")
"""What the amounts themselves decide: "cucumber is low in fat"."""


def _up_for_down(said: str, claim: Claim, entry: Entry, own: str) -> bool:
    """Whether it is said to raise what was shown to be lowered, or the other way round."""
    shown = plain(" ".join((own, *(ref.locator for ref in entry.refs))))
    ways = ((_UP, _DOWN), (_DOWN, _UP))
    if any(
        up.search(said) and not down.search(said) and down.search(shown) and not up.search(shown) for up, down in ways
    ):
        return True
    return bool(claim.kind == "function" and entry.effects and _DOWN.search(said) and not _DOWN.search(shown))


def _known(entry: Entry) -> str:
    """The words that an entry itself says."""
    return plain(" ".join((entry.why, entry.add, *entry.said, *entry.also)).replace("*", " "))


def _let_have(claim: Claim, whole: str, own: str) -> str:
    """How the words that let them have a food let them have it in its dangerous shape, or before its time."""
    if _BADLY_MADE.search(whole):
        return "it is not made safe"
    if _KEPT_TO_IT.search(whole) and " milk " not in own:
        return "nothing else is given till then"
    if _NO_LESS.search(whole):
        return "how much at least"
    if claim.kind == "safety-age" and _TURNS["lacks"].search(whole) and not _LITTLE.search(own):
        return "lacks"
    if _BEFORE_TOO.search(whole):
        return "it is given before, too"
    if _ALWAYS_WHOLE.search(whole) or _INTO_ROUNDS.search(whole):
        return "it is given whole"
    if _ENDS_AS_IT_BEGINS.search(whole) and not any(milk in own for milk in ("milk", "breast", "formula")):
        return "it ends as solid food begins"
    return ""


_SOLIDS = 6
"""Months: about when solid food begins."""


def _of_the_time_after(said: str, key: Key, entry: Entry, register: Register) -> bool:
    """Whether a warning, or what is true up to an age, is said of those who are older."""
    found = _FROM_THEN.search(said)
    if found is None or _UP_TO_THEN.search(said):
        return False
    age, (first, last) = age_said(found[0], register), entry.ages
    if key.stance == "warns":
        return age is None or first < max(age, _SOLIDS)  # an entry on the time from then on may say so
    return age is not None and last is not None and age > last


def _ends_too_soon(said: str, entry: Entry, register: Register) -> bool:
    """Whether a warning is said to end long before its entry does: "whole nuts are a danger until one"."""
    found, last = _ENDS.search(said), entry.ages[1]
    age = age_said(said[found.start() :], register) if found else None
    return age is not None and last is not None and age < (last + 1) * _MUCH_TOO_SOON


def _against_the_warning(said: str, own: str, register: Register) -> str:
    """How the words of a warning take its reason from it, or give what they warn of."""
    if _MADE_SAFE.search(said) and "whole" not in said:
        return "what was made safe is refused"
    if _UNLESS_YOUNG.search(said):
        return "it is given to the young"
    if _LEFT_WHOLE.search(said) and not _NO.search(said):
        return "it is left whole"
    if has_any(said, register.words.get("no need to hold back", ())) and " but " not in said:
        return "it need not be held back"
    if _GIVEN.search(said) and not _NO.search(said):
        return "it is given"
    return "it is harmless" if _HARMLESS.search(said) and not _LITTLE.search(own) else ""


def _without(said: str, claim: Claim, entry: Entry, own: str, register: Register) -> str:
    """Whether it goes without the very thing that its entry speaks of: "can't cope without much salt"."""
    found = _WITHOUT.search(said)
    if found is None or " without " in own or entry.stance == "permits":
        return ""
    nutrients = {one.rpartition("_")[0].replace("_", "-") for one in claim.nutrients}
    about = register.about(entry) | subjects_of(claim) | nutrients
    behind = plain(" ".join(said[found.start() :].split()[:6]))
    spoken_of = runs_of(found[1]) & about or f" {found[1]}" in own or has_any(behind, (*entry.said, *entry.also))
    if not spoken_of:
        return ""
    rest = said.replace(found[0], " ")
    kept_back = has_any(rest, register.words.get("holds back", ())) or has_any(rest, register.words.get("risk", ()))
    return "it goes without what it speaks of" if not entry.stance or kept_back else ""
