"""Rules for allergens: free from, introduced, reacted to.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_allergen = ways("allergen")
_ADVICE = "storing story"  # neither storing food nor told stories

ALLERGEN = (
    *_allergen(
        "free-from",
        "O(<food|allergen-word|allergen-food>) T(<suffix-free>) (?!<staple>)",
        "T(<free-suffixed>) (?!<staple>)",
        level="free",
        says="allergen and 'free'",
    ),
    *_allergen(
        "free-from",
        "T(<free-from>) _3 O(<allergen-food|allergen-word>)",
        "T(<free-from|free>) ~4 O(<allergy>)",
        level="free",
        says="said to be free from it",
    ),
    *_allergen(
        "free-from",
        "<okay|fine|goodfor> ~4 T(<avoid|free>) _3 O(<allergen-food|allergen-word>)",
        level="free",
        says="for those who avoid it",
    ),
    *_allergen(
        "free-from",
        "T(<fine|okay|goodfor>) ~5 O(<food-allergy>)",
        level="free",
        says="for those with an allergy",
    ),
    *_allergen(
        "food-allergy",
        "O(<food-allergy>)",
        needs="copula HARM BENEFIT more less hedge FOOD",
        veto="swap diagnosis refer",
        says="an allergy to a food",
    ),
    *_allergen(
        "introduce-allergen",
        "T(<introduce>) ~5 O(<allergen-word|allergy|allergy-weak>)",
        "O(<allergen-word|allergy>) ~4 T(<introduce>)",
        effect="allergen-introduction",
        needs="audience-baby allergy allergy-weak food-allergy reaction age age-unit solids first into-diet forbid",
        says="introducing an allergen",
    ),
    *_allergen(
        "wait-between-foods",
        "T(<wait|give|give-weak|introduce|avoid> ~3 <number> ~3 <watch>) ~4 O(<new-food>)",
        effect="allergen-introduction",
        veto=_ADVICE,
        says="days between new foods",
    ),
    *_allergen(
        "wait-between-foods",
        "O(<new-food>) ~6 T(<number> ~2 <watch>)",
        effect="allergen-introduction",
        needs="introduce give give-weak wait have",
        veto=_ADVICE,
        says="days between new foods",
    ),
    *_allergen(
        "first-allergen",
        "T(<first>) _1 O(<allergen-food>)",
        effect="allergen-introduction",
        says="introducing an allergen",
    ),
    *_allergen(
        "start-allergens",
        "T(<give|avoid|forbid|wait>) ~8 O(<allergy>)",
        effect="allergen-introduction",
        says="when to give an allergen",
    ),
    *_allergen(
        "watch-reactions",
        "T(<watch>) ~8 O(<reaction>)",
        effect="allergen-introduction",
        needs="FOOD introduce give solids generic-food number",
        veto=_ADVICE,
        says="watching for reactions",
    ),
    *_allergen(
        "watch-reactions",
        "O(<reaction|allergy>) ~8 T(<watch>)",
        effect="allergen-introduction",
        veto=_ADVICE,
        says="watching for reactions",
    ),
    *_allergen(
        "allergy",
        "S(<food|dish|nutrient>) ~14 O(<allergy|allergy-weak|reaction>)",
        veto="swap story",
        loose=True,
        says="food and allergy together",
    ),
    *_allergen(
        "allergy",
        "O(<allergy|allergy-weak>) ~14 S(<food|dish|nutrient>)",
        veto="swap",
        loose=True,
        says="allergy and food together",
    ),
    *_allergen(
        "reacts-to",
        "O(<reaction>) _3 S(<allergen-word|allergen-food>)",
        "<audience-baby> O(<reaction>) S(<food>)",
        veto="swap",
        loose=True,
        says="a reaction to a food",
    ),
    *_allergen(
        "allergy",
        "T(<give|BENEFIT|HARM>) ~5 O(<allergy|allergy-weak>)",
        veto="swap",
        named=True,
        says="causing or avoiding allergy",
    ),
    *_allergen(
        "watch-reactions",
        "T(<spot>) ~6 O(<reaction|allergy|allergy-weak|food-allergy>)",
        effect="allergen-introduction",
        needs="FOOD introduce pronoun solids give",
        veto="refer",
        says="finding out about reactions",
    ),
    *_allergen(
        "watch-reactions",
        "T(<look-for>) _3 O(<allergy|allergy-weak|reaction>)",
        effect="allergen-introduction",
        veto=f"{_ADVICE} refer label",
        says="watching for reactions",
    ),
    *_allergen("tolerance", "O(<effect>) ~6 T(<reaction>)", says="learning to tolerate"),
    *_allergen(
        "contains-gluten",
        "T(<HAVE|high|source>) (?!_2 <free>) _3 O(<gluten>)",
        named=True,
        veto="culinary",
        says="what it holds",
    ),
    *_allergen("traces", "T(<traces>) _2 O(<allergen-word>)", says="what it may hold"),
    *_allergen(
        "listed-allergen",
        "S(<FOOD|pronoun>) ~4 <copula> ~4 O(<common-allergen>)",
        "T(<free|negation>) ~5 O(<common-allergen>)",
        says="called an allergen",
    ),
    *_allergen(
        "free-of-several",
        "T(<free>) O(<allergen-word> [,_]? <free> <allergen-word>)",
        level="free",
        says="free of allergens",
    ),
    *_allergen(
        "introduce-allergen",
        "T(<introduce|give>) _4 O(<allergen-thing>)",
        "O(<allergen-thing>) _3 T(<introduce|give>)",
        "<audience-baby> _2 T(<introduce>) _3 S(<allergen-food>)",
        "<audience-baby> _2 T(<enjoy>) _3 S(<allergen-food>) ~6 <bound>",
        "T(<when-ask>) _2 O(<allergy>)",
        "<allergy> ~3 T(<BENEFIT>) _3 O(<allergy|allergy-weak|food-allergy>)",
        "T(<introduce>) _3 S(<allergen-food>) ~4 <bound> _3 O(@AGE|<number>)",
        "^ _2 T(<introduce|give>) _1 O(<allergen-word>) _2 <early>",
        effect="allergen-introduction",
        veto="story",
        says="giving an allergen for the first time",
    ),
)
