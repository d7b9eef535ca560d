"""The beams of the published cases, written as springs of the library.

A cantilever is a spring clamped at its middle pin; a beam that overhangs its supports is a spring
on two pins, the far support its rear pin and the near one its middle pin. Numbers go in as the
source prints them, whatever unit a field's name ends in: beam theory holds in any consistent
units.

The library always counts shear, most sources count bending only. Their beams are made of a steel
that does not shear: G = E / (2 (1 + nu)) grows without limit as Poisson's ratio goes to -1.
"""

from collections.abc import Sequence

import numpy as np

from backspring import _core as core
from stations import stations

RIGID_IN_SHEAR = -1.0 + 1e-12

Profile = Sequence[tuple[float, float]]


def cantilever(
    thickness: Profile, width: float, modulus: float, poisson: float = RIGID_IN_SHEAR
) -> core.Spring:
    return _spring(thickness, width, modulus, poisson, core.Support(kind=core.SupportKind.clamped))


def overhang(
    thickness: Profile,
    width: float,
    modulus: float,
    span: float,
    poisson: float = RIGID_IN_SHEAR,
) -> core.Spring:
    pins = core.Support(kind=core.SupportKind.two_pins, rear_pin_mm=span)
    return _spring(thickness, width, modulus, poisson, pins)


def uniform(length: float, depth: float) -> Profile:
    return [(0.0, depth), (length, depth)]


def width_for(inertia: float, depth: float) -> float:
    """Width of the rectangle that has the inertia a source gives instead of sides."""
    return 12.0 * inertia / depth**3


def tip(spring: core.Spring) -> float:
    return spring.thickness[-1].x_mm


def deflection(spring: core.Spring, at: float, load_at: float, force: float) -> float:
    return force * core.deflection_per_force(core.make_flexibility(spring), at, load_at)


def slope(spring: core.Spring, at: float, load_at: float, force: float) -> float:
    return force * core.slope_per_force(core.make_flexibility(spring), at, load_at)


def tip_deflection(spring: core.Spring, force: float) -> float:
    return deflection(spring, tip(spring), tip(spring), force)


def tip_slope(spring: core.Spring, force: float) -> float:
    return slope(spring, tip(spring), tip(spring), force)


def spread_load_deflection(
    spring: core.Spring, at: float, per_length: float, start: float, end: float
) -> float:
    """Deflection under an even load, summed from the influence of its parts.

    Over a uniform stretch the influence is a cubic, which two Gauss points integrate exactly.
    """
    flexibility = core.make_flexibility(spring)
    places, weights = np.polynomial.legendre.leggauss(2)
    half = 0.5 * (end - start)
    influence = [
        core.deflection_per_force(flexibility, at, start + half * (1.0 + p)) for p in places
    ]
    return per_length * half * float(np.dot(weights, influence))


def belly_stress(spring: core.Spring, at: float, force: float) -> float:
    """Tension in the belly at a station under a force at the tip."""
    load = core.Load(x_mm=tip(spring), force_n=force)
    return core.fibre_stress(spring, [load], at).belly_mpa


def peak_stress(spring: core.Spring, force: float) -> core.PeakStress:
    load = core.Load(x_mm=tip(spring), force_n=force)
    return core.peak_stress(core.make_stress_probe(spring), [load])


def _spring(
    thickness: Profile, width: float, modulus: float, poisson: float, support: core.Support
) -> core.Spring:
    return core.Spring(
        thickness=stations(thickness),
        width_mm=width,
        support=support,
        elastic=core.Elastic(youngs_modulus_mpa=modulus, poisson=poisson),
    )
