"""Authorities' lists of dangers, row by row: a dish that serves the thing as the list names it must give a hazard.

Each row: the source's id, what it names (in our words), the ages, food lines, steps, and the hazard's id; "" is a
row that we do not cover, with the reason in its last cell. ``pytest -s`` prints the coverage by source.
"""

from __future__ import annotations

from collections import Counter
from typing import NamedTuple

from tests import kitchen
from tests.each import each
from tests.feeding.dishes import dish, hazard_ids


class Listed(NamedTuple):
    """One thing on one list."""

    source: str
    thing: str
    food: str
    step: str
    hazard: str
    ages: str = "9-12"
    why_not: str = ""


SERVE = "Serve everything."
STIR = "Stir everything together."
COOK = "Simmer everything for 40 minutes."

LISTS = [
    # UK Department for Education, food safety for early years
    Listed("dfe-food-safety", "stones in fruit", "4 plums", COOK, "stone-left-in"),
    Listed("dfe-food-safety", "small round fruit: grapes", "80 g grapes", SERVE, "round-uncut", "36-48"),
    Listed("dfe-food-safety", "small round fruit: strawberries", "80 g strawberries", SERVE, "berry-whole", "36-48"),
    Listed("dfe-food-safety", "small round: cherry tomatoes", "80 g cherry tomatoes", SERVE, "round-uncut", "36-48"),
    Listed("dfe-food-safety", "melon in chunks", "200 g melon, cubed", SERVE, "melon-chunk", "24-36"),
    Listed("dfe-food-safety", "raw apple in chunks", "1 apple, cored, cubed", SERVE, "hard-raw-chunk", "24-36"),
    Listed("dfe-food-safety", "raw carrot at first", "1 carrot, cut into batons", SERVE, "hard-raw", "6-8"),
    Listed("dfe-food-safety", "skins at first", "2 apples, cored, diced", COOK, "peel-young", "6-8"),
    Listed("dfe-food-safety", "raisins as a snack", "20 g raisins", SERVE, "dried-fruit-whole"),
    Listed("dfe-food-safety", "sausages in chunks", "2 pork sausages, cut into chunks", COOK, "sausage-round", "24-36"),
    Listed("dfe-food-safety", "sausage skins", "2 pork sausages, cut into strips", COOK, "sausage-skin", "24-36"),
    Listed("dfe-food-safety", "bones in fish", "1 whole trout", COOK, "bones-said", "24-36"),
    Listed("dfe-food-safety", "bones in meat", "2 chicken drumsticks", COOK, "bones-meat", "24-36"),
    Listed("dfe-food-safety", "whole nuts", "30 g almonds", SERVE, "whole-nuts", "48-59"),
    Listed("dfe-food-safety", "whole seeds", "20 g pumpkin seeds", SERVE, "whole-seeds", "36-48"),
    Listed("dfe-food-safety", "cheese in chunks", "40 g cheddar, cubed", SERVE, "cheese-chunk", "24-36"),
    Listed("dfe-food-safety", "white bread", "1 slice white bread", SERVE, "white-bread", "12-24"),
    Listed("dfe-food-safety-repost", "popcorn", "20 g popcorn", SERVE, "popcorn", "36-48"),
    Listed("dfe-food-safety-repost", "marshmallows", "20 g marshmallows", SERVE, "marshmallows", "36-48"),
    Listed("dfe-food-safety-repost", "jelly cubes", "40 g jelly cubes", SERVE, "jelly-cubes", "36-48"),
    Listed("dfe-food-safety-repost", "hard sweets", "20 g boiled sweets", SERVE, "hard-sweets", "36-48"),
    # NHS, food and drinks to avoid
    Listed("nhs-avoid", "popcorn", "20 g popcorn", SERVE, "popcorn", "24-36"),
    Listed("nhs-avoid", "jelly cubes", "40 g jelly cubes", SERVE, "jelly-cubes", "24-36"),
    Listed("nhs-avoid", "marshmallows", "20 g marshmallows", SERVE, "marshmallows", "24-36"),
    Listed("nhs-avoid", "boiled and sticky sweets", "20 g toffee", SERVE, "hard-sweets", "24-36"),
    Listed(
        "nhs-avoid",
        "peanut butter by itself",
        "1 tbsp peanut butter",
        "Offer a spoonful of peanut butter.",
        "nut-butter-glob",
    ),
    Listed("nhs-avoid", "chewing gum", "1 piece chewing gum", SERVE, "chewing-gum", "24-36"),
    Listed("nhs-avoid", "ice cubes", "4 ice cubes", SERVE, "ice-cubes", "24-36"),
    Listed("nhs-avoid", "whole nuts", "30 g peanuts", SERVE, "whole-nuts", "48-59"),
    Listed("nhs-avoid", "honey", "1 tsp honey", STIR, "honey"),
    Listed("nhs-avoid", "bacon", "2 rashers bacon, chopped", COOK, "salty-food"),
    Listed("nhs-avoid", "crisps", "20 g crisps", SERVE, "salty-food"),
    Listed("nhs-avoid", "mould-ripened soft cheese", "40 g camembert, sliced", SERVE, "mould-cheese", "24-36"),
    Listed("nhs-avoid", "soft blue cheese", "40 g Roquefort", SERVE, "mould-cheese", "24-36"),
    Listed("nhs-avoid", "ripened goats' cheese", "40 g chèvre", SERVE, "mould-cheese", "24-36"),
    Listed("nhs-avoid", "unpasteurised cheese", "40 g unpasteurised cheddar, grated", SERVE, "unpasteurised", "24-36"),
    Listed("nhs-avoid", "shellfish not cooked", "6 oysters", SERVE, "raw-shellfish", "24-36"),
    Listed("nhs-avoid", "sugar", "1 tsp sugar", STIR, "added-sugar"),
    Listed("nhs-foods-to-avoid-older", "salt", "1 pinch salt", STIR, "added-salt"),
    Listed("nhs-foods-to-avoid-older", "stock cubes", "1 stock cube", COOK, "stock"),
    Listed("nhs-foods-to-avoid-older", "gravy", "2 tsp gravy granules", COOK, "stock"),
    Listed(
        "nhs-foods-to-avoid-older",
        "low-fat yoghurt under two",
        "100 g low-fat yoghurt",
        SERVE,
        "low-fat-dairy",
        "12-18",
    ),
    Listed("nhs-foods-to-avoid-2010", "shark", "150 g shark, boneless", COOK, "mercury-fish", "24-36"),
    Listed("nhs-foods-to-avoid-2010", "swordfish", "150 g swordfish, boneless", COOK, "mercury-fish", "24-36"),
    Listed("nhs-foods-to-avoid-2010", "marlin", "150 g marlin, boneless", COOK, "mercury-fish", "24-36"),
    Listed(
        "nhs-foods-to-avoid-2010", "runny egg", "1 egg", "Boil the egg for 5 minutes and serve it runny.", "runny-egg"
    ),
    Listed("nhs-eggs", "raw egg", "1 egg", "Whisk the egg and serve it.", "raw-egg"),
    Listed("nhs-relayed-dietitian", "rice drink", "150 ml rice drink", STIR, "rice-drink", "24-36"),
    Listed(
        "nhs-relayed-dietitian",
        "plant drink as the drink",
        "150 ml oat drink",
        "Pour the oat drink into a beaker to drink.",
        "milk-drink",
    ),
    Listed(
        "nhs-relayed-dietitian",
        "goats' milk as the drink",
        "150 ml goats' milk",
        "Pour the goats' milk into a beaker to drink.",
        "milk-drink",
    ),
    Listed("nhs-relayed-dietitian", "liver", "100 g chicken livers", COOK, "liver"),
    Listed("nhs-relayed-dietitian", "bran", "1 tbsp wheat bran", STIR, "bran"),
    # University of Illinois Extension, after CDC and USDA
    Listed("illinois-choking", "cookies", "2 digestive biscuits", SERVE, "biscuits", "24-36"),
    Listed("illinois-choking", "crisps and pretzels", "20 g pretzels", SERVE, "crisps", "24-36"),
    Listed("illinois-choking", "seeded bread", "1 slice seeded bread", SERVE, "seeded-bread", "24-36"),
    Listed("illinois-choking", "whole cooked grain", "100 g pearl barley", COOK, "grain-kernels"),
    Listed(
        "illinois-choking", "whole cooked rice", "100 g brown rice", "Simmer everything for 12 minutes.", "rice-kernels"
    ),
    Listed("illinois-choking", "chunks of meat", "200 g stewing beef, cut into chunks", COOK, "meat-chunk"),
    Listed("illinois-choking", "hot dogs", "2 hot dogs", COOK, "sausage-round", "24-36"),
    Listed("illinois-choking", "fish with bones", "200 g mackerel", COOK, "bones-fish", "24-36"),
    Listed("illinois-choking", "string cheese", "1 cheese string", SERVE, "cheese-string", "24-36"),
    Listed("illinois-choking", "nuts and seeds", "20 g sunflower seeds", SERVE, "whole-seeds", "24-36"),
    Listed(
        "illinois-choking",
        "nut butters",
        "1 tbsp almond butter",
        "Offer a spoonful of almond butter.",
        "nut-butter-glob",
        "24-36",
    ),
    Listed("illinois-choking", "whole beans", "1 tin kidney beans in water", COOK, "beans-whole"),
    Listed("illinois-choking", "raw peas", "80 g peas", SERVE, "raw-peas", "24-36"),
    Listed("illinois-choking", "raw green beans", "80 g green beans", SERVE, "firm-raw"),
    Listed("illinois-choking", "raw celery", "1 celery stick, cut into batons", SERVE, "raw-stick", "24-36"),
    Listed("illinois-choking", "corn kernels", "100 g sweetcorn", COOK, "corn-kernels"),
    Listed("illinois-choking", "cherry tomatoes", "80 g cherry tomatoes", SERVE, "round-uncut", "24-36"),
    Listed("illinois-choking", "hard raw fruit", "1 apple, cored, cut into wedges", SERVE, "raw-stick", "24-36"),
    Listed("illinois-choking", "tinned fruit in whole pieces", "1 tin peaches", SERVE, "canned-fruit", "24-36"),
    Listed("illinois-choking", "whole berries", "80 g blueberries", SERVE, "berry-whole", "24-36"),
    Listed("illinois-choking", "melon balls", "200 g melon balls", SERVE, "round-uncut", "24-36"),
    Listed("illinois-choking", "dried fruit", "20 g raisins", SERVE, "dried-fruit-toddler", "24-36"),
    Listed("illinois-choking", "hard and gummy sweets", "20 g jelly beans", SERVE, "hard-sweets", "24-36"),
    Listed("illinois-choking", "chewing gum", "1 piece chewing gum", SERVE, "chewing-gum", "24-36"),
    Listed("illinois-choking", "marshmallows", "20 g marshmallows", SERVE, "marshmallows", "24-36"),
    # other lists
    Listed("care-inspectorate-choking", "blackberries", "80 g blackberries", SERVE, "berry-whole-baby"),
    Listed(
        "care-inspectorate-choking", "raw carrot under four", "1 carrot, cut into batons", SERVE, "raw-stick", "36-48"
    ),
    Listed("paho-2003", "nuts", "20 g cashews", SERVE, "whole-nuts"),
    Listed("paho-2003", "grapes", "80 g grapes, halved", SERVE, "round-uncut"),
    Listed("paho-2003", "raw carrot", "1 carrot, cut into coins", SERVE, "hard-raw"),
    Listed(
        "aap-choking-list", "chunky peanut butter", "1 tbsp crunchy peanut butter", STIR, "nut-butter-crunchy", "24-36"
    ),
    Listed("inspq-honey", "honey in cooking", "1 tbsp honey", "Bake everything for 30 minutes.", "honey"),
    Listed("espghan-2017", "salt", "1/4 tsp sea salt", COOK, "added-salt"),
    Listed("espghan-2017", "sugar", "1 tbsp golden syrup", STIR, "added-sugar"),
    Listed("espghan-2017", "fruit juice", "100 ml apple juice", STIR, "juice"),
    Listed(
        "espghan-2017",
        "cow's milk as the drink",
        "150 ml whole milk",
        "Pour the milk into a cup to drink.",
        "milk-drink",
    ),
    Listed("who-2023-remarks", "condensed milk", "2 tbsp condensed milk", STIR, "condensed-milk", "12-24"),
    Listed("who-2023-remarks", "flavoured milk", "100 ml chocolate milk", SERVE, "flavoured-milk", "12-24"),
    Listed("usda-avoid", "raw milk", "100 ml raw milk", STIR, "raw-milk", "24-36"),
    Listed("usda-avoid", "raw sprouts", "30 g alfalfa sprouts", SERVE, "raw-sprouts", "24-36"),
    Listed("usda-avoid", "foods with raw egg", "2 tbsp homemade mayonnaise", STIR, "raw-egg-product", "24-36"),
    Listed("usda-avoid", "unpasteurised juice", "100 ml unpasteurised apple juice", STIR, "unpasteurised", "24-36"),
    Listed("fda-fish", "king mackerel", "150 g king mackerel, boneless", COOK, "mercury-us", "24-36"),
    Listed("fda-fish", "orange roughy", "150 g orange roughy, boneless", COOK, "mercury-us", "24-36"),
    Listed("fda-fish", "tilefish", "150 g tilefish, boneless", COOK, "mercury-us", "24-36"),
    Listed("fda-fish", "bigeye tuna", "150 g bigeye tuna, boneless", COOK, "mercury-us", "24-36"),
    Listed("fiocruz-drinks", "black tea", "100 ml black tea", SERVE, "tea", "12-24"),
    Listed("fiocruz-drinks", "coffee", "100 ml coffee", SERVE, "tea", "12-24"),
    Listed("fiocruz-drinks", "mate", "100 ml yerba mate", SERVE, "tea", "12-24"),
    Listed("seaweed-iodine-2021", "kelp", "5 g kelp", COOK, "seaweed", "12-24"),
    Listed("swissmedic-fennel", "fennel tea", "100 ml fennel tea", SERVE, "fennel-tea", "12-24"),
    Listed("fda-cinnamon-2024", "ground cinnamon", "1/2 tsp ground cinnamon", STIR, "cinnamon-lead"),
    Listed("efsa-nitrate-2010", "spinach more than once a day", "100 g spinach", COOK, "nitrate-leaf"),
    Listed("fda-arsenic-rice-2020", "rice cereal as the only cereal", "30 g baby rice", STIR, "rice-cereal"),
    Listed("fsa-salt", "salt from one to three years", "1/4 tsp salt", STIR, "added-salt-toddler", "12-24"),
    # USDA's sheet on choking, and what extensions and WIC agencies say of it
    Listed("usda-choking", "hot dogs in rounds", "2 hot dogs, cut into coins", COOK, "sausage-round", "36-48"),
    Listed("usda-choking", "grapes and cherry tomatoes whole", "80 g cherry tomatoes", SERVE, "round-uncut", "48-59"),
    Listed("usda-choking", "raw carrot in batons", "1 carrot, cut into batons", SERVE, "raw-stick", "36-48"),
    Listed("usda-choking", "celery in batons", "1 celery stick, cut into batons", SERVE, "raw-stick", "36-48"),
    Listed(
        "usda-choking", "meat in chunks", "200 g stewing beef, cut into chunks", COOK, "meat-chunk-toddler", "24-36"
    ),
    Listed("usda-choking", "chicken in chunks", "200 g chicken breast, cut into chunks", COOK, "meat-chunk"),
    Listed(
        "usda-choking", "a glob of nut butter", "1 tbsp peanut butter", "Offer a spoonful of it.", "nut-butter-thick"
    ),
    Listed("nebraska-choking", "skins", "2 apples, cored, diced", COOK, "peel-young", "6-8"),
    Listed("nebraska-choking", "pips", "1 orange, peeled, in segments", SERVE, "pips-left-in"),
    Listed("nebraska-choking", "stones", "200 g cherries", COOK, "stone-left-in", "24-36"),
    Listed("wic-choking", "carrots that do not squash", "1 carrot, 2 cm dice", "Steam for 4 minutes.", "underdone"),
    Listed("wic-choking", "apples that do not squash", "1 apple, peeled, cored, 2 cm dice", SERVE, "hard-raw"),
    # Care Inspectorate (Scotland)
    Listed("care-inspectorate-choking", "whole peanuts under five", "30 g peanuts", SERVE, "whole-nuts", "48-59"),
    Listed("care-inspectorate-choking", "boiled sweets", "20 g boiled sweets", SERVE, "hard-sweets", "36-47"),
    Listed("care-inspectorate-choking", "hot dogs", "2 hot dogs", COOK, "sausage-round", "36-47"),
    Listed("care-inspectorate-choking", "popcorn", "20 g popcorn", SERVE, "popcorn", "36-47"),
    Listed("care-inspectorate-choking", "jelly cubes", "40 g jelly cubes", SERVE, "jelly-cubes", "36-47"),
    Listed("care-inspectorate-choking", "green beans not soft", "80 g green beans", SERVE, "firm-raw"),
    # American Academy of Pediatrics
    Listed("aap-choking-list", "hot dogs", "2 hot dogs", COOK, "sausage-round", "36-47"),
    Listed("aap-choking-list", "nuts", "30 g walnuts", SERVE, "whole-nuts", "36-47"),
    Listed("aap-choking-list", "seeds", "20 g sunflower seeds", SERVE, "whole-seeds", "36-47"),
    Listed("aap-choking-list", "chunks of meat", "200 g pork, cut into chunks", COOK, "meat-chunk-toddler", "36-47"),
    Listed("aap-choking-list", "chunks of cheese", "40 g gouda, cubed", SERVE, "cheese-chunk", "36-47"),
    Listed("aap-choking-list", "whole grapes", "80 g grapes", SERVE, "round-uncut", "36-47"),
    Listed("aap-choking-list", "hard, gooey or sticky candy", "20 g caramels", SERVE, "hard-sweets", "36-47"),
    Listed("aap-choking-list", "popcorn", "20 g popcorn", SERVE, "popcorn", "36-47"),
    Listed("aap-choking-list", "raw vegetables", "1 raw carrot, cut into batons", SERVE, "raw-stick", "36-47"),
    Listed("aap-choking-list", "raisins", "20 g raisins", SERVE, "dried-fruit-toddler", "36-47"),
    Listed("aap-choking-list", "chewing gum", "1 piece chewing gum", SERVE, "chewing-gum", "36-47"),
    # the rest of what is not yet
    Listed("nhs-avoid", "honey cooked into something", "1 tbsp honey", "Bake everything for 25 minutes.", "honey"),
    Listed("nhs-avoid", "sausages", "2 pork sausages, cut into strips", COOK, "salty-food"),
    Listed("nhs-avoid", "chips with salt, crackers", "6 salted crackers", SERVE, "salty-food"),
    Listed("nhs-relayed-dietitian", "skimmed milk", "150 ml skimmed milk", STIR, "low-fat-dairy", "12-18"),
    Listed("nhs-relayed-dietitian", "pâté", "40 g chicken liver pâté", SERVE, "pate", "12-24"),
    Listed("espghan-2017", "syrups", "1 tbsp date syrup", STIR, "added-sugar"),
    Listed("espghan-2017", "fennel tea", "50 ml fennel tea", STIR, "fennel-tea"),
    Listed("who-2023", "non-sugar sweeteners", "1 tsp stevia", STIR, "sweetener"),
    Listed("who-2023", "sugar-sweetened drinks", "100 ml lemonade", SERVE, "added-sugar-toddler", "12-18"),
    Listed("fiocruz-drinks", "cola", "100 ml cola", SERVE, "tea", "12-18"),
    Listed("fda-cinnamon-2024", "cinnamon in a spice mix", "1 tsp pumpkin pie spice", STIR, "cinnamon-lead"),
    Listed("aesan-nitrate", "chard", "100 g Swiss chard", COOK, "nitrate-leaf"),
    Listed("aap-nitrate-2005", "beetroot kept", "100 g beetroot, peeled, 1 cm dice", COOK, "nitrate-beet"),
    # read, and not covered
    Listed("aap-choking-2010", "balloons and toys", "", "", "", why_not="not food"),
    Listed(
        "fda-fish", "grams of fish a serving", "", "", "", why_not="amounts a week are notes of the week, not of a dish"
    ),
    Listed(
        "efsa-nitrate-2010",
        "no spinach with a gut infection",
        "",
        "",
        "",
        why_not="a caution on the page, not a fault of the dish",
    ),
    Listed("fda-arsenic-rice-2020", "micrograms in a rice cereal", "", "", "", why_not="a maker's measurement"),
    Listed("seaweed-iodine-2021", "iodine a day", "", "", "", why_not="an amount a day; kelp is kept out whole"),
    Listed("nhs-relayed-dietitian", "vitamin D drops", "", "", "", why_not="a supplement, not of a dish"),
    Listed("espghan-2017", "gluten from four months", "", "", "", why_not="nothing to warn of from six months"),
    Listed("aap-juice-2017", "juice a day from one year", "", "", "", why_not="an amount a day, not of a dish"),
]

COVERED = [row for row in LISTS if row.hazard]


@each("row", COVERED)
def test_what_a_list_names_is_a_hazard(row: Listed) -> None:
    ids = hazard_ids(dish(row.ages, [row.food, "100 g plain yoghurt"], [row.step]), notes=True)
    assert row.hazard in ids


def test_what_is_not_covered_says_why() -> None:
    for row in LISTS:
        assert bool(row.hazard) != bool(row.why_not)
    counted, all_rows = Counter(row.source for row in COVERED), Counter(row.source for row in LISTS)
    for source in sorted(all_rows):
        print(f"{source}: {counted[source]} of {all_rows[source]} rows")
    print(f"in all: {len(COVERED)} of {len(LISTS)}")


def test_every_hazard_row_names_a_known_source_and_no_recalled_one_is_an_error() -> None:
    known = kitchen.knowledge()
    for row in known.feeding.hazards:
        for source in (row.source.id, *(source for source, _ in row.others)):
            assert source in known.sources or source == "common-practice", (row.id, source)
        custom = known.sources.get(row.source.id, {}).get("custom", {})
        basis = custom.get("basis") if isinstance(custom, dict) else None
        if row.level == "error":
            assert row.source.basis == "read" and basis != "from-memory", row.id
