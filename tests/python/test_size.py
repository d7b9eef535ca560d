"""Sizing in Python: answers hold in a fresh check, what cannot be had says why."""

from __future__ import annotations

import json
import pickle
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import backspring as bs
from backspring import picture

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
LBF_N = 4.4482216152605  # NIST SP 811, appendix B


@pytest.fixture(scope="module")
def heron() -> bs.Design:
    return bs.load(DESIGNS / "heron.toml")


def peak_pull_n(check: bs.Check) -> float:
    return max(stroke.peak_pull_n or 0.0 for stroke in check.strokes)


@pytest.mark.parametrize("name", ["heron", "kestrel", "osprey", "wren"])
@pytest.mark.parametrize("vary", ["thickness", "preload", "width", "pivot", "length"])
def test_an_answer_holds_in_a_fresh_check(name: str, vary: str) -> None:
    design = bs.load(DESIGNS / f"{name}.toml")
    wanted_n = 1.1 * peak_pull_n(bs.check(design))
    sized = bs.size(design, pull=f"{wanted_n!r} N", vary=vary)
    assert sized.found
    for solution in sized.solutions:
        fresh = bs.check(bs.Design(**solution.design.to_dict()))
        assert peak_pull_n(fresh) == pytest.approx(wanted_n, rel=1e-6)
        assert fresh.travel.yield_margin == pytest.approx(solution.yield_margin, rel=1e-9)
        assert solution.check.to_dict() == fresh.to_dict()


def test_two_dimensions_meet_both_targets(heron: bs.Design) -> None:
    sized = bs.size(heron, pull="2.2 lbf", yield_margin=1.2, vary=("preload", "width"))
    assert peak_pull_n(sized.check) == pytest.approx(2.2 * LBF_N, rel=1e-6)
    assert sized.check.travel.yield_margin == pytest.approx(1.2, rel=1e-6)
    assert sized.solutions[0].sizes_mm.keys() == {"fit.preload", "spring.width"}
    assert sized.design == sized.solutions[0].design


def test_a_rear_pin_offset_becomes_the_preload_that_was_found() -> None:
    wren = bs.load(DESIGNS / "wren.toml")
    offset = wren.to_dict()["fit"]["rear_pin_offset"]
    assert bs.size(wren, pull=9.0, vary="thickness").design.to_dict()["fit"] == {
        "rear_pin_offset": offset
    }
    moved = bs.size(wren, pull=9.0, vary="pivot").design
    assert moved.core.fit.preload_mm == wren.core.fit.preload_mm
    assert moved.core.fit.dial_mm == moved.core.tang.pivot_mm


def test_stock_sizes_are_tried_one_by_one(heron: bs.Design) -> None:
    stock = {"width": ["3/32 in", "1/8 in"]}
    sized = bs.size(heron, pull=12, yield_margin=1.0, vary="thickness", stock=stock)
    widths = [solution.sizes_mm["spring.width"] for solution in sized.solutions]
    assert widths == pytest.approx([25.4 * 3 / 32, 25.4 / 8], rel=1e-15)


def test_a_station_alone(heron: bs.Design) -> None:
    sized = bs.size(heron, pull=11, vary="thickness@25")
    rows = sized.design.to_dict()["spring"]["thickness"]
    assert rows[4] == [25, sized.solutions[0].sizes_mm["spring.thickness@25"]]
    assert rows[:4] == heron.to_dict()["spring"]["thickness"][:4]


def test_what_cannot_be_had_says_why(heron: bs.Design) -> None:
    sized = bs.size(heron, pull="30 N", vary="preload", bounds={"preload": ("0.3 mm", 0.9)})
    assert not sized.found
    assert [limit.message for limit in sized.limits] == ["fit.preload: must be at most 0.90 mm"]
    assert sized.nearest is not None
    assert sized.nearest.sizes_mm == {"fit.preload": pytest.approx(0.9)}
    with pytest.raises(bs.NoConvergence, match="no size gives a pull of 30.0 N; nearest: preload"):
        _ = sized.design
    assert "In the way" in repr(sized)


def test_it_shows_itself_and_pickles(heron: bs.Design) -> None:
    sized = bs.size(heron, pull="2 lbf", yield_margin=1.0, vary="thickness")
    text = sized.report("in")
    assert text.startswith("Heron: thickness at the middle pin 0.1")
    assert "2.00 lbf" in text and 'thickness = [["-38 mm", "0.1149' in text
    assert "<table>" in sized._repr_html_()
    again = pickle.loads(pickle.dumps(sized))
    assert again.design == sized.design
    document = json.loads(json.dumps(sized.to_dict(), allow_nan=False))
    assert document["pull_n"] == pytest.approx(2.0 * LBF_N)
    assert document["solutions"][0]["pull_n"] == pytest.approx(2.0 * LBF_N, rel=1e-9)
    assert document["nearest"] is None and document["limits"] == []


