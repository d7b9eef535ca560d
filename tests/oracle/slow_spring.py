"""Slow reference solution of a slip joint's spring, to hold the fast core against.

Pressure anywhere on the pad, torque by differencing the energy, rests by energy minimum.
Independent of the package under test. Designs are plain nested dicts in the shape of the design
file, all numbers in mm, N, MPa. Blade angle: 0 closed, 90 half-stop, 180 open.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from typing import Any

import numpy as np
from scipy.optimize import brentq, minimize_scalar

from .slow_beam import Array, Design, SlowBeam, pair
from .slow_contact import Fineness, Pressing, WorkingFace, press
from .slow_tang import TurnedTang, has_half_stop, open_face_mm, outline

USUAL = Fineness()
# Over a flat the torque turns within hundredths of a degree: the step must be far smaller.
TORQUE_STEP_DEG = 0.0005
SEARCH_DEG = 10.0
NOMINAL_DEG = {"closed": 0.0, "half_stop": 90.0}


class SlowSpring:
    """One design, with the beam's integrals done once."""

    def __init__(self, design: Design, fine: Fineness = USUAL) -> None:
        tang, fit, pad = design["tang"], design["fit"], design["spring"]["pad"]
        self.design = design
        self.fine = fine
        self.beam = SlowBeam(design, fine.cell_mm)
        self.pieces = outline(design)
        self.pivot_mm = float(tang["pivot"])
        self.dial_mm = float(fit["dial"])
        self.open_mm = open_face_mm(design)
        # Load takes play up: the spring goes outward at the middle pin, inward at the rear one and
        # at the pivot.
        middle, rear = pair(design["spring"].get("pin_clearance", 0.0))
        height = self.open_mm + 0.5 * (middle + float(tang.get("pivot_clearance", 0.0)))
        slope = -preload_mm(design) / self.pivot_mm
        slope += 0.5 * (middle + rear) / float(design["spring"]["rear_pin"])
        self.face = WorkingFace(float(pad[0]), float(pad[1]), height, slope)

    def turned(self, blade_angle_deg: float) -> TurnedTang:
        return TurnedTang(self.pieces, self.pivot_mm, blade_angle_deg)

    def pressing(self, blade_angle_deg: float, near: Pressing | None = None) -> Pressing:
        return press(self.beam, self.turned(blade_angle_deg), self.face, self.fine, near)

    def energy_nmm(self, blade_angle_deg: float) -> float:
        return self.pressing(blade_angle_deg).energy_nmm

    def torque_nmm(self, blade_angle_deg: float) -> float:
        """Torque that opens the blade against the spring: dU/dtheta by central difference."""
        ahead = self.pressing(blade_angle_deg + TORQUE_STEP_DEG)
        behind = self.pressing(blade_angle_deg - TORQUE_STEP_DEG, ahead)
        return (ahead.energy_nmm - behind.energy_nmm) / math.radians(2.0 * TORQUE_STEP_DEG)

    def rest_deg(self, nominal_deg: float) -> float:
        """Blade angle near the nominal one where the energy has its minimum."""
        low, high = _bracket(self.energy_nmm, nominal_deg)
        return float(brentq(self.torque_nmm, low, high, xtol=1e-6))

    def unloaded_turn(self, blade_angle_deg: float) -> float:
        """Rear pin out: slope of the unbent spring lying on the tang, turned about x = 0."""
        tang = self.turned(blade_angle_deg)
        low, high = self.face.start_mm, self.face.stop_mm
        best = -math.inf
        for _ in range(4):
            x = np.linspace(low, high, 1001)
            edges = np.array([e for e in tang.edges_mm() if low < e < high])
            x = np.concatenate([x, edges])
            turn = (tang.top(x)[0] - self.open_mm) / x
            best = max(best, float(turn.max()))
            place = float(x[np.argmax(turn)])
            reach = (high - low) / 500.0
            low, high = max(low, place - reach), min(high, place + reach)
        return best

    def unloaded_reading_mm(self, nominal_deg: float) -> float:
        """Back of the unbent spring at the dial, seated, relative to open."""
        low, high = _bracket(self.unloaded_turn, nominal_deg)
        seat = minimize_scalar(
            self.unloaded_turn, bounds=(low, high), method="bounded", options={"xatol": 1e-6}
        )
        return float(seat.fun - self.unloaded_turn(180.0)) * self.dial_mm

    def state(self, blade_angle_deg: float) -> dict[str, Any]:
        pressing = self.pressing(blade_angle_deg)
        x, force = pressing.station_mm, pressing.force_n
        total = float(force.sum())
        stress, station = self.beam.peak_stress(x, force)
        at_dial = self.beam.flexibility(np.full_like(x, self.dial_mm), x) @ force
        return {
            "blade_angle_deg": blade_angle_deg,
            "force_n": total,
            "energy_nmm": pressing.energy_nmm,
            "resultant_from_pivot_mm": float(force @ x) / total - self.pivot_mm if total else 0.0,
            "peak_stress_mpa": stress,
            "peak_stress_station_mm": station,
            "dial_deflection_mm": float(at_dial),
            "contacts": contacts(pressing, self.pivot_mm),
        }


