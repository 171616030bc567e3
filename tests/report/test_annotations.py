"""Workflow commands: everything escaped that would end a property or a message."""

from dataclasses import replace

from spoonproof.model.text import Document
from spoonproof.report.annotations import workflow_commands
from tests.report.findings import TEXT, honey


def test_a_command_is_one_line_with_everything_escaped() -> None:
    (line,) = workflow_commands([honey(Document("recipes/a,b:c.md", TEXT))])
    assert line.startswith(
        "::error file=recipes/a%2Cb%3Ac.md,line=3,endLine=3,col=12,endColumn=17,title=food-not-yet::"
    )
    assert "100 %25: not yet%0Anot even cooked%0ATo put it right: Leave it out." in line
    assert "\n" not in line


def test_nothing_that_steers_a_log_comes_through_and_the_folder_stands_before() -> None:
    nasty = replace(honey(), message="\x1b[2J::error::\r\u202e100 %")
    (line,) = workflow_commands([nasty], "blog/")
    assert line.startswith("::error file=blog/recipes/a b.md,")
    assert "\x1b" not in line and "\u202e" not in line and "\r" not in line
    assert "\\x1b[2J::error::%0A" in line
