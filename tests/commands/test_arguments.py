"""What is said when the words after a command can't be used."""

from __future__ import annotations

import pytest

from spoonproof.cli import main


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["check", "--fxi"], "did you mean --fix?"),
        (["check", "--levle", "error"], "did you mean --level?"),
        (["new"], "what is missing: channel|recipe, NAME"),
        (["new", "chanel", "x"], "channel|recipe can't be 'chanel'; it is one of channel, recipe"),
    ],
)
def test_a_mistyped_word_is_told_with_what_was_meant(
    words: list[str], told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as left:
        raise SystemExit(main(words))
    assert left.value.code == 2
    assert told in capsys.readouterr().err
