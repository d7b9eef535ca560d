"""An end-loaded cantilever of elastic, perfectly plastic steel beyond first yield, in closed form.

With s = P/Py the tip sinks delta/delta_y = [5 - (3 + s) sqrt(3 - 2 s)]/s^2, the integral of
curvature times distance, and delta/delta_y - s stays. Derived apart and evaluated to nine digits;
the same form is classical. The library sums curvature by quadrature: 5e-7 of delta_y, and 3e-3 at
s = 1.5, where the curvature at the root has no limit.
"""

import pytest

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
    share: float, printed_set: float, printed_deflection: float
) -> None:
    stays = tip_set(share)
    elastic = tip_deflection(BEAM, share * YIELD_FORCE_N) / YIELD_DEFLECTION_MM
    assert stays == pytest.approx(printed_set, abs=5e-7)
    assert elastic + stays == pytest.approx(printed_deflection, abs=5e-7)


def test_set_at_the_greatest_force_it_bears() -> None:
    assert tip_set(1.5 * (1.0 - 1e-9)) == pytest.approx(0.72222222, abs=3e-3)


def test_holding_the_tip_out_finds_the_force() -> None:
    """The inverse: held at 1.2129819 of the yield deflection it bears 1.2 of the yield force."""
    hold = core.Hold(x_mm=LENGTH_MM, rise_mm=1.21298194 * YIELD_DEFLECTION_MM)
    held = core.bend_by_hold(BEAM, [hold], YIELD_MPA)
    assert held.loads[0].force_n == pytest.approx(1.2 * YIELD_FORCE_N, rel=1e-7)


def test_yielding_reaches_to_where_the_moment_is_the_yield_moment() -> None:
    load = core.Load(x_mm=LENGTH_MM, force_n=1.2 * YIELD_FORCE_N)
    (zone,) = core.bend_by_force(BEAM, [load], YIELD_MPA).zones
    assert zone.from_mm == pytest.approx(0.0, abs=1e-2)
    assert zone.to_mm == pytest.approx(LENGTH_MM / 6.0, abs=1e-2)
    assert zone.depth_mm == pytest.approx(1.5 - 1.1618950, abs=1e-2)


@pytest.mark.parametrize(
    ("share", "core_mm", "curvature_per_mm", "residual_per_mm"),
    [(1.2, 1.1618950, 0.0062366882, 0.0004395867), (1.4, 0.6708204, 0.0108022608, 0.0040389757)],
)
def test_strip_section(
    share: float, core_mm: float, curvature_per_mm: float, residual_per_mm: float
) -> None:
    """Evaluated apart: My = 5625 N mm, curvature at yield 0.0048309179 /mm."""
    section = core.make_plastic_section(WIDTH_MM, DEPTH_MM, MODULUS_MPA, YIELD_MPA)
    assert section.yield_moment_nmm == pytest.approx(5625.0, rel=1e-12)
    assert section.yield_curvature_per_mm == pytest.approx(0.0048309179, rel=1e-8)
    bent = core.bend_section(section, share * 5625.0)
    assert bent.core_mm == pytest.approx(core_mm, rel=1e-7)
    assert bent.curvature_per_mm == pytest.approx(curvature_per_mm, rel=1e-8)
    left = core.residual_curvature_per_mm(section, share * 5625.0)
    assert left == pytest.approx(residual_per_mm, rel=1e-7)
