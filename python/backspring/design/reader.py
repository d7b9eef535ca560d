"""Reads what a design file holds, and tells all that is wrong with it at once."""

from __future__ import annotations

import copy
import math
from collections.abc import Mapping
from typing import Any, NamedTuple

from backspring import _core
from backspring.design.blades import name_blades
from backspring.design.core_design import make_core_design
from backspring.design.fields import HEADER
from backspring.design.nesting import too_deep
from backspring.design.outline_table import expand
from backspring.design.reading import Content, Reading, dotted, judge_ranges, read_tables
from backspring.design.relations import relate
from backspring.design.steel_table import TABLE as STEEL_TABLE
from backspring.design.steel_table import read_steel_table, with_name
from backspring.faults import Fault, invalid
from backspring.steel.choice import SteelChoice, choose_steel
from backspring.steel.known import Own
from backspring.units import System

FORMAT = 1
# Whether blades are in one another's way is known only of tangs that are in order.
_IN_THE_WAY = ("tip_clear_of_tang", "pads_apart")


class DesignParts(NamedTuple):
    """A design that breaks no rule: its content in the core's units, its steel, the core's own.

    `drawn` are the keys that come from outlines, `steel_table` is what the file says of a steel.
    """

    name: str
    units: System
    content: Content
    steel: SteelChoice
    core: _core.Design
    own: int | None = None
    whole: _core.Design | None = None
    drawn: tuple[str, ...] = ()
    steel_table: Mapping[str, Any] | None = None

    @property
    def header(self) -> dict[str, Any]:
        """What stands before the tables that `content` holds, whose numbers are mm, N, MPa."""
        own = {} if self.steel_table is None else {STEEL_TABLE: copy.deepcopy(self.steel_table)}
        return {"format": FORMAT, "name": self.name, "units": "mm", **own}


def read_design(data: Mapping[str, Any]) -> DesignParts | list[Fault]:
    """Read a design given in the shape of the file; returns every fault when there is any."""
    if (wrong := _format_fault(data)) is not None:
        return [wrong]
    if deep := [*too_deep(data)]:
        return deep
    units = data.get("units")
    known = units in ("mm", "in")
    system: System = "in" if units == "in" else "mm"
    bar = read_steel_table(data.get(STEEL_TABLE))
    drawn = expand({key: data[key] for key in data if key not in (*HEADER, STEEL_TABLE)}, system)
    tables, wrong_blades = name_blades(with_name(drawn.tables, bar.steel))
    reading = read_tables(tables, system, drawn.failed | bar.failed)
    for fault in (*bar.faults, *drawn.faults, *wrong_blades):
        reading.fail(fault.code, fault.key, fault.message)
    _read_header(reading, data, known)
    # Without units no bare number has a meaning that a rule could judge.
    if known:
        judge_ranges(reading)
    relate(reading)
    choice = None if bar.faults else _choose(reading, bar.steel)
    core = make_core_design(reading.content, choice)
    if known:
        _tell_core_faults(reading, _core.faults(core))
        if any(blade.tang.outline for blade in core.blades):
            # Loaded only where a tang is drawn.
            from backspring.design.drawn_faults import tell_drawn_faces

            tell_drawn_faces(reading, core, drawn.keys)
    if reading.faults or choice is None:
        return _as_written(reading.faults, drawn.keys)
    parts = data["name"], system, reading.content, choice, core
    return DesignParts(*parts, drawn=drawn.keys, steel_table=bar.content)


def parts_of(data: Mapping[str, Any]) -> DesignParts:
    """Read tables that no file holds, None for what is left out; raises InvalidInput."""
    parts = read_design({key: value for key, value in data.items() if value is not None})
    if isinstance(parts, list):
        raise invalid(parts)
    return parts


def _as_written(faults: list[Fault], drawn: tuple[str, ...]) -> list[Fault]:
    """Tell faults of keys that [outline] makes as those of its rows."""
    if not drawn:
        return faults
    from backspring.design.drawn_faults import told_of_rows

    return [told_of_rows(fault, drawn) for fault in faults]


def _format_fault(data: Mapping[str, Any]) -> Fault | None:
    number = data.get("format")
    if number is None:
        return Fault("missing-key", "format", f"missing: write format = {FORMAT} in the first line")
    if number != FORMAT or isinstance(number, bool):
        message = f"this version reads format {FORMAT}, got {number!r}"
        return Fault("wrong-format", "format", message)
    return None


def _read_header(reading: Reading, data: Mapping[str, Any], known: bool) -> None:
    name, units = data.get("name"), data.get("units")
    if name is None and not reading.has_failed("name"):
        reading.fail("missing-key", "name", "missing")
    elif name is not None and not (
        isinstance(name, str) and name.strip() and name.isprintable() and len(name) <= 100
    ):
        reading.fail("bad-value", "name", "must be one short line of text in quotes")
    if units is None and not reading.has_failed("units"):
        reading.fail("missing-key", "units", 'missing: write units = "mm" or units = "in"')
    elif units is not None and not known:
        reading.fail("bad-value", "units", f'must be "mm" or "in", got {_quoted(units)}')


def _quoted(value: Any) -> str:
    return f'"{value}"' if isinstance(value, str) else str(value)


def _choose(reading: Reading, own: Own | None) -> SteelChoice | None:
    spring = reading.content.get("spring", {})
    if "steel" not in spring:
        return None
    choice = choose_steel(spring, own)
    if isinstance(choice, list):
        for fault in choice:
            reading.fail(fault.code, fault.key, fault.message)
        return None
    return choice


def _tell_core_faults(reading: Reading, broken: list[_core.Fault]) -> None:
    given = dict(dotted(reading.content))
    keys = [*(fault.key for fault in broken), *(fault.key for fault in reading.faults)]
    tangs = any("tang" in key.split(".") for key in keys)
    for fault in broken:
        if tangs and fault.rule in _IN_THE_WAY:
            continue
        # A number that follows from one that could not be read says nothing.
        if any(map(math.isnan, (*fault.limits, *fault.values))):
            continue
        key, preface = fault.key, ""
        if key == "fit.preload" and "fit.rear_pin_offset" in given:
            key, preface = "fit.rear_pin_offset", "as preload: "
        # A key that was not given has been judged before, or follows from one that was.
        if (key in given or key == "blades") and not reading.has_failed(key):
            reading.fail_rule(key, fault, preface)
