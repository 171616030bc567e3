"""The language server over real messages, as an editor meets it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.editor.client import Client, applied, place, taken, units

pytest.importorskip("pygls", reason="the extra “editor” is not installed")

CHANNEL = """title: Tern Steps
base_url: https://tern-steps.example
measures: UK
markets: [EU, GB]
"""
CLEAN = """---
title: Courgette and potato mash
summary: Courgette and potato, crushed.
ages: 7-9 months
texture: mashed
next: {texture: lumpy, from: 9 months, how: crush it less}
makes: 4 x 90 g
foods:
  - 300 g floury potatoes, peeled, 1 cm dice
  - 150 g courgette, 1 cm dice
  - 2 tsp rapeseed oil
steps:
  - Boil the potatoes in 500 ml of water for 20-25 minutes, until a cube squashes between finger and thumb.
  - Add the courgette and boil for 8 minutes more, until it squashes too.
  - Drain, then mash the potatoes and the courgette with the oil.
keeps: fridge 24 h, freezer 1 month
---
A bowl for a wet evening.
"""
NAME = "recipes/courgette-mash.md"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A channel with one clean recipe; nothing here writes to it."""
    place = tmp_path_factory.mktemp("channel")
    (place / "recipes").mkdir()
    (place / "channel.yaml").write_text(CHANNEL, encoding="utf-8")
    (place / NAME).write_text(CLEAN, encoding="utf-8")
    return place


@pytest.fixture(scope="module")
def editor(folder: Path) -> Iterator[Client]:
    """One server for all tests, as an editor keeps one for a day; it ends with an orderly shutdown."""
    with Client(folder) as made:
        yield made
        assert made.leave() == 0


@pytest.fixture
def client(editor: Client) -> Iterator[Client]:
    """The editor with nothing open in it."""
    yield editor
    editor.close_all()


def telling(story: str) -> str:
    """The clean recipe with another story."""
    return CLEAN.replace("A bowl for a wet evening.", story)


def asked(client: Client, method: str, text: str, words: str, further: int = 0) -> Any:
    """What the server answers at words of a recipe that is opened for it."""
    client.open(NAME, text)
    where = place(text, words)
    return client.at(NAME, method, where["line"], where["character"] + further)


def codes(findings: list[dict[str, Any]]) -> list[str]:
    """The rules that spoke."""
    return [finding["code"] for finding in findings]


def test_a_clean_recipe_has_no_findings_above_a_note(client: Client) -> None:
    assert [f for f in client.open(NAME, CLEAN) if f["severity"] < 3] == []


def test_findings_say_where_what_and_how_to_put_it_right(client: Client) -> None:
    text = CLEAN.replace("  - 2 tsp rapeseed oil", "  - 2 tsp rapeseed oil\n  - 1 tsp honey").replace(
        "courgette with the oil.", "courgette with the oil and the honey."
    )
    (finding,) = (f for f in client.open(NAME, text) if f["code"] == "food-not-yet")
    assert taken(text, finding["range"]) == "honey"
    assert finding["severity"] == 1
    assert finding["source"] == "spoonproof"
    assert "codeDescription" not in finding
    assert "To put it right: " in finding["message"]
    assert "Source: " in finding["message"]


def test_columns_hold_behind_emoji_and_combining_marks(client: Client) -> None:
    before = "Pure\u0301e 🥔🥣👩🏽‍🍳 for supper: "
    text = telling(f"{before}this bowl prevents colds.")
    (finding,) = (f for f in client.open(NAME, text) if f["code"].startswith("claim-"))
    assert finding["range"]["start"] == place(text, "bowl prevents colds")
    assert taken(text, finding["range"]) == "bowl prevents colds"
    # In code points the column is another one, so the test can tell them apart.
    assert units(before) > len(before)


def test_an_unusual_line_separator_ends_no_line(client: Client) -> None:
    text = telling("Wet\u2028evening.\n\nThis bowl prevents colds.")
    client.open(NAME, text)
    start = place(text, "prevents colds")
    end = {"line": start["line"], "character": start["character"] + len("prevents colds")}
    client.change(NAME, [{"range": {"start": start, "end": end}, "text": "is warm"}])
    assert not [code for code in codes(client.findings(NAME)) if code.startswith("claim-")]


