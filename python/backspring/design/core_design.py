"""Turns the content of a design file into the core's design.

What could not be read becomes NaN, so that the core's rules can still be asked about the rest.
"""

from __future__ import annotations

import math
from typing import Any

from backspring import _core
from backspring.steel.choice import SteelChoice

Section = dict[str, Any]


def make_core_design(content: Section, choice: SteelChoice | None) -> _core.Design:
    """Build the core's design; `choice` is None when the steel could not be read."""
    spring, tang = content.get("spring", {}), content.get("tang", {})
    made_tang = make_core_tang(tang)
    sound = _core.Band(value=1.0, low=1.0, high=1.0)
    return _core.Design(
        spring=_spring(spring, choice.elastic if choice else _core.Elastic()),
        strength=choice.strength if choice else _core.Strength(yield_mpa=sound),
        tang=made_tang,
        fit=_fit(content.get("fit", {}), spring, made_tang.pivot_mm),
        blade=_blade(content.get("blade", {})),
        friction=_friction(content.get("friction", {})),
        targets=_targets(content.get("targets", {})),
        surface=_surface(spring, choice),
        pins=_pins(content.get("pins", {})),
        hardness=_core.Hardness(
            spring_hrc=choice.hardness.value if choice and choice.hardness else None,
            tang_hrc=content.get("blade", {}).get("hardness"),
        ),
    )


def make_core_two_blades(content: Section, first: _core.Design) -> _core.TwoBlades | None:
    """Add the second blade to the core's design of the first; None when there is none."""
    if "second" not in content:
        return None
    second = content["second"]
    start, end = second.get("pad", (math.nan, math.nan))
    tang = make_core_tang(second.get("tang", {}))
    return _core.TwoBlades(
        first=first,
        second=_core.SecondBlade(
            pad=_core.Pad(start_mm=start, end_mm=end),
            tang=tang,
            fit=_fit(second.get("fit", {}), {}, tang.pivot_mm),
            blade=_blade(second.get("blade", {})),
        ),
    )


def two(value: Any) -> tuple[float, float]:
    """One value for both places, or one for each."""
    return (value[0], value[1]) if isinstance(value, list) else (value, value)


def _required(section: Section, key: str) -> float:
    return float(section.get(key, math.nan))


def _spring(spring: Section, elastic: _core.Elastic) -> _core.Spring:
    start, end = spring.get("pad", (math.nan, math.nan))
    return _core.Spring(
        thickness=_profile(spring.get("thickness", [])),
        width_mm=_required(spring, "width"),
        support=_support(spring),
        holes=_holes(spring),
        pad=_core.Pad(start_mm=start, end_mm=end),
        elastic=elastic,
    )


def _profile(thickness: float | list[list[float]]) -> list[_core.Station]:
    rows = thickness if isinstance(thickness, list) else [[0.0, thickness]]
    return [_core.Station(x_mm=x, thickness_mm=thick) for x, thick in rows]


def _support(spring: Section) -> _core.Support:
    support = spring.get("support", "two-pins")
    # On its middle pin alone each end bends as if clamped there; the core turns the whole.
    if support in ("clamped", "middle-pin"):
        return _core.Support(kind=_core.SupportKind.clamped)
    if support == "two-pins":
        return _core.Support(
            kind=_core.SupportKind.two_pins, rear_pin_mm=_required(spring, "rear_pin")
        )
    return _core.Support(kind=_core.SupportKind.root_stiffness, root_stiffness_nmm_per_rad=support)


def _holes(spring: Section) -> list[_core.Hole]:
    middle, rear = two(spring.get("pin_hole", 0.0))
    middle_off, rear_off = two(spring.get("pin_hole_offset", 0.0))
    holes = [_core.Hole(center_mm=0.0, diameter_mm=middle, offset_mm=middle_off)]
    if spring.get("support", "two-pins") == "two-pins":
        center = -_required(spring, "rear_pin")
        holes.append(_core.Hole(center_mm=center, diameter_mm=rear, offset_mm=rear_off))
    return [hole for hole in holes if hole.diameter_mm != 0.0]


def make_core_tang(tang: Section) -> _core.Tang:
    """Build a tang; what could not be read is NaN."""
    corner_open, corner_closed = two(tang.get("corner_radius", math.nan))
    kick = tang.get("kick")
    return _core.Tang(
        pivot_mm=_required(tang, "pivot"),
        open_mm=_required(tang, "open"),
        half_stop_mm=tang.get("half_stop"),
        closed_mm=_required(tang, "closed"),
        corner_open_mm=corner_open,
        corner_closed_mm=corner_closed,
        front_mm=_required(tang, "front"),
        round_end_mm=tang.get("round_end"),
        kick=None
        if kick is None
        else _core.Kick(
            distance_mm=_required(kick, "distance"),
            height_mm=_required(kick, "height"),
            radius_mm=_required(kick, "radius"),
        ),
    )


def _fit(fit: Section, spring: Section, pivot_mm: float) -> _core.Fit:
    preload = _required(fit, "preload")
    if "rear_pin_offset" in fit:
        # The spring turns on the middle pin as it is pulled home: similar triangles.
        rear_pin = _required(spring, "rear_pin")
        ratio = pivot_mm / rear_pin if rear_pin else math.nan
        preload = fit["rear_pin_offset"] * ratio
    return _core.Fit(preload_mm=preload, dial_mm=fit.get("dial", pivot_mm))


def _blade(blade: Section) -> _core.Blade:
    return _core.Blade(
        nail_nick_mm=blade.get("nail_nick"),
        inertia_kg_mm2=blade.get("inertia"),
        mass_g=blade.get("mass"),
        length_mm=blade.get("length"),
        height_mm=blade.get("height"),
        edge_clearance_mm=blade.get("edge_clearance"),
    )


def _friction(friction: Section) -> _core.Friction:
    return _core.Friction(
        spring=friction.get("spring", 0.0),
        pivot=friction.get("pivot", 0.0),
        pivot_pin_mm=friction.get("pivot_pin", 0.0),
    )


def _targets(targets: Section) -> _core.Targets:
    least, greatest = targets.get("pull", (None, None))
    return _core.Targets(
        pull_low_n=least,
        pull_high_n=greatest,
        yield_margin=targets.get("yield_margin"),
        reading_mm=targets.get("reading"),
        openings=targets.get("openings"),
    )


def _surface(spring: Section, choice: SteelChoice | None) -> _core.Surface:
    stainless = choice is not None and "stainless" in choice.steel.family
    return _core.Surface(
        finish=_core.Finish[spring.get("finish", "ground").replace("-", "_")],
        kink_radius_mm=spring.get("kink_radius"),
        curve_radius_mm=spring.get("curve_radius"),
        steel=_core.SpringSteel.stainless if stainless else _core.SpringSteel.carbon,
    )


def _pins(pins: Section) -> _core.Pins:
    given = {f"{key}_mm": pins[key] for key in ("middle", "rear", "liner") if key in pins}
    strength = {"yield_mpa": pins["yield"]} if "yield" in pins else {}
    return _core.Pins(**given, **strength)
