"""The rules of the claim grammar, by kind. Read ``grammar.py`` for how a pattern is written.

Order within a kind is from the surest pattern to the loosest; the first to cover a place gives the claim.
"""

from __future__ import annotations

from spoonproof.claims.grammar import Rule

NUTRIENT_CONTENT = (
    Rule("high-in", "nutrient-content", "T(<high>) _4 O(<NUT>)", "high", says="a phrase of plenty and a nutrient"),
    Rule("source-of", "nutrient-content", "T(<source>) _4 O(<NUT>)", "source", says="'source of' and a nutrient"),
    Rule("low-in", "nutrient-content", "T(<low>) _4 O(<NUT>)", "low", named=True,
         says="a phrase of little and a nutrient"),
    Rule("free-of", "nutrient-content", "T(<free>) _2 O(<NUT|additive>)", "none", says="said to hold none of it"),
    Rule("free-of-list", "nutrient-content", "T(<free>) ~6 O(<additive>)", "none", says="said to hold none of it"),
    Rule("sugar-free", "nutrient-content", "O(<NUT|additive>) T(<suffix-free>)", "free", says="nutrient and 'free'"),
    Rule("contains", "nutrient-content", "T(<contain>) ~6 O(<NUT|additive>)", "contains", named=True,
         says="a verb of containing"),
    Rule("iron-rich", "nutrient-content", "O(<NUTRIENT|energy>) T(<suffix-high>)", "high", says="nutrient and 'rich'"),
    Rule("high-fibre", "nutrient-content", "T(<prefix-high>) O(<NUT>)", "high", says="'high' before a nutrient"),
    Rule("low-fat", "nutrient-content", "T(<prefix-low>) O(<NUT>) (?!<food>)", "low", says="'low' before a nutrient"),
    Rule("low-calorie", "nutrient-content", "T(<prefix-low>) O(<energy>)", "low", says="'low' before calories"),
    Rule("has", "nutrient-content", "S(<THING>) ~5 T(<have>) _5 O(<NUTRIENT|energy|additive>)", "contains",
         says="a food has it"),
    Rule("is", "nutrient-content", "S(<THING>) _2 T(<copula>) _3 O(<NUTRIENT>)", "contains", says="a food is it"),
    Rule("needs-are-met", "nutrient-content", "O(<NUT>) _2 <need|content|per-day> _4 T(<contain>)", "contains",
         says="a need that is met"),
    Rule("from", "nutrient-content", "O(<NUTRIENT>) _3 T(<from>) _4 S(<FOOD>)", "contains", loose=True,
         says="nutrient from a food"),
    Rule("is-made-of", "nutrient-content", "S(<FOOD>) : _3 O(<NUT>)", "contains", loose=True,
         says="a food, a sign, a nutrient"),
    Rule("both", "nutrient-content", "S(<FOOD>) ~9 O(<nutrient>)", "contains", loose=True, veto=("nonfood",),
         says="food and nutrient together"),
    Rule("both", "nutrient-content", "O(<nutrient>) ~9 S(<FOOD>)", "contains", loose=True, veto=("nonfood",),
         says="nutrient and food together"),
    Rule("gives-nutrients", "nutrient-content", "S(<FOOD>) ~12 T(<HAVE>) ~6 O(<nutrient-weak>)", "contains", loose=True,
         says="a food gives nutrients"),
    Rule("enough-of", "nutrient-content", "T(<amount>) _3 O(<nutrient>)", "contains", loose=True, named=True,
         needs=("have", "contain"), says="an amount of a nutrient"),
)  # fmt: skip

