"""What is asked of a new joint: the knife's measures, the spring's steel, the pull, and bounds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any, Literal, get_args

from backspring import steel as steels
from backspring.design.arguments import quantity
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid, near_match
from backspring.new_joint.rounding import band_n
from backspring.units import Kind, System

ClosedFace = Literal["either", "square", "kick"]
Bounds = Mapping[str, tuple[float, float]]

# Least and greatest of what a maker may bound [mm]: common practice, no source.
BOUNDS: Bounds = {
    "pivot_inset": (4.0, 9.0),
    "pivot": (12.0, 70.0),
    "rear_pin": (12.0, 70.0),
    "thickness": (2.2, 6.5),
    "end_thickness": (1.2, 4.5),
    "open": (3.4, 6.5),
    "preload": (0.3, 1.3),
    "rise": (0.8, 1.6),
    "edge_depth": (1.2, 6.0),
}
# Rod that spring pins are cut from.
PINS_MM: Mapping[System, tuple[float, ...]] = {
    "mm": (1.5, 2.0, 2.5, 3.0),
    "in": (1.5875, 1.984375, 2.38125, 3.175),
}
MEANINGS: Mapping[str, str] = {
    "pivot_inset": "pivot to the handle's front end",
    "pivot": "middle pin to pivot",
    "rear_pin": "middle pin to rear pin",
    "thickness": "spring's thickness at the middle pin",
    "end_thickness": "spring's thickness at the end ahead",
    "open": "pivot to the open face",
    "preload": "preload at the pivot",
    "rise": "rise of the spring at the crest",
    "edge_depth": "pivot down to the edge, blade open",
}


@dataclass(frozen=True, slots=True)
class Request:
    """What is asked of a new joint. mm, N.

    `blade` is what stands out of the handle, open; `handle` its length and `height` its height at
    the pivot; `stock` the spring's width. `nick` is how far the closed blade's spine stands out of
    the handle at least, `tip_room` how far the tip stays inside.
    """

    blade_mm: float
    handle_mm: float
    height_mm: float
    stock_mm: float
    steel: str
    hardness_hrc: float
    pull_n: float
    pull_share: float = 0.2
    half_stop: bool = True
    openings: float = 20000.0
    yield_margin: float = 1.15
    reading_mm: float = 0.05
    edge_gap_mm: float = 0.4
    nick_mm: float = 2.5
    tip_room_mm: float = 2.0
    pivot_pin_mm: float = 3.2
    spring_pin_mm: float | None = None
    closed_face: ClosedFace = "either"
    units: System = "mm"
    name: str = "New joint"
    bounds: Bounds = field(default_factory=lambda: dict(BOUNDS))

    @property
    def pins_mm(self) -> tuple[float, ...]:
        """Spring pins to try, thin ones first."""
        return PINS_MM[self.units] if self.spring_pin_mm is None else (self.spring_pin_mm,)

    @property
    def band_n(self) -> list[float]:
        """Pull that is allowed."""
        return band_n(self.pull_n, self.pull_share, self.units)

    def changed(self, **changes: Any) -> Request:
        """Ask for something else."""
        return replace(self, **changes)


# Name, kind, least and greatest of every number asked for, in the core's units.
_NUMBERS: Mapping[str, tuple[str, Kind, float, float]] = {
    "blade": ("blade_mm", "length", 20.0, 200.0),
    "handle": ("handle_mm", "length", 40.0, 250.0),
    "height": ("height_mm", "length", 6.0, 40.0),
    "stock": ("stock_mm", "length", 0.8, 8.0),
    "hardness": ("hardness_hrc", "hardness", 20.0, 68.0),
    "pull": ("pull_n", "force", 1.0, 200.0),
    "openings": ("openings", "number", 1.0, 1e9),
    "yield_margin": ("yield_margin", "number", 0.5, 5.0),
    "reading": ("reading_mm", "length", 0.002, 1.0),
    "edge_gap": ("edge_gap_mm", "length", 0.05, 5.0),
    "nick": ("nick_mm", "length", 0.1, 15.0),
    "tip_room": ("tip_room_mm", "length", 0.1, 30.0),
    "pivot_pin": ("pivot_pin_mm", "length", 1.0, 8.0),
    "spring_pin": ("spring_pin_mm", "length", 0.5, 5.0),
}
NEEDED = ("blade", "handle", "height", "stock", "steel", "hardness", "pull")


def read_request(given: Mapping[str, Any], units: System, name: str) -> Request:
    """Read what is asked; raises InvalidInput with every fault."""
    faults: list[Fault] = []
    if units not in ("mm", "in"):
        faults.append(Fault("bad-value", "units", f'must be "mm" or "in", got "{units}"'))
        units = "mm"
    values: dict[str, Any] = {}
    for key in NEEDED:
        if given.get(key) is None:
            faults.append(Fault("missing-key", key, "must be given"))
    for key, (place, kind, low, high) in _NUMBERS.items():
        if given.get(key) is not None:
            values[place] = _number(given[key], kind, key, (low, high), units, faults)
    if given.get("steel") is not None:
        try:
            values["steel"] = steels.steel(str(given["steel"])).name
        except LookupError as error:
            faults.append(Fault("bad-value", "steel", str(error.args[0])))
    face = given.get("closed_face") or "either"
    if face not in get_args(ClosedFace):
        message = f'must be one of {", ".join(get_args(ClosedFace))}, got "{face}"'
        faults.append(Fault("bad-value", "closed_face", message))
    values |= {"closed_face": face, "half_stop": given.get("half_stop") is not False}
    values["bounds"] = _bounds(given.get("bounds") or {}, units, faults)
    if not isinstance(name, str) or not name.strip() or "\n" in name or len(name) > 100:
        faults.append(Fault("bad-value", "name", "must be a line of 1 to 100 characters"))
    if faults:
        raise invalid(faults)
    return Request(**values, units=units, name=name)


def _number(
    value: Any,
    kind: Kind,
    key: str,
    limits: tuple[float, float],
    units: System,
    faults: list[Fault],
) -> float:
    try:
        found = quantity(value, kind, key, units)
    except InvalidInput as error:
        faults += [each for each in error.faults if isinstance(each, Fault)]
        return limits[0]
    if not limits[0] <= found <= limits[1]:
        unit = {"length": " mm", "force": " N", "hardness": " HRC"}.get(kind, "")
        message = f"must be {limits[0]:g} to {limits[1]:g}{unit}, got {found:.6g}{unit}"
        faults.append(Fault("bad-value", key, message))
    return found


def _bounds(given: Mapping[str, Any], units: System, faults: list[Fault]) -> Bounds:
    found = dict(BOUNDS)
    for key, pair in given.items():
        if key not in BOUNDS:
            near = near_match(str(key), BOUNDS)
            hint = f'did you mean "{near}"?' if near else f"known are {', '.join(BOUNDS)}"
            faults.append(Fault("bad-value", f"bounds.{key}", f"is not bounded: {hint}"))
        elif not isinstance(pair, list | tuple) or len(pair) != 2:
            faults.append(Fault("bad-value", f"bounds.{key}", "must be two sizes, least first"))
        else:
            room = (0.01, 200.0)
            low, high = (_number(e, "length", f"bounds.{key}", room, units, faults) for e in pair)
            if low > high:
                faults.append(Fault("bad-value", f"bounds.{key}", "must have the least first"))
            found[key] = (low, high)
    return found
