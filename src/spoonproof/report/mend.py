"""What a creator posts when something she said needs mending: a comment, an addendum, a card.

The truth comes first and is the loudest; what was said is pointed at by its time and topic, never quoted.
Plain words that she can make her own; on safety and illness, health professionals and local guidance come first.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from spoonproof.claims.wording import is_hint
from spoonproof.claims.words import is_many
from spoonproof.model.citation import UNPUBLISHED, Csl, address, short
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.record import NamedTuple

CARD_LENGTH = 90
"""Characters that can be read from a card within three seconds or so (common practice for text over a picture)."""
_SERIOUS = frozenset({"safety-age", "disease", "allergen"})
_DISH = frozenset("dish recipe meal food soup porridge stew mash puree purée pot snack".split())
_PART = frozenset("portion serving bowl bowlful spoonful helping".split())
_POINTING = frozenset("it this that these they them".split())
_FIGURES = re.compile(
    r"(?P<what>[^:]{1,80}): (?P<amount>[^;]{1,80}); the claim (?P<need>needs|allows at most) "
    r"(?P<limit>[0-9.]{1,12} [^ .;]{1,6})\.(?P<rest>.*)",
    re.DOTALL,
)
_TO_THE_AUTHOR = re.compile(
    r"[:;,] (?:say|name|bring|cite|call it|give) [^.]*(?=\.)|; [^.;]*\bwording\b[^.;]*(?=\.)"
    r"| ?\b(?:Say|Name|Bring|Cite|Call) [^.]*\."
)
"""A turn in the register's reason that tells the author what to write; the audience needs none of it."""
_UNCHECKED = "This cannot be checked here. "
_MARKS_OF_OURS = (_UNCHECKED, "The verb says more than was shown. ")


class Mend(NamedTuple):
    """Three texts to post, and a word to the creator that is not to be posted ("" when there is none)."""

    comment: str
    description: str
    card: str
    to_you: str


def mend(judged: JudgedClaim, times: Sequence[str], sources: Mapping[str, Csl], day: str) -> Mend:
    """The texts for one statement, said at ``times`` ("1:23"; none for a text), on ``day`` in words."""
    reason, wording = reason_of(judged), postable(judged.wording)
    refs = dict.fromkeys(ref.id for ref in judged.sources) if judged.truth != "unlisted" else {}
    cited = [cite for ref in refs if (cite := _cited(ref, sources))]
    laws = all(sources[ref].get("type") == "legislation" for ref in refs if ref in sources)
    brief = [_cited(ref, sources, brief=True) for ref in refs if _cited(ref, sources)]
    tail = " " + _looked(brief, laws) if brief else ""
    said = " ".join(part for part in (f"at {_and(times)}" if times else "", _topic(judged)) if part) or "here"
    comment = _comment(judged, reason, _by_name(wording, judged), said)
    where = f" (at {_and(times)})" if times else ""
    core = _by_name(_core(judged, reason, wording), judged)
    care = " " + _CARE if judged.claim.kind in _SERIOUS else ""
    return Mend(
        f"{comment}{care}{tail}",
        f"{'Note' if judged.advice == 'add' else 'Correction'}, {day}{where}: {core}{care}"
        + (f" Sources: {'; '.join(cited)}" if cited else ""),
        _card("Note" if judged.advice == "add" else "Correction", _told_first(judged, core), _by_name(wording, judged)),
        _to_you(judged),
    )


_CARE = "If you are unsure, ask your doctor or health visitor; the advice where you live comes first."


def reason_of(judged: JudgedClaim) -> str:
    """Why it does not stand, as one would tell it: figures in a sentence, none of our own shop talk."""
    why = judged.why.partition(" Add: ")[0]
    if judged.claim.kind == "allergen" and why.startswith(_UNCHECKED):
        why = f"Whether it is free of it, the labels must say: {_small(why.removeprefix(_UNCHECKED))}"
    for mark in _MARKS_OF_OURS:
        why = why.replace(mark, "")
    figures = _FIGURES.fullmatch(why)
    if figures is not None:
        at_least = "at least" if figures["need"] == "needs" else "at most"
        what = figures["what"][:1].lower() + figures["what"][1:]
        amount = f"there is {figures['amount']} in {what}"
        why = f"By the food tables {amount}; those words take {at_least} {figures['limit']}.{figures['rest']}"
    if why.startswith("Computed: "):
        why = "By the food tables it is " + why.removeprefix("Computed: ")
    return _TO_THE_AUTHOR.sub("", why.strip())


