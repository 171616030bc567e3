"""What happens to each food line on its way to the bowl, and whether it comes out soft."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.cooking.pots import Kitchen
from spoonproof.cooking.softness import CookTimes, Need
from spoonproof.cooking.story import Story
from spoonproof.model.food import Food
from spoonproof.model.kitchen import Foods, Verbs
from spoonproof.model.recipe import Cut, Minutes, Recipe
from spoonproof.model.treatment import Heat, Softness, Treatment

_METHOD = {
    "steam": "steam",
    "water": "boil",
    "oven": "oven",
    "fat": "fry",
    "microwave": "microwave",
    "pressure": "pressure",
}
_COOKED_STATES = ("cooked", "canned")
_GROW_RAW = frozenset(
    (
        "vegetable",
        "fruit",
        "grain",
        "pulse",
        "meat",
        "poultry",
        "fish",
        "shellfish",
        "offal",
        "egg",
        "nut",
        "herb",
        "seed",
    )
)
Judged = tuple[Softness, Need | None]
"""How soft a food comes out, and the need it was measured by."""

_WARMING = ("heat", "reheat", "melt")
"""Verbs that warm what another heat has cooked."""
_READY = ("cooked", "canned", "tinned", "roasted", "steamed", "boiled", "poached")


def treat(recipe: Recipe, foods: Foods, verbs: Verbs, times: CookTimes) -> tuple[Treatment, ...]:
    """One treatment for each line of ``recipe.foods``, in their order.

    A pot's heat reaches all that is in it: what went in first cooks on while later foods cook. Softness is judged
    against ``times`` for the cut the food had when it was first heated; what the table does not know is "not-judged".
    """
    stories = Kitchen(recipe, foods, verbs).walk()
    return treated(stories, [judge(story, times) for story in stories])


def treated(stories: Sequence[Story], judged: Sequence[Judged]) -> tuple[Treatment, ...]:
    """One treatment for each story, by how soft ``judge`` found its food."""
    return tuple(_treatment(story, one) for story, one in zip(stories, judged, strict=True))


def softens_as(food: Food, times: CookTimes) -> str:
    """The name the cook-time table has for a food: its own word, its plain food's, its id, its group; "" when none."""
    names = (food.softens_as, food.parent, food.id, food.group)
    return next((name for name in names if name and times.knows(name)), "")


def method_of(heat: Heat) -> str:
    """The cook-time table's word for how a heat cooks; "" for what does not cook."""
    return (
        "fry" if heat.verb == "grill" else _METHOD.get(heat.medium, "")
    )  # under the grill it takes as long as in a pan


def _treatment(story: Story, judged: Judged) -> Treatment:
    softness, need = judged
    return Treatment(
        line=story.index,
        joined=story.joined,
        bowl=story.bowl,
        heats=tuple(story.heats),
        cuts=tuple(story.cuts),
        made=story.made,
        made_step=story.made_step,
        soaked_minutes=story.soaked,
        softness=softness,
        needed=need.soft if need else None,
        left_out=story.left_out,
    )


def judge(story: Story, times: CookTimes) -> Judged:
    """Softness and the need it was measured by (of the method that heats longest)."""
    food = story.food
    if food is None or food.hardness in ("liquid", "powder", "paste", "none"):
        return "not-judged", None
    if food.state in _COOKED_STATES or story.line.state in _COOKED_STATES or story.line.has(*_READY):
        return "soft", None
    if any(cut.shape in ("puréed", "mashed") for cut in story.line.cuts):
        return "soft", None  # "200 g pumpkin purée": nobody purées what is hard
    name = softens_as(food, times)
    cooking = [heat for heat in story.heats if method_of(heat)]
    if not cooking and not story.soaked:
        if food.hardness == "soft":
            return "soft", None
        return ("raw" if food.group in _GROW_RAW else "not-judged"), None
    cut = cut_when_heated(story)
    need = main_need(name, cut, cooking, times)
    if need is None and not (story.soaked and times.needed(name, cut, "soak")):
        return ("soft" if story.tested and not _timed(cooking) else "not-judged"), None
    sure, maybe, crisp = _progress(name, cut, story, cooking, times)
    need = need or times.needed(name, cut, "soak")
    if not _timed(cooking) and not story.soaked:
        # no time to judge: the end point is all there is
        return ("soft" if story.tested else "not-judged"), need
    if need and need.spent is not None and _spent(cooking, need.spent):
        return "spent", need
    if sure >= 1:
        return "soft", need
    if maybe >= 1:
        return "maybe-soft", need
    if any(heat.medium == "pressure" and heat.minutes is None for heat in cooking):
        return "not-judged", need  # "for 4 whistles": how long nobody says
    return ("crisp-tender" if crisp >= 1 else "hard"), need


def cut_when_heated(story: Story) -> Cut | None:
    """The cut the food had when heat first reached it; None when it had none."""
    made = story.cuts if story.cuts_heated is None else story.cuts[: story.cuts_heated]
    return made[-1] if made else None


def main_need(name: str, cut: Cut | None, cooking: list[Heat], times: CookTimes) -> Need | None:
    """The need by the method that heats longest, among those the table knows for this food."""
    best: tuple[float, Need] | None = None
    for heat in cooking:
        need = times.needed(name, cut, method_of(heat)) if name else None
        minutes = sum(h.minutes.high for h in cooking if h.minutes and method_of(h) == method_of(heat))
        if need and (best is None or minutes > best[0]):
            best = (minutes, need)
    return best[1] if best else None


def _progress(
    name: str, cut: Cut | None, story: Story, cooking: list[Heat], times: CookTimes
) -> tuple[float, float, float]:
    """Shares of the way to soft: surely, perhaps, and perhaps to crisp-tender; 1 is there.

    Heat by a method the table has no rows for counts as steaming in the hopeful shares and not at all in the sure one.
    """
    sure = maybe = crisp = 0.0
    for heat in cooking:
        if heat.minutes is None:
            continue
        need = times.needed(name, cut, method_of(heat))
        hopeful = need or times.needed(name, cut, "steam")
        if need:
            sure += heat.minutes.low / max(need.soft.high, 0.01)
        if hopeful:
            maybe += heat.minutes.high / max(hopeful.soft.low, 0.01)
            crisp += heat.minutes.high / max(hopeful.crisp.low, 0.01)
    soak = times.needed(name, cut, "soak") if story.soaked else None
    if soak:
        sure += story.soaked / soak.soft.high
        maybe += story.soaked / soak.soft.low
    return sure, maybe, crisp


def _timed(cooking: list[Heat]) -> bool:
    """Whether the cooking has a time; "cook as the packet says, add the sauce and warm for 2 minutes" has none."""
    own = [heat for heat in cooking if heat.verb not in _WARMING] or cooking
    return any(heat.minutes is not None for heat in own)


def _spent(cooking: list[Heat], limit: float) -> bool:
    minutes = Minutes(0.0, 0.0)
    for heat in cooking:
        if heat.minutes:
            minutes = Minutes(minutes.low + heat.minutes.low, minutes.high + heat.minutes.high)
    return minutes.low > limit
