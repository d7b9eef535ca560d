"""How sure a scan is of what was read from it, in a maker's words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.display import number, scatter, unit_of

if TYPE_CHECKING:
    from backspring.outline.scan_accuracy import ScanAccuracy
    from backspring.units import System

_MM_PER_INCH = 25.4
_NAMES = {"open": "open face", "half_stop": "half-stop", "closed": "closed face"}
_SHOWN_MM = 0.01
# No scanner's glass is truer than this.
_LEAST_MM = 0.001


def scan_lines(scan: ScanAccuracy, units: System) -> Iterator[str]:
    """Say what the edges tell of themselves, what follows for the knife, what no picture shows."""

    def length(value_mm: float) -> str:
        return f"{scatter(value_mm, 'reading', units)} {unit_of('reading', units)}"

    def sure(value_mm: float) -> str:
        return f"+-{length(value_mm)}" if value_mm > _LEAST_MM else f"under {length(_LEAST_MM)}"

    whose = "as given" if scan.scale_from == "given" else "by the picture's own tag"
    yield (
        f"scale {scan.px_per_mm:.2f} px/mm ({_MM_PER_INCH * scan.px_per_mm:.0f} dpi), {whose}: "
        "measure a length each way"
    )
    for name in ("spring", "tang"):
        edge = scan.edges[name]
        most = length(edge.largest_mm)
        yield f"{name}: its edge strays {length(edge.rms_mm)} (rms), {most} at most"
    centers = max(center for center, _ in scan.holes.values())
    widths = max(width for _, width in scan.holes.values())
    yield f"holes: centres {sure(centers)}, diameters {sure(widths)}"
    faces = ", ".join(f"{_NAMES[name]} {sure(each)}" for name, each in scan.faces_mm.items())
    yield f"tang: {faces}" if faces else "tang: no straight face"
    yield (
        f"so readings {sure(scan.reading_mm)}, preload {sure(scan.preload_mm)}, thickness "
        f"{sure(scan.thickness_mm)}: one standard deviation, of this picture alone"
    )
    if scan.moved_mm:
        way = "out" if scan.moved_mm > 0.0 else "in"
        yield f"all edges were moved {length(abs(scan.moved_mm))} {way}, by the holes' drill"
    else:
        yield (
            f"all edges alike may lie {length(scan.edge_mm)} farther out or in: --hole with the "
            "drill of the spring's holes settles it"
        )
    off = number(_SHOWN_MM, "reading", "in")
    yield f"a face {_SHOWN_MM:g} mm off is {off} thou of reading at the pivot"
    yield (
        "not to be seen: perspective of a photo, a part that lies askew, a bevel; lay parts flat "
        "on the glass, burrs off, the same side up"
    )
