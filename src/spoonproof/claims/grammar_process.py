"""Rules for what a process does to a food: cooking, sprouting, freezing.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_process = ways("process")

PROCESS = (
    *_process(
        "process-changes",
        (
            "S(<process|process-weak>) ~7 T(<keep-n|lose-n|gain-n>) ~6 "
            "O(<NUTRIENT|health|health-weak|loose|loose-weak|effect>)"
        ),
        "S(<process|process-weak>) ~7 T(<lose-n>) (?!_2 <food> _1 <with>) ~6 O(<ambiguous-nutrient>)",
        "S(<process>) ~4 <copula> _2 O(<NUTRIENT>) _1 <copula> _1 T(<keep-n|lose-n|is-lost>)",
        "S(<process>) T(<keep-n|lose-n>) ~16 O(<NUTRIENT>) (?=_?(?:[.,:?]|$))",
        "S(<storing>) ~7 T(<lose-n|keep-n>) _4 O(<NUTRIENT>)",
        "S(<process>) _1 <copula> _2 T(<enemy>) _2 O(<NUTRIENT|health-weak>)",
        "O(<NUTRIENT|health|health-weak>) _1 T(<gain-n|rises>) <when-ill|bound> _3 S(<process>)",
        "O(<NUTRIENT>) _2 T(<keep-n|is-gone>) <when-ill|at> _4 S(<process|process-weak>)",
        "T(<more|less>) _1 O(<NUTRIENT>) <from|in> _2 <food> <when-ill> _2 S(<process>)",
        "O(<NUTRIENT|contaminant>) ~3 T(<keep-n|lose-n|gain-n>) _1 <at> _1 S(<process|process-weak>)",
        "O(<NUTRIENT|health>) _2 T(<rises|gain-n>) ~3 <in> _1 S(<process|process-weak|food>)",
        "O(<NUTRIENT|health>) ~3 T(<more|prefix-high|absorb>) <when-ill> _3 S(<process|process-weak>)",
        says="a process changes a nutrient",
    ),
    *_process(
        "kept-whole",
        "O(<NUTRIENT|ambiguous-nutrient>) _1 (?:<copula|turns>|_)? ~2 T(<whole-still>)",
        needs="FOOD generic-food process nutrient",
        says="a nutrient said to be kept",
    ),
    *_process(
        "kept-by",
        "S(<process|process-weak>) ~10 O(<NUTRIENT|health-weak>) _1 <copula> _2 T(<keep-n|lose-n>)"
        " (?=[.,:?]|$|<bound|at>)",
        says="a nutrient said to be kept or lost",
    ),
    *_process(
        "process-kills",
        "S(<process|process-weak>) ~7 T(<lose-n>) ~4 O(<DISEASE|contaminant|contaminant-weak|allergy>)",
        says="a process against a germ",
    ),
    *_process(
        "process-forms", "O(<contaminant>) _1 T(<formed-in>) _2 S(<process>)", says="a process forms something harmful"
    ),
    *_process(
        "process-changes",
        "T(<keep-n|lose-n>) ~4 O(<NUTRIENT|health|health-weak>) ~8 S(<process>)",
        says="a nutrient changed by a process",
    ),
    *_process(
        "process-makes",
        "S(<process>) ~6 T(<make|gain-n>) ~5 O(<healthier|digest|absorb|effect|NUTRIENT>)",
        "O(<healthier>) ~7 S(<process>)",
        "S(<process> <food>) _1 <copula> _1 O(<digest|easier>)",
        "S(<process>) ~16 T(<make|gain-n|more|easier>) ~4 O(<digest|absorb>)",
        says="a process makes it better",
    ),
    *_process(
        "keeps-nutrients",
        "S(<food>) _3 T(<keep-n|lose-n>) _4 O(<NUTRIENT|health-weak>)",
        "^ _1 S(<pronoun>) _2 T(<keep-n>) _3 O(<NUTRIENT>)",
        says="a food keeps or loses a nutrient",
    ),
    *_process(
        "process-and-nutrient",
        "S(<process>) ~16 O(<NUTRIENT|health-weak>) _2 T(<loss|leach>)",
        loose=True,
        says="a process changes a nutrient",
    ),
    *_process(
        "process-alters",
        "S(<process>) ~4 T(<alters|hurts>) ~8 O(<NUTRIENT|health|health-weak|loose|loose-weak>)",
        "^ _3 S(<process|takes>) _4 , _1 T(<more|less>) O(<NUTRIENT>)",
        "<the-longer> _2 S(<process|takes>) _4 ,? _1 T(<more|less>) O(<NUTRIENT>)",
        says="a process changes a nutrient",
    ),
    *_process(
        "is-lost",
        "O(<NUTRIENT>) ~8 T(<is-lost>)",
        needs="FOOD generic-food process",
        veto="body-process",
        says="a process loses a nutrient",
    ),
    *_process(
        "takes-out",
        "S(<process>) ~3 T(<takes>) ~3 O(<NUTRIENT|health-weak>) <out-of-it>",
        "S(<process>) ~3 T(<takes>) <out-of-it> _2 O(<NUTRIENT>)",
        says="a process loses a nutrient",
    ),
    *_process(
        "by-this-process",
        "^ _1 S(<this-process>) ~14 T(<gain-n|keep-n|lose-n>) ~5 O(<NUTRIENT|health|health-weak|loose|loose-weak>)",
        says="a process changes a nutrient",
    ),
    *_process(
        "lost-by",
        "<negation|free|low|scant> ~4 O(<NUTRIENT|health-weak>) _2 T(<caused-by>) _2 S(<process>)",
        says="a process loses a nutrient",
    ),
    *_process("heat-fast", "O(<NUTRIENT>) ~8 T(<heat-fast>)", says="how a nutrient stands heat"),
    *_process(
        "better-so",
        "S(<FOOD>) ~4 <have> _1 T(<more|less>) _2 O(<NUTRIENT>) ~4 <when-ill> ~2 <process|process-weak>",
        "O(<NUTRIENT>) ~6 T(<more|less|prefix-high|prefix-low|high|low>) ~2 S(<process|process-weak>) ~5"
        " <than|compared> ~2 <process|process-weak>",
        says="one process set against another",
    ),
    *_process(
        "when-cooked",
        "S(<FOOD>) ~12 T(<have|contain|gain-n|lose-n>) ~5 O(<NUTRIENT>) _2 <when-ill> _2 <process|process-weak>",
        "<process> S(<FOOD>) _2 T(<have|contain>) _1 <more|less> _2 O(<NUTRIENT>) (?!~16 <than|compared>)",
        "S(<FOOD>) ~3 T(<have|contain>) _1 <more|less> _2 O(<NUTRIENT>) ~3 <than|compared> _1 <process|process-weak>"
        " (?=_?(?:[.,:?!]|$))",
        says="what a food holds when cooked",
    ),
    *_process(
        "lost-in-process",
        "O(<NUTRIENT|health-weak>) ~2 <copula> _2 T(<alters>) _2 S(<process>)",
        "O(<NUTRIENT>) ~9 T(<alters|hurts>) <at> S(<process>)",
        says="a process changes a nutrient",
    ),
    *_process(
        "lost-in-water",
        "O(<NUTRIENT>) ~9 T(<leach|is-lost|into-water>) _1 S(<into-water>)",
        needs="FOOD generic-food process",
        says="what is lost in cooking",
    ),
    *_process(
        "helps-absorb",
        "S(<process>) _2 T(<BENEFIT>) ~4 O(<digest|absorb>)",
        "S(<process>) ~3 T(<for>) _1 O(<digest>)",
        "O(<NUTRIENT>) ~6 T(<available>) ~8 S(<process>)",
        says="a process makes it easier to take up",
    ),
    *_process(
        "share-lost",
        "S(<process>) ~6 T(<reduction>) ~6 O(<NUTRIENT>)",
        "S(<process>) ~4 T(<loss>) ~3 <number> _5 O(<NUTRIENT>)",
        "S(<process>) ~6 T(<loss>) _1 O(<NUTRIENT>)",
        "T(<loss>) _1 O(<NUTRIENT>) ~9 <when-ill|at|in> _1 S(<process>)",
        says="how much a process loses",
    ),
    *_process(
        "made-harmful",
        "S(<process>) ~12 O(<radioactive>)",
        "S(<process>) ~3 T(<make|keep|hurts>) ~5 O(<harmful|contaminant>)",
        "S(<process>) _1 T(<hurts>) _2 O(<generic-food|FOOD>)",
        veto="culinary",
        says="a process said to spoil a food",
    ),
)
