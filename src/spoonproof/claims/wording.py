"""Wording that stands: the law's own words where there are some, else plain words that are true."""

from __future__ import annotations

from collections.abc import Iterable

from spoonproof.claims.register import Register

_NAMES = {
    "energy_kcal": "energy",
    "vitamin_a_rae_ug": "vitamin A",
    "fibre_g": "fibre",
    "dha_mg": "DHA",
    "ala_g": "ALA",
    "dha": "DHA",
    "ala": "ALA",
    "epa": "EPA",
    "saturated_fat_g": "saturated fat",
    "sodium_mg": "salt",
    "omega-3": "omega-3 fatty acids",
    "beta-carotene": "beta-carotene",
}

_HINTS = ("say ", "name ", "give ", "bring ", "one part", "from six", "from twelve")
"""How a register's hint to the author begins: it tells her what to write and is no sentence to say or post."""


def is_hint(wording: str) -> bool:
    """Whether a wording tells the author what to write and is no sentence to say as it stands."""
    return wording.startswith(_HINTS)


def nutrient_name(nutrient: str) -> str:
    """A nutrient key in words: "iron_mg" is iron, "vitamin_b12_ug" is vitamin B12."""
    if nutrient in _NAMES:
        return _NAMES[nutrient]
    bare = nutrient.rsplit("_", 1)[0] if nutrient.endswith(("_mg", "_ug", "_g")) else nutrient
    words = bare.replace("_", " ").replace("-", " ").split()
    if words[:1] == ["vitamin"] and len(words) > 1:
        return f"vitamin {words[1].upper()}"
    return " ".join(words)


def resolve(wordings: Iterable[str], register: Register, nutrient: str = "", absent: Iterable[str] = ()) -> str | None:
    """The first wording in full: ``authorised:ID`` out of the table, ``{nutrient}`` and ``{absent}`` filled in.

    None when there is none, or when what it would speak of is not known.
    """
    for wording in wordings:
        if wording.startswith("authorised:"):
            found = register.wordings.get(wording[11:])
            if found is not None:
                return found.text
            continue
        if "{nutrient}" in wording:
            if not nutrient:
                continue
            wording = wording.replace("{nutrient}", nutrient_name(nutrient))
        if "{absent}" in wording:
            names = ", ".join(absent)
            if not names:
                continue
            wording = wording.replace("{absent}", names)
        return wording
    return None
