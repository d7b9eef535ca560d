"""Reads what a maker says was measured on a knife, or ground off it, into entries of its log."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from backspring import _core
from backspring.design.arguments import length, quantity, refusal
from backspring.design.design import Design
from backspring.errors import InvalidInput
from backspring.fit.log_entry import (
    PULLS,
    SPRING_FACES,
    Entry,
    FigureEntry,
    GroundEntry,
    MeasuredEntry,
    broken_limit,
    places_of,
)
from backspring.fit.plan import state_of
from backspring.unit_table import POUND_FORCE_N
from backspring.units import Kind, System

_GRAVITY_N_PER_G = 9.80665e-3
_POUNDS = ("lb", "lbs", "pound", "pounds", "#")


def read_readings(
    design: Design,
    stood: Sequence[Entry],
    half_stop: Any,
    closed: Any,
    state: str | None,
    repeatability: Any,
) -> list[MeasuredEntry]:
    """Read what the dial showed; one position is enough where the log has the other already."""
    if half_stop is None and closed is None:
        if state is not None:
            raise refusal("state", "goes with readings: give half_stop or closed")
        return []
    if state is None:
        raise refusal("state", 'must be "loaded" or "unloaded" for readings, got None')
    state_of(state)
    square = design.core.tang.half_stop_mm is not None
    if half_stop is not None and not square:
        raise refusal("half_stop", "this tang has none")
    given = {"half_stop": half_stop, "closed": closed}
    for name in ("half_stop", "closed") if square else ("closed",):
        if given[name] is None and not _was_read(stood, f"{name}_mm"):
            has = "this tang has a half-stop" if name == "half_stop" else "every blade closes"
            raise refusal(name, f"missing: {has}, and the log has no reading there yet")
    half, shut = (
        None if each is None else _within(each, "length", name, f"{name}_mm")
        for name, each in given.items()
    )
    spread = _within(repeatability, "length", "repeatability", "repeatability_mm")
    return [MeasuredEntry(state, half, shut, spread)]


def read_ground(
    design: Design, face: str, depth: Any = None, region: Sequence[Any] | None = None
) -> GroundEntry:
    """Read a trip to the grinder."""
    here = places_of(design.core.tang)
    if face not in here:
        raise refusal("ground", f"this knife's faces are {', '.join(here)}; got {face!r}")
    depth_mm = None if depth is None else _within(depth, "length", "ground", "depth_mm")
    if region is None:
        return GroundEntry(face, depth_mm)
    if face not in SPRING_FACES or len(region) != 2:
        raise refusal("ground", "a region is two stations, of the back or the belly")
    ends = [length(each, "ground") for each in region]
    from_mm, to_mm = _on_spring(design, face, ends)
    return GroundEntry(face, depth_mm, from_mm, to_mm)


def read_figures(design: Design, given: Mapping[str, Any]) -> Iterator[FigureEntry]:
    """Read all other measurements."""
    for kind in PULLS:
        name = kind.removesuffix("_n")
        if given[name] is None:
            continue
        if design.core.blade.nail_nick_mm is None:
            raise refusal(name, "a pull needs the place it acts at: give blade.nail_nick")
        yield FigureEntry(kind, _within(given[name], "force", name, kind))
    if (given["hang"] is None) != (given["moved"] is None):
        raise refusal("hang", 'goes with what the dial moved: hang="2 kg at 32 mm", moved="0.2 mm"')
    if given["hang"] is not None:
        weight_n, station = read_weight(str(given["hang"]))
        moved = _within(given["moved"], "length", "moved", "moved_mm")
        yield FigureEntry("moved_mm", moved, _station(design, station, "hang", 0.0), weight_n)
    for station, value in (given["thickness"] or {}).items():
        at = _station(design, length(station, "thickness"), "thickness")
        thick = _within(value, "length", "thickness", "thickness_mm")
        yield FigureEntry("thickness_mm", thick, at)
    yield from _lying(design, given["tip_height"], given["gap"])
    hardness = given["hardness"]
    each = hardness if isinstance(hardness, list | tuple) else [hardness]
    if hardness is not None and design.core.hardness.spring_hrc is None:
        raise refusal("hardness", "the design states none: give spring.hardness or a temper")
    for value in each if hardness is not None else ():
        yield FigureEntry("hardness_hrc", _within(value, "hardness", "hardness", "hardness_hrc"))


def _lying(design: Design, tip_height: Any, gap: Any) -> Iterator[FigureEntry]:
    """Read how the closed blade lies."""
    core = design.core
    if tip_height is not None:
        if _core.tip_height_mm(core, 0.0) is None or core.blade.well_mm is None:
            raise refusal(
                "tip_height", "needs the handle's depth and the tip: give blade.well and blade.tip"
            )
        yield FigureEntry("tip_mm", _within(tip_height, "length", "tip_height", "tip_mm"))
    for written in [gap] if isinstance(gap, str) else gap or ():
        value_mm, station_mm = read_gap(str(written))
        if _core.closed_figures(core, station_mm).gap_mm is None:
            raise refusal("gap", f"blade.edge does not pass the spring at {station_mm:.10g} mm")
        yield FigureEntry("gap_mm", value_mm, station_mm)


def read_gap(written: str, system: System = "mm") -> tuple[float, float]:
    """Read "0.3 mm at 10 mm": gap and station [mm]."""
    gap, found, station = written.partition(" at ")
    if not found:
        raise refusal("gap", f'must be a gap and a station, as "0.3 mm at 10 mm", got {written!r}')
    value_mm = length(gap, "gap", system)
    rule = broken_limit("gap_mm", value_mm)
    if rule:
        raise refusal("gap", rule)
    return value_mm, length(station, "gap", system)


def read_weight(written: str, system: System = "mm") -> tuple[float, float]:
    """Read "2 kg at 32 mm": weight [N] and station [mm]; a mass weighs what it does on earth."""
    weight, found, station = written.partition(" at ")
    if not found:
        raise refusal(
            "hang", f'must be a weight and a station, as "2 kg at 32 mm", got {written!r}'
        )
    name = weight.strip().lstrip("0123456789. ")
    if name in _POUNDS:
        weight_n = quantity(weight.strip().removesuffix(name), "number", "hang") * POUND_FORCE_N
    else:
        try:
            weight_n = quantity(weight, "mass", "hang", system) * _GRAVITY_N_PER_G
        except InvalidInput:
            weight_n = quantity(weight, "force", "hang", system)
    rule = broken_limit("weight_n", weight_n)
    if rule:
        raise refusal("hang", rule)
    return weight_n, length(station, "hang", system)


def _was_read(stood: Sequence[Entry], column: str) -> bool:
    readings = (each for each in stood if isinstance(each, MeasuredEntry))
    return any(getattr(each, column) is not None for each in readings)


def _on_spring(design: Design, face: str, ends: list[float]) -> list[float]:
    rear, front = _ends(design)
    last = design.core.pad.start_mm if face == "belly" else front
    if not rear <= ends[0] < ends[1] <= last:
        raise refusal("ground", f"a region of the {face} lies from {rear:g} mm to {last:g} mm")
    return ends


def _station(design: Design, station_mm: float, key: str, rear: float | None = None) -> float:
    low, front = _ends(design)
    low = low if rear is None else rear
    if not low <= station_mm <= front:
        rule = f"the station must be from {low:g} mm to {front:g} mm, got {station_mm:.10g} mm"
        raise refusal(key, rule)
    return station_mm


def _ends(design: Design) -> tuple[float, float]:
    spring = design.core.spring
    if len(spring.thickness) == 1:
        return -spring.support.rear_pin_mm, design.core.pad.end_mm
    return spring.thickness[0].x_mm, spring.thickness[-1].x_mm


def _within(value: Any, kind: Kind, key: str, column: str) -> float:
    read = quantity(value, kind, key)
    rule = broken_limit(column, read)
    if rule:
        raise refusal(key, rule)
    return read
