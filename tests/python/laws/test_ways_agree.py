"""Whichever way a question is asked the answer is the same, to the last bit."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

import numpy as np
from hypothesis import assume, given
from hypothesis import strategies as st

import backspring as bs
from backspring import _core
from law_designs import BESIDE, ENDS, ONE, designs
from law_figures import ANGLE, a_share

KEYS = [each.key for each in _core.dimensions()]
SHARES = st.lists(st.integers(-60, 60), min_size=1, max_size=9)
THREADS = (1, 2, 3, 7)


def rows_of(design: bs.Design, key: str, shares: list[int]) -> list[float]:
    now = _core.dimension_value(design.core, key) if _core.has_dimension(design.core, key) else None
    assume(now is not None)
    assert now is not None
    return [now * (1.0 + share / 1000) for share in shares]


def same(one: bs.ManyChecks, other: bs.ManyChecks) -> None:
    assert list(one) == list(other)
    for name in one:
        np.testing.assert_array_equal(one[name], other[name], name)


@given(
    designs(kinds=(ONE,)),
    st.sampled_from(KEYS),
    SHARES,
    st.sampled_from(THREADS),
    st.integers(1, 9),
)
def test_any_threads_and_chunks(
    design: bs.Design, key: str, shares: list[int], threads: int, chunk: int
) -> None:
    changes = {key: rows_of(design, key, shares)}
    whole = bs.check_many(design, changes, threads=1)
    same(whole, bs.check_many(design, changes, threads=threads, chunk_rows=chunk))
    with ThreadPoolExecutor(2) as pool:
        same(whole, bs.check_many(design, changes, executor=pool, chunk_rows=chunk))
    backwards = bs.check_many(design, {key: changes[key][::-1]}, threads=1)
    for name in whole:
        np.testing.assert_array_equal(whole[name], backwards[name][::-1], name)


@given(designs(kinds=(ONE,)))
def test_a_row_is_a_check(design: bs.Design) -> None:
    many = bs.check_many(design, {"blade.nail_nick": [design.core.blade.nail_nick_mm]})
    assume(many["status"][0] != "no_convergence")
    check = bs.check(design)
    place = {name: found for name, found in check.positions.items()}
    expected = {
        "travel_peak_stress_mpa": check.travel.peak_stress_mpa,
        "travel_peak_force_n": check.travel.peak_force_n,
        "yield_margin": check.travel.yield_margin,
        "stiffness_n_per_mm": check.stiffness_n_per_mm,
        "peak_pull_n": max((s.peak_pull_n for s in check.strokes), default=None),
    }
    for name in place:
        expected[f"force_{name}_n"] = place[name].force_n
        expected[f"reading_loaded_{name}_mm"] = place[name].reading_loaded_mm
        expected[f"reading_unloaded_{name}_mm"] = place[name].reading_unloaded_mm
    known = set(many)
    held = {name: value for name, value in expected.items() if name in known}
    assert len(held) >= 5, sorted(known)
    if many["status"][0] != "ok":
        return
    for name, value in held.items():
        found = many[name][0]
        assert found == value or (value is None and np.isnan(found)), (name, found, value)


@given(designs(kinds=(ONE, ENDS)), ANGLE)
def test_a_sweep_is_its_contacts(design: bs.Design, start: float) -> None:
    seen = design.seen_from(design.blades[0])
    end = min(start + 4.0, 180.0)
    found = bs.sweep(seen, 1.0, start, end)
    again = bs.sweep(seen, 1.0, start, end)
    for name in ("force_n", "opening_torque_nmm", "closing_torque_nmm", "peak_stress_mpa"):
        np.testing.assert_array_equal(getattr(found, name), getattr(again, name))
    if design.to_dict()["friction"].get("bending"):
        return
    for place, angle in enumerate(found.blade_angle_deg):
        contact = bs.contact_at(seen, float(angle))
        assert contact.force_n == found.force_n[place]
        assert contact.energy_nmm == found.energy_mj[place]


@a_share(5)
@given(designs(kinds=(BESIDE,), kick=False))
def test_a_blade_of_several_is_checked_as_seen_from_it(design: bs.Design) -> None:
    together = bs.check(design)
    assert isinstance(together, bs.BladesCheck)
    for name in design.blades:
        alone = bs.check(design.seen_from(name))
        assert alone.result.positions == together.blades[name].result.positions
        assert alone.result.travel == together.blades[name].result.travel
