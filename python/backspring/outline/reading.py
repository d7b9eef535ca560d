"""A design read from a drawing of its parts."""

from __future__ import annotations

import os
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from backspring.design.arguments import quantity
from backspring.design.design import Design
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.outline.assemble import Assembled, assemble
from backspring.outline.drawing import Drawing
from backspring.outline.file_bounds import DEGENERATE, few, keep_sound
from backspring.outline.file_text import Given, design_text
from backspring.outline.keys_of import faces_of
from backspring.outline.named_parts import ReadSeveral, chains_of
from backspring.outline.part_outlines import Outlines
from backspring.outline.parts import Found, find_parts
from backspring.outline.scan_scale import KINDS, ScanGiven, given_hole_mm, given_mm_per_px
from backspring.outline.several import FoundSeveral, blade_names, find_several
from backspring.outline.several_joint import assemble_several
from backspring.outline.several_text import several_text
from backspring.outline.tang_of import OwnShape, TangFaces
from backspring.report.result import Reported
from backspring.unit_table import MM_PER

if TYPE_CHECKING:
    from backspring.outline.scan import ScanReading
    from backspring.outline.scan_accuracy import ScanAccuracy

# Of a scan no more is told than it shows.
_SCANNED_DECIMALS = 4


@dataclass(frozen=True, repr=False)
class OutlineReading(Reported):
    """What a drawing made: the design file's text, what was taken for what, gaps closed.

    Of several blades `found`, `joint` and `faces` are of the first, and `several` tells of all.
    `scan` says how sure a picture is of it; a drawing has none.
    """

    _report_by = "outline:reading_report"

    text: str
    found: Found
    joint: Assembled
    faces: TangFaces | OwnShape
    left_out: Mapping[str, int]
    notes: Sequence[str] = ()
    units: Literal["mm", "in"] = "mm"
    several: ReadSeveral | None = None
    scan: ScanAccuracy | None = None

    @property
    def design(self) -> Design:
        """The design, with what the drawing does not show as the text states it."""
        tables = tomllib.loads(self.text)
        tables.pop("format")
        return Design(**tables)

    def to_dict(self) -> dict[str, Any]:
        """Give what the command's JSON holds."""
        scan = {"scan": self.scan.to_dict()} if self.scan else {}
        return scan | {
            "text": self.text,
            "known_by": dict(self.found.known_by),
            "gaps": [
                {"x_mm": place.real, "y_mm": place.imag, "width_mm": width}
                for place, width in self.found.gaps
            ],
            "outlines": {
                name: {"area_mm2": chain.area_mm2, "length_mm": chain.length_mm}
                for name, chain in chains_of(self.found, self.several)
            },
            "tilt_rad": self.joint.tilt_rad,
            "rear_pin_offset_mm": self.joint.rear_pin_offset_mm,
            "lean_rad": self.joint.lean.lean_rad,
            "belly_off_mm": self.joint.lean.belly_off_mm,
            "compliance_share": self.joint.lean.compliance_share,
            "has_mid_line": self.joint.lean.counts,
            "notes": list(self.notes),
            "not_taken": dict(self.left_out),
        }


def read_outline(
    path: str | os.PathLike[str],
    *,
    units: Literal["mm", "in"] | None = None,
    spring: str | None = None,
    tang: str | None = None,
    liner: str | None = None,
    name: str | None = None,
    values: Mapping[str, str] | None = None,
    fit: Any = None,
    scale: str | None = None,
    dpi: Any = None,
    hole: Any = None,
) -> OutlineReading:
    """Read spring, tang and the liner's three pin holes as a design: a DXF or SVG, or a scan.

    `units` are those of a drawing that does not say its own; `spring`, `tang` and `liner` name its
    layers where they do not name themselves. `values` are what no drawing shows, by key, as a
    design file states them. The tang is drawn as it stands open. Outlines traced from a scan are
    fitted with lines and arcs within 0.05 mm, or all within `fit`, 0 for none.

    A scan shows the parts themselves side by side, at any angle, the same side up, dark on light or
    light on dark; `scale`, as "50 mm = 1181 px", or `dpi` says how large they are where the file
    does not, and `hole` how wide the spring's two holes were drilled: every edge is then moved by
    half of what they are off. Raises InvalidInput with every fault and its place.
    """
    place = Path(path)
    if place.suffix.lower() in KINDS:
        if any((spring, tang, liner)):
            raise _refusal(place, "a picture has no layers: parts are known by their holes")
        return _of_scan(place, units or "mm", name, values or {}, (scale, dpi, hole, fit))
    if any(each is not None for each in (scale, dpi, hole)):
        raise _refusal(place, "a drawing has its own scale: leave out --scale, --dpi and --hole")
    drawing = _read(place, None if units is None else MM_PER[units])
    layers = {"spring": spring, "tang": tang, "liner": liner}
    try:
        keep_sound(drawing)
        if drawing.mm_per_unit is None:
            raise ValueError("the drawing does not state its units: give --units mm or in")
        named = {key: each for key, each in layers.items() if each}
        given = Given(name or place.stem, units or "mm", values or {})
        blades = [] if named else blade_names(drawing)
        within = _fit_mm(fit, units or "mm")
        if blades:
            return _several(find_several(drawing, blades, within), drawing, given)
        found = find_parts(drawing, named, within)
        joint = assemble(found.outlines)
        faces, notes = faces_of(joint, bool(found.notes))
    except ValueError as error:
        raise _refusal(place, str(error)) from error
    except ArithmeticError as error:
        raise _refusal(place, DEGENERATE) from error
    given = replace(given, notes=(*found.notes, *notes))
    text = design_text(joint, faces, given)
    return OutlineReading(text, found, joint, faces, drawing.left_out, given.notes, given.units)


