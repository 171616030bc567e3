"""What is said of pages whose server misbehaves: gone only when it is gone, never a hang, never a private address."""

from __future__ import annotations

import ssl
import time
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from spoonproof.links.check import check, check_all, digest_of
from spoonproof.links.fetch import BODY_BYTES, Fetcher
from spoonproof.links.manners import Manners
from spoonproof.links.results import Result, read_results, results_text
from tests.each import each
from tests.links.server import PAGE, Server, running

DAY = "2026-11-25"


@pytest.fixture(scope="module")
def shared() -> Iterator[Server]:
    with running() as server:
        yield server


@pytest.fixture
def server(shared: Server) -> Server:
    shared.asked.clear()
    shared.page, shared.robots, shared.robots_status, shared.busy = PAGE, b"", 404, 1
    return shared


def ask(server: Server, path: str, before: Result | None = None, **more: Any) -> Result:
    manners = server.manners(more.pop("wait", 2.0), more.pop("total", 4.0))
    return check(server.url(path), manners, server.guard(), DAY, before, more.pop("sleep", lambda _: None))


@each(
    "path, state, rule",
    [
        ("page", "alive", ""), ("no-head", "alive", ""), ("head-missing", "alive", ""), ("head-resets", "alive", ""),
        ("cookie", "alive", ""), ("elsewhere", "alive", ""), ("chain/5", "alive", ""), ("moved", "moved", ""),
        ("missing", "gone", ""), ("gone", "gone", ""),
        ("forbidden", "could-not-check", "status-403"), ("broken", "could-not-check", "status-500"),
        ("busy-for-long", "could-not-check", "status-503"), ("soft", "could-not-check", "soft-not-found"),
        ("loop", "could-not-check", "too-many-redirects"), ("chain/6", "could-not-check", "too-many-redirects"),
        ("chain/30", "could-not-check", "too-many-redirects"), ("nowhere", "could-not-check", "broken-answer"),
        ("reset", "could-not-check", "broken-answer"), ("half", "could-not-check", "broken-answer"),
        ("nonsense", "could-not-check", "broken-answer"), ("not-gzip", "could-not-check", "broken-answer"),
        ("brotli", "could-not-check", "broken-answer"),
        ("inside", "refused", "private-address"), ("to?http://10.0.0.1/", "refused", "private-address"),
        ("to?file:///etc/passwd", "refused", "unsafe-scheme"), ("to?ftp://a.example/", "refused", "unsafe-scheme"),
        ("to?gopher://a.example/", "refused", "unsafe-scheme"),
        ("to?http://u:p@a.example/", "refused", "unsafe-address"),
        ("to?http://[::1]/", "refused", "private-address"), ("to?http://127.0.0.2/", "refused", "private-address"),
        ("to?//127.0.0.2/", "refused", "private-address"), ("to?http://2130706433/", "refused", "private-address"),
        ("to?http://[::ffff:127.0.0.1]/", "refused", "private-address"),
        ("to?javascript:alert(1)", "refused", "unsafe-scheme"), ("to?http://a.example:6379/", "refused", "unsafe-port"),
        ("unasked", "could-not-check", "status-304"), ("heading", "could-not-check", "soft-not-found"),
        ("empty", "could-not-check", "empty"), ("nothing", "could-not-check", "empty"),
        ("home", "could-not-check", "led-home"), ("other-charset", "alive", ""),
        ("busy-until", "could-not-check", "status-429"), ("always-busy", "could-not-check", "status-429"),
        ("headers", "could-not-check", "broken-answer"), ("long-header", "could-not-check", "broken-answer"),
        ("bad-chunk", "could-not-check", "broken-answer"), ("endless-chunk", "could-not-check", "broken-answer"),
        ("odd-status", "could-not-check", "status-999"), ("minus", "alive", ""),
    ],
)  # fmt: skip
def test_what_is_said(server: Server, path: str, state: str, rule: str) -> None:
    found = ask(server, path)
    assert (found.state, found.rule) == (state, rule), found
    assert found.on == DAY


def test_where_it_moved(server: Server) -> None:
    found = ask(server, "moved")
    assert found.final == server.url("page") and found.final in found.note


