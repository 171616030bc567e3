"""All rules of the claim grammar, in the order in which kinds are looked for.

Kinds that say more come first: within one kind, the first rule to cover a place gives the claim.
"""

from __future__ import annotations

from spoonproof.claims.grammar import Rule
from spoonproof.claims.grammar_ages import AGES
from spoonproof.claims.grammar_allergen import ALLERGEN
from spoonproof.claims.grammar_benefit import GENERAL_BENEFIT
from spoonproof.claims.grammar_choking import CHOKING
from spoonproof.claims.grammar_comparing import COMPARATIVE
from spoonproof.claims.grammar_content import NUTRIENT_CONTENT, QUANTITY
from spoonproof.claims.grammar_danger import DANGER
from spoonproof.claims.grammar_effects import DISEASE, FUNCTION
from spoonproof.claims.grammar_habits import HABITS
from spoonproof.claims.grammar_introducing import INTRODUCING
from spoonproof.claims.grammar_outright import OUTRIGHT
from spoonproof.claims.grammar_process import PROCESS
from spoonproof.claims.grammar_safety import SAFETY_AGE
from spoonproof.claims.grammar_someone import SOMEONE
from spoonproof.claims.grammar_sources import SOURCES
from spoonproof.claims.grammar_testimony import TESTIMONY
from spoonproof.claims.grammar_turned import TURNED
from spoonproof.claims.grammar_weaning import WEANING

RULES: tuple[Rule, ...] = (
    *PROCESS,
    *COMPARATIVE,
    *QUANTITY,
    *ALLERGEN,
    *INTRODUCING,
    *CHOKING,
    *SAFETY_AGE,
    *OUTRIGHT,
    *DANGER,
    *WEANING,
    *AGES,
    *HABITS,
    *TESTIMONY,
    *DISEASE,
    *FUNCTION,
    *TURNED,
    *SOMEONE,
    *SOURCES,
    *NUTRIENT_CONTENT,
    *GENERAL_BENEFIT,
)