def _several(found: FoundSeveral, drawing: Drawing, given: Given) -> OutlineReading:
    """Read a joint with several blades; what is asked of one is answered for the first."""
    outlines, several = found.outlines, assemble_several(found.outlines)
    faces, notes = [], [*found.notes]
    for each in several.blades:
        try:
            own, said = faces_of(each.joint, bool(found.notes))
        except ValueError as error:
            raise ValueError(f"blade {each.name}: {error}") from None
        faces.append(own)
        notes += [f"blade {each.name}: {note}" for note in said]
    given = replace(given, notes=notes)
    first, pins = outlines.blades[0], outlines.pins_mm
    parts = Outlines(
        outlines.spring, (outlines.holes[0], outlines.holes[-1]), first.tang, first.hole,
        first.pivot_mm, pins[0], pins[-1],
    )  # fmt: skip
    return OutlineReading(
        several_text(several, faces, given),
        Found(parts, found.known_by, found.gaps, found.notes),
        several.blades[0].joint,
        faces[0],
        drawing.left_out,
        notes,
        given.units,
        ReadSeveral(outlines, several),
    )


def _of_scan(
    place: Path,
    units: Literal["mm", "in"],
    name: str | None,
    values: Mapping[str, str],
    said: tuple[str | None, Any, Any, Any],
) -> OutlineReading:
    """Read a picture; `said` of it are scale, dots an inch, a hole's width, how near to fit."""
    scale, dpi, hole, fit = said
    try:
        given_px = given_mm_per_px(scale, dpi, units)
        beside = ScanGiven(given_px, _fit_mm(fit, units), given_hole_mm(hole, units))
        scan = _scanned(place, beside)
        faces, notes = faces_of(scan.joint, True)
    except ModuleNotFoundError as error:
        raise _missing(place, error, "scan") from error
    except FileNotFoundError as error:
        raise _refusal(place, "no such file") from error
    except (ValueError, OSError) as error:
        if isinstance(error, InvalidInput):
            raise
        raise _refusal(place, getattr(error, "strerror", None) or str(error)) from error
    digits = _SCANNED_DECIMALS + (units == "in")
    given = Given(name or place.stem, units, values, (*scan.notes, *notes), digits)
    text = design_text(scan.joint, faces, given)
    return OutlineReading(
        text, scan.found, scan.joint, faces, {}, given.notes, given.units, scan=scan.accuracy
    )


def _scanned(place: Path, given: ScanGiven) -> ScanReading:
    from backspring.outline.scan import read_scan

    return read_scan(place, given)


def _missing(place: Path, error: ModuleNotFoundError, extra: str) -> InvalidInput:
    return _refusal(place, f'needs {error.name}: pip install "backspring[{extra}]"')


def _fit_mm(fit: Any, units: Literal["mm", "in"]) -> float | None:
    if fit is None:
        return None
    within = quantity(fit, "length", "fit", units)
    if not 0.0 <= within <= 1.0:
        raise ValueError(f"fit must be from 0 to 1 mm, got {within:g} mm")
    return within


def _read(place: Path, mm_per_unit: float | None) -> Drawing:
    kind = place.suffix.lower()
    try:
        if kind == ".dxf":
            from backspring.outline.dxf import read_dxf

            return read_dxf(place, mm_per_unit)
        if kind == ".svg":
            from backspring.outline.svg import read_svg

            return read_svg(place, mm_per_unit)
    except ModuleNotFoundError as error:
        raise _missing(place, error, kind.removeprefix(".")) from error
    except FileNotFoundError as error:
        raise _refusal(place, "no such file") from error
    except (ValueError, OSError) as error:
        raise _refusal(place, getattr(error, "strerror", None) or str(error)) from error
    raise _refusal(place, f'is no .dxf, .svg or picture, but "{kind}"')


def _refusal(place: Path, text: str) -> InvalidInput:
    parts = few(text.split("; "))
    return invalid([Fault("bad-outline", "outline", part, str(place)) for part in parts])
