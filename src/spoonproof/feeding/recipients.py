"""Who gets the food that a sentence names: whether it is turned round, kept for later or for somebody else's plate."""

from __future__ import annotations

import re
from math import inf

from spoonproof.feeding.words import MINE, Found

_CLAUSE_END = re.compile(
    r",|\bbut\b|\bwhile\b|\bthough\b|–|—|\("
    r"|\band (?=(?:s?he|i|we|they|hers|his is|his are|the baby) )"
    r"|(?<=\w) (?=(?:s?he|we) (?:has|gets|have|eats?|had|got) )"
)
GIVE = re.compile(
    r"\b(?:giv(?:e|es|ing|en)|gave|(?<!on )offer|hand|let|feed|feeds|fed|feeding|pass|slip|share"
    r"|lick|suck|nibbl|gnaw|chew"
    r"|munch"
    r"|crunch|sip|drink|dip|sooth|tast|snack|keeps?|eat|eats|bite|pop|put|got|get|gets|have|has|treat|finish|tuck|wash"
    r"|favou?rite|lov|ask|beg|rub|serv|wet|dunk|smear|fish|pinch|steal|stole|nick|grab|scoff|gobble|swallow|guzzl"
    r"|thriv|rais)\w*\b"
    r"|\bis (?:hers|his)\b|\bin(?:to)? (?:her|his|their) (?:palm|fist|mouth|cheek)s?\b"
    r"|\bgo(?:es)? (?:on|in|into|over|to)\b|\bhelps? (?:her|him|them)sel|\bworks? through\b"
    r"|\b(?:is|are|keeps? (?:her|him)|stays?) (?:happy|quiet|content|busy)\b|\bpicks? (?:\w+ ){1,4}out of\b"
    r"|\b(?:for|on|against) (?:(?:her|his|their|sore|tender|the|those|aching|swollen) ){1,2}gums\b",
    re.I,
)
_MONTHS = r"[2-9]|1[01]|two|three|four|five|six|seven|eight|nine|ten|eleven"
_ONE_CHILD = (
    r"\b(?:bab(?:y|ies)|her|hers|herself|him|his|himself|he|she"
    r"|(?:little|small|tiny|wee|weeny|teeny|smallest|youngest|littlest|tiniest) (?:ones?|fingers|hands|gums"
    r"|mouths?)|first (?:drinks?|milk|tastes?|foods?|fish|meat|meals?|finger foods?)"
    rf"|(?:at|from|is|are|aged?|s?he['’]s) (?:about |around |just )?(?:{_MONTHS}) months|(?:{_MONTHS})[- ](?:month"
    rf"|week)s?[- ]olds?"
    r"|bubs?|bubba|tots?|lads?|lass|little"
    r" (?:man|lady|girl|boy|fella|fellow|guy|dude|lad|lass|princess|monkey|bloke)"
    r"|my (?:daughter|son|granddaughter|grandson|boy|girl|lad|lass)"
    r"|toddlers?|infants?|child|children|kids?|kiddos?|gums?|dummy"
    r"|pacifier|teether|highchair|high chair)\b"
)
ONE_CHILD = re.compile(_ONE_CHILD, re.I)
"""A child named, or pointed at as one: in talk of no one dish "they" are anybody."""
BABY = re.compile(_ONE_CHILD + r"|\b(?:them|they|theirs)\b", re.I)
ADD = re.compile(
    r"\b(?:add|stir|swirl|drizzl|sprinkl|top|finish|sweeten|season|dust|serve|mix|thin|spread|glaz|swap|replace|crumbl"
    r"|scatter|try|use|bulk|dilut|tip|pour|grate|shav|melt|fold|whisk|grind|enrich|fortif|thicken|throw|toss|pop"
    r"|put|roll|squeez|loosen|lift|crumble|work|drop)\w*\b|\bwater(?:ed|s|ing)? (?:it |them |the \w+ )?down\b",
    re.I,
)
# "fishes out of my bowl", "grandpa slips her": whoever's plate it was, it ends in the baby's mouth
TO_BABY = re.compile(
    r"\b(?:out of|from|off) (?:my|our|your|\w+['’]s) (?:own )?(?:bowl|plate|glass|cup|mug|spoon)\b"
    r"|\b(?:her|his|their|the|baby['’]s) (?:dummy|pacifier|soother|lips|gums|tongue|teether)\b"
    r"|\bin(?:to)? (?:her|his|their) (?:palm|fist|mouth|cheek)s?\b|\bto (?:her|him|the bab(?:y|ies))\b"
    r"|\bfor (?:her|him|the bab(?:y|ies)) to\b"
    r"|\b(?:bab(?:y|ies)|her|him) (?:included|too|as well)\b"
    r"|\bincluding (?:the baby|her|him)\b"
    r"|\b(?:gives?|gave|lets?|feeds?|fed|slips?|slipped|offers?|hands?|sneaks?)"
    r" (?:her|him|the bab(?:y|ies)|the little one)\b",
    re.I,
)
FOR_BABY = re.compile(
    rf"(?<!new )\b(?:for|to|over|on|onto|into|in|through) (?:the |my |our |your |even |an? )?{_ONE_CHILD}(?!['’]s)"
    r"(?! (?:first|second|third|\d+))",
    re.I,
)
_BABYS_OWN = re.compile(
    r"\b(?:her|his|baby['’]s|their)s? (?:\w+ )?(?:bowl|plate|portion|food)\b|\bhers\b"
    r"|\bfor (?:the |my |our )?(?:baby|bub|(?:little|wee|littlest|smallest) one|toddler)\b(?!['’]s)"
    r"|\bfor (?:him|her)(?=\W*(?:$|(?:and|to|in|with|at|so|because|when|while|too|instead)\b)|\s*[,;.])",
    re.I,
)
OTHERS = re.compile(
    rf"(?<!from )(?<!by )(?<!with )\b(?:ours|{MINE}|our own|our (?:\w+ )?(?:bowls?|plates?|portions?|share|half)|yours"
    r"|yourself|yourselves|myself"
    r"|(?:on|in|over|into) (?:our|my) (?:own )?(?:\w+ )?"
    r"(?:toast|sandwich(?:es)?|glass(?:es)?|mugs?|cups?|coffee|tea|bread|crackers?)"
    r"|for (?:my|her|his|our|the|their) (?:big |older |elder )?"
    r"(?:brother|sister|dad|mum|mom|cousin|grandpa|grandad|granny|husband|wife)['’]s"
    r"|(?<!from )(?<!off )the (?:big|older|elder) (?:children|ones?|kids|brother|sister|boys?|girls?)['’]s?"
    r"|(?:is|are) (?:all )?(?:his|her|my|our|the) (?:\w+ )?(?:sister|brother|dad|mum|mother|father|cousin|gran"
    r"|grandad)['’]s"
    r"|my (?:\w+ )?(?:bowl|plate|portion|half)|your (?:own )?(?:bowl|plate|portion)|ourselves|adults?|grown[- ]?ups?"
    # but not "he's such a big boy now"
    r"|parents?|family|older|(?<!a )big (?:ones?|brothers?|sisters?|boys?|girls?|kids?|children)|elder|brothers?"
    r"|sisters?"
    r"|siblings?|(?<!works )(?<!work )(?<!good )(?<!enough )for (?:us|me)|cousins?|aunt(?:ie)?s?|uncles?"
    r"|dads?|daddy|mums?|mummy|moms?|grandpa|grandad|grandma|granny|(?:his|her|their) (?:father|mother|nan|nana|gran)"
    r"|(?:the|a) cook|rest of us|everyone else|neighbou?rs?|dogs?"
    r"|(?<!our )hens|birds|school|(?:season|salt|sweeten|for) the rest"
    r"|i['’]m the one(?= with\b)|(?:i|we) (?:have|had|get|take)(?= (?:the|my|our|mine)\b)"
    r"|(?:i|we) (?:eat|ate|drink|drank|munch|crunch|nibble|drain|sip|lick|suck|chew|scoff))\b(?!['’]s)"
    r"|(?<!from )(?<!by )(?<!with )(?<!on )(?<!in )(?<!off )\bmy (?!(?:wee |little |own )?bab|little|son|daughter"
    r"|girl|boy|child|kid|toddler"
    r"|twin|bub|tot|smallest|youngest|recipe|trick|secret|rule|tip|hair|palm|hands?\b|lap|knee|life"
    r"|day|eyes?\b|opinion|mind"
    r"|kitchen|way|version|go-to|favou?rite|freezer|fridge|cupboard|pan|pot\b|oven|steamer|blender|channel|video|wee\b"
    r"|littl|munchkin|nipper|bag|book|advice|money|house|nerves|heart|feet|back|sleeve|lad|lass|bairn|angel|darling"
    rf"|(?:{_MONTHS})[- ](?:month|week))"
    r"\w+\b(?!['’]s)",  # "my nonno"
    re.I,
)
_AGE = r"(?:one|two|three|four|five)\b(?! (?:of|or|and|more|in|o['’]clock|\w+s\b))"
_LATER = re.compile(
    r"\b(?:from|after|past|over|once|when|until|till|before|under|at|by|wait|since|now|as)\b[^.;]{0,40}"
    r"\b(?:a year|years?|birthday|twelve|1[2-9] months|[2-6] years|older|bigger|at school"
    rf"|(?:s?he|they|it|bab(?:y|ies)|aged?|turn\w*)(?:['’]s|['’]re| is| are)? {_AGE})\b"
    r"|\bfor (?:his|her|their|the|a) (?:first|second|third|fourth|\d\w\w) birthday\b"
    rf"|\b(?:from|after|past|over|until|till|before|under|at|(?<!one )by) (?:age |about )?{_AGE}",
    re.I,
)
_NOT = re.compile(
    r"\b(?:low(?:er)? in|no|not|never|without|nobody|nor|avoid|stop|skip|eliminat\w*|exclud\w*|instead|than|rather"
    r"|unless|hid|hides|hidden|locked|myth|wrong|wanted|wants to"
    r"|tempt\w*|told|said|says|thought|used to|might|would|forbid\w*|banned|ban|resist\w*|refus\w*|careful|cannot"
    r"|(?:gave|given|give|giving) up|stopped|quit|to (?:watch|see|smell|look at)|watch(?:es|ed)"
    r"|too much|too many|how much|how many"
    r"|\w+n['’]t|dangerous|danger|free|(?:leav(?:e|es|ing)|left) out|keep away|out of reach|away from|in place of)\b",
    re.I,
)
_NOT_AFTER = re.compile(
    r"\b(?:never|not|none|nothing) (?:in |on |into |onto |for )?(?:hers|theirs"
    r"|his(?! (?:own|tea|lunch|supper|dad))|the baby)\b"
    r"|^(?: (?!(?:so|because|and|while|when|if|since|as|where)\b)\w+){0,2},? (?:(?:is|are|was|were|has|have|can|must"
    r"|should|do|does)"
    r"(?:n['’]t| not| never)|never|not for"
    r"|can wait|must wait|should wait|will wait|later|stays? (?:out|off|away)|belongs? to|forbidden|banned"
    r"|off the menu|out of bounds|away|out(?! of)|stay(?:s|ed) behind|left in the (?:shaker|cupboard|jar|cellar))\b"
    r"|^(?: \w+){0,3} (?:on|at|to) (?:the|our|a) (?:top|high|highest) shelf\b"
    # "shark and swordfish are not for children": of all that stand in the row
    r"|^(?:,? (?:and|or) (?!(?:so|then|he|she|they|it|you|we|i)\b)\w+(?: \w+)?){1,2} (?:is|are)(?:n['’]t| not| never)"
    r" (?:for|suitable|safe|allowed|meant|ok|okay|fine|advised|recommended|good)\b"
    r"|^(?:,? (?:and|or) (?!(?:so|then|he|she|they|it|you|we|i)\b)\w+(?: \w+)?){1,2} (?:is|are|stays?) (?:all |both )?"
    r"(?:off (?:the|our|her|his) (?:menu|list|table)|forbidden|banned|out\b|off[- ]limits)"
    r"|^ (?:is|was|are|were|has been|have been|had been|got|gets|stays?|stayed) (?:\w+ )?(?:left (?:out|behind|off)"
    r"|off (?:the|our) (?:list|menu|table)|crossed (?:off|out)|dropped|omitted|skipped|ditched|put away|gone|missing"
    r"|in the cupboard)\b"
    r"|\b(?:will|does|do|shall|must|should|may|can) not (?:get|have|be given|touch)\b"
    # "sugar is bad news for babies", "salt has no place in his bowl", "keep salt out of baby food", "give it a miss"
    r"|^ (?:is|are|was|were|spells?) (?:(?!no |not |never |hardly )\w+ ){0,2}(?:bad news|trouble|no good|poison"
    r"|(?:a|the) (?:menace|enemy))\b"
    r"|^ (?:has|have|had) no (?:place|business)\b|^ a miss\b"
    r"|^ (?:well |right |firmly )?out of (?:(?:the|his|her|their|your|a|any) )?"
    r"(?:bab|food|portion|diet|meal)"
    r"|\bwon['’]t (?:get|have|be getting)\b|\bkeep (?:it|them) (?:away |well away )?from\b"
    r"|^ (?:is|are|was|were|gets?|got) (?:fished|lifted|taken|pulled|scooped|strained|picked) out\b"
    rf"|\bnot for (?:my |the |our |an? )?{_ONE_CHILD}"
    # "is salty and not suitable for babies"
    r"|^[^.;!?]{0,60}?\b(?:not|never|(?:is|are)n['’]t) (?:(?!only\b|just\b)\w+ )?(?:suitable|safe|meant|advised"
    r"|recommended|fit|right) for\b|^[^.;!?]{0,60}?(?<!not )(?<!n['’]t )\bunsuitable for\b"
    # "flakes of salt on our avocado, lime on his"
    r"|^(?: \w+){0,3} (?:on|in|over|into|through) (?:our|my) \w+[^.;]*? (?:on|in|over|for) (?:his|hers|theirs)\b(?! \w)"
    r"|^(?: \w+){0,3} (?:on|in|over|into|through) (?:our|my) \w+[^.;]*? (?:his|hers|theirs) (?:is|are"
    r"|stays?) (?:plain|without)\b"
    r"|\bnever (?:gets?|has|have|drinks?|eats?|tastes?)\b"
    r"|^[^.;!?]{0,40}\b(?:has|gets?|had|got|gave (?:her|him)|gives? (?:her|him)) (?:\w+ ){1,3}instead\b(?! of)"
    r"|\b(?:had|has|have|gets?|got) (?:theirs|hers) (?:made|done|without|plain)\b"
    r"|\b(?:ha[ds]|have|gets?|got|eats?|takes?) (?:theirs|hers|his) (?:\w+ly )?(?:ground|chopped|quartered"
    r"|mashed|grated"
    r"|squashed|smooth|stoned|pitted|cooked|steamed|boiled|flaked|blended|thinned)\b"
    r"|\b(?:theirs|hers) (?:is|are|was|were|stays?) (?:made |left )?(?:plain|without|with none)\b"
    r"|\bfor (?:me|us|mum|dad|ourselves|the (?:adults|grown[- ]ups))(?:,| and"
    r"| but) (?:\w+ ){1,4}for (?:(?:the )?baby|him"
    r"|her|the little one)\b"
    # what it does to a child: "raw milk gave him food poisoning"
    r"|^ (?:(?:can|could|may|might|will|has|have|had|does) )?(?:easily )?(?:gives?|given|gave|causes?|caused|makes?"
    r"|made) (?:\w+ ){0,4}(?:food poisoning|salmonella|listeri\w+|botulism|ill|sick|poorly)\b"
    r"|\b(?:gets?|has|have|had) none\b"
    r"|^ (?:(?:can|could|may|might|will|would|do|does) )?(?:easily |just )?(?:gets? stuck|lodges?|splinters?"
    r"|breaks? off"
    r"|(?:sticks? (?:in|to)|blocks?|seals?|closes?|plugs?) (?:an?|the|her|his|their)(?: \w+(?:['’]s)?){0,2}"
    r" (?:throat|airway|windpipe|mouth|roof))\b"
    # "shark, swordfish and marlin are the ones to avoid"
    r"|^[^.;!?]{0,60}?(?:\b(?:is|are|was|were)|['’](?:s|re)) (?:(?:all|also|best|really|the|a|things?|fish|foods?|ones?"
    r"|something|you|we|need|want|i) ){0,5}(?:to (?:avoid|skip|leave out|steer clear of|stay away from|keep away from"
    r"|watch out for)|avoided|avoid|off[- ]limits|a no[- ]no|no[- ]nos?|out(?! of\b)(?=\W*$|[,.;!?])|banned|forbidden"
    r"|off the (?:menu|list|table)|chok\w+ (?:hazards?|risks?))\b"
    # what was done once, and not again
    r"|\b(?:nearly fainted|horrified|furious|snatched|told (?:him|her|them) off|took it (?:away|off)|never again"
    r"|(?:would|do) not again|regret\w*|my mistake)\b"
    # but not "no risk of anything"
    r"|(?<!\bno )(?<!\bzero )(?<!\bany )(?<!\bwithout )\b(?:chok\w+|danger\w*|risk\w*|unsafe|botulism)\b",
    re.I,
)
# What a recipe does without: "I ditched the sugar". What is dropped *into* the bowl is there, and so are cut apricots.
_NOT_AVOIDED = re.compile(
    r"(?:\b(?:not|never|no need to|no reason to|needn['’]t)|\b\w+n['’]t) (?:(?:a|the|one|ones|something|to|need|have"
    r"|really|even|been) ){0,4}"
    r"(?:avoid(?:ed|ing)?|skip(?:ped|ping)?|off[- ]limits|forbidden|banned|dangerous|a no[- ]no)\b",
    re.I,
)
"""A "no" that is taken back: "we don't avoid honey", "it isn't one to avoid"."""
_DONE_WITHOUT = re.compile(
    r"\b(?:ditch|omit|forgo|forwent|drop|scrap|cut|swapp|lea(?:ve|ving) off|left off)\w* (?:the |any |all |all the )?$",
    re.I,
)
_SWAPPED = re.compile(
    r"\b(?:swap|replac|trad|exchang|substitut)\w* (?:out )?(?:the |any |all the |your |our )?(?:\w+ )?$", re.I
)
_FOR_ANOTHER = re.compile(r"(?: \w+)? (?:for|with|by) ", re.I)
"""What is taken out for what stands behind: "swap the honey for date paste"."""
_STILL_IN = re.compile(r"^\W+(?:in|into|on|onto|over|to|through|up|small|lengthways)\b", re.I)
_POURED = re.compile(r"\b(?:salt|sugar|honey|syrup)$", re.I)
_LIKE_THEM = re.compile(
    r"\b(?:like|same as|as well as|along with|together with) (?:all )?(?:the )?$|\bwith (?:her|his) (?:big |older )?$",
    re.I,
)
_BEFORE_IT = re.compile(
    r"\bbefore (?:(?:i|you|we|she|he|they) (?:(?:\w+ )?(?:add|stir in|put in|season|salt|pour in)(?: it)?(?: with)? )?"
    r"|(?:adding|stirring in|seasoning with|putting in) )?(?:the |any |your |my |our )?(?:\w+ (?:and|or) (?:the )?)?$",
    re.I,
)
# "once hers is out", "lift out her portion first": what goes in after that is for the others
_HERS = (
    r"\b(?:hers|his|theirs|(?:her|his|their|(?:the |your |my )?baby['’]?s|the little one['’]s) (?:\w+ )?"
    r"(?:bowl|portion|share|helping|plate|part|bit|spoonful|serving|scoop))\b"
)
_HERS_FIRST = re.compile(
    rf"{_HERS}(?:['’]s)?(?: (?:is|are|has been|was|safely|already|well|gone|goes|comes)){{0,3}}"
    r" (?:out|aside|first(?! \w+)|first(?= (?:and|then|before|so)\b)|away|lifted|taken|removed|already|dished|served)\b"
    rf"|{_HERS} (?:\w+ ){{0,4}}(?:before|beforehand)(?:$|[,;:.])"
    rf"|\b(?:after|once) (?:i|we|you)(?:['’]ve| have)? (?:\w+ ){{1,2}}{_HERS}"
    r"|\b(?:after|once|when) (?:her|his|their|hers|(?:the |your |my )?baby['’]?s) (?:\w+ ){0,2}(?:is|are|has been"
    r"|have been)"
    r" (?:safely |already |well )?(?:scooped|taken|lifted|ladled|spooned|dished|served|set|put|out|aside|away"
    r"|in the bowl)\b"
    rf"|\b(?:lift|take|took|taking|scoop|ladle|remov|reserv|set|spoon|dish|put)\w*"
    rf" (?:(?:out|off|up|aside) {_HERS}|{_HERS} (?:out|off|up|aside|by))",
    re.I,
)
_BEFORE = re.compile(r"\b(?:before|until|till) (?:\w+ ){0,2}$", re.I)
_ADVISES = re.compile(
    r" (?:\w+ly |always |still )?(?:swears?|swore|reckons?|reckoned|recommends?|recommended|taught|showed|insists?"
    r"|insisted|passed (?:it )?on|gave me|promises|promised)\b",
    re.I,
)
"""What somebody does who is no eater of it, but vouches for it: "my nan swears a little honey stops the crying"."""
_HIS_OWN = re.compile(
    r"\b(?:nan(?:a|ny)?|gran(?:ny|dma|dpa|dad)?|mum|dad|mother|father|husband|wife|partner|aunt(?:ie)?|uncle|sister"
    r"|brother|cousin|neighbour|friend|eldest|big one)\b[^,;]{0,50}\b(?:her|his|their) own\b",
    re.I,
)
_ASLEEP = re.compile(
    r"\b(?:once|when|after|until)\b[^.;,]{0,30}\b(?:in bed|asleep|(?:gone|goes|went|is off) to bed|down for the night)"
    r"(?:\W{0,3}$|,)",
    re.I,
)
_FOR_OTHERS = re.compile(r"^\s*(?:for|as for)\b[^,]*,", re.I)
_CONTAINER = re.compile(
    r"^[ -](?:trays?|moulds?|molds?|makers?|jars?|pots?|cupboard|pans?|pickers?|stall|shop)\b", re.I
)

