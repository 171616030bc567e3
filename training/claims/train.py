"""Train the word model of the claim finder: ``python training/claims/train.py`` writes ``claims/model/weights.csv``.

Reads ``sentences.csv`` beside it and the labelled sentences of the tests, all invented for this project.
Logistic regression with L2 (AdaGrad, fixed order: same input, same weights), one for "claims something",
one a kind. ``--check`` prints how well five parts of the sentences are told by the other four.
"""

from __future__ import annotations

import csv
import math
import random
import re
import sys
from collections import Counter, defaultdict
from collections.abc import Sequence
from pathlib import Path

from spoonproof.claims.finding.candidates import ALWAYS, WordModel
from spoonproof.claims.finding.match import classes_in
from spoonproof.claims.scan import tag
from spoonproof.knowledge import Knowledge

ROOT = Path(__file__).resolve().parents[2]
SENTENCES = (Path(__file__).with_name("sentences.csv"), ROOT / "tests" / "claims" / "labelled" / "invented.csv")
WEIGHTS = ROOT / "claims" / "model" / "weights.csv"
PASSES = 15
RATE = 0.2
L2 = 4.0
KIND_L2 = 2.0
LEAST = 4  # examples that a feature must be in
_MARKS = re.compile(r"[^\w%½¼¾' ]")
SMALLEST = 0.03  # a weight below says nothing

Example = tuple[frozenset[str], str]


def main() -> int:
    """Train on everything and write the weights; 0 always."""
    examples = read()
    print(f"{len(examples)} sentences, {sum(kind != 'none' for _, kind in examples)} with a claim")
    if "--check" in sys.argv[1:]:
        check(examples)
        return 0
    claim = fit([features for features, _ in examples], [kind != "none" for _, kind in examples], L2)
    claims = [(frozenset(f for f in features if f[0] == "<"), kind) for features, kind in examples if kind != "none"]
    rows = _rows("claim", claim)
    for kind in sorted({kind for _, kind in claims}):
        weights = fit([classes for classes, _ in claims], [kind == other for _, other in claims], KIND_L2)
        rows += _rows(kind, {name.strip("<>"): weight for name, weight in weights.items()})
    with WEIGHTS.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(("of", "feature", "weight"))
        writer.writerows(rows)
    print(f"{len(rows)} weights in {WEIGHTS.relative_to(ROOT)}, {WEIGHTS.stat().st_size:,} bytes")
    return 0


def read() -> list[Example]:
    """Every labelled sentence, as its features and its kind: once as written, once as a machine writes speech down."""
    lexicon = Knowledge().lexicon
    model = WordModel(lexicon, {})
    kinds: dict[str, str] = {}
    for path in SENTENCES:
        with path.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                kinds.setdefault(" ".join(row["sentence"].split()), row["kind"])
    examples = []
    for sentence, kind in kinds.items():
        for said in (sentence, " ".join(_MARKS.sub(" ", sentence).lower().split())):
            tagged = tag(lexicon, said)
            examples.append((frozenset(model.features(tagged, classes_in(tagged))), kind))
    return examples


def fit(rows: Sequence[frozenset[str]], truths: Sequence[bool], l2: float) -> dict[str, float]:
    """Weights by feature, the bias under ``always``."""
    counts = Counter(feature for row in rows for feature in row)
    kept = [sorted(f for f in row if counts[f] >= LEAST and f != ALWAYS) for row in rows]
    weights: defaultdict[str, float] = defaultdict(float)
    squares: defaultdict[str, float] = defaultdict(lambda: 1e-2)
    bias, bias_squares = 0.0, 1e-6
    order, dice = list(range(len(kept))), random.Random(1)
    for _ in range(PASSES):
        dice.shuffle(order)
        for at in order:
            score = bias + sum(weights[f] for f in kept[at])
            error = 1 / (1 + math.exp(-max(-30.0, min(30.0, score)))) - truths[at]
            bias_squares += error * error
            bias -= RATE * error / math.sqrt(bias_squares)
            for feature in kept[at]:
                slope = error + l2 * weights[feature] / counts[feature]
                squares[feature] += slope * slope
                weights[feature] -= RATE * slope / math.sqrt(squares[feature])
    return {ALWAYS: bias, **weights}


def check(examples: Sequence[Example]) -> None:
    """Print how five parts of the sentences are told by the other four."""
    order = list(range(len(examples) // 2))  # a sentence and its bare form stay together
    random.Random(2).shuffle(order)
    right = 0
    for part in range(5):
        held = {2 * at + form for at in order[part::5] for form in (0, 1)}
        rest = [examples[i] for i in range(len(examples)) if i not in held]
        weights = fit([features for features, _ in rest], [kind != "none" for _, kind in rest], L2)
        for i in held:
            features, kind = examples[i]
            right += (sum(weights.get(f, 0.0) for f in features) > 0) == (kind != "none")
    print(f"told rightly: {right / len(examples):.3f} of {len(examples)}")


def _rows(of: str, weights: dict[str, float]) -> list[tuple[str, str, str]]:
    return [(of, name, f"{weights[name]:.2f}") for name in sorted(weights) if abs(weights[name]) >= SMALLEST]


if __name__ == "__main__":
    raise SystemExit(main())
