"""Findings the channel lives with: each named by rule and place, with a reason and an end."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from spoonproof.checks.rule import all_rules
from spoonproof.clock import date, today
from spoonproof.model.channel import Accepted, Channel
from spoonproof.model.finding import Finding
from spoonproof.reading.faults import all_faults, quoted


def without_accepted(findings: Iterable[Finding], channel: Channel, complain_unused: bool) -> list[Finding]:
    """``findings`` less those accepted and still in date; with a finding for every acceptance that
    is out of date, has no reason, or (``complain_unused``) hides nothing."""
    left = []
    used: set[int] = set()
    live = [entry for entry in channel.accepted if entry.reason and _in_date(entry)]
    for finding in findings:
        matched = next((n for n, entry in enumerate(live) if _covers(entry, finding)), None)
        if matched is None:
            left.append(finding)
        else:
            used.add(matched)
    for entry in channel.accepted:
        if (unknown := _unknown(entry.rule)) is not None:
            left.append(_complaint(channel, entry, "accepted-unknown-rule", unknown))
        elif not entry.reason:
            left.append(_complaint(channel, entry, "accepted-without-reason", "say why this finding is lived with"))
        elif not _in_date(entry):
            left.append(_complaint(channel, entry, "accepted-out-of-date", f"this was accepted until {entry.until}"))
    if complain_unused:
        left += [
            _complaint(
                channel,
                entry,
                "accepted-for-nothing",
                f"nothing of the rule {entry.rule} is found at {entry.place}; take this out",
            )
            for number, entry in enumerate(live)
            if number not in used and _unknown(entry.rule) is None
        ]
    return left


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


def _complaint(channel: Channel, entry: Accepted, rule: str, message: str) -> Finding:
    return Finding(rule=rule, area="page", level="warning", message=message, document=channel.document, span=entry.span)
