"""The keys of the design file for people: a list, and the reference in Markdown."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Any

from backspring._core import Field, Form
from backspring.design.fields import ROWS, is_number, kind_of
from backspring.design.outline_table import MEANINGS
from backspring.report.steel_keys import steel_reference
from backspring.report.tables import Lines, Report
from backspring.unit_table import BARE
from backspring.units import System, converted, shown

_FORMS = {
    Form.one_or_two: "one number, or two",
    Form.pair: "two numbers",
    Form.readings: "one number, or readings as [number, ...]",
    Form.profile: "one number, or rows of [station, number]",
    Form.points: "rows of [along, outward]",
    Form.choice: "one of",
    Form.choice_or_number: "a number, or one of",
    Form.flag: "true or false",
    Form.text: "text",
}
_HEAD = """# Keys of the design file

Written by `backspring keys --reference`; do not edit. Units and ranges: mm, N, MPa; any value may
carry its own unit. Keys marked * may differ in a study: `check_many`, `tolerance --spread`.
Those in *italics* are no keys of a file but changes of one, in a study and in `replace`.
`[[blades]]`, once for every further blade, has `name`, `end`, `pad`, `[blades.tang]`,
`[blades.fit]` (preload, dial) and `[blades.blade]` with the same meanings; its stations count from
the pin nearest to its end, forward positive. Elsewhere its keys are as `blades.pen.tang.closed`.
Before all tables stand `format = 1`, `name = "..."` and `units = "mm"` or `"in"`.

![A joint, not to scale, with every length of spring, tang, fit and blade](pictures/keys.png)

The drawing is made by `backspring keys --drawing data/pictures/keys.png`.
"""
_OUTLINE = """
## [outline]

The parts as drawn, each in coordinates of its own, in place of thickness, mid_line, rear_pin,
pin_hole, pad, the tang's keys and preload. They are put together as at the bench, and what comes
of it stands under Assumed in a check.

"""


def key_data(row: Field, units: System) -> dict[str, Any]:
    """Everything known of a key; numbers in the units of `units`."""
    number = is_number(row)
    return {
        "key": row.key,
        "form": row.form.name,
        "kind": kind_of(row) if number else "text",
        "unit": BARE[units][kind_of(row)] if number else None,
        "least": converted(row.least, row.quantity, units) if number else None,
        "greatest": converted(row.greatest, row.quantity, units) if number else None,
        "choices": list(row.choices),
        "required": row.required,
        "left_out": row.left_out,
        "meaning": row.meaning,
        "example": row.example,
        "dimension": row.dimension,
        "in_file": row.in_file,
        "of_blade": row.of_blade,
    }


def keys_report(rows: Sequence[Field], units: System) -> Report:
    """Tell each key's meaning, range, default and example."""
    blocks = tuple(Lines(row.key, (row.meaning, *_facts(row, units))) for row in rows)
    count = "1 key" if len(rows) == 1 else f"{len(rows)} keys"
    return Report(f"Design file: {count}", blocks)


def keys_reference() -> str:
    """Write the reference of all keys as Markdown."""
    parts = [_HEAD]
    for table, rows in groupby(ROWS.values(), lambda row: row.key.rpartition(".")[0]):
        parts.append(f"\n## [{table}]\n\n| key | value | range | left out | meaning |")
        parts.append("\n|---|---|---|---|---|\n")
        parts += [_markdown(row) for row in rows]
    parts.append(_OUTLINE)
    parts += [f"- `{name}`: {meaning}\n" for name, meaning in MEANINGS.items()]
    parts.append(steel_reference())
    return "".join(parts)


def _facts(row: Field, units: System) -> tuple[str, ...]:
    facts = [_value(row, units)]
    if is_number(row):
        facts.append(f"{_range(row, units)}, both allowed")
    facts.append(f"left out: {row.left_out}")
    facts.append(f"as {row.key.rpartition('.')[2]} = {row.example}")
    if row.dimension:
        facts.append("may differ in a study: check_many, tolerance --spread")
    return tuple(facts)


def _value(row: Field, units: System) -> str:
    """Say how it is written, and in what unit a bare number counts."""
    choices = " ".join(f'"{word}"' for word in row.choices)
    form = f"{_FORMS.get(row.form, '')} {choices}".strip()
    if not is_number(row):
        return form
    unit = BARE[units][kind_of(row)]
    what = f"{kind_of(row)} [{unit}]" if unit else "plain number"
    return f"{what}, {form}" if form else what


def _range(row: Field, units: System) -> str:
    least, greatest = (shown(each, row.quantity, units) for each in (row.least, row.greatest))
    return f"{least} to {greatest}"


def _markdown(row: Field) -> str:
    name = row.key.rpartition(".")[2]
    mark = f"`{name}`{' *' if row.dimension else ''}" if row.in_file else f"*{name}* *"
    ranged = _range(row, "mm") if is_number(row) else ""
    cells = (
        mark,
        f"{_value(row, 'mm')}; as `{row.example}`",
        ranged,
        row.left_out,
        row.meaning,
    )
    return f"| {' | '.join(cell.replace('|', '/') for cell in cells)} |\n"
