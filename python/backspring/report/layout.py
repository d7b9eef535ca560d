"""Joints laid out for a request, side by side, or what to ask for otherwise."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.new_joint.request import MEANINGS
from backspring.report.display import Shown, number, reading, text
from backspring.report.starter import CAUTION, WIDTH
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.units import System

if TYPE_CHECKING:
    from backspring.new_joint.layout import Layout, Proposal
    from backspring.new_joint.relax import Relief

_ASKED: dict[str, tuple[str, Shown]] = {
    "pull_n": ("pull", "force"),
    "stock_mm": ("stock", "length"),
    "height_mm": ("handle height", "length"),
    "openings": ("openings", "life"),
    "yield_margin": ("yield margin", "margin"),
    "hardness_hrc": ("hardness", "hardness"),
    "handle_mm": ("handle", "length"),
    "blade_mm": ("blade", "length"),
    "edge_gap_mm": ("edge gap", "length"),
}
_LEAST_LIGAMENT = 1.0


def layout_report(found: Layout, units: System | None = None) -> Report:
    """Lay out the joint asked for with two others beside it, what holds it, and the file."""
    units = units or found.request.units
    if not found.found:
        return Report(refusal(found, units), (), WIDTH)
    one = found.proposals[found.chosen - 1]
    headline = (
        f"{found.request.name}: opens with {text(one.pull_n, 'force', units)}, yield margin "
        f"{number(one.check.travel.yield_margin, 'margin', units)}, all targets met"
    )
    return Report(headline, tuple(_blocks(found, units)), WIDTH)


def refusal(found: Layout, units: System) -> str:
    """Say that nothing does what is asked, and the least that would free it."""
    why = {
        "length": "the blade leaves no room in the handle for its pivot and its tip",
        "height": "the handle is too low for spring, tang and the metal about the pivot",
    }
    said = why.get(found.no_room or "", "no joint inside the bounds does all that is asked")
    if not found.reliefs:
        return f"{said}; no change of one number, nor of the pull and one more, frees it"
    ways = "; or ".join(_relief(each, units) for each in found.reliefs)
    return f"{said}; least changes that free it: {ways}"


def _relief(relief: Relief, units: System) -> str:
    return " with ".join(
        f"{_ASKED[name][0]} {text(to, _ASKED[name][1], units)} for "
        f"{text(asked, _ASKED[name][1], units)}"
        for name, (asked, to) in relief.changes.items()
    )


def _blocks(found: Layout, units: System) -> Iterator[Block]:
    proposals = found.proposals
    heads = ("", *(f"{place} {each.kind}" for place, each in enumerate(proposals, start=1)))
    rows = [(label, *(show(each, units) for each in proposals)) for label, show in _FIGURES]
    yield TextTable("What it does", heads, tuple(rows))
    sizes = [
        (MEANINGS[name], *(text(each.sizes_mm[name], "length", units) for each in proposals))
        for name in MEANINGS
    ]
    yield TextTable("Sizes", heads, tuple(sizes))
    chosen = proposals[found.chosen - 1]
    yield Lines("What holds it", tuple(_held(chosen, units)))
    if found.output is None:
        yield Lines(f"Design file of {found.chosen}", tuple(chosen.text.splitlines()))
    else:
        yield Lines(
            "Next",
            (f"{found.chosen} written to {found.output}", f"backspring check {found.output} --all"),
        )
    yield Lines("Caution", (CAUTION,))


def _held(chosen: Proposal, units: System) -> Iterator[str]:
    for name in chosen.limits:
        size = chosen.sizes_mm.get(name)
        at = "" if size is None else f" {text(size, 'length', units)}"
        yield f"{MEANINGS.get(name, 'handle height')}{at}: at its limit"
    if not chosen.limits:
        yield "no limit: every size has room to either side"
    margins = [each for each in chosen.check.verdict if each.margin and each.word.name != "note"]
    if margins:
        least = min(margins, key=lambda each: each.margin or 0.0)
        name = least.name.replace("-", " ")
        yield f"closest in the verdict: {name}, margin {number(least.margin, 'margin', units)}"
    if chosen.ligament < _LEAST_LIGAMENT:
        yield (
            f"only {chosen.ligament:.2f} of a hole's diameter of steel beside the pin holes: one "
            "whole is usual (common practice, no source)"
        )
    if chosen.kick:
        yield "a kick, because a square closed face left the edge too near the spring"


def _tip(each: Proposal, units: System) -> str:
    return text(-(each.check.closed_blade.tip_mm or 0.0), "length", units)


def _worst_reading(each: Proposal, units: System) -> str:
    read = [p.reading_loaded_mm for p in each.check.positions.values()]
    return reading(max((r for r in read if r is not None), key=abs, default=None), units)


def _openings(each: Proposal, units: System) -> str:
    value = next((t.value for t in each.check.targets if t.name == "openings"), None)
    return number(value, "margin", units)


_FIGURES = (
    ("pull", lambda each, units: text(each.pull_n, "force", units)),
    ("yield margin", lambda each, units: number(each.check.travel.yield_margin, "margin", units)),
    ("margin in fatigue", _openings),
    ("farthest from flush", _worst_reading),
    (
        "edge over spring, closed",
        lambda each, units: text(each.check.closed_blade.edge_gap_mm, "length", units),
    ),
    ("tip below the rim, closed", _tip),
    ("steel beside holes, diameters", lambda each, units: number(each.ligament, "margin", units)),
    ("blade's height", lambda each, units: text(_height(each), "length", units)),
    ("closed on", lambda each, _: "kick" if each.kick else "square face"),
)


def _height(each: Proposal) -> float:
    return float(each.design.to_dict()["blade"]["height"])
