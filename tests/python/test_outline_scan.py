"""Outlines traced from a scan: fitted with lines and arcs, and how near is told."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

import backspring as bs
from backspring.outline.chain import Chain
from outline_pen import Pen, demo


def _traced(pen: Pen, chain: Chain, layer: str, dice: random.Random, noise: float) -> None:
    points = []
    for piece in chain.pieces:
        steps = max(1, int(piece.length_mm / 0.085))
        points += [
            pen.place(
                piece.point_mm(i / steps)
                + complex(dice.uniform(-noise, noise), dice.uniform(-noise, noise))
            )
            for i in range(steps)
        ]
    pen.space.add_lwpolyline(points, close=True, dxfattribs={"layer": layer})


@pytest.mark.parametrize("noise", [0.0, 0.02])
def test_a_scan_is_fitted_and_says_how_near(noise: float, tmp_path: Path) -> None:
    pen, dice = Pen(), random.Random(11)
    _traced(pen, pen.outlines.spring, "spring", dice, noise)
    _traced(pen, pen.outlines.tang, "tang", dice, noise)
    pen.holes("spring", "tang", "liner")
    reading = pen.read(tmp_path)
    tang, drawn = reading.design.core.tang, demo("heron").core.tang
    assert tang.open_mm == pytest.approx(drawn.open_mm, abs=0.03)
    assert tang.half_stop_mm == pytest.approx(drawn.half_stop_mm, abs=0.03)
    assert tang.closed_mm == pytest.approx(drawn.closed_mm, abs=0.03)
    assert reading.joint.preload_mm == pytest.approx(demo("heron").core.fit.preload_mm, abs=0.1)
    stiffness = [bs.check(each).stiffness_n_per_mm for each in (reading.design, demo("heron"))]
    assert stiffness[0] == pytest.approx(stiffness[1], rel=0.03)
    assert any("points fitted with" in note for note in reading.notes)
    assert "# spring: traced" in reading.text


def test_a_fit_that_is_asked_for_or_not_wanted(tmp_path: Path) -> None:
    pen = Pen()
    _traced(pen, pen.outlines.tang, "tang", random.Random(5), 0.0)
    pen.chain("spring")
    pen.holes("spring", "tang", "liner")
    near = pen.read(tmp_path, fit="0.01 mm").design.core.tang
    assert near.corner_open_mm == pytest.approx(demo("heron").core.tang.corner_open_mm, abs=0.05)
    with pytest.raises(bs.InvalidInput, match="lines and arcs: fit them, with --fit"):
        pen.read(tmp_path, fit=0)
    with pytest.raises(bs.InvalidInput, match="fit must be from 0 to 1 mm, got 2 mm"):
        pen.read(tmp_path, fit=2)
