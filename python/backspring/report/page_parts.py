"""What a page is made of: sections of tables, lists and drawings, none of them empty."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backspring.faults import Fault, invalid
from backspring.report.tables import Lines, TextTable


class Words(TextTable):
    """A table of words, whose columns are all left aligned."""

    __slots__ = ()


@dataclass(frozen=True, slots=True)
class Drawing:
    """A picture with what it shows."""

    caption: str
    svg: str


Part = TextTable | Lines | Drawing


@dataclass(frozen=True, slots=True)
class Section:
    """A heading with what stands under it; of one blade, where a spring has several."""

    key: str
    title: str
    parts: tuple[Part, ...]
    blade: str | None = None

    @property
    def name(self) -> str:
        """Name by which it is told apart: "levers", or "levers.pen"."""
        return self.key if self.blade is None else f"{self.key}.{self.blade}"


def require_filled(sections: Sequence[Section]) -> None:
    """Refuse a page with a section, or a part of one, that has nothing in it: all are named."""
    faults = [
        Fault("empty-section", f"section {each.name}", f"{what}: no page is written")
        for each in sections
        for what in _gaps(each)
    ]
    if faults:
        raise invalid(faults)


def _gaps(section: Section) -> list[str]:
    if not section.parts:
        return ["has nothing in it"]
    return [f'"{_title(part)}" is empty' for part in section.parts if not _is_filled(part)]


def _title(part: Part) -> str:
    if isinstance(part, Drawing):
        return part.caption
    return part.heading if isinstance(part, Lines) else part.title


def _is_filled(part: Part) -> bool:
    if isinstance(part, Drawing):
        return bool(part.svg.strip() and part.caption.strip())
    if isinstance(part, Lines):
        return any(line.strip() for line in part.lines)
    return any(cell.strip() for row in part.rows for cell in row)
