"""Messages that are well formed and still no editor's: each is answered as the protocol says, and the server stays."""

from __future__ import annotations

from typing import Any

import pytest

from tests.editor.client import Client
from tests.editor.test_hostile import CLAIM, answered
from tests.editor.test_server import CLEAN, NAME, codes

pytest.importorskip("pygls", reason="the extra “editor” is not installed")

START = {"line": 0, "character": 0}


def _range(start: tuple[int, int], end: tuple[int, int]) -> dict[str, dict[str, int]]:
    return {name: {"line": at[0], "character": at[1]} for name, at in (("start", start), ("end", end))}


HEADS: list[tuple[str, str, str, set[str]]] = [
    # what it is, words of a clean recipe, what is typed there, rules that must be among the findings
    ("a title without its colon", "title: Courgette", "title Courgette", {"yaml-syntax"}),
    ("a colon missing above honey", "makes: 4 x 90 g\n", "makes 4 x 90 g\n", {"yaml-syntax"}),
    ("a time without end", "for 20-25 minutes", "for 100000000000000000000 minutes", {"time-not-meant"}),
    ("an amount without end", "300 g floury", "1" + "0" * 300 + " g floury", {"quantity-out-of-range"}),
    ("a head that never ends", "keeps: fridge 24 h, freezer 1 month\n---\n", "", {"front-matter-not-closed"}),
    ("a food in other digits", "150 g courgette", "١٥٠ g courgette", {"digits-not-plain"}),
    ("an age of a whale", "ages: 7-9 months", "ages: 7-99999 months", {"wrong-type"}),
    ("an alias", "summary: Courgette", "summary: *courgette", {"alias-not-allowed"}),
    ("brackets without end", "texture: mashed", "texture: " + "[" * 5000, {"nested-too-deep"}),
    ("a story of tags", "A bowl for a wet evening.", "<b>" * 3000, set()),
]  # fmt: skip


@pytest.mark.parametrize("row", HEADS, ids=[row[0] for row in HEADS])
def test_what_is_typed_is_told_and_asked_about_without_a_fault_of_ours(
    client: Client, row: tuple[str, str, str, set[str]]
) -> None:
    _, words, typed, rules = row
    assert words in CLEAN
    found = set(codes(client.open(NAME, CLEAN.replace(words, typed))))
    assert rules <= found and "internal-error" not in found
    for line in (1, 2, 8, 12):
        for method in ("hover", "completion", "definition"):
            client.at(NAME, method, line, 9)


CHANGES: list[tuple[str, list[dict[str, Any]], bool]] = [
    # what it is, the changes, whether the claim must be found after them
    ("none at all", [], True),
    ("a range that runs backwards", [{"range": _range((3, 0), (1, 0)), "text": ""}], True),
    ("the same place taken out twice", [{"range": _range((0, 0), (2**31 - 1, 0)), "text": ""}] * 2, False),
    ("a length that is a lie", [{"range": _range((0, 0), (0, 0)), "rangeLength": 10**9, "text": ""}], True),
    ("a thousand letters one by one", [{"range": _range((1, 7), (1, 7)), "text": "a"}] * 1000, True),
]  # fmt: skip


@pytest.mark.parametrize("row", CHANGES, ids=[row[0] for row in CHANGES])
def test_odd_changes_leave_a_text_that_is_looked_at(
    client: Client, row: tuple[str, list[dict[str, Any]], bool]
) -> None:
    _, changes, claimed = row
    client.open(NAME, CLAIM)
    client.change(NAME, changes)
    client.change(NAME, [{"range": _range((0, 0), (0, 0)), "text": ""}])
    found = codes(client.findings(NAME))
    assert "internal-error" not in found
    assert any(code.startswith("claim-") for code in found) == claimed


ASKED: list[tuple[str, str, dict[str, Any]]] = [
    # what it is, method, what goes beside the text; each is answered, with a result or an error of the protocol
    ("a fix for findings that are not ours", "codeAction",
     {"range": _range((0, 0), (99, 0)), "context": {"diagnostics": [{"range": _range((0, 0), (9, 9)), "message": "x",
      "code": {"a": 1}, "source": "spoonproof", "data": [[[]]]}]}}),
    ("a fix over a range that runs backwards", "codeAction",
     {"range": _range((50, 0), (0, 0)), "context": {"diagnostics": []}}),
    ("a fix of a kind nobody makes", "codeAction",
     {"range": _range((0, 0), (99, 0)), "context": {"diagnostics": [], "only": ["source.deleteAll"]}}),
    ("a completion after a letter nobody typed", "completion",
     {"position": {"line": 8, "character": 10}, "context": {"triggerKind": 2, "triggerCharacter": "💥"}}),
    ("a hover with a token of progress that is a text of a mile", "hover",
     {"position": {"line": 8, "character": 10}, "workDoneToken": "t" * 100_000}),
]  # fmt: skip


@pytest.mark.parametrize("row", ASKED, ids=[row[0] for row in ASKED])
def test_odd_questions_are_answered(client: Client, row: tuple[str, str, dict[str, Any]]) -> None:
    _, method, more = row
    client.open(NAME, CLAIM)
    answer = answered(client, "odd", f"textDocument/{method}", {"textDocument": {"uri": client.uri(NAME)}, **more})
    assert "result" in answer or answer["error"]["code"] == -32602, answer
    if method == "codeAction" and "only" in more["context"]:
        assert not answer["result"]


def test_honey_is_told_behind_a_missing_colon_and_gone_when_it_is_taken_out(client: Client) -> None:
    sweet = CLEAN.replace("  - 2 tsp rapeseed oil", "  - 2 tsp rapeseed oil\n  - 1 tsp honey")
    whole = set(codes(client.open(NAME, sweet)))
    broken = set(codes(client.open(NAME, sweet.replace("summary:", "summary"))))
    assert "food-not-yet" in whole & broken and "yaml-syntax" in broken
    client.change(NAME, [{"text": CLEAN}])
    assert not {"food-not-yet", "yaml-syntax"} & set(codes(client.findings(NAME)))
