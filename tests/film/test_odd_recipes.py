"""Odd recipes: every file is still made, and other readers still read it."""

import io
import json

import html5lib
import pytest
import webvtt

from spoonproof.film.package import after_edit, before_edit
from spoonproof.model.text import Document
from tests.each import each
from tests.kitchen import dish

SAY = "film:\n  segments:\n    - {{name: Hook, say: {say}, super: {super}}}"
ODD = {
    "nothing but the least": "summary: ''",
    "no film": "title: Bare bowl",
    "a second to run": "film: {runs: 1 s}",
    "no words": "film:\n  runs: 30 s\n  segments:\n    - {name: Silence, shot: WS kitchen, runs: 9 s}",
    "marks of formats": SAY.format(say="'<b>1 --> 2</b> & [[x]] /* y */ {{z}} *w* `v`'", super="'A --> B <i> & C'"),
    "title that closes things": "title: '</title><script>alert(1)</script> & \"quotes\"'",
    "letters from everywhere": "title: 'Möhrenbrei für 宝宝 \u202egnirts\u202c'\n"
    + SAY.format(say="'فول 🥕🥕 Ünïcode…'", super="'🥕'"),
    "one long word": SAY.format(say=f"'{'a' * 400}'", super=f"'{'b' * 200}'"),
    "a long speech": SAY.format(say=f"'{'We talk and talk, and then we talk more. ' * 200}'", super="'Talk'"),
    "one segment name twice": "film:\n  segments:\n    - {name: Hook, say: One.}\n    - {name: Hook, say: Two.}",
    "one step twice": "film:\n  segments:\n    - {name: A, step: 2, say: One.}\n    - {name: B, step: 2, say: Two.}",
    "paid, and no word": "paid: sponsored\nfilm:\n  segments:\n    - {name: Quiet, shot: CU}",
    "open at the top": "ages: from 9 months",
}  # fmt: skip


@each("text", ODD.values())
def test_every_file_is_made_and_read_back(text: str) -> None:
    odd = dish(text)
    files = before_edit(odd).files
    assert files == before_edit(odd).files
    for name in ("captions.vtt", "supers.vtt", "chapters.vtt", "claims.vtt"):
        cues = webvtt.from_buffer(io.StringIO(files[name].decode())).captions
        assert all(cue.start_in_seconds <= cue.end_in_seconds for cue in cues)
        if name == "claims.vtt":
            assert all(json.loads(cue.text)["quote"] for cue in cues)
    for name in ("script.html", "prompter.html", "shots.html"):
        html5lib.HTMLParser(strict=True).parse(files[name].decode())
        assert b"<script>alert" not in files[name]
    assert files["markers-25.edl"].isascii()
    json.loads(files["markers.otio"])
    film = Document("film.vtt", files["captions.vtt"].decode())
    if "-->" in film.text:
        assert after_edit(odd, film).files


@pytest.mark.parametrize("paid", ["sponsored", "gifted", "affiliate", "own-product"])
def test_a_paid_film_says_so_in_every_part(paid: str) -> None:
    files = before_edit(dish(f"paid: {paid}\nfilm:\n  segments:\n    - {{name: Hook, say: Potatoes again.}}")).files
    for name in ("description.txt", "post.txt"):
        assert files[name].decode().startswith("Advertisement: ")
    script = files["script.txt"].decode()
    assert "Advertisement: " in script.split("\n")[7]
    assert "(disclosure)" in script
