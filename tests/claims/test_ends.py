"""Sentence ends that are settled without the splitter are those that the splitter gives."""

from __future__ import annotations

import random
import time
from collections.abc import Sequence

from syntok._segmentation_states import State

from spoonproof.claims.ends import _NAME, ABBREVIATIONS, _whole, starts_in

PIECES = (
    "Soft|the baby|cook well|then stir|A|I|VI|p|mrs|etc|min|no|No|may|e.g|1.5|3|b12|12 g|don't|it’s|half-soft|x"
    "|(of them)|(Not this.)|(|)|[|“warm”|'mild'|“|\"|…|...|;|:|,|-|.|!|?|\n|→|`text`|co.uk|endNow|U.S"
    "|October|Approx|Fig|Mrs|Marrow|[of, them]|{of: them}|[Not. This]|README.md|of/*.csv| .hidden|READ.Me"
    '|5 minutes|in 20|step: 3|at 100|Oct|"soft"|the baby ("of" them)|the baby (Not this)|site/look/|in look.css'
    "|- Soft|- soft|“Soft|2 to keep|100 g of|The soft|This"
).split("|")
PLAIN = ("Soft", "the baby", "cook well", "then stir") * 10
GLUE = (" ", " ", " ", "", ". ", ". ", ". Then ", "! It ", "? we ", ".")


def texts() -> list[str]:
    """Strings of pieces that meet in every way; the same ones at each run."""
    chance = random.Random(4)
    return [
        "".join(chance.choice((*PLAIN, *PIECES)) + chance.choice(GLUE) for _ in range(chance.randint(2, 12)))
        for _ in range(3000)
    ]


def cut(text: str, starts: Sequence[int]) -> list[str]:
    parts = [text[start:end].strip() for start, end in zip(starts, [*starts[1:], len(text)], strict=True)]
    return [part for part in parts if part]


def test_plain_ends_are_the_splitters_own() -> None:
    settled = 0
    for text in texts():
        asked = _whole.cache_info().misses
        mine = cut(text, starts_in(text))
        settled += _whole.cache_info().misses == asked and len(mine) > 1
        assert mine == cut(text, _whole(text)), text
    assert settled > 100


def test_every_abbreviation_of_the_splitter_is_asked_about() -> None:
    known = [word for word in State.abbreviations | State.months if word.isascii() and word.isalpha()]
    small = {word for word in known if word.islower() and len(word) > 1}
    assert small | {word.lower() for word in known if word.istitle() and len(word) >= _NAME} | {"no"} <= ABBREVIATIONS


def test_plain_text_is_cut_without_the_splitter() -> None:
    asked = _whole.cache_info().misses
    text = "Steam it until soft. Mash 1.5 tbsp (about half) with milk; serve it warm. Is it thick? Thin it. "
    text += (
        "It keeps until October. Heat it to 75 °C. That is all. Steam it for 20 minutes (with the “lid” on). Call it "
    )
    text += '"soft". Colours are in look.css. The rest follows.'
    assert cut(text, starts_in(text)) == [
        "Steam it until soft.",
        "Mash 1.5 tbsp (about half) with milk; serve it warm.",
        "Is it thick?",
        "Thin it.",
        "It keeps until October.",
        "Heat it to 75 °C.",
        "That is all.",
        "Steam it for 20 minutes (with the “lid” on).",
        'Call it "soft".',
        "Colours are in look.css.",
        "The rest follows.",
    ]
    assert _whole.cache_info().misses == asked


def test_time_grows_with_length_alone() -> None:
    for piece in ("soft. ", ". ", "a ", "a. a", "soft. Soft", ".", ";  "):
        took = []
        for size in (20_000, 80_000):
            start = time.process_time()
            starts_in("Soft" + piece * (size // len(piece)) + "a")
            took.append(time.process_time() - start)
        assert took[1] < 40 * max(took[0], 0.001)
