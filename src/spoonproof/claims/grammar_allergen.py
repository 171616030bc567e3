"""Rules for allergens: free from, introduced, reacted to.

From the surest pattern to the loosest; ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import Rule

ALLERGEN = (
    Rule(
        "free-from",
        "allergen",
        "O(<food|allergen-word|allergen-food>) T(<suffix-free>) (?!<staple>)",
        "free",
        says="allergen and 'free'",
    ),
    Rule("free-from", "allergen", "T(<free-suffixed>) (?!<staple>)", "free", says="allergen and 'free'"),
    Rule(
        "free-from",
        "allergen",
        "T(<free-from>) _3 O(<allergen-food|allergen-word>)",
        "free",
        says="said to be free from it",
    ),
    Rule(
        "free-from",
        "allergen",
        "<okay|fine|goodfor> ~4 T(<avoid|free>) _3 O(<allergen-food|allergen-word>)",
        "free",
        says="for those who avoid it",
    ),
    Rule("free-from", "allergen", "T(<free-from|free>) ~4 O(<allergy>)", "free", says="said to be free from it"),
    Rule(
        "food-allergy",
        "allergen",
        "O(<food-allergy>)",
        veto=("swap", "diagnosis"),
        needs=("copula", "HARM", "BENEFIT", "more", "less", "hedge", "FOOD"),
        says="an allergy to a food",
    ),
    Rule(
        "introduce-allergen",
        "allergen",
        effect="allergen-introduction",
        pattern="T(<introduce>) ~5 O(<allergen-word|allergy|allergy-weak>)",
        says="introducing an allergen",
    ),
    Rule(
        "introduce-allergen",
        "allergen",
        effect="allergen-introduction",
        pattern="O(<allergen-word|allergy>) ~4 T(<introduce>)",
        says="introducing an allergen",
    ),
    Rule(
        "wait-between-foods",
        "allergen",
        effect="allergen-introduction",
        pattern="T(<wait|give|give-weak|introduce|avoid> ~3 <number> ~3 <watch>) ~4 O(<new-food>)",
        veto=("storing", "story"),
        says="days between new foods",
    ),
    Rule(
        "wait-between-foods",
        "allergen",
        effect="allergen-introduction",
        pattern="O(<new-food>) ~6 T(<number> ~2 <watch>)",
        needs=("introduce", "give", "give-weak", "wait", "have"),
        veto=("storing", "story"),
        says="days between new foods",
    ),
    Rule(
        "first-allergen",
        "allergen",
        effect="allergen-introduction",
        pattern="T(<first>) _1 O(<allergen-food>)",
        says="introducing an allergen",
    ),
    Rule(
        "start-allergens",
        "allergen",
        effect="allergen-introduction",
        pattern="T(<give|avoid|forbid|wait>) ~8 O(<allergy>)",
        says="when to give an allergen",
    ),
    Rule(
        "watch-reactions",
        "allergen",
        effect="allergen-introduction",
        pattern="T(<watch>) ~8 O(<reaction>)",
        needs=("FOOD", "introduce", "give", "solids", "generic-food", "number"),
        veto=("storing", "story"),
        says="watching for reactions",
    ),
    Rule(
        "watch-reactions",
        "allergen",
        effect="allergen-introduction",
        pattern="O(<reaction|allergy>) ~8 T(<watch>)",
        veto=("storing", "story"),
        says="watching for reactions",
    ),
    Rule(
        "allergy",
        "allergen",
        "S(<food|dish|nutrient>) ~14 O(<allergy|allergy-weak|reaction>)",
        loose=True,
        veto=("swap", "story"),
        says="food and allergy together",
    ),
    Rule(
        "allergy",
        "allergen",
        "O(<allergy|allergy-weak>) ~14 S(<food|dish|nutrient>)",
        loose=True,
        veto=("swap",),
        says="allergy and food together",
    ),
    Rule(
        "allergy",
        "allergen",
        "T(<give|BENEFIT|HARM>) ~5 O(<allergy|allergy-weak>)",
        named=True,
        veto=("swap",),
        says="causing or avoiding allergy",
    ),
    Rule(
        "watch-reactions",
        "allergen",
        effect="allergen-introduction",
        pattern="T(<spot>) ~6 O(<reaction|allergy|allergy-weak|food-allergy>)",
        needs=("FOOD", "introduce", "pronoun", "solids", "give"),
        says="finding out about reactions",
    ),
    Rule("tolerance", "allergen", "O(<effect>) ~6 T(<reaction>)", says="learning to tolerate"),
)
