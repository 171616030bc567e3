"""The register checks itself, and finds the most specific entry."""

from __future__ import annotations

import math
import re
from pathlib import Path
from typing import Any

import yaml
from judging_kit import TODAY, read_register, rows, source_ids, the_register

from spoonproof.claims.coverage import coverage, table
from spoonproof.claims.entries import Key
from spoonproof.claims.register import MARKETS
from tests.each import each

GOOD = """
entries:
  - id: pear-sleep
    about: [pear]
    kind: function
    effect: sleep
    truth: unproven
    source: macknin-1989
    locator: abstract
    checked: 2026-01-01
    due: 2027-01-01
"""


def key(**more: Any) -> Key:
    values: dict[str, Any] = {
        "kind": "function", "subjects": frozenset(), "effect": None, "level": None, "words": " ", "months": 8,
        "today": TODAY,
    }  # fmt: skip
    return Key(**{**values, **more})


def test_the_register_is_sound() -> None:
    register, findings = the_register()
    assert [f"{f.rule} {f.message}" for f in findings] == []
    assert len(register.entries) >= 300
    assert len({entry.id for entry in register.entries}) == len(register.entries)


def test_every_table_row_cites_a_known_source() -> None:
    root = Path(__file__).resolve().parents[2]
    known = source_ids() | {"common-practice"}
    for name in ("claims/authorised.csv", "shared/claim_references.csv", "shared/allergen_lists.csv"):
        for row in rows(root / name):
            assert row.text("source") in known, (name, row.line)
            assert row.text("locator"), (name, row.line)


def test_what_a_safety_entry_points_at_is_a_row_of_shared() -> None:
    root = Path(__file__).resolve().parents[2]
    ids = {name: {row.text("id") for row in rows(root / f"shared/{name}.csv")} for name in ("foods_not_yet", "choking")}
    pointing = [entry for entry in the_register()[0].entries if entry.points_at]
    assert len(pointing) > 30
    for entry in pointing:
        name, _, row = entry.points_at.partition(": ")
        assert row in ids[name], (entry.id, entry.points_at)


@each(
    ("old", "new", "rule"),
    [
        ("    source: macknin-1989\n", "", "register-entry-incomplete"),
        ("    locator: abstract\n", "", "register-entry-incomplete"),
        ("macknin-1989", "nobody-1999", "register-unknown-source"),
        ("    truth: unproven\n", "    trueth: unproven\n", "register-unknown-key"),
        ("unproven", "maybe", "register-unknown-word"),
        ("2027-01-01", "2026-10-01", "register-entry-due"),
        ("checked: 2026-01-01", "checked: 2027-01-01", "register-entry-due"),
        ("2027-01-01", "next year", "register-unknown-word"),
        ("    due: 2027-01-01\n", "", "register-entry-incomplete"),
        ("    effect: sleep\n", "    effect: sleep\n    ages: from birth\n", "register-unknown-word"),
        ("unproven", "computed", "register-entry-incomplete"),
        (
            "    truth:",
            "    condition: {at least: {nutrient: iron_mg, per: 100 g}}\n    truth:",
            "register-condition-unreadable",
        ),
        ("    truth:", "    condition: {over: 3}\n    truth:", "register-condition-unreadable"),
        ("    truth:", '    wording: "authorised:XX-1"\n    truth:', "register-wording-missing"),
        ("  - id: pear-sleep", "  - id: pear-sleep\n    truth: true", "register-entry-unreadable"),
    ],
)
def test_faults_are_found_at_their_place(old: str, new: str, rule: str) -> None:
    if rule == "register-entry-unreadable":
        text = "entries:\n  - pear\n"
    else:
        assert old in GOOD
        text = GOOD.replace(old, new)
    _, findings = read_register(text, source_ids=source_ids(), today=TODAY)
    found = [f for f in findings if f.rule == rule]
    assert found, [(f.rule, f.message) for f in findings]
    assert found[0].span.end > found[0].span.start
    assert found[0].span.start >= text.index("- ")


@each("text, rule", [(GOOD, "register-entry-twice"), ("sets:\n  orchard: [pear]\n", "register-set-twice")])
def test_what_is_defined_twice_names_both_places(text: str, rule: str) -> None:
    register, findings = read_register(text, text.replace("pear]", "apple]"))
    [finding] = [f for f in findings if f.rule == rule]
    assert finding.level == "error" and finding.related[0].document is not finding.document
    assert register.sets.get("orchard", frozenset({"pear"})) == {"pear"}  # the first one stands


