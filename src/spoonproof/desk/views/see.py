"""See: the numbers, the timeline, the page at phone width, the script with its clock."""

from __future__ import annotations

from collections.abc import Mapping

from markupsafe import Markup
from starlette.responses import Response

from spoonproof.desk import drawings, saving
from spoonproof.desk.ask import Ask, BadRequest
from spoonproof.desk.desk import Desk
from spoonproof.desk.shelf import digest
from spoonproof.desk.views.out import TYPES, inert
from spoonproof.dish import Dish


def dish_of(desk: Desk, key: str) -> Dish:
    """The dish of a recipe. Raises BadRequest when its head can't be read."""
    folder = desk.shelf.folder()
    recipe = folder.read(desk.shelf.path(key)).recipe
    if recipe is None:
        raise BadRequest("This recipe can’t be read yet: put its head right under Write first.", 409)
    return folder.dish(recipe)


def seen(desk: Desk, ask: Ask) -> Response:
    """All that can be seen of a recipe as its file is now."""
    from spoonproof.cooking.drawing import plan_svg
    from spoonproof.film.material import material
    from spoonproof.film.text import clock
    from spoonproof.film.writing import write_script
    from spoonproof.foods.picture import as_svg
    from spoonproof.foods.show import rows

    key = ask.params["key"]
    dish = dish_of(desk, key)
    name = digest(key.encode("utf-8"))
    desk.show(name, site_of(desk, dish))
    reference = dish.reference
    return desk.page(
        "see.html",
        "/",
        key=key,
        stamp=saving.on_disk(desk.shelf.path(key)).digest,
        dish=dish,
        rows=rows(dish.facts, reference),
        authority=reference.authority,
        picture=Markup(as_svg(dish.facts, reference, dish.recipe.title.value)),
        timeline=Markup(drawings.without_styles(plan_svg(dish.plan))),
        script=write_script(material(dish)),
        clock=clock,
        phone=f"/shown/{name}/recipes/{dish.recipe.slug}.html",
        nutrients_assumed=dish.facts.assumed,
    )


def site_of(desk: Desk, dish: Dish) -> Mapping[str, bytes]:
    """The site with this one recipe in it. Raises BadRequest when the channel's own theme is at fault."""
    from spoonproof.site import build
    from spoonproof.site.album import Album
    from spoonproof.site.choose import theme_folders
    from spoonproof.site.pages import Theme, ThemeError
    from spoonproof.site.publish import site_of_one

    look = Theme(theme_folders(desk.shelf.folder()))
    album = Album(desk.root, desk.root / "out" / "site")
    try:
        return build.files(site_of_one(dish, look, album), look, album.files)
    except ThemeError as error:
        raise BadRequest(f"The page can’t be made: {error}", 409) from None


def shown(desk: Desk, ask: Ask) -> Response:
    """A file of a page made for looking at."""
    files = desk.shown.get(ask.params["name"], {})
    name = ask.params["file"]
    suffix = f".{name.rpartition('.')[2]}"
    if name not in files or suffix not in TYPES:
        raise BadRequest("There is no such file among what was made.", 404)
    return inert(files[name], suffix)


def film(desk: Desk, ask: Ask) -> Response:
    """A page of the film package as the recipe is now: the script, the shot list, or the prompter, which runs."""
    from spoonproof.desk.guard import RUNNING
    from spoonproof.film.package import package

    made = package(dish_of(desk, ask.params["key"])).get(f"{ask.params['page']}.html")
    if made is None:
        raise BadRequest("There is no such page in the film package.", 404)
    page = inert(made, ".html")
    if ask.params["page"] == "prompter":
        page.headers["content-security-policy"] = RUNNING
    return page
