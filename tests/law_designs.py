"""Whole designs for laws that hold over the whole input space. All are invented.

`contents()` draws the tables of a design file in mm, `designs()` the design. Lengths come in steps
of 0.001 mm within ratios of the pivot's distance that a joint can have, so that ties (faces alike,
a station at the pad's edge, a sharp corner) come up as often as they do on drawings.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

import backspring as bs

Content = dict[str, Any]
Draw = Callable[[st.SearchStrategy[Any]], Any]

STEELS = ("O1", "1095", "1075", "5160")
ONE, ENDS, BESIDE, THREE = "one", "ends", "beside", "three"
SEVERAL = (ENDS, BESIDE, THREE)
KINDS = (ONE, *SEVERAL)
FRAME, STOP, BENDING, CLEARANCE = "frame", "stop", "bending", "clearance"
EXTRAS = (FRAME, STOP, BENDING, CLEARANCE)


def mm(low: float, high: float) -> st.SearchStrategy[float]:
    """Lengths in steps of 0.001 mm."""
    return thousandths(math.ceil(1000 * low), math.floor(1000 * high))


def thousandths(low: int, high: int) -> st.SearchStrategy[float]:
    return st.integers(low, max(low, high)).map(lambda count: count / 1000)


def _ratio(low: float, high: float) -> st.SearchStrategy[float]:
    return thousandths(round(1000 * low), round(1000 * high))


def _half(draw: Draw, pivot: float, pad: list[float]) -> list[list[float]]:
    """Thickness from the middle pin to the end: even, tapered, in stations, or with a step."""
    thick = draw(mm(0.06 * pivot, 0.13 * pivot))
    shape = draw(st.sampled_from(("even", "taper", "stations", "step")))
    if shape == "even":
        return [[0.0, thick], [pad[1], thick]]
    end = round(thick * draw(_ratio(0.5, 1.05)), 3)
    if shape == "taper":
        return [[0.0, thick], [pad[1], end]]
    place = draw(mm(0.15 * pivot, pad[0]))
    middle = round(thick * draw(_ratio(0.5, 1.1)), 3)
    if shape == "step":
        return [[0.0, thick], [place, thick], [place, middle], [pad[1], end]]
    return [[0.0, thick], [place, middle], [pad[0], end], [pad[1], end]]


def _tang(draw: Draw, pivot: float, pad: list[float], kick: bool) -> Content:
    open_mm = draw(mm(0.1 * pivot, 0.17 * pivot))
    closed = draw(st.one_of(st.just(open_mm), mm(0.96 * open_mm, 1.06 * open_mm)))
    tang: Content = {"pivot": pivot, "open": open_mm, "closed": closed}
    tang["front"] = draw(mm(0.6 * open_mm, 1.5 * open_mm))
    faces = [open_mm, closed]
    if draw(st.booleans()):
        tang["half_stop"] = draw(st.one_of(st.just(closed), mm(0.96 * open_mm, 1.06 * open_mm)))
        faces.append(tang["half_stop"])
    elif draw(st.booleans()):
        tang["round_end"] = draw(mm(1.02 * max(faces), 1.35 * max(faces)))
    least = min(faces)
    radius = st.one_of(st.just(0.0), mm(0.05 * least, 0.6 * least))
    tang["corner_radius"] = draw(st.one_of(radius, st.lists(radius, min_size=2, max_size=2)))
    if kick and draw(st.booleans()):
        height = draw(mm(0.01 * pivot, 0.03 * pivot))
        distance = draw(mm(0.4 * (pivot - pad[0]), 1.1 * (pivot - pad[0])))
        radius_mm = draw(mm(0.01 * pivot, 0.03 * pivot))
        tang["kick"] = {"distance": distance, "height": height, "radius": radius_mm}
    return tang


def _end(draw: Draw, most_preload: float, kick: bool = True) -> Content:
    """What one blade brings: its pad, tang, fit and blade."""
    pivot = draw(mm(18.0, 48.0))
    pad = [draw(mm(0.72 * pivot, 0.9 * pivot)), draw(mm(1.04 * pivot, 1.25 * pivot))]
    fit: Content = {"preload": draw(mm(0.002 * pivot, most_preload * pivot))}
    if draw(st.booleans()):
        fit["dial"] = draw(mm(0.8 * pivot, pad[1]))
    blade = {"nail_nick": draw(mm(0.6 * pivot, 1.3 * pivot)), "inertia": draw(thousandths(9, 99))}
    return {"pad": pad, "tang": _tang(draw, pivot, pad, kick), "fit": fit, "blade": blade}


def _steel(draw: Draw) -> Content:
    if draw(st.booleans()):
        return {"steel": draw(st.sampled_from(STEELS)), "hardness": draw(st.integers(42, 50))}
    return {
        "steel": "O1",
        "youngs_modulus": 1000.0 * draw(st.integers(185, 215)),
        "poisson": draw(_ratio(0.0, 0.4)),
        "yield": 10.0 * draw(st.integers(80, 190)),
    }


def _rear(draw: Draw, half: list[list[float]], spring: Content) -> list[list[float]]:
    """Stations from the rear end to the middle pin of a spring with blades at one end."""
    held = draw(st.sampled_from(("two-pins", "two-pins", "clamped", "root")))
    thick = half[0][1]
    if held == "root":
        spring["support"] = float(draw(st.integers(10, 2000)) * 1000)
    else:
        spring["support"] = held
    if held != "two-pins":
        return [[0.0, thick]]
    spring["rear_pin"] = draw(mm(0.6 * half[-1][0], 1.0 * half[-1][0]))
    behind = round(thick * draw(_ratio(0.7, 1.0)), 3)
    return [[-spring["rear_pin"] - 4.0, behind], [0.0, thick]]


def _holes(draw: Draw, spring: Content, rows: list[list[float]]) -> None:
    thin = min(thick for x, thick in rows if x <= 0.5)
    kind = draw(st.sampled_from(("none", "one", "two", "off")))
    if kind == "none":
        return
    hole = mm(0.25 * thin, 0.55 * thin)
    pinned = spring.get("support") == "two-pins"
    spring["pin_hole"] = draw(hole) if kind != "two" or not pinned else [draw(hole), draw(hole)]
    if kind == "off":
        spring["pin_hole_offset"] = draw(mm(-0.15 * thin, 0.15 * thin))


def _mid_line(draw: Draw, spring: Content, pad: list[float]) -> None:
    rise = draw(mm(-0.08 * pad[0], 0.08 * pad[0]))
    rear = spring["thickness"][0][0]
    spring["mid_line"] = [[rear, 0.0], [0.0, rise], [0.5 * pad[0], rise], [pad[0], 0.0]]


def _width(draw: Draw, rows: list[list[float]]) -> Any:
    width = draw(mm(1.5, 4.0))
    if draw(st.booleans()):
        return width
    return [
        [rows[0][0], width],
        [0.0, width],
        [rows[-1][0], round(width * draw(_ratio(0.5, 1)), 3)],
    ]


def _frame(draw: Draw, tangs: list[Content], rows: list[list[float]], seat: bool) -> Content:
    if seat and draw(st.booleans()):
        return {"seat": draw(st.integers(1, 60)) * 1e-5}
    high = max(each["open"] for each in tangs) + max(thick for _, thick in rows) + 5.0
    frame: Content = {
        "liner_thickness": draw(mm(0.4, 2.0)),
        "liner_height": draw(mm(high, 2 * high)),
    }
    if draw(st.booleans()):
        frame |= {"scale_thickness": draw(mm(1.0, 4.0)), "scale_modulus": 12000.0}
    return frame


def _friction(draw: Draw, bending: bool) -> Content:
    share = _ratio(0.0, 0.25)
    found: Content = {"spring": draw(share), "pivot": draw(share), "pivot_pin": draw(mm(1.5, 4.0))}
    if bending and draw(st.booleans()):
        found["bending"] = True
    return found


def _clearances(draw: Draw, content: Content) -> None:
    gap = mm(0.0, 0.05)
    content["spring"]["pin_clearance"] = draw(gap)
    content["tang"]["pivot_clearance"] = draw(gap)


def _stop(draw: Draw, content: Content) -> None:
    place = draw(st.sampled_from(("back", "middle", "belly", "height")))
    thick = content["spring"]["thickness"][-1][1]
    content["fit"]["stop"] = draw(mm(0.0, thick)) if place == "height" else place


def _mate(draw: Draw, own: Content) -> Content:
    """A blade beside the first on its pin; its faces within some hundredths, so that both bear."""
    tang = own["tang"]
    near = {key: round(tang[key] + draw(mm(-0.06, 0.06)), 3) for key in ("open", "closed")}
    mate = {key: value for key, value in tang.items() if key not in ("half_stop", "round_end")}
    mate |= near
    if draw(st.booleans()):
        mate["half_stop"] = near["closed"]
    mate["corner_radius"] = draw(mm(0.0, 0.6 * min(near.values())))
    # The preload is that of one spring: an open face that is higher stands farther into it.
    fit = own["fit"] | {
        "preload": round(max(0.0, own["fit"]["preload"] + near["open"] - tang["open"]), 3)
    }
    return {"name": "sheep", "end": "front", **own, "tang": mate, "fit": fit}


@st.composite
def contents(
    draw: Draw, kinds: tuple[str, ...] = KINDS, without: tuple[str, ...] = (), kick: bool = True
) -> Content:
    """Tables of a design file in mm; `without` leaves out some of EXTRAS."""
    kind = draw(st.sampled_from(kinds))
    own = _end(draw, 0.035, kick)
    half = _half(draw, own["tang"]["pivot"], own["pad"])
    spring: Content = {**_steel(draw), "pad": own["pad"]}
    blades: list[Content] = []
    if kind in (ENDS, THREE):
        pen = _end(draw, 0.02, kick)
        back = _half(draw, pen["tang"]["pivot"], pen["pad"])
        span = draw(st.sampled_from((0.0, 12.0, 18.0)))
        spring |= {"support": "two-pins", "rear_pin": span} if span else {"support": "middle-pin"}
        back[0][1] = half[0][1]
        behind = [[-span - x, thick] for x, thick in reversed(back)]
        rows = behind + (half if span else half[1:])
        blades.append({"name": "pen", "end": "rear", **pen})
    else:
        rows = _rear(draw, half, spring) + half[1:]
    if kind in (BESIDE, THREE):
        blades.insert(0, _mate(draw, own))
    spring["thickness"] = rows
    if kind == ONE and spring["support"] != "two-pins" and draw(st.booleans()):
        spring["thickness"] = rows[0][1]
    else:
        spring["width"] = _width(draw, rows)
    spring.setdefault("width", draw(mm(1.5, 4.0)))
    _holes(draw, spring, rows)
    content: Content = {"spring": spring, **{key: own[key] for key in ("tang", "fit", "blade")}}
    content["friction"] = _friction(draw, BENDING not in without)
    if blades:
        content["blades"] = blades
    several_ends = kind in (ENDS, THREE)
    tangs = [own["tang"], *(blade["tang"] for blade in blades)]
    if kind == ONE and isinstance(spring["thickness"], list) and draw(st.booleans()):
        _mid_line(draw, spring, own["pad"])
    if FRAME not in without and spring["support"] == "two-pins" and draw(st.booleans()):
        content["frame"] = _frame(draw, tangs, rows, not several_ends)
    if CLEARANCE not in without and draw(st.booleans()):
        _clearances(draw, content)
    may_stop = STOP not in without and kind == ONE and isinstance(spring["thickness"], list)
    if may_stop and draw(st.booleans()):
        _stop(draw, content)
    return content


def made(content: Content) -> bs.Design:
    return bs.Design(name="Reed", **content)


def designs(**options: Any) -> st.SearchStrategy[bs.Design]:
    return contents(**options).map(made)
