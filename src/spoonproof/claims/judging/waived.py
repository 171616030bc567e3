"""What waives a caution: that nothing need be kept back, waited for or feared."""

from __future__ import annotations

import re

_NO = (
    r"(?:n't| (?:not|never|no longer|no|nobody|no one|hardly|needn't|no (?:baby|child|parent|mum)"
    r"|dont|doesnt|didnt|wont|cant|shouldnt|wouldnt|neednt|(?:refuse[sd]?|declined?) to))"
)
_FILLED = (
    r"(?: (?:an?|any|the|ones?|anyone|anybody|something|things?|foods?|i|we|you"
    r"|needs?|needed|ha(?:ve|s|d)|ought|want|wanted|going"
    r"|gonna|best|ever|once|good|real|reasons?|point|sense|use|really|actually|even|to|in|feel|be|been|get)){0,5} "
)
"""Little words between a "no" and what it is said of: "there is *never* a good reason to *refuse*"."""
_NOT_FORBIDDEN = re.compile(
    rf"{_NO}(?: (?:been|actually|really|strictly|even))? "
    r"(?:forbidden|banned|prohibited|off limits|off the (?:menu|table|list|cards)|a no no|a taboo|taboo|ruled out) "
    rf"|{_NO}{_FILLED}"
    # what would hold it back
    r"(?:(?:avoid|skip|ban|wait|delay|fear)s?|avoided|skipped|delayed|left out|ruled out"
    r"|kept (?:[a-z]+ ){0,2}?(?:away|off|back|from)|worry about|steer clear|(?:stay|keep) (?:well )?(?:off|away)"
    r"|withh[eo]ld|refused?|h[eo]ld(?:ing)? (?:[a-z]+ ){0,2}?(?:back|off)|put(?:ting)? (?:[a-z]+ ){0,2}?off"
    r"|leave (?:[a-z]+ ){1,2}?out of|sa(?:y|id) no to|(?:go|do) without|keep(?:ing)? (?:[a-z']+ ){1,6}?(?:away )?from"
    # or keep its giver from it
    r"|(?:guilty|afraid|scared|ashamed|bad|nervous|worried|shy|anxious|frightened) (?:about|for|of|to)"
    r"(?! (?:keep|hold|say|avoid|wait|refus|skip|delay|leav|put)[a-z]* )"
    r"|let (?:[a-z]+ ){1,3}?(?:stop|put|scare|talk|keep|frighten|shame) (?:you|them|us)) "
    rf"|{_NO}(?: (?:an?|any|good|real))* reasons? to keep (?!it |them |the |in |for )"
    # "Never a day without honey" has it every day.
    rf"|{_NO} (?:[a-z']+ ){{0,4}}?without (?!(?:(?:its|any|some|an?|the) )?(?:risks?|dangers?|problems?|reason|adult"
    r"|supervision|help|doctor|water|you|grown)|[a-z]+ing )"
    r"| only (?:nervous|anxious|fussy|silly|paranoid|neurotic|overcautious|overprotective|first time|new) "
    r"(?:mums|moms|mothers|parents|people) "
    r"| (?:rather than|instead of) (?:avoiding|skipping|delaying|waiting|holding|keeping|steering|staying) "
)
"""What says that a food need not be kept back: a "no" to what would keep it."""
FEAR_DROPPED = re.compile(
    r" (?:stopp?(?:ed|ing)?|quit|gave up|no longer|never|not|n't|without|forget|forgot) (?:being |be |ever )?"
    r"(?:worr(?:y|ied|ying)|fear(?:ed|ing)?|panick?(?:ed|ing)?|fuss(?:ed|ing)?|scared|afraid|fretting|losing sleep)"
    r"(?: about| over| of| for)? "
)
"""A fear that is let go: "we *stopped worrying about* botulism and gave honey"."""
_NO_USE_WAITING = re.compile(
    r" no (?:\w+ )?(?:benefit|point|advantage|sense|gain|use) (?:in|to|of) "
    r"(?:wait|delay|put off|putting off|hold|avoid|postpon)\w* "
)
"""Words that let a food come now: "there is no point in putting off egg"."""
_UNCALLED_FOR = (
    r"(?:unnecessary|needless|pointless|senseless|useless|silly|daft|ridiculous|nonsense|rubbish|outdated|old fashioned"
    r"|overcautious|overprotective|paranoid|overkill|too (?:strict|careful|cautious)|over the top|no use"
    r"|a (?:complete |total )?waste(?: of (?:time|effort))?|not (?:needed|necessary|worth it))"
)
_CARE_UNCALLED_FOR = re.compile(
    r"(?<! not)(?<!n't)(?<! never) (?:avoiding|waiting|delaying|skipping|banning|holding|withholding|keeping|steering"
    r"|postponing|putting off)(?: [a-z0-9']+){1,7}? (?:is|was|seems|feels) (?:(?:quite|totally|completely|just|simply"
    rf"|so|really|a bit|rather|plain|utterly) )?{_UNCALLED_FOR} "
    rf"|(?:'s|is|was|seems|feels|found it|think it's) (?:(?:quite|totally|just|so|really|a bit|rather|plain) )?"
    rf"{_UNCALLED_FOR} to (?:avoid|wait|delay|skip|ban|hold|withhold|keep|steer|postpone|put off|fear|worry) "
)
"""Care that is called needless: "*avoiding* honey *is unnecessary*", "it's *silly to wait* with honey"."""
WAIVERS = (_NOT_FORBIDDEN, _NO_USE_WAITING, _CARE_UNCALLED_FOR, FEAR_DROPPED)


def waived(words: str) -> bool:
    """Whether nothing is said to need keeping back or fearing: "isn't forbidden", "nobody needs to avoid", "no point
    in waiting", "we stopped worrying"."""
    return any(one.search(words) for one in WAIVERS)
