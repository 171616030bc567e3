"""What is kept between keystrokes changes nothing: each state of a text is looked at as if it were the first."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Any

import pytest

from spoonproof.editor.bench import Bench, Look, OpenFolder, OpenText
from spoonproof.editor.diagnostics import diagnostics
from spoonproof.model.text import Document
from tests.kitchen import knowledge

ROOT = Path(__file__).resolve().parents[2]
BITS = (
    "honey |a pinch of salt |It is rich in iron. |<!-- leave: mine -->|\n|\n\n|whole grapes |*|---\n|prevents colds "
    '|for 5 minutes |"| x|:|  |\u2028|Serve cold.|- 60 g recipe:parsnip-and-pear-spoon-mash\n|# Kept\n'
).split("|")


def opened(path: Path, text: str, version: int = 0) -> OpenText:
    return OpenText(path.as_uri(), path, version, Document(path.relative_to(ROOT).as_posix(), text))


def bench() -> Bench:
    """A bench with nothing on it; the tables are read once for all."""
    found = Bench()
    found._folders[ROOT] = OpenFolder(ROOT, True, found._texts, knowledge())
    return found


@pytest.mark.parametrize("name", ["parsnip-and-pear-spoon-mash", "peanut-and-raspberry-yoghurt"])
def test_a_text_typed_in_is_found_as_one_opened(name: str) -> None:
    path = ROOT / "recipes" / f"{name}.md"
    typed, chance, text = bench(), random.Random(name), path.read_text("utf-8")
    for version in range(16):
        assert diagnostics(typed.look(opened(path, text, version))) == diagnostics(bench().look(opened(path, text)))
        story = text.rfind("\n---") + 4
        at = chance.randint(story if chance.random() < 0.7 else 0, len(text))
        text = text[:at] + (chance.choice(BITS) + text[at:] if chance.random() < 0.7 else text[at + 5 :])


def test_only_the_story_is_read_again_where_only_it_changed(monkeypatch: pytest.MonkeyPatch) -> None:
    from spoonproof.reading import recipe as reading

    path = ROOT / "recipes" / "parsnip-and-pear-spoon-mash.md"
    text, typed, whole = path.read_text("utf-8"), bench(), reading.read_whole
    heads: list[reading.Reading] = []

    def noted(*given: Any) -> reading.Reading:
        heads.append(whole(*given))
        return heads[-1]

    monkeypatch.setattr(reading, "read_whole", noted)
    for version, more in enumerate(("", "It is soft.", "It is soft. And sweet.")):
        look = typed.look(opened(path, text + more, version))
        assert look.dish is not None and look.dish.recipe.story.endswith(more)
    assert len(heads) == 1
    typed.look(opened(path, text.replace("steps:", "steps: # how", 1), 9))
    assert len(heads) == 2


STEP_BITS = (
    "for 5 minutes |, covered, |and cut them in strips|Fry |salt |honey |It is rich in iron. |It prevents colds. "
    "|\n  - Lift out the baby's portion.\n|\n  - Drain the parsnips.\n|a pinch of |1|the oil |until golden|, peeled"
).split("|")


def of_dish(look: Look) -> object:
    """What is known of a dish, where nothing in it points to a document."""
    dish = look.dish
    if dish is None:
        return None
    said = [
        (c.claim.quote, c.claim.span, c.claim.passage.where, c.truth, c.allowed, c.advice, c.why, c.wording, c.trail)
        for c in dish.claims
    ]
    return dish.facts, dish.treatments, said, dish.texture, dish.allergens, dish.hazards


@pytest.mark.parametrize("seed", range(3))
def test_a_step_typed_in_leaves_the_dish_as_one_opened(seed: int) -> None:
    path = ROOT / "recipes" / "parsnip-and-pear-spoon-mash.md"
    whole = path.read_text("utf-8").replace(
        "  - Steam the parsnips", "  - Pears prevent constipation and are high in fibre.\n  - Steam the parsnips"
    )
    typed, chance, text = bench(), random.Random(seed), whole
    for version in range(14):
        first, again = bench().look(opened(path, text)), typed.look(opened(path, text, version))
        assert of_dish(again) == of_dish(first) and diagnostics(again) == diagnostics(first), text
        assert again.dish is None or all(c.claim.passage.document is again.document for c in again.dish.claims)
        at = chance.randint(
            text.index("foods:") if chance.random() < 0.3 else text.index("steps:"), text.index("film:")
        )
        text = text[:at] + (chance.choice(STEP_BITS) + text[at:] if chance.random() < 0.7 else text[at + 5 :])
        if version % 5 == 4 or any(key not in text for key in ("foods:", "steps:", "film:")):
            text = whole


def test_what_a_step_leaves_alone_is_kept() -> None:
    path = ROOT / "recipes" / "parsnip-and-pear-spoon-mash.md"
    text, typed = path.read_text("utf-8"), bench()
    dishes = [
        typed.look(opened(path, each, version)).dish
        for version, each in enumerate(
            (text, text.replace("Serve it warm", "Serve it a little warm"), text.replace("350 g", "360 g"))
        )
    ]
    first, served, heavier = [dish for dish in dishes if dish is not None]
    assert served.facts is first.facts and served.numbers is first.numbers and first.claims
    assert heavier.facts is not first.facts and heavier.facts.grams != first.facts.grams
