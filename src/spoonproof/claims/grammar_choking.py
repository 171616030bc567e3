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
    *_safety(
        "cut-for-a-child",
        "^ <for> _1 <audience-baby> ,? _1 T(<cut-it>) _2 O(<round-food|hazard-food>)",
        effect="choking",
        needs="audience-baby",
        veto="nonfood storing story",
        says="a shape that chokes",
    ),
    *_safety(
        "hazard-food",
        "T(<AVOID>) ~12 <as|loves> _2 O(<hazard-food|never-yet>)",
        effect="choking",
        veto="storing story nonfood",
        says="a shape that chokes",
    ),
    *_safety(
        "watched-at-table",
        "T(<eye-on>) _3 <audience-baby> _1 <when-ill> _4 O(<eating>)",
        "<audience-baby> ~8 O(<supervise>) ~3 T(<fed|eating>)",
        "T(<must-do|see-to-it|should>) ~6 O(<sitting>) <when-ill> _2 <eating|fed>",
        "T(<give|offer>) _1 S(<generic-food>) ~6 O(<supervise>)",
        "<audience-baby> ~3 T(<forbid|negation>) ~5 O(<run-about>) ~4 <eating|generic-food|FOOD>",
        "^ T(<give|fed>) _2 <audience-baby> _5 O(<upright|seat>)",
        effect="choking-supervision",
        veto="storing kitchen-danger nonfood story",
        says="how a child is watched while eating",
    ),
    *_safety(
        "watched-at-table",
        "T(<negation|forbid|should|must-do>) ~14 O(<in-mouth>)",
        "T(<must-do|see-to-it|should>) _1 <audience-baby>? ~6 O(<upright|seat>) ~8 <eating>",
        effect="choking-supervision",
        needs="audience-baby",
        veto="storing kitchen-danger nonfood story",
        says="how a child sits to eat",
    ),
    *_safety(
        "cut-small",
        "T(<cut-it>) _1 S(<generic-food|round-food|hazard-food>) ~4 <audience-baby> _2 O(<small-pieces>)",
        "S(<generic-food|round-food|hazard-food>) ~4 <should> _2 <copula> _1 T(<cut-it>) ~3 O(<small-pieces>)",
        "T(<cut-it>) _1 S(<generic-food|round-food|hazard-food>) ~5 O(<small-pieces|cut-safe|in-parts>) ~8"
        " <audience-baby>",
        effect="choking",
        needs="audience-baby",
        veto="storing nonfood story",
        says="cut small for a child",
    ),
    *_safety(
        "cut-small",
        "S(<FOOD|generic-food>) _2 <should> ~8 T(<cut-it>) _2 O(<small-pieces>)",
        effect="choking",
        needs="child-eats solids",
        veto="storing nonfood story",
        says="cut small for a child",
    ),
    *_safety(
        "cut-small",
        "T(<cut-it>) S(<baby-food>) ~2 O(<small-pieces>)",
        "O(<sausage|round-food|hazard-food|shape-kind>) _2 <should|must-do> _2 <copula>? _1 T(<cut-safe>)",
        "O(<sausage|round-food|hazard-food|shape-kind>) _1 T(<must-be> _3 <cut-it>)"
        " (?=[.,:]|$|_1 <small-pieces|lose-n>)",
        "T(<cut-it>) ~8 O(<shape-kind>)",
        effect="choking",
        veto="storing nonfood story",
        says="a shape that chokes",
    ),
    *_safety(
        "hard-to-manage",
        "S(<generic-food|shape-kind>) ~14 T(<hard-for>) _2 <audience-baby> _1 O(<swallowing|eating>)",
        effect="choking",
        veto="nonfood story",
        says="hard to manage in the mouth",
    ),
    *_safety(
        "hard-to-manage",
        "S(<generic-food|shape-kind|hazard-food>) ~10 O(<hard-to-manage>)",
        effect="choking",
        needs="audience-baby",
        veto="nonfood story storing",
        says="hard to manage in the mouth",
    ),
    *_safety(
        "risk-in-a-shape",
        "T(<risk-with>) _2 O(<round-food|hazard-food>)",
        effect="choking",
        veto="nonfood allergy food-allergy",
        says="a shape that chokes",
    ),
    *_safety("choking", "S(<FOOD>) ~8 O(<choking-weak>)", effect="choking", says="choking"),
    *_safety(
        "gagging",
        "T(<gagging>) _2 <copula> ~6 O(<choking|choking-weak>)",
        "T(<gagging>) ~14 O(<finger-sweep>)",
        effect="choking",
        veto="story choking-talk",
        says="what gagging is, and what to do",
    ),
    *_safety(
        "teeth-first",
        "O(<no-teeth>) _4 T(<only-liquid>)",
        "O(<teeth-first>) ~10 T(<only-liquid|solids|generic-food|eating|liquids|child-can>)",
        effect="choking",
        needs="audience-baby liquids only-liquid solids",
        veto="nonfood story",
        says="teeth asked for before food",
    ),
    *_safety(
        "called-harmless",
        "S(<FOOD|hazard-food>) _2 <copula> _2 O(<no-harm>)",
        effect="safety",
        veto="nonfood story kitchen-danger",
        says="safety of a food",
    ),
    *_safety(
        "once-it-has-teeth",
        "S(<FOOD>) _1 <copula> _1 T(<fine|okay|safe>) ~5 O(<dental>)",
        effect="choking",
        veto="nonfood story goodfor",
        says="given by the teeth",
    ),
)
