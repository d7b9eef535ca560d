"""Pictures show what the core computes: to scale, in the units asked for, the same every time."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import matplotlib
import numpy as np
import pytest
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.collections import QuadMesh
from matplotlib.figure import Figure
from matplotlib.patches import Polygon

import backspring as bs
from backspring import picture
from backspring.picture.action import STEP_DEG

HERON = Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml"
CHANGES: dict[str, dict[str, Any]] = {
    "as given": {},
    "kick": {
        "tang.kick": {"distance": 6.5, "height": 0.2, "radius": 0.5},
        "spring.pad": [24, 36.5],
    },
    "round end": {"tang.half_stop": None},
    "clamped": {"spring.support": "clamped", "spring.pin_hole": 0},
    "holes off the mid-line": {"spring.pin_hole_offset": [0.5, -0.3]},
    "lifted off": {"fit.preload": 0.05, "tang.half_stop": 4.3},
}
KINDS = ("sheet", "positions", "stress", "action")
# Inch, pound-force: NIST SP 811, appendix B; from memory.
INCH_MM = 25.4
LBF_N = 4.448222
KSI_MPA = 6.894757


@cache
def checked(case: str) -> bs.Check:
    return bs.check(bs.load(HERON).replace(**CHANGES[case]))


@cache
def figure(case: str, kind: Any, units: Any = None) -> Figure:
    """Drawn once for all tests that look at it; none changes what is on it."""
    return picture.plot(checked(case), kind, units=units)


@pytest.fixture(params=CHANGES)
def case(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture
def heron() -> bs.Check:
    return checked("as given")


def panels(drawn: Figure) -> list[Axes]:
    return [ax for ax in drawn.axes if meshes(ax) and ax.get_aspect() == 1.0]


def meshes(ax: Axes) -> list[QuadMesh]:
    return [each for each in ax.collections if isinstance(each, QuadMesh)]


def spring_grid(ax: Axes) -> tuple[Any, Any, Any]:
    """Places and colours of the drawn spring, a row from belly to back."""
    (mesh,) = meshes(ax)
    corners = mesh.get_coordinates()
    return corners[..., 0], corners[..., 1], np.reshape(mesh.get_array(), corners.shape[:2])


def tang_top_mm(ax: Axes, x_mm: float) -> float:
    """Greatest height at which the drawn tang, kick included, crosses a station."""
    crossings = []
    for patch in ax.patches:
        if not isinstance(patch, Polygon) or patch.get_gid() != "tang":
            continue
        places = patch.get_xy()
        for (x1, y1), (x2, y2) in zip(places, places[1:], strict=False):
            if min(x1, x2) <= x_mm <= max(x1, x2) and x1 != x2:
                crossings.append(y1 + (y2 - y1) * (x_mm - x1) / (x2 - x1))
    return max(crossings)


def words(ax: Axes | Figure) -> str:
    return "\n".join(text.get_text() for text in ax.findobj(matplotlib.text.Text))


def curve(ax: Axes, label: str) -> tuple[Any, Any]:
    (line,) = [line for line in ax.lines if line.get_label() == label]
    return line.get_xdata(), line.get_ydata()


def test_each_rest_has_a_panel_drawn_to_scale(case: str) -> None:
    drawn = panels(figure(case, "positions"))
    assert len(drawn) == len(checked(case).positions)
    for ax in drawn:
        box = ax.get_window_extent()
        (left, right), (low, high) = ax.get_xlim(), ax.get_ylim()
        assert box.width / (right - left) == pytest.approx(box.height / (high - low), rel=1e-6)


def test_the_drawn_spring_touches_the_drawn_tang_where_it_bears(case: str) -> None:
    check = checked(case)
    order = [name for name in ("closed", "half_stop", "open") if name in check.positions]
    for name, ax in zip(order, panels(figure(case, "positions")), strict=True):
        position = check.positions[name]
        x, y, _ = spring_grid(ax)
        for from_pivot_mm in position.contacts_mm:
            station = check.design.core.tang.pivot_mm + from_pivot_mm
            belly_mm = np.interp(station, x[0], y[0])
            assert belly_mm == pytest.approx(tang_top_mm(ax, station), abs=0.01)
        assert bool(position.contacts_mm) == (position.force_n > 0.0)


def test_the_drawn_spring_nowhere_runs_into_the_drawn_tang(heron: bs.Check) -> None:
    pad = heron.design.core.pad
    for ax in panels(figure("as given", "positions")):
        x, y, _ = spring_grid(ax)
        for station in np.linspace(pad.start_mm + 0.5, pad.end_mm - 0.5, 60):
            assert np.interp(station, x[0], y[0]) > tang_top_mm(ax, station) - 0.01


def test_the_deepest_colour_is_the_peak_stress(case: str) -> None:
    check = checked(case)
    drawn = panels(figure(case, "positions", "in"))
    peaks = sorted(float(np.abs(spring_grid(ax)[2]).max()) * KSI_MPA for ax in drawn)
    expected = sorted(position.peak_stress_mpa for position in check.positions.values())
    # Colours are taken every 0.2 mm; a peak between the stations is this little higher.
    assert peaks == pytest.approx(expected, rel=0.01)


def test_the_back_is_pressed_and_the_belly_pulled() -> None:
    for ax in panels(figure("as given", "positions")):
        _, _, stress = spring_grid(ax)
        assert stress[0].max() > 400.0
        assert stress[-1].min() < -400.0


def test_forces_and_readings_are_written_as_the_check_has_them(heron: bs.Check) -> None:
    said = words(figure("as given", "positions"))
    assert "65.2 N" in said and "dial: 0.065 mm proud" in said
    said = words(figure("as given", "positions", "in"))
    force_n = heron.positions["closed"].force_n
    assert f"{force_n / LBF_N:.2f} lbf" in said
    reading_mm = heron.positions["half_stop"].reading_loaded_mm
    assert f"dial: {1000.0 * reading_mm / INCH_MM:.1f} thou proud" in said


def test_a_lifted_blade_is_said_to_be_loose() -> None:
    assert "lifted off: no force" in words(figure("lifted off", "positions"))


def test_one_blade_angle_can_be_drawn(heron: bs.Check) -> None:
    half_stop = heron.positions["half_stop"]
    drawn = picture.positions(heron, blade_angle_deg=half_stop.blade_angle_deg)
    assert len(panels(drawn)) == 1
    # The reading comes from the drawn shape here, and from the core at a rest.
    assert f"dial: {half_stop.reading_loaded_mm:.3f} mm proud" in words(drawn)


def test_stress_curves_reach_the_peaks_of_the_check(case: str) -> None:
    check = checked(case)
    (ax,) = figure(case, "stress").axes
    worst = f"worst at {check.travel.peak_stress_angle_deg:.0f} deg"
    assert curve(ax, worst)[1].max() == pytest.approx(check.travel.peak_stress_mpa, rel=2e-3)
    for name, position in check.positions.items():
        drawn = curve(ax, name.replace("_", "-"))[1].max()
        assert drawn == pytest.approx(position.peak_stress_mpa, rel=2e-3)


def test_stress_is_nothing_at_the_rear_pin_and_ahead_of_the_contact(heron: bs.Check) -> None:
    x, stress = curve(picture.stress_along(heron, units="in"), "open")
    assert x[0] * INCH_MM == pytest.approx(-34.0)
    assert stress[0] == pytest.approx(0.0, abs=1e-9)
    touch_mm = 32.0 + heron.positions["open"].contacts_mm[0]
    assert np.all(stress[x * INCH_MM > touch_mm] == 0.0)


def test_yield_and_its_band_are_drawn(heron: bs.Check) -> None:
    band = heron.design.core.strength.yield_mpa
    ax = picture.stress_along(heron)
    assert f"yield {band.value:.0f} MPa" in words(ax)
    heights = [patch.get_extents().intervaly for patch in ax.patches]
    limits = ax.transData.transform([(0.0, band.low), (0.0, band.high)])[:, 1]
    assert any(height == pytest.approx(limits) for height in heights)


def test_action_is_the_sweep(case: str) -> None:
    sweep = bs.sweep(checked(case).design, STEP_DEG)
    ax = figure(case, "action").axes[0]
    for label in ("opening", "closing"):
        angle, torque = curve(ax, label)
        np.testing.assert_array_equal(angle, sweep.blade_angle_deg)
        np.testing.assert_array_equal(torque, getattr(sweep, f"{label}_torque_nmm"))


def test_the_right_hand_axis_is_pull_at_the_nail_nick(heron: bs.Check) -> None:
    drawn = figure("as given", "action")
    ax = drawn.axes[0]
    (right,) = ax.child_axes
    drawn.draw_without_rendering()
    assert np.array(right.get_ylim()) * 35.0 == pytest.approx(np.array(ax.get_ylim()))
    assert right.get_ylabel() == "pull at the nail nick [N]"
    peak = max(stroke.peak_pull_n or 0.0 for stroke in heron.strokes)
    assert f"peak {peak:.1f} N" in words(ax)


def test_without_a_nail_nick_there_is_torque_only() -> None:
    design = bs.load(HERON).replace(**{"blade.nail_nick": None, "targets.pull": None})
    ax = picture.action(design, units="in")
    assert ax.child_axes == []
    assert ax.get_ylabel() == "torque [lbf in]: + resists opening"


def test_the_shaded_snap_has_the_energy_of_the_check(heron: bs.Check) -> None:
    ax = picture.action(heron)
    (shade,) = ax.collections
    for stroke, path in zip(heron.strokes, shade.get_paths(), strict=True):
        x, y = path.vertices.T
        area_nmm_deg = 0.5 * abs(np.dot(x, np.roll(y, 1)) - np.dot(y, np.roll(x, 1)))
        # Half-degree steps cut the ends of the area off.
        assert np.radians(area_nmm_deg) == pytest.approx(stroke.snap_energy_mj, rel=0.02)


def test_the_sheet_holds_all_and_says_the_answer(case: str) -> None:
    check, sheet = checked(case), figure(case, "sheet")
    assert len(panels(sheet)) == len(check.positions)
    said = words(sheet)
    assert f"peak stress {check.travel.peak_stress_mpa:.0f} MPa" in said
    assert "station from the middle pin [mm]" in said and "blade angle [deg]" in said


def test_no_word_is_smaller_than_9_points(case: str) -> None:
    shown = figure(case, "sheet").findobj(matplotlib.text.Text)
    assert min(text.get_fontsize() for text in shown if text.get_text()) >= 9.0


@pytest.mark.parametrize("units", [None, "in"])
@pytest.mark.parametrize("kind", KINDS)
def test_nothing_is_cut_off_at_the_edges(case: str, kind: Any, units: Any) -> None:
    canvas = FigureCanvasAgg(figure(case, kind, units))
    canvas.draw()
    pixels = np.asarray(canvas.buffer_rgba())[..., :3]
    assert all(np.all(edge == 255) for edge in (*pixels[[0, -1]], *pixels.swapaxes(0, 1)[[0, -1]]))
