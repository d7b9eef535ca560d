"""bs.plot draws every result; what cannot be drawn is a clear word."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from matplotlib.axes import Axes
from matplotlib.figure import Figure, SubFigure
from matplotlib.text import Text

import backspring as bs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")

RESULTS: dict[str, Callable[[], Any]] = {
    "design": lambda: HERON,
    "check": lambda: bs.check(HERON),
    "two blades": lambda: bs.load(DESIGNS / "turnstone.toml"),
    "two checked": lambda: bs.check(bs.load(DESIGNS / "turnstone.toml")),
    "one of two": lambda: bs.load(DESIGNS / "turnstone.toml").seen_from("pen"),
    "grind table": lambda: bs.grind_table(HERON, face="back", to="0.2 mm", step="0.1 mm"),
    "flush grinding": lambda: bs.grind_flush(HERON),
    "ways": lambda: bs.grind_ways(HERON, "2 lbf"),
    "no ways": lambda: bs.grind_ways(HERON, "3 lbf"),
    "levers": lambda: bs.levers(HERON),
    "taper": lambda: bs.propose_taper(HERON, "2.2 lbf", least_thickness="1.6 mm"),
    "solution": lambda: bs.size(HERON, pull="2.2 lbf", vary="preload").solutions[0],
    "compared": lambda: bs.compare(HERON, HERON.replace(**{"fit.preload": 0.8})),
    "allowance": lambda: bs.allowance(HERON),
    "plan": lambda: bs.fit_plan(HERON, half_stop=0.3, closed=0.4, state="unloaded"),
    "loading": lambda: bs.load_spring(HERON, at=25),
    "influence": lambda: bs.influence(HERON),
    "sizes": lambda: bs.size(HERON, pull="2 lbf", yield_margin=1.1, vary=("thickness", "preload")),
    "map": lambda: bs.design_map(
        HERON, {"thickness": np.linspace(3.0, 4.6, 4), "preload": np.linspace(0.3, 1.2, 4)}
    ),
    "tolerance": lambda: bs.tolerance(HERON, {"fit.preload": "0.05 mm"}, n=64),
    "steel": lambda: bs.steel.steel("1095"),
}


@pytest.mark.parametrize("name", RESULTS)
def test_every_result_has_a_picture(name: str) -> None:
    drawn = bs.plot(RESULTS[name]())
    assert isinstance(drawn, Figure | SubFigure)
    assert drawn.axes or drawn.subfigs


@pytest.mark.parametrize("blade", ["long", "pen"])
def test_an_allowance_of_several_blades_is_drawn_blade_by_blade(blade: str) -> None:
    left = bs.allowance(RESULTS["two blades"]())
    said = [text.get_text() for text in bs.plot(left, blade=blade).findobj(Text)]
    assert f"Turnstone, {blade}" in said
    with pytest.raises(bs.InvalidInput, match="blade: must be one of long, pen, got None"):
        bs.plot(left)


def test_a_face_that_cannot_give_the_pull_says_so() -> None:
    said = [text.get_text().strip() for text in bs.plot(RESULTS["no ways"]()).findobj(Text)]
    assert said.count("cannot give it") == 5


@pytest.mark.parametrize("units", ["mm", "in"])
def test_levers_are_drawn_as_the_table_has_them(units: Any) -> None:
    """In inches for a thou off, in thou; in mm for 0.1 mm off, in mm."""
    levers = bs.levers(HERON)
    ax = bs.plot(levers, units=units).axes[0]
    per = {"mm": 0.1, "in": 0.0254}[units] / 0.1
    drawn = [bar.get_width() * {"mm": 1.0, "in": 0.0254}[units] for bar in ax.patches]
    rows = [getattr(row, name) for name in ("half_stop_mm", "closed_mm") for row in levers.rows]
    assert drawn == pytest.approx([per * (each or 0.0) for each in rows])


@pytest.mark.parametrize("kind", ["stress", "action", "back"])
def test_given_axes_are_drawn_into_and_returned(kind: str) -> None:
    ax = Figure().add_subplot()
    drawn = bs.plot(HERON, kind, ax=ax)
    assert drawn is ax
    assert isinstance(drawn, Axes)
    assert ax.lines


def test_units_are_those_asked_for() -> None:
    label = {u: bs.plot(HERON, "stress", units=u).axes[0].get_ylabel() for u in ("mm", "in")}
    assert "MPa" in label["mm"]
    assert "ksi" in label["in"]


@pytest.mark.parametrize(
    ("result", "options", "message"),
    [
        ("check", {"kind": "pie"}, "kind: must be sheet or positions or stress or action or back"),
        ("tolerance", {"kind": "stress"}, "kind: must be tolerance for this result"),
        ("two blades", {"kind": "pie"}, "kind: must be sheet or positions or stress or action"),
        ("two blades", {"blade": "kick"}, 'blade: no blade is called "kick": known are long, pen'),
        ("two blades", {"kind": "stress", "blade_angle_deg": 52.0}, "blade: must say which blade"),
        ("two blades", {"kind": "back", "ax": Figure().add_subplot()}, "ax: back is a figure"),
        ("one of two", {"blade": "long"}, "options: sheet: got an unexpected keyword"),
        ("check", {"kind": "sheet", "ax": Figure().add_subplot()}, "ax: sheet is a figure"),
        ("influence", {"color": "red"}, "options: influence: got an unexpected keyword"),
    ],
)
def test_what_cannot_be_drawn_is_told(result: str, options: dict[str, Any], message: str) -> None:
    with pytest.raises(bs.InvalidInput, match=message):
        bs.plot(RESULTS[result](), **options)


def test_what_is_no_result_has_no_picture() -> None:
    with pytest.raises(bs.InvalidInput, match="result: has no picture: int"):
        bs.plot(3)


def test_a_name_is_not_read_as_a_formula() -> None:
    drawn = bs.plot(HERON.replace(name="Heron $1$ & <2>"))
    said = [text.get_text() for text in drawn.findobj(Text)]
    assert any("Heron $1$ & <2>" in each for each in said)
