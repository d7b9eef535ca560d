"""A spring with two blades: symmetry, limits, energy, monotony, and what is refused."""

from __future__ import annotations

import pickle
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from oracle.two_blades import BLADE, FIT, FRICTION, SPAN_MM, TANG, spring, twins, unlike

TURNSTONE = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "turnstone.toml")
HOLDS = [None, SPAN_MM]
NAMES = ("open", "half_stop", "closed")


def single(support: str | float, span_mm: float | None = None) -> bs.Design:
    """One end of the twins by itself."""
    held = spring(span_mm, support=support)
    return bs.Design(name="One", spring=held, tang=TANG, fit=FIT, blade=BLADE, friction=FRICTION)


def alike(position: _core.Position, wanted: _core.Position, rel: float) -> None:
    assert position.force_n == pytest.approx(wanted.force_n, rel=rel)
    assert position.blade_angle_deg == pytest.approx(wanted.blade_angle_deg, abs=rel)
    assert position.contacts_mm == pytest.approx(wanted.contacts_mm, abs=10 * rel)


@pytest.mark.parametrize("span", HOLDS)
def test_two_blades_alike_give_results_alike(span: float | None) -> None:
    check = bs.check_two(twins(span))
    for other, row in check.first.items():
        for name, position in row.positions.items():
            alike(check.second[other].positions[name], position, 1e-10)
        for own, twin in zip(row.strokes, check.second[other].strokes, strict=True):
            assert twin.peak_pull_n == pytest.approx(own.peak_pull_n, rel=1e-9)


def test_on_one_pin_blades_alike_hold_the_spring_as_a_clamp_would() -> None:
    check, one = bs.check_two(twins()), bs.check(single("clamped"))
    for name in NAMES:
        alike(check.first[name].positions[name], one.positions[name], 1e-10)
        reading = check.first[name].positions[name].reading_loaded_mm
        assert reading == pytest.approx(one.positions[name].reading_loaded_mm, abs=1e-10)


def test_on_two_pins_blades_alike_hold_the_spring_as_a_root_of_both_turns() -> None:
    """Both roots carry one moment, so each turns by (R_AA + R_AB) M: 1/k of a root stiffness."""
    design = twins(SPAN_MM)
    core = design.two_blades.first.spring
    turn = _core.make_flexibility(core).root_rotation_rad_per_nmm
    turn += _core.cross_rotation_rad_per_nmm(core)
    check, one = bs.check_two(design), bs.check(single(1.0 / turn, SPAN_MM))
    for name in NAMES:
        alike(check.first[name].positions[name], one.positions[name], 1e-10)


def test_a_span_that_does_not_bend_parts_the_blades() -> None:
    """Ten times as thick between the pins, so both ends are clamped but for what is left of shear.

    The crest's 6000 N mm turn a root by some 6e-5 rad, 0.4 % of the preload's slope.
    """
    rigid = [[-54.5, 2.5], [-43, 2.4], [-25, 3.1], [-18, 3.8], [-18, 38], [0, 38], [0, 3.8]]
    changes = {"spring.thickness": [*rigid, [7, 3.1], [25, 2.4], [36.5, 2.5]], "spring.pin_hole": 0}
    check = bs.check_two(twins(SPAN_MM).replace(**changes))
    one = bs.check(single("clamped").replace(**{"spring.pin_hole": 0}))
    for row in check.first.values():
        for name, position in row.positions.items():
            assert position.force_n == pytest.approx(one.positions[name].force_n, rel=3e-3)
        for own, wanted in zip(row.strokes, one.strokes, strict=True):
            assert own.peak_pull_n == pytest.approx(wanted.peak_pull_n, rel=3e-3)
        assert row.other_force_n[0] == pytest.approx(row.other_force_n[1], rel=4e-3)


@pytest.mark.parametrize("span", HOLDS)
def test_the_torque_on_either_blade_is_the_slope_of_the_whole_energy(span: float | None) -> None:
    """Left out are places whose stencil holds a change of the contact set, the kick's for one."""
    two = unlike(span).two_blades
    step_deg, left_out = 2e-3, 0
    places = [(a, b) for a in np.arange(6.3, 178.0, 11.7) for b in (1.7, 33.3, 97.1, 150.3)]
    found = [_core.two_contacts_at(two, *place) for place in places]
    peak = max(abs(both.first.torque_nmm) for both in found)
    for place, both in zip(places, found, strict=True):
        for blade, way in (("first", (1.0, 0.0)), ("second", (0.0, 1.0))):
            near = [
                _core.two_contacts_at(two, *(np.array(place) + k * step_deg * np.array(way)))
                for k in (-2.0, -1.0, 1.0, 2.0)
            ]
            if len({(each.first.count, each.second.count) for each in near}) > 1:
                left_out += 1
                continue
            energy = [each.first.energy_nmm for each in near]
            slope = 8 * (energy[2] - energy[1]) - energy[3] + energy[0]
            slope /= 12 * np.radians(step_deg)
            torque = getattr(both, blade).torque_nmm
            assert torque == pytest.approx(slope, abs=1e-6 * peak), (blade, place)
    assert left_out <= 2


