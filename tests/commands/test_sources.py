"""``sources``: complete, cited, due, covered; the network only when told to."""

from __future__ import annotations

import json
import socket
from pathlib import Path

import pytest

from spoonproof.cli import main
from spoonproof.commands.sources import faults_of
from spoonproof.links import check as check_module
from spoonproof.links.results import Result, read_results


@pytest.fixture
def channel(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("SPOONPROOF_TODAY", "2026-11-25")
    (tmp_path / "channel.yaml").write_text("title: Test\nbase_url: https://test.example\nmarkets: [EU]\n")
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def no_network(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise AssertionError("asked the network")

    monkeypatch.setattr(socket, "create_connection", refuse)
    monkeypatch.setattr(socket, "getaddrinfo", refuse)


def test_a_source_may_say_why_it_has_no_address() -> None:
    bare = {"type": "book", "title": "Tables", "author": [{"family": "Roe"}]}
    assert faults_of(bare) == ["has no address"]
    assert faults_of({**bare, "custom": {"no-address": "a printed book"}}) == []
    page = {"type": "webpage", "title": "A chart", "URL": "https://test.example"}
    assert faults_of(page) == ["has neither author nor publisher"]
    assert faults_of({**page, "custom": {"no-publisher": "the copy names none"}}) == []


def test_every_source_of_ours_can_be_found_or_says_why_not(capsys: pytest.CaptureFixture[str]) -> None:
    main(["sources"])
    assert "; 0 need mending; " in capsys.readouterr().out


@pytest.mark.usefixtures("no_network")
def test_offline_it_asks_nobody(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    main(["sources"])
    text = capsys.readouterr().out
    assert "nhs-avoid: NHS. Food and drinks to avoid" in text
    assert "entries, " in text and "cut-untrue" in text  # the coverage table
    assert not (channel / ".spoonproof/links.json").exists()


def test_what_a_reader_needs_to_find_it() -> None:
    assert faults_of(None) == ["cited, but nowhere defined"]
    assert faults_of({"type": "webpage", "title": "T", "publisher": "P", "URL": "https://a.example"}) == []
    assert faults_of({"type": "book", "title": "T", "author": [{"family": "F"}], "ISBN": "1"}) == []
    assert faults_of({"type": "webpage", "title": "T"}) == ["has neither author nor publisher", "has no address"]
    assert faults_of({"publisher": "P", "DOI": "10.1/x"}) == ["has no type", "has no title"]


def test_due_entries_are_told(
    channel: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SPOONPROOF_TODAY", "2029-01-01")
    assert main(["sources"]) == 1
    text = capsys.readouterr().out
    assert "due since 2027-05-25: honey-given-early (claims/safety.yaml); spoonproof where honey-given-early" in text


def test_online_is_kept_with_its_date_and_not_asked_twice(
    channel: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []

    def answer(url: str, *_: object) -> Result:
        asked.append(url)
        gone = "food-and-drinks-to-avoid" in url
        return Result("gone" if gone else "alive", "2026-11-25", "the host answers 404" if gone else "", url)

    monkeypatch.setattr(check_module, "check", answer)
    assert main(["sources", "--online", "--format", "jsonl"]) == 1
    found = {state.get("id"): state for state in map(json.loads, capsys.readouterr().out.splitlines())}
    assert found["nhs-avoid"]["online"]["state"] == "gone"
    assert "is gone: the host answers 404" in found["nhs-avoid"]["faults"]
    first = len(asked)
    assert first > 50
    kept = read_results((channel / ".spoonproof/links.json").read_text())
    assert len(kept) == first
    main(["sources", "--online"])
    assert len(asked) == first
    assert "alive on 2026-11-25" in capsys.readouterr().out
    monkeypatch.setenv("SPOONPROOF_TODAY", "2026-11-26")
    main(["sources", "--online"])
    assert len(asked) == 2 * first


def test_no_network_at_all_is_one_sentence_and_no_broken_link(
    channel: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def nobody(*_: object, **__: object) -> None:
        raise socket.gaierror

    monkeypatch.setattr(socket, "getaddrinfo", nobody)
    assert main(["sources", "--online"]) == 3
    caught = capsys.readouterr()
    assert caught.err.count("is there a network at all?") == 1
    assert "is gone" not in caught.out
