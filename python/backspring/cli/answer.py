"""What a command answers, and how it is printed."""

from __future__ import annotations

import json
import sys
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Literal

from backspring._core import __version__
from backspring.report.codes import severity_of

if TYPE_CHECKING:
    from rich.console import Console

    from backspring.faults import Fault
    from backspring.notice import Notice
    from backspring.report.tables import Block, Report

_FORMAT = 1


@dataclass(frozen=True, slots=True)
class Answer:
    """Result of a command: verdict, data for JSON, report for people, notices.

    `found` is whether there is a solution, where one was looked for.
    """

    status: Literal["pass", "fail"]
    data: dict[str, Any]
    report: Report
    notices: Sequence[Notice] = field(default=())
    path: str | None = None
    found: bool = True


def answer_json(command: str, answer: Answer) -> str:
    """Write an answer as its JSON document."""
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
    return json.dumps(document, indent=2, allow_nan=False)


def print_report(report: Report, color: bool) -> None:
    """Print a report: with drawn tables on a terminal, as aligned text elsewhere."""
    if not sys.stdout.isatty() or not report.blocks:
        print(report.plain())
        return
    from rich.console import Console

    from backspring.report.wrapping import folded

    console = Console(no_color=not color, highlight=False, markup=False)
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
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    for place, head in enumerate(block.heads):
        table.add_column(head, justify="right" if place else "left", no_wrap=not place)
    for row in block.rows:
        # The word stands beside the colour: colour alone would not be seen by everyone.
        table.add_row(*map(Text, row), style="yellow" if "missed" in row else "")
    console.print(table)
