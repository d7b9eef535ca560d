"""A spring with several blades: symmetry, limits, energy, monotony."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from several_blades import (
    HOLDS,
    SPAN_MM,
    side_by_side,
    single,
    three,
    twins,
    unlike,
)

NAMES = ("open", "half_stop", "closed")


def alike(position: _core.Position, wanted: _core.Position, rel: float) -> None:
    assert position.force_n == pytest.approx(wanted.force_n, rel=rel)
    assert position.blade_angle_deg == pytest.approx(wanted.blade_angle_deg, abs=rel)
    assert position.contacts_mm == pytest.approx(wanted.contacts_mm, abs=10 * rel)


def beside(check: bs.Check, **others: str) -> bs.Beside:
    """The row with the other blades so."""
    (row,) = (
        row for row in check.beside if {each.name: each.position for each in row.others} == others
    )
    return row


@pytest.mark.parametrize("span", HOLDS)
def test_two_blades_alike_give_results_alike(span: float | None) -> None:
    check = bs.check(twins(span))
    for other in NAMES:
        row, twin = (
            beside(check.blades["main"], twin=other),
            beside(check.blades["twin"], main=other),
        )
        for name, position in row.positions.items():
            alike(twin.positions[name], position, 1e-10)
        for own, wanted in zip(twin.strokes, row.strokes, strict=True):
            assert own.peak_pull_n == pytest.approx(wanted.peak_pull_n, rel=1e-9)


def test_on_one_middle_pin_blades_alike_hold_the_spring_as_a_clamp_would() -> None:
    check, one = bs.check(twins()).blades["main"], bs.check(single("clamped"))
    for name in NAMES:
        position = beside(check, twin=name).positions[name]
        alike(position, one.positions[name], 1e-9)
        wanted = one.positions[name].reading_loaded_mm
        assert position.reading_loaded_mm == pytest.approx(wanted, abs=1e-10)


def test_on_two_pins_blades_alike_hold_the_spring_as_a_root_of_both_turns() -> None:
    """Both roots carry one moment M, so each turns by (R_AA + R_AB) M: 1/k of a root stiffness."""
    design = twins(SPAN_MM)
    turn = _core.make_flexibility(design.core.spring).root_rotation_rad_per_nmm
    held = _core.contacts_at(design.core, [180.0, 180.0])[0].contact
    moment = sum(touch.x_mm * touch.force_n for touch in held.touches)
    turn += held.others.root_turn_rad / moment
    check, one = bs.check(design).blades["main"], bs.check(single(1.0 / turn, SPAN_MM))
    for name in NAMES:
        alike(beside(check, twin=name).positions[name], one.positions[name], 1e-8)


def test_a_span_that_does_not_bend_parts_the_blades() -> None:
    """Ten times as thick between the pins, so both ends are clamped but for what is left of shear.

    The crest's 6000 N mm turn a root by some 6e-5 rad, 0.4 % of the preload's slope.
    """
    rigid = [[-54.5, 2.5], [-43, 2.4], [-25, 3.1], [-18, 3.8], [-18, 38], [0, 38], [0, 3.8]]
    changes = {"spring.thickness": [*rigid, [7, 3.1], [25, 2.4], [36.5, 2.5]], "spring.pin_hole": 0}
    check = bs.check(twins(SPAN_MM).replace(**changes)).blades["main"]
    one = bs.check(single("clamped").replace(**{"spring.pin_hole": 0}))
    for row in check.beside:
        for name, position in row.positions.items():
            assert position.force_n == pytest.approx(one.positions[name].force_n, rel=3e-3)
        for own, wanted in zip(row.strokes, one.strokes, strict=True):
            assert own.peak_pull_n == pytest.approx(wanted.peak_pull_n, rel=3e-3)
        assert row.others[0].force_low_n == pytest.approx(row.others[0].force_high_n, rel=4e-3)


def test_a_far_blade_let_go_of_leaves_the_answer_of_one_blade() -> None:
    """On two pins: on the middle one the spring would turn until it meets the low tang."""
    faces = {f"blades.twin.tang.{face}": 3.0 for face in NAMES}
    check = bs.check(twins(SPAN_MM).replace(**{"blades.twin.fit.preload": 0.0}, **faces))
    one = bs.check(single("two-pins", SPAN_MM))
    for row in check.blades["main"].beside:
        for name, position in row.positions.items():
            alike(position, one.positions[name], 1e-9)
        assert row.others[0].force_high_n == 0.0


def test_a_lower_tang_on_the_same_pin_leaves_the_answer_of_one_blade() -> None:
    faces = {"open": 3.9, "half_stop": 3.9, "closed": 3.9}
    low = side_by_side(**faces)
    check, content = bs.check(low).blades["main"], low.to_dict()
    one = bs.check(bs.Design(**content | {"blades": None}))
    for row in check.beside:
        for name, position in row.positions.items():
            alike(position, one.positions[name], 1e-12)
        for own, wanted in zip(row.strokes, one.strokes, strict=True):
            assert own.peak_pull_n == pytest.approx(wanted.peak_pull_n, rel=1e-12)
        assert (row.others[0].force_low_n, row.others[0].force_high_n) == (0.0, 0.0)


def test_the_proudest_of_two_on_one_pin_holds_the_spring_up() -> None:
    check = bs.check(side_by_side(half_stop=4.62, closed=4.65))
    main = beside(check.blades["main"], sheep="closed").positions["closed"]
    sheep = beside(check.blades["sheep"], main="closed").positions["closed"]
    assert main.force_n == 0.0 < sheep.force_n
    # Both dials are at one station of one spring.
    for name in NAMES:
        one = beside(check.blades["main"], sheep=name).positions["closed"].reading_loaded_mm
        other = beside(check.blades["sheep"], main="closed").positions[name].reading_loaded_mm
        assert one == pytest.approx(other, abs=1e-9)


ALL_KINDS = [
    unlike(kick=True),
    unlike(SPAN_MM, kick=True),
    side_by_side(closed=4.63, corner_radius=1.1),
    three(),
]


@pytest.mark.parametrize("design", ALL_KINDS, ids=["middle pin", "two pins", "one pin", "three"])
def test_the_torque_on_every_blade_is_the_slope_of_the_whole_energy(design: bs.Design) -> None:
    """Each over its whole travel, the others in each of their positions.

    Left out are places whose stencil holds a change of the contact set; how many is part of the
    claim.
    """
    step, left_out, places = 2e-3, 0, 0
    for blade in design.blades:
        others = [name for name in design.blades if name != blade]
        for where in product((0.4, 90.3, 180.0), repeat=len(others)):
            held = dict(zip(others, where, strict=True))
            for angle in np.arange(1.3, 179.0, 7.9 if len(others) == 1 else 23.9):
                found = bs.contacts(design, {blade: angle} | held).blades[blade]
                near = [
                    bs.contacts(design, {blade: angle + k * step} | held)
                    for k in (-2.0, -1.0, 1.0, 2.0)
                ]
                places += 1
                if len({tuple(len(b.touches) for b in n.blades.values()) for n in near}) > 1:
                    left_out += 1
                    continue
                energy = [each.energy_nmm for each in near]
                slope = 8 * (energy[2] - energy[1]) - energy[3] + energy[0]
                slope /= 12 * np.radians(step)
                assert found.torque_nmm == pytest.approx(slope, abs=1e-6 * 400.0), (blade, angle)
    assert left_out <= 0.02 * places


def test_on_the_middle_pin_one_moment_is_shared_at_every_pair_of_angles() -> None:
    design = unlike()
    for main, pen in product(np.arange(0.0, 181.0, 20.0), np.arange(0.0, 181.0, 30.0)):
        found = bs.contacts(design, {"main": main, "pen": pen}).blades
        one, other = (sum(t.x_mm * t.force_n for t in each.touches) for each in found.values())
        assert one == pytest.approx(other, rel=1e-11)


@pytest.mark.parametrize("span", HOLDS)
def test_more_preload_at_either_end(span: float | None) -> None:
    """On the middle pin it presses on both tangs; on two it presses its own and eases the other."""
    forces = []
    for preload in (0.3, 0.4, 0.5, 0.6):
        check = bs.check(unlike(span).replace(**{"blades.pen.fit.preload": preload}))
        forces.append([each.positions["closed"].force_n for each in check.blades.values()])
    main, pen = np.diff(forces, axis=0).T
    assert (pen > 0.0).all()
    assert ((main > 0.0) if span is None else (main < 0.0)).all()


def test_on_the_middle_pin_only_the_sum_of_the_preload_slopes_counts() -> None:
    """The spring turns: what is taken from one end's slope is made up at the other."""
    base, moved = unlike(), 0.1
    other = 0.45 + moved * 29 / 32
    shifted = base.replace(**{"fit.preload": 0.5 - moved, "blades.pen.fit.preload": other})
    was, now = (bs.check(design).blades for design in (base, shifted))
    for name in base.blades:
        alike(now[name].positions["closed"], was[name].positions["closed"], 1e-9)


@pytest.mark.parametrize("span", HOLDS)
def test_the_other_tang_takes_part_in_the_crest(span: float | None) -> None:
    check = bs.check(twins(span))
    rest = check.blades["twin"].positions["closed"].force_n
    other = check.blades["main"].beside[0].others[0]
    if span is None:
        assert other.force_high_n > 1.3 * rest > 1.2 * other.force_low_n
    else:
        assert other.force_low_n < rest < other.force_high_n + 1e-9
