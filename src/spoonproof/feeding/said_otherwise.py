"""Foods told without their name: who seasons does it with salt, milk from the cow is unpasteurised."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from spoonproof.feeding.step_words import FROM_THE_COW
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import Found

_CORDIAL = re.compile(r"\bsquash(?= in (?:the|a|her|his|their|baby['’]s) (?:\w+ )?(?:bottle|beaker|cup|mug))", re.I)
_MILK_GLASS = re.compile(
    r"\b(?:glass|cup|beaker|bottle|mug) of (?:\w+ )?(?:semi-skimmed|skimmed|full[- ]fat|gold[- ]top|blue[- ]top)\b"
    r"(?! milk)|\b(?:gold|blue)[- ]top(?= in (?:the|a|her|his|their) (?:\w+ )?(?:glass|cup|beaker|bottle|mug))",
    re.I,
)
_EGG_LOOSE = re.compile(
    r"\b(?:the|its|their) (?:yolks?|whites?)(?:['’]s)? (?:(?:is|are|still|a bit|a little|nice and|just|only|barely"
    r"|hardly|half) )*(?:runny|loose|set|soft|wet|liquid|wobbly|glassy|see-through|flowing|running)\b"
    r"|\b(?:the|raw|egg) (?:yolks?|whites?) (?:\w+ ){0,3}raw\b"
    r"|\b(?:the|its|their|golden|yellow|orange) yolks? (?:(?:still|all|just) )?(?:runs?|flows?"
    r"|drips?|spills?|oozes?|trickles?|(?:stays?|is|are) like (?:honey|cream|lava|syrup|custard|treacle|gold))\b",
    re.I,
)
"""An egg told by its parts, in a sentence that says how they are: what is set is no danger (``_RUNNY``)."""
_CUSTARD_LOOSE = re.compile(
    r"\b(?:raw|uncooked|undercooked|(?:barely|hardly|scarcely|half)[- ]cooked),? (?:\w+ ){0,2}custards?\b"
    r"|\bcustards?(?=\b[^.;!?]{0,30}\b(?:barely|hardly|scarcely|half)[- ]cooked\b)",
    re.I,
)
_SOY = re.compile(
    r"\b(?:dash|splash|drop|glug|shake|lick|bit|drizzle|little|(?:tea|table)?spoon(?:ful)?)s? of (?:dark |light )?soy\b"
    r"(?! (?:sauce|milk|yog|drink|cream))",
    re.I,
)
_OF_BEES = re.compile(
    r"\b(?:jars?|pots?|spoons?|spoonfuls?) (?:\w+ )?(?:from|of|out of) (?:\w+ ){0,3}(?:hives?|bees?|beekeepers?)\b"
    r"|\b(?:stuff|gold|sweetness|treasure|harvest) (?:\w+ ){0,2}(?:from|of|out of) (?:[\w'’]+ ){0,3}(?:hives?|bees?"
    r"|beekeepers?)\b|\bwhat (?:comes?|drips|runs) (?:\w+ )?(?:from|out of) (?:[\w'’]+ ){0,3}(?:hives?|combs?)\b"
    r"|\b(?:comes?|straight|fresh) (?:\w+ )?from (?:my|our|the|his|her|a) (?:\w+['’]s? )?(?:own )?(?:hives?|bees)\b"
    r"|\b(?:jars?|pots?|bottles?) with (?:\w+ ){0,2}bees? on\b",
    re.I,
)
_SEASONED = re.compile(
    r"\bseason(?:s|ed)? (?:(?:it|them|the \w+|everything|hers|his|her \w+|his \w+) )?"
    r"(?:(?:really |very |quite )?(?:to taste|well|generously|properly|boldly|lightly|a little|as usual)"
    r"|(?=before|and serve|at the end))|\bseason(?:s|ed)? (?:her|his|their|the baby['’]s) \w+(?! (?:\w+ )?with\b)"
    r"|\b(?:adjust|correct|check) the seasoning\b"
    r"|\bsalt(?:s|ed|ing) (?:(?:(?:your|the|my|our) )?(?:baby|little one)['’]s|her|his|their) \w+",
    re.I,
)


def said_otherwise(said: str, tables: FeedingTables) -> Iterator[Found]:
    """Foods told without their name: who seasons does it with salt, milk from the cow is unpasteurised."""
    for start, end, name in _told(said):
        for food in tables.phrases.find(name):
            yield food._replace(start=start, end=end)


@lru_cache(maxsize=500)  # a sentence is asked by itself and behind others
def _told(said: str) -> tuple[tuple[int, int, str], ...]:
    return tuple((*match.span(), name) for pattern, name in _NAMED_BY for match in pattern.finditer(said))


_NAMED_BY = (
    (_SEASONED, "salt"),
    (_OF_BEES, "honey"),
    (FROM_THE_COW, "raw milk"),
    (_MILK_GLASS, "cow's milk"),
    (_SOY, "soy sauce"),
    (_CORDIAL, "lemonade"),
    (_EGG_LOOSE, "egg"),
    (_CUSTARD_LOOSE, "egg"),
)
