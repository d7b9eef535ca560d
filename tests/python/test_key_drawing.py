"""The drawing of the keys shows every length, and nothing on it covers another."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from matplotlib.figure import Figure

from backspring.cli import main
from backspring.design.fields import ROWS, is_number, kind_of
from backspring.picture import key_drawing

LENGTHS = [
    key
    for key, row in ROWS.items()
    if key.split(".")[0] in ("spring", "tang", "fit", "blade")
    and row.in_file
    and is_number(row)
    and kind_of(row) == "length"
]


@pytest.fixture(scope="module")
def figure() -> Figure:
    drawn = key_drawing()
    drawn.draw_without_rendering()
    return drawn


def test_every_length_is_drawn(figure: Figure) -> None:
    words = {word for text in figure.axes[0].texts for word in text.get_text().split()}
    assert {*LENGTHS} <= {word.strip(",:") for word in words}
    assert len(LENGTHS) > 30


def test_no_text_meets_another_or_leaves_the_sheet(figure: Figure) -> None:
    texts = [text for text in figure.axes[0].texts if text.get_text()]
    boxes = [(text.get_text(), text.get_window_extent()) for text in texts]
    for i, (said, box) in enumerate(boxes):
        assert figure.bbox.x0 < box.x0 < box.x1 < figure.bbox.x1, said
        assert figure.bbox.y0 < box.y0 < box.y1 < figure.bbox.y1, said
        assert not [other for other, there in boxes[:i] if box.overlaps(there)], said


def test_the_command_writes_it(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "keys.svg"
    assert main(["keys", "--drawing", str(path), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["data"] == {"output": str(path)}
    assert "spring.rear_pin" in path.read_text("utf-8")
    assert main(["keys", "--drawing", str(tmp_path / "keys.pdf")]) == 2
    assert "must end in .png or .svg" in capsys.readouterr().err
