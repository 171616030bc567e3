"""Structured data for search engines: schema.org in JSON-LD, only what the page itself says.

What search engines document as required is name and image for a recipe, name, thumbnail and upload
date for a video, name, start and address for a clip (``model.search_needs``). A block that lacks them is
left out, never half written; the rule ``page-too-thin-for-search`` says so to who writes the recipe.
"""

from __future__ import annotations

import json
from typing import Any

from markupsafe import Markup

from spoonproof.model.search_needs import SMALLEST, recipe_lacks, video_lacks
from spoonproof.site.view import Chapter, Citation, Film, NutrientRow, Picture, RecipePage, StepItem, plain
from spoonproof.site.view_site import Site

_NUTRITION = {
    "energy_kcal": "calories",
    "carbohydrate_g": "carbohydrateContent",
    "sugars_g": "sugarContent",
    "fibre_g": "fiberContent",
    "fat_g": "fatContent",
    "saturated_fat_g": "saturatedFatContent",
    "protein_g": "proteinContent",
    "sodium_mg": "sodiumContent",
}


def dump(block: Any) -> Markup:
    """JSON that is safe inside a ``script`` element: no ``<``, ``>`` or ``&`` stands in it as such."""
    text = json.dumps(block, ensure_ascii=False, separators=(",", ":"))
    for character in "<>&\u2028\u2029":
        text = text.replace(character, f"\\u{ord(character):04x}")
    return Markup(text)


def missing(page: RecipePage, site: Site) -> tuple[str, ...]:
    """What a search engine requires of a recipe and this page does not have, in words."""
    return recipe_lacks(page.name, len(_images(page)), bool(site.base_url))


def _images(page: RecipePage) -> list[Picture]:
    """The pictures that are large enough."""
    return [picture for picture in page.social if picture.width * picture.height >= SMALLEST]


def blocks(page: RecipePage, site: Site) -> list[Markup]:
    """The blocks of a recipe page, ready to print."""
    out = [dump(_breadcrumbs(page, site))] if site.base_url else []
    if not missing(page, site) and not page.unfinished:
        out.insert(0, dump(recipe(page, site)))
    return out


def recipe(page: RecipePage, site: Site) -> dict[str, Any]:
    """The Recipe block. Times are whole minutes; nutrition is per serving."""
    address = site.address(page.href)
    block: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "@id": f"{address}#recipe",
        "url": address,
        "mainEntityOfPage": address,
        "name": page.name,
        "image": [site.address(picture.file) for picture in _images(page)],
        "inLanguage": site.language,
        "author": {"@type": "Organization" if not page.author else "Person", "name": page.author or site.title},
        "recipeCategory": "Baby food" if page.age_low < 12 else "Family food",
        "recipeIngredient": [food.text for food in page.foods],
        "recipeInstructions": [_step(step, address) for step in page.steps],
    }
    told = {
        "description": plain(page.summary),
        "datePublished": page.published,
        "dateModified": page.changed,
        **_times(page),
        "keywords": ", ".join(word for word in (page.texture, page.ages) if word),
        **_makes(page),
        "citation": [_citation(item) for item in page.citations],
        "correction": [f"{item.on}: {item.said} – {item.holds}" for item in page.corrections],
        "video": _video(page.film, page, site) if page.film else None,
    }
    return block | {name: value for name, value in told.items() if value}


def _step(step: StepItem, address: str) -> dict[str, str]:
    text = plain(step.text)
    return {"@type": "HowToStep", "name": _short(text), "text": text, "url": f"{address}#step-{step.number}"}


def _times(page: RecipePage) -> dict[str, str]:
    """The whole time; preparing and cooking go together and add up to it."""
    if not page.minutes:
        return {}
    times = {"totalTime": duration(page.minutes)}
    if page.cook:
        cook = min(page.cook, page.minutes)
        times |= {"prepTime": duration(page.minutes - cook), "cookTime": duration(cook)}
    return times