def test_incremental_changes_are_made_one_on_the_other(client: Client) -> None:
    text = CLEAN.replace("A bowl", "🥣 A bowl")
    client.open(NAME, text)
    start = place(text, "A bowl")
    first = {"range": {"start": start, "end": {**start, "character": start["character"] + 6}}, "text": "🍲 It"}
    after = text.replace("A bowl for", "🍲 It for")
    second_at = place(after, "for a wet evening")
    end = {**second_at, "character": second_at["character"] + len("for a wet evening")}
    client.change(NAME, [first, {"range": {"start": second_at, "end": end}, "text": "prevents colds"}])
    after = after.replace("for a wet evening", "prevents colds")
    (finding,) = (f for f in client.findings(NAME) if f["code"].startswith("claim-"))
    assert taken(after, finding["range"]).endswith("prevents colds")


def test_many_changes_at_once_end_in_the_findings_of_the_last(client: Client) -> None:
    client.open(NAME, CLEAN)
    for letter in "This bowl prevents colds":
        client.change(NAME, [{"text": CLEAN.replace("A bowl for a wet evening", letter)}])
    client.change(NAME, [{"text": CLEAN.replace("A bowl for a wet evening", "This bowl prevents colds")}])
    assert [code for code in codes(client.findings(NAME)) if code.startswith("claim-")]
    client.change(NAME, [{"text": CLEAN}])
    assert [f for f in client.findings(NAME) if f["severity"] < 3] == []


def test_hover_on_a_food_shows_its_figures_and_their_source(client: Client) -> None:
    told = asked(client, "hover", CLEAN, "courgette, 1 cm")["contents"]["value"]
    assert "per 100 g" in told
    assert "| iron |" in told
    assert "Source: " in told
    assert "150 g" in told  # how the line was read


def test_hover_on_a_claim_shows_both_answers_and_the_trail(client: Client) -> None:
    text = telling("This bowl is rich in iron.")
    told = asked(client, "hover", text, "rich in iron", 2)["contents"]["value"]
    assert "EU" in told
    assert "GB" in told
    assert "US" not in told.split("How it was judged:")[0]  # no market of this channel
    assert "mg" in told.split("How it was judged:")[1]
    assert "not legal advice" in told


@pytest.mark.parametrize(
    ("words", "expected"),
    [("mashed\n", "months"), ("Add the courgette", "8 min more"), ("keeps: fridge", "How long it keeps")],
)
def test_hover_on_a_texture_a_step_and_a_key(client: Client, words: str, expected: str) -> None:
    told = asked(client, "hover", CLEAN, words, 1)
    assert expected in told["contents"]["value"]


def test_hover_on_nothing_is_nothing(client: Client) -> None:
    client.open(NAME, CLEAN)
    assert client.at(NAME, "hover", 0, 1) is None
    assert client.at(NAME, "hover", 9_999, 9_999) is None


def _labels(client: Client, text: str, words: str) -> list[str]:
    found = asked(client, "completion", text, words, units(words))
    return [item["label"] for item in found["items"]]


def test_foods_are_offered_after_an_amount_and_not_before(client: Client) -> None:
    text = CLEAN.replace("  - 150 g courgette, 1 cm dice", "  - 150 g cour")
    labels = _labels(client, text, "150 g cour")
    assert "courgette" in labels
    where = place(text, "- 150 g cour")
    assert client.at(NAME, "completion", where["line"], where["character"] + len("- 15"))["items"] == []


def test_a_food_taken_from_the_list_replaces_what_was_typed(client: Client) -> None:
    text = CLEAN.replace("  - 150 g courgette, 1 cm dice", "  - 2 large ripe cour")
    found = asked(client, "completion", text, "2 large ripe cour", units("2 large ripe cour"))
    item = next(item for item in found["items"] if item["label"] == "courgette")
    assert "  - 2 large ripe courgette\n" in applied(text, [item["textEdit"]])


@pytest.mark.parametrize(
    ("written", "typed", "label", "not_label"),
    [
        ("texture: mashed", "texture: m", "minced", "smooth"),
        ("keeps: fridge 24 h, freezer 1 month", "kee", "keeps", "title"),
        ("texture: mashed", "texture: mashed\npaid: ", "sponsored", "mashed"),
        ("keeps: fridge 24 h", "film:\n  segments:\n    - name: Hook\n      su", "super", "keeps"),
    ],
)
def test_keys_and_closed_words_are_offered(
    client: Client, written: str, typed: str, label: str, not_label: str
) -> None:
    labels = _labels(client, CLEAN.replace(written, typed, 1), typed.rpartition("\n")[2])
    assert label in labels
    assert not_label not in labels


