"""Broken recipes, channels, registers and captions put together at random: answered, never raised, every place inside.

The laws are those of the fuzzer's targets; here the files are built from what people write, so that readers get far.
"""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.fuzz.targets import TARGETS

WORDS = st.sampled_from(
    """200 g leeks, sliced 1,5 2-3 ½ cup tbsp honey salt to taste for the family baby's portion 15 minutes until soft
    boil mash steam blend NO yes ~ null - ? : # & * ! | > [ ] { } " ' % @ ` << 1/0 .nan -0 9e99 2024-02-30 22:30 012
    cures reflux rich in iron no added sugar https://x.example javascript:x ../.. \u202e \u200b é 🥣 \t --> <b> {{x}}
    recipe:none 7-9 months lumpy smooth GB EU fridge 48 h sponsored efsa nhs-avoid""".split(" ")
)
LINE = st.lists(WORDS, max_size=7).map(" ".join)
QUOTED = LINE.map(lambda text: "'" + text.replace("'", "''").replace("\n", " ") + "'")
VALUE = st.recursive(
    st.one_of(LINE, QUOTED, QUOTED, st.just(""), st.just("[]"), st.just("{}")),
    lambda inner: st.one_of(
        st.lists(inner, max_size=4).map(lambda items: "[" + ", ".join(items) + "]"),
        st.dictionaries(WORDS, inner, max_size=3).map(
            lambda pairs: "{" + ", ".join(f"{key}: {value}" for key, value in pairs.items()) + "}"
        ),
        st.lists(inner, min_size=1, max_size=5).map(lambda items: "".join(f"\n  - {item}" for item in items)),
    ),
    max_leaves=6,
)
END = st.sampled_from(["\n", "\n", "\n", "\r\n", "\r", "\n\n"])


def keys(*names: str) -> st.SearchStrategy[str]:
    """Lines of a mapping with these keys, some of them missing, twice or mistyped."""
    name = st.one_of(st.sampled_from(names), st.sampled_from(names), st.sampled_from(names).map(lambda n: n[:-1] or n))
    return st.tuples(st.lists(st.tuples(name, VALUE), max_size=12), END).map(
        lambda drawn: "".join(f"{key}: {value}{drawn[1]}" for key, value in drawn[0])
    )


def listed(name: str, line: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    """A key with lines below it, as foods and steps are written."""
    return st.lists(line, min_size=1, max_size=5).map(lambda lines: f"{name}:\n" + "".join(f"  - {x}\n" for x in lines))


RECIPES = st.tuples(
    st.sampled_from(["---\n", "---\n", "---\n", "\n---\n", "--\n", ""]),
    keys(
        "title", "ages", "texture", "next", "makes", "keeps", "film", "pictures", "sources", "review", "paid", "draft"
    ),
    st.one_of(st.just("title: Bowl\nages: 7-9 months\ntexture: mashed\n"), st.just("")),
    listed("foods", st.one_of(LINE, QUOTED, VALUE)),
    listed("steps", st.one_of(LINE, QUOTED, VALUE)),
    st.sampled_from(["---\n", "---\n", "---", ""]),
    st.lists(LINE, max_size=5).map("\n".join),
).map("".join)
CHANNELS = keys(
    "title", "markets", "measures", "kitchen", "day", "baby", "policy", "accepted", "paid", "base_url", "ages"
)
ENTRY = keys(
    "id", "about", "kind", "effect", "said", "ages", "truth", "source", "condition", "allowed", "due", "checked"
)
REGISTERS = st.lists(ENTRY, max_size=3).map(
    lambda entries: (
        "entries:\n" + "".join("  - " + entry.rstrip("\r\n").replace("\n", "\n    ") + "\n" for entry in entries)
    )
)
TIME = st.sampled_from(["00:01.000", "00:02.500", "99:59:59,999", "1:2", "-1", "00:00:60.000", ""])
CUES = st.lists(st.tuples(TIME, TIME, LINE, END), max_size=6).map(
    lambda cues: "WEBVTT\n\n" + "".join(f"{start} --> {end}{stop}{text}{stop}{stop}" for start, end, text, stop in cues)
)


def _bytes(text: str) -> bytes:
    return text.encode("utf-8", "surrogatepass")


@settings(max_examples=60)
@given(RECIPES)
def test_recipes(text: str) -> None:
    TARGETS["recipe"](_bytes(text))


@settings(max_examples=60)
@given(CHANNELS)
def test_channels(text: str) -> None:
    TARGETS["channel"](_bytes(text))


@settings(max_examples=40)
@given(REGISTERS)
def test_registers(text: str) -> None:
    TARGETS["register"](_bytes(text))


@settings(max_examples=60)
@given(CUES)
def test_captions(text: str) -> None:
    TARGETS["captions"](_bytes(text))
