"""Rules for what someone tells of her own children: well ever since, never ill on it, gone within a week of it.

No verb joins the food to what became of the child, only a time ("since we started") or a belief ("I put it down to");
whoever listens joins them. ``grammar.py`` says how a pattern is written.
"""

from __future__ import annotations

from spoonproof.claims.grammar import ways

_disease = ways("disease")
_benefit = ways("general-benefit")
_function = ways("function")
_KITCHEN = "nonfood culinary"
_NONE = "<negation|free|free-from>"
_LINK = "since|on-it"
_AFTER = f"<{_LINK}>"
_ILL = "<disease|disease-weak>"
_SIGN = "<disease|disease-weak|ill-sign>"  # an illness, or what comes of one: the dentist, glasses, a waiting room
_EATEN = "<food|dish|generic-food|pronoun>"

TESTIMONY = (
    *_disease(
        "never-ill-since",
        f"T({_NONE} _4) O({_ILL}) ~6 {_AFTER}",
        f"T({_NONE} _3) O({_ILL}) ~5 <fed|eating> _1 S(<food|dish>)",
        veto=_KITCHEN,
        says="not ill since",
    ),
    *_disease(
        "never-ill-on-it",
        f"T({_NONE} _4) O({_ILL}) ~12 <credit|because> ~3 S({_EATEN})",
        f"<fed|story> _2 S({_EATEN}) ~10 T({_NONE} _4) O({_ILL})",
        needs="fed on-it eating credit because story",
        veto=_KITCHEN,
        says="never ill on it",
    ),
    *_disease(
        "none-of-us-ill",
        f"S(<food|dish|this-one>) ~14 T(<none-of-us> _8) O({_SIGN}) (?!~3 <but>)",
        f"<fed> _1 S(<pronoun>) ~14 T(<none-of-us> _8) O({_SIGN})",
        f"T(<none-of-us> _8) O({_SIGN}) ~6 S(<food|dish|this-one>) (?!~3 <but>)",
        f"T(<negation|free>) ~6 S(<food|dish|this-one>) _2 <ever> _4 O({_SIGN})",
        "S(<food|dish|this-one>) ~10 T(<no-need|throws|negation> _2) O(<ill-sign>)",
        "S(<food|dish|this-one>) ~8 O(<body|ill-sign>) _1 T(<negation|ever> _1 <went-black>)",
        veto=_KITCHEN + " authority",
        says="none of those who eat it was ill",
    ),
    *_disease(
        "gone-since",
        f"O({_ILL}) ~4 T(<is-gone>) ~4 (?:{_AFTER}|<quickly|bound|thanks>)",
        f"(?:{_AFTER}|<quickly>|<bound>) ~10 O({_ILL}) ~4 T(<is-gone>)",
        f"S({_EATEN}) ~8 O(<disease|disease-weak|fever>) ~3 T(<is-gone>)",
        f"O(<disease|disease-weak|fever>) [^?]{{0,12}}? S({_EATEN}) ~6 <pronoun|there> _1 T(<is-gone>)",
        needs="FOOD dish generic-food pronoun on-it audience-baby",
        veto=_KITCHEN + " authority",
        tale=True,
        says="an illness gone since",
    ),
    *_disease(
        "put-right",
        f"<have> _1 O({_SIGN}) ~8 S(<food|dish>) _2 T(<put-right|benefit> <pronoun>)",
        "O(<disease|disease-weak|fever>) ~8 S(<food|dish>) _2 T(<did-it>)",
        veto=_KITCHEN + " authority",
        tale=True,
        says="a food put an illness right",
    ),
    *_disease("ill-until", f"<copula|have> _2 O({_ILL}) ~2 T(<on-it>) ~5 S({_EATEN})", veto=_KITCHEN, says="ill until"),
    *_disease(
        "the-end-of", f"T(<the-end-of>) _2 O({_ILL})", veto=_KITCHEN + " authority", says="the end of an illness"
    ),
    *_disease(
        "brings-down", f"S({_EATEN}) ~2 T(<brings> _1) O({_ILL}) <down>", veto=_KITCHEN, says="brings an illness down"
    ),
    *_disease(
        "through-it",
        f"T(<through-it>) _1 S(<food|dish>) _3 O({_ILL})",
        f"T(<through-it>) _6 O({_ILL})",
        f"T(<fed>) _2 <for> _2 O({_ILL})",
        "T(<fed|serve|make>) ~3 O(<ill-day>)",
        f"T(<what-i-make>) ~4 <when-ill> ~4 O({_ILL})",
        veto=_KITCHEN,
        says="what one takes when ill",
    ),
    *_function(
        "better-since",
        "O(<body>) ~1 T(<is-gone>) ~4 (?:<bound>|<on-it>|<quickly>)",
        f"S({_EATEN}) ~8 O(<bodily|feel-better>) _1 (?:[.]|(?=<till>)|$)",
        "O(<bodily>) ~3 S(<pronoun|food|dish>) _1 (?:[.]|$)",
        "O(<bodily|does-well>) ~4 <when-ill> _1 <audience-baby|the-child> _1 T(<fed>) _1 S(<pronoun|food|dish>)",
        f"O(<bodily|feel-better>) ~3 T({_AFTER})",
        "^ _2 T(<since>) _4 S(<food|dish>) ,? _7 O(<feel-better>)",
        f"T(<weight-verb|put-on> _3) O(<weight-unit|unit>) ~6 {_AFTER}",
        "(?:<audience-baby|pronoun>) _1 O(<body>) ~2 T(<is-better>)",
        f"S({_EATEN}) ~12 T(<till>) _1 O(<sun-up>)",
        f"S({_EATEN}) ~4 T(<homely-act>) _6 O(<body|inner-body|armour>)",
        f"S({_EATEN}) ~1 T(<put-on>) _2 O(<armour>)",
        veto=_KITCHEN,
        tale=True,
        says="better since",
    ),
    *_function(
        "put-down-to",
        f"O(<bodily|does-well|effect|body>) ~12 T(<credit>) ~3 S({_EATEN})",
        veto=_KITCHEN,
        tale=True,
        says="put down to a food",
    ),
    *_function(
        "milestone",
        "^ T(<with>) _1 S(<food|dish|drops|nutrient>) ~8 <copula> _1 O(<milestone>) <bound|at> _1 <number|age>",
        "T(<since|credit>) ~6 S(<food|dish|drops|nutrient>) ~8 O(<milestone>) <bound|at> _1 <number|age>",
        "O(<milestone>) <bound|at> _1 <number|age> ~6 T(<since|credit>) ~6 S(<food|dish|drops|nutrient>)",
        effect="growth",
        says="what a child could do early put down to a food",
    ),
    *_benefit(
        "so-many-say",
        "T(<number> _2 <number> _1 <authority>) _3 O(<advice|okay|said-by|give|fed>)",
        says="the word of so many doctors",
    ),
    *_disease(
        "told-beside",
        f"O({_ILL}) ~14 T(<{_LINK}|quickly|credit|is-gone>)",
        f"T(<{_LINK}|quickly|coincidence>) ~14 O({_ILL})",
        needs="FOOD on-it credit eating",
        veto=_KITCHEN + " authority can-ask when-ask forbid seek-help",
        loose=True,
        tale=True,
        says="told in one breath with an illness",
    ),
    *_benefit(
        "another-child",
        f"O(<the-change>) ~3 T(<since|on-it|bound>) ~4 S({_EATEN})",
        needs="audience-baby audience-adult the-child authority",
        veto=_KITCHEN,
        tale=True,
        says="another child since",
    ),
    *_function("named-after-it", "^ O(<sleepy>) S(<dish|food>) _1 (?:[.]|$)", says="a dish named after sleep"),
    *_disease("named-after-it", f"^ O({_ILL}) _1 S(<dish|food>) _1 (?:[.]|$)", says="a dish named after an illness"),
    *_disease(
        "no-doctor",
        f"S({_EATEN}) ~5 T(<no-need-of>) _1 O(<their-medicine>)",
        f"S({_EATEN}) ~8 T(<given-up|throws>) _1 O(<their-medicine>)",
        veto=_KITCHEN,
        says="no doctor or medicine needed",
    ),
    *_benefit("run-down", "S(<milk-for-babies>) ~2 <copula> _2 O(<rubbish>)", says="other food for babies run down"),
)