QUANTITY = (
    Rule("grams-of", "quantity", "T(<number>) _1 <unit> _3 O(<nutrient|energy>)", says="an amount of a nutrient"),
    Rule("grams-of-sugar", "quantity", "T(<number>) _1 <unit> _2 O(<ambiguous-nutrient>)", needs=(
        "per-day", "per-portion", "contain", "more", "less", "copula", "need", "audience-baby", "age", "have"),
         says="an amount"),
    Rule("calories", "quantity", "T(<number>) _2 O(<energy>)", says="a number of calories"),
    Rule("protein-12-g", "quantity", "O(<NUT>) ~8 T(<number>) _1 <unit>", needs=("nutrient", "energy", "copula",
        "per-day", "content"), says="nutrient, number, unit"),
    Rule("share-of-day", "quantity", "T(<number>) ~6 <per-day> ~4 O(<NUT>)", says="a share of the day's need"),
    Rule("share-of-day", "quantity", "T(<number>) ~4 O(<NUT>) ~3 <per-day>", says="a share of the day's need"),
    Rule("limit-a-day", "quantity", "T(<number>) _1 <unit|household> ~5 O(<per-day>)", needs=("audience-baby",
        "nutrient", "ambiguous-nutrient"), veto=("storing",), says="an amount a day"),
    Rule("spoons-of-sugar", "quantity", "T(<number>) _1 <household> _1 O(<ambiguous-nutrient>) ~3 "
        "<per-portion|per-day|in>", says="household measures of sugar or salt"),
    Rule("spoons-of-sugar", "quantity", "<contain|have|copula|per-portion> ~3 T(<number>) _1 <household> _1 "
        "O(<ambiguous-nutrient>)", needs=("contain", "per-portion", "per-day"), says="household measures of sugar"),
    Rule("hours-to-digest", "quantity", "T(<number>) _1 <time-unit> _3 O(<digest>)", says="a time to digest"),
)  # fmt: skip

COMPARATIVE = (
    Rule("healthier", "comparative", "T(<healthier>)", says="a comparing health word"),
    Rule("more-than", "comparative", "T(<more|less>) _4 O(<NUT|EFFECT|health>) ~8 <than>", says="more of it than"),
    Rule("most", "comparative", "T(<most>) _2 O(<nutrient|loose|loose-weak>)", "more", named=True,
         says="a superlative"),
    Rule("times-the", "comparative", "T(<times>) _3 O(<nutrient|energy|ambiguous-nutrient>)", "more", named=True,
         says="so many times"),
    Rule("beats", "comparative", "S(<ANY>) _3 T(<beats>) ~10 O(<NUT|EFFECT|loose|health>)", "more", says="beats another"),
    Rule("cannot-match", "comparative", "O(<EFFECT|NUT|body>) ~7 <ANY> T(<beats>)", "more", says="beats another"),
    Rule("than", "comparative", "S(<ANY>) ~8 O(<NUT|EFFECT|DISEASE|loose|loose-weak|health|healthy>) ~8 T(<than>) ~3 "
        "<ANY>", says="two things set against each other"),
    Rule("than", "comparative", "T(<than>) ~6 <ANY> ~8 O(<nutrient|EFFECT|DISEASE|loose|health>)", needs=("food",),
         says="two things set against each other"),
)  # fmt: skip

FUNCTION = (
    Rule("helps-a-function", "function", "T(<BENEFIT>) ~6 O(<EFFECT>)", named=True, says="benefit verb, function"),
    Rule("strengthens-a-part", "function", "T(<benefit>) _4 O(<body>)", named=True, says="benefit verb, body part"),
    Rule("keeps-a-part-well", "function", "T(<keep>) _3 O(<body|EFFECT>) _3 <healthy|well>", named=True,
         says="keeps it well"),
    Rule("helps-it-work", "function", "T(<benefit-weak|BENEFIT|make|keep>) _4 O(<body|EFFECT>) ~3 <develop>", named=True,
         says="helps it work"),
    Rule("makes-strong", "function", "S(<ANY>) ~5 T(<make|keep|BENEFIT>) _2 <audience-baby|audience-adult> _2 "
         "O(<strong>)", says="makes someone strong"),
    Rule("makes", "function", "T(<make|keep>) _4 O(<EFFECT>)", named=True, loose=True, says="makes it so"),
    Rule("is-a-function", "function", "S(<THING>) _2 <copula> _4 O(<effect|effect-weak>)", named=True, loose=True,
         says="a food is said to be it"),
    Rule("for-a-function", "function", "S(<ambiguous-nutrient|FOOD|nutrient>) ~4 T(<for>) _2 O(<EFFECT|body>)", loose=True,
         needs=("need", "goodfor", "have", "give", "give-weak", "copula"), says="for a function"),
    Rule("thanks", "function", "O(<body|EFFECT|health>) _2 T(<thanks>)", says="the body will thank you"),
    Rule("good-for", "function", "T(<goodfor>) ~4 O(<EFFECT|body>)", named=True, says="good for a function"),
    Rule("is-needed", "function", "S(<nutrient>) ~5 <copula> ~4 T(<NEED>)", says="a nutrient is needed"),
    Rule("is-needed", "function", "S(<nutrient>) ~14 T(<goodfor>) ~2 O(<audience-baby|audience-adult>)",
         says="a nutrient is needed"),
    Rule("needs", "function", "O(<audience-baby|audience-adult|body>) ~4 T(<need>) _5 S(<nutrient>)",
         says="someone needs a nutrient"),
    Rule("absorbs", "function", "S(<NUTRIENT>) ~6 O(<absorb>)", named=True, veto=("nonfood",),
         says="a nutrient's uptake"),
    Rule("absorbs", "function", "O(<absorb>) _4 S(<NUTRIENT>)", named=True, says="a nutrient's uptake"),
    Rule("turned-into", "function", "S(<ANY>) ~6 T(<body-process>) _4 O(<NUT|body|EFFECT>)", says="what the body does"),
    Rule("weight", "function", "T(<weight-verb>) _3 O(<weight-unit>)", needs=("FOOD", "generic-food"),
         says="weight lost or gained"),
    Rule("harms-a-function", "function", "T(<HARM>) ~4 O(<EFFECT|body>)", named=True, says="harm to a function"),
    Rule("food-and-function", "function", "S(<food|dish|nutrient|ambiguous-nutrient>) ~12 O(<effect>)", loose=True, veto=("nonfood",),
         says="food and function together"),
    Rule("function-and-food", "function", "O(<effect>) ~12 S(<food|dish|nutrient>)", loose=True, veto=("nonfood",),
         says="function and food together"),
)  # fmt: skip

