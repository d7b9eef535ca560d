"""T. H. Brown, Marks' Calculations for Machine Design, sec. 2.2.7: load on an overhanging end.

The bulge of the span between the supports is read in the book, in both systems of units, and
recomputed; the deflection of the loaded end is derived, P a^2 (L + a)/(3 E I). The library gives
the rotation at the near support; a uniform span that turns there by phi bulges by
phi L/(3 sqrt 3), at L/sqrt 3 from the far support.

Tolerance: half of the last digit printed for what is read, 1e-10 for what is derived. Units as
printed: ft and lb, or m and N.
"""

from math import sqrt

from agreement import Agree
from backspring import _core as core
from published.beam import overhang, tip_deflection, uniform, width_for

IN_PER_FT = 12.0
CM_PER_M = 100.0
DEPTH = 0.1


def _beam(span: float, reach: float, stiffness: float) -> core.Spring:
    """A beam of bending stiffness E I, with E = 1."""
    thickness = [(-span, DEPTH), *uniform(reach, DEPTH)]
    return overhang(thickness, width_for(stiffness, DEPTH), 1.0, span)


def _bulge(beam: core.Spring, span: float, moment: float) -> float:
    rotation = moment * core.make_flexibility(beam).root_rotation_rad_per_nmm
    return rotation * span / (3.0 * sqrt(3.0))


def test_overhang_in_us_units(agree: Agree) -> None:
    force, reach, span, stiffness = 450.0, 1.0, 3.0, 2.5e6
    beam = _beam(span, reach, stiffness)
    agree(
        "bulge between the supports, US units [in]",
        _bulge(beam, span, force * reach) * IN_PER_FT,
        0.0012,
        abs=5e-5,
    )
    agree(
        "deflection of the loaded end, US units [in]",
        tip_deflection(beam, force) * IN_PER_FT,
        0.00288,
        rel=1e-10,
    )


def test_overhang_in_si_units(agree: Agree) -> None:
    force, reach, span, stiffness = 2000.0, 0.3, 1.0, 1.02e6
    beam = _beam(span, reach, stiffness)
    agree(
        "bulge between the supports, SI units [cm]",
        _bulge(beam, span, force * reach) * CM_PER_M,
        0.0038,
        abs=5e-5,
    )
    derived_m = force * reach**2 * (span + reach) / (3.0 * stiffness)
    agree(
        "deflection of the loaded end, SI units [m]",
        tip_deflection(beam, force),
        derived_m,
        rel=1e-10,
    )
