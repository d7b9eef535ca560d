"""A design's template as a file."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

from backspring.design.arguments import quantity
from backspring.design.design import Design
from backspring.faults import Fault, invalid
from backspring.outline.template import Cut, Template, template
from backspring.outline.template_files import dxf_text, pdf_bytes, svg_text
from backspring.units import System
from backspring.whole_file import replace_file

SUFFIXES = (".svg", ".pdf", ".dxf")


def write_template(
    design: Design,
    path: str | os.PathLike[str],
    *,
    kerf: Any = "0 mm",
    stock: Any = "0 mm",
    units: System | None = None,
) -> Template:
    """Write spring, tang and liner holes at true size to an SVG, PDF or DXF file.

    `kerf` is the width of the cut: outlines are drawn half of it outside, holes half of it inside.
    `stock` is drawn dashed about the outlines, to be ground away. Bare numbers are in the design's
    units, as is what is written unless `units` says otherwise. The blade beyond the tang is broken
    off in a zigzag, as no design says what it looks like. Of several blades each tang is drawn, and
    each pivot's hole. Raises InvalidInput where a cut does not fit, with its place, and without the
    library that a kind of file needs.
    """
    place = Path(path)
    kind = place.suffix.lower()
    if kind not in SUFFIXES:
        raise _refusal("output", f'must end in {", ".join(SUFFIXES)}, got "{place}"')
    widths = [
        quantity(value, "length", key, design.units)
        for key, value in (("kerf", kerf), ("stock", stock))
    ]
    for key, width in zip(("kerf", "stock"), widths, strict=True):
        if not 0.0 <= width <= 5.0:
            raise _refusal(key, f"must be from 0 to 5 mm, got {width:g} mm")
    try:
        drawn = template(design, Cut(*widths), units)
    except ValueError as error:
        raise _refusal("kerf", str(error)) from error
    try:
        parts = pdf_bytes(drawn) if kind == ".pdf" else _text(drawn, kind).encode()
    except ModuleNotFoundError as error:
        extra = {".pdf": "plot", ".dxf": "dxf"}[kind]
        text = f'needs {error.name}: pip install "backspring[{extra}]"'
        raise _refusal("output", text) from error
    replace_file(place, [parts])
    return drawn


def _text(drawn: Template, kind: str) -> str:
    return svg_text(drawn) if kind == ".svg" else dxf_text(drawn)


def _refusal(key: str, text: str) -> Exception:
    return invalid([Fault("bad-value", key, text)])
