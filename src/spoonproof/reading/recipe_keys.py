"""The keys of a recipe's head, each with its reader and what it is for; and the JSON Schemas (2020-12) of a recipe and
of a channel, made from the readers so that they can't differ from them."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from spoonproof.model.recipe import TEXTURES
from spoonproof.model.text import Text
from spoonproof.model.tree import Listing, Mapped, Node, Scalar
from spoonproof.reading.channel import CHANNEL_KEYS, PAID
from spoonproof.reading.quantities import ages, date, grams, makes, matched, month, seconds, whole
from spoonproof.reading.statements import LEAVE, statement
from spoonproof.reading.typed import (
    Key,
    Reader,
    Schema,
    Sink,
    either,
    keys_schema,
    listed,
    nearest,
    node_text,
    one_of,
    plain,
    scalar,
    shape,
    short,
    shown,
    spanned,
    text,
    truth,
    wrong,
)

MONTHS = tuple("January February March April May June July August September October November December".split())
_URL = re.compile(r"https?://[^\s<>\"'\\@]{1,2000}")
_FILE = re.compile(r"(?!.{0,300}\.\.)[^\s/\\:*?\"<>|\x00-\x1f][^\\:*?\"<>|\x00-\x1f]{0,200}")
_SPAN_KEPT = r"(?P<count>[0-9]{1,4}(?:\.[0-9]{1,2})?)\s{0,4}(?P<unit>h|hrs?|hours?|d|days?|weeks?|months?)"
_KEEP = re.compile(
    r"(?P<place>fridge|freezer|refrigerator|refrigerated|frozen|chilled)\s{0,4}:?\s{0,4}(?:for\s{1,4}|up to\s{1,4})?"
    + _SPAN_KEPT,
    re.IGNORECASE,
)
_KEEP_IN = re.compile(
    r"(?:for\s{1,4})?(?:up to\s{1,4})?" + _SPAN_KEPT + r"\s{1,4}in\s{1,4}(?:the\s{1,4}|an?\s{1,4})?"
    r"(?P<place>fridge|freezer|refrigerator|(?:air-?tight |biscuit |cake |lidded |sealed )?(?:tin|jar|box|container)"
    r"|cupboard|bread bin|larder|pantry)",
    re.IGNORECASE,
)
_KEPT_APART = re.compile(r",|\sand\s")
_NOT_FROZEN = re.compile(r"(?i)(?:not for the freezer|no freezer|freezer\s{0,4}:?\s{0,4}no|do not freeze|don't freeze)")
_HOURS = {"h": 1.0, "d": 24.0, "w": 168.0, "m": 720.0}


# --- small shapes -----------------------------------------------------------------------------------------------------


def _months_named() -> Reader[tuple[Text, ...]]:
    """Names of months: a list of them, or a stretch like "October to February"."""
    names = {name.lower(): name for name in MONTHS}
    names |= {name[:3].lower(): name for name in MONTHS} | {"sept": "September"}
    words = "months, like [October, November] or October to February"

    def one(node: Scalar, sink: Sink) -> tuple[Text, ...] | None:
        written = node.value.strip().lower()
        found = [names.get(end.strip()) for end in re.split(r"\s{0,4}(?:[-–—]|\bto\b|\buntil\b)\s{0,4}", written)]
        if written in ("all year", "all year round", "any"):
            return tuple(Text(name, node.span) for name in MONTHS)
        if len(found) > 2 or None in found:
            close = names.get(nearest(node.value, names), "")
            hint = f" Did you mean {close}?" if close else ""
            sink.add("not-in-list", short(node.span), f"{shown(node)} is not the name of a month.{hint}")
            return None
        first, last = (MONTHS.index(str(found[at])) for at in (0, -1))
        return tuple(Text(MONTHS[(first + step) % 12], node.span) for step in range((last - first) % 12 + 1))

    def read(node: Node, sink: Sink) -> tuple[Text, ...] | None:
        if isinstance(node, Scalar):
            return one(node, sink)
        if isinstance(node, Listing):
            parts = [one(item, sink) for item in node.items if isinstance(item, Scalar)]
            return tuple(text for part in parts if part is not None for text in part)
        wrong(node, sink, words)
        return None

    return Reader(words, {"anyOf": [{"type": "string"}, {"type": "array", "items": {"type": "string"}}]}, read)


Kept = tuple[float | None, float | None, float | None]
"""Hours in the fridge, days in the freezer, hours in neither ("3 days in a tin")."""


def _keeps() -> Reader[Kept]:
    """What "fridge 48 h, freezer 1 month" says; not for the freezer is 0 days."""

    def parse(node: Scalar, sink: Sink) -> Kept | None:
        fridge = freezer = out = None
        for part in _KEPT_APART.split(node.value):
            words = part.strip()
            match = _KEEP.fullmatch(words) or _KEEP_IN.fullmatch(words)
            if match is not None:
                hours = float(match["count"]) * _HOURS[match["unit"][0].lower()]
                place = match["place"].lower()
                if place in ("freezer", "frozen"):
                    freezer = hours / 24
                elif place in ("fridge", "refrigerator", "refrigerated", "chilled"):
                    fridge = hours
                else:
                    out = hours
            elif _NOT_FROZEN.fullmatch(words):
                freezer = 0.0
            else:
                wrong(Scalar(words, node.span), sink, "how long it keeps, like fridge 48 h, freezer 1 month")
                return None
        return fridge, freezer, out

    return scalar("how long it keeps", {"type": "string", "examples": ["fridge 48 h, freezer 1 month"]}, parse)


def _length_of_time(example: str) -> Reader[float]:
    reader = seconds(10 * 365 * 86_400.0)
    return Reader(f"a time, like {example}", {**reader.schema, "examples": [example]}, reader.read)


def url() -> Reader[str]:
    """A web address; anything else is refused where it is written."""
    return matched("a web address starting with https://", _URL, lambda m: m[0])


def file_name() -> Reader[str]:
    """A file in the channel's own folders, by a relative path with ordinary characters."""

    def parse(node: Scalar, sink: Sink) -> str | None:
        name = node.value.strip()
        if _FILE.fullmatch(name):
            return name
        message = f"{shown(node)} should be the name of a file in the channel's folder."
        sink.add("unsafe-path", short(node.span), message)
        return None

    return scalar("a file name", {"type": "string"}, parse)