_DUG_INTO = re.compile(r"\b(?:dig|dip|tuck|stick|spoon)\w* (?:\w+ )?(?:in|into|from|out of) (?:the|a|her|his) $", re.I)

UNCUT = re.compile(
    r"\b(?:not|never|no need to|without|no longer|stopped|hardly ever|rarely|\w+n['’]t)\b(?: \w+){0,3}"
    r" (?:cut|cutting|halv\w*|quarter\w*|slic\w*|chop\w*|blend\w*|mash\w*|grind\w*|grat\w*|soak\w*)\b"
    r"(?! (?:\w+ ){0,4}(?:into|across) )",
    re.I,
)
"""Words that say of food that it stays as it is: "we never bother to cut his"."""


def _clause(said: str, hit: Found) -> tuple[int, int]:
    """Where the food's clause begins and ends."""
    cuts = list(_CLAUSE_END.finditer(said))
    left = max((m.end() for m in cuts if m.end() <= hit.start), default=0)
    return left, min((m.start() for m in cuts if m.start() >= hit.end), default=len(said))


def clause_of(said: str, hit: Found) -> str:
    """The words of the food's clause."""
    left, right = _clause(said, hit)
    return said[left:right]


def clause_before(said: str, hit: Found) -> str:
    """The words of the food's clause that stand before it."""
    return said[_clause(said, hit)[0] : hit.start]


