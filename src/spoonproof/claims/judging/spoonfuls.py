"""What spoons and cups hold at the most, whatever is in them: "two tablespoons of this give forty grams of protein"."""

from __future__ import annotations

import re

from spoonproof.claims.judging.reading import around
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.number_words import number_of
from spoonproof.claims.wording import nutrient_name
from spoonproof.claims.words import plain
from spoonproof.model.claim import Claim
from spoonproof.model.finding import SourceRef
from spoonproof.model.record import NamedTuple

_SPOONS = re.compile(
    r" (?:([0-9.]+|[a-z]+) )?(?:level )?(tablespoon|tbsp|teaspoon|tsp|dessertspoon|spoon|cup)(?:s|ful|fuls|sful)? "
)
_PILED = re.compile(r" (?:heaped|heaping|rounded|piled|mounded|serving|ladles?) ")
_MEASURES = {"tbsp": "tablespoon", "tsp": "teaspoon"}
_ML = {"teaspoon": 5.0, "dessertspoon": 10.0, "cup": 284.13}
_BIGGEST_ML = 20.0
"""The largest tablespoon in use, the Australian one; a spoon that is not named may be one."""
_MOST_A_ML = {"protein_g": 0.86, "g": 1.2, "mg": 0.4, "ug": 0.4}
"""Grams that a millilitre can hold: of protein what a gram of gelatine does, which has the most in our tables; of all
else 1.2 g, as salt weighs; of a mineral 0.4 of a gram, as salt holds sodium."""
_HEAVIEST_FOOD = 21 / 14.8
"""Grams of a food that a millilitre can hold: honey weighs 21 g in a tablespoon of the tables, and none much more."""
_GRAMS = {"g": 1.0, "mg": 1e-3, "ug": 1e-6}
_REFS = (
    SourceRef("nsw-health-measures", "a tablespoon of 20 ml, the largest in use", "read"),
    SourceRef("usda-sr28", "gelatine: 85.6 g of protein per 100 g; salt: 39 % sodium; honey: 21 g in a spoon", "read"),
)


class Level(NamedTuple):
    """So many level spoons or cups."""

    number: float
    measure: str
    ml: float
    """What all of them hold at the most."""

    @property
    def heaviest_g(self) -> float:
        """Grams that they hold of any food at the most."""
        return self.ml * _HEAVIEST_FOOD


def level(words: str) -> Level | None:
    """The first level spoons or cups of words as ``plain`` gives them; None where there are none, or they are piled."""
    found = _SPOONS.search(words)
    if found is None or _PILED.search(words):
        return None
    number = max(1.0, number_of(found[1] or "one") or 1.0)
    measure = _MEASURES.get(found[2], found[2])
    return Level(number, measure, number * _ML.get(measure, _BIGGEST_ML))


def beyond_a_spoon(claim: Claim, nutrient: str, stated: float, per_100g: float | None = None) -> Verdict | None:
    """False where more of a nutrient is ``stated``, in the unit of its key, than so many level spoons can hold of
    anything, or of this food where ``per_100g`` is known; None where no spoon is named or it is not beyond one."""
    spoons, unit = level(plain(around(claim))), nutrient.rpartition("_")[2]
    if spoons is None or unit not in _GRAMS:
        return None
    most = spoons.ml * _MOST_A_ML.get(nutrient, _MOST_A_ML[unit]) / _GRAMS[unit]
    if per_100g is not None:
        most = min(most, spoons.heaviest_g * per_100g / 100)
    if stated <= most:
        return None
    name, room = nutrient_name(nutrient), f"{most:.3g} {unit.replace('ug', 'µg')}"
    why = f"So many level {spoons.measure}s of it have room for {room} of {name} at the very most."
    return Verdict("false", why, None, _REFS, harm=1, steps=[f"{name}: more than {room} fit no such {spoons.measure}"])
