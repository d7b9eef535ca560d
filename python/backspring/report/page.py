"""A design on one page: a file for the bench, for paper, or to hand on.

Nothing is worked out here that the questions of the package do not answer.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from backspring import _core
from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.fit.knife import Knife
from backspring.question.check import BladesCheck, Check, check
from backspring.question.judged import Judged
from backspring.report.check import target_row
from backspring.report.display import number, text
from backspring.report.page_assumptions import assumption_parts
from backspring.report.page_blade import blade_sections
from backspring.report.page_html import page_html
from backspring.report.page_keys import key_tables
from backspring.report.page_knife import knife_parts
from backspring.report.page_parts import Part, Section, Words, require_filled
from backspring.report.page_words import CAUTIONS, PURPOSE
from backspring.report.tables import Lines
from backspring.report.verdict import label
from backspring.steel.known import sources
from backspring.units import System
from backspring.whole_file import replace_file

# What the page says of a back that is felt. @source johansson-lamotte
_OF_EVERY_PAGE = ("johansson-lamotte",)


@dataclass(frozen=True, slots=True)
class Page:
    """A page on a design: the HTML file's text, and the names of its sections in turn.

    `status` is "fail" where a target is missed.
    """

    name: str
    status: Literal["pass", "fail"]
    sections: tuple[str, ...]
    html: str

    def to_dict(self) -> dict[str, Any]:
        """Names of the sections as plain data."""
        return {"sections": list(self.sections)}

    def __repr__(self) -> str:
        return f"{self.name}: a page of {len(self.sections)} sections"


def page(
    design: Design | Knife, path: str | os.PathLike[str] | None = None, units: System | None = None
) -> Page:
    """Put all that is worked out of a design, or of a knife as its log tells it, on one HTML page.

    Pictures, numbers, words, what was assumed and where it comes from, to read, to print or to hand
    on: one file with no script and nothing to fetch. With a `path` it is written there, whole or
    not at all. Of several blades each has its part, unless one was chosen by `seen_from()`.

    Raises InvalidInput without matplotlib, for a file that cannot be written, and for a section
    that would be empty.
    """
    knife = design if isinstance(design, Knife) else None
    asked = knife.design if knife else design
    if not isinstance(asked, Design):
        raise refusal("design", f"must be a design or a knife, got {type(asked).__name__}")
    units = units or asked.units
    checked = check(asked)
    sections = tuple(_sections(checked, knife, units))
    require_filled(sections)
    made = Page(
        asked.name,
        checked.status,
        tuple(each.name for each in sections),
        page_html(asked.name, "What its spring does, worked out before a test", sections),
    )
    if path is not None:
        replace_file(Path(path), [made.html.encode()])
    return made


def _sections(
    checked: Check | BladesCheck, knife: Knife | None, units: System
) -> Iterator[Section]:
    design = checked.design
    checks = [checked] if isinstance(checked, Check) else [*checked.blades.values()]
    yield Section("purpose", "What this page is for", tuple(_purpose(checked, checks, units)))
    yield Section("data", "Data", (*_whose(knife), *key_tables(design, units)))
    yield Section("assumptions", "Assumptions", tuple(assumption_parts(design, checks, units)))
    if knife is not None:
        yield Section("knife", "This knife, from its log", tuple(knife_parts(knife, units)))
    for place, each in enumerate(checks, start=1):
        yield from blade_sections(each, checked, units, f"b{place}")
    yield Section("sources", "Sources", (_sources(checks),))
    yield Section("cautions", "Cautions", (Lines("", CAUTIONS),))
    yield Section("version", "Version", (Lines("", tuple(_version(design))),))


def _whose(knife: Knife | None) -> Iterator[Part]:
    if knife is not None:
        yield Lines("", ("as this knife likely is, which is not quite as it was drawn",))


def _purpose(checked: Judged, checks: list[Check], units: System) -> Iterator[Part]:
    yield Lines("", PURPOSE)
    yield Lines("The answer", tuple(_answers(checked, checks, units)))
    if checked.targets:
        heads = ("", "now", "wanted", "")
        rows = tuple(target_row(target, units) for target in checked.targets)
        yield Words(
            "Targets" + (", the worst of all blades" if len(checks) > 1 else ""), heads, rows
        )


def _answers(checked: Judged, checks: list[Check], units: System) -> Iterator[str]:
    missed = [target.name.replace("_", " ") for target in checked.targets if not target.met]
    if missed:
        yield f"misses what is wanted of it: {', '.join(missed)}"
    elif checked.status == "fail":
        yield "it cannot be so: see Results"
    else:
        yield "meets all that is wanted of it"
    for each in checks:
        name = f"{each.design.blade}, the others closed, " if len(checks) > 1 else ""
        yield name + _answer(each, units)


def _answer(each: Check, units: System) -> str:
    if not each.strokes:
        return "does not work as a slip joint"
    pulls = [stroke.peak_pull_n for stroke in each.strokes if stroke.peak_pull_n is not None]
    torque = max(stroke.peak_torque_nmm for stroke in each.strokes)
    takes = (
        text(max(pulls), "force", units)
        if pulls
        else f"a torque of {text(torque, 'torque', units)}"
    )
    travel = each.travel
    said = f"opens with {takes}; worst stress {text(travel.peak_stress_mpa, 'stress', units)}"
    if travel.yield_margin is None:
        return said
    low, high = travel.yield_margin_low, travel.yield_margin_high
    band = f", {number(low, 'margin', units)} to {number(high, 'margin', units)}"
    return f"{said}, yield margin {number(travel.yield_margin, 'margin', units)}" + (
        band if low != high else ""
    )


def _sources(checks: list[Check]) -> Words:
    """List every source that a number of the page rests on, and how it was known."""
    used: dict[str, set[str]] = {}
    for each in checks:
        for source in each.steel["sources"]:
            used.setdefault(source["key"], set()).add(source["figure"].replace("_", " "))
        for margin in each.verdict:
            for key in margin.sources:
                used.setdefault(key, set()).add(label(margin))
    for key in _OF_EVERY_PAGE:
        used.setdefault(key, set()).add("what a fingertip feels")
    known = sources()
    for each in checks:
        known |= each.design.own_steel[1] if each.design.own_steel else {}
    rows = tuple(
        (key, _cited(known[key]), ", ".join(sorted(for_)), _how(known[key].confidence))
        for key, for_ in sorted(used.items())
    )
    return Words("", ("key", "source", "used for", "known"), rows)


def _cited(source: Any) -> str:
    parts = (source.author, source.title, source.year and str(source.year), source.page)
    return ", ".join(part for part in parts if part)


def _how(confidence: str) -> str:
    return {"read": "read", "memory": "from memory"}.get(confidence, confidence)


def _version(design: Design) -> Iterator[str]:
    yield f"backspring {_core.__version__}"
    yield f"design {design.name}, fingerprint of its content (SHA-256): {design.sha256}"
