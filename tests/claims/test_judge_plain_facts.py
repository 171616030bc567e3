"""Plain facts and guidance of everyday speech that the tables and the register bear out, and their twins that don't."""

from __future__ import annotations

from spoonproof.hearing import hear
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests import kitchen
from tests.each import each

SOUND = (
    "A microwave doesn't make food radioactive.",
    "Boiling doesn't destroy botulism spores in honey.",
    "Spores of Bacillus cereus survive the cooking of rice.",
    "Rye isn't safe for a child with coeliac disease.",
    "Nori is no reliable source of B12.",
    "Lactose intolerance isn't the same as a milk allergy.",
    "Wholegrain bread has more fibre than white bread.",
    "Fibre helps keep the bowels regular.",
    "Green potatoes contain solanine, so cut those bits off.",
    "No amount of honey is safe under one.",
    "Gagging isn't choking.",
    "Rock salt is just salt, whatever the jar says.",
    "Researchers never found that sweets make children hyperactive.",
    "Saffron smells lovely in rice, but it doesn't cure eczema.",
    "Hummus isn't peanut.",
    "Halva is sesame.",
    "Groundnuts are peanuts.",
    "A water chestnut isn't a nut.",
    "Swordfish and marlin are for nobody under sixteen.",
    "Whole almonds are for nobody under five.",
    "Shark is not for children under sixteen.",
    "A gram of salt holds about 0.4 grams of sodium.",
    "Protein and carbohydrate each carry 4 calories per gram, and fat 9.",
    "At 3 g of protein per 100 ml, a 150 ml cup gives 4.5 g.",
    "The beef shrank from 400 to 300 g and lost a quarter of its weight.",
    "Watering it down can make a baby very ill.",
    "Don't put one scoop less in each bottle, it can make babies seriously ill.",
    "He was sick and swelled round the eyes after peanut, and we rang for an ambulance.",
    "Under one, keep salt below a gram a day.",
    "Hydrolysed formula isn't recommended for preventing allergy.",
    "Unpasteurised cheese, and mould-ripened soft ones, are best kept off a baby's plate.",
    "Leave cow's milk as a main drink until one.",
    "Peanut early on, for babies with bad eczema, lowered the rate of peanut allergy; ask your doctor first.",
    "The NHS advises giving children from six months to five years vitamins A, C and D every day.",
    "The iron in beef is absorbed better than the iron in lentils.",
    "Toddlers can stay on whole milk until they are two.",
    "Frozen spinach is as nutritious as fresh.",
    "Too much fibre can leave small tummies full too soon.",
    "Children aged one to four need three servings of dairy a day.",
    "Egg yolks contain choline.",
    "Greek yoghurt has more protein than ordinary yoghurt.",
    "Lentils have more fibre than mashed potato.",
    "Boiled egg can still cause a reaction in a child who is allergic to egg.",
    "Raspberries are not one of the fourteen allergens.",
    "Lupin is one of the fourteen allergens.",
    "Sesame is one of the nine major allergens.",
    "Too little iron can slow a child's growth and learning.",
    "Sausages are salty and not suitable for babies.",
    "Salt is unsuitable for babies.",
    "Quinoa contains iron.",
    "Apples contain vitamin C.",
    "Fat is an important source of energy for toddlers.",
    "From one to three years, the most salt a day is 2 g.",
    "For toddlers the limit is 800 mg of sodium a day.",
    "A baby under one must not go over 1 g of salt a day.",
    "Whole cow's milk has about 120 mg of calcium per 100 ml.",
    "Spirulina is not a reliable source of vitamin B12.",
    "Cream cheese made from pasteurised milk is fine from six months.",
    "Gravy granules are high in salt.",
    "Iron-fortified cereal is a source of iron.",
    "Spinach can be high in nitrate.",
    "Toddlers need full-fat yoghurt until they are two.",
    "Nuts should be ground or finely chopped for children under five.",
    "No rice pudding makes a baby sleep through.",
    "Beef has three times the zinc of chicken.",
    "Garlic does not cure ear infections.",
    "Follow-on milk is not needed after six months.",
    "Sunflower seeds contain vitamin E.",
    "Juicing takes out most of the fibre.",
    "A vegan toddler needs a source of vitamin B12.",
    "Far from causing allergies, early egg lowers the risk.",
    "Can a baby choke on whole grapes? Yes, so quarter them.",
    "Even if you supervise, whole grapes can choke.",
    "Unlike whole grapes, grapes quartered lengthways are fine.",
    "Unlike raw carrot, steamed carrot is fine for babies.",
    "It's a myth that babies need teeth for lumps.",
    "Ghee can still hold traces of milk protein.",
    "Lactose-free milk still contains milk protein.",
    "Introducing gluten doesn't prevent coeliac disease.",
    "They'll tell you to avoid nuts till five, but smooth nut butter is fine from six months.",
)
WRONG = (
    "One blueberry has a full day's vitamin C.",
    "Two tablespoons of this give forty grams of protein.",
    "Spinach has more iron than liver.",
    "Broccoli beats beef for iron.",
    "This broth cures chest infections without antibiotics.",
    "If your baby has a fever, elderberry syrup will bring it down.",
    "Coconut water is better than any rehydration solution.",
    "You don't need rehydration salts, coconut water does the job.",
    "Freezing honey kills the spores.",
    "Almond milk can take over from formula at six months.",
    "Spelt is safe for coeliacs because it's an ancient grain.",
    "Microwaves make food radioactive.",
    "Gagging means the baby is choking.",
    "Babies need molars before any solid food.",
    "Raw milk is free of germs if the cow is healthy.",
    "B12 drops are a waste on a vegan baby.",
    "Green potatoes are harmless once boiled.",
    "Lactose intolerance is just another word for milk allergy.",
    "Tahini is peanut.",
    "Ghee isn't milk.",
    "Chestnuts aren't nuts.",
    "Spelt is not wheat.",
    "This porridge lets her sleep right through till dawn.",
    "The soup keeps coughs at nursery away from her.",
    "Boiled egg is no risk to your baby at all.",
    "A bowl of prunes flushes out whatever has been building up.",
    "Don't boil the kidney beans, it makes them ill.",
    "A gram of salt is 4 grams of sodium.",
    "Sugar has 9 calories a gram.",
    "At 3 g of protein per 100 ml, a 150 ml cup gives 9 g.",
    "Under one, keep salt below 3 g a day.",
    "Watering it down won't make a baby ill.",
    "Never give bread, it makes babies ill.",
    "Porridge for babies with eczema, it eases the itch.",
    "Steak tartare is a fantastic first iron food.",
    "Unpasteurised cheese is best kept in the fridge and fine for babies.",
    "Coconut water replaces oral rehydration salts.",
    "Children from six months to five years should never have vitamins A, C and D every day.",
    "The iron in lentils is absorbed better than the iron in beef.",
    "Babies can have whole milk as a drink from eight months until they are two.",
    "Frozen spinach is always as nutritious as fresh, gram for gram.",
    "Too much fibre can never leave small tummies full.",
    "Babies need at least three servings of dairy a day.",
    "Egg whites are rich in choline.",
    "Ordinary yoghurt has more protein than Greek yoghurt.",
    "Mashed potato has more fibre than lentils.",
    "Boiled egg can no longer cause a reaction in a child who is allergic to egg.",
    "Lupin is not one of the fourteen allergens.",
    "Mustard is one of the nine major allergens.",
    "Raspberries are one of the fourteen allergens.",
    "A teaspoon of salt a day is the limit for toddlers.",
    "Too little iron never slows a child's growth.",
    "Salt isn't unsuitable for babies.",
    "Whole grapes are not just suitable for adults, they're fine for babies.",
    "Quinoa doesn't contain iron.",
    "Quinoa is a source of iron.",
    "Bananas contain iron.",
    "For toddlers the limit is 2 g of sodium a day.",
    "For toddlers the most salt a day is 4 g.",
    "Whole cow's milk has about 250 mg of calcium per 100 ml.",
    "Spirulina is a good source of vitamin B12.",
    "Brie made from pasteurised milk is fine from six months.",
    "Vitamin C gummies are needed from six months.",
    "Vitamin C pills are needed from six months if you don't give orange juice.",
    "A baby can choke on purée, so never give it.",
    "Cooked mushrooms must never be reheated, it makes them toxic.",
    "Walnuts are fine for children under five if roughly chopped.",
    "Broccoli has twice the vitamin C of kiwi.",
    "Kiwi has half the vitamin C of orange.",
    "There is no need for iron in a baby's diet until two.",
    "It's a myth that garlic does not cure ear infections.",
    "Follow-on milk is necessary from six months.",
    "Sunflower seeds are packed with vitamin E and keep colds away.",
    "Chia seeds are packed with calcium.",
    "Tap water has to be boiled until the age of two.",
    "Babies need teeth for lumps.",
    "Introducing wheat late prevents coeliac disease.",
    "Introducing egg late protects against allergy.",
    "Tinned fruit has no vitamins at all.",
    "Honey is only dangerous raw.",
    "Rice cakes every day are fine, arsenic isn't an issue for babies.",
    "A tin of tuna a day is fine for a toddler.",
)
CUT = (
    "Should you avoid swordfish for toddlers? Nah, it's fine.",
    "Can a baby choke on whole grapes? Not if you watch her.",
    "We stopped worrying about botulism and gave honey at eight months.",
    "Peanut allergy is caused by eating peanut too early.",
    "Breast milk in the ear heals ear infections.",
    "They'll tell you to avoid whole nuts till five, but we gave them at two.",
    "They say no honey before one, but mine had it at eight months.",
    "Avocado makes babies cleverer.",
    "Unlike cow's milk, oat milk is fine as a main drink at eight months.",
    "it's not true that doctors know best garlic cures colds",
)


