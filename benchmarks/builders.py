"""Publishing beside general site builders, on the same stories, in one run.

    python benchmarks/builders.py 1000 [--rounds 3] [--tools DIR]

The builders (hugo, pelican, mkdocs, nikola, sphinx: those that are installed, on the path or in DIR) get each story
under its title as a plain page, with the plainest theme; nothing is computed, drawn or checked. Our pages hold what was
worked out. "all new": nothing kept and no site; "site gone": what was made before is kept; "nothing new": the site
stands already. A channel with an address also gets previews for links, where Pillow is there.
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

NIKOLA = """BLOG_TITLE = "Bowls"
SITE_URL = BASE_URL = "https://example.org/"
BLOG_EMAIL = BLOG_AUTHOR = BLOG_DESCRIPTION = ""
DEFAULT_LANG = "en"
THEME = "base"
POSTS = (("posts/*.md", "posts", "post.tmpl"),)
PAGES = ()
COMPILERS = {"markdown": (".md",)}
OUTPUT_FOLDER = "site"
"""


def main() -> None:
    """Make, measure, print a table for each count."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("counts", nargs="*", type=int, default=[1000])
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--tools", type=Path, metavar="DIR", help="where the builders are, besides the path")
    options = parser.parse_args()
    found = tools(options.tools, ("hugo", "pelican", "mkdocs", "nikola", "sphinx-build"))
    with tempfile.TemporaryDirectory(prefix="builders-") as name:
        for count in options.counts:
            folder = make(Path(name) / str(count), count)
            jobs = ours(folder)
            for tool, path in found.items():
                jobs |= theirs(tool, path, folder)
            runs = interleaved(jobs, options.rounds)
            for state, other in (("all new", "all new"), ("site gone", "all new"), ("nothing new", "nothing new")):
                some = {
                    job: run for job, run in runs.items() if job.endswith(state if job.startswith("publish") else other)
                }
                beside = f"hugo, {other}" if "hugo" in found else next(iter(some))
                print(f"{count} pages, {state}: medians of {options.rounds} interleaved runs, beside {beside}")
                table(some, beside)


def ours(folder: Path) -> dict[str, Job]:
    """Publishing, which checks first; of a channel without an address and, by another channel.yaml, of one with."""
    addressed = folder.with_name(f"{folder.name}-addressed")
    shutil.copytree(folder / "recipes", addressed / "recipes")
    settings = (folder / "channel.yaml").read_text("utf-8")
    (addressed / "channel.yaml").write_text(f"{settings}base_url: https://bowls.example\n", "utf-8")
    publish = [*OURS, "publish", "--with-errors", "--out", "pages"]
    return {
        "publish, all new": Job(publish, folder, lambda: forget(folder, "pages")),
        "publish, site gone": Job(publish, folder, lambda: shutil.rmtree(folder / "pages")),
        "publish, nothing new": Job(publish, folder),
        "publish with previews, all new": Job(publish, addressed, lambda: forget(addressed, "pages")),
        "publish with previews, site gone": Job(publish, addressed, lambda: shutil.rmtree(addressed / "pages")),
        "publish with previews, nothing new": Job(publish, addressed),
    }


def theirs(tool: str, path: str, folder: Path) -> dict[str, Job]:
    """A builder over the same stories."""
    home = folder / tool
    home.mkdir()
    kept: list[str] = []
    if tool == "hugo":
        for name, text in HUGO.items():
            (home / name).parent.mkdir(parents=True, exist_ok=True)
            (home / name).write_text(text, "utf-8")
        shutil.copy(home / "hugo.toml", home / "config.toml")  # the name that older versions know
        shutil.copytree(folder / "content", home / "content")
        command = [path, "--quiet", "-d", "site"]
    elif tool == "pelican":
        command = [path, str(folder / "content"), "-o", "site", "-q"]
    elif tool == "mkdocs":
        shutil.copytree(folder / "content", home / "docs")
        (home / "mkdocs.yml").write_text("site_name: Bowls\n", "utf-8")
        command = [path, "build", "-q"]
    elif tool == "nikola":
        shutil.copytree(folder / "content", home / "posts")
        (home / "conf.py").write_text(NIKOLA, "utf-8")
        command, kept = [path, "build", "-q"], ["cache", ".doit.db"]
    else:
        (home / "rst").mkdir()
        for page in (folder / "content").iterdir():
            title, _, story = page.read_text("utf-8").partition("title: ")[2].partition("\n")
            text = f"{title}\n{'=' * len(title)}\n\n{story.partition('---')[2].strip()}\n"
            (home / "rst" / f"{page.stem}.rst").write_text(text, "utf-8")
        (home / "rst" / "index.rst").write_text("Bowls\n=====\n\n.. toctree::\n   :glob:\n\n   bowl-*\n", "utf-8")
        (home / "rst" / "conf.py").write_text('project = "Bowls"\nhtml_theme = "basic"\n', "utf-8")
        command, kept = [path, "-q", "-b", "html", "-d", "doctrees", "rst", "site"], ["doctrees"]

    def clear() -> None:
        for name in ("site", *kept):
            shutil.rmtree(home / name, ignore_errors=True)
            if (home / name).is_file():
                (home / name).unlink()

    return {f"{tool}, all new": Job(command, home, clear), f"{tool}, nothing new": Job(command, home)}


if __name__ == "__main__":
    main()
