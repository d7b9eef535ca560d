"""A design file from calipers: what was measured, how it follows, and how sure it is."""

from __future__ import annotations

import math
import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from backspring import steel as steels
from backspring._core import Quantity
from backspring.design.arguments import refusal
from backspring.faults import invalid, near_match
from backspring.new_joint.file_text import COMMENTS, Tables, design_text
from backspring.new_joint.measures import GAUGE_MM, Measured, Readings, mean_of
from backspring.new_joint.starter import Starter, written
from backspring.units import System, converted, shown
from backspring.whole_file import require_free

# What can be measured, and how: asked for by these names.
MEASURES: Mapping[str, str] = {
    "middle_pin": "diameter of the middle pin",
    "rear_pin": "diameter of the rear pin",
    "pivot_pin": "diameter of the pivot pin",
    "middle_to_rear": "outside over middle pin and rear pin",
    "middle_to_pivot": "outside over middle pin and pivot pin",
    "width": "thickness of the spring's stock, liner to liner",
    "thickness": "rows of station and thickness, back to belly",
    "pad": "stations of both ends of the belly's face",
    "open": "open face over the pin in the pivot hole, to the pin's far side",
    "half_stop": "half-stop face over that pin",
    "closed": "closed face over that pin",
    "front": "end of the open face over that pin, along the face",
    "corner_radius": "radius of the tang's rear corners, by a gauge",
    "rear_misses": "how far the spring's rear hole misses the pin, rear pin out",
    "nail_nick": "pivot to nail nick",
}
OPTIONAL = ("half_stop", "nail_nick")
_OVER_PIN = ("open", "half_stop", "closed", "front")
_LIKE_STEPS = {"mm": 3, "in": 5}


def measured_design(
    measured: Mapping[str, Any],
    output: str | os.PathLike[str] | None = None,
    *,
    name: str = "My knife",
    units: System = "mm",
    steel: str = "1075",
    hardness: Any = "46 HRC",
    force: bool = False,
) -> Starter:
    """Make a design file of what calipers told: `{"open": "6.1 +- 0.02 mm", "pad": (27, 36.5)}`.

    `MEASURES` of its module names them all; a half-stop and the nail nick may lack. Pins' distances
    are taken outside over both pins, faces over a pin in the pivot hole. A spread behind +- is one
    standard deviation; left out, that of calipers (0.02 mm). What follows, preload = q a_p / L_r
    with it, and its spread, is told beside each line and as `[priors]` of the fit.

    Raises InvalidInput with every fault: what is missing, misread or cannot be.
    """
    if not isinstance(measured, Mapping):
        raise refusal("measured", "must be a table of readings by name")
    system: System = units if units in ("mm", "in") else "mm"
    read = Readings(measured, system)
    if units != system:
        read.fault("units", f'must be "mm" or "in", got "{units}"')
    for key in measured:
        if key not in MEASURES:
            near = near_match(str(key), MEASURES)
            hint = f'did you mean "{near}"?' if near else f"known are {', '.join(MEASURES)}"
            read.fault(str(key), f"is not measured: {hint}")
    found = _found(read)
    hrc = read.read(hardness, "hardness", 1.0, "hardness")
    try:
        steel = steels.steel(steel).name
    except LookupError as error:
        read.fault("steel", str(error.args[0]))
    if read.faults or found is None or hrc is None:
        raise invalid(list(dict.fromkeys(read.faults)))
    require_free(output, force)
    tables = _tables(found, {"steel": steel, "hardness": hrc.value})
    tables["priors"] = _priors(found, hrc)
    comments = {**COMMENTS, **_comments(found, hrc, system)}
    text = design_text(name, system, _rounded(tables, system), _about(name), comments)
    return written(text, output)


@dataclass(frozen=True)
class _Found:
    """What follows from the measurements, and the measurements."""

    read: Mapping[str, Measured]
    rows: list[tuple[float, Measured]]
    pad: list[float]
    pivot: Measured
    rear: Measured
    faces: Mapping[str, Measured]

    @property
    def preload(self) -> Measured:
        """Q a_p / L_r, with its spread to first order."""
        q, pivot, rear = self.read["rear_misses"], self.pivot, self.rear
        ratio = pivot.value / rear.value
        share = math.hypot(pivot.spread / pivot.value, rear.spread / rear.value)
        return Measured(q.value * ratio, math.hypot(q.spread * ratio, q.value * ratio * share))


def _found(read: Readings) -> _Found | None:
    lists = ("thickness", "pad")
    single = {
        key: read.get(key) if key in OPTIONAL else read.need(key, _usual(key))
        for key in MEASURES
        if key not in lists
    }
    held = {key: each for key, each in single.items() if each is not None}
    rows, pad = read.pairs("thickness"), _pad(read)
    if not rows and not read.faults:
        read.fault("thickness", "must be given, as rows of station and thickness")
    for key, each in held.items():
        if each.value < 0.0 or (each.value == 0.0 and key != "rear_misses"):
            why = ": the spring would not press" if key == "rear_misses" else ""
            read.fault(key, f"must be above 0{why}, got {_said(each.value, read.units)}")
    half = held["pivot_pin"].half()
    pivot = held["middle_to_pivot"] - mean_of(held["middle_pin"], held["pivot_pin"])
    rear = held["middle_to_rear"] - mean_of(held["middle_pin"], held["rear_pin"])
    faces: dict[str, Measured] = {key: held[key] - half for key in _OVER_PIN if key in held}
    distances = {"middle_to_pivot": pivot, "middle_to_rear": rear}
    for key, each in (distances | faces).items():
        if each.value <= 0.0:
            left = _said(each.value, read.units)
            read.fault(key, f"is no longer than the pins it goes over: {left} are left")
    return None if read.faults else _Found(held, rows, pad, pivot, rear, faces)