@pytest.mark.parametrize(
    ("options", "message"),
    [
        ({}, "pull: give a pull, a yield margin or both to size for"),
        ({"pull": "5 lb"}, 'pull: unit "lb" in "5 lb" can be a force or a mass'),
        ({"pull": -3}, "pull: must be greater than 0 N, got -3 N"),
        ({"pull": 9, "vary": "thicknes"}, 'vary: unknown dimension "thicknes": did you mean "thic'),
        ({"pull": 9, "vary": "colour"}, 'vary: unknown dimension "colour": known are thickness, '),
        ({"pull": 9, "vary": ["width", "spring.width"]}, "vary: names a dimension twice"),
        ({"pull": 9, "vary": "thickness@8"}, "spring.thickness: has no station at 8 mm, known"),
        ({"pull": 9, "vary": "thickness@x"}, 'vary.spring.thickness@x: must be a length, got "x"'),
        ({"pull": 9, "bounds": {"width": (2, 3)}}, "bounds.spring.width: is not varied"),
        (
            {"pull": 9, "vary": "width", "bounds": {"width": 3}},
            'bounds.spring.width: must be two sizes, as ("0.3 mm", 1.2), got 3',
        ),
        (
            {"pull": 9, "vary": "width", "bounds": {"width": (3, 2)}},
            "spring.width: bounds must rise, got 3 mm to 2 mm",
        ),
        ({"pull": 9, "stock": {"width": []}}, "stock.spring.width: needs at least one size"),
        ({"pull": 9, "vary": ("width", "preload")}, "vary: two free dimensions need both a pull"),
    ],
)
def test_wrong_use_is_told(heron: bs.Design, options: dict[str, Any], message: str) -> None:
    with pytest.raises(bs.InvalidInput) as told:
        bs.size(heron, **options)
    assert str(told.value).startswith(message)
    assert told.value.faults


def test_a_pull_needs_the_nail_nick(heron: bs.Design) -> None:
    bare = heron.replace(**{"blade.nail_nick": None, "targets.pull": None})
    with pytest.raises(bs.InvalidInput, match="blade.nail_nick: missing"):
        bs.size(bare, pull=9)
    assert bs.size(bare, yield_margin=1.2, vary="preload").found


def test_a_taper_gives_its_pull_with_less_stress(heron: bs.Design) -> None:
    taper = bs.propose_taper(heron, "10 N", "1.2 mm")
    fresh = bs.check(taper.design)
    assert peak_pull_n(fresh) == pytest.approx(10.0, rel=1e-6)
    assert fresh.travel.peak_stress_mpa == pytest.approx(taper.peak_stress_mpa, rel=1e-9)
    scaled = bs.size(heron, pull=10, vary="thickness")
    assert taper.peak_stress_mpa < 0.8 * scaled.check.travel.peak_stress_mpa
    assert "tapered for 10.0 N" in repr(taper) and "<table>" in taper._repr_html_()
    assert pickle.loads(pickle.dumps(taper)).design == taper.design
    json.dumps(taper.to_dict(), allow_nan=False)


def test_a_taper_that_cannot_be_made_is_told(heron: bs.Design) -> None:
    with pytest.raises(bs.NoConvergence, match="no shape with at least 3.5 mm thickness"):
        bs.propose_taper(heron, "1 N", "3.5 mm")
    with pytest.raises(bs.InvalidInput, match="least_thickness: must be a length"):
        bs.propose_taper(heron, "10 N", "2 N")


def test_a_map_holds_the_checks(heron: bs.Design) -> None:
    sizes = {"thickness": np.array([1.0, 3.6, 4.0]), "preload": ["0.5 mm", 0.9]}
    found = bs.design_map(heron, sizes)
    assert found.pull_n.shape == (2, 3)
    assert np.isnan(found.pull_n[:, 0]).all()
    scaled = [[x, thick * 3.6 / 3.8] for x, thick in heron.to_dict()["spring"]["thickness"]]
    check = bs.check(heron.replace(**{"spring.thickness": scaled, "fit.preload": 0.9}))
    assert found.pull_n[1, 1] == pytest.approx(peak_pull_n(check), rel=1e-9)
    assert found.yield_margin[1, 1] == pytest.approx(check.travel.yield_margin, rel=1e-9)
    with pytest.raises(bs.InvalidInput, match="sizes: must name two dimensions, got 1"):
        bs.design_map(heron, {"width": [2.0]})


def test_the_map_is_drawn_with_what_is_wanted(heron: bs.Design) -> None:
    sizes = {"thickness": np.linspace(3.2, 4.2, 9), "preload": np.linspace(0.4, 1.1, 8)}
    ax = picture.design_map(bs.design_map(heron, sizes), pull_n=9.0, yield_margin=1.2, units="in")
    assert ax.get_xlabel() == "thickness at the middle pin [in]"
    legend = ax.get_legend()
    assert legend is not None
    words = [text.get_text() for text in legend.get_texts()]
    assert words == ["pull [lbf]", "yield margin", "margin at least 1.2"]
    assert ax.get_xlim()[1] * 25.4 == pytest.approx(4.2)
