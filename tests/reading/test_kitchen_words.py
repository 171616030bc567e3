"""What cooks call the things they do: each sentence gives its verb, whatever the words for it."""

from __future__ import annotations

import pytest

from tests.each import each
from tests.reading.readings import read_method

SAID = [
    ("Salt the big pot.", "season"),
    ("Pop the oven on to 180C fan.", "preheat"),
    ("Set the oven to 160°C.", "preheat"),
    ("Crisp up the bacon in a dry pan.", "fry"),
    ("Caramelise the onion slowly for 30 minutes.", "fry"),
    ("Dry roast the cumin for 1 minute.", "toast"),
    ("Bung in the carrots.", "add"),
    ("Spoon the mixture into a muffin tin.", "add"),
    ("Smush the berries.", "mash"),
    ("Mash with the back of a fork.", "fork-mash"),
    ("Julienne the carrots.", "chop"),
    ("Zest the lemon.", "grate"),
    ("Debone the fish.", "core"),
    ("Pick the meat off the bones.", "shred"),
    ("Cream together the butter and the banana.", "whisk"),
    ("Leave the dough to rise for an hour.", "stand"),
    ("Glaze with milk.", "spread"),
    ("Air-fry for 10 minutes.", "bake"),
    ("Par-cook the potatoes for 8 minutes.", "parboil"),
    ("Refresh under cold water.", "rinse"),
    ("Skim off the fat.", "lift-out"),
    ("Bring to a gentle boil.", "bring-to-the-boil"),
    ("Tip away the water.", "drain"),
    ("Turn out onto a rack.", "cool"),
    ("Dissolve the yeast in the milk.", "mix"),
]


@each(("sentence", "verb"), SAID)
def test_a_cook_is_understood(sentence: str, verb: str) -> None:
    steps, _, _, _ = read_method(["300 g carrots", "200 g potatoes", "1 onion"], [sentence])
    assert verb in {action.verb for step in steps for action in step.actions}


@pytest.mark.parametrize(
    ("sentence", "verb"),
    [
        ("Add a pinch of salt.", "season"),
        ("Put the potatoes in the air fryer basket.", "fry"),
        ("Add the lemon zest.", "grate"),
        ("Add the Brussels sprouts.", "soak"),
        ("Add the orange juice.", "squeeze"),
    ],
)
def test_the_same_words_for_things_are_no_verbs(sentence: str, verb: str) -> None:
    steps, _, _, _ = read_method(["300 g carrots", "200 g potatoes"], [sentence])
    assert verb not in {action.verb for step in steps for action in step.actions}
