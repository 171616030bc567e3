"""Rules for an age and a food in the other orders that English has for them: listed, answered, excepted, handed on.

They come after the rules of ``grammar_weaning``, which are surer. ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_safety = ways("safety-age")
_NO_ADVICE = "storing story nonfood"
_EATEN = "<EATABLE|solids|generic-food|milk-feed>"
_NAMED = "<EATABLE|milk-feed>"
_AT = "<at|bound|wait-until|when-ill|once>"
_CHILD = "(?:<audience-baby>|@AGE)"
_AND_UP = "<number>(?:_1<number>)?(?:,<age-unit>|,?<age-plus>)"
_CUT_UP = "<in-parts|small-pieces|cut-safe>"
_OLD = "<number>(?:_1<number>)?_?<age-old>"

AGES = (
    *_safety(
        "listed-age",
        f"^ _1 S({_NAMED}) _2 [:,(] _1 O({_AND_UP})",
        f"^ _1 O({_AND_UP}) [:,)] _1 S({_NAMED})",
        f"T(<when-to>) _1 S({_NAMED}) _1 [:,?] _3 O(@AGE)",
        effect="age",
        veto=_NO_ADVICE,
        says="an age to start from",
    ),
    *_safety(
        "to-a-child-of-an-age",
        f"T(<child-can|give|fed|forbid|avoid>) _2 S({_EATEN}) _2 O({_OLD})",
        f"O({_OLD}) _1 <audience-baby>? T(<child-can|forbid|avoid>) _2 S({_EATEN})",
        effect="age",
        veto=_NO_ADVICE,
        says="given at an age",
    ),
    *_safety(
        "moved-on-at-age",
        f"T(<give|moves-on>) _1 <audience-baby|pronoun> _2 S({_EATEN}) ~3 {_AT} _3 O(@AGE)",
        f"T(<fed|give|introduce|adding>) _1 S({_NAMED}) _1 <at|bound> _1 O(@AGE)",
        f"T(<moves-on>) _2 S({_NAMED}) ~3 {_AT} _3 O(@AGE)",
        f"<audience-baby|audience-adult> _2 T(<child-can|give>) _2 S({_EATEN}) ~5 {_AT} _3 O(@AGE)",
        f"<audience-baby|audience-adult> _1 T(<child-can>) _1 S(<pronoun>) _2 {_AT} _3 O(@AGE)",
        f"^ _1 T(<give|introduce|fed|include|adding>) _2 S({_EATEN}) ~4 {_AT} _3 O(@AGE)",
        f"O(@AGE) , _1 S({_NAMED}) _2 <copula> _2 T(<okay|fine>)",
        f"O(@AGE) ,? _1 S({_NAMED}) _1 T(<child-can>)",
        effect="age",
        veto=_NO_ADVICE,
        says="given at an age",
    ),
    *_safety(
        "but-for-that",
        f"T(<except>) _1 S({_NAMED}) ~4 O(@AGE)",
        f"O(@AGE) ~8 T(<except>) _1 S({_NAMED})",
        f"T(<except>) _1 S({_NAMED}) , _1 <audience-baby> _1 <child-can>",
        effect="age",
        veto=_NO_ADVICE,
        says="the one food kept back",
    ),
    *_safety(
        "asked-when",
        f"<question> T(<negation>) _1 O({_CHILD}) _3 <give-weak|fed> _1 S({_NAMED})",
        effect="age",
        veto="story",
        says="why babies may not eat it",
    ),
    *_safety(
        "left-out-at-age",
        f"O(@AGE) ,? ~2 T(<left-out|let-go>) _1 S({_NAMED})",
        f"T(<left-out|let-go>) _1 S({_NAMED}) ~6 O({_CHILD})",
        f"S({_NAMED}) _1 T(<left-out|let-go>) ~4 O({_CHILD})",
        effect="age",
        veto=_NO_ADVICE,
        says="a food kept from babies",
    ),
    *_safety(
        "it-at-an-age",
        "O(@AGE) _1 T(<forbid|avoid|child-can>) _1 <fed|give-weak>? S(<pronoun>)",
        f"S(<pronoun>) _1 <copula> _1 T(<out-alone|negation> <fine|okay>?) _3 O({_CHILD})",
        effect="age",
        veto=_NO_ADVICE,
        says="what was named, and an age",
    ),
    *_safety(
        "shaped-at-age",
        f"T(<cut-it>) _1 S({_EATEN}) ~5 <for> _2 O(@AGE)",
        f"O(@AGE) _1 ,? _2 S({_EATEN}) _1 <should> _2 T(<cut-it|made-safe|soft-enough>)",
        f"T(<cut-it>) _1 S(<pronoun>) _2 {_CUT_UP} _2 <for> _1 O(<audience-baby>)",
        f"T(<cut-it>) S(<sausage|hazard-food-weak>) ~3 {_CUT_UP} _2 <for> _1 O(<audience-baby>)",
        f"O(<audience-baby>) , _1 T(<cut-it>) _1 S(<round-food|hazard-food|sausage>) ~3 {_CUT_UP}",
        "<negation|forbid> _1 <give|fed> _1 S(<round-food|hazard-food|sausage>) T(<left-whole>) _2 O(<audience-baby>)",
        "S(<hazard-food|hazard-food-weak|round-food|sausage>) : _1 T(<cut-it|cut-safe|made-safe>) ~5 <for> _1"
        " O(<audience-baby>)",
        effect="choking",
        veto=_NO_ADVICE,
        says="how a food is made safe",
    ),
)
