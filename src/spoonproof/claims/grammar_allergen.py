"""Rules for allergens: free from, introduced, reacted to.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_allergen = ways("allergen")
_ADVICE = "storing story"  # neither storing food nor told stories
_WITHOUT = (
    "(?:<goes-without|food-allergy>|<copula|whoever|audience-baby> <off-it> _1 <ALLERGEN>"
    "|<ALLERGEN> <allergy|allergy-weak>|<allergy|allergy-weak> _2 <ALLERGEN>"
    "|<stays-off|avoid|forbid|going-without> _1 <ALLERGEN>|<negation> _1 <takes-it> _1 <ALLERGEN>"
    "|<free>? <ALLERGEN> <free>? <crowd>|<free-suffixed>)"
)
"""Who goes without an allergen: "coeliacs", "a milk allergy", "allergic to egg", "those who can't have wheat"."""
_TO = "(?:(?!<copula>) [^.?,]){0,5}?"  # "a friend of mine is vegan" is good for nobody
_GOES = (
    "for-whom crowd suits off-it stays-off takes-it"
    " goes-without food-allergy allergy allergy-weak allergen-word allergen-food free-suffixed"
)

ALLERGEN = (
    *_allergen(
        "free-from",
        "O(<ALLERGEN>) T(<suffix-free>) (?!<staple>)",
        "T(<free-suffixed>) (?!<staple|audience-baby|audience-adult>)",
        "T(<free-from>) _3 O(<ALLERGEN>)",
        "T(<free-from|free>) ~4 O(<allergy>)",
        "T(<free>) _1 O(<ALLERGEN>) ~5 <in|from|beside-it> _1 <pronoun|FOOD|anything>",
        "T(<negation> [_]{0,3}) O(<ALLERGEN>) ~5 <in|from|beside-it> _1 <pronoun|FOOD>",
        "T(<free|negation>) _1 O(<ALLERGEN>) ~2 <in-this> (?=[.,?]|<but|pronoun>|$)",
        "T(<free>) O(<allergen-word> [,_]? <free> <allergen-word>)",
        "<copula|make|holds> ~8 T(<free>) _1 O(<ALLERGEN>) (?=[.,?]|$)",
        "T(<free>) _1 O(<allergen-word>) ~3 <in-sight>",
        level="free",
        says="said to be free from it",
    ),
    *_allergen(
        "left-if-allergic",
        f"O({_WITHOUT}) ,? _1 T(<left-out|leave-it-out|avoid> <pronoun>?)",
        f"T(<left-out|leave-it-out|avoid> <pronoun>?) _1 <when-ill|swap> _6 O({_WITHOUT})",
        effect="food-allergy",
        needs=_GOES,
        veto="diagnosis refer",
        says="left by whoever is allergic to it",
    ),
    *_allergen(
        "not-for-them",
        f"S(<FOOD|pronoun>) _1 <copula> _2 T(<out-alone|AVOID|harmful|unfit>) ~6 O({_WITHOUT})",
        f"T(<negation>) ~4 <for|for-whom|swap> ~4 O({_WITHOUT})",
        "T(<forbid|unfit>) ~3 O(<goes-without|food-allergy>)",
        level="free",
        needs=_GOES,
        says="what those who go without cannot have",
    ),
    *_allergen(
        "for-the-free",
        f"T(<goodfor|suits>) {_TO} O({_WITHOUT})",
        f"T(<fine|okay|safe>) _1 <for|for-whom|when-ill|swap> ~7 O({_WITHOUT})",
        f"O({_WITHOUT}) ~6 T(<can-eat|child-can>) _4 S(<pronoun|FOOD|generic-food>)",
        f"S(<pronoun|FOOD|generic-food>) ~4 O({_WITHOUT}) _2 T(<can-eat|child-can>)",
        f"O({_WITHOUT}) (?!<FOOD|generic-food>) ~3 S(<pronoun|FOOD|generic-food>) _4 T(<suits|goodfor|fine|okay>)",
        "T(<for-whom>) _2 O(<stays-off> _1 <ALLERGEN>)",
        "T(<give|fed|offer|child-can>) _2 S(<pronoun|dish|food>) _2 <audience-baby|audience-adult> ~3"
        " O((?:<food-allergy>|<allergy-weak> <allergen-food>))",
        level="free",
        needs=_GOES,
        says="for those who go without",
    ),
    *_allergen(
        "holds-it",
        "S(<FOOD|pronoun>) ~4 T(<conceals|holds>) _2 O(<ALLERGEN>)",
        "^ _6 T(<holds>) :? _1 O(<ALLERGEN>)",
        "S(<FOOD>) _3 T(<have>) _1 O(<allergen-word>) ~6 <pronoun> (?:[.,]|$)",
        "S(<FOOD>) (?:<in> <pronoun>)? ,? <pronoun>? T(<copula>)"
        " (?!<allergy|allergy-weak|with|in|for>) _1 O(<allergen-word>) (?=[.,?:]|<for>|$)",
        "T(<made-beside>) _4 O(<ALLERGEN>)",
        "T(<made-at>) ~4 <handles> _3 O(<ALLERGEN>)",
        "T(<made-at>) ~3 O(<ALLERGEN>) _2 <handles>",
        "T(<hidden|traces|odds>) _2 O(<ALLERGEN>)",
        veto="culinary",
        says="what is in it or beside it",
    ),
    *_allergen(
        "holds-that-allergen",
        "O((?:<food-allergy>|<ALLERGEN> <allergy|allergy-weak>)) ~10 S(<FOOD>) ~4 T(<holds|contain|have>) <pronoun>"
        " (?=[.,?]|$)",
        "^ T(<heads-up>) ,? :? ~5 O(<ALLERGEN>) ~2 <in|from>",
        "O(<allergen-word>) T(<hides-in>) _1 S(<FOOD>)",
        f"O({_WITHOUT}) ,? _1 T(<let-go>) _1 S(<FOOD>)",
        veto="culinary story",
        says="what holds an allergen that was named",
    ),
    *_allergen(
        "allergy-itself",
        "O(<ALLERGY>) _5 T(<allergy-does>)",
        veto="the-child diagnosis",
        says="how an allergy goes, or is found",
    ),
    *_allergen(
        "left-out",
        "T(<keep|keep-n> _1) O(<ALLERGEN>) <out-of-it> _2 <pronoun|FOOD>",
        "T(<keep|make> _1 <pronoun|FOOD> _1) O(<free-suffixed>)",
        "S(<food|dish>) ~8 T(<does-for>) _2 O((?!<baby-milk>) <allergen-food>)",
        veto="culinary",
        level="free",
        says="left out, or another food in its place",
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
        effect="allergen-introduction",
        needs="audience-baby allergy allergy-weak food-allergy reaction age age-unit solids first into-diet forbid",
        says="introducing an allergen",
    ),
    *_allergen(
        "wait-between-foods",
        "T(<days-between>) _1 O(<new-food|generic-food|allergen-thing>)",
        "T(<wait> <number> <watch>) _3 O(<new-food|allergen-thing>)",
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
        "one-at-a-time",
        "T(<introduce>) _1 <new-food|allergen-food> _2 O(<order>)",
        "S(<allergen-word>) _2 T(<order>)",
        "T(<introduce|give|fed|offer|limit>) _3 O(<number>? _1 <allergen-thing|allergen-word> _1 <at-a-time>)",
        effect="allergen-introduction",
        veto="story culinary",
        says="new foods one by one",
    ),
    *_allergen(
        "one-at-a-time",
        "T(<introduce|give|fed|offer|is-introduced|limit>) _3 O(<number>? _1 <new-food|generic-food> _1 <at-a-time>)",
        "T(<introduced-slowly>) O(<new-food>)",
        "T(<introduce>) O(<new-food> <slowly>)",
        veto="story",
        says="new foods one by one",
    ),
    *_allergen(
        "start-allergens",
        "T(<give|avoid|forbid|wait>) ~6 O(<allergy>)",
        effect="allergen-introduction",
        says="when to give an allergen",
    ),
    *_allergen(
        "watch-reactions",
        "T(<watch>) ~8 O(<reaction>)",
        "T(<spot>) ~6 O(<reaction|allergy|allergy-weak|food-allergy>)",
        effect="allergic-reaction",
        needs="FOOD introduce give solids generic-food number pronoun",
        veto=f"{_ADVICE} refer",
        says="watching for reactions",
    ),
    *_allergen(
        "watch-reactions",
        "O(<reaction|allergy>) ~8 T(<watch>)",
        "T(<look-for>) _3 O(<allergy|allergy-weak|reaction|reaction-sign>)",
        effect="allergic-reaction",
        veto=f"{_ADVICE} refer label",
        says="watching for reactions",
    ),
    *_allergen(
        "allergy",
        "S(<food|dish|nutrient>) ~14 O(<allergy|allergy-weak|reaction>)",
        "O(<allergy|allergy-weak>) ~14 S(<food|dish|nutrient>)",
        veto="swap",
        loose=True,
        says="allergy and food together",
    ),
    *_allergen(
        "reacts-to",
        "O(<reaction|reacted>) _3 S(<allergen-food>)",
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
        "allergy",
        "<can-ask> ~4 T(<HARM>) _2 O(<reaction>)",
        veto="swap story diagnosis refer",
        says="food said to bring on an allergy",
    ),
    *_allergen(
        "cooked-out",
        "O(<allergen-gone>) ~5 S(<ALLERGEN>)",
        effect="allergen-cooked-out",
        says="an allergen said to be gone",
    ),
    *_allergen(
        "reaction-waved-off",
        "O(<reaction-sign|reaction>) ~12 T(<waved-off>)",
        "T(<no-worry|waved-off>) ~6 O(<reaction-sign|reaction>)",
        effect="allergic-reaction",
        needs="FOOD eating allergy generic-food",
        says="a reaction waved off",
    ),
    *_allergen(
        "reaction-signs",
        "O(<reaction-sign>) ~10 T(<seek-help>)",
        effect="allergic-reaction",
        needs="FOOD eating allergy generic-food pronoun",
        says="signs of an allergic reaction",
    ),
    *_allergen(
        "reaction-signs",
        "O(<symptoms|reaction|allergy|allergy-weak|food-allergy>) ~5 T(<quickly>) ~8 <eating|fed>",
        "O(<reaction-sign|symptoms|reaction|food-allergy>) ~8 T(<in-time>) _1 <number> _1 <time-unit>",
        "<reaction-sign> ~8 <ready|can-ask|hedge> ~3 O(<allergy|allergy-weak|reaction>)",
        "O(<reaction-sign>) ~7 T(<bound|quickly|from>) ~4 S(<ALLERGEN>)",
        "<comes-up> _2 O(<reaction-sign>) _2 T(<with>) _1 S(<ALLERGEN>)",
        "S(<food|additive>) ~3 T(<comes-up>) ~3 O(<reaction-sign>)",
        effect="allergic-reaction",
        veto="nonfood is-gone BENEFIT",
        says="signs of an allergic reaction",
    ),
    *_allergen(
        "reaction-signs",
        "S(<food|additive>) . ~11 O((?!<DISEASE>) <reaction-sign>)",
        effect="allergic-reaction",
        veto="is-gone BENEFIT",
        loose=True,
        says="a food and a sign of an allergic reaction together",
    ),
    *_allergen(
        "contains-gluten",
        "T(<HAVE|high|source>) (?!_2 <free>) _3 O(<gluten>)",
        named=True,
        veto="culinary",
        says="what it holds",
    ),
    *_allergen(
        "listed-allergen",
        "S(<FOOD|pronoun>) ~10 O(<common-allergen>)",
        "T(<free|negation|avoid>) ~5 O(<common-allergen>)",
        says="called an allergen",
    ),
    *_allergen(
        "outgrown",
        "T(<outgrown|lose-n>) _3 O(<food-allergy|allergy|allergy-weak>)",
        says="an allergy outgrown",
    ),
    *_allergen(
        "introduce-allergen",
        "T(<first>) _1 O(<allergen-food>)",
        "<audience-baby> _2 T(<enjoy>) _3 S(<allergen-food>) ~6 <bound>",
        "O(<allergen-thing>) ~10 T((?:<bound> _1)? @AGE)",
        "<allergy> ~3 T(<BENEFIT>) _3 O(<ALLERGY>)",
        "S(<allergen-food>) _3 T(<is-introduced>) _2 <bound|at|as> _2 O((?:@AGE|<solids>))",
        "^ _2 T(<introduce|give>) _1 O(<allergen-word>) _2 <early>",
        "S(<allergen-word>) _4 T(<should>) ~4 <diet> ~2 <bound|age>",
        "O(<allergen-word>) ~14 T(<is-introduced|given-to>) _1 <audience-baby>",
        "<audience-adult> _1 <can-ask|should> _2 T(<introduce>) _3 O(<allergen-food>)",
        "S(<allergen-word>) ~24 T(<in-early>)",
        "S(<allergen-word>) ~5 T(<keep>) _3 O(<per-week>)",
        effect="allergen-introduction",
        veto="story",
        says="giving an allergen for the first time",
    ),
    *_allergen(
        "odds-of-it",
        "T(<number> (?:<from|in> <number>|<percent>)) ~6 O(<ALLERGY|reaction>)",
        "T(<number> <audience-baby|out-of-it> _1 <from>? <number>) ~8 O(<food-allergy>)",
        veto="story",
        says="how likely an allergy is",
    ),
    *_allergen(
        "kept-up",
        "T(<keep|give|fed|offer>) _1 S(<pronoun|allergen-thing|allergen-food>) ~6 O(<per-week|per-day>)",
        effect="allergen-introduction",
        needs="allergen-thing allergy tolerance",
        says="an allergen given again and again",
    ),
    *_allergen(
        "gets-used",
        "T(<keep|BENEFIT|have|upward|develop>) _2 O(<tolerance>)",
        "T(<trains>) _2 O(<immune>)",
        effect="allergen-introduction",
        needs="allergen-thing allergen-food allergy generic-food pronoun",
        says="the body getting used to a food",
    ),
)
