"""How a family lives with an allergy, what is on a label, who is allergic: no claim."""

from __future__ import annotations

import pytest
from finding_kit import claims


@pytest.mark.parametrize(
    "text",
    [
        "Bringing up a child with a severe dairy allergy can be tiring.",
        "A sesame allergy would be a million times easier.",
        "From the bakery to the cinema it is a sesame allergy nightmare.",
        "Living dairy free is a game I like.",
        "My diet has been more or less dairy free since May.",
        "It is time to take up the gluten free life and change my cooking.",
        "I asked for the soup to be made dairy-free.",
        "We ate there only if the cooks, themselves, were egg-free.",
        "To make them egg-free we swap in mashed banana.",
        "That winter I was able to bake every biscuit, just minus the allergens.",
        "No, not lactose intolerance, and nothing like it.",
        "I loved the feasts of our village until I was diagnosed with an egg allergy.",
        "Well, grandson number two is no longer allergic to walnuts.",
        "They were positive for a dairy and egg allergy.",
        "If she passes, we could slowly start introducing milk and cheese into her diet.",
        "My husband looks for any product that may contain sesame.",
        'Foods labelled "may contain nuts" stay on the shelf.',
        'The waiter swore that it was "gluten-free" and shrugged.',
        "We know the world is not sesame-free.",
        "That stall is off-limits for our peanut-allergic family.",
        "We talk about everything from first spoons to allergen exposure.",
        "It is hard to keep up the custom safely.",
        "Each year we have blood testing to see if the allergies grow.",
        "She ate at six so that she didn't consume the allergen on an empty stomach.",
        "They sent us to several different nut-free, vegan options.",
        "I found myself in the gluten-free biscuit aisle.",
        "I picked up a box of gluten-free wafers.",
        'The packet boasted "gluten-free!" and so did the till.',
        "He probably is just sensitive to walnuts.",
        "I'm going to try to be gluten-free for a month.",
        "We have learnt where to find gluten free things.",
        "I bought ice cream of rice milk, as several of the children there had milk allergies.",
        "This matters when they eat out, because of severe allergies.",
        "We had to provide gluten free snacks for the whole class.",
        "Not everything is sesame free, but some is.",
        "Since then it has been milk, egg and nut free for him.",
        "The bakery told me they could not bake an egg free cake.",
        "I was hoping to find a cake that was safe for both girls.",
        "He can have a cake because I can bake allergy-free.",
    ],
)
def test_it_claims_nothing(text: str) -> None:
    assert claims(text) == []


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Egg allergy is common.", "allergen"),
        ("Peanut allergy is usually for life.", "allergen"),
        ("Can a rash be a sign of a milk allergy?", "allergen"),
        ("Early peanut lowers the risk of peanut allergy.", "allergen"),
        ("Goat's milk is no cure for a milk allergy.", "allergen"),
        ("This soup is dairy free.", "allergen"),
        ("These bars are nut-free.", "allergen"),
        ("They are naturally gluten-free.", "allergen"),
        ("Gluten-free oat bread", "allergen"),
        ("Ghee is dairy free.", "allergen"),
        ("I made dairy-free pancakes for him.", "allergen"),
        ("Made without eggs.", "allergen"),
        ("It contains no nuts.", "allergen"),
        ("No nuts, no milk.", "allergen"),
        ("This cake has no egg in it.", "allergen"),
        ("Oat bars may contain nuts.", "allergen"),
        ("Milk chocolate may contain traces of nuts.", "allergen"),
        ("These may contain sesame.", "allergen"),
        ("This may contain peanuts.", "allergen"),
        ("The biscuits may contain egg.", "allergen"),
        ("Honey is off-limits for babies.", "safety-age"),
        ("Introduce peanut early.", "allergen"),
        ("Introduce egg at six months.", "allergen"),
        ("Babies allergic to milk react to goat's milk.", "allergen"),
        ("Many allergic children react to baked egg.", "allergen"),
        ("Sensitive babies react to egg.", "allergen"),
        ("Watch for a reaction after egg.", "allergen"),
        ("Blood tests apart, early peanut prevents allergy.", "allergen"),
        ("These gluten-free wafers are crisp.", "allergen"),
        ("Gluten free and vegan bars", "allergen"),
        ("Some babies react to soya as well as milk.", "allergen"),
        ("Allergies are caused by egg and milk.", "allergen"),
        ("Peanuts cause severe allergies.", "allergen"),
        ("Egg is a common allergen.", "allergen"),
        ("These gluten free snacks are for the whole class.", "allergen"),
        ("This cake is nut free for everyone.", "allergen"),
        ("We bake an egg-free cake.", "allergen"),
        ("This cake is safe for babies.", "safety-age"),
        ("Everything in this box is nut-free.", "allergen"),
        ("It is dairy-free for those with allergies.", "allergen"),
    ],
)
def test_what_is_said_beside_it_is_heard(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}
