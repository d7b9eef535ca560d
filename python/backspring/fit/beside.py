"""One blade of several in a knife's log: its own entries, and the others as theirs tell."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.core_record import changed
from backspring.design.design import Design
from backspring.fit.log_entry import SPRING_FACES, Entry, GroundEntry, MeasuredEntry

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate


def entries_of(design: Design, entries: Sequence[Entry]) -> tuple[Entry, ...]:
    """Return the entries of the blade a design is seen from, and all that came off the spring.

    What another blade's trip ground is written in this blade's stations.
    """
    if len(design.blades) == 1:
        return tuple(entries)
    return tuple(_own(design, entries))


def others_learned(
    design: Design, entries: Sequence[Entry], learned: Callable[[Design], FitEstimate]
) -> dict[str, FitEstimate]:
    """Estimate every other blade that was read, each from its own entries, the rest as drawn."""
    return {
        name: learned(design.seen_from(name))
        for name in design.blades
        if name != design.blade and _was_read(entries_of(design.seen_from(name), entries))
    }


def among(design: Design, others: Mapping[str, FitEstimate]) -> Design:
    """Return the drawing of a blade among the others as they are."""
    if not others:
        return design
    core = design.core
    blades = [core.blades[0]]
    for blade in core.blades[1:]:
        found = others.get(blade.name)
        blades.append(blade if found is None else standing(blade, found))
    return Design.from_parts(design._parts._replace(core=changed(core, blades=blades)))


def standing(drawn: _core.Blade, found: FitEstimate) -> _core.Blade:
    """Return a blade as its estimate has it now."""
    own = found.now.blades[0]
    return changed(drawn, tang=own.tang, fit=own.fit)


def _own(design: Design, entries: Sequence[Entry]) -> Iterator[Entry]:
    for entry in entries:
        if entry.blade == design.blade:
            yield entry
        elif isinstance(entry, GroundEntry) and entry.face in SPRING_FACES:
            yield _in_own_stations(design, entry)


def _in_own_stations(design: Design, entry: GroundEntry) -> GroundEntry:
    core, face = design.core, _core.GrindFace[entry.face]
    other = next(blade for blade in core.blades if blade.name == entry.blade)
    ends: Any = (entry.from_mm, entry.to_mm)
    if entry.from_mm is None:
        if entry.face == "back":
            return entry
        whole = _core.whole_face(design.seen_from(entry.blade).core, face)
        ends = (whole.from_mm, whole.to_mm)
    if other.end != core.blades[0].end:
        support = core.spring.support
        span = support.rear_pin_mm if support.kind == _core.SupportKind.two_pins else 0.0
        ends = (-span - ends[1], -span - ends[0])
    return replace(entry, from_mm=ends[0], to_mm=ends[1])


def _was_read(entries: Sequence[Entry]) -> bool:
    return any(isinstance(entry, MeasuredEntry) for entry in entries)
