"""Bench cards as one HTML file or one PDF file, a page a blade."""

from __future__ import annotations

import html
import io
import os
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from backspring.design.arguments import quantity
from backspring.design.design import Design
from backspring.faults import Fault, invalid
from backspring.outline.template import Template, template
from backspring.outline.template_files import draw_template, svg_text
from backspring.report.card import Card, Read, card
from backspring.report.page_html import POLICY
from backspring.report.tables import Lines
from backspring.unit_table import INCH_MM, MM_PER_POINT
from backspring.units import System
from backspring.whole_file import replace_file

# What a printer reaches of an A4 or Letter sheet.
PAGE_MM = (188.0, 262.0)
_COLUMNS = 96
_LARGEST_PT, _SMALLEST_PT = 8.0, 5.0
_LEADING = 1.25
# A browser's rows and headings take more room than plain lines.
_HTML_SHARE = 0.95
_TOP_MM = 5.0
_STYLE = """
@page { size: auto; margin: 10mm; }
body { margin: 0 auto; max-width: 188mm; color: #111; background: #fff;
  font: 8pt/1.15 system-ui, "DejaVu Sans", Arial, sans-serif; }
section { break-after: page; } section:last-child { break-after: auto; }
h1 { font-size: 1.4em; margin: 0; }
svg { display: block; max-width: 100%; }
table { border-collapse: collapse; width: 100%; margin: 0.4em 0; break-inside: avoid; }
caption, p { font-weight: 600; text-align: left; margin: 0.5em 0 0.1em; }
table { font-size: 1em; }
th, td { padding: 0.05em 0.5em; border-bottom: 0.2mm solid #bbb; text-align: right; }
th:first-child, td:first-child { text-align: left; }
ul { margin: 0; padding-left: 5mm; }
"""


@dataclass(frozen=True, slots=True)
class Cards:
    """The cards that were written, in the order of the blades."""

    name: str
    cards: tuple[Card, ...]

    def to_dict(self) -> dict[str, Any]:
        """Give what the command's JSON holds."""
        return {"cards": [each.to_dict() for each in self.cards]}


def write_card(
    design: Design,
    path: str | os.PathLike[str],
    *,
    half_stop: Any = None,
    closed: Any = None,
    units: System | None = None,
) -> Cards:
    """Write the bench card of a design as an HTML or PDF file: one page for each blade.

    Outlines at true size, readings to leave and wanted, the depth of each pass with boxes to tick,
    when to stop, levers, what pulls the spring over the tang, cautions. The passes are planned from
    `half_stop` and `closed`, read with the rear pin out, or without them from both a little proud.
    Raises InvalidInput for a file of another kind, and for a reading that cannot be.
    """
    place = Path(path)
    kind = place.suffix.lower()
    if kind not in (".html", ".pdf"):
        raise invalid([Fault("bad-value", "output", f'must end in .html or .pdf, got "{place}"')])
    units = units or design.units
    seen = [design]
    if design.of_all_blades:
        seen = [design.seen_from(name) for name in design.blades]
    read = _read(design, half_stop, closed)
    pages = [_page(each, units, read) for each in seen]
    try:
        written = _pdf(pages) if kind == ".pdf" else _html(design.name, pages).encode()
    except ModuleNotFoundError as error:
        text = f'needs {error.name}: pip install "backspring[plot]"'
        raise invalid([Fault("missing-package", "output", text)]) from error
    replace_file(place, [written])
    return Cards(design.title, tuple(each for each, _ in pages))


def _read(design: Design, half_stop: Any, closed: Any) -> Read:
    given = {"half_stop": half_stop, "closed": closed}
    if half_stop is None and closed is None:
        return Read()
    if design.of_all_blades:
        names = ", ".join(design.blades)
        text = f"say whose readings these are: this spring has {names}"
        raise invalid([Fault("bad-value", "blade", text)])
    if closed is None:
        raise invalid([Fault("bad-value", "closed", "must be given with half_stop")])
    read = {
        key: None if value is None else quantity(value, "length", key, design.units)
        for key, value in given.items()
    }
    return Read(read["half_stop"], read["closed"])


_Page = tuple[Card, Template | None]


def _page(design: Design, units: System, read: Read) -> _Page:
    """Lay a page out; outlines that leave too little room are left to the template."""
    made, drawn = card(design, units, read), template(design, units=units)
    if drawn.width_mm <= PAGE_MM[0] and _size_pt(made, drawn) >= _SMALLEST_PT:
        return made, drawn
    too_large = Lines("Outlines", ("too large for a card: backspring template draws them",))
    return replace(made, blocks=(too_large, *made.blocks)), None


def _size_pt(made: Card, drawn: Template | None) -> float:
    """Find the size of letters that lets all lines stand under the outlines."""
    room = PAGE_MM[1] - (drawn.height_mm if drawn else _TOP_MM)
    return min(_LARGEST_PT, room / (len(_lines(made)) * _LEADING * MM_PER_POINT))


def _lines(made: Card) -> list[str]:
    lines = [f"{made.title}: bench card"]
    for block in made.blocks:
        lines += ["", *block.plain(_COLUMNS).split("\n")]
    return [*lines, ""]


def _html(name: str, pages: Sequence[_Page]) -> str:
    sections = []
    for each, drawn in pages:
        blocks = "\n".join(block.html() for block in each.blocks)
        heading = f"<h1>{html.escape(each.title)}: bench card</h1>"
        sections.append(
            f"<section>\n{heading}\n{svg_text(drawn) if drawn else ''}{blocks}\n</section>"
        )
    return "\n".join(
        [
            '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8" />',
            f'<meta http-equiv="Content-Security-Policy" content="{POLICY}" />',
            f"<title>{html.escape(name)}: bench card</title>",
            f"<style>{_STYLE}</style>\n</head>\n<body>",
            *sections,
            "</body>\n</html>\n",
        ]
    )


def _pdf(pages: Sequence[_Page]) -> bytes:
    from matplotlib.backends.backend_pdf import PdfPages
    from matplotlib.figure import Figure

    written = io.BytesIO()
    title = {"Title": f"{pages[0][0].title}: bench card", "CreationDate": None}
    width, height = PAGE_MM
    with PdfPages(written, metadata=title) as file:
        for each, drawn in pages:
            top, size = drawn.height_mm if drawn else _TOP_MM, _size_pt(each, drawn)
            figure = Figure(figsize=(width / INCH_MM, height / INCH_MM))
            axes = figure.add_axes((0.0, 0.0, 1.0, 1.0))
            axes.set(xlim=(0.0, width), ylim=(top - height, top))
            axes.set_axis_off()
            if drawn:
                draw_template(axes.plot, axes.text, drawn)
            style: dict[str, Any] = {"fontsize": size, "family": "DejaVu Sans Mono", "va": "top"}
            for row, line in enumerate(_lines(each)):
                down = row * _LEADING * size * MM_PER_POINT
                axes.text(5.0, -down, line, parse_math=False, **style)
            file.savefig(figure)
    return written.getvalue()
