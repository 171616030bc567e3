"""Which kinds, markets and advices the register covers: the table with its holes."""

from __future__ import annotations

from collections import Counter
from typing import get_args

from spoonproof.claims.entries import Entry
from spoonproof.claims.register import MARKETS, Register
from spoonproof.model.claim import Advice, Kind, Market

ADVICES: tuple[str, ...] = get_args(Advice)


def advices_of(entry: Entry, market: Market) -> frozenset[Advice]:
    """The advices an entry can lead to: by its truth in editorial speech, by its answer where a market binds."""
    found: set[Advice] = set()
    match entry.truth:
        case "true":
            found |= {"add"} if entry.add else {"keep"}
            if entry.condition is not None:
                found |= {"soften", "source-it"}
        case "computed":
            found |= {"keep", "source-it", "cut-untrue"}
            if entry.lesser is not None:
                found.add("soften")
        case "overstated":
            found.add("soften")
        case "false":
            found.add("cut-untrue")
        case "unproven":
            found |= {"soften"} if entry.wording or "disease" not in entry.kinds else {"source-it", "cut-untrue"}
        case None:
            pass
    for allowance in entry.allowed:
        if market in allowance.markets:
            if allowance.answer == "no":
                found.add("cut-not-allowed")
            elif allowance.answer == "with-wording":
                found.add("soften")
            else:
                found.add("keep")
    return frozenset(found)


def coverage(register: Register) -> dict[tuple[Kind, Market, Advice], int]:
    """Entries by kind, market and advice; an entry with no kind counts for all."""
    counted: Counter[tuple[Kind, Market, Advice]] = Counter()
    for entry in register.entries:
        for kind in entry.kinds or get_args(Kind):
            for market in MARKETS:
                for advice in advices_of(entry, market):
                    counted[kind, market, advice] += 1
    return dict(counted)


def table(register: Register) -> str:
    """The coverage as text: kinds down, advices across, one block a market; a hole is a dash."""
    counted = coverage(register)
    wide = max(len(kind) for kind in get_args(Kind))
    lines: list[str] = [f"{len(register.entries)} entries, {len(register.wordings)} authorised wordings"]
    for market in MARKETS:
        lines += ["", f"{market:<{wide}}  " + "  ".join(f"{advice:>15}" for advice in ADVICES)]
        for kind in get_args(Kind):
            cells = (counted.get((kind, market, advice), 0) for advice in get_args(Advice))
            lines.append(f"{kind:<{wide}}  " + "  ".join(f"{cell or '-':>15}" for cell in cells))
    return "\n".join(lines)