def elsewhere(said: str, hit: Found) -> bool:
    """Whether it is turned round, meant for later, or for somebody else."""
    left, right = _clause(said, hit)
    clause = said[left:right]
    place = hit.start - left, hit.end - left
    others = next((one for one in OTHERS.finditer(clause) if _apart(one, place) > _room(one)), None)
    behind = said[right : right + 16]  # "for the whole family, baby included"
    advises = others is not None and _ADVISES.match(clause, others.end())
    if (
        others
        and not advises
        and not _LIKE_THEM.search(clause[: others.start()])
        and not TO_BABY.search(clause + behind)
    ):
        babys = [_apart(one, place) for one in _BABYS_OWN.finditer(clause)]
        if min(babys, default=len(said)) >= _apart(others, place):
            return True
    if _NOT_AFTER.search(_NOT_AVOIDED.sub(" ", said[hit.end :])):
        return True
    if hers_first(said):
        return True
    if _HIS_OWN.search(clause):
        return True  # "Nana has it on her own toast"
    if _ASLEEP.search(said):
        return True  # "popcorn is for the film, once the baby is in bed"
    if _CONTAINER.search(said[hit.end :]) and not _DUG_INTO.search(said[: hit.start]):
        return True  # "an ice cube tray"
    opening = _FOR_OTHERS.search(said)
    if opening and OTHERS.search(opening.group()) and not BABY.search(opening.group()):
        return True  # "For the grown-ups, ..."
    if _BEFORE_IT.search(said[: hit.start]):
        return True  # "the baby's share leaves the pot before the salt"
    return turned_round(said, hit)


