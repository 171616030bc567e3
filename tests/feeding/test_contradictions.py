"""Sentences that take a caution back, in many cooks' words, and those that only sound like it."""

from __future__ import annotations

import pytest

from spoonproof.feeding.contradictions import contradictions
from tests import kitchen

AGAINST = {
    "We love our patties rosy in the centre and so does she.": "",
    "He eats his chop pink, like the rest of us.": "",
    "My two nibble these in the car on the way to nursery.": "upright",
    "Lay her back in the bouncer and spoon it in.": "upright",
    "Perfect finger food for the pushchair on the way to the park.": "upright",
    "He will only eat it walking round the garden.": "upright",
    "Let the four-year-old feed him while you get on with the ironing.": "supervise",
    "Big sister loves to spoon it into him while I hang the washing.": "supervise",
    "A rusk in the cot keeps him busy while you shower.": "supervise",
    "Tuck a biscuit into the cot so that you get ten minutes.": "supervise",
    "Hold his nose and he will open up.": "appetite",
    "Pinch her nose for a moment and tip it in.": "appetite",
    "Give him a crust to gnaw while you have a shower.": "supervise",
    "I whisk her paracetamol into the cheese sauce.": "professional",
    "The bottle goes with him at bedtime and he nods off.": "supervise",
    "What she leaves in her bowl goes back under a plate in the larder for supper.": "reheat",
    "It is so fine that it can't go down the wrong way.": "first-aid",
    "She drinks it lying down in front of the telly.": "upright",
    "He sips it in the buggy all the way to the library.": "upright",
    "There is no need to telephone anyone about swollen lips.": "allergy-first",
    "Hives round the mouth soon pass, so carry on.": "allergy-first",
    "Take no notice of a wheeze after the first spoon.": "allergy-first",
    "One more spoonful for Daddy, then one for the cat.": "appetite",
    "Stop only when the plate is clean; get the spoon in while she laughs.": "appetite",
    "Start at eight weeks if he looks hungry.": "about-six-months",
    "We weaned ours at three months and they are strapping.": "about-six-months",
    "Wait until a year before you offer egg.": "allergens-present",
    "Hold off on peanut until she is two, to be on the safe side.": "allergens-present",
    "No fish before the first birthday in our family.": "allergens-present",
    "Let it cool on the windowsill all day and pot it at night.": "keep-chill",
    "Warm it again at lunch, at tea and at supper.": "reheat",
    "I crushed his tablet into the first two spoonfuls.": "professional",
    "Stir the paracetamol into her pear when she will not take it.": "professional",
    "I hid the medicine in a spoon of pudding.": "professional",
    "She ate the rest while I had a shower.": "supervise",
    "I nipped upstairs while he ate.": "supervise",
    "If he will not open his mouth I tickle him and get it in when he laughs.": "appetite",
    "The batter keeps warm on the side till his nap ends.": "keep-chill",
    "I left them to it and took the bins out.": "supervise",
    "She sucked a crust on the sofa, reclining like a queen.": "upright",
    "Leaning back in the beanbag she munched the lot.": "upright",
    "They finished theirs racing round the garden, still munching.": "upright",
    "He chewed his toast charging up and down the hall.": "upright",
    "My lad nibbled these in the stroller.": "upright",
    "When the gums hurt I slip a piece in the cot.": "supervise",
    "If she dozes off I get the last two spoonfuls in.": "upright",
    "Belted in behind me he munches through the lot.": "upright",
    "They defrost on the draining board while we shop.": "keep-chill",
    "I thinned it and fed it through a teat I had cut.": "upright",
    "When he splutters, leave him to it.": "supervise",
    "It sits in the fridge happily for five days.": "keep-chill",
    "You can leave the rice out until teatime.": "keep-chill",
    "Leave the beetroot in the pot till tomorrow.": "keep-chill",
    "It lasts a good week in the fridge.": "keep-chill",
    "Cook it on Monday and it keeps until Friday.": "keep-chill",
    "It is fine in the changing bag all day.": "keep-chill",
    "Carrot soup keeps for five days.": "keep-chill",
    "Monday's pot feeds us through to Friday.": "keep-chill",
    "I pack it lukewarm in a thermos for the childminder.": "keep-chill",
    "What I defrost by mistake goes back into the freezer.": "reheat",
}
HARMLESS = (
    "Leave the pan on the hob until it boils.",
    "Leave the buns on the table until they cool.",
    "Purees keep for three months in the freezer.",
    "Leave out the salt until she is older.",
    "The oatcakes last a week in a tin.",
    "A batch made on Sunday is eaten by Monday.",
    "Our car is full of crumbs, like every family's.",
    "The car was full of pears from my aunt's garden.",
    "Big sister set the table.",
    "We started at six months, when he could sit.",
    "His cot stands beside the kitchen door.",
    "The windowsill is where the basil lives.",
    "We walk to the market for the oats.",
    "Lunch, tea and supper look different every day.",
    "Fish comes on Fridays.",
    "A pumpkin was lying on the shelf, so we ate pumpkin.",
    "Put him in the cot for his nap and wash up.",
    "Sunday's batch, frozen in cubes, feeds us through to Friday.",
    "Strapped in her high chair she eats with both hands.",
    "Pop two cubes out and put the tray back in the freezer.",
    "It keeps for two days in the fridge.",
    "She fell asleep after lunch, spoon still in hand.",
    "He eats well after a morning of crawling round the house.",
    "Hold the spoon level and let him come to it.",
    "If she turns away, that is the end of the meal.",
    "Never leave a baby alone with food, in the cot or out of it.",
    "Ask your pharmacist before you mix a medicine with food.",
    "Medicine goes in with a syringe, never into the bowl.",
    "I stay beside him while he eats; the washing waits.",
    "I left the kettle to boil while she ate.",
    "We get it in the oven while she naps.",
    "If she turns away, never hold her chin.",
    "I get the washing in when he laughs at the rain.",
    "Add the milk, a spoonful at a time, to the sauce.",
    "What she leaves in her bowl goes to the hens.",
    "She leaves the skin and eats the rest.",
    "Hives after a new food mean a doctor before the next spoonful.",
    "If his lips swell, stop at once and call for help.",
    "She drinks it sitting up, from an open cup.",
    "We love our patties rosy in the centre, but hers goes back in the pan.",
    "We like our steak rare.",
    "Wipe her nose, then carry on with the spoon.",
)


def _cautions(text: str) -> set[str]:
    made = kitchen.dish(f"summary: >-\n  {text}\nages: 7-9 months\n")
    return {one.caution for one in contradictions(made.recipe.passages, made.knowledge.feeding)}


@pytest.mark.parametrize(("text", "caution"), AGAINST.items(), ids=lambda value: value[:40])
def test_what_takes_a_caution_back_is_heard(text: str, caution: str) -> None:
    assert caution in _cautions(text)


@pytest.mark.parametrize("text", HARMLESS, ids=lambda value: value[:40])
def test_what_only_sounds_like_it_is_not(text: str) -> None:
    assert _cautions(text) == set()
