"""What pages about food for babies say in passing: what fits, what is not needed, what a food may carry; and the
ordinary talk in the same words."""

from __future__ import annotations

from finding_kit import claims, only

from tests.each import each


@each(
    ("text", "kind", "subject"),
    [
        ("The longer you boil chard, the less folate is left.", "process", "chard"),
        ("Freezing doesn't harm the folate in broad beans.", "process", "broad bean"),
        ("Straining barley after a soak gets rid of some of the arsenic.", "process", "barley"),
        ("One chop gives a toddler half of the zinc he needs.", "quantity", "zinc"),
        ("Split peas are an important part of a toddler's diet.", "general-benefit", "split pea"),
        ("Plums make a great addition to your child's diet.", "general-benefit", "plum"),
        ("Polenta is a smart choice for little ones.", "general-benefit", "polenta"),
        ("Sugar is far from necessary.", "function", "sugar"),
        ("Your toddler doesn't need sugar in his diet.", "function", "sugar"),
        ("Babies need only a tiny amount of salt.", "function", "salt"),
        ("Raw eggs may carry bacteria.", "safety-age", "raw eggs"),
        ("Honey can harbour bacterial spores.", "safety-age", "honey"),
        ("I would not suggest giving liver to a toddler every day.", "safety-age", "liver"),
        ("You never want to add salt to a baby's bowl.", "safety-age", "salt"),
        ("Shop soups may have lots of added salt.", "nutrient-content", "soup"),
        ("Offer one new fruit at a time, three days apart.", "allergen", "allergen"),
        ("Sesame, well ground and stirred in, can be introduced to babies.", "allergen", "sesame"),
        ("Peanut butter we were told to leave till three and now they say get it in early.", "allergen", "peanut"),
        ("Mackerel is a very healthy food.", "general-benefit", "mackerel"),
        ("Barley gruel is one of the best baby foods.", "general-benefit", "barley"),
        ("The many benefits of regularly eating sardines.", "general-benefit", "sardine"),
        ("The best fruit to start with is pear.", "safety-age", "pear"),
        ("A baby depends on mother's milk for the first six months.", "safety-age", "mother's milk"),
        ("Eggs for protein and oranges for vitamin C.", "nutrient-content", "egg"),
        ("Now that she has teeth the bottle can lead to bad tooth decay.", "disease", "bottle"),
        ("Juice is lovely but hold it to about three ounces a day.", "quantity", "juice"),
        ("You want two cups of whole milk a day but not to exceed three.", "quantity", "whole milk"),
        ("Goat milk is famously allergenic and can be hard for a young child to digest.", "function", "goat milk"),
        ("Healthy foods include lentils and eggs.", "general-benefit", "lentil"),
        ("Steamed courgettes are a great place to start with your baby.", "general-benefit", "courgette"),
        ("The best time to include mango in her diet is around seven months.", "safety-age", "mango"),
        ("Each 2 oz. bar also includes two teaspoons of added sugar.", "quantity", "bar"),
        ("A 4 oz. tin of tuna is packed with protein.", "nutrient-content", "tuna"),
        ("Yoghurt is fine for a baby of eight months, says Dr. Lind of the clinic.", "safety-age", "yoghurt"),
        ("Symptoms of iron deficiency include tiredness and pale skin.", "disease", "iron deficiency"),
        ("Toddlers can't handle much salt.", "function", "salt"),
        ("Babies do not need to drink squash.", "function", "squash"),
        ("Your toddler doesn't actually need to have juice.", "function", "juice"),
        ("All your baby needs to drink is formula.", "safety-age", "formula"),
        ("What is the best age for giving honey?", "safety-age", "honey"),
        ("These muffins are so soft that a baby can manage them with no teeth.", "safety-age", "muffin"),
        ("curcumin absorption", "function", "curcumin"),
        ("Mercury builds up in the flesh of big fish.", "safety-age", "fish"),
        ("Oysters -- once a week at most.", "quantity", "oyster"),
        ("1 cup cooked kale, 90mg", "quantity", "kale"),
        ("150 g plain yoghurt - 200-250mg", "quantity", "yoghurt"),
        ("His digestion got better since we gave him kefir.", "function", "kefir"),
        ("Juice leaves no room for proper food.", "function", "juice"),
        ("Fresh white bread can get stuck on the roof of your baby's mouth.", "safety-age", "white bread"),
        ("Soft bagels can stick in the throat.", "safety-age", "bagel"),
        ("Cut foods like these into quarters before serving them to a toddler.", "safety-age", "food"),
        ("Tinned trout (watch out for bones)", "safety-age", "trout"),
        ("Don't put baby rice in the bottle.", "safety-age", "baby rice"),
        ("Whole grapes are also risky.", "safety-age", "grape"),
        ("The usual dose of prune juice is 30 ml a day.", "quantity", "prune juice"),
        ("A good starting dose is one teaspoon of ground flaxseed daily.", "quantity", "flaxseed"),
        ("Give two to four ounces of pear nectar once a day.", "quantity", "pear"),
        ("Toddlers' zinc requirement grows with them.", "function", "zinc"),
        ("Low zinc levels leave children open to infections.", "disease", "zinc"),
        ("Sweets are known to cause this condition.", "disease", "sweet"),
        ("Some babies get gas with this juice.", "disease", "juice"),
        ("Prune juice can be very effective.", "disease", "prune juice"),
        ("Plain water is always the best option.", "general-benefit", "plain water"),
        ("A well-planned vegetarian diet is suitable for every stage of life.", "general-benefit", "vegetarian diet"),
        ("Packet crisps are so refined that they have little nutritional value.", "general-benefit", "crisp"),
        ("These vitamin A, C and E-rich greens go well with eggs.", "nutrient-content", "green"),
    ],
)
def test_what_is_said_in_passing_is_heard(text: str, kind: str, subject: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == kind]
    assert found
    assert any(subject in said for claim in found for said in claim.subjects)


