"""What is in the thing a claim is about, as eaten: the dish, a food on its way into it, or a food alone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from spoonproof.claims.conditions import KCAL_PER_G, Basis, Reply
from spoonproof.claims.judging.context import Context
from spoonproof.claims.register import Register
from spoonproof.claims.wording import nutrient_name
from spoonproof.model.numbers import Estimate, Numbers, Per
from spoonproof.model.record import dataclass, field, replace

_ALIASES: Mapping[str, str] = {"salt": "sodium_mg", "copper": "copper_mg", "manganese": "manganese_mg"}
_TRAITS: Mapping[str, frozenset[str]] = {
    "added salt": frozenset({"added-salt", "salt", "salty"}),
    "added sugar": frozenset({"free-sugar"}),
    "sweeteners": frozenset({"sweetener", "artificial-sweetener", "honey"}),
    "something of meat": frozenset({"meat", "poultry", "offal"}),
    "honey": frozenset({"honey"}),
    "perhaps of meat": frozenset(),
    "perhaps with rennet": frozenset(),
    "maize": frozenset(),
    "coconut": frozenset(),
}
"""By an ingredient class: traits and groups of foods that belong to it; the register's set of its name adds more."""
_PERHAPS = "perhaps "  # what some makers' food is of and others' is not: the packet tells
_COOKED = (("-boiled", "boiled"), ("-cooked", "cooked"))
_ADDED = frozenset(
    "calcium_mg vitamin_d_ug vitamin_b12_ug riboflavin_mg iodine_ug vitamin_a_rae_ug vitamin_e_mg".split()
)
"""What makers of plant drinks add, or don't (kingston-dairy-free: "some are not fortified", organic ones mostly)."""
DRY_WATER_G = 15.0
"""A food with less water than this per 100 g is not eaten as it is in the table (oats, spices, dried pulses)."""
NUT_FAT_G = 25.0
"""Grams of fat per 100 g of a dry food from which it takes up no water on its way to the plate (nuts, seeds and their
butters; common practice), so that what is in it can be told by the table."""
PINCH_G = 3.0
"""Grams a portion under which the amount eaten decides, not the 100 g (Reg. 1924/2006 Art 5(1)(d))."""


def key_of(nutrient: str) -> str:
    """The nutrient key that numbers know, for the finder's id."""
    return _ALIASES.get(nutrient, nutrient)


def _widened(nutrient: str, found: Estimate | None, retinol: Estimate | None) -> Estimate | None:
    # The EU counts beta-carotene at 1/6, the tables here at 1/12: the EU figure lies between RAE and
    # twice RAE less the retinol, so the range is opened upwards and never judged "too little" wrongly.
    if found is None or nutrient != "vitamin_a_rae_ug":
        return found
    upper = 2 * found.high - (retinol.low if retinol is not None else 0.0)
    return replace(found, high=max(found.high, upper))


def _belongs(food: str, what: str, register: Register, context: Context) -> bool:
    """Whether a food is of an ingredient class."""
    members = register.sets.get(what.replace(" ", "-"), frozenset())
    return food in members or bool(context.traits.get(food, frozenset()) & _TRAITS[what])


