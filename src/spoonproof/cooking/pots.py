"""The walk through the steps: which food is in which pot, and what is done to it there.

One pot is always at hand (the one touched last). New foods that are heated on their own open another; foods that are
stirred, mashed or blended together bring their pots together. What the pot is heated for, all that is in it is
heated for. After the baby's portion is lifted out, steps on the family's bowl touch only what was added to it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.cooking.story import CUT_BY_VERB, Event, Story, cuts_of
from spoonproof.model.kitchen import Foods, Medium, Verb, Verbs
from spoonproof.model.recipe import Action, Cut, Recipe, Step
from spoonproof.model.record import replace
from spoonproof.model.treatment import Heat

_APART = re.compile(
    r"\b(?:meanwhile|in the meantime|separately|at the same time)\b"
    r"|\b(?:in|into|to) (?:an? (?:separate |second |small |large |clean |heavy |dry |wide |little |deep |shallow "
    r"|greased |(?:greased )?(?:oven|baking|ovenproof|roasting) )?|another |a )"
    r"(?:bowl|pan|saucepan|frying pan|pot|jug|dish|tin|tray|mug|steamer)\b",
    re.IGNORECASE,
)
_ALL = re.compile(r"\b(?:everything|all of it|it all|all the|all together|the lot|together)\b", re.IGNORECASE)
_BOTH_DONE = re.compile(
    r"\b(?:until|till|once|when) (?:they(?: are|'re)? )?(?:both|all|everything|each)\b", re.IGNORECASE
)
_OVER_POT = re.compile(r"\bover (?:them|it|the)\b", re.IGNORECASE)  # "steam the cabbage over them"
_OVER_ALL = re.compile(r"\bpour (?:it |this |that |them )?over(?=\s*(?:[,.;]|and\b|$))", re.IGNORECASE)
_THE_REST = re.compile(r"\bthe rest\b(?! of)", re.IGNORECASE)
_IN_AGAIN = re.compile(
    r"\b(?:(?:stir|mix|fold|beat|whisk|swirl)(?: (?:it|this|that|them))? (?:in|through)|add(?: it| this| that| them)?)"
    r"(?=\s*(?:[,.;]|and\b|$))",
    re.IGNORECASE,
)
_INTO = re.compile(r"\b(?:to|into|over|onto) the\b", re.IGNORECASE)
_INTO_POT = re.compile(
    r"\b(?:in|into|onto|over|to) (?:the |a |your )?(?:[a-z-]+ ){0,2}?(?:pot|pan|saucepan|bowl|dish|tin|jug|soup|sauce"
    r"|stew|mix|mixture|batter|dough|porridge|curry|dal|dhal|mash|rice|pasta|water|stock|milk|broth)s?\b"
    r"|\b(?:grate|crumble|flake|shred|tear|chop|slice|snip|break|dice) in\b",
    re.IGNORECASE,
)
_LAST = re.compile(r"\b(?:last|final)\b", re.IGNORECASE)
_FLESH = re.compile(r"\b(?:flesh|insides|pulp)\b", re.IGNORECASE)
_WITH = re.compile(r"\W{0,9}(?:\w{1,20}ly\W{1,9})?(?:with|in)\b", re.IGNORECASE)
_KEEP_WATER = re.compile(r"\b(?:keep|keeping|reserve|reserving|save|saving)\b", re.IGNORECASE)
_BROTH = re.compile(r"\b(?:strain|siev)\w*(?: off)? (?:the |this |your )?(?:broth|stock|infusion)\b", re.IGNORECASE)
_THROWN = re.compile(r"\b(?:discard|throw|bin|fish out|remove|pick out)", re.IGNORECASE)
_FINE = ("smooth", "thick")
_STIRRED = ("mix", "whisk")  # "mix the dry things, and beat the rest in a jug"
_OVERNIGHT = 480.0  # minutes
_PRESSURE = re.compile(r"\bwhistles?\b|\b(?:in|using|with) (?:an?|the|your) pressure (?:cooker|pan)\b", re.I)


class Kitchen:
    """The pots and the stories while the steps are walked; ``events`` are the actions in order."""

    def __init__(self, recipe: Recipe, foods: Foods, verbs: Verbs) -> None:
        self.recipe = recipe
        self.verbs = verbs
        self.stories = [
            Story(i, line, foods.get(line.food) if line.food else None, cuts=list(line.cuts))
            for i, line in enumerate(recipe.foods)
        ]
        self.pots: list[list[int]] = []
        self.at_hand: list[int] = []
        self.beneath: list[int] | None = None  # the pot that the steamer at hand stands over
        self.events: list[Event] = []

    def walk(self) -> list[Story]:
        """Every line's story, in the order of the food lines."""
        for step in self.recipe.steps:
            for action in step.actions:
                try:
                    verb = self.verbs.get(action.verb)
                except KeyError:
                    continue
                # one step can speak of both bowls: the action says whose it is about
                self._act(replace(step, bowl=action.bowl) if action.bowl else step, action, verb)
        for story in self.stories:
            if story.joined is None:
                story.joined = story.seen
        return self.stories

    def _act(self, step: Step, action: Action, verb: Verb) -> None:
        named = [i for i in action.foods if 0 <= i < len(self.stories)]
        prepares = verb.role == "cut" or (verb.role == "other" and verb.water == "none")
        puts_in = verb.role == "join" or (verb.id in _STIRRED and step.bowl is None)
        if not named and puts_in and _THE_REST.search(self._words(step, action)):
            named = [i for i in range(len(self.stories)) if i not in self._listed()]  # "add the rest and simmer"
        before = verb.role == "cut" and action.everything and not self.pots  # "chop everything up" on the board
        if before:
            named = [story.index for story in self.stories if story.solid]
        if prepares and (before or not action.everything):
            self._prepare(step, action, verb, named)
            new = [i for i in named if self._home(i) is None]
            if new and self.at_hand and verb.role == "cut" and self._cut_into_pot(step, action):
                # "flake the fish into the pot": it is in there for all that follows
                self._merge([self.at_hand], new)
                for i in new:
                    self._join(i, step)
            self.events.append(Event(step.index, action, verb, tuple(named), tuple(named or self.at_hand), step.bowl))
            return
        pot = self._pot(step, action, verb, named)
        for i in pot:
            self._join(i, step)
        reached = self._reached(action, verb, named, pot)
        self.events.append(Event(step.index, action, verb, tuple(reached), tuple(pot), step.bowl))
        if step.bowl == "family":
            reached = [i for i in reached if self.stories[i].bowl == "family"]
        self._do(step, action, verb, reached)

    def _prepare(self, step: Step, action: Action, verb: Verb, named: Sequence[int]) -> None:
        targets = named or (self.at_hand if verb.role == "cut" else ())
        for i in targets:
            story = self.stories[i]
            if step.bowl == "family" and story.bowl != "family" and story.joined is not None:
                continue
            if story.seen is None:
                story.seen = step.index
                if story.joined is None:
                    story.bowl = step.bowl  # joining a pot later says it again
            shape = CUT_BY_VERB.get(verb.id)
            if action.cuts:
                story.cuts.extend(cuts_of(action, i))
            elif shape:
                story.cuts.append(Cut(shape, action.span))
            if verb.texture:
                story.made, story.made_step = verb.texture, step.index

    def _pot(self, step: Step, action: Action, verb: Verb, named: list[int]) -> list[int]:
        """The pot this action is about, with all that it puts in."""
        if self.beneath is not None and (verb.role == "blend" or verb.water == "drained"):
            self._merge([self.beneath, self.at_hand], [])
            self.beneath = None  # off the heat, steamer and all
        below = self.at_hand
        pot = self._pot_of(step, action, verb, named)
        if pot is not below:
            over = below and verb.medium == "steam" and _OVER_POT.search(self._words(step, action))
            self.beneath = below if over else None
        return pot

    def _pot_of(self, step: Step, action: Action, verb: Verb, named: list[int]) -> list[int]:
        portion = step.bowl == "baby" and verb.role in ("cut", "blend")  # the baby's portion comes out of every pot
        whole = portion or _ALL.search(self._words(step, action)) or self._after_both(step, action, verb)
        if action.everything and (not self.at_hand or whole):
            return self._everything(step, verb, named)
        new = [i for i in named if self._home(i) is None]
        held = dict.fromkeys(self._home(i) for i in named)
        homes = [self.pots[home] for home in held if home is not None]
        if not named and verb.role == "split" and _FLESH.search(self._words(step, action)):
            return self._baked() or self.at_hand
        if not named and self.at_hand and verb.role == "join" and _OVER_ALL.search(self._words(step, action)):
            return self._merge(list(self.pots), [])  # "pour over": over what was cooked before
        if not named and verb.role == "join" and _IN_AGAIN.search(self._words(step, action)):
            cooked = self._cooked_before()
            return self._merge([cooked, self.at_hand], []) if cooked else self.at_hand
        if not named:
            return self.at_hand
        if homes:
            joins_hand = verb.role in ("join", "season", "serve") and self.at_hand and not self._apart(step, action)
            if len(named) > 1 and self._home(named[-1]) is not None and _INTO.search(self._words(step, action)):
                joins_hand = False  # "add the peas to the potatoes": the last one says which pot
            return self._merge([*([self.at_hand] if joins_hand else []), *homes], new)
        if not self.at_hand or self._opens_pot(step, action, verb, new):
            return self._open(new)
        return self._merge([self.at_hand], new)

    def _cooked_before(self) -> list[int] | None:
        """The pot on the heat, where what is at hand was never on it: "mash the banana and stir in"."""
        if not self.at_hand or any(self.stories[i].heats for i in self.at_hand):
            return None
        heated = [pot for pot in self.pots if pot is not self.at_hand and any(self.stories[i].heats for i in pot)]
        return heated[-1] if heated else None

    def _baked(self) -> list[int] | None:
        """The pot that came out of the oven last: whose flesh is scooped out."""
        for pot in reversed(self.pots):
            if any(heat.medium == "oven" for i in pot for heat in self.stories[i].heats):
                self.at_hand = pot
                return pot
        return None

    def _opens_pot(self, step: Step, action: Action, verb: Verb, new: Sequence[int]) -> bool:
        """Whether foods not in any pot yet get one of their own."""
        if self._apart(step, action):
            return True
        if action.more or verb.role in ("season", "serve", "cool", "chill", "split"):
            return False
        if verb.role == "join":
            return False
        if verb.role == "blend" and self._with(action):
            return False
        solids_new = any(self.stories[i].solid for i in new)
        if not solids_new:
            return False  # "mash with the oil", "simmer in the stock"
        solids_there = any(self.stories[i].solid for i in self.at_hand)
        if verb.role in ("heat", "soak") and not solids_there:
            if self._beaten_egg():
                return True  # "whisk the yolk with the oil. Poach the salmon": not in the mayonnaise
            return verb.medium in ("steam", "oven", "microwave")  # the water below a steamer is no part of it
        return True

    def _beaten_egg(self) -> bool:
        """Whether what is at hand is a raw egg in a bowl of its own, not in the heat yet."""
        held = [self.stories[i] for i in self.at_hand]
        eggs = [story for story in held if story.food is not None and "raw-egg-able" in story.food.traits]
        return bool(eggs) and not any(story.heats for story in held)

    def _everything(self, step: Step, verb: Verb, named: Sequence[int]) -> list[int]:
        common = [s.index for s in self.stories if step.bowl == "family" or s.bowl != "family"]
        inside = [i for i in common if self._home(i) is not None]
        if not inside:
            return self._open(common)
        listed = self._listed()
        extra = [i for i in common if i not in inside and (verb.role == "join" or i in named or i not in listed)]
        return self._merge([pot for pot in self.pots if set(pot) & set(inside)], extra)

    def _listed(self) -> set[int]:
        """The lines that some step names."""
        return {i for step in self.recipe.steps for action in step.actions for i in action.foods}

    def _reached(self, action: Action, verb: Verb, named: Sequence[int], pot: list[int]) -> list[int]:
        if verb.role == "blend" and named and not self._with(action):
            solid = [i for i in named if self.stories[i].solid]
            if solid:
                return [i for i in pot if i in named]
        if verb.role in ("join", "season", "split") and named:
            return list(named)
        if verb.id == "heat" and named and all(self._is_fat(i) for i in named):
            return list(named)  # "heat the oil and fry the batter": the pan gets hot, not the batter
        return list(pot)

    def _do(self, step: Step, action: Action, verb: Verb, reached: Sequence[int]) -> None:
        text = self.recipe.document.at(step.span) or step.text
        if verb.role == "heat":
            self._heat(step, action, verb, reached)
        if verb.role in ("soak", "chill") or verb.id == "stand":
            minutes = action.time.high if action.time else (_OVERNIGHT if "overnight" in text.casefold() else 0.0)
            for i in reached:
                food = self.stories[i].food
                fresh = verb.role != "chill" or not self.stories[i].heats  # "overnight oats", no rice left over
                if verb.role == "soak" or (fresh and food is not None and food.hardness == "grain"):
                    self.stories[i].soaked += minutes
        if verb.water == "drained" and _BROTH.search(self._words(step, action)):
            self._strain_off(reached)
        elif verb.water == "drained" and verb.role == "other":
            self._drain(list(reached), keep=bool(_KEEP_WATER.search(text)))
        if verb.role == "blend" and verb.texture:
            for i in reached:
                story = self.stories[i]
                story.made, story.made_step = verb.texture, step.index
                story.blended_first = story.blended_first or (verb.texture in _FINE and not story.heats)
        if verb.role == "split" and action.foods and not step.splits:
            herbs = all((f := self.stories[i].food) is not None and f.group in ("herb", "spice") for i in reached)
            self._lift(reached, thrown=herbs or bool(_THROWN.search(text)))  # nobody goes on with a thyme sprig
        for i in action.foods or reached:
            self.stories[i].cuts.extend(cuts_of(action, i))
            if verb.role == "cut" and not action.cuts and verb.id in CUT_BY_VERB and self.stories[i].solid:
                self.stories[i].cuts.append(Cut(CUT_BY_VERB[verb.id], action.span))  # "break it up with a fork"
        if verb.role in ("join", "season") and action.time is not None:
            self._cook_on(step, action, reached)

    def _heat(self, step: Step, action: Action, verb: Verb, reached: Sequence[int]) -> None:
        medium = verb.medium
        wet = action.with_liquid or action.water_ml is not None or any(self._is_liquid(i) for i in reached)
        if medium == "pan":
            medium = "water" if wet else "fat"
        if medium in ("water", "fat") and _PRESSURE.search(self._words(step, action)):
            medium = "pressure"
        for i in reached:
            story = self.stories[i]
            if story.cuts_heated is None:
                story.cuts_heated = len(story.cuts)
            story.tested = story.tested or action.soft_test
            story.heats.append(
                Heat(verb.id, medium, step.index, action.time, _water(verb, medium), verb.retention, action.covered)
            )

    def _cook_on(self, step: Step, action: Action, reached: Sequence[int]) -> None:
        """ "Stir in the cumin for the last 2 minutes": what joins a hot pot for a time is heated for that time."""
        last = next((heat for i in self.at_hand for heat in reversed(self.stories[i].heats)), None)
        if last is None or last.medium not in ("steam", "water", "fat"):
            return
        for i in self.at_hand if action.soft_test else ():
            self.stories[i].tested = True  # "with the beans for the last 8, until both squash"
        whole = not _LAST.search(self._words(step, action))  # "the last" minutes are counted with the pot's own
        for i in self.at_hand if whole else reached:
            story = self.stories[i]
            if story.cuts_heated is None:
                story.cuts_heated = len(story.cuts)
            story.heats.append(
                Heat(last.verb, last.medium, step.index, action.time, last.water, last.retention, action.covered)
            )

    def _drain(self, reached: Sequence[int], keep: bool) -> None:
        for i in reached:
            story = self.stories[i]
            for at, heat in enumerate(story.heats):
                if heat.medium == "water" and heat.water == "kept":
                    story.heats[at] = Heat(
                        heat.verb, heat.medium, heat.step, heat.minutes, "drained", heat.retention, heat.covered
                    )
            if self._is_liquid(i) and story.heats and not keep:
                story.left_out = True
                for pot in self.pots:
                    pot[:] = [line for line in pot if line != i]

    def _strain_off(self, reached: Sequence[int]) -> None:
        """ "Strain the broth": the liquid stays, what gave it its taste is left in the sieve."""
        for i in reached:
            if self.stories[i].solid:
                self.stories[i].left_out = True
        for pot in self.pots:
            pot[:] = [i for i in pot if i not in reached or not self.stories[i].solid]

    def _lift(self, reached: Sequence[int], thrown: bool) -> None:
        source = next((pot for pot in self.pots if set(pot) & set(reached)), None)
        for pot in self.pots:
            pot[:] = [i for i in pot if i not in reached]
        self.pots = [pot for pot in self.pots if pot]
        self.pots.append(list(reached))
        if thrown:
            for i in reached:
                self.stories[i].left_out = True
        if not thrown:
            self.at_hand = self.pots[-1]
        elif source:
            self.at_hand = source

    def _join(self, i: int, step: Step) -> None:
        story = self.stories[i]
        story.left_out = False
        if story.joined is None:
            story.joined = step.index
            story.bowl = step.bowl

    def _home(self, i: int) -> int | None:
        return next((h for h, pot in enumerate(self.pots) if i in pot), None)

    def _open(self, lines: Sequence[int]) -> list[int]:
        self.at_hand = list(lines)
        self.pots.append(self.at_hand)
        return self.at_hand

    def _merge(self, pots: Sequence[list[int]], new: Sequence[int]) -> list[int]:
        first = pots[0]
        for pot in pots[1:]:
            if pot is not first:
                first.extend(i for i in pot if i not in first)
                self.pots = [kept for kept in self.pots if kept is not pot]
        first.extend(i for i in new if i not in first)
        self.at_hand = first
        return first

    def _is_liquid(self, i: int) -> bool:
        food = self.stories[i].food
        return food is not None and food.hardness == "liquid" and "fat" not in food.group and "oil" not in food.id

    def _is_fat(self, i: int) -> bool:
        food = self.stories[i].food
        return food is not None and food.group in ("oil", "fat")

    def _apart(self, step: Step, action: Action) -> bool:
        before = ""
        if action is step.actions[0] and step.span.start <= action.span.start:
            before = self.recipe.document.text[step.span.start : action.span.start]
        return bool(_APART.search(before + " " + self._words(step, action)))

    def _after_both(self, step: Step, action: Action, verb: Verb) -> bool:
        """ "Boil the potatoes and steam the broccoli, until both squash. Mash." """
        said = self.recipe.document.text[step.span.start : action.span.start]
        return verb.role == "blend" and _BOTH_DONE.search(said) is not None

    def _cut_into_pot(self, step: Step, action: Action) -> bool:
        return bool(_INTO_POT.search(self._words(step, action))) and not self._apart(step, action)

    def _words(self, step: Step, action: Action) -> str:
        """What the sentence says from this action's verb to the next one's."""
        start = action.span.start if step.span.start <= action.span.start < step.span.end else step.span.start
        following = [other.span.start for other in step.actions if other.span.start > action.span.start]
        return self.recipe.document.text[start : min(following, default=step.span.end)]

    def _with(self, action: Action) -> bool:
        """Whether the first thing after the verb is "with ..." or "in ...": "mash with the oil"."""
        text = self.recipe.document.text[action.span.start : action.span.start + 80]
        word = re.match(r"\W{0,9}[^\W\d_]{1,40}(?:-[^\W\d_]{1,40})?", text)
        return bool(word and _WITH.match(text, word.end()))


def _water(verb: Verb, medium: Medium) -> str:
    if medium in ("steam", "oven", "fat"):
        return "none"
    return verb.water
