"""Pictures of a design's parts as a flatbed scanner would make them. All of it is invented.

`python scanner.py FILE.png` in this folder makes the demo scan, of a pattern called Dunlin.
"""

from __future__ import annotations

import cmath
import math
import sys
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path as Line
from PIL import Image
from scipy.ndimage import gaussian_filter

import backspring as bs
from backspring import _core
from backspring.outline.chain import Chain, Vertex, closed_chain
from backspring.outline.drawn import draw
from backspring.outline.part_outlines import Hole

_STEP_RAD = math.radians(0.25)
_BESIDE_MM = 6.0


@dataclass(frozen=True)
class Light:
    """How a scanner sees: blur [px], noise (share of white), how uneven, grey of steel, curve."""

    blur_px: float = 0.7
    noise: float = 0.01
    uneven: float = 0.1
    steel: float = 0.08
    ground: float = 0.85
    curved: bool = True


@dataclass(frozen=True)
class Sheet:
    """A part with its holes, and how it lies on the glass."""

    chain: Chain
    holes: Sequence[Hole]

    def turned(self, turn: complex) -> Sheet:
        holes = [Hole(each.center_mm * turn, each.diameter_mm) for each in self.holes]
        return Sheet(self.chain.moved(turn, 0j), holes)

    def moved(self, by: complex) -> Sheet:
        holes = [Hole(each.center_mm + by, each.diameter_mm) for each in self.holes]
        return Sheet(self.chain.moved(1.0, by), holes)

    def mirrored(self) -> Sheet:
        holes = [Hole(each.center_mm.conjugate(), each.diameter_mm) for each in self.holes]
        return Sheet(self.chain.mirrored(), holes)

    @property
    def box(self) -> tuple[complex, complex]:
        places = np.array(_followed(self.chain))
        low = complex(places.real.min(), places.imag.min())
        return low, complex(places.real.max(), places.imag.max())


def sheets(core: _core.Design, whole_blade: bool = False) -> list[Sheet]:
    """Spring, tang and liner of a design, each in coordinates of its own."""
    outlines = draw(core)
    tang = _bladed(core, outlines.tang) if whole_blade else outlines.tang
    pins = [outlines.pivot_mm, outlines.middle_mm, outlines.rear_mm]
    wide = [outlines.tang_hole.diameter_mm, *(h.diameter_mm for h in outlines.spring_holes)]
    liner = [Hole(at, width) for at, width in zip(pins, wide, strict=True)]
    low, high = pins[2].real - 6.0 - 8.0j, complex(pins[0].real + 9.0, pins[2].imag + 5.0)
    board = closed_chain(
        Vertex(at) for at in (low, complex(high.real, low.imag), high, complex(low.real, high.imag))
    )
    return [
        Sheet(outlines.spring, outlines.spring_holes),
        Sheet(tang, [outlines.tang_hole]),
        Sheet(board, liner),
    ]


def _bladed(core: _core.Design, tang: Chain) -> Chain:
    """Carry a tang on to a whole blade, with a shoulder that stops on the spring's end."""
    end = core.pad.end_mm - core.tang.pivot_mm
    deep, high = core.tang.closed_mm, core.tang.open_mm
    front = max(v.at_mm.real for v in tang.vertices)
    behind = [v for v in tang.vertices if v.at_mm.real < front - 1e-6]
    if core.tang.kick:
        behind = [v for v in tang.vertices if v.at_mm.imag < high - 1e-6 or v.at_mm.real < 0.0]
    # The outline runs counterclockwise: what is ahead stands after the last corner below.
    first = max(
        (i for i, v in enumerate(behind) if v.at_mm.imag < 0.0),
        key=lambda i: behind[i].at_mm.real,
    )
    edge = [Vertex(complex(front, -deep)), Vertex(complex(front + 2.0, -deep + 0.8))]
    belly = Vertex(complex(52.0, -deep + 1.0), 0.16)
    back = [complex(72.0, high - 2.0), complex(54.0, high + 2.2), complex(end, high + 2.4)]
    spine = [Vertex(at) for at in (*back, complex(end, high))]
    return closed_chain([*behind[first + 1 :], *behind[: first + 1], *edge, belly, *spine])


def scanned(
    parts: Sequence[Sheet],
    dpi: float,
    rng: np.random.Generator,
    light: Light | None = None,
    flipped: bool = False,
) -> npt.NDArray[np.uint8]:
    """Lay parts one above the other, each at an angle of its own, and scan them."""
    return seen_by(*laid_out(parts, rng, flipped), dpi, rng, light or Light())


