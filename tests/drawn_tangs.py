"""Tangs of any shape for the tests, and the numbers to compare them by; all are invented."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import numpy.typing as npt

import backspring as bs
from backspring import _core

CORNERS = ("corner_radius", "front", "round_end")
# Egg-shaped behind, a flat at 90 deg of blade angle, and a closed side that is a slow curve.
EGG = [
    [6.0, 4.5], [-1.5, 4.5, 0.2], [-4.4, 2.2], [-4.4, -1.6, 0.2], [-2.0, -4.4, 0.05], [9.0, -4.8],
]  # fmt: skip


def rows_of(tang: _core.Tang, reach_mm: float = 12.0) -> list[list[float]]:
    """Write a usual tang's outline as rows, without its kick."""
    rows: list[list[float]] = []
    for arc in _core.make_outline(tang, reach_mm).body:
        for normal in (arc.from_rad, arc.to_rad)[0 if arc.radius_mm else 1 :]:
            u = arc.u_mm + arc.radius_mm * math.cos(normal)
            w = arc.w_mm + arc.radius_mm * math.sin(normal)
            bulge = math.tan(0.25 * (arc.to_rad - arc.from_rad)) if normal == arc.from_rad else 0.0
            rows.append([u, w, bulge] if arc.radius_mm and bulge else [u, w])
    following = [*rows[1:], rows[0]]
    return [
        row
        for row, then in zip(rows, following, strict=True)
        if math.dist(row[:2], then[:2]) > 1e-9
    ]


def restated(design: bs.Design, rows: list[list[float]] | None = None) -> bs.Design:
    """Return a design with its tang as an outline and nothing else said of its faces."""
    rows = rows_of(design.core.tang) if rows is None else rows
    gone = {f"tang.{key}": None for key in ("open", "half_stop", "closed", *CORNERS)}
    return design.replace(**gone, **{"tang.outline": rows})


def numbers(value: Any) -> list[float]:
    """List every number of plain data in turn."""
    if isinstance(value, dict):
        return [n for key in sorted(value) if key != "design" for n in numbers(value[key])]
    if isinstance(value, list):
        return [n for each in value for n in numbers(each)]
    return [float(value)] if isinstance(value, int | float) else []


def reaches(design: bs.Design) -> npt.NDArray[np.float64]:
    """Tell how far a tang reaches between its open and its closed face, by support lines."""
    body = _core.make_outline(design.core.tang, 12.0).body
    normals = np.linspace(0.5 * math.pi, 1.5 * math.pi, 181)
    farthest = np.full(normals.shape, -np.inf)
    for arc in body:
        at = np.clip(normals, arc.from_rad, arc.to_rad)
        u, w = arc.u_mm + arc.radius_mm * np.cos(at), arc.w_mm + arc.radius_mm * np.sin(at)
        farthest = np.maximum(farthest, np.cos(normals) * u + np.sin(normals) * w)
    return farthest


def checked(design: bs.Design) -> list[float]:
    """List the numbers of a check but for what follows from grinding, which leaves an edge.

    Of the budget, where the greater of two shares that are alike is left to rounding, neither.
    """
    found = bs.check(design).to_dict()
    blades = found.get("blades", {"": found})
    return numbers([
        {key: each for key, each in blade.items() if key not in ("along", "budget")}
        for blade in blades.values()
    ])  # fmt: skip
