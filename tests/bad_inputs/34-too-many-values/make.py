"""100,000 keys, a value and a key that go on and on."""

from pathlib import Path


def make(folder: Path) -> None:
    (folder / "keys.yaml").write_text("".join(f"k{n}: 1\n" for n in range(100_000)))
    (folder / "long.yaml").write_text("title: " + "long \n  " * 5_000 + "\n")
    (folder / "wide.yaml").write_text("k" * 900_000 + ": 1\n")
