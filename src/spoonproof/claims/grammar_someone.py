"""Rules for what a food does for someone, where the child is said to grow, learn or settle and no organ is named.

They come after the rules of ``grammar_effects``, which are surer. ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_benefit = ways("general-benefit")
_content = ways("nutrient-content")
_disease = ways("disease")
_function = ways("function")
_process = ways("process")
_KITCHEN = "nonfood culinary story"
_EATEN = "<food|dish|nutrient|ambiguous-nutrient|generic-food|solids|pronoun>"
_SOMEONE = "<audience-baby|audience-adult|pronoun>"

SOMEONE = (
    *_function(
        "needs",
        "<audience-baby|audience-adult> ~3 <NEED> _3 S(<nutrient-weak>) ~3 O(<body|EFFECT|develop>)",
        veto="nonfood culinary",
        says="someone needs nutrients to thrive",
    ),
    *_function(
        "helps-someone",
        f"S({_EATEN}) ~6 T(<BENEFIT>) _1 {_SOMEONE} _2 O(<develop|strong|does-well>)",
        f"^ T(<BENEFIT|make>) _1 {_SOMEONE} _2 O(<develop|strong|does-well>) , _2 S(<food|dish>)",
        f"S({_EATEN}) ~14 T(<helps-you>) _1 O(<develop|does-well|strong>)",
        veto=_KITCHEN,
        loose=True,
        says="helps someone to thrive",
    ),
    *_function(
        "does-better",
        "S(<food|dish|nutrient|generic-food|solids>) ~8 O(<does-well>)",
        needs="audience-baby",
        veto=_KITCHEN,
        loose=True,
        says="someone does better for it",
    ),
    *_function(
        "needs",
        "O(<audience-baby>) _3 T(<need>) _3 S(<ambiguous-nutrient>)",
        "O(<boys>) _1 T(<need>) _3 S(<nutrient|ambiguous-nutrient>)",
        "S(<ambiguous-nutrient>) ~2 <copula> _2 T(<NEED>) ~6 O(<audience-baby>)",
        veto=_KITCHEN,
        loose=True,
        says="someone needs a nutrient",
    ),
    *_function(
        "can-digest",
        "(?:<audience-baby|body|inner-body>) _1 <negation|can-ask> O(<digest>) _3 S(<FOOD|NUTRIENT>)",
        "O(<absorb>) <more> ~5 S(<food>)",
        "O(<inner-body|effect>) ~9 <handles> _2 S(<FOOD|solids|nutrient>)",
        loose=True,
        says="how it is digested",
    ),
    *_function(
        "cannot-cope",
        "O(<audience-baby>) _1 T(<cannot-cope>) _2 S(<nutrient|ambiguous-nutrient|additive>)",
        "O(<audience-baby>) _1 T(<negation> _1 <cope>) _2 S(<nutrient|ambiguous-nutrient|additive>)",
        "O(<body|inner-body>) _2 T(<cannot-cope>) ~2 S(<FOOD|nutrient|ambiguous-nutrient|generic-food|pronoun>)",
        veto="nonfood",
        says="more than a part of the body can take",
    ),
    *_function(
        "gives-it",
        "^ _1 S(<pronoun>) <copula> ~14 T(<contain>) _2 O(<effect>)",
        veto=_KITCHEN,
        loose=True,
        says="gives a function",
    ),
    *_function(
        "bodily",
        "S(<food|dish|generic-food|nutrient>) ~6 O(<bodily>)",
        veto=_KITCHEN,
        loose=True,
        says="what happens in the body",
    ),
    *_disease(
        "feels-better",
        "S(<food|dish|generic-food|nutrient>) ~10 O(<feel-better>)",
        veto=_KITCHEN,
        says="someone ill gets better for it",
    ),
    *_function(
        "what-it-needs",
        "^ _1 S(<pronoun>) <copula> _2 O(<body|inner-body>) _1 T(<need>)",
        veto="nonfood",
        says="what a part of the body needs",
    ),
    *_function(
        "gets-stronger",
        "S(<food>) ,? _2 O(<body|dental>) <copula> T(<strong|good-state>)",
        veto="nonfood culinary",
        says="the state of a part of the body",
    ),
    *_function(
        "put-on-weight",
        "S(<food|dish|pronoun|generic-food>) ~2 T(<put-on>) _3 O(<weight-unit>) <on-them>",
        effect="weight",
        veto="story",
        says="weight gained",
    ),
    *_benefit("unbeaten", "T(<unbeaten>) ~3 <for> _1 O(<health|health-weak>)", says="praised above all"),
    *_disease(
        "keeps-away",
        "T(<keep|told-to>) _3 O(<DISEASE>) _4 <away>",
        veto=_KITCHEN,
        named=True,
        says="keeps an illness away",
    ),
    *_process(
        "all-gone",
        "S(<process|process-weak>) ~4 O(<NUTRIENT>) ~3 T(<is-lost|all-gone>)",
        says="a process loses a nutrient",
    ),
    *_process(
        "nutrient-loss",
        "S(<process|process-weak>) ~12 O(<nutrient-loss>)",
        veto="nonfood",
        says="how much a process loses",
    ),
    *_process(
        "brings-contaminant",
        "S(<process>) ~6 T(<make|benefit-weak|harm|contain>) ~3 O(<contaminant>)",
        veto="nonfood",
        says="a process brings a contaminant",
    ),
    *_content(
        "full-of-it",
        "S(<FOOD|generic-food|pronoun>) ~4 <copula> _2 O(<full-of-it>)",
        level="high",
        named=True,
        says="a phrase of plenty and a nutrient",
    ),
    *_content(
        "may-contain",
        "S(<FOOD|pronoun>) ~3 T(<traces>) ~3 O(<nutrient|ambiguous-nutrient|additive>)",
        level="contains",
        veto="label",
        says="may contain it",
    ),
    *_content(
        "barely-any",
        "T(<scant>) _1 O(<ambiguous-nutrient>) <from|in> S(<pronoun|food>)",
        level="low",
        says="said to hold little of it",
    ),
)
