"""What search engines document as required of a recipe, a video and its clips.

Source: Google Search Central, structured data for recipes ("required: image, name"; a picture of at least 50,000
pixels that can be fetched) and for videos ("required: name, thumbnailUrl, uploadDate"; a clip: name, startOffset, url).
What is only recommended is never missed here.
"""

from __future__ import annotations

SMALLEST = 50_000
"""Pixels (width times height) of the smallest picture that counts."""


def recipe_lacks(title: str, pictures: int, addressed: bool) -> tuple[str, ...]:
    """What a recipe's page lacks, in words. ``addressed``: whether the site has a full address."""
    lacking = []
    if not title.strip():
        lacking.append("a title")
    if not (pictures and addressed):
        lacking.append("a picture with a full address")
    return tuple(lacking)


def video_lacks(title: str, pictures: int, uploaded: str) -> tuple[str, ...]:
    """What a video on a page lacks, in words. ``uploaded``: its day (ISO), "" when not known."""
    lacking = []
    if not title.strip():
        lacking.append("a title")
    if not pictures:
        lacking.append("a picture")
    if not uploaded:
        lacking.append("the day it went up")
    return tuple(lacking)
