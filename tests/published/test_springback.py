"""Springback of bent strip, Ri/Rf = 4 X^3 - 3 X + 1 with X = sY Ri/(E t).

The formula was read on a calculator's page (novasolver.jp, spring-back); its example, 300 MPa,
210 GPa, 2 mm bent to a radius of 50 mm, evaluated apart: Ri/Rf = 0.8930393586.
"""

import pytest

from agreement import Agree
from backspring import _core as core


def test_strip_bent_to_a_radius_and_let_go(agree: Agree) -> None:
    section = core.make_plastic_section(1.0, 2.0, 210e3, 300.0)
    radius_mm = 50.0
    half_core = 300.0 * radius_mm / 210e3
    moment = 1.5 * section.yield_moment_nmm * (1.0 - half_core**2 / 3.0)
    assert core.bend_section(section, moment).curvature_per_mm == pytest.approx(1.0 / 50.0)
    ratio = core.residual_curvature_per_mm(section, moment) * radius_mm
    agree("ratio of radii", ratio, 0.8930393586, rel=1e-9)
    agree("radius after springback [mm]", radius_mm / ratio, 55.98857, rel=1e-7)
