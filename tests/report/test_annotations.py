"""Workflow commands: everything escaped that would end a property or a message."""

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
