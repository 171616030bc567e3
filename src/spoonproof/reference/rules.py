"""The page of rules: those over a dish, a channel, the register, and those of reading."""

from __future__ import annotations

from spoonproof.checks.rule import all_rules
from spoonproof.reading.faults import all_faults
from spoonproof.reference.markdown import code, table


def rules_page() -> str:
    """Every rule by name with its area, its usual level and its title."""
    rules = [(code(rule.name), rule.area, rule.scope, rule.level, rule.title) for rule in all_rules()]
    faults = [(code(fault.name), fault.area, fault.level, fault.wrong) for fault in all_faults().values()]
    return "\n\n".join(
        [
            "# Rules",
            "A rule is named by the bad pattern. `spoonproof explain RULE` prints why it matters, what fails and what "
            "passes. The level is the usual one; a rule says when it means another.",
            "## What is wrong with a dish, a channel or the register",
            table(("rule", "area", "looks at", "level", "what is wrong"), rules),
            "## What can't be read as it was meant",
            table(("rule", "area", "level", "what is wrong"), sorted(faults)),
        ]
    )