def _makes(page: RecipePage) -> dict[str, Any]:
    """How many portions, and what is in one: nutrition without a portion says nothing."""
    if not page.servings:
        return {}
    return {
        "recipeYield": [str(page.servings), *([page.portions] if page.portions else [])],
        "nutrition": _nutrition(page),
    }


def _citation(item: Citation) -> dict[str, str]:
    return {"@type": "CreativeWork", "name": item.text, **({"url": item.url} if item.url else {})}


def _short(text: str) -> str:
    words = text.split()
    if len(words) <= 7:
        return text.rstrip(".")
    return " ".join(words[:6]).rstrip(",;:") + " …"


def duration(minutes: float) -> str:
    """Minutes as an ISO 8601 duration ("PT1H5M")."""
    seconds = round(minutes * 60)
    hours, seconds = divmod(seconds, 3600)
    whole, seconds = divmod(seconds, 60)
    parts = [f"{n}{letter}" for n, letter in ((hours, "H"), (whole, "M"), (seconds, "S")) if n]
    return "PT" + ("".join(parts) or "0S")


def _nutrition(page: RecipePage) -> dict[str, Any] | None:
    """Only values known for the whole portion: an "at least" would read as the value."""
    if page.nutrients is None:
        return None
    out: dict[str, Any] = {"@type": "NutritionInformation", "servingSize": page.nutrients.portion}
    rows: dict[str, NutrientRow] = {row.key: row for row in page.nutrients.rows}
    for key, name in _NUTRITION.items():
        row = rows.get(key)
        if row is not None and row.coverage >= 0.995:
            out[name] = f"{row.amount} {row.unit}"
    return out if "calories" in out else None


def _video(film: Film, page: RecipePage, site: Site) -> dict[str, Any] | None:
    uploaded = film.uploaded or page.published
    if video_lacks(film.title, len(_images(page)), uploaded):
        return None
    address = site.address(film.url) if film.local else film.url
    # A chapter is found where the film can be watched: on this page, or on its own.
    watched = site.address(page.href) if film.local else film.url
    block: dict[str, Any] = {
        "@type": "VideoObject",
        "name": film.title,
        "description": plain(page.summary) or page.name,
        "thumbnailUrl": [site.address(picture.file) for picture in _images(page)],
        "uploadDate": uploaded if "T" in uploaded else f"{uploaded}T00:00:00+00:00",
        "contentUrl" if film.local else "url": address,
    }
    if film.seconds:
        block["duration"] = duration(film.seconds / 60)
    clips = _clips(film, watched)
    return block | {"hasPart": clips} if clips else block


def _clips(film: Film, watched: str) -> list[dict[str, Any]]:
    """The chapters; no two start in one second, as the address of the second would be the first's."""
    join = "&" if "?" in watched else "?"
    starts: dict[int, Chapter] = {}
    for chapter in film.chapters:
        if chapter.end > int(chapter.start):
            starts.setdefault(int(chapter.start), chapter)
    return [
        {
            "@type": "Clip",
            "name": chapter.name,
            "startOffset": start,
            "endOffset": int(chapter.end),
            "url": f"{watched}{join}t={start}",
        }
        for start, chapter in starts.items()
    ]


def _breadcrumbs(page: RecipePage, site: Site) -> dict[str, Any]:
    return {
        "@context": "https://schema.org",
        "@type": "BreadcrumbList",
        "itemListElement": [
            {"@type": "ListItem", "position": 1, "name": "Recipes", "item": site.address("index.html")},
            {"@type": "ListItem", "position": 2, "name": page.name},
        ],
    }


def index(site: Site) -> Markup:
    """The index page's list of recipes, or the plain name of the site where it has no address."""
    block: dict[str, Any] = {"@context": "https://schema.org", "@type": "WebSite", "name": site.title}
    if site.base_url:
        items = [one for one in site.listed if not one.owns_up]
        block = {
            "@context": "https://schema.org",
            "@type": "ItemList",
            "name": site.title,
            "itemListElement": [
                {"@type": "ListItem", "position": at, "url": site.address(one.link.href), "name": one.name}
                for at, one in enumerate(items, 1)
            ],
        }
    return dump(block)