def _pad(read: Readings) -> list[float]:
    given = read.given.get("pad")
    if not isinstance(given, list | tuple) or len(given) != 2:
        read.fault("pad", "must be given as two stations, as 27 36.5")
        return []
    ends = [read.read(each, "pad") for each in given]
    return [each.value for each in ends if each is not None]


def _usual(key: str) -> float:
    return GAUGE_MM if key == "corner_radius" else 0.02


def _tables(found: _Found, steel: dict[str, Any]) -> Tables:
    held = found.read
    tang = {"pivot": found.pivot.value}
    tang |= {key: each.value for key, each in found.faces.items() if key != "front"}
    tang |= {"corner_radius": held["corner_radius"].value, "front": found.faces["front"].value}
    blade = {"nail_nick": held["nail_nick"].value} if "nail_nick" in held else {}
    holes = [held["middle_pin"].value, held["rear_pin"].value]
    return {
        "spring": {
            **steel,
            "width": held["width"].value,
            "thickness": [[at, each.value] for at, each in found.rows],
            "rear_pin": found.rear.value,
            "pin_hole": holes,
            "pad": found.pad,
        },
        "tang": tang,
        "fit": {"rear_pin_offset": held["rear_misses"].value, "dial": found.pivot.value},
        "blade": blade,
        "friction": {"spring": 0.12, "pivot": 0.12, "pivot_pin": held["pivot_pin"].value},
    }


def _priors(found: _Found, hrc: Measured) -> dict[str, Any]:
    """State what a fit may expect, as the file's [priors] have it: value and spread."""
    faces = {f"{key}_face": found.faces.get(key) for key in ("half_stop", "closed")}
    spreads = {
        **{key: each.spread for key, each in faces.items() if each is not None},
        "thickness": max(each.spread for _, each in found.rows),
        "width": found.read["width"].spread,
        "preload": found.preload.spread,
        "corner_radius": found.read["corner_radius"].spread,
        "hardness": hrc.spread,
    }
    return {key: [0.0, each] for key, each in spreads.items() if each > 0.0}


def _comments(found: _Found, hrc: Measured, units: System) -> dict[str, str]:
    return dict(_commented(found, hrc, units))


def _commented(found: _Found, hrc: Measured, units: System) -> Iterator[tuple[str, str]]:
    def off(each: Measured) -> str:
        return f"+- {_said(each.spread, units, 2)}"

    held = found.read
    pairs = {"tang.pivot": ("middle_to_pivot", found.pivot)}
    pairs["spring.rear_pin"] = ("middle_to_rear", found.rear)
    for key, (name, each) in pairs.items():
        over = held[name].value
        less = _said(over - each.value, units)
        yield key, f"{_said(over, units)} over both pins, less their mean {less}; {off(each)}"
    for name, each in found.faces.items():
        whole = _said(held[name].value, units)
        yield f"tang.{name}", f"{whole} over the pin, less half of it; {off(each)}"
    yield "spring.hardness", f"+- {hrc.spread:.3g} HRC"
    for key, name in (("spring.width", "width"), ("tang.corner_radius", "corner_radius")):
        yield key, off(held[name])
    yield "blade.nail_nick", f"pivot to nail nick; {off(held.get('nail_nick', held['open']))}"
    worst = max((each for _, each in found.rows), key=lambda each: each.spread)
    yield "spring.thickness", f"{COMMENTS['spring.thickness']}; {off(worst)}"
    yield "spring.pin_hole", "taken as thick as the pins, middle and rear"
    yield (
        "fit.rear_pin_offset",
        f"how far the rear hole misses; {off(held['rear_misses'])}; preload = this x pivot / "
        f"rear_pin = {_said(found.preload.value, units)} {off(found.preload)}",
    )
    yield "friction.spring", "not measured: a wiped joint"
    yield "friction.pivot", "not measured: a wiped joint"
    for name in ("half_stop_face", *_priors(found, hrc)):
        yield f"priors.{name}", "expected off the number above, and its +-"


def _rounded(tables: Tables, units: System) -> Tables:
    """Leave out digits that no calipers have."""
    digits = _LIKE_STEPS[units]
    size = converted(1.0, Quantity.length, units)

    def plain(value: Any) -> Any:
        if isinstance(value, list):
            return [plain(each) for each in value]
        return round(value * size, digits) / size if isinstance(value, float) else value

    return {name: {key: plain(each) for key, each in t.items()} for name, t in tables.items()}


def _about(name: str) -> tuple[str, ...]:
    return (
        f"{name}: from calipers. What stands behind +- is one standard deviation.",
        "A half-stop and closed face that were ground already are as they stand now.",
        "A computed margin does not replace a test. Wear eye protection whenever a spring is "
        "under load.",
    )


def _said(value_mm: float, units: System, digits: int = 4) -> str:
    text = shown(round(value_mm, 4) if units == "mm" else value_mm, Quantity.length, units)
    number, _, unit = text.partition(" ")
    return f"{float(number):.{digits}g} {unit}"