@pytest.mark.parametrize("path", ["silent", "drip", "drip-headers", "wait-and-see"])
def test_slow_servers_are_left_in_time(server: Server, path: str) -> None:
    start = time.monotonic()
    found = ask(server, path, wait=0.6, total=1.0)
    assert (found.state, found.rule) == ("could-not-check", "link-timeout")
    assert time.monotonic() - start < 8


@pytest.mark.parametrize("path", ["endless", "huge", "bomb"])
def test_reading_stops_at_the_limit(server: Server, path: str) -> None:
    answer = server.fetcher(20.0, 60.0).ask(server.url(path))
    assert answer.cut and len(answer.body) == BODY_BYTES


def test_a_busy_host_is_asked_once_more(server: Server) -> None:
    waits: list[float] = []
    assert ask(server, "busy", sleep=waits.append).state == "alive"
    assert waits == [2.0]


def test_it_changes_only_when_what_it_shows_changes(server: Server) -> None:
    first = ask(server, "page")
    server.page = PAGE.replace(b"x()", b"y()").replace(b"<p>", b"<p  class=new>\n")
    assert ask(server, "page", first).state == "alive"
    server.page = PAGE.replace(b"six", b"four")
    changed = ask(server, "page", first)
    assert changed.state == "changed" and DAY in changed.note


def test_its_own_mark_saves_the_second_request(server: Server) -> None:
    first = ask(server, "marked")
    assert first.etag == '"one"' and first.digest
    server.asked.clear()
    again = ask(server, "marked", first)
    assert again.state == "alive" and again.digest == first.digest
    assert [asked[0] for asked in server.asked if asked[1] == "/marked"] == ["HEAD"]
    assert ask(server, "marked", replace(first, etag='"old"', digest="other")).state == "changed"


def test_it_asks_only_for_what_is_not_as_it_was(server: Server) -> None:
    first = ask(server, "unchanged")
    server.asked.clear()
    again = ask(server, "unchanged", first)
    assert (again.state, again.digest, again.etag) == ("alive", first.digest, '"one"')
    sent = [headers for method, path, headers, _ in server.asked if (method, path) == ("GET", "/unchanged")]
    assert [headers.get("If-None-Match") for headers in sent] == ['"one"']
    hostile = replace(first, etag='"a"\r\nX-Injected: 1')
    assert ask(server, "unchanged", hostile).state == "alive"
    assert not any("X-Injected" in headers for _, _, headers, _ in server.asked)


def test_a_front_page_that_is_cited_is_no_loss(server: Server) -> None:
    assert ask(server, "").state == "alive"


@pytest.mark.parametrize("rules", [b"\xef\xbb\xbfUser-agent: *\nDisallow: /", b"User-agent: *\rDisallow: /\r"])
def test_robots_written_otherwise_are_obeyed(server: Server, rules: bytes) -> None:
    server.robots, server.robots_status = rules, 200
    assert ask(server, "page").rule == "robots"


def test_the_next_address_is_tried_where_one_does_not_take_the_call(server: Server) -> None:
    guard = replace(server.guard(), resolver=lambda *_: ["127.0.0.9", "127.0.0.1"], allowed=lambda _: True)
    fetcher = Fetcher("spoonproof-test/1", guard, 2.0, 4.0)
    assert check(server.url("page"), Manners(fetcher, pause=0.0), guard, DAY).state == "alive"


def test_what_was_known_is_kept_when_it_can_not_be_checked(server: Server) -> None:
    before = ask(server, "marked")
    failed = ask(server, "broken", before)
    assert (failed.state, failed.digest, failed.etag) == ("could-not-check", before.digest, before.etag)


def test_robots_are_obeyed_on_every_hop(server: Server) -> None:
    server.robots, server.robots_status = b"User-agent: *\nDisallow: /page\nDisallow: /private\n", 200
    assert ask(server, "private").rule == "robots"
    assert ask(server, "moved").rule == "robots"
    assert [path for _, path, _, _ in server.asked if path in ("/private", "/page")] == []
    assert ask(server, "no-head").state == "alive"


