"""Turns the content of a design file into the core's design.

What could not be read becomes NaN, so that the core's rules can still be asked about the rest.
"""

from __future__ import annotations

from typing import Any

from backspring import _core
from backspring.design.fields import KEYS
from backspring.design.reading import dotted
from backspring.design.tang_rows import convex_numbers
from backspring.design.value import numbers_of
from backspring.steel.choice import SteelChoice

Section = dict[str, Any]
FIRST_BLADE = "main"
# On its middle pin alone each end bends as if clamped there; the core turns the whole.
_SUPPORTS = {
    "two-pins": _core.SupportKind.two_pins,
    "clamped": _core.SupportKind.clamped,
    "middle-pin": _core.SupportKind.clamped,
}


def make_core_design(content: Section, choice: SteelChoice | None) -> _core.Design:
    """Build the core's design; `choice` is None when the steel could not be read."""
    spring = content.get("spring", {})
    sound = _core.Band(value=1.0, low=1.0, high=1.0)
    hardness = choice.hardness if choice else None
    base = _core.Design(
        spring=_core.Spring(
            support=_support(spring), elastic=choice.elastic if choice else _core.Elastic()
        ),
        strength=choice.strength if choice else _core.Strength(yield_mpa=sound),
        surface=_surface(spring, choice),
        frame=_frame(content.get("frame", {})),
        hardness=_core.Hardness(spring_hrc=hardness.value if hardness else None),
    )
    core = _core.with_numbers(base, _numbers(content))
    blades = content.get("blades", {})
    first = content.get("blade", {})
    own = _with_stop(core.blades[0], content.get("fit", {}))
    if not blades and not {"name", "steel"} & first.keys():
        return with_blades(core, [own])
    name = first.get("name", FIRST_BLADE)
    own = _changed(own, name=name, stainless=_is_stainless(first))
    return with_blades(core, [own, *(make_blade(*each) for each in blades.items())])


def with_blades(core: _core.Design, blades: list[_core.Blade]) -> _core.Design:
    """Copy a design with other blades."""
    return _core.Design(**_kept(core) | {"blades": blades})


def make_blade(name: str, table: Section) -> _core.Blade:
    """Make a blade that is not the first; its stations are its own."""
    rest = {key: inner for key, inner in table.items() if key not in ("pad", "name", "end")}
    pad = {"spring": {"pad": table["pad"]}} if "pad" in table else {}
    blade = _core.with_numbers(_core.Design(), _numbers(pad | rest)).blades[0]
    end = _core.End[table.get("end", "rear")]
    own = _with_stop(blade, table.get("fit", {}))
    return _changed(own, name=name, end=end, stainless=_is_stainless(table.get("blade", {})))


def _is_stainless(blade: Section) -> bool:
    return bool(blade.get("steel") == "stainless")


def _with_stop(blade: _core.Blade, fit: Section) -> _core.Blade:
    """Bring in where the stop bears, where that is told by a word."""
    place = fit.get("stop")
    if not isinstance(place, str):
        return blade
    stop = _core.Stop(place=_core.StopPlace[place], face_mm=blade.fit.stop.face_mm)
    return _changed(blade, fit=_core.Fit(**_kept(blade.fit) | {"stop": stop}))


def _kept(record: Any) -> dict[str, Any]:
    return {name: getattr(record, name) for name in record._fields}


def _changed(blade: _core.Blade, **values: Any) -> _core.Blade:
    return _core.Blade(**_kept(blade) | values)


def _numbers(content: Section) -> dict[str, list[float]]:
    given = {
        key: convex_numbers(value) if key == "tang.outline" else numbers_of(KEYS[key], value)
        for key, value in dotted(content)
        if not key.startswith("blades.")
    }
    return {key: numbers for key, numbers in given.items() if numbers}


def _support(spring: Section) -> _core.Support:
    support = spring.get("support", "two-pins")
    if support in _SUPPORTS:
        return _core.Support(kind=_SUPPORTS[support])
    return _core.Support(kind=_core.SupportKind.root_stiffness, root_stiffness_nmm_per_rad=support)


def _frame(frame: Section) -> _core.Frame:
    metal = frame.get("liner_metal", "brass")
    return _core.Frame(liner_metal=_core.LinerMetal[metal.replace("-", "_")])


def _surface(spring: Section, choice: SteelChoice | None) -> _core.Surface:
    stainless = choice is not None and "stainless" in choice.steel.family
    return _core.Surface(
        finish=_core.Finish[spring.get("finish", "ground").replace("-", "_")],
        hole_finish=_core.HoleFinish[spring.get("hole_finish", "drilled")],
        steel=_core.SpringSteel.stainless if stainless else _core.SpringSteel.carbon,
    )
