"""Keys beside a step's sentence: minutes, until, foods and bowl given apart."""

from __future__ import annotations

import re

from spoonproof.model.finding import Bowl, Finding
from spoonproof.model.recipe import Step
from spoonproof.model.record import replace
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Listing, Mapped, Scalar
from spoonproof.reading.faults import fault
from spoonproof.reading.mentions import Names
from spoonproof.reading.time_faults import RULE, wrong_times
from spoonproof.reading.times import SQUASH, find_times


def beside(step: Step, node: Mapped, names: Names, used: set[int], document: Document, findings: list[Finding]) -> Step:
    """The step with the keys beside its sentence in place of what the sentence says; what disagrees is a finding.

    ``used`` (the lines that steps name) and ``findings`` grow.
    """

    def disagrees(span: Span, message: str) -> None:
        remedy = "Make them the same; the key is used."
        findings.append(fault("step-disagrees", document, span, message, remedy))

    actions = list(step.actions)
    main = next((i for i, a in enumerate(actions) if a.time is not None), 0 if actions else None)
    for key, value in node:
        if main is None or not isinstance(value, Scalar | Listing):
            continue
        if key.value in ("minutes", "time") and isinstance(value, Scalar):
            text = value.value if re.search(r"[^\W\d_]", value.value) else f"{value.value} minutes"
            times = find_times(text)
            wrong = next(wrong_times(text), None)
            if wrong is not None:
                findings.append(fault(RULE, document, value.span, wrong.message, wrong.remedy))
            elif not times:
                disagrees(value.span, f"“{value.value}” is no time.")
            if wrong is not None or not times:
                continue
            if actions[main].time not in (None, times[0].time):
                disagrees(value.span, "The sentence and the key beside it give two different times.")
            actions[main] = replace(actions[main], time=times[0].time, time_span=value.span)
        elif key.value == "until" and isinstance(value, Scalar):
            soft = SQUASH.search(value.value) is not None or actions[main].soft_test
            actions[main] = replace(actions[main], until=value.value.strip(), soft_test=soft)
        elif key.value == "foods":
            items = value.items if isinstance(value, Listing) else (value,)
            named = [names.find(item.value) for item in items if isinstance(item, Scalar)]
            lines = tuple(dict.fromkeys(i for mentions in named for m in mentions for i in m.lines))
            used.update(lines)
            said = {i for action in actions for i in action.foods}
            if said and not said & set(lines):
                disagrees(value.span, "The sentence and the key beside it name different foods.")
            actions[main] = replace(actions[main], foods=lines, everything=False)
        elif key.value == "bowl" and isinstance(value, Scalar) and value.value in ("baby", "family"):
            bowl: Bowl = "baby" if value.value == "baby" else "family"
            if step.bowl not in (None, bowl):
                disagrees(value.span, "The sentence and the key beside it speak of two different bowls.")
            actions = [replace(action, bowl=bowl) for action in actions]
            step = replace(step, bowl=bowl)
            main = main if actions else None
    return replace(step, actions=tuple(actions))
