"""How well claims are found: ``python benchmarks/claims.py [CSV]``.

Without a CSV: the project's own invented sentences (``tests/claims/labelled/invented.csv``). A CSV of
others has the columns ``sentence``, ``kind`` ("none" for ordinary talk), ``subject`` and ``relates_to``
(or ``effect_or_nutrient``), one row a claim; ``selection`` (random, picked) where precision should count
on the random rows alone; ``sentence_id`` where a sentence has several rows. Intervals are Wilson's, 95 %.
"""

from __future__ import annotations

import csv
import gc
import math
import re
import sys
import time
from collections import Counter, defaultdict
from pathlib import Path

from spoonproof.claims.find import analyser, find_claims
from spoonproof.claims.lexicon import Lexicon
from spoonproof.hearing import hear
from spoonproof.knowledge import Knowledge
from spoonproof.model.claim import Claim, JudgedClaim
from spoonproof.model.plural import singular
from spoonproof.model.text import Document, Passage, Piece, Span
from spoonproof.reading.markdown import read_prose

ROOT = Path(__file__).parent.parent
OWN = ROOT / "tests" / "claims" / "labelled" / "invented.csv"
RUNS = 7
OTHER_NAMES = {"wellbeing": "general-benefit"}


def main() -> int:
    """Measure and print; 0 always, numbers are for reading."""
    path = Path(sys.argv[1]) if len(sys.argv) > 1 else OWN
    groups: dict[str, list[dict[str, str]]] = defaultdict(list)
    with path.open(encoding="utf-8", newline="") as file:
        for number, row in enumerate(csv.DictReader(file)):
            groups[row.get("sentence_id") or str(number)].append(row)
    gold = list(groups.values())
    knowledge = Knowledge()
    lexicon = knowledge.lexicon
    texts = [rows[0]["sentence"] for rows in gold]
    print(f"{path.name}: {len(gold)} sentences")
    _report("as written", gold, [find(lexicon, text) for text in texts])
    bare = [re.sub(r"[^\w%½¼¾' ]", " ", text).lower() for text in texts]
    _report("bare", gold, [find(lexicon, text) for text in bare])
    _report("with the dangers that listen hears", gold, [heard(knowledge, text) for text in texts])
    _speed(lexicon, texts)
    return 0


def find(lexicon: Lexicon, text: str) -> list[Claim]:
    """The claims of one sentence on its own."""
    return find_claims([_passage(" ".join(text.split()))], lexicon)


def heard(knowledge: Knowledge, text: str) -> list[Claim]:
    """The claims of one sentence, and what it says that endangers a baby, unjudged."""
    said = hear([_passage(" ".join(text.split()))], knowledge, _unjudged, apart=True)
    return [one.claim for one in said]


def _unjudged(claim: Claim) -> JudgedClaim:
    return JudgedClaim(claim=claim, truth="unlisted", allowed=(), advice="source-it", harm=0, why="", sources=())


def _passage(text: str) -> Passage:
    return Passage(text, Document("sentence", text), (Piece(0, 0, len(text)),))


def _report(name: str, gold: list[list[dict[str, str]]], found: list[list[Claim]]) -> None:
    hits = missed = kinds = pairs = claims = true = false = quiet = 0
    by_kind: Counter[str] = Counter()
    hit_kind: Counter[str] = Counter()
    for rows, got in zip(gold, found, strict=True):
        wanted = [row for row in rows if row["kind"] != "none"]
        hits += bool(wanted and got)
        missed += bool(wanted and not got)
        if rows[0].get("selection", "random") == "random":
            true += bool(wanted and got)
            false += bool(got and not wanted)
            quiet += bool(not got and not wanted)
        for row in wanted:
            claims += 1
            kind = OTHER_NAMES.get(row["kind"], row["kind"].replace("_", "-"))
            by_kind[kind] += 1
            hit_kind[kind] += bool(got)
            kinds += any(claim.kind == kind for claim in got)
            pairs += any(_pair(claim, row) for claim in got)
    precision, recall = true / max(1, true + false), hits / max(1, hits + missed)
    f1 = 2 * precision * recall / max(1e-9, precision + recall)
    print(f"{name}: F1 {f1:.3f}, precision {_share(true, true + false)}, recall {_share(hits, hits + missed)}")
    print(f"  false alarms {_share(false, false + quiet)}, kind {_share(kinds, claims)}, pair {_share(pairs, claims)}")
    print(
        "  found by kind: " + ", ".join(f"{kind} {_share(hit_kind[kind], by_kind[kind])}" for kind in sorted(by_kind))
    )


def _pair(claim: Claim, row: dict[str, str]) -> bool:
    about = row["subject"] if "pronoun" not in row.get("note", "") else ""
    relates = row.get("relates_to") or row.get("effect_or_nutrient") or ""
    return _touch(" ".join(claim.subjects), about) and _touch(claim.relates_to or "", relates)


def _touch(said: str, wanted: str) -> bool:
    stems = [{singular(w)[:5] for w in re.findall(r"[a-z0-9]+", text.lower()) if len(w) > 2} for text in (said, wanted)]
    return not stems[1] or bool(stems[0] & stems[1])


def _share(part: int, whole: int) -> str:
    """A share with its 95 % interval."""
    if not whole:
        return "- (none)"
    z, share = 1.96, part / whole
    middle = (share + z * z / (2 * whole)) / (1 + z * z / whole)
    half = z * math.sqrt(share * (1 - share) / whole + z * z / (4 * whole * whole)) / (1 + z * z / whole)
    return f"{share:.3f} [{max(0.0, middle - half):.3f}, {min(1.0, middle + half):.3f}] of {whole}"


def _speed(lexicon: Lexicon, texts: list[str]) -> None:
    """The quickest of some runs, in processor time: a busy machine only ever takes longer."""
    gc.set_threshold(200_000, 20, 100)  # as our commands have it
    _words_a_second("these sentences", lexicon, [_passage(text) for text in texts])
    pages = [path.read_text("utf-8") for path in sorted((ROOT / "guide").glob("*.md"))]
    pages += [path.read_text("utf-8").split("---\n", 2)[2] for path in sorted((ROOT / "recipes").glob("*.md"))]
    prose = [passage for page in pages for passage in read_prose(Document("page.md", page), Span(0, len(page)))[0]]
    _words_a_second("ordinary prose, our guide and stories", lexicon, prose)


def _words_a_second(name: str, lexicon: Lexicon, passages: list[Passage]) -> None:
    words = sum(len(passage.text.split()) for passage in passages)
    memory = analyser(lexicon)
    for kept in (False, True):
        took = []
        for _ in range(RUNS):
            if not kept:
                memory.forget()
            start = time.process_time()
            found = find_claims(passages, lexicon)
            took.append(time.process_time() - start)
        said = f"{len(found) / words * 100:.1f} claims in 100 words, {'seen before' if kept else 'new'}"
        print(f"{name} ({said}): {words / min(took):,.0f} words a second")


if __name__ == "__main__":
    raise SystemExit(main())
