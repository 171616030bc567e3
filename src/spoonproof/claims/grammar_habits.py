"""Rules for how a child is fed: which food first, how often, by which method, and what comes of it.

They come after the other rules of safety and age, which are surer. ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_allergen = ways("allergen")
_content = ways("nutrient-content")
_function = ways("function")
_quantity = ways("quantity")
_safety = ways("safety-age")
_NO_ADVICE = "storing story nonfood"
_KITCHEN = "nonfood culinary"
_FOOD = "<food|dish>"
_GIVE = "<give|include|child-can|should|limit|avoid-weak|need|offer>"

HABITS = (
    *_safety(
        "first-food",
        "^ ~15 T(<given|give|give-weak|fed> _1 <as>) _2 O(<first-food>)",
        f"S({_FOOD}) ~6 <copula|make> ~5 O(<first-food>)",
        f"S({_FOOD}) ~8 <as> _3 O(<first-food>)",
        f"O(<first-food>) _3 <include> _2 S({_FOOD})",
        effect="age",
        veto=_NO_ADVICE,
        says="called a food to start with",
    ),
    *_safety(
        "early",
        "T(<introduce|give>) _1 S(<pronoun>) _2 O(<early>)",
        "O(<introduced-early>)",
        effect="age",
        veto=_NO_ADVICE,
        says="given early",
    ),
    *_function(
        "taken-with",
        "O(<absorb>) ~20 T(<pairs>) ~12 <with> _2 S(<nutrient>)",
        "T(<pairs>) ~6 <with> _3 S(<nutrient>) ~6 O(<absorb>)",
        effect="absorption",
        veto=_KITCHEN,
        says="what helps to take up a nutrient",
    ),
    *_function(
        "needs",
        "O(<audience-baby>) _1 <negation> _1 T(<need>) _2 <have|fed|give-weak|give> _1 S(<food|ambiguous-nutrient>)",
        "O(<audience-baby>) _1 T(<no-need>) <have|fed|give-weak|give> _1 S(<food|ambiguous-nutrient>)",
        "<free> O(<audience-baby>) _1 T(<need>) _1 S(<food|ambiguous-nutrient>)",
        veto="culinary swap age age-unit story",
        says="what nobody needs",
    ),
    *_function(
        "bothers",
        "S(<food|nutrient|generic-food>) ~4 T(<bothers>) _2 O(<audience-baby>)",
        veto="nonfood culinary story",
        says="a food that upsets a child",
    ),
    *_function(
        "turns-the-skin",
        "S(<FOOD|nutrient>) ~6 T(<turns-colour|HARM>) _3 O(<body>) ~3 <skin-colour>",
        veto=_KITCHEN,
        says="turns the skin a colour",
    ),
    *_function(
        "is-needed",
        "S(<food|ambiguous-nutrient>) _2 <copula> _1 T(<NEED>) _6 O(<body|inner-body>)",
        veto=_KITCHEN,
        says="needed for a part of the body",
    ),
    *_quantity(
        "drops-a-day", "S(<drops>) ~4 O(<per-day>) ,? _4 T(<number> _1 <unit>)", says="how much of a supplement"
    ),
    *_quantity(
        "so-often",
        f"{_GIVE} ~6 S(<food>) _3 T(<number|how-often|times> <times>?) _1 O(<per-week|per-day>)",
        f"{_GIVE} ~6 T(<number>) _1 S(<food>) _1 O(<per-week|per-day>)",
        f"{_GIVE} ~6 T(<number> _1 <household|unit|generic-food>) _1 S(<food>) _2 O(<per-week|per-day>)",
        "<limit|avoid-weak> _1 S(<food>) _2 T(<number|how-often|per-portion>) ~3 O(<per-week|per-day>)",
        "S(<food>) _2 T(<number|how-often|times> _1 <times|household|generic-food>?) _1 O(<per-week|per-day>)"
        " <copula> _1 <limit>",
        "<bound> T(<number> _1 <household|generic-food>) _1 S(<food>) _2 O(<per-week|per-day>)",
        "^ S(<food>) [,:]{0,2} T(<number|how-often> <times>?) O(<per-week|per-day>) _1 <limit>",
        veto="story storing culinary",
        says="how often a food is to be eaten",
    ),
    *_quantity(
        "dose",
        "<dose|amount> _1 S(<food|nutrient>) _2 <copula> _3 T(<number> _1 <household|unit>)",
        "<dose> _2 <copula> ~5 T(<number> _1 <household|unit>) _3 S(<food|nutrient>)",
        needs="per-day per-week dose",
        veto="story storing culinary",
        says="how much of it is given",
    ),
    *_quantity(
        "so-much-at-an-age",
        "O(@AGE) [,(:]? _1 T(<number> _1 <small-unit>)",
        "O(<per-day>) [:(] _1 T(<number> _1 <unit>)",
        "<household|unit> _3 S(<food>) ~5 [,:(] _1 T(<number> _1 <small-unit>)",
        veto="storing nonfood",
        says="how much at an age",
    ),
    *_function(
        "better-since",
        "O(<EFFECT>) _2 T(<rises|gain-n> _1 <since|on-it>) ~5 S(<food|dish|generic-food>)",
        veto=_KITCHEN,
        says="better since it was eaten",
    ),
    *_function(
        "crowds-out",
        "S(<food|dish>) ~6 T(<crowds-out>) ~5 O(<generic-food|NUT>)",
        effect="satiety",
        veto=_KITCHEN,
        says="leaves no room for other food",
    ),
    *_function(
        "needs-rise",
        "S(<nutrient|energy>) _1 O(<need>) _2 T(<rises|gain-n>)",
        "O(<need>) _1 S(<nutrient|energy>) _1 T(<rises>)",
        effect="importance",
        says="how much of it is needed",
    ),
    *_function(
        "fed-so-eats-so",
        "S(<fed-so>) ~8 O(<eating-kind|turns-fat>)",
        "<give|introduce|fed|include> _2 S(<solids>) _3 <started-late> ~6 O(<eating-kind>)",
        veto="nonfood story",
        says="what comes of a way of feeding",
    ),
    *_safety(
        "out-altogether",
        "S(<never-yet|hazard-food|ambiguous-nutrient>) _1 <copula|keep-n> _1 T(<out-alone>)"
        " (?=[.,:!]|$|_1 <bound|for|age>)",
        effect="age",
        veto=_NO_ADVICE,
        says="a food ruled out",
    ),
    *_content(
        "nothing-but",
        "S(<sweet-thing>) _1 <copula> _1 O(<ambiguous-nutrient>)",
        "S(<sweet-thing|food|dish>) _1 <copula> _1 O(<all-sugar>)",
        level="high",
        veto="culinary",
        says="said to be nothing else",
    ),
    *_content(
        "is-in-there",
        "T(<there> <copula>) _3 O(<nutrient|ambiguous-nutrient>) <from> <pronoun> (?=[.,!]|$)",
        level="contains",
        veto=_KITCHEN,
        says="what is in it",
    ),
    *_content(
        "not-included",
        "O(<additive|contaminant>) _1 <copula> _1 T(<not-included>)",
        level="none",
        needs="FOOD generic-food eating",
        veto=_KITCHEN,
        says="said to hold none of it",
    ),
    *_allergen(
        "given-instead",
        "O(<allergy|allergy-weak> _1 <allergen-food|food>) ,? ~6 T(<give|fed|offer|child-can>) _2 S(<food|dish>)",
        level="free",
        needs="swap when-ill child-can",
        veto="label story",
        says="given to those with an allergy",
    ),
)
