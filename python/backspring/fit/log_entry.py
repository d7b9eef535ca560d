"""What the log of a knife holds, and within what limits."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from backspring import _core
from backspring.fit.result import FACES
from backspring.report.display import Shown, reading, text
from backspring.units import System

# Column, least and greatest in the core's units; the same where a value is given and where it is
# read.
LIMITS = {
    "half_stop_mm": (-3.0, 3.0),
    "closed_mm": (-3.0, 3.0),
    "repeatability_mm": (0.0, 0.2),
    "depth_mm": (0.0, 3.0),
    "from_mm": (-500.0, 500.0),
    "to_mm": (-500.0, 500.0),
    "pull_n": (0.01, 1000.0),
    "closing_pull_n": (0.01, 1000.0),
    "start_pull_n": (0.01, 1000.0),
    "tip_mm": (-50.0, 50.0),
    "gap_mm": (0.0, 50.0),
    "moved_mm": (0.0, 10.0),
    "thickness_mm": (0.05, 50.0),
    "hardness_hrc": (20.0, 70.0),
    "weight_n": (0.01, 2000.0),
    "station_mm": (-500.0, 500.0),
}
_UNITS = {"mm": "mm", "n": "N", "hrc": "HRC"}
SPRING_FACES = ("back", "belly")
FigureKind = Literal[
    "pull_n",
    "closing_pull_n",
    "start_pull_n",
    "moved_mm",
    "thickness_mm",
    "hardness_hrc",
    "tip_mm",
    "gap_mm",
]
FIGURES: tuple[FigureKind, ...] = get_args(FigureKind)
PULLS: tuple[FigureKind, ...] = ("pull_n", "closing_pull_n", "start_pull_n")
# Those that are taken at a station.
PLACED: tuple[FigureKind, ...] = ("moved_mm", "thickness_mm", "gap_mm")
_NAMES: dict[str, tuple[str, Shown]] = {
    "pull_n": ("pull to open", "force"),
    "closing_pull_n": ("pull to close", "force"),
    "start_pull_n": ("pull to start it", "force"),
    "moved_mm": ("moved", "reading"),
    "thickness_mm": ("thickness", "reading"),
    "hardness_hrc": ("hardness", "hardness"),
    "tip_mm": ("tip over the rim", "length"),
    "gap_mm": ("gap under the edge", "reading"),
}


@dataclass(frozen=True, slots=True)
class MeasuredEntry:
    """What the dial showed [mm]; at one position or at both.

    `blade` is the name of one of several, here as in other entries; "" on a spring with one.
    """

    state: str
    half_stop_mm: float | None
    closed_mm: float | None
    repeatability_mm: float
    blade: str = ""


@dataclass(frozen=True, slots=True)
class GroundEntry:
    """What came off a face [mm]; a depth that nobody measured is None.

    `from_mm` and `to_mm` are the stretch of a back or belly, None for the whole.
    """

    face: str
    depth_mm: float | None
    from_mm: float | None = None
    to_mm: float | None = None
    blade: str = ""


@dataclass(frozen=True, slots=True)
class FigureEntry:
    """Another measurement, in the unit of its kind's name.

    A movement has the weight hung and its station, a thickness and a gap their station.
    """

    kind: FigureKind
    value: float
    station_mm: float | None = None
    weight_n: float | None = None
    blade: str = ""


Entry = MeasuredEntry | GroundEntry | FigureEntry


def broken_limit(column: str, value: float) -> str | None:
    """Return the rule that a value breaks, or None."""
    low, high = LIMITS[column]
    if low <= value <= high:
        return None
    unit = _UNITS[column.rpartition("_")[2]]
    return f"must be from {low:g} {unit} to {high:g} {unit}, got {value:.10g} {unit}"


def faces_of(tang: _core.Tang) -> list[str]:
    """Name the faces that this tang has."""
    without = {"half_stop": tang.half_stop_mm is None, "kick": tang.kick is None}
    return [face for face in FACES if not without.get(face, False)]


def places_of(tang: _core.Tang) -> list[str]:
    """Name all that can be ground on this knife: the tang's faces, and the spring's two."""
    return [*faces_of(tang), *SPRING_FACES]


def describe(entry: Entry, units: System) -> str:
    """Say what an entry holds."""
    whose = f"{entry.blade}: " if entry.blade else ""
    return whose + _described(entry, units)


def _described(entry: Entry, units: System) -> str:
    if isinstance(entry, GroundEntry):
        depth = "depth not measured"
        if entry.depth_mm is not None:
            depth = text(entry.depth_mm, "reading", units)
        return f"ground {entry.face.replace('_', '-')}, {depth}{_stretch(entry, units)}"
    if isinstance(entry, FigureEntry):
        name, kind = _NAMES[entry.kind]
        return f"measured {name} {text(entry.value, kind, units)}{_where(entry, units)}"
    shown = [
        f"{name} {_read(value, units)}"
        for name, value in (("half-stop", entry.half_stop_mm), ("closed", entry.closed_mm))
        if value is not None
    ]
    return f"measured {entry.state}, {', '.join(shown)}"


def _read(value_mm: float, units: System) -> str:
    """Write a reading with its side and its unit: a lost sign shows."""
    if reading(value_mm, units) == "flush":
        return "flush"
    return f"{text(abs(value_mm), 'reading', units)} {'proud' if value_mm > 0 else 'low'}"


def _stretch(entry: GroundEntry, units: System) -> str:
    if entry.from_mm is None:
        return ""
    ends = (text(each, "length", units) for each in (entry.from_mm, entry.to_mm))
    return f", from {' to '.join(ends)}"


def _where(entry: FigureEntry, units: System) -> str:
    weight = ""
    if entry.weight_n is not None:
        weight = f" under {text(entry.weight_n, 'force', units)}"
    if entry.station_mm is None:
        return weight
    return f"{weight} at {text(entry.station_mm, 'length', units)}"
