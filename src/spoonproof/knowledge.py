"""Every table and register the rooms need, loaded when first asked for.

The one place where tables meet files: rooms get rows and trees, never paths.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from spoonproof.claims.judging.context import Context
    from spoonproof.claims.lexicon import Lexicon
    from spoonproof.claims.register import Register
    from spoonproof.cooking.methods import VitaminsKept
    from spoonproof.cooking.softness import CookTimes
    from spoonproof.cooking.verbs import VerbTable
    from spoonproof.feeding.tables import FeedingTables
    from spoonproof.foods.changes import Changes
    from spoonproof.foods.intakes import Intakes
    from spoonproof.foods.table import FoodTable
    from spoonproof.model.channel import Channel
    from spoonproof.model.claim import Claim, JudgedClaim, Market, Paid
    from spoonproof.model.finding import Finding
    from spoonproof.model.recipe import Recipe
    from spoonproof.model.table import Row
    from spoonproof.reading.measures import Measures

FEEDING_TABLES = (
    "feeding_foods",
    "choking",
    "foods_not_yet",
    "policies",
    "textures",
    "allergens",
    "allergen_labels",
    "cautions",
    "storage",
    "introduction",
    "contradictions",
    "picture_dangers",
    "week_needs",
)


class Knowledge:
    """The bundled tables, with a channel's own rows laid over them by id."""

    def __init__(self, channel_dir: Path | None = None) -> None:
        """``channel_dir``: the channel's folder, None where there is no channel."""
        self.channel_dir = channel_dir
        self._measures: dict[str, Measures] = {}

    def rows(self, table: str) -> Sequence[Row]:
        """The rows of ``shared/<table>.csv``, the channel's own laid over by id."""
        from spoonproof.reading.bundle import table_rows

        return table_rows(table, self.channel_dir)

    @cached_property
    def sources(self) -> Mapping[str, Mapping[str, object]]:
        """Every source by id, as CSL-JSON."""
        from spoonproof.reading.bundle import sources

        return sources(self.channel_dir)

    @cached_property
    def foods(self) -> FoodTable:
        """Every food with its figures, names and portions: as compiled into the wheel, where there is such data and
        the channel has no foods of its own."""
        import json

        from spoonproof.foods.compiled import TABLES
        from spoonproof.foods.table import FoodTable
        from spoonproof.reading.bundle import bundle_root, own_file

        made = bundle_root() / "compiled" / "foods.json"
        if made.is_file() and not any(own_file(self.channel_dir, "shared", f"{table}.csv") for table in TABLES):
            return FoodTable(json.loads(made.read_text(encoding="utf-8")))
        return FoodTable.from_rows(*(self.rows(table) for table in TABLES))

    @cached_property
    def changes(self) -> Changes:
        """What cooking keeps of vitamins and minerals, and of the weight."""
        from spoonproof.foods.changes import Changes

        return Changes.from_rows(self.rows("retention"), self.rows("yields"))

    @cached_property
    def intakes(self) -> Intakes:
        """A day's reference intakes by authority and age."""
        from spoonproof.foods.intakes import Intakes

        return Intakes.from_rows(self.rows("intakes"))

    def food_ids(self, names: Sequence[str]) -> tuple[str, ...]:
        """The ids of foods named in words; a name that is no food is left out."""
        matches = (self.foods.match(name) for name in names)
        return tuple(match.food for match in matches if match is not None)

    @cached_property
    def verbs(self) -> VerbTable:
        """The closed table of kitchen verbs."""
        from spoonproof.cooking.verbs import VerbTable

        return VerbTable.from_rows(self.rows("verbs"))

    @cached_property
    def vitamins_kept(self) -> VitaminsKept:
        """Published shares of vitamins kept, each with its method and time."""
        from spoonproof.cooking.methods import VitaminsKept

        return VitaminsKept.from_rows(self.rows("vitamins_kept"))

    @cached_property
    def cook_times(self) -> CookTimes:
        """Minutes to soft by food, cut and method."""
        from spoonproof.cooking.softness import CookTimes

        return CookTimes.from_rows(self.rows("cook_times"))

    @cached_property
    def feeding(self) -> FeedingTables:
        """Hazards, textures, allergens, cautions, keeping and introduction."""
        from spoonproof.feeding.tables import FeedingTables

        return FeedingTables.from_rows({table: self.rows(table) for table in FEEDING_TABLES})

    def measures(self, system: str) -> Measures:
        """The kitchen measures of one system: UK, US, metric or AU."""
        from spoonproof.reading.measures import Measures

        if system not in self._measures:
            self._measures[system] = Measures.from_rows(
                self.rows("measures"), system, self.rows("cuts"), self.rows("preparations")
            )
        return self._measures[system]

    @cached_property
    def lexicon(self) -> Lexicon:
        """The English of claims, inflected, with the food table's names in it."""
        from spoonproof.claims.lexicon import Lexicon
        from spoonproof.reading.bundle import bundle_root
        from spoonproof.reading.tables import read_table

        folder = bundle_root() / "claims" / "lexicon" / "en"
        tables = {path.stem: read_table(path) for path in sorted(folder.glob("*.csv"))}
        return Lexicon.from_rows(tables, self.foods.names())

    @cached_property
    def _register(self) -> tuple[Register, tuple[Finding, ...]]:
        from spoonproof.claims.register import Register
        from spoonproof.clock import today
        from spoonproof.reading.register_files import register_files

        trees, authorised, faults = register_files(self.channel_dir)
        register, more = Register.from_nodes(
            trees,
            authorised,
            reference_rows=self.rows("claim_references"),
            allergen_rows=self.rows("allergen_lists"),
            source_ids=self.sources,
            today=today().isoformat(),
        )
        return register, (*faults, *more)

    @property
    def register(self) -> Register:
        """The claims register."""
        return self._register[0]

    @property
    def register_faults(self) -> tuple[Finding, ...]:
        """What the register finds wrong with itself."""
        return self._register[1]

    def claim_context(self, channel: Channel, recipe: Recipe, paid: Paid) -> Context:
        """What the claims of a recipe are judged in."""
        from spoonproof.claims.judging.context import Context, own_sources
        from spoonproof.clock import today

        traits, allergens = self._food_facts
        return Context(
            markets=channel.markets,
            paid=paid,
            ages=(recipe.ages.low, recipe.ages.high),
            today=today().isoformat(),
            traits=traits,
            allergens=allergens,
            own=own_sources(recipe.sources),
        )

    @cached_property
    def _food_facts(self) -> tuple[dict[str, frozenset[str]], dict[str, frozenset[str]]]:
        foods = list(self.foods)
        return {food.id: food.traits for food in foods}, {food.id: food.allergens for food in foods}

    def judge_without_dish(
        self, channel: Channel | None, markets: Sequence[Market], ages: tuple[int, int | None] | None
    ) -> Callable[[Claim], JudgedClaim]:
        """A judge for speech that belongs to no recipe: the food table answers what numbers it can."""
        from spoonproof.claims.judge import judge
        from spoonproof.claims.judging.context import Context
        from spoonproof.clock import today
        from spoonproof.foods.numbers import KitchenNumbers

        plain = Context()
        traits, allergens = self._food_facts
        context = Context(
            markets=tuple(markets) or (channel.markets if channel else plain.markets),
            paid=channel.paid if channel else plain.paid,
            ages=ages or (channel.ages if channel else plain.ages),
            today=today().isoformat(),
            traits=traits,
            allergens=allergens,
        )
        numbers = KitchenNumbers(self.foods, units=self.measures(channel.measures if channel else "metric"))
        register = self.register
        return lambda claim: judge(claim, register, numbers, context)
