"""Dangers that the words around a recipe hand to a baby, and the warnings and near-misses that are none."""

from __future__ import annotations

from spoonproof.feeding.advised import advised
from tests import kitchen
from tests.each import each

HANDED = {
    "We take a bag of raw carrot sticks for him to crunch on.": "hard-raw",
    "They go well with some raw pepper sticks.": "firm-raw",
    "Raw carrot batons make it a meal.": "hard-raw",
    "While it simmers, let her nibble a few whole grapes.": "round-uncut",
    "I give him raw carrot sticks to gnaw on.": "hard-raw",
    "A drizzle of honey on top makes it perfect.": "honey",
    "Dip the dummy in honey if the gums hurt.": "honey",
    "Lunch box: one muffin, a box of popcorn and some cucumber strips.": "popcorn",
    "She loves a handful of raisins in the pram.": "dried-fruit-whole",
    "Serve it with a beaker of cow's milk for the baby.": "milk-drink",
    "Let him suck ice cubes when his teeth come.": "ice-cubes",
    "If it tastes flat to you, add a pinch of salt.": "added-salt",
    "Hand her a few almonds to keep her quiet.": "whole-nuts",
    "Give them peanut butter straight off the spoon.": "nut-butter-glob",
    "Rub a drop of brandy on his gums.": "alcohol",
    "A sip of sweet tea settles her afterwards.": "tea",
    "A pinch of salt lifts hers as well.": "added-salt",
    "A few flakes of salt over his portion make it sing.": "added-salt",
    "She gets a spoon of honey like the rest of us.": "honey",
    "Drop honey into her porridge.": "honey",
    "Cut a few dried apricots for him to chew.": "dried-fruit-whole",
    "Leave a handful of whole grapes by his bowl.": "round-uncut",
    "Uncle wets her dummy in his stout when we are not looking.": "alcohol",
    "A mug of warm apple juice sees to it by evening.": "juice",
    "Her brother passes grapes to her and she swallows them down whole.": "round-uncut",
    "Clover honey goes on hers each morning.": "honey",
    "She fishes the odd almond out of my bowl.": "whole-nuts",
    "A stick of chilled carrot is the thing for sore gums.": "hard-raw",
    "Milk warm from the cow goes in her beaker, and the little one loves it.": "raw-milk",
    "The cherry tomatoes go to her just as they come.": "round-uncut",
    "We never trouble to cut her grapes.": "round-uncut",
    "A wedge of raw swede to gum on buys us a quiet half hour.": "hard-raw",
    "Season to taste and let her tuck in.": "added-salt",
    "Milk straight from my aunt's cow is what he thrives on.": "raw-milk",
    "She polished off the last of my espresso.": "tea",
    "A slice of roquefort, rind and all, is hers on Sundays.": "mould-cheese",
    "His egg is best jammy, I find, and he likes it so.": "raw-egg",
    "A shake of garlic salt lands over his as well.": "added-salt",
    "He sits on my knee and helps himself to the peanuts.": "whole-nuts",
    "Give her a cup of milk besides her porridge.": "milk-drink",
    "Her porridge has a spoon of added sugar and she loves it.": "added-sugar",
}
NONE = (
    "Peanut is new to her, so it comes by itself.",
    "A cold apple waited on the shelf while she slept.",
    "His grandfather keeps his stout on the sill.",
    "Honey goes in my cup and never in hers.",
    "A bottle of apple juice stands in the door for the grown-ups.",
    "The almond in this cake is ground, so she eats it like any other.",
    "Never let her nibble whole grapes while you cook.",
    "A sip of water is all she drinks apart from her milk.",
    "They drink nothing but water as well as milk.",
    "Shop custard can contain a lot of added sugar, so we make our own.",
    "Salt goes in last, once the baby's portion is out.",
    "Give her grapes quartered lengthways, one at a time.",
    "No honey before the first birthday, not even baked.",
    "I drizzle honey over mine.",
    "His big brother gets popcorn; he gets banana.",
    "Let her try honeydew melon, butternut squash and sugar snap peas cut fine.",
    "From one year you may stir in honey.",
    "Whole grapes are a choking danger, however much he asks for them.",
    "Give her soft steamed carrot sticks to hold.",
    "Stir in ground almonds for a richer bowl.",
    "Freeze it in an ice cube tray and give her one portion at a time.",
    "My mother-in-law wanted to give him honey.",
    "We eat early, at about five, and she has hers first with a bottle of her usual milk.",
    "Add salt to your own plate.",
    "It goes well with steamed carrot sticks.",
    "Ours is lovely with a drizzle of honey.",
    "Put the honey jar away and let him lick the spoon of yoghurt.",
    "It is the colour of honey, and she loves it.",
    "Peanut butter thinned into the porridge gives her the taste early.",
    "He had it for tea.",
    "I ditched the sugar, and she loves it.",
    "Honey is off the list, so I gave her pear.",
    "The recipe cut the sugar and he eats it all the same.",
    "I swapped the honey for mashed pear and she loves it.",
    "Leave off the salt and she eats like a queen.",
    "I took the salt out and he still eats it.",
    "The salt has been left behind, and she enjoys every bite.",
    "Put the salt away and let her taste it.",
    "The honey got crossed off when he arrived, and he eats it happily.",
    "Hers comes out first; then season to taste.",
    "Season to taste once hers is out.",
    "I sip my espresso while she plays with the spoon.",
    "The cousins have marshmallows and he has mashed plum.",
    "Popcorn comes out after he has gone to bed.",
    "Grapes go on our cheese board and she has pear.",
    "His aunt gave him a lick of ice cream and I was furious.",
    "Oat milk thickens the sauce, but her bottle holds formula.",
    "Spoon her portion aside, then salt the pan.",
    "Milk straight from the cow smells good, but he has pasteurised.",
    "Leave the blueberries round for us and squash each one for him.",
    "I call them popcorn because my eldest won't eat anything called a log.",
    "What my gran served beside everything, minus the salt and the schnapps.",
)


def _ids(text: str) -> set[str]:
    made = kitchen.dish(f"summary: >-\n  {text}\nages: 7-9 months\n")
    return {one.id for one in advised(made.recipe.passages, 7, made.knowledge.feeding, {}, ("GB",))}


@each(("text", "row"), HANDED.items())
def test_what_words_hand_to_the_baby_is_found(text: str, row: str) -> None:
    assert row in _ids(text)


@each("text", NONE)
def test_warnings_and_near_misses_are_none(text: str) -> None:
    assert _ids(text) == set()