def spoken(text: str, paid: str = "editorial") -> list[JudgedClaim]:
    """All that is heard in a sentence, the dangers of a baby included, by one who is paid or not."""
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", text), lines=True)
    channel = kitchen.channel(f"markets: [GB]\npaid: {paid}\n")
    return hear(passages, known, known.judge_without_dish(channel, (), None), apart=True)


@each("text", SOUND)
def test_what_is_so_is_not_refused(text: str) -> None:
    found = spoken(text)
    assert found
    assert [(one.claim.quote, one.advice, one.why) for one in found if one.advice not in ("keep", "add")] == []


@each("text", WRONG)
def test_what_is_not_so_is_not_kept(text: str) -> None:
    found = spoken(text)
    assert any(one.advice not in ("keep", "add") for one in found) or not found


@each("text", CUT)
def test_what_is_promised_or_given_against_better_knowledge_is_cut(text: str) -> None:
    assert {one.advice for one in spoken(text)} == {"cut-untrue"}


def test_how_much_is_told_where_a_food_holds_some_and_is_no_source() -> None:
    (found,) = spoken("Apples contain vitamin C.")
    assert (found.truth, found.advice) == ("true", "add")
    assert found.wording == "Apples contain vitamin C, 3.7 to 5.5 mg in 100 g"


