"""Findings the channel lives with: each named by rule and place, with a reason and an end."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache

from spoonproof.checks.rule import all_rules
from spoonproof.clock import date, today
from spoonproof.model.channel import Accepted, Channel
from spoonproof.model.finding import Finding
from spoonproof.reading.faults import all_faults, quoted


class Acceptance:
    """What a channel lives with, and what of it was met."""

    def __init__(self, channel: Channel) -> None:
        self._channel = channel
        self._live = [entry for entry in channel.accepted if entry.reason and _in_date(entry)]
        self._used: set[int] = set()

    def covers(self, finding: Finding) -> bool:
        """Whether a finding is accepted and still in date."""
        matched = next((n for n, entry in enumerate(self._live) if _covers(entry, finding)), None)
        if matched is not None:
            self._used.add(matched)
        return matched is not None

    def complaints(self, unused: bool) -> Iterator[Finding]:
        """A finding for every acceptance that is out of date, has no reason, or (``unused``) covered nothing."""
        for entry in self._channel.accepted:
            if (unknown := _unknown(entry.rule)) is not None:
                yield self._complaint(entry, "accepted-unknown-rule", unknown)
            elif not entry.reason:
                yield self._complaint(entry, "accepted-without-reason", "say why this finding is lived with")
            elif not _in_date(entry):
                yield self._complaint(entry, "accepted-out-of-date", f"this was accepted until {entry.until}")
        for number, entry in enumerate(self._live if unused else ()):
            if number not in self._used and _unknown(entry.rule) is None:
                said = f"nothing of the rule {entry.rule} is found at {entry.place}; take this out"
                yield self._complaint(entry, "accepted-for-nothing", said)

    def _complaint(self, entry: Accepted, rule: str, message: str) -> Finding:
        return Finding(rule, "page", "warning", message, self._channel.document, entry.span)


def without_accepted(findings: Iterable[Finding], channel: Channel) -> list[Finding]:
    """``findings`` less those accepted, with what is wrong with the acceptances."""
    held = Acceptance(channel)
    return [*(finding for finding in findings if not held.covers(finding)), *held.complaints(unused=False)]


@lru_cache(maxsize=256)
def _unknown(rule: str) -> str | None:
    """What to say of a rule that there is not, None where there is one."""
    known = {each.name for each in all_rules()} | all_faults().keys()
    if rule in known:
        return None
    from spoonproof.reading.typed import nearest

    near = nearest(rule, sorted(known))
    return f"there is no rule {quoted(rule)}" + (f"; did you mean {quoted(near)}?" if near else "")


def _covers(entry: Accepted, finding: Finding) -> bool:
    if entry.rule != finding.rule:
        return False
    path, _, line = entry.place.partition(":")
    return path == finding.document.path and (not line or line == str(finding.document.position(finding.span.start)[0]))


def _in_date(entry: Accepted) -> bool:
    try:
        return date.fromisoformat(entry.until) >= today()
    except ValueError:
        return False
