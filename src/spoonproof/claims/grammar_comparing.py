"""Rules for what a food is set against: more than, as much as, first of all, left behind.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_compares = ways("comparative")
_benefit = ways("general-benefit")
_COOKING = "culinary"

COMPARATIVE = (
    *_benefit("makes-healthier", "<make|keep> _4 O(<more-nutritious>) (?!~12 <than>)", says="makes it more nutritious"),
    *_benefit(
        "healthiest",
        "O(<healthiest>) (?!~12 <than>)",
        "<there> _1 <negation|free> _1 O(<healthier>)",
        says="a superlative of health",
    ),
    *_compares(
        "none-has-more",
        "<number|free|negation|scant> _2 <generic-food> ~4 T(<more>) _3 O(<NUT>) _2 <than|as> _2 S(<FOOD>)",
        level="more",
        says="no other holds as much",
    ),
    *_compares(
        "as-sweet-as",
        "S(<food|dish|sweet-thing|milk-for-babies|pronoun>) _2 <copula> _2 T(<as-sweet>) _1"
        " O(<sweet-drink|sweet-thing|never-yet>)",
        veto="culinary",
        level="more",
        says="as sweet as another",
    ),
    *_compares(
        "healthier", "O(<healthier>) (?!<than> <audience-adult|pronoun>)", loose=True, says="a comparing health word"
    ),
    *_compares(
        "more-than",
        "(?<!<need>) T(<more|less>) _4 O(<NUT|EFFECT|health|health-weak>) ~8 <than>",
        says="more of it than",
    ),
    *_compares(
        "far-higher",
        "T(<far-richer>) _2 O(<NUT>)",
        "S(<ANY>) _2 <have|contain> _1 T((?:<far-more>|<even> <more>)) O(<NUT>) (?=[.,:?]|$|<but>)",
        named=True,
        says="more of it than what was named before",
    ),
    *_compares(
        "more-without-than",
        "O(<NUT>) ~4 S(<FOOD>) ,? _1 <copula> _2 T(<more|less>) _3 <than>",
        "S(<FOOD>) ~2 <have|contain> _3 O(<NUT>) ,? T(<compared>)",
        "S(<ANY>) ~4 T(<higher-in>) _2 O(<NUT>)",
        "S(<ANY>) ~2 <have|contain> _2 T(<more-of>) _2 O(<NUT>)",
        veto=_COOKING,
        says="more of it than what was named before",
    ),
    *_compares(
        "as-much-as",
        "S(<ANY>) ~2 <have|contain> _2 T(<same-amount>) _1 O(<NUT>) _2 <as|to> _2 <FOOD>",
        "S(<ANY>) ~4 <as> _1 O(<NUTRIENT>) T(<suffix-high>) <as> _1 <FOOD>",
        "S(<ANY>) _2 <copula> _1 <negation> <as> _1 O(<NUTRIENT>) T(<suffix-high>)",
        "S(<ANY>) _2 <copula> _1 <negation> T(<as>) O(<loose>)",
        says="set level with another",
    ),
    *_compares(
        "most",
        "(?<=.) T(<most>) _2 O(<nutrient|loose|loose-noun|loose-weak>)",
        level="more",
        named=True,
        says="a superlative",
    ),
    *_compares(
        "times-the",
        "(?<!<need>) T(<times>) _3 O(<nutrient|energy|ambiguous-nutrient>) (?!~6 <per-day>|_2 <audience-baby> <need>)",
        level="more",
        named=True,
        says="so many times",
    ),
    *_compares(
        "beats-it-for",
        "(?:S(<FOOD|pronoun>)|^) ~6 T(<beats>) _2 <FOOD> _1 <for|from|when-ill> ~4 O(<NUTRIENT>)",
        level="more",
        says="more of it than another",
    ),
    *_compares("safer-than", "S(<ANY>) ~6 O(<safer>) _1 T(<than>)", says="said to be safer"),
    *_compares(
        "as-good-as",
        "S(<FOOD>) ~4 T(<as-good-as>) ~10 O(<NUT|EFFECT|DISEASE|health>)",
        veto=_COOKING,
        loose=True,
        says="set level with another",
    ),
    *_compares(
        "levels-in",
        "O(<NUT|EFFECT>) _2 <copula> _1 T(<more|less|high|low>) _1 S(<FOOD>) ~4 <than>",
        veto=_COOKING,
        says="how much of it one holds beside another",
    ),
    *_compares(
        "better-than-milk",
        "S(<FOOD>) ~3 <copula> _2 T(<more|less>) _1 <than> _2 O(<milk-feed>)",
        veto=_COOKING,
        says="set against milk",
    ),
    *_compares(
        "better-for",
        "T(<goodfor>) _3 <audience-baby|audience-adult> _2 <than>",
        level="more",
        says="better for someone than",
    ),
    *_compares(
        "better-for",
        "S(<ANY>) ~4 T(<as>) _1 O(<healthy|goodfor>) _3 <as> _1 <FOOD|process|process-weak>",
        says="better for someone than",
    ),
    *_compares(
        "so-natured", "S(<FOOD|pronoun>) ~4 T(<more|less>) O(<adjectival>) _1 <than>", says="set against another"
    ),
    *_compares("unlike-its-kind", "S(<ANY>) ~16 O(<NUT>) ~4 T(<counterpart>)", says="set against its kind"),
    *_compares(
        "beats",
        "S(<ANY>) ~6 T(<beats>) ~10 O(<NUT|EFFECT|loose|health|health-weak>)",
        level="more",
        says="beats another",
    ),
    *_compares(
        "stands-beside",
        "(?:S(<ANY>)|^) ~6 T(<beside-it>) _3 <FOOD> ~5 O(<NUT|EFFECT>)",
        veto=_COOKING,
        level="more",
        says="ranked beside another",
    ),
    *_compares(
        "leaves-behind",
        "(?:S(<ANY>)|^) ~6 <FOOD> _1 T(<left-behind>) ~6 O(<NUT|EFFECT>)",
        level="more",
        says="leaves another behind",
    ),
    *_compares(
        "tops-the-list", "T(<tops-list>) _3 O(<nutrient|effect>)", level="more", named=True, says="first of all"
    ),
    *_compares("cannot-match", "O(<EFFECT|NUT|body>) ~7 <ANY> T(<beats>)", level="more", says="beats another"),
    *_compares(
        "than",
        "S(<ANY>) ~8 O(<NUT|EFFECT|DISEASE|loose|loose-weak|health|healthy>) ~8 T(<than>) ~3 <ANY>",
        says="two things set against each other",
    ),
    *_compares(
        "than",
        "^ _3 O(<NUT|EFFECT|health>) _4 T(<than>) _1 <FOOD>",
        "T(<than>) ~6 <ANY> ~8 O(<nutrient|EFFECT|DISEASE|loose|health>)",
        needs="food",
        says="two things set against each other",
    ),
)
