"""Words in a food line or a step that say how a food is prepared, handled or taken out: closed, and linear to find."""

from __future__ import annotations

import re

COOK = re.compile(
    r"\b(?:steam|boil|simmer|bak|roast|fry|fries|cook(?!ie)|poach|microwav|brais|stew|saut[eé]|sweat"
    r"|grill|scrambl|griddl|pressure|casserol|bring to)"
    # "the boiled eggs", "baking powder", "a frying pan" put nothing into heat
    r"(?!e?d\b)(?!\w*[ -](?:powder|soda|paper|parchment|tray|tins?\b|sheet|dish|pan\b|oil|spray|water))\w*"
    r"|\b(?:is|are|be|been|being|get|gets|until|till|once) (?:\w+ly )?(?:steamed|boiled|baked|roasted|fried"
    r"|cooked|poached|grilled|scrambled|microwaved|stewed|braised)\b"
    r"|\b(?:drop|lower|slide|slip|put|tip)\w*\b[^.;]{0,40}\bin(?:to)?"
    r" (?:\w+ ){0,2}(?:simmering|boiling) (?:water|broth)\b"
    r"|\b(?:over|on) (?:the|an?|very|low|medium|gentle|high|moderate)(?: \w+){0,2} (?:heat|flame|hob)\b",
    re.I,
)
# A clause ends at a stop, and at the words behind which a neighbour stands; "peel and quarter the grapes" is one.
CLAUSE = re.compile(
    r"(?:(?!\b(?:with|over|onto|on|into|beside|alongside|in|through|then|before|until|till|while)\b|[,.;:()])."
    r"|\b(?:in half|in quarters|into (?:quarters|halves|strips|pieces|sticks|thin|small|very|tiny))\b)+",
    re.S,
)
# "Bash them, so that there are still some chunky bits", but not "until no chunky bits are left"
COARSE = re.compile(
    r"(?<!no )(?<!not )(?<!not too )(?<!without )(?<!any )\b(?:coarse(?:ly)?|rough(?:ly)?|chunk(?:y|s)|rubble"
    r"|crunch(?:y)?|(?:lightly|barely) (?:crush|bash|ground|grind|pound)\w*"
    r"|(?:break|broken|snap|crack)\w* (?:\w+ ){0,2}(?:up|into))\b",
    re.I,
)
# "leaving some bite", "until al dente", "still firm in the middle"; not "until no bite is left"
FIRM_END = re.compile(
    r"(?<!no )(?<!not )(?<!without )(?<!longer )\b(?:al dente|chewy|rubbery|resist(?:s|ance)?|firm to the bite"
    r"|tender[- ]crisp|crisp[- ]tender|(?:some|a (?:little|bit of|good)|still|slight) (?:\w+ ){0,2}(?:bite|crunch)"
    r"|(?:bite|crunch) (?:left|to (?:it|them))|still (?:\w+ )?(?:firm|crisp|crunchy|hard)"
    r"|(?:stay|remain|keep|leav)\w* (?:\w+ ){0,2}(?:firm|crunchy|hard))\b",
    re.I,
)
DONE = (
    ("squashed", re.compile(
        r"\b(?:(?<!the )(?<!your )(?<!nut )(?<!winter )(?<!summer )(?<!of )squash"
        r"|flatten|crush|smash|press|squish)(?:e[ds]|ing)?\b(?! (?:squash|out))"
        r"|\b(?:roll|pat|pinch|pop|squeez|bash)\w*\b[^.;,]{0,30}\bflat\b", re.I)),
    ("removed", re.compile(
        r"\b(?:remov|discard|take|takes|taking|lift|fish|pick|throw|strain|sieve|bin|pull|hook|teas|tweez|dig"
        r"|pluck)\w*\b"
        r"[^.;]{0,40}\b(?:out|away|off)\b"
        r"|\b(?:remov|discard|strain|siev|bin)\w*|\b(?:out of|from) (?:the|their|its) shells?\b"
        r"|\bshell (?:the|them|it|each)\b|\bleav(?:e|ing)\b[^.;]{0,40}\bbehind\b", re.I)),
    ("discarded", re.compile(r"\b(?:discard|bin)\w*|\bthrow\w*\b[^.;]{0,30}\baway\b", re.I)),
    ("strained", re.compile(r"\b(?:strain|siev)\w*|\bpass\b", re.I)),
    ("melted", re.compile(r"\b(?:melt|dissolv)\w*", re.I)),
    ("fine", re.compile(
        r"\b(?:shred|minc|grat|crumbl|grind|ground|blitz)\w*|\bflak(?:e|ed|ing)\b|\bfinely\b|\bvery small\b"
        r"|\bchop\w* (?:very )?(?:small|fine)\b|\bvery fine\b"
        r"|\b(?:in|to)(?:to)? (?:\w+ )?(?:shreds|threads|strands|fibres)\b"
        r"|\b(?:to|into|are|as fine as|like) (?:(?:a|an|fine|smooth|very|even|dusty|sandy) ){0,3}"
        r"(?:dust|powder|crumbs?|flour|meal|paste|sand|butter)\b", re.I)),
    ("coarse", COARSE),
    ("said-firm", re.compile(
        rf"\A(?!.*\b(?:if|unless|should (?:it|they|the)|until no)\b).*?{FIRM_END.pattern}", re.I | re.S)),
    ("peeled", re.compile(
        r"\bpeel|\bslip(?:s|ped)?\b[^.;]{0,20}\bskins?\b|\bskins? off\b|\bskin(?:s|ned)? (?:the|them|it)\b", re.I)),
    ("chunk", re.compile(r"\b(?:cut|scoop|spoon|mak|shap)\w*\b[^.;]{0,40}\bballs\b|\bmelon baller\b", re.I)),
    ("toasted", re.compile(r"\btoast", re.I)),
    ("stoned", re.compile(r"\b(?:stone|pit|destone)\b", re.I)),
)  # fmt: skip
IN_FOUR = re.compile(
    r"\bhalv\w+ (?:(?:and|then|them|it|the \w+|each) ){0,3}(?:halv\w+ )?(?:again|twice|each half|once more)\b"
    r"|\bhalv\w*\b[^.;]{0,40}\bhalv\w* (?:them |it |each )?again\b"
    r"|\bin half (?:and half again|twice|and (?:then )?in half again)\b|\b(?:cut|slic|split)\w*\b[^.;]{0,40}"
    r"\b(?:in|into) (?:four|4|six|eight)\b(?! (?:cm|mm))",
    re.I,
)
"""A quarter told as half of a half, or as one of four."""
LAST_MINUTES = re.compile(r"\b(?:add|drop|tip|throw|put)\w*\b[^.;]{0,60}\b(?:last|final)\b", re.I)
ALONE = re.compile(
    r"\b(?:by itself|on its own|off (?:the|a) spoon|on (?:the|a) spoon|(?:straight )?from the (?:spoon|jar))\b", re.I
)
BURST = re.compile(
    r"\b(?:burst|bursting|bursts|collaps(?:e|es|ed|ing)|break(?:s|ing)? down|broken down|fall(?:s|en|ing)? apart|pulpy"
    r"|to a pulp|mush(?:y|es|ed)?|jammy)\b",
    re.I,
)
_MIDDLE = r"(?:middle|cent(?:re|er)|inside|heart)s?"
_GLASSY = r"glassy|translucent|see[- ]through|jelly[- ]like|under(?:done|cooked)"  # fish that has not turned opaque
_UNDONE = rf"(?:pink|rosy|red|raw|blue|cold|blush\w*|{_GLASSY})"
_NOT = r"(?<!no )(?<!not )(?<!not a )(?<!without a )(?<!never )(?<!longer )(?<!any )(?<! of )"
RARE = re.compile(
    r"\b(?:medium[- ])?rare\b|\bblood(?:y|ied)\b|\bstill (?:a little |slightly )?(?:pink|red|raw)\b"
    r"|\b(?:keep|leave|leaving|left|serve|eat|stays?|remains?)\b(?! (?:no|not))[^.;]{0,20}\b(?:pink|rosy|blushing)\b"
    rf"|\b(?:leav|keep|kept|left)\w* (?:the |its |their )?{_MIDDLE} (?:\w+ ){{0,2}}{_UNDONE}\b"
    rf"|\b{_MIDDLE} (?:(?:is|stays?|still|remains?|should|must|looks?|be) ){{1,4}}(?:\w+ )?{_UNDONE}\b"
    rf"|{_NOT}\b(?:blush\w*|rosy|pink(?: tinge)?|hint of pink|raw|{_GLASSY})"
    rf" (?:within\b|inside\b|(?:in|at|towards) (?:the|their|its) (?:very )?{_MIDDLE}\b)"
    rf"|{_NOT}\b(?:(?:blush|touch|trace|tinge|hint|bit) of pink|blush\w*|rosy|pink tinge)"
    r" (?:in|at|inside|near|by|next to) (?:the|their|its) |\bsteak tartare\b"
    rf"|{_NOT}\bpink (?:lamb|beef|burgers?|duck|meat|steaks?|liver|venison)\b"
    r"|\b(?:until|to|till) (?:just |a )?(?:medium|blue)\b(?![- ](?:heat|hot|high|low|large|thick|size|flame|setting"
    r"|well|bowl|pan|paste))(?=[.;, ]|$)",
    re.I,
)
ROLLED = re.compile(
    r"\b(?:roll|shape|form|scoop)\w*\b(?:[^.;]|\.\d){0,60}"
    r"\b(?:\w{0,12}balls?|marbles?|truffles?|bites?|rounds|spheres|bombs|nuggets)\b"
    r"|\b(?:squeez|pinch|pull|mak|mould|mold|drop|fry|fri|poach|turn|portion|divid)\w*\b(?:[^.;]|\.\d){0,60}"
    r"\b(?:\w{0,12}balls|marbles|truffles)\b"
    r"|\broll\w* (?:each|every|them|it)(?: one| piece| spoonful)? (?:\w+ )?round\b(?! the\b)"
    r"|\broll\w*\b[^.;]{0,60}\b(?:palms?|hands)\b",
    re.I,
)
SMALL_BALL = re.compile(
    r"\b(?:(?:size of|(?:big|large|small|bigger|larger|round) (?:as|than)|like) (?:an? |the )?(?:\w+ )?"
    r"(?:grape|cherry|cherries|marble|hazelnut|walnut|olive|blueberry|chickpea|malteser"
    r"|cherry tomato|ping[- ]pong ball)(?:e?s)?"
    r"|(?:grape|cherry|marble|hazelnut|walnut|olive)[- ]sized?"
    r"|(?:tiny|small|mini|little|bite[- ]size[d]?) (?:\w+ )?(?:\w{0,12}balls?|bites?|truffles?|marbles?)"
    r"|marbles|truffles|teaspoons?(?:fuls?)?|tsp|tablespoonfuls?|(?:a|one|each) tablespoon"
    r"|(?:1|one|a|half a) tbsp|(?:(?:[1-3]|2\.5)[-– ]?cm|(?:an?|one)[- ]inch) (?:\w+ )?\w{0,12}balls"
    r"|\w{0,12}balls (?:\w+ ){0,2}?(?:(?:[1-3]|2\.5) ?cm|an inch|one inch)(?! thick| apart))\b",
    re.I,
)
STRAINED_CLEAR = re.compile(
    r"\b(?:strain|siev|filter|pass)\w*\b[^.;]{0,40}\b(?:cloth|muslin|cheesecloth|jelly bag|coffee filter"
    r"|fine sieve|fine strainer)\b",
    re.I,
)
# "Simmer the beef with the star anise. Strain. Shred the beef": what gave its taste stays in the sieve
BARE_STRAIN = re.compile(r"(?:^|[.;,]|\b(?:and|then)) ?strain(?: well| it all| everything)?(?=[.;,]|$| and\b)", re.I)
STRAINED_OFF = re.compile(r"\bstrain\w*\b(?! the (?:pasta|noodles|rice|beans|lentils|peas|vegetables))", re.I)
# "chill until set, and cut into 2 cm cubes"
JELLY_CUBES = re.compile(
    r"\b(?:set|sets|firm)\b[^;]{0,80}?\b(?:cut|slice|dice|chop)\b(?:[^.;]|\.\d){0,40}"
    r"\b(?:cubes?|squares?|dice|diamonds?)\b"
    r"|\b(?:cut|slice|dice|chop)\b(?:[^.;]|\.\d){0,30}\b(?:cubes?|squares?|diamonds?)\b"
    # a mould of a mouthful makes a sweet of it
    r"|\b(?:tiny|mini|small|little|sweet|gummy|gummies|ice[- ]cube|chocolate|heart|bear|star)(?: \w+)?"
    r" (?:mou?lds?|trays?)\b",
    re.I,
)
MASHED_UP = re.compile(r"\b(?:mash|blend|crush|fork|grate|crumble|melt)\w*\b", re.I)
FLATTENED = re.compile(
    r"\b(?:flatten|squash|squish|crush|mash|press|pat(?:ted)? (?:them )?(?:out|flat|down)|flat|quarter|halv|cut|break"
    r"|tear|chop|crumble)\w*\b",
    re.I,
)
SOFT_END = re.compile(
    r"\b(?:until|till)\b[^.;]{0,60}\b(?:soft|tender|squash\w*|collaps\w*|falls? apart|mush\w*)\b", re.I
)
REMOVE = (
    r"(?:(?:remov|discard|tak|lift|pick|pull|throw|scoop|strain|spoon|pluck|bin|check|feel|free|clear|cut|slid"
    r"|slip|flick"
    r"|pop)\w*|fish(?:es|ed|ing)? (?=(?:out|through|for|around|any|all|every|(?:the|its|their) (?:\w+ )?bones?)\b))"
)
BONES = re.compile(
    rf"\b{REMOVE}(?:(?!\b(?:leav|keep|mash|crush|with)\w*)[^.;]){{0,60}}\bbones?\b(?! and all| still| left in| in\b)"
    r"|\bbones? (?:out|removed|discarded|taken)|"
    r"\b(?:meat|flesh) (?:comes? |falls? |pulled |slips? )?(?:off|from) (?:the|its|their|each) (?:[a-z]+ )?"
    r"(?:drumsticks?|legs?|thighs?|wings?|ribs?|carcass|chops?|shanks?|necks?)\b|"
    rf"\boff the bones?\b|\bbone(?:d|less)\b|\bno bones\b|\bde-?bon",
    re.I,
)
STONES = re.compile(
    r"\b(?:stone|pit|destone|de-stone)(?:s|d|ed)? (?:and(?! all)|the|them|each|every|then|your)\b|\b(?:remov|"
    r"discard|tak|twist|pull|pick|cut|squeez|lift)\w*\b(?:(?!\b(?:leav|keep|with)\w*)[^.;]){0,50}"
    r"\b(?:stones?|pits?)\b(?! and all| still| left in| in\b)|\b(?:stoned|"
    r"pitted|stoneless|destoned)\b|\b(?:stones?|pits?) (?:out|removed|discarded)\b",
    re.I,
)
MIX = re.compile(
    r"\b(?:stir|mix|blend|whisk|beat|fold|thin|loosen|swirl|mash|combin|whizz|blitz|process|ripple|"
    r"puré|puree|melt|work in|knead|rub)\w*",
    re.I,
)
SOFTENED = re.compile(
    r"\b(?:soften|soak|steep|crumble)\w*\b[^.;]{0,60}\b(?:milk|water|formula|yogh?urt|juice|cream|broth)\b", re.I
)
SPREAD_THIN = re.compile(
    r"\b(?:spread|scrape|smear|brush)\w*\b[^.;]{0,60}\b(?:thin(?:ly)?|scrap(?:e|ing)|smear)\b|"
    r"\b(?:thin(?:ly)?|scrape|thin layer)\b[^.;]{0,40}\bspread\b|\bscrape of\b|"
    r"\bthin(?:ly)? (?:layer|smear|scraping)\b",
    re.I,
)
GLOB = re.compile(
    r"\b(?:spoonfuls? of|dollops?|blobs?|globs?|by itself|on its own|"
    # "until it runs off the spoon" is the end point of thinning
    r"(?<!runs )(?<!run )(?<!drops )(?<!drop )(?<!falls )(?<!fall )(?<!drips )(?<!slides )off the spoon|on a spoon|"
    r"from the spoon|straight from)\b",
    re.I,
)
DRINK = re.compile(
    r"\b(?:to drink|as a drink|in a (?:cup|beaker|bottle|glass|sippy cup|free-flow cup)(?! of)"
    r"|(?<![\d½¼¾⅓⅔] )(?<!half )(?<!half a )(?<!quarter )(?<!third )(?:cup|"
    r"beaker|bottle|glass|mug) of(?: \w+){0,3} milk|milk to drink|drinks?|open cup"
    r"|into (?:(?:an?|her|his|their|your|the) )?(?:[\w-]+ )?(?:bottle|beaker|sippy cup)s?"
    r"|(?:serv|offer|giv|sip)\w*\b[^.;]{0,40}\b(?:in|from) (?:an?|her|his|their|your|the) (?:[\w-]+ )?"
    r"(?:cup|beaker|bottle|mug))\b",
    re.I,
)
RUNNY = re.compile(
    r"\b(?:runny|soft[- ]boil\w*|dippy|lightly (?:cooked|set|poached|scrambled)|sunny[- ]side|"
    r"over[- ]easy|(?:barely|just|hardly|scarcely) sets?|coddled|soft[- ]poached|still wobbl\w*|softly set|"
    r"softly scrambled|jammy (?:yolks?|eggs?|middles?|cent(?:re|er)s?))\b",
    re.I,
)
# "while they are still soft and wet": said of the egg in the same sentence
UNDERDONE = re.compile(
    r"\b(?:(?:still|just|barely|only|slightly|softly|loosely|(?:a )?(?:little|bit|touch))(?: \w+){0,2}?"
    r"|(?:keep|leav)\w* (?:it|them|the \w+)|stay\w*) (?:soft|wet|wobbl\w*|loose|moist|creamy|liquid"
    r"|glossy|underdone|custardy|trembl\w*|ooz\w*|melting|raw|slack)\b"
    r"|\b(?:heat|warmth|steam) of the \w+ (?:\w+ )?(?:cook|set|thicken|poach)s?\b"
    r"|\bcooks? (?:\w+ ){0,2}?in the (?:hot|warm) (?!oil|fat|butter|pan|oven|water|milk|stock|broth)"
    r"|\b(?:half|not quite|nearly) (?:raw|set)\b|\bbefore (?:it|they|the \w+) (?:\w+ )?sets?\b"
    r"|\bscrambl\w* (?:\w+ ){0,3}?softly\b|\bsoft(?:ly)? scrambl\w*"
    r"|(?:\b(?:not|never)|n['’]t) let (?:\w+ ){1,3}?(?:set|firm)\b"
    r"|\b(?:weep|ooze|run|leak|drip)s?\b(?: \w+){0,3}? (?:when|as) (?:you |it is )?(?:cut|press|open|prod)\w*"
    r"|\b(?:yolks?|middles?|hearts?|cent(?:re|er)s?|whites?|eggs?|insides?) (?:\w+ ){0,3}?(?:soft|wet|wobbl\w*|loose"
    r"|liquid|oozy|ooz(?:e|es|ing)|underdone|juicy|weeps?|runs?|flows?)\b"
    r"(?! (?:dough|batter|mix|mixture|paste|crumb|ball|peaks?)\b)",
    re.I,
)
EGG_WORDS = re.compile(
    r"\b(?:eggs?|yolks?|whites?|scrambl\w*|omelettes?|frittatas?|poach\w*|tortillas?|quiches?)\b", re.I
)
# What it is in is cut open, or looked at from within: "leaving the middle loose", "it weeps when you cut it"
WITHIN = re.compile(r"\b(?:middles?|hearts?|cent(?:re|er)s?|insides?|(?:when|as) you (?:cut|press|open|prod))\b", re.I)
EGG_FIRM = re.compile(
    r"\b(?:if|no|not|never|nothing|isn['’]t|aren['’]t)\b[^.;]{0,30}$"
    r"|\b(?:beat|whisk|cream)\b[^.;]{0,60}\buntil\b[^.;]{0,30}$",  # "beat the eggs until just creamy"
    re.I,
)
SOLID = re.compile(
    r"\b(?:not runny|no longer runny|solid|set (?:right|all the way) through|hard[- ]boil\w*|"
    r"firm(?:ly)? set|cooked through|fully set|(?:nothing|no\w*) (?:\w+ ){0,3}?(?:runny|wet|liquid)|never runny"
    r"|isn't runny|until set|set firm)\b",
    re.I,
)
SLOW = re.compile(r"\b(?:slow[- ]cook\w*|crock ?pot|on (?:the )?low (?:setting|for))\b", re.I)
BOILED_HARD = re.compile(r"\b(?:boil(?!ed kettle)\w*|pressure[- ]cook\w*)\b", re.I)
ACROSS = re.compile(r"\bacross (?:the|its|their) grain\b", re.I)  # into small pieces: what the authority asks for
HOT_THROUGH = re.compile(
    r"\b(?:bubbl\w*|(?:steaming|piping) hot|hot (?:all the way|right) through|melted (?:all the way|right) through)\b",
    re.I,
)
SET_IN_HEAT = re.compile(
    r"\b(?:until|till|so that)\b[^.;]{0,40}\b(?:(?<!just )(?<!barely )(?:set|sets)|firm|solid|cooked through"
    r"|no longer runny|scrambled"
    r"|wilts?|wilted)\b|\bnothing (?:is )?runny\b|\bno (?:liquid|wet|raw|runny|loose) (?:egg|white|yolk)s?\b",
    re.I,
)
# "Golden milk", not "Cod in coconut milk"
# A lolly for sore gums or a drink is no meal of one texture.
NO_MEAL = re.compile(
    r"\b(?:(?:ice )?loll(?:y|ies)|ice pops?|pops|popsicles?|paletas?|smoothies?|lassi|kulfi|sorbet|granita|juices?"
    r"|coolers?|cordial|lemonade|slushy|slush|shakes?|milkshakes?|drinks?)\b",
    re.I,
)
DRINK_NAME = re.compile(r"^(?!.*\b(?:in|with|and|of|for)\b)[^,]{1,40}\bmilk$", re.I)
DRINK_TITLE = frozenset({"drink", "milkshake", "shake", "latte", "babyccino", "beaker"})
# "Sorrel cooler", "Masala chai with cardamom"; not "Chai porridge", nor a tea that may be a meal
DRINK_HEAD = re.compile(
    r"\b(?:cooler|cordial|punch|lemonade|limeade|chai|cocoa|hot chocolate|horchata|atole|champurrado|sherbet|tisane"
    r"|infusion)s?(?=$|,| (?:with|for|from|of|in)\b)",
    re.I,
)

