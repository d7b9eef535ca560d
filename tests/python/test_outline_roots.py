"""Roots of a spring's kinks, drawn out with their radius and read back."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring.cli import main
from backspring.outline.every_part import every_part
from backspring.outline.reading import read_outline
from backspring.outline.written import write_template
from outline_pen import REPO, VALUES, demo, numbers

STEPPED = [[-38, 3.2], [-4, 3.8], [7, 3.8], [7, 3.0], [25, 2.6], [36.5, 2.8]]
LEANING = [[-38, 0.5], [0, 1.9], [10, 2.6], [27, 1.4], [36.5, 1.4]]


@pytest.mark.parametrize("suffix", [".dxf", ".svg"])
@pytest.mark.parametrize(
    "changes",
    [
        {"spring.kink_radius": 3.0},
        {"spring.kink_radius": 0.5, "spring.thickness": STEPPED},
        {"spring.kink_radius": 2.0, "spring.mid_line": LEANING},
    ],
    ids=["taper", "step", "leaning"],
)
def test_roots_of_kinks_are_drawn_out_and_read_back(
    changes: dict[str, Any], suffix: str, tmp_path: Path
) -> None:
    design, path = demo("heron").replace(**changes), tmp_path / f"drawn{suffix}"
    write_template(design, path)
    again = read_outline(path, values=VALUES).design
    assert numbers(again.core) == pytest.approx(numbers(design.core), rel=0.0, abs=1e-6)
    radius = changes["spring.kink_radius"]
    assert again.core.surface.kink_radius_mm == pytest.approx(radius, abs=1e-6)
    arcs = [abs(p.radius_mm) for p in every_part(design).spring.pieces if p.bulge]
    assert arcs == pytest.approx([radius] * len(arcs)) and len(arcs) >= 1


def test_a_root_without_room_stays_sharp_and_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    heron = (REPO / "data" / "designs" / "heron.toml").read_text("utf-8")
    path, drawn = tmp_path / "heron.toml", tmp_path / "heron.svg"
    radii = "[spring]\nkink_radius = 40\ncurve_radius = 60\n"
    thickness = f"thickness = {STEPPED}\n"
    path.write_text(re.sub(r"(?m)^thickness = .*\n", thickness, heron).replace("[spring]\n", radii))
    assert main(["template", str(path), "-o", str(drawn)]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "spring.kink_radius: the kink at 7 mm has no room for 40 mm, drawn sharp" in said
    assert "spring.curve_radius: not drawn" in said
    again = read_outline(drawn, values=VALUES).design.core
    assert again.surface.kink_radius_mm == pytest.approx(40.0, abs=1e-4)  # of the kink at 25 mm
    assert numbers(again) == pytest.approx(numbers(bs.load(path).core), rel=0.0, abs=1e-6)
