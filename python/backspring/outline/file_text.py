"""The design file that a pair of outlines makes, with a comment on each thing it could not tell."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from backspring.outline.assemble import Assembled
from backspring.outline.keys_of import Value, keys_of
from backspring.outline.tang_of import OwnShape, TangFaces
from backspring.unit_table import MM_PER

# What an outline does not show, as a file states it, with what to put there.
ASSUMED: Mapping[str, tuple[str, str]] = {
    "spring.steel": ('"O1"', "not in an outline: put your own"),
    "spring.hardness": ('"45 HRC"', "not in an outline: put what was measured"),
    "spring.width": ("2.3", "stock across the liners, not in an outline"),
}


@dataclass(frozen=True, slots=True)
class Given:
    """What was said beside the drawing, as a file states it: by key."""

    name: str
    units: Literal["mm", "in"]
    values: Mapping[str, str] = field(default_factory=dict)
    notes: Sequence[str] = ()
    decimals: int = 8


def design_text(joint: Assembled, faces: TangFaces | OwnShape, given: Given) -> str:
    """Write the design file of a joint put together from its outlines."""
    return "\n".join(_lines(joint, faces, given)) + "\n"


def _lines(joint: Assembled, faces: TangFaces | OwnShape, given: Given) -> Iterator[str]:
    keys = keys_of(joint, faces)
    yield from head_lines(given)
    yield from spring_lines(joint, keys, given)
    yield from blade_lines(keys, given)
    if "fit.dial" in given.values:
        yield f"dial = {given.values['fit.dial']}"


def head_lines(given: Given) -> Iterator[str]:
    """Write what stands before all tables."""
    yield f"# {given.name}: read from outlines; what stands behind # was not in them."
    yield from (f"# {note}" for note in given.notes)
    yield from ("", "format = 1", f'name = "{given.name}"', f'units = "{given.units}"', "")


def spring_lines(joint: Assembled, keys: Mapping[str, Value], given: Given) -> Iterator[str]:
    """Write the spring's table."""
    yield "[spring]"
    yield from (_stated(f"spring.{name}", given) for name in ("steel", "hardness", "width"))
    for key, value in _of("spring", keys):
        if key == "mid_line":
            lean, share = math.degrees(joint.lean.lean_rad), 100.0 * joint.lean.compliance_share
            yield f"# leans up to {lean:.1f} deg, which gives {share:.1f} % more under the tang"
        yield f"{key} = {value_text(value, given)}"


def blade_lines(keys: Mapping[str, Value], given: Given, within: str = "") -> Iterator[str]:
    """Write a blade's tables of tang and fit; `within` stands before the name of each."""
    yield from ("", f"[{within}tang]")
    for key, value in _of("tang", keys):
        is_rows = key == "outline"
        yield from _rows(value, given) if is_rows else [f"{key} = {value_text(value, given)}"]
    kick = [f"{key} = {value_text(value, given)}" for key, value in _of("tang.kick", keys)]
    if kick:
        yield f"kick = {{ {', '.join(kick)} }}"
    yield from ("", f"[{within}fit]")
    yield from (f"{key} = {value_text(value, given)}" for key, value in _of("fit", keys))


def value_text(value: Value, given: Given) -> str:
    """Write a length, or rows of lengths, in the units of the file."""
    if isinstance(value, Sequence):
        return f"[{', '.join(value_text(each, given) for each in value)}]"
    return number_text(value / MM_PER[given.units], given.decimals)


def _rows(rows: Value, given: Given) -> Iterator[str]:
    """Write a tang's outline, a row a line; a bulge is in no unit."""
    assert isinstance(rows, Sequence)
    yield "# blade open, the pivot at [0, 0]: [x, y], or [x, y, bulge] where an arc goes on"
    yield "outline = ["
    for row in rows:
        assert isinstance(row, Sequence)
        numbers = [*(value_text(each, given) for each in row[:2]), *map(number_text, row[2:])]
        yield f"    [{', '.join(numbers)}],"
    yield "]"


def _of(table: str, keys: Mapping[str, Value]) -> Iterator[tuple[str, Value]]:
    for key, value in keys.items():
        section, _, name = key.rpartition(".")
        if section == table:
            yield name, value


def _stated(key: str, given: Given) -> str:
    name = key.rpartition(".")[2]
    if key in given.values:
        return f"{name} = {given.values[key]}"
    value, why = ASSUMED[key]
    if key == "spring.width" and given.units == "in":
        value = "0.09"
    return f"{name} = {value}  # {why}"


def assumed_lines(text: str) -> tuple[str, ...]:
    """Return the lines of a design file in which something had to be assumed."""
    marks = tuple(f"  # {why}" for _, why in ASSUMED.values())
    return tuple(line for line in text.splitlines() if line.endswith(marks))


def number_text(value: float, decimals: int = 8) -> str:
    """Write a number with what a millionth of a millimetre asks for, and no more."""
    text = f"{value:.{decimals}f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