def _bracket(value: Callable[[float], float], nominal_deg: float) -> tuple[float, float]:
    """Walk downhill from the nominal angle in whole degrees, to the neighbours of the lowest."""
    at, low = nominal_deg, value(nominal_deg)
    step = 1.0 if value(at + 1.0) < value(at - 1.0) else -1.0
    while (ahead := value(at + step)) < low:
        at, low = at + step, ahead
        if abs(at - nominal_deg) > SEARCH_DEG:
            raise ValueError(f"no rest within {SEARCH_DEG} deg of {nominal_deg} deg")
    return at - 1.0, at + 1.0


def preload_mm(design: Design) -> float:
    """Interference at the pivot station, given or from the rear-pin offset."""
    fit = design["fit"]
    if fit.get("preload") is not None:
        return float(fit["preload"])
    rear_pin = float(design["spring"]["rear_pin"])
    return float(fit["rear_pin_offset"]) * float(design["tang"]["pivot"]) / rear_pin


def contacts(pressing: Pressing, pivot_mm: float) -> Array:
    """Rows of place ahead of the pivot, force, height above the pivot, slope."""
    place = pressing.station_mm - pivot_mm
    return np.stack([place, pressing.force_n, pressing.height_mm, pressing.slope], axis=1)


def lever_torque_nmm(contact_rows: Array) -> float:
    """The same torque by levers: a normal force at each contact, no friction."""
    place, force, height, slope = contact_rows.T
    return float(force @ (place + slope * height))


def friction_torque_nmm(
    contact_rows: Array, spring_friction: float, pivot_friction: float, pivot_pin_mm: float
) -> float:
    """What Coulomb friction adds to the opening torque and takes from the closing one."""
    place, force, height, slope = contact_rows.T
    sliding = float(force @ np.abs(height - slope * place))
    return spring_friction * sliding + pivot_friction * float(force.sum()) * pivot_pin_mm / 2.0


def stiffness_n_per_mm(design: Design, fine: Fineness = USUAL) -> float:
    """Force per deflection at the pivot station."""
    pivot = np.array([float(design["tang"]["pivot"])])
    return float(1.0 / SlowBeam(design, fine.cell_mm).flexibility(pivot, pivot)[0])


def solve_rests(design: Design, fine: Fineness = USUAL) -> dict[str, dict[str, Any]]:
    """Every rest by name, with its state and its readings relative to open."""
    spring = SlowSpring(design, fine)
    rests = {"open": spring.state(180.0)}
    rests["open"]["reading_unloaded_mm"] = 0.0
    names = ["half_stop", "closed"] if has_half_stop(design) else ["closed"]
    for name in names:
        rests[name] = spring.state(spring.rest_deg(NOMINAL_DEG[name]))
        rests[name]["reading_unloaded_mm"] = spring.unloaded_reading_mm(NOMINAL_DEG[name])
    for rest in rests.values():
        above = rest["dial_deflection_mm"] - rests["open"]["dial_deflection_mm"]
        rest["reading_loaded_mm"] = above
    return rests


def loaded_reading_mm(design: Design, name: str) -> float:
    """The reading of one rest alone, relative to open."""
    spring = SlowSpring(design)
    rest_deg = spring.rest_deg(NOMINAL_DEG[name])
    there, at_open = (spring.state(angle)["dial_deflection_mm"] for angle in (rest_deg, 180.0))
    return float(there - at_open)


def torque_nmm(design: Design, angles_deg: Iterable[float], fine: Fineness = USUAL) -> Array:
    """Frictionless torque resisting opening at each blade angle."""
    spring = SlowSpring(design, fine)
    return np.array([spring.torque_nmm(float(angle)) for angle in angles_deg])


def travel(design: Design, step_deg: float = 1.0, fine: Fineness = USUAL) -> dict[str, Any]:
    """The travel from the closed rest to open at whole steps, with its worst stress and force."""
    spring = SlowSpring(design, fine)
    first = math.ceil(spring.rest_deg(0.0) / step_deg)
    angles = step_deg * np.arange(first, math.floor(180.0 / step_deg) + 1)
    states = [spring.state(float(angle)) for angle in angles]
    names = ("force_n", "energy_nmm", "peak_stress_mpa", "peak_stress_station_mm")
    columns = {name: np.array([s[name] for s in states]) for name in names}
    stress, force = columns["peak_stress_mpa"], columns["force_n"]
    return {
        "blade_angle_deg": angles,
        **columns,
        "worst_stress_mpa": float(stress.max()),
        "worst_stress_angle_deg": float(angles[stress.argmax()]),
        "largest_force_n": float(force.max()),
        "largest_force_angle_deg": float(angles[force.argmax()]),
    }
