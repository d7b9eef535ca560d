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
from backspring.outline.drawn import tang_chain, with_teeth
from backspring.outline.dxf import read_dxf
from backspring.outline.every_part import every_part
from backspring.outline.parts import find_parts
from backspring.outline.template import Cut, Shape, Words, template
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


def _crossed(words: Words, line: tuple[complex, complex]) -> bool:
    """Whether a line enters the box that a text needs."""
    low, high = words.box_mm
    steps = np.linspace(0.0, 1.0, 400)
    along = line[0] + steps * (line[1] - line[0])
    across = (along.real > low.real) & (along.real < high.real)
    return bool((across & (along.imag > low.imag) & (along.imag < high.imag)).any())


def _lines(shape: Shape) -> list[tuple[complex, complex]]:
    if shape.chain:
        places = [piece.point_mm(i / 8) for piece in shape.chain.pieces for i in range(8)]
        return [*zip(places, [*places[1:], places[0]], strict=True)]
    if shape.hole:
        half = 0.5 * shape.hole.diameter_mm
        return [(shape.hole.center_mm - half * w, shape.hole.center_mm + half * w) for w in (1, 1j)]
    return [shape.line] if shape.line else []


@pytest.mark.parametrize("name", ["kestrel", "osprey", "sanderling", "turnstone", "wren"])
def test_no_text_meets_a_line_or_another_text(name: str) -> None:
    drawn = template(demo(name), Cut(kerf_mm=0.2, stock_mm=1.5))
    for i, words in enumerate(drawn.words):
        low, high = words.box_mm
        assert 0.0 < low.real < high.real < drawn.width_mm
        assert 0.0 < low.imag < high.imag < drawn.height_mm
        for other in drawn.words[:i]:
            beneath, above = other.box_mm
            apart = low.real >= above.real or beneath.real >= high.real
            assert apart or low.imag >= above.imag or beneath.imag >= high.imag, words.text
        assert not any(_crossed(words, line) for s in drawn.shapes for line in _lines(s)), words


def test_bars_are_in_the_design_s_units() -> None:
    bars = [w.text for w in template(demo("kestrel")).words if "measure it" in w.text]
    assert [text.partition(":")[0] for text in bars] == ["50 mm", "2 in"]


def test_every_blade_s_tang_is_drawn_and_every_pivot_once() -> None:
    for name, pivots in (("turnstone", 2), ("sanderling", 1)):
        drawn = template(demo(name))
        layers = {shape.layer for shape in drawn.shapes if shape.chain}
        assert layers == {"spring", *(f"tang {blade}" for blade in demo(name).blades)}
        assert sum(w.text.startswith("pivot") for w in drawn.words) == pivots


def test_the_pivots_of_both_ends_stand_as_far_from_the_pin_as_stated() -> None:
    holes = {each.name: each.hole.center_mm for each in every_part(demo("turnstone")).liner}
    assert holes["pivot, long"] - holes["middle pin"] == pytest.approx(
        37.0 + 1j * (0.8 - 4.2 - 1.75), abs=1e-12
    )
    assert (holes["pivot, pen"] - holes["middle pin"]).real == pytest.approx(-32.0, abs=1e-12)


def test_a_clamped_spring_has_no_rear_pin() -> None:
    drawn = template(demo("heron").replace(**{"spring.support": "clamped"}))
    assert "rear pin" not in {words.text for words in drawn.words}
    assert sum(shape.hole is not None for shape in drawn.shapes if shape.layer == "spring") == 1


def test_the_blade_is_broken_off_in_a_zigzag_within_the_tang() -> None:
    plain = tang_chain(demo("heron").core)
    broken = with_teeth(plain)
    added = {v.at_mm for v in broken.vertices} - {v.at_mm for v in plain.vertices}
    turns = np.diff([place.real for place in sorted(added, key=lambda place: place.imag)])
    assert len(added) > 4
    assert (turns[1:-1] * turns[2:] < 0.0).all()
    assert broken.area_mm2 < plain.area_mm2


def test_a_large_template_is_cut_into_pages_that_overlap_at_crosses(tmp_path: Path) -> None:
    path = tmp_path / "out.pdf"
    changes = {
        "spring.thickness": [[-200, 3.2], [0, 4.8], [210, 4.5]],
        "spring.rear_pin": 190,
        "spring.pad": [200, 209.5],
        "tang.pivot": 205,
        "fit.dial": 205,
    }
    drawn = write_template(demo("heron").replace(**changes), path)
    assert drawn.width_mm > 400.0
    pages = pypdfium2.PdfDocument(io.BytesIO(path.read_bytes()))
    assert len(pages) == 2
    assert "column 2 of 2" in pages[1].get_textpage().get_text_range()


def test_a_printed_template_is_true_to_size(tmp_path: Path) -> None:
    path = tmp_path / "out.pdf"
    drawn = write_template(demo("heron"), path)
    dots = 600.0 / 25.4
    page = pypdfium2.PdfDocument(io.BytesIO(path.read_bytes()))[0]
    picture = page.render(scale=600.0 / 72.0).to_numpy()[..., :3].mean(axis=2) < 128
    bar = next(
        s.line for s in drawn.shapes if s.line and abs(abs(s.line[1] - s.line[0]) - 50.0) < 1e-9
    )
    row = round((drawn.height_mm - bar[0].imag) * dots)
    # Above and below the bar's own line only its two ends are drawn.
    for side in (-0.7, 0.7):
        ends = np.flatnonzero(
            picture[row + round(side * dots), : round((bar[1].real + 1.0) * dots)]
        )
        assert (ends.max() - ends.min()) / dots == pytest.approx(50.0 + 0.15, abs=0.1)
    assert picture.shape[1] / dots == pytest.approx(drawn.width_mm, abs=0.1)
