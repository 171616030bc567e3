"""The rules of the claim grammar, by kind. Read ``grammar.py`` for how a pattern is written.

Order within a kind is from the surest pattern to the loosest; the first to cover a place gives the claim.
"""

from __future__ import annotations

from spoonproof.claims.grammar import Rule

_NONFOOD = ("nonfood",)

NUTRIENT_CONTENT = (
    Rule("high-in", "nutrient-content", "T(<high>) _4 O(<NUT>)", "high", says="a phrase of plenty and a nutrient"),
    Rule("source-of", "nutrient-content", "T(<source>) _4 O(<NUT>)", "source", says="'source of' and a nutrient"),
    Rule("amount-of", "nutrient-content", "T(<amount>) _3 O(<nutrient>)", "contains", says="an amount of a nutrient"),
    Rule("low-in", "nutrient-content", "T(<low>) _4 O(<NUT>)", "low", says="a phrase of little and a nutrient"),
    Rule("free-of", "nutrient-content", "T(<free>) _2 O(<NUT>)", "none", says="said to hold none of it"),
    Rule("sugar-free", "nutrient-content", "O(<NUT>) T(<suffix-free>)", "free", says="nutrient and 'free'"),
    Rule("contains", "nutrient-content", "T(<contain>) _5 O(<NUT>)", "contains", says="a verb of containing"),
    Rule("iron-rich", "nutrient-content", "O(<nutrient>) T(<suffix-high>)", "high", says="nutrient and 'rich'"),
    Rule("high-fibre", "nutrient-content", "T(<prefix-high>) O(<nutrient>)", "high", says="'high' before a nutrient"),
    Rule("low-fat", "nutrient-content", "T(<prefix-low>) O(<NUT>) (?!<FOOD>)", "low", says="'low' before a nutrient"),
    Rule(
        "has", "nutrient-content", "S(<THING>) ~5 T(<have>) _4 O(<nutrient|energy>)", "contains", says="a food has it"
    ),
    Rule("is", "nutrient-content", "S(<THING>) _2 T(<copula>) _3 O(<nutrient>)", "contains", says="a food is it"),
    Rule(
        "from",
        "nutrient-content",
        "O(<nutrient>) _3 T(<from>) _4 S(<FOOD>)",
        "contains",
        loose=True,
        says="nutrient from a food",
    ),
    Rule("is-made-of", "nutrient-content", "S(<FOOD>) : _3 O(<NUT>)", "contains", says="a food, a sign, a nutrient"),
    Rule(
        "both",
        "nutrient-content",
        "S(<FOOD>) ~9 O(<nutrient>)",
        "contains",
        loose=True,
        says="food and nutrient together",
    ),
)

QUANTITY = (
    Rule("grams-of", "quantity", "T(<number>) _1 <unit> _3 O(<nutrient|energy>)", says="an amount of a nutrient"),
    Rule(
        "grams-of-sugar",
        "quantity",
        "T(<number>) _1 <unit> _2 O(<ambiguous-nutrient>)",
        needs=("per-day", "per-portion", "contain", "more", "less", "copula", "need", "audience-baby"),
        says="an amount",
    ),
    Rule("calories", "quantity", "T(<number>) _2 O(<energy>)", says="a number of calories"),
    Rule(
        "protein-12-g",
        "quantity",
        "O(<NUT>) _4 T(<number>) _1 <unit>",
        needs=("nutrient", "energy", "copula", "per-day", "contain"),
        says="nutrient, number, unit",
    ),
    Rule("share-of-day", "quantity", "T(<number>) ~6 <per-day> ~4 O(<NUT>)", says="a share of the day's need"),
    Rule("share-of-day", "quantity", "T(<number>) ~4 O(<NUT>) ~3 <per-day>", says="a share of the day's need"),
    Rule(
        "spoons-of-sugar",
        "quantity",
        "T(<number>) _1 <household> _1 O(<ambiguous-nutrient>) ~3 <per-portion|contain|per-day|from>",
        says="household measures of sugar or salt",
    ),
    Rule("hours-to-digest", "quantity", "T(<number>) _1 <time-unit> _3 O(<digest>)", says="a time to digest"),
)

