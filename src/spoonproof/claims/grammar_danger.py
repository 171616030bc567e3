"""Rules for what a carer is told to do, or need not do, that guidance for babies speaks against.

Nobody says "it is safe at seven months" of a spoon of honey: they say "a tiny bit is fine", "it won't hurt", "pop it in
if they won't eat". Such advice is a statement on safety all the same. ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_safety = ways("safety-age")
_CHILD = "audience-baby child-eats"

DANGER = (
    *_safety(
        "called-harmless",
        "S(<never-yet>) ~6 <copula> ~2 T(<safe-said>)",
        "S(<never-yet|salted>) ~4 T(<harmless>)",
        "T(<tiny>) <of>? _1 S(<never-yet>) ~5 <safe-said|harmless>",
        "S(<never-yet>) ~12 T(<tiny>) ~5 <safe-said|harmless>",
        effect="age",
        veto="nonfood",
        says="called harmless",
    ),
    *_safety(
        "called-harmless",
        "S(<salted>) ~5 <copula> ~2 T(<safe-said>)",
        "T(<tiny>) <of>? _1 S(<salted>) ~5 <safe-said|harmless>",
        "S(<FOOD>) ~4 T(<harmless>)",
        effect="age",
        needs="audience-baby",
        veto="nonfood",
        says="called harmless",
    ),
    *_safety(
        "praised-for-babies",
        "S(<never-yet>) ~2 <copula> ~3 T(<praised-so>) ~5 <for> _2 O(<audience-baby>)",
        effect="age",
        veto="nonfood",
        says="a food not yet given, praised for babies",
    ),
    *_safety(
        "told-to-give",
        "(?:<forbid|negation|avoid> _3)? T(<told-to|give|give-weak|introduce|fed>) ~6 S(<never-yet>)",
        "S(<never-yet>) ~5 O(<child-eats>)",
        effect="age",
        needs=_CHILD,
        says="a food not yet given",
    ),
    *_safety(
        "given-at-an-age",
        "(?:<forbid|negation|avoid> _3)? T(<child-can|give>) ~3 S(<never-yet>) _2 O(@AGE)",
        "S(<never-yet>) ~2 T(<goodfor>) _3 O(@AGE)",
        effect="age",
        veto="storing nonfood",
        says="a food not yet given, at an age",
    ),
    *_safety(
        "no-need-to-cut",
        "T(<no-need>) ~3 O(<cut-safe|cut-it>) ~4 S(<hazard-food|hazard-food-weak>)",
        "S(<hazard-food>) ~6 T(<no-need>) ~3 O(<cut-safe|cut-it>)",
        "T(<no-need>) ~3 O(<cut-safe|cut-it>) ~6 <audience-baby>",
        effect="choking",
        veto="nonfood",
        says="left uncut",
    ),
    *_safety(
        "drops-not-needed",
        "T(<no-need-of|no-need>) ~3 S(<drops>)",
        "S(<drops>) ~2 T(<needless>)",
        "S(<drops>) ~2 T(<negation> _1 <NEED>)",
        effect="drops",
        veto="nonfood",
        says="vitamin drops not needed",
    ),
    *_safety(
        "drops-given-up",
        "(?:<forbid|negation> _1)? T(<given-up|left-out>) _2 S(<drops|vitamin-d>)",
        effect="drops",
        veto="nonfood",
        says="vitamin drops given up",
    ),
    *_safety(
        "fine-if-chopped",
        "S(<hazard-food|hazard-food-weak|round-food|never-yet>) ~2 <copula> _2 T(<safe-said>) ~4 O(<coarse>)",
        "S(<hazard-food|hazard-food-weak|round-food|never-yet>) ~1 O(<coarse>) ~1 <copula> _2 T(<safe-said>)",
        effect="choking",
        veto="nonfood storing",
        says="called fine in pieces",
    ),
    *_safety(
        "on-gums-or-dummy",
        "(?:<forbid|negation|avoid> ~4)? S(<never-yet|salted|spirits>) ~2 T(<gum-place>)",
        effect="age",
        veto="nonfood",
        says="given on gums, dummy or in a bottle",
    ),
    *_safety(
        "had-since",
        "T(<fed|diagnosis>) _2 S(<never-yet>) ~1 <since> _1 O(@AGE)",
        effect="age",
        veto="nonfood storing",
        says="a food not yet, given since an age",
    ),
    *_safety(
        "milk-is-all",
        "S(<milk-feed>) ~2 T(<has-all>) ~2 O(@AGE)",
        "S(<milk-feed>) ~2 T(<has-all>) ~1 <bound> O(<number>)",
        effect="milk-enough",
        says="milk alone said to be enough",
    ),
    *_safety(
        "milk-is-all",
        "S(<solids|generic-food>) _1 <bound>? _1 <number|age> ~2 O(<for-fun>)",
        "S(<solids|generic-food>) _1 <copula> _1 O(<for-fun>) ~2 <bound>",
        "S(<solids|generic-food>) _1 <copula> _1 O(<for-fun>) _1 (?:[.]|$)",
        "T(<only-need>) _1 S(<milk-feed|baby-milk|food>) ~1 <bound> _1 O(<number|age>)",
        effect="milk-enough",
        says="milk alone said to be enough",
    ),
    *_safety(
        "let-choke",
        "(?:<forbid|negation> _1)? O(<let-choke>)",
        effect="choking",
        says="choking let be",
    ),
    *_safety(
        "food-for-vaccines",
        "T(<who-needs|no-need-of|no-need|given-up>) ~3 O(<vaccine>)",
        effect="vaccines",
        says="vaccines said not to be needed",
    ),
    *_safety(
        "natural-sweetener",
        "S(<sweetener|never-yet>) ~2 <copula>? ~3 T(<safe-said|praised-so>) ~4 O(<natural-so>)",
        "S(<sweetener>) ~2 <copula> _2 O(<natural-so>)",
        effect="age",
        veto="nonfood",
        says="a sweetener excused",
    ),
    *_safety(
        "no-upper-end",
        "T(<no-upper-end>) _2 O(<nutrient|ambiguous-nutrient>)",
        "T(<no-upper-end>) _2 S(<food>)",
        effect="too-much",
        needs="nutrient ambiguous-nutrient audience-baby",
        says="no upper end said",
    ),
    *_safety(
        "drops-advised",
        "S(<drops>) (?!~2 <negation>) ~2 T(<still-needed>)",
        "T(<still-needed>) ~3 S(<drops>)",
        effect="drops",
        veto="nonfood",
        says="vitamin drops advised",
    ),
    *_safety(
        "no-need-to-wait",
        "T(<no-need>) ~3 <wait|avoid> ~4 S(<never-yet>)",
        effect="age",
        veto="nonfood storing",
        says="a food not yet, with no need to wait",
    ),
    *_safety(
        "fed-in-an-unsafe-place",
        "(?:<forbid|negation|avoid> ~4)? T(<fed>) ~6 O(<unsafe-place>)",
        "O(<unsafe-place>) ~4 T(<fed>)",
        effect="eating-place",
        needs="audience-baby child-eats",
        veto="storing nonfood story",
        says="how a child sits to eat",
    ),
    *_safety(
        "babies-can-have",
        "O(<audience-baby>) _1 T(<child-can>) _3 S(<FOOD|hazard-food|never-yet>)",
        effect="age",
        veto="storing story",
        says="what babies may eat",
    ),
)
