"""`[outline]` of a design file: the parts as drawn, in place of the keys that they make."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from backspring.errors import InvalidInput
from backspring.faults import Fault, near_match
from backspring.units import System, parse

TABLE = "outline"
# What each key is, for the schema and for people.
MEANINGS: Mapping[str, str] = {
    "spring": "The spring's outline: corners [x, y], or [x, y, bulge] where an arc goes on from it "
    "(tangent of a quarter of its angle, + counterclockwise). Belly towards the tang.",
    "spring_holes": "Middle pin's and rear pin's hole: [x, y, diameter] each.",
    "tang": "The tang's outline as it stands open, like the spring's.",
    "tang_hole": "Centre of the tang's hole: [x, y].",
    "liner": "Centres of pivot, middle pin and rear pin in the liner: [x, y] each.",
}
# How many numbers each row may have, and how many rows there are.
_ROWS = {"spring": ((2, 3), None), "tang": ((2, 3), None), "spring_holes": ((3,), 2),
         "liner": ((2,), 3)}  # fmt: skip
_LENGTHS = ("x", "y", "diameter")
# Keys that outlines say, of which none may stand beside them.
SAID = (
    "spring.thickness", "spring.mid_line", "spring.rear_pin", "spring.pin_hole",
    "spring.pin_hole_offset", "spring.pad", "spring.kink_radius", "spring.curve_radius",
    "tang.pivot", "tang.open", "tang.half_stop", "tang.closed", "tang.corner_radius", "tang.front",
    "tang.round_end", "tang.outline", "tang.kick", "fit.preload", "fit.rear_pin_offset",
)  # fmt: skip
_MOST_ROWS = 1000
_FARTHEST_MM = 10_000.0


class Expanded(NamedTuple):
    """Tables with the ordinary keys in the outline's place, which they are, and what is wrong."""

    tables: Mapping[str, Any]
    keys: tuple[str, ...] = ()
    faults: tuple[Fault, ...] = ()
    # Keys that need no fault of their own, for the outline has one.
    failed: frozenset[str] = frozenset()


def expand(data: Mapping[str, Any], system: System) -> Expanded:
    """Put the joint together that an outline draws, and state it in ordinary keys."""
    if data.get(TABLE) is None:
        return Expanded({key: value for key, value in data.items() if key != TABLE})
    rest = {key: value for key, value in data.items() if key != TABLE}
    faults = [*_beside(rest)]
    values: dict[str, Any] = {}
    try:
        faults += _read(data[TABLE], system, values)
    except RecursionError:
        faults.append(_bad(TABLE, "brackets are nested too deep"))
    if not faults:
        try:
            made = _assembled(values)
        except ValueError as error:
            faults.append(_bad(TABLE, str(error)))
        except ArithmeticError:
            from backspring.outline.file_bounds import DEGENERATE

            faults.append(_bad(TABLE, DEGENERATE))
        else:
            return Expanded(_merged(rest, made), tuple(made))
    return Expanded(rest, (), tuple(faults), frozenset((*SAID, "tang", "fit")))


def _assembled(values: Mapping[str, Any]) -> dict[str, Any]:
    from backspring.outline.assemble import assemble
    from backspring.outline.chain import Vertex, closed_chain
    from backspring.outline.keys_of import faces_of, keys_of
    from backspring.outline.part_outlines import Hole, Outlines
    from backspring.outline.tidy import faults_of

    chains = {
        kind: closed_chain(Vertex(complex(*row[:2]), *row[2:]) for row in values[kind])
        for kind in ("spring", "tang")
    }
    wrong = [text for kind, chain in chains.items() for text in faults_of(kind, chain)]
    if wrong:
        raise ValueError("; ".join(wrong))
    first, second = (Hole(complex(x, y), width) for x, y, width in values["spring_holes"])
    pivot, middle, rear = (complex(*row) for row in values["liner"])
    hole = Hole(complex(*values["tang_hole"]), 0.0)
    parts = chains["spring"], (first, second), chains["tang"], hole, pivot, middle, rear
    joint = assemble(Outlines(*parts))
    return {
        key: _outline_rows(value) if key == "tang.outline" else _in_mm(value)
        for key, value in keys_of(joint, faces_of(joint)[0]).items()
    }