COMPARATIVE = (
    Rule("healthier", "comparative", "T(<healthier>)", says="a comparing health word"),
    Rule("more-than", "comparative", "T(<more|less>) _4 O(<NUT|EFFECT|health>) ~7 <than>", says="more of it than"),
    Rule("most", "comparative", "T(<most>) _2 O(<nutrient|loose>)", "more", says="a superlative of a nutrient"),
    Rule(
        "times-the",
        "comparative",
        "T(<times>) _3 O(<nutrient|energy|ambiguous-nutrient>)",
        "more",
        says="so many times",
    ),
    Rule(
        "than",
        "comparative",
        "S(<ANY>) ~8 O(<NUT|EFFECT|DISEASE|loose|health|healthy>) ~8 T(<than>) ~3 <ANY>",
        says="two things set against each other",
    ),
    Rule(
        "than",
        "comparative",
        "T(<than>) ~6 <ANY> ~8 O(<nutrient|EFFECT|DISEASE|loose|health>)",
        needs=("food",),
        says="two things set against each other",
    ),
)

FUNCTION = (
    Rule("helps-a-function", "function", "T(<BENEFIT>) ~4 O(<EFFECT>)", veto=_NONFOOD, says="benefit verb, function"),
    Rule("strengthens-a-part", "function", "T(<benefit>) _4 O(<body>)", veto=_NONFOOD, says="benefit verb, body part"),
    Rule("keeps-a-part-well", "function", "T(<keep>) _3 O(<body|EFFECT>) _3 <healthy|well>", says="keeps it well"),
    Rule("good-for", "function", "T(<goodfor>) ~4 O(<EFFECT|body>)", veto=_NONFOOD, says="good for a function"),
    Rule("nutrient-is-needed", "function", "S(<nutrient>) ~4 T(<copula>) ~4 O(<NEED>)", says="a nutrient is needed"),
    Rule(
        "nutrient-is-needed",
        "function",
        "S(<nutrient>) ~4 T(<goodfor>) ~2 O(<audience-baby|audience-adult>)",
        says="a nutrient is needed",
    ),
    Rule(
        "needs-nutrient",
        "function",
        "S(<audience-baby|audience-adult|body>) ~4 T(<need>) _4 O(<nutrient>)",
        says="someone needs a nutrient",
    ),
    Rule("absorbs", "function", "S(<nutrient>) ~6 O(<absorb>)", says="a nutrient's uptake"),
    Rule("absorbs", "function", "O(<absorb>) _4 S(<nutrient>)", says="a nutrient's uptake"),
    Rule(
        "harms-a-function",
        "function",
        "T(<HARM>) ~4 O(<EFFECT|body>)",
        needs=("FOOD", "nutrient", "pronoun", "ambiguous-nutrient", "generic-food"),
        says="harm to a function",
    ),
    Rule(
        "food-and-function",
        "function",
        "S(<ANY>) ~12 O(<effect>)",
        veto=_NONFOOD,
        loose=True,
        says="food and function together",
    ),
    Rule(
        "function-and-food",
        "function",
        "O(<effect>) ~12 S(<food|nutrient>)",
        veto=_NONFOOD,
        says="function and food together",
    ),
)

DISEASE = (
    Rule(
        "against-disease", "disease", "T(<BENEFIT|goodfor>) ~5 O(<DISEASE>)", veto=_NONFOOD, says="help against illness"
    ),
    Rule(
        "brings-disease",
        "disease",
        "T(<HARM>) ~5 O(<DISEASE>)",
        veto=_NONFOOD,
        needs=("FOOD", "nutrient", "generic-food", "pronoun", "ambiguous-nutrient", "loose", "healthy"),
        says="brings an illness",
    ),
    Rule(
        "food-and-disease",
        "disease",
        "S(<ANY>) ~14 O(<disease>)",
        veto=_NONFOOD,
        loose=True,
        says="food and illness together",
    ),
    Rule(
        "disease-and-food",
        "disease",
        "O(<disease>) ~14 S(<food|nutrient|ambiguous-nutrient>)",
        veto=_NONFOOD,
        says="illness and food together",
    ),
)

