"""Requests that no page of the desk sends: each is answered in words, with the right number, and changes nothing."""

from __future__ import annotations

import json
from urllib.parse import urlencode

import pytest

from tests.desk.conftest import Served

SLUG = "potato-and-courgette-mash"
FORM = "application/x-www-form-urlencoded"
JSON = "application/json"
DIGITS = "9" * 5000
SCRIPT = "<script>alert(1)</script>"

ENTRY = {
    "id": "swede-colds", "said": "swede prevents colds", "about": "swede", "kind": "disease", "truth": "false",
    "why": "Nothing shows it.", "new_title": "On swedes", "new_author": "A. Reader", "new_year": "2020",
    "source": "new", "locator": "page 3", "basis": "read", "checked": "2026-11-20",
}  # fmt: skip

ROWS: list[tuple[str, str, str, str, str, tuple[int, ...], str]] = [
    # what it is, method, path, kind of body, body, the codes that are right, and words that the answer holds
    ("a method of another trade", "PUT", f"/write/{SLUG}", "", "", (405,), "method"),
    ("a page number without end", "GET", f"/?page={DIGITS}", "", "", (200,), SLUG),
    ("an entry number without end", "GET", f"/register?page={DIGITS}", "", "", (200,), "register"),
    ("a page number in other digits", "GET", "/?page=%D9%A3", "", "", (200,), SLUG),
    ("a search that is a script", "GET", f"/?find={SCRIPT}", "", "", (200,), "&lt;script&gt;"),
    ("a time of day without end", "GET", f"/filming-day?recipe={SLUG}&at:0={DIGITS}:1", "", "", (200,), "Potato"),
    ("a move without end", "GET", f"/new-foods?recipe={SLUG}&move={DIGITS}", "", "", (200,), "Potato"),
    ("recipes that are none", "GET", "/filming-day?" + "recipe=..%2f..&" * 500, "", "", (200, 400, 404), ""),
    ("more fields than a form has", "GET", "/?" + "a=1&" * 7000, "", "", (400, 414, 431), ""),
    ("a text that is a list", "POST", f"/save/{SLUG}", JSON, '{"text": ["a"]}', (400,), "should be a text"),
    ("a body without end of brackets", "POST", f"/read/{SLUG}", JSON, "[" * 100_000, (400,), "can't read"),
    ("a save without its base", "POST", f"/save/{SLUG}", JSON, '{"text": "gone"}', (200, 400, 409), ""),
    ("a body of no kind", "POST", f"/save/{SLUG}", "", "gone", (415,), "read what was sent"),
    ("a name that climbs", "POST", "/recipes", FORM, urlencode({"name": "../../climbed"}), (200, 303, 400), ""),
    ("a name without letters", "POST", "/recipes", FORM, urlencode({"name": "???"}), (200, 400), ""),
    ("a name of the system's", "POST", "/recipes", FORM, urlencode({"name": "con"}), (200, 303, 400), ""),
    ("a remedy without end", "POST", f"/mend/{SLUG}", JSON, json.dumps({"text": "x", "remedy": DIGITS}), (409,), ""),
    ("captions at an absurd hour", "POST", "/listen", FORM,
     urlencode({"name": "a.vtt", "text": "WEBVTT\n\n99999:00:00.000 --> 99999:00:01.000\npears cure colds\n"}),
     (200,), "pears cure colds"),
    ("a cue that ends before it begins", "POST", "/listen", FORM,
     urlencode({"name": "a.vtt", "text": "WEBVTT\n\n00:09.000 --> 00:04.000\npears cure colds\n"}), (200,), "Line 3:"),
    ("a danger told twice in one breath", "POST", "/listen", FORM,
     urlencode({"name": "a.txt", "text": "Whole grapes are fine from six months."}), (200,), "1 claim heard"),
    ("a tick without end", "POST", "/listen", FORM,
     urlencode({"name": "a.txt", "text": "pears cure colds", "mend": DIGITS, "step": "correct"}), (200,), "ticked"),
    ("work that the desk does not do", "POST", "/out/start", JSON, '{"what": "rm", "key": "../.."}', (400, 404), ""),
    ("a harm without end", "POST", "/register/add", FORM, urlencode({**ENTRY, "harm": DIGITS}), (422,), "from 0 to 3"),
]  # fmt: skip


@pytest.fixture(scope="module")
def desk(asked_only: Served) -> Served:
    return asked_only


@pytest.mark.parametrize("row", ROWS, ids=[row[0] for row in ROWS])
def test_an_odd_request_is_answered_in_words(
    desk: Served, row: tuple[str, str, str, str, str, tuple[int, ...], str]
) -> None:
    _, method, path, kind, body, codes, words = row
    recipe = desk.root / "recipes" / f"{SLUG}.md"
    before = recipe.read_bytes()
    headers = {"X-Desk-Token": desk.token, "Origin": desk.origin, **({"Content-Type": kind} if kind else {})}
    answer = desk.ask(method, path, headers, body)
    assert answer.code in codes, answer.body[:400]
    assert words in answer.body and SCRIPT not in answer.body and "fault of ours" not in answer.body
    assert recipe.read_bytes() == before
    made = {path.name for path in desk.root.parent.rglob("*.md")} - {recipe.name}
    assert made <= {"climbed.md"} and not (desk.root.parent / "climbed.md").exists(), made
