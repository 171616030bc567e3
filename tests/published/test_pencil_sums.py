"""Three whole dishes added up by pencil: grams of each food x its published value per 100 g x what cooking leaves.

Values per 100 g are those of the USDA National Nutrient Database for Standard Reference, Release 28 (record numbers
beside each sum), shares kept those of the USDA Table of Nutrient Retention Factors, Release 6 (2007). The weights left
are the project's assumptions (shared/yields.csv): the sums test the arithmetic, not them.
"""

from __future__ import annotations

import pytest

from spoonproof.dish import Dish
from tests.kitchen import dish

STEAMED_ROOTS = """
title: Three roots
texture: smooth
makes: {portions: 8 x 60 g}
foods:
  - 200 g carrots, peeled, 1 cm dice
  - 200 g parsnips, peeled, cored, 1 cm dice
  - 200 g swede, peeled, 1 cm dice
  - 2 tsp rapeseed oil
  - 60 ml water
steps:
  - Steam the carrots and the swede for 20 minutes, adding the parsnips for the last 12, until a cube squashes.
  - Blend everything with the oil and the water until smooth.
"""
RISOTTO = """
title: Courgette risotto
makes: {portions: 5 x 170 g}
foods:
  - 20 g unsalted butter
  - 1 small onion, finely chopped
  - 1 courgette, coarsely grated
  - 200 g risotto rice
  - 900 ml unsalted vegetable stock, hot
  - 100 g frozen peas
  - 30 g parmesan, finely grated
steps:
  - Soften the onion in the butter for 8 minutes.
  - Stir in the rice, add the stock a ladle at a time and simmer, stirring, for 20 minutes.
  - Add the courgette and the peas and simmer for 6 minutes more, until the rice is very soft.
  - Lift out the baby's portion, crush the peas with a fork and let it cool for 5 minutes.
  - Stir the parmesan into the family's pot.
"""
FISH_PIE = """
title: Cod under mash
texture: mashed
makes: {portions: 6 x 170 g}
foods:
  - 600 g floury potatoes, peeled, 2 cm cubes
  - 300 g skinless, boneless cod
  - 400 ml whole milk
  - 30 g unsalted butter
  - 25 g plain flour
  - 80 g frozen peas
  - 40 g cheddar, grated
steps:
  - Boil the potatoes for 15-20 minutes, until a cube squashes with a fork. Drain.
  - Meanwhile, poach the cod in the milk for 8 minutes. Lift the cod out, check it for bones and flake it.
  - Melt the butter, stir in the flour, add the milk and simmer for 5 minutes, stirring.
  - Boil the peas for 5 minutes. Drain and crush the peas.
  - Stir the cod and the peas into the sauce and tip it into a dish.
  - Mash the potatoes, spread over the fish, scatter the cheddar over and bake at 190 °C for 20 minutes.
"""


def batch(of: Dish) -> tuple[float, float, float]:
    """Grams, kcal and mg of vitamin C of the baby's whole batch."""
    bowl = of.facts.bowls["baby"]
    return bowl.grams.mid, bowl.batch["energy_kcal"].amount, bowl.batch["vitamin_c_mg"].amount


def test_a_puree_of_three_steamed_roots() -> None:
    # peel, core and tops off (SR28's refuse): 200 x 0.89 = 178 carrot, 200 x 0.85 = 170 parsnip and swede each
    # weight   (178 + 170 + 170) x 0.97 + 9.2 oil + 60 water                                        = 571.7 g
    # energy   178 x 0.41 (11124) + 170 x 0.75 (11298) + 170 x 0.37 (11435) + 9.2 x 8.84 (04582)    = 344.7 kcal
    # vitamin C  (1.78 x 5.9 + 1.70 x 17 + 1.70 x 25) x 0.75 (3464, roots, steamed)                  = 61.4 mg
    assert batch(dish(STEAMED_ROOTS)) == pytest.approx((571.7, 344.7, 61.4), rel=0.005)


def test_a_risotto_whose_rice_drinks_the_stock() -> None:
    # weight   20 + 70 x 0.82 + 196 x 0.94 + 200 + 900 x 0.88 + 100 x 0.94, no water beside the stock = 1347.6 g
    # energy   20 x 7.17 (01145) + 70 x 0.40 (11282) + 196 x 0.17 (11477) + 200 x 3.58 (20452)
    #          + 100 x 0.77 (11312); the stock has no record, the parmesan is the family's            = 997.7 kcal
    grams, energy, _ = batch(dish(RISOTTO))
    assert (grams, energy) == pytest.approx((1347.6, 997.7), rel=0.005)


def test_a_fish_pie_boiled_poached_and_baked() -> None:
    # weight   450 x 0.8 potato + 300 x 0.8 cod + 412.5 x 0.88 milk + 30 + 25 + 80 x 0.75 + 40        = 1118 g
    # energy   450 x 0.77 (11352) + 300 x 0.82 (15015) + 412.5 x 0.61 (01077) + 30 x 7.17 (01145)
    #          + 25 x 3.64 (20481) + 80 x 0.77 (11312) + 40 x 4.04 (01009)                             = 1373.3 kcal
    # vitamin C  4.50 x 19.7 x 0.75 potato, boiled and drained + 0.80 x 18 x 0.70 peas + 3.00 x 1 cod  = 79.6 mg
    assert batch(dish(FISH_PIE)) == pytest.approx((1118, 1373.3, 79.6), rel=0.005)
