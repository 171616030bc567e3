"""What tests share: the bundled knowledge read once, and dishes from pieces of a recipe head."""

from __future__ import annotations

import re
from functools import lru_cache

from spoonproof.dish import Dish
from spoonproof.knowledge import Knowledge
from spoonproof.model.channel import Channel
from spoonproof.model.finding import Finding
from spoonproof.model.recipe import Recipe
from spoonproof.model.text import Document
from spoonproof.reading.channel import read_channel
from spoonproof.reading.files import unsaved_document
from spoonproof.reading.recipe import read_recipe

PLAIN_HEAD = {
    "title": "title: A plain bowl",
    "summary": "summary: Potato and courgette, crushed.",
    "ages": "ages: 7-9 months",
    "texture": "texture: mashed",
    "next": "next: {texture: lumpy, from: 9 months, how: crush it less}",
    "foods": "foods:\n  - 300 g floury potatoes, peeled, 1 cm dice\n  - 2 tsp rapeseed oil",
    "steps": "steps:\n  - Boil the potatoes for 20-25 minutes, until a cube squashes between finger and thumb.\n"
    "  - Mash the potatoes with the oil.",
    "keeps": "keeps: fridge 48 h, freezer 1 month",
}


@lru_cache(maxsize=1)
def knowledge() -> Knowledge:
    """The bundled tables."""
    return Knowledge()


def whole_recipe(text: str) -> tuple[str, int]:
    """``text`` as a whole recipe file, and the line its first line ended up on (from 1).

    A text without a fence is a piece of the head: the keys it lacks are filled in after it from a plain recipe.
    """
    if text.lstrip().startswith("---"):
        return text, 1
    present = set(re.findall(r"^([a-z_]+):", text, re.MULTILINE))
    filled = [line for key, line in PLAIN_HEAD.items() if key not in present]
    return "---\n" + text.rstrip("\n") + "\n" + "\n".join(filled) + "\n---\nA story.\n", 2


def read(text: str, name: str = "recipes/bowl.md", measures: str = "UK") -> tuple[Recipe | None, list[Finding]]:
    """A recipe from a whole file's text or a piece of its head, with the faults of reading."""
    known = knowledge()
    return read_recipe(Document(name, whole_recipe(text)[0]), known.foods, known.verbs, known.measures(measures))


def read_as_is(text: str, name: str = "recipes/bowl.md") -> tuple[Recipe | None, list[Finding]]:
    """A recipe from a text with nothing filled in, with the faults of its characters and of reading."""
    known = knowledge()
    document, faults = unsaved_document(text, name)
    if document is None:
        return None, faults
    recipe, more = read_recipe(document, known.foods, known.verbs, known.measures("UK"))
    return recipe, faults + list(more)


def channel(text: str = "") -> Channel:
    """A channel from (pieces of) a channel.yaml."""
    found, faults = read_channel(Document("channel.yaml", "title: Test channel\nmeasures: UK\n" + text))
    assert not [fault for fault in faults if fault.level == "error"], [fault.message for fault in faults]
    return found


def dish(text: str, channel_text: str = "", name: str = "recipes/bowl.md") -> Dish:
    """The dish of a recipe text; fails when the recipe can't be read."""
    recipe, faults = read(text, name)
    assert recipe is not None, [fault.message for fault in faults]
    return Dish(recipe, channel(channel_text), knowledge(), {recipe.slug: recipe})
