"""Layouts of drawn requests: `python layout_requests.py 50 [BRUTE]`. All data is invented.

Each answer is read back from its text and held against what was asked by means of its own: targets
by `check`, tip, edge, metal and bounds by geometry written here. Where none is found, and for the
first BRUTE requests anyway, a finer grid over the same bounds is gone through, every place of it
checked, faces as drawn: a joint found there that the search missed is told.
"""

from __future__ import annotations

import itertools
import math
import sys
import time
from typing import Any

import numpy as np

import backspring as bs
from backspring.new_joint.layout import Layout
from backspring.new_joint.request import Request

_LOOKED_AT = 20
STEELS = ("O1", "1075", "1095", "5160", "A2")


def drawn(number: int, seed: int = 14) -> dict[str, Any]:
    """Draw a request: most can be had, some ask for too much."""
    rng = np.random.default_rng([seed, number])
    handle = round(float(rng.uniform(70, 115)), 1)
    spare = round(float(rng.uniform(9, 20)), 1)
    return {
        "blade": round(handle - spare, 1),
        "handle": handle,
        "height": round(float(rng.uniform(0.14, 0.19)) * handle, 1),
        "stock": round(float(rng.uniform(1.8, 3.4)), 1),
        "steel": str(rng.choice(STEELS)),
        "hardness": 0.5 * round(2.0 * float(rng.uniform(42, 50))),
        "pull": f"{float(rng.uniform(8, 38)):.1f} N",
        "half_stop": bool(rng.random() < 0.6),
        "openings": float(rng.choice([20_000, 50_000, 100_000])),
        "units": str(rng.choice(["mm", "in"])),
    } | ({} if rng.random() < 0.7 else {"closed_face": str(rng.choice(["square", "kick"]))})


def in_core_units(asked: dict[str, Any]) -> dict[str, Any]:
    """State lengths with their unit, so that they are mm in a file in inches as well."""
    lengths = ("blade", "handle", "height", "stock")
    return {key: f"{each} mm" if key in lengths else each for key, each in asked.items()}


def wrong(found: Layout, asked: dict[str, Any]) -> list[str]:
    """What an answer does that was not asked."""
    said = []
    for each in found.proposals:
        design = bs.Design(**_tables(each.text))
        check = bs.check(design)
        content = design.to_dict()
        pull = max(stroke.peak_pull_n for stroke in check.strokes)
        low, high = content["targets"]["pull"]
        want = float(asked["pull"].split()[0])
        said += [f"{t.name} missed" for t in check.targets if not t.met]
        said += [f"{m.name} fails" for m in check.verdict if m.word.name == "fails"]
        if not (low <= pull <= high and 0.75 * want <= low <= high <= 1.25 * want + 0.6):
            said.append(f"pull {pull} of {low} to {high}, wanted {want}")
        if (content["tang"].get("half_stop") is not None) != asked["half_stop"]:
            said.append("half-stop")
        said += _of_handle(found.request, content)
    return said


def _of_handle(request: Request, content: dict[str, Any]) -> list[str]:
    """Lay the closed blade into the handle: half a turn about the pivot."""
    tang, spring, blade = content["tang"], content["spring"], content["blade"]
    ahead = blade["tip"][0] - request.blade_mm
    end = spring["thickness"][-1][1]
    rim = request.height_mm - end - tang["open"]
    behind = request.handle_mm - ahead
    said = []
    if blade["tip"][0] + request.tip_room_mm > behind + 0.2:
        said.append("tip out at the handle's end")
    if blade["tip"][1] > rim - 1.0:
        said.append("tip out of the rim")
    if blade["height"] + blade["edge"][0][1] - rim < request.nick_mm - 0.02:
        said.append("no spine over the handle")
    if rim < 0.5 * request.pivot_pin_mm + 1.95:
        said.append("no metal under the pivot")
    if ahead + tang["pivot"] + spring["rear_pin"] > request.handle_mm - 7.0:
        said.append("rear pin out of the handle")
    middle = max(thick for _, thick in spring["thickness"])
    sizes = {"thickness": middle, "end_thickness": end, "open": tang["open"]}
    sizes["preload"] = content["fit"]["preload"]
    for name, value in sizes.items():
        low, high = request.bounds[name]
        if not low - 0.03 <= value <= high + 0.03:
            said.append(f"{name} {value} out of bounds")
    return said


def _tables(text: str) -> dict[str, Any]:
    import tomllib

    return {key: each for key, each in tomllib.loads(text).items() if key != "format"}