DISEASE = (
    Rule("against-disease", "disease", "T(<BENEFIT|goodfor>) ~5 O(<DISEASE>)", named=True, says="help against illness"),
    Rule("brings-disease", "disease", "T(<HARM>) ~6 O(<DISEASE>)", named=True, says="brings an illness"),
    Rule("gives-disease", "disease", "S(<food|dish|nutrient|ambiguous-nutrient>) ~5 T(<have|make>) _4 O(<DISEASE>)",
         says="brings an illness"),
    Rule("good-for-the-weak", "disease", "T(<goodfor|okay|healthy|loose>) ~4 O(<invalid>)", named=True,
         says="good for the sick"),
    Rule("remedy", "disease", "S(<THING>) ~10 T(<remedy>)", says="a remedy"),
    Rule("remedy", "disease", "T(<remedy>) _3 O(<DISEASE>)", says="a remedy"),
    Rule("food-and-disease", "disease", "S(<food|dish|nutrient|ambiguous-nutrient>) ~14 O(<disease>)", loose=True,
         veto=("nonfood",), says="food and illness together"),
    Rule("disease-and-food", "disease", "O(<disease>) ~14 S(<food|dish|nutrient|ambiguous-nutrient>)", loose=True,
         veto=("nonfood",), says="illness and food together"),
)  # fmt: skip

GENERAL_BENEFIT = (
    Rule("loose-word", "general-benefit", "T(<loose>)", named=True, says="a loose word of benefit"),
    Rule("loose-word", "general-benefit", "S(<THING>) ~6 T(<loose-weak>)", named=True, says="a loose word of benefit"),
    Rule("is-healthy", "general-benefit", "S(<THING>) ~5 <copula> ~4 T(<healthy>)", says="a food is healthy"),
    Rule("loose-dish", "general-benefit", "T(<loose-weak>) _3 S(<food|dish>)", says="a loose word before a food"),
    Rule("asked-healthy", "general-benefit", "<copula> _3 S(<FOOD>) _3 T(<healthy>)", says="asked whether it is healthy"),
    Rule("best-of-all", "general-benefit", "S(<THING>) ~3 <copula> _2 T(<most>) _1 <generic-food|food> _2 O(<audience-baby>)",
         says="best for"),
    Rule("healthy-dish", "general-benefit", "T(<healthy>) _3 S(<food|dish>)", says="'healthy' before a food"),
    Rule("healthy-choice", "general-benefit", "T(<healthy>) ,? _1 O(<worth>)", says="a healthy choice"),
    Rule("best-for", "general-benefit", "T(<most>) _1 S(<THING>) _2 O(<audience-baby>) _1 <copula>", says="best for"),
    Rule("health-good", "general-benefit", "T(<health>)", named=True, loose=True, says="health of a food"),
    Rule("health-good", "general-benefit", "T(<health-weak>) _4 S(<FOOD>)", loose=True, says="goodness of a food"),
    Rule("health-good", "general-benefit", "S(<FOOD>) ~8 T(<health-weak>)", loose=True, says="goodness of a food"),
)  # fmt: skip