def test_equally_specific_entries_that_disagree_are_an_error() -> None:
    other = GOOD.replace("pear-sleep", "pear-sleep-too").replace("unproven", "false")
    _, findings = read_register(GOOD, other)
    assert [f.rule for f in findings] == ["register-entries-disagree"]
    # Apart in age they don't overlap, and the narrower one may say otherwise.
    apart = other.replace("    truth", "    ages: 6-12 months\n    truth")
    register, findings = read_register(GOOD, apart)
    assert findings == []
    asked = key(subjects=frozenset({"pear"}), effect="sleep")
    found = register.truth(asked)
    assert found is not None and found.id == "pear-sleep-too"


def test_a_less_specific_entry_changes_nothing() -> None:
    asked = key(subjects=frozenset({"pear"}), effect="sleep")
    wide = GOOD.replace("pear-sleep", "any-sleep").replace("    about: [pear]\n", "").replace("unproven", "true")
    for texts in ((GOOD,), (GOOD, wide), (wide, GOOD)):
        register, findings = read_register(*texts)
        assert findings == []
        found = register.truth(asked)
        assert found is not None and found.id == "pear-sleep"


def test_an_entry_that_is_not_valid_on_the_day_is_silent() -> None:
    register, _ = read_register(GOOD.replace("    truth", "    valid: [2026-12-01, 2027-12-01]\n    truth"))
    asked = key(subjects=frozenset({"pear"}), effect="sleep")
    assert register.truth(asked) is None
    assert register.truth(key(subjects=frozenset({"pear"}), effect="sleep", today="2027-06-01")) is not None


def test_the_answer_of_every_market_has_a_source() -> None:
    register, _ = the_register()
    for kind in ("nutrient-content", "quantity", "comparative", "function", "disease", "general-benefit", "allergen",
                 "safety-age", "process"):  # fmt: skip
        for market in MARKETS:
            found = register.allowance(key(kind=kind), market)
            assert found is not None, (kind, market)
            assert found[1].refs[0].id and found[1].refs[0].locator


def test_the_coverage_table_has_no_empty_kind() -> None:
    register, _ = the_register()
    counted = coverage(register)
    for kind in ("nutrient-content", "function", "disease", "general-benefit", "allergen", "safety-age", "process"):
        for advice in ("keep", "soften", "cut-untrue"):
            assert counted.get((kind, "EU", advice), 0) > 0, (kind, advice)
    assert "safety-age" in table(register)


def test_what_was_recalled_is_never_called_read() -> None:
    root = Path(__file__).resolve().parents[2]
    recalled: set[str] = set()
    for path in sorted((root / "shared/sources").glob("*.yaml")):
        for item in yaml.safe_load(path.read_text(encoding="utf-8")):
            if item.get("custom", {}).get("basis") == "from-memory":
                recalled.add(item["id"])
    assert recalled
    wrong = [
        (entry.id, ref.id)
        for entry in the_register()[0].entries
        for ref in (*entry.refs, *(ref for allowance in entry.allowed for ref in allowance.refs))
        if ref.id in recalled and ref.basis == "read"
    ]
    assert wrong == []


CHOICES = re.compile(r"(?:\([^()\[\]]*\|[^()\[\]]*\)[^,()\[\]]*){2,}")


def test_no_phrase_stands_for_thousands() -> None:
    """Choices in a row multiply, and whoever asks for the phrase first pays for all of them: one of 6,400 took a fifth
    of a start's profile."""
    texts = [path.read_text(encoding="utf-8") for path in (Path(__file__).parents[2] / "claims").glob("*.yaml")]
    found = [match.group() for text in texts for match in CHOICES.finditer(text)]
    assert len(found) > 100
    many = {one: math.prod(part.count("|") + 1 for part in re.findall(r"\([^()]*\)", one)) for one in found}
    assert {one: number for one, number in many.items() if number > 1_200} == {}


def test_a_star_stands_at_the_end_of_a_phrase() -> None:
    """Within one it is passed over: "protect* cells" finds no "protects cells"."""
    register, _ = the_register()
    lists = [*register.words.values(), *(phrases for e in register.entries for phrases in (e.said, e.also, e.unless))]
    assert [phrase for phrases in lists for phrase in phrases if "*" in phrase.rstrip("*")] == []
