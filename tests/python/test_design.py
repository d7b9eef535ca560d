"""Designs as values: unchanging, comparable, copied with changes, and sent elsewhere."""

from __future__ import annotations

import copy
import pickle
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

import backspring as bs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
EVERY = [bs.load(path) for path in sorted(DESIGNS.glob("*.toml"))]
ALL = [design for design in EVERY if len(design.blades) == 1]
HERON = bs.load(DESIGNS / "heron.toml")


def notices(design: bs.Design) -> set[str]:
    return {each.code for each in design.notices}


@pytest.mark.parametrize("design", ALL, ids=lambda design: design.name)
def test_a_design_and_its_check_travel(design: bs.Design) -> None:
    sent = pickle.loads(pickle.dumps(design))
    assert (sent, sent.units, hash(sent)) == (design, design.units, hash(design))
    check = bs.check(design)
    assert pickle.loads(pickle.dumps(check)).to_dict() == check.to_dict()
    assert copy.deepcopy(design) == design


def test_an_error_travels_with_its_faults() -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        HERON.replace(**{"spring.width": 0})
    sent = pickle.loads(pickle.dumps(refused.value))
    assert (str(sent), sent.faults) == (str(refused.value), refused.value.faults)


def test_a_design_does_not_change() -> None:
    content = HERON.to_dict()
    with pytest.raises(AttributeError, match="use replace"):
        HERON.name = "Jay"  # type: ignore[misc]
    with pytest.raises(AttributeError, match="use replace"):
        del HERON._parts
    HERON.to_dict()["spring"]["thickness"][0][1] = 9.0
    HERON.steel["sources"].clear()
    assert HERON.to_dict() == content
    assert HERON.steel["sources"]


def test_a_changed_copy() -> None:
    changed = HERON.replace(**{"fit.preload": 0.8, "spring.thickness": "2.4 mm", "name": "Jay"})
    assert (changed.name, changed.core.fit.preload_mm) == ("Jay", 0.8)
    assert changed.to_dict()["spring"]["thickness"] == 2.4
    assert HERON.core.fit.preload_mm == 0.9
    assert changed != HERON
    assert changed.sha256 != HERON.sha256


def test_a_bare_number_in_a_change_is_in_mm_whatever_the_file_is_in() -> None:
    kestrel = next(design for design in ALL if design.units == "in")
    changed = kestrel.replace(**{"fit.preload": 0.8})
    assert (changed.core.fit.preload_mm, changed.units) == (0.8, "in")
    shown_in_mm = kestrel.replace(units="mm")
    assert (shown_in_mm, shown_in_mm.units) == (kestrel, "mm")


def test_a_change_takes_keys_out_and_puts_sections_in() -> None:
    round_ended = HERON.replace(
        **{"tang.half_stop": None, "tang.corner_radius": [2.0, 2.2], "tang.round_end": 5.2}
    )
    assert "half_stop" not in round_ended.to_dict()["tang"]
    assert round_ended.core.tang.round_end_mm == 5.2
    kicked = HERON.replace(**{"tang.kick": {"distance": 4, "height": 0.1, "radius": 0.5}})
    assert kicked.core.tang.kick.height_mm == 0.1
    assert (
        HERON.replace(friction=None).replace(**{"friction.pivot": 0.1}).core.friction.pivot == 0.1
    )


def test_preload_and_rear_pin_offset_replace_each_other() -> None:
    offset = HERON.replace(**{"fit.rear_pin_offset": 0.95625})
    assert offset.to_dict()["fit"] == {"rear_pin_offset": 0.95625, "dial": 33.5}
    assert offset.replace(**{"fit.preload": 0.9}) == HERON


@pytest.mark.parametrize(
    ("key", "message"),
    [
        ("fit.preloads", 'fit.preloads: unknown key "preloads": did you mean "preload"?'),
        ("fitt.preload", 'fitt: unknown section "fitt": did you mean "fit"?'),
        ("preload", 'preload: unknown key "preload" here: it belongs in [fit]'),
        ("units", 'units: must be "mm" or "in", got 1.0'),
        ("spring.width.x", 'spring.width.x: unknown key "spring.width.x"'),
    ],
)
def test_a_change_of_an_unknown_key_is_refused(key: str, message: str) -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        HERON.replace(**{key: 1.0})
    assert str(refused.value) == message


def test_arrays_and_numpy_numbers_are_taken() -> None:
    rows = np.array(HERON.to_dict()["spring"]["thickness"])
    changed = HERON.replace(
        **{"spring.thickness": rows, "spring.width": np.float64(2.3), "tang.pivot": np.int64(32)}
    )
    assert changed == HERON


@given(st.floats(0.01, 3.0))
def test_a_preload_is_kept_to_the_last_digit(preload_mm: float) -> None:
    assert HERON.replace(**{"fit.preload": preload_mm}).core.fit.preload_mm == preload_mm


@pytest.mark.parametrize(
    ("given_figures", "yield_mpa", "low_mpa", "tensile_mpa"),
    [
        # What is measured stands alone, without a band.
        ({"yield": 1200, "hardness": None}, 1200.0, 1200.0, None),
        ({"yield": "1.2 GPa"}, 1200.0, 1200.0, 1461.9375),
        ({"tensile": 1500}, 1275.0, 1200.0, 1500.0),
    ],
)
def test_given_strength_comes_before_the_data(
    given_figures: dict[str, Any], yield_mpa: float, low_mpa: float, tensile_mpa: Any
) -> None:
    # O1: yield ratio 0.85, from 0.80. 45 HRC: mean of 1482 (ASTM E140) and 1441.875, that is 5/8
    # of the way from 1420 at 44.5 to 1455 at 45.3 (DIN 50150).
    changes = {f"spring.{key}": value for key, value in given_figures.items()}
    steel = HERON.replace(**changes).steel
    assert steel["yield_mpa"] == pytest.approx(yield_mpa, rel=1e-12)
    assert steel["yield_low_mpa"] == pytest.approx(low_mpa, rel=1e-12)
    assert steel["tensile_mpa"] == tensile_mpa


def test_what_is_left_out_is_told() -> None:
    bare = HERON.replace(friction=None, blade=None, targets=None, **{"fit.dial": None})
    assert bare.defaults[-5:] == (
        "fit.dial: at the pivot, 32 mm",
        "blade.nail_nick: not given: no pull is worked out, only torque",
        "blade.inertia: not given, nor mass, length and height: no snap speed is worked out",
        "targets: none, so only a yield margin of 1 is judged",
        "targets.openings: no target; the verdict then tells of 100000",
    )
    assert notices(bare) == {"no-friction"}


def test_what_is_not_used_is_told() -> None:
    assert notices(HERON) == set()
    assert notices(HERON.replace(**{"spring.hardness": 55})) == {"hardness-outside"}
    clamped = HERON.replace(**{"spring.support": "clamped"})
    assert notices(clamped) == {"not-used"}
    assert notices(HERON.replace(**{"blade.length": None})) == {"not-judged"}


def test_a_notebook_shows_a_table_and_escapes_names() -> None:
    shown = HERON.replace(name="<b>Heron & Co")._repr_html_()
    assert "&lt;b&gt;Heron &amp; Co" in shown
    assert "<td>spring.width</td><td>2.3</td>" in shown
    assert repr(HERON).startswith("Design(name='Heron', spring={'steel': 'O1'")