def plain_data() -> Reader[Mapping[str, object]]:
    """A mapping of any shape as plain texts, lists and mappings: for citations."""

    def read(node: Node, sink: Sink) -> Mapping[str, object] | None:
        if not isinstance(node, Mapped):
            wrong(node, sink, "a source: a mapping with id, type, title ... (CSL-JSON)")
            return None
        if not node.text("id"):
            sink.add("missing-key", short(node.span), "A source needs “id”.")
            return None
        value = plain(node)
        return value if isinstance(value, dict) else None

    return Reader("a source (CSL-JSON)", {"type": "object", "required": ["id"]}, read)


def any_node() -> Reader[Node]:
    """The node as written, for another reader."""
    return Reader("a text or a mapping", {}, lambda node, _sink: node)


# --- the keys ---------------------------------------------------------------------------------------------------------

TITLE = Key("title", statement("a title"), "The recipe's name.", needed=True)
SUMMARY = Key("summary", statement("a sentence"), "One sentence for lists and search.")
AGES = Key("ages", spanned(ages()), "For which ages: 7-9 months, or from 7 months.", needed=True)
TEXTURES_AS_SAID = {
    "pureed": "smooth", "puréed": "smooth", "puree": "smooth", "purée": "smooth", "blended": "smooth",
    "fork mashed": "mashed", "fork-mashed": "mashed", "soft lumps": "lumpy", "chunky": "lumpy", "chopped": "minced",
    "finely chopped": "minced", "finger food": "soft finger food", "finger foods": "soft finger food",
    "soft finger foods": "soft finger food", "family meal": "family food", "family meals": "family food",
}  # fmt: skip
"""Words of cooks for a texture of the list; chopped goes with minced (both by 10 to 12 months)."""
TEXTURE = Key("texture", spanned(one_of(TEXTURES, TEXTURES_AS_SAID)), "The texture it is served in.")
NEXT_TEXTURE = Key("texture", one_of(TEXTURES, TEXTURES_AS_SAID), "The texture that comes next.", needed=True)
NEXT_FROM = Key("from", month(), "From which month.")
NEXT_HOW = Key("how", statement("how to get there"), "How to get there.")
NEXT = Key("next", shape((NEXT_TEXTURE, NEXT_FROM, NEXT_HOW), "the next texture"), "The texture that comes next.")