@dataclass(slots=True)
class DishProbe:
    """The dish as eaten."""

    numbers: Numbers
    register: Register
    context: Context
    other: str = ""
    steps: list[str] = field(default_factory=list)

    def measure(self, nutrient: str, basis: Basis) -> Estimate | None:
        """The nutrient of the dish; for ``energy`` the percent of its energy."""
        key = key_of(nutrient)
        if basis in ("energy", "100kcal"):
            per_100kcal = self._per_100kcal(key)
            return energy_share(key, per_100kcal) if basis == "energy" else per_100kcal
        per: Per = "portion" if basis == "portion" else "100g"
        found = self.numbers.dish(key, per)
        return _widened(key, found, self.numbers.dish("retinol_ug", per) if found else None)

    def _per_100kcal(self, key: str) -> Estimate | None:
        """Out of the whole batch: how much water boils off widens what is in 100 g, and not what goes with 100 kcal."""
        whole, energy = self.numbers.dish(key, "batch"), self.numbers.dish("energy_kcal", "batch")
        if whole is None or energy is None or energy.low <= 0 or energy.high == float("inf"):
            return self.numbers.dish(key, "100kcal")
        return replace(
            whole,
            amount=whole.amount / energy.amount * 100,
            low=whole.low / energy.high * 100,
            high=whole.high / energy.low * 100,
        )

    def contains(self, what: str) -> Reply:
        """Whether an allergen or an ingredient class is in the baby's bowl."""
        if self.bringing(what):
            return "unknown" if what.startswith(_PERHAPS) else "yes"
        foods = self.numbers.dish_foods()
        if self.unknown:
            return "unknown"
        if what in _TRAITS:
            return "no" if foods and all(food in self.context.traits for food in foods) else "unknown"
        if what == "any other allergen" or what.endswith(" traces") or self.may_contain(what):
            return "unknown"
        return "no" if foods else "unknown"

    @property
    def unknown(self) -> tuple[str, ...]:
        """What goes in that is in no table: nobody can say what it brings."""
        return getattr(self.numbers, "unknown_foods", ())

    def may_contain(self, what: str) -> bool:
        """Whether the label of a food in it says that it may contain an allergen."""
        return what in getattr(self.numbers, "may_contain", ())

    def of_family(self, what: str) -> bool:
        """Whether the family's bowl alone has an allergen, which is on the label of the dish all the same."""
        return what in getattr(self.numbers, "family_allergens", ())

    def bringing(self, what: str) -> tuple[str, ...]:
        """The foods of the bowl that bring an allergen or belong to an ingredient class."""
        if what not in _TRAITS:
            return tuple(self.numbers.dish_allergens().get(what.removesuffix(" traces"), ()))
        return tuple(food for food in self.numbers.dish_foods() if _belongs(food, what, self.register, self.context))

    def brought_to_the_family(self, what: str) -> tuple[str, ...]:
        """The foods of an ingredient class that go into the family's bowl alone."""
        family = getattr(self.numbers, "family_foods", ())
        return tuple(food for food in family if what in _TRAITS and _belongs(food, what, self.register, self.context))

    def compared(self, nutrient: str) -> tuple[Estimate, Estimate] | None:
        """The nutrient per 100 g of the dish and of the food it is held against; None when either is not known."""
        if not self.other:
            return None
        here = self.numbers.dish(key_of(nutrient), "100g")
        there, dry = FoodProbe(self.other, self.numbers, self.register, self.context).eaten_states(key_of(nutrient))
        return None if here is None or there is None or dry else (here, there)


