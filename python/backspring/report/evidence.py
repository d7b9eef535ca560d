"""The table of evidence for people, as text and as Markdown, and as plain data."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from backspring.evidence.result import source_name
from backspring.report.display import digits, text
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.wrapping import COLUMNS
from backspring.units import System

if TYPE_CHECKING:
    from backspring.evidence.result import Evidence, Held

_HEADS = ("case", "ours", "theirs", "difference", "allowed", "")
_MARGIN, _FIGURE, _SMALL = 2, 6, 2
_REFERENCE = """\
# Evidence

Written by `backspring evidence --keep`; nothing here was typed. Every figure of the library that
the tests hold to one of a published source, an independent method or a finite-element model: what
we say, what they say, how far apart both are and how far apart they may be. The reason of an
allowance stands in the file of its source, in `tests`. "Used" is the greatest share of an allowance
that any figure of the source uses: one held to the last printed digit uses up to all of it.
"""


def evidence_report(evidence: Evidence, units: System | None = None) -> Report:
    """Lay the table out, source by source; every figure stands in its own unit."""
    return Report(_headline(evidence), tuple(_blocks(evidence)), COLUMNS)


def evidence_data(evidence: Evidence) -> dict[str, Any]:
    """Write the table as plain data."""
    return {
        "figures": len(evidence.figures),
        "outside": len(evidence.outside),
        "sources": [_source_data(evidence, file) for file in evidence.sources],
        "not_run": [{"file": each.file, "why": each.why} for each in evidence.not_run],
        "broken": [{"test": each.file, "why": each.why} for each in evidence.broken],
        "rows": [_row_data(each) for each in evidence.figures],
    }


def evidence_reference(evidence: Evidence) -> str:
    """Write the table as Markdown."""
    lines = [
        _REFERENCE,
        f"{_headline(evidence)}.",
        "",
        "| source | figures | used |",
        "|---|---|---|",
    ]
    for file, source in evidence.sources.items():
        of_source = evidence.of(file)
        lines.append(f"| {source} (`{file}`) | {len(of_source)} | {_most_used(of_source)} |")
    if evidence.not_run:
        lines += ["", "Not run:", ""]
        lines += [f"- `{each.file}`: {each.why}" for each in evidence.not_run]
    for file, source in evidence.sources.items():
        lines += ["", f"## {source}", ""]
        lines += ["| case | ours | theirs | difference | allowed |", "|---|---|---|---|---|"]
        lines += [f"| {' | '.join(_cells(each)[:5])} |" for each in evidence.of(file)]
    return "\n".join(lines) + "\n"


def _headline(evidence: Evidence) -> str:
    count, outside = len(evidence.figures), len(evidence.outside)
    files = len({each.file for each in evidence.figures})
    told = f"{count} figures of {files} source{'' if files == 1 else 's'}"
    if outside:
        told = f"{outside} of {told} outside what is allowed"
    elif count:
        told = f"{told}: all within what is allowed"
    if evidence.broken:
        told += f", {len(evidence.broken)} tests broke off"
    return told


def _blocks(evidence: Evidence) -> Iterator[Block]:
    """Put what is wrong first, and what each source comes to last, where it is seen."""
    if evidence.broken:
        yield Lines("Broke off", tuple(f"{each.file}: {each.why}" for each in evidence.broken))
    if evidence.outside:
        names = (f"{each.case}: {source_name(each.file)}" for each in evidence.outside)
        yield Lines("Outside what is allowed", tuple(names))
    for file, source in evidence.sources.items():
        if rows := [_cells(each) for each in evidence.of(file)]:
            yield TextTable(textwrap.fill(source, COLUMNS), _HEADS, tuple(_folded(rows)))
    if evidence.not_run:
        lines = (f"{source_name(each.file)}: {each.why}" for each in evidence.not_run)
        yield Lines("Not run", tuple(lines))
    sums = [_sum(evidence, file) for file in evidence.sources if evidence.of(file)]
    heads = ("source", "figures", "most of an allowance used")
    yield TextTable("By source", heads, tuple(sums))


def _sum(evidence: Evidence, file: str) -> tuple[str, ...]:
    return source_name(file), str(len(evidence.of(file))), _most_used(evidence.of(file))


def _most_used(figures: tuple[Held, ...]) -> str:
    shares = [each.used for each in figures]
    if any(each is None for each in shares):
        return "outside"
    return text(max(each or 0.0 for each in shares), "percent", "mm") if shares else "-"


def _folded(rows: list[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    """Fold the cases so that the others find their place on the line."""
    others = [*zip(_HEADS[1:], *(row[1:] for row in rows), strict=True)]
    width = COLUMNS - _MARGIN - sum(2 + max(map(len, column)) for column in others)
    for case, *cells in rows:
        lines = textwrap.wrap(case, width, subsequent_indent="  ", break_on_hyphens=False)
        yield lines[0], *cells
        yield from ((line, *([""] * len(cells))) for line in lines[1:])


def _cells(held: Held) -> tuple[str, ...]:
    case = f"{held.case}, {held.unit}" if held.unit else held.case
    apart = (_apart(held, held.difference), _apart(held, held.allowed))
    word = "" if held.within else "OUT"
    return case, digits(held.ours, _FIGURE), digits(held.theirs, _FIGURE), *apart, word


def _apart(held: Held, amount: float | None) -> str:
    """Write a difference as the allowance was stated: as it is, or by share."""
    if amount is None or not held.by_share:
        return digits(amount, _SMALL)
    return f"{digits(100.0 * amount / abs(held.theirs), _SMALL)} %"


def _source_data(evidence: Evidence, file: str) -> dict[str, Any]:
    figures = evidence.of(file)
    used = [each.used for each in figures]
    most = None if not used or None in used else max(each or 0.0 for each in used)
    return {
        "file": file,
        "source": evidence.sources[file],
        "figures": len(figures),
        "outside": sum(not each.within for each in figures),
        "most_used": most,
    }


def _row_data(held: Held) -> dict[str, Any]:
    return {
        "file": held.file,
        "case": held.case,
        "unit": held.unit,
        "ours": held.ours,
        "theirs": held.theirs,
        "difference": held.difference,
        "allowed": held.allowed,
        "by_share": held.by_share,
        "used": held.used,
        "within": held.within,
    }
