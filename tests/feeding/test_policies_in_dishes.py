"""What a channel's market and policies loosen or tighten, dish by dish: no more and no less than they say."""

from __future__ import annotations

from tests.each import each
from tests.feeding.dishes import dish, hazard_ids

LOOSE = """markets: [US]
policies: {whole-nuts: US, round-fruit: US, nitrate: AAP, eggs: GB, fridge: US}
"""
STRICT = """markets: [GB]
policies: {nitrate: AESAN}
"""
BOIL = "Boil the egg for 4 minutes, until the white is set and the yolk still runny."
CASES = [
    ("36-48", "100 g seedless grapes, halved lengthways", "Put them on a plate.", set(), {"round-uncut"}),
    ("14-20", "100 g seedless grapes, halved lengthways", "Put them on a plate.",
     {"round-uncut-us-baby"}, {"round-uncut"}),
    ("48-60", "30 g almonds", "Put them in a bowl.", set(), {"whole-nuts"}),
    ("30-40", "30 g almonds", "Put them in a bowl.", {"whole-nuts-us"}, {"whole-nuts"}),
    ("8-12", "100 g spinach", "Steam the spinach for 4 minutes and blend it.", set(), {"nitrate-leaf-aesan"}),
    ("9-18", "1 British Lion egg", BOIL, set(), {"runny-egg"}),
    ("9-18", "1 egg", BOIL, {"runny-egg-lion"}, {"runny-egg"}),
    ("12-24", "150 g swordfish steak, boneless", "Grill the fish for 10 minutes and flake it finely.",
     {"mercury-fish"}, {"mercury-fish"}),
    ("7-12", "1 tsp honey", "Stir the honey into the porridge.", {"honey"}, {"honey"}),
    ("7-12", "200 g honeydew melon, mashed", "Serve it.", set(), set()),
]  # fmt: skip


@each("case", CASES)
def test_a_policy_changes_its_own_rows_alone(case: tuple[str, str, str, set[str], set[str]]) -> None:
    ages, food, step, loose, strict = case
    for channel, expected in ((LOOSE, loose), (STRICT, strict)):
        found = hazard_ids(dish(ages, [food], [step], channel=channel))
        assert {one for one in found if one != "mercury-us"} == expected
