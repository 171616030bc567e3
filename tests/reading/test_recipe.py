"""Recipe files: all shapes of the head, the story, the statements with their places, and all faults at once."""

from __future__ import annotations

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.model.finding import Finding
from spoonproof.model.recipe import Recipe
from spoonproof.model.text import Document
from spoonproof.reading.recipe import read_recipe
from tests.each import each
from tests.kitchen import knowledge

FULL = """---
title: {text: Leek and potato bowl, leave: a name}
summary: "A mild bowl: soft and \\u00e9ven."
ages: 7-9 months
texture: Mashed
next: {texture: lumpy, from: 9 months, how: "mash it less, and stop"}
makes: {portions: 6 x 70 g, family: two bowls}
season: October to December
paid: gifted
foods:
  - 200 g leeks, sliced
  - {food: 300 g potatoes, as: the potatoes, may_contain: [celery], cut: 1 cm dice}
  - {recipe: galley-stock, amount: 400 g}
  - {food: 1 egg, or: 1 tbsp olive oil}
steps:
  - Boil the potatoes for 20 minutes.
  - {do: "Add the leeks and boil for 8 minutes.", leave: a saying}
  - >
    Mash everything
    with a fork.
keeps: {fridge: 48 h, freezer: 1 month}
trials:
  - {on: 2026-11-02, weighed: 545 g, squash: yes, note: fine}
film:
  runs: 1:30
  title: Leek bowl
  description: How we make it.
  social: Leeks!
  segments:
    - {name: Hook, say: "Soft \\"leeks\\" first", shot: CU, super: "From 7 months", step: 1, runs: 8 s, presenter: Ada}
    - {name: Myth, say: "They say it cures colds", leave: a myth we refute}
pictures:
  - bowl.jpg
  - {file: img/pan.jpg, text: A pan of leeks, shows: [steam, adult present]}
video: {url: "https://video.example/1", uploaded: 2026-11-03, runs: 92 s, captions: leek.vtt}
corrections:
  - {on: 2026-11-05, said: It keeps a week., holds: It keeps two days.}
review: {who: R. Dietitian, on: 2026-11-04, version: "1"}
renamed_from: [leek-mash, leek-bowl-old]
sources:
  - {id: mine, type: webpage, title: My notes, author: [{family: Cook}]}
draft: no
---
Leeks are **mild**.

<!-- leave: a saying -->
> Leeks cure everything.
"""


def read(text: str, name: str = "recipes/leek-bowl.md") -> tuple[Recipe | None, list[Finding]]:
    tables = knowledge()
    return read_recipe(Document(name, text), tables.foods, tables.verbs, tables.measures("UK"))


def reading_faults(text: str, name: str = "recipes/leek-bowl.md") -> list[str]:
    """The faults of the head's shape; those of food lines and steps have tests of their own."""
    _, findings = read(text, name)
    of_the_head = [f for f in findings if f.area in ("page", "words", "film")]
    return [f"{f.document.position(f.span.start)[0]}:{f.rule}" for f in of_the_head]


def test_every_key_and_shape_is_read() -> None:
    recipe, findings = read(FULL)
    assert [f"{f.rule}: {f.message}" for f in findings if f.level == "error"] == []
    assert recipe is not None
    assert recipe.slug == "leek-bowl"
    assert recipe.title.value == "Leek and potato bowl"
    assert (recipe.ages.low, recipe.ages.high) == (7, 9)
    assert recipe.texture is not None
    assert recipe.texture.value == "mashed"
    assert recipe.next is not None
    assert (recipe.next.texture, recipe.next.from_months, recipe.next.how) == ("lumpy", 9, "mash it less, and stop")
    assert recipe.makes is not None
    assert (recipe.makes.count, recipe.makes.grams, recipe.makes.family) == (6, 70.0, "two bowls")
    assert [month.value for month in recipe.season] == ["October", "November", "December"]
    assert recipe.foods[0].food is not None
    assert recipe.foods[1].alias == "the potatoes"
    assert recipe.foods[1].label == ("celery",)
    assert recipe.foods[2].recipe == "galley-stock"
    assert len(recipe.foods[3].choices) == 1
    assert len(recipe.steps) == 3
    assert recipe.keeps is not None
    assert (recipe.keeps.fridge_hours, recipe.keeps.freezer_days) == (48.0, 30.0)
    assert recipe.trials[0].grams == 545.0
    assert recipe.trials[0].squash is True
    assert recipe.film is not None
    assert recipe.film.runs == 90.0
    assert [(s.name, s.step, s.runs, s.presenter) for s in recipe.film.segments] == [
        ("Hook", 1, 8.0, "Ada"),
        ("Myth", None, None, ""),
    ]
    assert [p.file for p in recipe.pictures] == ["bowl.jpg", "img/pan.jpg"]
    assert recipe.video is not None
    assert (recipe.video.seconds, recipe.video.captions) == (92.0, "leek.vtt")
    assert recipe.corrections[0].holds == "It keeps two days."
    assert recipe.review is not None
    assert recipe.renamed_from == ("leek-mash", "leek-bowl-old")
    assert recipe.sources[0]["author"] == [{"family": "Cook"}]
    assert recipe.draft is False
    assert recipe.document.at(recipe.story_span).startswith("Leeks are")


