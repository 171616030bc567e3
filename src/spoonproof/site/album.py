"""The pictures of a site: drawings, previews for links, photographs in several sizes.

A preview's name holds a hash of what it shows, so one that is there already is taken over instead of
being painted again, after its own checksums were tried.
"""

from __future__ import annotations

import hashlib
import io
import os
import zlib
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.cache import hashed
from spoonproof.model.recipe import Recipe
from spoonproof.site import paint
from spoonproof.site.census import media_file
from spoonproof.site.shapes import Shape, is_drawing, to_svg
from spoonproof.site.store import Made, Store
from spoonproof.site.view import Picture

if TYPE_CHECKING:
    from spoonproof.cache import Cache

WIDTHS = (480, 960, 1600)
"""Widths of a photograph's sizes in pixels; none is made larger than it is."""

PREVIEWS = "SPOONPROOF_PREVIEWS"
"""Set to "off" in the environment, no previews for links are painted: quicker while a site is being written."""

LARGEST = 30 * 1024 * 1024
"""Bytes of a photograph that are read."""

_SIGNS = {b"\xff\xd8\xff": "JPEG", b"\x89PNG\r\n\x1a\n": "PNG"}


PAINT_LEAST = 6
"""Drawings for which another process is worth its start."""

_Unpainted = tuple[str, dict[str, str], Callable[[], Sequence[Shape]]]
"""A drawing's key, the path of each preview by its name, and what draws it."""


def no_painter() -> tuple[str, ...]:
    """What a site lacks for want of Pillow."""
    if paint.available():
        return ()
    return ("no pictures for link previews and no photographs: they need Pillow (the extra pictures)",)


