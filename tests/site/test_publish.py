"""From a channel's folder to its site: what is published, what is left out, and the same bytes everywhere."""

from __future__ import annotations

import csv
import hashlib
import html
import json
import os
import re
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request
from pathlib import Path

import pytest

from spoonproof.cli import main
from spoonproof.site import watch
from tests.site.vocabulary import faults

CHANNEL = """\
title: Quay Spoons
base_url: https://quay-spoons.example
markets: [EU, GB]
measures: UK
author: Ada
"""
GOOD = """\
---
title: Swede and potato mash
summary: Two roots and a little oil.
ages: 7-9 months
texture: mashed
makes: 6 x 60 g
season: [October, November, December]
renamed_from: [old-mash]
corrections:
  - {on: 2026-11-03, said: steam 8 minutes, holds: 20 to 25 minutes}
foods:
  - 250 g swede, peeled, 1 cm dice
  - 200 g potatoes, peeled, 1 cm dice
  - 2 tsp rapeseed oil
steps:
  - Steam the swede, covered, for 25-30 minutes.
  - Add the potatoes and steam for 20 minutes more, until a cube squashes between finger and thumb.
  - Let the steam off for 5 minutes.
  - Mash everything with the oil.
keeps: fridge 1 hour, freezer 2 weeks
pictures:
  - {file: bowl.png, text: "A bowl of mash", shows: [mashed bowl]}
---
Swede is sweeter than it looks. {{ 7*7 }} <script>alert(1)</script>

It goes well with [the other one](recipe:honey-bowl).
"""
BAD = """\
---
title: Honey bowl
ages: 6-7 months
texture: smooth
foods:
  - 200 g carrots, peeled, 1 cm dice
  - 1 tbsp honey
steps:
  - Steam the carrots for 30 minutes, until they squash between finger and thumb.
  - Blend with the honey.
---
Carrots cure colds.
"""


@pytest.fixture
def channel(tmp_path: Path) -> Path:
    root = tmp_path / "quay"
    (root / "recipes").mkdir(parents=True)
    (root / "channel.yaml").write_text(CHANNEL)
    (root / "recipes" / "swede-mash.md").write_text(GOOD)
    (root / "recipes" / "honey-bowl.md").write_text(BAD)
    return root


def publish(root: Path, *more: str) -> int:
    return main(["publish", "--channel", str(root), "--out", str(root / "out" / "site"), *more])


def page(root: Path, name: str = "recipes/swede-mash.html") -> str:
    return (root / "out" / "site" / name).read_text(encoding="utf-8")


