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
    *_content(
        "good-sources",
        "^ _2 T(<good-sources>) _1 (?:<contain>|<copula>|:) _3 S(<food>)",
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
        "T(<got>) _3 O(<NUTRIENT>) _2 <from> _2 S(<food>)",
        "O(<NUTRIENT>) _2 T(<is-got>) _3 S(<food>)",
        level="contains",
        veto=_KITCHEN,
        says="what it is got from",
    ),
    *_content(
        "got-from",
        "^ O(<pronoun>) _1 T(<is-got>) _3 S(<food>)",
        level="contains",
        needs="nutrient nutrient-weak",
        veto=_KITCHEN,
        says="what it is got from",
    ),
    *_content(
        "meets-needs",
        "S(<FOOD|generic-food|diet>) ~3 T(<meets>) _5 O(<their-needs>)",
        level="contains",
        veto="nonfood culinary nutrient",
        says="needs met by a food",
    ),
)
