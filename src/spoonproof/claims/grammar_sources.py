"""Rules for where a nutrient is got from: lists of sources, foods that hold it, diets that meet a need.

They come before the rules of ``grammar_content``, which take the nearest food for what holds it. ``grammar.py`` says
how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_compares = ways("comparative")
_content = ways("nutrient-content")
_KITCHEN = "nonfood culinary"  # talk of cosmetics and exercise, or of how things set and taste

SOURCES = (
    *_compares(
        "about-as-much",
        "S(<FOOD>) ~4 T(<about-as-much>) _2 O(<NUT>) ~3 <FOOD>",
        veto=_KITCHEN,
        says="as much of it as another",
    ),
    *_compares(
        "less-than-in",
        "O(<NUT>) ~4 <from|in> _2 S(<FOOD>) ,? _1 <pronoun> <copula> _2 T(<more|less|limit>) <than>? _1 <from|in>",
        veto=_KITCHEN,
        says="more of it in one than in another",
    ),
    *_content(
        "good-sources",
        "T(<source>) _1 O(<NUT>) (?:<copula>|:) _2 S(<food>)",
        "^ _2 T(<good-sources>) _1 (?:<contain>|<copula>|:) _3 S(<food>)",
        "^ T(<sources-are>) _3 S(<food>)",
        level="source",
        veto=_KITCHEN,
        says="foods called sources",
    ),
    *_content(
        "called-sources",
        "S(<food>) ~3 <copula> _3 T(<good-sources>) (?=[.,!:]|$)",
        level="source",
        veto=_KITCHEN,
        says="foods called sources",
    ),
    *_content(
        "foods-with",
        "<generic-food> _1 T(<with|contain|have|source|high>) _2 O(<nutrient>)"
        " _1 (?:<contain>|<copula>|:) :? _3 S(<food>)",
        level="contains",
        veto=_KITCHEN,
        says="foods listed for it",
    ),
    *_content(
        "got-from",
        "T(<got>) _3 O(<NUTRIENT>) _2 <from> _2 S(<food|pronoun>)",
        level="contains",
        veto=_KITCHEN,
        says="what it is got from",
    ),
    *_content(
        "got-from",
        "T(<find-it-in>) _1 S(<food>) [,_]? _1 <food>",
        level="contains",
        veto="nonfood culinary storing story",
        says="what it is got from",
    ),
    *_content(
        "for-what-is-in-it",
        "S(<FOOD>) _3 T(<caused-by|because>) _1 <prefix-high|adding|owned|amount> _2 O(<NUT|additive>)",
        level="contains",
        veto=_KITCHEN,
        says="minded for what is in it",
    ),
    *_content(
        "meets-needs",
        "S(<FOOD|generic-food|diet>) ~6 T(<meets>) _5 O(<their-needs>)",
        "S(<FOOD>) ~2 T(<meets|holds>) _3 O(<daily-amount>)",
        level="contains",
        veto="nonfood culinary nutrient",
        says="needs met by a food",
    ),
)
