"""channel.yaml: the keys it may hold, and the reader that makes a ``Channel`` of them."""

from __future__ import annotations

import re
from typing import cast

from spoonproof.model.channel import Accepted, Away, Baby, Channel, Day, Kitchen
from spoonproof.model.claim import Market, Paid
from spoonproof.model.finding import Finding
from spoonproof.model.record import replace
from spoonproof.model.text import Document
from spoonproof.model.tree import Mapped, Node, Scalar
from spoonproof.reading.quantities import ages, clock, date, matched, time_of_day, whole, words_a_minute
from spoonproof.reading.typed import (
    Key,
    Reader,
    Sink,
    Values,
    either,
    listed,
    one_of,
    open_mapping,
    read_keys,
    scalar,
    shape,
    text,
    wrong,
)
from spoonproof.reading.yaml_tree import read_yaml

MARKETS: tuple[Market, ...] = ("EU", "GB", "US", "Codex")
PAID: tuple[Paid, ...] = ("editorial", "gifted", "affiliate", "sponsored", "own-product")
MEASURES = ("UK", "US", "metric", "AU")

_AWAY = re.compile(
    r"(?P<start>[0-9]{1,2}:[0-9]{2})\s{0,4}[-–—]\s{0,4}(?P<end>[0-9]{1,2}:[0-9]{2})(?:\s{1,4}(?P<why>.*))?"
)
_URL = re.compile(r"(?P<base>https?://[a-zA-Z0-9.-]{1,253}(?::[0-9]{1,5})?(?:/[A-Za-z0-9._~/-]{0,200})?)")
_LANGUAGE = re.compile(r"(?P<tag>[a-z]{2,3}(?:-[A-Za-z0-9]{2,8}){0,3})")


AWAY_FROM = Key("from", time_of_day(), "When it starts.", needed=True)
AWAY_TO = Key("to", time_of_day(), "When it ends.", needed=True)
AWAY_WHY = Key("why", text(), "Why nobody cooks then.")
_AWAY_SHAPE = shape((AWAY_FROM, AWAY_TO, AWAY_WHY), "a time away")


def _away_words() -> Reader[Away]:
    words = "a time away, like 12:00-13:00 nap"

    def parse(node: Scalar, sink: Sink) -> Away | None:
        match = _AWAY.fullmatch(node.value.strip())
        if match is None:
            wrong(node, sink, words)
            return None
        start, end = (clock(Scalar(match[end], node.span), sink) for end in ("start", "end"))
        return _away(start, end, match["why"] or "", node, sink)

    return scalar(words, {"type": "string", "examples": ["12:00-13:00 nap"]}, parse)


def _away_mapping() -> Reader[Away]:
    def read(node: Node, sink: Sink) -> Away | None:
        values = _AWAY_SHAPE.read(node, sink)
        if values is None:
            return None
        return _away(values.get(AWAY_FROM), values.get(AWAY_TO), values.or_else(AWAY_WHY, ""), node, sink)

    return Reader(_AWAY_SHAPE.words, _AWAY_SHAPE.schema, read)


def _away(start: int | None, end: int | None, why: str, node: Node, sink: Sink) -> Away | None:
    if start is None or end is None:
        return None
    if end <= start:
        sink.add("reversed-range", node.span, "This time away ends before it starts.")
        return None
    return Away(start, end, why.strip())


COOKS = Key("cooks", whole(1, 20), "How many pairs of hands cook.")
RINGS = Key("rings", whole(0, 20), "Rings of the hob that can be used at once.")
TIERS = Key("steamer tiers", whole(0, 10), "Tiers of the steamer.")
BLENDER = Key("blender", whole(0, 10), "Blenders.")
OVEN = Key("oven", whole(0, 10), "Ovens.")

FROM = Key("from", time_of_day(), "When the filming day starts.")
TO = Key("to", time_of_day(), "When it ends.")
AWAY = Key("away", listed(either(_away_words(), _away_mapping()), alone=True), "When nobody cooks or films.")

KNOWS = Key("knows", listed(text("a food"), alone=True), "Foods the baby knows already.")
ADVICE = Key("advice", text("words"), "What a doctor said: none, severe eczema, known allergy ...")

POLICY_NAME = Key("name", text("a policy's name"), "The policy, by the name of its authority.", needed=True)
POLICY_REASON = Key("reason", text("a reason"), "Why it was chosen.")

RULE = Key("rule", text("a rule's name"), "The rule whose finding is lived with.", needed=True)
PLACE = Key("place", text("a file, or file:line"), "Where.", needed=True)
REASON = Key("reason", text("a reason"), "Why it is lived with.")
UNTIL = Key("until", date(), "The day it is looked at again.")