def test_the_wording_that_stands_is_offered_in_place_of_the_claim(client: Client) -> None:
    said = "Peanut from six months prevents peanut allergy"
    text = telling(f"🥜 {said}.")
    items = asked(client, "completion", text, said, 6)["items"]
    (item,) = [each for each in items if taken(text, each["textEdit"]["range"]) == said]
    assert item["label"].startswith("Giving smooth peanut from the first year on")
    assert taken(text, item["textEdit"]["range"]) == said


def test_no_wording_is_offered_where_nothing_is_claimed_or_nothing_stands(client: Client) -> None:
    assert _labels(client, telling("Iron contributes"), "Iron contributes") == []
    assert _labels(client, CLEAN, "A bowl for") == []
    text = telling("This bowl prevents colds.")
    assert _labels(client, text, "bowl prevents") == []


def test_definition_of_a_claim_is_its_entry_in_the_register(client: Client) -> None:
    text = telling("This bowl is rich in iron.")
    first, *_ = asked(client, "definition", text, "rich in iron")
    path = Path(first["uri"].removeprefix("file://"))
    assert path.parent.name == "claims"
    assert taken(path.read_text(encoding="utf-8"), first["range"]) == "high-vitamin-or-mineral"


def test_definition_of_a_recipe_used_as_a_food_is_that_recipe(client: Client) -> None:
    other = CLEAN.replace("  - 2 tsp rapeseed oil", "  - {recipe: courgette-mash, amount: 100 g}")
    client.open("recipes/other.md", other)
    where = place(other, "courgette-mash")
    (found,) = client.at("recipes/other.md", "definition", where["line"], where["character"])
    assert found["uri"] == client.uri(NAME)


def test_every_answer_counts_in_utf_16_behind_an_emoji(client: Client) -> None:
    cook = "👩🏽‍🍳🥣"
    text = telling(f"{cook} This bowl is rich in iron.").replace(
        "  - 2 tsp rapeseed oil", f'  - "{cook} 2 tsp rapeseed oli"'
    )
    findings = client.open(NAME, text)
    where = place(text, "rich in iron")
    for character in (where["character"], where["character"] + len("rich in iro")):
        told = client.at(NAME, "hover", where["line"], character)
        assert "How it was judged" in told["contents"]["value"]
        assert "rich in iron" in taken(text, told["range"])
        assert client.at(NAME, "definition", where["line"], character)
    before = client.at(NAME, "hover", where["line"], 2)
    assert before is None or "How it was judged" not in before["contents"]["value"]
    for finding in findings:
        assert taken(text, finding["range"]).strip()
    (top,) = client.ask("textDocument/documentSymbol", {"textDocument": {"uri": client.uri(NAME)}})
    foods = next(part for part in top["children"] if part["name"] == "Foods")
    assert "rapeseed oli" in taken(text, foods["children"][2]["selectionRange"])


def test_outline_has_title_foods_and_steps(client: Client) -> None:
    client.open(NAME, CLEAN)
    (top,) = client.ask("textDocument/documentSymbol", {"textDocument": {"uri": client.uri(NAME)}})
    assert top["name"] == "Courgette and potato mash"
    assert [(part["name"], len(part["children"])) for part in top["children"]] == [("Foods", 3), ("Steps", 3)]


def test_channel_yaml_is_checked_and_completed(client: Client, folder: Path) -> None:
    text = CHANNEL.replace("measures: UK", "measurs: UK")
    (finding,) = client.open("channel.yaml", text)
    assert finding["code"] == "unknown-key"
    assert taken(text, finding["range"]) == "measurs"
    client.change("channel.yaml", [{"text": CHANNEL + "pa"}])
    client.findings("channel.yaml")
    labels = [item["label"] for item in client.at("channel.yaml", "completion", 4, 2)["items"]]
    assert labels == ["paid"]