def later(said: str, hit: Found) -> float:
    """Months of age for which the words say it is meant ("from two he can have ..."): 0 where they name no later age,
    endless where they only put it off ("not until she's one", "when he's older")."""
    found = _LATER.search(said[: _own_end(said, hit)])
    if found is None:
        return 12.0 if _TODDLER.search(said) and not _YOUNGER.search(said) else 0.0
    if _PUT_OFF.match(found[0]):
        return inf
    return next((months for word, months in _YEARS if word.search(found[0])), inf)


_TODDLER = re.compile(r"\b(?:toddlers|a toddler)\b(?!['’-])", re.I)
_YOUNGER = re.compile(r"\b(?:bab(?:y|ies)|infants?|newborns?|under (?:a year|ones?)|weaning|months)\b", re.I)
"""Who is past the first birthday by name (common practice), and words for who is not."""
_PUT_OFF = re.compile(r"(?:until|till|before|under|wait)\b", re.I)
_YEARS = (
    (re.compile(r"\b(?:one|a year|first|12 months|twelve)\b", re.I), 12.0),
    (re.compile(r"\b(?:two|second|2 years)\b", re.I), 24.0),
    (re.compile(r"\b(?:three|third|3 years)\b", re.I), 36.0),
    (re.compile(r"\b(?:four|fourth|4 years)\b", re.I), 48.0),
)
"""A later age by its words, in months; from five years on a choking row holds nothing back."""
_ANOTHER = re.compile(r"\b(?:and|but) (?=(?:i|we|you|s?he|they) (?:\w+ ){0,2}(?:never|don['’]t|won['’]t|wait)\b)", re.I)
"""Where it goes on about something else: "popcorn, since it's air, and I never give him honey before one"."""


