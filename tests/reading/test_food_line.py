"""Food lines in ordinary words: a table of readings, refusals at their exact place, and properties."""

from __future__ import annotations

import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Listing, Mapped, Scalar
from spoonproof.reading.food_line import read_food_line
from spoonproof.reading.food_mapping import food_from_mapping
from spoonproof.reading.yaml_tree import read_yaml
from tests.each import each
from tests.kitchen import knowledge
from tests.reading.readings import amount_words, line_words, page_of, read_line

TABLE = [
    row
    for row in (Path(__file__).parent / "food_lines.txt").read_text(encoding="utf-8").split("\n")
    if row and not row.startswith("#")
]


def test_the_table_is_large_enough_to_mean_something() -> None:
    assert len(TABLE) >= 150


@each("row", TABLE)
def test_readings(row: str) -> None:
    assert line_words(row.split(" | ")[0]) == row


@each(
    ("text", "rule", "written"),
    [
        ("150 g parsnpis, peeled, 1 cm dice", "unknown-food", "parsnpis"),
        ("100 g blorp, peeled", "unknown-food", "blorp"),
        ("blorp", "unknown-food", "blorp"),
        ("1 tbsp parsnip flurbs", "unknown-food", "parsnip flurbs"),
        ("usda:99999", "unknown-food", "usda:99999"),
        ("100 g peach and mango yoghurt", "unknown-food", "peach and mango yoghurt"),
        ("400 g pork and apple sausages, skinned", "unknown-food", "pork and apple sausages"),
        ("200 g bananas and plain yoghurt", "second-food-on-a-line", "plain yoghurt"),
        ("400 g", "food-missing", "400 g"),
        ("2 x 400 g tins", "food-missing", "2 x 400 g tins"),
        ("200 g chicken thighs, marinated in honey", "second-food-on-a-line", "honey"),
        ("1 tsp rapeseed oil and a pinch of salt", "second-food-on-a-line", "salt"),
        ("100 g carrots, flurbed", "words-not-understood", "flurbed"),
        ("1,5 dl apple juice", "ambiguous-number", "1,5"),
        ("½½ cup milk", "not-a-number", "½½"),
        ("2- carrots", "range-not-closed", "2-"),
        ("0 g carrots", "quantity-not-positive", "0"),
        ("-2 carrots", "quantity-not-positive", "-2"),
        ("1e308 g carrots", "quantity-out-of-range", "1e308"),
        ("8 oz milk", "ambiguous-unit", "8 oz"),
        ("parsnips, -300 g", "quantity-not-positive", "-300"),
        ("3 firkins of parsnips", "unknown-unit", "firkins"),
        ("1 tin chickpea flour", None, None),
    ],
)
def test_faults_stand_at_their_words(text: str, rule: str | None, written: str | None) -> None:
    line, found, document = read_line(text)
    if rule is None:
        assert line.food != "chickpea-canned"
        return
    assert [(f.rule, document.at(f.span)) for f in found if f.rule == rule] == [(rule, written)]


@each("text", ["1,5 dl milk", "½½ cup milk", "0 g milk", "-2 g milk", "nan g milk", "8 oz milk"])
def test_a_refused_amount_leaves_none_and_keeps_the_food(text: str) -> None:
    line, _, _ = read_line(text)
    assert line.amount is None and line.food == "whole-milk"


def test_an_unknown_food_names_the_nearest_and_offers_the_edit() -> None:
    line, found, document = read_line("150 g parsnpis, peeled")
    assert line.food is None and line.name == "parsnpis"
    remedy = found[0].remedy
    assert found[0].level == "error" and remedy is not None
    assert "parsnip" in remedy.text
    assert document.at(remedy.edits[0].span) == "parsnpis"


def test_a_record_can_be_named() -> None:
    assert read_line("100 g usda:11124")[0].food == "carrot"


@each(
    "order",
    [
        "300 g parsnips, peeled, 1 cm dice",
        "300 g peeled parsnips, in 1 cm dice",
        "parsnips, 300 g, peeled, 1 cm dice",
        "parsnips (300 g), peeled and cut into 1 cm dice",
        "300g parsnips, in 1cm dice, peeled",
        "peeled parsnips, 300 g, 1 cm dice",
    ],
)
def test_order_and_commas_change_nothing(order: str) -> None:
    line, found, _ = read_line(order)
    assert found == []
    assert line.food == "parsnip" and line.amount is not None and line.amount.low == 300
    assert line.has("peeled") and [(c.shape, c.low_mm) for c in line.cuts] == [("dice", 10.0)]


def _mapped(text: str) -> tuple[Mapped, Document]:
    document = Document("recipes/bowl.md", text)
    node, _ = read_yaml(document, Span(0, len(text)))
    assert isinstance(node, Mapped)
    return node, document


def test_a_mapping_gives_amount_cut_and_swaps_apart() -> None:
    node, document = _mapped(
        "food: pears\namount: 2 medium\ncut: 1 cm dice\nprepared: [peeled, cored]\nas: the ripe ones\n"
        "or: [1 apple, {food: quince, amount: 100 g}]\nmay_contain: [nuts]\n"
    )
    line, found = food_from_mapping(node, page_of(document))
    assert found == []
    assert line.food == "pear" and line.amount is not None and line.amount.size == "medium"
    assert line.cuts[0].low_mm == 10 and line.has("peeled") and line.has("cored")
    assert [choice.food for choice in line.choices] == ["apple", "quince"]
    assert line.alias == "the ripe ones" and line.label == ("nuts",)