# "take a little of the breast for the baby": meat without bones
CARVED = re.compile(
    r"\b(?:tak|carv|slic|pull|pick|strip|cut|lift)\w*\b[^.;]{0,40}\b(?:breasts?|breast meat|meat|flesh)\b", re.I
)
SHELLS_OPEN = re.compile(
    r"\b(?:until|till|once|when)\b[^.;]{0,40}\b(?:open|opens|opened)\b|\b(?:stay|remain)\w* (?:shut|closed)\b", re.I
)
AROMATICS_OUT = re.compile(
    rf"\b{REMOVE}\b[^.;,]{{0,30}}\b(?:aromatics|whole spices|spice bag|herb bag|bag|muslin|sachet|infuser|flavourings"
    r"|woody (?:bits|stalks|stems))\b",
    re.I,
)
RAW_MILK = re.compile(
    r"\braw[- ]milk (?!powder)\w|\bau lait cru\b|\b(?:a|di) latte crudo\b|\baus rohmilch\b|\bleche cruda\b"
    r"|\b(?:of|from|with|in|using) (?:raw|unpasteuri[sz]ed) (?:\w+['’]?s?['’]? )?milk\b",
    re.I,
)
FROM_THE_COW = re.compile(
    r"\b(?:milk|cream),? (?:\w+ ){0,3}never (?:been |seen a |see a )?pasteuri[sz]\w*"
    r"|\b(?:milk|cream),? (?:\w+ ){0,2}(?:(?:straight|fresh|warm|still warm|skimmed|ladled) (?:off|from|out of)"
    r"|(?:comes|came|is|was) (?:straight |fresh |right )?(?:from|out of))"
    r" (?:the|a|an|our|my|his|her|their|this)? ?(?:\w+['’]s )?(?:\w+ )?"
    r"(?:cow|goat|ewe|sheep|udder|churn|pail|vat|farm(?: gate|er)?|parlour|milking|bulk tank|tank)s?\b",
    re.I,
)

