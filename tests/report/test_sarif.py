"""SARIF: the shape the standard asks for, places in code points, stable fingerprints."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from spoonproof.checks.rule import all_rules
from spoonproof.cli import main
from spoonproof.model.finding import Finding
from spoonproof.model.text import Document
from spoonproof.report.sarif import sarif
from tests.report.findings import SOURCES, TEXT, honey


def log(*findings: Finding) -> Any:
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


SCHEMA = json.loads(Path(__file__).with_name("sarif_schema.json").read_text(encoding="utf-8"))
RECIPE = """---
title: 🥣 Leek bowl
ages: 7-9 months
texture: mashed
foods:
  - 200 g leeks, sliced
  - 1 tbsp honey
  - {recipe: stokc, amount: 1 tbsp}
steps:
  - Look: boil the leeks for 15 minutes.
  - Mash the leeks with the honey and the stokc.
seson: winter
---
🥣 This bowl prevents colds. This bowl prevents colds.
"""


def test_the_schema_finds_faults() -> None:
    good = json.loads(sarif([honey()], SOURCES, {}))
    validator = jsonschema.Draft4Validator(SCHEMA, format_checker=jsonschema.FormatChecker())
    assert list(validator.iter_errors(good)) == []
    spoiled: tuple[Callable[[Any], object], ...] = (
        lambda log: log.pop("version"),
        lambda log: log["runs"][0]["results"][0].pop("message"),
        lambda log: log["runs"][0]["results"][0].update(level="bad"),
        lambda log: log["runs"][0]["results"][0].update(place=1),
        lambda log: log["runs"][0]["results"][0]["locations"][0]["physicalLocation"]["region"].update(startLine=0),
        lambda log: log["runs"][0]["results"][0]["fixes"][0]["artifactChanges"][0]["replacements"][0].pop(
            "deletedRegion"
        ),
    )
    for change in spoiled:
        bad = json.loads(json.dumps(good))
        change(bad)
        assert list(validator.iter_errors(bad))


@pytest.fixture
def written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Any:
    """The log of a check from above the channel, as a code host runs it."""
    (tmp_path / "blog" / "recipes").mkdir(parents=True)
    (tmp_path / "blog" / "channel.yaml").write_text("title: Row\nmarkets: [GB]\n")
    (tmp_path / "blog" / "recipes" / "leek-bowl.md").write_text(RECIPE, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert main(["check", "--channel", "blog", "--format", "sarif", "--level", "note"]) == 1
    return json.loads(capsys.readouterr().out)


def test_what_the_command_writes_is_valid(written: dict[str, Any]) -> None:
    validator = jsonschema.Draft4Validator(SCHEMA, format_checker=jsonschema.FormatChecker())
    assert list(validator.iter_errors(written)) == []
    run = written["runs"][0]
    assert len(run["results"]) >= 5
    for result in run["results"]:
        rule = run["tool"]["driver"]["rules"][result["ruleIndex"]]
        assert rule["id"] == result["ruleId"] and rule["help"]["text"] and rule["help"]["markdown"]
        place = result["locations"][0]["physicalLocation"]
        assert place["artifactLocation"]["uri"] in ("blog/recipes/leek-bowl.md", "blog/channel.yaml")
        line = RECIPE.split("\n")[place["region"]["startLine"] - 1]
        assert place["region"]["startColumn"] <= len(line) + 1
        for fix in result.get("fixes", ()):
            assert fix["artifactChanges"][0]["artifactLocation"]["uri"] == "blog/recipes/leek-bowl.md"
    marks = [result["partialFingerprints"]["spoonproofStatement/v1"] for result in run["results"]]
    assert len(set(marks)) == len(marks)
    assert any(result.get("relatedLocations") for result in run["results"])


def test_fingerprints_do_not_depend_on_where_it_is_run(
    written: dict[str, Any], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir("blog")
    main(["check", "--format", "sarif", "--level", "note"])
    inside = json.loads(capsys.readouterr().out)["runs"][0]["results"]
    outside = written["runs"][0]["results"]
    assert [r["partialFingerprints"] for r in inside] == [r["partialFingerprints"] for r in outside]
    place = inside[0]["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
    assert place == "recipes/leek-bowl.md"


def test_every_rule_has_help() -> None:
    assert all(rule.title and rule.doc.strip() for rule in all_rules())
