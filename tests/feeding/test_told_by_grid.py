"""Dangers told in words, by grids: each way of telling over many deeds or foods, and cells whose parts are combined.

``told/grids/*.txt``: frames (D or S: a danger, or safe), an empty line, and what they are said of: a deed in its forms
(do, doing, did) or a food. ``cells.txt``: D or S, and parts that are read one after another, each of several wordings.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from pathlib import Path

from spoonproof.hearing import hear
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests import kitchen
from tests.each import each

_GRIDS = Path(__file__).parent / "told" / "grids"
STILL_WRONG = (
    "You can't safely leave her alone",
    "Nobody should leave her alone",
    "Is it safe to leave her alone",
    "She never sits alone",
    "My sister let him eat lying back",
    "Handing her snacks in the car seat made him ill",
    "If you are not sure, just warm her bottle",
    "I kept a stock cube in her soup",
    "Keep a stock cube in her soup",
    "The baby's brother had raw cookie dough",
    "I swapped raw cookie dough",
    "My tip for nine months: a rare steak",
    "Nobody needs to worry about leaving her alone",
    "Nobody ever died of leaving her alone",
    "Our nursery says no to a runny egg",
    "Nobody should feel bad about leaving her alone with her toast.",
    "We left her alone with her toast and nobody came to harm.",
    "Under no circumstances leave her alone with her toast.",
    "It is not okay to leave her alone with her toast.",
    "Letting him eat lying back in the bouncer could kill a baby.",
    "Things I refuse to do: let him eat lying back in the bouncer.",
    "Handing her snacks in the car seat could kill a baby.",
    "I know you shouldn't scrape what she leaves back into the tub, but I do it every day.",
    "We have stopped rubbing a drop of whisky on her gums.",
    "Please stop rubbing a drop of whisky on her gums.",
    "Is letting her fall asleep with the bottle dangerous? No.",
    "Handing him a rusk in the pushchair made him ill.",
    "My mother-in-law handed him a rusk in the pushchair, and I asked her not to.",
    "I use half a scoop more than the tin says, no regrets.",
    "I use half a scoop more than the tin says, not that I tell the health visitor.",
    "Using half a scoop more than the tin says never bothered us.",
    "Leaving the fish pie on the worktop until bedtime made him ill.",
    "Things I refuse to do: heat up his curry again and again.",
    "The health visitor warned us about weaning the baby at ten weeks.",
    "Nobody here would wean the baby at ten weeks.",
    "I see nothing wrong in giving her water instead of milk at six weeks.",
    "No need to fret about giving her water instead of milk at six weeks.",
    "The health visitor warned us about scraping the mould off the jam and giving it to the baby.",
    "Scraping the mould off the jam and giving it to the baby has never been an option here.",
    "Why not hold a hot coffee with the baby on my lap?",
    "Not a day goes by without holding a hot coffee with the baby on my lap.",
    "People held a hot coffee with the baby on my lap in the fifties.",
    "No need to fret about forcing the last spoon into her mouth.",
    "Things I refuse to do: force the last spoon into her mouth.",
    "Raw oysters? At eight months, why not",
)
"""How lines begin that are not read rightly yet."""
EVERY = 29
"""One in so many of all lines, each in its turn."""


def _framed(path: Path) -> Iterator[tuple[str, str]]:
    frames, said_of = path.read_text(encoding="utf-8").strip().split("\n\n")
    for one, frame in product(said_of.split("\n"), frames.split("\n")):
        sort, words = frame.split("\t")
        names = ("do", "doing", "did") if "\t" in one else ("food",)
        forms = dict(zip(names, one.split("\t"), strict=True))
        yield sort, words.format(**forms, **{key.title(): _begun(form) for key, form in forms.items()})


def _cells(path: Path) -> Iterator[tuple[str, str]]:
    for line in path.read_text(encoding="utf-8").splitlines():
        sort, *parts = line.split("\t")
        for said in product(*[part.split(" / ") for part in parts]):
            yield sort, _begun(" ".join(one for one in said if one) + ".")


def _begun(words: str) -> str:
    return words[:1].upper() + words[1:]


def _lines(sort: str) -> list[str]:
    found = [
        *(one for path in sorted(_GRIDS.glob("*.txt")) if path.stem != "cells" for one in _framed(path)),
        *_cells(_GRIDS / "cells.txt"),
    ]
    return [said for which, said in found[::EVERY] if which == sort and not said.startswith(STILL_WRONG)]


def _cut(said: str) -> list[str]:
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", said))
    judged = hear(passages, known, known.judge_without_dish(None, (), None), apart=True, for_babies=True)
    return [one.claim.quote for one in judged if one.advice.startswith("cut")]


@each("said", _lines("D"))
def test_a_danger_is_heard_however_it_is_told(said: str) -> None:
    assert _cut(said)


@each("said", _lines("S"))
def test_what_warns_refuses_or_is_somebody_elses_is_left_alone(said: str) -> None:
    assert _cut(said) == []
