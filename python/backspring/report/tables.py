"""What is shown to people, written plain or as HTML."""

from __future__ import annotations

import html
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class TextTable:
    """Title, column heads and rows; the first column is left aligned, the others right."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]

    def plain(self) -> str:
        """Write it aligned with spaces."""
        widths = [max(map(len, column)) for column in zip(self.heads, *self.rows, strict=True)]
        lines = [self.title] if self.title else []
        lines += ["  " + _aligned(row, widths) for row in (self.heads, *self.rows) if any(row)]
        return "\n".join(lines)

    def html(self) -> str:
        """Write it as an HTML table."""
        heads = "".join(f"<th>{html.escape(head)}</th>" for head in self.heads)
        rows = "".join(
            "<tr>" + "".join(f"<td>{html.escape(cell)}</td>" for cell in row) + "</tr>"
            for row in self.rows
        )
        caption = f"<caption>{html.escape(self.title)}</caption>"
        return f"<table>{caption}<thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>"


@dataclass(frozen=True, slots=True)
class Lines:
    """A heading with lines under it."""

    heading: str
    lines: tuple[str, ...]

    def plain(self) -> str:
        """Write the heading, then each line indented."""
        return "\n".join([self.heading, *(f"  {line}" for line in self.lines)])

    def html(self) -> str:
        """Write it as a heading and a list."""
        items = "".join(f"<li>{html.escape(line)}</li>" for line in self.lines)
        return f"<p>{html.escape(self.heading)}</p><ul>{items}</ul>"


Block = TextTable | Lines


@dataclass(frozen=True, slots=True)
class Report:
    """A headline that answers, then tables and lists in turn."""

    headline: str
    blocks: tuple[Block, ...]

    def plain(self) -> str:
        """Write it as aligned text."""
        return "\n\n".join([self.headline, *(block.plain() for block in self.blocks)])

    def html(self) -> str:
        """Write it as HTML."""
        blocks = "".join(block.html() for block in self.blocks)
        return f"<p><strong>{html.escape(self.headline)}</strong></p>{blocks}"


def _aligned(row: tuple[str, ...], widths: list[int]) -> str:
    first = row[0].ljust(widths[0])
    rest = [cell.rjust(width) for cell, width in zip(row[1:], widths[1:], strict=True)]
    return "  ".join([first, *rest]).rstrip()
