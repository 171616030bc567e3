"""What is pressed or grated off a fruit: "juice of 1 lemon", "1 lime, zest only"."""

from __future__ import annotations

import re

from spoonproof.model.kitchen import Foods

OF_ONE = re.compile(
    r"(?i)(?:(?:the|finely|freshly|squeezed|grated)[ \t]+)*(?P<what>juice|zest|rind"
    r"|flesh|seeds)(?:[ \t]+and[ \t]+(?P<also>juice|zest))?[ \t]+(?:of|from)[ \t]+"
)
OF_IT = re.compile(  # "1 lime, juice only", "1 lemon, juiced"
    r"(?i)[,(][ \t]{0,30}(?:(?:the|its|finely|grated)[ \t]{1,9}){0,2}(?P<what>juiced?|zest|rind)"
    r"(?:[ \t]{1,9}(?:and|&|plus)[ \t]{1,9}(?P<also>juice|zest|rind))?(?:[ \t]{1,9}(?:only|of))?[ \t.)]{0,9}(?=[,;]|$)",
)


def part_word(part: re.Match[str]) -> str:
    """What a match of ``OF_ONE`` or ``OF_IT`` takes of the fruit: juice or zest."""
    return {"rind": "zest", "juiced": "juice"}.get(part["what"].lower(), part["what"].lower())


def pressed_food(fruit: str, part: re.Match[str], foods: Foods) -> str | None:
    """The food that the one ``part`` (a match of ``OF_ONE`` or ``OF_IT``) of a fruit is: lemon juice. None where the
    table has none, or where two parts are used."""
    what = part_word(part)
    made = foods.match(f"{fruit} {what}") or foods.match(f"{fruit.removesuffix('s')} {what}")
    whole = made is not None and made.end - made.start > len(fruit) and not part["also"]
    return made.food if made is not None and whole else None
