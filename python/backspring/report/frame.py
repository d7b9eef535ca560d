"""What liners that give do to pull and readings, against a fixture whose pins stand still."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.report.clearance import READINGS, figures, figures_table
from backspring.report.display import text
from backspring.report.tables import Block, Lines
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import Check


def frame_data(check: Check) -> dict[str, Any]:
    """Make the frame ready for JSON; nothing where none is stated."""
    frame, fixture = _core.frame_of(check.design.core), check.on_fixture
    if frame is None or fixture is None:
        return {}
    give = frame.give
    return {
        "frame": {
            "seat_mm_per_n": _seat(check, frame),
            "middle_pin_mm_per_n": give.middle_mm_per_n,
            "rear_pin_mm_per_n": give.rear_mm_per_n,
            "pivot_mm_per_n": give.pivot_mm_per_n,
            "fixture": figures(fixture),
            "shift_mm": _shifts(check, fixture),
        }
    }


def frame_blocks(check: Check, units: System) -> Iterator[Block]:
    """Lay out the knife in its liners beside the same joint on a rigid fixture."""
    frame, fixture = _core.frame_of(check.design.core), check.on_fixture
    if frame is None or fixture is None:
        return
    title = f"Frame: the middle pin gives {text(_seat(check, frame), 'compliance', units)}"
    columns = {"in the liners": check, "on a rigid fixture": fixture}
    yield figures_table(title, columns, units)
    yield Lines(
        "From the fixture to the knife, against the liners' edge",
        tuple(_moves(check, fixture, units)),
    )


def _seat(check: Check, frame: _core.JointFrame) -> float:
    return _core.seat_mm_per_n(frame.give, frame.span_mm, check.design.core.tang.pivot_mm)


def _shifts(check: Check, fixture: Check) -> dict[str, float | None]:
    now, then = figures(check), figures(fixture)
    shifts: dict[str, float | None] = {}
    for name in READINGS:
        here, there = (each[f"reading_loaded_{name}_mm"] for each in (now, then))
        shifts[name] = None if here is None or there is None else here - there
    return shifts


def _moves(check: Check, fixture: Check, units: System) -> Iterator[str]:
    for name, shift in _shifts(check, fixture).items():
        if shift is None:
            continue
        way, other = ("prouder", "lower") if shift >= 0.0 else ("lower", "prouder")
        amount = text(abs(shift), "reading", units)
        rest = name.replace("_", "-")
        yield f"{rest} reads {amount} {way} in the liners: fit it that much {other}"
