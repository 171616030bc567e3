"""Rules for safety and age.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_safety = ways("safety-age")
_ADVICE = "storing story"  # neither storing food nor told stories

SAFETY_AGE = (
    *_safety(
        "choking",
        "O(<choking>)",
        effect="choking",
        needs="FOOD generic-food hazard-food pronoun benefit harm eating solids",
        veto="nonfood",
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
    *_safety("harmful", "O(<harmful>)", veto="kitchen-danger", named=True, says="harm from a food"),
    *_safety(
        "harmful",
        "S(<FOOD|generic-food>) ~8 O(<harmful-weak>)",
        "O(<harmful-weak>) ~8 S(<FOOD>)",
        needs="copula harm forbid audience-baby",
        says="harm from a food",
    ),
    *_safety(
        "interferes",
        "T(<HARM>) ~8 O(<drug>)",
        effect="drug-interaction",
        needs="FOOD",
        says="gets in the way of a medicine",
    ),
    *_safety(
        "contaminant",
        "T(<free|low|high|HAVE|prefix-low|prefix-high|source>) ~5 O(<contaminant>)",
        named=True,
        says="a contaminant",
    ),
    *_safety("contaminant", "O(<contaminant>) T(<suffix-free>)", level="free", says="free of a contaminant"),
    *_safety("contaminant", "S(<FOOD>) ~9 O(<contaminant>)", loose=True, says="a contaminant"),
    *_safety("safe", "O(<safe>)", needs="FOOD pronoun", veto="kitchen-danger", says="safety of a food"),
    *_safety(
        "age-and-food",
        "T(<bound|AVOID|okay|give>) ~6 O(@AGE)",
        "O(@AGE) ~16 T(<AVOID|okay|give|introduce|bound>)",
        needs="FOOD ambiguous-nutrient",
        veto=_ADVICE,
        says="an age and a food",
    ),
    *_safety(
        "age-and-food",
        "S(<FOOD|ambiguous-nutrient>) ~9 O(<age>)",
        needs="negation forbid avoid okay harmful",
        veto=_ADVICE,
        says="an age and a food",
    ),
    *_safety(
        "age-and-food",
        "S(<generic-food|pronoun|FOOD|solids>) ~8 T(<give|introduce|okay|fine|include|enjoy>) ~6 O(@AGE)",
        needs="bound okay can-ask forbid stage",
        veto=_ADVICE,
        says="an age and a food",
    ),
    *_safety(
        "age-and-food",
        "S(<FOOD|ambiguous-nutrient|solids>) ~20 T(<bound>) _4 O(@AGE)",
        needs="forbid okay can-ask avoid advice enjoy negation",
        veto=_ADVICE,
        says="an age and a food",
    ),
    *_safety(
        "start-at-age",
        "T(<advice|authority>) ~9 O(@AGE)",
        needs="solids give introduce wait FOOD",
        veto=_ADVICE,
        says="an age to start from",
    ),
    *_safety(
        "start-at-age",
        "<copula|HAVE> ~5 O(@AGE) ~6 T(<give|introduce|wait>)",
        needs="advice authority",
        veto=_ADVICE,
        says="an age to start from",
    ),
    *_safety(
        "ready-at-age",
        "O(@AGE) ~10 T(<develop|okay|able|fine>) ~6 S(<FOOD|generic-food|solids>)",
        needs="audience-baby",
        veto=_ADVICE,
        says="ready for it at an age",
    ),
    *_safety(
        "ready-at-age",
        "<audience-baby> _2 <copula> _2 T(<okay>) ~6 O(@AGE)",
        veto="storing nonfood",
        says="ready at an age",
    ),
    *_safety(
        "until-child-is",
        "T(<until-is>) _1 O(<number>)",
        "T(<bound> _2 <audience-baby> _1 <copula>) _1 O(<number>) (?!_1 <unit|household|time-unit|week>)",
        needs="FOOD generic-food solids",
        veto=_ADVICE,
        says="an age to wait for",
    ),
    *_safety(
        "younger-than",
        "T(<audience-baby> _1 <bound>) _1 O(<number>)",
        needs="FOOD",
        veto=_ADVICE,
        says="an age and a food",
    ),
    *_safety(
        "none-before-age",
        "T(<free>) _1 S(<ambiguous-nutrient|FOOD>) ~9 O(@AGE)",
        "O(@AGE) ~6 T(<free>) _1 S(<ambiguous-nutrient|FOOD>)",
        veto=_ADVICE,
        says="none of it at an age",
    ),
    *_safety("wait-until", "T(<wait|advice>) ~6 O(@AGE)", veto=_ADVICE, says="an age to wait for"),
    *_safety("from-age", "T(<okay|fine>) _2 <bound|in>? _2 O(@AGE)", veto=_ADVICE, says="an age to start from"),
    *_safety(
        "fine-for-babies",
        ("S(<FOOD|pronoun|ambiguous-nutrient|hazard-food>) ~4 <copula> ~3 T(<fine|okay>) _3 O(<audience-baby|solids>)"),
        "S(<FOOD>) ~6 T(<recommend-for>) _3 O(<audience-baby>)",
        effect="age",
        says="fine for babies",
    ),
    *_safety(
        "too-much-for-babies",
        "S(<FOOD|ambiguous-nutrient|pronoun>) ~6 T(<too-much>) _1 <for> _3 O(<audience-baby>)",
        effect="age",
        says="too much for babies",
    ),
    *_safety(
        "can-babies",
        "T(<can-ask>) _2 O(<audience-baby>) _3 <give|give-weak|have> _4 S(<FOOD|ambiguous-nutrient>)",
        "T(<can-ask>) _2 <give|give-weak|have> _3 O(<audience-baby>) _3 S(<FOOD|ambiguous-nutrient>)",
        "T(<can-ask>) _2 O(@AGE) _3 <give|give-weak|have> _4 S(<FOOD|ambiguous-nutrient>)",
        "T(<can-ask>) _2 <give|give-weak|have> _2 O(@AGE) _3 S(<FOOD|ambiguous-nutrient>)",
        effect="age",
        veto="story",
        says="whether babies may eat it",
    ),
    *_safety(
        "age-and-solids", "O(@AGE) ~12 S(<solids>)", "S(<solids>) ~10 O(@AGE)", veto=_ADVICE, says="an age and solids"
    ),
    *_safety("age-and-solids", "S(<solids|wait>) ~6 O(<number> _1 <week>)", says="an age and solids"),
    *_safety("readiness", "O(<readiness>)", effect="readiness-signs", says="readiness for solids"),
    *_safety(
        "readiness",
        "O(<readiness-weak>)",
        effect="readiness-signs",
        needs="solids readiness",
        says="readiness for solids",
    ),
    *_safety(
        "not-for-babies",
        "T(<avoid|forbid>) ~8 S(<FOOD|ambiguous-nutrient>) ~6 O(<audience-baby>)",
        "T(<avoid|forbid>) ~4 O(<audience-baby>) ~6 S(<FOOD|ambiguous-nutrient>)",
        "O(<audience-baby>) ~6 T(<avoid|forbid>) ~6 S(<FOOD|ambiguous-nutrient>)",
        "S(<FOOD|ambiguous-nutrient>) ~3 T(<avoid|forbid>) ~6 O(<audience-baby>)",
        effect="age",
        says="a food kept from babies",
    ),
    *_safety(
        "ready-for-solids",
        "T(<okay>) _3 S(<solids>)",
        effect="readiness-signs",
        needs="audience-baby",
        says="readiness",
    ),
)