def test_all_statements_are_passages_that_map_back() -> None:
    recipe, _ = read(FULL)
    assert recipe is not None
    kinds = [(p.kind, p.text, p.leave) for p in recipe.passages]
    assert kinds == [
        ("title", "Leek and potato bowl", "a name"),
        ("description", "A mild bowl: soft and éven.", None),
        ("step", "Boil the potatoes for 20 minutes.", None),
        ("step", "Add the leeks and boil for 8 minutes.", "a saying"),
        ("step", "Mash everything with a fork.", None),
        ("note", "mash it less, and stop", None),
        ("say", 'Soft "leeks" first', None),
        ("super", "From 7 months", None),
        ("say", "They say it cures colds", "a myth we refute"),
        ("title", "Leek bowl", None),
        ("description", "How we make it.", None),
        ("social", "Leeks!", None),
        ("picture", "A pan of leeks", None),
        ("shows", "steam", None),
        ("shows", "adult present", None),
        ("note", "It keeps two days.", None),
        ("story", "Leeks are mild.", None),
        ("story", "Leeks cure everything.", "a saying"),
    ]
    for passage in recipe.passages:
        for word in passage.text.replace('"', " ").replace("é", " ").split():
            start = passage.text.index(word)
            assert recipe.document.at(passage.span(start, start + len(word))).replace("*", "") == word


SHORT = "---\ntitle: Bowl\nages: 7-9 months\nfoods: [200 g leeks]\nsteps: [Boil the leeks for 20 minutes.]\n"


@each(
    ("text", "faults"),
    [
        ("just words", ["1:front-matter-missing"]),
        ("title: x\n---\n", ["1:front-matter-missing"]),
        ("----\ntitle: x\n----\n", ["1:front-matter-missing"]),
        (" ---\ntitle: x\n---\n", ["1:front-matter-missing"]),
        ("\n" + SHORT + "---\n", ["2:front-matter-missing"]),
        (SHORT.replace("---", "---  ", 1) + "--- \t\n", []),
        (SHORT, ["1:front-matter-not-closed"]),
        (SHORT + "---\none\n\n---\n\ntwo", []),
        ("---\n- a\n---\n", ["2:front-matter-not-a-mapping"]),
        ("---\nwords\n---\n", ["2:front-matter-not-a-mapping"]),
        ("---\n---\n", ["1:front-matter-not-a-mapping"]),
        ("---\n" + "#\n" * 40_000 + "---\n", ["1:front-matter-too-long"]),
        ("---\ntitle: x\n---\n", ["2:missing-key"]),
        (SHORT + "titel: b\n---\n", ["6:unknown-key"]),
        (SHORT + "makes:\n---\n", ["6:empty-value"]),
        (SHORT + "makes: nine\nkeeps: for ever\n---\n", ["6:wrong-type", "7:wrong-type"]),
        (SHORT + "makes: 0 x 60 g\n---\n", ["6:number-out-of-range"]),
        (SHORT + "texture: mushy\n---\n", ["6:not-in-list"]),
        (SHORT + "trials: [{on: 2026-13-01}]\n---\n", ["6:not-a-date"]),
        (SHORT + "pictures: [../../etc/passwd]\n---\n", ["6:unsafe-path"]),
        (SHORT + "pictures: [/etc/passwd, 'C:\\x.jpg', a/../b.jpg]\n---\n", ["6:unsafe-path"] * 3),
        (SHORT + "renamed_from: [../x, '%2e%2e%2f', CON, aux, index]\n---\n", ["6:unsafe-slug"] * 5),
        (SHORT + "video: {url: javascript:x}\n---\n", ["6:wrong-type"]),
        (SHORT + "film: {runs: 90}\n---\n", ["6:wrong-type"]),
        (SHORT + "film: {segments: [{name: a, step: 4}]}\n---\n", ["6:number-out-of-range"]),
        (SHORT + "season: [Octember]\n---\n", ["6:not-in-list"]),
        (SHORT + "sources: [{title: x}]\n---\n", ["6:missing-key"]),
        (SHORT + "draft: perhaps\n---\n", ["6:wrong-type"]),
        (
            SHORT.replace("[200 g leeks]", "\n  - 200 g leeks\n  -\n  - [x]") + "---\n",
            ["6:empty-value", "7:wrong-type"],
        ),
        (SHORT.replace("[200 g leeks]", "\n  - {foood: x, amount: 1 g}\n  - 200 g leeks") + "---\n", ["5:unknown-key"]),
        (
            SHORT.replace("[200 g leeks]", "\n  - {recipe: ../x, amount: 1 g}\n  - 200 g leeks") + "---\n",
            ["5:unsafe-slug"],
        ),
    ],
)
def test_faults_of_the_head_have_their_line(text: str, faults: list[str]) -> None:
    assert reading_faults(text) == faults


