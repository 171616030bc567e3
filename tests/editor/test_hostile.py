"""An editor that errs or is ill-meant: whatever it sends, the server answers, stays, and finds what it should."""

from __future__ import annotations

from typing import Any

import pytest

from tests.each import each
from tests.editor.client import Client
from tests.editor.test_server import CLEAN, NAME, codes

pytest.importorskip("pygls", reason="the extra “editor” is not installed")

CLAIM = CLEAN.replace("A bowl for a wet evening.", "This bowl prevents colds.")


def answered(client: Client, number: str, method: str, params: Any) -> dict[str, Any]:
    """The whole answer to a request, be it an error."""
    client.send({"id": number, "method": method, "params": params})
    while True:
        message = client.next()
        if message.get("id") == number and "method" not in message:
            return message
        client.kept.append(message)


@pytest.mark.parametrize(
    "data",
    [
        b"{not}", b"\xff\xfe{}", b"[1]", b"7", b"null", b"", b'{"jsonrpc": "2.0"}', b'{"jsonrpc": "1.0", "id": 1}',
        b'{"jsonrpc": "2.0", "id": {}, "method": 5}', b'{"jsonrpc":"2.0","id":"d","params":' + b"[" * 100_000,
    ],
    ids=lambda data: repr(data[:24]),
)  # fmt: skip
def test_what_is_no_message_is_passed_over(client: Client, data: bytes) -> None:
    client.send_bytes(b"Content-Length: %d\r\n\r\n" % len(data) + data)


@pytest.mark.parametrize("header", [b"Hello\r\n\r\n", b"Content-Length: -5\r\n\r\n", b"Content-Length: many\r\n\r\n"])
def test_what_is_no_header_is_passed_over(client: Client, header: bytes) -> None:
    client.send_bytes(header)


@each("method", ["hover", "completion", "definition", "documentSymbol", "codeAction"])
def test_a_question_that_can_not_be_read_is_answered_with_an_error(client: Client, method: str) -> None:
    unreadable: tuple[Any, ...] = (None, {}, [], {"textDocument": 5, "position": "x"})
    for params in unreadable:
        assert answered(client, "unreadable", f"textDocument/{method}", params)["error"]["code"] in (-32602, -32603)


@each("line, character", [(-1, 0), (0, -1), (2**31, 0), (3, 2**40)])
def test_a_place_that_no_text_has_is_an_error(client: Client, line: int, character: int) -> None:
    client.open(NAME, CLEAN)
    params = {"textDocument": {"uri": client.uri(NAME)}, "position": {"line": line, "character": character}}
    for method in ("hover", "completion", "definition"):
        assert "error" in answered(client, "nowhere", f"textDocument/{method}", params)


@pytest.mark.parametrize("place", [(10**9, 10**9), (2**31 - 1, 0), (0, 2**31 - 1)])
def test_a_place_beyond_the_end_is_the_end(client: Client, place: tuple[int, int]) -> None:
    client.open(NAME, CLEAN)
    for method in ("hover", "completion", "definition"):
        client.at(NAME, method, *place)
    end = {"line": place[0], "character": place[1]}
    client.change(NAME, [{"range": {"start": {"line": 0, "character": 0}, "end": end}, "text": CLAIM}])
    found = codes(client.findings(NAME))
    assert place[0] == 0 or [code for code in found if code.startswith("claim-")]


def test_a_method_nobody_knows_is_an_error_and_a_word_nobody_knows_is_nothing(client: Client) -> None:
    client.tell("who/knows", {})
    assert answered(client, "unknown", "who/knows", {})["error"]["code"] == -32601


