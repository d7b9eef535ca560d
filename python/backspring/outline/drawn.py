"""The outlines of a design: what its numbers look like drawn, to cut or to read back."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator, Sequence

from backspring import _core
from backspring.outline.chain import Chain, Piece, Vertex, closed_chain
from backspring.outline.part_outlines import Hole, Outlines
from backspring.outline.rounded import Rounded, with_roots

# How far the steel goes on behind the rear pin, in diameters of its hole.
_BEHIND_PIN = 1.2
# Teeth of the line at which the blade is broken off: none stands out beyond it.
_TOOTH_MM = 1.2
# Share of that line without teeth at either end.
_PLAIN = 0.15
# Places of a piece at which it is looked whether a kick stands on it.
_LOOKS = 400
# Drawn where the design states no pivot pin.
_PIVOT_PIN_MM = 3.0


def draw(design: _core.Design) -> Outlines:
    """Draw spring and tang as they lie open with the rear pin out, the pivot at the origin.

    A corner of the belly marks where the pad begins. The blade goes on at the tang's front end,
    which is a break and no edge: `with_teeth` shows it as one.
    """
    spring, tang, pivot = design.spring, design.tang, design.tang.pivot_mm
    span = spring.support.rear_pin_mm
    middle, rear = (spring_hole(design, x) for x in (0.0, -span))
    to_pivot = complex(-pivot, tang.open_mm)
    offset = design.fit.preload_mm * span / pivot
    return Outlines(
        spring=spring_chain(design).moved(1.0, to_pivot),
        spring_holes=(
            Hole(middle.center_mm + to_pivot, middle.diameter_mm),
            Hole(rear.center_mm + to_pivot, rear.diameter_mm),
        ),
        tang=tang_chain(design),
        tang_hole=tang_hole(design),
        pivot_mm=0j,
        middle_mm=middle.center_mm + to_pivot,
        rear_mm=rear.center_mm + to_pivot + 1j * offset,
    )


def spring_hole(design: _core.Design, x_mm: float) -> Hole:
    """Give the hole at a station, of no width where the design states none."""
    middle = _belly_mm(design, x_mm) + 0.5 * _core.thickness_mm(design.spring.thickness, x_mm)
    for hole in design.spring.holes:
        if abs(hole.center_mm - x_mm) < 1e-9:
            return Hole(complex(x_mm, middle + hole.offset_mm), hole.diameter_mm)
    return Hole(complex(x_mm, middle), 0.0)


def _core_rows(design: _core.Design, start: float, end: float) -> list[tuple[float, float, float]]:
    """List station, height of the belly and thickness from end to end, both sides of a step.

    The pad is straight whatever the mid-line says of it; the thickness is kept.
    """
    spring = design.spring
    profile = spring.thickness
    stations = {start, end, design.pad.start_mm, *(each.x_mm for each in spring.mid_line)}
    if not spring.mid_line:
        stations = {start, end}
    known = sorted(
        [(x, _core.thickness_mm(profile, x)) for x in stations - {s.x_mm for s in profile}]
        + [(each.x_mm, each.thickness_mm) for each in profile],
        key=lambda row: row[0],
    )
    face = design.pad.start_mm - 1e-9
    return [
        (x, 0.0 if x > face else _belly_mm(design, x), thickness)
        for x, thickness in known
        if start <= x <= end
    ]


def tang_hole(design: _core.Design) -> Hole:
    """Give the hole for the pivot pin, at the origin."""
    return Hole(0j, design.friction.pivot_pin_mm or _PIVOT_PIN_MM)


def _belly_mm(design: _core.Design, x_mm: float) -> float:
    return _core.belly_mm(design.spring, design.pad, x_mm)


def spring_chain(design: _core.Design) -> Chain:
    """Draw the spring, stations across, the pad's line at height 0."""
    return rounded_spring(design).chain


def rounded_spring(design: _core.Design) -> Rounded:
    """Draw the spring with the roots of its kinks, where their radius is stated.

    Where the pad begins the corner stays, for the pad would begin later.
    """
    chain, radius = _sharp_spring(design), design.surface.kink_radius_mm
    if not radius:
        return Rounded(chain, ())
    pad = [complex(design.pad.start_mm)]
    return with_roots(chain, radius, of_belly=bool(design.spring.mid_line), kept=pad)


