"""What is installed, and the lowest that may be, lie outside the advisories that were read (SECURITY.md says how)."""

import csv
import re
import tomllib
from importlib import metadata
from pathlib import Path

from packaging.version import Version

ROWS = list(csv.DictReader((Path(__file__).parent / "advisories.csv").read_text(encoding="utf-8").splitlines()))


def lowest() -> dict[str, str]:
    """Each lower bound of pyproject.toml."""
    project = tomllib.loads((Path(__file__).parents[1] / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    lines = [*project["dependencies"], *(line for extra in project["optional-dependencies"].values() for line in extra)]
    return {name.lower(): bound for name, bound in (re.split(">=", line) for line in lines)}


def installed() -> dict[str, str]:
    """What is here; not what Python itself brings into an environment, which is as old as that Python."""
    found = {re.sub(r"[-_.]+", "-", one.metadata["Name"]).lower(): one.version for one in metadata.distributions()}
    return {name: version for name, version in found.items() if name not in ("pip", "setuptools")}


def affected(there: dict[str, str]) -> list[str]:
    return [
        f"{row['package']} {there[row['package']]}: {row['advisory']}"
        for row in ROWS
        if row["package"] in there
        and Version(row["introduced"] or "0") <= Version(there[row["package"]]) < Version(row["fixed"])
    ]


def test_nothing_known_touches_what_is_installed_or_may_be() -> None:
    bounds, here = lowest(), installed()
    assert {"jinja2", "pillow", "starlette"} <= bounds.keys() & here.keys() & {row["package"] for row in ROWS}
    assert affected(bounds) == [] and affected(here) == []
    assert affected({"pillow": "12.3.0"}) == ["pillow 12.3.0: CVE-2026-112403", "pillow 12.3.0: CVE-2026-96639"]
    assert affected({"pillow": "11.2.0"})[0] == "pillow 11.2.0: CVE-2026-40192"
