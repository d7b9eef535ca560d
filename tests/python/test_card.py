"""A bench card holds what the questions answer, on one page, in both units."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pypdfium2
import pytest

import backspring as bs
from backspring.cli import main
from backspring.report.display import number, reading
from outline_pen import REPO, demo

BLOCKS = (
    "When done", "Readings of the back against open", "Depth of each pass", "Stop", "Levers",
    "Getting the spring over the tang", "Caution",
)  # fmt: skip


def pages(path: Path) -> list[str]:
    document = pypdfium2.PdfDocument(io.BytesIO(path.read_bytes()))
    return [page.get_textpage().get_text_range() for page in document]


def squeezed(text: str) -> str:
    return re.sub(r"\s+", " ", text)


@pytest.mark.parametrize("units", ["mm", "in"])
def test_a_card_is_one_page_and_holds_what_the_questions_answer(
    units: bs.units.System, tmp_path: Path
) -> None:
    path, design = tmp_path / "card.pdf", demo("heron")
    bs.write_card(design, path, units=units)
    (page,) = pages(path)
    said = squeezed(page)
    assert all(block in said for block in BLOCKS)
    left = bs.allowance(design)
    assert f"closed {reading(left.closed_mm, units)}" in said
    loading = bs.load_spring(design).result
    assert f"with {number(loading.force_n, 'force', units)}" in said
    assert ("mm" in said.replace("50 mm", "")) == (units == "mm")


def test_passes_are_planned_from_the_readings_given(tmp_path: Path) -> None:
    path, design = tmp_path / "card.html", demo("heron")
    bs.write_card(design, path, half_stop=0.3, closed="0.4 mm")
    text = path.read_text("utf-8")
    plan = bs.fit_plan(design, half_stop=0.3, closed=0.4, state="unloaded")
    assert text.count("<td>[ ]</td>") == len(plan.steps)
    assert f"<td>{number(plan.steps[0].remove_mm, 'reading', 'mm')}</td>" in text
    assert "from the readings given" in text


def test_a_card_has_its_outlines_at_true_size(tmp_path: Path) -> None:
    path, drawing = tmp_path / "card.html", tmp_path / "heron.svg"
    bs.write_card(demo("heron"), path)
    bs.write_template(demo("heron"), drawing)
    assert drawing.read_text("utf-8") in path.read_text("utf-8")


def test_outlines_too_large_for_a_page_are_left_to_the_template(tmp_path: Path) -> None:
    changes = {"spring.thickness": [[-180, 3.2], [0, 3.8], [36.5, 2.5]], "spring.rear_pin": 170}
    path = tmp_path / "card.html"
    bs.write_card(demo("heron").replace(**changes), path)
    text = path.read_text("utf-8")
    assert "too large for a card: backspring template draws them" in text
    assert "<svg" not in text


def test_each_blade_has_a_page(tmp_path: Path) -> None:
    path = tmp_path / "card.pdf"
    bs.write_card(demo("turnstone"), path)
    assert [squeezed(page).count("the blade goes on here") for page in pages(path)] == [1, 1]
    assert "Turnstone, pen: bench card" in pages(path)[1]


def test_a_name_cannot_break_out_of_the_page(tmp_path: Path) -> None:
    data = demo("heron").to_dict() | {"name": "<b>$x$"}
    data.pop("format")
    for name in ("card.html", "card.pdf"):
        bs.write_card(bs.Design(**data), tmp_path / name)
    assert "<b>" not in (tmp_path / "card.html").read_text("utf-8")
    assert "<b>$x$: bench card" in pages(tmp_path / "card.pdf")[0]


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["-o", "card.txt"], r"must end in \.html or \.pdf"),
        (["-o", "card.pdf", "--half-stop", "0.3"], "closed: must be given with half_stop"),
        (["-o", "card.pdf", "--closed", "0.3 kg"], "closed"),
    ],
)
def test_what_no_card_can_be_made_of_is_refused(
    options: list[str], words: str, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    options = [str(tmp_path / each) if each.startswith("card") else each for each in options]
    assert main(["card", str(REPO / "data/designs/heron.toml"), *options]) == 2
    assert re.search(words, capsys.readouterr().err)
    assert not [*tmp_path.iterdir()]


def test_readings_of_several_blades_need_a_blade(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    words = ["card", str(REPO / "data/designs/turnstone.toml"), "-o", str(tmp_path / "card.html")]
    assert main([*words, "--closed", "0.3"]) == 2
    assert "say whose readings these are" in capsys.readouterr().err
    assert main([*words, "--closed", "0.3", "--blade", "pen", "--json"]) == 0
    assert '"title": "Turnstone, pen"' in capsys.readouterr().out
