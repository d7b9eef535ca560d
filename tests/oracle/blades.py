"""A spring with any number of blades, in plain numbers: mm, N, MPa, degrees.

Read from the shape of the design file, `[[blades]]` among it. Independent of the package under
test. A blade at the rear has its own stations, from the pin next to it, positive towards its pivot.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from .slow_beam import pair
from .slow_tang import TurnedTang, outline

Array = NDArray[np.float64]
Flags = NDArray[np.bool_]


@dataclass(frozen=True)
class Hole:
    """A round hole across the spring, its centre so far from the mid-line."""

    station_mm: float
    diameter_mm: float
    offset_mm: float = 0.0


@dataclass(frozen=True)
class PlainSpring:
    """The beam and its hold: "two-pins", "middle-pin" (turns freely on it) or "clamped"."""

    thickness: tuple[tuple[float, float], ...]
    width_mm: float
    youngs_modulus_mpa: float
    poisson: float
    support: str = "two-pins"
    span_mm: float = 0.0
    holes: tuple[Hole, ...] = ()


@dataclass(frozen=True)
class PlainBlade:
    """A tang and where it bears: `tang` holds the numbers of the design file's table."""

    name: str
    tang: Mapping[str, Any]
    pad_mm: tuple[float, float]
    preload_mm: float
    dial_mm: float
    rear: bool = False

    @property
    def pivot_mm(self) -> float:
        return float(self.tang["pivot"])

    @property
    def positions_deg(self) -> dict[str, float]:
        """Nominal angle of every position it has."""
        half = {"half_stop": 90.0} if self.tang.get("half_stop") is not None else {}
        return {"open": 180.0, **half, "closed": 0.0}

    def turned(self, blade_angle_deg: float) -> TurnedTang:
        pieces = outline({"tang": self.tang, "spring": {"pad": self.pad_mm}})
        return TurnedTang(pieces, self.pivot_mm, blade_angle_deg)

    def free_face_mm(self, x: Array) -> Array:
        """The pad's face with all pins in and nothing on it, from the pivot's height."""
        return np.asarray(float(self.tang["open"]) - self.preload_mm * x / self.pivot_mm)


@dataclass(frozen=True)
class Joint:
    """One spring and its blades."""

    spring: PlainSpring
    blades: tuple[PlainBlade, ...]

    @property
    def names(self) -> list[str]:
        return [blade.name for blade in self.blades]

    def station_mm(self, blade: PlainBlade, own_mm: Array) -> Array:
        """Station of the whole spring at a blade's own stations (and the other way round)."""
        return np.asarray(-self.spring.span_mm - own_mm if blade.rear else own_mm, dtype=float)


def read(design: Mapping[str, Any]) -> Joint:
    """A design in the shape of the file, its steel given by Young's modulus and Poisson's ratio."""
    spring = design["spring"]
    blades = [_blade(design, design.get("blade", {}).get("name", "main"), spring["pad"])]
    for other in design.get("blades", []):
        blades.append(_blade(other, other["name"], other["pad"]))
    span = float(spring["rear_pin"]) if spring["support"] == "two-pins" else 0.0
    places = [0.0, -span] if span else [0.0]
    sizes, offsets = pair(spring["pin_hole"]), pair(spring.get("pin_hole_offset", 0.0))
    holes = [Hole(*each) for each in zip(places, sizes, offsets, strict=False)]
    rows = spring["thickness"]
    if isinstance(rows, (int, float)):
        rows = [(0.0, rows)]
    return Joint(
        PlainSpring(
            thickness=tuple((float(x), float(t)) for x, t in rows),
            width_mm=float(spring["width"]),
            youngs_modulus_mpa=float(spring["youngs_modulus"]),
            poisson=float(spring["poisson"]),
            support=str(spring["support"]),
            span_mm=span,
            holes=tuple(holes),
        ),
        tuple(blades),
    )


def _blade(tables: Mapping[str, Any], name: str, pad: Any) -> PlainBlade:
    return PlainBlade(
        name=name,
        tang=tables["tang"],
        pad_mm=pair(pad),
        preload_mm=float(tables["fit"]["preload"]),
        dial_mm=float(tables["fit"]["dial"]),
        rear=tables.get("end") == "rear",
    )
