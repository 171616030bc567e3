"""Publishing beside general site builders, on the same stories, in one run.

    python benchmarks/builders.py 1000 [--rounds 3] [--tools DIR]

The builders (hugo, pelican, mkdocs: those that are installed, on the path or in DIR) get each story under its title as
a plain page, with the plainest theme; nothing is computed, drawn or checked. Our pages hold what was worked out, and
previews for links where Pillow is there. "new": nothing kept and no site; "nothing new": the site stands already.
"""

from __future__ import annotations

import argparse
import shutil
import tempfile
from pathlib import Path

from bowls import make
from thousand import forget
from timing import OURS, Job, interleaved, table, tools

HUGO = {
    "hugo.toml": 'baseURL = "https://example.org/"\ntitle = "Bowls"\ndisableKinds = ["taxonomy", "term"]\n',
    "layouts/_default/baseof.html": '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{{ .Title }}'
    '</title></head><body>{{ block "main" . }}{{ end }}</body></html>\n',
    "layouts/_default/single.html": '{{ define "main" }}<h1>{{ .Title }}</h1>{{ .Content }}{{ end }}\n',
    "layouts/index.html": '{{ define "main" }}<ul>{{ range .Site.RegularPages }}<li><a href="{{ .RelPermalink }}">'
    "{{ .Title }}</a></li>{{ end }}</ul>{{ end }}\n",
}


def main() -> None:
    """Make, measure, print a table for each count."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("counts", nargs="*", type=int, default=[1000])
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--tools", type=Path, metavar="DIR", help="where the builders are, besides the path")
    options = parser.parse_args()
    found = tools(options.tools, ("hugo", "pelican", "mkdocs"))
    with tempfile.TemporaryDirectory(prefix="builders-") as name:
        for count in options.counts:
            folder = make(Path(name) / str(count), count)
            jobs = ours(folder)
            for tool, path in found.items():
                jobs |= theirs(tool, path, folder)
            runs = interleaved(jobs, options.rounds)
            for state in ("all new", "nothing new"):
                some = {job: run for job, run in runs.items() if job.endswith(state)}
                beside = f"hugo, {state}" if "hugo" in found else next(iter(some))
                print(f"{count} pages, {state}: medians of {options.rounds} interleaved runs, beside {beside}")
                table(some, beside)


def ours(folder: Path) -> dict[str, Job]:
    """Publishing, which checks first; with what was read kept and with nothing kept."""
    publish = [*OURS, "publish", "--with-errors", "--out", "pages"]
    plain = {"SPOONPROOF_PREVIEWS": "off"}
    return {
        "publish, all new": Job(publish, folder, lambda: forget(folder, "pages")),
        "publish, nothing new": Job(publish, folder),
        "without previews, all new": Job(publish, folder, lambda: forget(folder, "pages"), plain),
        "without previews, read before, all new": Job(publish, folder, lambda: forget_pages(folder), plain),
        "without previews, nothing new": Job(publish, folder, more=plain),
    }


def forget_pages(folder: Path) -> None:
    """Take the site away and leave what was read."""
    shutil.rmtree(folder / "pages", ignore_errors=True)


def theirs(tool: str, path: str, folder: Path) -> dict[str, Job]:
    """A builder over the same stories."""
    home = folder / tool
    home.mkdir()
    if tool == "hugo":
        for name, text in HUGO.items():
            (home / name).parent.mkdir(parents=True, exist_ok=True)
            (home / name).write_text(text, "utf-8")
        shutil.copy(home / "hugo.toml", home / "config.toml")  # the name that older versions know
        shutil.copytree(folder / "content", home / "content")
        command = [path, "--quiet", "-d", "site"]
    elif tool == "pelican":
        command = [path, str(folder / "content"), "-o", "site", "-q"]
    else:
        shutil.copytree(folder / "content", home / "docs")
        (home / "mkdocs.yml").write_text("site_name: Bowls\n", "utf-8")
        command = [path, "build", "-q"]

    def clear() -> None:
        shutil.rmtree(home / "site", ignore_errors=True)

    return {f"{tool}, all new": Job(command, home, clear), f"{tool}, nothing new": Job(command, home)}


if __name__ == "__main__":
    main()
