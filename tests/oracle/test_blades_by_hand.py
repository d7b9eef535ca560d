"""The dense solution for any number of blades, held to closed forms and to statics.

Uniform beams: a cantilever's tip falls by P l^3/(3 E I) + P l/(kappa G A). Overhangs a and b beyond
two supports L apart lift by P a^2 (L + a)/(3 E I) under their own force and by P a b L/(6 E I)
under the other's (Gere and Timoshenko, Mechanics of Materials, appendix on deflections of beams;
from memory), and shear adds P a (1 + a/L)/(kappa G A), takes P a b/(L kappa G A), by unit loads.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from oracle.blades import Array, Joint, PlainBlade, read
from oracle.blades_beam import ElementBeam
from oracle.blades_contact import BladeContacts
from oracle.blades_rest import seated

MODULUS_MPA, POISSON, WIDTH_MM, DEPTH_MM, SPAN_MM = 205e3, 0.29, 2.5, 3.0, 20.0
BEND = MODULUS_MPA * WIDTH_MM * DEPTH_MM**3 / 12.0
SHEAR_N = 5.0 / 6.0 * MODULUS_MPA / (2.0 * (1.0 + POISSON)) * WIDTH_MM * DEPTH_MM
BY_HAND = 1e-7

TANG = {
    "pivot": 32.0, "open": 4.5, "half_stop": 4.62, "closed": 4.6, "corner_radius": 0.7, "front": 5,
}  # fmt: skip
FIT = {"preload": 0.5, "dial": 33.5}


def uniform(support: str, *others: dict[str, Any], **first: Any) -> Joint:
    """A bar without holes; what is not said of a blade is as in TANG and FIT."""
    spring = {
        "youngs_modulus": MODULUS_MPA, "poisson": POISSON, "width": WIDTH_MM, "thickness": DEPTH_MM,
        "support": support, "rear_pin": SPAN_MM, "pin_hole": 0.0, "pad": [27.0, 36.5],
    }  # fmt: skip
    names = ["pen", "file"]
    return read(
        {
            "spring": spring,
            "tang": TANG | first,
            "fit": FIT,
            "blades": [
                {"name": name, "pad": [26.0, 36.5], "tang": TANG | other.get("tang", {}), **rest}
                for name, other in zip(names, others, strict=False)
                for rest in [{"end": other.get("end", "front"), "fit": other.get("fit", FIT)}]
            ],
        }
    )


PEN_BEHIND: dict[str, Any] = {"end": "rear", "tang": {"pivot": 30.0}, "fit": FIT | {"preload": 0.6}}


def near_mm(a: float, b: float, span_mm: float = SPAN_MM) -> float:
    """Lift at a under a unit force at b on the same overhang of a uniform bar."""
    low, high = min(a, b), max(a, b)
    own = low**2 * (3.0 * high - low) / (6.0 * BEND) + low / SHEAR_N
    return own + a * b * (span_mm / (3.0 * BEND) + (1.0 / (SHEAR_N * span_mm) if span_mm else 0.0))


def far_mm(a: float, b: float) -> float:
    """The same with the force on the other overhang."""
    return a * b * (SPAN_MM / (6.0 * BEND) - 1.0 / (SHEAR_N * SPAN_MM))


@pytest.mark.parametrize(("support", "span_mm"), [("clamped", 0.0), ("two-pins", SPAN_MM)])
def test_flexibility_of_a_uniform_overhang(support: str, span_mm: float) -> None:
    beam = ElementBeam(uniform(support))
    x = np.array([27.0, 27.13, 29.98, 30.0, 33.31, 33.35, 36.5])
    by_hand = [[near_mm(a, b, span_mm) for b in x] for a in x]
    assert beam.flexibility(x, x) == pytest.approx(np.array(by_hand), rel=BY_HAND)


def test_flexibility_between_two_overhangs() -> None:
    beam = ElementBeam(uniform("two-pins", PEN_BEHIND))
    x = np.array([27.0, 30.01, 36.5])
    by_hand = np.array([[far_mm(a, b) for b in x] for a in x])
    assert beam.flexibility(x, -SPAN_MM - x) == pytest.approx(by_hand, rel=BY_HAND)


@pytest.mark.parametrize("angles", [(180.0, 180.0), (30.0, 2.0), (50.0, 140.0)])
def test_a_blade_at_each_end_of_a_uniform_bar(angles: tuple[float, float]) -> None:
    bar = uniform("two-pins", PEN_BEHIND)
    pressed = BladeContacts(bar).pressed(dict(zip(bar.names, angles, strict=True)))
    main, pen = pressed.of("main"), pressed.of("pen")
    for mine, other, blade in ((main, pen, bar.blades[0]), (pen, main, bar.blades[1])):
        x, force = pressed.own_mm, pressed.force_n
        for i in np.flatnonzero(mine):
            lift = sum(near_mm(x[i], x[k]) * force[k] for k in np.flatnonzero(mine))
            lift += sum(far_mm(x[i], x[k]) * force[k] for k in np.flatnonzero(other))
            free = float(blade.free_face_mm(x[i : i + 1])[0])
            assert pressed.height_mm[i] == pytest.approx(free + lift, abs=1e-7)


def test_on_one_pin_moments_balance_and_each_side_bends_as_a_cantilever() -> None:
    bar = uniform("middle-pin", PEN_BEHIND)
    pressed = BladeContacts(bar).pressed({"main": 40.0, "pen": 180.0})
    moments = [pressed.force(name) * pressed.place_mm(name) for name in bar.names]
    assert moments[0] == pytest.approx(moments[1], rel=1e-6)
    turn = {"main": pressed.turn_rad, "pen": -pressed.turn_rad}
    for name, blade in zip(bar.names, bar.blades, strict=True):
        x, force, height = (v[pressed.of(name)] for v in
                            (pressed.own_mm, pressed.force_n, pressed.height_mm))  # fmt: skip
        bent = sum(near_mm(x[0], a, 0.0) * p for a, p in zip(x, force, strict=True))
        tip = float(blade.free_face_mm(x[:1])[0]) + turn[name] * x[0] + bent
        assert height[0] == pytest.approx(tip, abs=1e-7)


def two_supports(x: Array, need: Array) -> Array:
    """Forces of two points that lift a uniform cantilever so far, pulling where they must."""
    return np.linalg.solve([[near_mm(a, b, 0.0) for b in x] for a in x], need)


def need_mm(blade: PlainBlade, x: float, height_mm: float) -> float:
    return height_mm - float(blade.free_face_mm(np.array([x]))[0])


def test_two_blades_on_one_pin_share_as_two_equations_say() -> None:
    bar = uniform("clamped", {"tang": {"open": 4.53}})
    pressed = BladeContacts(bar).pressed({"main": 8.0, "pen": 174.0})
    x, need = np.zeros(2), np.zeros(2)
    for i, blade in enumerate(bar.blades):
        mine = pressed.of(blade.name)
        share = pressed.force_n[mine] / pressed.force(blade.name)
        x[i] = pressed.place_mm(blade.name)
        need[i] = need_mm(blade, x[i], float(pressed.height_mm[mine] @ share))
    shared = two_supports(x, need)
    assert min(shared) > 10.0
    assert [pressed.force(name) for name in bar.names] == pytest.approx(shared, rel=1e-3)


def test_where_one_of_the_two_would_pull_the_other_bears_alone() -> None:
    bar = uniform("clamped", {"tang": {"open": 4.53}})
    pressed = BladeContacts(bar).pressed({"main": 180.0, "pen": 60.0})
    assert pressed.force("main") == 0.0
    x = pressed.place_mm("pen")
    need = need_mm(bar.blades[1], x, float(pressed.height_mm.mean()))
    assert pressed.force("pen") == pytest.approx(need / near_mm(x, x, 0.0), rel=1e-4)
    corner = 28.08  # where the open face of the other begins
    main_n, pen_n = two_supports(
        np.array([corner, x]), np.array([need_mm(bar.blades[0], corner, 4.5), need])
    )
    assert main_n < 0.0 < pen_n


def test_a_blade_let_go_of_leaves_the_other_as_if_alone() -> None:
    low = uniform("two-pins", {"tang": {"closed": 4.2}})
    both, alone = BladeContacts(low), BladeContacts(uniform("two-pins"))
    rest = seated(both, {"main": 90.0, "pen": 0.0})
    assert rest.force("pen") == 0.0
    single = seated(alone, {"main": 90.0})
    assert rest.force("main") == pytest.approx(single.force("main"), rel=1e-6)
    assert rest.angles_deg["main"] == pytest.approx(single.angles_deg["main"], abs=1e-4)
