"""E. P. Popov, Engineering Mechanics of Solids, example 10.1, p. 501: steel band over a pulley.

Read in a worked notebook that follows the book (edition not stated there) and recomputed: 0.6 mm
band, pulley of 400 mm diameter, E = 200 GPa gives 300 MPa, which is exact. The moment that bends
the band to the pulley comes from the library's curvature per moment.
"""

from agreement import Agree
from backspring import _core as core
from published.beam import cantilever, uniform


def test_example_10_1_band_bent_to_a_radius(agree: Agree) -> None:
    length_mm, width_mm, thickness_mm, radius_mm = 100.0, 12.0, 0.6, 200.0
    band = cantilever(uniform(length_mm, thickness_mm), width_mm, 200e3)
    turn = core.bending_integrals(core.make_flexibility(band), length_mm).a0
    moment_nmm = length_mm / radius_mm / turn
    section = core.make_section(width_mm, thickness_mm)
    agree(
        "example 10.1, stress of the band [MPa]",
        moment_nmm * core.outer_stress_per_moment(section),
        300.0,
        rel=1e-12,
    )
