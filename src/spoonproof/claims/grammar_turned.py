"""Rules for what is said of a food's work from the other end: the bone first, the wish, what a part of the body needs.

They come after the rules of ``grammar_effects``, which are surer. ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_disease = ways("disease")
_function = ways("function")
_KITCHEN = "nonfood culinary story"
_PART = "<body|inner-body|EFFECT>"
_SOMEONE = "<audience-baby|audience-adult|pronoun>"

TURNED = (
    *_function(
        "is-done-by",
        "O(<body|inner-body|EFFECT|physiology>) _3 T(<BENEFIT|HARM|keep>) _2 <with> _3 S(<FOOD|nutrient>)",
        veto=_KITCHEN,
        says="a part of the body that a food is good to",
    ),
    *_function(
        "part-needs",
        f"O({_PART}) _1 T(<need>) _2 S(<FOOD>)",
        f"<what> _2 O({_PART}) T(<need>) <copula> _2 S(<FOOD|nutrient>)",
        f"^ ~3 S(<FOOD|pronoun>) _2 <copula> _1 <what> _3 O({_PART}) T(<need>)",
        veto=_KITCHEN,
        says="what a part of the body needs",
    ),
    *_function(
        "wish-then-food",
        f"^ <wish> _2 O({_PART}) [?:,] _3 S(<FOOD>)",
        veto=_KITCHEN,
        says="what is wished for, and what to eat",
    ),
    *_function(
        "makes-for",
        f"T(<make> <for>) _1 (?:<good-state|strong|healthy|well>) _1 O({_PART})",
        f"T(<remedy>) <for> _2 O({_PART})",
        "T(<benefit-weak>) _1 (?:<good-state|strong|healthy|well>) _1 O(<body|inner-body>)",
        veto=_KITCHEN,
        named=True,
        says="makes a part of the body so",
    ),
    *_function(
        "feeds-a-part",
        "^ _1 S(<pronoun>) T(<benefit-weak>) _2 O(<body|inner-body>)",
        "^ _1 S(<pronoun>) _1 O(<bodily|does-well>)",
        veto=_KITCHEN,
        says="benefit verb, body part",
    ),
    *_function(
        "gives-energy",
        f"T(<have>) _1 {_SOMEONE}? _1 O(<effect-weak>) (?=[.,!?:]|$|<for|when-ill|until>)",
        veto=_KITCHEN,
        named=True,
        loose=True,
        says="gives someone energy",
    ),
    *_function(
        "through-the-day",
        f"S(<FOOD|THING|nutrient>) ~6 T(<benefit-weak|keep|carry>) _1 O({_SOMEONE} _1 <through-day>)",
        effect="energy",
        veto=_KITCHEN,
        says="keeps someone going",
    ),
    *_disease(
        "makes-it-so",
        "T(<make>) _2 O(<DISEASE>) _1 (?:<less|more|rarer>)",
        "^ _1 S(<pronoun>) T(<keep|make>) _2 O(<DISEASE>)",
        "^ _1 S(<pronoun>) T(<have|generates>) _1 <audience-baby|audience-adult> _1 O(<DISEASE>)",
        "(?:S(<FOOD|pronoun>)|^) ~4 T(<breaks>) _1 O(<fever>)",
        veto=_KITCHEN,
        named=True,
        says="makes an illness better or worse",
    ),
    *_disease(
        "it-and-disease",
        "^ _1 S(<pronoun>) (?!_1 <copula|have|got>) _5 O(<disease>)",
        veto="nonfood refer culinary story other-doer drug",
        loose=True,
        says="a pronoun and an illness together",
    ),
)