GENERAL_BENEFIT = (
    Rule("loose-word", "general-benefit", "T(<loose>)", says="a loose word of benefit"),
    Rule("loose-word", "general-benefit", "S(<THING>) ~6 T(<loose-weak>)", says="a loose word of benefit"),
    Rule("is-healthy", "general-benefit", "S(<THING>) ~5 <copula> ~4 T(<healthy>)", says="a food is healthy"),
    Rule("healthy-dish", "general-benefit", "T(<healthy>) _3 S(<food|dish>)", says="'healthy' before a food"),
    Rule("healthy-choice", "general-benefit", "T(<healthy>) ,? _1 O(<worth>)", says="a healthy choice"),
    Rule(
        "health-good",
        "general-benefit",
        "T(<health>)",
        needs=("FOOD", "nutrient", "pronoun"),
        loose=True,
        says="health of a food",
    ),
    Rule("health-good", "general-benefit", "S(<FOOD>) ~8 T(<health-weak>)", loose=True, says="goodness of a food"),
)

ALLERGEN = (
    Rule("free-from", "allergen", "O(<food|allergen-word>) T(<suffix-free>)", "free", says="allergen and 'free'"),
    Rule("free-from", "allergen", "T(<free-from>) _3 O(<allergen-food>)", "free", says="said to be free from it"),
    Rule("allergy", "allergen", "S(<ANY>) ~14 O(<allergy>)", loose=True, says="food and allergy together"),
    Rule("allergy", "allergen", "O(<allergy>) ~14 S(<ANY>)", loose=True, says="allergy and food together"),
    Rule(
        "allergy", "allergen", "T(<give|BENEFIT|HARM>) ~5 O(<allergy>)", loose=True, says="causing or avoiding allergy"
    ),
)

SAFETY_AGE = (
    Rule("choking", "safety-age", "O(<choking>)", says="choking"),
    Rule(
        "harmful",
        "safety-age",
        "O(<harmful>)",
        needs=("FOOD", "nutrient", "generic-food", "ambiguous-nutrient"),
        says="harm from a food",
    ),
    Rule("safe", "safety-age", "O(<safe>)", needs=("FOOD", "pronoun"), says="safety of a food"),
    Rule(
        "age-and-food",
        "safety-age",
        "T(<bound|avoid|okay|give>) ~6 O(@AGE)",
        needs=("FOOD", "ambiguous-nutrient"),
        veto=("storing",),
        says="an age and a food",
    ),
    Rule(
        "age-and-food",
        "safety-age",
        "O(@AGE) ~10 T(<avoid|okay|give|bound>)",
        needs=("FOOD", "ambiguous-nutrient"),
        veto=("storing",),
        says="an age and a food",
    ),
    Rule(
        "not-for-babies",
        "safety-age",
        "T(<avoid|negation>) ~8 S(<FOOD|ambiguous-nutrient>) ~6 O(<audience-baby>)",
        says="a food kept from babies",
    ),
    Rule(
        "not-for-babies",
        "safety-age",
        "O(<audience-baby>) ~6 T(<avoid|negation>) ~6 S(<FOOD|ambiguous-nutrient>)",
        says="a food kept from babies",
    ),
    Rule("ready-for-solids", "safety-age", "T(<okay|give>) _3 S(<solids>)", needs=("audience-baby",), says="readiness"),
)

PROCESS = (
    Rule(
        "process-changes",
        "process",
        "S(<process>) ~7 T(<keep-n|lose-n|gain-n>) ~6 O(<nutrient|health|health-weak|loose|effect>)",
        says="a process changes a nutrient",
    ),
    Rule(
        "process-changes",
        "process",
        "T(<keep-n|lose-n>) ~4 O(<nutrient|health|health-weak>) ~8 S(<process>)",
        says="a nutrient changed by a process",
    ),
    Rule(
        "process-changes",
        "process",
        "O(<nutrient|health|health-weak>) ~6 T(<keep-n|lose-n>) ~6 S(<process>)",
        says="a nutrient changed by a process",
    ),
    Rule(
        "process-makes",
        "process",
        "S(<process>) ~6 T(<copula|gain-n>) ~5 O(<healthier|digest|absorb|effect>)",
        says="a process makes it better",
    ),
)

RULES: tuple[Rule, ...] = (
    *PROCESS, *COMPARATIVE, *QUANTITY, *ALLERGEN, *SAFETY_AGE, *DISEASE, *FUNCTION, *NUTRIENT_CONTENT, *GENERAL_BENEFIT,
)  # fmt: skip