def laid_out(
    parts: Sequence[Sheet], rng: np.random.Generator, flipped: bool = False
) -> tuple[list[Sheet], float, float]:
    """Lay parts one above the other; also returns how wide and high the picture is [mm]."""
    placed, top = [], _BESIDE_MM
    for part in parts:
        seen = part.mirrored() if flipped else part
        seen = seen.turned(cmath.exp(1j * rng.uniform(-math.pi, math.pi)))
        low, high = seen.box
        placed.append(seen.moved(complex(_BESIDE_MM, top) - low))
        top += (high - low).imag + _BESIDE_MM
    wide = max(part.box[1].real for part in placed) + _BESIDE_MM
    return placed, wide, top


def seen_by(
    placed: Sequence[Sheet], wide: float, high: float, dpi: float, rng: Any, light: Light
) -> npt.NDArray[np.uint8]:
    px = dpi / 25.4
    columns, rows = math.ceil(wide * px), math.ceil(high * px)
    share = _covered(placed, columns, rows, px)
    share = gaussian_filter(share, light.blur_px)
    x, y = np.linspace(-1.0, 1.0, columns), np.linspace(-1.0, 1.0, rows)
    slope = 1.0 + light.uneven * (0.6 * x[None, :] - 0.3 * y[:, None] - 0.2 * x[None, :] ** 2)
    seen = (light.ground + (light.steel - light.ground) * share) * slope
    seen += light.noise * rng.standard_normal(seen.shape, np.float32)
    seen = np.clip(seen, 0.0, 1.0)
    if light.curved:
        seen = np.where(seen <= 0.0031308, 12.92 * seen, 1.055 * seen ** (1 / 2.4) - 0.055)
    return np.asarray(np.round(255.0 * seen), np.uint8)


def saved(grey: npt.NDArray[np.uint8], path: Path, dpi: float | None = None) -> Path:
    options = {"dpi": (dpi, dpi)} if dpi else {}
    Image.fromarray(grey).save(path, **options)
    return path


def _covered(placed: Sequence[Sheet], columns: int, rows: int, px: float) -> npt.NDArray[Any]:
    """Draw all parts, each pixel as much black as a part covers of it."""
    figure = Figure(figsize=(columns / 100.0, rows / 100.0), dpi=100)
    canvas = FigureCanvasAgg(figure)
    axes = figure.add_axes((0.0, 0.0, 1.0, 1.0), xlim=(0.0, columns), ylim=(0.0, rows))
    axes.set_axis_off()
    for part in placed:
        lines = [_line([at * px for at in _followed(part.chain)])]
        for hole in part.holes:
            turns = np.exp(-1j * np.arange(0.0, math.tau, _STEP_RAD))
            lines.append(_line(list(px * (hole.center_mm + 0.5 * hole.diameter_mm * turns))))
        path = Line.make_compound_path(*lines)
        axes.add_patch(PathPatch(path, fc="black", ec="none", lw=0.0, snap=False))
    canvas.draw()
    return 1.0 - np.asarray(canvas.buffer_rgba())[..., 0] / np.float32(255.0)


def _line(places: list[complex]) -> Line:
    points = [(at.real, at.imag) for at in places]
    return Line([*points, points[0]], closed=True)


def _followed(chain: Chain) -> list[complex]:
    places = []
    for piece in chain.pieces:
        steps = max(1, math.ceil(abs(piece.sweep_rad) / _STEP_RAD))
        places += [piece.point_mm(i / steps) for i in range(steps)]
    return places


def main() -> None:
    """Scan the Dunlin's parts, without noise, for a file that stays small."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "dunlin.toml"
        bs.new_design(path, name="Dunlin", steel="1095", hardness=46, pull="3 lbf")
        core = bs.load(path).core
    lies = (cmath.exp(0.1j), cmath.exp(3.4j), cmath.exp(-0.05j))
    placed, top = [], _BESIDE_MM
    for part, turn in zip(sheets(core, whole_blade=True), lies, strict=True):
        low, high = part.turned(turn).box
        placed.append(part.turned(turn).moved(complex(_BESIDE_MM, top) - low))
        top += (high - low).imag + _BESIDE_MM
    wide = max(part.box[1].real for part in placed) + _BESIDE_MM
    light = Light(noise=0.0, uneven=0.0, ground=0.9)
    picture = seen_by(placed, wide, top, 300.0, np.random.default_rng(1), light)
    saved(picture, Path(sys.argv[1]), 300.0)


if __name__ == "__main__":
    main()