def _own_end(said: str, hit: Found) -> int:
    """Where the sentence leaves the food for another that is turned round."""
    other = _ANOTHER.search(said, hit.end)
    if other is None or re.match(r"(?:\w+ ){2,5}(?:it|them|that|those|any)\b", said[other.end() :], re.I):
        return len(said)
    return other.start()


def turned_round(said: str, hit: Found) -> bool:
    """Whether its clause says that it isn't given, or that it went."""
    if _done_without(said, hit):
        return True
    before = said[_verb_clause(said, hit) : hit.start]
    return bool(_NOT.search(UNCUT.sub(" ", _NOT_AVOIDED.sub(" ", before))))  # "we never cut his grapes" is no warning


def hers_first(said: str) -> bool:
    """Whether the baby's share is out before what the sentence tells: "salt the batter only after I've fried hers"."""
    hers = _HERS_FIRST.search(said)
    return hers is not None and not _BEFORE.search(said[: hers.start()])


def _apart(one: re.Match[str], place: tuple[int, int]) -> int:
    """Characters between a match and the food's ``place`` in the same clause."""
    return max(one.start() - place[1], place[0] - one.end(), 0)


def _room(others: re.Match[str]) -> int:
    """Characters that must part words for somebody else from the food: one where the food may be theirs by name ("my
    latte"), else none ("popcorn for us")."""
    return 1 if others.group().lower().startswith(("my ", "our ", "your ")) else 0


def _done_without(said: str, hit: Found) -> bool:
    """Whether the sentence says that it went: "the recipe cut the sugar and she eats it all the same"."""
    before = said[max(0, hit.start - 30) : hit.start]
    if _SWAPPED.search(before) and _FOR_ANOTHER.match(said, hit.end):
        return True
    gone = _DONE_WITHOUT.search(before)
    if not gone or _STILL_IN.search(said[hit.end :]):
        return False
    return not gone.group().lower().startswith("cut") or bool(_POURED.search(said[hit.start : hit.end]))


def _verb_clause(said: str, hit: Found) -> int:
    """Where the clause of the verb that governs the food begins: a list ("no honey, salt or nuts") belongs to it."""
    verbs = [m.start() for m in (*GIVE.finditer(said, 0, hit.start), *ADD.finditer(said, 0, hit.start))]
    if not verbs:
        return 0
    at = max(verbs)
    commas = [m.end() for m in _CLAUSE_END.finditer(said, 0, at)]
    return next((end for end in reversed(commas) if at - end > 14), 0) if commas else 0
