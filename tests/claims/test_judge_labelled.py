"""Statements labelled by hand with what may come of them, judged over the demo dishes and without a dish."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from spoonproof.claims.find import find_claims
from spoonproof.claims.judge import judge
from spoonproof.dish import Dish
from spoonproof.model.channel import Channel
from spoonproof.model.claim import JudgedClaim, Paid
from spoonproof.model.recipe import Recipe
from spoonproof.model.text import Document, Passage, Piece
from spoonproof.reading.recipe import read_recipe
from tests import kitchen

ROOT = Path(__file__).resolve().parents[2]
STANDS = ("keep", "add")


class Labelled(NamedTuple):
    """One row: ``verdict`` is keep (true and sayable), mend (not to stand as it is) or cut (must go)."""

    dish: str
    markets: str
    paid: Paid
    statement: str
    verdict: str
    round: str
    known: str


@lru_cache(maxsize=1)
def labelled() -> list[Labelled]:
    with (ROOT / "tests/claims/labelled/judged.csv").open(encoding="utf-8", newline="") as file:
        return [Labelled(**row) for row in csv.DictReader(file)]  # type: ignore[arg-type]  # a column it lacks fails here


SLUGS = sorted(path.stem for path in (ROOT / "recipes").glob("*.md"))  # read by the worker that needs them alone


@lru_cache(maxsize=1)
def recipes() -> dict[str, Recipe]:
    known = kitchen.knowledge()
    found = {}
    for path in sorted((ROOT / "recipes").glob("*.md")):
        document = Document(path.name, path.read_text(encoding="utf-8"))
        recipe, _ = read_recipe(document, known.foods, known.verbs, known.measures("UK"))
        if recipe is not None:
            found[recipe.slug] = recipe
    return found


@lru_cache(maxsize=64)
def channel(markets: str, paid: str) -> Channel:
    return kitchen.channel(f"markets: [{', '.join(markets.split())}]\nages: 6-24 months\npaid: {paid}\n")


@lru_cache(maxsize=64)
def dish(slug: str) -> Dish:
    return Dish(recipes()[slug], channel("EU GB US", "editorial"), kitchen.knowledge(), recipes())


def heard(row: Labelled) -> list[JudgedClaim]:
    known = kitchen.knowledge()
    passage = Passage(row.statement, Document("said.md", row.statement), (Piece(0, 0, len(row.statement)),))
    found = find_claims([passage], known.lexicon)
    speaks = channel(row.markets, row.paid)
    if not row.dish:
        without = known.judge_without_dish(speaks, (), None)
        return [without(claim) for claim in found]
    one = dish(row.dish)
    context = known.claim_context(speaks, one.recipe, row.paid)
    return [judge(claim, known.register, one.numbers, context) for claim in found]


def spoken(said: str, markets: str = "EU GB US") -> list[JudgedClaim]:
    """What is claimed in speech that nobody pays for, with no dish at hand."""
    return heard(Labelled("", markets, "editorial", said, "", "", ""))


@lru_cache(maxsize=1)
def judged() -> list[tuple[Labelled, list[JudgedClaim]]]:
    return [(row, heard(row)) for row in labelled()]


def judgements() -> list[tuple[Labelled, list[str]]]:
    return [(row, [one.advice for one in found]) for row, found in judged()]


def told(*verdicts: str) -> Iterator[tuple[Labelled, list[str]]]:
    """The rows of these verdicts in which a claim is found; what is not found can't be judged."""
    return ((row, advices) for row, advices in judgements() if row.verdict in verdicts and advices)


def test_the_labels_are_many_and_of_every_sort() -> None:
    rows = labelled()
    assert len(rows) >= 500
    for verdict in ("keep", "mend", "cut"):
        assert sum(row.verdict == verdict for row in rows) >= 40
    assert {row.paid for row in rows} == {"editorial", "gifted", "affiliate", "sponsored", "own-product"}
    assert {"EU", "GB", "US", "Codex"} <= {row.markets for row in rows}
    assert sum(bool(advices) for _, advices in judgements()) >= 0.8 * len(rows)


def test_nothing_false_unproven_or_refused_is_kept() -> None:
    kept = {
        row.statement
        for row, advices in told("mend", "cut")
        if not row.known and all(advice in STANDS for advice in advices)
    }
    assert kept == set()


def test_what_is_dangerous_or_plainly_false_is_cut() -> None:
    mild = {row.statement for row, advices in told("cut") if not any(a.startswith("cut-") for a in advices)}
    assert mild == set()


def test_nothing_true_is_cut() -> None:
    cut = {row.statement for row, advices in told("keep") if any(a.startswith("cut-") for a in advices)}
    assert cut == set()


TAKEN_BACK = (
    "It's a myth that {}.",
    "It isn't true that {}.",
    "Forget the old rule: {}.",
    "They are wrong when they say {}.",
    "I don't believe that {}.",
    "{} is nonsense.",
    "{}, that is an old wives' tale.",
    "{}. Not true.",
)


def test_nothing_true_is_kept_once_it_is_taken_back() -> None:
    """What stands around a statement turns it round: each true one, in every eighth frame, is kept no more. A question
    with its answer can't be framed."""
    true = [row for row in labelled() if row.verdict == "keep" and not row.dish and row.paid == "editorial"]
    true = [row for row in true if "?" not in row.statement]
    kept = []
    for number, row in enumerate(true):
        plainly = row.statement.rstrip(".")
        said = TAKEN_BACK[number % len(TAKEN_BACK)].format(plainly[:1].lower() + plainly[1:])
        advices = [judged.advice for judged in heard(row._replace(statement=said))]
        if advices and all(advice in STANDS for advice in advices):
            kept.append(said)
    assert kept == []


def test_what_is_true_is_seldom_scolded() -> None:
    rows = list(told("keep"))
    scolded = [row.statement for row, advices in rows if not all(advice in STANDS for advice in advices)]
    assert len(scolded) <= 0.06 * len(rows), scolded


def offered() -> Iterator[tuple[Labelled, str]]:
    """Every whole sentence that is offered in place of another, with where it would stand: of the entries and of what
    was said over the dishes."""
    anywhere = Labelled("", "EU GB US", "editorial", "", "", "", "")
    for entry in kitchen.knowledge().register.entries:
        for wording in entry.wording:
            yield anywhere, wording
        if entry.truth == "true" and entry.add and entry.why:
            yield anywhere, f"{entry.why.strip().rstrip('.')}; {entry.add}"
    for row, found in judged():
        for one in found:
            if one.wording:
                yield row, one.wording


def test_whole_sentences_that_are_offered_stand_themselves() -> None:
    sentences = {(row.dish, row.markets, text) for row, text in offered() if text[:1].isupper()}
    assert len(sentences) >= 15
    refused = []
    for dish_said, markets, text in sorted(sentences):
        found = heard(Labelled(dish_said, markets, "editorial", text, "", "", ""))
        refused += [(text, one.advice, one.why) for one in found if one.advice not in STANDS]
    assert refused == []


def test_no_wording_offered_over_a_dish_is_false_of_it() -> None:
    """Fragments ("a source of vitamin C") are said of the food that the statement was about; "made without wheat" and
    amounts are said of the dish."""
    of_the_dish = ("made without ", "about ", "made from ")
    wordings = {(row.dish, row.markets, text) for row, text in offered() if row.dish and text.startswith(of_the_dish)}
    assert len(wordings) >= 8
    false = []
    for slug, markets, text in sorted(wordings):
        found = heard(Labelled(slug, markets, "editorial", text, "", "", ""))
        false += [(slug, text, one.why) for one in found if one.truth == "false"]
    assert false == []
