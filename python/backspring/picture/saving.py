"""Writes a picture to a file: whole or not at all, and the same bytes every time."""

from __future__ import annotations

import io
import os
from pathlib import Path
from typing import Any, Literal

import matplotlib
from matplotlib.figure import Figure

from backspring.faults import Fault, invalid
from backspring.whole_file import replace_file

# Dates and versions would make every file differ.
_METADATA: dict[str, dict[str, Any]] = {
    ".png": {"Software": None},
    ".svg": {"Date": None, "Creator": None},
}
# Of a PNG, and of the stress colours inside an SVG.
_DPI: dict[str, Literal["figure"] | float] = {".png": "figure", ".svg": 240.0}


def require_suffix(path: Path) -> str:
    """Return the file's suffix; raises InvalidInput for one that no picture has."""
    suffix = path.suffix.lower()
    if suffix not in _METADATA:
        known = " or ".join(_METADATA)
        raise invalid([Fault("bad-value", "output", f'must end in {known}, got "{path.name}"')])
    return suffix


def save(figure: Figure, path: str | os.PathLike[str]) -> None:
    """Write a figure as PNG or SVG; a file that stood there is replaced only by a whole one."""
    target = Path(path)
    suffix = require_suffix(target)
    picture = io.BytesIO()
    # The salt makes the names inside an SVG repeatable.
    with matplotlib.rc_context({"svg.hashsalt": "backspring"}):
        figure.savefig(picture, format=suffix[1:], dpi=_DPI[suffix], metadata=_METADATA[suffix])
    replace_file(target, [picture.getvalue()])
