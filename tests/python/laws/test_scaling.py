"""Everything follows from ratios: a joint twice as large, or of another modulus, is the same joint.

Buckingham's theorem: with lengths times s and stresses times e, forces go with e s^2, torques and
energies with e s^3, and angles stay. The unit that ends a number's name says how it goes.
"""

from __future__ import annotations

import copy
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

import backspring as bs
from backspring.design.fields import row_of
from law_designs import ONE, Content, contents, made
from law_figures import EXACT, STANDS, checked, compare, share_of, stand

# Powers of length and of stress.
OF_UNIT = {
    "mm": (1, 0), "n": (2, 1), "nmm": (3, 1), "mj": (3, 1), "mpa": (0, 1), "deg": (0, 0),
    "n_per_mm": (1, 1), "nmm_per_deg": (3, 1), "rad_per_s": (0, 0), "m_per_s": (1, 0), "": (0, 0),
}  # fmt: skip
OF_KEY = {
    "length": (1, 0), "stress": (0, 1), "inertia": (3, 1), "compliance": (-1, -1),
    "root_stiffness": (3, 1),
}  # fmt: skip


def scaled(content: Content, length: float, stress: float, lead: str = "") -> Content:
    """Tables with every number times what its key's quantity asks for."""
    found = {}
    for key, value in content.items():
        name = f"{lead}{key}"
        if key == "blades":
            found[key] = [scaled(each, length, stress, "blades.x.") for each in value]
        elif isinstance(value, dict):
            found[key] = scaled(value, length, stress, f"{name}.")
        else:
            row = row_of(name)
            assert row is not None, name
            length_power, stress_power = OF_KEY.get(row.quantity.name, (0, 0))
            found[key] = _times(value, length**length_power * stress**stress_power)
    return found


def _times(value: Any, factor: float) -> Any:
    if isinstance(value, list):
        return [_times(each, factor) for each in value]
    return value * factor if isinstance(value, float) else value


def in_figures(content: Content) -> Content:
    """The same with figures for the steel, which a name would not let change."""
    core = made(content).core
    figures = {
        "steel": "O1",
        "youngs_modulus": core.spring.elastic.youngs_modulus_mpa,
        "poisson": core.spring.elastic.poisson,
        "yield": core.strength.yield_mpa.value,
    }
    spring = {key: value for key, value in content["spring"].items() if key != "hardness"}
    changed = content | {"spring": spring | figures}
    if "liner_thickness" in content.get("frame", {}):
        changed["frame"] = {"liner_modulus": 100000.0} | content["frame"]
    return changed


@given(contents(kinds=(ONE,)), st.floats(0.5, 2.0), st.floats(0.6, 1.4))
def test_a_check_scales(content: Content, length: float, stress: float) -> None:
    drawn = in_figures(content)
    one, other = checked(made(drawn)), checked(made(scaled(drawn, length, stress)))
    # A rest that a ten-thousandth of a degree ends is found or not by rounding.
    assume(one.keys() == other.keys())
    compare(one, other, lambda unit: length ** OF_UNIT[unit][0] * stress ** OF_UNIT[unit][1])


@given(contents(), STANDS, st.floats(0.5, 2.0), st.floats(0.6, 1.4))
def test_contact_of_all_blades_scales(
    content: Content, angles: list[float], length: float, stress: float
) -> None:
    drawn = in_figures(content)
    one, other = (stand(made(c), angles) for c in (drawn, scaled(drawn, length, stress)))
    large = max(one.forces)
    for here, there in zip(one.forces, other.forces, strict=True):
        factor = stress * length**2
        assert there == pytest.approx(factor * here, rel=EXACT, abs=EXACT * factor * large)
    factor = stress * length**3
    assert other.energy == pytest.approx(factor * one.energy, rel=EXACT)
    for here, there in zip(one.torques, other.torques, strict=True):
        assert there == pytest.approx(factor * here, abs=EXACT * factor * one.scale * 50)


def wider(content: Content, times: float) -> Content:
    """The joint stacked across the liners: all that carries, times as wide."""
    wide = copy.deepcopy(content)
    spring, frame = wide["spring"], wide.get("frame", {})
    width = spring["width"]
    spring["width"] = (
        [[x, w * times] for x, w in width] if isinstance(width, list) else width * times
    )
    if isinstance(spring.get("support"), float):
        spring["support"] *= times
    for key in ("liner_thickness", "scale_thickness"):
        if key in frame:
            frame[key] *= times
    if "seat" in frame:
        frame["seat"] /= times
    for blade in (wide["blade"], *(each["blade"] for each in wide.get("blades", ()))):
        blade["inertia"] *= times
    return wide


@given(contents(kinds=(ONE,)), st.floats(0.6, 1.6))
def test_forces_go_with_width_and_nothing_else_does(content: Content, times: float) -> None:
    compare(
        checked(made(content)),
        checked(made(wider(content, times))),
        lambda unit: times if unit in ("n", "nmm", "mj", "n_per_mm", "nmm_per_deg") else 1.0,
    )


def in_pieces(place: str) -> float:
    """What pushes along the spring has a lever in pieces: a stop in 32, friction in 8."""
    if place.endswith(("stress_mpa", "yield_margin", "yield_margin_low", "yield_margin_high")):
        return 1e-3  # of an open blade looked for where a piece begins
    return 1e-4 if any(each in place for each in (".strokes", ".travel")) else 1e-5


@given(contents(kinds=(ONE,)), st.integers(1, 9))
def test_a_station_more_on_a_straight_line_is_nothing(content: Content, tenths: int) -> None:
    pushed = "stop" in content["fit"] or "bending" in content["friction"]
    cut = copy.deepcopy(content)
    for key in ("thickness", "width", "mid_line"):
        rows = cut["spring"].get(key)
        if isinstance(rows, list):
            (x0, y0), (x1, y1) = rows[-2:]
            share = tenths / 10
            rows.insert(-1, [x0 + share * (x1 - x0), y0 + share * (y1 - y0)])
    share = in_pieces if pushed else share_of
    compare(checked(made(content)), checked(made(cut)), share=share)


@given(contents(kinds=(ONE,)))
def test_a_file_in_inches_is_the_same_joint(content: Content) -> None:
    inches = scaled(content, 1 / 25.4, 1.0)
    for key in ("youngs_modulus", "yield"):
        if key in inches["spring"]:
            inches["spring"][key] = f"{content['spring'][key]} MPa"
    if isinstance(inches["spring"].get("support"), float):
        inches["spring"]["support"] = f"{content['spring']['support']} N mm/rad"
    frame = inches.get("frame", {})
    for key, unit in (("scale_modulus", "MPa"), ("seat", "mm/N")):
        if key in frame:
            frame[key] = f"{content['frame'][key]} {unit}"
    for given_blade, blade in zip(
        (content, *content.get("blades", ())), (inches, *inches.get("blades", ())), strict=True
    ):
        blade["blade"]["inertia"] = f"{given_blade['blade']['inertia']} kg mm2"
    in_mm, in_inch = made(content), bs.Design(name="Reed", units="in", **inches)
    compare(checked(in_mm), checked(in_inch))
