"""Levers and the tip: what grinding each face moves, and plans that keep the tip in its place."""

from __future__ import annotations

import json
import pickle
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.fit.levers import knife_levers
from backspring.picture.fitting import fitting

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
OSPREY, WREN = (str(DESIGNS / f"{name}.toml") for name in ("osprey", "wren"))
READ = ["--half-stop", "0.012 in", "--closed", "0.026 in", "--state", "unloaded"]


@pytest.fixture(scope="module")
def osprey() -> bs.Design:
    return bs.load(OSPREY)


def run(words: list[str], capsys: pytest.CaptureFixture[str]) -> str:
    assert main(["fit", *words]) == 0
    return capsys.readouterr().out


def data_of(words: list[str], capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(run([*words, "--json"], capsys))["data"]
    return data


def test_a_kick_shares_the_needle_with_the_closed_face(osprey: bs.Design) -> None:
    """A nose k ahead and a rear edge r behind the pivot: r/(k+r) off the kick, k/(k+r) off the
    face, about 5/12 and 7/12; the dial stands 47/46 as far out. Where the face of the spring turns
    by s for every mm that it moves, the tip at b sinks by b/(k+r) (1 + r s) for the kick and rises
    by b/(k+r) (1 - k s) for the face: r times the one and k times the other make b whatever s. It
    is 1/a for a rigid spring that turns on the middle pin and 3/(2 a) for an even cantilever, more
    where it tapers. The rear edge is where the corner begins; that the face is hollow between its
    contacts adds 3 %.
    """
    k, r, a, b = 7.0, 5.58 - 0.8, 46.0, 94.0
    table = bs.levers(osprey)
    kick, closed = table["kick"], table["closed"]
    assert kick.closed_mm == pytest.approx(-0.1 * r / (k + r) * 47 / 46, rel=0.05)
    assert closed.closed_mm == pytest.approx(-0.1 * k / (k + r) * 47 / 46, rel=0.03)
    assert kick.tip_mm is not None and closed.tip_mm is not None
    assert r * closed.tip_mm - k * kick.tip_mm == pytest.approx(0.1 * b, rel=0.03)
    turn = [(-10.0 * kick.tip_mm * (k + r) / b - 1.0) / r]
    turn += [(1.0 - 10.0 * closed.tip_mm * (k + r) / b) / k]
    assert all(1.0 / a < each < 2.0 / a for each in turn)


def test_levers_are_shown_in_both_units_and_kept(osprey: bs.Design) -> None:
    table = bs.levers(osprey)
    assert "what 0.1 mm off each face moves" in table.report("mm")
    inches = table.report("in")
    assert "what 1 thou off each face moves" in inches
    assert "edge gap thou" in inches
    assert "half-stop face" in repr(table)
    assert "<table>" in table._repr_html_()
    assert pickle.loads(pickle.dumps(table)).rows == table.rows
    assert [row["face"] for row in table.to_dict()["levers"]] == [
        *("half_stop", "closed", "kick", "open", "back", "belly")
    ]
    with pytest.raises(KeyError):
        table["nose"]


def test_the_command_prints_levers_and_gives_them_as_data(
    capsys: pytest.CaptureFixture[str], osprey: bs.Design
) -> None:
    assert "Levers: what 0.1 mm off each face moves" in run([OSPREY], capsys)
    assert "Levers: what 1 thou off each face moves" in run(
        [OSPREY, *READ, "--units", "in"], capsys
    )
    data = data_of([OSPREY], capsys)
    assert data["levers"] == bs.levers(osprey).to_dict()["levers"]


def test_without_a_tip_or_an_edge_their_columns_are_left_out() -> None:
    bare = bs.load(OSPREY).replace(
        **{"blade.length": None, "blade.edge": None, "blade.tip": None, "blade.well": None}
    )
    shown = bs.levers(bare).report("mm")
    assert "tip" not in shown.split("Reading it")[0]
    assert "edge" not in shown.split("Reading it")[0]


def test_the_default_plan_for_a_kick_keeps_the_tip(
    osprey: bs.Design, capsys: pytest.CaptureFixture[str]
) -> None:
    data = data_of([OSPREY, *READ], capsys)
    assert abs(data["plan"][-1]["tip_mm"]) < 0.02
    assert data["tip"]["moves_mm"] == data["plan"][-1]["tip_mm"]
    assert not data["tip"]["beyond_allowance"]
    assert data["removed"]["kick_mm"] > 0.2 and data["removed"]["closed_mm"] > 0.2
    assert (
        data
        == bs.fit_plan(osprey, half_stop="12 thou", closed="26 thou", state="unloaded").to_dict()
    )


def test_a_plan_that_lifts_the_tip_says_so_first_and_offers_the_level_one(
    capsys: pytest.CaptureFixture[str],
) -> None:
    words = [OSPREY, *READ, "--closed-by", "closed"]
    shown = run(words, capsys)
    assert shown.startswith("Osprey: this plan lifts the blade's tip by 5.")
    assert "--tip level" in shown
    data = data_of(words, capsys)
    level = data_of([OSPREY, *READ, "--tip", "level"], capsys)
    for face in ("closed_mm", "kick_mm"):
        offered = data["tip"]["level_removed"][face]
        assert offered == pytest.approx(level["removed"][face], abs=2e-3)
    calm = run([*words, "--tip-allowance", "6 mm"], capsys)
    assert calm.startswith("Osprey: 5 passes")


@pytest.mark.parametrize("move", ["-0.5 mm", "0.4 mm", "-0.02 in"])
def test_a_move_of_the_tip_is_met_with_the_readings(
    move: str, capsys: pytest.CaptureFixture[str]
) -> None:
    data = data_of([OSPREY, *READ, "--tip", move], capsys)
    value, unit = move.split()
    wanted = float(value) * (25.4 if unit == "in" else 1.0)
    assert data["plan"][-1]["tip_mm"] == pytest.approx(wanted, abs=0.02)
    assert data["tip"]["wanted_mm"] == pytest.approx(wanted)
    assert data["plan"][-1]["closed_loaded_mm"] == pytest.approx(data["aim_mm"], abs=1e-3)


def test_the_open_face_gives_room_only_where_it_may(capsys: pytest.CaptureFixture[str]) -> None:
    words = [OSPREY, "--half-stop", "0.06 mm", "--closed", "0.05 mm", "--state", "loaded"]
    held = data_of([*words, "--tip", "-1 mm"], capsys)
    assert held["removed"]["open_mm"] == 0.0
    let = [*words, "--tip", "-1 mm", "--material", "open", "0.2 mm"]
    assert data_of(let, capsys)["tip"]["moves_mm"] == pytest.approx(-1.0, abs=0.02)
    assert "to give the tip room the open face is lowered, by 0.02" in run(let, capsys)


def test_a_plain_tang_says_that_the_tip_follows(capsys: pytest.CaptureFixture[str]) -> None:
    words = [WREN, "--closed", "0.3 mm", "--state", "loaded"]
    assert "without a kick nothing but the closed face sets it" in run(words, capsys)
    assert "no kick sets the tip apart" in run([*words, "--tip", "level"], capsys)


def test_a_tip_out_of_reach_names_the_face(capsys: pytest.CaptureFixture[str]) -> None:
    words = [OSPREY, "--half-stop", "0.06 mm", "--closed", "0.05 mm", "--state", "loaded"]
    shown = run([*words, "--tip", "-2 mm"], capsys)
    assert "the tip cannot move by -2.00 mm with the readings met" in shown
    assert "closed face" in shown
    assert data_of([*words, "--tip", "-2 mm"], capsys)["tip"]["runs_out"] == "closed"


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["--tip", "level"], "backspring fit: --tip goes with a plan"),
        ([*READ, "--tip", "up"], '--tip: must be a length, got "up"'),
        ([*READ, "--tip", "level", "--closed-by", "kick"], 'tip: "level" does not go with'),
        ([*READ, "--tip", "0.1 mm", "--closed-by", "kick"], "tip: says where the closed reading"),
        ([*READ, "--tip-allowance", "-1 mm"], "tip_allowance: must be at least 0 mm, got -1 mm"),
    ],
)
def test_a_wish_that_makes_no_sense_is_refused(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["fit", OSPREY, *words]) == 2
    assert capsys.readouterr().err.startswith(message)


