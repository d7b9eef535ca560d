"""Says what a design leaves open: values filled in, results left out, and what to know of it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from backspring import _core
from backspring.design.fields import ROWS
from backspring.design.tang_rows import HOLLOW_MM, convex, triples
from backspring.errors import OutOfRange
from backspring.notice import Notice, Number, Value
from backspring.report.display import text
from backspring.steel import tempering
from backspring.steel.choice import SteelChoice
from backspring.steel.hardness_readings import mean_hrc
from backspring.steel.records import Steel
from backspring.units import System

Content = dict[str, Any]


def find_defaults(
    content: Content, choice: SteelChoice, core: _core.Design, units: System = "mm"
) -> tuple[str, ...]:
    """Make a sentence for every value that was not given."""
    spring, tang, fit = content["spring"], content["tang"], content["fit"]
    return (
        *_spring_defaults(spring, choice, units),
        *_temper_defaults(spring, choice),
        *_tang_defaults(tang, core.tang, units),
        *_dial_default(fit, tang, units),
        *_blade_gaps(content.get("blade", {}), content.get("friction"), units),
        *_blade_defaults(content, core, units),
        *_frame_gaps(content.get("frame", {}), units),
        *_target_gaps(content.get("targets", {}), units),
    )


def find_notices(content: Content, choice: SteelChoice) -> tuple[Notice, ...]:
    """Make a notice for what the design states or leaves out and a maker should know."""
    return tuple(_notices(content, choice))


def _left_out(key: str, units: System) -> str:
    """Write what holds where a key is not given; a length of nothing is one in any unit."""
    return f"{key}: {ROWS[key].left_out.replace('0 mm', text(0.0, 'size', units))}"


def _spring_defaults(spring: Content, choice: SteelChoice, units: System) -> Iterator[str]:
    for key in ("mid_line", "support"):
        if key not in spring:
            yield _left_out(f"spring.{key}", units)
    if "pin_hole" not in spring:
        yield _left_out("spring.pin_hole", units)
    elif "pin_hole_offset" not in spring and spring["pin_hole"] != 0.0:
        yield _left_out("spring.pin_hole_offset", units)
    origin, elastic = f"from the data of {choice.steel.name}", choice.elastic
    if "youngs_modulus" not in spring:
        modulus = text(elastic.youngs_modulus_mpa, "modulus", units)
        yield f"spring.youngs_modulus: {modulus}, {origin}"
    if "poisson" not in spring:
        yield f"spring.poisson: {elastic.poisson:.10g}, {origin}"
    if "yield" not in spring:
        given = "the tensile strength" if "tensile" in spring else "the hardness"
        if "tensile" not in spring and "hardness" not in spring:
            given = "the temper"
        strength = text(choice.strength.yield_mpa.value, "stress", units)
        yield f"spring.yield: {strength}, from {given}"


def _temper_defaults(spring: Content, choice: SteelChoice) -> Iterator[str]:
    temper = choice.steel.temper
    if temper is None or "temper" not in spring or spring.keys() & {"temper_time", "hardness"}:
        return
    used_h = tempering.used_time_h(temper, None)
    hold = f"{used_h:.10g} h" if temper.fit else f"that of the data, {temper.hold}"
    yield f"spring.temper_time: {hold}"


def _tang_defaults(tang: Content, core: _core.Tang, units: System) -> Iterator[str]:
    if "outline" in tang:
        yield from _drawn_faces(tang, core, units)
    elif "half_stop" not in tang and "round_end" not in tang:
        radius = text(_core.round_end_radius_mm(core), "length", units)
        yield f"tang.round_end: {radius}, {ROWS['tang.round_end'].left_out}"
    if "kick" not in tang:
        yield "tang.kick: none; the closed face takes the spring"


def _drawn_faces(tang: Content, core: _core.Tang, units: System) -> Iterator[str]:
    for key, distance in (
        ("open", core.open_mm),
        ("half_stop", core.half_stop_mm),
        ("closed", core.closed_mm),
    ):
        if key in tang:
            continue
        if distance is None:
            yield "tang.half_stop: none; the outline has no flat there"
        else:
            yield f"tang.{key}: {text(distance, 'length', units)}, as drawn"


def _dial_default(fit: Content, tang: Content, units: System) -> Iterator[str]:
    if "dial" not in fit:
        yield f"fit.dial: at the pivot, {text(tang['pivot'], 'size', units)}"


def _blade_defaults(content: Content, core: _core.Design, units: System) -> Iterator[str]:
    for name, table in content.get("blades", {}).items():
        blade = next(each for each in core.blades if each.name == name)
        for line in (
            *_tang_defaults(table["tang"], blade.tang, units),
            *_dial_default(table["fit"], table["tang"], units),
            *_blade_gaps(table.get("blade", {}), None, units),
        ):
            yield f"blades.{name}.{line}"


def _blade_gaps(blade: Content, friction: Content | None, units: System) -> Iterator[str]:
    if "nail_nick" not in blade:
        yield _left_out("blade.nail_nick", units)
    plate = {"mass", "length", "height"} <= blade.keys()
    if "inertia" not in blade and not plate:
        yield "blade.inertia: not given, nor mass, length and height: no snap speed is worked out"
    if "inertia" not in blade and plate:
        yield _left_out("blade.inertia", units)
    if "inertia" in blade and "length" not in blade:
        yield _left_out("blade.length", units)
    for key in ("spring", "pivot", "pivot_pin"):
        if friction is not None and key not in friction:
            yield _left_out(f"friction.{key}", units)


def _frame_gaps(frame: Content, units: System) -> Iterator[str]:
    if "liner_thickness" not in frame:
        return
    if not frame.keys() & {"liner_metal", "liner_modulus"}:
        yield _left_out("frame.liner_metal", units)
    if "scale_thickness" not in frame:
        yield _left_out("frame.scale_thickness", units)


def _target_gaps(targets: Content, units: System) -> Iterator[str]:
    if not targets.keys() & {"pull", "yield_margin", "reading"}:
        yield "targets: none, so only a yield margin of 1 is judged"
    if "openings" not in targets:
        yield _left_out("targets.openings", units)


def _notices(content: Content, choice: SteelChoice) -> Iterator[Notice]:
    spring, steel = content["spring"], choice.steel
    if "friction" not in content:
        yield Notice("no-friction")
    if "temper" in spring:
        yield from _temper_notices(spring, steel)
    for held in (content, *content.get("blades", {}).values()):
        yield from _hollow_notices(held.get("tang", {}))
    hardness = choice.record["hardness_hrc"]
    low, high = steel.hardness_low_hrc, steel.hardness_high_hrc
    if hardness is not None and not low <= hardness <= high:
        yield Notice(
            "hardness-outside",
            {"hardness": hardness, "low": low, "high": high, "steel": steel.name},
        )
    if choice.own is not None and choice.own[0] is not steel:
        yield Notice("other-steel", {"own": choice.own[0].name, "steel": steel.name})
    if spring.get("support", "two-pins") != "two-pins" and "rear_pin" in spring:
        yield Notice("not-used", {"key": "spring.rear_pin"})
    if spring.get("support", "two-pins") != "two-pins" and spring.get("pin_clearance"):
        yield Notice("not-used", {"key": "spring.pin_clearance"})
    if spring.get("support", "two-pins") != "two-pins" and content.get("frame"):
        yield Notice("not-used", {"key": "frame"})
    rap = content.get("blade", {})
    if "edge_clearance" in rap and not {"length"} <= rap.keys():
        yield _not_judged("blade.edge_clearance", ": give length, and mass or inertia")


def _hollow_notices(tang: Content) -> Iterator[Notice]:
    if "outline" not in tang:
        return
    bridged = convex(triples(tang["outline"]))
    if bridged.hollow_mm > HOLLOW_MM:
        lengths = {
            "depth": bridged.hollow_mm,
            "ahead": bridged.at_mm.real,
            "outward": bridged.at_mm.imag,
        }
        yield Notice(
            "hollow-bridged", {name: Number(each, "length") for name, each in lengths.items()}
        )


def _not_judged(key: str, why: str) -> Notice:
    return Notice("not-judged", {"key": key, "why": why})


def _temper_notices(spring: Content, steel: Steel) -> Iterator[Notice]:
    temper_c, time_h = spring["temper"], spring.get("temper_time")
    yield from tempering.temper_notices(steel, temper_c, time_h)
    if "hardness" not in spring:
        return
    would: dict[str, Value] = {}
    try:
        would["would_give"] = tempering.hardness_after(steel, temper_c, time_h).value
    except OutOfRange as error:
        would["why"] = error
    yield Notice("temper-not-used", {"hardness": mean_hrc(spring["hardness"]), **would})
