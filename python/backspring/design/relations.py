"""Keys of a design that need, replace or exclude one another."""

from __future__ import annotations

from backspring.design.fields import KEYS
from backspring.design.reading import Content, Reading
from backspring.units import shown

TWO_BLADE_SUPPORTS = ("two-pins", "middle-pin")
_STRENGTHS = ("hardness", "temper", "yield", "tensile")


def relate(reading: Reading) -> None:
    """Record what is missing or too much, given what else is there."""
    content = reading.content
    if "spring" in content:
        _relate_spring(reading, content["spring"])
    if "fit" in content:
        _relate_fit(reading, content["fit"])
    if "preload" not in content.get("second", {}).get("fit", {"preload": 0.0}):
        _missing(reading, "second.fit.preload")
    _relate_priors(reading)
    _relate_support(reading)
    _relate_clearance(reading)
    if "pull" in content.get("targets", {}):
        _relate_nail_nick(reading, "blade", content)
        if "second" in content:
            _relate_nail_nick(reading, "second.blade", content["second"])


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


def _relate_support(reading: Reading) -> None:
    support = reading.content.get("spring", {}).get("support", "two-pins")
    two = "second" in reading.content or reading.has_failed("second")
    if two and support not in TWO_BLADE_SUPPORTS:
        message = 'must be "two-pins" or "middle-pin" with a second blade'
        reading.fail("bad-value", "spring.support", message)
    elif support == "middle-pin" and not two:
        message = '"middle-pin" needs a second blade at the other end: give [second]'
        reading.fail("bad-value", "spring.support", message)


def _relate_clearance(reading: Reading) -> None:
    if "second" not in reading.content:
        return
    for section, name in (("spring", "pin_clearance"), ("tang", "pivot_clearance")):
        if reading.content.get(section, {}).get(name, 0.0) != 0.0:
            message = "is worked out for one blade only: leave it out with a second blade"
            reading.fail("bad-value", f"{section}.{name}", message)


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