@each(
    ("text", "kind"),
    [
        ("1-3 years = 500 mg/day", "quantity"),
        ("Babies 7-12 months: 11 mg a day", "quantity"),
        ("DAILY REQUIREMENT: 700 mg for children aged 1-3 years", "quantity"),
        ("An excellent first food, 5+ months", "safety-age"),
        ("Pesticide residues stay well below legal limits.", "safety-age"),
        ("It is thin, easy to make and often served as a first food.", "safety-age"),
        ("0-12 months: 400IU (both sexes)", "quantity"),
        ("7-12 months 130 mcg", "quantity"),
        ("On the other hand, extra vitamins will boost his immune system.", "function"),
        ("This is bound to help you beat a winter cold.", "disease"),
    ],
)
def test_a_line_that_leaves_out_what_it_is_about_is_heard(text: str, kind: str) -> None:
    only(text, kind)


@each(
    "text",
    [
        "The relish is a great addition to any burger.",
        "Cut the grapes in half and scatter over the top.",
        "The batter sticks to the roof of the tin.",
        "Watch out for hot oil.",
        "Let the kids remove the stones and brush the plums with honey.",
        "“Superfoods,” they call them, and charge double.",
        "You don't need to have dinner at six.",
        "All this cake needs is a spoon of cream.",
        "I'm trying to add vitamins to his lunch box.",
        "She's not getting the nutrients she needs.",
        "Pick a bottle that's BPA-free.",
        "Vitamin K2 is made by bacteria.",
        "Folate is one of the water-soluble vitamins.",
        "Vitamin C, also called ascorbic acid, is a water-soluble vitamin.",
        "Signs of a good melon include a heavy feel.",
        "Toddlers cannot handle a sharp knife.",
        "Add 8 oz. milk, then stir.",
        "I still haven't given my 8 month old cow's milk.",
        "Rice cakes (look for a no added sugar kind)",
        "If in doubt, be safe - throw it out.",
        "The stew tastes even better if you don't have a cold.",
        "Scrub off any germs on the outside of the melon.",
        "Pilates -- once a week at most.",
        "1 cup cooked kale, chopped",
        "The crust has improved since I bought a stone.",
        "It can be hard for a child to meet her calcium needs.",
        "Feel through the mackerel for bones and mash it.",
        "If a little bit sticks in her throat, carry on.",
        "Ages 1-3 years = one ticket each",
        "Opening hours: 9 to 5 daily.",
        "A sharp knife does the trick.",
        "The best choice for this cake is a loose-bottomed tin.",
        "You can buy oats at your local health food shop.",
        "This leaflet is written for health professionals.",
        "Here are some ideas for adding sources of iron to lunch:",
        "She was just over two years old, happily stirring the batter.",
        "Carrots take up half of the drawer.",
        "Sauerkraut is made by fermenting roughly cut cabbage with salt.",
        "All food should come in a form that suits the growth of the child.",
        "One avocado mixed with formula yields 6 to 8 ounces of puree.",
        "A flat pan is a good choice for crumpets.",
        "Penne is a great option on a busy evening.",
        "The soup doesn't need salt.",
        "You don't need butter for this one.",
        "The sieve can't handle it.",
        "We can deal with it after lunch.",
        "Space the muffin cases three fingers apart.",
        "The trays may have lots of crumbs.",
        "I don't want to give the game away.",
        "Carry the bowl over to the table.",
        "At least one of these should be an iron-rich meal.",
        "The onions are a good place to start, then the garlic.",
        "Healthy foods are on the bottom shelf.",
        "Put one food at a time through the mincer.",
        "Peaches bruise easily in a lunch box.",
        "There are several kinds of food that have a high iron content.",
        "We make vitamin D when we expose our skin to the sun.",
        "We talked about healthy food at the market.",
        "Lemons for the tart, sugar for the top.",
        "The best pan to start with is the small one.",
        "It is late, and the shop that supplies the noodles is shut.",
        "It is thick due to its high flour content.",
        "The bottle can leak in the bag.",
        "It is hard for toddlers to wait.",
        "Hold it to the light and check for cracks.",
        "Supper depends on the milk in the fridge.",
        "Get it in early on Saturday, the oven is slow.",
        "The best time to pick the mint is the morning.",
        "It matters to give nourishing food on cold days.",
    ],
)
def test_ordinary_talk_in_those_words_is_not(text: str) -> None:
    assert claims(text) == []


