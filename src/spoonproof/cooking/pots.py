"""The walk through the steps: which food is in which pot, and what is done to it there.

One pot is always at hand (the one touched last). New foods that are heated on their own open another; foods that are
stirred, mashed or blended together bring their pots together. What the pot is heated for, all that is in it is
heated for. After the baby's portion is lifted out, steps on the family's bowl touch only what was added to it.
"""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.cooking import pot_words as says
from spoonproof.cooking.found_pots import baked, beaten_egg, cooked_before, mashed
from spoonproof.cooking.story import CUT_BY_VERB, Event, Story, cuts_of, served_apart, water_of
from spoonproof.model.kitchen import Foods, Verb, Verbs
from spoonproof.model.recipe import Action, Cut, Recipe, Step
from spoonproof.model.record import replace
from spoonproof.model.treatment import Heat

_FINE = ("smooth", "thick")
_STIRRED = ("mix", "whisk")  # "mix the dry things, and beat the rest in a jug"
_HEATING = ("heat", "melt", "warm")
_OVERNIGHT = 480.0  # minutes


class Kitchen:
    """The pots and the stories while the steps are walked; ``events`` are the actions in order."""

    def __init__(self, recipe: Recipe, foods: Foods, verbs: Verbs) -> None:
        self.recipe = recipe
        self.verbs = verbs
        self.stories = [
            Story(i, line, foods.get(line.food or ""), bowl=served_apart(line), cuts=list(line.cuts))
            for i, line in enumerate(recipe.foods)
        ]
        self.pots: list[list[int]] = []
        self.at_hand: list[int] = []
        self.waiting: list[int] | None = None  # what goes into the pan whose fat is getting hot
        self.beneath: list[int] | None = None  # the pot that the steamer at hand stands over
        self.board: list[int] = []  # what was made ready last and is in no pot yet
        self.events: list[Event] = []
        self.listed = {i for step in recipe.steps for action in step.actions for i in action.foods}  # lines steps name

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
        if verb.id == "cover" and (named or action.with_liquid or action.water_ml is not None):
            verb = self.verbs.get("add")  # "cover with cold water": no lid
        prepares = verb.role == "cut" or (verb.role == "other" and verb.water == "none")
        # "drain the soaked rice": at the sink, while the pot at hand stays on the heat
        prepares = prepares or (verb.water == "drained" and bool(named) and all(self._home(i) is None for i in named))
        words = self._words(step, action)
        puts_in = verb.role == "join" or (verb.id in _STIRRED and step.bowl is None)
        if not named and puts_in and says.THE_REST.search(words):
            named = [i for i in range(len(self.stories)) if i not in self.listed]  # "add the rest and simmer"
        before = verb.role == "cut" and action.everything and not self.pots  # "chop everything up" on the board
        if before:
            named = [story.index for story in self.stories if story.solid]
        if prepares and (before or not action.everything):
            self._make_ready(step, action, verb, named)
            return
        if verb.role in ("blend", "join") and len(self.pots) > 1 and says.BOTH.search(words):
            named = []
            others = [pot for pot in self.pots if pot is not self.at_hand and not self._all_out(pot)]
            pot = self._merge([*others[-1:], self.at_hand], [])
        else:
            pot = self._pot(step, action, verb, [*self._from_board(step, verb, named), *named])
        self.board = []
        for i in pot:
            self._join(i, step)
        reached = self._reached(action, verb, named, pot)
        self.events.append(Event(step.index, action, verb, tuple(reached), tuple(pot), step.bowl))
        if step.bowl == "family":
            reached = [i for i in reached if self.stories[i].bowl == "family"]
        self._do(step, action, verb, reached)

    def _make_ready(self, step: Step, action: Action, verb: Verb, named: list[int]) -> None:
        """What is done on the board or at the sink, whatever is on the heat meanwhile."""
        self._prepare(step, action, verb, named)
        new = [i for i in named if self._home(i) is None]
        self.board += new
        into_pot = verb.role == "cut" and says.INTO_POT.search(self._words(step, action))
        if new and self.at_hand and into_pot and not self._apart(step, action):
            self._merge([self.at_hand], new)  # "flake the fish into the pot": it is in there for all that follows
            for i in new:
                self._join(i, step)
        self.events.append(Event(step.index, action, verb, tuple(named), tuple(named or self.at_hand), step.bowl))

    def _from_board(self, step: Step, verb: Verb, named: Sequence[int]) -> list[int]:
        """What liquid and flavours are added to where no pot is named: "rinse the rice, add the water and simmer"."""
        if verb.role != "join" or any(self.stories[i].solid and not self.stories[i].flavours for i in named):
            return []
        return [i for i in dict.fromkeys(self.board) if not self.at_hand or self.stories[i].seen == step.index]

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
            over = below and verb.medium == "steam" and says.OVER_POT.search(self._words(step, action))
            self.beneath = below if over else None
        return pot

    def _pot_of(self, step: Step, action: Action, verb: Verb, named: list[int]) -> list[int]:
        words = self._words(step, action)
        portion = step.bowl == "baby" and verb.role in ("cut", "blend")  # the baby's portion comes out of every pot
        # "steam both, until they all squash. Mash."
        ahead = self._ahead(step, action)
        of_all = says.LET_ALL.search(ahead) or (verb.role == "blend" and says.BOTH_DONE.search(ahead))
        if action.everything and (not self.at_hand or portion or of_all or says.ALL.search(words)):
            return self._everything(step, action, verb, named)
        fats = verb.role == "heat" and named and all(self.stories[i].fat for i in named)
        if fats and self.at_hand and verb.id not in _HEATING and says.IN_FAT.search(words):
            return self._merge([self.at_hand], named)  # "fry the patties in the rest of the oil"
        if self.waiting and not named and verb.role == "heat":
            held = self.waiting  # "melt the butter and fry spoonfuls"
            self.waiting = None
            return self._merge([held, self.at_hand], []) if held in self.pots else self.at_hand
        if fats and not self._with(action):
            raw = [pot for pot in self.pots if len(pot) > 1 and not any(self.stories[i].heats for i in pot)]
            self.waiting = raw[-1] if raw else self.at_hand
        elif named:
            self.waiting = None
        if not named and verb.role == "heat" and self._egg_waits() and says.PAN_OF_WATER.search(words):
            return []  # "bring a pan of water to the boil", while raw eggs wait in a bowl
        return self._pot_named(step, action, verb, named) if named else self._pot_unnamed(step, verb, words)

    def _pot_unnamed(self, step: Step, verb: Verb, words: str) -> list[int]:
        """The pot of an action that names no food: the one at hand, unless its words say which."""
        if verb.role == "split" and step.splits and len(self.pots) > 1:
            hot_pots = [pot for pot in self.pots if any(self.stories[i].heats for i in pot) and not self._all_out(pot)]
            return self._merge(hot_pots or [self.at_hand], [])  # "boil the pasta; lift out the baby's sauce": of each
        if verb.role == "split" and says.FLESH.search(words):
            self.at_hand = baked(self.pots, self.stories) or self.at_hand
            return self.at_hand
        if self.at_hand and verb.role == "join" and says.OVER_ALL.search(words):
            return self._merge(list(self.pots), [])  # "pour over": over what was cooked before
        if verb.role == "join" and says.IN_AGAIN.search(words):
            cooked = cooked_before(self.pots, self.at_hand, self.stories)
            return self._merge([cooked, self.at_hand], []) if cooked else self.at_hand
        if verb.role in ("join", "season") and says.THE_MASH.search(words):
            mash = mashed(self.pots, self.at_hand, self.stories, bool(says.ONTO.search(words)))
            return self._merge([self.at_hand, mash], []) if mash and self.at_hand else self.at_hand
        return self.at_hand

    def _pot_named(self, step: Step, action: Action, verb: Verb, named: list[int]) -> list[int]:
        """The pot of an action that names its foods: where they are, or where they go."""
        words = self._words(step, action)
        shared = [i for i in named if self._shared_out(i, words)]
        if shared:
            return self._with_a_part(step, action, verb, [i for i in named if i not in shared], shared)
        new = [i for i in named if self._home(i) is None]
        homes = [self.pots[home] for home in dict.fromkeys(map(self._home, named)) if home is not None]
        if not homes:
            opens = not self.at_hand or self._opens_pot(step, action, verb, new)
            return self._open(new) if opens else self._merge([self.at_hand], new)
        apart = self._apart(step, action)
        if verb.role == "join" and not apart and all(pot is self.at_hand for pot in homes):
            hot = cooked_before(self.pots, self.at_hand, self.stories)
            if hot and says.THEM_IN.search(words):
                return self._merge([hot, self.at_hand], new)  # "soak the rice. Add it with the peas": to what cooks
        joins_hand = verb.role in ("join", "season", "serve") and self.at_hand and not apart
        if len(named) > 1 and self._home(named[-1]) is not None and says.INTO.search(words):
            joins_hand = False  # "add the peas to the potatoes": the last one says which pot
        return self._merge([*([self.at_hand] if joins_hand else []), *homes], new)

    def _shared_out(self, i: int, words: str) -> bool:
        """ "The rest of the milk": of a liquid, fat or powder that is in one pot a part goes into another."""
        parts = not self.stories[i].solid or self.stories[i].fat
        return parts and self._home(i) is not None and says.takes_a_part(words, self.stories[i].line.name)

    def _with_a_part(self, step: Step, action: Action, verb: Verb, whole: list[int], shared: list[int]) -> list[int]:
        """The pot this is about, with a part of what stays in its own pot too."""
        if whole:
            pot = self._pot_of(step, action, verb, whole)
        elif verb.role == "heat" and not self._with(action):
            return self._open(shared)  # "melt the remaining butter"
        else:
            pot = self.at_hand
        return self._merge([pot], shared) if pot else self._open(shared)

    def _opens_pot(self, step: Step, action: Action, verb: Verb, new: Sequence[int]) -> bool:
        """Whether foods not in any pot yet get one of their own."""
        if self._apart(step, action) or (self._egg_waits() and says.PAN_OF_WATER.search(self._ahead(step, action))):
            return True
        if action.more or verb.role in ("join", "season", "serve", "cool", "chill", "split"):
            return False
        if verb.id == "sweat" and any(self.stories[i].fat for i in self.at_hand):
            return False  # "brown the chicken in the oil. Soften the leek": in the fat that is there
        if verb.role == "blend" and self._with(action):
            return False
        solids_new = any(self.stories[i].solid for i in new)
        if not solids_new:
            return False  # "mash with the oil", "simmer in the stock"
        solids_there = any(self.stories[i].solid for i in self.at_hand)
        if verb.role in ("heat", "soak") and not solids_there:
            return self._egg_waits() or verb.medium in ("steam", "oven", "microwave")  # nor in the water below
        return True

    def _everything(self, step: Step, action: Action, verb: Verb, named: Sequence[int]) -> list[int]:
        there = [s for s in self.stories if s.index in named or not (s.left_out and s.flavours)]  # no sprig fished out
        common = [s.index for s in there if step.bowl == "family" or s.bowl != "family"]
        inside = [i for i in common if self._home(i) is not None]
        if not inside:  # "mix the oats and the egg, and bake": not the apple that a later step serves beside them
            every = not named or says.ALL.search(step.text) or says.THE_REST.search(step.text)
            return self._open([i for i in common if every or i in named or i not in self.listed])
        more = verb.role == "join" and not says.POT_ALONE.search(self._words(step, action))
        extra = [i for i in common if i not in inside and (more or i in named or i not in self.listed)]
        pots = [pot for pot in self.pots if set(pot) & set(inside)]
        return self._merge([pot for pot in pots if not self._all_out(pot)] or pots, extra)

    def _all_out(self, pot: Sequence[int]) -> bool:
        """Whether nobody goes on with what is in the pot: a sprig that was fished out."""
        return all(self.stories[i].left_out for i in pot)

    def _reached(self, action: Action, verb: Verb, named: Sequence[int], pot: list[int]) -> list[int]:
        if verb.role == "blend" and named and not action.everything and not self._with(action):
            solid = [i for i in named if self.stories[i].solid]
            if solid:
                return [i for i in pot if i in named]
        if verb.role in ("join", "season", "split") and named:
            return list(named)
        if verb.id == "heat" and named and all(self.stories[i].fat for i in named):
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
        broth = says.BROTH.search(self._words(step, action)) if (drains := verb.water == "drained") else None
        if drains and (broth is not None or not any(self.stories[i].in_a_sieve for i in reached)):
            self._strain_off([i for i in reached if not (broth and broth["milk"]) or self.stories[i].flavours])
        elif drains and verb.role == "other":
            self._drain(list(reached), keep=bool(says.KEEP_WATER.search(text)))
        pieces_left = verb.texture in _FINE or says.REST_IN_PIECES.search(text)
        if verb.role == "blend" and verb.texture and not (pieces_left and self._part_of_pot(step, action)):
            for i in reached:
                story = self.stories[i]
                story.made, story.made_step = verb.texture, step.index
                story.blended_first = story.blended_first or (verb.texture in _FINE and not story.heats)
        if verb.role == "split" and action.foods and not step.splits:
            herbs = all(self.stories[i].flavours for i in reached)
            self._lift(reached, thrown=herbs or bool(says.THROWN.search(text)))  # nobody goes on with a thyme sprig
        for i in action.foods or reached:
            self.stories[i].cuts.extend(cuts_of(action, i))
            if verb.role == "cut" and not action.cuts and verb.id in CUT_BY_VERB and self.stories[i].solid:
                self.stories[i].cuts.append(Cut(CUT_BY_VERB[verb.id], action.span))  # "break it up with a fork"
        if verb.role in ("join", "season") and action.time is not None:
            self._cook_on(step, action, reached)

    def _heat(self, step: Step, action: Action, verb: Verb, reached: Sequence[int]) -> None:
        medium = verb.medium
        wet = action.with_liquid or action.water_ml is not None or any(self.stories[i].liquid for i in reached)
        if medium == "pan":
            medium = "water" if wet else "fat"
        if medium in ("water", "fat") and says.PRESSURE.search(self._words(step, action)):
            medium = "pressure"
        for i in reached:
            story = self.stories[i]
            story.tested = story.tested or action.soft_test
            water = water_of(verb, medium)
            story.warm(Heat(verb.id, medium, step.index, action.time, water, verb.retention, action.covered))

    def _cook_on(self, step: Step, action: Action, reached: Sequence[int]) -> None:
        """ "Stir in the cumin for the last 2 minutes": what joins a hot pot for a time is heated for that time."""
        last = next((heat for i in self.at_hand for heat in reversed(self.stories[i].heats)), None)
        if last is None or last.medium not in ("steam", "water", "fat"):
            return
        for i in self.at_hand if action.soft_test else ():
            self.stories[i].tested = True  # "with the beans for the last 8, until both squash"
        # "in the last 20 minutes add the peas"
        ahead = says.LAST_AHEAD.search(self._ahead(step, action))
        whole = not (ahead or says.LAST.search(self._words(step, action)))
        for i in self.at_hand if whole else reached:
            self.stories[i].warm(replace(last, step=step.index, minutes=action.time, covered=action.covered))

    def _drain(self, reached: Sequence[int], keep: bool) -> None:
        for i in reached:
            story = self.stories[i]
            for at, heat in enumerate(story.heats):
                if heat.medium == "water" and heat.water == "kept":
                    story.heats[at] = replace(heat, water="drained")
            if story.liquid and story.heats and not keep:
                story.left_out = True
                for pot in self.pots:
                    pot[:] = [line for line in pot if line != i]

    def _strain_off(self, reached: Sequence[int]) -> None:
        """ "Strain the broth": the liquid stays, what gave it its taste is left in the sieve."""
        for i in reached:
            if self.stories[i].solid or self.stories[i].flavours:
                self.stories[i].left_out = True
        for pot in self.pots:
            pot[:] = [i for i in pot if i not in reached or not self.stories[i].left_out]

    def _lift(self, reached: Sequence[int], thrown: bool) -> None:
        source = next((pot for pot in self.pots if set(pot) & set(reached)), None)
        for pot in self.pots:
            pot[:] = [i for i in pot if i not in reached]
        self.pots = [pot for pot in self.pots if pot]
        self.pots.append(list(reached))
        for i in reached if thrown else ():
            self.stories[i].left_out = True
        self.at_hand = (source or self.at_hand) if thrown else self.pots[-1]

    def _join(self, i: int, step: Step) -> None:
        story = self.stories[i]
        story.left_out = False
        if story.joined is None:
            story.joined = step.index
            story.bowl = step.bowl

    def _home(self, i: int) -> int | None:
        """The pot that a line is in: the one at hand, else the one touched last of those that share it."""
        order = sorted(range(len(self.pots)), key=lambda h: (self.pots[h] is self.at_hand, h), reverse=True)
        return next((h for h in order if i in self.pots[h]), None)

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

    def _apart(self, step: Step, action: Action) -> bool:
        before = self._ahead(step, action) if action is step.actions[0] else ""
        return bool(says.APART.search(before + " " + self._words(step, action)))

    def _part_of_pot(self, step: Step, action: Action) -> bool:
        own = self._words(step, action)
        part = says.A_PART_OF_POT.search(own) or says.A_PART_OF_POT.search(self._ahead(step, action))
        return part is not None and step.bowl != "baby" and "baby" not in own.lower()

    def _ahead(self, step: Step, action: Action) -> str:
        """What the step says before this action's verb."""
        return self.recipe.document.text[step.span.start : action.span.start]

    def _words(self, step: Step, action: Action) -> str:
        """What the sentence says from this action's verb to the next one's."""
        start = action.span.start if step.span.start <= action.span.start < step.span.end else step.span.start
        following = [other.span.start for other in step.actions if other.span.start > action.span.start]
        return self.recipe.document.text[start : min(following, default=step.span.end)]

    def _egg_waits(self) -> bool:
        return beaten_egg([self.stories[i] for i in self.at_hand])

    def _with(self, action: Action) -> bool:
        """Whether the first thing after the verb is "with ..." or "in ...": "mash with the oil"."""
        return says.with_first(self.recipe.document.text[action.span.start : action.span.start + 80])
