"""What a blade does: pictures, sentences, and every table of its check that stands nowhere else."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.notice import all_from_core
from backspring.report.beside import stroke_name
from backspring.report.check import check_report
from backspring.report.display import reading, text, unit_of
from backspring.report.page_drawing import drawing
from backspring.report.page_parts import Drawing, Part
from backspring.report.tables import Lines
from backspring.report.to_change import HEADING
from backspring.report.verdict import verdict_blocks
from backspring.units import System

if TYPE_CHECKING:
    from backspring import _core
    from backspring.question.check import BladesCheck, Check

# Order in which the hand meets them.
_POSITIONS = ("closed", "half_stop", "open")


def result_parts(
    check: Check, whole: Check | BladesCheck, units: System, prefix: str
) -> Iterator[Part]:
    """Draw the joint and its pull, say both in sentences, then the tables.

    `whole` is the check of all blades, whose drawing shows the others as well.
    """
    yield _joint(check, whole, units, f"{prefix}-positions")
    yield Lines("In words", tuple(in_sentences(check, units)))
    yield _drawing(check, "action", "What the hand feels on the way.", units, prefix)
    yield from own_blocks(check, units)
    if len(check.positions) > 1:
        caption = "The loaded back against open, much exaggerated."
        yield _drawing(check, "back", caption, units, prefix)
    if notices := all_from_core(check.result.notices):
        yield Lines("To know", tuple(each.text(units) for each in notices))


def own_blocks(check: Check, units: System) -> Iterator[Part]:
    """Pick the blocks of the check's report that no other section of a page holds."""
    names = ("Targets", "Notices", "Steel", "Assumed", "Caution", HEADING)
    verdict = [*verdict_blocks(check.verdict, units, True)]
    for block in check_report(check, units, everything=True).blocks:
        heading = block.heading if isinstance(block, Lines) else block.title
        if block not in verdict and heading not in names:
            yield block


def _joint(check: Check, whole: Check | BladesCheck, units: System, place: str) -> Drawing:
    if whole is check:
        return drawing(check, "positions", "The joint in each position.", units, place)
    caption = "The joint in each position, with the other blades closed and open."
    return drawing(whole, "positions", caption, units, place, blade=check.design.blade)


def _drawing(check: Check, kind: str, caption: str, units: System, prefix: str) -> Drawing:
    return drawing(check, kind, caption, units, f"{prefix}-{kind}")


def in_sentences(check: Check, units: System) -> Iterator[str]:
    """Say what each stroke takes and how the blade rests."""
    if not check.strokes:
        yield "it does not work as a slip joint: the blade does not stay closed or open"
    for stroke in check.strokes:
        yield _stroke(stroke, units)
    for name in _POSITIONS:
        if name in check.positions:
            alone = len(check.design.blades) == 1
            yield _position(name, check.positions[name], alone, units)


def _stroke(stroke: _core.StrokeReport, units: System) -> str:
    name = stroke_name(stroke.from_position, stroke.to_position)
    if stroke.peak_pull_n is None:
        most = f"a torque of {text(stroke.peak_torque_nmm, 'torque', units)}"
    else:
        most = f"{text(stroke.peak_pull_n, 'force', units)} at the nail nick"
    at, crest = (
        text(angle, "angle", units)
        for angle in (stroke.peak_torque_angle_deg, stroke.crest_angle_deg)
    )
    snap = text(stroke.snap_energy_mj, "energy", units)
    return (
        f"{name}: it takes up to {most}, at {at}; past {crest} the blade runs on by itself, with "
        f"{snap} left for the snap"
    )


def _position(name: str, position: _core.Position, alone: bool, units: System) -> str:
    said = (
        f"{name.replace('_', '-')}, at {text(position.blade_angle_deg, 'angle', units)}: the tang "
        f"holds the spring up with {text(position.force_n, 'force', units)}"
    )
    if name == "open":
        loaded = with_unit(position.reading_loaded_mm, units)
        return said + (
            "; the dial is set to 0 here"
            if alone
            else f"; the dial reads {loaded}, set to 0 with every blade open"
        )
    loaded, unloaded = (
        with_unit(each, units)
        for each in (position.reading_loaded_mm, position.reading_unloaded_mm)
    )
    return f"{said}; the dial reads {loaded} with both pins in, {unloaded} with the rear pin out"


def with_unit(value_mm: float | None, units: System) -> str:
    """Write a reading with its unit: "0.012 mm proud"."""
    shown = reading(value_mm, units)
    digits, space, side = shown.partition(" ")
    return f"{digits} {unit_of('reading', units)}{space}{side}" if space else shown