@dataclass(slots=True)
class FoodProbe:
    """A food as eaten: what it brings to the dish where it is dry or a pinch, else its table values."""

    food: str
    numbers: Numbers
    register: Register
    context: Context
    other: str = ""
    eaten: str = ""
    steps: list[str] = field(default_factory=list)

    def measure(self, nutrient: str, basis: Basis) -> Estimate | None:
        """The nutrient of the food as eaten; None when only a dry table value is known."""
        key = key_of(nutrient)
        if self.by_carton(key):
            return None
        if basis == "energy":
            return energy_share(key, self.numbers.food(self.food, key, "100kcal"))
        if basis == "portion":
            return self.numbers.food_in_portion(self.food, key)
        table = self.numbers.food(self.food, key, basis)
        if basis == "100g" and not (key == "fat_g" and self.eaten_dry()) and self.small_or_dry():
            return self._as_eaten(key)
        return _widened(key, table, self.numbers.food(self.food, "retinol_ug", basis) if table else None)

    def eaten_dry(self) -> bool:
        """Whether it is so fat that it takes up no water on its way to the plate, no powder, and in no dish that says
        how much of it there is."""
        fat = self.numbers.food(self.food, "fat_g", "100g")
        return (
            fat is not None and fat.low >= NUT_FAT_G and "powder" not in self.food and self.grams_in_portion() is None
        )

    def by_carton(self, nutrient: str) -> bool:
        """Whether some makers add it and others don't, so that no table can tell: calcium in a plant drink."""
        unsaid = "plant-drink" in self.context.traits.get(self.food, frozenset()) and not self.food.endswith(
            "fortified"
        )
        if unsaid and key_of(nutrient) in _ADDED:
            self._note(f"{nutrient_name(key_of(nutrient))} is added to some cartons of it and not to others")
            return True
        return False

    def small_or_dry(self) -> bool:
        """Whether 100 g of it as in the table is not what anyone eats."""
        water = self.numbers.food(self.food, "water_g", "100g")
        dry = water is not None and water.high < DRY_WATER_G
        grams = self.grams_in_portion()
        return dry or (grams is not None and grams < PINCH_G)

    def grams_in_portion(self) -> float | None:
        """Grams of it in a portion, worked out from the energy it brings; None when it is not in the dish."""
        brings = self.numbers.food_in_portion(self.food, "energy_kcal")
        table = self.numbers.food(self.food, "energy_kcal", "100g")
        if brings is None or table is None or table.amount <= 0:
            return None
        return brings.amount / table.amount * 100

    def _as_eaten(self, key: str) -> Estimate | None:
        brings, portion = self.numbers.food_in_portion(self.food, key), self.numbers.portion_grams()
        if brings is None:
            for name, said in self.cooked_names():
                cooked = self.numbers.food(name, key, "100g")
                if cooked is not None:
                    self.eaten = said
                    self._note(f"{self.food} as eaten: {name} (Art 5(3))")
                    return _widened(key, cooked, self.numbers.food(name, "retinol_ug", "100g"))
        if brings is None or portion is None or portion.low <= 0:
            self._note(f"{self.food} is not eaten dry by the 100 g, and no portion of it is known")
            return None
        low, high = brings.low / portion.high * 100, brings.high / portion.low * 100
        self.eaten = "in the dish as eaten"
        self._note(f"{self.food} as eaten: what it brings to 100 g of the dish (Art 5(3))")
        return replace(brings, amount=brings.amount / portion.amount * 100, low=low, high=high)

    def _note(self, step: str) -> None:
        """A step for the trail, once however often it is measured."""
        if step not in self.steps:
            self.steps.append(step)

    def cooked_names(self) -> Iterator[tuple[str, str]]:
        """Names the cooked food may go by: its own first, then its kind's (red lentils: boiled lentils)."""
        kind = self.food.partition("-")[2]
        for food in (self.food, kind) if kind else (self.food,):
            for suffix, said in _COOKED:
                yield food + suffix, said

    def contains(self, what: str) -> Reply:
        """Whether the food itself is or brings an allergen or an ingredient class."""
        if what in _TRAITS:
            known = self.food in self.context.traits
            belongs = _belongs(self.food, what, self.register, self.context)
            return "no" if known and not belongs else "yes" if belongs and not what.startswith(_PERHAPS) else "unknown"
        allergens = self.context.allergens.get(self.food)
        if allergens is not None and what.removesuffix(" traces") in allergens:
            return "yes"
        if allergens is None or what == "any other allergen" or what.endswith(" traces"):
            return "unknown"
        return "no"

    def bringing(self, what: str) -> tuple[str, ...]:
        """The food itself where it is or brings it."""
        return (self.food,) if self.contains(what) == "yes" else ()

    def compared(self, nutrient: str) -> tuple[Estimate, Estimate] | None:
        """The nutrient per 100 g here and in the other food, each over the states it is eaten in; None when one is
        dry and the other is not."""
        if not self.other:
            return None
        key = key_of(nutrient)
        one, dry = self.eaten_states(key)
        two, other_dry = FoodProbe(self.other, self.numbers, self.register, self.context).eaten_states(key)
        if dry != other_dry:
            # Porridge oats against bread: both in the state that they have figures for, or not at all.
            return None
        return (one, two) if one is not None and two is not None else None

    def eaten_states(self, key: str) -> tuple[Estimate | None, bool]:
        """The nutrient per 100 g, from the least to the most over raw and cooked; of a dry food cooked alone. And
        whether nothing but a dry figure is known."""
        if self.by_carton(key):
            return None, False
        water = self.numbers.food(self.food, "water_g", "100g")
        dry = water is not None and water.high < DRY_WATER_G
        cooked = [self.numbers.food(name, key, "100g") for name, _ in self.cooked_names()]
        found = [state for state in cooked if state is not None][:1]
        table = self.numbers.food(self.food, key, "100g")
        alone = dry and not found
        if table is not None and (not dry or alone):
            found.insert(0, table)
        if not found:
            return None, alone
        sources = tuple(dict.fromkeys(source for state in found for source in state.sources))
        low, high = min(state.low for state in found), max(state.high for state in found)
        return replace(found[0], low=low, high=high, sources=sources), alone


@dataclass(slots=True)
class AsBought(FoodProbe):
    """A food as the table has it, dry or not, however much of it is eaten."""

    def small_or_dry(self) -> bool:
        """Never asked: what is eaten is not what is looked at."""
        return False


@dataclass(slots=True)
class NoProbe:
    """Nothing is known."""

    steps: list[str] = field(default_factory=list)

    def measure(self, nutrient: str, basis: Basis) -> Estimate | None:  # noqa: ARG002 - one shape for all probes
        """Not known."""
        return None

    def contains(self, what: str) -> Reply:  # noqa: ARG002 - one shape for all probes
        """Not known."""
        return "unknown"

    def bringing(self, what: str) -> tuple[str, ...]:  # noqa: ARG002 - one shape for all probes
        """Not known."""
        return ()

    def compared(self, nutrient: str) -> tuple[Estimate, Estimate] | None:  # noqa: ARG002 - one shape for all probes
        """Not known."""
        return None


AnyProbe = DishProbe | FoodProbe | NoProbe


def energy_share(key: str, per_100kcal: Estimate | None) -> Estimate | None:
    """Percent of the energy that a nutrient brings; None where it has no energy factor."""
    factor = KCAL_PER_G.get(key)
    if per_100kcal is None or factor is None:
        return None
    return replace(
        per_100kcal,
        amount=per_100kcal.amount * factor,
        low=per_100kcal.low * factor,
        high=per_100kcal.high * factor,
        unit="% of energy",
    )
