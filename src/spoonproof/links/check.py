"""Whether a cited page still stands: alive, moved, gone, changed since it was last asked, or could not be checked."""

from __future__ import annotations

import hashlib
import re
import time
from collections.abc import Callable, Iterable, Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from urllib.parse import urlsplit

from spoonproof.links.fetch import Answer, NoAnswer
from spoonproof.links.guard import Guard, NoSuchHost, Refused
from spoonproof.links.manners import Manners
from spoonproof.links.results import Result

MOST_HOPS = 5
HOSTS_AT_ONCE = 6
LONGEST_RETRY = 10.0
"""Seconds that a busy host may ask us to wait before the one retry; longer means another day."""
_FOR_GOOD = (301, 308)
_MOVED = (301, 302, 303, 307, 308)
_NOT_SHOWN = re.compile(rb"<(script|style)\b", re.I)
_TAG = re.compile(rb"<[^<>]{0,4000}>")
_SPACE = re.compile(rb"\s+")
_TITLE = re.compile(rb"<title[^>]{0,200}>([^<]{0,300})", re.I)
_HEADING = re.compile(rb"<h1[^>]{0,400}>(.{0,300}?)</h1", re.I | re.S)
_FRONT = ("", "/", "/index.html", "/index.htm", "/index.php", "/home")
_UNCHANGED = 304
_SOFT = re.compile(rb"\b(?:page not found|not found|404|no longer available|page (?:does not|doesn't) exist)\b", re.I)


def check_all(
    urls: Iterable[str], manners: Manners, guard: Guard, today: str, before: Mapping[str, Result]
) -> dict[str, Result]:
    """A result for each address; several hosts at once, one request at a time to each."""
    by_host: dict[str, list[str]] = {}
    for url in dict.fromkeys(urls):
        by_host.setdefault(urlsplit(url).netloc.lower() if "//" in url else "", []).append(url)

    def host(addresses: list[str]) -> list[tuple[str, Result]]:
        return [(url, check(url, manners, guard, today, before.get(url))) for url in addresses]

    with ThreadPoolExecutor(HOSTS_AT_ONCE) as pool:
        return dict(sorted(pair for pairs in pool.map(host, by_host.values()) for pair in pairs))


def check(
    url: str,
    manners: Manners,
    guard: Guard,
    today: str,
    before: Result | None = None,
    sleep: Callable[[float], None] = time.sleep,
) -> Result:
    """Ask one address: HEAD first, GET where HEAD settles nothing. Never raises for what a server does."""
    try:
        answer, moved = _follow(url, "HEAD", manners, guard, sleep)
        if _says_enough(answer, before):
            return _judged(url, answer, moved, today, before, asked_whole=False)
        answer, moved = _follow(url, "GET", manners, guard, sleep, _if_changed(before))
        return _judged(url, answer, moved, today, before, asked_whole=answer.status != _UNCHANGED)
    except Refused as refused:
        return Result("refused", today, str(refused), rule=refused.rule)
    except NoSuchHost:
        return _kept(before, today, "dns", "its host was not found")
    except NoAnswer as problem:
        return _kept(before, today, problem.rule, str(problem))


def _kept(before: Result | None, today: str, rule: str, words: str) -> Result:
    """Could not check: what was known of the page stays for the next time."""
    result = Result("could-not-check", today, words, rule=rule)
    return (
        result if before is None else replace(result, etag=before.etag, modified=before.modified, digest=before.digest)
    )


def _if_changed(before: Result | None) -> dict[str, str]:
    """Headers that ask for the page only where it is not as it was when last read (RFC 9110)."""
    if before is None or not before.digest:
        return {}
    marks = {"If-None-Match": before.etag, "If-Modified-Since": before.modified}
    return {name: mark for name, mark in marks.items() if mark and mark.isascii() and mark.isprintable()}


