"""What is in a dish: foods, their weights, what cooking does to them, and how sure the sums are."""

from spoonproof.foods.combine import Combined, Part, combine

__all__ = ["Combined", "Part", "combine"]
