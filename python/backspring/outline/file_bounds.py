"""What keeps a drawing's file, and what it draws, within bounds."""

from __future__ import annotations

import cmath
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

from backspring.outline.drawing import Drawing

_MOST_BYTES = 20_000_000
FARTHEST_MM = 10_000.0
# Of what no one sees on a drawing, as two ends in one place.
DEGENERATE = "an outline is no shape: a length or an angle of it is nothing"
# All curves of a drawing together.
MOST_EDGES = 20_000


def content_of(path: Path) -> bytes:
    """Read a file of a size that a drawing has; ValueError where it is none."""
    if path.is_dir():
        raise ValueError("is a directory, not a drawing")
    if path.exists() and not path.is_file():
        raise ValueError("is no file")
    with path.open("rb") as file:
        content = file.read(_MOST_BYTES + 1)
    if len(content) > _MOST_BYTES:
        raise ValueError(f"larger than {_MOST_BYTES // 1_000_000} MB: keep the outlines alone")
    if not content.strip(b"\0 \t\r\n"):
        raise ValueError("the file is empty")
    return content


@contextmanager
def no_drawing(kind: str) -> Iterator[None]:
    """Turn what a library raises of a broken file, which may be anything, into a ValueError."""
    try:
        yield
    except (ValueError, OSError):
        raise
    except Exception as error:
        raise ValueError(f"no {kind} drawing: {str(error) or type(error).__name__}") from error


def keep_sound(drawing: Drawing) -> None:
    """Take out what has a place that is no number or is far away, and tell how much."""
    edges = [e for e in drawing.edges if _near((e.piece.start_mm, e.piece.end_mm, e.piece.bulge))]
    circles = [c for c in drawing.circles if _near((c[0], c[1]))]
    gone = len(drawing.edges) - len(edges) + len(drawing.circles) - len(circles)
    if gone:
        drawing.faults.append(
            f"{gone} line{'s' * (gone > 1)}, arc or circle with a place that is no number, or is "
            f"over {FARTHEST_MM / 1000.0:g} m away: are the units right?"
        )
    points = sum(1 for _, width, _ in circles if not width > 0.0)
    if points:
        drawing.faults.append(f"{points} circle{'s' * (points > 1)} without a diameter")
    drawing.edges = edges
    drawing.circles = [c for c in circles if c[1] > 0.0]


def few(faults: Iterable[str], most: int = 12) -> list[str]:
    """List the first of many faults, each once, and how many more there are."""
    every = list(dict.fromkeys(faults))
    return every if len(every) <= most else [*every[:most], f"and {len(every) - most} more"]


def _near(values: Iterable[complex]) -> bool:
    return all(cmath.isfinite(value) and abs(value) < FARTHEST_MM for value in values)
