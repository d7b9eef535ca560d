"""Keys of a design that need, replace or exclude one another."""

from __future__ import annotations

from backspring.design.fields import KEYS
from backspring.design.reading import Content, Reading
from backspring.design.tang_rows import SAID
from backspring.units import shown

BOTH_ENDS_SUPPORTS = ("two-pins", "middle-pin")
_STRENGTHS = ("hardness", "temper", "yield", "tensile")


def relate(reading: Reading) -> None:
    """Record what is missing or too much, given what else is there."""
    content = reading.content
    if "spring" in content:
        _relate_spring(reading, content["spring"])
    if "fit" in content:
        _relate_fit(reading, content["fit"])
    blades = content.get("blades", {})
    _relate_outline(reading, "tang", content.get("tang", {}))
    for name, blade in blades.items():
        _relate_outline(reading, f"blades.{name}.tang", blade.get("tang", {}))
        if "preload" not in blade.get("fit", {"preload": 0.0}):
            _missing(reading, f"blades.{name}.fit.preload")
    _relate_priors(reading)
    _relate_frame(reading, content.get("frame", {}))
    _relate_support(reading)
    if "pull" in content.get("targets", {}):
        _relate_nail_nick(reading, "blade", content)
        for name, blade in blades.items():
            _relate_nail_nick(reading, f"blades.{name}.blade", blade)


def _relate_outline(reading: Reading, section: str, tang: Content) -> None:
    if "outline" not in tang:
        return
    for name in SAID:
        if name in tang:
            message = f"stands beside {section}.outline, which says it: take one of them out"
            reading.fail("bad-value", f"{section}.{name}", message)


def _relate_nail_nick(reading: Reading, section: str, content: Content) -> None:
    if "nail_nick" not in content.get("blade", {}):
        need = "targets.pull needs the distance pivot to nail nick"
        _missing(reading, f"{section}.nail_nick", need)


def _relate_priors(reading: Reading) -> None:
    for name, (_, sd) in reading.content.get("priors", {}).items():
        key = f"priors.{name}"
        if sd <= 0.0:
            quantity = KEYS[key].quantity
            least, got = (shown(each, quantity, reading.system) for each in (0.0, sd))
            message = f"the second value, the standard deviation, must be above {least}, got {got}"
            reading.fail("bad-value", key, message)


def _relate_frame(reading: Reading, frame: Content) -> None:
    if "seat" in frame:
        return
    liners = {"liner_thickness": "thickness", "liner_height": "height"}
    scales = {"scale_thickness": "thickness", "scale_modulus": "modulus"}
    for what, keys in (("liners", liners), ("scales", scales)):
        needed = frame if what == "liners" else keys.keys() & frame.keys()
        for key, name in keys.items():
            if needed and key not in frame:
                _missing(reading, f"frame.{key}", f"give the {name} of the {what}")


def _relate_support(reading: Reading) -> None:
    support = reading.content.get("spring", {}).get("support", "two-pins")
    blades = reading.content.get("blades", {}).values()
    both = any(blade.get("end", "rear") == "rear" for blade in blades)
    if both and support not in BOTH_ENDS_SUPPORTS:
        message = 'must be "two-pins" or "middle-pin" with a blade at each end'
        reading.fail("bad-value", "spring.support", message)
    elif support == "middle-pin" and not both and not reading.has_failed("blades"):
        message = '"middle-pin" needs a blade at the other end: give [[blades]] with end = "rear"'
        reading.fail("bad-value", "spring.support", message)


def _relate_spring(reading: Reading, spring: Content) -> None:
    if _pinned(spring) and "rear_pin" not in spring and not reading.has_failed("spring.support"):
        _missing(reading, "spring.rear_pin", "two pins need the distance from middle to rear pin")
    stated = any(key in spring for key in _STRENGTHS)
    failed = any(reading.has_failed(f"spring.{key}") for key in _STRENGTHS)
    if "temper_time" in spring and "temper" not in spring:
        _missing(reading, "spring.temper", "temper_time needs the temper")
    elif not stated and not failed:
        need = 'give it as "45 HRC", or give temper or yield'
        _missing(reading, "spring.hardness", need)


def _relate_fit(reading: Reading, fit: Content) -> None:
    offset = "fit.rear_pin_offset"
    if "preload" in fit and "rear_pin_offset" in fit:
        reading.fail("bad-value", offset, "give preload or rear_pin_offset, not both")
    elif "rear_pin_offset" in fit and not _pinned(reading.content.get("spring", {})):
        reading.fail("bad-value", offset, "needs support by two pins: give preload instead")
    elif not {"preload", "rear_pin_offset"} & fit.keys() and not reading.has_failed(offset):
        _missing(reading, "fit.preload", "give preload or rear_pin_offset")


def _pinned(spring: Content) -> bool:
    return bool(spring.get("support", "two-pins") == "two-pins")


def _missing(reading: Reading, key: str, need: str = "") -> None:
    if not reading.has_failed(key):
        reading.fail("missing-key", key, f"missing: {need}" if need else "missing")
