"""A design file with a comment on every line: where each number is measured from and to."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from backspring._core import Quantity
from backspring.design.fields import row_of
from backspring.units import System, converted

Tables = dict[str, dict[str, Any]]
_WIDTH = 78
_BARE = {
    "mm": "a bare number is mm, N, g, MPa",
    "in": "a bare number is inch, lbf, oz, ksi",
}
COMMENTS: Mapping[str, str] = {
    "spring.steel": "backspring steels lists those with data",
    "spring.hardness": "Rockwell C after the temper",
    "spring.width": "stock thickness, from liner to liner",
    "spring.thickness": "back to belly, as [station, thickness]; stations count from the middle "
    "pin, + towards the pivot",
    "spring.rear_pin": "middle pin to rear pin",
    "spring.pin_hole": "diameter of both holes",
    "spring.hole_finish": "a drilled hole cracks sooner",
    "spring.pad": "stretch of belly that the tang can touch, from the middle pin",
    "tang.pivot": "middle pin to pivot",
    "tang.open": "pivot square to the face that bears open",
    "tang.half_stop": "pivot to the face that bears at half-stop",
    "tang.closed": "pivot to the face that bears closed",
    "tang.corner_radius": "both rear corners",
    "tang.front": "pivot ahead to the end of the open face",
    "tang.kick": "from the pivot ahead; above the closed face",
    "fit.preload": "how far the open face stands into the unbent spring",
    "fit.rear_pin_offset": "how far the rear hole misses, rear pin out",
    "fit.dial": "station that the indicator touches",
    "blade.nail_nick": "pivot to nail nick, where the pull is felt",
    "blade.mass": "a guess from its outline: weigh yours, tang included",
    "blade.length": "tang's rear end to tip",
    "blade.height": "edge to back",
    "blade.edge": "[ahead of the pivot, outward], blade open; the edge is below 0",
    "blade.tip": "the same of the tip",
    "blade.well": "handle's rim down to the spring's belly, at the tip",
    "friction.spring": "tang on spring; 0.12 is a wiped joint",
    "friction.pivot": "blade on pivot pin",
    "friction.pivot_pin": "diameter",
    "targets.pull": "least and greatest peak pull at the nail nick",
    "targets.yield_margin": "yield stress over the worst stress",
    "targets.reading": "farthest of the back from flush, pins in",
    "targets.openings": "openings that the spring must outlast",
    "targets.edge_gap": "least gap from edge to spring, eased shut",
}


def design_text(
    name: str,
    units: System,
    tables: Tables,
    about: Sequence[str],
    comments: Mapping[str, str] = COMMENTS,
) -> str:
    """Write tables of the core's numbers as a design file in `units`."""
    return "\n".join(_lines(name, units, tables, about, comments)) + "\n"


def _lines(
    name: str, units: System, tables: Tables, about: Sequence[str], comments: Mapping[str, str]
) -> Iterator[str]:
    for line in about:
        yield from _comment(line)
    yield ""
    yield "format = 1"
    yield f"name = {_text(name)}"
    yield f'units = "{units}"  # {_BARE[units]}'
    for table, keys in tables.items():
        if not keys:
            continue
        yield ""
        yield f"[{table}]"
        for key, value in keys.items():
            line = f"{key} = {_value(f'{table}.{key}', value, units)}"
            yield from _with_comment(line, comments.get(f"{table}.{key}"))


def _broken(line: str) -> Iterator[str]:
    """Break a long list between its rows."""
    while len(line) > _WIDTH and "], [" in line[:_WIDTH]:
        at = line.rindex("], [", 0, _WIDTH) + 2
        yield line[:at]
        line = "    " + line[at + 1 :]
    yield line


def _with_comment(line: str, comment: str | None) -> Iterator[str]:
    if comment and len(line) + len(comment) + 4 <= _WIDTH:
        yield f"{line}  # {comment}"
        return
    if comment:
        yield from _comment(comment)
    yield from _broken(line)


def _comment(text: str) -> Iterator[str]:
    yield from textwrap.wrap(text, _WIDTH, initial_indent="# ", subsequent_indent="# ")


def _value(key: str, value: Any, units: System) -> str:
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, list | tuple):
        return f"[{', '.join(_value(key, each, units) for each in value)}]"
    if isinstance(value, dict):
        inner = (f"{name} = {_value(f'{key}.{name}', each, units)}" for name, each in value.items())
        return f"{{ {', '.join(inner)} }}"
    row = row_of(key)
    quantity = row.quantity if row else Quantity.ratio
    return f"{converted(float(value), quantity, units):.7g}"


def _text(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)