def _follow(
    url: str,
    method: str,
    manners: Manners,
    guard: Guard,
    sleep: Callable[[float], None],
    headers: dict[str, str] | None = None,
) -> tuple[Answer, bool]:
    """The last answer of a chain of redirects, and whether the page moved for good. Every hop is checked anew."""
    for_good = False
    at = url
    for hop in range(MOST_HOPS + 1):
        try:
            answer = manners.ask(at, method, headers)
        except NoAnswer as problem:
            if method == "HEAD" and problem.rule == "broken-answer":
                answer = manners.ask(at, "GET")
            else:
                raise
        if answer.status in (429, 503) and (wait := _retry_after(answer)) is not None:
            sleep(wait)
            answer = manners.ask(at, method, headers)
        if answer.status not in _MOVED:
            return answer, for_good
        location = answer.headers.get("location", "").strip()
        if not location:
            raise NoAnswer("broken-answer", "it says it moved, and not where to")
        for_good = for_good or (hop == 0 and answer.status in _FOR_GOOD)
        at = guard.hop(answer.target, location)
    raise NoAnswer("too-many-redirects", f"it led on more than {MOST_HOPS} times")


def _retry_after(answer: Answer) -> float | None:
    given = answer.headers.get("retry-after", "").strip()
    return float(given) if given.isascii() and given.isdigit() and float(given) <= LONGEST_RETRY else None


def _says_enough(answer: Answer, before: Result | None) -> bool:
    """Whether a HEAD answer settles it: alive, and told apart from last time by its own marks."""
    if answer.status != 200:
        return False
    etag, modified = answer.headers.get("etag", ""), answer.headers.get("last-modified", "")
    return bool(before and ((etag and etag == before.etag) or (modified and modified == before.modified)))


def _judged(url: str, answer: Answer, moved: bool, today: str, before: Result | None, asked_whole: bool) -> Result:
    final = answer.target.url
    unchanged = answer.status == _UNCHANGED and before is not None and bool(before.digest)
    if answer.status in (404, 410):
        return Result("gone", today, f"the host answers {answer.status}", final)
    if not unchanged and not 200 <= answer.status < 300:
        return _kept(before, today, f"status-{answer.status}", f"the host answers {answer.status}")
    if asked_whole and (doubt := _doubt(url, answer)):
        return _kept(before, today, *doubt)
    digest = digest_of(answer.body) if asked_whole else (before.digest if before else "")
    result = Result(
        "moved" if moved else "alive",
        today,
        f"now at {final}" if moved else "",
        final,
        etag=answer.headers.get("etag", "")[:300] or (before.etag if unchanged and before else ""),
        modified=answer.headers.get("last-modified", "")[:100] or (before.modified if unchanged and before else ""),
        digest=digest,
    )
    if before is not None and before.digest and digest != before.digest:
        return replace(
            result,
            state="changed",
            note=f"its text has changed since {before.on}" + (f"; {result.note}" if moved else ""),
        )
    return result


def _doubt(url: str, answer: Answer) -> tuple[str, str] | None:
    """Why a page that answers may be gone all the same: it says so itself, it is empty, or it is the front page."""
    for heading in (_TITLE.search(answer.body), _HEADING.search(answer.body)):
        if heading is not None and _SOFT.search(_TAG.sub(b" ", heading[1])):
            return "soft-not-found", "it answers, and its title says that the page is not there"
    if not answer.body.strip():
        return "empty", "it answers with nothing"
    asked, final = urlsplit(url), urlsplit(answer.target.url)
    if (asked.path.strip("/") or asked.query) and final.path in _FRONT and not final.query:
        return "led-home", "it leads to the front page of the site: look whether it still stands somewhere"
    return None


def digest_of(body: bytes) -> str:
    """A short digest of what a page shows: scripts, styles, tags and spacing do not count."""
    parts: list[bytes] = []
    lower = body.lower()
    at = 0
    while (start := _NOT_SHOWN.search(body, at)) is not None:
        parts.append(body[at : start.start()])
        end = lower.find(b"</" + start[1].lower(), start.end())
        at = len(body) if end < 0 else end
    shown = _SPACE.sub(b" ", _TAG.sub(b" ", b" ".join([*parts, body[at:]]))).strip()
    return hashlib.sha256(shown).hexdigest()[:16]
