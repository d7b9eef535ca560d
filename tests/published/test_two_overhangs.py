"""Derived from J. M. Gere and S. P. Timoshenko, Mechanics of Materials, appendix on deflections of
simple beams (from memory): a beam that overhangs both supports, and a lever on one.

The supports of two blades on one spring; a uniform beam. A couple M at one support turns that
support by M L/(3 E I) and the other by M L/(6 E I). A force P on an overhang of length a is the
couple P a at its support, so the tip beyond the other support lifts by P a b L/(6 E I). Shear, by
the unit-load theorem: the span's constant force M/L adds M/(kappa G A L) to the near support's turn
and takes as much from the far one's. All evaluated here in closed form, hence 1e-10.
"""

from __future__ import annotations

import pytest

from agreement import Agree
from backspring import _core as core
from published.beam import RIGID_IN_SHEAR

SPAN_MM, WIDTH_MM, DEPTH_MM, MODULUS_MPA = 20.0, 2.5, 3.0, 205e3
INERTIA_MM4 = WIDTH_MM * DEPTH_MM**3 / 12.0
POISSON = 0.29
SHEAR_N = 5.0 / 6.0 * MODULUS_MPA / (2.0 * (1.0 + POISSON)) * WIDTH_MM * DEPTH_MM
FIRST_MM, SECOND_MM = 38.0, 30.0


def spring(poisson: float, span: float | None = SPAN_MM, depth: float = DEPTH_MM) -> core.Spring:
    kind = core.SupportKind.clamped if span is None else core.SupportKind.two_pins
    return core.Spring(
        thickness=[core.Station(x_mm=0.0, thickness_mm=depth)],
        width_mm=WIDTH_MM,
        support=core.Support(kind=kind, rear_pin_mm=span or 0.0),
        elastic=core.Elastic(youngs_modulus_mpa=MODULUS_MPA, poisson=poisson),
    )


def tang(pivot_mm: float) -> core.Tang:
    return core.Tang(
        pivot_mm=pivot_mm, open_mm=4.5, half_stop_mm=4.6, closed_mm=4.6,
        corner_open_mm=0.7, corner_closed_mm=0.7, front_mm=5.0,
    )  # fmt: skip


def two(beam: core.Spring, first_mm: float = 0.9, second_mm: float = 0.7) -> core.Design:
    sound = core.Band(value=1300.0, low=1200.0, high=1400.0)
    first = core.Blade(
        name="first",
        pad=core.Pad(start_mm=30.0, end_mm=44.0),
        tang=tang(FIRST_MM),
        fit=core.Fit(preload_mm=first_mm, dial_mm=FIRST_MM),
    )
    second = core.Blade(
        name="second",
        end=core.End.rear,
        pad=core.Pad(start_mm=24.0, end_mm=34.0),
        tang=tang(SECOND_MM),
        fit=core.Fit(preload_mm=second_mm, dial_mm=SECOND_MM),
    )
    strength = core.Strength(yield_mpa=sound)
    return core.Design(spring=beam, strength=strength, blades=[first, second])


def held(design: core.Design, first_deg: float, second_deg: float) -> list[core.Contact]:
    """Both blades held at an angle, each seen from its own end."""
    one = core.contacts_at(design, [first_deg, second_deg])[0]
    other = core.contacts_at(core.seen_from(design, 1), [second_deg, first_deg])[0]
    return [one.contact, other.contact]


def couple(contact: core.Contact) -> float:
    return sum(x * f for x, f in loads(contact))


def test_a_couple_at_one_support_turns_the_other() -> None:
    """M L/(6 E I), and shear takes M/(kappa G A L) from it."""
    one, other = held(two(spring(POISSON)), 30.0, 150.0)
    far = SPAN_MM / (6.0 * MODULUS_MPA * INERTIA_MM4) - 1.0 / (SHEAR_N * SPAN_MM)
    for own, beyond in ((one, other), (other, one)):
        turn = far * couple(beyond)
        assert own.others.root_turn_rad == pytest.approx(turn, rel=1e-10)
        assert beyond.others.far_root_turn_rad == pytest.approx(turn, rel=1e-10)


def test_shear_adds_to_the_near_support_what_it_takes_from_the_far_one(agree: Agree) -> None:
    soft, stiff = spring(POISSON), spring(RIGID_IN_SHEAR)
    near = [core.make_flexibility(each).root_rotation_rad_per_nmm for each in (soft, stiff)]
    agree(
        "what shear adds to the near support's turn [rad/(N mm)]",
        near[0] - near[1],
        1.0 / (SHEAR_N * SPAN_MM),
        rel=1e-9,
    )


