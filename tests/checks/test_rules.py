"""Every rule: its docstring's two recipes run, its Markdown cases run, its name written once."""

from __future__ import annotations

from pathlib import Path

from spoonproof.checks.drawer import gathered
from spoonproof.checks.engine import finding_of
from spoonproof.checks.rule import Rule, all_rules
from spoonproof.model.finding import AREAS, LEVELS, Finding
from tests import kitchen
from tests.checks.cases import Case, cases, docstring_block
from tests.each import each

CASES = Path(__file__).parent / "rules"
RULES = all_rules()
DISH_RULES = [rule for rule in RULES if rule.scope == "dish"]


def findings(rule: Rule, texts: list[str], channel: str = "") -> list[Finding]:
    dishes = [kitchen.dish(text, channel, f"recipes/bowl-{n}.md") for n, text in enumerate(texts, 1)]
    if rule.scope == "dish":
        return gathered(finding_of(rule, fault, dish.recipe.document) for dish in dishes for fault in rule.check(dish))
    return [finding_of(rule, fault, dishes[0].channel.document) for fault in rule.check(kitchen.knowledge())]


@each("rule", RULES)
def test_a_rule_says_what_it_is(rule: Rule) -> None:
    assert rule.area in AREAS
    assert rule.level in LEVELS
    assert rule.scope in ("dish", "register")
    assert len(rule.title) > 10
    known = kitchen.knowledge().sources
    assert [s for s in rule.sources if s not in known and s not in ("common-practice", "from-memory", "own")] == []


@each("rule", [r for r in RULES if r.scope == "dish"])
def test_the_docstring_fails_and_passes(rule: Rule) -> None:
    fails, passes = docstring_block(rule.doc, "Fails"), docstring_block(rule.doc, "Passes")
    assert fails is not None and passes is not None, "the docstring needs a block Fails:: and one Passes::"
    assert findings(rule, [fails]), "the failing recipe gives no finding"
    assert findings(rule, [passes]) == []


def _cases() -> list[tuple[Rule, Case]]:
    return [
        (rule, case)
        for rule in RULES
        if (CASES / f"{rule.name}.md").exists()
        for case in cases(CASES / f"{rule.name}.md")
    ]


def test_every_rule_has_cases_and_every_case_file_a_rule() -> None:
    assert {path.stem for path in CASES.glob("*.md")} == {rule.name for rule in RULES}


@each(("rule", "case"), _cases())
def test_cases(rule: Rule, case: Case) -> None:
    found = findings(rule, [text for text, _ in case.recipes], case.channel)
    for number, (text, expected) in enumerate(case.recipes, 1):
        first_line = kitchen.whole_recipe(text)[1]
        here = [f for f in found if f.document.path == f"recipes/bowl-{number}.md"]
        seen = sorted((f.document.position(f.span.start)[0] - first_line + 1, f.level, f.message) for f in here)
        wanted = sorted((e.line, e.level, e.words) for e in expected)
        assert [(line, level) for line, level, _ in seen] == [(line, level) for line, level, _ in wanted], seen
        for (_, _, message), (_, _, words) in zip(seen, wanted, strict=True):
            assert words.lower() in message.lower()
