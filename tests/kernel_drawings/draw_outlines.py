"""Outlines made by a geometry kernel, for tests of reading: `python draw_outlines.py`.

Run it where gmsh and ezdxf are installed; it writes the drawings beside itself, which the tests
read. All corners, fillets, holes and curves are the kernel's (gmsh's OpenCASCADE): none is made by
this project's own drawing. The joint is the Heron of data/designs, whose numbers stand below.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import gmsh
from written import Parts, write_dxf, write_svg

# The Heron [mm]: faces from the pivot, corner radius, front; what is ahead is cut off at 6 mm.
OPEN, HALF_STOP, CLOSED, CORNER, FRONT, REACH = 4.5, 4.62, 4.6, 0.7, 5.0, 6.0
BACK = ((36.5, 2.5), (25.0, 2.4), (7.0, 3.1), (0.0, 3.8), (-4.0, 3.8), (-38.0, 3.2))
PIVOT, REAR, PRELOAD = 32.0, 34.0, 0.9
MIDDLE_HOLE, REAR_HOLE, HOLE = (0.0, 1.9), (-REAR, 0.5 * (3.2 + 0.6 * 4.0 / 34.0)), 2.0
PIN = 3.2
occ = gmsh.model.occ


def polygon(corners: list[tuple[float, float]]) -> int:
    """A face with straight sides."""
    points = [occ.addPoint(x, y, 0.0) for x, y in corners]
    lines = [occ.addLine(a, b) for a, b in zip(points, [*points[1:], points[0]], strict=True)]
    return occ.addPlaneSurface([occ.addCurveLoop(lines)])


def filleted(face: int, corners: list[tuple[float, float]], radius: float) -> int:
    """The face with some corners rounded: as a solid, whose upright edges are filleted."""
    volume = next(tag for dim, tag in occ.extrude([(2, face)], 0, 0, 1) if dim == 3)
    occ.synchronize()
    edges = []
    for _, tag in gmsh.model.getBoundary([(3, volume)], combined=False, recursive=False):
        for _, edge in gmsh.model.getBoundary([(2, tag)], oriented=False):
            low = gmsh.model.getBoundingBox(1, edge)
            upright = low[5] - low[2] > 0.5
            if upright and any(math.dist(low[:2], c) < 1e-3 for c in corners):
                edges.append(edge)
    solid = occ.fillet([volume], sorted({*edges}), [radius])[0][1]
    occ.synchronize()
    for _, tag in gmsh.model.getBoundary([(3, solid)], oriented=False):
        low = gmsh.model.getBoundingBox(2, tag)
        if abs(low[2] - 1.0) < 1e-4 and abs(low[5] - 1.0) < 1e-4:
            # The upper face looks up, as flat ones are made.
            copy = occ.copy([(2, tag)])[0][1]
            occ.remove([(3, solid)], recursive=True)
            occ.translate([(2, copy)], 0, 0, -1)
            return copy
    raise ValueError("no face at height 1")


def disk(center: tuple[float, float], radius: float) -> int:
    """A round face."""
    return occ.addDisk(*center, 0.0, radius, radius)


def cut(face: int, *holes: int) -> int:
    """A face with others taken out of it."""
    return occ.cut([(2, face)], [(2, hole) for hole in holes])[0][0][1]


def fused(*faces: int) -> int:
    """Faces made one."""
    joined = occ.fuse([(2, faces[0])], [(2, each) for each in faces[1:]])[0]
    assert len(joined) == 1
    return joined[0][1]


def tang_corners() -> list[tuple[float, float]]:
    """The tang with sharp corners, open."""
    return [(FRONT, OPEN), (-HALF_STOP, OPEN), (-HALF_STOP, -CLOSED), (REACH, -CLOSED)]


def heron_tang() -> int:
    """The tang with its corners filleted and its hole cut."""
    face = filleted(polygon(tang_corners()), tang_corners()[1:3], CORNER)
    return cut(face, disk((0, 0), 0.5 * PIN))


def heron_spring() -> int:
    """The spring with its holes cut."""
    face = polygon([(-38.0, 0.0), (27.0, 0.0), (36.5, 0.0), *BACK])
    return cut(face, disk(MIDDLE_HOLE, 0.5 * HOLE), disk(REAR_HOLE, 0.5 * HOLE))


def heron_liner() -> list[int]:
    """Disks where the pins go: pivot, middle and rear pin."""
    lies = OPEN  # the pad on the open face, the rear hole as far inside its pin's as it misses
    middle = (-PIVOT, lies + MIDDLE_HOLE[1])
    rear = (-PIVOT - REAR, lies + REAR_HOLE[1] + PRELOAD * REAR / PIVOT)
    return [disk(place, 1.0) for place in ((0.0, 0.0), middle, rear)]


def heron() -> Parts:
    """The whole joint."""
    return {"spring": [heron_spring()], "tang": [heron_tang()], "liner": heron_liner()}


def every(parts: Parts) -> list[tuple[int, int]]:
    """All faces, to be moved together."""
    return [(2, face) for faces in parts.values() for face in faces]


def fillets_and_holes() -> None:
    write_dxf("fillets_and_holes", heron())


def svg_arcs() -> None:
    write_svg("svg_arcs", heron())


def inches() -> None:
    parts = heron()
    occ.dilate(every(parts), 0, 0, 0, *[1.0 / 25.4] * 3)
    write_dxf("inches", parts, units=1)


def all_splines() -> None:
    write_dxf("all_splines", heron(), as_splines=True)


def mirrored() -> None:
    parts = heron()
    occ.mirror(every(parts), 1, 0, 0, 3.0)
    write_dxf("mirrored", parts)


def turned() -> None:
    parts = heron()
    occ.rotate(every(parts), 5, 2, 0, 0, 0, 1, math.radians(143.0))
    write_dxf("turned", parts)


def gaps() -> None:
    write_dxf("gaps", heron(), gap=0.04)


def wide_gaps() -> None:
    write_dxf("wide_gaps", heron(), gap=0.3)


def kick() -> None:
    """A nose of 0.5 mm radius 8 mm ahead of the pivot, 0.2 mm beyond the closed face."""
    corners = [(FRONT, OPEN), (-HALF_STOP, OPEN), (-HALF_STOP, -CLOSED), (10.0, -CLOSED)]
    face = filleted(polygon(corners), corners[1:3], CORNER)
    nose = disk((8.0, -CLOSED - 0.2 + 0.5), 0.5)
    tang = cut(fused(face, nose), disk((0, 0), 0.5 * PIN))
    write_dxf("kick", {**heron(), "tang": [tang]})


def round_end() -> None:
    """No half-stop: a round end of 5.2 mm, which meets the faces at sharp corners."""
    box = polygon([(FRONT, OPEN), (-8.0, OPEN), (-8.0, -CLOSED), (REACH, -CLOSED)])
    ahead = polygon([(-1.0, OPEN), (-1.0, -CLOSED), (REACH, -CLOSED), (FRONT, OPEN)])
    end = occ.intersect([(2, box)], [(2, disk((0, 0), 5.2))])[0][0][1]
    tang = cut(fused(end, ahead), disk((0, 0), 0.5 * PIN))
    write_dxf("round_end", {**heron(), "tang": [tang]})


def spline_back() -> None:
    """From (7, 3.1) to (27, 2.4) the back is a parabola, as a curve of the kernel's."""
    flat = [(-38.0, 0.0), (27.0, 0.0), (36.5, 0.0), (36.5, 2.5), (27.0, 2.4)]
    points = [occ.addPoint(x, y, 0.0) for x, y in flat]
    rear = [occ.addPoint(x, y, 0.0) for x, y in BACK[2:]]
    pull = occ.addPoint(17.0, 2.55, 0.0)
    curve = occ.addBezier([points[-1], pull, rear[0]])
    lines = [occ.addLine(a, b) for a, b in zip(points, points[1:], strict=False)]
    lines += [curve, *(occ.addLine(a, b) for a, b in zip(rear, rear[1:], strict=False))]
    lines.append(occ.addLine(rear[-1], points[0]))
    face = occ.addPlaneSurface([occ.addCurveLoop(lines)])
    spring = cut(face, disk(MIDDLE_HOLE, 0.5 * HOLE), disk(REAR_HOLE, 0.5 * HOLE))
    write_dxf("spline_back", {**heron(), "spring": [spring]})


