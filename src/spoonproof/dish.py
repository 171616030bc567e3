"""The pipeline on one page: what one recipe is, joined from the four rooms, each part computed once.

recipe ─► treatments (cooking) ─► facts (foods) ─► numbers ─► claims judged (claims)
                    └──► hazards, texture, allergens, cautions, keeping (feeding)
                    └──► plan (cooking)
"""

from __future__ import annotations

from functools import cached_property, partial
from typing import TYPE_CHECKING

from spoonproof.model.channel import Channel
from spoonproof.model.claim import PAID
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import replace
from spoonproof.model.text import Document
from spoonproof.model.treatment import Treatment

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable, Mapping, Sequence

    from spoonproof.cooking.pots import Kitchen
    from spoonproof.cooking.timeline import Plan
    from spoonproof.cooking.treatment import Judged
    from spoonproof.feeding.allergens import AllergenFound, Label
    from spoonproof.feeding.calendar_order import Candidate
    from spoonproof.feeding.cautions import Caution
    from spoonproof.feeding.hazards import Hazard
    from spoonproof.feeding.keeping import Keeping
    from spoonproof.feeding.served import Served
    from spoonproof.feeding.texture import Texture
    from spoonproof.foods.facts import Facts
    from spoonproof.foods.intakes import Reference
    from spoonproof.foods.numbers import KitchenNumbers
    from spoonproof.knowledge import Knowledge
    from spoonproof.model.claim import Claim, JudgedClaim, Paid

IRON_SHARE = 0.1
"""Share of a day's reference intake in a portion from which a dish counts as one that brings iron (common practice)."""

_OF_THE_HEAD = (
    "treatments", "walked", "softened", "facts", "reference", "numbers", "plan", "candidate", "hazards", "texture",
    "allergens", "allergen_labels", "keeping",
)  # fmt: skip
"""Parts of a dish in which the story has no say (it has in its claims and cautions)."""

_ANYWHERE = Document("", "")


