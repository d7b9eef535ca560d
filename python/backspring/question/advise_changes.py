"""Changes a maker can make to a joint: what each does to the file, how far it may go, its steps.

Limits and steps are common practice, no source: no other knife, but the same one drawn better.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from backspring.design.draft import Draft
from backspring.question.advise_profile import (
    ending_profile,
    least_mm,
    lengthened_profile,
    offset_profile,
    rear_profile,
    tapered_profile,
)
from backspring.question.advise_steel import steel_changes
from backspring.question.advise_steps import LESS_MORE, Change, Steps, numbered
from backspring.unit_table import THOU_MM, System

THINNEST_MM = 1.2
STEPS: dict[System, Steps] = {
    "mm": Steps(fine=0.01, length=0.1, temper_c=5.0),
    "in": Steps(0.5 * THOU_MM, 5.0 * THOU_MM, temper_c=50.0 / 9.0, temper_zero_c=-160.0 / 9.0),
}
# Least and greatest, as shares of what is; at least so much more in any case.
_SHARES = {"preload": (0.4, 2.0), "width": (0.6, 1.6), "corner": (0.4, 3.0)}
_MORE_MM = {"preload": 0.5, "width": 0.0, "corner": 0.5}
_LENGTH_SHARES = (0.85, 1.2)
_LEAST_MM = {"preload": 0.1, "width": 1.0, "corner": 0.2}
_THICKNESS_SHARE = 0.4
_PAD_ROOM_MM = 3.0


def changes_of(
    draft: Draft, system: System, blades: tuple[str, ...], only: str | None = None
) -> list[Change]:
    """Every change that a design's own data allow.

    Of several blades: thickness everywhere, width and steel of their spring, preload and corner
    radius of each, or of the one named by `only`. A blade alone also has its taper and its pad and,
    where the spring is straight and of one width, its length.
    """
    steps = STEPS[system]
    found = [*_of_spring(draft, steps)]
    for place, blade in enumerate(blades):
        if only in (None, blade):
            lead = f"blades.{blade}." if place else ""
            found += _of_blade(draft, steps, lead, blade if len(blades) > 1 else None)
    if len(blades) == 1:
        found += _of_one_blade(draft, steps)
    return [*found, *steel_changes(draft, steps)]


def _of_spring(draft: Draft, steps: Steps) -> Iterator[Change]:
    yield numbered(
        "spring.thickness_offset",
        "thickness everywhere",
        0.0,
        _thickness_room(draft),
        steps.fine,
        lambda held, more: {"spring.thickness": offset_profile(held, more)},
        sides=LESS_MORE,
    )
    if isinstance(draft.value("spring.width"), list):
        yield _width_everywhere(draft, steps)
    else:
        yield _scaled(draft, steps, "width", "width", "spring.width")


def _width_everywhere(draft: Draft, steps: Steps) -> Change:
    """Change a width that is stated by station by as much everywhere."""
    rows = draft.value("spring.width")
    least, most = _SHARES["width"]
    narrow = min(wide for _, wide in rows)
    low = max(least * narrow, _LEAST_MM["width"]) - narrow
    return numbered(
        "spring.width",
        "width everywhere",
        0.0,
        (min(0.0, low), (most - 1.0) * narrow),
        steps.fine,
        lambda _, more: {"spring.width": [[x, wide + more] for x, wide in rows]},
        sides=LESS_MORE,
    )


def _thickness_room(draft: Draft) -> tuple[float, float]:
    thinnest = least_mm(draft)
    most = _THICKNESS_SHARE * thinnest
    return min(0.0, max(-most, THINNEST_MM - thinnest)), most


def _of_blade(draft: Draft, steps: Steps, lead: str, blade: str | None) -> Iterator[Change]:
    whose = "" if blade is None else f"{blade}'s "
    stated = "preload" if draft.value(f"{lead}fit.preload") is not None else "rear_pin_offset"
    said = "preload" if stated == "preload" else "rear pin offset"
    yield _scaled(draft, steps, "preload", f"{whose}{said}", f"{lead}fit.{stated}")
    key = f"{lead}tang.corner_radius"
    radius = draft.value(key)
    if isinstance(radius, list):
        yield from _two_corners(draft, steps, key, radius, whose)
    elif radius is not None:
        yield _scaled(draft, steps, "corner", f"{whose}corner radius", key)


def _two_corners(
    draft: Draft, steps: Steps, key: str, radii: list[float], whose: str
) -> Iterator[Change]:
    least, most = _SHARES["corner"]
    small = min(radii)
    room = (min(0.0, max(least * small, _LEAST_MM["corner"]) - small), (most - 1.0) * small)
    yield numbered(
        key,
        f"{whose}both corner radii",
        0.0,
        room,
        steps.fine,
        lambda _, more: {key: [each + more for each in radii]},
        sides=LESS_MORE,
    )


def _scaled(draft: Draft, steps: Steps, kind: str, name: str, key: str) -> Change:
    now = float(draft.value(key))
    least, most = _SHARES[kind]
    high = max(most * now, now + _MORE_MM[kind])
    limits = (min(now, max(least * now, _LEAST_MM[kind])), high)
    return numbered(key, name, now, limits, steps.fine, lambda _, value: {key: value})


def _of_one_blade(draft: Draft, steps: Steps) -> Iterator[Change]:
    yield numbered(
        "taper",
        "thickness at the end ahead",
        0.0,
        _thickness_room(draft),
        steps.fine,
        lambda held, more: {"spring.thickness": tapered_profile(held, more, steps.fine)},
        sides=LESS_MORE,
    )
    yield from _pad_changes(draft, steps)
    if draft.value("spring.mid_line") is None and not isinstance(draft.value("spring.width"), list):
        yield from _of_length(draft, steps)


def _of_length(draft: Draft, steps: Steps) -> Iterator[Change]:
    """Where the pins stand; a curved spring, or a width by station, is not stretched."""
    pivot = draft.value("tang.pivot")
    yield numbered(
        "tang.pivot",
        "pivot",
        pivot,
        (_LENGTH_SHARES[0] * pivot, _LENGTH_SHARES[1] * pivot),
        steps.length,
        lambda held, value: _lengthened(held, value - pivot, steps.fine),
    )
    rear = draft.value("spring.rear_pin")
    if rear is not None and draft.value("spring.support") in (None, "two-pins"):
        yield numbered(
            "spring.rear_pin",
            "rear pin",
            rear,
            (_LENGTH_SHARES[0] * rear, _LENGTH_SHARES[1] * rear),
            steps.length,
            lambda held, value: {
                "spring.rear_pin": value,
                "spring.thickness": rear_profile(held, value / rear, steps.fine),
            },
        )


def _pad_changes(draft: Draft, steps: Steps) -> Iterator[Change]:
    """Let the face begin or end elsewhere; the steel goes on where it ends farther ahead.

    Where the drawn tang bears on the face and not on its edges, it still does.
    """
    pivot, pad = draft.value("tang.pivot"), draft.value("spring.pad")
    behind, ahead = pad[0] - pivot + _reach_mm(draft), pad[1] - pivot - draft.value("tang.open")

    def start(held: Draft, more: float) -> dict[str, Any]:
        first, last = held.value("spring.pad")
        return {"spring.pad": [first + more, last]}

    def end(held: Draft, more: float) -> dict[str, Any]:
        first, last = held.value("spring.pad")
        longer = ending_profile(held, last + more)
        return {"spring.pad": [first, last + more], "spring.thickness": longer}

    for name, room, put in (
        ("start", (-_PAD_ROOM_MM, min(max(0.0, -behind), _PAD_ROOM_MM)), start),
        ("end", (max(min(0.0, -ahead), -_PAD_ROOM_MM), _PAD_ROOM_MM), end),
    ):
        yield numbered(
            f"spring.pad.{name}",
            f"pad's {name}",
            0.0,
            room,
            steps.length,
            put,
            sides=("farther back", "farther ahead"),
        )


def _reach_mm(draft: Draft) -> float:
    """How far behind the pivot the tang can bear."""
    faces = [draft.value(f"tang.{name}") or 0.0 for name in ("open", "half_stop", "closed")]
    kick = draft.value("tang.kick") or {"distance": 0.0, "radius": 0.0}
    return float(max(*faces, kick["distance"] + kick["radius"]))


def _lengthened(draft: Draft, more: float, fine: float) -> dict[str, Any]:
    """Move pivot, pad and dial together; the steel between middle pin and pad is made longer."""
    pad, dial = draft.value("spring.pad"), draft.value("fit.dial")
    changes: dict[str, Any] = {
        "tang.pivot": draft.value("tang.pivot") + more,
        "spring.pad": [each + more for each in pad],
        "spring.thickness": lengthened_profile(draft, more, pad[0], fine),
    }
    return changes if dial is None else changes | {"fit.dial": dial + more}
