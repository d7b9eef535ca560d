"""The slow beam, held to closed forms and to plain strips."""

from __future__ import annotations

import numpy as np
import pytest

from oracle.designs import Design, generated_designs
from oracle.slow_beam import SlowBeam

CELL_MM = 0.001


def test_deflection_of_an_overhang_on_two_pins() -> None:
    """Closed form P a^2 (L + a)/(3 E I) + P a (1 + a/L)/(kappa G A), and its tapered kin."""
    modulus, shear_modulus = 207000.0, 80000.0
    design: Design = {
        "spring": {
            "youngs_modulus": modulus,
            "poisson": modulus / (2.0 * shear_modulus) - 1.0,
            "width": 2.5,
            "thickness": 3.5,
            "support": "two-pins",
            "rear_pin": 25.0,
            "pin_hole": 0.0,
            "pad": [30.0, 40.0],
        },
        "tang": {"pivot": 40.0},
        "fit": {"dial": 40.0},
    }
    tip = np.array([40.0])
    shear = 40.0 * (1.0 + 40.0 / 25.0) / (5.0 / 6.0 * shear_modulus * 8.75)
    even = SlowBeam(design, CELL_MM)
    bending = 40.0**2 * 65.0 / (3.0 * modulus * 2.5 * 3.5**3 / 12.0)
    assert even.flexibility(tip, tip)[0] == pytest.approx(bending + shear, rel=1e-8)

    design["spring"]["thickness"] = [[-25.0, 3.5], [0.0, 3.5], [40.0, 1.75]]
    taper_bending = 3.0 / 0.5**3 * (np.log(2.0) - 0.5 * 2.5 / 2.0)
    overhang = 40.0**3 / (3.0 * modulus * 2.5 * 3.5**3 / 12.0) * taper_bending
    span = 40.0**2 * 25.0 / (3.0 * modulus * 2.5 * 3.5**3 / 12.0)
    taper_shear = (40.0**2 / 25.0 + 40.0 * np.log(2.0) / 0.5) / (5.0 / 6.0 * shear_modulus * 8.75)
    tapered = SlowBeam(design, CELL_MM)
    assert tapered.flexibility(tip, tip)[0] == pytest.approx(
        span + overhang + taper_shear, rel=1e-8
    )


def test_net_section_of_an_eccentric_hole_is_what_its_strips_add_up_to() -> None:
    design = dict(generated_designs(5, seed=7)[4][1])
    beam = SlowBeam(design, CELL_MM)
    hole, offset = beam.hole_mm[0], beam.hole_offset_mm[0]
    cut = beam.section(np.array([0.25 * hole]))
    t = float(cut.thickness_mm[0])
    y = (np.arange(200000) + 0.5) / 200000 * t - t / 2.0
    solid = np.abs(y - offset) > 0.5 * hole * np.sqrt(0.75)
    strip = beam.width_mm * t / y.size
    centroid = y[solid].mean()
    assert cut.area_mm2[0] == pytest.approx(strip * solid.sum(), rel=1e-5)
    assert cut.centroid_mm[0] == pytest.approx(centroid, abs=1e-5)
    assert cut.inertia_mm4[0] == pytest.approx(strip * ((y[solid] - centroid) ** 2).sum(), rel=1e-5)
