"""Rules for when a food may be given and what makes it safe to eat, said without a word of danger.

They come after the rules of ``grammar_safety``, which are surer. ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_quantity = ways("quantity")
_safety = ways("safety-age")
_NO_ADVICE = "storing story nonfood"
_EATEN = "<FOOD|ambiguous-nutrient|hazard-food|solids|generic-food|pronoun>"
_NAMED = "<FOOD|ambiguous-nutrient|hazard-food|hazard-food-weak>"

_SOMEONE = "<audience-adult|audience-baby|pronoun>"
_GIVE = "<give|introduce|fed|include>"

WEANING = (
    *_safety(
        "give-at-age",
        f"^ _1 T({_GIVE}) _2 S({_EATEN}) ~4 <at|bound|wait-until> _1 O(@AGE)",
        f"<audience-baby|audience-adult|pronoun> _1 T(<child-can>) ~3 S({_EATEN}) ~3 <at|bound> _1 O(@AGE)",
        "^ _2 O(@AGE) ,? ~4 <audience-baby> _1 T(<child-can>)",
        f"T(<negation|forbid|avoid>) _2 <fed|give> _1 S({_EATEN}) _2 <bound|at>? _1 O(@AGE)",
        f"(?:^|,) <bound|at> _1 O(@AGE) ,? _2 T(<child-can|give|fed>) _2 S({_NAMED})",
        "T(<give|solids>) _3 O(@AGE) ~4 <forbid|avoid|this-age>",
        "T(<give|solids>) _3 O(<number> _1 <week>) ~4 <forbid|avoid|this-age>",
        effect="age",
        veto=_NO_ADVICE,
        says="given at an age",
    ),
    *_safety(
        "answered-with-an-age",
        "^ <yes-no> ,? _1 T(<bound|at>) _1 O(@AGE) _1 (?=[.,:!]|$)",
        effect="age",
        veto=_NO_ADVICE,
        says="an age in answer",
    ),
    *_safety(
        "start-at-age",
        "T(<wait-until>) _2 O(@AGE)",
        effect="age",
        needs="solids give authority said-by advice",
        veto=_NO_ADVICE,
        says="an age to start from",
    ),
    *_safety(
        "start-at-age",
        f"{_SOMEONE} _1 T(<child-can|forbid>) _1 <give>? _2 <at|bound> _1 O(@AGE)",
        f"{_SOMEONE} _1 T(<child-can|forbid>) _1 <give>? _2 <at|bound> _1 O(<number> _1 <week>)",
        effect="age",
        veto=_NO_ADVICE,
        says="an age to start from",
    ),
    *_safety(
        "start-at-age",
        "O(@AGE) _1 <copula> _2 T(<right-age>)",
        "T(<right-age>) ~5 <copula> ~3 O(@AGE)",
        effect="age",
        veto=_NO_ADVICE,
        says="an age to start from",
    ),
    *_safety(
        "until-older",
        f"S({_EATEN}) ~6 T(<wait-until|until-is|bound>) _3 O(<older>)",
        f"T(<avoid|forbid|wait>) ~4 S({_EATEN}) ~3 <wait-until|until-is|bound> _3 O(<older>)",
        effect="age",
        veto=_NO_ADVICE,
        says="until the child is older",
    ),
    *_safety(
        "not-at-this-age",
        f"T(<forbid|avoid|negation>) ~4 S({_NAMED}) ~3 O(<this-age>)",
        f"S({_NAMED}) _2 T(<forbid|avoid>) ~4 O(<this-age>)",
        f"O(<this-age>) _1 <for> _1 S({_NAMED})",
        f"S({_NAMED}) ~4 <copula> _1 O(<this-age>)",
        effect="age",
        veto=_NO_ADVICE,
        says="kept from a child of this age",
    ),
    *_safety(
        "not-before-one",
        f"T(<negation|free|avoid|forbid>) _3 S({_NAMED}) _2 O(<bound> <number>) (?=[.,:?)]|$)",
        f"S({_NAMED}) _2 <copula> _1 T(<negation|free>) _2 O(<bound> <number>)",
        "T(<avoid|forbid|fine|okay|child-can>) _2 O(<bound> _2 <audience-baby> _1 <copula> <number>)",
        "T(<avoid|forbid|fine|okay|child-can>) _2 O(<until-is> <number>)",
        effect="age",
        veto=_NO_ADVICE,
        says="an age without its unit",
    ),
    *_safety(
        "not-in-baby-food",
        "T(<avoid|forbid|limit>) _2 S(<salted|ambiguous-nutrient>) ~4 O(<baby-food>)",
        "T(<free>) _1 S(<salted|ambiguous-nutrient>) ~4 O(<baby-food>)",
        effect="age",
        veto=_NO_ADVICE,
        says="kept out of a baby's food",
    ),
    *_quantity(
        "a-day-for-a-child",
        "<audience-baby> ~3 <need|child-can|should> _3 T(<number>) _1 <household> ~8 O(<FOOD>) _2 <per-day>",
        "<audience-baby> ~3 <need|child-can|should> _3 O(<FOOD>) ~4 T(<number>) _1 <household> _2 <per-day>",
        says="so much a day",
    ),
    *_safety(
        "in-weaning",
        f"S({_EATEN}) ~4 T(<fine|okay|child-can>) ~4 O(<weaning-time>)",
        "^ <at|from|bound> _1 O(<weaning-time>) ,? _2 T(<give|introduce|fed|adding>)",
        effect="age",
        veto=_NO_ADVICE,
        says="a stage of weaning",
    ),
    *_safety(
        "milk-until",
        "S(<milk-feed|milk-drink|FOOD>) ~6 T(<main-food>) ~8 O(@AGE)",
        "S(<milk-feed|milk-drink|FOOD>) ~6 T(<main-food>) ~8 O(<bound> <number>)",
        "S(<milk-feed>) ~3 <for|at> _2 O(@AGE) _2 T(<main-food>)",
        "O(@AGE) ~6 T(<main-food>)",
        "^ _1 <bound|for>? _2 O(@AGE) ,? _1 <audience-baby> _3 <enjoy|include|give|fed> _1 T(<baby-milk>)",
        "T(<main-food>) ~6 O(@AGE)",
        effect="age",
        veto=_NO_ADVICE,
        says="milk until an age",
    ),
    *_safety(
        "asked-when",
        f"T(<when-ask>) _8 S({_NAMED})",
        f"^ _1 ,? T(<can-ask>) _1 O(<audience-baby>) _1 <enjoy|include|fed> _1 S({_NAMED})",
        "T(<when-ask>) _5 S(<solids|wait>)",
        "T(<what-not>) _2 O(<audience-baby|pregnant>) _2 (?:<avoid|forbid>|<negation> _1 <give-weak>)",
        f"^ T(<can-ask>) _2 <give|give-weak|have|fed> _1 S({_NAMED}) _2 O(<audience-baby>)",
        "^ T(<can-ask>) _2 <give|give-weak|have|fed> _1 S(<salted>) _3 <solids|generic-food|food>",
        effect="age",
        veto="story",
        says="when babies may eat it",
    ),
    *_safety(
        "bones-out",
        "T(<must-do|take-out> _1 <take-out>?) ~3 O(<bones>)",
        effect="choking",
        needs="audience-baby",
        veto=_NO_ADVICE,
        says="stones and bones taken out",
    ),
    *_safety(
        "fed-in-an-unsafe-place",
        "T(<forbid|negation>) ~7 <eating|fed|give-weak> ~2 O(<unsafe-place>)",
        "T(<seat>) ~3 <for|at> ~3 <eating>",
        effect="choking-supervision",
        needs="audience-baby",
        veto=_NO_ADVICE,
        says="how a child sits to eat",
    ),
    *_safety(
        "hazard-food",
        "O(<hazard-food|hazard-food-weak>) _2 T(<cut-safe|made-safe>)",
        "T(<forbid|avoid>) _2 <audience-baby> _2 O(<shape> _1 <shape>)",
        effect="choking",
        veto=_NO_ADVICE,
        says="a shape that chokes",
    ),
    *_safety(
        "soft-enough",
        "S(<FOOD|generic-food|pronoun>) ~3 T(<soft-enough>) ~3 O(<audience-baby|gums>)",
        "T(<soft-enough>) ~3 O(<audience-baby|gums>)",
        effect="choking",
        says="soft enough to be eaten",
    ),
    *_safety(
        "limit-in-pregnancy",
        f"S({_NAMED}) ~6 T(<forbid|avoid|limit|okay|child-can|harmful|negation>) ~6 O(<pregnant>)",
        f"T(<child-can|limit|okay|fine>) ~4 S({_NAMED}) ~3 O(<pregnant>)",
        f"O(<pregnant>) ,? ~4 T(<forbid|avoid|limit|child-can|left-out|made-safe>) ~4 S({_NAMED})",
        f"O(<pregnant>) ,? ~4 S({_NAMED}) ~3 T(<forbid|avoid|limit|child-can|left-out|made-safe>)",
        effect="harm",
        veto="nonfood",
        says="a food and pregnancy",
    ),
    *_safety(
        "not-with-medicine",
        "T(<avoid|forbid|negation>) _3 S(<FOOD|nutrient>) _2 <with> _2 O(<drug>)",
        effect="drug-interaction",
        says="a food and a medicine",
    ),
    *_safety(
        "not-to-be-eaten",
        "S(<FOOD>) _1 T(<forbid>) _1 O(<fed>)",
        effect="harm",
        veto=_NO_ADVICE,
        says="a food not to be eaten",
    ),
    *_safety(
        "escapes-into-food",
        "T(<escapes-into>) _3 O(<contaminant>)",
        "O(<contaminant>) ~5 T(<escapes-into>) _3 <generic-food|FOOD>",
        veto="nonfood",
        says="a contaminant gets into food",
    ),
    *_safety(
        "readiness",
        "O(<readiness-weak>) ~16 T(<ready|able>)",
        "O(<readiness-weak>) ~6 T(<wait|solids>)",
        "T(<wait|wait-until>) _3 <audience-baby> _2 O(<readiness-weak>)",
        effect="readiness-signs",
        needs="audience-baby pronoun solids",
        veto="story storing",
        says="readiness for solids",
    ),
    *_safety(
        "which-first",
        "S(<FOOD|generic-food>) _2 <should>? _1 T(<order>)",
        f"^ _1 T({_GIVE}) S(<FOOD>) <bound> O(<FOOD>) (?=[.,?]|$)",
        effect="age",
        needs="audience-baby give introduce nutrient fed",
        veto=_NO_ADVICE,
        says="which food comes first",
    ),
)
