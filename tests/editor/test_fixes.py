"""What the editor offers to put right, and what the text is then."""

from __future__ import annotations

from tests.editor.client import Client, applied
from tests.editor.test_server import CLEAN, NAME, codes


def test_a_quick_fix_gives_a_text_that_checks_clean(client: Client) -> None:
    text = CLEAN.replace("keeps:", "keps:")
    (finding,) = (f for f in client.open(NAME, text) if f["code"] == "unknown-key")
    fix = next(a for a in client.fixes(NAME, finding) if a["kind"] == "quickfix")
    (change,) = fix["edit"]["documentChanges"]
    assert change["textDocument"] == {"uri": client.uri(NAME), "version": client.version(NAME)}
    mended = applied(text, change["edits"])
    client.change(NAME, [{"text": mended}])
    assert [f for f in client.findings(NAME) if f["severity"] < 3] == []
    assert mended == CLEAN


def test_a_sentence_taken_over_ends_once(client: Client) -> None:
    text = CLEAN.replace("A bowl for a wet evening.", "Peanut from six months prevents peanut allergy.")
    found = [f for f in client.open(NAME, text) if f["code"].startswith("claim-")]
    (fix,) = [a for f in found for a in client.fixes(NAME, f) if a["kind"] == "quickfix" and a["diagnostics"][0] == f]
    mended = applied(text, fix["edit"]["documentChanges"][0]["edits"])
    assert mended.rstrip("\n").endswith("ask a doctor first.")  # and nothing is left of what stood there


def test_all_that_is_safe_is_put_right_at_once_as_check_would(client: Client) -> None:
    text = "\n" + CLEAN
    findings = client.open(NAME, text)
    assert "front-matter-missing" in codes(findings)
    everything = {"start": {"line": 0, "character": 0}, "end": {"line": 99, "character": 0}}
    context = {"diagnostics": [], "only": ["source.fixAll"]}
    params = {"textDocument": {"uri": client.uri(NAME)}, "range": everything, "context": context}
    (action,) = client.ask("textDocument/codeAction", params)
    assert applied(text, action["edit"]["documentChanges"][0]["edits"]) == CLEAN
