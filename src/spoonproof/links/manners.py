"""Manners: what a host's robots.txt asks of us, and a pause between two requests to one host."""

from __future__ import annotations

import re
import threading
import time
from collections.abc import Callable
from urllib.parse import urlsplit
from urllib.robotparser import RobotFileParser

from spoonproof.links.fetch import Answer, Fetcher, NoAnswer
from spoonproof.links.guard import NoSuchHost

PAUSE_SECONDS = 1.0
LONGEST_PAUSE = 30.0
_HOPS = 5
_LINE_END = re.compile(r"\r\n|\r|\n")
_MOVED = (301, 302, 303, 307, 308)


class Manners:
    """Asks each host's robots.txt once, keeps one request at a time and a pause for each host. Thread-safe."""

    def __init__(
        self,
        fetcher: Fetcher,
        pause: float = PAUSE_SECONDS,
        clock: Callable[[], float] = time.monotonic,
        sleep: Callable[[float], None] = time.sleep,
    ) -> None:
        self._fetcher = fetcher
        self._pause = pause
        self._clock = clock
        self._sleep = sleep
        self._locks: dict[str, threading.RLock] = {}
        self._last: dict[str, float] = {}
        self._rules: dict[str, RobotFileParser] = {}
        self._silent: dict[str, NoAnswer | NoSuchHost] = {}
        self._guard = threading.Lock()

    def ask(self, url: str, method: str = "GET", headers: dict[str, str] | None = None) -> Answer:
        """One request when robots.txt lets us, after the host's pause.

        Raises what ``Fetcher.ask`` raises, and NoAnswer ("robots") where the host asks not to be read.
        """
        host = urlsplit(url).netloc.lower()
        with self._lock(host):
            if host in self._silent:
                raise self._silent[host]
            try:
                rules = self._rules_of(url, host)
            except (NoAnswer, NoSuchHost) as problem:
                # A host that did not answer is not waited for once more for each of its pages.
                self._silent[host] = problem
                raise
            if not rules.can_fetch(self._fetcher.agent, url):
                raise NoAnswer("robots", "its robots.txt asks not to be read by programs")
            return self._paced(url, host, method, headers)

    def _lock(self, host: str) -> threading.RLock:
        with self._guard:
            return self._locks.setdefault(host, threading.RLock())

    def _paced(self, url: str, host: str, method: str, headers: dict[str, str] | None) -> Answer:
        last = self._last.get(host)
        pause = self._pause
        rules = self._rules.get(host)
        if rules is not None and (wanted := rules.crawl_delay(self._fetcher.agent)) is not None:
            pause = min(max(pause, float(wanted)), LONGEST_PAUSE)
        if last is not None and (left := last + pause - self._clock()) > 0:
            self._sleep(left)
        try:
            return self._fetcher.ask(url, method, headers)
        finally:
            self._last[host] = self._clock()

    def _rules_of(self, url: str, host: str) -> RobotFileParser:
        """The host's rules: none there means all may be read; one that can't be had means nothing may (RFC 9309)."""
        if host in self._rules:
            return self._rules[host]
        rules = RobotFileParser()
        at = f"{urlsplit(url).scheme}://{host}/robots.txt"
        for _ in range(_HOPS + 1):
            answer = self._paced(at, urlsplit(at).netloc.lower(), "GET", None)
            if answer.status not in _MOVED or "location" not in answer.headers:
                break
            at = self._fetcher.guard.hop(answer.target, answer.headers["location"])
        if answer.status >= 500 or answer.status == 429:
            raise NoAnswer("robots", "its robots.txt could not be had")
        if answer.status == 200:
            # A byte order mark would hide the first line, and with it whom the rules are for.
            rules.parse(_LINE_END.split(answer.body.decode("utf-8-sig", "replace")))
        else:
            rules.parse([])
        self._rules[host] = rules
        return rules
