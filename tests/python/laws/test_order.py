"""More of one thing is more of another: only where mechanics proves it.

At a given stand of the blades the spring stores the greatest complementary energy that pushing
forces can give: U = max over P >= 0 of sum(P overlap) - 1/2 sum(P C P). So U never falls when an
overlap grows (more preload, a larger tang) or the compliance C falls (more steel, a stiffer hold),
and U is convex in the preload, its slope the moment about the middle pin over the pivot's distance.
Pull is the slope of U along the travel, and nothing orders that: so pulls are not in these laws.
"""

from __future__ import annotations

import copy

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

import backspring as bs
from law_designs import BENDING, ONE, STOP, Content, contents, designs, made
from law_figures import ANGLE, stand

# Of the energy: rounding of the contact's place.
ROUNDING = 1e-9
MORE = st.floats(1e-4, 0.3)


def energy(content: Content, angle: float) -> float:
    return stand(made(content), [angle]).energy


def without_offsets(content: Content) -> Content:
    """A dimension at a time: no hole or clearance that another dimension would move."""
    plain = copy.deepcopy(content)
    plain["spring"].pop("pin_clearance", None)
    plain["tang"].pop("pivot_clearance", None)
    return plain


@given(contents(kinds=(ONE,), without=(STOP,)), ANGLE, MORE)
def test_more_preload_stores_more_and_turns_the_root_more(
    content: Content, angle: float, share: float
) -> None:
    pivot = content["tang"]["pivot"]
    found = []
    for times in (1.0, 1.0 + 0.5 * share, 1.0 + share):
        content["fit"]["preload"] *= times
        here = stand(made(content), [angle])
        moment = sum(here.forces) * here.stations[0][0] if len(here.stations[0]) == 1 else None
        found.append((content["fit"]["preload"], here.energy, moment))
        content["fit"]["preload"] /= times
    (first, low, some), (middle, between, _), (last, high, most) = found
    slack = ROUNDING * max(high, 1.0)
    assert low <= between + slack <= high + 2 * slack
    # Convex: the middle is under the chord.
    chord = low + (high - low) * (middle - first) / (last - first)
    assert between <= chord + slack
    if some is not None and most is not None:
        gained = (high - low) / (last - first) * pivot
        assert some <= gained * (1 + 1e-6) + 1e-6 and gained <= most * (1 + 1e-6) + 1e-6


@given(
    contents(kinds=(ONE,), without=(STOP,)), ANGLE, MORE, st.sampled_from(("thickness", "width"))
)
def test_more_steel_stores_more(content: Content, angle: float, share: float, key: str) -> None:
    # A pin hole stays on the mid-line only if it was there, so holes are left out.
    for hole in ("pin_hole", "pin_hole_offset"):
        content["spring"].pop(hole, None)
    fuller = copy.deepcopy(content)
    value = fuller["spring"][key]
    if isinstance(value, list):
        # Anywhere: here all but the middle pin's end.
        value[-1][1] *= 1.0 + share
    else:
        fuller["spring"][key] = value * (1.0 + share)
    assert energy(content, angle) <= energy(fuller, angle) * (1 + ROUNDING) + ROUNDING


@given(contents(kinds=(ONE,), without=(STOP,)), ANGLE, MORE)
def test_a_stiffer_hold_stores_more(content: Content, angle: float, share: float) -> None:
    held = copy.deepcopy(content)
    if isinstance(held["spring"]["support"], float):
        held["spring"]["support"] *= 1.0 + share
    elif "seat" in held.get("frame", {}):
        held["frame"]["seat"] *= 1.0 - share
    else:
        held.pop("frame", None)
        held["spring"]["support"] = "clamped"
        # The mid-line's bow behind the pin goes with it; a clamped root has none.
    assert energy(content, angle) <= energy(held, angle) * (1 + ROUNDING) + ROUNDING


@given(
    contents(kinds=(ONE,), without=(STOP,)), ANGLE, MORE, st.sampled_from(("closed", "half_stop"))
)
def test_a_larger_tang_stores_more(content: Content, angle: float, share: float, face: str) -> None:
    """A face farther out with the same corners holds all of the smaller tang within it."""
    tang = content["tang"]
    # Where the end is a circle about the corners, every face of it moves the circle.
    if face not in tang or "half_stop" not in tang:
        tang.setdefault("round_end", 1.2 * max(tang["open"], tang["closed"]))
        tang.pop("half_stop", None)
        face = "round_end"
    larger = copy.deepcopy(content)
    larger["tang"][face] *= 1.0 + 0.1 * share
    assert energy(content, angle) <= energy(larger, angle) * (1 + ROUNDING) + ROUNDING


@given(contents(kinds=(ONE,), without=(STOP,)), ANGLE, st.floats(0.0, 0.95))
def test_sharper_corners_and_a_kick_store_more(
    content: Content, angle: float, share: float
) -> None:
    sharper = copy.deepcopy(content)
    radius = sharper["tang"]["corner_radius"]
    smaller = [share * r for r in radius] if isinstance(radius, list) else share * radius
    sharper["tang"]["corner_radius"] = smaller
    if "half_stop" not in content["tang"]:
        end = 1.2 * max(content["tang"]["open"], content["tang"]["closed"])
        content["tang"].setdefault("round_end", end)
        sharper["tang"].setdefault("round_end", end)
    assert energy(content, angle) <= energy(sharper, angle) * (1 + ROUNDING) + ROUNDING
    if "kick" in content["tang"]:
        bare = content | {"tang": {k: v for k, v in content["tang"].items() if k != "kick"}}
        assert energy(bare, angle) <= energy(content, angle) * (1 + ROUNDING) + ROUNDING


@given(designs(kinds=(ONE,), without=(BENDING,)), ANGLE)
def test_friction_makes_opening_harder_and_closing_easier(design: bs.Design, start: float) -> None:
    """Where friction does not bend the spring it leaves contact as it is and opposes turning."""
    arc = (1.0, start / 2, start / 2 + 20.0)
    smooth = bs.sweep(design.replace(**{"friction.spring": 0, "friction.pivot": 0}), *arc)
    rough = bs.sweep(design, *arc)
    dry = bs.sweep(design.replace(**{"friction.offset": 0.05}), *arc)
    assert np.array_equal(rough.force_n, smooth.force_n)
    slack = 1e-9 * max(1.0, np.abs(smooth.opening_torque_nmm).max())
    assert np.all(smooth.opening_torque_nmm <= rough.opening_torque_nmm + slack)
    assert np.all(rough.opening_torque_nmm <= dry.opening_torque_nmm + slack)
    assert np.all(smooth.closing_torque_nmm >= rough.closing_torque_nmm - slack)
    assert np.all(rough.closing_torque_nmm >= dry.closing_torque_nmm - slack)


@given(contents(kinds=(ONE,)), st.integers(42, 49))
def test_harder_steel_leaves_more_margin_and_the_same_stress(content: Content, hrc: int) -> None:
    for key in ("youngs_modulus", "poisson", "yield"):
        content["spring"].pop(key, None)
    found = []
    for hardness in (hrc, hrc + 1):
        content["spring"]["hardness"] = hardness
        found.append(bs.check(made(content)).travel)
    softer, harder = found
    assert softer.peak_stress_mpa == harder.peak_stress_mpa
    if softer.peak_stress_mpa:
        assert softer.yield_margin < harder.yield_margin
        assert softer.yield_margin_low < harder.yield_margin_low