def test_a_recipe_is_a_food_and_two_amounts_disagree() -> None:
    node, document = _mapped("recipe: galley-stock\namount: 400 g\n")
    line, found = food_from_mapping(node, page_of(document))
    assert (line.recipe, line.food, found) == ("galley-stock", None, []) and line.amount is not None
    node, document = _mapped("food: 2 pears\namount: 3\n")
    line, found = food_from_mapping(node, page_of(document))
    assert [f.rule for f in found] == ["amounts-disagree"] and line.amount is not None and line.amount.low == 3


def test_a_mapping_with_bad_parts_says_each() -> None:
    node, document = _mapped("food: pears\namount: lots\ncut: spirals\nprepared: zapped\n")
    _, found = food_from_mapping(node, page_of(document))
    assert [f.rule for f in found] == ["not-a-number", "words-not-understood", "words-not-understood"]
    node, document = _mapped("amount: 2\n")
    assert [f.rule for f in food_from_mapping(node, page_of(document))[1]] == ["food-missing"]


def test_a_folded_line_points_into_the_document() -> None:
    text = "foods:\n  - 150 g parsnpis,\n    peeled, 1 cm dice\n"
    document = Document("recipes/bowl.md", text)
    node, _ = read_yaml(document, Span(0, len(text)))
    assert isinstance(node, Mapped)
    listing = node.get("foods")
    assert isinstance(listing, Listing) and isinstance(listing.items[0], Scalar)
    line, found = read_food_line(listing.items[0], page_of(document))
    assert document.at(found[0].span) == "parsnpis"
    assert document.at(line.cuts[0].span) == "1 cm dice"


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=60) | st.lists(st.sampled_from(" ".join(TABLE[:60]).split()), max_size=9).map(" ".join))
def test_any_line_is_read_without_a_crash_and_inside_itself(text: str) -> None:
    line, found, document = read_line(text)
    spans = [line.name_span, *(cut.span for cut in line.cuts), *(span for _, span in line.prepared)]
    spans += [f.span for f in found] + ([line.amount.span] if line.amount is not None else [])
    for span in spans:
        assert 0 <= span.start <= span.end <= len(document.text)
    assert line.amount is None or line.amount.to_taste or 0 < line.amount.low <= line.amount.high
    assert line.food is None or line.food in knowledge().foods


def test_a_length_of_a_food_is_an_amount_and_a_container_may_be_its_name() -> None:
    line, found, document = read_line("2 cm ginger, peeled, slices")
    assert (line.food, found, document.at(line.amount.span) if line.amount else "") == ("ginger", [], "2 cm")
    line, _, _ = read_line("1 cm dice of parsnip")
    assert line.amount is None and [cut.shape for cut in line.cuts] == ["dice"]
    line, found, _ = read_line("150 g bottle gourd, peeled")
    assert (line.food, found) == ("bottle-gourd", [])
    assert line.amount is not None and line.amount.unit == "g"
    line, _, _ = read_line("400 g tin chopped tomatoes")
    assert line.amount is not None and line.amount.unit == "tin"
    line, _, _ = read_line("1 small banana, slices")
    assert line.amount is not None and line.amount.unit == "piece"


HOSTILE = (
    "1/", "½", "1-", "a ", "(", "1 x ", "1 g + ", "(1 g) ", "peeled, ", "parsnip ", "in ", "about ", "and ", "1 cm ",
    "1 1/1 ", "1 (1 ", "do not ", "until soft ", "the baby's portion ", "like a ", "for 1 minute ",
)  # fmt: skip


@each("piece", HOSTILE)
def test_a_hostile_line_is_read_in_time_or_refused(piece: str) -> None:
    start = time.process_time()
    read_line((piece * 400)[:400])
    _, found, _ = read_line(piece * 2000)
    assert [f.rule for f in found] == ["value-too-long"]
    assert time.process_time() - start < 2


def test_a_misspelt_unit_is_told_and_the_food_is_known() -> None:
    line, found, _ = read_line("2 tbps coconut oil")
    assert line.food == "coconut-oil" and line.amount is None
    assert [(f.rule, f.remedy.text if f.remedy else "") for f in found] == [("unknown-unit", "Did you mean “tbsp”?")]


@pytest.mark.parametrize(
    "text", ["1 tsp smooth peanut butter, no salt or sugar", "60 g flattened rice (poha)", "1 crisp apple, cored"]
)
def test_what_is_denied_or_said_twice_is_no_second_food(text: str) -> None:
    _, found, _ = read_line(text)
    assert [f.rule for f in found] == []


@pytest.mark.parametrize(
    ("text", "amount", "faults"),
    [
        ("200 bacon", "200 g", ["unit-not-said"]),
        ("500 potatoes, peeled", "500 g", ["unit-not-said"]),
        ("12 blueberries", "12 piece", []),
        ("250 g bacon", "250 g", []),
    ],
)
def test_a_number_that_nobody_counts_is_grams(text: str, amount: str, faults: list[str]) -> None:
    line, found, _ = read_line(text)
    assert (amount_words(line.amount), [one.rule for one in found]) == (amount, faults)


def test_a_tinned_pulse_of_no_record_has_the_figures_of_it_boiled() -> None:
    for text, food in (("400 g tin mung beans, drained", "mung-beans-boiled"), ("1 tin chickpeas", "chickpea-canned")):
        line, found, _ = read_line(text)
        assert (line.food, line.state, found) == (food, "canned", [])
