"""Files of a site as they are made: kept in the channel's cache under their content, so that none need be held.

Where nothing may be kept they lie on a pile until the site is written.
"""

from __future__ import annotations

import contextlib
import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cached_property, partial
from pathlib import Path

from spoonproof.cache import Cache, Contents, hashed
from spoonproof.model.record import NamedTuple
from spoonproof.pile import Pile
from spoonproof.site.stage import Held


class Made(NamedTuple):
    """A file of the site: its path, the hash and the size of its content, and where it lies: a shelf and the name on it
    ("" for the hash), ``body`` for what is in memory."""

    path: str
    digest: str
    size: int
    shelf: str
    name: str = ""
    body: bytes | None = None

    @property
    def row(self) -> tuple[str, str, int, str, str]:
        """What is kept of it."""
        return self[:5]


class Files(Mapping[str, Held]):
    """The files of a site as the stage takes them, each when it is asked for: of each its path alone is held."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._rows: dict[str, int] = {}  # where they lie on the pile

    def add(self, files: Iterable[Made]) -> None:
        """Put these among them; of two at one path the last stands."""
        for made in files:
            self._rows[made.path] = self._store.pile.put(json.dumps(self._store.laid(made).row).encode())

    def __getitem__(self, path: str) -> Held:
        return self._store.held(Made(*json.loads(self._store.pile.get(self._rows[path]))))

    def __iter__(self) -> Iterator[str]:
        return iter(self._rows)

    def __len__(self) -> int:
        return len(self._rows)


class Store:
    """Where the files of one channel's site lie until they are written."""

    def __init__(self, root: Path | None) -> None:
        """``root``: the channel's folder; without one nothing is kept."""
        self._root = root
        self.pile = Pile()
        self._contents = Contents(root, "contents") if root is not None else None
        self._sheets = Cache(root, "sheets", sealed=True) if root is not None else None

    @cached_property
    def pictures(self) -> Cache | None:
        """The shelf of previews, each under the hash of what it shows."""
        if self._root is None:
            return None
        from spoonproof.site import paint

        return Cache(self._root, f"pictures-{hashed(paint.version())}")

    def put(self, path: str, body: bytes) -> Made:
        """A file that was made."""
        digest = hashed(body)
        if self._contents is not None and self._contents.put(digest, body):
            return Made(path, digest, len(body), "contents")
        return Made(path, digest, len(body), "memory", "", body)

    def gather(self, path: str, pieces: Callable[[], Iterable[bytes]]) -> Made:
        """A file that is made of pieces, each let go when it is written."""
        found = self._contents.gather(pieces()) if self._contents is not None else None
        return Made(path, *found, "contents") if found is not None else self.put(path, b"".join(pieces()))

    def laid(self, made: Made) -> Made:
        """The same, held in memory no longer."""
        return made if made.body is None else made._replace(shelf="pile", name=str(self.pile.put(made.body)), body=None)

    def media(self, path: str, file: Path, body: bytes) -> Made:
        """A file that is taken over from the channel as it is."""
        return Made(path, hashed(body), len(body), "media", str(file))

    def held(self, made: Made) -> Held:
        """The file as the stage takes it: read when it is written, or given as it lies."""
        shelf = self._contents if made.shelf == "contents" else None
        given = partial(shelf.give, made.digest) if shelf is not None else None
        return Held(made.size, made.digest, lambda: self._read(made), given)

    def _read(self, made: Made) -> bytes | None:
        """The content, None where it is no longer what was put there."""
        if made.shelf == "pile":
            return self.pile.get(int(made.name))
        if made.shelf == "contents":
            return self._contents.get(made.digest) if self._contents is not None else None
        if made.shelf == "pictures":
            body = self.pictures.get(made.name) if self.pictures is not None else None
        else:
            body = None
            with contextlib.suppress(OSError):
                body = Path(made.name).read_bytes()
        return body if body is not None and hashed(body) == made.digest else None

    def lies(self, made: Made) -> bool:
        """Whether the file is still where it was put."""
        if made.shelf == "contents":
            return self._contents is not None and self._contents.has(made.digest)
        if made.shelf == "pictures":
            return self.pictures is not None and self.pictures.has(made.name)
        return Path(made.name).is_file()

    def kept(self, key: str) -> bytes | None:
        """What was kept of a recipe's page, or of the pages around them."""
        return self._sheets.get(key) if self._sheets is not None else None

    def keep(self, key: str, body: bytes) -> None:
        """Keep it for the next build."""
        if self._sheets is not None:
            self._sheets.put(key, body)
