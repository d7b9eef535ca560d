"""Pictures of several blades on one spring: true to the check, readable, one for each blade too."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from matplotlib.axes import Axes
from matplotlib.collections import QuadMesh
from matplotlib.figure import Figure

import backspring as bs
from backspring.picture.blades_action import opening
from backspring.picture.blades_stress import stress_curves
from backspring.picture.joint_panel import title
from backspring.picture.joint_state import JointState, joint_rows
from drawn_texts import is_cut_off, meeting_texts, words

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
DEMOS = ("turnstone", "sanderling")
KINDS = ("sheet", "positions", "stress", "action", "back")
ONE = {"turnstone": "pen", "sanderling": "sheep"}
# Inch, pound-force: NIST SP 811, appendix B; from memory.
INCH_MM = 25.4
LBF_N = 4.448222


@cache
def checked(demo: str) -> bs.BladesCheck:
    check = bs.check(bs.load(DESIGNS / f"{demo}.toml"))
    assert isinstance(check, bs.BladesCheck)
    return check


@cache
def figure(demo: str, kind: str, units: Any = None, **options: Any) -> Figure:
    """Drawn once for all tests that look at it; none changes what is on it."""
    drawn = bs.plot(checked(demo), kind, units=units, **options)
    assert isinstance(drawn, Figure)
    return drawn


@pytest.fixture(params=DEMOS)
def demo(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def states(demo: str, blade: str | None = None) -> list[JointState]:
    return [state for row in joint_rows(checked(demo), blade, None) for state in row]


def standing(state: JointState) -> dict[str, str | None]:
    return {blade.name: blade.position for blade in state.blades}


def panels(drawn: Figure) -> list[Axes]:
    return [ax for ax in drawn.axes if meshes(ax) and ax.get_aspect() == 1.0]


def meshes(ax: Axes) -> list[QuadMesh]:
    return [each for each in ax.collections if isinstance(each, QuadMesh)]


def told(demo: str, state: JointState, blade: str) -> Any:
    """What the check says of one blade where a state has it."""
    here = standing(state)
    for row in checked(demo).blades[blade].beside:
        if all(here[other.name] == other.position for other in row.others):
            return row.positions[here[blade]]
    raise AssertionError(f"no case of {blade} for {here}")


def test_each_blade_is_shown_in_each_position_with_the_others_closed_and_open(demo: str) -> None:
    shown = [standing(state) for state in states(demo)]
    check = checked(demo)
    for name, each in check.blades.items():
        for position in each.positions:
            for others in ("closed", "open"):
                assert {**dict.fromkeys(check.blades, others), name: position} in shown
    drawn = panels(figure(demo, "positions"))
    assert len(drawn) == len(shown) == {"turnstone": 6, "sanderling": 8}[demo]
    for ax in drawn:
        box, (left, right), (low, high) = ax.get_window_extent(), ax.get_xlim(), ax.get_ylim()
        assert box.width / (right - left) == pytest.approx(box.height / (high - low), rel=1e-6)


def test_forces_and_readings_are_those_of_the_check(demo: str) -> None:
    for state in states(demo):
        for blade in state.blades:
            position = told(demo, state, blade.name)
            assert blade.contact.force_n == pytest.approx(position.force_n, abs=1e-6)
            assert blade.reading_mm == pytest.approx(position.reading_loaded_mm, abs=1e-9)


@pytest.mark.parametrize("units", ["mm", "in"])
def test_what_is_written_is_what_the_check_says(units: Any) -> None:
    drawn = {words(ax) for ax in panels(figure("turnstone", "positions", units))}
    for state in states("turnstone"):
        (said,) = [each for each in drawn if title(state) in each]
        for blade in state.blades:
            force_n = told("turnstone", state, blade.name).force_n
            force = f"{force_n:.1f} N" if units == "mm" else f"{force_n / LBF_N:.2f} lbf"
            assert f"{blade.name} at {blade.contact.blade_angle_deg:.1f} deg\n{force}, dial" in said
    reading_mm = checked("turnstone").blades["pen"].positions["closed"].reading_loaded_mm
    thou = f"{1000.0 * reading_mm / INCH_MM:.1f} thou proud"
    assert any((f"{reading_mm:.3f} mm proud" if units == "mm" else thou) in each for each in drawn)


def test_the_drawn_spring_touches_every_tang_that_bears(demo: str) -> None:
    for state in states(demo):
        for blade in state.blades:
            for x, y in blade.touches:
                # Stations 0.2 mm apart, joined by straight lines.
                assert state.spring.height_at(x, 0.0) == pytest.approx(y, abs=1e-3)
            assert (len(blade.touches) > 0) == (blade.contact.force_n > 0.0)


def test_both_blades_see_one_spring() -> None:
    of_pen = {tuple(sorted(standing(each).items())): each for each in states("turnstone", "pen")}
    both = 0
    for state in states("turnstone", "long"):
        other = of_pen.get(tuple(sorted(standing(state).items())))
        if other is not None:
            np.testing.assert_allclose(other.spring.station_mm, state.spring.station_mm, atol=1e-9)
            np.testing.assert_allclose(other.spring.face_mm, state.spring.face_mm, atol=1e-8)
            both += 1
    assert both == 4


def test_a_blade_behind_another_on_one_pin_is_an_outline_and_a_loose_one_is_told() -> None:
    for ax in panels(figure("sanderling", "positions")):
        assert len([patch for patch in ax.patches if patch.get_gid() == "tang"]) == 1
        assert any(patch.get_linestyle() == "--" for patch in ax.patches)
        assert words(ax).count("(dashed)") == 1
        assert "loose, dial" in words(ax)


def test_a_blade_held_at_an_angle_moves_the_spring_under_the_other() -> None:
    drawn = figure("turnstone", "positions", blade="pen", blade_angle_deg=52.0)
    said = words(drawn)
    assert "pen at 52 deg, long closed" in said and "pen at 52 deg, long open" in said
    held = bs.contact_at(checked("turnstone").design.seen_from("pen"), 52.0)
    assert f"pen at 52.0 deg\n{held.force_n:.1f} N" in said


def test_stress_curves_reach_the_worst_of_each_blade(demo: str) -> None:
    curves = {label: outer for label, _, _, outer in stress_curves(checked(demo))}
    for name, each in checked(demo).blades.items():
        worst = max((row.travel for row in each.beside), key=lambda t: t.peak_stress_mpa)
        label = f"worst, {name} at {worst.peak_stress_angle_deg:.0f} deg"
        # Stations 0.05 mm apart.
        assert curves[label].max() == pytest.approx(worst.peak_stress_mpa, rel=2e-3)
    all_open = checked(demo).blades[next(iter(checked(demo).blades))].beside[-1].positions["open"]
    assert curves["all open"].max() == pytest.approx(all_open.peak_stress_mpa, rel=2e-3)


def test_the_action_has_a_row_for_each_case_up_to_its_peak(demo: str) -> None:
    for each in checked(demo).blades.values():
        _, rows = opening(each, pulls=True)
        assert len(rows) == len(each.beside)
        for pull_n, case in zip(rows, each.beside, strict=True):
            # Angles half a degree apart cut the top of a peak off.
            if case.strokes:
                peak = max(stroke.peak_pull_n for stroke in case.strokes)
                assert pull_n.max() == pytest.approx(peak, rel=2e-3)


@pytest.mark.parametrize("blade", ["long", "pen"])
def test_one_blade_is_drawn_on_its_whole_spring(blade: str) -> None:
    design = checked("turnstone").design.seen_from(blade)
    drawn = bs.plot(design)
    ends = {"long": (-36.5, 41.5), "pen": (-41.5, 36.5)}[blade]
    for ax in panels(drawn):
        x = meshes(ax)[0].get_coordinates()[..., 0]
        assert (x.min(), x.max()) == pytest.approx(ends)
    said = words(drawn)
    assert said.count(f"Turnstone, {blade}") == 1 and "dashed: " in said
    for position in checked("turnstone").blades[blade].positions.values():
        assert f"{position.force_n:.1f} N" in said


def test_words_that_meet_are_found() -> None:
    drawn = Figure()
    drawn.text(0.5, 0.5, "one")
    drawn.text(0.5, 0.5, "other")
    drawn.text(0.1, 0.1, "apart")
    assert meeting_texts(drawn) == [("one", "other")]


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("kind", KINDS)
def test_no_words_meet_or_run_off_the_edge(demo: str, kind: str, units: Any) -> None:
    design = checked(demo).design
    for drawn in (
        figure(demo, kind, units),
        bs.plot(design.seen_from(ONE[demo]), kind, units=units),
    ):
        assert meeting_texts(drawn) == []
        assert not is_cut_off(drawn)
        assert design.name in words(drawn)


@pytest.mark.parametrize("kind", ["action", "stress"])
def test_curves_of_several_blades_go_into_given_axes(demo: str, kind: str) -> None:
    ax = Figure().add_subplot()
    assert bs.plot(checked(demo), kind, ax=ax) is ax
    assert len(ax.lines) >= 2