def test_a_food_line_with_a_colon_is_read_as_it_was_meant() -> None:
    recipe, found = read(
        "---\ntitle: Dal\nages: 8-12 months\ntexture: mashed\nfoods:\n"
        "  - Moong dal : 1/2 cup\n  - Water: 2 cups\n  - {food: 1 tsp ghee, as: fat}\n  - Nonsense: of words\n"
        "steps:\n  - Simmer the dal in the water for 40 minutes.\n---\nA story.\n"
    )
    assert recipe is not None
    assert [(line.food, line.text) for line in recipe.foods[:2]] == [
        ("moong-dal", "Moong dal : 1/2 cup"),
        ("water", "Water: 2 cups"),
    ]
    assert recipe.foods[2].alias == "fat"
    assert [one.rule for one in found if one.rule == "wrong-type"] == ["wrong-type"]  # the nonsense alone


def test_a_step_with_a_colon_is_explained_and_mended() -> None:
    text = (
        SHORT.replace("[Boil the leeks for 20 minutes.]", "\n  - Boil the leeks for 20 minutes.\n  - Tip: serve warm.")
        + "---\n"
    )
    _, findings = read(text)
    (finding,) = [f for f in findings if f.rule == "wrong-type"]
    assert finding.remedy is not None
    (edit,) = finding.remedy.edits
    mended = text[: edit.span.start] + edit.replacement + text[edit.span.end :]
    recipe, again = read(mended)
    assert [f for f in again if f.level == "error"] == []
    assert recipe is not None
    assert recipe.steps[1].text == "Tip: serve warm."


@each("name", ["con", "nul", "aux", "com1", "index", "404", "Soup", "a b", "purée", "x" * 81, "-a", ""])
def test_names_that_make_no_page_are_findings(name: str) -> None:
    assert "1:unsafe-slug" in reading_faults(SHORT + "---\n", f"recipes/{name}.md")


def test_columns_after_an_emoji_count_code_points() -> None:
    _, findings = read(SHORT + "film: {social: 😀👩‍🍳é, runs: soon}\n---\n")
    (finding,) = findings
    assert finding.document.place(finding.span)[:2] == (6, 29)


def test_windows_line_ends_give_the_same_recipe_and_faults() -> None:
    text = FULL.replace("makes:", "maks:")
    one, faults = read(text)
    two, others = read(text.replace("\n", "\r\n"))
    assert [f"{f.rule}{f.document.place(f.span)}" for f in faults] == [
        f"{f.rule}{f.document.place(f.span)}" for f in others
    ]
    assert one is not None
    assert two is not None
    assert [p.text for p in one.passages] == [p.text for p in two.passages]