def postable(wording: str | None) -> str:
    """The wording that stands, "" when it is a hint to the author rather than words for an audience."""
    if not wording or is_hint(wording) or "{" in wording:
        return ""
    if wording.startswith("about "):
        return ""  # the reason gives the figure
    text = wording.strip().rstrip(".")
    lead = next((lead for start, lead in _LEADS if text.startswith(start)), "")
    text = f"{lead}{text}"
    return text[:1].upper() + text[1:]


_LEADS = (
    ("high in ", "it is "),
    ("low in ", "it is "),
    ("a source of ", "it is "),
    ("source of ", "it is a "),
    ("made with", "it is "),
    ("a plant source ", "it is "),
    ("a good early ", "it is "),
    ("no added ", "it has "),
    ("contains ", "it "),
)
"""How a register's wording that is no whole sentence begins, and what makes it one."""


def _topic(judged: JudgedClaim) -> str:
    """ "about honey", when the statement itself names it; what it was carried from may lie far back."""
    quote = judged.claim.quote.lower()
    for subject in judged.claim.subjects:
        word = " ".join(subject.split())[:60]
        if word.lower() in _DISH:
            return f"about this {word}"
        if word.lower() in _PART:
            return f"about a {word.lower()}"
        if word and word.lower() in quote and word.lower() not in _POINTING:
            word = _as_said(word, judged.claim.quote)
            return f"about {word[:1].lower() + word[1:] if _common(word) else word}"
    return ""


def _as_said(word: str, quote: str) -> str:
    """The word as it was said, in the plural where it was: "grapes"."""
    found = re.search(rf"\b{re.escape(word)}(?:e?s)?\b", quote, re.IGNORECASE)
    return " ".join(found[0].split()) if found else word


def _comment(judged: JudgedClaim, reason: str, wording: str, said: str) -> str:
    stands = (
        f" What I can say: {wording[:1].lower() + wording[1:] if _common(wording) else wording}." if wording else ""
    )
    if judged.advice == "add" and judged.claim.polarity == "asks" and judged.truth != "true":
        return f"To answer what I asked {said}: {_small(reason)}{stands}"
    if judged.advice == "add":
        return f"Something I should have added {said}: {_added(judged)}."
    if judged.advice == "cut-not-allowed":
        return (
            f"A correction from me. This one is paid for, and paid speech has rules that what I said {said} "
            f"does not meet, so please set it aside.{stands}"
        )
    if judged.advice == "source-it" and judged.truth == "unlisted":
        return (
            f"I can't show you a source for what I said {said}, so please don't lean on it.{stands} "
            "If I find good evidence, I will post it here."
        )
    if reason.startswith("How much "):
        return f"I said more than I can show {said}. {reason} Please don't lean on it.{stands}"
    if judged.truth == "false" and judged.claim.kind in _SERIOUS:
        return f"Please read this before you cook. {reason} What I said {said} was wrong, and I am sorry.{stands}"
    if judged.truth == "false":
        return f"A correction from me. {reason} So what I said {said} does not hold, sorry.{stands}"
    if judged.advice == "cut-untrue":
        return f"A correction from me. {reason} I should not have promised what I did {said}.{stands}"
    if judged.truth == "overstated":
        first = f"{wording}. " if wording else ""
        return f"Let me put this more carefully than I did {said}. {first}{reason}"
    return f"I would say this differently today. {reason} Please take what I said {said} with that in mind.{stands}"


def _core(judged: JudgedClaim, reason: str, wording: str) -> str:
    if judged.advice == "add":
        return f"{_added(judged)[:1].upper()}{_added(judged)[1:]}."
    if judged.advice == "source-it" and judged.truth == "unlisted":
        return (
            wording + "."
            if wording
            else f"I have no source for what I said {_topic(judged) or 'here'}; please don't lean on it."
        )
    if judged.advice == "cut-not-allowed":
        return wording + "." if wording else f"please set aside what I said {_topic(judged) or 'here'}."
    return (f"{wording}. " if wording and wording.lower() not in reason.lower() else "") + reason


