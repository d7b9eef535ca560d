"""Templates: true to size, with the cut and the stock where they were asked for."""

from __future__ import annotations

import io
import math
from pathlib import Path

import ezdxf
import numpy as np
import pypdfium2
import pytest

import backspring as bs
from backspring.outline.dxf import read_dxf
from backspring.outline.parts import find_parts
from backspring.outline.written import write_template
from outline_pen import demo


def test_a_template_has_its_size_and_its_bar(tmp_path: Path) -> None:
    path = tmp_path / "out.dxf"
    drawn = write_template(demo("heron"), path)
    document = ezdxf.readfile(path)  # type: ignore[attr-defined]
    lines = document.modelspace().query("LINE[layer=='notes']")
    longest = max((line.dxf.end - line.dxf.start).magnitude for line in lines)
    assert longest == pytest.approx(50.0, abs=1e-9)
    assert drawn.width_mm > 75.0


def test_a_kerf_moves_outlines_out_and_holes_in(tmp_path: Path) -> None:
    plain, cut = tmp_path / "plain.dxf", tmp_path / "cut.dxf"
    write_template(demo("heron"), plain)
    write_template(demo("heron"), cut, kerf="0.2 mm")
    before, after = (find_parts(read_dxf(path), {}).outlines for path in (plain, cut))
    part = before.spring
    grown = part.area_mm2 + 0.1 * part.length_mm + math.pi * 0.01
    # The back has two hollow corners that hardly turn: a little less.
    assert after.spring.area_mm2 == pytest.approx(grown, abs=2e-3)
    assert [hole.diameter_mm for hole in after.spring_holes] == pytest.approx([1.8, 1.8], abs=1e-9)


@pytest.mark.parametrize(
    ("options", "words"),
    [
        ({"kerf": "2.5 mm"}, r"hole at \(.*\) is narrower than the cut"),
        ({"kerf": "-1 mm"}, "kerf: must be from 0 to 5 mm"),
        ({"stock": "9 mm"}, "stock: must be from 0 to 5 mm"),
    ],
)
def test_a_cut_that_does_not_fit_is_refused(
    options: dict[str, str], words: str, tmp_path: Path
) -> None:
    path = tmp_path / "out.svg"
    with pytest.raises(bs.InvalidInput, match=words):
        write_template(demo("heron"), path, **options)
    assert not path.exists()


def test_a_printed_template_is_true_to_size(tmp_path: Path) -> None:
    path = tmp_path / "out.pdf"
    drawn = write_template(demo("heron"), path)
    dots = 600.0 / 25.4
    page = pypdfium2.PdfDocument(io.BytesIO(path.read_bytes()))[0]
    picture = page.render(scale=600.0 / 72.0).to_numpy()[..., :3].mean(axis=2) < 128
    bar = next(s.line for s in drawn.shapes if s.line and abs(s.line[1] - s.line[0]) == 50.0)
    row = round((drawn.height_mm - bar[0].imag) * dots)
    # Above and below the bar's own line only its two ends are drawn.
    for side in (-0.7, 0.7):
        ends = np.flatnonzero(
            picture[row + round(side * dots), : round((bar[1].real + 1.0) * dots)]
        )
        assert (ends.max() - ends.min()) / dots == pytest.approx(50.0 + 0.15, abs=0.1)
    assert picture.shape[1] / dots == pytest.approx(drawn.width_mm, abs=0.1)
