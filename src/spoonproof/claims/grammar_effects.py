"""Rules for what a food does: body functions, illness.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_disease = ways("disease")
_function = ways("function")
_content = ways("nutrient-content")
_KITCHEN = "nonfood culinary"  # talk of cosmetics and exercise, or of how things set and taste
_NOT_FOOD = "nonfood"
_NO_MORE = "(?=[.,?!)]|$|<in|into-diet>)"  # "don't need the water *hot*" is no word against water
_OTHERS = "other-doer"  # creams, sleep, medicines: what is said is said of them

FUNCTION = (
    *_function(
        "takes-up",
        "S(<ANY>) ~6 T(<BENEFIT>) ~4 O(<absorb> _2 <nutrient>)",
        effect="absorption",
        says="helps to take up a nutrient",
    ),
    *_function(
        "helps-a-function", "T(<BENEFIT>) ~6 O(<EFFECT>)", veto=_OTHERS, named=True, says="benefit verb, function"
    ),
    *_function(
        "strengthens-a-part",
        "T(<benefit>) _4 O(<body>)",
        "S(<FOOD|solids|generic-food>) T(<benefit-weak>) _2 O(<body>)",
        veto=_OTHERS,
        named=True,
        says="benefit verb, body part",
    ),
    *_function(
        "keeps-a-part-well", "T(<keep|BENEFIT>) _3 O(<body|EFFECT>) _4 <healthy|well>", named=True, says="keeps it well"
    ),
    *_function("digests", "S(<FOOD|THING>) ~11 O(<digest|absorb>)", named=True, says="how it is digested"),
    *_function(
        "helps-it-work",
        "T(<benefit-weak|BENEFIT|make|keep>) _4 O(<body|EFFECT>) ~3 <develop>",
        named=True,
        says="helps it work",
    ),
    *_function(
        "makes-strong",
        (
            "S(<ANY|additive|eating|disease>) ~5 T(<make|keep|BENEFIT|copula>) _2 "
            "<audience-baby|audience-adult> _2 (?!<healthy>) O(<strong>)"
        ),
        says="makes someone strong",
    ),
    *_function("makes", "T(<make|keep>) _4 O(<EFFECT>)", named=True, loose=True, says="makes it so"),
    *_function(
        "is-a-function",
        "S(<FOOD|pronoun>) _2 <copula> _4 O(<effect|effect-weak>)",
        named=True,
        loose=True,
        says="a food is said to be it",
    ),
    *_function(
        "changes-an-organ",
        "S(<food|dish|nutrient|eating>) ~7 T(<benefit-weak|harm-weak|goodfor>) _4 O(<inner-body>)",
        says="does something to an organ",
    ),
    *_function("has-effect", "T(<has>) _3 O(<effect>)", named=True, loose=True, says="a food has the effect"),
    *_function("body-makes", "O(<body>) _2 <make|benefit-weak|BENEFIT> _3 S(<nutrient>)", says="the body makes it"),
    *_function(
        "nutrient-and-body", "S(<nutrient>) ~14 O(<body>)", veto=_KITCHEN, loose=True, says="nutrient and body together"
    ),
    *_function(
        "body-and-nutrient",
        "O(<body>) ~8 S(<nutrient|ambiguous-nutrient>)",
        needs="need negation can-ask benefit benefit-weak have body-process digest absorb",
        veto=_KITCHEN,
        loose=True,
        says="body and nutrient together",
    ),
    *_function(
        "helps-a-nutrient",
        "S(<ANY>) ~6 T(<BENEFIT>) _4 O(<nutrient>) (?!<intake>)",
        effect="absorption",
        loose=True,
        says="helps a nutrient",
    ),
    *_function(
        "hinders-a-nutrient",
        "S(<ANY>) ~3 T((?!<keep|avoid-weak>) <HARM>) _2 O(<nutrient>) (?!<intake|suffix-high>)",
        effect="absorption",
        loose=True,
        says="stands in the way of a nutrient",
    ),
    *_content(
        "helps-an-intake",
        "T(<BENEFIT>) _3 O(<nutrient>) <intake>",
        level="contains",
        named=True,
        says="helps to a nutrient",
    ),
    *_content(
        "helps-a-nutrient",
        "T(<benefit|benefit-weak>) _3 O(<nutrient|energy>) ~8 <with|pronoun|FOOD>",
        level="contains",
        veto=_KITCHEN,
        named=True,
        loose=True,
        says="helps to a nutrient",
    ),
    *_function(
        "for-a-function",
        "<ambiguous-nutrient|FOOD|nutrient> ~4 T(<for>) _2 O(<EFFECT|body>)",
        needs="need goodfor have give give-weak copula",
        loose=True,
        says="for a function",
    ),
    *_function("good-for", "T(<goodfor>) ~4 O(<EFFECT|body>)", named=True, says="good for a function"),
    *_function(
        "is-needed",
        "S(<nutrient>) ~5 <copula> ~4 T(<NEED>)",
        "S(<nutrient>) ~14 T(<goodfor>) ~2 O(<audience-baby|audience-adult|age>)",
        effect="importance",
        says="a nutrient is needed",
    ),
    *_function(
        "is-needed",
        "S(<FOOD>) ~6 <copula> ~4 T(<need>)",
        effect="importance",
        needs="audience-baby",
        veto="nonfood culinary storing process",
        loose=True,
        says="a food is needed",
    ),
    *_function(
        "needs",
        "O(<audience-baby|audience-adult|body|EFFECT>) ~4 T(<need>) _5 S(<nutrient>)",
        says="someone needs a nutrient",
    ),
    *_function(
        "needs",
        f"O(<audience-baby>) ~3 T(<no-need-of>) _1 S(<ambiguous-nutrient|food>) {_NO_MORE}",
        "O(<audience-baby>) ~3 T(<need|only-need>) _2 <scant|tiny|amount> _3 S(<ambiguous-nutrient>)",
        veto="culinary swap age age-unit",
        says="what someone needs none or little of",
    ),
    *_function(
        "is-needed",
        "S(<food|ambiguous-nutrient>) _2 <copula> _1 <far-from|negation> _2 T(<NEED>) (?!_1 <to>)",
        effect="importance",
        veto="culinary nonfood swap process",
        says="a food is said not to be needed",
    ),
    *_function(
        "goes-without",
        "T(<going-without>) _2 S(<generic-food|food|nutrient|dish>) ,? ~12 O(<strong|effect|develop>)",
        needs="audience-baby audience-adult pronoun copula feel",
        veto=_KITCHEN,
        loose=True,
        says="how someone fares without it",
    ),
    *_function(
        "absorbs", "S(<NUTRIENT>) ~6 O(<absorb|digest>)", veto=_NOT_FOOD, named=True, says="a nutrient's uptake"
    ),
    *_function("absorbs", "O(<absorb>) _4 S(<NUTRIENT>)", named=True, says="a nutrient's uptake"),
    *_function(
        "makes-available",
        "T(<make>) _2 O(<NUTRIENT>) ~6 <available>",
        effect="absorption",
        needs="FOOD pronoun",
        says="makes a nutrient easier to take up",
    ),
    *_function(
        "turned-into",
        "S(<ANY>) ~6 T(<body-process>) _4 O(<NUT|body|EFFECT>)",
        veto="culinary",
        says="what the body does",
    ),
    *_function(
        "weight",
        "T(<weight-verb>) _3 O(<weight-unit>)",
        effect="weight",
        needs="FOOD generic-food",
        says="weight lost or gained",
    ),
    *_function(
        "they-need",
        "<audience-baby> ~8 S(<nutrient>) ~14 <pronoun> T(<need>)",
        effect="importance",
        loose=True,
        says="someone needs a nutrient",
    ),
    *_function(
        "needed-to-grow",
        "<audience-baby|audience-adult> ~6 S(<nutrient|nutrient-weak>) _3 T(<need>) _2 O(<develop|strong>)",
        says="someone needs a nutrient to thrive",
    ),
    *_function(
        "calms-someone",
        "S(<food|nutrient|dish>) ~6 T(<benefit>) (?!_3 <EFFECT|DISEASE|allergy>) _2 O(<audience-baby>)",
        veto="nonfood culinary story",
        loose=True,
        says="does someone good",
    ),
    *_function("harms-a-function", "T(<HARM|badfor>) ~4 O(<EFFECT|body>)", named=True, says="harm to a function"),
    *_function(
        "it-and-function",
        "^ _1 S(<pronoun>) ~4 O(<effect>)",
        veto=_NOT_FOOD,
        loose=True,
        says="a pronoun and a function together",
    ),
    *_function(
        "does-something",
        "S(<food|nutrient>) _1 T(<effect-verb>) (?!_4 <EFFECT|DISEASE|body|NUT|allergy>) O([_]{1,3})",
        veto="culinary nonfood per-day",
        loose=True,
        says="an effect verb with an object the lexicon does not know",
    ),
    *_function(
        "food-and-function",
        "S(<food|dish|nutrient|ambiguous-nutrient|eating>) ~20 O(<effect>)",
        veto=_NOT_FOOD,
        loose=True,
        says="food and function together",
    ),
    *_function(
        "function-and-food",
        "O(<effect>) ~20 S(<food|dish|nutrient>)",
        veto=_NOT_FOOD,
        loose=True,
        says="function and food together",
    ),
    *_function(
        "food-and-weak-function",
        "S(<food|nutrient>) ~8 O(<effect-weak|inner-body>)",
        veto=_KITCHEN,
        loose=True,
        says="food and something of the body together",
    ),
)

DISEASE = (
    *_disease(
        "bungs-up",
        "S(<food|dish|generic-food|pronoun|nutrient>) ~4 O(<bung> _2 <audience-baby|audience-adult|pronoun> <upward>)",
        effect="constipation",
        veto=_KITCHEN,
        says="brings an illness",
    ),
    *_disease(
        "harms-teeth", "T(<badfor|HARM|harmful>) _4 O(<dental>)", effect="dental", named=True, says="harm to the teeth"
    ),
    *_disease(
        "harms-teeth", "S(<bottle>) ~3 T(<HARM>) _3 O(<dental|disease>)", veto="nonfood", says="harm from a bottle"
    ),
    *_disease(
        "given-when-ill",
        "<when-ill> _6 O(<DISEASE>) ~10 T(<give|give-weak|have|benefit|goodfor>) ~6 S(<FOOD>)",
        "T(<give|give-weak|have|goodfor>) ~6 S(<FOOD>) ~10 <when-ill> _4 O(<DISEASE>)",
        veto="nonfood story",
        says="a food for those who are ill",
    ),
    *_disease(
        "against-disease",
        "T(<BENEFIT|goodfor>) ~5 O(<DISEASE>)",
        veto=f"{_OTHERS} hygiene",
        named=True,
        says="help against illness",
    ),
    *_disease(
        "lack-shows", "^ _2 S(<disease>) _1 T(<contain>) _2 O(<DISEASE>)", says="how the lack of a nutrient shows"
    ),
    *_disease(
        "does-it-to-this",
        "S(<FOOD|generic-food>) ~4 T(<HARM|BENEFIT>) _1 O(<this-problem>)",
        "S(<FOOD>) ~3 T(<worsens-it>) (?=[.,!]|$)",
        effect="illness",
        veto=f"{_KITCHEN} other-doer",
        says="against or for an illness named before",
    ),
    *_disease(
        "gets-it-from",
        "<audience-baby> _2 T(<have|got>) _1 O(<DISEASE>) _1 <with|when-ill> _2 S(<FOOD>)",
        veto=_NOT_FOOD,
        says="an illness from a food",
    ),
    *_disease("brings-disease", "T(<HARM>) ~6 O(<DISEASE>)", veto=_OTHERS, named=True, says="brings an illness"),
    *_disease(
        "gives-disease",
        "S(<food|dish|nutrient|ambiguous-nutrient>) ~5 T(<have|make|generates>) _4 O(<DISEASE>)",
        says="brings an illness",
    ),
    *_disease("for-disease", "S(<FOOD|nutrient>) ~14 T(<for>) _4 O(<DISEASE|invalid>)", says="for an illness"),
    *_disease("for-the-weak", "S(<FOOD|pronoun>) ~10 O(<invalid>)", loose=True, says="food for the sick"),
    *_disease("against-anything", "S(<FOOD|nutrient>) ~3 T(<benefit>) _1 O(<anything>)", says="against everything"),
    *_disease(
        "remedy",
        "T(<remedy>) _3 O(<DISEASE>)",
        "S(<FOOD|generic-food>) ~14 T(<remedy>) (?!<for> _2 <EFFECT|body>|<in|for> _2 <FOOD|generic-food>)",
        "^ _2 S(<pronoun>) ~14 T(<remedy>) (?!<for> _2 <EFFECT|body>|<in|for> _2 <FOOD|generic-food>)",
        "S(<food>) ~12 T(<works-well>) (?=[.,!)]|$)",
        effect="remedy",
        says="a remedy",
    ),
    *_disease(
        "caused-by",
        "O(<DISEASE>) [^?]{0,12}? T(<caused-by>) ~4 S(<food|dish|nutrient|ambiguous-nutrient>)",
        veto=_NOT_FOOD,
        says="an illness put down to a food",
    ),
    *_disease(
        "ill-from",
        "O(<DISEASE>) ~5 T(<from>) _1 S(<food|dish>)",
        veto=_NOT_FOOD,
        loose=True,
        says="an illness from a food",
    ),
    *_disease(
        "food-and-disease",
        "S(<food|dish|nutrient|ambiguous-nutrient>) ~24 O(<disease>)",
        veto=f"{_NOT_FOOD} refer",
        loose=True,
        says="food and illness together",
    ),
    *_disease(
        "disease-and-food",
        "O(<disease>) ~24 S(<food|dish|nutrient|ambiguous-nutrient>)",
        veto=_NOT_FOOD,
        loose=True,
        says="illness and food together",
    ),
    *_disease(
        "food-and-weak-disease",
        "S(<food|nutrient>) ~8 O(<disease-weak>)",
        needs="copula have HARM BENEFIT for make keep goodfor hedge",
        veto="nonfood culinary swap grain-part hygiene",
        loose=True,
        says="food and a complaint together",
    ),
    *_disease(
        "complaint-then-food",
        "^ _2 O(<DISEASE>) (?:_1 <audience-baby|body|inner-body>)? [?:] _3 S(<FOOD>)",
        veto=_KITCHEN,
        says="a complaint and what to eat",
    ),
    *_disease("busts", "O(<disease|disease-weak>) T(<sit-well>)", veto=_KITCHEN, says="against a complaint"),
    *_function(
        "kind-to", "O(<body|inner-body|effect|digest>) T(<sit-well>)", veto="nonfood", says="kind to a part of the body"
    ),
    *_function(
        "makes-it-so",
        "S(<FOOD|nutrient|generic-food|pronoun>) ~3 T(<made-so>) _2 O(<body>) _1 <good-state>",
        veto="nonfood culinary",
        says="the state of a part of the body",
    ),
    *_function(
        "needs-it",
        "S(<nutrient>) [?:,] _2 O(<body|inner-body|EFFECT>) _1 T(<need>) <pronoun>",
        veto=_NOT_FOOD,
        says="a nutrient that a part of the body needs",
    ),
    *_disease(
        "brings-it-down",
        "<when-ill> ~6 O(<fever|DISEASE>) , ~3 S(<FOOD>) ~3 T(<brings-down>)",
        effect="infection",
        veto=_NOT_FOOD,
        says="what is said to bring an illness down",
    ),
    *_function(
        "for-rehydration",
        "S(<FOOD|never-yet|generic-food>) ~6 T(<than|stand-in|as-good-as|beats>) _3 O(<rehydration>)",
        effect="hydration",
        veto="nonfood",
        says="a drink in the place of rehydration salts",
    ),
)
