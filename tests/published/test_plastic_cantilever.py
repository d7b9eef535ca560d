"""Derived: an end-loaded cantilever of elastic, perfectly plastic steel beyond first yield.

With s = P/Py the tip sinks delta/delta_y = [5 - (3 + s) sqrt(3 - 2 s)]/s^2, the integral of
curvature times distance, and delta/delta_y - s stays. Evaluated apart to nine digits; the same form
is classical. The library sums curvature by quadrature: 5e-7 of delta_y, and 3e-3 at s = 1.5, where
the curvature at the root has no limit.
"""

import pytest

from agreement import Agree
from backspring import _core as core
from published.beam import cantilever, tip_deflection, uniform

LENGTH_MM, DEPTH_MM, WIDTH_MM = 60.0, 3.0, 2.5
YIELD_MPA, MODULUS_MPA = 1500.0, 207000.0
BEAM = cantilever(uniform(LENGTH_MM, DEPTH_MM), WIDTH_MM, MODULUS_MPA)
YIELD_FORCE_N = YIELD_MPA * WIDTH_MM * DEPTH_MM**2 / 6.0 / LENGTH_MM
YIELD_DEFLECTION_MM = YIELD_FORCE_N * LENGTH_MM**3 / (3.0 * MODULUS_MPA * 5.625)


def tip_set(share: float) -> float:
    """Permanent deflection over the one at first yield."""
    load = core.Load(x_mm=LENGTH_MM, force_n=share * YIELD_FORCE_N)
    return core.bend_by_force(BEAM, [load], YIELD_MPA).shift.at_mm(LENGTH_MM) / YIELD_DEFLECTION_MM


@pytest.mark.parametrize(
    ("share", "printed_set", "printed_deflection"),
    [
        (1.0, 0.0, 1.0),
        (1.1, 0.0015277, 1.1015277),
        (1.2, 0.01298194, 1.21298194),
        (1.3, 0.04937350, 1.34937350),
        (1.4, 0.14707152, 1.54707152),
        (1.45, 0.25881638, 1.70881638),
    ],
)
def test_tip_under_load_and_let_go(
    agree: Agree, share: float, printed_set: float, printed_deflection: float
) -> None:
    stays = tip_set(share)
    elastic = tip_deflection(BEAM, share * YIELD_FORCE_N) / YIELD_DEFLECTION_MM
    agree(
        f"set at {share:g} of the yield force, over the yield deflection",
        stays,
        printed_set,
        abs=5e-7,
    )
    agree(
        f"deflection at {share:g} of the yield force, the same way",
        elastic + stays,
        printed_deflection,
        abs=5e-7,
    )


def test_set_at_the_greatest_force_it_bears(agree: Agree) -> None:
    agree(
        "set at 1.5 of the yield force, the same way",
        tip_set(1.5 * (1.0 - 1e-9)),
        0.72222222,
        abs=3e-3,
    )


def test_holding_the_tip_out_finds_the_force(agree: Agree) -> None:
    """The inverse: held at 1.2129819 of the yield deflection it bears 1.2 of the yield force."""
    hold = core.Hold(x_mm=LENGTH_MM, rise_mm=1.21298194 * YIELD_DEFLECTION_MM)
    held = core.bend_by_hold(BEAM, [hold], YIELD_MPA)
    agree(
        "force found from the deflection [N]", held.loads[0].force_n, 1.2 * YIELD_FORCE_N, rel=1e-7
    )


def test_yielding_reaches_to_where_the_moment_is_the_yield_moment(agree: Agree) -> None:
    load = core.Load(x_mm=LENGTH_MM, force_n=1.2 * YIELD_FORCE_N)
    (zone,) = core.bend_by_force(BEAM, [load], YIELD_MPA).zones
    agree("yielded zone from [mm]", zone.from_mm, 0.0, abs=1e-2)
    agree("yielded zone to [mm]", zone.to_mm, LENGTH_MM / 6.0, abs=1e-2)
    agree("depth that has yielded at the wall [mm]", zone.depth_mm, 1.5 - 1.1618950, abs=1e-2)


@pytest.mark.parametrize(
    ("share", "core_mm", "curvature_per_mm", "residual_per_mm"),
    [(1.2, 1.1618950, 0.0062366882, 0.0004395867), (1.4, 0.6708204, 0.0108022608, 0.0040389757)],
)
def test_strip_section(
    agree: Agree, share: float, core_mm: float, curvature_per_mm: float, residual_per_mm: float
) -> None:
    """Evaluated apart: My = 5625 N mm, curvature at yield 0.0048309179 /mm."""
    section = core.make_plastic_section(WIDTH_MM, DEPTH_MM, MODULUS_MPA, YIELD_MPA)
    assert section.yield_moment_nmm == pytest.approx(5625.0, rel=1e-12)
    assert section.yield_curvature_per_mm == pytest.approx(0.0048309179, rel=1e-8)
    bent = core.bend_section(section, share * 5625.0)
    agree(f"elastic core at {share:g} of the yield moment [mm]", bent.core_mm, core_mm, rel=1e-7)
    agree(
        f"curvature at {share:g} of the yield moment [1/mm]",
        bent.curvature_per_mm,
        curvature_per_mm,
        rel=1e-8,
    )
    left = core.residual_curvature_per_mm(section, share * 5625.0)
    agree(
        f"curvature left after {share:g} of the yield moment [1/mm]",
        left,
        residual_per_mm,
        rel=1e-7,
    )
