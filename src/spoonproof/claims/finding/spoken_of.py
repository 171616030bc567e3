"""Words of an illness, of the body or of praise that are only spoken of, or name something else: "a common cause of
diarrhoea is heat", "a teething cracker", "scoop out the seeds and guts"."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, text_after, text_before
from spoonproof.claims.scan import Tagged

_FOODS = frozenset({"food", "dish", "generic-food", "ambiguous-nutrient"})


def _taken_as_drug(tagged: Tagged, match: Match) -> bool:
    """ "A *reaction to antibiotics*": a drug that somebody takes, and nothing in a food."""
    if match.object is None or not tagged.items[match.object[0]].words.startswith("antibiotic"):
        return False
    return _TAKEN.search(text_before(tagged, match.object[0])) is not None


_TAKEN = re.compile(
    r"\b(?:(?:reaction|allergy|response|allergic) to|(?:course|dose|round) of|while on|after|during|prescribed|takes?"
    r"|taking|took|given|with|from) (?:(?:a|the|some|his|her|their|any) )?$"
)


def _great_because(tagged: Tagged, match: Match) -> bool:
    """ "This is *great because my toddler* likes to help": who stands behind the reason is given nothing."""
    return _BECAUSE.search(text_after(tagged, match.trigger[0]).partition(".")[0]) is not None


_BECAUSE = re.compile(r"^\w+ (?:because|since|as|that|cos|when|how) (?:my|our|the|your|his|her) ")


def _a_cause(tagged: Tagged, match: Match) -> bool:
    """ "Another common *cause for* diarrhoea is heat": an illness is spoken of, and no food before it."""
    noun = tagged.items[match.trigger[0]].words in _CAUSE and _CAUSE_BEFORE.search(
        text_before(tagged, match.trigger[0])
    )
    return bool(noun) and not tagged.find(_FOODS)


_CAUSE = frozenset({"cause", "causes"})
_CAUSE_BEFORE = re.compile(r"\b(?:a|an|another|common|main|the|usual|one|possible|other|likely|chief|biggest|these) $")


def _is_common(tagged: Tagged, match: Match) -> bool:
    """ "Constipation *is common* when new foods begin": an illness is spoken of, and no food that does something."""
    if match.object is None or match.subject is None or _COMMON.match(text_after(tagged, match.object[1])) is None:
        return False
    return tagged.items[match.subject[0]].words in _ANY_FOOD


_COMMON = re.compile(
    r"(?:is|are|can be) (?:(?:a|an|very|quite|pretty|really|so|also) ){0,2}(?:common|normal|usual|frequent|part)\b"
)
_ANY_FOOD = frozenset("new food;new foods;solids;solid food;solid foods;food;foods;first foods;weaning".split(";"))


def _of_a_squash(tagged: Tagged, match: Match) -> bool:
    """ "Scoop out the *seeds and guts*": what is inside a pumpkin, and nobody's gut."""
    at = (match.object or match.trigger)[0]
    around = f"{text_before(tagged, at)}{text_after(tagged, at)}"
    return tagged.items[at].words in _GUTS and _SEEDS_AND_GUTS.search(around) is not None


_GUTS = frozenset({"gut", "guts"})
_SEEDS_AND_GUTS = re.compile(
    r"\b(?:seeds?,? (?:and|or) (?:the |stringy )?guts|guts (?:and|or) (?:the )?(?:seeds|strings)"
    r"|guts of (?:the|your|a) |(?:pumpkin|squash|melon)(?:'s)? guts|scoop(?:ing)? (?:out )?[^.]{0,24}guts)\b"
)


def teething_thing(tagged: Tagged, match: Match) -> bool:
    """ "A *teething cracker*": the name of a sort of thing to bite on."""
    if match.object is None or tagged.items[match.object[1] - 1].words != "teething":
        return False
    return _BITTEN_ON.match(text_after(tagged, match.object[1])) is not None


_BITTEN_ON = re.compile(
    r"(?:crackers?|biscuits?|rusks?|rings?|toys?|sticks?|wafers?|cookies?|bars?|loll(?:y|ies)|pops?|popsicles?|mitts?"
    r"|feeders?|teethers?)\b"
)


def _if_not(tagged: Tagged, match: Match) -> bool:
    """ "*If your baby doesn't have a sweet tooth* use gourd": a condition, and nothing that food does."""
    at = (match.object or match.trigger)[0]
    return _CONDITION.search(text_before(tagged, at)) is not None


_CONDITION = re.compile(
    r"\bif (?:your|the|a|my) (?:baby|child|toddler|little one) (?:doesn't|does not|isn't|has no) (?:\w+ ){0,2}$"
)


def ended_up(tagged: Tagged, match: Match) -> bool:
    """ "Most of it ended up *in her hair*": where food goes, and nothing that it does."""
    at = (match.object or match.trigger)[0]
    return tagged.items[at].words in _OUTSIDE and _ON_IT.search(text_before(tagged, at)) is not None


_OUTSIDE = frozenset("hair face ears ear nose eyebrows eyelashes neck fingers toes".split())
_ON_IT = re.compile(r"\b(?:in|on|over|up|into|behind|down|from) (?:his|her|their|my|your|our|the) $")


def of_the_heart(tagged: Tagged, match: Match) -> bool:
    """ "It *warms my heart*", "good for the *heart and soul*": turns of speech."""
    at, end = match.object or match.trigger
    if "heart" not in tagged.items[end - 1].words:
        return False
    return (
        _MOVED.search(f"{text_before(tagged, at)}{tagged.words(at, end).lower()}{text_after(tagged, end)}") is not None
    )


