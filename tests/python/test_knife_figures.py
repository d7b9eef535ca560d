"""What else a bench measures on a knife: breakaway pull, height of the tip, gap under the edge."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.fit.log_entry import FigureEntry

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
OSPREY_FILE = DESIGNS / "osprey.toml"
OSPREY, WREN, HERON = (bs.load(DESIGNS / f"{name}.toml") for name in ("osprey", "wren", "heron"))
NO_NICK = WREN.replace(**{"blade.nail_nick": None, "targets.pull": None})
LIES = _core.closed_figures(OSPREY.core, 12.0)
PULLS = _core.bench_figures(OSPREY.core)


def test_a_knife_as_drawn_teaches_nothing_new() -> None:
    """What the drawing gives is measured: the estimate stays where it was, and is surer."""
    knife = bs.Knife(OSPREY)
    knife.measure(start_pull=PULLS.start_pull_n, tip_height=LIES.tip_mm)
    knife.measure(gap=f"{LIES.gap_mm!r} mm at 12 mm")
    found = knife.estimate()
    assert [each.what for each in found.observations] == ["start_pull_n", "tip_mm", "gap_mm"]
    # Half a normal spread of play has a mean, and only it.
    assert all(abs(each.residual) < 0.05 for each in found.observations)
    assert found.misfit.chi_squared < 0.05


def test_friction_is_learned_from_the_breakaway_pull() -> None:
    stiff = OSPREY.replace(**{"friction.spring": 0.2, "friction.pivot": 0.2})
    knife = bs.Knife(OSPREY)
    before = knife.estimate().unknowns["friction"]
    knife.measure(start_pull=_core.bench_figures(stiff.core).start_pull_n)
    after = knife.estimate().unknowns["friction"]
    assert after.value > before.value
    assert after.sd < before.sd


@pytest.mark.parametrize("repeatability", [None, "0.01 mm"])
def test_a_weight_is_believed_as_far_as_the_dial_that_reads_it(repeatability: str | None) -> None:
    """Two weights that disagree by twice what the dial repeats to still make one knife."""
    knife = bs.Knife(HERON)
    if repeatability is not None:
        read = bs.check(HERON).positions
        half, closed = (read[each].reading_loaded_mm for each in ("half_stop", "closed"))
        knife.measure(half_stop=half, closed=closed, state="loaded", repeatability=repeatability)
    dial_mm = 0.004 if repeatability is None else 0.01
    moved_mm = _core.hung_movement_mm(HERON.core, 20.0, 32.0)
    for off_mm in (dial_mm, -dial_mm):
        knife.measure(hang="20 N at 32 mm", moved=f"{moved_mm + off_mm!r} mm")
    hung = [each for each in knife.estimate().observations if each.what == "moved_mm"]
    assert [each.sd for each in hung] == pytest.approx([dial_mm] * 2)
    assert [each.residual for each in hung] == pytest.approx([-1.0, 1.0], abs=0.2)


@pytest.mark.parametrize("name", ["tip_height", "gap"])
def test_the_kick_is_learned_from_how_the_closed_blade_lies(name: str) -> None:
    """A kick 0.3 mm lower than drawn, measured at the tip or under the edge."""
    lower = _core.take_off(OSPREY.core, _core.FaceDepths(kick_mm=0.3))
    lies = _core.closed_figures(lower, 12.0)
    knife = bs.Knife(OSPREY)
    before = knife.estimate().unknowns["kick_height_mm"]
    given = {"tip_height": lies.tip_mm, "gap": f"{lies.gap_mm!r} mm at 12 mm"}
    knife.measure(**{name: given[name]})
    after = knife.estimate().unknowns["kick_height_mm"]
    assert after.value < before.value
    assert after.sd < before.sd


def test_entries_are_kept_in_the_file_and_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "a.csv"
    words = ["fit", str(OSPREY_FILE), "--log", str(path), "--start-pull", f"{PULLS.start_pull_n} N"]
    lying = ["--tip-height", f"{LIES.tip_mm} mm", "--gap", f"{LIES.gap_mm} mm at 12 mm"]
    assert main([*words, *lying, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["data"]["knife"]["entries"] == 3
    stood = bs.Knife(OSPREY, path)
    assert [type(each) for each in stood.entries] == [FigureEntry] * 3
    assert {each.kind: each.station_mm for each in stood.entries} == {  # type: ignore[union-attr]
        "start_pull_n": None,
        "tip_mm": None,
        "gap_mm": 12.0,
    }
    assert main([*words[:4], "--undo"]) == 0
    said = capsys.readouterr().out
    gap = f"{LIES.gap_mm:.3f}"
    assert f"measured gap under the edge {gap} mm at 12.00 mm" in said
    told = [
        "fit",
        str(OSPREY_FILE),
        "--units",
        "in",
        "--log",
        str(path),
        "--gap",
        "0.09 in at 0.5 in",
    ]
    assert main(told) == 0
    assert bs.Knife(OSPREY, path).entries[-1] == FigureEntry("gap_mm", pytest.approx(2.286), 12.7)


BAD: list[tuple[Callable[[], object], str]] = [
    (lambda: bs.Knife(NO_NICK).measure(start_pull=5.0), "start_pull: a pull needs the place"),
    (lambda: bs.Knife(HERON).measure(tip_height=1.0), "tip_height: needs the handle's depth"),
    (lambda: bs.Knife(HERON).measure(gap="1 mm at 5 mm"), "gap: blade.edge does not pass the"),
    (lambda: bs.Knife(OSPREY).measure(gap="1 mm at 500 mm"), "gap: blade.edge does not pass the"),
    (lambda: bs.Knife(OSPREY).measure(gap="1 mm"), "gap: must be a gap and a station, as"),
    (lambda: bs.Knife(OSPREY).measure(gap="-1 mm at 5 mm"), "gap: must be from 0 mm to 50 mm"),
    (lambda: bs.Knife(OSPREY).measure(tip_height=80), "tip_height: must be from -50 mm to 50 mm"),
]


@pytest.mark.parametrize(("spoil", "message"), BAD)
def test_bad_measurements_are_told(spoil: Callable[[], object], message: str) -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        spoil()
    assert str(refused.value).startswith(message)


def test_slopes_of_the_lying_blade_are_the_models(tmp_path: Path) -> None:
    """Against differences of the whole model, whatever is said to move nothing."""
    knife = bs.Knife(OSPREY)
    knife.measure(start_pull=PULLS.start_pull_n, tip_height=LIES.tip_mm)
    found = knife.estimate()
    for row in found.rows.rows:
        assert isinstance(row.entry, FigureEntry)
        shorter = found.rows.slopes(row.ask, found.x, 0)
        assert shorter == pytest.approx(
            found.rows.slopes(row.ask, found.x, 0, every=True), abs=1e-9
        )
        assert np.any(shorter != 0.0)


@pytest.mark.parametrize("share", [0.75, 1.0, 1.3])
def test_a_round_end_stays_as_it_is_in_the_likely_design(share: float) -> None:
    """No face that is ground or stands proud touches it; left to follow from the faces it moved.

    What the pull is away from the drawing's stands in Young's modulus to first order.
    """
    knife = bs.Knife(WREN)
    knife.measure(closed=0.2, state="loaded")
    knife.measure(pull=share * knife.figures["peak_pull_n"].value)
    drawn, figure = knife.design, knife.figures["peak_pull_n"]
    assert drawn.core.tang.round_end_mm == pytest.approx(
        _core.round_end_radius_mm(knife.estimate().now.tang)
    )
    (stroke,) = bs.check(drawn).strokes
    assert stroke.peak_pull_n == pytest.approx(figure.value, abs=0.25 * figure.sd)


def test_of_blades_side_by_side_a_pull_that_is_a_little_less_is_believed() -> None:
    """Either tang may hold the spring up: the search goes to and fro where they change."""
    knife = bs.Knife(bs.load(DESIGNS / "sanderling.toml").seen_from("clip"))
    knife.measure(half_stop=0.15, closed=0.2, state="loaded")
    drawn = knife.figures["peak_pull_n"].value
    knife.measure(pull=0.93 * drawn)
    figure = knife.figures["peak_pull_n"]
    assert figure.value == pytest.approx(0.93 * drawn, abs=figure.sd)
    read = knife.figures["closed_loaded_mm"]
    assert read.value == pytest.approx(0.2, abs=read.sd)