def hole_breaks_out() -> None:
    """The rear hole stands so near the back that it is a notch."""
    face = polygon([(-38.0, 0.0), (27.0, 0.0), (36.5, 0.0), *BACK])
    spring = cut(face, disk(MIDDLE_HOLE, 1.0), disk((-REAR, 3.1), 1.0))
    write_dxf("hole_breaks_out", {**heron(), "spring": [spring]})


def two_halves() -> None:
    """The spring is cut in two behind the middle pin, and never joined."""
    parts = heron()
    saw = polygon([(-12.0, -1.0), (-11.5, -1.0), (-11.5, 9.0), (-12.0, 9.0)])
    halves = occ.cut([(2, parts["spring"][0])], [(2, saw)])[0]
    write_dxf("two_halves", {**parts, "spring": [tag for _, tag in halves]})


DRAWINGS: tuple[Callable[[], None], ...] = (
    fillets_and_holes, all_splines, svg_arcs, inches, mirrored, turned, gaps, wide_gaps, kick,
    round_end, spline_back, hole_breaks_out, two_halves,
)  # fmt: skip


def main() -> None:
    """Make every drawing anew."""
    gmsh.initialize()
    gmsh.option.setNumber("General.Verbosity", 2)
    for each in DRAWINGS:
        gmsh.clear()
        each()
    gmsh.finalize()


if __name__ == "__main__":
    main()
