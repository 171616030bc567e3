"""Shapes that the steps make: small balls, rounds of a roll of mince, set jelly, food baked hard, dried tough, frozen
hard, boiled to a toffee or put on a skewer."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from spoonproof.feeding.baby_steps import baby_text, only_family
from spoonproof.feeding.step_words import FLATTENED, JELLY_CUBES, MASHED_UP, ROLLED, SMALL_BALL, SOFT_END
from spoonproof.feeding.words import keys
from spoonproof.model.recipe import Recipe, Step
from spoonproof.model.record import NamedTuple

_LOGS = re.compile(
    r"\b(?:shape|form|roll|mould|press|squeeze|mold)\w*\b[^.;]{0,60}"
    r"\b(?:logs?|sausages?|sausage[- ]shapes?|cigars?|cylinders?|skewers?|koft[ae]s?|kebabs?|kabobs?)\b",
    re.I,
)
_ROUNDS = re.compile(
    r"\b(?:slic|cut|chop)\w*\b(?:[^.;]|\.\d){0,40}"
    r"\b(?:rounds|coins|discs|disks|circles|slices|chunks|bite[- ]size\w*)\b"
    r"|\b(?:slice|sliced) (?:the )?(?:koft[ae]s?|kebabs?|logs?|sausages?)\b(?! lengthways| lengthwise)",
    re.I,
)
_STICKS = r"(?:skewers?|(?:cocktail|lolly|craft|kebab|bamboo) sticks?|tooth ?picks?|lemongrass stalks)"
_SKEWERED = re.compile(
    rf"\b(?:on|onto|on to|around|round)\b[^.;]{{0,20}}\b{_STICKS}\b"
    # "pin each roll with a cocktail stick", but not "until a skewer comes out clean"
    # "thread three to a bamboo skewer", "push it along wooden skewers"
    rf"|\b(?:thread|push|pierc|impal|spear|slid|stick|stuck)\w*\b[^.;]{{0,40}}\b(?:to|along|with|through|per"
    rf"|over)\b[^.;]{{0,20}}"
    rf"\b{_STICKS}\b"
    rf"|\b(?:pin|fasten|secure|fix|spear|hold|close|skewer)\w*\b[^.;]{{0,40}}\b(?:with|using|by"
    rf"|on)\b[^.;]{{0,20}}\b{_STICKS}\b",
    re.I,
)
_UNSKEWERED = re.compile(
    r"\b(?:off|from|out of)\b[^.;]{0,20}\b(?:skewers?|sticks?|picks?|stalks)\b"
    r"|\b(?:skewers?|sticks?|tooth ?picks?|stalks)\b[^.;]{0,12}\b(?:out|off|away)\b"
    r"|\b(?:remov|discard|pull|take|unthread|slide)\w*\b[^.;]{0,30}\b(?:skewers?|sticks?|tooth ?picks?|stalks)\b",
    re.I,
)

_BAKED_HARD = re.compile(
    r"\b(?:bak|oven|dry|dried|dehydrat)\w*\b[^.]{0,80}\b(?:rock[- ]hard|hard and dry|brittle|(?:they|it) snaps?"
    r"|until [^.;]{0,30}(?<!no )(?<!not )(?<!longer )\b(?:hard|crunchy|snap|snaps)(?![- ]boil))\b",
    re.I,
)

_BAKES = re.compile(r"\b(?:bak|oven|dehydrat)\w*", re.I)
_HARD = (
    r"(?:(?:rock[- ])?hard(?=\W*$|[,;:)]| (?:and|as|when|once|for|enough|through|in|within|overnight|so|but|like)\b)"
    r"|like (?:cement|concrete|stones?|rocks?|a rock|a brick|bricks)\b)"
)
# "They felt soft at first and hardened a lot as they cooled": what words beside the recipe tell of what is baked
_TOLD_HARD = re.compile(
    r"\b(?:they|it|these|this|one|the (?:biscuits?|cookies?|rusks?|rings?|sticks?|bars?|crackers?|fingers?))\b"
    r"[^.;!?]{0,60}\b(?:harden(?:s|ed)?\b|(?:sets?|goe?s?|went|turn(?:s|ed)?|gets?|got|stay(?:s|ed)?|are|is|were|was"
    rf"|becomes?|bakes?|dry|dries|dried) (?:\w+ ){{0,3}}?{_HARD})|\bbaked (?:until |till )?{_HARD}",
    re.I,
)
_NOT_HARD = re.compile(
    r"\b(?:if|unless|until|not|never|too long|over-?bak\w*|soften\w*|soak\w*|dunk\w*|before|once|or)\b|n['’]t\b", re.I
)

_CRISPED = re.compile(
    r"\b(?:bak|oven|roast|dry|dried|dehydrat)\w*\b[^.]{0,80}\b(?:dry and (?:very )?crisp|crisp and (?:very |quite )?dry"
    r"|crisp (?:right|all the way) through)\b",
    re.I,
)
_LEATHERY = re.compile(
    r"\b(?:bak|oven|dry|dried|dehydrat)\w*\b[^.]{0,80}\b(?:leather(?:y)?|rubbery|tacky|tough)\b"
    r"|\b(?:dry|dried|dehydrat)\w*\b[^.]{0,80}\bchewy\b",
    re.I,
)
_FROZEN_HARD = re.compile(r"\b(?:freez|froze)\w*\b[^.;]{0,60}\b(?:rock|hard|like a stone)\b", re.I)
_STILL_FROZEN = re.compile(
    r"\b(?:straight|fresh|right) (?:from|out of) the freezer\b|\b(?:still|rock|while|served?) frozen\b"
    r"|\bfrozen (?:solid|hard)\b",
    re.I,
)
_CANDIED = re.compile(
    r"\b(?:boil|melt|heat|cook|bubbl|simmer|caramelis|carameliz)\w*\b(?:(?!oven)[^;]){0,80}\b(?:(?:hard|soft)[- ]crack"
    r"|crack stage|(?:until|to|into) (?:an? )?(?:\w+ ){0,3}?(?:caramel|amber|toffee|brittle)"
    r"|1[3-7]\d ?°? ?c|(?:2[789]|3[0-2])\d ?°? ?f)\b"
    r"|\b(?:toffee|caramel|brittle|praline|syrup|sugar)\b[^.;]{0,30}\b(?:sets?|hardens?|is hard|shatters?|snaps?)\b",
    re.I,
)
_LOOSENED = re.compile(r"\b(?:cream|milk|butter|sauce|stir in the (?:hot )?water|dissolv\w*)\b", re.I)
_SWEET = frozenset({"sugar", "syrup", "sugary", "honey"})
# purées are frozen in an ice-cube tray to be kept; a cube to suck is another thing
_CUBES_SUCKED = re.compile(
    r"\b(?:giv|serv|offer|hand|let)\w*\b[^.;]{0,40}\bcubes?\b[^.;]{0,20}\b(?:suck|lick|hold|play|chew|gnaw)\w*"
    r"|\bice[- ]cubes? to (?:suck|lick|chew|gnaw)\b",
    re.I,
)
_FREEZES = re.compile(r"\b(?:freez|froze)\w*\b", re.I)
_THAWED = re.compile(
    r"\b(?:thaw|defrost|soften|blend|mash|melt|warm|heat|simmer|bak|cook|crush|grate|shave)\w*\b", re.I
)
# a bean or a chickpea that is crisp is a hard little ball; a roast potato that is crisp is soft inside
_CRUNCHED = re.compile(
    r"\b(?:bak|oven|roast|dry|dried|dehydrat|air|fry|fri|toast)\w*\b[^.]{0,80}\b(?:crunchy|crisp(?:y|ed)?)\b", re.I
)
_PULSES = frozenset({"big-bean", "pea"})
_SEEDS = frozenset({"seed-large"})
_HARD_KINDS = frozenset({"hard-raw", "firm-raw", "hard-raw-unless-ripe", "crisp-raw"})


class Shape(NamedTuple):
    """A shape by the ``kind`` of the hazard tables, the ``words`` for it, and where a step makes it."""

    kind: str
    words: str
    step: Step
    text: str
    start: int
    end: int


def shapes(recipe: Recipe, held: Mapping[int, frozenset[str]], jelly: bool) -> Iterator[Shape]:
    """The shapes in the baby's bowl that no later step undoes. ``held``: the kinds of each line that the bowl holds;
    ``jelly``: something in it sets."""
    kinds = frozenset[str]().union(*held.values())
    pulses = frozenset[str]().union(*(keys(recipe.foods[at].name) for at, one in held.items() if one & _PULSES))
    others = frozenset[str]().union(*(keys(recipe.foods[at].name) for at in held)) - pulses
    steps = [(step, baby_text(step)) for step in recipe.steps if not only_family(step)]
    log = False
    yield from _told_hard(recipe, steps)
    for at, (step, text) in enumerate(steps):
        later = [text for _, text in steps[at + 1 :]]

        def undone(match: re.Match[str], pattern: re.Pattern[str], text: str = text, later: list[str] = later) -> bool:
            return any(pattern.search(words) for words in (text[match.end() :], *later))

        if (match := ROLLED.search(text)) and SMALL_BALL.search(text) and not undone(match, FLATTENED):
            yield Shape("rolled-ball", "small balls", step, text, match.start(), match.end())
        if jelly and (match := JELLY_CUBES.search(text)) and not undone(match, MASHED_UP):
            yield Shape("jelly-cube", "set jelly", step, text, match.start(), match.end())
        if log and (match := _ROUNDS.search(text)) and "lengthw" not in text.lower():
            yield Shape("rolled-ball", "minced meat in rounds", step, text, match.start(), match.end())
        crisped = _CRISPED.search(text) if kinds & (_HARD_KINDS | _SEEDS) else None  # a meringue, crisp and dry, melts
        about = keys(text)
        crunched = _CRUNCHED.search(text) if pulses & about or (pulses and not others & about) else None
        if crunched is not None and undone(crunched, MASHED_UP):
            crunched = None
        if match := _BAKED_HARD.search(text) or crisped or crunched:
            yield Shape("baked-hard", "food baked this hard", step, text, match.start(), match.end())
        if kinds & _SWEET and (match := _CANDIED.search(text)) and not undone(match, _LOOSENED):
            yield Shape("hard-sweet", "sugar boiled to a toffee", step, text, match.start(), match.end())
        if match := _LEATHERY.search(text):
            yield Shape("leathery", "food dried this tough", step, text, match.start(), match.end())
        still = _STILL_FROZEN.search(text) if _THAWED.search(text) is None else None
        if (match := _FROZEN_HARD.search(text) or still) and not jelly and not undone(match, _THAWED):
            yield Shape("frozen-hard", "food frozen this hard", step, text, match.start(), match.end())
        made_cubes = "ice-cube" not in kinds and any(_FREEZES.search(words) for _, words in steps)
        if made_cubes and (match := _CUBES_SUCKED.search(text)):
            yield Shape("ice-cube", "frozen cubes", step, text, match.start(), match.end())
        if (match := _SKEWERED.search(text)) and not undone(match, _UNSKEWERED):
            yield Shape("skewer", match.group().split()[-1], step, text, match.start(), match.end())
            return
        log = log or ("fine-meat" in kinds and _LOGS.search(text) is not None)


def _told_hard(recipe: Recipe, steps: Sequence[tuple[Step, str]]) -> Iterator[Shape]:
    """The step that bakes, where the words beside the recipe tell that what comes of it is hard."""
    summary = recipe.summary.value if recipe.summary is not None else ""
    told = (sentence for sentence in re.split(r"[.!?\n]", f"{summary}. {recipe.story}") if _TOLD_HARD.search(sentence))
    if all(_NOT_HARD.search(sentence) for sentence in told):
        return
    found = ((step, text, _BAKES.search(text)) for step, text in reversed(steps))
    for step, text, match in found:
        if match is not None:
            if SOFT_END.search(text) is None:
                yield Shape("baked-hard", "food baked this hard", step, text, match.start(), match.end())
            return


# "leave the lentils in a jar until they sprout": sprouts grown at home, and not the vegetable
_SPROUTS = re.compile(
    r"\b(?:until|till|when|once|they|have|let|to)\b[^.;]{0,40}(?<!brussels )(?<!brussel )(?<!the )(?<!bean )"
    r"\bsprout(?:s|ed|ing)?\b(?! (?:apart|open))",
    re.I,
)
# "rinse the beans each morning for three days", "until the tails show": said of what can sprout
_GERMINATES = re.compile(
    r"\b(?:leav|left|keep|kept|stand|sit|rest|rins)\w*\b[^.;]{0,80}"
    r"\b(?:two|three|four|five|[2-5]|several|a few)(?:(?: (?:to|or) |[-–])\w+)? days\b|\btails?\b|\bgerminat\w*",
    re.I,
)
_SPROUTING = frozenset({"pulse", "grain", "seed"})


def sprouts(text: str, group: str) -> bool:
    """Whether a step lets a food of this ``group`` sprout."""
    return _SPROUTS.search(text) is not None or (group in _SPROUTING and _GERMINATES.search(text) is not None)
