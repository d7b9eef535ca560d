"""Faces of the kernel written as DXF and SVG, edge by edge."""

from __future__ import annotations

import math
from pathlib import Path

import ezdxf
import gmsh

HERE = Path(__file__).parent
_STEPS = 60
Pieces = list[tuple[str, list[tuple[float, float]]]]
occ = gmsh.model.occ


def pieces_of(face: int) -> Pieces:
    """Every edge of a face, as the kernel has it: a line, an arc, a circle or a curve's points."""
    occ.synchronize()
    found: Pieces = []
    for _, edge in gmsh.model.getBoundary([(2, face)], combined=False, oriented=False):
        (low,), (high,) = gmsh.model.getParametrizationBounds(1, edge)
        flat = gmsh.model.getValue(
            1, edge, [low + (high - low) * i / _STEPS for i in range(_STEPS + 1)]
        )
        places = [(flat[3 * i], flat[3 * i + 1]) for i in range(_STEPS + 1)]
        half = _STEPS // 2
        if is_straight(places):
            found.append(("Line", [places[0], places[-1]]))
        elif math.dist(places[0], places[-1]) < 1e-9:
            found.append(("Whole", [places[0], places[half]]))
        elif is_round(places):
            found.append(("Circle", [places[0], places[half], places[-1]]))
        else:
            found.append(("Curve", places))
    return found


def is_straight(places: list[tuple[float, float]]) -> bool:
    """Whether all places lie on the line from the first to the last."""
    a, b = complex(*places[0]), complex(*places[-1])
    off = (((complex(*each) - a) * (b - a).conjugate()).imag for each in places)
    return a != b and max(map(abs, off)) < 1e-9 * abs(b - a)


def is_round(places: list[tuple[float, float]]) -> bool:
    """Whether all places lie on the circle through three of them."""
    center, radius = circle_through([places[0], places[_STEPS // 2], places[-1]])
    return all(abs(abs(complex(*each) - center) - radius) < 1e-9 for each in places)


def circle_through(places: list[tuple[float, float]]) -> tuple[complex, float]:
    """Centre and radius of the circle through three places."""
    a, b, c = (complex(*place) for place in places)
    w = (c - a) / (b - a)
    center = (b - a) * (w - abs(w) ** 2) / (2j * w.imag) + a
    return center, abs(a - center)


Parts = dict[str, list[int]]


def write_dxf(
    name: str, parts: Parts, units: int = 4, gap: float = 0.0, as_splines: bool = False
) -> None:
    """Write lines, arcs, circles and splines, or all but circles as splines.

    Each line's end falls short by a gap.
    """
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = units
    space = document.modelspace()
    for layer, faces in parts.items():
        on = {"layer": layer}
        for kind, places in (piece for face in faces for piece in pieces_of(face)):
            if kind == "Whole":
                center = 0.5 * (complex(*places[0]) + complex(*places[1]))
                radius = 0.5 * math.dist(places[0], places[1])
                space.add_circle((center.real, center.imag), radius, on)
            elif as_splines:
                space.add_spline(places, dxfattribs=on)
            elif kind == "Circle":
                center, radius = circle_through(places)
                ends = [math.degrees(math.atan2(y - center.imag, x - center.real))
                        for x, y in (places[0], places[2])]  # fmt: skip
                a, b, c = (complex(*place) for place in places)
                turned = ((c - b) / (b - a)).imag > 0.0
                first, last = ends if turned else ends[::-1]
                space.add_arc((center.real, center.imag), radius, first, last, dxfattribs=on)
            elif kind == "Line":
                (x, y), (u, v) = places
                share = 1.0 - gap / math.dist(*places)
                space.add_line((x, y), (x + share * (u - x), y + share * (v - y)), on)
            else:
                space.add_spline(places, dxfattribs=on)
    document.saveas(HERE / f"{name}.dxf")


def write_svg(name: str, parts: Parts) -> None:
    """Write paths with arcs as the format has them."""
    lines = ['<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="60mm" '
             'viewBox="-120 -30 200 60">']  # fmt: skip
    for layer, faces in parts.items():
        lines.append(f'<g id="{layer}" fill="none" stroke="black">')
        for kind, places in (piece for face in faces for piece in pieces_of(face)):
            flat = [(x, -y) for x, y in places]
            start, end = (f"{x:.12f} {y:.12f}" for x, y in (flat[0], flat[-1]))
            if kind == "Whole":
                x, y = (0.5 * (a + b) for a, b in zip(flat[0], flat[1], strict=True))
                radius = 0.5 * math.dist(flat[0], flat[1])
                lines.append(f'<circle cx="{x:.12f}" cy="{y:.12f}" r="{radius:.12f}"/>')
            elif kind == "Circle":
                center, radius = circle_through(flat)
                a, b, c = (complex(*place) for place in flat)
                sweep = int(((c - b) / (b - a)).imag > 0.0)
                lines.append(
                    f'<path d="M {start} A {radius:.12f} {radius:.12f} 0 0 {sweep} {end}"/>'
                )
            else:
                lines.append(f'<path d="M {start} L {end}"/>')
        lines.append("</g>")
    (HERE / f"{name}.svg").write_text("\n".join([*lines, "</svg>\n"]), "utf-8")
