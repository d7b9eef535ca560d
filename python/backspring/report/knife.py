"""A knife as its log tells it, as a report for the bench."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.fit.estimate import READINGS
from backspring.fit.log_entry import SPRING_FACES, GroundEntry, describe
from backspring.report.display import number, reading, text, unit_of
from backspring.report.fit import face_name, plan_report
from backspring.report.habits import expected_lines
from backspring.report.how_sure import FIGURES, figure_lines, is_guess
from backspring.report.tables import Block, Lines, Report
from backspring.units import System

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate
    from backspring.fit.knife import Knife
    from backspring.fit.log_entry import Entry
    from backspring.fit.next_measurement import NextMeasurement
    from backspring.fit.result import FitPlan

_UNKNOWNS = {
    "half_stop_face_mm": "half-stop face as begun, against the drawing",
    "closed_face_mm": "closed face as begun, against the drawing",
    "kick_height_mm": "height of the kick as begun",
    "pad_tilt_rad": "tilt of the pad at open",
    "pivot_play_mm": "play of the pivot",
    "extra_root_share": "extra rotation at the root, of the overhang's own",
    "friction": "friction",
    "youngs_modulus_mpa": "Young's modulus",
    "thickness_mm": "thickness all along, against the drawing",
    "width_mm": "width",
    "preload_mm": "preload, before grinding",
    "corner_radius_mm": "radius of the rear corners",
    "hardness_hrc": "hardness",
    "loaded_offset_mm": "loaded readings off the model, by stop and liners",
}
_WHAT = {
    "half_stop_loaded": "read half-stop with both pins in",
    "closed_loaded": "read closed with both pins in",
    "half_stop_unloaded": "read half-stop with the rear pin out",
    "closed_unloaded": "read closed with the rear pin out",
    "pull_n": "pull it open on a scale (--pull)",
    "closing_pull_n": "pull it closed on a scale (--closing-pull)",
    "start_pull_n": "pull it out of closed on a scale (--start-pull)",
    "tip_mm": "measure the tip's height over the rim (--tip-height)",
    "moved_mm": "hang {weight} at {station} (--hang, --moved)",
    "thickness_mm": "caliper the spring at {station} (--thickness-at)",
    "hardness_hrc": "test the hardness (--hardness)",
}
_WEIGHT = {"mm": "2 kg", "in": "4.4 lb"}
_LAST_SHOWN = 3


def knife_report(knife: Knife, units: System | None = None) -> Report:
    """Lay out what a log tells, without a plan."""
    units = units or knife.drawn.units
    return Report(_headline(knife, units), tuple(knife_blocks(knife, units)))


def log_report(knife: Knife, plan: FitPlan | None, units: System | None = None) -> Report:
    """Lay out a plan from a log, with what the log tells."""
    units = units or knife.drawn.units
    if plan is None:
        return knife_report(knife, units)
    page = plan_report(plan, units)
    blocks = knife_blocks(knife, units)
    return Report(page.headline, (*page.blocks[:-1], *blocks, page.blocks[-1]))


def undo_report(knife: Knife, entry: Entry) -> Report:
    """Say which entry was taken off a log."""
    left = len(knife.logged)
    said = f"took entry {left + 1} off the log: {describe(entry, knife.units)}; {left} stand"
    return Report(f"{knife.drawn.name}: {said}", ())


def knife_blocks(knife: Knife, units: System) -> Iterator[Block]:
    """Lay out what was logged last, what came off, the knife now, and what to measure next."""
    found = knife.estimate()
    if knife.entries:
        yield Lines("Logged last", tuple(_last(knife, units)))
    if knife.habits is not None:
        yield expected_lines(knife.habits, units)
    if found.ground:
        yield Lines("Came off", tuple(_depths(knife, found, units)))
    yield now_lines(knife, units)
    yield Lines("Learned", tuple(_learned(found, units)) + _scatter(knife, units))
    following = knife.next_measurement()
    if following:
        lines = tuple(next_line(each, units) for each in following)
        yield Lines("What to measure next", lines)


def _last(knife: Knife, units: System) -> Iterator[str]:
    """Repeat the last entries: a slip in a value or its unit shows while --undo still mends it."""
    first = max(0, len(knife.entries) - _LAST_SHOWN)
    for count, entry in enumerate(knife.entries[first:], first + 1):
        yield f"{count}: {describe(entry, units)}"


def now_lines(knife: Knife, units: System) -> Lines:
    """Say what the knife does as it stands, and how sure that is."""
    found, count = knife.estimate(), len(knife.entries)
    now = {name: (each.value, each.sd) for name, each in found.figures.items()}
    heading = f"This knife now, from {count} entr{'y' if count == 1 else 'ies'}"
    return Lines(heading, tuple(figure_lines(now, units)))


def guessed(knife: Knife) -> list[str]:
    """Name the pulls, stress and margin that the log does not tell yet."""
    figures = knife.estimate().figures
    told = {name: figures[name] for name in FIGURES if name in figures and name not in READINGS}
    return [FIGURES[name][0] for name, each in told.items() if is_guess(each.value, each.sd)]


def next_line(each: NextMeasurement, units: System) -> str:
    """Say what a measurement would make of a figure."""
    station = "" if each.station_mm is None else text(each.station_mm, "length", units)
    what = _WHAT[each.what].format(station=station, weight=_WEIGHT[units])
    name, kind = FIGURES[each.figure]
    then, now = number(each.sd_then, kind, units), text(each.sd_now, kind, units)
    return f"{what}: {name} known to {then} instead of {now}"


def _headline(knife: Knife, units: System) -> str:
    name, count = knife.drawn.name, len(knife.entries)
    if not count:
        return f"{name}: nothing logged yet; give readings, --pull or --hang"
    if not knife.can_plan():
        return f"{name}: logged; read half-stop and closed, then a plan can be made"
    found = knife.figures
    shown = [
        f"{FIGURES[each][0]} {reading(found[each].value, units)}"
        for each in READINGS
        if each in found
    ]
    return f"{name}: {', '.join(shown)} [{unit_of('reading', units)}]"


def _depths(knife: Knife, found: FitEstimate, units: System) -> Iterator[str]:
    kick = knife.drawn.core.tang.kick is not None
    grounds = [n for n, entry in enumerate(knife.entries, 1) if isinstance(entry, GroundEntry)]
    for entry, each in zip(grounds, found.ground, strict=True):
        name = each.face if each.face in SPRING_FACES else face_name(each.face, kick)
        if not each.known:
            yield f"{name} (entry {entry}): not known yet, read it again"
            continue
        off, sure = (text(mm, "reading", units) for mm in (each.depth_mm, each.sd_mm))
        yield f"{name} (entry {entry}): {off}, good to +-{sure}"


def _learned(found: FitEstimate, units: System) -> Iterator[str]:
    unknown = []
    for name, each in found.unknowns.items():
        if not each.known:
            unknown.append(_UNKNOWNS[name])
            continue
        kind = found.priors[name].shown
        value, sure = (text(number_, kind, units) for number_ in (each.value, each.sd))
        yield f"{_UNKNOWNS[name]}: {value}, good to +-{sure}"
    if unknown:
        yield f"not known yet: {', '.join(unknown)}"


def _scatter(knife: Knife, units: System) -> tuple[str, ...]:
    if knife.scatter_mm is None:
        return ()
    return (f"repeated readings scatter by {text(knife.scatter_mm, 'reading', units)}",)