@pytest.mark.parametrize(
    "uri",
    [
        "", "file:", "file:///", "file:///%00.md", "file:///recipes/%ff.md", "file:///" + "a" * 5000 + ".md", "//[",
        "untitled:Untitled-1", "https://tern.example/x.md", "file://[::1/x.md", "file:///recipes/\ud83e.md", "no uri [",
    ],
    ids=lambda uri: uri[:20].encode("ascii", "replace").decode(),
)  # fmt: skip
def test_an_address_that_leads_nowhere_is_a_text_like_any_other(client: Client, uri: str) -> None:
    client.tell(
        "textDocument/didOpen", {"textDocument": {"uri": uri, "languageId": "markdown", "version": 1, "text": CLAIM}}
    )
    while True:
        message = client.next()
        assert message.get("method") != "window/showMessage", message["params"]["message"]
        if message.get("method") == "textDocument/publishDiagnostics" and message["params"]["uri"] == uri:
            break
    assert "internal-error" not in codes(message["params"]["diagnostics"])
    place = {"textDocument": {"uri": uri}, "position": {"line": 1, "character": 9}}
    assert "result" in answered(client, "odd", "textDocument/hover", place)
    client.tell("textDocument/didSave", {"textDocument": {"uri": uri}})
    client.tell("workspace/didChangeWatchedFiles", {"changes": [{"uri": uri, "type": 1}]})
    client.tell("textDocument/didClose", {"textDocument": {"uri": uri}})


def test_half_a_character_is_told_and_answered(client: Client) -> None:
    client.open(NAME, CLEAN)
    half = CLEAN.replace("potato mash", "potato \ud83e mash").replace("150 g courgette", "150 g \udd63courgette")
    client.change(NAME, [{"text": half}])
    assert "not-utf-8" in codes(client.findings(NAME))
    for line in (1, 8, 9):
        client.at(NAME, "hover", line, 12)
        client.at(NAME, "completion", line, 12)
    client.ask("textDocument/documentSymbol", {"textDocument": {"uri": client.uri(NAME)}})


@pytest.mark.parametrize(
    ("text", "code"),
    [(CLEAN + "Colds come and go. " * 120_000, "file-too-large"), ("150 g courgette " * 50_000, "")],
    ids=["huge", "one line"],
)
def test_a_huge_text_is_answered_at_once(client: Client, text: str, code: str) -> None:
    assert not code or code in codes(client.open(NAME, text))
    client.open("notes.md", text)
    client.at("notes.md", "hover", 0, 700_000)


def test_opened_and_closed_in_haste_and_closed_again(client: Client) -> None:
    one = {"uri": client.uri(NAME)}
    for version in range(40):
        client.tell(
            "textDocument/didOpen",
            {"textDocument": {**one, "languageId": "markdown", "version": version, "text": CLEAN}},
        )
        client.tell(
            "textDocument/didChange", {"textDocument": {**one, "version": version}, "contentChanges": [{"text": CLAIM}]}
        )
        client.tell("textDocument/didClose", {"textDocument": one})
        client.tell("textDocument/didClose", {"textDocument": one})
    client.tell("textDocument/didChange", {"textDocument": {**one, "version": 99}, "contentChanges": [{"text": CLAIM}]})
    assert client.at(NAME, "hover", 1, 9) is None, "nothing is open any more"


def test_what_was_sent_last_counts_whatever_its_number(client: Client) -> None:
    client.open(NAME, CLEAN)
    sent = client.version(NAME)
    for version, text in ((sent + 500, CLAIM), (sent, CLEAN)):
        client.tell(
            "textDocument/didChange",
            {"textDocument": {"uri": client.uri(NAME), "version": version}, "contentChanges": [{"text": text}]},
        )
    assert not [code for code in codes(client.findings(NAME)) if code.startswith("claim-")]


def test_questions_taken_back_or_asked_twice_under_one_number(client: Client) -> None:
    client.open(NAME, CLEAN)
    place = {"textDocument": {"uri": client.uri(NAME)}, "position": {"line": 1, "character": 9}}
    for number in (*range(700, 720), 700, 700):
        client.send({"id": number, "method": "textDocument/hover", "params": place})
        client.tell("$/cancelRequest", {"id": number})
    client.tell("$/cancelRequest", {"id": "never asked"})