ALLERGEN = (
    Rule("free-from", "allergen", "O(<food|allergen-word|allergen-food>) T(<suffix-free>)", "free",
         says="allergen and 'free'"),
    Rule("free-from", "allergen", "T(<free-suffixed>)", "free", says="allergen and 'free'"),
    Rule("free-from", "allergen", "T(<free-from>) _3 O(<allergen-food|allergen-word>)", "free",
         says="said to be free from it"),
    Rule("introduce-allergen", "allergen", "T(<introduce>) ~5 O(<allergen-food|allergy|allergy-weak>)",
         says="introducing an allergen"),
    Rule("introduce-allergen", "allergen", "O(<allergen-food|allergy>) ~4 T(<introduce>)", says="introducing an allergen"),
    Rule("first-allergen", "allergen", "T(<first>) _1 O(<allergen-food>)", says="introducing an allergen"),
    Rule("start-allergens", "allergen", "T(<give|avoid|forbid|wait>) ~8 O(<allergy>)", says="when to give an allergen"),
    Rule("watch-reactions", "allergen", "T(<watch>) ~8 O(<reaction>)", veto=("storing",), says="watching for reactions"),
    Rule("watch-reactions", "allergen", "O(<reaction|allergy>) ~8 T(<watch>)", veto=("storing",),
         says="watching for reactions"),
    Rule("allergy", "allergen", "S(<food|dish|nutrient>) ~14 O(<allergy|allergy-weak|reaction>)", loose=True,
         veto=("swap",), says="food and allergy together"),
    Rule("allergy", "allergen", "O(<allergy|allergy-weak>) ~14 S(<food|dish|nutrient>)", loose=True, veto=("swap",),
         says="allergy and food together"),
    Rule("allergy", "allergen", "T(<give|BENEFIT|HARM>) ~5 O(<allergy|allergy-weak>)", named=True, veto=("swap",),
         says="causing or avoiding allergy"),
    Rule("tolerance", "allergen", "O(<effect>) ~6 T(<reaction>)", says="learning to tolerate"),
)  # fmt: skip

