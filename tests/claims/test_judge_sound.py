"""Sound statements of everyday feeding are not refused, and their near twins that are wrong are never kept."""

from __future__ import annotations

from spoonproof.hearing import hear
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests import kitchen
from tests.each import each

SOUND = (
    "Honey is bad news before twelve months.",
    "Whole cherry tomatoes are trouble for under fives.",
    "Sugar is trouble for small teeth.",
    "Legumes are rich in protein.",
    "Hazelnuts are high in fat.",
    "Oily fish is a source of vitamin D.",
    "A toddler needs about 350 ml of milk a day.",
    "Before six months, boil the tap water first and let it cool.",
    "You needn't boil tap water from six months.",
    "If they drink over 500 ml of formula a day, they don't need vitamin D drops.",
    "Wanting more milk is not a sign of readiness for solids.",
    "Your baby is ready when he can sit up, hold his head steady and swallow food.",
    "Spitting up milk is normal and usually gets better by itself by one.",
    "Freezing doesn't kill germs, it just stops them multiplying.",
    "Babies under one should have no more than a gram of salt a day.",
    "Marlin is too high in mercury for toddlers.",
    "Kelp is bad for babies.",
    "Honey is dangerous for babies.",
    "Coffee with food means less iron gets absorbed.",
    "Iron from meat is easier to take up than iron from beans.",
    "Serve oranges with lentils so that more of the iron gets used.",
    "Plant foods do not contain vitamin B12.",
    "Once they have had sesame without a reaction, keep it in.",
    "Delaying egg past twelve months may increase the risk of an allergy.",
    "There is no need to avoid common allergens while you're breastfeeding.",
    "A food with more than 17.5 g of fat per 100 g is high in fat.",
    "Babies can't get enough vitamin D from food alone.",
    "Skimmed milk is not suitable for children under five.",
    "Children need 10 micrograms of vitamin D a day.",
    "Leftover rice kept warm can make a toddler sick.",
    "Toddlers should have no more than 2 g of salt a day.",
    "Vegan toddlers may run low on B12.",
    "Boiling doesn't destroy all the vitamins.",
    "Pears can help soften their poo.",
    "Teething isn't a sign of being ready for solids.",
    "Poultry and fish hold haem iron, which is easier to absorb.",
    "Seaweed isn't for babies because of the iodine.",
    "A gram of salt is the daily limit for a baby under one.",
    "Cow's milk to drink waits until one, but a little in porridge is fine from six.",
    "Don't salt the porridge, her kidneys can't cope with it yet.",
    "Slice the olives lengthways so that nothing can block the airway.",
    "The mercury in swordfish can damage a child's nerves.",
    "Iron out of chickpeas is taken up more easily beside a kiwi.",
    "Toddlers need protein for their bones to develop normally.",
    "WHO recommends breastfeeding until two years or beyond, beside food.",
    "Watch for a reaction to the egg for up to two hours.",
    "Offer the first peanut in the morning so that you can watch for a reaction.",
    "A baby with a milk allergy usually reacts to goat's milk as well.",
    "Dried kidney beans that are not boiled properly make you ill.",
    "Beef is a source of iron that is easily absorbed.",
    "Choose full-fat cheese rather than reduced fat.",
    "Cow's milk has little iron in it.",
    "The less water they boil in, the more vitamin C stays in the greens.",
    "In the bottle it's still breast milk or formula till they're one.",
    "Formula or breast milk in the bottle till twelve months, whole milk in the saucepan from six.",
    "Don't swap it for their usual milk until they're a year old.",
    "Not shark, though: flake has more mercury than I want in a lunchbox.",
    "Leave swordfish on the slab: it carries more mercury than a small body should get.",
    "Haddock is low in mercury, which is why I buy it.",
    "Whole nuts stay in the cupboard until five years.",
    "The honey jar stays shut till after the first birthday.",
    "Salt can sit in its jar until she is one.",
    "Made with fresh cod because the salted kind is not for babies.",
    "Smoked haddock is far too salty for a baby.",
    "Unpasteurised milk isn't without danger for babies.",
    "Sweets don't make children hyper.",
    "Sugar doesn't turn toddlers hyper.",
    "Babies need hardly any salt, well under a gram a day.",
    "Toddlers need next to no salt.",
    "With no raw egg or flour it is safe to eat for babies.",
    "Some claim honey helps a cough, but nobody has shown that, and it can carry botulism.",
    "Grape halves are just the wrong size for a toddler's throat.",
    "After the age of seven months babies can be given soft idlis.",
    "Sprouts from the shop could carry salmonella.",
    "Our nan put honey on dummies; we know today that it can make a baby seriously ill.",
    "Babies under one shouldn't have anything salty, so this broth is plain.",
    "Babies of eight months should not be given anything sweet so this mash has none.",
)
UNHEARD = ("Babies can't get enough vitamin D from food alone.",)
"""In which no claim is found, and no danger must be."""
WRONG = (
    "Seeds have no fat.",
    "Legumes are the best source of protein.",
    "Jelly beans are a source of fibre.",
    "Pulses are high in vitamin C.",
    "Give a toddler at least 350 ml of milk a day, the more the better.",
    "A litre of milk a day is right for a toddler.",
    "350 ml of cow's milk a day is right for babies under one.",
    "At three months, cooled boiled water every day is good.",
    "You needn't boil water for formula after six months.",
    "Wanting more milk is a sign of readiness for solids.",
    "Wanting more milk is not a sign of growth but of being ready for solids.",
    "The first tooth shows your baby is ready to start solids.",
    "Hold her head and slip the spoon in.",
    "Spitting up gets better with banana.",
    "Freezing doesn't kill germs, it destroys them.",
    "Add less than a gram of salt a day to her food.",
    "Nothing in honey is too much for babies.",
    "Marlin isn't too high in mercury for toddlers.",
    "Kelp isn't bad for babies.",
    "Nobody has shown that honey is dangerous for babies.",
    "Yoghurt is bad for babies.",
    "It's a myth that coffee gets in the way of iron.",
    "If he has had peanut with a rash, keep it on the menu.",
    "No need to avoid alcohol while breastfeeding.",
    "A food with more than 17.5 g of fat per 100 g is low in fat.",
    "Skimmed milk is suitable for children under five.",
    "Salmon brings the 10 micrograms of vitamin D a day that babies need.",
    "Babies don't need 10 micrograms of vitamin D a day.",
    "Leftover rice kept warm all day can't make a toddler sick.",
    "A baby of eight months can have no more than 2 g of salt a day.",
    "Toddlers should have at least 2 g of salt a day.",
    "Vegan toddlers can't run low on B12.",
    "Boiling destroys all the vitamins.",
    "Pears always soften their poo overnight.",
    "Teething is a sign of being ready for solids.",
    "Dribbling is a sign of being ready for solid food.",
    "Vegan toddlers never lack B12.",
    "Babies need more than a gram of salt a day.",
    "Poultry has all the haem iron a baby needs.",
    "There is no reason to avoid seaweed because of the iodine.",
    "A gram of salt is the daily limit for a toddler.",
    "If they drink 500 ml of formula a week, they don't need vitamin drops.",
    "Early egg cuts the risk of an egg allergy by 70 percent.",
    "A reaction always comes within ten minutes.",
    "Gagging is just choking.",
    "Follow-on milk is gentler than first formula for babies of eight months.",
    "It's not a medicine, it simply takes the fever away.",
    "The protein in fish is easily absorbed, so there is no need for milk.",
    "Lettuce can damage a baby's nerves.",
    "Give lentils and your toddler will never be anaemic.",
    "It won't treat a cough, but it will stop the next one.",
    "A cashew allergy goes away if you keep offering cashews.",
    "Chicken is the best iron there is for babies.",
    "In the bottle it's cow's milk or formula till they're one.",
    "Formula or breast milk with cereal in the bottle till they're one.",
    "Breast milk or formula is all they need until one.",
    "Shark has no more mercury than cod, so it's fine for babies.",
    "Swordfish is low in mercury.",
    "Shark isn't high in mercury, give it to your toddler.",
    "Whole nuts come out of the cupboard at two years.",
    "The honey jar stays on the table from nine months.",
    "The salted kind is not too salty for a baby.",
    "It's a myth that salted cod is not for babies.",
    "Whole cherry tomatoes are no bother for a toddler.",
    "Popcorn is no challenge for a two-year-old with teeth.",
    "Whole blueberries are no match for our one-year-old.",
    "Honey is no bother at nine months.",
    "Sausage coins are no big deal for a toddler.",
    "Nothing in honey could harm a baby of eight months.",
    "There isn't anything in raw milk to be afraid of.",
    "Babies get all the zinc they need from breast milk all through the first year.",
    "Waiting with egg until two is the surest way to avoid an egg allergy.",
    "You avoid fish allergy by keeping fish back until three.",
    "A baby of four months should be on two meals a day.",
    "Amber eases sore teething gums.",
    "A Baltic amber necklace stops teething pain.",
    "It isn't true that grapes can block a throat, and they're not a choking risk.",
    "Once she turns one she can eat everything we eat.",
    "From the first birthday everything the family eats can be given to a toddler.",
    "Bean sprouts are best eaten raw.",
    "Offer your baby yoghurt, low-fat or full-fat.",
    "Some people still give water to newborns, and it does them good.",
    "When your toddler has a cold, onion soup will shift it.",
    "Formula has everything a baby needs all through the first year.",
    "Breast milk gives all that's needed until one.",
)


def spoken(text: str) -> list[JudgedClaim]:
    """All that is heard in a sentence, the dangers of a baby included."""
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", text), lines=True)
    return hear(passages, known, known.judge_without_dish(None, (), None), apart=True)


@each("text", SOUND)
def test_what_guidance_says_is_not_refused(text: str) -> None:
    found = spoken(text)
    assert found or text in UNHEARD
    assert [(one.claim.quote, one.advice, one.why) for one in found if one.advice not in ("keep", "add")] == []


@each("text", WRONG)
def test_its_twin_that_is_wrong_is_not_kept(text: str) -> None:
    found = spoken(text)
    assert any(one.advice not in ("keep", "add") for one in found) or not found


@each("food", ["Egg", "Fish", "Milk", "Peanut", "Wheat", "Sesame", "Soya", "Nuts", "Mustard", "Celery"])
def test_what_the_law_lists_as_an_allergen_is_never_said_to_be_free_of_them(food: str) -> None:
    for free in ("is free of allergens", "is free from allergens", "is clear of all allergens"):
        assert [one.claim.quote for one in spoken(f"{food} {free}.") if one.advice in ("keep", "add")] == []
