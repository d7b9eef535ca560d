"""Where pins, tip and edge of a new joint go: geometry of blade and handle."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from backspring.new_joint.file_text import Tables
from backspring.new_joint.joint import Joint
from backspring.new_joint.request import Request
from backspring.new_joint.rounding import between, fine
from backspring.unit_table import OUNCE_G, System

# Common practice, no source. Rear pin to the handle's end; metal of the liner about the pivot.
TAIL_MM = 8.0
_LINER_METAL_MM = 2.0
_RICASSO_MM = 2.0
_BELLY_FROM, TIP_INSIDE_MM, _TIP_HIGHEST_MM = 0.75, 1.5, 2.0
_SHARES = (0.38, 0.44, 0.5)
_TAPERS = (0.55, 0.7, 0.85)
_START_MM = 4.4
_TANGS = 3
# A ground blade against its outline's block of the stock; steel [g/mm3].
_BLADE_SHARE, _STEEL_G_MM3 = 0.6, 7.85e-3
_KICK = {"reach": 1.35, "height": 0.2, "radius": 0.6, "face": 0.05}
_PLY_MM = 2.0


# Middle pin to pivot, pivot to open face, thickness at the end ahead over that at the pin.
Place = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Base:
    """One way to place pins and faces, its thickness left to find."""

    tables: Tables
    open_mm: float
    share: float
    place: Place


def inset_mm(request: Request) -> float:
    """Pivot to the handle's front end, as far in as blade and handle leave room for it.

    Closed, the tip is as far behind the pivot as it was ahead: blade + inset, and the handle goes
    on behind it by `tip_room`.
    """
    room = 0.5 * (request.handle_mm - request.blade_mm - request.tip_room_mm)
    return min(room, request.bounds["pivot_inset"][1])


def least_inset_mm(request: Request) -> float:
    """Least that the pivot may be from the front end: its pin and metal about it."""
    return max(request.bounds["pivot_inset"][0], 0.5 * request.pivot_pin_mm + _LINER_METAL_MM)


def handle_for_blade_mm(request: Request) -> float:
    """Shortest handle that takes the blade."""
    return request.blade_mm + request.tip_room_mm + 2.0 * least_inset_mm(request)


def span_mm(request: Request) -> float:
    """Pivot to rear pin."""
    return request.handle_mm - inset_mm(request) - TAIL_MM


def bases(request: Request, kick: bool) -> Iterator[Base]:
    """Go through places of the middle pin, tang sizes and tapers."""
    span = span_mm(request)
    low, high = request.bounds["open"]
    opens = [low + (high - low) * place / (_TANGS - 1) for place in range(_TANGS)]
    least, most = _pivots_mm(request)
    pivots = {min(max(share * span, least), most) for share in _SHARES}
    for pivot in sorted(pivots):
        if least > most:
            return
        for open_mm in opens:
            for taper in _TAPERS:
                yield _base(request, kick, pivot, open_mm, taper)


def between_places(
    request: Request, kick: bool, about: Sequence[Place], seen: Collection[Place]
) -> Iterator[Base]:
    """Go half a step on from some places, each size by itself, to where none was seen."""
    low, high = request.bounds["open"]
    least, most = _pivots_mm(request)
    steps = (
        0.5 * (_SHARES[1] - _SHARES[0]) * span_mm(request),
        0.5 * (high - low) / (_TANGS - 1),
        0.5 * (_TAPERS[1] - _TAPERS[0]),
    )
    moves = itertools.product(about, range(3), (-1.0, 1.0))
    places = dict.fromkeys(
        tuple(round(x + (i == size) * side * steps[i], 6) for i, x in enumerate(place))
        for place, size, side in moves
    )
    for pivot, open_mm, taper in places:
        inside = least <= pivot <= most and low <= open_mm <= high and taper <= 1.0
        if inside and (pivot, open_mm, taper) not in seen:
            yield _base(request, kick, pivot, open_mm, taper)


def _pivots_mm(request: Request) -> tuple[float, float]:
    """Least and greatest from middle pin to pivot."""
    span, lengths, rears = span_mm(request), request.bounds["pivot"], request.bounds["rear_pin"]
    return max(lengths[0], span - rears[1]), min(lengths[1], span - rears[0])


def _base(request: Request, kick: bool, pivot: float, open_mm: float, taper: float) -> Base:
    span, inset = span_mm(request), inset_mm(request)
    joint = Joint(
        pivot_mm=pivot,
        rear_mm=span - pivot,
        tail_mm=TAIL_MM - 2.0,
        middle_mm=_START_MM,
        end_mm=taper * _START_MM,
        width_mm=request.stock_mm,
        hole_mm=request.pins_mm[0],
        open_mm=open_mm,
        front_mm=min(inset, 1.1 * open_mm),
        corner_mm=0.3 * open_mm,
        preload_mm=0.7,
        half_stop=request.half_stop,
        pin_mm=request.pivot_pin_mm,
        nick_mm=inset + 0.4 * request.blade_mm,
    )
    place = (round(pivot, 6), round(open_mm, 6), round(taper, 6))
    return Base(_tables(request, joint, kick), open_mm, pivot / span, place)


def _tables(request: Request, joint: Joint, kick: bool) -> Tables:
    steel = {"steel": request.steel, "hardness": request.hardness_hrc}
    tables = joint.tables(steel, request.units)
    if kick:
        _put_kick(tables, request.units)
    tables["targets"] = {
        "pull": request.band_n,
        "yield_margin": request.yield_margin,
        "reading": request.reading_mm,
        "openings": request.openings,
    }
    return tables


def _put_kick(tables: Tables, units: System) -> None:
    """Put a kick behind the square face, and let the pad reach it when the blade is closed."""
    tang, spring = tables["tang"], tables["spring"]
    distance = fine(_KICK["reach"] * tang["open"], units)
    tang["closed"] = fine(tang["open"] - _KICK["face"], units)
    radius = fine(_KICK["radius"], units)
    tang["kick"] = {"distance": distance, "height": fine(_KICK["height"], units), "radius": radius}
    start = between(tang["pivot"] - distance - _PLY_MM, units)
    rows = spring["thickness"]
    spring["pad"] = [start, spring["pad"][1]]
    spring["thickness"] = [*rows[:3], [start, rows[3][1]], rows[4]]


def rim_mm(request: Request, end_mm: float, open_mm: float) -> float:
    """Pivot down to the handle's rim, closed."""
    return request.height_mm - end_mm - open_mm


