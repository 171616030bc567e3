"""Rules for what is told outright, with no reason beside it: stay off it, cut it so, leave it if you are allergic.

They come before the rules of ``grammar_danger``, which ask for more. ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_allergen = ways("allergen")
_process = ways("process")
_safety = ways("safety-age")
_HAZARD = "<hazard-food|hazard-food-weak|round-food>"

OUTRIGHT = (
    *_safety(
        "stay-off",
        "^ (?!<question|given-up>) _1 T(<avoid|forbid>) _2 S(<never-yet>)"
        " (?!~8 <bound|until-is|wait-until|age|this-age>|_2 <copula>)",
        effect="age",
        veto="storing nonfood story culinary swap",
        says="a food not yet, to be kept off",
    ),
    *_safety(
        "not-for-babies",
        "<keep> _2 S(<FOOD|hazard-food|never-yet>) T(<away>) <from> _2 O(<audience-baby>)",
        effect="age",
        veto="nonfood storing",
        says="a food kept from babies",
    ),
    *_safety(
        "handed-over",
        "(?:<forbid|negation|avoid> _3)? T(<contain|give>) _2 <audience-baby> <with> _1 S(<never-yet>)",
        effect="age",
        veto="story nonfood storing",
        says="a food not yet given",
    ),
    *_safety(
        "given-to-babies",
        "S(<FOOD>) _2 T(<can-be-given>) ~5 <for> _1 O(<audience-baby>)",
        effect="age",
        veto="storing nonfood story",
        loose=True,
        says="said to be given to babies",
    ),
    *_safety(
        "not-to-be-given",
        "<authority|advice> ~8 S(<FOOD|ambiguous-nutrient>) _1 T(<forbid>) (?=[.,]|$)",
        effect="age",
        veto="storing nonfood story",
        says="a food kept back",
    ),
    *_safety(
        "given-from-an-age",
        "^ <bound|at> _1 O(@AGE) ,? _2 T(<give|fed>) _2 <audience-baby>? _3 S(<generic-food|solids>)",
        effect="age",
        veto="storing nonfood story",
        says="given at an age",
    ),
    *_safety(
        "introduced-by-an-age",
        "<bound|at> _1 O(@AGE) ,? ~16 S(<FOOD|ambiguous-nutrient>) _1 T(<is-introduced>)",
        effect="age",
        veto="storing nonfood story",
        says="given at an age",
    ),
    *_safety(
        "not-for-babies",
        "^ T(<avoid|forbid>) _1 <adding|give-weak>? _1 S(<ambiguous-nutrient|salted>) ~10 O(<audience-baby>)",
        effect="age",
        veto="nonfood storing story",
        says="a food kept from babies",
    ),
    *_safety(
        "cut-first",
        "T(<to-be-safe>) ,? _2 <cut-it|cut-safe> _1 S(<FOOD|pronoun>)",
        effect="choking",
        veto="nonfood culinary",
        says="how a food is made safe",
    ),
    *_safety(
        "cut-first",
        f"S({_HAZARD}) _2 T(<must-be> _3 <cut-it>)",
        effect="choking",
        needs="audience-baby choking choking-weak to-be-safe age age-unit cut-safe",
        veto="nonfood culinary",
        says="how a food is made safe",
    ),
    *_safety(
        "choking",
        "O(<lodges> _3 <airway-part>)",
        "S(<FOOD|generic-food|hazard-food>) ~10 O(<sticks> _2 <airway-part>)",
        effect="choking",
        needs="FOOD generic-food hazard-food pronoun audience-baby",
        veto="choking-talk story",
        says="choking",
    ),
    *_safety(
        "harmful",
        "S(<generic-food|hazard-food>) ~4 O(<harmful>)",
        needs="audience-baby age age-unit",
        veto="kitchen-danger nonfood hygiene",
        says="harm from a food",
    ),
    *_allergen(
        "introduce-allergen",
        "<audience-baby> _2 T(<is-introduced|given-to>) _2 S(<allergen-food>)",
        effect="allergen-introduction",
        veto="story",
        says="giving an allergen for the first time",
    ),
    *_process(
        "nothing-lost",
        "O(<nothing-lost>) ~8 S(<process|process-weak|storing>)",
        veto="nonfood",
        says="a process said to lose nothing",
    ),
)
