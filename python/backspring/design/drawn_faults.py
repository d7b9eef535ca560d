"""What is wrong with numbers that a drawing makes, told of the rows that stand in the file."""

from __future__ import annotations

from collections.abc import Iterator

from backspring import _core
from backspring.design.arguments import fault_text
from backspring.design.fields import row_of
from backspring.design.outline_table import TABLE
from backspring.design.reading import Content, Reading
from backspring.faults import Fault

# Faces that a tang's outline makes, with the side of the blade that each lies on when open.
_FACES = {"open": (0.0, 1.0), "half_stop": (-1.0, 0.0), "closed": (0.0, -1.0)}
# Which rows make which keys; all else comes of how the parts lie to one another.
_MADE_BY = {
    "spring.pin_hole": "spring_holes",
    "spring.rear_pin": "liner",
    "tang.pivot": "liner",
    "spring": "spring",
    "tang": "tang",
}


def tell_drawn_faces(reading: Reading, core: _core.Design, drawn: tuple[str, ...]) -> None:
    """Refuse an outline of a tang that makes a face which none may have.

    Of the `drawn` keys, which [outline] makes, no row stands in the file.
    """
    prefixes = ("", *(f"blades.{name}." for name in reading.content.get("blades", {})))
    for prefix, blade in zip(prefixes, core.blades, strict=True):
        table = reading.content
        for name in f"{prefix}tang".split("."):
            table = table.get(name, {})
        key = f"{prefix}tang.outline"
        if "outline" in table and not reading.has_failed(key):
            for row, message in _of_tang(reading, table, blade.tang):
                place = "" if key in drawn else f"row {row}: "
                reading.fail("bad-value", key, place + message)


def _of_tang(reading: Reading, table: Content, tang: _core.Tang) -> Iterator[tuple[int, str]]:
    for name, (along, outward) in _FACES.items():
        value, row = getattr(tang, f"{name}_mm"), row_of(f"tang.{name}")
        if name in table or value is None or row is None:
            continue
        broken = _core.range_fault(row, value)
        if broken is not None:
            reach = [along * u + outward * w for u, w, *_ in table["outline"]]
            place = reach.index(max(reach)) + 1
            yield place, f"makes tang.{name}, which {fault_text(broken, reading.system)}"


def told_of_rows(fault: Fault, drawn: tuple[str, ...]) -> Fault:
    """Tell a fault of a key that [outline] makes as one of the rows that make it."""
    if fault.key not in drawn:
        return fault
    known = (rows for made, rows in _MADE_BY.items() if fault.key.startswith(made))
    rows = next(known, None)
    key = TABLE if rows is None else f"{TABLE}.{rows}"
    told = fault.message.startswith("makes ")
    message = fault.message if told else f"makes {fault.key}, which {fault.message}"
    return fault._replace(key=key, message=message)