def loads(contact: core.Contact) -> list[tuple[float, float]]:
    return [(touch.x_mm, touch.force_n) for touch in contact.touches[: contact.count]]


def lift(own_n: float, own_mm: float, other_n: float, other_mm: float) -> float:
    """Tip of an overhang under its own force and one on the other overhang."""
    stiffness = MODULUS_MPA * INERTIA_MM4
    bent = own_n * own_mm**2 * (SPAN_MM + own_mm) / (3.0 * stiffness)
    bent += other_n * other_mm * own_mm * SPAN_MM / (6.0 * stiffness)
    sheared = own_n * own_mm * (1.0 + own_mm / SPAN_MM) - other_n * other_mm * own_mm / SPAN_MM
    return bent + sheared / SHEAR_N


@pytest.mark.parametrize(("first", "second"), [(180.0, 180.0), (30.0, 0.0), (50.0, 140.0)])
def test_two_supports_and_two_overhangs(agree: Agree, first: float, second: float) -> None:
    """The tips where the tangs bear stand as the beam table says for both forces together."""
    beam = two(spring(POISSON))
    one, other = held(beam, first, second)
    ((a, p),), ((b, q),) = loads(one), loads(other)
    free = 4.5 - 0.9 / FIRST_MM * a
    agree(
        f"blades at {first:g} and {second:g} deg, first tip [mm]",
        one.touches[0].height_mm,
        free + lift(p, a, q, b),
        abs=1e-10,
    )
    free = 4.5 - 0.7 / SECOND_MM * b
    agree(
        f"blades at {first:g} and {second:g} deg, second tip [mm]",
        other.touches[0].height_mm,
        free + lift(q, b, p, a),
        abs=1e-10,
    )


def cantilever(force_n: float, length_mm: float) -> float:
    bent = force_n * length_mm**3 / (3.0 * MODULUS_MPA * INERTIA_MM4)
    return bent + force_n * length_mm / SHEAR_N


@pytest.mark.parametrize(("first", "second"), [(180.0, 180.0), (30.0, 0.0), (50.0, 140.0)])
def test_on_one_pin_the_forces_balance_as_on_a_lever(
    agree: Agree, first: float, second: float
) -> None:
    """F_A a_A = F_B a_B about the pin, and each tip bends as a cantilever clamped at the pin."""
    beam = two(spring(POISSON, span=None))
    one, other = held(beam, first, second)
    ((a, p),), ((b, q),) = loads(one), loads(other)
    assert p * a == pytest.approx(q * b, rel=1e-12)
    turn, back = one.others.root_turn_rad, other.others.root_turn_rad
    assert turn == pytest.approx(-back, rel=1e-12)
    tip = 4.5 - 0.9 / FIRST_MM * a + turn * a + cantilever(p, a)
    agree(
        f"on one pin at {first:g} and {second:g} deg, first tip [mm]",
        one.touches[0].height_mm,
        tip,
        abs=1e-10,
    )
    tip = 4.5 - 0.7 / SECOND_MM * b + back * b + cantilever(q, b)
    agree(
        f"on one pin at {first:g} and {second:g} deg, second tip [mm]",
        other.touches[0].height_mm,
        tip,
        abs=1e-10,
    )


def test_bending_stress_between_two_supports_runs_straight_from_root_to_root(agree: Agree) -> None:
    """On a uniform beam sigma = 6 M/(b t^2), so the larger root moment gives the peak."""
    beam = two(spring(POISSON))
    roots = [couple(each) for each in held(beam, 180.0, 180.0)]
    rows = core.check_blades(beam)[0].beside
    (all_open,) = [row for row in rows if row.others[0].position == "open"]
    (worst,) = [each for each in all_open.positions if each.name == "open"]
    agree(
        "greatest stress with two blades open [MPa]",
        worst.peak_stress_mpa,
        6.0 * max(roots) / (WIDTH_MM * DEPTH_MM**2),
        rel=1e-12,
    )
    assert worst.peak_stress_station_mm == (0.0 if roots[0] > roots[1] else -SPAN_MM)
    # The second stands closed here.
    roots = [
        couple(each)
        for each in held(beam, 180.0, core.contact_at(beam, 180.0).others.angles_deg[0])
    ]
    along = core.spring_along(beam, 180.0, 0.5)
    for station, stress in zip(along.station_mm, along.belly_stress_mpa, strict=True):
        if -SPAN_MM <= station <= 0.0:
            moment = roots[0] + (roots[1] - roots[0]) * -station / SPAN_MM
            assert stress == pytest.approx(6.0 * moment / (WIDTH_MM * DEPTH_MM**2), rel=1e-9)