class Album:
    """Collects the picture files of a site while its pages are gathered."""

    def __init__(self, root: Path | None, out: Path, store: Store | None = None) -> None:
        """``root``: the channel's folder; ``out``: the site as it is now; ``store``: where previews are kept."""
        self.files: dict[str, bytes] = {}
        self.held: dict[str, Made] = {}
        self._unpainted: list[_Unpainted] = []
        self.notes: list[str] = []
        self._root = root
        self._out = out
        self._paints = paint.available()
        self._cache = (store or Store(root)).pictures if self._paints else None
        self._drawings: Cache | None = None
        if root is not None:
            from spoonproof.cache import Cache
            from spoonproof.compiled import code_stamp

            self._drawings = Cache(root, f"drawings-{hashed(code_stamp('site'))}")

    def svg(self, of: object, drawn: Callable[[], Sequence[Shape]]) -> str:
        """A drawing as SVG, drawn where it is not kept. ``of``: all that it is drawn from, values that print alike."""
        if self._drawings is None:
            return to_svg(drawn())
        key = hashed(repr(of))
        kept = self._drawings.get(key)
        svg = kept.decode("ascii", "replace") if kept is not None else ""
        if is_drawing(svg):  # what lies in a folder is never trusted to hold no script
            return svg
        svg = to_svg(drawn())
        self._drawings.put(key, svg.encode("utf-8"))
        return svg

    def drawing(self, slug: str, svg: str, text: str) -> Picture:
        """The drawing as SVG."""
        path = f"pictures/{slug}.svg"
        self.files[path] = svg.encode("utf-8")
        return Picture(path, 960, 720, text)

    def previews(self, slug: str, drawn: Callable[[], Sequence[Shape]], svg: str, text: str) -> tuple[Picture, ...]:
        """The previews of a drawing (``drawn`` gives its shapes, ``svg`` is it as text), painted by ``paint`` where
        they are not at hand; none where Pillow is not installed."""
        if not self._paints or os.environ.get(PREVIEWS) == "off":
            return ()
        key = hashlib.sha256(f"{paint.version()} {svg}".encode()).hexdigest()[:20]
        names = {name: f"pictures/{slug}-{name}-{key[:10]}.png" for name, _, _ in paint.PREVIEWS}
        held = {path: self._at_hand(path, f"{key}-{name}") for name, path in names.items()}
        if all(held.values()):
            self.held.update({path: found for path, found in held.items() if found is not None})
        else:
            self._unpainted.append((key, names, drawn))
        return tuple(Picture(names[name], width, height, text) for name, width, height in paint.PREVIEWS)

    def paint(self) -> None:
        """Paint what is not at hand: each drawing once, in several processes where there are many."""
        if not self._unpainted:
            return
        from spoonproof.crew import spread

        def work(share: Sequence[_Unpainted]) -> Iterator[dict[str, bytes]]:
            return (self._painted(key, drawn()) for key, _, drawn in share)

        painted = spread(work, self._unpainted, PAINT_LEAST)
        for (key, names, _), made in zip(self._unpainted, painted, strict=True):
            for name, path in names.items():
                held = None if name in made else self._at_hand(path, f"{key}-{name}")
                if held is not None:
                    self.held[path] = held
                else:
                    self.files[path] = made[name]
        self._unpainted.clear()

    def _painted(self, key: str, shapes: Sequence[Shape]) -> dict[str, bytes]:
        """The previews that the cache did not take."""
        made = paint.previews(shapes)
        if self._cache is None:
            return made
        return {name: body for name, body in made.items() if not self._cache.put(f"{key}-{name}", body)}

    def _at_hand(self, path: str, key: str) -> Made | None:
        """A preview from the cache, else from the present site if every part of it is sound there."""
        body = self._cache.get(key) if self._cache is not None else None
        if body is None:
            try:
                body = (self._out / path).read_bytes()
            except OSError:
                return None
            if not sound_png(body):
                return None
            if self._cache is None or not self._cache.put(key, body):
                return Made(path, hashed(body), len(body), "memory", "", body)
        return Made(path, hashed(body), len(body), "pictures", key)

    def taken(self) -> tuple[dict[str, bytes], dict[str, Made], list[str]]:
        """The files that were made, those that are kept, and the notes, which are let go here."""
        all_of_it = self.files, self.held, self.notes
        self.files, self.held, self.notes = {}, {}, []
        return all_of_it

    def photos(self, recipe: Recipe) -> tuple[Picture, ...]:
        """The recipe's photographs; a file that can't be used is told in ``notes`` and left out."""
        out = []
        for number, picture in enumerate(recipe.pictures, 1):
            if self._root is None or not self._paints:
                continue
            path = media_file(self._root, "pictures", picture.file)
            if path is None:
                self.notes.append(f"{recipe.document.path}: picture {picture.file!r} is not among the channel's files")
                continue
            text = picture.text.value if picture.text else ""
            made = self._sizes(path, f"pictures/{recipe.slug}-photo{number}", text)
            if made is None:
                self.notes.append(
                    f"{recipe.document.path}: picture {picture.file!r} is no JPEG or PNG that can be read"
                )
            else:
                out.append(made)
        return tuple(out)

    def _sizes(self, path: Path, stem: str, text: str) -> Picture | None:
        from PIL import Image, ImageOps

        if path.stat().st_size > LARGEST:
            return None
        body = path.read_bytes()
        kind = next((kind for sign, kind in _SIGNS.items() if body.startswith(sign)), None)
        if kind is None:
            return None  # the bytes decide, not the name: an SVG could hold a script
        try:
            with Image.open(io.BytesIO(body), formats=[kind]) as opened:
                whole = ImageOps.exif_transpose(opened).convert("RGB")
        except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
            return None
        sizes = []
        for width in [w for w in WIDTHS if w < whole.width] or [whole.width]:
            height = max(1, round(whole.height * width / whole.width))
            file = io.BytesIO()
            # Saved afresh: no place, time or camera of the photograph stays in it.
            whole.resize((width, height), Image.Resampling.LANCZOS).save(file, "JPEG", quality=82, optimize=True)
            name = f"{stem}-{width}.jpg"
            self.files[name] = file.getvalue()
            sizes.append((name, width, height))
        name, width, height = sizes[-1]
        larger = tuple((n, w) for n, w, _ in sizes) if len(sizes) > 1 else ()
        return Picture(name, width, height, text, larger)


def sound_png(body: bytes) -> bool:
    """Whether every chunk of a PNG has the checksum it states, to the end."""
    if not body.startswith(b"\x89PNG\r\n\x1a\n"):
        return False
    at = 8
    while at + 12 <= len(body):
        length = int.from_bytes(body[at : at + 4], "big")
        kind, end = body[at + 4 : at + 8], at + 12 + length
        if end > len(body) or zlib.crc32(body[at + 4 : end - 4]) != int.from_bytes(body[end - 4 : end], "big"):
            return False
        if kind == b"IEND":
            return end == len(body)
        at = end
    return False
