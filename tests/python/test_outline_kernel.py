"""Outlines that a geometry kernel drew, read as the joint they were made for or refused.

The drawings are those of tests/kernel_drawings/draw_outlines.py, which needs gmsh; nothing of them
was drawn by this project.
"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from backspring.outline.reading import OutlineReading, read_outline
from outline_pen import VALUES, demo, is_heron, numbers

DRAWINGS = Path(__file__).resolve().parents[1] / "kernel_drawings"


def _read(name: str) -> OutlineReading:
    suffix = ".svg" if name.startswith("svg") else ".dxf"
    return read_outline(DRAWINGS / f"{name}{suffix}", values=VALUES)


@pytest.mark.parametrize(
    ("name", "within"),
    [
        ("fillets_and_holes", 1e-6),
        ("svg_arcs", 1e-6),
        ("mirrored", 1e-6),
        ("turned", 1e-6),
        ("inches", 1e-6),
    ],
)
def test_fillets_of_the_kernel_and_holes_cut_by_it(name: str, within: float) -> None:
    assert is_heron(_read(name), within)


def test_every_edge_as_a_spline() -> None:
    read, drawn = _read("all_splines").design.core, demo("heron").core
    # A pad drawn as part of a longer curve begins where the tang can first reach it.
    assert read.pad.end_mm == pytest.approx(drawn.pad.end_mm, abs=1e-6)
    assert read.fit.preload_mm == pytest.approx(drawn.fit.preload_mm, abs=0.002)
    for key in ("open_mm", "half_stop_mm", "closed_mm", "corner_open_mm"):
        assert getattr(read.tang, key) == pytest.approx(getattr(drawn.tang, key), abs=0.002)


def test_gaps_between_the_kernels_lines_are_closed_and_told() -> None:
    reading = _read("gaps")
    assert len(reading.found.gaps) == 13
    assert {round(width, 6) for _, width in reading.found.gaps} == {0.04}
    assert is_heron(reading, 0.05)


def test_a_nose_joined_to_the_tang_is_its_kick() -> None:
    tang = _read("kick").design.core.tang
    assert tang.kick is not None
    found = (tang.kick.distance_mm, tang.kick.height_mm, tang.kick.radius_mm)
    assert found == pytest.approx((8.0, 0.2, 0.5), abs=1e-6)
    assert tang.closed_mm == pytest.approx(4.6, abs=1e-6)


def test_a_tang_cut_round_behind_has_a_round_end() -> None:
    tang = _read("round_end").design.core.tang
    assert tang.half_stop_mm is None
    assert tang.round_end_mm == pytest.approx(5.2, abs=1e-6)
    assert (tang.corner_open_mm, tang.corner_closed_mm) == pytest.approx((0.0, 0.0), abs=1e-6)


def test_a_back_that_is_a_curve_is_as_thick_as_the_curve() -> None:
    read = _read("spline_back").design.core.spring.thickness
    # The curve has control points at 7, 17 and 27 mm, so its share of the way is that of x.
    for x in np.linspace(7.0, 27.0, 41):
        share = (x - 7.0) / 20.0
        height = 3.1 * (1 - share) ** 2 + 2.0 * 2.55 * share * (1 - share) + 2.4 * share**2
        assert _core.thickness_mm(read, float(x)) == pytest.approx(height, abs=0.004)
    assert math.isclose(read[0].thickness_mm, 3.2, abs_tol=1e-6)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("wide_gaps", r"open outline from \(-38.000, 0.000\) to \(26.700, 0.000\)"),
        ("hole_breaks_out", "spring at .*: needs 2 holes, has 1|no closed outline with 2 holes"),
        ("two_halves", r"spring: 2 outlines, at \("),
    ],
)
def test_what_is_no_joint_says_so_with_its_place(name: str, words: str) -> None:
    with pytest.raises(bs.InvalidInput, match=words):
        _read(name)


def test_the_heron_is_what_the_drawings_were_made_for() -> None:
    assert numbers(demo("heron").core)[:4] == pytest.approx([-38.0, 3.2, -4.0, 3.8])