class Dish:
    """One recipe with all that can be worked out about it; nothing is computed before it is asked for."""

    def __init__(
        self,
        recipe: Recipe,
        channel: Channel,
        knowledge: Knowledge,
        others: Mapping[str, Recipe] | None = None,
        find: Callable[[Recipe], Sequence[Claim]] | None = None,
        titles: Callable[[], Mapping[str, str]] | None = None,
    ) -> None:
        """``others``: the channel's recipes by slug, for recipes used as foods. ``find``: gives a recipe's claims
        where they may be at hand (see ``find_in``). ``titles``: those of the others, where they need not be read."""
        self.recipe = recipe
        self.channel = channel
        self.knowledge = knowledge
        self.others = others or {}
        self._find = find
        self._titles = titles
        self._facts_before: tuple[object, Facts] | None = None
        self._numbers_before: tuple[Facts, tuple[str, ...], KitchenNumbers] | None = None
        self._judged: dict[Hashable, JudgedClaim] = {}  # what was judged of the recipe as it was before
        self._served: Served = {}
        self._judged_now: list[tuple[Claim, JudgedClaim]] = []
        self._judged_by: tuple[object, ...] = ()

    @property
    def titles(self) -> Mapping[str, str]:
        """The titles of the channel's recipes, by slug."""
        return self._titles() if self._titles else {slug: other.title.value for slug, other in self.others.items()}

    def take_from(self, before: Dish) -> None:
        """Take over what was worked out of ``before``, the same recipe of the same channel, neither of which rests on
        another recipe: what the head gave where it is the same letter for letter, else the facts where the same foods
        went through the same, and what was found of claims, which is asked for again where it may differ."""
        now: dict[Hashable, JudgedClaim] = {_said(claim): judged for claim, judged in before._judged_now}
        self._judged, self._judged_by = now or before._judged, before._judged_by
        self._facts_before, self._numbers_before = before._facts_before, before._numbers_before
        worked_out = before.__dict__
        if "facts" in worked_out:
            self._facts_before = before._of_facts, before.facts
        if "numbers" in worked_out:
            self._numbers_before = before.facts, before._may_contain, before.numbers
        begin = self.recipe.story_span.start
        if begin == before.recipe.story_span.start and (
            self.recipe.document.text[:begin] == before.recipe.document.text[:begin]
        ):
            self.__dict__.update((part, worked_out[part]) for part in _OF_THE_HEAD if part in worked_out)

    @property
    def _of_facts(self) -> tuple[object, ...]:
        """All that the facts of a dish without other recipes in it rest on, tables apart: how a food was cut in a step
        has no say in its weight."""
        recipe, makes = self.recipe, self.recipe.makes
        return (
            recipe.slug,
            recipe.foods,
            [replace(treatment, cuts=()) for treatment in self.treatments],
            makes and (makes.count, makes.most, makes.grams, makes.ml, makes.all_grams),
            [(trial.on, trial.grams) for trial in recipe.trials],
        )

    @property
    def _may_contain(self) -> tuple[str, ...]:
        return tuple(sorted({found.allergen for found in self.allergens if found.how == "may-contain"}))

    @cached_property
    def treatments(self) -> tuple[Treatment, ...]:
        """What happens to each food line, in the order of ``recipe.foods``."""
        from spoonproof.cooking.treatment import treated

        return treated(self.walked.stories, self.softened)

    @cached_property
    def softened(self) -> tuple[Judged, ...]:
        """How soft the food of each line comes out, and what it was measured by."""
        from spoonproof.cooking.treatment import judge

        return tuple(judge(story, self.knowledge.cook_times) for story in self.walked.stories)

    def treatments_of(self, recipe: Recipe) -> tuple[Treatment, ...]:
        """What happens to each food line of any recipe of this channel."""
        from spoonproof.cooking.treatment import treat

        return treat(recipe, self.knowledge.foods, self.knowledge.verbs, self.knowledge.cook_times)

    @cached_property
    def walked(self) -> Kitchen:
        """The kitchen after the recipe has been walked through."""
        from spoonproof.cooking.pots import Kitchen

        kitchen = Kitchen(self.recipe, self.knowledge.foods, self.knowledge.verbs)
        kitchen.walk()
        return kitchen

    @cached_property
    def facts(self) -> Facts:
        """What is in it: per batch, per portion and per 100 g, for each bowl."""
        from spoonproof.foods.facts import facts

        if self._facts_before is not None and self._facts_before[0] == self._of_facts:
            return self._facts_before[1]
        known = self.knowledge
        units = known.measures(self.channel.measures)
        return facts(
            self.recipe,
            self.treatments,
            known.foods,
            units,
            known.changes,
            recipes=self.others,
            treat=self.treatments_of,
        )

    @cached_property
    def reference(self) -> Reference:
        """The reference intakes for the youngest age of the range, by the channel's first market."""
        from spoonproof.foods.intakes import authority_for

        return self.knowledge.intakes.reference(self.recipe.youngest, authority_for(self.channel.markets))

    @cached_property
    def numbers(self) -> KitchenNumbers:
        """The figures as claims ask for them."""
        from spoonproof.foods.numbers import KitchenNumbers

        before, may_contain = self._numbers_before, self._may_contain
        if before is not None and before[0] is self.facts and before[1] == may_contain:
            return before[2]
        units = self.knowledge.measures(self.channel.measures)
        return KitchenNumbers(self.knowledge.foods, self.facts, units, may_contain)

    def judge(self) -> Callable[[Claim], JudgedClaim]:
        """A judge of claims by the figures of this dish, its ages, and who pays for what is said."""
        from spoonproof.claims.judge import judge

        known = self.knowledge
        context = known.claim_context(self.channel, self.recipe, self.paid)
        return partial(judge, register=known.register, numbers=self.numbers, context=context)

    @cached_property
    def claims(self) -> list[JudgedClaim]:
        """Every claim of every statement, judged on the dish as eaten; left statements are not judged."""
        from spoonproof.claims.judge import judge
        from spoonproof.claims.judging.fragments import without_fragments

        known = self.knowledge
        context = known.claim_context(self.channel, self.recipe, self.paid)
        found = self._find(self.recipe) if self._find else find_in(self.recipe, known)
        # Of the context, what recipe and day have a say in: the rest stands in the tables.
        by = (self.numbers, context.paid, context.ages, context.today, context.own, context.called, context.made_of)
        before, self._judged, self._judged_by = self._judged if by == self._judged_by else {}, {}, by
        judged = []
        for claim in found:
            kept = before.get(_said(claim)) if before else None
            if kept is not None:
                judged.append(replace(kept, claim=replace(kept.claim, passage=claim.passage)))
            else:
                judged.append(judge(claim, known.register, self.numbers, context))
            self._judged_now.append((claim, judged[-1]))
        return without_fragments(judged)

    @cached_property
    def plan(self) -> Plan:
        """What is done when, by whom, on what."""
        from spoonproof.cooking.timeline import planned

        return planned(self.walked, self.knowledge.foods, self.channel.kitchen)

    @cached_property
    def candidate(self) -> Candidate:
        """The dish as the calendar of new foods sees it; it brings iron from ``IRON_SHARE`` of a day's intake on."""
        from spoonproof.feeding.calendar import candidate_of, unfit_lines
        from spoonproof.foods.intakes import authority_for

        portion = self.facts.per_portion
        iron = portion.get("iron_mg") if portion else None
        # Authorities give no intake before seven months; what brings iron then is measured against the first they give.
        months = max(self.recipe.youngest, 7)
        reference = self.knowledge.intakes.reference(months, authority_for(self.channel.markets))
        share = reference.share("iron_mg", iron) if iron is not None else None
        brings_iron = share is not None and share.share >= IRON_SHARE
        inner = {}
        for slug in dict.fromkeys(line.recipe for line in self.recipe.foods if line.recipe):
            if slug != self.recipe.slug and slug in self.others:
                # Without this recipe among the others, two that hold each other come to an end.
                others = {name: other for name, other in self.others.items() if name != self.recipe.slug}
                inner[slug] = Dish(others[slug], self.channel, self.knowledge, others).candidate
        foods = self.knowledge.foods
        unfit = unfit_lines(self.recipe, self.hazards, self.knowledge.feeding)
        return candidate_of(self.recipe, self.treatments, foods, self.allergens, brings_iron, inner, unfit)

    @property
    def paid(self) -> Paid:
        """How this recipe is paid for: its own word, else the channel's."""
        own = self.recipe.paid
        return next((word for word in PAID if word == own), self.channel.paid)

    @property
    def markets(self) -> tuple[str, ...]:
        """All of the channel's markets, the first one leading."""
        return tuple(self.channel.markets) or ("EU",)

    @cached_property
    def hazards(self) -> list[Hazard]:
        """Every hazard in the baby's bowl at the youngest age of the range."""
        from spoonproof.feeding.hazards import hazards

        known = self.knowledge
        policies = self.channel.policies
        return hazards(
            self.recipe,
            self.treatments,
            known.foods,
            known.feeding,
            policies,
            self.markets,
            self.others,
            self.treatments_of,
            self._served,
        )

    @cached_property
    def texture(self) -> Texture:
        """What texture the baby's bowl really has, against its word and its ages."""
        from spoonproof.feeding.texture import texture

        return texture(self.recipe, self.treatments, self.knowledge.foods, self.knowledge.feeding, self._served)

    @cached_property
    def allergens(self) -> list[AllergenFound]:
        """Every allergen of the dish, swaps and recipes used as foods included."""
        from spoonproof.feeding.allergens import allergens

        return allergens(self.recipe, self.treatments, self.knowledge.foods, self.knowledge.feeding, self.others)

    @cached_property
    def allergen_labels(self) -> list[Label]:
        """What page and script must name in the channel's markets, in the words of the first that asks for it."""
        from spoonproof.feeding.allergens import named_in

        return named_in(self.allergens, self.knowledge.feeding, self.markets)

    @cached_property
    def cautions(self) -> list[Caution]:
        """The cautions that page, script and description must carry."""
        from spoonproof.feeding.cautions import cautions

        known = self.knowledge
        return cautions(
            self.recipe,
            self.treatments,
            known.foods,
            known.feeding,
            self.allergens,
            self.markets,
            self.others,
            self._served,
        )

    @cached_property
    def keeping(self) -> Keeping:
        """How long it keeps by authority, and what is wrong with the stated time."""
        from spoonproof.feeding.keeping import keeping

        known = self.knowledge
        return keeping(self.recipe, self.treatments, known.foods, known.feeding, self.channel.policies, self.others)


def _said(claim: Claim) -> Claim:
    """A claim wherever it stands."""
    return replace(claim, passage=replace(claim.passage, document=_ANYWHERE, pieces=()))


def find_in(recipe: Recipe, knowledge: Knowledge) -> Sequence[Claim]:
    """Every claim of a recipe's statements, unjudged; the statements that are left out are not looked at."""
    from spoonproof.claims.find import find_claims

    return find_claims([passage for passage in recipe.passages if passage.leave is None], knowledge.lexicon)
