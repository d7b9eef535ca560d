"""Says what a design leaves open: values filled in, results left out, and what to know of it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from backspring import _core
from backspring._core import Notice
from backspring.design.core_design import make_end
from backspring.design.fields import ROWS
from backspring.errors import OutOfRange
from backspring.steel import tempering
from backspring.steel.choice import SteelChoice
from backspring.steel.records import Steel

Content = dict[str, Any]


def find_defaults(content: Content, choice: SteelChoice, core: _core.Design) -> tuple[str, ...]:
    """Make a sentence for every value that was not given."""
    spring, tang, fit = content["spring"], content["tang"], content["fit"]
    return (
        *_spring_defaults(spring, choice),
        *_temper_defaults(spring, choice),
        *_tang_defaults(tang, core.tang),
        *_dial_default(fit, tang),
        *_blade_gaps(content.get("blade", {}), content.get("friction")),
        *_second_defaults(content),
        *_target_gaps(content.get("targets", {})),
    )


def find_notices(content: Content, choice: SteelChoice) -> tuple[Notice, ...]:
    """Make a notice for what the design states or leaves out and a maker should know."""
    return tuple(Notice(code=code, message=text) for code, text in _notices(content, choice))


def _left_out(key: str) -> str:
    return f"{key}: {ROWS[key].left_out}"


def _spring_defaults(spring: Content, choice: SteelChoice) -> Iterator[str]:
    if "support" not in spring:
        yield _left_out("spring.support")
    if "pin_hole" not in spring:
        yield _left_out("spring.pin_hole")
    elif "pin_hole_offset" not in spring and spring["pin_hole"] != 0.0:
        yield _left_out("spring.pin_hole_offset")
    origin, elastic = f"from the data of {choice.steel.name}", choice.elastic
    if "youngs_modulus" not in spring:
        yield f"spring.youngs_modulus: {elastic.youngs_modulus_mpa:.10g} MPa, {origin}"
    if "poisson" not in spring:
        yield f"spring.poisson: {elastic.poisson:.10g}, {origin}"
    if "yield" not in spring:
        given = "the tensile strength" if "tensile" in spring else "the hardness"
        if "tensile" not in spring and "hardness" not in spring:
            given = "the temper"
        yield f"spring.yield: {choice.strength.yield_mpa.value:.0f} MPa, from {given}"


def _temper_defaults(spring: Content, choice: SteelChoice) -> Iterator[str]:
    temper = choice.steel.temper
    if temper is None or "temper" not in spring or spring.keys() & {"temper_time", "hardness"}:
        return
    used_h = tempering.used_time_h(temper, None)
    hold = f"{used_h:.10g} h" if temper.fit else f"that of the data, {temper.hold}"
    yield f"spring.temper_time: {hold}"


def _tang_defaults(tang: Content, core: _core.Tang) -> Iterator[str]:
    if "half_stop" not in tang and "round_end" not in tang:
        radius_mm = _core.round_end_radius_mm(core)
        yield f"tang.round_end: {radius_mm:.2f} mm, {ROWS['tang.round_end'].left_out}"
    if "kick" not in tang:
        yield "tang.kick: none; the closed face takes the spring"


def _dial_default(fit: Content, tang: Content) -> Iterator[str]:
    if "dial" not in fit:
        yield f"fit.dial: at the pivot, {tang['pivot']:.10g} mm"


def _second_defaults(content: Content) -> Iterator[str]:
    if "second" not in content:
        return
    second = content["second"]
    for line in (
        *_tang_defaults(second["tang"], make_end(second).tang),
        *_dial_default(second["fit"], second["tang"]),
        *_blade_gaps(second.get("blade", {}), None),
    ):
        yield f"second.{line}"


def _blade_gaps(blade: Content, friction: Content | None) -> Iterator[str]:
    if "nail_nick" not in blade:
        yield _left_out("blade.nail_nick")
    plate = {"mass", "length", "height"} <= blade.keys()
    if "inertia" not in blade and not plate:
        yield "blade.inertia: not given, nor mass, length and height: no snap speed is worked out"
    if "inertia" not in blade and plate:
        yield _left_out("blade.inertia")
    if "inertia" in blade and "length" not in blade:
        yield _left_out("blade.length")
    for key in ("spring", "pivot", "pivot_pin"):
        if friction is not None and key not in friction:
            yield _left_out(f"friction.{key}")


def _target_gaps(targets: Content) -> Iterator[str]:
    if not targets.keys() & {"pull", "yield_margin", "reading"}:
        yield "targets: none, so nothing is judged"


def _notices(content: Content, choice: SteelChoice) -> Iterator[tuple[str, str]]:
    spring, steel = content["spring"], choice.steel
    if "friction" not in content:
        yield "no-friction", "no friction is counted: the real pull to open is higher"
    if "temper" in spring:
        yield from _temper_notices(spring, steel)
    hardness = choice.record["hardness_hrc"]
    low, high = steel.hardness_low_hrc, steel.hardness_high_hrc
    if hardness is not None and not low <= hardness <= high:
        yield (
            "hardness-outside",
            f"{hardness:.10g} HRC lies outside the {low:.10g} to {high:.10g} HRC of the data of "
            f"{steel.name}: take the yield margin as a guess",
        )
    if spring.get("support", "two-pins") != "two-pins" and "rear_pin" in spring:
        yield "not-used", "spring.rear_pin is not used: the support is not by two pins"
    if "second" in content:
        yield from _two_blade_notices(content)
        return
    rap = content.get("blade", {})
    if "edge_clearance" in rap and not {"length"} <= rap.keys():
        yield "not-judged", "blade.edge_clearance is not judged: give length, and mass or inertia"


def _two_blade_notices(content: Content) -> Iterator[tuple[str, str]]:
    yield (
        "not-judged",
        "two blades: set, fatigue, local stress, wear and rap are not judged; check each end by "
        "itself for those",
    )
    for key, given in (
        ("targets.openings", "openings" in content.get("targets", {})),
        ("blade.edge_clearance", "edge_clearance" in content.get("blade", {})),
    ):
        if given:
            yield "not-judged", f"{key} is not judged with two blades"


def _temper_notices(spring: Content, steel: Steel) -> Iterator[tuple[str, str]]:
    temper_c, time_h = spring["temper"], spring.get("temper_time")
    yield from tempering.temper_notices(steel, temper_c, time_h)
    if "hardness" not in spring:
        return
    try:
        hardness = tempering.hardness_after(steel, temper_c, time_h)
        would = f"the temper would give {hardness.value:.1f} HRC"
    except OutOfRange as error:
        would = f"of the temper nothing is known: {error}"
    yield "temper-not-used", f"the hardness of {spring['hardness']:.10g} HRC is used; {would}"
