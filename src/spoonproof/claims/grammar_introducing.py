"""Rules for how an allergen comes onto the plate and stays there, how bad an allergy is, and what hides an allergen.

They come after the rules of ``grammar_allergen``, which are surer. ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_allergen = ways("allergen")

INTRODUCING = (
    *_allergen(
        "first-taste",
        "T(<give|fed|offer|introduce>) ~5 O(<allergen-word>) ~8 <first-time>",
        "T(<give|fed|offer|introduce>) ~2 <tiny|amount> _2 O(<allergen-word>) ~4 <wait-until|watch>",
        "T(<forbid|negation> _1 <introduce|give|fed|offer>) _1 O(<allergen-word>) ~6 <same-day>",
        "S(<allergen-word>) ~6 T(<moves-on>) _3 O(<new-food|allergen-thing>)",
        "S(<allergen-word>) _1 T(<is-introduced>) ~6 O(<keep|give|fed|offer>)",
        "T(<days-between|left-out>) _1 O(<allergen-thing>)",
        effect="allergen-introduction",
        veto="story culinary week",  # at four weeks nothing is given
        says="an allergen given for the first time, or again and again",
    ),
    *_allergen(
        "kept-up",
        "T(<keep>) _1 O(<allergen-word>) _4 <in-diet|diet>",
        effect="allergen-introduction",
        needs="audience-baby allergy food-allergy reaction tolerance introduce",
        veto="story culinary",
        says="an allergen given again and again",
    ),
    *_allergen(
        "left-if-allergic",
        "T(<left-out|leave-it-out|let-go>) _1 S(<ALLERGEN>) _2 <when-ill|swap> ~4 O(<ALLERGY>)",
        says="left by whoever is allergic to it",
    ),
    *_allergen(
        "allergy-itself",
        "O(<ALLERGY>) _5 <copula|can-ask> _2 T(<how-bad>) (?=[.,:?]|$|_?<audience-baby|audience-adult>)",
        "T(<how-bad>) ,? _3 <copula> O(<ALLERGY>)",
        "<copula|can-ask> _2 T(<sign-of|ready>) _3 O(<allergy|food-allergy>)",
        "T(<symptoms|sign-of|ready|watch>) _3 O(<ALLERGY>) _1 <include|contain|copula>",
        "T(<odds>) _2 O(<allergy|food-allergy>)",
        veto="diagnosis story",
        says="how bad or how frequent an allergy is, and how it shows",
    ),
    *_allergen(
        "listed-allergen",
        "O(<common-allergen>) _1 [:(] _1 S(<FOOD>)",
        "O(<common-allergen>) ~4 <copula|include> _1 S(<FOOD>)",
        says="called an allergen",
    ),
    *_allergen(
        "hides-in",
        "^ T(<look-for|watch-for>) _1 O(<allergen-word>) _1 <in> ~2 S(<FOOD>)",
        says="what holds an allergen unseen",
    ),
    *_allergen(
        "left-out",
        "S(<generic-food|dish>) _1 T(<skips>) _1 O(<allergen-word>)",
        veto="culinary",
        level="free",
        says="left out of a dish",
    ),
    *_allergen(
        "stop-if-reacts",
        "T(<stop-giving|forbid>) _1 S(<ALLERGEN>) ~8 O(<hives|reaction-sign|reaction>)",
        effect="allergic-reaction",
        veto="story culinary",
        says="an allergen stopped after a reaction",
    ),
)
