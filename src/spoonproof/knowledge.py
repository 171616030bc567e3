"""Every table and register the rooms need, loaded when first asked for.

The one place where tables meet files: rooms get rows and trees, never paths.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from spoonproof.claims.judging.context import Context, Dangers
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
    from spoonproof.model.danger import Danger
    from spoonproof.model.finding import Finding
    from spoonproof.model.food import Food
    from spoonproof.model.need import Need
    from spoonproof.model.recipe import Recipe
    from spoonproof.model.table import Row
    from spoonproof.model.text import Document
    from spoonproof.reading.measures import Measures

FOOD_TABLES = ("foods", "food_values", "food_portions", "food_values_more")
MEASURE_TABLES = ("measures", "cuts", "preparations")
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
    "told_words",
    "telling_words",
    "picture_dangers",
    "week_needs",
)


class Knowledge:
    """The bundled tables, with a channel's own rows laid over them by id."""

    def __init__(self, channel_dir: Path | None = None, made: bool = True) -> None:
        """``channel_dir``: the channel's folder, None where there is no channel. ``made``: whether parts may come as
        they were made from the bundled tables (see ``compiled``) where the channel has nothing of its own."""
        self.channel_dir = channel_dir
        self._may_be_made = made
        self._measures: dict[str, Measures] = {}

    def rows(self, table: str) -> Sequence[Row]:
        """The rows of ``shared/<table>.csv``, the channel's own laid over by id."""
        from spoonproof.reading.bundle import table_rows

        return table_rows(table, self.channel_dir)

    def _made(self, part: str, *own: str) -> Any:
        """A part as it was made, None where there is none or the channel has one of the files ``own``."""
        from spoonproof.reading.bundle import own_root

        root = own_root(self.channel_dir) if self._may_be_made else None
        if not self._may_be_made or (root is not None and any((root / path).exists() for path in own)):
            return None
        from spoonproof.compiled import load

        return load(part)

    @cached_property
    def sources(self) -> Mapping[str, Mapping[str, object]]:
        """Every source by id, as CSL-JSON."""
        return self._made("sources", "shared/sources") or self.read_sources()

    def read_sources(self) -> Mapping[str, Mapping[str, object]]:
        """``sources`` from the files."""
        from spoonproof.reading.bundle import sources

        return sources(self.channel_dir)

    @cached_property
    def foods(self) -> FoodTable:
        """Every food with its figures, names and portions."""
        from spoonproof.foods.table import FoodTable

        made = self._made("foods", *(f"shared/{table}.csv" for table in FOOD_TABLES))
        return FoodTable(made or self.food_data())

    def food_data(self) -> dict[str, Any]:
        """The food table as plain data, from the files."""
        from spoonproof.foods.compiled import compile_foods

        return compile_foods(*(self.rows(table) for table in FOOD_TABLES))

    @cached_property
    def changes(self) -> Changes:
        """What cooking keeps of vitamins and minerals, and of the weight."""
        return self._made("changes", "shared/retention.csv", "shared/yields.csv") or self.read_changes()

    def read_changes(self) -> Changes:
        """``changes`` from the files."""
        from spoonproof.foods.changes import Changes

        return Changes.from_rows(self.rows("retention"), self.rows("yields"))

    @cached_property
    def intakes(self) -> Intakes:
        """A day's reference intakes by authority and age."""
        return self._made("intakes", "shared/intakes.csv") or self.read_intakes()

    def read_intakes(self) -> Intakes:
        """``intakes`` from the files."""
        from spoonproof.foods.intakes import Intakes

        return Intakes.from_rows(self.rows("intakes"))

    def food_ids(self, names: Sequence[str]) -> tuple[str, ...]:
        """The ids of foods named in words; a name that is no food is left out."""
        matches = (self.foods.match(name) for name in names)
        return tuple(match.food for match in matches if match is not None)

    @cached_property
    def verbs(self) -> VerbTable:
        """The closed table of kitchen verbs."""
        return self._made("verbs", "shared/verbs.csv") or self.read_verbs()

    def read_verbs(self) -> VerbTable:
        """``verbs`` from the files."""
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
        return self._made("cook_times", "shared/cook_times.csv") or self.read_cook_times()

    def read_cook_times(self) -> CookTimes:
        """``cook_times`` from the files."""
        from spoonproof.cooking.softness import CookTimes

        return CookTimes.from_rows(self.rows("cook_times"))

    @cached_property
    def feeding(self) -> FeedingTables:
        """Hazards, textures, allergens, cautions, keeping and introduction."""
        return self._made("feeding", *(f"shared/{table}.csv" for table in FEEDING_TABLES)) or self.read_feeding()

    def read_feeding(self) -> FeedingTables:
        """``feeding`` from the files."""
        from spoonproof.feeding.tables import FeedingTables

        return FeedingTables.from_rows({table: self.rows(table) for table in FEEDING_TABLES})

    def measures(self, system: str) -> Measures:
        """The kitchen measures of one system: UK, US, metric or AU."""
        if system not in self._measures:
            made = self._made("measures", *(f"shared/{table}.csv" for table in MEASURE_TABLES)) or {}
            self._measures[system] = made[system] if system in made else self.read_measures(system)
        return self._measures[system]

    def read_measures(self, system: str) -> Measures:
        """``measures`` from the files."""
        from spoonproof.reading.measures import Measures

        rows, cuts, preparations = (self.rows(table) for table in MEASURE_TABLES)
        return Measures.from_rows(rows, system, cuts, preparations)

    @cached_property
    def lexicon(self) -> Lexicon:
        """The English of claims, inflected, with the food table's names in it."""
        made = self._made("lexicon", *(f"shared/{table}.csv" for table in FOOD_TABLES))
        if made is None:
            return self.read_lexicon()
        from spoonproof.compiled import unpack_lexicon

        return unpack_lexicon(made)

    def read_lexicon(self) -> Lexicon:
        """``lexicon`` from the files."""
        from spoonproof.claims.lexicon import Lexicon
        from spoonproof.reading.bundle import bundle_root, read_table

        folder = bundle_root() / "claims"
        tables = {path.stem: read_table(path) for path in sorted((folder / "lexicon" / "en").glob("*.csv"))}
        return Lexicon.from_rows(tables, self.foods.names())

    @cached_property
    def _register(self) -> tuple[Register, tuple[Finding, ...]]:
        """The register, and what it finds wrong with itself on any day."""
        own = ("claims", "shared/sources", "shared/claim_references.csv", "shared/allergen_lists.csv")
        made: tuple[Register, tuple[Finding, ...]] | None = self._made("register", *own)
        return made if made is not None else self.read_register("")

    def register_with(self, path: Path, document: Document) -> tuple[Register, tuple[Finding, ...]]:
        """The register as it would be with ``document`` for the file at ``path``."""
        from spoonproof.clock import today

        return self.read_register(today().isoformat(), {path: document})

    def read_register(
        self, day: str, unsaved: Mapping[Path, Document] | None = None
    ) -> tuple[Register, tuple[Finding, ...]]:
        """The register from the files (``unsaved`` texts in their place), and what it finds wrong with itself on an
        ISO day ("" : dates apart)."""
        from spoonproof.claims.register import Register
        from spoonproof.reading.register_files import register_files

        trees, authorised, faults = register_files(self.channel_dir, unsaved)
        register, more = Register.from_nodes(
            trees,
            authorised,
            reference_rows=self.rows("claim_references"),
            allergen_rows=self.rows("allergen_lists"),
            source_ids=self.sources,
            today=day,
        )
        return register, (*faults, *more)

    @property
    def register(self) -> Register:
        """The claims register. Its entries are the same on any day; what is due is told in ``register_faults``."""
        return self._register[0]

    @property
    def register_faults(self) -> tuple[Finding, ...]:
        """What the register finds wrong with itself today."""
        from spoonproof.clock import today

        register, faults = self._register
        return (*faults, *register.out_of_date(today().isoformat()))

    def claim_context(self, channel: Channel, recipe: Recipe, paid: Paid) -> Context:
        """What the claims of a recipe are judged in."""
        from spoonproof.claims.judging.context import Context, head_of, own_sources
        from spoonproof.claims.words import plain
        from spoonproof.clock import today
        from spoonproof.model.plural import singular

        traits, allergens = self._food_facts
        return Context(
            markets=channel.markets,
            paid=paid,
            ages=(recipe.ages.low, recipe.ages.high),
            today=today().isoformat(),
            traits=traits,
            allergens=allergens,
            own=own_sources(recipe.sources),
            called=frozenset(plain(recipe.title.value).split()),
            head=head_of(recipe.title.value),
            made_of=frozenset(
                form
                for line in recipe.foods
                for word in plain(line.name).split()[-1:]
                for form in (word, singular(word))
            ),
            named=_Named(self.foods),
            dangers=self._dangers(channel, channel.markets, recipe),
            needs=self._needs,
        )

    def policies_for(self, channel: Channel | None, markets: Sequence[str]) -> Mapping[str, str]:
        """Whose advice holds where authorities differ: as the channel chose, else that of the one market asked for."""
        of_market = {row.topic: row.authority for row in self.feeding.policies if [row.authority] == list(markets)}
        return {**of_market, **(channel.policies if channel else {})}

    def _dangers(self, channel: Channel | None, markets: Sequence[Market], recipe: Recipe | None = None) -> Dangers:
        """What the hazard tables hold against a food that words give; how a recipe serves its own is judged there."""
        from spoonproof.feeding.words import keys

        policies = self.policies_for(channel, markets)
        own = frozenset().union(*(keys(line.name) for line in recipe.foods)) if recipe else frozenset()

        def dangers(said: str, within: tuple[int, int], months: int, behind: str) -> Danger | None:
            from spoonproof.feeding.offered import danger_in

            return danger_in(said, within, months, self.feeding, policies, markets, behind, own)

        return dangers

    def _needs(self, nutrient: str, months: int) -> tuple[Need, ...]:
        """What EFSA and the US say a child of ``months`` needs of ``nutrient`` in a day, as far as they say."""
        from spoonproof.foods.intakes import AUTHORITIES
        from spoonproof.model.need import Need

        found = []
        for authority in AUTHORITIES:
            reference = self.intakes.reference(months, authority)
            intake = reference.nutrients.get(nutrient)
            if intake is not None and intake.source != "from-memory":
                found.append(Need(authority, reference.age_band, intake.value, intake.unit, intake.source))
        return tuple(found)

    @cached_property
    def _food_facts(self) -> tuple[Mapping[str, frozenset[str]], Mapping[str, frozenset[str]]]:
        return _OfFoods(self.foods, lambda food: food.traits | {food.group}), _OfFoods(
            self.foods, lambda food: food.allergens
        )

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
            named=_Named(self.foods),
            dangers=self._dangers(channel, tuple(markets)),
            needs=self._needs,
        )
        numbers = KitchenNumbers(self.foods, units=self.measures(channel.measures if channel else "metric"))
        register = self.register
        return lambda claim: judge(claim, register, numbers, context)


class _Named(Mapping[str, str]):
    """Food ids by the whole of a name; a name is looked up when it is asked for."""

    def __init__(self, foods: FoodTable) -> None:
        self._foods = foods

    def __getitem__(self, name: str) -> str:
        found = self._foods.named(name)
        if found is None:
            raise KeyError(name)
        return found

    def __iter__(self) -> Iterator[str]:
        return (name for name, _ in self._foods.names())

    def __len__(self) -> int:
        return sum(1 for _ in self._foods.names())


class _OfFoods(Mapping[str, "frozenset[str]"]):
    """What is asked of every food by the food's id; a food is put together when it is asked for."""

    def __init__(self, foods: FoodTable, ask: Callable[[Food], frozenset[str]]) -> None:
        self._foods = foods
        self._ask = ask

    def __getitem__(self, food: str) -> frozenset[str]:
        known = self._foods.get(food)
        if known is None:
            raise KeyError(food)
        return self._ask(known)

    def __iter__(self) -> Iterator[str]:
        return (food.id for food in self._foods)

    def __len__(self) -> int:
        return len(self._foods)