def test_who_is_paid_is_held_to_the_laws_own_word_contains() -> None:
    (found,) = spoken("Apples contain vitamin C.", paid="sponsored")
    assert found.advice == "cut-not-allowed"


def test_a_part_of_a_kept_claim_is_not_scolded_beside_it() -> None:
    found = spoken("Haem iron from meat is absorbed better than the iron in plants.")
    assert {one.advice for one in found} == {"keep"}
    assert "meat is absorbed" not in [one.claim.quote for one in found]


def test_a_part_on_no_list_stays_where_the_longer_claim_is_not_kept() -> None:
    found = spoken("Vitamin C helps the body beat colds.")
    assert all(one.advice not in ("keep", "add") for one in found)


POT = """---
title: Red lentil and carrot pot
ages: 7-12 months
texture: mashed
next: {texture: lumpy, from: 9 months, how: mash it less}
makes: 6 x 100 g
foods:
  - 150 g red lentils
  - 200 g carrots, peeled, 1 cm dice
  - 1 tbsp rapeseed oil
  - 80 g porridge oats
  - 500 ml water
steps:
  - Simmer the lentils, the oats and the carrots in the water for 25 minutes, until a cube squashes when pinched.
  - Mash with the oil.
keeps: fridge 48 h, freezer 1 month
paid: PAID
---
STORY
"""


def told(story: str, paid: str = "editorial") -> list[JudgedClaim]:
    """What is judged of a story about a pot of lentils, carrots, oats and oil."""
    dish = kitchen.dish(POT.replace("PAID", paid).replace("STORY", story), "markets: [GB]\n")
    return [one for one in dish.claims if one.claim.passage.kind == "story"]


@each(
    "story",
    [
        "Rapeseed oil contains omega-3.",
        "Oats bring fibre.",
        "Oats bring beta-glucan.",
        "Oats are not gluten-free.",
        "It isn't gluten-free.",
        "Iron from lentils is not taken up as well as iron from meat.",
        "Carrots lose a little vitamin C even when they are steamed.",
        "No porridge makes a baby sleep through.",
    ],
)
def test_what_holds_for_the_pot_is_not_refused(story: str) -> None:
    found = told(story)
    assert found
    assert [(one.claim.quote, one.advice, one.why) for one in found if one.advice not in ("keep", "add")] == []


@each(
    "story",
    [
        "No added sugar and no sugars at all.",
        "Rich in protein, with more than an egg.",
        "It can replace a breastfeed at seven months.",
        "It isn't dairy-free.",
        "Iron from lentils is taken up as well as iron from meat.",
        "It's a myth that iron from lentils is not taken up as well as iron from meat.",
    ],
)
def test_what_does_not_hold_for_the_pot_is_not_kept(story: str) -> None:
    found = told(story)
    assert found
    assert any(one.advice not in ("keep", "add") for one in found)


def test_a_story_that_names_nothing_speaks_of_the_dish() -> None:
    (found,) = told("A source of protein.", paid="sponsored")
    assert found.advice == "keep"
    assert any("% of energy" in step for step in found.trail)
