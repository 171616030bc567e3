"""Where speech without punctuation breathes: ``python benchmarks/breaths.py [CSV...]`` measures, ``--write`` learns.

Learns ``claims/lexicon/en/breaths.csv`` from our own invented sentences (``tests/claims/labelled``), run together
without capitals and punctuation: how much the words before and after a place speak for a new sentence (logistic
regression over single words and pairs, in tenths of the log-odds). Measures on labelled sentences (columns as in
``claims.py``), twelve run together at a time: claims that are still found, ordinary sentences that get one.
"""

from __future__ import annotations

import argparse
import csv
import math
import random
import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from pathlib import Path

from spoonproof.claims.find import find_claims
from spoonproof.claims.lexicon import Lexicon
from spoonproof.knowledge import Knowledge
from spoonproof.model.text import Document, Passage, Piece

ROOT = Path(__file__).parent.parent
LABELLED = ROOT / "tests" / "claims" / "labelled"
TABLE = ROOT / "claims" / "lexicon" / "en" / "breaths.csv"
TOGETHER = 12
ROUNDS, SEEN, SMALLEST = 6, 3, 3  # a feature counts when seen this often and weighs this many tenths

Feature = tuple[str, str]


def main() -> int:
    """Learn or measure; 0 always."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("files", nargs="*", type=Path)
    parser.add_argument("--write", action="store_true", help="learn the table anew")
    options = parser.parse_args()
    if options.write:
        _write(*learn([text for name in ("wider.csv", "invented.csv") for text, _ in sentences(LABELLED / name)]))
    lexicon = Knowledge().lexicon
    for path in options.files:
        print(f"{path.name}: {measure(sentences(path), lexicon)}")
    return 0


def sentences(path: Path) -> list[tuple[str, bool]]:
    """The sentences of a labelled file as a machine types speech, and whether each makes a claim."""
    groups: dict[str, list[dict[str, str]]] = defaultdict(list)
    with path.open(encoding="utf-8", newline="") as file:
        for number, row in enumerate(csv.DictReader(file)):
            groups[row.get("sentence_id") or str(number)].append(row)
    bare = ((_bare(rows[0]["sentence"]), any(row["kind"] != "none" for row in rows)) for rows in groups.values())
    return [(text, claims) for text, claims in bare if text]


def _bare(text: str) -> str:
    return " ".join(re.sub(r"[^\w%½¼¾' ]", " ", text).lower().split())


def _features(said: Sequence[str], at: int) -> Iterator[Feature]:
    yield "begins", said[at]
    yield "ends", said[at - 1]
    if at + 1 < len(said):
        yield "begins", f"{said[at]} {said[at + 1]}"
    if at > 1:
        yield "ends", f"{said[at - 2]} {said[at - 1]}"


def _run_together(texts: Sequence[str], seed: int) -> tuple[list[str], list[bool]]:
    """The words of all texts, shuffled, and where a text begins."""
    order = list(texts)
    random.Random(seed).shuffle(order)
    words = [text.split() for text in order]
    return [word for text in words for word in text], [at == 0 for text in words for at in range(len(text))]


def learn(texts: Sequence[str]) -> tuple[dict[Feature, int], int]:
    """The weights in tenths, and that of every place."""
    said, _ = _run_together(texts, 0)
    seen = Counter(feature for at in range(1, len(said)) for feature in _features(said, at))
    weights: dict[Feature, float] = defaultdict(float)
    base, rate = -2.0, 0.3
    for turn in range(ROUNDS):
        said, begins = _run_together(texts, turn)
        for at in range(1, len(said)):
            known = [feature for feature in _features(said, at) if seen[feature] >= SEEN]
            odds = base + sum(weights[feature] for feature in known)
            error = begins[at] - 1 / (1 + math.exp(-max(-30.0, min(30.0, odds))))
            base += 0.1 * rate * error
            for feature in known:
                weights[feature] += rate * error - 1e-4 * weights[feature]
        rate *= 0.7
    tenths = {feature: round(10 * weight) for feature, weight in weights.items()}
    return {feature: weight for feature, weight in tenths.items() if abs(weight) >= SMALLEST}, round(10 * base)


def _write(weights: dict[Feature, int], base: int) -> None:
    rows: dict[tuple[str, int], list[str]] = defaultdict(list)
    for (place, said), weight in sorted(weights.items()):
        rows[place, weight].append(said)
    with TABLE.open("w", encoding="utf-8", newline="") as file:
        table = csv.writer(file, lineterminator="\n")
        table.writerow(["class", "id", "terms", "forms", "value"])
        table.writerow(["otherwise", "", "", "", base])
        for (place, weight), words in sorted(rows.items()):
            table.writerow([place, "", ";".join(words), "", weight])
    print(f"{TABLE.name}: {len(weights)} words and pairs in {len(rows)} rows")


def measure(labelled: Sequence[tuple[str, bool]], lexicon: Lexicon) -> str:
    """What is found in run-on speech and what in each sentence alone."""
    order = list(labelled)
    random.Random(1).shuffle(order)
    counts: Counter[str] = Counter()
    for first in range(0, len(order), TOGETHER):
        block = order[first : first + TOGETHER]
        found = find_claims([_passage(" ".join(text for text, _ in block))], lexicon)
        start = 0
        for text, claims in block:
            end = start + len(text)
            inside = any(2 * (min(c.end, end) - max(c.start, start)) >= c.end - c.start for c in found)
            name = "claims" if claims else "ordinary"
            counts[name] += 1
            counts[f"{name} together"] += inside
            counts[f"{name} alone"] += bool(find_claims([_passage(text)], lexicon))
            start = end + 1
    claimed, ordinary = max(1, counts["claims"]), max(1, counts["ordinary"])
    return (
        f"{counts['claims']} claims found {counts['claims together'] / claimed:.3f} run together, "
        f"{counts['claims alone'] / claimed:.3f} alone; {counts['ordinary']} ordinary sentences, alarms "
        f"{counts['ordinary together'] / ordinary:.3f} run together, {counts['ordinary alone'] / ordinary:.3f} alone"
    )


def _passage(text: str) -> Passage:
    return Passage(text, Document("speech", text), (Piece(0, 0, len(text)),))


if __name__ == "__main__":
    raise SystemExit(main())