MAKES_PORTIONS = Key("portions", makes(), "Portions, like 4 x 90 g.", needed=True)
MAKES_GRAMS = Key("grams", grams(), "The weight of one portion, where it is not said with the portions.")
MAKES_FAMILY = Key("family", text("what is left for the family"), "What is left for the family.")
MAKES = Key(
    "makes",
    either(makes(), shape((MAKES_PORTIONS, MAKES_GRAMS, MAKES_FAMILY), "what it makes")),
    "Portions for the baby, like 9 x 60 g.",
)
SEASON = Key("season", _months_named(), "Months in which the foods are at their best.")
PAID_KEY = Key("paid", one_of(PAID), "Who pays for what is said here.")

FRIDGE = Key("fridge", _length_of_time("48 h"), "How long in the fridge.")
FREEZER = Key("freezer", _length_of_time("1 month"), "How long in the freezer.")
KEEPS = Key("keeps", either(_keeps(), shape((FRIDGE, FREEZER), "how long it keeps")), "How long it keeps.")

TRIAL_ON = Key("on", date(), "The day.", needed=True)
TRIAL_WEIGHED = Key("weighed", grams(), "What the scale said, in grams.")
TRIAL_SQUASH = Key("squash", truth(), "Whether every piece squashed.")
TRIAL_NOTE = Key("note", text("a note"), "What was seen.")
TRIALS = Key("trials", listed(shape((TRIAL_ON, TRIAL_WEIGHED, TRIAL_SQUASH, TRIAL_NOTE), "a trial")), "Weighed trials.")

SEG_NAME = Key("name", text("a name"), "The segment's name.", needed=True)
SEG_SAY = Key("say", statement("what is said"), "The words that are spoken.")
SEG_SHOT = Key("shot", text("a shot"), "What the camera sees.")
SEG_SUPER = Key("super", statement("text over the picture"), "Text over the picture.")
SEG_STEP = Key("step", whole(1, 500), "The step it shows, counted from 1.")
SEG_RUNS = Key("runs", seconds(), "How long it runs.")
SEG_WHO = Key("presenter", text("a name"), "Who speaks.")
SEGMENT = shape((SEG_NAME, SEG_SAY, SEG_SHOT, SEG_SUPER, SEG_STEP, SEG_RUNS, SEG_WHO, LEAVE), "a segment")
FILM_RUNS = Key("runs", seconds(), "How long the film should run.")
FILM_SEGMENTS = Key("segments", listed(SEGMENT), "The segments in order.")
FILM_TITLE = Key("title", statement("a title"), "The film's title.")
FILM_TEXT = Key("description", statement("a description"), "The text under the film.")
FILM_SOCIAL = Key("social", statement("a post"), "The text of the post.")
FILM = Key("film", shape((FILM_RUNS, FILM_SEGMENTS, FILM_TITLE, FILM_TEXT, FILM_SOCIAL), "the film"), "The film.")

PIC_FILE = Key("file", file_name(), "The picture's file.", needed=True)
PIC_TEXT = Key("text", statement("what the picture shows, for those who can't see it"), "Its text alternative.")
PIC_SHOWS = Key("shows", listed(statement("what is seen"), alone=True), "What can be seen in it.")
PICTURES = Key(
    "pictures",
    listed(either(spanned(file_name()), shape((PIC_FILE, PIC_TEXT, PIC_SHOWS, LEAVE), "a picture")), alone=True),
    "Pictures, the first one for lists.",
)

VIDEO_URL = Key("url", url(), "Where it is on the web.")
VIDEO_FILE = Key("file", file_name(), "Its file in the channel's folder (MP4 or WebM), to be shown on the page itself.")
VIDEO_DAY = Key("uploaded", date(), "The day it went up.")
VIDEO_RUNS = Key("runs", seconds(), "How long it runs.")
VIDEO_CAPTIONS = Key("captions", file_name(), "Its caption file (WebVTT).")
_VIDEO_KEYS = (VIDEO_URL, VIDEO_FILE, VIDEO_DAY, VIDEO_RUNS, VIDEO_CAPTIONS)
VIDEO = Key("video", shape(_VIDEO_KEYS, "the video"), "A finished video.")

