"""What guards a baby here otherwise than as we ship it: said on every page, with the channel's reason."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from spoonproof.knowledge import Knowledge
from spoonproof.model.channel import Channel


def loosened(channel: Channel, knowledge: Knowledge) -> tuple[str, ...]:
    """A sentence for each safety row the channel replaced, and for each policy that is not the usual one."""
    return (*_rows(knowledge.channel_dir), *_policies(channel, knowledge))


def _rows(channel_dir: Path | None) -> Iterator[str]:
    from spoonproof.reading.bundle import overridden
    from spoonproof.reading.own_tables import SAFETY_TABLES

    for table in SAFETY_TABLES:
        for before, own in overridden(table, channel_dir):
            what = before.text("id") or before.text("foods")
            changed = [c.replace("_", " ") for c in before.cells if own.cells.get(c, "") != before.cells[c]]
            yield (
                f"This channel goes by a row of its own for “{what}” ({table.replace('_', ' ')}: "
                f"{', '.join(changed) or 'the same values'}): {_reason(own.text('reason'))}."
            )


def _policies(channel: Channel, knowledge: Knowledge) -> Iterator[str]:
    """Where authorities differ, one of them is the default; a channel that goes by another says so."""
    for topic in sorted(channel.policies):
        authority = knowledge.feeding.authority(topic, channel.policies)
        row = next((r for r in knowledge.feeding.policies if (r.topic, r.authority) == (topic, authority)), None)
        if row is None or row.default:
            continue
        says = row.says.rstrip(".")
        yield (
            f"Authorities differ on {topic.replace('-', ' ')}; this channel goes by {authority} "
            f"({says[:1].lower()}{says[1:]}): {_reason(channel.policy_reasons.get(topic, ''))}."
        )


def _reason(text: str) -> str:
    return text.strip().rstrip(".") or "no reason is given"
