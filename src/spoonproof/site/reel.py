"""The film on the page: a video file of the channel's folder, its captions, and its chapters as a track."""

from __future__ import annotations

import contextlib
from collections.abc import Sequence
from pathlib import Path

from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass, field, replace
from spoonproof.site.census import MEDIA_LARGEST, media_file
from spoonproof.site.view import Chapter, Film

LARGEST = MEDIA_LARGEST
"""Bytes of a video that a page carries; a larger one belongs on a host for videos, with its ``url`` in the recipe."""

CAPTIONS_LARGEST = 1024 * 1024


@dataclass(slots=True)
class Reel:
    """The video files of a site, collected while its pages are gathered. ``root`` is the channel's folder; ``sources``
    says which of the channel's files are taken over as they are, by their paths in the site."""

    root: Path | None
    files: dict[str, bytes] = field(default_factory=dict)
    sources: dict[str, Path] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)

    def film(self, recipe: Recipe) -> Film | None:
        """The film as the page shows it: its own file, else a link, else None. What can't be used is noted."""
        video = recipe.video
        if video is None:
            return None
        title = f"“{recipe.title.value}” being made"
        chapters = chapters_of(recipe)
        linked = Film(video.url, title, False, video.uploaded, video.seconds, "", chapters) if video.url else None
        if not video.file or self.root is None:
            return linked
        found = self._found(recipe, video.file, LARGEST, "a video on a page")
        kind = kind_of(found[1]) if found is not None else ""
        if found is None or not kind:
            if found is not None:
                self.notes.append(f"{recipe.document.path}: video {video.file!r} is neither MP4 nor WebM")
            return linked
        path = f"videos/{recipe.slug}.{kind}"
        self._take(path, *found)
        film = replace(linked or Film("", title, False, video.uploaded, video.seconds, "", chapters), url=path)
        return replace(
            film,
            local=True,
            kind=f"video/{kind}",
            captions=self._captions(recipe, video.captions),
            track=self._track(recipe.slug, chapters),
        )

    def _captions(self, recipe: Recipe, name: str) -> str:
        """The caption file's path in the site; "" when there is none that can be used."""
        found = self._found(recipe, name, CAPTIONS_LARGEST, "captions") if name else None
        if found is None:
            return ""
        if not found[1].removeprefix(b"\xef\xbb\xbf").startswith(b"WEBVTT"):
            self.notes.append(f"{recipe.document.path}: captions {name!r} are not WebVTT, so browsers can't show them")
            return ""
        path = f"videos/{recipe.slug}.vtt"
        self._take(path, *found)
        return path

    def _track(self, slug: str, chapters: Sequence[Chapter]) -> str:
        if not chapters:
            return ""
        path = f"videos/{slug}-chapters.vtt"
        self.files[path] = chapter_track(chapters).encode("utf-8")
        return path

    def _take(self, path: str, source: Path, body: bytes) -> None:
        self.files[path] = body
        self.sources[path] = source

    def taken(self) -> tuple[dict[str, bytes], dict[str, Path], list[str]]:
        """The files, where those that are taken over lie, and the notes, which are let go here."""
        all_of_it = self.files, self.sources, self.notes
        self.files, self.sources, self.notes = {}, {}, []
        return all_of_it

    def _found(self, recipe: Recipe, name: str, most: int, what: str) -> tuple[Path, bytes] | None:
        """A file of the channel by name, with its content; never one outside its folder, by link or by ``..``."""
        assert self.root is not None
        path = media_file(self.root, "videos", name)
        if path is not None and path.stat().st_size > most:
            self.notes.append(
                f"{recipe.document.path}: {name!r} is larger than {what} may be ({most // 1024 // 1024} MB)"
            )
            return None
        with contextlib.suppress(OSError):
            if path is not None:
                return path, path.read_bytes()
        self.notes.append(f"{recipe.document.path}: {name!r} is not among the channel's files")
        return None


def kind_of(body: bytes) -> str:
    """What the bytes say they are: mp4, webm or ""; the name of a file proves nothing."""
    if body[4:8] == b"ftyp":
        return "mp4"
    return "webm" if body.startswith(b"\x1a\x45\xdf\xa3") else ""


def chapters_of(recipe: Recipe) -> tuple[Chapter, ...]:
    """The film's segments one after the other; none where a segment does not say how long it runs."""
    chapters: list[Chapter] = []
    at = 0.0
    for segment in recipe.film.segments if recipe.film else ():
        if segment.runs is None:
            return ()
        chapters.append(Chapter(at, at + segment.runs, segment.name))
        at += segment.runs
    return tuple(chapters)


def chapter_track(chapters: Sequence[Chapter]) -> str:
    """The chapters as WebVTT."""
    cues = ["WEBVTT"]
    for chapter in chapters:
        name = " ".join(chapter.name.split()).replace("&", "&amp;").replace("<", "&lt;").replace("-->", "--&gt;")
        cues.append(f"{_stamp(chapter.start)} --> {_stamp(chapter.end)}\n{name or 'Chapter'}")
    return "\n\n".join(cues) + "\n"


def _stamp(seconds: float) -> str:
    whole = round(seconds * 1000)
    minutes, thousandths = divmod(whole, 60_000)
    return f"{minutes // 60:02d}:{minutes % 60:02d}:{thousandths // 1000:02d}.{thousandths % 1000:03d}"