def test_a_change_of_the_channel_is_felt_by_an_open_recipe(client: Client) -> None:
    text = telling("This bowl is rich in iron.")
    client.open(NAME, text)
    client.open("channel.yaml", CHANNEL)
    client.findings(NAME)
    client.change("channel.yaml", [{"text": CHANNEL.replace("[EU, GB]", "[US]")}])
    client.findings("channel.yaml")
    client.findings(NAME)
    where = place(text, "rich in iron")
    told = client.at(NAME, "hover", where["line"], where["character"])["contents"]["value"]
    assert "- US" in told
    assert "- GB" not in told


def test_a_file_of_the_register_is_checked_as_it_is_typed(client: Client) -> None:
    text = "entries:\n  - {id: tern-entry, about: [pear], truth: perhaps, source: no-such-source, locator: p 1}\n"
    findings = client.open("claims/own.yaml", text)
    assert {finding["code"] for finding in findings} >= {"register-unknown-source"}
    start = place(text, "no-such-source")
    end = {**start, "character": start["character"] + len("no-such-source")}
    client.change("claims/own.yaml", [{"range": {"start": start, "end": end}, "text": "efsa"}])
    client.findings("claims/own.yaml")
    found = client.at("claims/own.yaml", "completion", start["line"], start["character"] + 4)
    assert found["items"]
    assert all(item["label"].startswith("efsa") for item in found["items"])


@pytest.mark.parametrize(
    "text",
    [
        "",
        "\n",
        "---",
        "---\ntitle: [",
        "---\nfoods:\n  - {food: \n",
        "---\ntitle: a\nfoods:\n\t- 1 g x\n---\n",
        "---\n" + "[" * 5000 + "\nfoods:\n---\n",
        "---\nfoods: &a [*a]\n---\n",
        "---\nfoods:\n  - 1 g \ud800\n---\n",
        "\ufeff" + CLEAN,
        CLEAN.replace("\n", "\r\n"),
        CLEAN + "x" * (2 << 20),
        "---\nfoods:\n" + "  - 1 g honey\n" * 4000 + "---\n",
    ],
    ids=lambda text: repr(text[:20]),
)
def test_nothing_that_is_typed_ends_the_server(client: Client, text: str) -> None:
    client.open(NAME, text)
    for method in ("hover", "completion", "definition"):
        for line, character in ((0, 0), (1, 7), (2, 3), (9999, 0)):
            client.at(NAME, method, line, character)
    client.ask("textDocument/documentSymbol", {"textDocument": {"uri": client.uri(NAME)}})
    client.change(NAME, [{"text": CLEAN}])
    assert [f for f in client.findings(NAME) if f["severity"] < 3] == []


def test_a_text_that_is_no_recipe_is_left_alone(client: Client) -> None:
    assert client.open("NOTES.md", "This bowl prevents colds.\n") == []
    assert client.at("NOTES.md", "hover", 0, 3) is None


def test_a_question_about_a_text_that_is_not_open_is_answered_with_nothing(client: Client) -> None:
    assert client.at("recipes/never.md", "hover", 0, 0) is None
    client.tell("textDocument/didClose", {"textDocument": {"uri": client.uri("recipes/never.md")}})


def test_a_recipe_outside_of_any_channel_is_checked_too_and_the_server_ends_when_the_editor_goes_away(
    tmp_path: Path,
) -> None:
    with Client(tmp_path) as client:
        text = CLEAN.replace("courgette with the oil", "courgette")
        assert "food-never-used" in codes(client.open("alone.md", text))
        assert client.at("alone.md", "hover", 8, 12) is not None
        assert client.process.stdin is not None
        client.process.stdin.close()
        assert client.process.wait(20) in (0, 1)


def test_positions_in_another_unit_when_that_was_agreed_and_an_exit_without_shutdown(folder: Path) -> None:
    text = telling("🥔🥣 this bowl prevents colds.")
    with Client(folder, capabilities={"general": {"positionEncodings": ["utf-8"]}}) as client:
        assert client.capabilities["positionEncoding"] == "utf-8"
        (finding,) = (f for f in client.open(NAME, text) if f["code"].startswith("claim-"))
        line = text[: text.index("bowl prevents")].rpartition("\n")[2]
        assert finding["range"]["start"]["character"] == len(line.encode())
        client.tell("exit", None)
        assert client.process.wait(20) == 1
