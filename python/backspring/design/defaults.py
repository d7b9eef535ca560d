"""Says what a design leaves open: values filled in, results left out, and what to know of it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from backspring import _core
from backspring.design.core_design import make_core_tang
from backspring.errors import OutOfRange
from backspring.notice import Notice, Value
from backspring.report.display import text
from backspring.steel import tempering
from backspring.steel.choice import SteelChoice
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
        *_second_defaults(content, units),
        *_target_gaps(content.get("targets", {})),
    )


def find_notices(content: Content, choice: SteelChoice) -> tuple[Notice, ...]:
    """Make a notice for what the design states or leaves out and a maker should know."""
    return tuple(_notices(content, choice))


def _spring_defaults(spring: Content, choice: SteelChoice, units: System) -> Iterator[str]:
    if "support" not in spring:
        yield "spring.support: two-pins"
    if "pin_hole" not in spring:
        yield "spring.pin_hole: none"
    elif "pin_hole_offset" not in spring and spring["pin_hole"] != 0.0:
        yield f"spring.pin_hole_offset: {text(0.0, 'size', units)}, on the mid-line"
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
    if "half_stop" not in tang and "round_end" not in tang:
        radius = text(_core.round_end_radius_mm(core), "length", units)
        yield f"tang.round_end: {radius}, the circle about the corners of a square end"
    if "kick" not in tang:
        yield "tang.kick: none; the closed face takes the spring"


def _dial_default(fit: Content, tang: Content, units: System) -> Iterator[str]:
    if "dial" not in fit:
        yield f"fit.dial: at the pivot, {text(tang['pivot'], 'size', units)}"


def _second_defaults(content: Content, units: System) -> Iterator[str]:
    if "second" not in content:
        return
    second = content["second"]
    tang = make_core_tang(second["tang"])
    for line in (
        *_tang_defaults(second["tang"], tang, units),
        *_dial_default(second["fit"], second["tang"], units),
        *_blade_gaps(second.get("blade", {}), None, units),
    ):
        yield f"second.{line}"


def _blade_gaps(blade: Content, friction: Content | None, units: System) -> Iterator[str]:
    if "nail_nick" not in blade:
        yield "blade.nail_nick: not given: no pull is worked out, only torque"
    plate = {"mass", "length", "height"} <= blade.keys()
    if "inertia" not in blade and not plate:
        yield "blade.inertia: not given, nor mass, length and height: no snap speed is worked out"
    if "inertia" not in blade and plate:
        yield "blade.inertia: of a plate of the blade's mass, length and height"
    if "inertia" in blade and "length" not in blade:
        yield "blade.length: not given: no tip speed is worked out"
    for key, none in (("spring", "0"), ("pivot", "0"), ("pivot_pin", text(0.0, "size", units))):
        if friction is not None and key not in friction:
            yield f"friction.{key}: {none}"


def _target_gaps(targets: Content) -> Iterator[str]:
    if not targets.keys() & {"pull", "yield_margin", "reading"}:
        yield "targets: none, so nothing is judged"


def _notices(content: Content, choice: SteelChoice) -> Iterator[Notice]:
    spring, steel = content["spring"], choice.steel
    if "friction" not in content:
        yield Notice("no-friction")
    if "temper" in spring:
        yield from _temper_notices(spring, steel)
    hardness = choice.record["hardness_hrc"]
    low, high = steel.hardness_low_hrc, steel.hardness_high_hrc
    if hardness is not None and not low <= hardness <= high:
        yield Notice(
            "hardness-outside",
            {"hardness": hardness, "low": low, "high": high, "steel": steel.name},
        )
    if spring.get("support", "two-pins") != "two-pins" and "rear_pin" in spring:
        yield Notice("not-used", {"key": "spring.rear_pin"})
    if "second" in content:
        yield from _two_blade_notices(content)
        return
    rap = content.get("blade", {})
    if "edge_clearance" in rap and not {"length"} <= rap.keys():
        yield _not_judged("blade.edge_clearance", ": give length, and mass or inertia")


def _not_judged(key: str, why: str) -> Notice:
    return Notice("not-judged", {"key": key, "why": why})


def _two_blade_notices(content: Content) -> Iterator[Notice]:
    yield _not_judged(
        "two blades: set, fatigue, local stress, wear and rap",
        "; check each end by itself for those",
    )
    for key, given in (
        ("targets.openings", "openings" in content.get("targets", {})),
        ("blade.edge_clearance", "edge_clearance" in content.get("blade", {})),
    ):
        if given:
            yield _not_judged(key, " with two blades")


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
    yield Notice("temper-not-used", {"hardness": spring["hardness"], **would})
