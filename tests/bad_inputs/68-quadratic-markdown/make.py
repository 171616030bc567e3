"""What makes careless Markdown readers take for ever, each under the limit of a line."""

from pathlib import Path

from tests.bad_inputs.plain import RECIPE


def make(folder: Path) -> None:
    for name, text in {
        "angles": "<" * 9_000,
        "emphasis": "*_" * 4_900,
        "links": '[](" ' * 1_900,
        "marks": "\"'" * 2_500,
        "pictures": "![" * 3_000,
        "definitions": "".join(f"[a{n}]: b\n" for n in range(2_000)),
        "ticks": "".join("`" * n + " " for n in range(1, 130)),
        "underlines": "?c_" * 3_000,
    }.items():
        (folder / f"{name}.md").write_text(RECIPE + text + "\n")
