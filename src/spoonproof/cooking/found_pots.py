"""Pots found by what is in them and what was done to it, where a step does not name a food."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.cooking.story import Story

_MASHED = ("mashed", "lumpy", "smooth", "thick")


def cooked_before(pots: Sequence[list[int]], at_hand: list[int], stories: Sequence[Story]) -> list[int] | None:
    """The pot on the heat, where what is at hand was never on it: "mash the banana and stir in"."""
    if not at_hand or any(stories[i].heats for i in at_hand):
        return None
    heated = [pot for pot in pots if pot is not at_hand and any(stories[i].heats for i in pot)]
    return heated[-1] if heated else None


def mashed(pots: Sequence[list[int]], at_hand: list[int], stories: Sequence[Story], onto: bool) -> list[int] | None:
    """The other pot that "the mash" is in; where something goes ``onto`` what is at hand, any other pot."""
    others = [pot for pot in pots if pot is not at_hand]
    made = [pot for pot in others if any(stories[i].made in _MASHED for i in pot)]
    return next(reversed(made or (others if onto else [])), None)


def baked(pots: Sequence[list[int]], stories: Sequence[Story]) -> list[int] | None:
    """The pot that came out of the oven last: whose flesh is scooped out."""
    hot = (pot for pot in reversed(pots) if any(heat.medium == "oven" for i in pot for heat in stories[i].heats))
    return next(hot, None)


def beaten_egg(held: Sequence[Story]) -> bool:
    """Whether what is at hand is a raw egg in a bowl of its own, not in the heat yet."""
    eggs = [story for story in held if story.food is not None and "raw-egg-able" in story.food.traits]
    return bool(eggs) and not any(story.heats for story in held)
