"""A truth with its reasons, while it is being worked out."""

from __future__ import annotations

from spoonproof.claims.entries import Entry
from spoonproof.model.claim import Truth
from spoonproof.model.finding import SourceRef
from spoonproof.model.record import dataclass, field


@dataclass(slots=True)
class Verdict:
    """``evidence``: the register says it is not shown (rather than that an input is missing). ``warning``: the
    entry that keeps its food from a child of this age."""

    truth: Truth
    why: str
    entry: Entry | None = None
    refs: tuple[SourceRef, ...] = ()
    wording: str | None = None
    add: str = ""
    harm: int | None = None
    evidence: bool = False
    stanced: bool = False
    warning: Entry | None = None
    steps: list[str] = field(default_factory=list)

    def not_kept(self, truth: Truth, why: str, step: str) -> None:
        """Take a "true" back to ``truth``, with nothing to say in its place; ``step`` says why in the trail."""
        self.truth, self.why, self.wording, self.add = truth, why, None, ""
        self.steps.append(f"{step}: not kept")


def denied(verdict: Verdict, polarity: str, kind: str) -> Verdict:
    """The truth of taking the statement back. Evidence that is lacking makes a refutation right,
    but leaves a flat denial to be softened; a missing input leaves both open."""
    before = verdict.truth
    if before in ("false", "overstated"):
        verdict.truth = "true"
        verdict.wording, verdict.add = None, ""
    elif before == "true":
        verdict.truth = "false"
        verdict.wording = None
    elif before == "unproven" and verdict.evidence and (polarity == "refutes" or kind == "general-benefit"):
        verdict.truth = "true"
        verdict.wording = None
    elif before == "unproven" and verdict.evidence:
        verdict.wording = "say that it has not been shown"
    says = "takes it back" if polarity == "refutes" else "denies it"
    verdict.steps.append(f"the sentence {says}: {before} becomes {verdict.truth}")
    if before == "true":
        verdict.why = f"It denies what holds. {verdict.why}"
    return verdict
