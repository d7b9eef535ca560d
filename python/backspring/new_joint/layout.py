"""A whole design file for a new joint, from the knife's measures and a wanted pull."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from backspring.design.design import Design
from backspring.design.load import load_content
from backspring.faults import Fault, invalid
from backspring.new_joint.file_text import design_text
from backspring.new_joint.joint import rise_of
from backspring.new_joint.limits import ligament
from backspring.new_joint.places import inset_mm, least_rim_mm, rim_mm
from backspring.new_joint.relax import Relief, no_room, reliefs
from backspring.new_joint.request import Request, read_request
from backspring.new_joint.samples import Samples
from backspring.new_joint.search import Found, Search, found_for, lighter
from backspring.question.check import Check, check_blade
from backspring.report.result import Reported
from backspring.units import System
from backspring.whole_file import replace_file, require_free

_LIGHTER = 0.88
_AT_BOUND = 0.02


@dataclass(frozen=True)
class Proposal:
    """One joint: the file's text, read back and checked, and what holds it.

    `kind` is "asked", "lighter", "shorter" or "longer". `sizes_mm` are what may be bounded;
    `limits` names those that stand at a bound.
    """

    kind: str
    text: str
    design: Design
    check: Check
    sizes_mm: Mapping[str, float]
    limits: tuple[str, ...]
    kick: bool
    ligament: float

    @property
    def pull_n(self) -> float:
        """Peak pull, opening [N]."""
        return max(each.peak_pull_n or 0.0 for each in self.check.strokes)

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        return {
            "kind": self.kind,
            "design": self.design.identity(),
            "text": self.text,
            "pull_n": self.pull_n,
            "yield_margin": self.check.travel.yield_margin,
            "sizes_mm": dict(self.sizes_mm),
            "at_bounds": list(self.limits),
            "kick": self.kick,
            "ligament": self.ligament,
            "edge_gap_mm": self.check.closed_blade.edge_gap_mm,
            "tip_mm": self.check.closed_blade.tip_mm,
            "targets": [each._asdict() for each in self.check.targets],
        }


@dataclass(frozen=True, repr=False)
class Layout(Reported):
    """Joints that do what was asked, the first as asked; or what to ask for otherwise."""

    _report_by = "layout:layout_report"

    request: Request
    proposals: tuple[Proposal, ...]
    reliefs: tuple[Relief, ...] = ()
    no_room: str | None = None
    chosen: int = 1
    output: str | None = None

    @property
    def found(self) -> bool:
        """Whether any joint does what was asked."""
        return bool(self.proposals)

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether every target is met."""
        return "pass" if self.found else "fail"

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; every name carries its unit."""
        return {
            "proposals": [each.to_dict() for each in self.proposals],
            "ask_for": [
                {name: {"asked": pair[0], "to": pair[1]} for name, pair in each.changes.items()}
                for each in self.reliefs
            ],
            **({"output": self.output} if self.output else {}),
        }


def layout(
    output: str | os.PathLike[str] | None = None,
    *,
    name: str = "New joint",
    units: System = "mm",
    choose: int = 1,
    force: bool = False,
    **asked: Any,
) -> Layout:
    """Lay out a new joint: `layout(blade=80, handle=95, height=16, stock=2.4, steel="O1", ...)`.

    Asked for must be `blade` (what stands out of the handle), `handle`, `height`, `stock` (the
    spring's width), `steel`, `hardness` and `pull`; may be `half_stop`, `openings`, `yield_margin`,
    `reading`, `edge_gap`, `nick`, `tip_room`, `pivot_pin`, `spring_pin`, `closed_face` and `bounds`
    by name, as {"preload": ("0.4 mm", "1 mm")}. Every answer meets all of it as `check` judges it,
    lies inside the bounds and has its tip in the handle; two others trade pull, margin and length.
    With `output` the one chosen is written. Where there is none, `reliefs` tell the least changes
    of the request, one number each, that free it.

    Raises InvalidInput with every fault.
    """
    request = read_request(asked, units, name)
    require_free(output, force)
    short = no_room(request)
    samples = Samples()
    search = None if short else found_for(request, samples, quick=False)
    if search is None or search.best is None:
        return Layout(request, (), reliefs(request, samples), short)
    proposals = tuple(_proposals(request, search, search.best))
    if not 1 <= choose <= len(proposals):
        message = f"there are {len(proposals)} joints: choose one of them, got {choose}"
        raise invalid([Fault("bad-value", "choose", message)])
    chosen = proposals[choose - 1]
    if output is not None:
        replace_file(Path(output), [chosen.text.encode()])
    shown = None if output is None else os.fspath(output)
    return Layout(request, proposals, chosen=choose, output=shown)


def _proposals(request: Request, search: Search, best: Found) -> Iterator[Proposal]:
    yield _proposal(request, best, "asked")
    low = request.band_n[0]
    less = lighter(request, best, max(_LIGHTER * request.pull_n, 1.03 * low))
    if less:
        yield _proposal(request, less, "lighter")
    for share in search.shares:
        other = search.first(share) if share != best.share else None
        if other:
            yield _proposal(request, other, "shorter" if share < best.share else "longer")
            return


def _proposal(request: Request, found: Found, kind: str) -> Proposal:
    text = design_text(request.name, request.units, found.tables, _about(request, kind))
    design = load_content(text.encode(), "the design file")
    tang, spring = found.tables["tang"], found.tables["spring"]
    sizes = {
        "pivot_inset": inset_mm(request),
        "pivot": tang["pivot"],
        "rear_pin": spring["rear_pin"],
        "thickness": max(thick for _, thick in spring["thickness"]),
        "end_thickness": spring["thickness"][-1][1],
        "open": tang["open"],
        "preload": found.tables["fit"]["preload"],
        "rise": rise_of(tang["open"], tang["corner_radius"]),
        "edge_depth": -found.tables["blade"]["edge"][0][1],
    }
    limits = [name for name, value in sizes.items() if _is_at_bound(request, name, value)]
    rim = rim_mm(request, sizes["end_thickness"], sizes["open"])
    if rim < least_rim_mm(request) * (1.0 + _AT_BOUND):
        limits.append("height")
    return Proposal(
        kind,
        text,
        design,
        check_blade(design),
        sizes,
        tuple(limits),
        found.kick,
        ligament(found.tables),
    )


def _is_at_bound(request: Request, name: str, value: float) -> bool:
    low, high = request.bounds[name]
    near = max(_AT_BOUND * (high - low), 0.01)
    return value <= low + near or value >= high - near


def _about(request: Request, kind: str) -> tuple[str, ...]:
    words = {
        "asked": "a new joint, as asked for",
        "lighter": "a new joint that pulls lighter",
        "shorter": "a new joint with a shorter spring",
        "longer": "a new joint with a longer spring",
    }
    return (
        f"{request.name}: {words[kind]}, worked out and never made.",
        "Edge, tip, mass and height are those of a blade that fits: put your own in.",
        "A computed margin does not replace a test: make one spring, look for a set, then cycle "
        "it. Wear eye protection whenever a spring is under load.",
    )
