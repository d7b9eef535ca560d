"""`backspring keys`: every key of the design file, or one of them."""

from __future__ import annotations

import argparse
import json
from typing import Any

from backspring.cli.answer import Answer
from backspring.cli.pictures import write_picture
from backspring.cli.usage import UsageError
from backspring.design.fields import ROWS, TABLES, key_in_core
from backspring.design.schema import design_schema
from backspring.faults import Fault, invalid, near_match
from backspring.report.keys import key_data, keys_reference, keys_report
from backspring.report.tables import Report
from backspring.units import System


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument(
        "key", nargs="?", metavar="KEY", help="as spring.width, or a table as tang; without it, all"
    )
    parser.add_argument(
        "--schema", action="store_true", help="print the JSON Schema of the design file"
    )
    parser.add_argument(
        "--reference", action="store_true", help="print the key reference as Markdown"
    )
    parser.add_argument(
        "--drawing", metavar="FILE", help="draw where each length is measured: FILE.svg or .png"
    )


def run(options: argparse.Namespace) -> Answer:
    """Describe the keys."""
    whole = [options.schema, options.reference, options.drawing is not None]
    if sum(whole) + (options.key is not None) > 1:
        raise UsageError("backspring keys: give one of KEY, --schema, --reference and --drawing")
    if options.units is not None and any(whole):
        raise UsageError(
            "backspring keys: --schema and --reference tell both systems of units, --drawing none"
        )
    if options.drawing is not None:
        write_picture(options.drawing, lambda room: room.key_drawing())
        text = f"every length of a design file drawn in {options.drawing}"
        return _whole(text, {"output": options.drawing})
    units: System = options.units or "mm"
    if options.schema:
        schema = design_schema()
        return _whole(json.dumps(schema, indent=2), schema)
    if options.reference:
        text = keys_reference()
        return _whole(text.rstrip(), {"reference": text})
    keys = _wanted(options.key)
    data = {"keys": [key_data(ROWS[key], units) for key in keys]}
    return Answer("pass", data, keys_report([ROWS[key] for key in keys], units))


def _whole(text: str, data: dict[str, Any]) -> Answer:
    return Answer("pass", data, Report(text, ()))


def _wanted(name: str | None) -> list[str]:
    keys = [key for key in ROWS if name is None or key == name or key.startswith(f"{name}.")]
    if keys or name is None:
        return keys
    # The keys of every blade mean what the first one's do.
    if name.startswith("blades."):
        return _wanted(key_in_core(name.split(".", 1)[1]))
    homes = [key for key in ROWS if key.rpartition(".")[2] == name]
    if homes:
        return homes
    near = near_match(name, [*ROWS, *TABLES])
    hint = f'did you mean "{near}"?' if near else f"tables are {', '.join(TABLES)}"
    raise invalid([Fault("unknown-key", name, f"unknown key: {hint}")])
