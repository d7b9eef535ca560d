"""A joint put together from its outlines as keys of a design file."""

from __future__ import annotations

from collections.abc import Sequence

from backspring import _core
from backspring.design.tang_rows import HOLLOW_MM
from backspring.outline.assemble import Assembled
from backspring.outline.hull import rows_of
from backspring.outline.loops import place_text
from backspring.outline.nearly import DRAWN_RAD, TRACED_RAD, nearly_faces
from backspring.outline.tang_of import OwnShape, TangFaces, kick_numbers, tang_faces
from backspring.outline.thickness import Row

_SAME_MM = 5e-7
Value = float | Sequence[float] | Sequence[Row] | Sequence[Sequence[float]]


def faces_of(
    joint: Assembled, is_traced: bool = False
) -> tuple[TangFaces | OwnShape, Sequence[str]]:
    """Read the tang's faces, with what was taken as square, or its outline where it has none.

    Raises ValueError where the spring would not press.
    """
    if joint.preload_mm < 0.0:
        raise ValueError(
            f"the spring would not press: its rear hole lies {-joint.rear_pin_offset_mm:.3f} mm "
            "outside the liner's when the pad lies on the open face"
        )
    faces = tang_faces(joint.tang)
    if faces is not None:
        return faces, ()
    nearly = nearly_faces(joint.tang, TRACED_RAD if is_traced else DRAWN_RAD)
    return nearly or (_own_shape(joint), _own_notes(joint))


def _own_shape(joint: Assembled) -> OwnShape:
    rows = rows_of(joint.tang.body)
    points = [_core.OutlinePoint(u_mm=u, w_mm=w, bulge=bulge) for u, w, bulge in rows]
    if _core.flaw_of(points) is not _core.OutlineFlaw.none:
        raise ValueError("tang: the outline does not go round its hole")
    faces = _core.faces_of(_core.arcs_of(points))
    return OwnShape(rows, kick_numbers(joint.tang, faces.closed_mm, faces.closed_rad))


def _own_notes(joint: Assembled) -> Sequence[str]:
    notes = ["tang: of a kind of its own, taken as it is drawn"]
    depth, place = joint.tang.hollow
    if depth > HOLLOW_MM:
        notes.append(
            f"tang: a hollow {depth:.3f} mm deep at {place_text(place)} mm from the pivot is "
            "bridged: the spring does not reach into it"
        )
    return notes


def keys_of(joint: Assembled, faces: TangFaces | OwnShape) -> dict[str, Value]:
    """List what the outlines say, in the order of a design file, in mm."""
    keys: dict[str, Value | None] = {
        "spring.thickness": joint.thickness_mm,
        "spring.mid_line": joint.mid_line_mm if joint.lean.counts else None,
        "spring.rear_pin": joint.rear_pin_mm,
        "spring.pin_hole": _one_or_two(joint.pin_hole_mm),
        "spring.pin_hole_offset": _one_or_two(joint.pin_hole_offset_mm) or None,
        "spring.pad": joint.pad_mm,
        "spring.kink_radius": joint.kink_radius_mm,
        "spring.curve_radius": None if joint.lean.counts else joint.curve_radius_mm,
        "tang.pivot": joint.pivot_mm,
        **_tang_keys(faces),
        "fit.preload": joint.preload_mm,
    }
    if faces.kick:
        names = ("distance", "height", "radius")
        keys |= {f"tang.kick.{name}": each for name, each in zip(names, faces.kick, strict=True)}
    return {key: value for key, value in keys.items() if value is not None}


def _tang_keys(faces: TangFaces | OwnShape) -> dict[str, Value | None]:
    if isinstance(faces, OwnShape):
        return {"tang.outline": [row if row[2] else row[:2] for row in faces.rows_mm]}
    return {
        "tang.open": faces.open_mm,
        "tang.half_stop": faces.half_stop_mm,
        "tang.closed": faces.closed_mm,
        "tang.round_end": faces.round_end_mm,
        "tang.corner_radius": _one_or_two((faces.corner_open_mm, faces.corner_closed_mm)),
        "tang.front": faces.front_mm,
    }


def _one_or_two(values: tuple[float, float]) -> float | tuple[float, float]:
    """Give one number for two alike; 0 for two that are nothing but rounding."""
    if max(map(abs, values)) < _SAME_MM:
        return 0.0
    return values[0] if abs(values[0] - values[1]) < _SAME_MM else values