FIX_ON = Key("on", date(), "The day.", needed=True)
FIX_SAID = Key("said", text("what was said"), "What was said before.", needed=True)
FIX_HOLDS = Key("holds", statement("what holds"), "What holds.", needed=True)
CORRECTIONS = Key("corrections", listed(shape((FIX_ON, FIX_SAID, FIX_HOLDS), "a correction")), "Corrections, shown.")

REVIEW_WHO = Key("who", text("a name"), "Who looked at it.", needed=True)
REVIEW_ON = Key("on", date(), "When.", needed=True)
REVIEW_VERSION = Key("version", text("a version"), "Which version.")
REVIEW = Key("review", shape((REVIEW_WHO, REVIEW_ON, REVIEW_VERSION), "a review"), "Who looked at which version.")

RENAMED = Key("renamed_from", listed(node_text("a slug"), alone=True), "Former names, whose addresses lead here.")
SOURCES = Key("sources", listed(plain_data()), "The author's own sources, as CSL-JSON.")
PUBLISHED = Key("published", date(), "The day the page went up; feeds and search engines are told.")
DRAFT = Key("draft", truth(), "A draft is checked only when named.")
FOODS = Key(
    "foods", listed(any_node(), "a list of foods"), "Amount, food, cut and preparation, a line each.", needed=True
)
STEPS = Key("steps", listed(any_node(), "a list of steps"), "What is done, a sentence or two each.", needed=True)

RECIPE_KEYS = (
    TITLE, SUMMARY, AGES, TEXTURE, NEXT, MAKES, SEASON, PAID_KEY, FOODS, STEPS, KEEPS, TRIALS, FILM, PICTURES, VIDEO,
    CORRECTIONS, REVIEW, RENAMED, SOURCES, PUBLISHED, DRAFT,
)  # fmt: skip

FOOD_KEYS: Mapping[str, str] = {
    "food": "The food line: amount, food, cut, preparation; or the food alone.",
    "recipe": "Another recipe of the channel used as a food: its file name without the ending.",
    "amount": "How much, where the food line does not say it.",
    "or": "A food line, or a list of them, that may stand in its place.",
    "as": "The name the steps call it by, where two lines are of one food.",
    "may_contain": "What its label says under “may contain”.",
    "cut": "How it is cut, where the food line does not say it.",
    "prepared": "How it is prepared, where the food line does not say it.",
}
STEP_KEYS: Mapping[str, str] = {
    "do": "The sentence of the step.",
    "step": "Another word for `do`.",
    "minutes": "How long it takes, in minutes.",
    "time": "How long it takes, with its unit.",
    "until": "The end point, such as: until a cube squashes between finger and thumb.",
    "foods": "The foods it is about, by the words of their lines.",
    "bowl": "Whose bowl it belongs to: baby or family.",
    "leave": "Why this sentence should not be judged.",
}


_DRAFT = "https://json-schema.org/draft/2020-12/schema"


def channel_schema() -> Schema:
    """The schema of channel.yaml."""
    return {"$schema": _DRAFT, "title": "channel.yaml", **keys_schema(CHANNEL_KEYS)}


def recipe_schema() -> Schema:
    """The schema of a recipe's head."""
    schema = dict(keys_schema(RECIPE_KEYS))
    properties = dict(schema["properties"])  # type: ignore[call-overload]  # a mapping: keys_schema makes it
    properties["foods"] = properties["foods"] | _lines_schema("A food line.", FOOD_KEYS, ("food", "recipe"))
    properties["steps"] = properties["steps"] | _lines_schema("A sentence of the method.", STEP_KEYS, ("do", "step"))
    return {"$schema": _DRAFT, "title": "The head of a recipe", **schema, "properties": properties}


def _lines_schema(doc: str, keys: Mapping[str, str], main: Sequence[str]) -> Schema:
    """The schema of a list of lines, each a text or a mapping with one of the ``main`` keys."""
    any_value: Schema = {"type": ["string", "number", "array", "object"]}
    mapping = {
        "type": "object",
        "properties": {key: {**any_value, "description": words} for key, words in keys.items()},
        "additionalProperties": False,
        "anyOf": [{"required": [key]} for key in main],
    }
    return {"type": "array", "items": {"description": doc, "anyOf": [{"type": "string"}, mapping]}, "maxItems": 500}
