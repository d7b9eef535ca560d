"""The nonlinear beam on its pins, with the tang against its pad and its end against a stop.

Contact force, its place, the stop's force and the blade's angle are found together by Newton's
method on the bent shape. Friction at the contact and at the stop turns the forces there: a force
acts where the faces meet, so its couple on the beam is in it. Seats that give and clearances of
the pins move the holes. Blade angle: 0 closed, 180 open.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np

from .nonlinear_beam import Design, Force, Place, Spring, Steps, turned

STEP_MM = 1.0
PAD_STEP_MM = 2.0


@dataclass(frozen=True)
class Stop:
    """Where the spring's end bears on the blade's stop, and the friction there.

    height_mm: above the belly. friction: + drags the spring's end outward. face_mm: the stop's
    face ahead of the pivot; the blade stands at 180 deg where left out.
    """

    height_mm: float
    friction: float = 0.0
    face_mm: float | None = None


@dataclass(frozen=True)
class Extras:
    """What a drawing leaves out. Triples: middle pin, rear pin, pivot."""

    stop: Stop | None = None
    friction: float = 0.0  # at the contact; + drags the spring towards its end: closing
    pivot_circle_mm: float = 0.0  # friction times radius at the pivot pin; + resists opening
    seat_mm_per_n: tuple[float, float, float] = (0.0, 0.0, 0.0)
    clearance_mm: tuple[float, float, float] = (0.0, 0.0, 0.0)
    belly: list[tuple[float, float]] = field(default_factory=list)


class Piece(NamedTuple):
    """An arc of the tang (radius above 0), or a flat through a point square to a direction."""

    u_mm: float
    w_mm: float
    radius_mm: float
    normal_deg: float  # of a flat, blade open


class Bent(NamedTuple):
    """The joint in equilibrium."""

    blade_angle_deg: float
    station_mm: float  # of the contact
    push: Force  # of the tang on the spring
    stop_n: float
    torque_nmm: float  # of contact and pivot pin on the blade, + resists opening
    path: list[Place]
    middle_pin: Force  # of the pin on the spring
    rear_pin_n: float  # outward

    def back_mm(self, spring: Spring, x_mm: float) -> float:
        """Height of the back where a dial at a place of the frame touches it."""
        points = [
            (p.x + d[0], p.y + d[1])
            for p in self.path
            if p.station > 0.0
            for d in [turned(p.turn, 0.0, 0.5 * spring.thickness(p.station))]
        ]
        i = next(i for i, point in enumerate(points) if point[0] > x_mm) - 2
        near = points[max(i, 0) : i + 4]
        x, y = (np.array(column) for column in zip(*near, strict=True))
        return float(np.polyval(np.polyfit(x - x_mm, y, len(near) - 1), 0.0))


class NonlinearJoint:
    """One design; each question is one equilibrium."""

    def __init__(self, design: Design, extras: Extras | None = None) -> None:
        self.extras = extras or Extras()
        self.spring = Spring(design, self.extras.belly)
        tang, fit = design["tang"], design["fit"]
        self.pivot_mm = float(tang["pivot"])
        self.dial_mm = float(fit["dial"])
        self.open_mm, self.closed_mm = float(tang["open"]), float(tang["closed"])
        self.half_mm = float(tang["half_stop"])
        radius = tang["corner_radius"]
        self.radii = radius if isinstance(radius, list) else (radius, radius)
        self.preload_mm = float(fit["preload"])
        rear, start, self.end_mm = self.spring.rear_mm, *self.spring.pad
        self.rear = Steps(self.spring, rear, 0.0, STEP_MM)
        self.overhang = Steps(self.spring, 0.0, start, STEP_MM)

    def piece(self, name: str) -> Piece:
        """A part of the tang by its name: open_half, half_closed, half_stop or closed."""
        r1, r2 = (float(r) for r in self.radii)
        return {
            "open_half": Piece(r1 - self.half_mm, self.open_mm - r1, r1, 0.0),
            "half_closed": Piece(r2 - self.half_mm, r2 - self.closed_mm, r2, 0.0),
            "half_stop": Piece(-self.half_mm, 0.0, 0.0, 180.0),
            "closed": Piece(0.0, -self.closed_mm, 0.0, 270.0),
        }[name]

    def at(self, blade_angle_deg: float, piece: str) -> Bent:
        """Held at an angle, bearing on a part of the tang; the stop does not touch."""
        return self._solve(piece, blade_angle_deg, balanced=False)

    def rest(self, piece: str, near_deg: float) -> Bent:
        """Free to seat: nothing turns the blade."""
        return self._solve(piece, near_deg, balanced=True)

    def open(self) -> Bent:
        """Open, on the corner behind the open face: held, or balanced against the stop."""
        return self._solve("open_half", 180.0, balanced=self.extras.stop is not None)

    def closed_and_half_stop(self) -> dict[str, Bent]:
        return {
            "half_stop": self.rest("half_stop", 91.0),
            "closed": self.rest("closed", 1.0),
        }

    def readings_mm(self) -> dict[str, float]:
        """Loaded readings against open."""
        datum = self.open().back_mm(self.spring, self.dial_mm)
        rests = self.closed_and_half_stop()
        return {n: b.back_mm(self.spring, self.dial_mm) - datum for n, b in rests.items()}

    def _solve(self, name: str, angle_deg: float, *, balanced: bool) -> Bent:
        """Unknowns: turn at the rear pin, its force, contact force and place, stop, blade."""
        stop = self.extras.stop if balanced and name == "open_half" else None
        piece = self.piece(name)
        behind = 4.0 if name == "open_half" else 0.1
        z = np.array(
            [-0.03, 60.0, 0.0, 70.0, self.pivot_mm - behind, 40.0, math.radians(angle_deg)]
        )
        free = [True] * 5 + [stop is not None, False]
        free[6] = balanced and (stop is None or stop.face_mm is not None)
        if stop is None:
            z[5] = 0.0
        step = np.array([1e-6, 1e-3, 1e-3, 1e-3, 1e-4, 1e-3, 1e-6])
        which = np.flatnonzero(free)
        for _ in range(40):
            lack = self._lacks(z, piece, stop, balanced=balanced)[0]
            slopes = []
            for i in which:
                moved = z.copy()
                moved[i] += step[i]
                there = self._lacks(moved, piece, stop, balanced=balanced)[0]
                slopes.append((there - lack) / step[i])
            change = np.linalg.solve(np.array(slopes).T, -lack)
            z[which] += change * min(1.0, 3.0 / max(abs(change[4]), 1e-9))
            if np.all(np.abs(change) < 1e-3 * step[which]):
                return self._lacks(z, piece, stop, balanced=balanced)[1]
        raise ArithmeticError(f"no equilibrium on {name} at {angle_deg} deg")

    def _lacks(
        self, z: np.ndarray, piece: Piece, stop: Stop | None, *, balanced: bool
    ) -> tuple[np.ndarray, Bent]:
        """What is missing to equilibrium and contact, and the joint so far."""
        turn, rear_n, push_x, push_y, station, stop_n, blade = (float(v) for v in z)
        ex, psi = self.extras, blade - math.pi
        push = Force(push_x, push_y)
        stopped = Force(*turned(psi, -stop_n, (stop.friction if stop else 0.0) * stop_n))
        ahead = Force(push.x + stopped.x, push.y + stopped.y)
        middle = Force(-ahead.x, -(rear_n + ahead.y))
        gives = [
            c / 2.0 + k * f
            for c, k, f in zip(
                ex.clearance_mm, ex.seat_mm_per_n, (-middle.y, rear_n, push.y), strict=True
            )
        ]
        lift = self.preload_mm * -self.spring.rear_mm / self.pivot_mm
        rear = self.spring.rear_mm
        y = self.open_mm + self.spring.mid_line(rear) + lift - gives[1]
        path: list[Place] = []
        root = self.rear.walk(Place(rear, rear, y, turn, 0.0), Force(0.0, -rear_n), path)
        pin_lack = root.y - (self.open_mm + self.spring.mid_line(0.0) + gives[0])
        root = root._replace(x=0.0)
        path.append(root)
        pad = self.overhang.walk(root, ahead, path)
        at = Steps(self.spring, self.spring.pad[0], station, PAD_STEP_MM).walk(pad, ahead, path)
        point, along = self._face(at, Force(ahead.x - push.x / 2.0, ahead.y - push.y / 2.0))
        arm = (point[0] - at.x, point[1] - at.y)
        at = at._replace(moment=at.moment - (arm[0] * push.y - arm[1] * push.x))
        end = Steps(self.spring, station, self.end_mm, PAD_STEP_MM).walk(at, stopped, path)
        half = 0.5 * self.spring.thickness(self.end_mm)
        reach = turned(end.turn, 0.0, (stop.height_mm if stop else half) - half)
        end_lack = end.moment - (reach[0] * stopped.y - reach[1] * stopped.x)
        pivot = (self.pivot_mm, -gives[2])
        lacks = [pin_lack, end_lack, *self._touch(piece, psi, point, along, pivot)]
        lacks.append(
            (push.x * along[0] + push.y * along[1])
            - ex.friction * (push.y * along[0] - push.x * along[1])
        )
        torque = (point[0] - pivot[0]) * push.y - (point[1] - pivot[1]) * push.x
        torque += ex.pivot_circle_mm * math.hypot(*push)
        bears = (end.x + reach[0] - pivot[0], end.y + reach[1] - pivot[1])
        if balanced:
            lacks.append(torque + bears[0] * stopped.y - bears[1] * stopped.x)
        if stop and stop.face_mm is not None:
            lacks.append(turned(-psi, *bears)[0] - stop.face_mm)
        bent = Bent(math.degrees(blade), station, push, stop_n, torque, path, middle, rear_n)
        return np.array(lacks), bent

    def _face(self, at: Place, force: Force) -> tuple[tuple[float, float], tuple[float, float]]:
        """The pad at a place and its direction; a mean of both sides by the mean force."""
        spring, x = self.spring, at.station
        t, taper = spring.thickness(x), spring.thickness.slope(x)
        stretch, shear, bend = spring.softness(x)
        f_along, f_across = turned(-at.turn, force.x, force.y)
        run = 1.0 + stretch * f_along + 0.5 * t * bend * at.moment
        rise = spring.mid_slope(x) + shear * f_across - 0.5 * taper
        direction = turned(at.turn + math.atan2(rise, run), 1.0, 0.0)
        down = turned(at.turn, 0.0, -0.5 * t)
        return (at.x + down[0], at.y + down[1]), direction

    @staticmethod
    def _touch(
        piece: Piece,
        psi: float,
        point: tuple[float, float],
        along: tuple[float, float],
        pivot: tuple[float, float],
    ) -> list[float]:
        """Face on an arc: its point square to it lies there; on a flat: one place, one slope."""
        u, w = turned(psi, piece.u_mm, piece.w_mm)
        x, y = point[0] - pivot[0] - u, point[1] - pivot[1] - w
        if piece.radius_mm > 0.0:
            r = piece.radius_mm
            return [x + r * along[1], y - r * along[0]]
        nx, ny = turned(psi + math.radians(piece.normal_deg), 1.0, 0.0)
        return [nx * x + ny * y, nx * along[0] + ny * along[1]]