def test_hundreds_of_unknown_foods_are_all_said_and_only_the_first_get_hints() -> None:
    lines = "".join(f"  - {n + 1} g parsnpi{'ab'[n % 2] * (n % 40)}\n" for n in range(400))
    started = time.process_time()
    _, findings = read(SHORT.replace("foods: [200 g leeks]\n", f"foods:\n{lines}") + "---\n")
    assert sum(f.rule == "unknown-food" for f in findings) == 400
    assert time.process_time() - started < 2


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_broken_recipes_give_findings_and_never_raise(data: st.DataObject) -> None:
    lines = FULL.split("\n")
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(lines) - 1))
        how = data.draw(st.sampled_from(["drop", "double", "cut", "indent", "odd"]))
        if how == "drop":
            lines[at] = ""
        elif how == "double":
            lines.insert(at, lines[at])
        elif how == "cut":
            lines[at] = lines[at][: data.draw(st.integers(0, len(lines[at])))]
        elif how == "indent":
            lines[at] = "  " + lines[at]
        else:
            lines[at] += data.draw(st.text(alphabet="-:#{}[]'\"*&!|> é😀\u202e\x00", max_size=6))
    text = "\n".join(lines)
    _, findings = read(text)
    for finding in findings:
        assert 0 <= finding.span.start <= finding.span.end <= len(text) + 1


@each(
    ("written", "count", "grams"),
    [
        ("9 x 60 g", 9, 60.0),
        ("12 bars", 12, None),
        ("8 small pancakes", 8, None),
        ("serves 4", 4, None),
        ("12 fritters, 20 g each", 12, 20.0),
        ("makes about 10 balls (35 g each)", 10, 35.0),
    ],
)
def test_what_it_makes_is_said_as_cooks_say_it(written: str, count: int, grams: float | None) -> None:
    recipe, findings = read(SHORT + f"makes: {written}\n---\n")
    assert recipe is not None and recipe.makes is not None
    assert (recipe.makes.count, recipe.makes.grams) == (count, grams)
    assert not [finding for finding in findings if finding.rule == "wrong-type"]


@pytest.mark.parametrize(
    ("said", "texture"),
    [("purée", "smooth"), ("Chopped", "minced"), ("finger foods", "soft finger food"), ("family meal", "family food")],
)
def test_a_texture_may_be_called_as_cooks_call_it(said: str, texture: str) -> None:
    recipe, findings = read(f"---\ntitle: Swede\nages: 10-12 months\ntexture: {said}\nfoods:\n  - 100 g swede\n---\n")
    assert recipe is not None and recipe.texture is not None
    assert recipe.texture.value == texture
    assert not [one for one in findings if one.rule == "not-in-list"]


@pytest.mark.parametrize(
    ("written", "hours", "days"),
    [
        ("fridge 48 h, freezer 1 month", 48.0, 30.0),
        ("2 days in the fridge", 48.0, None),
        ("up to 2 days in the fridge and for 1 month in the freezer", 48.0, 30.0),
        ("24h in fridge", 24.0, None),
    ],
)
def test_how_long_it_keeps_is_read_either_way_round(written: str, hours: float, days: float | None) -> None:
    recipe, faults = read(
        f"---\ntitle: A\nages: 7 months\nkeeps: {written}\nfoods: [1 carrot]\nsteps: [Boil it.]\n---\n"
    )
    assert recipe is not None and recipe.keeps is not None
    assert (recipe.keeps.fridge_hours, recipe.keeps.freezer_days) == (hours, days)
    assert [fault for fault in faults if fault.level == "error"] == []


@pytest.mark.parametrize(
    ("written", "meant"),
    [("ingredients", "foods"), ("method", "steps"), ("serves", "makes"), ("Description", "summary")],
)
def test_a_key_by_the_name_other_cooks_give_it_is_told_with_ours(written: str, meant: str) -> None:
    _, faults = read(f"---\ntitle: A\nages: 7 months\n{written}: x\n---\n")
    (fault,) = [fault for fault in faults if fault.rule == "unknown-key"]
    assert fault.remedy is not None and fault.remedy.text == f"Write “{meant}”."


def test_foods_in_one_text_are_told_to_stand_on_lines_of_their_own() -> None:
    _, faults = read("---\ntitle: A\nages: 7 months\nfoods: |\n  1 carrot\n  1 leek\nsteps: [Boil it.]\n---\n")
    (fault,) = [fault for fault in faults if fault.rule == "wrong-type"]
    assert "U+000A" not in fault.message
    assert fault.remedy is not None and "hyphen" in fault.remedy.text
