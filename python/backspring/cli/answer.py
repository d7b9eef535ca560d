"""What a command answers, and how it is printed."""

from __future__ import annotations

import math
import sys
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from backspring._core import __version__
from backspring.faults import Fault, invalid

if TYPE_CHECKING:
    from rich.console import Console

    from backspring.notice import Notice
    from backspring.report.tables import Block, Report, TextTable

_FORMAT = 1
# Between the columns of a drawn table.
_GAP, _GAP_LEAST = 3, 2


class Answer(NamedTuple):
    """Result of a command: verdict, data for JSON, report for people, notices.

    `found` is whether there is a solution, where one was looked for.
    """

    status: Literal["pass", "fail"]
    data: dict[str, Any]
    report: Report
    notices: Sequence[Notice] = ()
    path: str | None = None
    found: bool = True


def answer_json(command: str, answer: Answer) -> str:
    """Write an answer as its JSON document; raises InvalidInput for a number that has no end."""
    diagnostics = [
        _diagnostic(notice.code, notice.message, answer.path, None) for notice in answer.notices
    ]
    return _document(command, answer.status, answer.data, diagnostics)


def error_json(command: str, faults: Sequence[Fault]) -> str:
    """Write faults as a JSON document."""
    diagnostics = [
        _diagnostic(
            fault.code,
            f"{fault.key}: {fault.message}" if fault.key else fault.message,
            fault.path,
            fault.line,
        )
        for fault in faults
    ]
    return _document(command, "error", {}, diagnostics)


def _diagnostic(code: str, message: str, path: str | None, line: int | None) -> dict[str, Any]:
    from backspring.report.codes import severity_of

    return {
        "code": code,
        "severity": severity_of(code),
        "message": message,
        "path": path,
        "line": line,
    }


def _document(
    command: str, status: str, data: dict[str, Any], diagnostics: list[dict[str, Any]]
) -> str:
    document = {
        "format": _FORMAT,
        "command": command,
        "version": __version__,
        "status": status,
        "data": data,
        "diagnostics": diagnostics,
    }
    import json

    try:
        return json.dumps(document, indent=2, allow_nan=False)
    except ValueError:
        raise invalid([*_endless(data, "data")]) from None


def _endless(value: Any, place: str) -> Iterator[Fault]:
    """Tell every number that is none or has no end, which JSON cannot say."""
    if isinstance(value, float) and not math.isfinite(value):
        message = f"is {value}: the design is beyond what can be computed"
        yield Fault("not-finite", place, message)
    elif isinstance(value, dict):
        for key, each in value.items():
            yield from _endless(each, f"{place}.{key}")
    elif isinstance(value, list | tuple):
        for number, each in enumerate(value):
            yield from _endless(each, f"{place}[{number}]")


def print_report(report: Report, color: bool) -> None:
    """Print a report: with drawn tables on a terminal, as aligned text elsewhere."""
    if not sys.stdout.isatty() or not report.blocks:
        print(report.plain())
        return
    from rich.console import Console

    from backspring.report.wrapping import folded

    console = Console(color_system="auto" if color else None, highlight=False, markup=False)
    console.print(folded(report.headline, console.width), style="bold", soft_wrap=True)
    for block in report.blocks:
        console.print()
        _draw(console, block)


def _draw(console: Console, block: Block) -> None:
    from rich import box
    from rich.padding import Padding
    from rich.table import Table
    from rich.text import Text

    from backspring.report.tables import TextTable
    from backspring.report.wrapping import folded

    if not isinstance(block, TextTable):
        console.print(block.heading, style="bold cyan")
        for line in block.lines:
            text = folded(line, console.width - 2) or ""
            console.print(Padding(Text(text, no_wrap=True), (0, 0, 0, 2)))
        return
    console.print(block.title, style="bold cyan")
    widths, gap = _widths(block, console.width)
    table = Table(
        box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False, padding=(0, 1, 0, gap - _GAP_LEAST)
    )
    for place, (head, width) in enumerate(zip(block.heads, widths, strict=True)):
        table.add_column(head, justify="right" if place else "left", width=width)
    for row in block.rows:
        # The word stands beside the colour: colour alone would not be seen by everyone.
        cells = (folded(cell, width, "") for cell, width in zip(row, widths, strict=True))
        table.add_row(*map(Text, cells), style="yellow" if "missed" in row else "")
    console.print(table)


def _widths(table: TextTable, most: int) -> tuple[list[int], int]:
    """Fold columns until all fits, but no number apart from its word; a close gap where it must."""
    from backspring.report.wrapping import narrowest

    columns = [*zip(table.heads, *table.rows, strict=True)]
    widths = [max(map(len, column)) for column in columns]
    words = [max(map(len, head.split(" "))) for head in table.heads]
    for gap, narrow in ((_GAP, len), (_GAP_LEAST, len), (_GAP_LEAST, narrowest)):
        least = [
            max(word, *map(narrow, cells)) for word, (_, *cells) in zip(words, columns, strict=True)
        ]
        while sum(widths) + gap * (len(widths) - 1) > most:
            spare = [width - needed for width, needed in zip(widths, least, strict=True)]
            if max(spare) <= 0:
                break
            widths[spare.index(max(spare))] -= 1
        else:
            break
    return widths, gap
