"""What our own labelled sentences gave is not silenced by a new term or veto: a phrase put into the lexicon takes its
words' older senses along, and whoever adds it is told which sentences that costs.

``labelled/unheard.csv`` holds what is not heard, or not as its kind, and is known not to be. Where this test names a
sentence, mend the term or rule that took it; where the old find was wrong, put the row there. Rows that are heard by
now may go whenever somebody likes: ``python tests/claims/test_senses_kept.py`` writes the file anew."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from pathlib import Path

from finding_kit import claims

LABELLED = Path(__file__).parent / "labelled"
UNHEARD = LABELLED / "unheard.csv"


def _unheard() -> Iterator[tuple[str, str]]:
    """Sentence and kind of each labelled claim that is not found as its kind."""
    for name in ("invented.csv", "wider.csv"):
        with (LABELLED / name).open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                kind = {"wellbeing": "general-benefit"}.get(row["kind"], row["kind"])
                if kind != "none" and all(claim.kind != kind for claim in claims(row["sentence"])):
                    yield row["sentence"], kind


def test_no_sense_is_silenced() -> None:
    with UNHEARD.open(encoding="utf-8", newline="") as file:
        known = {(row["sentence"], row["kind"]) for row in csv.DictReader(file)}
    silenced = [f"{kind}: {sentence}" for sentence, kind in _unheard() if (sentence, kind) not in known]
    assert not silenced, "\n".join(["no longer heard:", *silenced])


if __name__ == "__main__":
    with UNHEARD.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(("sentence", "kind"))
        writer.writerows(dict.fromkeys(_unheard()))