def test_what_is_not_needed_is_denied() -> None:
    assert only("Your toddler doesn't need sugar in his diet.", "function").polarity == "denies"
    assert only("Sugar is far from necessary.", "function").polarity == "denies"


def test_an_organ_that_is_eaten_is_nobodys_own() -> None:
    assert "function" not in {claim.kind for claim in claims("Iron-rich mash of liver.")}
    assert only("Vitamin A supports the liver.", "function").relates_to == "the liver (organs)"


def test_what_is_needed_is_no_food_where_a_food_is_only_what_is_spoken_about() -> None:
    assert "function" not in {claim.kind for claim in claims("Learning about oats is crucial, says one baby book.")}


def test_a_nutrient_spoken_of_as_this_one_is_named_beside_what_held_it() -> None:
    found = claims("Guava is full of vitamin C. This nutrient strengthens the immune system.")
    assert {"nutrient", "guava"} <= set(found[-1].subjects)


def test_foods_one_by_one_are_heard() -> None:
    assert only("Babies should be introduced to one food at a time.", "allergen").relates_to == "one food at a time"


def test_what_digests_easily_is_no_allergen_tolerated() -> None:
    text = "They are easily digested, and once she has tolerated them well, carry on."
    assert "allergen" not in {claim.kind for claim in claims(text)}


def test_what_else_they_do_is_heard_after_in_addition() -> None:
    found = claims("In addition to easing colic, they are essential for the brain.")
    assert "function" in {claim.kind for claim in found}


def test_an_age_goes_with_the_food_and_not_with_how_a_baby_was_fed_before() -> None:
    found = claims("Eggs should be introduced after exclusive breastfeeding from six months.")
    assert {(claim.kind, claim.subjects) for claim in found} == {("allergen", ("egg",))}


def test_all_that_is_said_of_it_in_one_breath_is_heard() -> None:
    said = {claim.relates_to for claim in claims("It is mild, easy to digest, soft and provides instant energy.")}
    assert {"easy to digest (digestion)", "instant energy"} <= said


def test_it_is_good_for_what_it_contains() -> None:
    found = claims("Curd is a breakfast. It is also good for babies due to its calcium content.")
    assert ("curd",) in [claim.subjects for claim in found if claim.kind == "nutrient-content"]


def test_a_useful_food_is_what_was_named_before() -> None:
    found = claims("Curd is sour. It is a very useful food during convalescence.")
    assert [claim.subjects for claim in found] == [("curd",)]


def test_foods_and_what_is_in_them_stand_in_one_list() -> None:
    assert only("Dalda or any form of hydrogenated fat is harmful.", "safety-age").subjects == (
        "dalda",
        "hydrogenated fat",
    )
    assert only("Kefir and calcium build bones.", "function").subjects == ("kefir", "calcium")