def test_a_recipe_with_an_error_is_left_out_and_named(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert publish(channel) == 1
    said = capsys.readouterr()
    assert "recipes/honey-bowl.md: left out" in said.err
    assert "1 recipe," in said.out
    assert not (channel / "out/site/recipes/honey-bowl.html").exists()
    text = page(channel)
    assert "<a>the other one</a>" in text  # the page it would lead to is not published
    assert "&lt;script&gt;alert" in text and "javascript:" not in text and "{{ 7*7 }}" in text


def test_told_to_it_publishes_with_errors_and_the_page_owns_up(channel: Path) -> None:
    assert publish(channel, "--with-errors") == 0
    text = page(channel, "recipes/honey-bowl.html")
    assert "Not ready" in text and "honey" in text.lower() and 'content="noindex"' in text
    assert '<a href="honey-bowl.html">the other one</a>' in page(channel)


def test_the_page_says_what_the_dish_is(channel: Path) -> None:
    publish(channel)
    text = page(channel).replace("\u00a0", " ")
    for words in (
        "7 to 9 months", "mashed", "6 portions of 60 g", "October to December", "250 g", "peeled, 1 cm dice",
        "we said “steam 8 minutes”", "None of the allergens", "Stay with your baby",
        "fridge for up to 1 hour, in the freezer for up to 2 weeks.",
        "Time 25 to 30 minutes", "a tablespoon is 15 ml", "Iron",
    ):  # fmt: skip
        assert words in text, words
    assert "What is in a portion" in text and text.count("†") != 1, (
        "a mark explained stands, one that stands is explained"
    )
    assert "has a new name" in page(channel, "recipes/old-mash.html")
    blocks = [json.loads(b) for b in re.findall(r'<script type="application/ld\+json">(.*?)</script>', text, re.S)]
    assert [fault for block in blocks for fault in faults(block)] == []


def test_statements_are_linked_from_the_sentence_to_answer_and_source(channel: Path) -> None:
    publish(channel, "--with-errors")
    text = page(channel, "recipes/honey-bowl.html")
    story = text[text.index('id="story"') : text.index('id="why"')]
    number = re.search(r'class="why" href="#why-(\d+)"', story)
    assert number is not None
    item = text[text.index(f'<li id="why-{number[1]}">') :]
    item = item[: item.index("</li>\n<li") if "</li>\n<li" in item else item.index("</ol>")]
    # The register has nothing that shows it: that is said, and not that it is untrue.
    assert "colds" in item and "Nothing shows that it is so." in item and "does not hold" not in item


def test_a_photograph_comes_in_sizes_without_its_secrets(channel: Path) -> None:
    image = pytest.importorskip("PIL.Image", reason="Pillow is not installed: photographs are left out")
    (channel / "pictures").mkdir()
    picture = image.new("RGB", (1300, 900), (200, 120, 60))
    exif = picture.getexif()
    exif[0x010F] = "SecretCamera"
    picture.save(channel / "pictures" / "bowl.png", exif=exif)
    publish(channel)
    text = page(channel)
    assert 'src="../pictures/swede-mash-photo1-960.jpg" width="960" height="665"' in text
    assert "swede-mash-photo1-480.jpg 480w" in text and 'alt="A bowl of mash"' in text
    body = (channel / "out/site/pictures/swede-mash-photo1-480.jpg").read_bytes()
    assert b"SecretCamera" not in body


@pytest.mark.parametrize("what", ["svg named png", "link outside", "parent", "missing"])
def test_a_picture_that_lies_or_leads_out_is_left_out(
    channel: Path, what: str, capsys: pytest.CaptureFixture[str]
) -> None:
    pytest.importorskip("PIL", reason="Pillow is not installed: photographs are left out")
    (channel / "pictures").mkdir()
    secret = channel.parent / "secret.png"
    secret.write_bytes(b"\x89PNG\r\n\x1a\n hushhush")
    if what == "svg named png":
        (channel / "pictures" / "bowl.png").write_text(
            "<svg xmlns='http://www.w3.org/2000/svg'><script>x</script></svg>"
        )
    elif what == "link outside":
        (channel / "pictures" / "bowl.png").symlink_to(secret)
    elif what == "parent":
        recipe = channel / "recipes" / "swede-mash.md"
        recipe.write_text(recipe.read_text().replace("file: bowl.png", "file: ../../secret.png"))
    publish(channel, "--with-errors")
    assert "photo1" not in page(channel)
    made = list((channel / "out/site").rglob("*"))
    assert not any(path.is_file() and b"hushhush" in path.read_bytes() for path in made)


def digest(root: Path) -> str:
    out = hashlib.sha256()
    for path in sorted((root / "out/site").rglob("*")):
        if path.is_file():
            out.update(path.relative_to(root).as_posix().encode() + b"\0" + path.read_bytes())
    return out.hexdigest()


def test_the_same_bytes_in_every_place_and_order(channel: Path) -> None:
    seen = set()
    for seed, zone, locale in (
        ("0", "UTC", "C"),
        ("7", "Pacific/Kiritimati", "C.UTF-8"),
        ("9", "America/Lima", "tr_TR"),
    ):
        env = {
            "PATH": os.environ["PATH"], "HOME": str(channel.parent), "PYTHONHASHSEED": seed, "TZ": zone,
            "LC_ALL": locale, "PYTHONPATH": os.pathsep.join(sys.path), "SPOONPROOF_TODAY": "2026-11-25",
        }  # fmt: skip
        out = str(channel / "out" / "site")
        subprocess.run(
            [sys.executable, "-m", "spoonproof", "publish", "--channel", str(channel), "--out", out, "--with-errors"],
            env=env, check=True, capture_output=True,
        )  # fmt: skip
        seen.add(digest(channel))
        (channel / "recipes" / "zz.md").write_text("")
        (channel / "recipes" / "zz.md").unlink()
        subprocess.run(["rm", "-r", out], check=True)
    assert len(seen) == 1


def test_a_stated_day_is_printed_and_no_day_without_one(channel: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("SPOONPROOF_TODAY", raising=False)
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    publish(channel)
    assert "Words and numbers checked" not in page(channel)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795600000")
    publish(channel)
    assert "25 November 2026" in page(channel)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "soon")
    assert publish(channel) == 2


def test_dangerous_folders_are_refused_with_exit_2(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for bad in (channel, channel / "recipes", Path("/")):
        assert main(["publish", "--channel", str(channel), "--out", str(bad)]) == 2
    assert "site is made from" in capsys.readouterr().err
    assert (channel / "recipes" / "swede-mash.md").read_text() == GOOD


def test_a_broken_template_is_told_with_its_line_and_the_old_site_stays(
    channel: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    publish(channel)
    before = digest(channel)
    (channel / "site" / "templates").mkdir(parents=True)
    (channel / "site" / "templates" / "404.html").write_text("one\n{{ nonsense }}\n")
    assert publish(channel) == 2
    assert "404.html, line 2" in capsys.readouterr().err
    assert digest(channel) == before


def test_the_watch_serves_to_this_machine_alone_and_tells_of_a_new_build(channel: Path) -> None:
    publish(channel)
    reloads = watch.Reloads()
    server = watch.serve(channel / "out" / "site", 0, reloads)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    at = f"http://127.0.0.1:{server.server_address[1]}"
    try:
        assert b"Quay Spoons" in urllib.request.urlopen(f"{at}/index.html", timeout=5).read()
        assert b"EventSource" in urllib.request.urlopen(f"{at}/site.js", timeout=5).read()
        assert b"EventSource" not in (channel / "out/site/site.js").read_bytes()
        for method in ("GET", "HEAD"):
            stranger = urllib.request.Request(f"{at}/index.html", headers={"Host": "evil.example:80"}, method=method)
            with pytest.raises(urllib.error.HTTPError, match="403"):
                urllib.request.urlopen(stranger, timeout=5)
        for path in ("../../channel.yaml", "nowhere/site.js", "%2e%2e/%2e%2e/channel.yaml"):
            with pytest.raises(urllib.error.HTTPError, match="404"):
                urllib.request.urlopen(f"{at}/{path}", timeout=5)
        with urllib.request.urlopen(f"{at}/reload", timeout=5) as stream:
            time.sleep(0.2)
            reloads.again()
            assert stream.readline() == b"data: built\n"
    finally:
        server.shutdown()
        server.server_close()


def test_the_watch_sees_changes_and_not_its_own_output(channel: Path) -> None:
    out = channel / "out" / "site"
    publish(channel)
    before = watch.snapshot(channel, out)
    publish(channel, "--with-errors")
    assert watch.snapshot(channel, out) == before
    (channel / "recipes" / "swede-mash.md").write_text(GOOD + "\nMore.\n")
    assert watch.snapshot(channel, out) != before


def test_a_loosened_safety_row_stands_on_every_page_with_its_reason(channel: Path) -> None:
    (channel / "shared").mkdir()
    head, first = Path("shared/storage.csv").read_text(encoding="utf-8").split("\n")[:2]
    cells = dict(zip(next(csv.reader([head])), next(csv.reader([first])), strict=True))
    loose = cells | {"value": "96"}
    with (channel / "shared" / "storage.csv").open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, [*loose, "reason"])
        writer.writeheader()
        writer.writerow(loose | {"reason": "our fridge is a laboratory’s, at 1 °C"})
    publish(channel, "--with-errors")
    for name in ("index.html", "recipes/swede-mash.html", "sources.html"):
        text = html.unescape(page(channel, name))
        assert f"a row of its own for “{cells['id']}”" in text, name
        assert "our fridge is a laboratory’s, at 1 °C" in text and "value" in text.split("row of its own")[1]
    (channel / "shared" / "storage.csv").unlink()
    publish(channel, "--with-errors")
    assert "row of its own" not in page(channel)


def test_a_policy_that_is_not_the_usual_one_is_told_with_its_reason(channel: Path) -> None:
    usual = "policies: {nitrate: EFSA, eggs: solid}\n"
    other = "policies: {nitrate: EFSA, eggs: {name: GB, reason: our eggs carry the lion}}\n"
    (channel / "channel.yaml").write_text(CHANNEL + usual)
    publish(channel)
    assert "Authorities differ" not in page(channel)
    (channel / "channel.yaml").write_text(CHANNEL + other)
    publish(channel)
    text = page(channel)
    assert "Authorities differ on eggs; this channel goes by GB" in text and "our eggs carry the lion." in text
    assert "nitrate;" not in text


def test_templates_are_overridden_one_by_one_and_the_look_in_one_file(channel: Path) -> None:
    publish(channel)
    before = page(channel, "sources.html")
    own = channel / "site"
    (own / "templates").mkdir(parents=True)
    (own / "templates" / "404.html").write_text(
        '{% extends "base.html" %}{% block content %}<h1>Ours alone</h1>{% endblock %}'
    )
    look = (Path("site") / "look.css").read_text(encoding="utf-8").replace("#2b4a80", "#6b2a4a")
    (own / "look.css").write_text(look, encoding="utf-8")
    publish(channel)
    assert "Ours alone" in page(channel, "404.html") and page(channel, "sources.html") == before
    assert "#6b2a4a" in page(channel, "look.css")
    # Every colour of the other style sheets is one of the look's, so that one file is enough.
    style = re.sub(r"@media print.*", "", (Path("site") / "style.css").read_text(encoding="utf-8"), flags=re.S)
    assert set(re.findall(r"#[0-9a-f]{3,8}\b", style)) <= {"#14120f"}


TAKES_OVER = "{{ cycler.__init__.__globals__.os.popen('echo taken over').read() }}"


@pytest.mark.parametrize(
    "own", [TAKES_OVER, "{% include '../../channel.yaml' %}", "{{ site.recipes.__class__.__mro__ }}", None]
)
def test_a_theme_of_anybody_reaches_neither_python_nor_other_files(
    channel: Path, own: str | None, capsys: pytest.CaptureFixture[str]
) -> None:
    templates = channel / "site" / "templates"
    templates.mkdir(parents=True)
    (templates / "404.html").write_text('{% extends "base.html" %}{% block content %}' + (own or "") + "{% endblock %}")
    secret = channel.parent / "secret"
    secret.write_text("a secret")
    if own is None:
        (channel / "site" / "style.css").symlink_to(secret)
    assert main(["publish", "--channel", str(channel)]) == 2
    said = capsys.readouterr().err
    assert ("unsafe" in said or "leads out" in said) and not (channel / "out" / "site").exists()


def test_a_reviewer_is_never_named_beside_a_health_claim(channel: Path) -> None:
    recipe = channel / "recipes" / "swede-mash.md"
    review = "review: {who: Dr M. Hale, on: 2026-11-02, version: 00000000}\n---\n"
    plain_story, claim = GOOD.replace("\n---\nSwede", f"\n{review}Swede"), "Potatoes are a source of vitamin C."
    recipe.write_text(plain_story)
    publish(channel, "--with-errors")
    text = page(channel).replace("\u00a0", " ")
    assert "by Dr M. Hale" in text and "2 November 2026" in text and "The page has changed since." in text
    recipe.write_text(f"{plain_story}\n\n{claim}\n")
    publish(channel, "--with-errors")
    text = page(channel)
    assert 'id="why-1"' in text and "Dr M. Hale" not in text and "no health statement is vouched for" in text