def brute(request: Request) -> dict[str, float] | None:
    """Go through a grid of its own for a joint that pulls and holds as asked, edge left out."""
    inset = min(0.5 * (request.handle_mm - request.blade_mm - request.tip_room_mm), 9.0)
    if inset < max(4.0, 0.5 * request.pivot_pin_mm + 2.0):
        return None
    span = request.handle_mm - inset - 8.0
    opens = np.linspace(*request.bounds["open"], 5)
    tapers, shares = (0.55, 0.7, 0.85), (0.38, 0.44, 0.5)
    for each in itertools.product(shares, opens, tapers, request.pins_mm):
        share, open_mm, taper, hole = each
        found = _of_joint(request, span, share, open_mm, taper, inset, hole)
        if found is not None:
            return found
    return None


def _of_joint(
    request: Request,
    span: float,
    share: float,
    open_mm: float,
    taper: float,
    inset: float,
    hole: float,
) -> dict[str, float] | None:
    pivot = share * span
    tang: dict[str, Any] = {"pivot": pivot, "open": open_mm, "closed": open_mm}
    if request.half_stop:
        tang["half_stop"] = open_mm
    start, stop = pivot - 1.2 * open_mm, pivot + min(inset, 1.1 * open_mm)
    tang |= {"corner_radius": 1.0, "front": min(inset, 1.1 * open_mm)}
    rear = span - pivot
    rows = [[-rear - 6, 0.8], [-3, 1.0], [3, 1.0], [start, taper], [stop, taper]]
    design = bs.Design(
        name="Brute",
        spring={
            "steel": request.steel,
            "hardness": request.hardness_hrc,
            "width": request.stock_mm,
            "thickness": [[x, 4.0 * t] for x, t in rows],
            "rear_pin": rear,
            "pin_hole": hole,
            "hole_finish": "reamed",
            "pad": [start, stop],
        },
        tang=tang,
        fit={"preload": 0.7, "dial": pivot},
        blade={"nail_nick": inset + 0.4 * request.blade_mm},
        friction={"spring": 0.12, "pivot": 0.12, "pivot_pin": request.pivot_pin_mm},
        targets={"openings": request.openings},
    )
    limits = request.bounds
    rises = np.linspace(*limits["rise"], 5)
    scales = np.geomspace(limits["thickness"][0], limits["thickness"][1], 14) / 4.0
    grid = np.array([*itertools.product(rises, np.linspace(*limits["preload"], 6), scales)])
    corners = np.maximum(open_mm - grid[:, 0] / (math.sqrt(2.0) - 1.0), 0.2)
    changes = {"tang.corner_radius": corners, "fit.preload": grid[:, 1]}
    many = bs.check_many(design, changes | {"spring.thickness_scale": grid[:, 2]})
    end = 4.0 * taper * grid[:, 2]
    low, high = request.band_n
    good = many.ok & (many["peak_pull_n"] >= low) & (many["peak_pull_n"] <= high)
    good &= many["yield_margin"] >= request.yield_margin
    good &= many["openings_margin"] >= 1.0
    good &= (end >= limits["end_thickness"][0]) & (end <= limits["end_thickness"][1])
    good &= request.height_mm - end - open_mm >= 0.5 * request.pivot_pin_mm + 2.0
    good &= 0.5 * (3.2 * grid[:, 2] - hole) >= 0.5 * hole
    for at in np.flatnonzero(good)[:: max(1, int(good.sum()) // _LOOKED_AT)]:
        scale = float(grid[at, 2])
        one = {
            "tang.corner_radius": float(corners[at]),
            "fit.preload": float(grid[at, 1]),
            "spring.thickness_scale": scale,
        }
        check = bs.check(design.replace(**one))
        if not [each for each in check.verdict if each.word.name == "fails"]:
            return {"pivot": pivot, "open": open_mm, "taper": taper, "scale": scale, **one}
    return None


def main(number: int, brutes: int) -> int:
    """Lay out so many requests; returns how many answers are wrong or were missed."""
    faults = found_some = missed = told = 0
    for place in range(number):
        asked = drawn(place)
        start = time.perf_counter()
        found = bs.layout(**in_core_units(asked))
        took = time.perf_counter() - start
        said = wrong(found, asked)
        faults += bool(said)
        found_some += found.found
        told += bool(found.reliefs)
        line = (
            f"{place}: {len(found.proposals)} joints, {len(found.reliefs)} ways out, {took:.1f} s"
        )
        if not found.found or place < brutes:
            other = brute(found.request)
            agree = (other is not None) == found.found
            missed += other is not None and not found.found
            line += f"; brute force {'agrees' if agree else f'has {other}'}"
        print(line, *said, sep="; ", flush=True)
    print(f"{number} requests: {found_some} answered, {faults} wrong, {missed} missed that a grid")
    print(f"has, of the others {told} told what frees them")
    return faults


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 10))
