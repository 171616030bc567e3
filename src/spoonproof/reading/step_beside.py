"""Keys beside a step's sentence: minutes, until, foods and bowl given apart."""

from __future__ import annotations

import re

from spoonproof.model.finding import Bowl
from spoonproof.model.recipe import Action, Step
from spoonproof.model.record import replace
from spoonproof.model.text import Span
from spoonproof.model.tree import Listing, Mapped, Scalar
from spoonproof.reading.faults import fault
from spoonproof.reading.instruction import StepReader
from spoonproof.reading.times import RULE, SQUASH, find_times, wrong_times


def beside(reader: StepReader, step: Step, node: Mapped) -> Step:
    """The step with the keys beside its sentence in place of what the sentence says; what disagrees is a finding."""
    actions = list(step.actions)
    if not actions:
        return step
    main = next((i for i, action in enumerate(actions) if action.time is not None), 0)
    for key, value in node:
        if key.value == "foods" and isinstance(value, Scalar | Listing):
            lines = _lines_named(reader, value)
            said = {i for action in actions for i in action.foods}
            if said and not said & set(lines):
                _disagree(reader, value.span, "The sentence and the key beside it name different foods.")
            actions[main] = replace(actions[main], foods=lines, everything=False)
        elif not isinstance(value, Scalar):
            continue
        elif key.value in ("minutes", "time"):
            actions[main] = _timed(reader, actions[main], value)
        elif key.value == "until":
            soft = SQUASH.search(value.value) is not None or actions[main].soft_test
            actions[main] = replace(actions[main], until=value.value.strip(), soft_test=soft)
        elif key.value == "bowl" and value.value in ("baby", "family"):
            bowl: Bowl = "baby" if value.value == "baby" else "family"
            if step.bowl not in (None, bowl):
                _disagree(reader, value.span, "The sentence and the key beside it speak of two different bowls.")
            actions = [replace(action, bowl=bowl) for action in actions]
            step = replace(step, bowl=bowl)
    return replace(step, actions=tuple(actions))


def _disagree(reader: StepReader, span: Span, message: str) -> None:
    remedy = "Make them the same; the key is used."
    reader.findings.append(fault("step-disagrees", reader.document, span, message, remedy))


def _timed(reader: StepReader, action: Action, value: Scalar) -> Action:
    """The action with the time that stands beside the sentence."""
    text = value.value if re.search(r"[^\W\d_]", value.value) else f"{value.value} minutes"
    wrong, time = next(wrong_times(text), None), next(iter(find_times(text)), None)
    if wrong is not None:
        reader.findings.append(fault(RULE, reader.document, value.span, wrong.message, wrong.remedy))
    elif time is None:
        _disagree(reader, value.span, f"“{value.value}” is no time.")
    if wrong is not None or time is None:
        return action
    if action.time not in (None, time.time):
        _disagree(reader, value.span, "The sentence and the key beside it give two different times.")
    return replace(action, time=time.time, time_span=value.span)


def _lines_named(reader: StepReader, value: Scalar | Listing) -> tuple[int, ...]:
    """The lines that the foods beside the sentence name; they are used here."""
    items = value.items if isinstance(value, Listing) else (value,)
    named = [reader.names.find(item.value) for item in items if isinstance(item, Scalar)]
    lines = tuple(dict.fromkeys(i for mentions in named for one in mentions for i in one.lines))
    reader.used.update(lines)
    return lines
