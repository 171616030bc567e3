"""channel.yaml: the keys it may hold, and the reader that makes a ``Channel`` of them."""

from __future__ import annotations

import re
from typing import cast

from spoonproof.model.channel import Accepted, Away, Baby, Channel, Day, Kitchen
from spoonproof.model.claim import Market, Paid
from spoonproof.model.finding import Finding
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


def _away_words() -> Reader[Away]:
    words = "a time away, like 12:00-13:00 nap"

    def parse(node: Scalar, sink: Sink) -> Away | None:
        match = _AWAY.fullmatch(node.value.strip())
        if match is None:
            wrong(node, sink, words)
            return None
        start = clock(Scalar(match["start"], node.span), sink)
        end = clock(Scalar(match["end"], node.span), sink)
        if start is None or end is None:
            return None
        return _away(start, end, match["why"] or "", node, sink)

    return scalar(words, {"type": "string", "examples": ["12:00-13:00 nap"]}, parse)


def _away(start: int, end: int, why: str, node: Node, sink: Sink) -> Away | None:
    if end <= start:
        sink.add("reversed-range", node.span, "This time away ends before it starts.")
        return None
    return Away(start, end, why.strip())


AWAY_FROM = Key("from", time_of_day(), "When it starts.", needed=True)
AWAY_TO = Key("to", time_of_day(), "When it ends.", needed=True)
AWAY_WHY = Key("why", text(), "Why nobody cooks then.")
_AWAY_SHAPE = shape((AWAY_FROM, AWAY_TO, AWAY_WHY), "a time away")


def _away_mapping() -> Reader[Away]:
    def read(node: Node, sink: Sink) -> Away | None:
        values = _AWAY_SHAPE.read(node, sink)
        start, end = (values.get(AWAY_FROM), values.get(AWAY_TO)) if values is not None else (None, None)
        if values is None or start is None or end is None:
            return None
        return _away(start, end, values.or_else(AWAY_WHY, ""), node, sink)

    return Reader(_AWAY_SHAPE.words, _AWAY_SHAPE.schema, read)


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
    if root is None and not findings:
        return Channel(document), findings  # nothing but comments: the defaults stand
    if not isinstance(root, Mapped):
        sink = Sink(document)
        if root is not None:
            sink.add("front-matter-not-a-mapping", document.whole, "channel.yaml must be made of keys and values.")
        return Channel(document), findings + sink.findings
    sink = Sink(document)
    values = read_keys(root, CHANNEL_KEYS, sink, "the channel")
    return _channel(document, values), findings + sink.findings


def _channel(document: Document, values: Values) -> Channel:
    plain = Channel(document)
    policies = values.or_else(POLICIES, {})
    presenters: dict[str, float] = values.or_else(PRESENTERS, {})
    none: tuple[str, ...] = ()
    return Channel(
        document,
        title=values.or_else(TITLE, plain.title),
        base_url=values.or_else(BASE_URL, plain.base_url),
        language=values.or_else(LANGUAGE, plain.language),
        measures=values.or_else(MEASURE, plain.measures),
        markets=cast(tuple[Market, ...], tuple(dict.fromkeys(values.or_else(MARKET, none)))) or plain.markets,
        ages=values.or_else(AGES, plain.ages),
        paid=cast(Paid, values.or_else(PAID_KEY, plain.paid)),
        speech=values.or_else(SPEECH, plain.speech),
        presenters=presenters,
        kitchen=_kitchen(values.get(KITCHEN)),
        day=_day(values.get(DAY)),
        policies={name: p if isinstance(p, str) else p.or_else(POLICY_NAME, "") for name, p in policies.items()},
        policy_reasons={
            name: policy.or_else(POLICY_REASON, "") for name, policy in policies.items() if isinstance(policy, Values)
        },
        baby=_baby(values.get(BABY)),
        accepted=tuple(_accepted(entry) for entry in values.or_else(ACCEPTED, ())),
        author=values.or_else(AUTHOR, ""),
        about=values.or_else(ABOUT, ""),
        keys=values.spans,
    )


def _accepted(entry: Values) -> Accepted:
    return Accepted(
        entry.or_else(RULE, ""),
        entry.or_else(PLACE, ""),
        entry.or_else(REASON, ""),
        entry.or_else(UNTIL, ""),
        entry.mapped.span,
    )


def _kitchen(values: Values | None) -> Kitchen:
    plain = Kitchen()
    if values is None:
        return plain
    return Kitchen(
        values.or_else(COOKS, plain.cooks),
        values.or_else(RINGS, plain.rings),
        values.or_else(TIERS, plain.steamer_tiers),
        values.or_else(BLENDER, plain.blender),
        values.or_else(OVEN, plain.oven),
    )


def _day(values: Values | None) -> Day:
    plain = Day()
    if values is None:
        return plain
    return Day(values.or_else(FROM, plain.start), values.or_else(TO, plain.end), values.or_else(AWAY, ()))


def _baby(values: Values | None) -> Baby:
    if values is None:
        return Baby()
    advice = values.or_else(ADVICE, "")
    return Baby(values.or_else(KNOWS, ()), "" if advice.lower() in ("none", "no") else advice)
