"""Whatever a design is called, its name is text on a page and nothing else."""

from __future__ import annotations

from pathlib import Path

import pytest

import backspring as bs
import page_reader
from backspring.report.page_drawing import drawing
from backspring.report.page_html import page_html
from backspring.report.page_parts import Section, Words
from backspring.report.tables import TextTable

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HOSTILE = (
    '<script>alert("x")</script>',
    'Tom & Jerry\'s "best" <b>&amp;',
    "' onload='x' \"><img src=x>",
    "סכין $x_1$ סכין",
    "]]>--><svg>\\",
    "W" * 100,
)


@pytest.mark.usefixtures("undrawn")
@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_name_is_text_and_nothing_else(name: str) -> None:
    heron = bs.load(DESIGNS / "heron.toml")
    plain, read = (
        page_reader.PageReader(bs.page(each).html) for each in (heron, heron.replace(name=name))
    )
    assert read.wrong == []
    assert read.tags - {"span"} == plain.tags
    assert {each for _, each, _ in read.attributes} - {"dir"} == {
        each for _, each, _ in plain.attributes
    }
    assert read.words.count(name) >= 2  # The window's title, and the page's.


def test_a_hostile_name_is_drawn_as_text() -> None:
    name = "</svg><script>&amp;\"'"
    check = bs.check(bs.load(DESIGNS / "wren.toml").replace(name=name))
    assert isinstance(check, bs.Check)
    drawn = drawing(check, "positions", "The joint.", "mm", "b1")
    html = page_html(name, "", [Section("results", "Results", (drawn,))])
    read = page_reader.PageReader(html)
    assert read.wrong == []
    assert "script" not in read.tags
    (svg,) = page_reader.drawings(html)
    assert any(each.text and each.text.startswith("</svg><script>") for each in svg.iter("text"))


def test_a_hostile_name_of_a_section_or_a_cell_is_text() -> None:
    words = "<script>&\"'"
    table = TextTable(words, (words, words), ((words, words),))
    section = Section("data", words, (table, Words(words, (words,), ((words,),))), words)
    read = page_reader.PageReader(page_html(words, words, [section]))
    assert read.wrong == []
    assert "script" not in read.tags
    assert read.words.count(words) == 13
