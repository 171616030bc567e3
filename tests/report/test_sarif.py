"""SARIF: the shape the standard asks for, places in code points, stable fingerprints."""

from __future__ import annotations

import json
from dataclasses import replace

from spoonproof.model.text import Document
from spoonproof.report.sarif import sarif
from tests.report.findings import SOURCES, TEXT, honey


def log(*findings) -> dict:  # type: ignore[no-untyped-def, type-arg]
    return json.loads(sarif(findings, SOURCES, {"food-not-yet": ("Food not yet", "Why it matters.")}))["runs"][0]


def test_a_result_has_rule_place_fix_and_source() -> None:
    run = log(honey())
    result = run["results"][0]
    assert run["tool"]["driver"]["rules"][result["ruleIndex"]]["id"] == "food-not-yet"
    place = result["locations"][0]["physicalLocation"]
    assert place["artifactLocation"]["uri"] == "recipes/a%20b.md"
    assert place["region"] == {"startLine": 3, "startColumn": 12, "endLine": 3, "endColumn": 17}
    assert run["columnKind"] == "unicodeCodePoints"
    fix = result["fixes"][0]["artifactChanges"][0]["replacements"][0]
    assert fix["insertedContent"]["text"] == "1 ripe pear"
    assert any("nhs.uk" in each["physicalLocation"]["artifactLocation"]["uri"] for each in result["relatedLocations"])


def test_the_fingerprint_stays_when_lines_come_above() -> None:
    before = log(honey())["results"][0]["partialFingerprints"]
    after = log(honey(Document("recipes/a b.md", "# a comment\n" + TEXT)))["results"][0]["partialFingerprints"]
    assert before == after


def test_two_alike_have_two_fingerprints() -> None:
    first, second = log(honey(), honey())["results"]
    assert first["partialFingerprints"] != second["partialFingerprints"]


def test_a_finding_of_another_rule_has_another_fingerprint() -> None:
    first, second = log(honey(), replace(honey(), rule="other"))["results"]
    assert first["partialFingerprints"] != second["partialFingerprints"]