TITLE = Key("title", text("the channel's name"), "The channel's name.")
AUTHOR = Key("author", text("a name"), "Who writes.")
ABOUT = Key("about", text("a sentence"), "What the channel is, for the front page.")
BASE_URL = Key("base_url", matched("a web address like https://example.org", _URL, lambda m: m["base"].rstrip("/")),
               "The site's address.")  # fmt: skip
LANGUAGE = Key("language", matched("a language tag like en-GB", _LANGUAGE, lambda m: m["tag"]), "The language written.")
MEASURE = Key("measures", one_of(MEASURES), "Whose spoons and cups: they differ.")
MARKET = Key("markets", listed(one_of(MARKETS, {"UK": "GB", "USA": "US"}), alone=True), "Whose law on claims is asked.")
AGES = Key("ages", ages(), "The ages the channel cooks for.")
PAID_KEY = Key("paid", one_of(PAID), "Who pays for what is said; a recipe may say otherwise.")
SPEECH = Key("speech", words_a_minute(), "How fast the presenter speaks.")
PRESENTERS = Key(
    "presenters", open_mapping(words_a_minute(), "names, each with a pace"), "How fast each presenter speaks."
)
KITCHEN = Key("kitchen", shape((COOKS, RINGS, TIERS, BLENDER, OVEN), "the kitchen"), "What can be used at once.")
DAY = Key("day", shape((FROM, TO, AWAY), "the day"), "The filming day.")
POLICIES = Key(
    "policies",
    open_mapping(
        either(text("a policy's name"), shape((POLICY_NAME, POLICY_REASON), "a policy")), "policies by question"
    ),
    "Which authority is followed where they differ.",
)
BABY = Key("baby", shape((KNOWS, ADVICE), "the baby"), "The baby of the calendar of new foods.")
ACCEPTED = Key("accepted", listed(shape((RULE, PLACE, REASON, UNTIL), "an accepted finding")), "Findings lived with.")

CHANNEL_KEYS = (
    TITLE, AUTHOR, ABOUT, BASE_URL, LANGUAGE, MEASURE, MARKET, AGES, PAID_KEY, SPEECH, PRESENTERS, KITCHEN, DAY,
    POLICIES, BABY, ACCEPTED,
)  # fmt: skip


def read_channel(document: Document) -> tuple[Channel, list[Finding]]:
    """The channel that a channel.yaml describes; defaults stand where it has faults, and the findings say so."""
    root, findings = read_yaml(document)
    sink = Sink(document)
    if isinstance(root, Mapped):
        channel = _channel(document, read_keys(root, CHANNEL_KEYS, sink, "the channel"))
    else:  # where nothing but comments stands, the defaults are meant
        channel = Channel(document)
        if root is not None:
            sink.add("front-matter-not-a-mapping", document.whole, "channel.yaml must be made of keys and values.")
    return channel, findings + sink.findings


def _channel(document: Document, values: Values) -> Channel:
    plain = values.put_into(
        Channel(document, keys=values.spans),
        title=TITLE, base_url=BASE_URL, language=LANGUAGE, measures=MEASURE, ages=AGES, paid=PAID_KEY, speech=SPEECH,
        presenters=PRESENTERS, author=AUTHOR, about=ABOUT,
    )  # fmt: skip
    kitchen, day, baby = values.get(KITCHEN), values.get(DAY), values.get(BABY)
    policies = values.or_else(POLICIES, {})
    told = {name: (p, "") if isinstance(p, str) else _policy(p) for name, p in policies.items()}
    none: tuple[str, ...] = ()
    return replace(
        plain,
        markets=cast(tuple[Market, ...], tuple(dict.fromkeys(values.or_else(MARKET, none)))) or plain.markets,
        kitchen=_kitchen(kitchen) if kitchen is not None else plain.kitchen,
        day=day.put_into(Day(), start=FROM, end=TO, away=AWAY) if day is not None else plain.day,
        policies={name: policy for name, (policy, _) in told.items()},
        policy_reasons={name: told[name][1] for name, policy in policies.items() if isinstance(policy, Values)},
        baby=_baby(baby) if baby is not None else plain.baby,
        accepted=tuple(_accepted(entry) for entry in values.or_else(ACCEPTED, ())),
    )


def _policy(values: Values) -> tuple[str, str]:
    return values.or_else(POLICY_NAME, ""), values.or_else(POLICY_REASON, "")


def _accepted(values: Values) -> Accepted:
    plain = Accepted("", "", "", "", values.mapped.span)
    return values.put_into(plain, rule=RULE, place=PLACE, reason=REASON, until=UNTIL)


def _kitchen(values: Values) -> Kitchen:
    return values.put_into(Kitchen(), cooks=COOKS, rings=RINGS, steamer_tiers=TIERS, blender=BLENDER, oven=OVEN)


def _baby(values: Values) -> Baby:
    baby = values.put_into(Baby(), knows=KNOWS, advice=ADVICE)
    return replace(baby, advice="") if baby.advice.lower() in ("none", "no") else baby