def _by_name(text: str, judged: JudgedClaim) -> str:
    """A sentence that stands by itself names its food: "Salmon is a source of omega-3", and not "it"."""
    word = _topic(judged).removeprefix("about ")
    if not word or not text.startswith("It is "):
        return text
    verb = "are" if is_many(word) else "is"
    return f"{word[:1].upper()}{word[1:]} {verb} {text[6:]}"


def _added(judged: JudgedClaim) -> str:
    """What a true statement needs beside it."""
    added = (judged.why.partition(" Add: ")[2] or judged.wording or judged.why).strip().rstrip(".")
    if judged.wording and added.startswith(("how much it is, ", "what it brings, ")):
        return judged.wording.rstrip(".")
    if added.startswith("say per what: "):
        added = "the figure is " + added.removeprefix("say per what: ")
    return added


def _told_first(judged: JudgedClaim, core: str) -> str:
    """What a card is made from: of a danger that takes too long to tell, what to do about it, with the food's name."""
    first, _, rest = core.partition(". ")
    if judged.claim.effect != "danger" or not rest or len(first) < CARD_LENGTH - len("Correction: "):
        return core
    food = next(iter(judged.claim.subjects), "")
    known = not food or re.search(rf"\b{re.escape(food)}", rest, re.IGNORECASE)
    return rest if known else f"{food[:1].upper()}{food[1:]}, {rest[:1].lower()}{rest[1:]}"


def _card(label: str, core: str, wording: str) -> str:
    """The shortest of the true sentences that fits; else a pointer to the comment."""
    first = re.split(r"(?<=[.!?]) ", core, maxsplit=1)[0]
    clause = re.split(r"[:;] ", first, maxsplit=1)[0].rstrip(".") + "."
    part = first.partition(", ")[0].rstrip(".") + "."
    candidates = [
        wording + "." if wording and label == "Correction" else "",
        first,
        part if ": " in part else "",
        clause,
        part if first.count(", ") == 1 and ", and " in first else "",
    ]
    for text in candidates:
        if text and len(text) <= CARD_LENGTH - len(f"{label}: "):
            return f"{label}: {text[:1].upper()}{text[1:]}"
    return f"{label}: please read the pinned comment."


def _to_you(judged: JudgedClaim) -> str:
    first = judged.sources[0].basis if judged.sources else ""
    if first == "from-memory":
        return "Our note of the source is from memory: read it yourself before you post."
    if not any(ref.id not in UNPUBLISHED for ref in judged.sources):
        return "There is no published source behind this: say so, or leave the correction plain."
    return ""


def _looked(cited: Sequence[str], laws: bool) -> str:
    """The sources as a creator gives them; where there is nothing but law, it is a rule and no evidence."""
    return f"{'The rule on this' if laws else 'Where I looked'}: {'; '.join(cited)}"


def _cited(source: str, sources: Mapping[str, Csl], brief: bool = False) -> str:
    """The source with its address; ``brief`` for a comment, where a long title ends at its first stop."""
    if source in UNPUBLISHED:
        return ""
    link = address(source, sources)
    named = short(source, sources)
    if brief and len(named) > _LONG:
        stop = _TITLE_STOP.search(named, _LONG // 2)
        named = named[: stop.start()] if stop and link else named
    return named + (f", {link}" if link else "")


_LONG = 80
"""Characters of a source's name that a comment bears."""
_TITLE_STOP = re.compile(r": | \((?!E[UC]\))| on the |, (?:in|consolidated|ECLI|judgment) ?")


def _and(parts: Sequence[str]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"


def _small(text: str) -> str:
    """A sentence as it stands after a colon."""
    return text[:1].lower() + text[1:] if _common(text) else text


def _common(text: str) -> bool:
    """Whether a sentence may start small: its first word is no name or abbreviation."""
    word = text.split(" ", 1)[0]
    return word[1:].islower() and word not in ("Vitamin",)
