"""Rules for what a food holds: nutrient content, quantity.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_content = ways("nutrient-content")
_quantity = ways("quantity")
_COOKING = "culinary"
_KITCHEN = "nonfood culinary"  # talk of cosmetics and exercise, or of how things set and taste

NUTRIENT_CONTENT = (
    *_content(
        "high-in", "(?<!<need>) T(<high>) _4 O(<NUT|additive>)", level="high", says="a phrase of plenty and a nutrient"
    ),
    *_content(
        "high-in",
        "T(<high>) (?:_1 <FOOD> ,?){1,4} _2 O(<NUT>)",
        "T(<prefix-high|suffix-high> ,? <also> ,? <in>) _3 O(<NUT>)",
        level="high",
        says="a phrase of plenty, foods and a nutrient",
    ),
    *_content("source-of", "T(<source>) _4 O(<NUT>)", level="source", says="'source of' and a nutrient"),
    *_content("low-in", "T(<low>) _4 O(<NUT>)", level="low", named=True, says="a phrase of little and a nutrient"),
    *_content("free-of", "T(<free>) _2 O(<NUT|additive>)", level="none", says="said to hold none of it"),
    *_content("free-of-list", "T(<free>) ~6 O(<additive>)", level="none", says="said to hold none of it"),
    *_content("sugar-free", "O(<NUT|additive>) T(<suffix-free>)", level="free", says="nutrient and 'free'"),
    *_content(
        "unsweetened",
        "O(<label-abroad>)",
        "^ O(<unsweetened>) (?:<food>? <dish>|<food>? _)? (?=[.,]|$|<with|for>)",
        "<copula> _2 O(<unsweetened>) (?=[.,?]|$)",
        level="none",
        says="said to have no sugar in it, in one word or in a label's words of another language",
    ),
    *_content(
        "contains",
        "T(<contain>) ~6 O(<nutrient|ambiguous-nutrient|energy|additive>)",
        level="contains",
        named=True,
        says="a verb of containing",
    ),
    *_content(
        "contains",
        "S(<FOOD|generic-food>) ~9 T(<contain>) ~6 O(<nutrient-weak>)",
        "^ ~3 S(<pronoun>) _4 T(<contain>) ~6 O(<nutrient-weak>)",
        level="contains",
        says="a verb of containing",
    ),
    *_content(
        "nutrients-it-contains",
        "O(<nutrient|nutrient-weak>) _1 S(<pronoun>) T(<contain>)",
        level="contains",
        says="what it contains",
    ),
    *_content(
        "iron-rich",
        "O(<NUTRIENT|energy>) T(<suffix-high>)",
        "O(<nutrient> (?:,?_?<vitamin-letter>){1,5}) T(<suffix-high>)",
        level="high",
        says="nutrient and 'rich'",
    ),
    *_content("high-fibre", "T(<prefix-high>) O(<NUT>)", level="high", says="'high' before a nutrient"),
    *_content("low-fat", "T(<prefix-low>) O(<NUT>) (?!<food>)", level="low", says="'low' before a nutrient"),
    *_content(
        "has",
        "S(<THING>) ~8 T(<have|may-hold>) _5 O(<NUTRIENT|energy|additive>)",
        level="contains",
        veto=_COOKING,
        says="a food has it",
    ),
    *_content(
        "hides",
        "S(<THING>) ~6 T(<HAVE|hide|may-hold>) _2 <amount> _1 O(<ambiguous-nutrient>)",
        "T(<hide>) _2 O(<nutrient>)",
        level="contains",
        says="a food hides it",
    ),
    *_content(
        "everything",
        "S(<FOOD|sweet-thing>) ~3 T(<HAVE>) _3 O(<everything> ~4 <NEED>)",
        level="contains",
        says="a food has everything needed",
    ),
    *_content(
        "into-the-diet",
        "T(<adding>) _4 O(<nutrient|nutrient-weak>) ~6 <into-diet>",
        level="contains",
        says="a nutrient brought into a diet",
    ),
    *_content(
        "is",
        "S(<THING>) _2 T(<copula>) (?!<far-richer>) _3 O(<NUTRIENT>) (?!<suffix-high>)",
        level="contains",
        says="a food is it",
    ),
    *_content(
        "is-fibrous",
        "S(<FOOD|pronoun>) _2 <copula> _3 O(<adjectival>)",
        level="contains",
        veto=_COOKING,
        says="an adjective of a nutrient",
    ),
    *_content(
        "meets-needs",
        "O(<need|need-weak|nutrient-weak>) ~3 T(<contain>) _2 S(<FOOD>)",
        level="contains",
        says="needs met by a food",
    ),
    *_content(
        "is-its-source",
        "S(<THING>) ~8 <copula|have|make> ~4 O(<NUTRIENT>) T(<source-noun>)",
        level="source",
        says="called a source of it",
    ),
    *_content(
        "are-sources",
        "O(<nutrient>) ~24 <copula> _2 T(<source-noun>) (?=[.,:!?]|$)",
        level="source",
        needs="food",
        veto=_KITCHEN,
        says="called a source, of what was named before",
    ),
    *_content(
        "its-content",
        "T(<thanks|caused-by>) _1 <owned> _2 O(<nutrient>) <content>",
        level="contains",
        veto=_KITCHEN,
        says="what its content does",
    ),
    *_content(
        "content-is-low",
        "O(<NUT>) _4 <copula> _2 T(<prefix-low|prefix-high>) (?!_1 <NUT|food>)",
        named=True,
        says="how high its content is",
    ),
    *_content(
        "needs-are-met",
        "O(<NUT>) _2 <need|content|per-day> _4 T(<contain>)",
        level="contains",
        says="a need that is met",
    ),
    *_content(
        "is-found-in",
        "^ _1 S(<pronoun>) <copula> _2 T(<found-in>) _2 O(<food|kingdom>)",
        level="contains",
        veto=_KITCHEN,
        says="which foods hold what was named before",
    ),
    *_content(
        "is-where",
        "S(<THING>) _2 <copula> _1 T(<where>) ~5 O(<nutrient>) (?!<food>)",
        level="contains",
        veto=_KITCHEN,
        says="where a nutrient comes from",
    ),
    *_content(
        "from",
        "O(<NUTRIENT>) _3 T(<from>) _4 S(<FOOD>)",
        level="contains",
        veto=_COOKING,
        loose=True,
        says="nutrient from a food",
    ),
    *_content(
        "amount-in",
        "<amount> _1 O(<ambiguous-nutrient>) _1 T(<from>) _4 S(<FOOD>)",
        level="contains",
        veto=_COOKING,
        says="an amount of it in a food",
    ),
    *_content(
        "for-it",
        "S(<food|dish>) [(]? <for> _1 O(<nutrient>) (?!_1 <food>)",
        level="contains",
        veto=_KITCHEN,
        says="a food for a nutrient",
    ),
    *_content(
        "asked-and-answered",
        "^ ~8 O(<nutrient>) _1 [?] ~4 S(<FOOD>)",
        "^ ~5 S(<FOOD>) [?] _2 O(<nutrient>) (?=[.,]|$)",
        level="contains",
        veto=_KITCHEN,
        says="a nutrient asked for, and a food in answer",
    ),
    *_content("is-made-of", "S(<FOOD>) : _3 O(<NUT>)", level="contains", loose=True, says="a food, a sign, a nutrient"),
    *_content(
        "both",
        "S(<FOOD>) ~9 O(<nutrient|energy>)",
        level="contains",
        veto=_KITCHEN,
        loose=True,
        says="food and nutrient together",
    ),
    *_content(
        "both",
        "O(<nutrient|energy>) ~9 S(<FOOD>)",
        level="contains",
        veto=_KITCHEN,
        loose=True,
        says="nutrient and food together",
    ),
    *_content(
        "meal-with",
        "S(<generic-food|FOOD>) T(<with>) ~3 O(<nutrient>)",
        level="contains",
        veto=_COOKING,
        loose=True,
        says="a meal with a nutrient",
    ),
    *_content(
        "enough-of",
        "T(<amount>) _3 O(<nutrient>)",
        level="contains",
        needs="have contain",
        named=True,
        loose=True,
        says="an amount of a nutrient",
    ),
    *_content(
        "is-source",
        "T(<copula>) (?!<adding>) _1 O(<ambiguous-nutrient>)",
        "T(<copula>) (?!_2 <have>) _3 O(<nutrient|energy|nutrient-weak>)",
        level="contains",
        named=True,
        veto=_KITCHEN,
        loose=True,
        says="it is it",
    ),
    *_content(
        "nutrients-and-food",
        "O(<nutrient-weak>) ~9 S(<FOOD>)",
        level="contains",
        needs="have contain lose-n keep-n source found-in",
        veto=_KITCHEN,
        loose=True,
        says="nutrients and food together",
    ),
    *_content(
        "food-and-nutrients",
        "S(<FOOD>) ~9 O(<nutrient-weak>)",
        level="contains",
        veto=_KITCHEN,
        loose=True,
        says="food and nutrients together",
    ),
    *_content(
        "it-and-nutrient",
        "^ _1 S(<pronoun>) (?!<copula|food|generic-food>) _6 O(<nutrient>)"
        " (?!<food|suffix-high|suffix-free|generic-food>)",
        level="contains",
        veto=_KITCHEN,
        loose=True,
        says="a pronoun and a nutrient together",
    ),
)

QUANTITY = (
    *_quantity("grams-of", "T(<number>) _1 <unit> _3 O(<nutrient|energy>)", says="an amount of a nutrient"),
    *_quantity(
        "grams-of-sugar",
        "T(<number>) _1 <unit> _2 O(<ambiguous-nutrient>)",
        needs="per-day per-portion contain more less copula need audience-baby age have",
        says="an amount",
    ),
    *_quantity(
        "sugar-in-spoons",
        "O(<ambiguous-nutrient>) ~6 T(<number> _1 <household>)",
        needs="per-day limit per-portion",
        veto="storing",
        says="household measures of sugar or salt",
    ),
    *_quantity(
        "spoons-of-sugar",
        "<have> _2 T(<number>) _1 <household> _1 O(<ambiguous-nutrient>) <in> <pronoun>",
        "<contain> T(<number>) _2 <audience-baby> O(<NUT>)",
        says="household measures of sugar, shares of a need",
    ),
    *_quantity("calories", "T(<number>) _2 O(<energy>)", says="a number of calories"),
    *_quantity(
        "protein-12-g",
        "O(<NUT>) ~8 T(<number>) _1 <unit>",
        needs="nutrient energy copula per-day content contain",
        says="nutrient, number, unit",
    ),
    *_quantity(
        "share-of-day",
        "T(<number>) ~8 <per-day> _4 O(<NUT>)",
        "T(<number>) ~4 O(<NUT>) ~3 <per-day>",
        "T(<number>) _2 O(<NUT>) _2 <audience-baby|the-child> <need>",
        "T(<times>) _1 O(<NUT>) ~6 <per-day>",
        "T(<times>) _1 O(<NUT>) _2 <audience-baby|the-child> <need>",
        says="a share of the day's need",
    ),
    *_quantity(
        "a-third-sugar",
        "S(<FOOD>) ~8 <copula> _3 T(<number>) _2 O(<NUT>)",
        "^ ~3 S(<pronoun>) <copula> _2 T(<number> <percent>?) O(<NUT>)",
        says="a share of a food",
    ),
    *_quantity(
        "is-so-much",
        "S(<FOOD>) ~2 <copula> _3 T(<number> _1 <unit>)",
        "S(<FOOD>) ~4 <contain|HAVE> _3 T(<number> _1 <unit>)",
        says="a share of a food",
    ),
    *_quantity(
        "percent-of-it", "T(<number> <percent>) _2 S(<FOOD>) _1 <copula> _1 O(<food|NUT>)", says="a share of a food"
    ),
    *_quantity(
        "limit-a-day",
        "T((?:<number>_1)?<unit|household>) ~5 O(<per-day>)",
        needs="limit nutrient ambiguous-nutrient AVOID need forbid should must-be",
        veto="storing",
        says="an amount a day",
    ),
    *_quantity("limit-a-day", "O(<per-day>) _2 <copula> _2 T(<number> _1 <unit>)", says="an amount a day"),
    *_quantity(
        "spoons-of-sugar",
        "<contain|have|copula|per-portion> ~3 T(<number>) _1 <household> _2 O(<ambiguous-nutrient>)",
        needs="contain per-portion per-day",
        says="household measures of sugar",
    ),
    *_quantity("hours-to-digest", "T(<number>) _1 <time-unit> _3 O(<digest>)", says="a time to digest"),
)
