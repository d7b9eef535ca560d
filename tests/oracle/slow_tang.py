"""The tang's outline as flats and discs, and the top of it when it is turned.

Every piece gives its height at a station by its own exact formula; the greatest one counts.
Independent of the package under test. Units: mm, degrees for the blade angle.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from .slow_beam import Array, Design, pair


class Flat(NamedTuple):
    """A straight stretch between two points (u, w)."""

    u0_mm: float
    w0_mm: float
    u1_mm: float
    w1_mm: float


class Disc(NamedTuple):
    """A whole disc, all of it tang."""

    u_mm: float
    w_mm: float
    radius_mm: float


class Arc(NamedTuple):
    """The part of a circle between two directions from its centre (u, w)."""

    u_mm: float
    w_mm: float
    radius_mm: float
    from_rad: float
    to_rad: float


Piece = Flat | Disc | Arc


def outline(design: Design) -> list[Piece]:
    """All pieces of the tang, fixed to the blade, origin at the pivot."""
    tang = design["tang"]
    if "outline" in tang:
        return _drawn(tang["outline"])
    d_o, d_c = float(tang["open"]), float(tang["closed"])
    r_1, r_2 = pair(tang["corner_radius"])
    reach = float(tang["pivot"]) - float(design["spring"]["pad"][0]) + 4.0
    kick = tang.get("kick")
    pieces: list[Piece] = []
    if kick is not None:
        k, height, r = (float(kick[key]) for key in ("distance", "height", "radius"))
        reach = max(reach, k + r + 1.0)
        pieces.append(Disc(k, -(d_c + height - r), r))
    if tang.get("half_stop") is not None:
        d_h = float(tang["half_stop"])
        u_1, u_2 = -(d_h - r_1), -(d_h - r_2)
        pieces.append(Flat(-d_h, d_o - r_1, -d_h, -(d_c - r_2)))
    else:
        rho = round_end_radius_mm(design)
        u_1 = -math.sqrt((rho - r_1) ** 2 - (d_o - r_1) ** 2)
        u_2 = -math.sqrt((rho - r_2) ** 2 - (d_c - r_2) ** 2)
        start = math.atan2(d_o - r_1, u_1)
        stop = math.atan2(-(d_c - r_2), u_2) + 2.0 * math.pi
        pieces.append(Arc(0.0, 0.0, rho, start, stop))
    pieces.append(Disc(u_1, d_o - r_1, r_1))
    pieces.append(Disc(u_2, -(d_c - r_2), r_2))
    pieces.append(Flat(u_1, d_o, float(tang["front"]), d_o))
    pieces.append(Flat(u_2, -d_c, reach, -d_c))
    return pieces


def _drawn(rows: list[list[float]]) -> list[Piece]:
    """Flats and arcs of a convex outline drawn as rows [u, w] or [u, w, bulge]."""
    pieces: list[Piece] = []
    for (u, w, *bulge), (u1, w1, *_) in zip(rows, [*rows[1:], rows[0]], strict=True):
        if not bulge:
            pieces.append(Flat(u, w, u1, w1))
            continue
        turn, chord = 4.0 * math.atan(bulge[0]), math.hypot(u1 - u, w1 - w)
        radius = 0.5 * chord / math.sin(0.5 * turn)
        start = math.atan2(w1 - w, u1 - u) - 0.5 * turn - 0.5 * math.pi
        centre = u - radius * math.cos(start), w - radius * math.sin(start)
        pieces.append(Arc(*centre, radius, start, start + turn))
    return pieces


def open_face_mm(design: Design) -> float:
    """Height of the open face; of a drawn outline its top."""
    tang = design["tang"]
    return float(tang["open"] if "open" in tang else max(row[1] for row in tang["outline"]))


def has_half_stop(design: Design) -> bool:
    """A drawn outline here always has a flat behind."""
    tang = design["tang"]
    return tang.get("half_stop") is not None or "outline" in tang


def round_end_radius_mm(design: Design) -> float:
    """Radius of a round-ended tang: given, or such that the corners sit as on a square one."""
    tang = design["tang"]
    if tang.get("round_end") is not None:
        return float(tang["round_end"])
    faces = (float(tang["open"]), float(tang["closed"]))
    h = sum(faces) / 2.0
    radii = pair(tang["corner_radius"])
    return max(math.hypot(h - r, d - r) + r for d, r in zip(faces, radii, strict=True))


class TurnedTang:
    """The outline at one blade angle, stations measured from the middle pin."""

    def __init__(self, pieces: list[Piece], pivot_mm: float, blade_angle_deg: float) -> None:
        turn = math.radians(blade_angle_deg - 180.0)
        self._cos, self._sin = math.cos(turn), math.sin(turn)
        self._turn_rad = turn
        self._pivot_mm = pivot_mm
        self._pieces = pieces

    def _place(self, u: float, w: float) -> tuple[float, float]:
        x = self._pivot_mm + u * self._cos - w * self._sin
        return x, u * self._sin + w * self._cos

    def _flat(self, piece: Flat, x: Array) -> tuple[Array, Array]:
        x0, y0 = self._place(piece.u0_mm, piece.w0_mm)
        x1, y1 = self._place(piece.u1_mm, piece.w1_mm)
        if abs(x1 - x0) < 1e-9:
            return np.full_like(x, -np.inf), np.zeros_like(x)
        slope = (y1 - y0) / (x1 - x0)
        # The ends are handed in as stations too: they must not fall out by rounding.
        inside = (x >= min(x0, x1) - 1e-12) & (x <= max(x0, x1) + 1e-12)
        return np.where(inside, y0 + slope * (x - x0), -np.inf), np.full_like(x, slope)

    def _circle(self, centre: tuple[float, float], r: float, x: Array) -> tuple[Array, Array]:
        run = x - centre[0]
        rise = np.sqrt(np.maximum(r**2 - run**2, 0.0))
        height = np.where(np.abs(run) <= r, centre[1] + rise, -np.inf)
        return height, -run / np.maximum(rise, 1e-12)

    def _piece(self, piece: Piece, x: Array) -> tuple[Array, Array]:
        if isinstance(piece, Flat):
            return self._flat(piece, x)
        if isinstance(piece, Disc):
            return self._circle(self._place(piece.u_mm, piece.w_mm), piece.radius_mm, x)
        centre = self._place(piece.u_mm, piece.w_mm)
        height, slope = self._circle(centre, piece.radius_mm, x)
        around = np.arctan2(height - centre[1], x - centre[0]) - self._turn_rad - piece.from_rad
        inside = np.mod(around, 2.0 * math.pi) <= piece.to_rad - piece.from_rad
        return np.where(inside, height, -np.inf), slope

    def top(self, x: Array) -> tuple[Array, Array]:
        """Height above the pivot and slope of the top of the outline; -inf where there is none."""
        heights, slopes = zip(*(self._piece(piece, x) for piece in self._pieces), strict=True)
        height = np.stack(heights)
        highest = np.argmax(height, axis=0)
        each = np.arange(x.size)
        return height[highest, each], np.stack(slopes)[highest, each]

    def edges_mm(self) -> list[float]:
        """Stations where a flat ends, the sharp front edges among them."""
        ends = []
        for piece in self._pieces:
            if isinstance(piece, Flat):
                ends.append(self._place(piece.u0_mm, piece.w0_mm)[0])
                ends.append(self._place(piece.u1_mm, piece.w1_mm)[0])
        return ends