SAFETY_AGE = (
    Rule("choking", "safety-age", "O(<choking>)", needs=("FOOD", "generic-food", "hazard-food", "pronoun"),
         says="choking"),
    Rule("hazard-food", "safety-age", "T(<AVOID>) ~4 O(<hazard-food|hazard-food-weak>)", says="a shape that chokes",
         needs=("hazard-food", "audience-baby")),
    Rule("hazard-food", "safety-age", "O(<hazard-food|hazard-food-weak>) ~8 T(<cut-safe>)", says="a shape that chokes"),
    Rule("hazard-food", "safety-age", "T(<cut-safe>) ~5 O(<hazard-food|hazard-food-weak>)", needs=("audience-baby",),
         says="a shape that chokes"),
    Rule("hazard-food", "safety-age", "T(<shape>) ,? <shape>? : _2 O(<hazard-food>)", says="a shape that chokes"),
    Rule("supervise", "safety-age", "O(<supervise>)", needs=("eating", "choking", "FOOD"), veto=("storing",),
         says="eating unwatched"),
    Rule("choking", "safety-age", "S(<FOOD>) ~8 O(<choking-weak>)", says="choking"),
    Rule("harmful", "safety-age", "O(<harmful>)", named=True, says="harm from a food"),
    Rule("harmful", "safety-age", "S(<FOOD|generic-food>) ~8 O(<harmful-weak>)", needs=("copula", "harm", "forbid",
        "audience-baby"), says="harm from a food"),
    Rule("harmful", "safety-age", "O(<harmful-weak>) ~8 S(<FOOD>)", needs=("copula", "harm", "forbid",
        "audience-baby"), says="harm from a food"),
    Rule("interferes", "safety-age", "T(<HARM>) ~8 O(<drug>)", needs=("FOOD",), says="gets in the way of a medicine"),
    Rule("contaminant", "safety-age", "T(<free|low|high|HAVE|prefix-low|prefix-high>) ~5 O(<contaminant>)", named=True,
         says="a contaminant"),
    Rule("contaminant", "safety-age", "O(<contaminant>) T(<suffix-free>)", "free", says="free of a contaminant"),
    Rule("contaminant", "safety-age", "S(<FOOD>) ~9 O(<contaminant>)", loose=True, says="a contaminant"),
    Rule("safe", "safety-age", "O(<safe>)", needs=("FOOD", "pronoun"), says="safety of a food"),
    Rule("age-and-food", "safety-age", "T(<bound|AVOID|okay|give>) ~6 O(@AGE)", needs=("FOOD", "ambiguous-nutrient"),
         veto=("storing",), says="an age and a food"),
    Rule("age-and-food", "safety-age", "O(@AGE) ~16 T(<AVOID|okay|give|introduce|bound>)", needs=("FOOD", "ambiguous-nutrient"),
         veto=("storing",), says="an age and a food"),
    Rule("age-and-food", "safety-age", "S(<FOOD|ambiguous-nutrient>) ~9 O(<age>)", needs=("negation", "forbid", "avoid",
        "okay", "harmful"), veto=("storing",), says="an age and a food"),
    Rule("wait-until", "safety-age", "T(<wait>) ~6 O(@AGE)", veto=("storing",), says="an age to wait for"),
    Rule("from-age", "safety-age", "T(<okay>) _2 <bound|in>? _2 O(@AGE)", veto=("storing",), says="an age to start from"),
    Rule("fine-for-babies", "safety-age", "S(<FOOD|THING>) ~4 <copula> ~3 T(<fine>) _3 O(<audience-baby|solids>)",
         says="fine for babies"),
    Rule("can-babies", "safety-age", "T(<can-ask>) _2 O(<audience-baby>) _3 <give|give-weak|have> _4 "
         "S(<FOOD|ambiguous-nutrient>)", says="whether babies may eat it"),
    Rule("can-babies", "safety-age", "T(<can-ask>) _2 <give|give-weak|have> _3 O(<audience-baby>) _3 "
         "S(<FOOD|ambiguous-nutrient>)", says="whether babies may eat it"),
    Rule("readiness", "safety-age", "O(<readiness>)", says="readiness for solids"),
    Rule("readiness", "safety-age", "O(<readiness-weak>)", needs=("solids", "readiness"), says="readiness for solids"),
    Rule("not-for-babies", "safety-age", "T(<avoid|forbid>) ~8 S(<FOOD|ambiguous-nutrient>) ~6 O(<audience-baby>)",
         says="a food kept from babies"),
    Rule("not-for-babies", "safety-age", "T(<avoid|forbid>) ~4 O(<audience-baby>) ~6 S(<FOOD|ambiguous-nutrient>)",
         says="a food kept from babies"),
    Rule("not-for-babies", "safety-age", "O(<audience-baby>) ~6 T(<avoid|forbid>) ~6 S(<FOOD|ambiguous-nutrient>)",
         says="a food kept from babies"),
    Rule("ready-for-solids", "safety-age", "T(<okay|give>) _3 S(<solids>)", needs=("audience-baby",), says="readiness"),
)  # fmt: skip

PROCESS = (
    Rule("process-changes", "process", "S(<process|process-weak>) ~7 T(<keep-n|lose-n|gain-n>) ~6 "
        "O(<NUTRIENT|health|health-weak|loose|loose-weak|effect>)", says="a process changes a nutrient"),
    Rule("process-kills", "process", "S(<process>) ~5 T(<lose-n>) ~4 O(<disease|contaminant|allergy>)",
         says="a process against a germ"),
    Rule("process-changes", "process", "T(<keep-n|lose-n>) ~4 O(<NUTRIENT|health|health-weak>) ~8 S(<process>)",
         says="a nutrient changed by a process"),
    Rule("process-changes", "process", "O(<NUTRIENT|health|health-weak>) ~6 T(<keep-n|lose-n>) ~6 S(<process>)",
         says="a nutrient changed by a process"),
    Rule("process-makes", "process", "S(<process>) ~6 T(<make|gain-n>) ~5 O(<healthier|digest|absorb|effect|NUTRIENT>)",
         says="a process makes it better"),
    Rule("process-makes", "process", "O(<healthier>) ~7 S(<process>)", says="a process makes it better"),
)  # fmt: skip

RULES: tuple[Rule, ...] = (
    *PROCESS, *COMPARATIVE, *QUANTITY, *ALLERGEN, *SAFETY_AGE, *DISEASE, *FUNCTION, *NUTRIENT_CONTENT, *GENERAL_BENEFIT,
)  # fmt: skip
