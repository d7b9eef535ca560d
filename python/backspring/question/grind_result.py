"""What grinding comes to: rows of a table, and the spring after it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal, overload

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.design.design import Design
from backspring.question.targets import TargetResult, target_results
from backspring.report.result import Reported

Face = Literal["back", "belly", "pad"]
Column = npt.NDArray[np.float64]
ROW = (
    "removed_mm",
    "preload_mm",
    "peak_pull_n",
    "peak_torque_nmm",
    "travel_peak_stress_mpa",
    "travel_peak_stress_station_mm",
    "yield_margin",
    "yield_margin_low",
    "reading_loaded_half_stop_mm",
    "reading_loaded_closed_mm",
    "stiffness_n_per_mm",
)


class Rows(Reported):
    """Rows by number, columns by name; the first row is the spring as it was."""

    _report_by = "grind:grind_report"

    design: Design
    face: Face
    region_mm: tuple[float, float]
    rows: tuple[_core.GrindRow, ...]
    ground: Design

    def __len__(self) -> int:
        return len(self.rows)

    def __iter__(self) -> Iterator[_core.GrindRow]:
        return iter(self.rows)

    @overload
    def __getitem__(self, place: int) -> _core.GrindRow: ...
    @overload
    def __getitem__(self, place: str) -> Column: ...
    def __getitem__(self, place: int | str) -> _core.GrindRow | Column:
        if isinstance(place, int):
            return self.rows[place]
        if place not in ROW:
            raise KeyError(place)
        # None becomes NaN, which plots leave out.
        return np.array([getattr(row, place) for row in self.rows], dtype=np.float64)

    @property
    def targets(self) -> tuple[TargetResult, ...]:
        """Targets of the ground spring, each met or missed."""
        return target_results(self.rows[-1].targets)

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether the ground spring meets all its targets."""
        return "pass" if all(target.met for target in self.targets) else "fail"

    @property
    def removed_mm(self) -> float:
        """Greatest depth taken off in all."""
        return self.rows[-1].removed_mm

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; every name carries its unit."""
        return {
            "design": self.design.identity(),
            "face": self.face,
            "region_mm": list(self.region_mm),
            "removed_mm": self.removed_mm,
            "rows": [row_data(row) for row in self.rows],
            "targets": [target._asdict() for target in self.targets],
            "ground": {
                "sha256": self.ground.sha256,
                "thickness_mm": [
                    [station.x_mm, station.thickness_mm]
                    for station in self.ground.core.spring.thickness
                ],
            },
        }


@dataclass(frozen=True, repr=False)
class GrindTable(Rows):
    """A table against depth; `ground` is the design after the last row."""

    design: Design
    face: Face
    region_mm: tuple[float, float]
    rows: tuple[_core.GrindRow, ...]
    ground: Design


class Flush(Rows):
    """Flush grinding: a row for the spring as it was, then one after each pass.

    `proud_mm` is the most that stands proud at each row, below 0 when all of the back is low.
    `before` holds station and proud height as it stood, `removed` station and depth in all.
    """

    face: Face = "back"

    def __init__(self, design: Design, result: _core.Flush, ground: Design) -> None:
        self.design, self.result, self.ground = design, result, ground
        self.region_mm = (0.0, max(each.x_mm for each in result.before))
        self.rows = (result.at_start, *(each.after for each in result.passes))
        self.proud_mm = (*(each.proud_mm for each in result.passes), result.left_proud_mm)

    @property
    def passes(self) -> int:
        """Passes it takes; none when nothing is proud."""
        return len(self.result.passes)

    @property
    def before(self) -> tuple[Column, Column]:
        """Stations, and the height of the loaded back above the liners there [mm]."""
        return _columns(self.result.before)

    @property
    def removed(self) -> tuple[Column, Column]:
        """Stations, and the depth taken off there [mm]; empty when nothing is proud."""
        return _columns(self.result.removed)

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; every name carries its unit."""
        data = super().to_dict()
        for row, proud_mm in zip(data["rows"], self.proud_mm, strict=True):
            row["proud_mm"] = proud_mm
        for name, (station, depth) in {"before": self.before, "removed": self.removed}.items():
            data[name] = {"station_mm": station.tolist(), f"{_HELD[name]}_mm": depth.tolist()}
        return data | {"passes": self.passes}


def row_data(row: _core.GrindRow) -> dict[str, Any]:
    """One row as plain data, with the names of the targets that it misses."""
    missed = [target.name for target in row.targets if not target.met]
    return {name: getattr(row, name) for name in ROW} | {"missed": missed}


_HELD = {"before": "proud", "removed": "depth"}


def _columns(profile: list[_core.Station]) -> tuple[Column, Column]:
    station = np.array([each.x_mm for each in profile], dtype=np.float64)
    return station, np.array([each.thickness_mm for each in profile], dtype=np.float64)