def _outline_rows(rows: Any) -> Any:
    """Write lengths with their unit; a bulge has none."""
    return [[*map(_in_mm, row[:2]), *row[2:]] for row in rows]


def _in_mm(value: Any) -> Any:
    if isinstance(value, Sequence):
        return [_in_mm(each) for each in value]
    # Nine digits: what lies beyond is rounding of the assembly.
    return f"{round(value, 9) + 0.0!r} mm"


def _merged(tables: Mapping[str, Any], made: Mapping[str, Any]) -> dict[str, Any]:
    merged = {
        name: dict(table) if isinstance(table, Mapping) else table for name, table in tables.items()
    }
    for key, value in made.items():
        *sections, name = key.split(".")
        table: Any = merged
        for section in sections:
            table = table.setdefault(section, {})
            if not isinstance(table, dict):
                break
        else:
            table[name] = value
    return merged


def _beside(tables: Mapping[str, Any]) -> Iterator[Fault]:
    """Tell every key that says what the outline says."""
    for key in SAID:
        section, _, name = key.partition(".")
        table = tables.get(section)
        if isinstance(table, Mapping) and table.get(name) is not None:
            yield _bad(key, "stands beside [outline], which says it: take one of them out")


def _read(table: Any, system: System, values: dict[str, Any]) -> Iterator[Fault]:
    if not isinstance(table, Mapping):
        yield _bad(TABLE, f"must be a table, as [{TABLE}], got {table}")
        return
    for name in table:
        if name not in MEANINGS:
            near = near_match(name, MEANINGS)
            hint = f'did you mean "{near}"?' if near else f"known are {', '.join(MEANINGS)}"
            yield Fault("unknown-key", f"{TABLE}.{name}", f'unknown key "{name}": {hint}')
    for name in MEANINGS:
        if table.get(name) is None:
            yield Fault("missing-key", f"{TABLE}.{name}", "missing")
            continue
        try:
            values[name] = _value(name, table[name], system)
        except (ValueError, TypeError) as error:
            yield _bad(f"{TABLE}.{name}", str(error))


def _value(name: str, value: Any, system: System) -> list[Any]:
    if name == "tang_hole":
        return _row(value, (2,), system)
    widths, count = _ROWS[name]
    if not isinstance(value, list) or not 3 - bool(count) <= len(value) <= _MOST_ROWS:
        raise ValueError(f"must be {count or 'at least 3'} rows, as {_example(widths)}")
    if count and len(value) != count:
        raise ValueError(f"must be {count} rows, as {_example(widths)}, got {len(value)}")
    return [_row(row, widths, system) for row in value]


def _example(widths: tuple[int, ...]) -> str:
    if widths == (3,):
        return "[x, y, diameter]"
    return " or ".join("[x, y]" if width == 2 else "[x, y, bulge]" for width in widths)


def _row(row: Any, widths: tuple[int, ...], system: System) -> list[float]:
    if not isinstance(row, list) or len(row) not in widths:
        raise ValueError(f"each row must be {_example(widths)}, got {row}")
    is_bulge = 3 in widths and 2 in widths
    numbers = []
    for i, each in enumerate(row):
        if i == 2 and is_bulge:
            if not isinstance(each, int | float) or not abs(each) <= 1e3:
                raise ValueError(f"a bulge must be a plain number up to 1000, got {each}")
            numbers.append(float(each))
            continue
        try:
            number = parse(each, "length", system)
        except InvalidInput as error:
            raise ValueError(f"{_LENGTHS[i]} {error.faults[0].message}") from None
        if not math.isfinite(number) or abs(number) > _FARTHEST_MM:
            raise ValueError(f"{_LENGTHS[i]} must be within 10 m, got {each}")
        numbers.append(number)
    return numbers


def _bad(key: str, message: str) -> Fault:
    return Fault("bad-value", key, message)
