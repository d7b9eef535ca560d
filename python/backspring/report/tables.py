"""What is shown to people, written plain or as HTML."""

from __future__ import annotations

import textwrap
from typing import NamedTuple

from backspring.report.wrapping import folded


class TextTable(NamedTuple):
    """Title, column heads and rows; the first column is left aligned, the others right."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]

    def plain(self, width: int | None = None) -> str:
        """Write it aligned with spaces; heads are folded where it would be wider than asked."""
        columns = [*zip(*self.rows, strict=True)] or [("",)] * len(self.heads)
        needed = [max(map(len, column)) for column in columns]
        heads: list[tuple[str, ...]] = [self.heads]
        for lines in (1, 2, 3, 4):
            heads = _folded(self.heads, needed, lines)
            widths = [max(map(len, column)) for column in zip(*heads, *self.rows, strict=True)]
            if width is None or sum(widths) + 2 * len(widths) <= width:
                break
        rows = ["  " + _aligned(row, widths) for row in (*heads, *self.rows) if any(row)]
        return "\n".join([self.title] * bool(self.title) + rows)

    def html(self) -> str:
        """Write it as an HTML table."""
        heads = "".join(f"<th>{_escaped(head)}</th>" for head in self.heads)
        rows = "".join(
            "<tr>" + "".join(f"<td>{_escaped(cell)}</td>" for cell in row) + "</tr>"
            for row in self.rows
        )
        caption = f"<caption>{_escaped(self.title)}</caption>"
        return f"<table>{caption}<thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>"


class Lines(NamedTuple):
    """A heading with lines under it."""

    heading: str
    lines: tuple[str, ...]

    def plain(self, width: int | None = None) -> str:
        """Write the heading, then each line indented, folded to a width where one is asked."""
        lines = "\n".join(line if width is None else folded(line, width - 2) for line in self.lines)
        return "\n".join([self.heading, textwrap.indent(lines, "  ")])

    def html(self) -> str:
        """Write it as a heading and a list."""
        items = "".join(f"<li>{_escaped(line)}</li>" for line in self.lines)
        return f"<p>{_escaped(self.heading)}</p><ul>{items}</ul>"


Block = TextTable | Lines


def _escaped(text: str) -> str:
    from html import escape

    return escape(text)


class Report(NamedTuple):
    """A headline that answers, then tables and lists in turn; `width` folds what is wider."""

    headline: str
    blocks: tuple[Block, ...]
    width: int | None = None

    def plain(self) -> str:
        """Write it as aligned text."""
        blocks = [block.plain(self.width) for block in self.blocks]
        # What has no blocks is a text of its own, as a script or a schema.
        return "\n\n".join([folded(self.headline), *blocks]) if blocks else self.headline

    def html(self) -> str:
        """Write it as HTML."""
        blocks = "".join(block.html() for block in self.blocks)
        return f"<p><strong>{_escaped(self.headline)}</strong></p>{blocks}"


def _folded(heads: tuple[str, ...], needed: list[int], lines: int) -> list[tuple[str, ...]]:
    """Fold every head to so many lines at most, no narrower than its column needs."""
    if lines == 1:
        return [heads]
    folded = []
    for head, least in zip(heads, needed, strict=True):
        # So many lines of less hold it not, with a space lost at the end of each.
        enough = -(-(len(head) - lines + 1) // lines)
        width = max(least, enough, 1, *map(len, head.split(" ")))
        while len(textwrap.wrap(head, width)) > lines:
            width += 1
        folded.append(textwrap.wrap(head, width) or [""])
    deepest = max(map(len, folded))
    return [*zip(*([""] * (deepest - len(head)) + head for head in folded), strict=True)]


def _aligned(row: tuple[str, ...], widths: list[int]) -> str:
    first = row[0].ljust(widths[0])
    rest = [cell.rjust(width) for cell, width in zip(row[1:], widths[1:], strict=True)]
    return "  ".join([first, *rest]).rstrip()