def least_rim_mm(request: Request) -> float:
    """Least of that: the liner's metal about the pivot."""
    return 0.5 * request.pivot_pin_mm + _LINER_METAL_MM


def blade_of(request: Request, tables: Tables, edge_mm: float, drop_mm: float) -> dict[str, Any]:
    """Draw edge, tip, well and block of a blade whose edge lies so far below the pivot, open.

    `drop_mm` lowers the tip, which a kick lifts out of the handle.
    """
    units = request.units
    inset = inset_mm(request)
    end, open_mm = tables["spring"]["thickness"][-1][1], tables["tang"]["open"]
    rim = rim_mm(request, end, open_mm)
    reach = inset + request.blade_mm
    tip = [between(reach, units), fine(min(rim - TIP_INSIDE_MM, _TIP_HIGHEST_MM) - drop_mm, units)]
    front = tables["tang"]["front"]
    kick = tables["tang"].get("kick")
    first = max(front, kick["distance"] + kick["radius"] if kick else 0.0) + _RICASSO_MM
    edge = -fine(edge_mm, units)
    height = edge_mm + rim + request.nick_mm
    length = reach + open_mm
    mass = _STEEL_G_MM3 * _BLADE_SHARE * request.stock_mm * height * length
    step = 0.5 if units == "mm" else 0.02 * OUNCE_G
    return {
        "nail_nick": tables["blade"]["nail_nick"],
        "mass": max(1, round(mass / step)) * step,
        "length": between(length, units),
        "height": between(height + 0.05, units),
        "edge": [[between(first, units), edge], [between(_BELLY_FROM * reach, units), edge], tip],
        "tip": tip,
        "well": between(request.height_mm - end, units),
    }
