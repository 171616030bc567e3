import itertools
import time

import pytest

from spoonproof.cooking.inflect import inflections
from spoonproof.cooking.verbs import VerbTable
from spoonproof.model.table import Row
from tests.cooking.bench import rows, verbs
from tests.each import each

SENTENCES = [
    ("Steam the swede for 18-22 minutes.", ["steam"]),
    ("Add the plum and steam 4 minutes more, until a piece squashes.", ["add", "steam"]),
    ("Let the steam off for 5 minutes.", ["steam-off"]),
    ("Let steam off, then purée with 2 tbsp water to loosen.", ["steam-off", "puree"]),
    ("Mash with the oil.", ["mash"]),
    ("Lift the baby's portion out and mash it with a fork.", ["lift-out", "fork-mash"]),
    ("Bring the pan of water to the boil, then simmer gently for 20 minutes.", ["bring-to-the-boil", "simmer"]),
    ("Set the steamer over a gentle simmer and cover.", ["cover"]),
    ("Stir the mash through the stock.", ["stir-in"]),
    ("Let the swede cool for 5 minutes, then blend until smooth.", ["cool", "blend"]),
    ("Once the water boils add the lentils.", ["add"]),
    ("Steam until soft enough to mash.", ["steam"]),
    ("Simmer until the lentils collapse and mash them.", ["simmer", "mash"]),
    ("Add the chopped dill and the rest of the oil.", ["add"]),
    ("Keep stirring until it thickens.", ["mix"]),
    ("The swede is steamed for 18 minutes.", ["steam"]),
    ("Don't drain; blend with the cooking water.", ["blend"]),
    ("Leave the oats to soak for 5 minutes.", ["soak"]),
    ("Put everything in the pan and cook for 20 minutes.", ["add", "cook"]),
    ("Stir-fry the courgette; fork-mash the peas.", ["stir-fry", "fork-mash"]),
    ("Sauté the leek in the oil for 8 minutes until softened.", ["saute"]),
    ("Before blending, let the soup cool.", ["cool"]),
    ("While the swede steams, peel the plums.", ["peel"]),
    ("Add brown lentils and stir.", ["add", "mix"]),
    ("Shred roast chicken and fold it in.", ["shred", "fold-in"]),
    ("Pour on boiling water and soak for 5 minutes.", ["add", "soak"]),
    ("As soon as it boils, turn down and simmer.", ["turn-heat", "simmer"]),
    ("Roughly mash the peas.", ["fork-mash"]),
    ("Bring the barley, stock and thyme to a boil in a wide pan.", ["bring-to-the-boil"]),
    ("Heat the oil over medium heat and stir in the leek.", ["heat", "stir-in"]),
    ("Off the heat stir in the yoghurt.", ["stir-in"]),
    ("Cook on the lowest heat for 20 minutes.", ["cook"]),
    ("Stir, then return the dish to the oven for 10 minutes.", ["mix", "bake"]),
    ("Put the parsnips through a ricer.", ["mash"]),
    ("Take the pan off the heat and stand for 5 minutes.", ["turn-heat", "stand"]),
    ("Tip into the blender.", ["add"]),
    ("Use a fork to mash the peas.", ["mash"]),
    ("Give it a quick blitz.", ["blend"]),
    ("Give everything a blitz.", ["blend"]),
    ("Transfer to a bowl and leave to marinate overnight.", ["add", "marinate"]),
    ("Prick the potatoes and bake for an hour.", ["prick", "bake"]),
    ("Add enough water to cover.", ["add"]),
    ("Serve on toast with roast parsnips.", ["serve"]),
    ("The peas should not be boiled.", []),
    ("Never blend it hot.", []),
    ("Swede and plum spoon-mash", []),
    ("Serve the stew with mash.", ["serve"]),
]


@each(("sentence", "expected"), SENTENCES)
def test_a_sentence_has_its_instructions(sentence: str, expected: list[str]) -> None:
    assert [match.verb for match in verbs().find(sentence)] == expected


def test_matches_stand_in_order_and_do_not_overlap() -> None:
    for sentence, _ in SENTENCES:
        found = verbs().find(sentence)
        assert all(a.end <= b.start for a, b in itertools.pairwise(found))
        assert all(sentence[m.start : m.end].strip() == sentence[m.start : m.end] for m in found)


@pytest.mark.parametrize(
    ("base", "forms"),
    [
        ("chop", {"chop", "chops", "chopping", "chopped"}),
        ("steam", {"steam", "steams", "steaming", "steamed"}),
        ("purée", {"purée", "purées", "puréeing", "puréed"}),
        ("fry", {"fry", "fries", "frying", "fried"}),
        ("mash", {"mash", "mashes", "mashing", "mashed"}),
        ("slice", {"slice", "slices", "slicing", "sliced"}),
        ("stir in", {"stir in", "stirs in", "stirring in", "stirred in"}),
        ("slow cook", {"slow cook", "slow cooks", "slow cooking", "slow cooked"}),
        ("season", {"season", "seasons", "seasoning", "seasoned"}),
        ("whisk", {"whisk", "whisks", "whisking", "whisked"}),
        ("simmer", {"simmer", "simmers", "simmering", "simmered"}),
        ("thaw", {"thaw", "thaws", "thawing", "thawed"}),
    ],
)
def test_regular_forms_are_spelt_as_cooks_spell_them(base: str, forms: set[str]) -> None:
    assert {text for text, _ in inflections(base)} == forms


def test_the_table_is_whole() -> None:
    table = verbs()
    roles = {"heat", "join", "blend", "cut", "season", "cool", "serve", "split", "soak", "chill", "other"}
    for verb in table.verbs.values():
        assert verb.role in roles
        assert verb.source
        assert (verb.role == "heat") == (verb.medium not in ("none", "cold")), verb.id
        assert verb.texture in ("", "smooth", "thick", "mashed", "lumpy", "minced")
    assert len(table.verbs) >= 70


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"id": "steam"}, "twice"),
        ({"words": "steam"}, "form of both"),
        ({"hands": "2"}, "0 to 1"),
        ({"source": ""}, "no source"),
    ],
)
def test_a_faulty_row_is_refused_with_its_line(change: dict[str, str], words: str) -> None:
    cells = {"id": "waft", "words": "waft", "role": "other", "source": "common-practice", **change}
    with pytest.raises(ValueError, match=rf"mine.csv:3: .*{words}"):
        VerbTable.from_rows([*rows("verbs"), Row(cells, "mine.csv", 3)])


def test_finding_takes_time_in_proportion_to_the_text() -> None:
    def seconds(count: int) -> float:
        text = "bring the pan of water and so on " * count + "to the boil until and once the "
        best = 9.0
        for _ in range(3):
            start = time.process_time()
            verbs().find(text)
            best = min(best, time.process_time() - start)
        return best

    assert seconds(4000) < 3 * seconds(2000) + 0.02


def test_a_hyphen_closes_a_split_phrase() -> None:
    assert [match.verb for match in verbs().find("Stir-fry the leek in the oil for 5 minutes.")] == ["stir-fry"]
    assert [match.verb for match in verbs().find("Stir the leek in for 5 minutes.")] == ["stir-in"]