@pytest.mark.parametrize("status", [500, 503, 429])
def test_a_robots_file_that_can_not_be_had_means_no(server: Server, status: int) -> None:
    server.robots_status = status
    found = ask(server, "page")
    assert (found.state, found.rule) == ("could-not-check", "robots")


def test_one_host_is_asked_in_turn_with_a_pause(server: Server) -> None:
    clock = [0.0]
    slept: list[float] = []

    def sleep(seconds: float) -> None:
        slept.append(seconds)
        clock[0] += seconds

    server.robots, server.robots_status = b"User-agent: *\nCrawl-delay: 3\n", 200
    manners = Manners(server.fetcher(), 1.0, lambda: clock[0], sleep)
    results = check_all([server.url(f"page?{n}") for n in range(3)], manners, server.guard(), DAY, {})
    assert {result.state for result in results.values()} == {"alive"}
    assert slept and set(slept) == {3.0}
    assert len([1 for _, path, _, _ in server.asked if path == "/robots.txt"]) == 1


def test_nothing_of_ours_is_sent_along(server: Server, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("http_proxy", "http://127.0.0.1:9")
    ask(server, "cookie")
    ask(server, "cookie")
    for _, _, headers, _ in server.asked:
        assert not {"Cookie", "Authorization", "Referer"} & set(headers)
        assert headers["Host"].startswith("pages.test:") and headers["User-Agent"] == "spoonproof-test/1"


def test_the_connection_goes_to_the_address_that_was_checked(server: Server) -> None:
    answers = iter([["127.0.0.1"]])

    def once(host: str, port: int) -> list[str]:
        return next(answers)  # a second look-up would fail the test

    guard = replace(server.guard(), resolver=once)
    assert Fetcher("t/1", guard, 2.0, 4.0).ask(server.url("page")).status == 200


def test_certificates_are_checked() -> None:
    with running(tls=True) as server:
        found = check(server.url("page", "https"), server.manners(), server.guard(), DAY)
        assert (found.state, found.rule) == ("could-not-check", "certificate")
        trusting = replace(server.fetcher(), tls=lambda: ssl.create_default_context(cafile=_certificate()))
        manners = Manners(trusting, pause=0.0)
        assert check(server.url("page", "https"), manners, server.guard(), DAY).state == "alive"
        down = check(server.url(f"to?{server.url('page')}", "https"), manners, server.guard(), DAY)
        assert (down.state, down.rule) == ("refused", "downgraded")
        other = server.url("page", "https").replace("pages.test", "other.test")
        assert check(other, Manners(trusting, pause=0.0), server.guard(), DAY).rule == "certificate"


def _certificate() -> str:
    from tests.links.server import CERTIFICATE

    return str(CERTIFICATE)


def test_no_host_and_no_listener() -> None:
    with running() as server:
        closed = server.url("page")
        guard = server.guard()
    assert check(closed, Manners(Fetcher("t/1", guard, 1.0, 2.0), 0.0), guard, DAY).rule == "no-connection"
    nowhere = replace(guard, resolver=lambda *_: [])
    assert check(closed, Manners(Fetcher("t/1", nowhere), 0.0), nowhere, DAY).rule == "dns"


def test_results_read_back_and_rubbish_is_as_good_as_none() -> None:
    results = {
        "https://b.example/": Result("alive", DAY, digest="ab"),
        "https://a.example/": Result("gone", DAY, "410"),
    }
    text = results_text(results)
    assert read_results(text) == results and text == results_text(dict(reversed(results.items())))
    for bad in (
        "",
        text[:-20],
        "[]",
        '{"form": 2, "links": {}}',
        text.replace('"gone"', '"eaten"', 1)[:0],
        "[" * 100_000,
    ):
        assert read_results(bad) == {}
    assert set(read_results(text.replace('"gone"', '"eaten"'))) == {"https://b.example/"}


def test_digest_is_linear_in_broken_markup() -> None:
    def seconds(size: int) -> float:
        start = time.process_time()
        digest_of(b"<script" * size + b"<" * size)
        return time.process_time() - start

    small, large = min(seconds(20_000) for _ in range(3)), min(seconds(80_000) for _ in range(3))
    assert large < max(small, 0.002) * 12
