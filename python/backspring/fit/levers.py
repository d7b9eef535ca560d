"""What grinding each face moves: both readings, the tip, the edge, pull and margin."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.errors import Error
from backspring.report.result import Reported

# The core's own, with its reasons.
_HAIR_MM = 0.005
SPRING_FACES = ("back", "belly")
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
            "design": self.design.identity(),
            "levers": self.rows_data(),
        }


def levers(design: Design) -> Levers:
    """Tell what 0.1 mm off each face of tang and spring changes in the fit.

    Faces: half_stop, closed, kick, open, back, belly. Figures: both loaded readings, height of the
    closed blade's tip, least gap between edge and spring, peak pull, yield margin. The tip needs
    blade.tip, blade.edge or blade.length, the gap blade.edge.
    """
    return Levers(design, _core.levers(design.core))


def knife_levers(design: Design, now: _core.Design, unknowns: _core.FitUnknowns) -> Levers:
    """Tell the levers of one knife as it stands, its tilt, play and root counted.

    The edge gap, which they move by nothing that matters, stays that of the knife without them.
    """
    return Levers(design, [_counted(row, now, unknowns) for row in _core.levers(now)])


def _counted(row: _core.Lever, now: _core.Design, unknowns: _core.FitUnknowns) -> _core.Lever:
    def figures(steps: int) -> list[float | None]:
        return _figures(_ground(now, row.face.name, steps * _HAIR_MM), unknowns)

    spring = row.face.name in SPRING_FACES
    try:
        near = [figures(steps) for steps in ((0, 1, 2) if spring else (-1, 1))]
    except Error:
        return row
    slopes = [_slope(each) for each in zip(*near, strict=True)]
    names = ("half_stop_mm", "closed_mm", "tip_mm", "peak_pull_n", "yield_margin")
    counted = {
        name: None if slope is None or getattr(row, name) is None else _core.LEVER_DEPTH_MM * slope
        for name, slope in zip(names, slopes, strict=True)
    }
    return _core.Lever(face=row.face, edge_gap_mm=row.edge_gap_mm, **counted)


def _slope(near: Sequence[float | None]) -> float | None:
    """Slope per mm from a step on and one off, or by the parabola through none, one and two off."""
    known = [each for each in near if each is not None]
    if len(known) < len(near):
        return None
    if len(known) == 2:
        return (known[1] - known[0]) / (2.0 * _HAIR_MM)
    return (4.0 * known[1] - known[2] - 3.0 * known[0]) / (2.0 * _HAIR_MM)


def _ground(now: _core.Design, face: str, depth_mm: float) -> _core.Design:
    if face not in SPRING_FACES:
        return _core.take_off(now, _core.FaceDepths(**{f"{face}_mm": depth_mm}))
    return _core.grind(now, _core.Cut(face=_core.GrindFace[face], depth_mm=depth_mm))


def _figures(knife: _core.Design, unknowns: _core.FitUnknowns) -> list[float | None]:
    read, bench = _core.fit_readings(knife, unknowns), _core.bench_figures(knife, unknowns)
    angle, stress_mpa = read.closed_angle_deg, bench.travel_peak_stress_mpa
    return [
        read.loaded.half_stop_mm,
        read.loaded.closed_mm,
        None if angle is None else _core.tip_height_mm(knife, angle),
        bench.peak_pull_n,
        knife.strength.yield_mpa.value / stress_mpa,
    ]
