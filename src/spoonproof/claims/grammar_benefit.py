"""Rules for benefit in general: healthy, nourishing, a superfood.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_benefit = ways("general-benefit")
_KITCHEN = "nonfood culinary"  # talk of cosmetics and exercise, or of how things set and taste
_NOT_FOOD = "nonfood"
_NO_OWNER = "(?!_2 <body|inner-body|effect|effect-weak|disease|disease-weak|dental>)"  # "good for a baby's *bones*"

GENERAL_BENEFIT = (
    *_benefit("good-for-health", "S(<THING>) ~14 T(<good-health>)", says="good for health"),
    *_benefit("good-for-health", "T(<goodfor>) _3 O(<health>)", named=True, says="good for health"),
    *_benefit(
        "superfood",
        "T(<loose-noun>)",
        "S(<THING>) ~6 <copula> _4 T(<loose-noun-weak>)",
        veto=_NOT_FOOD,
        says="a loose word of benefit",
    ),
    *_benefit(
        "praised-food",
        "S(<THING>) ~6 <copula> _3 T(<praised-food>) _4 O(<audience-baby>)",
        says="praised as a food for someone",
    ),
    *_benefit(
        "praised-food",
        "S(<food|dish>) ~6 <copula|make> _2 T(<fit>) _4 O(<audience-baby|diet|into-diet>)",
        veto=_KITCHEN,
        says="praised as a food for someone",
    ),
    *_benefit(
        "praised-food",
        "S(<food|dish>) ~4 <copula|make> _2 T(<starter>)",
        needs="audience-baby solids",
        veto=_KITCHEN,
        says="praised as a food to start with",
    ),
    *_benefit(
        "is-healthy",
        "S(<food|dish>) ~3 <copula|make> _3 T(<healthy-kinds>)",
        "S(<food|dish>) ~2 <copula|make> _2 T(<most|praised-so>) _1 <baby-food>",
        veto=_NOT_FOOD,
        says="a food is healthy",
    ),
    *_benefit("healthy-dish", "T(<healthy-kinds>) _4 <contain|copula> ,? _2 S(<food|dish>)", says="called healthy"),
    *_benefit(
        "loose-word",
        "T(<loose>) (?!<generic-food>)",
        "S(<THING>) ~6 T(<loose-weak>)",
        named=True,
        says="a loose word of benefit",
    ),
    *_benefit(
        "loose-word",
        "T(<loose>) <generic-food> ~8 S(<FOOD>)",
        "S(<THING>) ~6 <copula> ~4 T(<loose>)",
        "S(<nutrient|ambiguous-nutrient>) _2 <copula> _2 T(<loose|loose-weak>)",
        says="a loose word of benefit",
    ),
    *_benefit(
        "is-healthy",
        "S(<THING>) ~7 <copula> ~6 T(<healthy>)",
        "S(<nutrient|ambiguous-nutrient>) _3 <copula> _3 T(<healthy>)",
        "^ _1 S(<food|dish>) [:,] _1 T(<healthy|badfor>) (?=[.,!]|$)",
        "^ _1 T(<healthy|badfor>) , _1 S(<food|dish>)",
        says="a food is healthy",
    ),
    *_benefit("full-of-goodness", "T(<high>) _1 O(<health|health-weak>)", named=True, says="full of goodness"),
    *_benefit("loose-dish", "T(<loose-weak>) ~7 S(<food|dish>)", says="a loose word before a food"),
    *_benefit(
        "good-for-someone",
        f"S(<food|ambiguous-nutrient>) ~3 <copula> _2 T(<goodfor>) _2 O(<audience-baby|audience-adult>) {_NO_OWNER}",
        says="good for someone",
    ),
    *_benefit(
        "asked-healthy",
        "<copula> _3 S(<FOOD>) _3 T(<healthy>)",
        "^ _1 ,? <copula> _2 S(<FOOD|nutrient|ambiguous-nutrient>) _2 T(<healthy|goodfor|badfor|loose>)",
        says="asked whether it is healthy",
    ),
    *_benefit(
        "makes-a-healthy-snack",
        "^ _1 S(<pronoun>) _1 <make> _3 T(<healthy>) _1 <generic-food|snack>",
        "S(<FOOD>) ~14 <enjoy|make> _3 T(<healthy|loose>) <generic-food>",
        says="a food is healthy",
    ),
    *_benefit(
        "healthy-dish",
        "T(<healthy>) _3 <generic-food> ,? _5 <contain|copula> ,? _2 S(<food|dish>)",
        "T(<healthy>) _3 S(<food|dish>)",
        says="'healthy' before a food",
    ),
    *_benefit(
        "best-of-all",
        "S(<food>) ~3 <copula> _1 T(<best-drink>)",
        "^ _2 S(<pronoun>) <copula> _2 T(<best-drink>)",
        "S(<milk-feed|plain-drink>) ~1 <copula> _2 T(<best-of-drinks>)",
        says="best of all drinks",
    ),
    *_benefit(
        "fits-a-life",
        "S(<meat-free>) _2 <copula> _2 T(<okay|suits|healthy|safe|good-state>) _2"
        " O(<life-stage|audience-baby|pregnant>)",
        says="a way of eating said to fit",
    ),
    *_benefit("has-little", "<has|have> _1 <scant> T(<loose-weak>)", named=True, says="a loose word taken back"),
    *_benefit("healthy-choice", "T(<healthy>) ,? _1 O(<worth>)", says="a healthy choice"),
    *_benefit("best-for", "T(<best-drink>) _2 <audience-baby> _1 <copula> _2 S(<FOOD>)?", says="best for"),
    *_benefit(
        "makes-healthy",
        "S(<ANY|eating>) ~9 <make|keep|BENEFIT> _2 <audience-baby|audience-adult|number> _2 T(<healthy>)",
        says="makes it healthy",
    ),
    *_benefit("its-benefits", "<owned> _2 T(<health|health-weak>)", named=True, says="its benefits"),
    *_benefit("as-medicine", "S(<THING>) ~9 <copula|give-weak|as> ~4 T(<medicinal>)", says="a food as a medicine"),
    *_benefit(
        "excellent-for",
        f"S(<THING>) _1 <copula> _2 T(<goodfor>) _2 O(<audience-baby|audience-adult>) {_NO_OWNER}",
        veto=_KITCHEN,
        loose=True,
        says="good for someone",
    ),
    *_benefit("health-good", "T(<health>)", named=True, loose=True, says="health of a food"),
    *_benefit(
        "health-good",
        "T(<health-weak>) _4 S(<FOOD>)",
        "S(<FOOD>) ~8 T(<health-weak>)",
        loose=True,
        says="goodness of a food",
    ),
)
