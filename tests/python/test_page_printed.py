"""A page as a browser lays it out on paper: nothing is lost, cut off or left alone at a foot.

The browser is Debian's chromium without a window, the words on paper are read by pdftotext.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from matplotlib.image import imread

import page_reader
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
# A4 in points, and the margin of 0.6 in that the page's style asks for.
A4_POINTS = (595.0, 842.0)
MARGIN_POINTS = 0.6 * 72.0
WINDOW_PX = (900, 4000)


@dataclass(frozen=True)
class Word:
    """A word on paper, in points from the upper left corner."""

    said: str
    left: float
    right: float
    low: float


def run(program: str, package: str, *words: str) -> None:
    found = shutil.which(program)
    assert found, f"{program} not found: install Debian's {package}"
    subprocess.run([found, *words], check=True, capture_output=True, timeout=120)


def browse(page: Path, *words: str) -> None:
    """Open a page without a window; a browser run by root refuses its own sandbox."""
    chromium = ("--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars")
    profile = f"--user-data-dir={page.parent / 'profile'}"
    run("chromium", "chromium", *chromium, profile, *words, page.as_uri())


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Path:
    written = tmp_path_factory.mktemp("page") / "kestrel.html"
    assert main(["report", str(DESIGNS / "kestrel.toml"), "-o", str(written)]) in (0, 1)
    return written


@pytest.fixture(scope="module")
def sheets(page: Path) -> list[list[Word]]:
    """Words of every sheet of paper."""
    pdf, boxes = page.with_suffix(".pdf"), page.with_suffix(".xml")
    browse(page, "--no-pdf-header-footer", f"--print-to-pdf={pdf}")
    run("pdftotext", "poppler-utils", "-bbox", str(pdf), str(boxes))
    _, _, body = boxes.read_text("utf-8").partition("<body>")
    found = ElementTree.fromstring(body.partition("</body>")[0])
    for sheet in found:
        size = float(sheet.attrib["width"]), float(sheet.attrib["height"])
        assert size == pytest.approx(A4_POINTS, abs=0.5)
    return [[_word(word) for word in sheet] for sheet in found]


def _word(box: ElementTree.Element) -> Word:
    left, right, low = (float(box.attrib[name]) for name in ("xMin", "xMax", "yMax"))
    return Word(box.text or "", left, right, low)


def test_every_word_of_the_page_is_on_paper(page: Path, sheets: list[list[Word]]) -> None:
    """But those that a line of print is broken within, which hyphens show."""
    printed = "".join(word.said for sheet in sheets for word in sheet)
    words = page_reader.PageReader(page.read_text("utf-8")).text.split()
    assert len(words) > 1000
    lost = {word for word in words if word not in printed}
    assert {word for word in lost if not re.search(r"[-_/.]", word)} == set()
    assert len(lost) < 0.02 * len(words)


def test_nothing_is_printed_over_the_margins(sheets: list[list[Word]]) -> None:
    assert 6 <= len(sheets) <= 14
    for sheet in sheets:
        assert min(word.left for word in sheet) >= MARGIN_POINTS - 1.0
        assert max(word.right for word in sheet) <= A4_POINTS[0] - MARGIN_POINTS + 1.0


def test_sections_are_printed_in_turn_and_none_begins_at_the_foot_of_a_sheet(
    page: Path, sheets: list[list[Word]]
) -> None:
    headings = page_reader.PageReader(page.read_text("utf-8")).headings
    text = "\n".join(" ".join(word.said for word in sheet) for sheet in sheets)
    places = [text.index(heading) for heading in headings]
    assert places == sorted(places)
    foot = A4_POINTS[1] - MARGIN_POINTS
    for number, sheet in enumerate(sheets, start=1):
        in_margin = {word.said for word in sheet if word.low > foot}
        assert in_margin == {"Kestrel", "/", f"{number}", f"{len(sheets)}"}
        lowest = max(word.low for word in sheet if word.low <= foot)
        last_line = " ".join(word.said for word in sheet if lowest - 2.0 < word.low <= foot)
        assert last_line not in headings


def test_a_narrow_window_cuts_nothing_off_at_its_right(page: Path) -> None:
    shot = page.with_suffix(".png")
    browse(page, f"--window-size={WINDOW_PX[0]},{WINDOW_PX[1]}", f"--screenshot={shot}")
    pixels = imread(shot)[..., :3]
    assert pixels.shape[:2] == WINDOW_PX[::-1]
    assert np.all(pixels[:, -8:] == 1.0)
    assert np.all(pixels[:, :8] == 1.0)
    # And something is written on it.
    assert (pixels < 0.5).any(axis=2).mean() > 0.01
