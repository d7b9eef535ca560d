"""What to write into a design file: changed keys with their units, as TOML lines to paste."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping
from typing import Any

from backspring._core import Quantity
from backspring.design.design import Design
from backspring.design.fields import BESIDE, HEADER, row_of
from backspring.design.reading import dotted
from backspring.unit_table import KINDS, unit_in
from backspring.units import System, converted, parse, shown

_WIDTH = 76


def written(key: str, value: Any, units: System, had: Any, own: System) -> Any:
    """Write a value of the core as a design file has it, with its unit.

    `had` is what the file has there and `own` are its units, in which what stays is written: other
    units would round it.
    """
    if isinstance(value, str):
        return value
    if isinstance(value, list):
        alike = isinstance(had, list) and len(had) == len(value)
        pairs = zip(value, had if alike else [None] * len(value), strict=True)
        return [written(key, each, units, before, own) for each, before in pairs]
    row = row_of(key)
    assert row is not None
    if value != had:
        return shown(value, row.quantity, units)
    return _exactly(value, row.quantity, own)


def _exactly(value: float, quantity: Quantity, units: System) -> str:
    """Write what stays with as many digits as it takes to read it back."""
    number, unit = converted(value, quantity, units), unit_in(quantity, units)
    written = (f"{number:.{digits}g} {unit}".rstrip() for digits in range(7, 18))
    return next(
        (text for text in written if parse(text, KINDS[quantity]) == value),
        f"{number!r} {unit}".rstrip(),
    )


def changed_keys(new: Design, old: Design, units: System | None = None) -> dict[str, Any]:
    """Keys in which a design differs from another, with what it has there.

    In the other's own units when none are given, and so what stays. A key that has to go has None
    and comes first, so that `old.replace(**changes)` is the new design.
    """
    had, has = (dict(dotted(_by_name(each))) for each in (old, new))
    changed = {key: value for key, value in has.items() if had.get(key) != value}
    return {
        **{key: None for key in had if key not in has},
        **{
            key: written(key, each, units or old.units, had.get(key), old.units)
            for key, each in changed.items()
        },
    }


def file_lines(changes: Mapping[str, Any]) -> tuple[str, ...]:
    """Write changed keys as lines under the heads of their tables, a further blade's named."""
    tables: dict[str, list[str]] = {}
    for key, value in changes.items():
        head, name = _place(key)
        tables.setdefault(head, []).extend(_line(name, value))
    return tuple(line for head, lines in tables.items() for line in (head, *lines))


def _by_name(design: Design) -> dict[str, Any]:
    beside = {*HEADER, *BESIDE}
    content = {key: each for key, each in design.to_dict().items() if key not in beside}
    if "blades" in content:
        content["blades"] = {each["name"]: each for each in content["blades"]}
    return content


def _place(key: str) -> tuple[str, str]:
    """Head of the table a key stands in, and its name there."""
    parts = key.split(".")
    if parts[0] != "blades":
        return f"[{parts[0]}]", ".".join(parts[1:])
    if len(parts) == 3:
        return f"[[blades]]  # {parts[1]}", parts[2]
    return f"[blades.{parts[2]}]  # {parts[1]}", ".".join(parts[3:])


def _line(name: str, value: Any) -> Iterator[str]:
    if value is None:
        yield f"# take out {name}"
        return
    line = f"{name} = {_toml(value)}"
    # A break between rows of a list is none inside a value.
    kept = line.replace('", "', '",\0"').replace(" mm", "\1mm").replace(" in", "\1in")
    for part in textwrap.wrap(
        kept, _WIDTH, subsequent_indent="  ", break_long_words=False, break_on_hyphens=False
    ):
        yield part.replace("\0", " ").replace("\1", " ")


def _toml(value: Any) -> str:
    if isinstance(value, list):
        return f"[{', '.join(map(_toml, value))}]"
    return f'"{value}"'
