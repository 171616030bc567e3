"""A channel's choices among authorities, held against those there are: one that nobody knows would change nothing.

Apart from ``channel``, since a channel that was read before is asked this without a reader of YAML.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from spoonproof.model.channel import Channel
from spoonproof.model.finding import Finding
from spoonproof.model.text import Span
from spoonproof.reading.faults import fault, quoted
from spoonproof.reading.typed import nearest


def policy_faults(channel: Channel, known: Iterable[tuple[str, str]]) -> Iterator[Finding]:
    """A fault for each choice whose question or authority is not among ``known`` (question, authority)."""
    choices: dict[str, list[str]] = {}
    for topic, authority in known:
        choices.setdefault(topic, []).append(authority)
    for topic, wish in channel.policies.items():
        authorities = choices.get(topic)
        if authorities is None:
            close = nearest(topic, list(choices))
            hint = f"Did you mean {quoted(close)}?" if close else f"Known: {', '.join(choices)}."
            words, wrong = f"There is no question {quoted(topic)} on which authorities differ. {hint}", topic
        elif wish.casefold() not in {each.casefold() for each in authorities}:
            words = f"For {topic} there is no policy {quoted(wish)}. Write {' or '.join(authorities)}."
            wrong = wish
        else:
            continue
        yield fault("policy-unknown", channel.document, _place_of_choice(channel, topic, wrong), words)


def _place_of_choice(channel: Channel, topic: str, wrong: str) -> Span:
    """Where the wrong word stands, behind its question; else the key itself."""
    text, key = channel.document.text, channel.keys.get("policies", channel.document.whole)
    at = text.find(topic, key.start)
    at = text.find(wrong, at) if at >= 0 else -1
    return Span(at, at + len(wrong)) if at >= 0 else key