def test_the_work_of_opening_one_blade_is_what_the_whole_spring_takes_up() -> None:
    """The other blade free to seat: energy up less energy released is the rests' difference."""
    check = bs.check_two(unlike())
    row = check.first["closed"]
    for stroke in row.strokes:
        start, end = row.positions[stroke.from_position], row.positions[stroke.to_position]
        gained = stroke.stroke.energy_up_mj - stroke.stroke.energy_released_mj
        assert gained == pytest.approx(end.energy_mj - start.energy_mj, abs=1e-9)
    # The same pair of rests is met from the other blade.
    met = check.second["closed"].positions["closed"].energy_mj
    assert row.positions["closed"].energy_mj == pytest.approx(met, rel=1e-12)


def test_on_one_pin_one_moment_is_shared_at_every_pair_of_angles() -> None:
    two = unlike().two_blades
    assert two is not None
    for first in np.arange(0.0, 181.0, 20.0):
        for second in np.arange(0.0, 181.0, 30.0):
            both = _core.two_contacts_at(two, first, second)
            one, other = (
                sum(touch.x_mm * touch.force_n for touch in each.touches)
                for each in (both.first, both.second)
            )
            assert one == pytest.approx(other, rel=1e-11)


@pytest.mark.parametrize("span", HOLDS)
def test_more_preload_at_either_end(span: float | None) -> None:
    """On one pin it presses on both tangs; on two it presses its own and eases the other."""
    forces = []
    for preload in (0.3, 0.4, 0.5, 0.6):
        check = bs.check_two(unlike(span).replace(**{"second.fit.preload": preload}))
        closed = check.first["closed"].positions["closed"].force_n
        forces.append((closed, check.second["closed"].positions["closed"].force_n))
    first, second = np.diff(forces, axis=0).T
    assert (second > 0.0).all()
    assert ((first > 0.0) if span is None else (first < 0.0)).all()


def test_on_one_pin_only_the_sum_of_the_preload_slopes_counts() -> None:
    """The spring turns: what is taken from one end's slope is made up at the other."""
    base, moved = unlike(), 0.1
    other = 0.45 + moved * 29 / 32
    shifted = base.replace(**{"fit.preload": 0.5 - moved, "second.fit.preload": other})
    for name in ("first", "second"):
        rows = [getattr(bs.check_two(design), name)["closed"] for design in (base, shifted)]
        alike(rows[1].positions["closed"], rows[0].positions["closed"], 1e-9)


@pytest.mark.parametrize("span", HOLDS)
def test_the_other_tang_feels_the_crest(span: float | None) -> None:
    row = bs.check_two(twins(span)).first["closed"]
    rest = bs.check_two(twins(span)).second["closed"].positions["closed"].force_n
    low, high = row.other_force_n
    if span is None:
        assert high > 1.3 * rest > 1.2 * low
    else:
        assert low < rest < high + 1e-9


def test_turnstone_works_and_survives_being_sent() -> None:
    check = bs.check_two(TURNSTONE)
    assert set(check.first) == {"open", "closed"}
    assert set(check.second) == set(NAMES)
    assert check.status == "pass"
    assert all(row.strokes for row in (*check.first.values(), *check.second.values()))
    assert pickle.loads(pickle.dumps(check)).to_dict() == check.to_dict()
    again = bs.Design(**TURNSTONE.to_dict())
    assert again == TURNSTONE
    assert again.two_blades == TURNSTONE.two_blades


def test_a_life_asked_of_two_blades_is_missed_and_not_forgotten() -> None:
    check = bs.check_two(TURNSTONE.replace(**{"targets.openings": 1e5}))
    life = {target.name: target for target in check.targets}["openings"]
    assert (life.value, life.met, check.status) == (None, False, "fail")
    assert "fatigue" in " ".join(notice.message for notice in check.notices)


def test_one_blade_is_refused_where_two_are_asked_for_and_two_where_one_is() -> None:
    with pytest.raises(bs.InvalidInput, match=r"second: missing section \[second\]"):
        bs.check_two(single("clamped"))
    for ask in (bs.check, bs.sweep, bs.allowance, lambda d: bs.grind(d, back="0.1 mm")):
        with pytest.raises(bs.InvalidInput, match="second: this works on a spring with one blade"):
            ask(TURNSTONE)


def test_a_spring_that_reaches_neither_tang_is_told() -> None:
    loose = unlike().replace(**{"fit.preload": 0, "second.fit.preload": 0})
    check = bs.check_two(loose.replace(**{"tang.closed": 4.0, "second.tang.kick": None}))
    closed = check.first["closed"].positions["closed"]
    assert closed.force_n == 0.0
    assert "lifted-off" in {notice.code for notice in check.notices}


@pytest.mark.parametrize("step", [0.0, 6.0, np.nan])
def test_a_bad_step_is_refused(step: float) -> None:
    with pytest.raises(bs.InvalidInput, match="step_deg"):
        bs.check_two(TURNSTONE, step)


def test_an_angle_outside_the_model_is_refused() -> None:
    with pytest.raises(bs.OutOfRange):
        _core.two_contacts_at(TURNSTONE.two_blades, 10.0, 300.0)
