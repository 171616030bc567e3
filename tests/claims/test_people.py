"""What is told of people, their illnesses and tests is no claim about a food; what is said of a food still is."""

from __future__ import annotations

from finding_kit import claims

from tests.each import each


@each(
    "text",
    [
        "Because our nephew has asthma, we were told to go slowly with walnuts.",
        "Olive often had eczema as a toddler.",
        "The answers were quite clear: an immune response, whatever he ate.",
        "It is hard to cook for a friend with a walnut allergy.",
        "I wish I had thought of avoiding allergens sooner.",
        "Ours is a nut-free nursery.",
        "Mind the date, the label and remember to keep it nut-free.",
        "Her cousin is trying a dairy free diet.",
        "They call it 'no added sugar' on the shelf.",
        "Don't talk yourself into thinking of it as pudding.",
        "The kitchen made a frightful sight once the swede had flown.",
        "Spoon it all over the rice to serve a nutritious supper.",
        "You don't need to give kids squash at supper.",
        "A shrug she is rather good at for a 9 month old.",
        "The jam is needed to hold the oats together.",
        "My grandmother sat by the fire and ate her popcorn; the children had swede, mashed.",
        "By 14 months a toddler can feed himself with a fork.",
        "I worry he isn't getting the right nutrition at nursery.",
        "Our reason for cooking at home was health driven.",
        "We want to wait until he is nine months before we offer swede.",
        "Our neighbour's toddler gave up purees before the age of one.",
        "In my search for an allergen free scone I tried three shops.",
        "Judge for yourself and decide whether these are suitable for your toddler to use as a bib.",
        "She kept the ointment for when the eczema came back.",
        "The pan works a browning reaction on the beef.",
        "Due to Ezra's reflux and milk allergy, we asked our nurse.",
        "Ezra reached 6 months old last week and sits well, so we began weaning.",
        "At 7 months, he burst into tears at the sight of a swede.",
        "He mashes every swede in sight.",
        "A lopsided sponge was their first birthday cake.",
        "Skip the sprinkles unless they are egg-free.",
        "You won't need to add so much sugar.",
        "He cannot have icing because he has a dairy allergy.",
        "Our aunt has never tried gluten free baking.",
        "My sister substituted gluten free oats.",
        "We knew about the egg allergies and planned a completely safe birthday.",
        "For an allergy family a party is hard work.",
        "When Ezra was approaching 6 months, I had no view on introducing solids.",
        "Shall we play it safe with the old menu?",
        "Ezra is now 20 weeks old and our health visitor talked of weaning.",
    ],
)
def test_what_is_told_of_people_is_no_claim(text: str) -> None:
    assert claims(text) == []


@each(
    ("text", "kind"),
    [
        ("Walnuts are bad for children with asthma.", "disease"),
        ("Porridge cleared her eczema within a week.", "disease"),
        ("Oats are good for his eczema.", "disease"),
        ("Prunes clear constipation.", "disease"),
        ("Giving egg early prevents an egg allergy.", "allergen"),
        ("Avoid allergens like walnut until six months.", "allergen"),
        ("These nut-free muffins keep well.", "allergen"),
        ("This loaf has half the sugar of the original recipe.", "comparative"),
        ("The loaf contains little or no salt.", "nutrient-content"),
        ("Sardines sharpen thinking.", "function"),
        ("Carrots improve a child's sight.", "function"),
        ("Whole grapes can leave a baby choking.", "safety-age"),
        ("The aim is to serve grapes quartered, without choking hazards.", "safety-age"),
        ("Lentils are nutritious.", "general-benefit"),
        ("Don't give children squash before one year.", "safety-age"),
        ("The amount of sugar in biscuits is high.", "nutrient-content"),
        ("The biscuits contain wheat and no sugar.", "nutrient-content"),
        ("Yoghurt is as healthy as porridge.", "comparative"),
        ("Sage tea will make a poorly child feel better.", "function"),
        ("They get too much salt from sausages.", "nutrient-content"),
        ("Nuts can be introduced after six months.", "allergen"),
        ("Wheat should not be introduced before four months.", "allergen"),
        ("Once babies have reached six months they can start solids.", "safety-age"),
        ("Babies who are 6 months old can have porridge.", "safety-age"),
        ("These scones are suitable for babies.", "safety-age"),
        ("Egg can set off an allergic reaction.", "allergen"),
        ("Reflux is due to too much orange juice.", "disease"),
        ("Seitan has gluten.", "allergen"),
        ("No eggs, no nuts: a cake for all.", "allergen"),
        ("Try this gluten-free loaf.", "allergen"),
        ("Honey is safe after a first birthday.", "safety-age"),
        ("Oats help development.", "function"),
        ("When a baby is six months old you can introduce solids.", "safety-age"),
        ("Avoid giving peanut to children who have a peanut allergy.", "allergen"),
        ("At 5 months he ate a spoonful of honey.", "safety-age"),
        ("We want to start him on solids at 3 months.", "safety-age"),
        ("I still haven't given him whole nuts, they can choke children under five.", "safety-age"),
        ("I was keen to give him honey at five months.", "safety-age"),
        ("Every child began solids at three months in our day.", "safety-age"),
        ("Eggs had given her hives.", "disease"),
        ("A cream of oats for her eczema works.", "disease"),
        ("She didn't like honey before one year, but babies must not have it.", "safety-age"),
        ("To make a nutritious supper, add lentils.", "general-benefit"),
        ("Porridge made me feel better when I was ill.", "disease"),
        ("Look at the amount of salt in ham: it is high.", "nutrient-content"),
        ("Peanuts cause allergies, as a skin prick test shows.", "allergen"),
        ("I panicked that she would choke on the grape.", "safety-age"),
        ("Whole nuts choke children.", "safety-age"),
        ("A safe birthday cake with honey for all.", "safety-age"),
        ("He managed to beat eczema with goat's milk.", "disease"),
        ("Apple isn't fit for babies in the first few months.", "safety-age"),
        ("My aunt gave the baby popcorn.", "safety-age"),
        ("Grandad and the baby ate popcorn.", "safety-age"),
    ],
)
def test_what_is_said_of_the_food_is_still_found(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}


def test_leaving_the_peel_on_keeps_something() -> None:
    (kept,) = claims("Don't peel them, to keep the fibre.")
    assert (kept.kind, kept.polarity) == ("process", "asserts")
    (held,) = claims("Don't peel it, the skin has more fibre.")
    assert "peel" not in held.subjects