def test_the_tip_is_drawn_where_it_moves(osprey: bs.Design) -> None:
    read: dict[str, Any] = {"half_stop": 0.3, "closed": 0.3, "state": "loaded"}
    lifted = bs.fit_plan(osprey, **read, closed_by="closed")
    axes = fitting(lifted, units="in").axes
    assert len(axes) == 3
    ends = axes[2].lines[0].get_ydata()[-1]
    assert float(ends) == pytest.approx(lifted.result.tip_mm / 25.4)
    done = bs.fit_plan(osprey, half_stop=0.0262, closed=0.0262, state="loaded")
    assert len(fitting(done).axes) == 2


def test_tip_and_edge_of_the_closed_blade_are_told(
    osprey: bs.Design, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", OSPREY, "--json"]) in (0, 1)
    closed = json.loads(capsys.readouterr().out)["data"]["closed_blade"]
    found = bs.check(osprey)
    assert closed["edge_gap_mm"] == found.closed_blade.edge_gap_mm
    assert "lies below the rim by" in found.report("mm")
    assert "the edge clears the spring by" in found.report("in")
    deep = osprey.replace(**{"blade.edge": [[9.5, -6.5], [94, 2.0]], "blade.well": "10 mm"})
    assert "the edge runs into the spring" in bs.check(deep).report()
    assert "stands out of the handle by" in bs.check(deep).report()
    assert "closed_blade" not in bs.check(bs.load(WREN)).to_dict()


def test_levers_of_a_log_are_those_of_the_knife_with_its_tilt_play_and_root(
    osprey: bs.Design,
) -> None:
    """Without any they are the core's, whose pull is not rounded where two strokes are alike."""
    now, none = osprey.core, _core.FitUnknowns()
    for row, core in zip(knife_levers(osprey, now, none).rows, _core.levers(now), strict=True):
        for name in ("half_stop_mm", "closed_mm", "tip_mm", "edge_gap_mm"):
            assert getattr(row, name) == pytest.approx(getattr(core, name), abs=1e-9)
        assert row.peak_pull_n == pytest.approx(core.peak_pull_n, abs=0.01)
        assert row.yield_margin == pytest.approx(core.yield_margin, abs=1e-3)
    bench = _core.FitUnknowns(pad_tilt_rad=-0.002, pivot_play_mm=0.03, extra_root_rad_per_nmm=1e-6)
    lever = knife_levers(osprey, now, bench)["closed"]
    knives = [_core.take_off(now, _core.FaceDepths(closed_mm=off)) for off in (0.0, 0.01)]
    closed = [_core.fit_readings(each, bench).loaded.closed_mm for each in knives]
    pull = [_core.bench_figures(each, bench).peak_pull_n for each in knives]
    assert lever.closed_mm == pytest.approx(10 * (closed[1] - closed[0]), rel=0.01)
    assert lever.peak_pull_n == pytest.approx(10 * (pull[1] - pull[0]), rel=0.02)
    assert abs(lever.peak_pull_n / bs.levers(osprey)["closed"].peak_pull_n - 1.0) > 0.05


def test_a_plan_from_a_log_shows_the_levers_of_its_knife(osprey: bs.Design) -> None:
    knife = bs.Knife(osprey)
    knife.measure(half_stop=0.3, closed=0.35, state="unloaded")
    knife.measure(half_stop=0.265, closed=0.31, state="loaded")
    found, plan = knife.estimate(), knife.plan()
    assert plan.levers.rows == knife_levers(osprey, plan.result.now, found.bench).rows
    assert plan.levers.rows != _core.levers(plan.result.now)
