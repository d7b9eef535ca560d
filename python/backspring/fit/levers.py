"""What grinding each face moves: both readings, the tip, the edge, pull and margin."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.report.result import Reported

FIGURES = ("half_stop_mm", "closed_mm", "tip_mm", "edge_gap_mm", "peak_pull_n", "yield_margin")


@dataclass(frozen=True, repr=False)
class Levers(Reported):
    """Changes of a fit for 0.1 mm off each face; None where there is no such number."""

    _report_by = "levers:levers_report"

    design: Design
    rows: list[_core.Lever]

    def __getitem__(self, face: str) -> _core.Lever:
        """Return the row of a face: half_stop, closed, kick, open, back or belly."""
        for row in self.rows:
            if row.face.name == face:
                return row
        raise KeyError(face)

    def rows_data(self) -> list[dict[str, Any]]:
        """Rows as plain data."""
        return [
            {
                "face": row.face.name,
                "per_mm": _core.LEVER_DEPTH_MM,
                **{name: getattr(row, name) for name in FIGURES},
            }
            for row in self.rows
        ]

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        return {
            "design": {"name": self.design.name, "sha256": self.design.sha256},
            "levers": self.rows_data(),
        }


def levers(design: Design) -> Levers:
    """Tell what 0.1 mm off each face of tang and spring changes in the fit.

    Faces: half_stop, closed, kick, open, back, belly. Figures: both loaded readings, height of the
    closed blade's tip, least gap between edge and spring, peak pull, yield margin. The tip needs
    blade.tip, blade.edge or blade.length, the gap blade.edge.
    """
    return Levers(design, _core.levers(design.core))
