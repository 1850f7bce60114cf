"""Finding: one requirement held against the cart's own figures."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any, Literal

from curbwright.figures import Figure, roots
from curbwright.requirements.requirement import SEVERITIES, Requirement

Verdict = Literal["pass", "fail", "cannot tell", "not applicable"]
_ORDER: dict[str, int] = {"fail": 0, "cannot tell": 1, "pass": 2, "not applicable": 3}


@dataclass(frozen=True)
class Finding:
    """A verdict with both sides' figures.

    ``margin`` is the share of the limit that is left over (negative: missing); where the limit is nothing it
    is the plain difference. ``missing`` names the build-file fields that would settle a "cannot tell".
    """

    id: str
    requirement: Requirement
    verdict: Verdict
    provided: Figure | None
    required: Figure | None
    margin: float | None
    missing: tuple[str, ...] = ()
    reason: str = ""

    @property
    def rank(self) -> tuple[int, int, float]:
        """Failures first, then what cannot be told, then passes, the tightest first."""
        margin = self.margin if self.margin is not None else math.inf
        return _ORDER[self.verdict], SEVERITIES[self.requirement.severity], margin

    @property
    def fields(self) -> set[str]:
        """The build-file fields that this finding depends on."""
        sides = [side for side in (self.provided, self.required) if side is not None]
        return set(self.missing).union(*map(roots, sides)) if sides else set(self.missing)

    def as_json(self) -> dict[str, Any]:
        """Return the finding as plain data; values are SI."""
        row = self.requirement
        return {
            "id": self.id,
            "verdict": self.verdict,
            "required": None if self.required is None else float(self.required),
            "provided": None if self.provided is None else float(self.provided),
            "unit": self.provided.unit if self.provided is not None else "",
            "margin": self.margin,
            "clause": row.clause,
            "edition": row.edition,
            "how": row.how,
            "severity": row.severity,
            "says": row.says,
            "figure": self.provided.id if self.provided is not None else row.quantity,
            "limit": self.required.id if self.required is not None else row.limit,
            "missing": list(self.missing),
            "reason": self.reason,
            "source": row.source,
        }
