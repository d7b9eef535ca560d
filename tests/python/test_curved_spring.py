"""A curved spring and a width that varies, from the file to every question."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import _core

HERON = bs.load(Path(__file__).parents[2] / "data" / "designs" / "heron.toml")
WIDTHS = [[-38.0, 2.4], [4.0, 2.3], [4.0, 2.2], [24.0, 2.15], [36.5, 2.25]]
MID_LINE = [[-34.0, 0.0], [-20.0, 1.6], [-2.0, 2.6], [5.0, 2.6], [17.0, 1.3], [27.0, 0.0]]
TWITE = HERON.replace(**{"spring.width": WIDTHS, "spring.mid_line": MID_LINE})


def figures(design: bs.Design) -> list[float]:
    check = bs.check(design)
    places = check.positions.values()
    return [
        *(stroke.peak_pull_n for stroke in check.strokes),
        *(place.force_n for place in places),
        *(place.reading_loaded_mm for place in places),
        check.travel.peak_stress_mpa,
    ]


@pytest.mark.parametrize(
    "rows",
    [
        {"spring.width": [[-38, 2.3], [1, 2.3], [36.5, 2.3]]},
        {"spring.mid_line": [[-38, 1.5], [36.5, 1.5]]},
        {"spring.mid_line": 2.0},
    ],
)
def test_rows_that_say_nothing_change_nothing(rows: dict[str, Any]) -> None:
    assert figures(HERON.replace(**rows)) == pytest.approx(figures(HERON), rel=1e-12)


def test_a_bow_weakens_alike_both_ways_and_narrow_sides_in_proportion() -> None:
    outward = figures(HERON.replace(**{"spring.mid_line": MID_LINE}))
    inward = figures(HERON.replace(**{"spring.mid_line": [[x, -y] for x, y in MID_LINE]}))
    assert inward == outward
    assert outward[0] < 0.995 * figures(HERON)[0]
    full, narrow = (
        figures(HERON.replace(**{"spring.width": [[-38, w], [36.5, w]]})) for w in (2.3, 2.2)
    )
    assert narrow[0] / full[0] == pytest.approx(2.2 / 2.3, rel=1e-12)


def test_a_design_holds_what_it_was_given() -> None:
    spring = TWITE.to_dict()["spring"]
    assert (spring["width"], spring["mid_line"]) == (WIDTHS, MID_LINE)
    assert TWITE.core.spring.width_mm == _core.width_at_mm(TWITE.core.spring, 0.0)
    assert TWITE.replace(**{"spring.mid_line": None, "spring.width": 2.3}) == HERON


def test_a_width_offset_goes_all_along_in_study_and_spread() -> None:
    wider = TWITE.replace(**{"spring.width_offset": 0.1})
    assert [row[1] for row in wider.to_dict()["spring"]["width"]] == pytest.approx(
        [row[1] + 0.1 for row in WIDTHS]
    )
    table = bs.check_many(TWITE, {"spring.width_offset": [0.0, 0.1]})
    pulls = [max(stroke.peak_pull_n for stroke in bs.check(d).strokes) for d in (TWITE, wider)]
    assert table["peak_pull_n"] == pytest.approx(pulls, rel=1e-12)
    spread = bs.tolerance(TWITE, n=64)
    assert "spring.width_offset" in {row.key for row in spread.spreads}
    with pytest.raises(bs.InvalidInput, match=r"spread spring\.width_offset"):
        bs.tolerance(TWITE, {"spring.width": "0.02 mm"}, n=64)


@pytest.mark.parametrize(("face", "towards"), [("back", -1.0), ("belly", 1.0)])
def test_grinding_a_face_moves_the_mid_line_by_half(face: str, towards: float) -> None:
    ground = bs.grind(TWITE, **{face: 0.2}, region=(0, 20))
    was, now = TWITE.core.spring, ground.core.spring
    pad = TWITE.core.pad
    for x in (-10.0, 3.0, 12.0, 22.0):
        half = 0.1 if 0.0 < x < 20.0 else 0.0
        moved = _core.mid_line_mm(now, pad, x) - _core.mid_line_mm(was, pad, x)
        assert moved == pytest.approx(towards * half, abs=1e-12)
    # The other face stays where it was.
    for x in (3.0, 12.0):
        belly = _core.belly_mm(now, pad, x) - _core.belly_mm(was, pad, x)
        assert belly == pytest.approx(0.2 if face == "belly" else 0.0, abs=1e-12)
    assert ground.to_dict()["spring"]["mid_line"] != MID_LINE


def test_sizing_the_width_keeps_its_shape() -> None:
    pull = 1.1 * max(stroke.peak_pull_n for stroke in bs.check(TWITE).strokes)
    sized = bs.size(TWITE, pull=pull, vary="width")
    rows = sized.design.to_dict()["spring"]["width"]
    assert [row[1] / was[1] for row, was in zip(rows, WIDTHS, strict=True)] == pytest.approx(
        [1.1] * len(WIDTHS), rel=1e-6
    )
    assert 'width = [["-38 mm", "2.64 mm"], ["4 mm", "2.53 mm"]' in str(sized)


def test_a_comparison_names_both_and_adds_up() -> None:
    found = bs.compare(HERON, TWITE)
    causes = {cause.key for cause in found.causes}
    assert {"spring.width", "spring.mid_line"} <= causes
    assert "height of the mid-line" in str(found)


def test_a_hollow_mid_line_is_judged_as_a_ring_of_its_radius() -> None:
    """A level arch of radius 60 mm: the belly's tension by Winkler and Bach."""
    radius = 60.0
    arch = [[float(x), math.sqrt(radius**2 - x**2) - radius] for x in range(-24, 25)]
    design = HERON.replace(**{"spring.thickness": 3.0, "spring.mid_line": arch})
    (curve,) = (m for m in bs.check(design).verdict if m.kind == _core.MarginKind.curve)
    cosine = math.sqrt(1.0 - (curve.station_mm / radius) ** 2)
    factor = _core.curvature_factors(3.0 * cosine, radius - 1.5 * cosine).inner
    nominal = next(p.value for p in curve.parameters if p.name == "nominal")
    assert curve.value / nominal == pytest.approx(factor, rel=1e-3)
    assert factor > 1.01


def test_the_picture_says_what_a_side_view_cannot_show() -> None:
    figure = bs.plot(TWITE, "positions")
    texts = [text.get_text() for ax in figure.axes for text in ax.texts]
    assert any(text.startswith("from liner to liner 2.15 mm to 2.40 mm") for text in texts)