def _sharp_spring(design: _core.Design) -> Chain:
    spring, pad = design.spring, design.pad
    profile, end = spring.thickness, pad.end_mm
    start = profile[0].x_mm if len(profile) > 1 else 0.0
    if spring.support.kind is _core.SupportKind.two_pins:
        room = _BEHIND_PIN * max((hole.diameter_mm for hole in spring.holes), default=2.0)
        start = min(start, -spring.support.rear_pin_mm - room)
    rows = _core_rows(design, start, end)
    back = [complex(x, belly + thickness) for x, belly, thickness in reversed(rows)]
    behind = [complex(x, belly) for x, belly, _ in rows if x < pad.start_mm - 1e-9]
    if not spring.mid_line:
        behind = behind[:1]
    return closed_chain(Vertex(p) for p in [*behind, complex(pad.start_mm), complex(end), *back])


def tang_chain(design: _core.Design) -> Chain:
    """Draw the tang about its pivot, the last line from its closed side to the open face's end.

    That line is where the blade is broken off: what is ahead of it no design tells.
    """
    tang = design.tang
    kick = tang.kick
    reach = max(tang.pivot_mm - design.pad.start_mm + 1.0, _core.front_reach_mm(tang))
    if kick:
        reach = max(reach, kick.distance_mm + 2.0 * kick.radius_mm)
    vertices: list[Vertex] = []
    outline = _core.make_outline(tang, reach)
    for arc in outline.body:
        vertices += _arc_vertices(arc)
    if outline.kick:
        vertices = _with_nose(vertices, outline.kick)
    return closed_chain(vertices)


def with_teeth(chain: Chain) -> Chain:
    """Show the line at a tang's front, where the blade is broken off, as a zigzag."""
    pieces = chain.pieces
    straight = [i for i, piece in enumerate(pieces) if not piece.bulge]
    broken = max(straight, key=lambda i: pieces[i].point_mm(0.5).real)
    piece = pieces[broken]
    inward = 1j * piece.direction(0.0) * _TOOTH_MM
    steps = 2 * max(2, round((1.0 - 2.0 * _PLAIN) * piece.length_mm / (2.0 * _TOOTH_MM)))
    teeth = (
        Vertex(piece.point_mm(_PLAIN + (1.0 - 2.0 * _PLAIN) * i / steps) + (i % 2) * inward)
        for i in range(steps + 1)
    )
    return Chain((*chain.vertices[: broken + 1], *teeth, *chain.vertices[broken + 1 :]))


def _arc_vertices(arc: _core.Arc) -> Iterator[Vertex]:
    center = complex(arc.u_mm, arc.w_mm)
    if not arc.radius_mm:
        yield Vertex(center)
        return
    bulge = math.tan(0.25 * (arc.to_rad - arc.from_rad))
    yield Vertex(center + arc.radius_mm * cmath.exp(1j * arc.from_rad), bulge)
    yield Vertex(center + arc.radius_mm * cmath.exp(1j * arc.to_rad))


def _with_nose(vertices: Sequence[Vertex], kick: _core.Arc) -> list[Vertex]:
    """Lead an outline onto a kick's nose: where they meet, or straight up to the nose's side."""
    center, r = complex(kick.u_mm, kick.w_mm), kick.radius_mm
    pieces = Chain(tuple(vertices)).pieces[:-1]
    for i, piece in reversed([*enumerate(pieces)]):
        if (share := _meeting(piece, center, r)) is not None:
            met = piece.point_mm(share)
            leave = complex(2.0 * center.real - met.real, met.imag)
            sweep = cmath.phase((leave - center) / (met - center)) % math.tau
            nose = [Vertex(met, math.tan(0.25 * sweep)), Vertex(leave)]
            return [*vertices[:i], _shortened(piece, share), *nose]
    for i, piece in reversed([*enumerate(pieces)]):
        for share in piece.crossings(center.real - r):
            beside = piece.point_mm(share)
            if beside.imag < 0.0:
                nose = [Vertex(beside), Vertex(center - r, 1.0), Vertex(center + r)]
                return [*vertices[:i], _shortened(piece, share), *nose]
    return [*vertices, Vertex(center - r, 1.0), Vertex(center + r)]


def _shortened(piece: Piece, share: float) -> Vertex:
    return Vertex(piece.start_mm, math.tan(0.25 * share * piece.sweep_rad))


def _meeting(piece: Piece, center: complex, radius_mm: float) -> float | None:
    """Find the share of a piece's way at which it comes into a circle; None where it does not."""

    def outside(share: float) -> float:
        return abs(piece.point_mm(share) - center) - radius_mm

    shares = [k / _LOOKS for k in range(_LOOKS + 1)]
    for low, high in zip(shares, shares[1:], strict=False):
        if piece.point_mm(low).imag < center.imag and outside(low) > 0.0 >= outside(high):
            for _ in range(60):
                between = 0.5 * (low + high)
                if outside(between) > 0.0:
                    low = between
                else:
                    high = between
            return high
    return None