PREPARED = {
    "stoned": "stoned", "pitted": "stoned", "destoned": "stoned", "boned": "boned", "boneless": "boned",
    "filleted": "fillet", "fillet": "fillet", "peeled": "peeled", "skinned": "peeled", "skinless": "peeled",
    "deseeded": "deseeded", "seeded": "deseeded", "seedless": "seedless", "ripe": "ripe",
    "overripe": "ripe", "soaked": "soaked",
    "rehydrated": "soaked", "toasted": "toasted", "melted": "melted", "crushed": "fine", "ground": "fine",
    "unsalted": "no-salt", "rinsed": "drained-rinsed",
    "unsweetened": "unsweetened", "strained": "strained", "sieved": "strained", "scraped": "removed",
    "smoked": "smoked",
    "crumbled": "fine", "mashed": "mashed", "grated": "fine", "shredded": "fine", "flaked": "fine", "minced": "fine",
    "pureed": "blended", "halved": "halved", "quartered": "quartered", "squashed": "squashed", "flattened": "squashed",
    "milled": "fine", "powdered": "fine", "cubed": "chunk", "diced": "dice", "sliced": "slice", "chopped": "chopped",
    "skin": "", "trimmed": "",
}  # fmt: skip
COOKED_WORDS = frozenset(
    """cooked boiled steamed roasted roast baked poached grilled fried stewed microwaved braised leftover tinned canned
    scrambled precooked""".split()
)  # fmt: skip
WORD_FACTS = {
    "ground": "fine", "milled": "fine", "flaked": "fine", "crushed": "fine", "powdered": "fine", "powder": "fine",
    "slivered": "chopped", "sliver": "chopped", "nibbed": "chopped", "kibbled": "chopped",
    "grated": "fine", "shredded": "fine", "minced": "fine", "mashed": "mashed", "pureed": "blended", "puree": "blended",
    "thinly": "thin", "thin": "thin", "wafer": "thin", "matchstick": "thin", "shaved": "thin", "ribbon": "thin",
    "ripe": "ripe", "overripe": "ripe", "squashed": "squashed", "flattened": "squashed", "quartered": "quartered",
    "quarter": "quartered", "halved": "halved", "half": "", "lengthway": "lengthways", "lengthwise": "lengthways",
    "stoned": "stoned", "pitted": "stoned", "stoneless": "stoned", "destoned": "stoned",
    "boneless": "boned", "boned": "boned", "deboned": "boned", "fillet": "fillet", "loin": "fillet",
    "peeled": "peeled", "skinned": "peeled", "skinless": "peeled", "deseeded": "deseeded", "seedless": "seedless",
    "soaked": "soaked", "rehydrated": "soaked", "melted": "melted", "unsalted": "no-salt", "toasted": "toasted",
    "sweetened": "sweetened",
    "homemade": "homemade", "unsweetened": "unsweetened", "lion": "lion", "vegan": "egg-free", "eggless": "egg-free",
    "strained": "strained", "smoked": "smoked", "cured": "smoked", "rinsed": "drained-rinsed",
    "brine": "in-brine", "unpasteurised": "unpasteurised", "unpasteurized": "unpasteurised", "salted": "salted",
    "tinned": "tinned", "canned": "tinned", "tin": "tinned", "can": "tinned",
    "cube": "chunk", "cubed": "chunk", "lardon": "chunk", "coin": "coin", "chunk": "chunk", "flour": "flour",
    "baton": "stick", "stick": "stick",
    "strip": "stick", "finger": "stick", "whole": "whole", "defatted": "", "desiccated": "fine",
}  # fmt: skip
LOW_SALT = re.compile(r"(?<!very )(?<!very-)\b(?:low|lower|reduced|less)[- ](?:in[- ])?(?:salt|sodium)\b", re.I)
NO_SALT = re.compile(
    r"\b(?:no|without|zero|free of|not?)[- ](?:any |added |extra )*salt\b|\b(?:salt|"
    r"sodium)[- ]free\b|\bunsalted\b|\bno[- ]added[- ]salt\b|\bsalt (?:not )?(?:left|free)\b"
    r"|\bvery[- ]low[- ](?:in[- ])?(?:salt|sodium)\b",  # at most 0.04 g sodium in 100 g by law
    re.I,
)
FINELY = re.compile(
    r"\b(?:very |really )?(?:fine|finely|very small|tiny)[- ]+(?:\w+ )?(?:dice|diced|chopped|chop|"
    r"shredded|ground|pieces|sliced|cut|grated|minced)\b|\bchopped (?:very |really )?(?:fine|finely|small)\b"
    r"|\bfinely\b",
    re.I,
)
BONE_IN = re.compile(
    r"\b(?:bone[- ]in|(?:on|through|across) the bone|with (?:the )?bones?|bones? (?:left |still )?in)\b"
    r"|\b(?:unfilleted|unboned)\b"
    r"|\bwhole (?:fish|trout|mackerel|bream|bass|sardine|chicken|rabbit|duck|goose|quails?|pigeon|pheasant|partridge"
    r"|poussin|guinea fowl|hare|turkey)\b|\bjointed\b|\bin joints\b|\b(?:rib|leg|neck|shank|tail) joints?\b",
    re.I,
)
TINY_UNITS = frozenset({"pinch", "dash", "drop", "sprinkle", "smidgen"})