_MOVED = re.compile(
    r"\b(?:warm|melt|br(?:ea|o)k|st(?:ea|o)l|w[io]n|touch|fill)\w* (?:my|our|your|his|her|their|the|every\w*) hearts?\b"
    r"|\bhearts? (?:and|or|&) (?:the |your )?souls?\b|\bheart (?:out|of|melts?|sinks?|sank|skips?|aches?|breaks?)\b"
)


def to_die_for(tagged: Tagged, match: Match) -> bool:
    """ "This cake is *to die for*"."""
    end = (match.object or match.trigger)[1]
    return tagged.items[end - 1].words.endswith("die") and text_after(tagged, end).startswith("for")


def bruised(tagged: Tagged, match: Match) -> bool:
    """ "Avoid avocados that have *bruises*": a fruit's, and nobody's."""
    at = (match.object or match.trigger)[0]
    return tagged.items[at].words in _BRUISES and not tagged.find(_PERSONS)


_BRUISES = frozenset({"bruise", "bruises", "bruising", "bruised"})
_PERSONS = frozenset({"audience-baby", "audience-adult", "the-child", "body"})


def _safe_in_the_freezer(tagged: Tagged, match: Match) -> bool:
    """ "The cubes are *safe to remain* in the freezer": how long it keeps."""
    return _KEEPS.match(text_after(tagged, match.trigger[0])) is not None


_KEEPS = re.compile(
    r"(?:\w+ )?safe(?:ly)? (?:to (?:be )?|in |for (?:up to |about )?)"
    r"(?:remain|keep|kept|store|stored|stay|sit|leave|left|the (?:freezer|fridge|refrigerator)"
    r"|\w+ (?:days?|hours?|weeks?))\b"
)


def _asked_by_the_cook(tagged: Tagged, match: Match) -> bool:
    """ "*When should I add* the milk?": a step of a recipe."""
    return _STEP.match(text_after(tagged, match.trigger[0])) is not None


_STEP = re.compile(
    r"(?:when|can|should|could|may|do)(?: \w+)? (?:i|we|you) (?:add|stir|mix|pour|put|fold|turn|peel|soak|boil|freeze"
    r"|bake|chop|blend|whisk|leave out|take out|sprinkle|reheat|melt|drain|rinse)\b"
)


def _helps_to_cook(tagged: Tagged, match: Match) -> bool:
    """ "*Toddlers over two can help* to tear the lettuce": who helps, and nothing that they eat."""
    return _HELPS.search(text_after(tagged, match.start)) is not None


_HELPS = re.compile(
    r"\bhelp (?:you|us|me|out|in the kitchen|with the|(?:to )?(?:wash|tear|stir|crack|mix|peel|whisk|pour|cook|bake"
    r"|make|lay|set|mash|roll|knead|shop))\b|\b(?:little|junior) (?:chefs?|cooks?|helpers?)\b|\bkitchen helpers?\b"
)


def _chokes_nobody(tagged: Tagged, match: Match) -> bool:
    """ "Don't *choke up*", "the sink is *choked with* pasta", "*I choked on my tea* laughing"."""
    at = (match.object or match.trigger)[0]
    return _CHOKED.search(f"{text_before(tagged, at)}{text_after(tagged, at)}") is not None


_CHOKED = re.compile(
    r"\bchok\w+ up\b|\bchoked with |^\W*(?:i|we) (?:\w+ )?chok|\bchok\w+ on (?:my|our) (?:tea|coffee|drink|wine)\b"
)


def _toxic_to_nobody(tagged: Tagged, match: Match) -> bool:
    """ "*Toxic positivity* isn't my thing"."""
    return _TOXIC.search(text_after(tagged, (match.object or match.trigger)[0])) is not None


_TOXIC = re.compile(r"^toxic (?:positivity|relationship|people|friend|boss|work|mum|masculinity|culture|comment)")


def _since_birth(tagged: Tagged, match: Match) -> bool:
    """ "He has had eczema *since he was tiny*": how long, and no food."""
    return _BIRTH.match(text_after(tagged, match.trigger[0])) is not None and not tagged.find(_FOODS)


_BIRTH = re.compile(r"since (?:birth|(?:he|she|they|i) (?:was|were|had)\b)")


def _not_quite(tagged: Tagged, match: Match) -> bool:
    """ "*Healthy-ish* comfort food"."""
    return text_after(tagged, (match.object or match.trigger)[1]).startswith(("-ish", "ish"))


def _tastes_better(tagged: Tagged, match: Match) -> bool:
    """ "Home-cooked beans are far *better than* canned": of taste, where no nutrient is named."""
    at, end = match.object or match.trigger
    if match.subject is not None and match.subject[0] == end and not tagged.find(_FOODS):
        return True  # "my journey to *healthier cooking*"
    return tagged.items[at].words in ("better", "best") and not tagged.find(_HEALTH)


_HEALTH = frozenset("nutrient nutrient-weak health health-weak healthy healthier effect digest absorb".split())

SPOKEN_OF: Mapping[str, tuple[Ask, ...]] = {
    "better-since": (_if_not,),
    "brings-disease": (_a_cause,),
    "age-and-food": (_helps_to_cook,),
    "asked-when": (_asked_by_the_cook,),
    "can-babies": (_asked_by_the_cook,),
    "choking": (_chokes_nobody,),
    "contaminant": (_taken_as_drug,),
    "disease-and-food": (_is_common,),
    "fine-for-babies": (_great_because,),
    "food-and-weak-function": (_of_a_squash,),
    "from-age": (_helps_to_cook,),
    "harmful": (_toxic_to_nobody,),
    "healthy-dish": (_not_quite,),
    "process-makes": (_tastes_better,),
    "told-beside": (_since_birth,),
    "younger-than": (_helps_to_cook,),
    "safe": (_safe_in_the_freezer,),
}
"""Rule name and what to ask of its matches."""
