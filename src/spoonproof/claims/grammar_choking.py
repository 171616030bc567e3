"""Rules for what chokes: the word itself, shapes to cut, eating unwatched.

They stand before all other rules of safety and age, which give way to them where both cover a place.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_safety = ways("safety-age")

CHOKING = (
    *_safety(
        "choking",
        "O(<choking>)",
        effect="choking",
        needs="FOOD generic-food hazard-food pronoun benefit harm eating solids",
        veto="nonfood choking-talk",
        says="choking",
    ),
    *_safety(
        "hazard-food",
        "T(<AVOID>) ~4 O(<hazard-food|hazard-food-weak>)",
        effect="choking",
        needs="hazard-food audience-baby",
        says="a shape that chokes",
    ),
    *_safety(
        "hazard-food",
        "O(<hazard-food|hazard-food-weak>) ~8 T(<cut-safe>)",
        "T(<shape>) ,? <shape>? : _2 O(<hazard-food>)",
        "T(<free>) O(<hazard-food>)",
        "O(<hazard-food>) ~2 <copula> _2 T(<fine|okay|safe>)",
        effect="choking",
        says="a shape that chokes",
    ),
    *_safety(
        "hazard-food",
        "T(<cut-safe>) ~5 O(<hazard-food|hazard-food-weak>)",
        effect="choking",
        needs="audience-baby",
        says="a shape that chokes",
    ),
    *_safety(
        "supervise",
        "O(<supervise>)",
        effect="choking-supervision",
        needs="eating choking",
        veto="storing kitchen-danger",
        says="eating unwatched",
    ),
    *_safety("choking", "S(<FOOD>) ~8 O(<choking-weak>)", effect="choking", says="choking"),
)
