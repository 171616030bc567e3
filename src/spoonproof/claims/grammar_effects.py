"""Rules for what a food does: body functions, illness, general benefit.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import Rule

FUNCTION = (
    Rule("helps-a-function", "function", "T(<BENEFIT>) ~6 O(<EFFECT>)", named=True, says="benefit verb, function"),
    Rule("strengthens-a-part", "function", "T(<benefit>) _4 O(<body>)", named=True, says="benefit verb, body part"),
    Rule(
        "keeps-a-part-well",
        "function",
        "T(<keep|BENEFIT>) _3 O(<body|EFFECT>) _4 <healthy|well>",
        named=True,
        says="keeps it well",
    ),
    Rule("digests", "function", "S(<FOOD|THING>) ~8 O(<digest|absorb>)", named=True, says="how it is digested"),
    Rule(
        "helps-it-work",
        "function",
        "T(<benefit-weak|BENEFIT|make|keep>) _4 O(<body|EFFECT>) ~3 <develop>",
        named=True,
        says="helps it work",
    ),
    Rule(
        "makes-strong",
        "function",
        "S(<ANY|additive|eating|disease>) ~5 T(<make|keep|BENEFIT|copula>) _2 <audience-baby|audience-adult> _2 "
        "O(<strong>)",
        says="makes someone strong",
    ),
    Rule("makes", "function", "T(<make|keep>) _4 O(<EFFECT>)", named=True, loose=True, says="makes it so"),
    Rule(
        "is-a-function",
        "function",
        "S(<FOOD|pronoun>) _2 <copula> _4 O(<effect|effect-weak>)",
        named=True,
        loose=True,
        says="a food is said to be it",
    ),
    Rule(
        "changes-an-organ",
        "function",
        "S(<food|dish|nutrient|eating>) ~7 T(<benefit-weak|harm-weak|goodfor>) _4 O(<inner-body>)",
        says="does something to an organ",
    ),
    Rule("has-effect", "function", "T(<has>) _3 O(<effect>)", named=True, loose=True, says="a food has the effect"),
    Rule(
        "body-makes", "function", "O(<body>) _2 <make|benefit-weak|BENEFIT> _3 S(<nutrient>)", says="the body makes it"
    ),
    Rule(
        "nutrient-and-body",
        "function",
        "S(<nutrient>) ~14 O(<body>)",
        loose=True,
        veto=("nonfood", "culinary"),
        says="nutrient and body together",
    ),
    Rule(
        "helps-a-nutrient", "function", "S(<ANY>) ~6 T(<BENEFIT>) _4 O(<nutrient>)", loose=True, says="helps a nutrient"
    ),
    Rule(
        "helps-a-nutrient",
        "nutrient-content",
        "T(<benefit|benefit-weak>) _3 O(<nutrient|energy>) ~8 <with|pronoun|FOOD>",
        "contains",
        loose=True,
        named=True,
        veto=("nonfood", "culinary"),
        says="helps to a nutrient",
    ),
    Rule(
        "for-a-function",
        "function",
        "<ambiguous-nutrient|FOOD|nutrient> ~4 T(<for>) _2 O(<EFFECT|body>)",
        loose=True,
        needs=("need", "goodfor", "have", "give", "give-weak", "copula"),
        says="for a function",
    ),
    Rule("thanks", "function", "O(<body|EFFECT|health>) _2 T(<thanks>)", says="the body will thank you"),
    Rule("good-for", "function", "T(<goodfor>) ~4 O(<EFFECT|body>)", named=True, says="good for a function"),
    Rule(
        "is-needed",
        "function",
        effect="importance",
        pattern="S(<nutrient>) ~5 <copula> ~4 T(<NEED>)",
        says="a nutrient is needed",
    ),
    Rule(
        "is-needed",
        "function",
        effect="importance",
        pattern="S(<nutrient>) ~14 T(<goodfor>) ~2 O(<audience-baby|audience-adult>)",
        says="a nutrient is needed",
    ),
    Rule(
        "is-needed",
        "function",
        effect="importance",
        pattern="S(<FOOD>) ~6 <copula> ~4 T(<need>)",
        needs=("audience-baby",),
        veto=("nonfood", "culinary", "storing", "process"),
        loose=True,
        says="a food is needed",
    ),
    Rule(
        "needs",
        "function",
        "O(<audience-baby|audience-adult|body|EFFECT>) ~4 T(<need>) _5 S(<nutrient>)",
        says="someone needs a nutrient",
    ),
    Rule(
        "absorbs", "function", "S(<NUTRIENT>) ~6 O(<absorb>)", named=True, veto=("nonfood",), says="a nutrient's uptake"
    ),
    Rule("absorbs", "function", "O(<absorb>) _4 S(<NUTRIENT>)", named=True, says="a nutrient's uptake"),
    Rule("turned-into", "function", "S(<ANY>) ~6 T(<body-process>) _4 O(<NUT|body|EFFECT>)", says="what the body does"),
    Rule(
        "weight",
        "function",
        effect="weight",
        pattern="T(<weight-verb>) _3 O(<weight-unit>)",
        needs=("FOOD", "generic-food"),
        says="weight lost or gained",
    ),
    Rule("harms-a-function", "function", "T(<HARM>) ~4 O(<EFFECT|body>)", named=True, says="harm to a function"),
    Rule(
        "it-and-function",
        "function",
        "^ _3 S(<pronoun>) ~4 O(<effect>)",
        loose=True,
        veto=("nonfood",),
        says="a pronoun and a function together",
    ),
    Rule(
        "does-something",
        "function",
        "S(<food|nutrient>) _1 T(<effect-verb>) (?!_4 <EFFECT|DISEASE|body|NUT|allergy>) O([_]{1,3})",
        loose=True,
        veto=("culinary", "nonfood", "per-day"),
        says="an effect verb with an object the lexicon does not know",
    ),
    Rule(
        "food-and-function",
        "function",
        "S(<food|dish|nutrient|ambiguous-nutrient|eating>) ~20 O(<effect>)",
        loose=True,
        veto=("nonfood",),
        says="food and function together",
    ),
    Rule(
        "function-and-food",
        "function",
        "O(<effect>) ~20 S(<food|dish|nutrient>)",
        loose=True,
        veto=("nonfood",),
        says="function and food together",
    ),
    Rule(
        "food-and-weak-function",
        "function",
        "S(<food|nutrient>) ~8 O(<effect-weak|inner-body>)",
        loose=True,
        veto=("nonfood", "culinary"),
        says="food and something of the body together",
    ),
)

DISEASE = (
    Rule("against-disease", "disease", "T(<BENEFIT|goodfor>) ~5 O(<DISEASE>)", named=True, says="help against illness"),
    Rule("brings-disease", "disease", "T(<HARM>) ~6 O(<DISEASE>)", named=True, says="brings an illness"),
    Rule(
        "gives-disease",
        "disease",
        "S(<food|dish|nutrient|ambiguous-nutrient>) ~5 T(<have|make>) _4 O(<DISEASE>)",
        says="brings an illness",
    ),
    Rule("for-disease", "disease", "S(<FOOD|nutrient>) ~14 T(<for>) _4 O(<DISEASE|invalid>)", says="for an illness"),
    Rule("for-the-weak", "disease", "S(<FOOD|pronoun>) ~10 O(<invalid>)", loose=True, says="food for the sick"),
    Rule(
        "against-anything", "disease", "S(<FOOD|nutrient>) ~3 T(<benefit>) _1 O(<anything>)", says="against everything"
    ),
    Rule(
        "good-for-the-weak",
        "disease",
        "T(<goodfor|okay|healthy|loose>) ~4 O(<invalid>)",
        named=True,
        says="good for the sick",
    ),
    Rule("remedy", "disease", effect="remedy", pattern="S(<THING>) ~10 T(<remedy>)", says="a remedy"),
    Rule("remedy", "disease", effect="remedy", pattern="T(<remedy>) _3 O(<DISEASE>)", says="a remedy"),
    Rule(
        "caused-by",
        "disease",
        "O(<DISEASE>) [^?]{0,9}? T(<caused-by>) ~4 S(<food|dish|nutrient|ambiguous-nutrient>)",
        veto=("nonfood",),
        says="an illness put down to a food",
    ),
    Rule(
        "food-and-disease",
        "disease",
        "S(<food|dish|nutrient|ambiguous-nutrient>) ~24 O(<disease>)",
        loose=True,
        veto=("nonfood",),
        says="food and illness together",
    ),
    Rule(
        "disease-and-food",
        "disease",
        "O(<disease>) ~24 S(<food|dish|nutrient|ambiguous-nutrient>)",
        loose=True,
        veto=("nonfood",),
        says="illness and food together",
    ),
    Rule(
        "food-and-weak-disease",
        "disease",
        "S(<food|nutrient>) ~8 O(<disease-weak>)",
        loose=True,
        needs=("copula", "have", "HARM", "BENEFIT", "for", "make", "keep", "goodfor", "hedge"),
        veto=("nonfood", "culinary", "swap"),
        says="food and a complaint together",
    ),
)

GENERAL_BENEFIT = (
    Rule("superfood", "general-benefit", "T(<loose-noun>)", veto=("nonfood",), says="a loose word of benefit"),
    Rule("loose-word", "general-benefit", "T(<loose>) (?!<generic-food>)", named=True, says="a loose word of benefit"),
    Rule("loose-word", "general-benefit", "T(<loose>) <generic-food> ~8 S(<FOOD>)", says="a loose word of benefit"),
    Rule("loose-word", "general-benefit", "S(<THING>) ~6 <copula> ~4 T(<loose>)", says="a loose word of benefit"),
    Rule("loose-word", "general-benefit", "S(<FOOD>) ~8 T(<loose>) (?!<generic-food>)", says="a loose word of benefit"),
    Rule("loose-word", "general-benefit", "S(<THING>) ~6 T(<loose-weak>)", named=True, says="a loose word of benefit"),
    Rule("is-healthy", "general-benefit", "S(<THING>) ~7 <copula> ~6 T(<healthy>)", says="a food is healthy"),
    Rule("loose-dish", "general-benefit", "T(<loose-weak>) ~7 S(<food|dish>)", says="a loose word before a food"),
    Rule(
        "good-for-someone",
        "general-benefit",
        "S(<food>) ~3 <copula> _2 T(<goodfor>) _2 O(<audience-baby|audience-adult>)",
        says="good for someone",
    ),
    Rule("its-healthy", "general-benefit", "<its> ~4 T(<healthy|loose-weak>)", says="it is healthy"),
    Rule(
        "asked-healthy", "general-benefit", "<copula> _3 S(<FOOD>) _3 T(<healthy>)", says="asked whether it is healthy"
    ),
    Rule(
        "best-of-all",
        "general-benefit",
        "S(<THING>) ~3 <copula> _2 T(<most> _1 <generic-food|food>) _2 <audience-baby>",
        says="best for",
    ),
    Rule("healthy-dish", "general-benefit", "T(<healthy>) _3 S(<food|dish>)", says="'healthy' before a food"),
    Rule("healthy-choice", "general-benefit", "T(<healthy>) ,? _1 O(<worth>)", says="a healthy choice"),
    Rule(
        "best-for",
        "general-benefit",
        "T(<most> _1 <THING>) _2 <audience-baby> _1 <copula> _2 S(<FOOD>)?",
        says="best for",
    ),
    Rule(
        "makes-healthy",
        "general-benefit",
        "S(<FOOD>) ~16 <make> _2 <pronoun|THING> _2 T(<healthy|loose|loose-weak>)",
        says="makes it healthy",
    ),
    Rule(
        "this-loose-food",
        "general-benefit",
        "<pronoun> _2 T(<loose>) _1 <generic-food>",
        named=True,
        says="this nourishing food",
    ),
    Rule("its-benefits", "general-benefit", "<owned> _2 T(<health|health-weak>)", named=True, says="its benefits"),
    Rule(
        "as-medicine",
        "general-benefit",
        "S(<THING>) ~9 <copula|give-weak|as> ~4 T(<medicinal>)",
        says="a food as a medicine",
    ),
    Rule(
        "excellent-for",
        "general-benefit",
        "S(<THING>) _1 <copula> _2 T(<goodfor>) _2 O(<audience-baby|audience-adult>)",
        veto=("nonfood", "culinary"),
        loose=True,
        says="good for someone",
    ),
    Rule("health-good", "general-benefit", "T(<health>)", named=True, loose=True, says="health of a food"),
    Rule("health-good", "general-benefit", "T(<health-weak>) _4 S(<FOOD>)", loose=True, says="goodness of a food"),
    Rule("health-good", "general-benefit", "S(<FOOD>) ~8 T(<health-weak>)", loose=True, says="goodness of a food"),
)
