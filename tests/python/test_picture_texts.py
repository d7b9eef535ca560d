"""No two texts of a picture meet, none runs off its edge, and each picture says whose it is.

Fifty drawn designs with every picture each: `python -m oracle.picture_texts 50`, from `tests`.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pytest
from matplotlib.figure import Figure
from matplotlib.patches import Circle

import backspring as bs
from drawn_pictures import drawn_pictures
from drawn_texts import meeting_texts, words, wrong_with
from oracle.picture_texts import drawn_designs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
# Those of several blades have all of their pictures looked at in test_blades_plots.
ONE_BLADE = {"bittern": "in", "heron": "mm", "kestrel": "mm", "osprey": "in", "wren": "in"}
SEEN_ELSEWHERE = ("sheet", "positions", "stress", "action", "grind belly", "grind pad")


@pytest.mark.parametrize(("demo", "units"), ONE_BLADE.items())
def test_no_texts_meet_on_the_card_of_a_demo(demo: str, units: Any) -> None:
    drawn = bs.plot(bs.load(DESIGNS / f"{demo}.toml"), units=units)
    assert wrong_with(drawn, demo.capitalize()) == []


def test_no_texts_meet_on_any_other_picture_of_a_demo() -> None:
    kinds = []
    wren = bs.load(DESIGNS / "wren.toml")
    for kind, drawn in drawn_pictures(wren, "in", without=SEEN_ELSEWHERE):
        assert wrong_with(drawn, "Wren") == [], kind
        kinds.append(kind)
    assert len(kinds) >= 12


def test_no_texts_meet_on_charts_of_drawn_designs() -> None:
    for design in drawn_designs(7):
        assert wrong_with(bs.plot(design, "action"), design.name) == []


def test_texts_that_stand_aslant_are_boxed_as_they_stand() -> None:
    drawn = Figure()
    kept = {"rotation": 45.0, "rotation_mode": "anchor"}
    drawn.text(0.2, 0.2, "along the slope", **kept)
    drawn.text(0.3, 0.2, "beside it", **kept)
    assert meeting_texts(drawn) == []
    drawn.text(0.22, 0.26, "on it", **kept)
    assert meeting_texts(drawn) == [("along the slope", "on it")]


def test_a_dial_between_two_forces_has_its_words_above_them() -> None:
    check = bs.check(bs.load(DESIGNS / "osprey.toml"))
    closed = bs.plot(check, "positions").axes[0]
    closed.figure.draw_without_rendering()
    by = {text.get_text(): text.get_window_extent() for text in closed.texts}
    left, right, dial = by["32.4 N"], by["49.5 N"], by["dial: 0.026 mm proud"]
    assert left.x1 < dial.x0 < right.x0
    assert dial.y0 >= right.y1


@pytest.mark.parametrize("units", ["mm", "in"])
def test_holes_are_drawn_round_where_steel_comes_off(units: Any) -> None:
    table = bs.grind_table(bs.load(DESIGNS / "heron.toml"), face="back", to="0.2 mm", step="0.1 mm")
    drawn = bs.plot(table, units=units)
    drawn.draw_without_rendering()
    holes = [
        ax.transData.transform_path(patch.get_path().transformed(patch.get_patch_transform()))
        for ax in drawn.axes
        for patch in ax.patches
        if isinstance(patch, Circle)
    ]
    assert len(holes) == 2
    for hole in holes:
        width, height = np.ptp(hole.vertices, axis=0)
        assert width == pytest.approx(height, rel=1e-6)


@pytest.mark.parametrize("units", ["mm", "in"])
def test_pictures_are_in_the_units_asked_for(units: Any) -> None:
    found = {"mm": (" N", "[mm]", "MPa"), "in": ("lbf", "thou", "[in]", "ksi")}
    other = found["in" if units == "mm" else "mm"]
    design = bs.load(DESIGNS / "wren.toml")
    for kind in ("positions", "stress", "action", "back"):
        said = words(bs.plot(design, kind, units=units))
        assert any(each in said for each in found[units])
        assert not [each for each in other if each in said]
